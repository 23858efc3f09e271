// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <optional>

#include "app/charts/size_chart.h"

namespace skeinproof {

// One figure of several things side by side: candidates in one size, or candidates over all sizes.
struct BarsData {
  struct Series {
    QString name;
    std::vector<std::optional<double>> values;  // one a column; absent where it is not known
  };
  QString title;                         // "Basket, €"
  SizeAxis axis;                         // its labels are the columns: sizes, or names
  std::vector<Series> series;            // one = plain bars, several = told apart by hatches
  std::function<QString(double)> words;  // of a value
  std::optional<double> line;            // a rule across, such as the budget
  QString line_words;
  std::optional<double> top;  // of the scale, where it is given
};

// Bars in groups, drawn in one ink; the names of the columns stand below them.
class GroupedBars : public SizeChart {
  Q_OBJECT

 public:
  explicit GroupedBars(QWidget* parent = nullptr) : SizeChart(parent) {}
  void show_bars(BarsData data);
  const BarsData& data() const { return data_; }
  QString spoken() const override;
  QSize sizeHint() const override;

 protected:
  void fill() override {}
  double low() const override;
  double high() const override { return high_; }
  std::vector<ScaleMark> marks() const override;
  void draw_over(QPainter& painter) override;
  void draw_legend(QPainter& painter, const QRectF& strip) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  bool viewportEvent(QEvent* event) override;

 private:
  void fit_columns();
  QRectF bar(std::size_t series, std::size_t column, double value) const;
  QString tip_at(const QPointF& position) const;

  BarsData data_;
  double high_ = 1;
};

// The key to the hatches of the series, in as many lines as it needs; returns the height. Without a painter
// it is only measured.
double draw_series_key(QPainter* painter, const QRectF& room, const QStringList& names, const Ink& ink,
                       const Type& type, double unit);

}  // namespace skeinproof
