// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "core/base/error.h"
#include "core/substitution/yarn_character.h"

namespace skeinproof {

// Strands of one or several yarns held together: what one stitch is knitted of.
struct Thread {
  std::vector<std::pair<const Yarn*, int>> strands;

  bool empty() const { return strands.empty(); }
  int count() const;
  std::string name() const;  // "Pillowgate Wisp held double", "A with B"
};

// Metres in a gram of all strands together; fails, naming the yarn, where a put-up lacks length or weight.
Expected<MetresPerGram> density_of(const Thread& thread);

// Fibres of all strands by the mass each brings; empty where a composition or a put-up is missing.
std::vector<FibreShare> composition_of(const Thread& thread);
FibreShares shares_of(const Thread& thread);

// Share of the thread's mass, percent, in strands for which a test holds. A strand without a put-up counts by
// its number.
double mass_share(const Thread& thread, bool (*holds)(const Yarn& yarn));

// Of all strands; strands of two classes are `unstated`.
AirClass air_class(const Thread& thread);

}  // namespace skeinproof
