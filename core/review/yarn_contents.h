// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/reference/tables.h"
#include "core/review/check.h"

namespace skeinproof {

// A fibre as a yarn's composition prints it.
struct FibreSaid {
  const Fibre* fibre = nullptr;          // null = no fibre the tables know
  std::string words;                     // lower case
  std::optional<double> percent;         // of mass
  double half_step = 0;                  // half of the last digit of the percent
  const Statement* statement = nullptr;  // null where the composition is of the facts
};

// One composition: what one breath says of one yarn.
using Composition = std::vector<FibreSaid>;
// Every composition that is printed for a yarn, in the order of the text.
std::vector<Composition> printed_compositions(const PrintedYarn& yarn);
// The first printed one; where none is printed, that of the facts in force. Empty = unknown.
Composition composition_of(const ReviewInput& input, const PrintedYarn& yarn);

// "Oddmere Fieldspun", or "the yarn" where it has no name.
std::string name_of(const PrintedYarn& yarn);
// What the text says of a yarn beside its composition and, in lower case, joined; then what the facts say.
std::string printed_description(const PrintedView& printed, const PrintedYarn& yarn);

// Fibre that felts, made shrink-resistant or not: by its id, its words, or the yarn's treatment.
bool is_shrink_resistant(const FibreSaid& fibre);
bool is_animal(const FibreSaid& fibre);
bool has_halo(const ReviewInput& input, const PrintedYarn& yarn);
// Percent of the fibres a test holds for; a composition without shares counts them as equal.
double share_of(const Composition& composition, bool (*holds)(const FibreSaid&));

}  // namespace skeinproof
