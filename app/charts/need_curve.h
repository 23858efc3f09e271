// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "app/charts/size_chart.h"
#include "app/document/reader_style.h"

namespace skeinproof {

// What the need curve of one role shows. Lengths in metres.
struct NeedCurveData {
  struct Point {
    bool known = false;
    double knitted = 0, planned = 0;
    double low = 0, high = 0;            // planned, 9 in 10
    std::optional<double> bought;        // skeins x skein
    std::optional<double> words_skeins;  // the designer's count where it differs
  };
  QString role;
  SizeAxis axis;
  std::vector<Point> points;
  std::optional<double> skein;
  ReaderStyle reader;
};

// Planned and knitted length over the sizes, with a rule at every whole skein, what is bought and what is
// left over.
class NeedCurve : public SizeChart {
  Q_OBJECT

 public:
  explicit NeedCurve(QWidget* parent = nullptr);
  void show_need(NeedCurveData data);
  const NeedCurveData& data() const { return data_; }
  QString spoken() const override;

 protected:
  void fill() override;
  double low() const override { return low_; }
  double high() const override { return high_; }
  std::vector<ScaleMark> marks() const override;
  void draw_over(QPainter& painter) override;
  void draw_legend(QPainter& painter, const QRectF& strip) override;

 private:
  void measure();
  void add_band(std::size_t from, std::size_t to);
  void add_line(std::size_t from, std::size_t to, double NeedCurveData::Point::*value, bool planned);
  void draw_bought(QPainter& painter, std::size_t size);
  void draw_words(QPainter& painter, std::size_t size);

  NeedCurveData data_;
  double low_ = 0;
  double high_ = 1;
};

}  // namespace skeinproof
