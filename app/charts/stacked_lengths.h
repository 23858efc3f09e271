// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/charts/size_chart.h"
#include "app/document/reader_style.h"

namespace skeinproof {

// Lengths in metres that add to a whole in each size: by piece or by role.
struct StackData {
  struct Part {
    QString name;
    std::vector<double> lengths;  // one a size; 0 where the part takes none
  };
  QString title;
  SizeAxis axis;
  std::vector<Part> parts;  // first at the foot
  std::vector<bool> known;  // false: nothing is drawn for the size
  ReaderStyle reader;
};

// Bars that stack the parts of each size; hatches tell the parts apart, so that one ink is enough.
class StackedLengths : public SizeChart {
  Q_OBJECT

 public:
  explicit StackedLengths(QWidget* parent = nullptr) : SizeChart(parent) {}
  void show_stack(StackData data);
  const StackData& data() const { return data_; }
  QString spoken() const override;

 protected:
  void fill() override;
  double low() const override { return 0; }
  double high() const override { return high_; }
  std::vector<ScaleMark> marks() const override;
  void draw_over(QPainter& painter) override;
  void draw_legend(QPainter& painter, const QRectF& strip) override;
  bool viewportEvent(QEvent* event) override;

 private:
  QRectF bar(std::size_t size, double from, double to) const;
  QString tip_at(const QPointF& position) const;

  StackData data_;
  double high_ = 1;
};

}  // namespace skeinproof
