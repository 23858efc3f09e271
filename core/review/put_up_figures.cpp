// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "core/base/text.h"
#include "core/manuscript/words.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/put_up_rules.h"
#include "core/review/yarn_contents.h"
#include "core/units/quantity.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

constexpr double half_of_nothing = 1e-9;

bool is_metric(PrintedUnit unit) {
  return unit == PrintedUnit::metre || unit == PrintedUnit::gram || unit == PrintedUnit::kilogram;
}
bool is_imperial(PrintedUnit unit) {
  return unit == PrintedUnit::yard || unit == PrintedUnit::ounce || unit == PrintedUnit::pound;
}

// The same thing said in both systems in one breath.
struct BothSystems {
  const Statement* metric = nullptr;
  const Statement* imperial = nullptr;
};
std::vector<BothSystems> said_in_both(const PrintedView& printed, const StatementKinds& kinds) {
  struct Waiting {
    std::vector<const Statement*> metric, imperial;
  };
  std::map<std::pair<StatementKind, int>, Waiting> waiting;
  for (const Statement& one : printed.reading().statements) {
    if (!kinds.holds(one.kind)) continue;
    Waiting& group = waiting[{one.kind, one.mention}];
    if (is_metric(one.unit)) group.metric.push_back(&one);
    if (is_imperial(one.unit)) group.imperial.push_back(&one);
  }
  std::vector<BothSystems> both;
  for (const auto& [key, group] : waiting)
    for (std::size_t i = 0; i < std::min(group.metric.size(), group.imperial.size()); ++i)
      if (group.metric[i]->values.size() == group.imperial[i]->values.size())
        both.push_back({group.metric[i], group.imperial[i]});
  std::sort(both.begin(), both.end(), [](const BothSystems& a, const BothSystems& b) {
    return span_of(*a.metric, *a.imperial).begin < span_of(*b.metric, *b.imperial).begin;
  });
  return both;
}

std::vector<BothSystems> lengths_in_both(const PrintedView& printed) {
  using Kind = StatementKind;
  std::vector<BothSystems> lengths;
  for (const BothSystems& pair :
       said_in_both(printed, {Kind::put_up_length, Kind::length_note, Kind::total_length, Kind::count}))
    if (pair.metric->unit == PrintedUnit::metre && pair.imperial->unit == PrintedUnit::yard)
      lengths.push_back(pair);
  return lengths;
}

const PrintedYarn* yarn_of(const PrintedView& printed, const Statement& statement) {
  const auto& yarns = printed.yarns();
  if (statement.yarn < 0) return yarns.size() == 1 ? &yarns.front() : nullptr;
  return static_cast<std::size_t>(statement.yarn) < yarns.size()
             ? &yarns[static_cast<std::size_t>(statement.yarn)]
             : nullptr;
}

const Yarn* fact_of(const ReviewInput& input, const Statement& statement) {
  const PrintedYarn* yarn = yarn_of(input.printed, statement);
  return yarn == nullptr ? nullptr : input.pattern.yarn(yarn->fact);
}

// Whom a pair speaks of: the role of a note, the yarn of a put-up.
void name_subject(Finding& finding, const PrintedView& printed, const Statement& statement) {
  if (statement.kind != StatementKind::put_up_length && statement.kind != StatementKind::put_up_weight) {
    if (!statement.subject.empty()) finding.roles.push_back(statement.subject);
    return;
  }
  if (const PrintedYarn* yarn = yarn_of(printed, statement)) finding.apart = yarn->name;
}

int decimals_of(const PrintedValue& value) {
  return value.half_step > 0.2 ? 0 : value.half_step > 0.02 ? 1 : 2;
}

std::string written_like(const PrintedValue& value, double figure, const HouseStyle& house) {
  return show_short(figure, decimals_of(value), NumberStyle{house.mark, house.fractions, false});
}

std::size_t changed_characters(std::string_view before, std::string_view after) {
  std::size_t same = 0;
  for (std::size_t i = 0; i < std::min(before.size(), after.size()); ++i)
    if (before[i] == after[i]) ++same;
  return std::max(before.size(), after.size()) - same;
}

// The words of a unit behind the last figure of a statement; empty where it stands elsewhere.
TextSpan unit_span(const PrintedView& printed, const Statement& statement) {
  const auto letter = [&](std::size_t i) {
    const char c = printed.text()[i];
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  };
  TextSpan unit{statement.values.back().span.end, statement.span.end};
  while (unit.begin < unit.end && !letter(unit.begin)) ++unit.begin;
  while (unit.end > unit.begin && !letter(unit.end - 1)) --unit.end;
  return unit;
}

// Exchanges the units of a pair, or their figures where the units do not stand behind them.
void propose_exchange(Finding& finding, const PrintedView& printed, const BothSystems& pair) {
  const TextSpan whole = span_of(*pair.metric, *pair.imperial);
  const TextSpan metric = unit_span(printed, *pair.metric), imperial = unit_span(printed, *pair.imperial);
  const auto exchange = [&](const TextSpan& one, const TextSpan& other) {
    finding.proposal.push_back({one, std::string(printed.words(other))});
    finding.proposal.push_back({other, std::string(printed.words(one))});
  };
  if (!metric.empty() && !imperial.empty()) {
    exchange(metric, imperial);
  } else {
    for (std::size_t i = 0; i < pair.metric->values.size(); ++i)
      exchange(pair.metric->values[i].span, pair.imperial->values[i].span);
  }
  std::vector<TextEdit> within;
  for (TextEdit edit : finding.proposal) {
    edit.span.begin -= whole.begin;
    edit.span.end -= whole.begin;
    within.push_back(std::move(edit));
  }
  const std::string_view before = printed.words(whole);
  finding.proposal_words = std::string(before) + " → " + edited(before, within);
}

bool exchanging_mends(const BothSystems& pair) {
  for (std::size_t i = 0; i < pair.metric->values.size(); ++i) {
    const PrintedValue &m = pair.metric->values[i], &yd = pair.imperial->values[i];
    if (m.number && yd.number && !same_length(*yd.number, yd.half_step, *m.number, m.half_step)) return false;
  }
  return true;
}

// Replaces whichever figure the facts in force speak against, else the one that takes fewer new characters.
void propose_length(Finding& finding, const ReviewInput& input, const BothSystems& pair,
                    const PrintedValue& m, const PrintedValue& yd) {
  const HouseStyle& house = input.pattern.house();
  const std::string yards = written_like(yd, *m.number / metres_per_yard, house);
  const std::string metres_words = written_like(m, *yd.number * metres_per_yard, house);
  bool keep_metres = changed_characters(input.printed.words(yd), yards) <=
                     changed_characters(input.printed.words(m), metres_words);
  if (const Yarn* yarn = fact_of(input, *pair.metric);
      yarn != nullptr && yarn->put_up.length && pair.metric->kind == StatementKind::put_up_length) {
    const double known = yarn->put_up.length->value.value();
    if (std::abs(known - *m.number) <= m.half_step)
      keep_metres = true;
    else if (same_length(known, half_of_nothing, *yd.number, yd.half_step))
      keep_metres = false;
  }
  propose(finding, input.printed, keep_metres ? yd.span : m.span, keep_metres ? yards : metres_words);
}

std::string question_of(const Finding& finding, const BothSystems& pair) {
  if (finding.proposal.size() != 1) return "Which is right?";
  const TextEdit& edit = finding.proposal.front();
  return "Is it " + edit.after + (pair.imperial->span.holds(edit.span) ? " yd?" : " m?");
}

}  // namespace

bool same_length(double metres, double metres_half_step, double yards, double yards_half_step) {
  return std::abs(yards - metres / metres_per_yard) <= yards_half_step + half_of_nothing ||
         std::abs(metres - metres_per_yard * yards) <= metres_half_step + half_of_nothing;
}

void metres_and_yards_agree(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const double style = input.need.constant_of("review_length_style_pct");
  const double ask = input.need.constant_of("review_length_ask_pct");
  for (const BothSystems& pair : lengths_in_both(input.printed)) {
    Finding draft;
    Severity worst = Severity::style;
    bool any = false;
    std::vector<std::string> working;
    for (std::size_t i = 0; i < pair.metric->values.size(); ++i) {
      const PrintedValue &m = pair.metric->values[i], &yd = pair.imperial->values[i];
      if (!m.number || !yd.number || !(*m.number > 0)) continue;
      if (same_length(*m.number, m.half_step, *yd.number, yd.half_step)) continue;
      const double apart_pct = std::abs(*m.number - metres_per_yard * *yd.number) / *m.number * 100;
      const Severity severity = apart_pct <= style ? Severity::style
                                : apart_pct <= ask ? Severity::ask
                                                   : Severity::stop;
      worst = any ? std::min(worst, severity) : severity;
      any = true;
      working.push_back(words.metres(*m.number) + " = " + words.number(*m.number / metres_per_yard) +
                        " yd; " + words.number(*yd.number) +
                        " yd = " + words.metres(*yd.number * metres_per_yard) + "; apart by " +
                        words.number(apart_pct) + " % of the metres");
      if (!exchanging_mends(pair)) propose_length(draft, input, pair, m, yd);
    }
    if (!any) continue;
    const std::string shown = printed_words(input.printed, span_of(*pair.metric, *pair.imperial));
    Finding& finding = findings.add(worst, "metres and yards differ: " + shown);
    finding.proposal = std::move(draft.proposal);
    finding.proposal_words = std::move(draft.proposal_words);
    name_subject(finding, input.printed, *pair.metric);
    finding.places.push_back(span_of(*pair.metric, *pair.imperial));
    rest_on(finding, input.printed, *pair.metric);
    rest_on(finding, input.printed, *pair.imperial);
    const bool exchanged = exchanging_mends(pair);
    if (exchanged) propose_exchange(finding, input.printed, pair);
    finding.evidence = std::move(working);
    finding.query = "The text has " + shown + ": " + finding.evidence.front() + ". " +
                    (exchanged ? "Are the units exchanged?" : question_of(finding, pair));
  }
}

void yards_not_below_metres(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  for (const BothSystems& pair : lengths_in_both(input.printed))
    for (std::size_t i = 0; i < pair.metric->values.size(); ++i) {
      const PrintedValue &m = pair.metric->values[i], &yd = pair.imperial->values[i];
      if (!m.number || !yd.number || !(*yd.number < *m.number)) continue;
      // A few hundredths of a metre may round to more metres than yards.
      if (same_length(*m.number, m.half_step, *yd.number, yd.half_step)) continue;
      const std::string shown = printed_words(input.printed, span_of(*pair.metric, *pair.imperial));
      Finding& finding = findings.add("fewer yards than metres: " + shown);
      name_subject(finding, input.printed, *pair.metric);
      finding.places.push_back(span_of(*pair.metric, *pair.imperial));
      rest_on(finding, input.printed, *pair.metric);
      rest_on(finding, input.printed, *pair.imperial);
      finding.evidence.push_back(
          "a yard is 0.9144 m, so there are always more yards than metres: " + words.number(*yd.number) +
          " yd < " + words.metres(*m.number) + " cannot be");
      if (exchanging_mends(pair)) {
        finding.evidence.push_back(words.number(*yd.number) +
                                   " m = " + words.number(*yd.number / metres_per_yard) + " yd");
        propose_exchange(finding, input.printed, pair);
      }
      finding.query = "A yard is shorter than a metre, so " + words.number(*yd.number) + " yd cannot be " +
                      words.metres(*m.number) + ". Are the two exchanged?";
      break;
    }
}

void ounces_and_grams_agree(const ReviewInput& input, Findings& findings) {
  constexpr double fine_ounces = 0.0501;  // half a tenth: figures as fine as that may be rounded
  const FindingWords words(input);
  const HouseStyle& house = input.pattern.house();
  const double most_pct = input.need.constant_of("review_ounces_pct");
  const auto grams_of = [](const Statement& statement, double value) {
    switch (statement.unit) {
      case PrintedUnit::kilogram:
        return value * 1000;
      case PrintedUnit::ounce:
        return value * grams_per_ounce;
      case PrintedUnit::pound:
        return value * grams_per_ounce * 16;
      default:
        return value;
    }
  };
  for (const BothSystems& pair :
       said_in_both(input.printed, {StatementKind::put_up_weight, StatementKind::sample_weight}))
    for (std::size_t i = 0; i < pair.metric->values.size(); ++i) {
      const PrintedValue &g = pair.metric->values[i], &oz = pair.imperial->values[i];
      if (!g.number || !oz.number || !(*g.number > 0)) continue;
      const double metric = grams_of(*pair.metric, *g.number), other = grams_of(*pair.imperial, *oz.number);
      const double apart = std::abs(metric - other);
      const bool rounded =
          oz.half_step < fine_ounces && apart <= grams_of(*pair.imperial, oz.half_step) + half_of_nothing;
      if (apart / metric * 100 <= most_pct || rounded) continue;
      const std::string shown = printed_words(input.printed, span_of(*pair.metric, *pair.imperial));
      Finding& finding = findings.add("grams and ounces differ: " + shown);
      name_subject(finding, input.printed, *pair.metric);
      show(finding, input.printed, *pair.imperial);
      show(finding, input.printed, *pair.metric);
      const std::string unit(word_of(pair.imperial->unit));
      finding.evidence = {words.number(*oz.number, 2) + " " + unit + " = " + words.number(other) + " g; " +
                              words.number(metric) + " g = " + words.number(metric / grams_per_ounce, 2) +
                              " oz",
                          "apart by " + words.number(apart / metric * 100) + " % of the grams"};
      const Yarn* yarn = fact_of(input, *pair.metric);
      const bool ounces_known =
          yarn != nullptr && yarn->put_up.weight && pair.metric->kind == StatementKind::put_up_weight &&
          std::abs(yarn->put_up.weight->value.value() - other) / other * 100 <= most_pct;
      const bool plain_units =
          pair.metric->unit == PrintedUnit::gram && pair.imperial->unit == PrintedUnit::ounce;
      std::string question = "Which is right?";
      if (plain_units && ounces_known) {
        const std::string right = grams_figure(yarn->put_up.weight->value, house);
        propose(finding, input.printed, g.span, right);
        question = "Is it " + right + " g?";
      } else if (plain_units) {
        const bool decimal = input.printed.words(oz).find_first_of(".,") != std::string_view::npos;
        const std::string right =
            decimal ? show_short(metric / grams_per_ounce, 2, NumberStyle{house.mark, house.ounces, false})
                    : ounces_figure(grams(metric), house);
        propose(finding, input.printed, oz.span, right);
        question = "Is it " + right + " oz?";
      }
      finding.query = "The text has " + shown + ", but " + finding.evidence.front() + ". " + question;
    }
}

}  // namespace skeinproof
