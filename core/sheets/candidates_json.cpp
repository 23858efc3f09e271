// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/candidates_json.h"

#include <nlohmann/json.hpp>

#include "core/substitution/wishes.h"

namespace skeinproof {
namespace {

using Json = nlohmann::ordered_json;

void put(Json& json, const char* key, const Known& known) {
  if (known) json[key] = *known.value;
}
template <class Value>
void put(Json& json, const char* key, const std::optional<Value>& value) {
  if (value) json[key] = *value;
}
void put(Json& json, const char* key, const std::string& text) {
  if (!text.empty()) json[key] = text;
}

Json buy_json(const YarnToBuy& buy) {
  Json json{{"yarn", buy.name}, {"strands", buy.strands}, {"planned_m", buy.planned.value()}};
  put(json, "skeins", buy.skeins);
  put(json, "last_skein_share", buy.last_skein_share);
  if (buy.spare) json["spare_m"] = buy.spare->value();
  put(json, "cost", buy.cost);
  if (buy.cost) put(json, "currency", buy.currency);
  if (buy.put_ups.size() > 1) {
    json["put_ups"] = Json::array();
    for (const PutUpBought& one : buy.put_ups) {
      Json put_up{{"count", one.count}};
      if (one.put_up.length) put_up["length_m"] = one.put_up.length->value.value();
      if (one.put_up.weight) put_up["weight_g"] = one.put_up.weight->value.value();
      json["put_ups"].push_back(std::move(put_up));
    }
  }
  put(json, "tight", buy.tight);
  put(json, "missing", buy.missing);
  return json;
}

Json role_json(const CandidateRole& role) {
  Json json{{"label", role.label}, {"yarn", role.thread}};
  put(json, "skeins", role.skeins);
  put(json, "worked_m", role.worked);
  put(json, "planned_m", role.planned);
  if (role.at_most) json["at_most"] = true;
  put(json, "mass_g", role.mass_g);
  put(json, "firmness", role.firmness);
  put(json, "thickness_ratio", role.thickness_by_volume);
  put(json, "likely_gauge", role.gauge_by_mass);
  json["buys"] = Json::array();
  for (const YarnToBuy& buy : role.buys) json["buys"].push_back(buy_json(buy));
  return json;
}

void put_cost(Json& json, const CandidateFacts& facts) {
  put(json, "skeins", facts.skeins);
  put(json, "basket", facts.basket);
  put(json, "currency", facts.currency);
  put(json, "basket_words", facts.basket_words);
  put(json, "cost_per_metre", facts.cost_per_metre);
  put(json, "within_budget", facts.within_budget);
  put(json, "spare_share", facts.spare_share);
}

void put_cloth(Json& json, const CandidateFacts& facts) {
  put(json, "mass_g", facts.mass_g);
  put(json, "mass_more", facts.mass_more);
  put(json, "mass_per_m2_g", facts.mass_per_area);
  put(json, "firmness", facts.firmness);
  put(json, "firmness_by_loop", facts.firmness_by_loop);
  put(json, "thickness_ratio", facts.thickness_by_volume);
  put(json, "thickness_ratio_by_mass", facts.thickness_by_mass);
  if (facts.thickness_by_mass) json["thickness_error"] = facts.thickness_by_mass.error_share;
  put(json, "likely_gauge", facts.gauge_by_mass);
  put(json, "likely_gauge_low", facts.gauge_low);
  put(json, "likely_gauge_high", facts.gauge_high);
  put(json, "gauge_words", facts.gauge_words);
  put(json, "label_gauge", facts.label_gauge);
  put(json, "needle", facts.needle);
  put(json, "care", facts.care_words);
}

void put_judgements(Json& json, const CandidateFacts& facts) {
  json["consequences"] = Json::array();
  json["consequence_details"] = Json::array();
  for (const Consequence& one : facts.consequences) {
    json["consequences"].push_back(one.id);
    json["consequence_details"].push_back({{"id", one.id},
                                           {"weight", word_of(one.weight)},
                                           {"title", one.title},
                                           {"because", one.because},
                                           {"advice", one.advice},
                                           {"test", one.test}});
  }
  json["not_looked_at"] = Json::array();
  for (const NotLookedAt& row : facts.not_looked_at)
    json["not_looked_at"].push_back({{"rules", row.rules}, {"because", row.because}});
}

Json wishes_json(const Pattern& pattern, const CandidateFacts& facts) {
  Json wishes = Json::array();
  for (std::size_t i = 0; i < facts.wishes.size(); ++i) {
    Json wish{{"wish", wish_words(pattern, pattern.wishes[i])}, {"level", word_of(pattern.wishes[i].level)}};
    put(wish, "met", facts.wishes[i].met);
    put(wish, "because", facts.wishes[i].because);
    wishes.push_back(std::move(wish));
  }
  return wishes;
}

}  // namespace

nlohmann::ordered_json candidates_json(const Pattern& pattern, const Assessment& assessment) {
  Json candidates = Json::array();
  const std::size_t size = bench_size(pattern);
  for (const CandidateFacts& facts : compare_candidates(pattern, assessment, size)) {
    Json json{{"yarn", facts.name}, {"size", pattern.sizes[size].label}, {"shown", facts.shown}};
    json["roles"] = Json::array();
    for (const CandidateRole& role : facts.roles) json["roles"].push_back(role_json(role));
    put_cost(json, facts);
    put_cloth(json, facts);
    put_judgements(json, facts);
    if (!pattern.wishes.empty()) json["wishes"] = wishes_json(pattern, facts);
    json["tight"] = facts.tight;
    json["cautions"] = facts.cautions;
    json["problems"] = facts.problems;
    candidates.push_back(std::move(json));
  }
  return candidates;
}

}  // namespace skeinproof
