// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/slip_candidates.h"

#include <algorithm>
#include <functional>
#include <map>
#include <set>
#include <unordered_set>

#include "core/review/slip_lists.h"

namespace skeinproof {
namespace {

// Figures in which one digit may be another. Names made of digits (shades, sizes) say nothing by their
// digits, and needles come in few lengths.
constexpr StatementKinds counted_kinds = {
    StatementKind::measurement,   StatementKind::ease,         StatementKind::sample_weight,
    StatementKind::model_measure, StatementKind::fibre,        StatementKind::put_up_length,
    StatementKind::put_up_weight, StatementKind::band_gauge,   StatementKind::number_of_colours,
    StatementKind::strands,       StatementKind::count,        StatementKind::length_note,
    StatementKind::total_count,   StatementKind::total_length, StatementKind::gauge_stitches,
    StatementKind::gauge_rows,    StatementKind::gauge_over,   StatementKind::needle,
    StatementKind::notion,        StatementKind::stitches};

constexpr std::size_t most_digits = 5;
constexpr std::size_t most_touched = 400;  // statements; the gravest findings come first

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// Which figures the findings rest on.
class Involved {
 public:
  Involved(const ReviewInput& input, const std::vector<Finding>& findings) : printed_(input.printed) {
    const auto& statements = printed_.reading().statements;
    figures.resize(statements.size());
    for (std::size_t s = 0; s < statements.size(); ++s) figures[s].assign(statements[s].values.size(), false);
    for (std::size_t s = 0; s < statements.size(); ++s) by_mention_[statements[s].mention].push_back(s);
    for (const Finding& finding : findings)
      if (touched.size() < most_touched) take(finding);
  }

  std::set<std::size_t> touched;           // statements
  std::vector<std::vector<bool>> figures;  // by statement and value

 private:
  void take(const Finding& finding) {
    const auto& statements = printed_.reading().statements;
    std::set<std::size_t> rests(finding.statements.begin(), finding.statements.end());
    for (const TextSpan& place : finding.places) {
      const auto from = std::lower_bound(
          statements.begin(), statements.end(), place.begin,
          [](const Statement& statement, std::size_t at) { return statement.span.begin < at; });
      auto s = from == statements.begin() ? from : std::prev(from);
      for (; s != statements.end() && s->span.begin <= place.end; ++s)
        if (s->span.holds(place) || place.holds(s->span))
          rests.insert(static_cast<std::size_t>(s - statements.begin()));
    }
    for (const std::size_t s : rests) {
      if (s >= statements.size()) continue;
      take(finding, s);
      for (const std::size_t other : by_mention_[statements[s].mention])
        if (statements[other].kind == statements[s].kind) take(finding, other);
    }
  }

  void take(const Finding& finding, std::size_t s) {
    const Statement& statement = printed_.reading().statements[s];
    touched.insert(s);
    const bool of_sizes = statement.values.size() > 1 && statement.values.size() == printed_.sizes();
    for (std::size_t v = 0; v < statement.values.size(); ++v) {
      const bool wanted = !of_sizes || finding.sizes.empty() ||
                          std::find(finding.sizes.begin(), finding.sizes.end(), printed_.size_labels()[v]) !=
                              finding.sizes.end();
      if (wanted) figures[s][v] = true;
    }
  }

  const PrintedView& printed_;
  std::map<int, std::vector<std::size_t>> by_mention_;
};

class Collector {
 public:
  Collector(const ReviewInput& input, const std::vector<Finding>& findings, std::size_t most)
      : input_(input),
        printed_(input.printed),
        findings_(findings),
        involved_(input, findings),
        most_(most) {}

  std::vector<SlipCandidate> collect() {
    for (const std::size_t s : involved_.touched) {
      if (full()) break;
      const Statement& statement = printed_.reading().statements[s];
      exchange_units(s);
      if (counted_kinds.holds(statement.kind)) {
        for (std::size_t v = 0; v < statement.values.size(); ++v)
          if (involved_.figures[s][v]) change_figure(s, v);
        exchange_neighbours(s);
      }
    }
    for (SlipCandidate& candidate : list_slips(input_, involved_.touched)) add(std::move(candidate));
    for (SlipCandidate& candidate : word_slips(input_, involved_.touched)) add(std::move(candidate));
    for (SlipCandidate& candidate : values_in_force(input_, involved_.touched)) add(std::move(candidate));
    for (const Finding& finding : findings_)
      if (!finding.proposal.empty()) add({SlipKind::proposed, "as proposed", finding.proposal, {}});
    return std::move(candidates_);
  }

 private:
  bool full() const { return candidates_.size() >= most_; }

  void add(SlipCandidate candidate) {
    if (full() || candidate.edits.empty()) return;
    std::sort(candidate.edits.begin(), candidate.edits.end(),
              [](const TextEdit& a, const TextEdit& b) { return a.span.begin < b.span.begin; });
    // Edits at different places may make the same text: "1" put before or behind another "1".
    std::string after = edited(printed_.text(), candidate.edits);
    const std::size_t same = std::hash<std::string>{}(after);
    if (after != printed_.text() && seen_.insert(same).second) candidates_.push_back(std::move(candidate));
  }

  void add_figure(SlipKind kind, std::string name, std::size_t s, std::size_t v, std::string after) {
    const TextSpan span = printed_.reading().statements[s].values[v].span;
    add({kind, std::move(name), {{span, after}}, {{s, v, after}}});
  }

  void change_figure(std::size_t s, std::size_t v) {
    const Statement& statement = printed_.reading().statements[s];
    const PrintedValue& value = statement.values[v];
    const std::string words(printed_.words(value));
    const auto digits = static_cast<std::size_t>(std::count_if(words.begin(), words.end(), is_digit));
    if (!value.number || digits == 0 || digits > most_digits) return;
    for (std::size_t i = 0; i + 1 < words.size(); ++i)
      if (is_digit(words[i]) && is_digit(words[i + 1]) && words[i] != words[i + 1] && words[i + 1] != '0') {
        std::string after = words;
        std::swap(after[i], after[i + 1]);
        add_figure(SlipKind::digits_transposed, "digits transposed", s, v, after);
      }
    for (std::size_t i = 0; i < words.size(); ++i) {
      if (!is_digit(words[i])) continue;
      for (char d = '0'; d <= '9'; ++d) {
        std::string after = words;
        after[i] = d;
        if (d != words[i] && (d != '0' || i > 0)) add_figure(SlipKind::digit, "one digit", s, v, after);
      }
    }
    const bool counts = statement.kind == StatementKind::count ||
                        statement.kind == StatementKind::total_count ||
                        statement.kind == StatementKind::notion;
    if (counts && words.find_first_not_of("0123456789") == std::string::npos)
      for (const int step : {-1, 1}) {
        const long other = static_cast<long>(*value.number) + step;
        if (other > 0) add_figure(SlipKind::count_by_one, "one more or less", s, v, std::to_string(other));
      }
  }

  void exchange_neighbours(std::size_t s) {
    const Statement& statement = printed_.reading().statements[s];
    for (std::size_t v = 0; v + 1 < statement.values.size(); ++v) {
      if (!involved_.figures[s][v] && !involved_.figures[s][v + 1]) continue;
      const std::string a(printed_.words(statement.values[v])), b(printed_.words(statement.values[v + 1]));
      if (a == b) continue;
      add({SlipKind::neighbours_exchanged,
           "exchange " + a + " and " + b,
           {{statement.values[v].span, b}, {statement.values[v + 1].span, a}},
           {{s, v, b}, {s, v + 1, a}}});
    }
  }

  // The figures of one breath in two units of the same measure, each taking the other's place.
  void exchange_units(std::size_t s) {
    const auto measures_same = [](PrintedUnit a, PrintedUnit b) {
      const auto pair = [&](PrintedUnit x, PrintedUnit y) {
        return (a == x && b == y) || (a == y && b == x);
      };
      return pair(PrintedUnit::metre, PrintedUnit::yard) || pair(PrintedUnit::gram, PrintedUnit::ounce) ||
             pair(PrintedUnit::centimetre, PrintedUnit::inch);
    };
    const Statement& one = printed_.reading().statements[s];
    for (const Statement* other : printed_.mentioned_with(one)) {
      const std::size_t t = printed_.index(*other);
      if (t <= s || other->kind != one.kind || !measures_same(one.unit, other->unit)) continue;
      if (one.values.empty() || one.values.size() != other->values.size()) continue;
      SlipCandidate candidate{
          SlipKind::units_exchanged,
          "exchange " + std::string(word_of(one.unit)) + " and " + std::string(word_of(other->unit)),
          {},
          {}};
      for (std::size_t v = 0; v < one.values.size(); ++v) {
        const std::string a(printed_.words(one.values[v])), b(printed_.words(other->values[v]));
        candidate.edits.push_back({one.values[v].span, b});
        candidate.edits.push_back({other->values[v].span, a});
        candidate.figures.push_back({s, v, b});
        candidate.figures.push_back({t, v, a});
      }
      add(std::move(candidate));
    }
  }

  const ReviewInput& input_;
  const PrintedView& printed_;
  const std::vector<Finding>& findings_;
  Involved involved_;
  std::size_t most_;
  std::vector<SlipCandidate> candidates_;
  std::unordered_set<std::size_t> seen_;  // texts
};

}  // namespace

std::vector<SlipCandidate> slip_candidates(const ReviewInput& input, const std::vector<Finding>& findings,
                                           std::size_t most) {
  return Collector(input, findings, most).collect();
}

int changed_characters(std::string_view text, const std::vector<TextEdit>& edits) {
  int changed = 0;
  for (const TextEdit& edit : edits) {
    const std::string_view before = words_at(text, edit.span);
    std::size_t head = 0, tail = 0;
    const std::size_t least = std::min(before.size(), edit.after.size());
    while (head < least && before[head] == edit.after[head]) ++head;
    while (tail < least - head &&
           before[before.size() - 1 - tail] == edit.after[edit.after.size() - 1 - tail])
      ++tail;
    changed += static_cast<int>(std::max(before.size(), edit.after.size()) - head - tail);
  }
  return changed;
}

}  // namespace skeinproof
