// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <string>

#include "core/pattern/pattern.h"

namespace skeinproof {

// Edits on a document by which lists and references follow. Simple fields are set on the value itself.

// A fresh id of any part.
template <class AnyId>
AnyId take_id(Pattern& pattern) {
  return AnyId{++pattern.last_id};
}

// Sizes: every per-size list of the document follows. `before` may equal the number of sizes.
SizeId insert_size(Pattern& pattern, std::size_t before, std::string label);
void erase_size(Pattern& pattern, std::size_t index);  // the last size stays
void move_size(Pattern& pattern, std::size_t from, std::size_t to);

// Parts that others refer to: references to what is erased become "none"; sections and edges of an erased
// role stay and say that they have no role.
YarnId add_yarn(Pattern& pattern, std::string name);
RoleId add_role(Pattern& pattern, std::string label);
FabricId add_fabric(Pattern& pattern, std::string name);
ChartId add_chart(Pattern& pattern, std::string name, std::size_t width, std::size_t rounds);
PieceId add_piece(Pattern& pattern, std::string name);
WeighingId add_weighing(Pattern& pattern, SizeId size);
DraftId add_draft(Pattern& pattern, std::string text);  // the draft at hand from now on
CandidateId add_candidate(Pattern& pattern, YarnId yarn);
OnHandId add_on_hand(Pattern& pattern, YarnId yarn);
void erase_yarn(Pattern& pattern, YarnId id);
void erase_role(Pattern& pattern, RoleId id);
void erase_fabric(Pattern& pattern, FabricId id);
void erase_chart(Pattern& pattern, ChartId id);
void erase_piece(Pattern& pattern, PieceId id);
void erase_section(Pattern& pattern, SectionId id);
void erase_edge(Pattern& pattern, EdgeId id);
void erase_weighing(Pattern& pattern, WeighingId id);
void erase_candidate(Pattern& pattern, CandidateId id);
void erase_on_hand(Pattern& pattern, OnHandId id);

// Moves an element of any of the document's lists.
template <class Part>
void move_part(std::vector<Part>& parts, std::size_t from, std::size_t to) {
  if (from >= parts.size() || to >= parts.size() || from == to) return;
  Part moved = std::move(parts[from]);
  parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(from));
  parts.insert(parts.begin() + static_cast<std::ptrdiff_t>(to), std::move(moved));
}

}  // namespace skeinproof
