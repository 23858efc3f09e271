// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/working.h"

#include "core/units/show.h"

namespace skeinproof {
namespace {

void append_step(std::string& text, const Step& step, int depth) {
  text += std::string(static_cast<std::size_t>(depth) * 2, ' ') + step.label;
  if (!step.how.empty()) text += ": " + step.how;
  if (step.unit != FigureUnit::none) text += " = " + show_figure(step);
  if (step.ground != Ground::none) text += " (" + std::string(word_of(step.ground)) + ")";
  if (!step.source.empty()) text += " [" + step.source + "]";
  text += "\n";
  for (const Step& part : step.parts) append_step(text, part, depth + 1);
}

}  // namespace

std::string show_figure(const Step& step) {
  std::string text = show_number(step.figure, step.decimals);
  if (const std::string_view unit = word_of(step.unit); !unit.empty()) text += " " + std::string(unit);
  return text;
}

std::string working_text(const Step& step) {
  std::string text;
  append_step(text, step, 0);
  return text;
}

}  // namespace skeinproof
