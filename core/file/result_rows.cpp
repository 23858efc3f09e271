// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/result_rows.h"

#include <cmath>

#include "core/base/fingerprint.h"
#include "core/base/text.h"
#include "core/file/json.h"
#include "core/file/table_rows.h"
#include "core/need/evidence.h"

namespace skeinproof {
namespace {

Cell figure(bool known, double value) { return known && std::isfinite(value) ? Cell(value) : Cell(); }
Cell figure(const std::optional<double>& value) { return figure(value.has_value(), value.value_or(0)); }
Cell whole(const std::optional<int>& value) { return value ? Cell(std::int64_t{*value}) : Cell(); }

void write_need(TableRows& rows, RoleId role, SizeId size, const SizeNeed& need,
                const SizeEvidence& evidence) {
  rows.insert("result_need", {{"role", std::int64_t{role.value}},
                              {"size", std::int64_t{size.value}},
                              {"evidence", std::string(word_of(need.evidence))},
                              {"missing", need.missing},
                              {"knitted_m", figure(need.known, need.knitted.value())},
                              {"swatch_m", figure(need.known, need.swatch.value())},
                              {"allowance_m", figure(need.known, need.allowance.value())},
                              {"planned_m", figure(need.known, need.planned.value())},
                              {"low_m", figure(need.known, need.low.value())},
                              {"high_m", figure(need.known, need.high.value())},
                              {"fraction", figure(need.fraction)},
                              {"skeins", whole(need.skeins)},
                              {"last_skein_share", figure(need.last_skein_share)},
                              {"chance_sufficient", figure(evidence.chance_sufficient)}});
}

void write_evidence(TableRows& rows, RoleId role, SizeId size, const SizeNeed& need) {
  for (const Evidence& one : need.all_evidence)
    if (std::isfinite(one.low.value()) && std::isfinite(one.high.value()))
      rows.insert("result_evidence", {{"role", std::int64_t{role.value}},
                                      {"size", std::int64_t{size.value}},
                                      {"evidence", std::string(word_of(one.kind))},
                                      {"knitted_m", figure(true, one.knitted.value())},
                                      {"low_m", one.low.value()},
                                      {"high_m", one.high.value()},
                                      {"told_low", Cell()},
                                      {"told_high", Cell()}});
}

void write_counts(TableRows& rows, RoleId role, const Pattern& pattern, std::size_t size_index,
                  const SizeEvidence& evidence) {
  if (!evidence.printed_counts) return;
  const auto size_id = [&](std::size_t index) { return std::int64_t{pattern.sizes[index].id.value}; };
  rows.insert("result_evidence", {{"role", std::int64_t{role.value}},
                                  {"size", size_id(size_index)},
                                  {"evidence", std::string(word_of(LengthGround::printed_counts))},
                                  {"knitted_m", Cell()},
                                  {"low_m", evidence.printed_counts->low.value()},
                                  {"high_m", evidence.printed_counts->high.value()},
                                  {"told_low", size_id(evidence.told_low)},
                                  {"told_high", size_id(evidence.told_high)}});
}

}  // namespace

std::string inputs_fingerprint(const Pattern& pattern) {
  return fingerprint_words(fingerprint(to_compact_json(pattern)));
}

void write_result_rows(SQLite::Database& database, const Pattern& pattern, const Assessment& assessment,
                       const std::string& program) {
  TableRows rows(database);
  rows.insert("result_meta", {{"only_row", std::int64_t{1}},
                              {"inputs_fingerprint", inputs_fingerprint(pattern)},
                              {"worked_out_by", program}});
  const std::vector<RoleEvidence> evidence = gather_evidence(pattern, assessment);
  for (std::size_t r = 0; r < assessment.roles.size(); ++r) {
    const RoleNeed& role = assessment.roles[r];
    for (std::size_t i = 0; i < role.sizes.size() && i < pattern.sizes.size(); ++i) {
      const SizeId size = pattern.sizes[i].id;
      write_need(rows, role.role, size, role.sizes[i], evidence[r].sizes[i]);
      write_evidence(rows, role.role, size, role.sizes[i]);
      write_counts(rows, role.role, pattern, i, evidence[r].sizes[i]);
    }
  }
  for (std::size_t i = 0; i < assessment.total_skeins.size() && i < pattern.sizes.size(); ++i)
    if (assessment.total_skeins[i])
      rows.insert("result_total", {{"size", std::int64_t{pattern.sizes[i].id.value}},
                                   {"skeins", whole(assessment.total_skeins[i])}});
  for (const LengthNote& note : assessment.length_notes)
    rows.insert("result_length_note", {{"role", std::int64_t{note.role.value}},
                                       {"at_most_m", figure(true, note.at_most.value())},
                                       {"sizes", join(note.sizes, ", ")}});
}

}  // namespace skeinproof
