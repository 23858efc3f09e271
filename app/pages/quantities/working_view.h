// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QStyledItemDelegate>
#include <QTreeView>

#include "app/pages/quantities/working_model.h"
#include "app/widgets/ink.h"

namespace skeinproof {

// The tree of a working. From the figure at the top to the chosen step runs one plumb line; where a number
// stands on the ground it ends in a foot, with the word for the ground beside it. Right and Left open and
// close a step.
class WorkingView : public QTreeView {
  Q_OBJECT

 public:
  explicit WorkingView(WorkingModel& model, QWidget* parent = nullptr);

  // Opens the way to a step, closes everything else, and chooses it.
  void drop_to(const QModelIndex& index);
  bool is_on_line(const QModelIndex& index) const;  // the chosen step and all above it
  // Puts How under each step where the pane is narrow.
  bool is_narrow() const { return is_narrow_; }
  const Ink& ink() const { return ink_; }
  const Type& type() const { return type_; }
  double unit() const { return unit_; }

 signals:
  void step_chosen();
  void copy_asked();

 protected:
  void drawBranches(QPainter* painter, const QRect& rect, const QModelIndex& index) const override;
  void drawRow(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

 private:
  void re_ink();
  void share_width();
  QPen line_pen(bool heavy) const;

  WorkingModel& model_;
  Ink ink_;
  Type type_;
  double unit_ = 1;
  bool is_narrow_ = false;
};

class WorkingDelegate : public QStyledItemDelegate {
  Q_OBJECT

 public:
  explicit WorkingDelegate(WorkingView& view) : QStyledItemDelegate(&view), view_(view) {}
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

 private:
  void paint_how(QPainter& painter, const QRectF& rect, const QModelIndex& index) const;

  WorkingView& view_;
};

}  // namespace skeinproof
