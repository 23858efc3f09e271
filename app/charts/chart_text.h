// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QRectF>
#include <QString>
#include <vector>

#include "app/charts/hatch.h"
#include "app/document/reader_style.h"
#include "app/widgets/ink.h"

class QPainter;

namespace skeinproof {

// Lengths in metres as the reader reads them: "1,225 m", "1,225", "m".
QString chart_length(double metres, const ReaderStyle& reader);
QString chart_figure(double metres, const ReaderStyle& reader);
QString chart_unit(const ReaderStyle& reader);

// Writes in the painter's font on a ground cleared of the rules behind it.
void write_clear(QPainter& painter, const QPointF& baseline, const QString& words, const Ink& ink);

// The legend of a chart: a title at the left, keys at the right, in one line. Keys are added from the most
// telling to the least; what does not fit is left out, last first.
class LegendLine {
 public:
  enum class Key { disc, ring, stroke, hatch, dashes, band, part };
  LegendLine(const Ink& ink, const Type& type, double unit);
  void add(const QString& words, Key key, PartHatch part = {});
  void draw(QPainter& painter, const QRectF& strip, const QString& title) const;

 private:
  struct Entry {
    QString words;
    Key key;
    PartHatch part;
    double key_width, width;
  };
  void draw_key(QPainter& painter, const QRectF& box, const Entry& entry) const;
  const QFont& font_of(const Entry& entry) const {
    return entry.key == Key::dashes ? type_.words : type_.small;
  }

  const Ink& ink_;
  const Type& type_;
  double unit_;
  std::vector<Entry> entries_;
};

}  // namespace skeinproof
