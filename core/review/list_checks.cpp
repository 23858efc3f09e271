// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/text.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/printed_lists.h"
#include "core/review/printed_measures.h"
#include "core/review/printed_words.h"
#include "core/review/role_figures.h"

namespace skeinproof {
namespace {

using Kind = StatementKind;
constexpr std::string_view practice = "common practice, no source";
constexpr StatementKinds every_list = {Kind::size_labels,  Kind::role,        Kind::count,
                                       Kind::length_note,  Kind::measurement, Kind::total_count,
                                       Kind::total_length, Kind::stitches};
constexpr StatementKinds counts = {Kind::size_labels, Kind::role, Kind::count, Kind::put_up_length,
                                   Kind::put_up_weight};

constexpr std::array all_rows = {
    Check{"L1", "Every list has as many values as there are sizes.", Severity::stop, every_list, practice,
          check_l1},
    Check{"L2", "Lists are bracketed and separated like the sizes line.", Severity::style, every_list,
          practice, check_l2},
    Check{"L3", "A count never falls as the size grows.", Severity::stop, counts, practice, check_l3},
    Check{"L4", "All counts of a colour fit one way of growing from size to size.", Severity::ask, counts,
          practice, check_l4},
    Check{"L5", "A count that is the same for all sizes leaves room for the growth of the sizes.",
          Severity::ask, counts, practice, check_l5},
    Check{"L6",
          "The counts of all colours add to the total, size by size.",
          Severity::stop,
          {Kind::size_labels, Kind::role, Kind::count, Kind::total_count},
          practice,
          check_l6},
    Check{"L7", "No list fits its need only when it is moved one place.", Severity::ask, counts, practice,
          check_l7},
    Check{"L8", "No two colours' lists fit each other's need better than their own.", Severity::ask, counts,
          practice, check_l8},
    Check{"L9",
          "A measurement that steps from size to size does not stand still just once.",
          Severity::ask,
          {Kind::size_labels, Kind::measurement},
          practice,
          check_l9},
    Check{"L10",
          "Sizes have names of their own, in order, and the same ones everywhere.",
          Severity::stop,
          {Kind::size_labels},
          practice,
          check_l10},
    Check{"L11",
          "The size and the shades of the sample are said, and of a garment the ease or the model's measure.",
          Severity::ask,
          {Kind::size_labels, Kind::sample_size, Kind::sample_shades, Kind::ease, Kind::model_measure,
           Kind::item, Kind::title, Kind::shade_name, Kind::role},
          practice,
          check_l11},
};

// A list that says for which sizes alone it stands.
bool for_some_sizes(const PrintedView& printed, const Statement& list) {
  const TextSpan around = sentence_around(printed.text(), list.span.begin);
  return says(lower_ascii(printed.words(around)), {"only", "these sizes"});
}

std::string words_of(const PrintedView& printed, const PrintedValue* value) {
  return value != nullptr ? std::string(printed.words(*value)) : std::string();
}

std::vector<std::string> list_under_sizes(const PrintedView& printed, const std::string& name,
                                          const std::vector<const PrintedValue*>& values) {
  std::vector<std::string> sizes{"size"}, figures{name};
  for (std::size_t i = 0; i < printed.sizes(); ++i) {
    sizes.push_back(printed.size_labels()[i]);
    figures.push_back(words_of(printed, i < values.size() ? values[i] : nullptr));
  }
  return in_columns({sizes, figures});
}

std::string in_unit(const FindingWords& words, double value, PrintedUnit unit) {
  if (unit == PrintedUnit::skein) return words.skeins(value);
  return words.number(value, 2) + " " + std::string(word_of(unit));
}

void too_few(const ReviewInput& input, Finding& finding, const PrintedFact& fact) {
  const PrintedView& printed = input.printed;
  const MissingValues missing = missing_values(input, fact.first());
  std::vector<const PrintedValue*> laid;
  std::size_t next = 0;
  for (std::size_t i = 0; i < printed.sizes(); ++i) {
    const bool gap = std::find(missing.sizes.begin(), missing.sizes.end(), i) != missing.sizes.end();
    laid.push_back(gap || next >= fact.first().values.size() ? nullptr : &fact.first().values[next++]);
  }
  finding.evidence = list_under_sizes(printed, fact.name(), laid);
  for (const std::size_t size : missing.sizes) add_size(finding, printed, size);
  if (missing.sizes.size() != 1) return;
  const std::size_t size = missing.sizes.front();
  if (!missing.values.front()) {
    finding.evidence.push_back("by the brackets, size " + printed.size_labels()[size] + " is missing");
    return;
  }
  for (const Statement* list : fact.lists) {
    const auto value = facts_behind(input, *list)[size];
    if (list->values.size() + 1 != printed.sizes() || !value) continue;
    if (const auto edit = insert_value(printed, *list, size, *value)) {
      propose(finding, printed, edit->span, edit->after);
      finding.evidence.push_back("in force for size " + printed.size_labels()[size] + ": " +
                                 in_unit(FindingWords(input), *value, list->unit));
    }
  }
}

// The sizes line's own marks in place of a list's, where nothing but marks and spaces stands between values.
void propose_shape(Finding& finding, const PrintedView& printed, const Statement& list,
                   const Statement& line) {
  const auto balance = [](const std::vector<std::string>& marks) {
    int open = 0;
    for (const std::string& one : marks)
      for (const char c : one) open += c == '(' || c == '[' ? 1 : c == ')' || c == ']' ? -1 : 0;
    return open;
  };
  if (balance(marks_between(printed, list)) != balance(marks_between(printed, line))) return;
  std::vector<TextEdit> edits;
  for (std::size_t i = 1; i < list.values.size(); ++i) {
    const TextSpan gap{list.values[i - 1].span.end, list.values[i].span.begin};
    const std::string_view wanted =
        printed.words(TextSpan{line.values[i - 1].span.end, line.values[i].span.begin});
    const std::string_view there = printed.words(gap);
    const bool bare = there.find_first_not_of(" \t()[],;:/") == std::string_view::npos &&
                      wanted.find_first_not_of(" \t()[],;:/") == std::string_view::npos;
    if (!bare) return;
    if (there != wanted) edits.push_back({gap, std::string(wanted)});
  }
  finding.proposal = std::move(edits);
  if (!finding.proposal.empty()) finding.proposal_words = "brackets as in " + printed_words(printed, line);
}

bool same_marks(const std::vector<std::string>& one, const std::vector<std::string>& other) {
  const auto plain = [](std::string marks) {
    std::replace(marks.begin(), marks.end(), ';', ',');
    return marks;
  };
  return std::equal(one.begin(), one.end(), other.begin(), other.end(),
                    [&](const std::string& a, const std::string& b) { return plain(a) == plain(b); });
}

bool without_marks(const std::vector<std::string>& marks) {
  return std::all_of(marks.begin(), marks.end(), [](const std::string& one) { return one.empty(); });
}

// "Small: 5 balls; Medium: 6 balls": values told in a line or a sentence each.
bool told_in_pieces(const PrintedView& printed, const Statement& list) {
  for (std::size_t i = 0; i + 1 < list.values.size(); ++i) {
    const TextSpan &a = list.values[i].span, &b = list.values[i + 1].span;
    if (a.end >= b.begin) continue;
    const std::string_view between = printed.words(TextSpan{a.end, b.begin});
    const bool words = std::any_of(between.begin(), between.end(),
                                   [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); });
    if (words && between.find(':') != between.npos && between.find_first_of("\n;.") != between.npos)
      return true;
  }
  return false;
}

struct Fall {
  std::size_t size, larger;  // neighbours that have values
};
std::vector<Fall> falls_of(const PrintedList& list) {
  std::vector<Fall> falls;
  std::optional<std::size_t> before;
  for (std::size_t i = 0; i < list.values.size(); ++i) {
    const PrintedValue* value = value_at(list, i);
    // A size that does without the colour is no smaller need.
    if (value == nullptr || !value->number || *value->number == 0) continue;
    if (before && *value->number < *value_at(list, *before)->number) falls.push_back({*before, i});
    before = i;
  }
  return falls;
}

// One size of the total line: what stands there, and what the colours add to.
struct Sum {
  double total = 0;
  double sum = 0;
  std::vector<const RoleFigures*> gaps;
  std::vector<std::string> words;
};

std::optional<Sum> sum_of(const PrintedView& printed, const std::vector<RoleFigures>& roles,
                          const PrintedList& total, std::size_t size) {
  const PrintedValue* value = value_at(total, size);
  if (value == nullptr || !value->number) return std::nullopt;
  Sum sum;
  sum.total = *value->number;
  for (const RoleFigures& role : roles) {
    const PrintedValue* count = value_at(*role.printed->count, size);
    if (count == nullptr && !role.printed->count->complete) sum.gaps.push_back(&role);
    if (count != nullptr) sum.sum += count->number.value_or(0);
    sum.words.push_back(count != nullptr ? std::string(printed.words(*count)) : "–");
  }
  return sum;
}

// The one colour whose count in force mends the sum.
const RoleFigures* suspect_of(const std::vector<RoleFigures>& roles, const Sum& sum, std::size_t size) {
  if (sum.gaps.size() == 1 && sum.sum < sum.total) return sum.gaps.front();
  const RoleFigures* suspect = nullptr;
  for (const RoleFigures& role : roles) {
    const auto stated = role.printed_skeins(size);
    const auto wanted = role.count_in_force(size);
    if (!stated || !wanted || std::abs(*wanted - *stated - (sum.total - sum.sum)) > 1e-9) continue;
    if (suspect != nullptr) return nullptr;
    suspect = &role;
  }
  return suspect;
}

}  // namespace

std::span<const Check> list_checks() { return all_rows; }

void check_l1(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  if (printed.sizes_line() == nullptr && printed.sizes() <= 1) {
    findings.cannot("the sizes are not known", "a line of sizes");
    return;
  }
  for (const PrintedFact& fact :
       printed_facts(printed, {Kind::count, Kind::length_note, Kind::measurement, Kind::total_count,
                               Kind::total_length, Kind::stitches})) {
    const std::size_t n = fact.first().values.size();
    if (n == printed.sizes() || for_some_sizes(printed, fact.first())) continue;
    Finding& finding = findings.add(std::to_string(n) + (n == 1 ? " value for " : " values for ") +
                                    std::to_string(printed.sizes()) + " sizes");
    speak_of(finding, printed, fact);
    if (n < printed.sizes()) too_few(input, finding, fact);
    finding.query = "The list for " + fact.name() + " has " + std::to_string(n) + " values, " +
                    printed_words(printed, fact.first()) + ", and there are " +
                    std::to_string(printed.sizes()) + " sizes. " +
                    (n < printed.sizes() ? "Which size is missing" : "Which value is one too many") + "?";
    if (!finding.proposal.empty())
      finding.query += " By our figures it is size " + finding.sizes.front() + ".";
  }
}

void check_l2(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const Statement* line = printed.sizes_line();
  if (line == nullptr || line->values.size() < 2) {
    if (line == nullptr) findings.cannot("no line of sizes is printed", "the sizes as they are printed");
    return;
  }
  const auto line_marks = marks_between(printed, *line);
  for (const PrintedFact& fact :
       printed_facts(printed, {Kind::count, Kind::length_note, Kind::measurement, Kind::total_count,
                               Kind::total_length, Kind::stitches})) {
    for (const Statement* list : fact.lists) {
      const auto marks = marks_between(printed, *list);
      if (without_marks(marks) || for_some_sizes(printed, *list) || told_in_pieces(printed, *list)) continue;
      const bool whole = list->values.size() == line->values.size();
      if (whole ? same_marks(marks, line_marks) : bracket_groups(*list) == bracket_groups(*line)) continue;
      Finding& finding = findings.add("not bracketed like the sizes");
      speak_of(finding, printed, {{list}});
      if (list != &fact.first()) finding.apart += " " + std::string(word_of(list->unit));
      show(finding, printed, *line);
      finding.evidence = {"sizes: " + printed_words(printed, *line),
                          fact.name() + ": " + printed_words(printed, *list)};
      finding.query = "The list for " + fact.name() + ", " + printed_words(printed, *list) +
                      ", is bracketed otherwise than the sizes, " + printed_words(printed, *line) +
                      ". May we bracket it alike?";
      if (whole) propose_shape(finding, printed, *list, *line);
    }
  }
}

void check_l3(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const auto roles = role_figures(input);
  for (const PrintedFact& fact : printed_facts(printed, {Kind::count})) {
    const PrintedList list = printed.list(fact.first());
    for (const Fall& fall : falls_of(list)) {
      const PrintedValue &more = *value_at(list, fall.size), &less = *value_at(list, fall.larger);
      const std::string pair =
          "“" + std::string(printed.words(more)) + ", " + std::string(printed.words(less)) + "”";
      Finding& finding = findings.add("a larger size asks for less: " + pair);
      finding.roles = {fact.first().subject};
      finding.places.push_back({more.span.begin, less.span.end});
      rest_on(finding, printed, fact.first());
      add_size(finding, printed, fall.size);
      add_size(finding, printed, fall.larger);
      const auto& labels = printed.size_labels();
      finding.evidence.push_back("size " + labels[fall.size] + ": " + words_of(printed, &more) + ", size " +
                                 labels[fall.larger] + ": " + words_of(printed, &less));
      for (const RoleFigures& role : roles) {
        if (role.printed->label != fact.first().subject || fact.first().unit != PrintedUnit::skein) continue;
        for (const std::size_t size : {fall.size, fall.larger})
          if (const SizeNeed* need = role.need_at(size); need != nullptr && need->skeins)
            finding.evidence.push_back("size " + labels[size] + " needs " +
                                       FindingWords(input).metres(need->planned.value()) + ", " +
                                       FindingWords(input).skeins(*need->skeins));
        for (const std::size_t size : {fall.size, fall.larger}) {
          const auto wanted = role.count_in_force(size);
          const PrintedValue& value = *value_at(list, size);
          if (wanted && value.number && *wanted != *value.number)
            propose(finding, printed, value.span, std::to_string(*wanted));
        }
      }
      finding.query = "For " + fact.first().subject + " the list falls from size " + labels[fall.size] +
                      " to size " + labels[fall.larger] + ": " + pair + ". " +
                      (finding.proposal.size() == 2 ? "Were the two exchanged?"
                       : finding.proposal.empty()   ? "Is that meant?"
                                                    : "Should it be " + finding.proposal_words + "?");
    }
  }
}

void check_l6(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const auto roles = role_figures(input);
  const auto total = printed.total();
  if (roles.size() < 2) return;
  if (!total) {
    findings.cannot("no total is printed", "a line that adds the skeins of all colours");
    return;
  }
  std::vector<std::string> without;
  for (const RoleFigures& role : roles)
    if (!role.printed->count) without.push_back(role.printed->label);
  if (!without.empty()) {
    findings.cannot("no count in skeins is printed for " + listed(without), "a count for every colour");
    return;
  }
  const FindingWords words(input);
  for (std::size_t i = 0; i < printed.sizes(); ++i) {
    const auto sum = sum_of(printed, roles, *total, i);
    if (!sum || std::abs(sum->sum - sum->total) < 1e-9) continue;
    Finding& finding = findings.add("the colours add to " + words.number(sum->sum, 2) + ", the total says " +
                                    words.number(sum->total, 2));
    add_size(finding, printed, i);
    finding.places.push_back(value_at(*total, i)->span);
    finding.evidence.push_back(join(sum->words, " + ") + " = " + words.number(sum->sum, 2) + ", total " +
                               words.number(sum->total, 2));
    const RoleFigures* suspect = suspect_of(roles, *sum, i);
    finding.query = "In size " + printed.size_labels()[i] + " the colours add to " +
                    words.number(sum->sum, 2) + " skeins and the total says " + words.number(sum->total, 2);
    if (suspect == nullptr) {
      rest_on(finding, printed, *total->statement);
      std::vector<std::string> repairs;
      for (const RoleFigures& role : roles)
        if (const auto count = role.printed_skeins(i); count && *count + sum->total - sum->sum >= 0)
          repairs.push_back(role.printed->label + " " + words.number(*count + sum->total - sum->sum, 2));
      if (!repairs.empty()) finding.evidence.push_back("would agree with one of: " + join(repairs, ", "));
      finding.query += ". Which is right?";
      continue;
    }
    const PrintedList& list = *suspect->printed->count;
    finding.roles = {suspect->printed->label};
    rest_on(finding, printed, *list.statement);
    if (const PrintedValue* value = value_at(list, i)) {
      finding.places.push_back(value->span);
      propose(finding, printed, value->span,
              words.number(value->number.value_or(0) + sum->total - sum->sum, 2));
      finding.evidence.push_back("would agree with " + suspect->printed->label + " " +
                                 finding.proposal.front().after);
      finding.query += ". Should " + suspect->printed->label + " be " + finding.proposal.front().after + "?";
    } else {
      finding.evidence.push_back("the list of " + suspect->printed->label + " has no value there");
      finding.query += ", but the list of " + suspect->printed->label +
                       " has no value for that size. Is it " + words.number(sum->total - sum->sum, 2) + "?";
    }
  }
}

void check_l9(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  for (const PrintedFact& fact : printed_facts(printed, {Kind::measurement})) {
    const Statement& list = fact.first();
    const bool known = std::all_of(list.values.begin(), list.values.end(),
                                   [](const PrintedValue& value) { return value.number.has_value(); });
    if (!known || list.values.size() < 5 || list.values.size() != printed.sizes()) continue;
    std::vector<std::size_t> still;
    for (std::size_t i = 1; i < list.values.size(); ++i)
      if (*list.values[i].number == *list.values[i - 1].number) still.push_back(i);
    if (still.size() != 1) continue;
    const std::size_t i = still.front();
    const std::string pair =
        "“" + words_of(printed, &list.values[i - 1]) + ", " + words_of(printed, &list.values[i]) + "”";
    Finding& finding = findings.add("two sizes alike where all others step: " + pair);
    speak_of(finding, printed, fact);
    finding.places.insert(finding.places.begin(), {list.values[i - 1].span.begin, list.values[i].span.end});
    add_size(finding, printed, i - 1);
    add_size(finding, printed, i);
    finding.evidence = list_under_sizes(printed, fact.name(), printed.list(list).values);
    const auto facts = facts_behind(input, list);
    for (const std::size_t size : {i - 1, i})
      if (facts[size] && std::abs(*facts[size] - *list.values[size].number) > list.values[size].half_step)
        propose(finding, printed, list.values[size].span,
                as_in_list(*facts[size], printed.list(list), printed.text()));
    finding.query = "The " + fact.name() + " steps from every size to the next but from size " +
                    finding.sizes.front() + " to " + finding.sizes.back() + ": " + pair + ". Is that meant?";
  }
}

}  // namespace skeinproof
