// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/pattern/edits.h"

#include <algorithm>
#include <type_traits>
#include <utility>

#include "core/base/for_each_per_size.h"

namespace skeinproof {
namespace {

// Sets every reference to `gone` inside a described value to "none", at any depth.
template <class PartId, class T>
void forget(T&, PartId) {}
template <class PartId>
void forget(PartId& reference, PartId gone) {
  if (reference == gone) reference = PartId{};
}
template <class PartId, class T>
void forget(std::vector<T>& parts, PartId gone);
template <class PartId, Described T>
void forget(T& value, PartId gone) {
  T::describe(value, [&](const char*, auto& field) { forget(field, gone); });
}
template <class PartId, class T>
void forget(std::vector<T>& parts, PartId gone) {
  for (T& part : parts) forget(part, gone);
}

template <class Part, class Matches>
void erase_where(std::vector<Part>& parts, Matches&& matches) {
  parts.erase(std::remove_if(parts.begin(), parts.end(), matches), parts.end());
}

template <class Part, class PartId>
void erase_part(std::vector<Part>& parts, PartId id) {
  erase_where(parts, [&](const Part& part) { return part.id == id; });
}

}  // namespace

SizeId insert_size(Pattern& pattern, std::size_t before, std::string label) {
  before = std::min(before, pattern.sizes.size());
  const auto id = take_id<SizeId>(pattern);
  const bool inside_group = before < pattern.sizes.size() && pattern.sizes[before].opens_group;
  pattern.sizes.insert(pattern.sizes.begin() + static_cast<std::ptrdiff_t>(before),
                       Size{id, std::move(label), inside_group});
  if (inside_group) pattern.sizes[before + 1].opens_group = false;
  for_each_per_size(pattern, [&](auto& list) { list.insert_size(before); });
  return id;
}

void erase_size(Pattern& pattern, std::size_t index) {
  if (pattern.sizes.size() < 2 || index >= pattern.sizes.size()) return;
  const Size gone = pattern.sizes[index];
  pattern.sizes.erase(pattern.sizes.begin() + static_cast<std::ptrdiff_t>(index));
  if (gone.opens_group && index < pattern.sizes.size()) pattern.sizes[index].opens_group = true;
  pattern.sizes.front().opens_group = false;
  for_each_per_size(pattern, [&](auto& list) { list.erase_size(index); });
  forget(pattern, gone.id);
  if (!pattern.chosen_size) pattern.chosen_size = pattern.sizes[std::min(index, pattern.sizes.size() - 1)].id;
}

void move_size(Pattern& pattern, std::size_t from, std::size_t to) {
  if (from >= pattern.sizes.size() || to >= pattern.sizes.size() || from == to) return;
  std::vector<bool> opens;
  for (const Size& size : pattern.sizes) opens.push_back(size.opens_group);
  move_part(pattern.sizes, from, to);
  for (std::size_t i = 0; i < opens.size(); ++i)
    pattern.sizes[i].opens_group = opens[i];  // brackets keep their place
  for_each_per_size(pattern, [&](auto& list) { list.move_size(from, to); });
}

YarnId add_yarn(Pattern& pattern, std::string name) {
  Yarn yarn;
  yarn.id = take_id<YarnId>(pattern);
  yarn.name = std::move(name);
  pattern.yarns.push_back(std::move(yarn));
  return pattern.yarns.back().id;
}

RoleId add_role(Pattern& pattern, std::string label) {
  Role role;
  role.id = take_id<RoleId>(pattern);
  role.label = std::move(label);
  if (!pattern.yarns.empty()) role.yarn = pattern.yarns.front().id;
  pattern.roles.push_back(std::move(role));
  return pattern.roles.back().id;
}

FabricId add_fabric(Pattern& pattern, std::string name) {
  Fabric fabric;
  fabric.id = take_id<FabricId>(pattern);
  fabric.name = std::move(name);
  pattern.fabrics.push_back(std::move(fabric));
  return pattern.fabrics.back().id;
}

ChartId add_chart(Pattern& pattern, std::string name, std::size_t width, std::size_t rounds) {
  Chart chart;
  chart.id = take_id<ChartId>(pattern);
  chart.name = std::move(name);
  constexpr std::string_view symbols = "MABCDEFGHIJKL";
  for (std::size_t i = 0; i < pattern.roles.size() && i < symbols.size(); ++i)
    chart.colours.push_back(ChartColour{std::string(1, symbols[i]), pattern.roles[i].id});
  if (chart.colours.empty()) chart.colours.push_back(ChartColour{"M", RoleId{}});
  chart.rounds = std::vector<std::string>(rounds, std::string(width, chart.colours.front().symbol.front()));
  pattern.charts.push_back(std::move(chart));
  return pattern.charts.back().id;
}

PieceId add_piece(Pattern& pattern, std::string name) {
  Piece piece;
  piece.id = take_id<PieceId>(pattern);
  piece.name = std::move(name);
  pattern.pieces.push_back(std::move(piece));
  return pattern.pieces.back().id;
}

WeighingId add_weighing(Pattern& pattern, SizeId size) {
  Weighing weighing;
  weighing.id = take_id<WeighingId>(pattern);
  weighing.size = size;
  for (const Role& role : pattern.roles) weighing.roles.push_back(WeighedRole{role.id, {}, {}, {}});
  pattern.weighings.push_back(std::move(weighing));
  return pattern.weighings.back().id;
}

DraftId add_draft(Pattern& pattern, std::string text) {
  Draft draft;
  draft.id = take_id<DraftId>(pattern);
  draft.name = "draft " + std::to_string(pattern.drafts->size() + 1);
  draft.text = std::move(text);
  const DraftId id = draft.id;
  pattern.drafts.edit([&](std::vector<Draft>& drafts) { drafts.push_back(std::move(draft)); });
  return id;
}

CandidateId add_candidate(Pattern& pattern, YarnId yarn) {
  Candidate candidate;
  candidate.id = take_id<CandidateId>(pattern);
  candidate.yarns.push_back(CandidateYarn{{}, yarn, 1, {}, 1});
  pattern.candidates.push_back(std::move(candidate));
  return pattern.candidates.back().id;
}

OnHandId add_on_hand(Pattern& pattern, YarnId yarn) {
  YarnOnHand on_hand;
  on_hand.id = take_id<OnHandId>(pattern);
  on_hand.yarn = yarn;
  pattern.on_hand.push_back(std::move(on_hand));
  return pattern.on_hand.back().id;
}

void erase_yarn(Pattern& pattern, YarnId id) {
  erase_part(pattern.yarns, id);
  for (Candidate& candidate : pattern.candidates)
    erase_where(candidate.yarns, [&](const CandidateYarn& row) { return row.yarn == id; });
  forget(pattern, id);
}

void erase_role(Pattern& pattern, RoleId id) {
  erase_part(pattern.roles, id);
  for (Weighing& weighing : pattern.weighings)
    erase_where(weighing.roles, [&](const WeighedRole& weighed) { return weighed.role == id; });
  // A row without a role would speak for all of them.
  for (Candidate& candidate : pattern.candidates)
    erase_where(candidate.yarns, [&](const CandidateYarn& row) { return row.role == id; });
  forget(pattern, id);
}

void erase_fabric(Pattern& pattern, FabricId id) {
  erase_part(pattern.fabrics, id);
  forget(pattern, id);
}

void erase_chart(Pattern& pattern, ChartId id) {
  erase_part(pattern.charts, id);
  forget(pattern, id);
}

void erase_piece(Pattern& pattern, PieceId id) {
  if (const Piece* piece = pattern.piece(id)) {
    const Piece gone = *piece;
    for (const Section& section : gone.sections) forget(pattern, section.id);
    for (const Edge& edge : gone.edges) forget(pattern, edge.id);
  }
  erase_part(pattern.pieces, id);
  for (Weighing& weighing : pattern.weighings)
    erase_where(weighing.only, [&](const WeighedCopies& copies) { return copies.piece == id; });
  erase_where(pattern.given_parts, [&](const GivenPart& part) { return part.piece == id; });
  forget(pattern, id);
}

void erase_section(Pattern& pattern, SectionId id) {
  for (Piece& piece : pattern.pieces) erase_part(piece.sections, id);
  // Without its section it would be the whole piece.
  erase_where(pattern.given_parts, [&](const GivenPart& part) { return part.section == id; });
  forget(pattern, id);
}

void erase_edge(Pattern& pattern, EdgeId id) {
  for (Piece& piece : pattern.pieces) erase_part(piece.edges, id);
  forget(pattern, id);
}

void erase_weighing(Pattern& pattern, WeighingId id) { erase_part(pattern.weighings, id); }

void erase_candidate(Pattern& pattern, CandidateId id) { erase_part(pattern.candidates, id); }

void erase_on_hand(Pattern& pattern, OnHandId id) { erase_part(pattern.on_hand, id); }

}  // namespace skeinproof
