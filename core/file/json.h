// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>
#include <string>
#include <string_view>

#include "core/pattern/pattern.h"
#include "core/substitution/shelf_yarn.h"

namespace skeinproof {

// A whole pattern as one JSON text, and back without loss. The keys are the fields of the document in their
// own order behind "schema" and "version"; enumerations are words, ids whole numbers, lengths m, masses g,
// measurements cm as the names of the keys say.
//   - A value somebody typed is {"value": 191, "typed": "191yd"}; "typed" is left out where it is empty.
//   - A value that is not known is left out with its key, never null. In a list with one value a size it is
//   {},
//     so that the later ones keep their places.
// Text that is not UTF-8 is written with U+FFFD for each broken byte.
std::string to_json(const Pattern& pattern);
std::string to_json(const HouseStyle& style);
std::string to_json(std::span<const ShelfYarn> entries);  // {"schema": …, "yarns": […]}
// The same on one line, as fingerprints and recovery copies take it.
std::string to_compact_json(const Pattern& pattern);

// Reading is strict: an unknown key, a wrong word, a wrong kind of value or a breach of the document's rules
// is a failure that says where ("$.roles[2].shade.lightness", line and column), what was found and what was
// expected. A key left out leaves what a new part has there. Failures: wrong_format (no JSON, or JSON of
// something else), too_new, wrong_shape, unknown_name, out_of_range, broken_invariant. `file` goes into the
// place.
Expected<Pattern> pattern_from_json(std::string_view text, std::string_view file = {});
Expected<HouseStyle> house_style_from_json(std::string_view text, std::string_view file = {});

}  // namespace skeinproof
