// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/assessment_json.h"

#include <nlohmann/json.hpp>

#include "core/need/evidence.h"
#include "core/sheets/candidates_json.h"
#include "core/sheets/on_hand_json.h"

namespace skeinproof {
namespace {

using Json = nlohmann::ordered_json;

const char* evidence_key(NeedEvidence kind) {
  switch (kind) {
    case NeedEvidence::stitches:
      return "stitches";
    case NeedEvidence::weighed_sample:
      return "sample";
    case NeedEvidence::area:
      return "area";
    case NeedEvidence::circumference:
      return "circumference";
    case NeedEvidence::fixed_and_growing:
      return "fixed_and_growing";
    case NeedEvidence::none:
      break;
  }
  return "none";
}

Json printed_counts_json(const Pattern& pattern, const SizeEvidence& size) {
  return {{"low_m", size.printed_counts->low.value()},
          {"high_m", size.printed_counts->high.value()},
          {"told_low", pattern.sizes[size.told_low].label},
          {"told_high", pattern.sizes[size.told_high].label}};
}

Json evidence_json(const Pattern& pattern, const SizeNeed& need, const SizeEvidence& size) {
  Json evidence = Json::object();
  for (const Evidence& one : need.all_evidence)
    evidence[evidence_key(one.kind)] = {{"knitted_m", one.knitted.value()},
                                        {"planned_m", one.planned.value()},
                                        {"low_m", one.low.value()},
                                        {"high_m", one.high.value()},
                                        {"because", one.because}};
  if (size.printed_counts) evidence["printed_counts"] = printed_counts_json(pattern, size);
  return evidence;
}

void write_need(Json& json, const SizeNeed& need) {
  json["knitted_m"] = need.knitted.value();
  json["swatch_m"] = need.swatch.value();
  json["planned_m"] = need.planned.value();
  json["low_m"] = need.low.value();
  json["high_m"] = need.high.value();
  json["rests_on"] = evidence_key(need.evidence);
  if (need.skeins) json["skeins"] = *need.skeins;
  if (need.fraction) json["fraction"] = *need.fraction;
  if (need.last_skein_share) json["last_skein_share"] = *need.last_skein_share;
}

Json size_json(const Pattern& pattern, std::size_t size_index, const SizeNeed& need,
               const SizeEvidence& size) {
  Json json{{"size", pattern.sizes[size_index].label}};
  if (need.known) {
    write_need(json, need);
  } else {
    json["missing"] = need.missing;
    if (size.printed_counts) {
      json["low_m"] = size.printed_counts->low.value();
      json["high_m"] = size.printed_counts->high.value();
      json["rests_on"] = "printed_counts";
    }
  }
  if (size.chance_sufficient) json["chance_sufficient"] = *size.chance_sufficient;
  if (Json evidence = evidence_json(pattern, need, size); need.known || !evidence.empty())
    json["evidence"] = std::move(evidence);
  return json;
}

Json role_json(const Pattern& pattern, const RoleNeed& need, const RoleEvidence& evidence) {
  Json json{{"label", need.label}};
  if (const Role* role = pattern.role(need.role)) {
    if (!role->shade.name.empty()) json["shade"] = role->shade.name;
    if (!role->shade.number.empty()) json["shade_number"] = role->shade.number;
    if (const Yarn* yarn = pattern.yarn(role->yarn)) {
      json["yarn"] = yarn->name;
      if (yarn->put_up.length) json["skein_m"] = yarn->put_up.length->value.value();
    }
  }
  json["sizes"] = Json::array();
  for (std::size_t i = 0; i < need.sizes.size(); ++i)
    json["sizes"].push_back(size_json(pattern, i, need.sizes[i], evidence.sizes[i]));
  return json;
}

Json calibration_json(const Pattern& pattern, const Calibration& calibration) {
  Json json;
  for (const Weighing& weighing : pattern.weighings)
    if (weighing.id == calibration.weighing) json["weighing"] = weighing.name;
  if (const Role* role = pattern.role(calibration.role)) json["role"] = role->label;
  json["weighed_m"] = calibration.weighed.value();
  json["low_m"] = calibration.low.value();
  json["high_m"] = calibration.high.value();
  json["factor"] = calibration.factor;
  json["loops"] = Json::array();
  for (const Calibration::Loop& loop : calibration.loops) {
    Json one;
    if (const Fabric* fabric = pattern.fabric(loop.fabric)) one["fabric"] = fabric->name;
    one["loop_cm"] = loop.loop.value();
    if (loop.widths) one["stitch_widths"] = *loop.widths;
    one["plausible"] = loop.plausible;
    json["loops"].push_back(std::move(one));
  }
  return json;
}

}  // namespace

std::string assessment_json(const Pattern& pattern, const Assessment& assessment) {
  Json json{{"title", pattern.title}};
  json["roles"] = Json::array();
  const std::vector<RoleEvidence> evidence = gather_evidence(pattern, assessment);
  for (std::size_t i = 0; i < assessment.roles.size(); ++i)
    json["roles"].push_back(role_json(pattern, assessment.roles[i], evidence[i]));
  json["length_notes"] = Json::array();
  for (const LengthNote& note : assessment.length_notes) {
    const Role* role = pattern.role(note.role);
    json["length_notes"].push_back({{"label", role != nullptr ? role->label : ""},
                                    {"at_most_m", note.at_most.value()},
                                    {"sizes", note.sizes}});
  }
  json["totals"] = Json::array();
  for (std::size_t i = 0; i < pattern.sizes.size(); ++i) {
    Json total{{"size", pattern.sizes[i].label}};
    if (assessment.total_skeins[i]) total["skeins"] = *assessment.total_skeins[i];
    if (assessment.area_m2[i]) total["area_m2"] = *assessment.area_m2[i];
    json["totals"].push_back(std::move(total));
  }
  json["calibrations"] = Json::array();
  for (const Calibration& calibration : assessment.calibrations)
    json["calibrations"].push_back(calibration_json(pattern, calibration));
  json["not_worked_out"] = Json::array();
  for (const NotWorkedOut& gap : assessment.not_worked_out)
    json["not_worked_out"].push_back({{"what", gap.what}, {"because", gap.because}});
  json["candidates"] = candidates_json(pattern, assessment);
  add_on_hand_json(json, pattern, assessment);
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace skeinproof
