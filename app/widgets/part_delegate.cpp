// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/part_delegate.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QLineEdit>
#include <QPainter>

#include "app/widgets/bound_fields.h"
#include "app/widgets/field_message.h"
#include "app/widgets/ink.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"

namespace skeinproof {

namespace {

constexpr char list_of_view[] = "list_of_view";

const PartTableModel* model_of(const QModelIndex& index) {
  return static_cast<const PartTableModel*>(index.model());
}

QFont font_of(const QStyleOptionViewItem& option, const QModelIndex& index) {
  QFont font = option.font;
  if (index.data(PartTableModel::strong_role).toBool()) font.setWeight(QFont::DemiBold);
  return font;
}

void paint_chip(QPainter& painter, const QRect& chip, const QColor& colour, const Ink& ink) {
  painter.fillRect(chip, colour);
  painter.setPen(ink.edge);
  painter.drawRect(chip.adjusted(0, 0, -1, -1));
}

}  // namespace

void PartDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
  const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
  const Ink ink = ink_of(option.palette);
  const QRect cell = option.rect;
  const bool current = view != nullptr && view->currentIndex() == index;
  const bool current_row = view != nullptr && view->currentIndex().row() == index.row();
  const bool selected = option.state.testFlag(QStyle::State_Selected);
  painter->save();
  painter->fillRect(cell, current_row || selected ? ink.tint : ink.base);
  painter->setPen(ink.rule);
  painter->drawLine(cell.bottomLeft(), cell.bottomRight());

  const int inset = scaled(option.widget, 7);
  QRect inside = cell.adjusted(inset, 0, -inset, 0);
  if (const auto chip = index.data(PartTableModel::chip_role).value<QColor>(); chip.isValid()) {
    const int side = scaled(option.widget, 12);
    paint_chip(*painter, QRect(inside.left(), cell.center().y() - side / 2, side, side), chip, ink);
    inside.setLeft(inside.left() + side + scaled(option.widget, 7));
  }
  if (const QVariant ticked = index.data(Qt::CheckStateRole); ticked.isValid()) {
    QStyleOptionViewItem box = option;
    const int side = option.widget->style()->pixelMetric(QStyle::PM_IndicatorWidth, &option, option.widget);
    box.rect = QRect(inside.left(), cell.center().y() - side / 2, side, side);
    box.state =
        QStyle::State_Enabled | (ticked.toInt() == Qt::Checked ? QStyle::State_On : QStyle::State_Off);
    option.widget->style()->drawPrimitive(QStyle::PE_IndicatorItemViewItemCheck, &box, painter,
                                          option.widget);
  }
  painter->setFont(font_of(option, index));
  painter->setPen(index.data(PartTableModel::quiet_role).toBool() ? ink.muted : ink.text);
  const auto alignment = Qt::Alignment(index.data(Qt::TextAlignmentRole).toInt());
  const QString shown =
      painter->fontMetrics().elidedText(index.data().toString(), Qt::ElideRight, inside.width());
  painter->drawText(inside, static_cast<int>(alignment) | Qt::TextSingleLine, shown);
  if (index.data(PartTableModel::bad_text_role).toBool()) {
    const int width = painter->fontMetrics().horizontalAdvance(shown);
    const int left = alignment.testFlag(Qt::AlignRight) ? inside.right() - width : inside.left();
    const int middle = painter->fontMetrics().height() / 2 + 2;
    draw_bad_underline(*painter, QRect(left, cell.center().y() - middle, width, 2 * middle), ink.text);
  }
  if (current && view->hasFocus()) {
    painter->setPen(QPen(ink.focus, 2));
    painter->setBrush(Qt::NoBrush);
    painter->drawRect(cell.adjusted(1, 1, -1, -2));
  }
  painter->restore();
}

QSize PartDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const QFontMetrics metrics(font_of(option, index));
  int width = metrics.horizontalAdvance(index.data().toString()) + 2 * scaled(option.widget, 7) + 2;
  if (index.data(PartTableModel::chip_role).isValid()) width += scaled(option.widget, 19);
  if (index.data(Qt::CheckStateRole).isValid()) width += scaled(option.widget, 16);
  // Wide enough to be typed in while it is empty.
  if (index.flags().testFlag(Qt::ItemIsEditable)) width = std::max(width, scaled(option.widget, 62));
  return {width, scaled(option.widget, 24)};
}

QWidget* PartDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const {
  const PartColumn& column = model_of(index)->column(index.column());
  if (column.choose) {
    auto* list = new ChoiceField(parent);
    list->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
    auto* self = const_cast<PartDelegate*>(this);
    connect(list, &ChoiceField::chosen, self, [self, list] {
      emit self->commitData(list);
      emit self->closeEditor(list);
    });
    list->view()->installEventFilter(self);
    list->view()->setProperty(list_of_view, QVariant::fromValue(static_cast<QWidget*>(list)));
    QMetaObject::invokeMethod(list, &QComboBox::showPopup, Qt::QueuedConnection);
    return list;
  }
  auto* line = new QLineEdit(parent);
  line->setFrame(false);
  line->setAutoFillBackground(true);
  line->setAlignment(column.right ? Qt::AlignRight : Qt::AlignLeft);
  line->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
  return line;
}

// Tab in an open list takes the marked choice and goes on to the next cell, as it does from typed words.
bool PartDelegate::eventFilter(QObject* watched, QEvent* event) {
  auto* list = qobject_cast<ChoiceField*>(watched->property(list_of_view).value<QWidget*>());
  if (list == nullptr) return QStyledItemDelegate::eventFilter(watched, event);
  const int step = list->take_with_tab(*event);
  if (step == 0) return false;
  emit commitData(list);
  emit closeEditor(list, step > 0 ? EditNextItem : EditPreviousItem);
  return true;
}

void PartDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
  if (auto* line = qobject_cast<QLineEdit*>(editor)) {
    // A change of the document while somebody types leaves what is being typed alone.
    if (!line->isModified()) line->setText(index.data(Qt::EditRole).toString());
    return;
  }
  if (auto* list = qobject_cast<ChoiceField*>(editor)) {
    const PartTableModel* model = model_of(index);
    list->set_choices(model->choices_at(index.row(), index.column()));
    list->setCurrentIndex(list->findText(index.data(Qt::EditRole).toString()));
  }
}

void PartDelegate::setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const {
  if (auto* line = qobject_cast<QLineEdit*>(editor))
    model->setData(index, line->text(), Qt::EditRole);
  else if (auto* list = qobject_cast<ChoiceField*>(editor); list != nullptr && list->currentIndex() >= 0)
    model->setData(index, list->currentData().toUInt(), Qt::EditRole);
}

}  // namespace skeinproof
