// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/pattern/piece_edits.h"

#include <algorithm>
#include <cassert>
#include <utility>

#include "core/pattern/edits.h"

namespace skeinproof {
namespace {

template <class Part>
std::size_t place_of(const std::vector<Part>& parts, std::uint32_t id) {
  const auto found =
      std::find_if(parts.begin(), parts.end(), [&](const Part& part) { return part.id.value == id; });
  return static_cast<std::size_t>(found - parts.begin());
}

template <class Part>
Part* find_by_id(std::vector<Part>& parts, std::uint32_t id) {
  const std::size_t at = place_of(parts, id);
  return at < parts.size() ? &parts[at] : nullptr;
}

template <class Part>
Part& insert_behind(std::vector<Part>& parts, std::size_t at, Part copy) {
  return *parts.insert(parts.begin() + static_cast<std::ptrdiff_t>(at) + 1, std::move(copy));
}

// Returns the id of the copy, 0 where the list has no such part.
template <class Part>
std::uint32_t duplicate(Pattern& pattern, std::vector<Part>& parts, std::uint32_t id) {
  const std::size_t at = place_of(parts, id);
  if (at == parts.size()) return 0;
  Part copy = parts[at];
  copy.id = take_id<decltype(copy.id)>(pattern);
  return insert_behind(parts, at, std::move(copy)).id.value;
}

// `list` is the list of sections or of edges of a piece.
template <class Part>
bool move_one(Pattern& pattern, std::size_t piece, std::vector<Part> Piece::*list, std::uint32_t id, int by) {
  std::vector<Part>& parts = pattern.pieces[piece].*list;
  const std::size_t at = place_of(parts, id);
  if (at == parts.size()) return false;
  const bool leaves = by < 0 ? at == 0 : at + 1 == parts.size();
  if (!leaves) {
    move_part(parts, at, by < 0 ? at - 1 : at + 1);
    return true;
  }
  if (by < 0 ? piece == 0 : piece + 1 == pattern.pieces.size()) return true;
  std::vector<Part>& neighbour = pattern.pieces[by < 0 ? piece - 1 : piece + 1].*list;
  neighbour.insert(by < 0 ? neighbour.end() : neighbour.begin(), std::move(parts[at]));
  parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(at));
  return true;
}

RoleId usual_role(const Pattern& pattern, const Piece& piece) {
  if (!piece.sections.empty() && piece.sections.back().role) return piece.sections.back().role;
  return pattern.roles.empty() ? RoleId{} : pattern.roles.front().id;
}

FabricId usual_fabric(const Pattern& pattern, const Piece& piece) {
  if (!piece.sections.empty() && piece.sections.back().fabric) return piece.sections.back().fabric;
  return pattern.fabrics.empty() ? FabricId{} : pattern.fabrics.front().id;
}

}  // namespace

PiecePlace find_in_pieces(const Pattern& pattern, std::uint32_t part) {
  for (const Piece& piece : pattern.pieces) {
    if (piece.id.value == part) return {&piece, nullptr, nullptr};
    for (const Section& section : piece.sections)
      if (section.id.value == part) return {&piece, &section, nullptr};
    for (const Edge& edge : piece.edges)
      if (edge.id.value == part) return {&piece, nullptr, &edge};
  }
  return {};
}

Piece* find_piece(Pattern& pattern, PieceId id) { return find_by_id(pattern.pieces, id.value); }
Fabric* find_fabric(Pattern& pattern, FabricId id) { return find_by_id(pattern.fabrics, id.value); }
Chart* find_chart(Pattern& pattern, ChartId id) { return find_by_id(pattern.charts, id.value); }

Section* find_section(Pattern& pattern, SectionId id) {
  for (Piece& piece : pattern.pieces)
    if (Section* section = find_by_id(piece.sections, id.value)) return section;
  return nullptr;
}

Edge* find_edge(Pattern& pattern, EdgeId id) {
  for (Piece& piece : pattern.pieces)
    if (Edge* edge = find_by_id(piece.edges, id.value)) return edge;
  return nullptr;
}

SectionId add_section(Pattern& pattern, PieceId id, std::string name) {
  Piece* piece = find_piece(pattern, id);
  assert(piece != nullptr);
  Section section;
  section.id = take_id<SectionId>(pattern);
  section.name = std::move(name);
  section.fabric = usual_fabric(pattern, *piece);
  section.role = usual_role(pattern, *piece);
  piece->sections.push_back(std::move(section));
  return piece->sections.back().id;
}

EdgeId add_edge(Pattern& pattern, PieceId id, std::string name) {
  Piece* piece = find_piece(pattern, id);
  assert(piece != nullptr);
  Edge edge;
  edge.id = take_id<EdgeId>(pattern);
  edge.name = std::move(name);
  edge.fabric = usual_fabric(pattern, *piece);
  edge.role = usual_role(pattern, *piece);
  piece->edges.push_back(std::move(edge));
  return piece->edges.back().id;
}

void erase_from_pieces(Pattern& pattern, std::uint32_t part) {
  if (pattern.piece(PieceId{part}) != nullptr) return erase_piece(pattern, PieceId{part});
  if (find_section(pattern, SectionId{part}) != nullptr) return erase_section(pattern, SectionId{part});
  erase_edge(pattern, EdgeId{part});
}

void rename_in_pieces(Pattern& pattern, std::uint32_t part, std::string name) {
  if (Piece* piece = find_piece(pattern, PieceId{part}))
    piece->name = std::move(name);
  else if (Section* section = find_section(pattern, SectionId{part}))
    section->name = std::move(name);
  else if (Edge* edge = find_edge(pattern, EdgeId{part}))
    edge->name = std::move(name);
}

std::uint32_t duplicate_in_pieces(Pattern& pattern, std::uint32_t part) {
  if (const std::uint32_t copy = duplicate(pattern, pattern.pieces, part)) {
    Piece& piece = *find_piece(pattern, PieceId{copy});
    for (Section& section : piece.sections) section.id = take_id<SectionId>(pattern);
    for (Edge& edge : piece.edges) edge.id = take_id<EdgeId>(pattern);
    return copy;
  }
  for (Piece& piece : pattern.pieces) {
    if (const std::uint32_t copy = duplicate(pattern, piece.sections, part)) return copy;
    if (const std::uint32_t copy = duplicate(pattern, piece.edges, part)) return copy;
  }
  return 0;
}

void move_in_pieces(Pattern& pattern, std::uint32_t part, int by) {
  const std::size_t at = place_of(pattern.pieces, part);
  if (at < pattern.pieces.size()) {
    if (by < 0 ? at > 0 : at + 1 < pattern.pieces.size())
      move_part(pattern.pieces, at, by < 0 ? at - 1 : at + 1);
    return;
  }
  for (std::size_t piece = 0; piece < pattern.pieces.size(); ++piece)
    if (move_one(pattern, piece, &Piece::sections, part, by) ||
        move_one(pattern, piece, &Piece::edges, part, by))
      return;
}

FabricId duplicate_fabric(Pattern& pattern, FabricId id) {
  return FabricId{duplicate(pattern, pattern.fabrics, id.value)};
}
ChartId duplicate_chart(Pattern& pattern, ChartId id) {
  return ChartId{duplicate(pattern, pattern.charts, id.value)};
}

}  // namespace skeinproof
