// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <rapidcheck.h>

#include <cstdint>
#include <iosfwd>

#include "core/pattern/pattern.h"

namespace skeinproof {

// Whole documents with every field filled in or left out by chance, that keep the rules of check_invariants.
// Figures are finite and at least 0, with all the decimals a double has; texts hold quotation marks,
// fractions, line breaks and letters of several scripts. Up to 5 sizes, 4 yarns and roles, 3 fabrics, charts
// and pieces.
rc::Gen<Pattern> generate_pattern();

// The same document for the same seed, for tests that want one and no search.
Pattern generated_pattern(std::uint64_t seed);

// How a failing document is shown: as its JSON.
void showValue(const Pattern& pattern, std::ostream& out);

}  // namespace skeinproof

namespace rc {
template <>
struct Arbitrary<skeinproof::Pattern> {
  static Gen<skeinproof::Pattern> arbitrary() { return skeinproof::generate_pattern(); }
};
}  // namespace rc
