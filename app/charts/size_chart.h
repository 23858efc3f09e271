// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QtCharts/QChartView>
#include <vector>

#include "app/widgets/ink.h"

class QValueAxis;

namespace skeinproof {

// Where the columns of a grid stand, in pixels of the chart, so that the eye drops from a count to its point.
struct ChartColumns {
  double left = 0;          // of the plot
  double width = 0;         // of the plot
  double column_width = 1;  // of one size
  double scrolled = 0;      // how far the first size stands left of the plot
};

// What every chart over the sizes shares: a column a size, bracket rules, the chosen size, a scale in the
// margin.
struct SizeAxis {
  std::vector<QString> labels;
  std::vector<bool> opens_group;
  std::size_t chosen = 0;
};

struct ScaleMark {
  double value = 0;
  QString left, right;  // "7 skeins", "1,225 m"
  bool strong = false;
};

// A chart with one column a size. Qt Charts draws the series; the rules, steps and words around them are
// drawn here, in the window's ink or in that of paper. Subclasses fill the series and draw over them.
class SizeChart : public QChartView {
  Q_OBJECT

 public:
  explicit SizeChart(QWidget* parent = nullptr);

  void set_columns(const ChartColumns& columns);
  const Ink& ink() const { return ink_; }
  QRectF plot() const { return plot_; }
  // Draws the chart with paper's ink into `target`, all sizes, with `margin` of it for the scale.
  void paint_on_paper(QPainter& painter, const QRectF& target, double margin);
  // What a screen reader says of the chart.
  virtual QString spoken() const = 0;

 signals:
  void size_clicked(std::size_t size_index);

 protected:
  virtual void fill() = 0;         // rebuilds the series from the data
  virtual double low() const = 0;  // of the value axis
  virtual double high() const = 0;
  virtual std::vector<ScaleMark> marks() const = 0;  // rules of the scale
  virtual void draw_over(QPainter& painter) = 0;
  virtual void draw_legend(QPainter& painter, const QRectF& strip) = 0;

  void show_axis(const SizeAxis& axis);  // call when the data changed
  const SizeAxis& axis() const { return axis_; }
  const Type& type() const { return type_; }
  double unit() const { return unit_; }
  double x_of(double size) const;  // 0.5 is the middle of the first size
  double y_of(double value) const;
  // Puts a series on both axes.
  void add(QAbstractSeries* series);
  int most_marks() const;  // that fit the height

  void drawBackground(QPainter* painter, const QRectF& rect) override;
  void drawForeground(QPainter* painter, const QRectF& rect) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;

 private:
  void re_ink();
  QPen rule_pen(bool strong) const;
  void place();

  Ink ink_;
  Type type_;
  double unit_ = 1;
  ChartColumns columns_;
  SizeAxis axis_;
  QRectF plot_;
  QValueAxis* sizes_;
  QValueAxis* values_;
};

// Round values for a scale without skeins: at most `most` of them from `low` to `high`.
std::vector<double> round_marks(double low, double high, int most);

}  // namespace skeinproof
