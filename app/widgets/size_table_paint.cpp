// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/size_table_paint.h"

#include <QLineEdit>
#include <QPainter>
#include <algorithm>

#include "app/widgets/field_message.h"
#include "app/widgets/ink.h"
#include "app/widgets/size_table.h"
#include "app/widgets/size_table_model.h"

namespace skeinproof {

SizeCellDelegate::SizeCellDelegate(SizeTable& table) : QStyledItemDelegate(&table), table_(table) {}

void SizeCellDelegate::paint(QPainter* painter, const QStyleOptionViewItem& given,
                             const QModelIndex& index) const {
  QStyleOptionViewItem option = given;
  initStyleOption(&option, index);
  const Ink ink = ink_of(option.palette);
  const bool current = table_.currentIndex() == index;
  const bool many = table_.selectionModel()->selectedIndexes().size() > 1;
  const bool selected = many && (option.state & QStyle::State_Selected);
  const bool chosen = index.data(SizeTableModel::chosen_role).toBool();

  painter->save();
  painter->fillRect(option.rect, selected ? ink.highlight : chosen ? ink.tint : ink.base);
  painter->setPen(ink.rule);
  painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
  painter->setPen(ink.edge);
  if (index.data(SizeTableModel::opens_group_role).toBool())
    painter->drawLine(option.rect.topLeft(), option.rect.bottomLeft());
  if (index.data(SizeTableModel::rule_above_role).toBool())
    painter->drawLine(option.rect.topLeft(), option.rect.topRight());

  const QRect inside = option.rect.adjusted(scaled(&table_, 4), 0, -scaled(&table_, 7), 0);
  const QString text = painter->fontMetrics().elidedText(option.text, Qt::ElideLeft, inside.width());
  painter->setFont(option.font);
  const bool editable = index.flags() & Qt::ItemIsEditable;
  painter->setPen(selected ? ink.highlighted_text : editable ? ink.text : ink.muted);
  painter->drawText(inside, Qt::AlignRight | Qt::AlignVCenter, text);
  if (!index.data(SizeTableModel::bad_text_role).isNull()) {
    const int width = std::min(QFontMetrics(option.font).horizontalAdvance(text), inside.width());
    const QRect under(inside.right() - width, inside.top(), width, inside.height() - scaled(&table_, 2));
    draw_bad_underline(*painter, under, selected ? ink.highlighted_text : ink.text);
  }
  if (current && table_.hasFocus()) {
    painter->setPen(QPen(ink.focus, 2));
    painter->drawRect(option.rect.adjusted(1, 1, -1, -1));
  } else if (current) {
    painter->setPen(ink.edge);
    painter->drawRect(option.rect.adjusted(0, 0, -1, -1));
  }
  painter->restore();
}

QWidget* SizeCellDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                        const QModelIndex& index) const {
  auto* editor = new QLineEdit(parent);
  editor->setAlignment(Qt::AlignRight);
  editor->setFont(table_.font());
  editor->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
  const int row = index.row();
  const QPersistentModelIndex kept(index);
  connect(editor, &QLineEdit::textEdited, &table_, [this, editor, row, kept](const QString& text) {
    QStyleOptionViewItem option;
    option.rect = table_.visualRect(kept);
    updateEditorGeometry(editor, option, kept);
    table_.tell_typing(row, text);
  });
  return editor;
}

void SizeCellDelegate::setModelData(QWidget* editor, QAbstractItemModel*, const QModelIndex& index) const {
  table_.take_cell(index, static_cast<QLineEdit*>(editor)->text());
}

void SizeCellDelegate::updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                                            const QModelIndex&) const {
  const auto* line = static_cast<const QLineEdit*>(editor);
  const int wanted = line->fontMetrics().horizontalAdvance(line->text()) + scaled(&table_, 20);
  QRect place = option.rect;
  if (wanted > place.width()) {
    place.setWidth(std::min(wanted, table_.viewport()->width()));
    place.moveLeft(std::clamp(place.left(), 0, std::max(0, table_.viewport()->width() - place.width())));
  }
  editor->setGeometry(place);
}

SizeHeader::SizeHeader(Qt::Orientation orientation, QWidget* parent) : QHeaderView(orientation, parent) {
  setSectionsClickable(true);
  setHighlightSections(true);
  setSectionResizeMode(QHeaderView::Fixed);
}

int SizeHeader::height_for_lines() const {
  const bool two =
      model() && model()->columnCount() > 0 &&
      model()->headerData(0, Qt::Horizontal, Qt::DisplayRole).toString().contains(QLatin1Char('\n'));
  return scaled(this, two ? 40 : 25);
}

QSize SizeHeader::sizeHint() const {
  if (orientation() == Qt::Horizontal) return {QHeaderView::sizeHint().width(), height_for_lines()};
  int widest = scaled(this, 92);
  for (int row = 0; model() && row < model()->rowCount(); ++row)
    widest = std::max(widest, sectionSizeFromContents(row).width());
  return {widest, QHeaderView::sizeHint().height()};
}

QSize SizeHeader::sectionSizeFromContents(int section) const {
  QFont heavy = font();
  heavy.setWeight(QFont::DemiBold);
  const QFontMetrics measure(heavy);
  int widest = 0;
  for (const QString& line :
       model()->headerData(section, orientation(), Qt::DisplayRole).toString().split('\n'))
    widest = std::max(widest, measure.horizontalAdvance(line));
  return {widest + scaled(this, 16), orientation() == Qt::Horizontal ? height_for_lines() : scaled(this, 25)};
}

void SizeHeader::paintSection(QPainter* painter, const QRect& rect, int section) const {
  if (!rect.isValid()) return;
  const Ink ink = ink_of(palette());
  const bool across = orientation() == Qt::Horizontal;
  const auto says = [&](int role) { return model()->headerData(section, orientation(), role); };
  const auto* view = qobject_cast<const QTableView*>(parentWidget());
  const QModelIndex current = view ? view->currentIndex() : QModelIndex();
  const bool tinted = across ? says(SizeTableModel::chosen_role).toBool() : current.row() == section;

  painter->save();
  painter->fillRect(rect, tinted ? ink.tint : ink.header);
  painter->setPen(across ? ink.edge : ink.rule);
  painter->drawLine(rect.bottomLeft(), rect.bottomRight());
  painter->setPen(ink.edge);
  if (across && says(SizeTableModel::opens_group_role).toBool())
    painter->drawLine(rect.topLeft(), rect.bottomLeft());
  if (!across) painter->drawLine(rect.topRight(), rect.bottomRight());
  if (!across && says(SizeTableModel::rule_above_role).toBool())
    painter->drawLine(rect.topLeft(), rect.topRight());

  const QStringList lines = says(Qt::DisplayRole).toString().split(QLatin1Char('\n'));
  const QRect inside = rect.adjusted(scaled(this, 7), 0, -scaled(this, 7), 0);
  QFont first = qvariant_cast<QFont>(says(Qt::FontRole)).resolve(font());
  if (across) first.setWeight(QFont::DemiBold);
  painter->setFont(first);
  painter->setPen(ink.text);
  if (lines.size() < 2) {
    painter->drawText(inside, (across ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter, lines.value(0));
  } else {
    const int half = rect.height() / 2;
    painter->drawText(QRect(inside.left(), rect.top() + scaled(this, 2), inside.width(), half),
                      Qt::AlignRight | Qt::AlignVCenter, lines[0]);
    painter->setFont(type_of(font()).small);
    painter->setPen(tinted ? ink.text : ink.muted);
    painter->drawText(QRect(inside.left(), rect.top() + half - scaled(this, 1), inside.width(), half),
                      Qt::AlignRight | Qt::AlignVCenter, lines[1]);
  }
  painter->restore();
}

}  // namespace skeinproof
