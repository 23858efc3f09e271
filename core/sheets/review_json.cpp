// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/review_json.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "core/base/text.h"

namespace skeinproof {
namespace {

using Json = nlohmann::ordered_json;

Json place_json(const std::string& text, const TextSpan& span) {
  const LineColumn at = line_column(text, span.begin);
  return {{"line", at.line}, {"column", at.column}, {"length", code_points(words_at(text, span)).size()}};
}

Json slip_json(const Review& review, const LikelySlip& slip) {
  std::vector<std::string> clears;
  for (std::size_t finding : slip.clears)
    if (std::find(clears.begin(), clears.end(), review.findings[finding].check) == clears.end())
      clears.push_back(review.findings[finding].check);
  Json json{{"before", slip.before}, {"after", slip.after}, {"clears", clears}};
  if (!slip.explains_too.empty()) json["explains_too"] = slip.explains_too;
  return json;
}

Json finding_json(const Review& review, const Finding& finding, const Cause& cause) {
  Json json{{"check", finding.check},
            {"severity", word_of(finding.severity)},
            {"title", finding.title},
            {"roles", finding.roles},
            {"sizes", finding.sizes}};
  if (!finding.places.empty()) json["place"] = place_json(review.text, finding.places.front());
  json["cause"] = cause.id;
  json["evidence"] = join(finding.evidence, "\n");
  json["query"] = finding.query;
  if (!finding.proposal_words.empty()) json["proposal"] = finding.proposal_words;
  if (cause.slip) json["likely_slip"] = slip_json(review, *cause.slip);
  return json;
}

Json file_json(const CheckedFile& checked) {
  const Review& review = checked.review;
  Json json{{"file", checked.file}, {"findings", Json::array()}};
  std::vector<const Cause*> cause_of(review.findings.size());
  for (const Cause& cause : review.causes)
    for (std::size_t finding : cause.findings) cause_of[finding] = &cause;
  for (std::size_t i = 0; i < review.findings.size(); ++i)
    json["findings"].push_back(finding_json(review, review.findings[i], *cause_of[i]));
  json["not_checked"] = Json::array();
  for (const NotChecked& one : review.not_checked)
    json["not_checked"].push_back(
        {{"check", one.check}, {"because", one.because}, {"would_help", one.would_help}});
  if (std::string words = words_on_language(review.reading); !words.empty()) json["note"] = std::move(words);
  json["not_understood"] = Json::array();
  for (const NotUnderstood& one : review.reading.not_understood) {
    if (one.told_nothing) continue;
    const LineColumn at = line_column(review.text, one.span.begin);
    json["not_understood"].push_back(
        {{"line", at.line}, {"column", at.column}, {"text", std::string(words_at(review.text, one.span))}});
  }
  return json;
}

}  // namespace

std::string review_json(const std::vector<CheckedFile>& files) {
  Json json{{"files", Json::array()}};
  for (const CheckedFile& file : files) json["files"].push_back(file_json(file));
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace skeinproof
