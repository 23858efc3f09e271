// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <QTableView>
#include <map>
#include <optional>

#include "app/widgets/chart_inks.h"
#include "core/fabric/chart_edits.h"

namespace skeinproof {

// The squares of one chart as a table: the last round at the top, as a chart is drawn.
class ChartModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  explicit ChartModel(QObject* parent);

  // `pattern` gives the names of the colours and is not kept.
  void show(const Pattern& pattern, const Chart& chart);
  const Chart& chart() const { return chart_; }

  Square square_at(const QModelIndex& index) const;
  QModelIndex index_of(Square square) const;
  char symbol_at(Square square) const;

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  Chart chart_;
  std::map<char, QString> names_;
};

// The grid of squares itself: cursor, selection, typing and painting. It changes nothing but asks for it.
class ChartSquares : public QTableView {
  Q_OBJECT

 public:
  explicit ChartSquares(QWidget* parent);

  ChartModel* squares() const { return model_; }
  void set_inks(std::map<char, SquareInk> inks);
  void set_square_size(QSize size);
  QSize square_size() const { return size_; }
  QSize content_size() const;

  // The colour the mouse paints with; none = the mouse selects.
  void set_brush(std::optional<char> brush);
  std::optional<char> brush() const { return brush_; }

  Square current() const;
  void set_current(Square square);
  // The corners of what is selected; the cursor where it is one square.
  std::pair<Square, Square> selection() const;
  void select(Square corner, Square opposite);

 signals:
  void typed(char symbol);  // paint the selection, or the cursor's square and move on
  void wants_repeat();
  void wants_copy();
  void wants_paste();
  void stroke_began();
  void stroke_touched(skeinproof::Square from, skeinproof::Square to);
  void stroke_ended();
  void current_moved();

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void keyboardSearch(const QString&) override {}
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
  void selectionChanged(const QItemSelection& selected, const QItemSelection& deselected) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  void paint_squares(QPainter& painter, const QRect& area);
  const QPixmap& picture_of(char symbol);
  void frame(QPainter& painter, const QRect& area, const QColor& colour, int thick);

  ChartModel* model_;
  std::map<char, SquareInk> inks_;
  std::map<char, QPixmap> pictures_;
  QSize size_{16, 14};
  std::optional<char> brush_;
  std::optional<Square> stroke_at_;
};

}  // namespace skeinproof
