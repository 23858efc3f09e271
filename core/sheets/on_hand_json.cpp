// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/on_hand_json.h"

#include <nlohmann/json.hpp>

#include "core/substitution/could_become.h"
#include "core/substitution/given_part.h"
#include "core/substitution/lot_plan.h"
#include "core/substitution/on_hand_verdict.h"

namespace skeinproof {
namespace {

using Json = nlohmann::ordered_json;

std::string size_label(const Pattern& pattern, SizeId size) {
  const auto index = pattern.size_index(size);
  return index ? pattern.sizes[*index].label : "";
}

std::string role_label(const Pattern& pattern, RoleId id) {
  const Role* role = pattern.role(id);
  return role != nullptr ? role->label : "";
}

const char* ground_key(LengthGround ground) {
  switch (ground) {
    case LengthGround::printed_counts:
      return "printed_counts";
    case LengthGround::stitches:
      return "stitches";
    case LengthGround::weighed_sample:
      return "sample";
  }
  return "";
}

Json errors_json(const std::vector<Error>& errors) {
  Json all = Json::array();
  for (const Error& error : errors) all.push_back({{"found", error.found}, {"expected", error.expected}});
  return all;
}

Json ground_json(const GroundVerdict& one) {
  Json json{{"ground", ground_key(one.evidence.ground)}, {"verdict", word_of(one.verdict)}};
  json["low_m"] = one.evidence.low.value();
  json["high_m"] = one.evidence.high.value();
  if (one.evidence.ground != LengthGround::printed_counts) {
    json["knitted_m"] = one.evidence.knitted.value();
    json["planned_m"] = one.evidence.planned.value();
  }
  json["words"] = one.words;
  return json;
}

Json role_json(const Pattern& pattern, const RoleOnHand& role) {
  Json json{{"label", role.label}, {"yarns", role.names}};
  if (role.verdict) json["verdict"] = word_of(*role.verdict);
  if (!role.yarns.empty()) {
    json["have_m"] = role.have.value();
    json["low_m"] = role.low.value();
    json["high_m"] = role.high.value();
    json["usable_m"] = role.usable.value();
    json["pieces"] = role.pieces;
  }
  json["size"] = size_label(pattern, role.size);
  if (role.over) json["over_m"] = role.over->value();
  if (role.short_of) json["short_m"] = role.short_of->value();
  if (role.verdict) {
    json["ground"] = ground_key(role.ground);
    json["words"] = role.words;
    json["because"] = role.because;
  }
  if (!role.settled_by.empty()) json["settled_by"] = role.settled_by;
  if (role.chance) json["chance_sufficient"] = *role.chance;
  json["grounds"] = Json::array();
  for (const GroundVerdict& one : role.grounds) json["grounds"].push_back(ground_json(one));
  if (!role.notes.empty()) json["notes"] = role.notes;
  if (!role.left_out.empty()) json["left_out"] = errors_json(role.left_out);
  if (!role.missing.empty()) json["missing"] = role.missing;
  return json;
}

Json plan_json(const Pattern& pattern, const CouldBecome& become, const SharingPlan& plan) {
  Json json{{"size", size_label(pattern, plan.size)}, {"words", plan.words}};
  json["shares"] = Json::array();
  for (const SharedOut& share : plan.shares) {
    Json one{{"what", share.what}, {"role", role_label(pattern, share.role)}};
    if (!share.parts.empty()) {
      one["parts"] = Json::array();
      for (const GivenPart& part : share.parts) one["parts"].push_back(part_name(pattern, part));
    }
    one["yarns"] = Json::array();
    for (std::size_t s : share.supplies) one["yarns"].push_back(become.supplies[s].name);
    one["needed_m"] = share.needed.value();
    one["had_m"] = share.had.value();
    one["spare_m"] = share.spare.value();
    one["brimful"] = share.brimful;
    json["shares"].push_back(std::move(one));
  }
  json["warnings"] = plan.warnings;
  return json;
}

Json rung_json(const Pattern& pattern, const CouldBecome& become, const Rung& rung) {
  Json json{{"rules", rung.words}, {"sizes", Json::array()}};
  for (SizeId size : rung.sizes) json["sizes"].push_back(size_label(pattern, size));
  if (rung.best) json["best"] = plan_json(pattern, become, *rung.best);
  if (rung.roomier) json["roomier"] = plan_json(pattern, become, *rung.roomier);
  return json;
}

Json next_json(const Pattern& pattern, const NextSizeUp& next) {
  Json json{{"size", size_label(pattern, next.size)}, {"words", next.words}, {"buys", Json::array()}};
  for (const ToBuy& buy : next.buys) {
    const Yarn* yarn = pattern.yarn(buy.yarn);
    Json one{{"yarn", yarn != nullptr ? yarn->name : ""}, {"name", buy.name}, {"skeins", buy.skeins}};
    if (buy.role) one["role"] = role_label(pattern, buy.role);
    one["lacking_m"] = buy.lacking.value();
    if (buy.cost) {
      one["cost"] = *buy.cost;
      one["currency"] = buy.currency;
    }
    json["buys"].push_back(std::move(one));
  }
  return json;
}

Json become_json(const Pattern& pattern, const CouldBecome& become) {
  Json json{{"yarns", Json::array()}};
  for (const YarnSupply& supply : become.supplies)
    json["yarns"].push_back(
        {{"name", supply.name}, {"have_m", supply.length.value()}, {"usable_m", supply.usable.value()}});
  json["in_force"] = rung_json(pattern, become, become.in_force);
  json["rungs"] = Json::array();
  for (const Rung& rung : become.rungs) json["rungs"].push_back(rung_json(pattern, become, rung));
  if (become.next) json["next"] = next_json(pattern, *become.next);
  if (!become.left_out.empty()) json["left_out"] = errors_json(become.left_out);
  if (!become.not_looked_at.empty()) json["not_looked_at"] = become.not_looked_at;
  return json;
}

Json lots_json(const Pattern& pattern, const LotPlan& plan) {
  Json json{{"label", plan.label}, {"size", size_label(pattern, plan.size)}, {"cut", word_of(plan.cut)}};
  json["lots"] = Json::array();
  for (const LotOfRole& lot : plan.lots) {
    Json one{{"lot", lot.lot}, {"have_m", lot.have.value()}, {"usable_m", lot.usable.value()}};
    one["knitted_m"] = lot.knitted.value();
    one["planned_m"] = lot.planned.value();
    one["first"] = lot.first;
    one["pieces"] = Json::array();
    for (const LotPiece& piece : lot.pieces)
      one["pieces"].push_back(
          {{"name", piece.name}, {"knitted_m", piece.knitted.value()}, {"planned_m", piece.planned.value()}});
    json["lots"].push_back(std::move(one));
  }
  json["words"] = plan.words;
  if (!plan.advice.empty()) json["advice"] = plan.advice;
  if (plan.short_of) json["short_m"] = plan.short_of->value();
  return json;
}

}  // namespace

void add_on_hand_json(Json& json, const Pattern& pattern, const Assessment& assessment) {
  json["on_hand"] = Json::array();
  for (const RoleOnHand& role : on_hand_verdicts(pattern, assessment))
    json["on_hand"].push_back(role_json(pattern, role));
  json["lot_plan"] = Json::array();
  for (const LotPlan& plan : lot_plans(pattern, assessment))
    json["lot_plan"].push_back(lots_json(pattern, plan));
  if (pattern.on_hand.empty()) return;
  const auto become = could_become(pattern, assessment);
  json["could_become"] =
      become ? become_json(pattern, *become)
             : Json{{"missing", become.error().found}, {"would_help", become.error().expected}};
}

}  // namespace skeinproof
