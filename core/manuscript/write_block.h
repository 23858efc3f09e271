// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/base/enum_words.h"
#include "core/need/assessment.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// What a run of characters in a yarn block says.
enum class BlockPart {
  plain,
  sizes,
  yarn_name,
  composition,
  put_up,
  description,
  role,
  shade,
  counts,
  length_note,
  metres,
  total,
  gauge,
  needles,
  notions,
};
template <>
struct EnumWords<BlockPart> {
  static constexpr auto rows = enum_rows<BlockPart>({{BlockPart::plain, "plain"},
                                                     {BlockPart::sizes, "sizes"},
                                                     {BlockPart::yarn_name, "yarn-name"},
                                                     {BlockPart::composition, "composition"},
                                                     {BlockPart::put_up, "put-up"},
                                                     {BlockPart::description, "description"},
                                                     {BlockPart::role, "role"},
                                                     {BlockPart::shade, "shade"},
                                                     {BlockPart::counts, "counts"},
                                                     {BlockPart::length_note, "length-note"},
                                                     {BlockPart::metres, "metres"},
                                                     {BlockPart::total, "total"},
                                                     {BlockPart::gauge, "gauge"},
                                                     {BlockPart::needles, "needles"},
                                                     {BlockPart::notions, "notions"}});
};

// A run of characters of one line. `counts`, `metres` and `total` hold the bare list, without its unit where
// the house writes the unit once. `yarn` and `role` are 0 where the run belongs to none.
struct BlockRun {
  BlockPart part = BlockPart::plain;
  std::string text;
  YarnId yarn;
  RoleId role;
};
using BlockLine = std::vector<BlockRun>;

// A fact the block would print and the document does not hold.
struct MissingFact {
  std::string what;  // "shade of MC", "skeins of CC3 in sizes 4, 5: no piece uses it"
  StepPlace place;
};

struct BlockText {
  std::vector<BlockLine> lines;
  std::vector<MissingFact> missing;

  // The lines, each ended by a line feed but the last.
  std::string text() const;
};

// The yarn block of a pattern in a house style. Nothing is invented: an unknown figure prints as "–" and is
// listed as missing. `assessment` is the one of this pattern; its length notes, allowance and rounding are
// those of the pattern's own house style in force.
BlockText write_block(const Pattern& pattern, const Assessment& assessment, const HouseStyle& house);

}  // namespace skeinproof
