// SPDX-License-Identifier: GPL-3.0-or-later
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <algorithm>

#include "app/pages/quantities/need_cell_painter.h"
#include "app/pages/quantities/need_grid.h"

namespace skeinproof {

NeedDelegate::NeedDelegate(NeedModel& model, QObject* parent) : QStyledItemDelegate(parent), model_(model) {}

void NeedDelegate::set_look(const Ink& ink, const Type& type, double unit) {
  ink_ = ink;
  type_ = type;
  unit_ = unit;
}

void NeedDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
  const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
  const bool current = view && view->currentIndex() == index;
  const bool selected = option.state.testFlag(QStyle::State_Selected);
  const bool total = model_.is_total(index.row());
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing, false);
  painter->fillRect(option.rect, current || selected ? ink_.tint : total ? ink_.header : ink_.base);

  const QRect line = option.rect;
  const bool opens = model_.headerData(index.column(), Qt::Horizontal, NeedModel::OpensGroupRole).toBool();
  if (index.column() > 0) {
    painter->setPen(opens ? ink_.edge : ink_.rule);
    painter->drawLine(line.topLeft(), line.bottomLeft());
  }
  painter->setPen(model_.is_total(index.row() + 1) || total ? ink_.edge : ink_.rule);
  painter->drawLine(line.bottomLeft(), line.bottomRight());

  const NeedCell& cell = model_.cell(index.row(), index.column());
  const CellLook look{ink_, type_, unit_, current};
  if (total)
    paint_total_cell(*painter, line, cell, look);
  else
    paint_need_cell(*painter, line, cell, look);
  if (current) {
    const int width = std::max(2, static_cast<int>(2 * unit_ + 0.5));
    QPen frame(ink_.focus, width, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin);
    painter->setPen(frame);
    painter->setBrush(Qt::NoBrush);
    const int half = width / 2;
    painter->drawRect(line.adjusted(half, half, -half, -half));
  }
  painter->restore();
}

QWidget* NeedDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const {
  auto* editor = new QLineEdit(parent);
  editor->setObjectName(QStringLiteral("printed_count"));
  editor->setFrame(true);
  editor->setPlaceholderText(tr("printed count"));
  editor->setAccessibleName(tr("Printed count, or a list for all sizes"));
  edited_ = index;
  connect(editor, &QLineEdit::textChanged, this,
          [this, editor] { FieldMessage::show_under(editor, message_, QString()); });
  return editor;
}

void NeedDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
  auto* line = qobject_cast<QLineEdit*>(editor);
  // What is being typed stays when the grid is worked out anew below it.
  if (line && !line->isModified()) line->setText(index.data(Qt::EditRole).toString());
}

void NeedDelegate::setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const {
  if (const auto* line = qobject_cast<QLineEdit*>(editor); line && line->isModified())
    model->setData(index, line->text(), Qt::EditRole);
}

void NeedDelegate::updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                                        const QModelIndex&) const {
  QRect place = option.rect;
  const int height = editor->sizeHint().height();
  // Room for a whole list, without leaving the grid.
  place.setWidth(std::max(place.width(), static_cast<int>(260 * unit_)));
  if (const QWidget* parent = editor->parentWidget())
    place.moveLeft(std::max(0, std::min(place.left(), parent->width() - place.width())));
  place.setTop(option.rect.center().y() - height / 2);
  place.setHeight(height);
  editor->setGeometry(place);
}

bool NeedDelegate::refuses(QWidget* editor) {
  const auto* line = qobject_cast<QLineEdit*>(editor);
  if (!line || !line->isModified()) return false;
  const QString problem = model_.problem_with(edited_, line->text());
  FieldMessage::show_under(editor, message_, problem);
  editor->setAccessibleDescription(problem);
  if (!problem.isEmpty()) emit says(problem);
  return !problem.isEmpty();
}

bool NeedDelegate::eventFilter(QObject* editor, QEvent* event) {
  auto* widget = qobject_cast<QWidget*>(editor);
  if (widget && event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    const bool commits =
        key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Tab || key == Qt::Key_Backtab;
    if (commits && refuses(widget)) return true;
    if (key == Qt::Key_Escape) FieldMessage::show_under(widget, message_, QString());
  }
  // Leaving a text that cannot be read neither loses nor takes it.
  if (widget && event->type() == QEvent::FocusOut && refuses(widget)) return false;
  return QStyledItemDelegate::eventFilter(editor, event);
}

}  // namespace skeinproof
