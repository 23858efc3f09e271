// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/review/role_figures.h"

namespace skeinproof {

// One colour of a sample on a scale: printed, or weighed by ourselves.
struct OnScale {
  const RoleFigures* role = nullptr;
  const Statement* statement = nullptr;  // null where it was not printed
  const Weighing* weighing = nullptr;
  std::size_t size = 0;  // printed size
  double grams = 0;      // notions off
  bool whole_item = true;
};
// Every colour of every sample; what is printed speaks before what was weighed. Testers are left out.
std::vector<OnScale> samples_of(const ReviewInput& input, const std::vector<RoleFigures>& roles);
void show_sample(Finding& finding, const ReviewInput& input, const OnScale& sample);

// The printed size that a statement of the sample's size names.
std::optional<std::size_t> size_of_sample(const PrintedView& printed, const Statement* of_size);
std::optional<std::size_t> printed_size(const RoleFigures& role, std::size_t in_force);
std::string weighing_name(const Pattern& pattern, const Weighing& weighing);
void nothing_weighed(Findings& findings);

// What was on the scale over what the whole item takes by its stitches; 0 where either is not known.
double over_whole_item(const OnScale& sample);
bool one_of_a_pair(const ReviewInput& input, double ratio);

}  // namespace skeinproof
