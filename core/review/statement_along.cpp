// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/statement_along.h"

#include <algorithm>
#include <cctype>

#include "core/base/text.h"
#include "core/review/printed_view.h"
#include "core/units/quantity.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

// The stretch from the first figure to the last; where there is none, all words.
TextSpan figures_of(const Statement& statement) {
  if (statement.values.empty()) return statement.span;
  return {statement.values.front().span.begin, statement.values.back().span.end};
}

std::vector<std::string> listed_figures(std::string_view words) {
  std::vector<std::string> figures;
  std::string figure;
  const auto take = [&] {
    if (!figure.empty()) figures.push_back(std::move(figure));
    figure.clear();
  };
  for (std::size_t i = 0; i < words.size(); ++i) {
    const char c = words[i];
    const bool decimal = (c == ',' || c == '.') && i + 1 < words.size() && !figure.empty() &&
                         std::isdigit(static_cast<unsigned char>(words[i + 1])) != 0;
    if (!decimal && (std::isspace(static_cast<unsigned char>(c)) != 0 ||
                     std::string_view(",;()[]/").find(c) != std::string_view::npos))
      take();
    else
      figure += c;
  }
  take();
  return figures;
}

std::vector<std::string> figures_in(std::string_view words, const Statement& statement) {
  if (statement.values.size() < 2) return {tidy_spaces(words)};
  return listed_figures(words);
}

// Edits that reach into a stretch, those that stand at its very end with it.
std::vector<TextEdit> edits_in(const std::vector<TextEdit>& edits, const TextSpan& span) {
  std::vector<TextEdit> within;
  for (const TextEdit& edit : edits)
    if (edit.span.begin >= span.begin && edit.span.end <= span.end)
      within.push_back({{edit.span.begin - span.begin, edit.span.end - span.begin}, edit.after});
  return within;
}

// A reply without the words that it has in common with the draft on either side.
TextEdit trimmed_edit(const std::string& draft, TextEdit edit) {
  while (!edit.span.empty() && !edit.after.empty() && draft[edit.span.begin] == edit.after.front()) {
    ++edit.span.begin;
    edit.after.erase(0, 1);
  }
  while (!edit.span.empty() && !edit.after.empty() && draft[edit.span.end - 1] == edit.after.back()) {
    --edit.span.end;
    edit.after.pop_back();
  }
  return edit;
}

// The words that stood in the draft where a stretch of the text in force stands now; absent where a reply
// reaches over its ends.
std::optional<std::string> words_in_draft(const std::string& draft, std::vector<TextEdit> replies,
                                          const TextSpan& span) {
  std::sort(replies.begin(), replies.end(),
            [](const TextEdit& a, const TextEdit& b) { return a.span.begin < b.span.begin; });
  for (TextEdit& reply : replies) reply = trimmed_edit(draft, std::move(reply));
  std::ptrdiff_t longer = 0;  // the text in force than the draft, up to here
  std::ptrdiff_t before = 0, within = 0;
  for (const TextEdit& reply : replies) {
    const auto begin = static_cast<std::size_t>(static_cast<std::ptrdiff_t>(reply.span.begin) + longer);
    const std::size_t end = begin + reply.after.size();
    const auto grew = static_cast<std::ptrdiff_t>(reply.after.size()) -
                      static_cast<std::ptrdiff_t>(reply.span.end - reply.span.begin);
    longer += grew;
    if (begin >= span.begin && end <= span.end)
      within += grew;
    else if (end <= span.begin)
      before += grew;
    else if (begin < span.end)
      return std::nullopt;
  }
  const auto begin = static_cast<std::size_t>(static_cast<std::ptrdiff_t>(span.begin) - before);
  const auto end = static_cast<std::size_t>(static_cast<std::ptrdiff_t>(span.end) - before - within);
  if (end > draft.size() || begin > end) return std::nullopt;
  return draft.substr(begin, end - begin);
}

template <class Quantity>
std::vector<std::string> facts(const PerSize<Entered<Quantity>>& list, const Pattern& pattern,
                               double (*in_unit)(Quantity)) {
  std::vector<std::string> words(pattern.sizes.size());
  bool any = false;
  for (std::size_t i = 0; i < words.size(); ++i)
    if (const auto* value = list.find(i)) {
      words[i] = show_short(in_unit(value->value), 2);
      any = true;
    }
  return any ? words : std::vector<std::string>();
}

double plain(double value) { return value; }
double as_cm(Centimetres value) { return value.value(); }
double as_inches(Centimetres value) { return in_inches(value); }

std::vector<std::string> put_up_in_force(const Pattern& pattern, const Review& review,
                                         const Statement& statement) {
  for (const Statement& name : review.reading.statements) {
    if (name.kind != StatementKind::yarn_name || name.yarn != statement.yarn) continue;
    for (const Yarn& yarn : pattern.yarns) {
      if (folded_name(yarn.name) != folded_name(words_at(review.text, name.span))) continue;
      const auto& length = yarn.put_up.length;
      const auto& weight = yarn.put_up.weight;
      switch (statement.unit) {
        case PrintedUnit::metre:
          return length ? std::vector{show_short(length->value.value(), 1)} : std::vector<std::string>();
        case PrintedUnit::yard:
          return length ? std::vector{show_short(in_yards(length->value), 0)} : std::vector<std::string>();
        case PrintedUnit::gram:
          return weight ? std::vector{show_short(weight->value.value(), 1)} : std::vector<std::string>();
        default:
          return {};
      }
    }
  }
  return {};
}

std::vector<std::string> in_force(const Pattern& pattern, const Review& review, const Statement& statement) {
  const std::string subject = folded_name(statement.subject);
  switch (statement.kind) {
    case StatementKind::size_labels: {
      std::vector<std::string> labels;
      for (const Size& size : pattern.sizes) labels.push_back(size.label);
      return labels;
    }
    case StatementKind::count:
      if (statement.unit != PrintedUnit::skein) return {};
      for (const Role& role : pattern.roles)
        if (folded_name(role.label) == subject) return facts<double>(role.printed_count, pattern, plain);
      return {};
    case StatementKind::total_count:
      return facts<double>(pattern.printed_total, pattern, plain);
    case StatementKind::measurement:
      for (const Measurement& one : pattern.measurements)
        if (folded_name(one.name) == subject &&
            (one.fit == Fit::to_fit) == (statement.qualifier == word_of(Fit::to_fit)))
          return facts<Centimetres>(one.values, pattern,
                                    statement.unit == PrintedUnit::inch ? as_inches : as_cm);
      return {};
    case StatementKind::notion:
      for (const Notion& one : pattern.notions)
        if (folded_name(one.name) == subject) return facts<double>(one.count, pattern, plain);
      return {};
    case StatementKind::put_up_length:
    case StatementKind::put_up_weight:
      return put_up_in_force(pattern, review, statement);
    default:
      return {};
  }
}

void add_columns(StatementAlong& along, const Pattern& pattern, const Review& review) {
  const auto& statements = review.reading.statements;
  const auto sizes = std::find_if(statements.begin(), statements.end(), [](const Statement& one) {
    return one.kind == StatementKind::size_labels && one.values.size() > 1;
  });
  if (sizes != statements.end())
    for (const PrintedValue& value : sizes->values) {
      along.columns.push_back(tidy_spaces(words_at(review.text, value.span)));
      along.opens_group.push_back(value.opens_group);
    }
  else
    for (const Size& size : pattern.sizes) {
      along.columns.push_back(size.label);
      along.opens_group.push_back(size.opens_group);
    }
}

std::string counted(std::size_t count, std::string_view word) {
  return std::to_string(count) + " " + std::string(word) + (count == 1 ? "" : "s");
}

}  // namespace

std::optional<std::size_t> statement_at(const Reading& reading, std::size_t byte) {
  std::optional<std::size_t> found;
  for (std::size_t i = 0; i < reading.statements.size(); ++i) {
    const TextSpan& span = reading.statements[i].span;
    if (span.begin > byte) break;
    if (byte <= span.end && (!found || reading.statements[*found].span.holds(span))) found = i;
  }
  return found;
}

StatementAlong statement_along(const Pattern& pattern, const Review& review, std::size_t statement,
                               const std::vector<TextEdit>& proposals) {
  const Statement& said = review.reading.statements.at(statement);
  StatementAlong along;
  std::vector<std::string> name;
  for (const std::string& part :
       {said.subject, said.qualifier, std::string(word_of(said.kind)), std::string(word_of(said.unit))})
    if (!part.empty()) name.push_back(part);
  along.name = join(name, ", ");
  const bool one_for_all = said.values.size() < 2;
  if (!one_for_all) add_columns(along, pattern, review);
  for (const PrintedValue& value : said.values)
    along.read.push_back(value.number ? show_short(*value.number, 3)
                                      : std::string(words_at(review.text, value.span)));
  if (along.read.empty()) along.read.push_back(said.words);
  const TextSpan span = figures_of(said);
  const auto words = words_at(review.text, span);
  const Draft* draft = pattern.draft();
  const auto before =
      draft == nullptr ? std::nullopt : words_in_draft(draft->text, recorded_replies(pattern), span);
  if (before && *before == words && !one_for_all)
    for (const PrintedValue& value : said.values)
      along.submitted.emplace_back(words_at(review.text, value.span));
  else if (before)
    along.submitted = figures_in(*before, said);
  along.in_force = in_force(pattern, review, said);
  const auto edits = edits_in(proposals, span);
  if (!edits.empty()) along.proposed = figures_in(edited(words, edits), said);
  if (!one_for_all)
    along.count_words =
        counted(said.values.size(), "value") + " for " + counted(along.columns.size(), "size");
  return along;
}

}  // namespace skeinproof
