// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <vector>

#include "core/fabric/chart.h"

namespace skeinproof {

class ChartSquares;

// Beside the squares of a chart: its round numbers at the left, or what each round holds at the right ("B 11
// C 1", "to 9 sts", the longest float). It scrolls with the squares.
class ChartMargin : public QWidget {
  Q_OBJECT

 public:
  enum Side { numbers, counts };
  ChartMargin(ChartSquares& squares, Side side, QWidget* parent);

  void show_census(const ChartCensus& census);
  int wanted_width() const;
  // What stands beside a round, from 0.
  QString counts_text(std::size_t round) const;
  QString mark_text(std::size_t round) const;
  QString float_text(std::size_t round) const;
  // Where a round has a float of at least this many stitches it stands in semibold.
  static constexpr long long_float = 7;  // common practice, no source

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;

 private:
  QFont small() const;
  QString number_text(std::size_t round, bool current) const;
  void paint_round(QPainter& painter, std::size_t round, const QRect& area, bool current) const;

  ChartSquares& squares_;
  Side side_;
  ChartCensus census_;
};

}  // namespace skeinproof
