// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/slip_explains.h"

#include <algorithm>
#include <optional>

#include "core/base/text.h"
#include "core/review/printed_words.h"
#include "core/review/role_figures.h"
#include "core/review/slip_lists.h"

namespace skeinproof {
namespace {

// What several figures of an edit say of one witness: that all of them agree, or that one does not.
struct Witness {
  int agree = 0, differ = 0;
  void hear(const std::optional<bool>& said) {
    if (said) ++(*said ? agree : differ);
  }
  bool holds() const { return agree > 0 && differ == 0; }
};

std::vector<TextSpan> spans_after(const std::vector<TextEdit>& edits) {
  std::vector<TextSpan> spans;
  std::size_t grown = 0, shrunk = 0;
  for (const TextEdit& edit : edits) {
    const std::size_t begin = edit.span.begin + grown - shrunk;
    spans.push_back({begin, begin + edit.after.size()});
    grown += edit.after.size();
    shrunk += edit.span.end - edit.span.begin;
  }
  return spans;
}

bool meet(const TextSpan& a, const TextSpan& b) { return a.begin < b.end && b.begin < a.end; }

class Agreement {
 public:
  Agreement(const ReviewInput& input, const std::vector<TextEdit>& edits)
      : input_(input), spans_(spans_after(edits)) {
    for (const Statement& statement : input.printed.reading().statements) {
      if (spans_.empty() || !std::any_of(spans_.begin(), spans_.end(),
                                         [&](const TextSpan& span) { return meet(span, statement.span); }))
        continue;
      hear_figures(statement);
      hear_names(statement);
    }
  }

  std::vector<std::string> words() const {
    std::vector<std::string> words;
    if (total_.holds()) words.emplace_back("the total line");
    if (sheet_.holds()) words.emplace_back("the need sheet");
    if (facts_.holds()) words.emplace_back("the facts in force");
    return words;
  }

 private:
  void hear_figures(const Statement& statement) {
    const auto in_force = words_in_force(input_, statement);
    const PrintedList list = input_.printed.list(statement);
    for (std::size_t v = 0; v < statement.values.size(); ++v) {
      const PrintedValue& value = statement.values[v];
      if (!std::any_of(spans_.begin(), spans_.end(),
                       [&](const TextSpan& span) { return meet(span, value.span); }))
        continue;
      if (v < in_force.size() && !in_force[v].empty())
        facts_.hear(input_.printed.words(value) == in_force[v]);
      const auto at = std::find(list.values.begin(), list.values.end(), &value);
      if (at == list.values.end() || statement.kind != StatementKind::count) continue;
      const auto size = static_cast<std::size_t>(at - list.values.begin());
      total_.hear(total_agrees(size));
      sheet_.hear(need_agrees(statement, size, *value.number));
    }
  }

  std::optional<bool> total_agrees(std::size_t size) const {
    const auto total = input_.printed.total();
    if (!total || size >= total->values.size() || !total->values[size]) return std::nullopt;
    double sum = 0;
    for (const PrintedRole& role : input_.printed.roles()) {
      if (!role.count) continue;
      const PrintedValue* value = value_at(*role.count, size);
      if (value != nullptr) sum += value->number.value_or(0);
    }
    return sum == *total->values[size]->number;
  }

  std::optional<bool> need_agrees(const Statement& statement, std::size_t size, double count) const {
    for (const RoleFigures& role : role_figures(input_)) {
      if (!role.printed->count || role.printed->count->statement != &statement) continue;
      const SizeNeed* need = role.need_at(size);
      if (need != nullptr && need->skeins) return *need->skeins == count;
    }
    return std::nullopt;
  }

  void hear_names(const Statement& statement) {
    const PrintedRole* printed = input_.printed.role(statement.subject);
    const Role* role = printed == nullptr ? nullptr : input_.pattern.role(printed->fact);
    if (role == nullptr) return;
    if (statement.kind == StatementKind::shade_name || statement.kind == StatementKind::legend_shade)
      facts_.hear(role->shade.name == statement.words);
    if (statement.kind == StatementKind::shade_number && !role->shade.number.empty())
      facts_.hear(role->shade.number == statement.words);
    if (statement.kind == StatementKind::role_mention) sheet_.hear(sheet_speaks_of(statement, role->id));
  }

  // Whether what the sentence works is worked in that role more than in all others.
  std::optional<bool> sheet_speaks_of(const Statement& mention, RoleId role) const {
    const std::string sentence = lower_ascii(mention.words);
    int own = 0, others = 0;
    const auto hear = [&](const std::string& name, RoleId of) {
      for (const std::string& word : split(lower_ascii(name), ' ')) {
        const std::string bare = word.substr(0, word.find_last_not_of(",.;:") + 1);
        if (bare.size() >= 3 && find_word(sentence, {std::string_view(bare)})) ++(of == role ? own : others);
      }
    };
    for (const Piece& piece : input_.pattern.pieces) {
      for (const Section& section : piece.sections)
        if (section.role) hear(section.name, section.role);
      for (const Edge& edge : piece.edges) hear(edge.name, edge.role);
    }
    if (own == 0 && others == 0) return std::nullopt;
    return own > others;
  }

  const ReviewInput& input_;
  std::vector<TextSpan> spans_;
  Witness total_, sheet_, facts_;
};

}  // namespace

std::vector<std::string> what_agrees(const ReviewInput& input, const std::vector<TextEdit>& edits) {
  return Agreement(input, edits).words();
}

}  // namespace skeinproof
