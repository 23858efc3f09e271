// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/assessment_json.h"

#include <nlohmann/json.hpp>

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
    case NeedEvidence::none:
      break;
  }
  return "none";
}

Json size_json(const std::string& label, const SizeNeed& need) {
  Json json{{"size", label}};
  if (!need.known) {
    json["missing"] = need.missing;
    return json;
  }
  json["knitted_m"] = need.knitted.value();
  json["swatch_m"] = need.swatch.value();
  json["planned_m"] = need.planned.value();
  json["low_m"] = need.low.value();
  json["high_m"] = need.high.value();
  json["rests_on"] = evidence_key(need.evidence);
  if (need.skeins) json["skeins"] = *need.skeins;
  if (need.fraction) json["fraction"] = *need.fraction;
  if (need.last_skein_share) json["last_skein_share"] = *need.last_skein_share;
  Json evidence = Json::object();
  for (const Evidence& one : need.all_evidence)
    evidence[evidence_key(one.kind)] = {{"knitted_m", one.knitted.value()},
                                        {"planned_m", one.planned.value()},
                                        {"low_m", one.low.value()},
                                        {"high_m", one.high.value()},
                                        {"because", one.because}};
  json["evidence"] = std::move(evidence);
  return json;
}

Json role_json(const Pattern& pattern, const RoleNeed& need) {
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
    json["sizes"].push_back(size_json(pattern.sizes[i].label, need.sizes[i]));
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
  for (const RoleNeed& need : assessment.roles) json["roles"].push_back(role_json(pattern, need));
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
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace skeinproof
