// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QRectF>
#include <QString>

#include "app/charts/hatch.h"
#include "app/document/reader_style.h"
#include "app/widgets/ink.h"

class QPainter;

namespace skeinproof {

// Lengths in metres as the reader reads them: "1,225 m", "1,225", "m".
QString chart_length(double metres, const ReaderStyle& reader);
QString chart_figure(double metres, const ReaderStyle& reader);
QString chart_unit(const ReaderStyle& reader);

// The legend of a chart, laid from right to left into one line. What no longer fits beside the title is left
// out, last added first.
class LegendLine {
 public:
  enum class Key { disc, ring, stroke, hatch, dashes, band, part };
  LegendLine(QPainter& painter, const QRectF& strip, const Ink& ink, const Type& type, double unit);
  void title(const QString& words);
  void add(const QString& words, Key key, PartHatch part = {});

 private:
  void draw_key(const QRectF& box, Key key, PartHatch part);

  QPainter& painter_;
  QRectF strip_;
  const Ink& ink_;
  const Type& type_;
  double unit_;
  double right_;
};

}  // namespace skeinproof
