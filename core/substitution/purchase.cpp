// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/purchase.h"

#include <algorithm>
#include <cmath>

#include "core/need/changes.h"

namespace skeinproof {
namespace {

const CandidateRole* role_of(const CandidateFacts& facts, RoleId id) {
  const auto found = std::find_if(facts.roles.begin(), facts.roles.end(),
                                  [&](const CandidateRole& role) { return role.role == id; });
  return found == facts.roles.end() ? nullptr : &*found;
}

// Of the pattern's own strands a longer piece takes so much; in other strands as many times.
double strand_factor(const Pattern& pattern, const CandidateRole& role, const YarnToBuy& buy) {
  const Role* own = pattern.role(role.role);
  return own == nullptr || own->strands < 1 ? 1 : static_cast<double>(buy.strands) / own->strands;
}

bool covers(const Pattern& pattern, const CandidateFacts& facts, const WhatIf& what_if) {
  return std::all_of(what_if.roles.begin(), what_if.roles.end(), [&](const RoleChange& change) {
    const CandidateRole* role = role_of(facts, change.role);
    return role == nullptr || !(change.planned_more > metres(0)) ||
           std::all_of(role->buys.begin(), role->buys.end(), [&](const YarnToBuy& buy) {
             return buy.spare && change.planned_more * strand_factor(pattern, *role, buy) <= *buy.spare;
           });
  });
}

// The piece a role takes most of its yarn for.
PieceId main_piece(const Pattern& pattern, const Assessment& assessment, RoleId role, SizeId size) {
  PieceId best;
  Metres most;
  const auto index = pattern.size_index(size);
  for (const RoleNeed& need : assessment.roles) {
    if (need.role != role || !index) continue;
    for (const Piece& piece : pattern.pieces) {
      Metres sum;
      for (const PartMetres& part : need.sizes[*index].parts)
        if (part.piece == piece.id) sum += part.total();
      if (sum > most) most = sum, best = piece.id;
    }
  }
  return best;
}

std::optional<SpareAllows> allows(const Pattern& pattern, const CandidateFacts& facts,
                                  const CandidateRole& role, PieceId piece, SizeId size,
                                  const NumberStyle& style) {
  for (double longer_cm : {5.0, 2.0}) {
    const auto what_if =
        apply(pattern, {LongerPiece{piece, centimetres(longer_cm), LongerWhere::full_width, {}}}, size);
    if (!what_if) return std::nullopt;
    const auto change = std::find_if(what_if->roles.begin(), what_if->roles.end(),
                                     [&](const RoleChange& one) { return one.role == role.role; });
    if (change == what_if->roles.end() || !(change->knitted_more > metres(0))) return std::nullopt;
    if (!covers(pattern, facts, *what_if)) continue;
    SpareAllows found;
    found.role = role.role;
    found.piece = piece;
    found.longer = centimetres(longer_cm);
    found.takes = change->knitted_more * strand_factor(pattern, role, role.buys.front());
    found.words = pattern.piece(piece)->name + " " + show_short(longer_cm, 1, style) + " cm longer (" +
                  show_number(found.takes.value(), 0, style) + " m)";
    return found;
  }
  return std::nullopt;
}

}  // namespace

std::vector<SpareSkein> spare_skeins(const Pattern& pattern, const CandidateFacts& facts, SizeId size) {
  std::vector<SpareSkein> spares;
  const std::vector<RoleId> lengthened = lengthened_roles(pattern, size);
  for (const CandidateRole& role : facts.roles)
    for (const YarnToBuy& buy : role.buys) {
      const Yarn* yarn = pattern.yarn(buy.yarn);
      if (yarn == nullptr || !buy.skeins || *buy.skeins == 0) continue;
      const bool longer = std::find(lengthened.begin(), lengthened.end(), role.role) != lengthened.end();
      SpareSkein spare{role.role, buy.yarn, {}, {}, {}, {}};
      spare.reasons =
          reasons_for_spare(pattern, *yarn, *buy.skeins, buy.last_skein_share.value_or(0), longer);
      if (spare.reasons.empty()) continue;
      const auto shortest = std::min_element(buy.put_ups.begin(), buy.put_ups.end(),
                                             [](const PutUpBought& a, const PutUpBought& b) {
                                               return a.put_up.length->value < b.put_up.length->value;
                                             });
      if (shortest == buy.put_ups.end()) continue;
      spare.put_up = shortest->put_up;
      if (shortest->price) {
        spare.cost = shortest->price->amount.value;
        spare.currency = shortest->price->currency;
      }
      spares.push_back(std::move(spare));
    }
  return spares;
}

std::vector<SpareAllows> spare_allows(const Pattern& pattern, const CandidateFacts& facts, SizeId size,
                                      const NumberStyle& style) {
  std::vector<SpareAllows> all;
  const Assessment assessment = assess(pattern);
  for (const CandidateRole& role : facts.roles) {
    if (!role.skeins || *role.skeins < 2 || role.buys.empty()) continue;
    const PieceId piece = main_piece(pattern, assessment, role.role, size);
    if (!piece) continue;
    if (auto found = allows(pattern, facts, role, piece, size, style)) all.push_back(std::move(*found));
  }
  return all;
}

std::optional<LooserHand> looser_hand(const Pattern& pattern, const CandidateFacts& facts, SizeId size) {
  const auto cloth = std::find_if(pattern.fabrics.begin(), pattern.fabrics.end(), [](const Fabric& fabric) {
    return fabric.structure == Structure::plain && fabric.gauge.stitches && fabric.gauge.rows;
  });
  if (cloth == pattern.fabrics.end()) return std::nullopt;
  const double over = cloth->gauge.over.value.value(), had = cloth->gauge.stitches->value;
  const double stitches = had - 0.05 * over;
  if (!(over > 0) || !(stitches > 0)) return std::nullopt;
  const double rows = round_half_up(cloth->gauge.rows->value * stitches / had, 0.1);
  const auto what_if =
      apply(pattern, {OtherGauge{cloth->id, stitches, rows, cloth->gauge.over.value, CountsAre::kept}}, size);
  if (!what_if) return std::nullopt;
  LooserHand looser{cloth->id, stitches, rows, {}, {}};
  for (const RoleChange& change : what_if->roles) {
    const CandidateRole* role = role_of(facts, change.role);
    if (role == nullptr || role->buys.empty()) continue;
    const Metres more = change.planned_more * strand_factor(pattern, *role, role->buys.front());
    if (more > looser.more) looser.more = more, looser.role = change.role;
  }
  return looser.role ? std::optional(looser) : std::nullopt;
}

}  // namespace skeinproof
