// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QHeaderView>
#include <QStyledItemDelegate>

namespace skeinproof {

class SizeTable;

// Draws a cell with the bracket rules, the tint of the chosen size and the frame of the current cell; its
// editor is a line that grows over its neighbours while a list is typed.
class SizeCellDelegate : public QStyledItemDelegate {
  Q_OBJECT

 public:
  explicit SizeCellDelegate(SizeTable& table);
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const override;
  void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;
  void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                            const QModelIndex& index) const override;

 private:
  SizeTable& table_;
};

// The size labels above (with a second line where the page gives one) or the row labels beside the cells.
class SizeHeader : public QHeaderView {
  Q_OBJECT

 public:
  SizeHeader(Qt::Orientation orientation, QWidget* parent);
  int height_for_lines() const;
  QSize sizeHint() const override;

 protected:
  void paintSection(QPainter* painter, const QRect& rect, int section) const override;
  QSize sectionSizeFromContents(int section) const override;
};

}  // namespace skeinproof
