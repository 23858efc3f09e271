// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/queries_widgets.h"

#include <QFontDatabase>
#include <QHeaderView>
#include <QPlainTextEdit>
#include <QTreeWidget>

#include "app/widgets/ink.h"

namespace skeinproof {

QPlainTextEdit* reading_text(const QString& name, Pitch pitch) {
  auto* text = new QPlainTextEdit;
  text->setReadOnly(true);
  text->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  text->setTabChangesFocus(true);
  text->setAccessibleName(name);
  text->setFrameShape(QFrame::NoFrame);
  text->document()->setDocumentMargin(scaled(text, 12));
  if (pitch == Pitch::fixed) {
    QFont font;  // only its family is set: the size follows the window's
    font.setFamily(QFontDatabase::systemFont(QFontDatabase::FixedFont).family());
    font.setStyleHint(QFont::Monospace);
    text->setFont(font);
  }
  return text;
}

QTreeWidget* flat_table(const QString& name, const QStringList& heads, int stretched) {
  auto* table = new QTreeWidget;
  table->setAccessibleName(name);
  table->setHeaderLabels(heads);
  table->setRootIsDecorated(false);
  table->setUniformRowHeights(true);
  table->setAllColumnsShowFocus(true);
  table->setFrameShape(QFrame::NoFrame);
  table->header()->setStretchLastSection(false);
  table->header()->setSectionResizeMode(stretched, QHeaderView::Stretch);
  table->header()->setHighlightSections(false);
  return table;
}

}  // namespace skeinproof
