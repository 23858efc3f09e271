// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>

#include "core/pattern/pattern.h"
#include "core/substitution/shelf_yarn.h"

namespace skeinproof {

// Whether the document keeps its own rules (check_invariants) and holds nothing that a file cannot give back:
// a number that is not finite, text that is not UTF-8. Failure: broken_invariant, with the field.
Expected<void> check_storable(const Pattern& pattern);
// The latter for entries of the yarn shelf.
Expected<void> check_storable(std::span<const ShelfYarn> entries);

}  // namespace skeinproof
