// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QColor>
#include <QPixmap>
#include <QString>
#include <map>

#include "app/widgets/ink.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// How the squares of a chart are filled: by the shade, by its lightness alone, or not at all.
enum class ChartLook { colour, lightness, letters };

struct SquareInk {
  QColor fill;
  QColor letter;
};

// One row a symbol of the chart. A role without a lightness has the plain ground.
std::map<char, SquareInk> square_inks(const Pattern& pattern, const Chart& chart, ChartLook look,
                                      const Ink& ink);

// The fill of a role's chip: its shade, or the plain ground where no lightness is known.
QColor role_fill(const Pattern& pattern, RoleId role, const Ink& ink);

// A chip of one or two colours with an outline, `height` pixels high.
QPixmap chip_picture(const QColor& first, const QColor& second, const Ink& ink, int height,
                     double pixel_ratio);

// "CC1 Lichen", "a colour without a yarn".
QString symbol_words(const Pattern& pattern, const Chart& chart, char symbol);
// The role's label, or the symbol where it has none.
QString symbol_label(const Pattern& pattern, const Chart& chart, char symbol);

}  // namespace skeinproof
