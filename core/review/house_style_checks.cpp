// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/manuscript/words.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/units/fraction_glyphs.h"

namespace skeinproof {
namespace {

// A style is chosen where its way of writing is another than the one every new pattern starts from; how much
// yarn a house allows is no way of writing.
bool style_chosen(const HouseStyle& house) {
  const HouseStyle fresh;
  HouseStyle writing = house;
  writing.name = fresh.name;
  writing.length_notes = fresh.length_notes;
  writing.length_note_share = fresh.length_note_share;
  writing.allowance_pct = fresh.allowance_pct;
  writing.swatch_counted = fresh.swatch_counted;
  writing.rounding = fresh.rounding;
  writing.hair_over_share = fresh.hair_over_share;
  writing.minimum_allowance_pct = fresh.minimum_allowance_pct;
  writing.note_step_m = fresh.note_step_m;
  writing.query_wordings = fresh.query_wordings;
  return writing != fresh;
}

bool is_digit(char32_t c) { return c >= U'0' && c <= U'9'; }

// The way a fact is written, its figures left out: "175 m / 191 yd" is "0 m / 0 yd", "1¾ oz" "0¾ oz" whatever
// the fraction.
std::string way_of_writing(std::string_view words) {
  std::vector<char32_t> way;
  const auto points = code_points(tidy_spaces(words));
  for (std::size_t i = 0; i < points.size(); ++i) {
    const char32_t c = points[i];
    const bool mark = (c == U'.' || c == U',' || c == U'/') && i > 0 && i + 1 < points.size() &&
                      is_digit(points[i - 1]) && is_digit(points[i + 1]);
    if (is_digit(c)) {
      if (way.empty() || way.back() != U'0') way.push_back(U'0');
    } else if (value_of_fraction_glyph(c)) {
      way.push_back(U'¾');
    } else if (mark) {
      way.push_back(c);
    } else if ((c == U' ' || c == U'\n' || c == U'\t' || c == U'\r') && !way.empty() && way.back() == U' ') {
      continue;
    } else {
      way.push_back(c == U'\n' || c == U'\t' || c == U'\r' ? U' ' : c);
    }
  }
  // Whole figures and such with a fraction are one way where only the fraction comes and goes.
  std::string text = to_utf8(way);
  for (const std::string_view both : {"0¾", "¾"})
    for (auto at = text.find(both); at != std::string::npos; at = text.find(both, at))
      text.replace(at, both.size(), "~");
  return text;
}

bool written_alike(const std::string& printed, const std::string& wanted) {
  std::string one = way_of_writing(printed), other = way_of_writing(wanted);
  // A figure without a fraction says nothing about how the house writes fractions.
  if (one.find('~') == std::string::npos) std::replace(other.begin(), other.end(), '~', '0');
  if (other.find('~') == std::string::npos && one.find("0/0") == std::string::npos)
    std::replace(one.begin(), one.end(), '~', '0');
  return one == other;
}

class StyleFindings {
 public:
  StyleFindings(const ReviewInput& input, Findings& findings) : input_(input), findings_(findings) {}

  void compare(const std::vector<const Statement*>& statements, const TextSpan& span,
               const std::string& wanted, const char* what, const std::string& of, bool may_propose = true) {
    const std::string printed(input_.printed.words(span));
    if (printed.empty() || wanted.empty() || written_alike(printed, wanted)) return;
    Finding& finding = findings_.add(std::string(what) + " written otherwise than the house writes it: " +
                                     printed_words(input_.printed, span));
    finding.apart = std::string(what) + (of.empty() ? "" : " " + of);
    if (input_.printed.role(of) != nullptr) finding.roles = {of};
    finding.places.push_back(span);
    for (const Statement* one : statements) rest_on(finding, input_.printed, *one);
    finding.evidence = {"printed: " + printed_words(input_.printed, span), "house: " + quoted(wanted, 120)};
    if (may_propose) propose(finding, input_.printed, span, wanted);
    finding.query =
        "Our house writes this " + quoted(wanted, 120) + " for " + printed_words(input_.printed, span) + ".";
  }

 private:
  const ReviewInput& input_;
  Findings& findings_;
};

TextSpan around(const std::vector<const Statement*>& statements) {
  TextSpan span = statements.front()->span;
  for (const Statement* one : statements) {
    span.begin = std::min(span.begin, one->span.begin);
    span.end = std::max(span.end, one->span.end);
  }
  return span;
}

std::optional<double> figure_in(const std::vector<const Statement*>& statements, PrintedUnit unit) {
  for (const Statement* one : statements)
    if (one->unit == unit && !one->values.empty() && one->values.front().number)
      return one->values.front().number;
  return std::nullopt;
}

void compare_put_up(const ReviewInput& input, StyleFindings& style, const PrintedYarn& yarn) {
  if (yarn.lengths.empty() || yarn.weights.empty()) return;
  std::vector<const Statement*> breath;
  for (const Statement* one : input.printed.mentioned_with(*yarn.lengths.front()))
    if (one->kind == StatementKind::put_up_length || one->kind == StatementKind::put_up_weight ||
        one->kind == StatementKind::put_up_word)
      breath.push_back(one);
  const auto m = figure_in(breath, PrintedUnit::metre), yd = figure_in(breath, PrintedUnit::yard);
  const auto g = figure_in(breath, PrintedUnit::gram), oz = figure_in(breath, PrintedUnit::ounce);
  if ((!m && !yd) || (!g && !oz)) return;
  Yarn written;
  written.put_up.length = Entered<Metres>{metres(m ? *m : *yd * metres_per_yard), ""};
  written.put_up.weight = Entered<Grams>{grams(g ? *g : *oz * grams_per_ounce), ""};
  bool worded = false;
  for (const Statement* one : breath)
    if (one->kind == StatementKind::put_up_word)
      if (const auto word = from_word<SkeinWord>(compared(one->words))) {
        written.put_up.word = *word;
        worded = true;
      }
  const TextSpan span = around(breath);
  std::string wanted = put_up_words(written, input.pattern.house());
  const std::string bracketed = put_up_words(written, input.pattern.house(), Inside::brackets);
  const std::string printed(input.printed.words(span));
  if (!worded)  // the word may stand where the reading did not take it for the put-up's
    for (std::string* one : {&wanted})
      if (const auto at = one->rfind(' ');
          at != std::string::npos && one->find(' ', at + 1) == std::string::npos)
        one->erase(at);
  if (written_alike(printed, bracketed)) return;
  const bool agree = !m || !yd || std::abs(*m - *yd * metres_per_yard) <= 0.02 * *m;
  style.compare(breath, span, wanted, "put-up", yarn.name, agree);
}

void compare_shades(const ReviewInput& input, StyleFindings& style) {
  for (const PrintedRole& role : input.printed.roles()) {
    if (role.shade == nullptr || role.number == nullptr) continue;
    const std::vector<const Statement*> both{role.shade, role.number};
    const TextSpan span = around(both);
    // Far apart they are two statements of their own.
    if (span.end - span.begin >
        input.printed.words(role.shade->span).size() + input.printed.words(role.number->span).size() + 12)
      continue;
    Shade shade;
    shade.name =
        role.shade->words.empty() ? std::string(input.printed.words(role.shade->span)) : role.shade->words;
    shade.number =
        role.number->words.empty() ? std::string(input.printed.words(role.number->span)) : role.number->words;
    if (!shade.number.empty() && shade.number.front() == '#') shade.number.erase(0, 1);
    style.compare(both, span, shade_words(shade, input.pattern.house()), "shade", role.label);
  }
}

void compare_lists(const ReviewInput& input, StyleFindings& style) {
  const PrintedView& printed = input.printed;
  if (input.pattern.house().unit_word == UnitWord::on_each_value) return;
  for (const StatementKind kind :
       {StatementKind::count, StatementKind::measurement, StatementKind::size_labels})
    for (const Statement* list : printed.all(kind)) {
      if (list->values.size() < 2 || list->values.size() != input.pattern.sizes.size()) continue;
      std::vector<std::optional<std::string>> figures;
      for (const PrintedValue& value : list->values) figures.emplace_back(printed.words(value));
      std::string wanted = size_list(figures, input.pattern.sizes, input.pattern.house().brackets);
      while (!wanted.empty() && (wanted.back() == ')' || wanted.back() == ']')) wanted.pop_back();
      const TextSpan span{list->values.front().span.begin, list->values.back().span.end};
      std::string name = list->subject;
      if (list->unit != PrintedUnit::none && printed.role(name) == nullptr)
        name += " " + std::string(word_of(list->unit));
      style.compare({list}, span, wanted, "list", name, false);
    }
}

void compare_needles(const ReviewInput& input, StyleFindings& style) {
  for (const Statement* needle : input.printed.all(StatementKind::needle)) {
    if (needle->unit != PrintedUnit::millimetre || needle->values.size() != 1 ||
        !needle->values.front().number)
      continue;
    std::vector<const Statement*> breath;
    for (const Statement* one : input.printed.mentioned_with(*needle))
      if (one->kind == StatementKind::needle && one->values.size() == 1) breath.push_back(one);
    if (breath.size() < 2) continue;
    TextSpan span{breath.front()->values.front().span.begin, breath.front()->span.end};
    for (const Statement* one : breath) {
      span.begin = std::min(span.begin, one->span.begin);
      span.end = std::max(span.end, one->span.end);
    }
    std::string wanted =
        needle_words(centimetres(*needle->values.front().number / 10), input.pattern.house());
    // A bracket that closes behind the last statement belongs to both.
    const std::string_view text = input.printed.text();
    if (span.end < text.size() && text[span.end] == ')' &&
        input.printed.words(span).find('(') != std::string_view::npos)
      ++span.end;
    style.compare(breath, span, wanted, "needle", std::string(input.printed.words(span)), false);
  }
}

void compare_composition(const ReviewInput& input, StyleFindings& style, const PrintedYarn& yarn) {
  if (yarn.fibres.empty()) return;
  Yarn written;
  std::vector<const Statement*> breath;
  for (const Statement* one : yarn.fibres) {
    if (one->mention != yarn.fibres.front()->mention) continue;
    if (one->values.empty() || !one->values.front().number || one->words.empty()) return;
    FibreShare share;
    share.words = one->words;
    share.percent = {*one->values.front().number, ""};
    written.composition.push_back(share);
    breath.push_back(one);
  }
  style.compare(breath, around(breath), composition_words(written, input.pattern.house()), "composition",
                yarn.name);
}

}  // namespace

void check_t2(const ReviewInput& input, Findings& findings) {
  if (input.pattern.draft() == nullptr) return;  // what the house itself writes is in its style
  if (!style_chosen(input.pattern.house())) {
    findings.cannot("no house style was chosen", "the house's way of writing");
    return;
  }
  StyleFindings style(input, findings);
  for (const PrintedYarn& yarn : input.printed.yarns()) {
    compare_composition(input, style, yarn);
    compare_put_up(input, style, yarn);
  }
  compare_shades(input, style);
  compare_lists(input, style);
  compare_needles(input, style);
}

}  // namespace skeinproof
