// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <string>

#include "core/pattern/pattern.h"

namespace skeinproof {

// Pieces and what they are made of: sections and edges, found and edited by id. The ids of a document are
// unique over all kinds of parts, so one number names any of them.

// A piece, or a section or an edge together with its piece; all null where the document has no such part.
struct PiecePlace {
  const Piece* piece = nullptr;
  const Section* section = nullptr;
  const Edge* edge = nullptr;
  explicit operator bool() const { return piece != nullptr; }
};
PiecePlace find_in_pieces(const Pattern& pattern, std::uint32_t part);

// Null where there is none.
Piece* find_piece(Pattern& pattern, PieceId id);
Section* find_section(Pattern& pattern, SectionId id);
Edge* find_edge(Pattern& pattern, EdgeId id);
Fabric* find_fabric(Pattern& pattern, FabricId id);
Chart* find_chart(Pattern& pattern, ChartId id);

// Added last in the piece. Fabric and role are those of the section before it, else the first of the pattern.
// The piece must exist.
SectionId add_section(Pattern& pattern, PieceId piece, std::string name);
EdgeId add_edge(Pattern& pattern, PieceId piece, std::string name);

// A piece, section or edge; each does nothing where there is no such part.
void erase_from_pieces(Pattern& pattern, std::uint32_t part);
void rename_in_pieces(Pattern& pattern, std::uint32_t part, std::string name);
// Stands right behind the original, under the same name; returns its id, 0 where there was no original.
std::uint32_t duplicate_in_pieces(Pattern& pattern, std::uint32_t part);
// One place up (-1) or down (+1). A section or an edge at the end of its list goes on to the neighbouring
// piece.
void move_in_pieces(Pattern& pattern, std::uint32_t part, int by);

FabricId duplicate_fabric(Pattern& pattern, FabricId id);
ChartId duplicate_chart(Pattern& pattern, ChartId id);

}  // namespace skeinproof
