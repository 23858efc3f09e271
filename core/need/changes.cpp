// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/changes.h"

#include <algorithm>
#include <cmath>

#include "core/need/changed_copy.h"
#include "core/need/layer.h"
#include "core/need/role_need.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

// What was weighed was the garment before the change, so the changed copy stands on the calibration of the
// pattern.
std::optional<RoleCalibration> calibration_before(const RoleBasis& basis, const Pattern& before,
                                                  const Pattern& after) {
  std::optional<RoleCalibration> kept = basis.calibration;
  if (!kept) return kept;
  for (SampleLength& sample : kept->samples)
    if (const auto moved = after.size_index(before.sizes[sample.size_index].id)) sample.size_index = *moved;
  return kept;
}

void compare(RoleChange& change, const Pattern& after) {
  if (!change.after.known) return;
  const bool was = change.before.known;
  change.knitted_more = change.after.knitted - (was ? change.before.knitted : metres(0));
  change.planned_more = change.after.planned - (was ? change.before.planned : metres(0));
  if (!change.after.skeins || (was && !change.before.skeins)) return;
  change.skeins_more = *change.after.skeins - (was ? *change.before.skeins : 0);
  change.crosses_step = change.skeins_more != 0;
  const auto skein = skein_length(after, change.role);
  if (change.skeins_more > 0 && skein)
    change.beyond_step = change.after.planned - static_cast<double>(*change.after.skeins - 1) * *skein;
}

// A role that nothing is knitted in any more needs nothing, where before it was known.
SizeNeed nothing_left(const SizeNeed& before) {
  SizeNeed none;
  none.known = true;
  none.evidence = before.evidence;
  if (before.skeins) none.skeins = 0;
  if (before.fraction) none.fraction = 0;
  return none;
}

std::optional<int> total(const std::vector<RoleChange>& roles, const SizeNeed RoleChange::*side) {
  int sum = 0;
  for (const RoleChange& role : roles) {
    const SizeNeed& need = role.*side;
    if (need.known && !need.skeins) return std::nullopt;
    if (!need.known && !need.missing.empty()) return std::nullopt;
    sum += need.skeins.value_or(0);
  }
  return sum;
}

std::string part_name(const Pattern& pattern, std::uint32_t part) {
  const PiecePlace place = find_in_pieces(pattern, part);
  if (!place) return "a part that is not there";
  const std::string& own = place.section != nullptr ? place.section->name
                           : place.edge != nullptr  ? place.edge->name
                                                    : "";
  return own.empty() || own == place.piece->name ? place.piece->name : place.piece->name + ", " + own;
}

struct Words {
  const Pattern& pattern;
  const NumberStyle& style;

  std::string role(RoleId id) const {
    const Role* found = pattern.role(id);
    return found != nullptr ? found->label : "no colour";
  }
  std::string size(SizeId id) const {
    const auto index = pattern.size_index(id);
    return index ? pattern.sizes[*index].label : "?";
  }
  std::string operator()(const LongerPiece& c) const {
    std::string words = part_name(pattern, c.section ? c.section.value : c.piece.value) + " " +
                        show_short(std::abs(c.by.value()), 1, style) + " cm " +
                        (c.by.value() < 0 ? "shorter" : "longer");
    return c.where == LongerWhere::full_width ? words + ", at full width" : words;
  }
  std::string operator()(const ExtraRounds& c) const {
    const std::string count = std::to_string(std::abs(c.rounds));
    const std::string where = part_name(pattern, c.section.value);
    if (c.chart_round && c.rounds > 0)
      return where + ": round " + std::to_string(*c.chart_round) +
             (c.rounds == 1 ? " once more" : " " + count + " times more");
    return where + ": " + count + (std::abs(c.rounds) == 1 ? " round " : " rounds ") +
           (c.rounds < 0 ? "fewer" : "more") + (c.role && !c.chart_round ? " in " + role(c.role) : "");
  }
  std::string operator()(const OtherGauge& c) const {
    return "Gauge " + show_short(c.stitches, 2, style) + " × " + show_short(c.rows, 2, style) + " in " +
           show_short(c.over.value(), 2, style) + " cm, " +
           std::string(c.counts == CountsAre::not_said ? "counts not said" : word_of(c.counts));
  }
  std::string operator()(const OtherSize& c) const { return "Size " + size(c.size); }
  std::string operator()(const BetweenSizes& c) const {
    return "Between sizes " + size(c.from) + " and " + size(c.to) + ", " +
           show_number(c.share * 100, 0, style) + " % of the way";
  }
  std::string operator()(const PieceLeftOut& c) const {
    return part_name(pattern, c.piece.value) + " left out";
  }
  std::string operator()(const PieceAgain& c) const {
    return part_name(pattern, c.piece.value) +
           (c.copies == 1 ? " once more" : " " + std::to_string(c.copies) + " times more");
  }
  std::string operator()(const PieceAdded& c) const { return c.piece.name + " added"; }
  std::string operator()(const GivenTo& c) const {
    const Yarn* yarn = pattern.yarn(c.yarn);
    const std::string to = yarn != nullptr ? yarn->name : role(c.to);
    return part_name(pattern, c.part) + (c.from ? ": " + to + " for " + role(c.from) : " in " + to);
  }
};

}  // namespace

Expected<WhatIf> apply(const Pattern& pattern, const std::vector<Change>& changes, SizeId size) {
  const auto copy = changed_copy(pattern, changes, size);
  if (!copy) return tl::unexpected<Error>(copy.error());
  const Pattern& changed = copy->pattern();
  const NeedContext before(pattern), after(changed);
  const std::size_t here = *pattern.size_index(size);
  WhatIf result;
  result.size = changed.sizes[copy->size_index()].label;
  result.notes = copy->notes();
  for (const Role& role : changed.roles) {
    RoleChange change;
    change.role = role.id;
    change.label = role.label;
    RoleBasis basis = role_basis(after, role);
    if (const Role* old = pattern.role(role.id)) {
      const RoleBasis old_basis = role_basis(before, *old);
      change.before = role_need(before, old_basis, here);
      basis.calibration = calibration_before(old_basis, pattern, changed);
    }
    const bool empty = after.parts_of(role.id).empty() && !role.goes_along_with;
    const bool was_knitted = change.before.known && !change.before.parts.empty();
    change.after =
        empty && was_knitted ? nothing_left(change.before) : role_need(after, basis, copy->size_index());
    compare(change, changed);
    result.roles.push_back(std::move(change));
  }
  result.total_skeins_before = total(result.roles, &RoleChange::before);
  result.total_skeins_after = total(result.roles, &RoleChange::after);
  return result;
}

Expected<Adopted> adopt(const Pattern& pattern, const std::vector<Change>& changes, SizeId size, AdoptIn in) {
  auto copy = changed_copy(pattern, changes, size, in == AdoptIn::all_sizes, true);
  if (!copy) return tl::unexpected<Error>(copy.error());
  for (Weighing& weighing : copy->pattern().weighings) {
    if (!weighing.used || !copy->outdates(weighing.size)) continue;
    weighing.used = false;
    copy->note((weighing.name.empty() ? "A weighed sample" : "“" + weighing.name + "”") +
               " was weighed before this change and is set aside");
  }
  const SizeId came_out = copy->pattern().sizes[copy->size_index()].id;
  if (came_out != size) copy->pattern().chosen_size = came_out;
  return Adopted{copy->pattern(), copy->notes()};
}

std::string change_words(const Pattern& pattern, const Change& change, const NumberStyle& style) {
  return std::visit(Words{pattern, style}, change);
}

}  // namespace skeinproof
