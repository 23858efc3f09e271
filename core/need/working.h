// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/base/enum_words.h"

namespace skeinproof {

// Where a number stands on the ground; `none` = worked out from its parts.
enum class Ground { none, scale, label, chart, sheet, house, swatch, gauge, reference };
template <>
struct EnumWords<Ground> {
  static constexpr auto rows = enum_rows<Ground>({{Ground::none, ""},
                                                  {Ground::scale, "scale"},
                                                  {Ground::label, "label"},
                                                  {Ground::chart, "chart"},
                                                  {Ground::sheet, "sheet"},
                                                  {Ground::house, "house"},
                                                  {Ground::swatch, "swatch"},
                                                  {Ground::gauge, "gauge"},
                                                  {Ground::reference, "reference"}});
};

enum class FigureUnit {
  none,
  metres,
  centimetres,
  grams,
  metres_per_gram,
  stitches,
  skeins,
  repeats,
  percent,
  ratio
};
template <>
struct EnumWords<FigureUnit> {
  static constexpr auto rows = enum_rows<FigureUnit>({{FigureUnit::none, ""},
                                                      {FigureUnit::metres, "m"},
                                                      {FigureUnit::centimetres, "cm"},
                                                      {FigureUnit::grams, "g"},
                                                      {FigureUnit::metres_per_gram, "m/g"},
                                                      {FigureUnit::stitches, "sts"},
                                                      {FigureUnit::skeins, "skeins"},
                                                      {FigureUnit::repeats, "repeats"},
                                                      {FigureUnit::percent, "%"},
                                                      {FigureUnit::ratio, ""}});
};

// Where in the document the number can be seen or changed: the page's name and the id of the part there.
struct StepPlace {
  std::string page;
  std::uint32_t part = 0;
};

// One step of a working: what it is, how it follows from its parts, the figure, and on what ground it stands.
// The code that computes a figure writes its step, so that the explanation cannot drift from the figure.
struct Step {
  std::string label;  // "Knitted"
  std::string how;    // "sum of four pieces", "38 repeats × 3.017 m"
  double figure = 0;
  FigureUnit unit = FigureUnit::none;
  int decimals = 2;
  Ground ground = Ground::none;
  std::string source;  // citation, or "common practice, no source"
  StepPlace place;
  std::vector<Step> parts;
};

// "figure unit" in the C locale at the step's decimals: "1,125.57 m" without grouping, "1.4999 cm", "7
// skeins".
std::string show_figure(const Step& step);
// The whole working as indented plain text, one step a line.
std::string working_text(const Step& step);

}  // namespace skeinproof
