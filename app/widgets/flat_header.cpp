// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/flat_header.h"

#include <QPainter>

#include "app/widgets/ink.h"

namespace skeinproof {

FlatHeader::FlatHeader(QWidget* parent) : QHeaderView(Qt::Horizontal, parent) {
  setSectionsClickable(false);
  setHighlightSections(false);
}

void FlatHeader::paintEvent(QPaintEvent* event) {
  const Ink ink = ink_of(palette());
  {
    QPainter painter(viewport());
    painter.fillRect(viewport()->rect(), ink.header);
    painter.setPen(ink.edge);
    painter.drawLine(viewport()->rect().bottomLeft(), viewport()->rect().bottomRight());
  }
  QHeaderView::paintEvent(event);
}

void FlatHeader::paintSection(QPainter* painter, const QRect& rect, int section) const {
  const Ink ink = ink_of(palette());
  const int inset = scaled(this, 7);
  const QVariant alignment = model()->headerData(section, Qt::Horizontal, Qt::TextAlignmentRole);
  const QString words = model()->headerData(section, Qt::Horizontal, Qt::DisplayRole).toString();
  painter->save();
  painter->fillRect(rect, ink.header);
  painter->setPen(ink.edge);
  painter->drawLine(rect.bottomLeft(), rect.bottomRight());
  painter->setPen(ink.muted);
  painter->setFont(font());
  painter->drawText(rect.adjusted(inset, 0, -inset, 0), alignment.toInt() | Qt::TextSingleLine, words);
  painter->restore();
}

QSize FlatHeader::sectionSizeFromContents(int section) const {
  const QString words = model()->headerData(section, Qt::Horizontal, Qt::DisplayRole).toString();
  return {fontMetrics().horizontalAdvance(words) + 2 * scaled(this, 7) + 2,
          fontMetrics().height() + scaled(this, 8)};
}

}  // namespace skeinproof
