// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/manuscript/read_manuscript.h"
#include "core/manuscript/words.h"
#include "core/review/check_runs.h"
#include "core/review/compare_drafts.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/role_figures.h"

namespace skeinproof {
namespace {

using Kind = StatementKind;
constexpr std::string_view practice = "common practice, no source";

constexpr std::array all_rows = {
    Check{"T1",
          "Notions are counted in every size, and buttons are as many as buttonholes.",
          Severity::stop,
          {Kind::size_labels, Kind::notion, Kind::stitches, Kind::phrase},
          practice,
          check_t1},
    Check{"T2",
          "Facts are written as the house writes them, once a style is chosen.",
          Severity::style,
          {Kind::size_labels, Kind::put_up_length, Kind::put_up_weight, Kind::put_up_word, Kind::fibre,
           Kind::role, Kind::shade_name, Kind::shade_number, Kind::count, Kind::measurement, Kind::needle},
          practice,
          check_t2},
    Check{"T3",
          "What is said twice is said alike.",
          Severity::stop,
          {Kind::count, Kind::total_count, Kind::sample_size, Kind::sample_weight, Kind::ease, Kind::strands,
           Kind::number_of_colours, Kind::notion, Kind::shade_name, Kind::band_gauge, Kind::length_note},
          practice,
          check_t3},
    // What it compares are the drafts as they came, whatever is read into the text at hand.
    Check{"T4",
          "What depends on yarn, gauge or sizes changes with them.",
          Severity::ask,
          {},
          practice,
          check_t4},
    Check{"T5",
          "Metres of every colour and size are printed, where the house wants them.",
          Severity::note,
          {Kind::size_labels, Kind::role, Kind::count},
          practice,
          check_t5},
};

// In one of the units that it can be compared in.
double in_metric(double value, PrintedUnit unit) {
  switch (unit) {
    case PrintedUnit::yard:
      return value * metres_per_yard;
    case PrintedUnit::ounce:
      return value * grams_per_ounce;
    case PrintedUnit::pound:
      return value * 16 * grams_per_ounce;
    case PrintedUnit::kilogram:
      return value * 1000;
    case PrintedUnit::inch:
      return value * centimetres_per_inch;
    case PrintedUnit::millimetre:
      return value / 10;
    default:
      return value;
  }
}

enum class Measures { number, length, mass, cloth };
Measures measures(PrintedUnit unit) {
  switch (unit) {
    case PrintedUnit::metre:
    case PrintedUnit::yard:
      return Measures::length;
    case PrintedUnit::gram:
    case PrintedUnit::ounce:
    case PrintedUnit::kilogram:
    case PrintedUnit::pound:
      return Measures::mass;
    case PrintedUnit::centimetre:
    case PrintedUnit::inch:
    case PrintedUnit::millimetre:
      return Measures::cloth;
    default:
      return Measures::number;
  }
}

// Kinds that no other check compares place by place.
constexpr std::array compared_kinds = {
    Kind::count,      Kind::total_count, Kind::sample_size,       Kind::sample_weight,
    Kind::ease,       Kind::strands,     Kind::number_of_colours, Kind::notion,
    Kind::shade_name, Kind::band_gauge,  Kind::length_note};

bool same_value(const PrintedValue& a, PrintedUnit a_unit, const PrintedValue& b, PrintedUnit b_unit) {
  if (!a.number || !b.number) return a.number.has_value() == b.number.has_value();
  const double slack = in_metric(a.half_step, a_unit) + in_metric(b.half_step, b_unit);
  const bool one_unit = a_unit == b_unit;
  return std::abs(in_metric(*a.number, a_unit) - in_metric(*b.number, b_unit)) <=
         (one_unit ? 1e-9 : slack + 1e-9);
}

bool say_the_same(const Statement& a, const Statement& b) {
  if (a.values.empty() || b.values.empty()) return compared(a.words) == compared(b.words);
  if (a.values.size() != b.values.size()) {
    // One figure for all sizes, or a list cut short: the length of lists is another matter.
    if (a.values.size() > 1 && b.values.size() > 1) return true;
    const Statement &one = a.values.size() == 1 ? a : b, &list = a.values.size() == 1 ? b : a;
    return std::any_of(list.values.begin(), list.values.end(), [&](const PrintedValue& value) {
      return same_value(value, list.unit, one.values.front(), one.unit);
    });
  }
  for (std::size_t i = 0; i < a.values.size(); ++i)
    if (!same_value(a.values[i], a.unit, b.values[i], b.unit)) return false;
  return true;
}

bool comparable(const Statement& a, const Statement& b) {
  if (compared(a.qualifier) != compared(b.qualifier) || a.yarn != b.yarn) return false;
  // The units of one breath are conversions of each other, for which there are checks of their own.
  return a.mention != b.mention && measures(a.unit) == measures(b.unit);
}

bool of_buttonholes(const Statement& one) {
  return says(compared(one.subject) + " " + compared(one.qualifier), {"buttonhole", "button hole"}) &&
         !one.values.empty();
}
bool of_buttons(const Statement& one) {
  return says(compared(one.subject), {"button"}) && !of_buttonholes(one);
}

const Statement* first_of(const PrintedView& printed, const std::vector<Kind>& kinds) {
  for (const Statement& one : printed.reading().statements)
    if (std::find(kinds.begin(), kinds.end(), one.kind) != kinds.end()) return &one;
  return nullptr;
}

}  // namespace

std::span<const Check> text_checks() { return all_rows; }

void check_t1(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const auto notions = printed.all(Kind::notion);
  const bool sizes_known = printed.sizes_line() != nullptr || printed.sizes() > 1;
  for (const Statement* notion : notions) {
    const std::size_t n = notion->values.size();
    if (!sizes_known || n < 2 || n == printed.sizes() || notion->all_sizes) continue;
    Finding& finding = findings.add(std::to_string(n) + " counts for " + std::to_string(printed.sizes()) +
                                    " sizes: " + printed_words(printed, *notion));
    finding.apart = notion->subject;
    show(finding, printed, *notion);
    finding.evidence = {std::to_string(n) + " values, " + std::to_string(printed.sizes()) + " sizes"};
    finding.query = "The list of " + (notion->subject.empty() ? "notions" : notion->subject) + ", " +
                    printed_words(printed, *notion) + ", has " + std::to_string(n) + " values for " +
                    std::to_string(printed.sizes()) + " sizes. Which size is missing?";
  }
  std::vector<const Statement*> holes;
  for (const Kind kind : {Kind::notion, Kind::stitches, Kind::phrase})
    for (const Statement* one : printed.all(kind))
      if (of_buttonholes(*one) && holes.size() < 20) holes.push_back(one);
  for (const Statement* buttons : notions) {
    if (!of_buttons(*buttons) || buttons->values.empty()) continue;
    for (const Statement* hole : holes) {
      const PrintedList have = printed.list(*buttons), work = printed.list(*hole);
      std::vector<std::size_t> differ;
      for (std::size_t i = 0; i < printed.sizes(); ++i) {
        const PrintedValue *a = value_at(have, i), *b = value_at(work, i);
        if (a != nullptr && b != nullptr && a->number && b->number && *a->number != *b->number)
          differ.push_back(i);
      }
      if (differ.empty()) continue;
      Finding& finding = findings.add("other buttons than buttonholes");
      finding.apart = "buttonholes";
      show(finding, printed, *buttons);
      show(finding, printed, *hole);
      for (const std::size_t size : differ) {
        add_size(finding, printed, size);
        finding.evidence.push_back("size " + finding.sizes.back() + ": " +
                                   std::string(printed.words(*value_at(have, size))) + " buttons, " +
                                   std::string(printed.words(*value_at(work, size))) + " buttonholes");
      }
      finding.query = "Buttons " + printed_words(printed, *buttons) + " and buttonholes " +
                      printed_words(printed, *hole) + " differ in " + sizes_in_words(finding.sizes) +
                      ". Which is right?";
      break;
    }
  }
}

// Two shades without a role are two shades, not one said twice.
bool is_of_a_colour(Kind kind) {
  return kind == Kind::count || kind == Kind::shade_name || kind == Kind::shade_number ||
         kind == Kind::length_note || kind == Kind::strands || kind == Kind::sample_weight;
}

void check_t3(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  for (const Kind kind : compared_kinds) {
    std::map<std::string, std::vector<const Statement*>> by_subject;
    for (const Statement* one : printed.all(kind))
      if (!one->subject.empty() || !is_of_a_colour(kind)) by_subject[compared(one->subject)].push_back(one);
    for (const auto& [subject, statements] : by_subject) {
      // Each is compared with the first that it can be compared with, so that the time grows with the text.
      std::vector<const Statement*> firsts;
      std::set<int> told;
      for (const Statement* one : statements) {
        const auto first = std::find_if(
            firsts.begin(),
            firsts.begin() + static_cast<std::ptrdiff_t>(std::min<std::size_t>(firsts.size(), 8)),
            [&](const Statement* other) { return comparable(*other, *one); });
        if (first == firsts.begin() + static_cast<std::ptrdiff_t>(std::min<std::size_t>(firsts.size(), 8))) {
          firsts.push_back(one);
          continue;
        }
        if (say_the_same(**first, *one) || !told.insert(one->mention).second) continue;
        Finding& finding = findings.add("said twice and not alike: " + printed_words(printed, **first) +
                                        " and " + printed_words(printed, *one));
        if (printed.role((*first)->subject) != nullptr) finding.roles = {(*first)->subject};
        finding.apart = std::string(word_of(kind)) + " " + subject;
        show(finding, printed, **first);
        show(finding, printed, *one);
        const auto line = [&](const Statement& where) {
          return "line " + std::to_string(line_column(printed.text(), where.span.begin).line) + ": " +
                 printed_words(printed, where);
        };
        finding.evidence = {line(**first), line(*one)};
        finding.query = "The text says " + printed_words(printed, **first) + " in one place and " +
                        printed_words(printed, *one) + " in another. Which is right?";
      }
    }
  }
}

void check_t4(const ReviewInput& input, Findings& findings) {
  const auto& drafts = *input.pattern.drafts;
  if (drafts.size() < 2) {
    if (!drafts.empty()) findings.cannot("there is one draft only", "the next draft");
    return;
  }
  const Draft &before = drafts[drafts.size() - 2], &after = drafts.back();
  const PrintedView& printed = input.printed;
  for (const NotMoved& one :
       dependents_not_moved(before.text, read_manuscript(before), after.text, read_manuscript(after))) {
    Finding& finding = findings.add(one.what + " changed and nothing that depends on it");
    finding.apart = one.what;
    if (const Statement* changed = first_of(printed, one.changed)) show(finding, printed, *changed);
    std::vector<std::string> still;
    for (const Kind kind : one.still) {
      still.emplace_back(word_of(kind));
      if (const Statement* shown = first_of(printed, {kind})) rest_on(finding, printed, *shown);
    }
    finding.evidence = {before.name + ": " + quoted(one.was, 120), after.name + ": " + quoted(one.is, 120),
                        "as before: " + listed(still)};
    finding.query = "Since " + (before.name.empty() ? "the last draft" : before.name) + " " + one.what +
                    " changed, and " + listed(still) + " stayed as before. Were they worked out again?";
  }
}

void check_t5(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  if (!input.pattern.house().metres_line) return;
  if (!printed.whole(TextPart::block)) {
    findings.cannot("the yarn block is not there as a whole", "the whole yarn block");
    return;
  }
  std::vector<std::string> without;
  for (const RoleFigures& role : role_figures(input)) {
    bool printed_there = false;
    for (const Kind kind : {Kind::count, Kind::total_length, Kind::length_note})
      for (const Statement* one : printed.all(kind))
        printed_there =
            printed_there ||
            (one->subject == role.printed->label && measures(one->unit) == Measures::length &&
             (one->values.size() > 1 || printed.sizes() == 1 || (one->all_sizes && kind == Kind::count)));
    if (printed_there) continue;
    std::vector<std::optional<std::string>> figures;
    for (std::size_t i = 0; i < printed.sizes(); ++i)
      if (const SizeNeed* need = role.need_at(i))
        figures.push_back(metres_figure(metres(std::ceil(need->planned.value())), input.pattern.house()));
    if (figures.size() != input.pattern.sizes.size()) {
      without.push_back(role.printed->label);
      continue;
    }
    Finding& finding = findings.add("no metres a size, which others need to substitute");
    finding.roles = {role.printed->label};
    if (role.printed->role != nullptr) show(finding, printed, *role.printed->role);
    const std::string line = role.printed->label + " " +
                             size_list(figures, input.pattern.sizes, input.pattern.house().brackets) + " m";
    finding.evidence = {"offered: " + line};
    finding.proposal_words = line;
    finding.query = "Our readers like to substitute. May we add: " + line + "?";
  }
  if (!without.empty())
    findings.cannot("no need is known in every size for " + listed(without),
                    "the stitches of its pieces, or a weighed sample");
}

}  // namespace skeinproof
