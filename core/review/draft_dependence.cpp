// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/review/compare_drafts.h"
#include "core/review/finding_words.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

using Kind = StatementKind;

// Whether the same stands in another unit in that breath, whose statements are close together.
bool in_metric_nearby(const Reading& reading, const Statement& one) {
  constexpr std::ptrdiff_t far = 12;
  const std::ptrdiff_t at = &one - reading.statements.data();
  const auto end = static_cast<std::ptrdiff_t>(reading.statements.size());
  for (std::ptrdiff_t i = std::max<std::ptrdiff_t>(0, at - far); i < std::min(end, at + far); ++i) {
    const Statement& other = reading.statements[static_cast<std::size_t>(i)];
    if (other.mention == one.mention && other.kind == one.kind && other.subject == one.subject &&
        other.unit != one.unit)
      return true;
  }
  return false;
}

// What a draft says about some kinds, as it is compared between drafts: metric where both systems stand
// there.
std::string signature(const Reading& reading, std::string_view text, const std::vector<Kind>& kinds) {
  std::string all;
  for (const Statement& one : reading.statements) {
    if (std::find(kinds.begin(), kinds.end(), one.kind) == kinds.end()) continue;
    const bool imperial = one.unit == PrintedUnit::yard || one.unit == PrintedUnit::inch ||
                          one.unit == PrintedUnit::ounce || one.unit == PrintedUnit::needle_us;
    const bool converted = imperial && in_metric_nearby(reading, one);
    if (converted) continue;
    all += one.subject + ":";
    for (const PrintedValue& value : one.values)
      all += value.number ? exact_number(*value.number) + " " : std::string(words_at(text, value.span)) + " ";
    if (one.values.empty()) all += compared(one.words);
    all += ";";
  }
  if (!all.empty()) all.pop_back();
  return all;
}

// The same as it is told.
std::string told(const Reading& reading, std::string_view text, const std::vector<Kind>& kinds) {
  std::string all;
  for (const Statement& one : reading.statements) {
    if (std::find(kinds.begin(), kinds.end(), one.kind) == kinds.end()) continue;
    if (!all.empty()) all += ", ";
    for (const char c : tidy_spaces(words_at(text, one.span))) all += c == '\n' ? ' ' : c;
  }
  return all;
}

struct Dependence {
  std::string_view name;
  std::vector<Kind> changed;
  std::vector<Kind> dependents;
};
const std::vector<Dependence>& dependences() {
  static const std::vector<Dependence> rows = {
      {"the yarn",
       {Kind::yarn_name},
       {Kind::put_up_length, Kind::put_up_weight, Kind::fibre, Kind::count, Kind::shade_name,
        Kind::shade_number, Kind::length_note}},
      {"the put-up",
       {Kind::put_up_length, Kind::put_up_weight},
       {Kind::count, Kind::total_count, Kind::length_note}},
      {"the gauge",
       {Kind::gauge_stitches, Kind::gauge_rows},
       {Kind::count, Kind::length_note, Kind::stitches, Kind::measurement, Kind::needle}},
      {"the sizes", {Kind::size_labels}, {Kind::count, Kind::total_count, Kind::measurement, Kind::stitches}},
      {"the measurements", {Kind::measurement}, {Kind::count, Kind::length_note, Kind::stitches}},
  };
  return rows;
}

// A name set right by a letter or two is the same yarn.
bool nearly_the_same(const std::string& a, const std::string& b) {
  std::size_t front = 0;
  while (front < std::min(a.size(), b.size()) && a[front] == b[front]) ++front;
  std::size_t back = 0;
  while (back < std::min(a.size(), b.size()) - front && a[a.size() - 1 - back] == b[b.size() - 1 - back])
    ++back;
  return std::max(a.size(), b.size()) - front - back <= 2;
}

}  // namespace

std::vector<NotMoved> dependents_not_moved(std::string_view before, const Reading& before_reading,
                                           std::string_view after, const Reading& after_reading) {
  std::vector<NotMoved> all;
  for (const Dependence& row : dependences()) {
    const std::string was = signature(before_reading, before, row.changed),
                      is = signature(after_reading, after, row.changed);
    if (was.empty() || is.empty() || was == is) continue;
    if (row.changed.front() == Kind::yarn_name && nearly_the_same(was, is)) continue;
    NotMoved one{std::string(row.name),
                 told(before_reading, before, row.changed),
                 told(after_reading, after, row.changed),
                 row.changed,
                 {}};
    bool moved = false;
    for (const Kind kind : row.dependents) {
      const std::string here = signature(after_reading, after, {kind});
      if (here.empty()) continue;
      moved = moved || signature(before_reading, before, {kind}) != here;
      one.still.push_back(kind);
    }
    if (!moved && !one.still.empty()) all.push_back(std::move(one));
  }
  return all;
}

}  // namespace skeinproof
