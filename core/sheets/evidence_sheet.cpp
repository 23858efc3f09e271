// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/evidence_sheet.h"

#include <algorithm>
#include <functional>

#include "core/base/text.h"
#include "core/sheets/sheet_parts.h"

namespace skeinproof {
namespace {

// Tables of one colour: a row a road, a column a size.
class ColourTable {
 public:
  ColourTable(const Pattern& pattern, const Role& role, const RoleNeed& need, const RoleEvidence& evidence,
              const HouseStyle& house)
      : pattern_(pattern), need_(need), evidence_(evidence), house_(house) {
    const char* unit = in_yards_first(house) ? ", yd" : ", m";
    table_.title = role_name(role, house) + unit;
    table_.columns = {{"evidence", Align::left, false}};
    add_size_columns(table_, pattern);
  }

  Table take() {
    add("skeins", [&](std::size_t i) { return count(i); });
    add("by stitches", [&](std::size_t i) { return range(evidence_.sizes[i].stitches); });
    add("by weighed sample", [&](std::size_t i) { return range(evidence_.sizes[i].sample); });
    add("by printed counts", [&](std::size_t i) { return range(evidence_.sizes[i].printed_counts); });
    add("told by sizes", [&](std::size_t i) { return told_by(evidence_.sizes[i]); });
    add("the skeins suffice, of 100", [&](std::size_t i) { return chance(evidence_.sizes[i]); });
    return std::move(table_);
  }

 private:
  void add(const char* name, const std::function<Cell(std::size_t)>& cell) {
    Row row;
    row.cells = {words(name)};
    bool any = false;
    for (std::size_t i = 0; i < pattern_.sizes.size(); ++i) {
      row.cells.push_back(cell(i));
      any = any || !row.cells.back().text.empty() || row.cells.back().number;
    }
    if (any) table_.rows.push_back(std::move(row));
  }
  Cell count(std::size_t i) const {
    const auto& skeins = need_.sizes[i].skeins;
    Cell cell = skeins ? figure(*skeins, 0) : Cell{};
    cell.strong = true;
    return cell;
  }
  Cell range(const std::optional<LengthEvidence>& evidence) const {
    if (!evidence) return {};
    const NumberStyle style{house_.mark, house_.fractions, false};
    return words(show_number(in_house_lengths(evidence->low, house_), 0, style) + "–" +
                 show_number(in_house_lengths(evidence->high, house_), 0, style));
  }
  Cell told_by(const SizeEvidence& size) const {
    if (!size.printed_counts) return {};
    const std::string& low = pattern_.sizes[size.told_low].label;
    const std::string& high = pattern_.sizes[size.told_high].label;
    return words(low == high ? low : low + ", " + high);
  }
  static Cell chance(const SizeEvidence& size) {
    return size.chance_sufficient ? words(chance_of_100(*size.chance_sufficient)) : Cell{};
  }

  const Pattern& pattern_;
  const RoleNeed& need_;
  const RoleEvidence& evidence_;
  const HouseStyle& house_;
  Table table_;
};

void add_disagreements(Sheet& sheet, const Pattern& pattern, const RoleNeed& need,
                       const RoleEvidence& evidence) {
  for (const Disagreement& one : evidence.disagreements)
    sheet.foot_notes.push_back(need.label + ", size " + pattern.sizes[one.size_index].label + ": " +
                               std::string(word_of(one.one)) + " and " + std::string(word_of(one.other)) +
                               " part by more than their errors, likeliest because " +
                               std::string(word_of(one.reason)) + ".");
  if (!evidence.steps || !evidence.steps->clash) return;
  const Clash& clash = *evidence.steps->clash;
  sheet.foot_notes.push_back(need.label + ": the printed counts of sizes " +
                             pattern.sizes[clash.asks_more].label + " and " +
                             pattern.sizes[clash.allows_less].label + " cannot both be right.");
}

}  // namespace

void add_evidence(Sheet& sheet, const Pattern& pattern, const Assessment& assessment,
                  const HouseStyle& house) {
  const std::vector<RoleEvidence> evidence = gather_evidence(pattern, assessment);
  for (std::size_t i = 0; i < assessment.roles.size(); ++i) {
    const RoleNeed& need = assessment.roles[i];
    const Role* role = pattern.role(need.role);
    if (role == nullptr) continue;
    Table table = ColourTable(pattern, *role, need, evidence[i], house).take();
    if (!table.rows.empty()) sheet.parts.emplace_back(std::move(table));
    add_disagreements(sheet, pattern, need, evidence[i]);
  }
  sheet.foot_notes.push_back(
      "By stitches and by weighed sample: the planned length lies between the two figures 9 times in 10. By "
      "printed "
      "counts: it lies between them if the counts were rounded up and the colour grows as its band says.");
}

Sheet evidence_sheet(const Pattern& pattern, const Assessment& assessment, const HouseStyle& house,
                     std::string_view date) {
  Sheet sheet = started_sheet(pattern, house, "How sure each figure is", date);
  add_evidence(sheet, pattern, assessment, house);
  add_cautions(sheet, pattern);
  return sheet;
}

}  // namespace skeinproof
