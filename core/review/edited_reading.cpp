// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/edited_reading.h"

#include <algorithm>

#include "core/units/read.h"

namespace skeinproof {
namespace {

struct Replaced {
  TextSpan span;
  std::string_view after;
  double number = 0;
  double half_step = 0;
};

// Where an offset of the text before lies in the text after; the end of a replaced figure stays its end.
std::size_t moved(std::size_t offset, const std::vector<Replaced>& edits) {
  std::size_t grown = 0, shrunk = 0;
  for (const Replaced& edit : edits)
    if (edit.span.end <= offset) {
      grown += edit.after.size();
      shrunk += edit.span.end - edit.span.begin;
    }
  return offset + grown - shrunk;
}

void move(TextSpan& span, const std::vector<Replaced>& edits) {
  // An empty span at the edge of an edit stays before it.
  const std::size_t begin = moved(span.begin, edits);
  span.end = span.empty() ? begin : moved(span.end, edits);
  span.begin = begin;
}

double half_step_of(const Statement& statement, std::size_t value, std::string_view text,
                    std::string_view after) {
  for (const PrintedValue& other : statement.values)
    if (words_at(text, other.span) == after) return other.half_step;
  return statement.values[value].half_step;
}

bool same_but_for_place(const Statement& a, const Statement& b) {
  const auto same_value = [](const PrintedValue& x, const PrintedValue& y) {
    return x.number == y.number && x.half_step == y.half_step && x.opens_group == y.opens_group;
  };
  return a.kind == b.kind && a.part == b.part && a.subject == b.subject && a.qualifier == b.qualifier &&
         a.words == b.words && a.unit == b.unit && a.all_sizes == b.all_sizes && a.yarn == b.yarn &&
         a.values.size() == b.values.size() &&
         std::equal(a.values.begin(), a.values.end(), b.values.begin(), same_value);
}

}  // namespace

std::optional<Reading> edited_reading(const Reading& before, std::string_view text,
                                      const std::vector<FigureEdit>& edits) {
  std::vector<Replaced> replaced;
  for (const FigureEdit& edit : edits) {
    if (edit.statement >= before.statements.size()) return std::nullopt;
    const Statement& statement = before.statements[edit.statement];
    if (edit.value >= statement.values.size()) return std::nullopt;
    const auto number = read_number(edit.after, 0, 1e9, "a figure");
    const TextSpan span = statement.values[edit.value].span;
    const std::string_view old = words_at(text, span);
    if (!number || old.empty() || statement.words.find(old) != std::string::npos) return std::nullopt;
    replaced.push_back(
        {span, edit.after, number->value, half_step_of(statement, edit.value, text, edit.after)});
  }
  std::sort(replaced.begin(), replaced.end(),
            [](const Replaced& a, const Replaced& b) { return a.span.begin < b.span.begin; });
  for (std::size_t i = 1; i < replaced.size(); ++i)
    if (replaced[i].span.begin < replaced[i - 1].span.end) return std::nullopt;

  Reading after = before;
  const std::size_t first = replaced.empty() ? text.size() : replaced.front().span.begin;
  for (std::size_t s = 0; s < after.statements.size(); ++s) {
    Statement& statement = after.statements[s];
    if (statement.span.end <= first &&
        (statement.values.empty() || statement.values.back().span.end <= first))
      continue;
    const bool is_edited =
        std::any_of(edits.begin(), edits.end(), [&](const FigureEdit& edit) { return edit.statement == s; });
    for (PrintedValue& value : statement.values) {
      for (const Replaced& edit : replaced)
        if (edit.span == value.span) {
          // One figure that two statements share is read again with both.
          if (!is_edited) return std::nullopt;
          value.number = edit.number;
          value.half_step = edit.half_step;
        }
      move(value.span, replaced);
    }
    move(statement.span, replaced);
  }
  for (NotUnderstood& rest : after.not_understood) move(rest.span, replaced);
  return after;
}

StatementKinds kinds_that_differ(const Reading& one, const Reading& other) {
  for (std::size_t i = 0; i < one.parts.size() && i < other.parts.size(); ++i)
    if (one.parts[i].extent != other.parts[i].extent) return StatementKinds::all();
  const auto &a = one.statements, &b = other.statements;
  std::size_t head = 0, tail = 0;
  const std::size_t least = std::min(a.size(), b.size());
  while (head < least && same_but_for_place(a[head], b[head])) ++head;
  while (tail < least - head && same_but_for_place(a[a.size() - 1 - tail], b[b.size() - 1 - tail])) ++tail;
  StatementKinds kinds{};
  for (std::size_t i = head; i < a.size() - tail; ++i) kinds.add(a[i].kind);
  for (std::size_t i = head; i < b.size() - tail; ++i) kinds.add(b[i].kind);
  return kinds;
}

}  // namespace skeinproof
