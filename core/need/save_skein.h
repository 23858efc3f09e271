// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/need/changes.h"

namespace skeinproof {

// What a change asks of the design.
enum class SavingKind {
  piece_in_other_colour,    // all of a colour in a piece goes to another: every measurement stays
  section_in_other_colour,  // a part of a piece
  edge_in_other_colour,     // a line at the edge
  fewer_rounds,             // a measurement changes
};
template <>
struct EnumWords<SavingKind> {
  static constexpr auto rows =
      enum_rows<SavingKind>({{SavingKind::piece_in_other_colour, "piece in another colour"},
                             {SavingKind::section_in_other_colour, "section in another colour"},
                             {SavingKind::edge_in_other_colour, "edge in another colour"},
                             {SavingKind::fewer_rounds, "fewer rounds"}});
};

// What a size gains or loses in skeins, over all colours.
struct SizeSkeins {
  SizeId size;
  int more = 0;
};

struct SavedSkein {
  std::vector<Change> changes;                          // one, or two where no single one does it
  SavingKind kind = SavingKind::piece_in_other_colour;  // the heavier where there are two
  Metres moved;                                         // knitted length that leaves the colour
  Metres spare;                                         // what its skeins then hold above the planned length
  bool brimful = false;                                 // its last skein is then nearly all needed
  bool other_yarn = false;                              // a part goes to a colour in a different yarn
  WhatIf what_if;
  std::vector<SizeSkeins> other_sizes;  // those whose total changes, where the change is made in all sizes
  std::string words;                    // "Neckband in MC"
  std::string reason;
};

struct SaveSkein {
  RoleId role;
  std::string label;
  int skeins = 0;                // now
  Metres planned;                // now
  Metres step;                   // what one skein less holds
  std::vector<SavedSkein> ways;  // cheapest first; none where no way was found
};

// The changes of the design that take one colour in one size under its skein step without asking a skein more
// of any other. Cheapest = least yarn moved; a part of a piece in another colour weighs 1.2 times, an edge
// alone 1.5 and rounds left out, which change a measurement, twice as much; a different yarn doubles it (our
// own weights: common practice, no source). At most a third of the rounds of a section is left out; charts
// stay as they are. Fails at a part that the pattern has not (unknown_name), where the skeins of the colour
// are not known (wrong_shape) and where it takes one skein or none (out_of_range).
Expected<SaveSkein> save_skein(const Pattern& pattern, RoleId role, SizeId size, std::size_t at_most = 8,
                               const NumberStyle& style = {});

}  // namespace skeinproof
