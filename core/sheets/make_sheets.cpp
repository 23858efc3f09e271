// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/make_sheets.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/manuscript/words.h"
#include "core/sheets/sheet_parts.h"

namespace skeinproof {
namespace {

bool is_length(SizeFigure kind) {
  return kind != SizeFigure::skeins && kind != SizeFigure::last_skein && kind != SizeFigure::fraction;
}

std::string figure_heading(SizeFigure kind, const HouseStyle& house) {
  std::string heading(word_of(kind));
  if (kind == SizeFigure::last_skein) heading += ", %";
  if (is_length(kind)) heading += in_yards_first(house) ? ", yd" : ", m";
  return heading;
}

Metres length_of(const SizeNeed& need, SizeFigure kind) {
  switch (kind) {
    case SizeFigure::knitted:
      return need.knitted;
    case SizeFigure::with_swatch:
      return need.knitted + need.swatch;
    case SizeFigure::low:
      return need.low;
    case SizeFigure::high:
      return need.high;
    default:
      return need.planned;
  }
}

Cell last_skein_cell(const SizeNeed& need) {
  if (!need.last_skein_share) return figure(std::nullopt, 0);
  // A share is a difference of two quotients; its noise must not turn 6.5 into 6.
  Cell cell = figure(round_half_up(*need.last_skein_share * 100, 1e-6), 0);
  cell.bar = std::clamp(*need.last_skein_share, 0.0, 1.0);
  if (need.last_skein == LastSkein::brimful) cell.remark = "brimful";
  if (need.last_skein == LastSkein::tips_over) cell.remark = "tips over";
  return cell;
}

Cell need_cell(const SizeNeed* need, SizeFigure kind, const HouseStyle& house) {
  if (need == nullptr || !need->known) return figure(std::nullopt, 0);
  if (is_length(kind)) return figure(in_house_lengths(length_of(*need, kind), house), 0);
  if (kind == SizeFigure::last_skein) return last_skein_cell(*need);
  if (kind == SizeFigure::fraction) return figure(need->fraction, 2);
  Cell count = figure(need->skeins ? std::optional<double>(*need->skeins) : std::nullopt, 0);
  count.strong = true;
  return count;
}

void add_role_rows(Table& table, const Pattern& pattern, const Role& role, const RoleNeed* need,
                   const HouseStyle& house, const std::vector<SizeFigure>& figures) {
  for (std::size_t f = 0; f < figures.size(); ++f) {
    Row row;
    row.opens_group = f == 0;
    row.cells = {words(role_name(role, house)), words(figure_heading(figures[f], house))};
    row.cells.front().strong = true;
    row.cells.front().repeats = f > 0;
    for (std::size_t i = 0; i < pattern.sizes.size(); ++i) {
      const SizeNeed* size = need != nullptr && i < need->sizes.size() ? &need->sizes[i] : nullptr;
      row.cells.push_back(need_cell(size, figures[f], house));
    }
    table.rows.push_back(std::move(row));
  }
}

Row total_row(const Pattern& pattern, const Assessment& assessment) {
  Row row;
  row.opens_group = true;
  row.cells = {words("All colours"), words("skeins")};
  row.cells.front().strong = true;
  for (std::size_t i = 0; i < pattern.sizes.size(); ++i) {
    const bool known = i < assessment.total_skeins.size() && assessment.total_skeins[i];
    row.cells.push_back(figure(known ? std::optional<double>(*assessment.total_skeins[i]) : std::nullopt, 0));
    row.cells.back().strong = true;
  }
  return row;
}

void add_grounds(Sheet& sheet, const Pattern& pattern, const HouseStyle& house) {
  for (const Yarn& yarn : pattern.yarns) {
    const std::string put_up = put_up_words(yarn, house);
    sheet.parts.emplace_back(Paragraph{
        Voice::ground, yarn.name + ": " + (put_up.empty() ? "put-up not known" : put_up) + " (label)"});
  }
  const HouseStyle& in_force = pattern.house_styles.empty() ? house : pattern.house();
  sheet.parts.emplace_back(
      Paragraph{Voice::ground, "Allowance " + short_number(in_force.allowance_pct, 2, house) + " %, swatch " +
                                   (in_force.swatch_counted ? "counted" : "not counted") +
                                   ", skeins: " + std::string(word_of(in_force.rounding)) + " (house)"});
}

void add_steps(Table& table, const Step& step, int indent, const HouseStyle& house) {
  Cell cell = figure(step.figure, step.decimals);
  cell.strong = indent == 0;
  std::vector<std::string> ground;
  if (step.ground != Ground::none) ground.emplace_back(word_of(step.ground));
  if (!step.source.empty()) ground.push_back(step.source);
  table.rows.push_back({{words(step.label, indent), words(step.how), std::move(cell),
                         words(std::string(word_of(step.unit))), words(join(ground, ": "))},
                        false});
  for (const Step& part : step.parts) add_steps(table, part, indent + 1, house);
}

}  // namespace

const std::vector<SizeFigure>& usual_size_figures() {
  static const std::vector<SizeFigure> usual = {SizeFigure::skeins, SizeFigure::planned,
                                                SizeFigure::last_skein, SizeFigure::knitted,
                                                SizeFigure::with_swatch};
  return usual;
}

Sheet per_size_sheet(const Pattern& pattern, const Assessment& assessment, const HouseStyle& house,
                     std::string_view date, const std::vector<SizeFigure>& figures) {
  Sheet sheet = started_sheet(pattern, house, "Yarn by size and colour", date);
  add_grounds(sheet, pattern, house);
  Table table;
  table.columns = {{"colour", Align::left, false}, {"figure", Align::left, false}};
  add_size_columns(table, pattern);
  for (const Role& role : pattern.roles)
    add_role_rows(table, pattern, role, need_of(assessment, role.id), house, figures);
  if (!pattern.roles.empty()) table.rows.push_back(total_row(pattern, assessment));
  sheet.parts.emplace_back(std::move(table));
  for (const LengthNote& note : assessment.length_notes)
    if (const Role* role = pattern.role(note.role))
      sheet.foot_notes.push_back(role_name(*role, house) + ": at most " + length_words(note.at_most, house) +
                                 " needed in any size.");
  sheet.foot_notes.push_back(
      "Planned = (knitted + swatch) with the allowance. Last skein = how much of the last skein is needed; "
      "tips over: less than 5 %; brimful: more than 95 %.");
  const auto wanted = [&](SizeFigure kind) {
    return std::find(figures.begin(), figures.end(), kind) != figures.end();
  };
  if (wanted(SizeFigure::low) || wanted(SizeFigure::high))
    sheet.foot_notes.push_back("Low and high: the planned length lies between them 9 times in 10.");
  for (const NotWorkedOut& gap : assessment.not_worked_out)
    sheet.foot_notes.push_back("Not worked out: " + gap.what + ": " + gap.because);
  add_cautions(sheet, pattern);
  return sheet;
}

Sheet working_sheet(const Step& step, const Pattern& pattern, const HouseStyle& house,
                    std::string_view date) {
  Sheet sheet = started_sheet(pattern, house, "Working: " + step.label, date);
  Table table;
  table.columns = {{"step", Align::left, false},
                   {"how", Align::left, false},
                   {"figure", Align::right, false},
                   {"unit", Align::left, false},
                   {"stands on", Align::left, false}};
  add_steps(table, step, 0, house);
  sheet.parts.emplace_back(std::move(table));
  return sheet;
}

Sheet block_sheet(const Pattern& pattern, const Assessment& assessment, const HouseStyle& house,
                  std::string_view date) {
  Sheet sheet = started_sheet(pattern, house, "Yarn", date);
  const BlockText block = write_block(pattern, assessment, house);
  Lines lines;
  for (const BlockLine& line : block.lines) {
    lines.lines.emplace_back();
    for (const BlockRun& run : line) lines.lines.back().push_back({std::string(word_of(run.part)), run.text});
  }
  sheet.parts.emplace_back(std::move(lines));
  for (const MissingFact& fact : block.missing) sheet.foot_notes.push_back("Missing: " + fact.what);
  add_cautions(sheet, pattern);
  return sheet;
}

}  // namespace skeinproof
