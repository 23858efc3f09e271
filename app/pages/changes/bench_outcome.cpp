// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/bench_outcome.h"

#include <cmath>

#include "core/need/bench_changes.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

constexpr double hardly_m = 0.005;

const RoleChange* find_role(const WhatIf& what_if, RoleId role) {
  for (const RoleChange& change : what_if.roles)
    if (change.role == role) return &change;
  return nullptr;
}

void compare(ChangeOutcome& outcome, const WhatIf& before, const WhatIf& after) {
  for (const RoleChange& role : after.roles) {
    const RoleChange* was = find_role(before, role.role);
    const Metres more = role.knitted_more - (was != nullptr ? was->knitted_more : metres(0));
    if (std::abs(more.value()) >= hardly_m) outcome.moves.push_back({role.role, role.label, more});
  }
  if (before.total_skeins_after && after.total_skeins_after)
    outcome.more_skeins = *after.total_skeins_after - *before.total_skeins_after;
}

struct AsRow {
  const Pattern& pattern;
  BenchChange row{};

  static Entered<double> plain(double value) { return {value, {}}; }
  bool operator()(const LongerPiece& change) {
    row.kind = ChangeKind::longer_piece;
    row.piece = change.piece;
    row.section = change.section;
    row.by = Entered<Centimetres>{change.by, {}};
    row.where = change.where;
    return true;
  }
  bool operator()(const ExtraRounds& change) {
    row.kind = ChangeKind::extra_rounds;
    row.section = change.section;
    row.from = change.role;
    row.rounds = plain(change.rounds);
    if (change.chart_round) row.chart_round = plain(*change.chart_round);
    return true;
  }
  bool operator()(const OtherGauge& change) {
    row.kind = ChangeKind::other_gauge;
    row.fabric = change.fabric;
    row.stitches = plain(change.stitches * 10 / change.over.value());
    row.rows = plain(change.rows * 10 / change.over.value());
    row.counts = change.counts;
    return true;
  }
  bool operator()(const OtherSize& change) {
    row.kind = ChangeKind::other_size;
    row.size = change.size;
    return true;
  }
  bool operator()(const BetweenSizes& change) {
    row.kind = ChangeKind::between_sizes;
    row.size = change.from;
    row.other_size = change.to;
    row.share_pct = plain(100 * change.share);
    return true;
  }
  bool operator()(const PieceLeftOut& change) {
    row.kind = ChangeKind::piece_left_out;
    row.piece = change.piece;
    return true;
  }
  bool operator()(const PieceAgain& change) {
    row.kind = ChangeKind::piece_again;
    row.piece = change.piece;
    row.copies = change.copies;
    return true;
  }
  bool operator()(const PieceAdded&) { return false; }
  bool operator()(const GivenTo& change) {
    row.kind = ChangeKind::given_to;
    const PiecePlace place = find_in_pieces(pattern, change.part);
    if (!place) return false;
    if (place.edge != nullptr)
      row.edge = place.edge->id;
    else if (place.section != nullptr)
      row.section = place.section->id;
    else
      row.piece = place.piece->id;
    row.from = change.from;
    row.to = change.to;
    row.yarn = change.yarn;
    return true;
  }
};

}  // namespace

BenchOutcome work_out_bench(const Pattern& pattern, SizeId size) {
  BenchOutcome outcome{{}, {}, {}, apply(pattern, {}, size), pattern, size};
  for (const BenchChange& row : pattern.changes) {
    if (!row.made || !outcome.what_if) continue;
    ChangeOutcome one;
    one.id = row.id;
    if (const auto change = change_of(row)) {
      std::vector<Change> with = outcome.made;
      with.push_back(*change);
      if (auto what_if = apply(pattern, with, size)) {
        compare(one, *outcome.what_if, *what_if);
        outcome.made = std::move(with);
        outcome.taken.push_back(row.id);
        outcome.what_if = std::move(what_if);
      } else {
        one.problem = what_if.error();
      }
    } else {
      one.problem = change.error();
      one.lacks_a_field = change.error().kind == ErrorKind::wrong_shape;
    }
    outcome.changes.push_back(std::move(one));
  }
  if (outcome.made.empty()) return outcome;
  if (auto adopted = adopt(pattern, outcome.made, size, AdoptIn::this_size)) {
    outcome.changed = std::move(adopted->pattern);
    if (outcome.changed.chosen_size != pattern.chosen_size)
      outcome.changed_size = outcome.changed.chosen_size;
  }
  return outcome;
}

AdoptPreview preview_adopted(const Pattern& pattern, const std::vector<Change>& changes, SizeId size,
                             AdoptIn in) {
  AdoptPreview preview{in, adopt(pattern, changes, size, in), {}};
  if (!preview.adopted) return preview;
  const Pattern& after = preview.adopted->pattern;
  const Assessment then = assess(after), now = assess(pattern);
  const auto skeins = [](const Pattern& of, const Assessment& assessment, SizeId id, RoleId role) {
    const auto at = of.size_index(id);
    for (const RoleNeed& need : assessment.roles)
      if (at && need.role == role && need.sizes[*at].known) return need.sizes[*at].skeins;
    return std::optional<int>();
  };
  for (const Size& one : after.sizes)
    for (const Role& role : after.roles) {
      SkeinMove move{one.label, role.label, skeins(pattern, now, one.id, role.id),
                     skeins(after, then, one.id, role.id)};
      if (move.before != move.after) preview.moves.push_back(std::move(move));
    }
  return preview;
}

std::vector<BenchChange> bench_rows(const Pattern& pattern, const std::vector<Change>& changes) {
  std::vector<BenchChange> rows;
  for (const Change& change : changes) {
    AsRow as{pattern};
    if (std::visit(as, change)) rows.push_back(std::move(as.row));
  }
  return rows;
}

}  // namespace skeinproof
