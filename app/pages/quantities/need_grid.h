// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPointer>
#include <QStyledItemDelegate>
#include <QTableView>

#include "app/charts/size_chart.h"
#include "app/pages/quantities/need_model.h"
#include "app/widgets/field_message.h"
#include "app/widgets/ink.h"

namespace skeinproof {

class NeedHeader;

// Draws the cells of the grid and edits the printed count. A text that is no count stays in the editor with
// the reason until it is mended or given up with Esc.
class NeedDelegate : public QStyledItemDelegate {
  Q_OBJECT

 public:
  explicit NeedDelegate(NeedModel& model, QObject* parent);
  void set_look(const Ink& ink, const Type& type, double unit);

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const override;
  void setEditorData(QWidget* editor, const QModelIndex& index) const override;
  void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;
  void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                            const QModelIndex& index) const override;

 signals:
  void says(const QString& message) const;

 protected:
  bool eventFilter(QObject* editor, QEvent* event) override;

 private:
  bool refuses(QWidget* editor);

  NeedModel& model_;
  Ink ink_;
  Type type_;
  double unit_ = 1;
  mutable QPersistentModelIndex edited_;
  mutable QPointer<FieldMessage> message_;
};

// The grid of quantities. Arrows, Home and End move; Enter or F2 types the printed count; Ctrl+C and Ctrl+V
// are the clipboard. Columns share the width between the least and the greatest a cell is drawn at.
class NeedGrid : public QTableView {
  Q_OBJECT

 public:
  static constexpr int most_cell_width = 104;  // at the usual text size

  explicit NeedGrid(NeedModel& model, QWidget* parent = nullptr);
  ~NeedGrid() override;

  ChartColumns columns() const;  // where the sizes stand, for the charts below
  void copy(bool lengths);
  void paste();
  QSize sizeHint() const override;
  int height_of_all_rows() const;
  // While nothing is known: the grid is dashes in a dotted outline.
  void set_is_empty(bool is_empty);

 signals:
  void columns_moved();
  void says(const QString& message);
  void current_moved(int row, int column);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void updateGeometries() override;
  void paintEvent(QPaintEvent* event) override;
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
  void contextMenuEvent(QContextMenuEvent* event) override;

 private:
  void re_ink();
  void share_width();
  void heighten_rows();

  NeedModel& model_;
  NeedDelegate* delegate_;
  QWidget* corner_;
  Ink ink_;
  Type type_;
  double unit_ = 1;
  bool is_empty_ = false;
};

}  // namespace skeinproof
