// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QRectF>

class QColor;
class QPainter;

namespace skeinproof {

// Fills that stay apart in one ink. They are drawn as lines, not as brushes, so that paper of any resolution
// shows the same spacing.
enum class Hatch { solid, empty, rising, falling, upright, level, crossed, dotted };

// The hatch of the n-th part of a stack; after the last they come round again, twice as dense.
// On paper lines stand for the solid fill, which would drink ink.
struct PartHatch {
  Hatch hatch = Hatch::solid;
  double density = 1;
};
PartHatch part_hatch(std::size_t part, bool on_paper);

// `unit` as in ink: one pixel at a 13 px font. Draws no outline.
void draw_hatch(QPainter& painter, const QRectF& rect, Hatch hatch, const QColor& colour, double unit,
                double density = 1);

}  // namespace skeinproof
