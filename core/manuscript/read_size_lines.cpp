// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <charconv>

#include "core/base/text.h"
#include "core/manuscript/read_labels.h"
#include "core/manuscript/read_parts.h"

namespace skeinproof {
namespace {

constexpr std::size_t most_sizes = 60, most_clauses = 60;  // of one group

struct SizeName {
  TextSpan span;
  std::string words;
};

std::optional<std::size_t> place_of(const Reader& reader, const std::string& name) {
  const auto found = std::find(reader.size_names.begin(), reader.size_names.end(), name);
  if (found == reader.size_names.end()) return std::nullopt;
  return static_cast<std::size_t>(found - reader.size_names.begin());
}

// "L to 2XL" where the sizes are known by name, "1–4" where they are not.
std::vector<std::string> names_in_stretch(const Reader& reader, const std::string& words) {
  if (place_of(reader, words)) return {words};
  const auto to = words.find(" to ");
  const auto joint = to == std::string::npos ? words.find('-') : to;
  if (joint == std::string::npos) return {words};
  const std::string from(trimmed(std::string_view(words).substr(0, joint)));
  const std::string until(trimmed(std::string_view(words).substr(joint + (to == std::string::npos ? 1 : 4))));
  std::vector<std::string> names;
  if (!reader.size_names.empty()) {
    const auto a = place_of(reader, from), b = place_of(reader, until);
    if (!a || !b || *a >= *b) return {words};
    names.assign(reader.size_names.begin() + static_cast<std::ptrdiff_t>(*a),
                 reader.size_names.begin() + static_cast<std::ptrdiff_t>(*b) + 1);
    return names;
  }
  int a = 0, b = 0;
  const bool figures =
      std::from_chars(from.data(), from.data() + from.size(), a).ptr == from.data() + from.size() &&
      std::from_chars(until.data(), until.data() + until.size(), b).ptr == until.data() + until.size();
  if (!figures || a >= b || b - a > static_cast<int>(most_sizes)) return {words};
  for (int k = a; k <= b; ++k) names.push_back(std::to_string(k));
  return names;
}

// The sizes of which a clause speaks alone, by the words it begins with.
struct SizesAlone {
  std::vector<SizeName> names;
  std::size_t behind = 0;  // the token behind them and their mark; 0 = it speaks of no size in particular
};

void add_names(const Reader& reader, std::uint32_t begin, std::uint32_t end, SizesAlone& sizes) {
  const TextSpan span = reader.plain.as_came(begin, end);
  for (std::string& name :
       names_in_stretch(reader, tidy_spaces(reader.plain.text.substr(begin, end - begin))))
    sizes.names.push_back({span, std::move(name)});
}

// "Small: 2 skeins MC", "Sizes 1, 2, 3: MC 4, 5, 5 balls", "For sizes L to 2XL: 2 balls"
SizesAlone sizes_alone(const Reader& reader, const Clause& clause) {
  constexpr std::string_view lead = "\t*-~", mark = ":=-";
  const auto& tokens = reader.items.tokens;
  SizesAlone sizes;
  std::size_t i = clause.first, behind = 0;
  while (i < clause.last && lead.find(reader.letter(i)) != std::string_view::npos) ++i;
  if (reader.has(i, Sense::size_word) && reader.letter(i + 1) == label_list_shape) {
    const FigureList& list = reader.list(i + 1);
    if (list.cells > most_sizes) return {};
    for (std::size_t k = 0; k < list.cells; ++k) {
      const ListCell& cell = reader.items.cells[list.first_cell + k];
      add_names(reader, cell.begin, cell.end, sizes);
    }
    behind = i + 2;
  } else if (i < clause.last && reader.is_word(i)) {
    const LabelList labels = read_labels(reader.plain, tokens, i, true);
    // "A: 2 skeins" is a colour.
    constexpr std::string_view letters = "SML";
    const bool letter = labels.next == i + 1 && tokens[i].end - tokens[i].begin == 1;
    if (labels.cells.size() != 1 ||
        (letter && letters.find(reader.plain.text[tokens[i].begin]) == std::string_view::npos))
      return {};
    add_names(reader, labels.cells[0].begin, labels.cells[0].end, sizes);
    behind = labels.next;
  }
  if (behind == 0 || mark.find(reader.letter(behind)) == std::string_view::npos) return {};
  for (std::size_t k = behind + 1; k < clause.last && k < behind + 12; ++k)
    if (reader.is_list(k) && reader.letter(k) != label_list_shape) {
      sizes.behind = behind + 1;
      return sizes;
    }
  return {};
}

struct Group {
  std::vector<SizeName> names;
  std::vector<Clause> clauses;
  std::size_t says = 0;  // its first statement
};

// Clauses that speak of some sizes each, from `first` on; what follows a semicolon is of the same.
std::vector<Group> groups_from(const Reader& reader, const std::vector<Clause>& clauses, std::size_t first) {
  std::vector<Group> groups;
  for (std::size_t i = first; i < clauses.size() && groups.size() < most_sizes; ++i) {
    const SizesAlone alone = sizes_alone(reader, clauses[i]);
    const bool goes_on = !groups.empty() && reader.letter(clauses[i - 1].last) == ';';
    if (alone.behind == 0 && (!goes_on || groups.back().clauses.size() == most_clauses)) break;
    Clause rest = clauses[i];
    rest.topic = Topic::block;
    if (alone.behind > 0) {
      const auto said = [&](const SizeName& name) {
        return std::any_of(groups.begin(), groups.end(), [&](const Group& group) {
          return std::any_of(group.names.begin(), group.names.end(),
                             [&](const SizeName& other) { return other.words == name.words; });
        });
      };
      if (std::any_of(alone.names.begin(), alone.names.end(), said)) break;
      groups.push_back({alone.names, {}, 0});
      rest.first = alone.behind;
      rest.headed = false;
    }
    groups.back().clauses.push_back(rest);
  }
  return groups;
}

bool along_sizes(const Statement& statement) {
  switch (statement.kind) {
    case StatementKind::count:
    case StatementKind::total_count:
    case StatementKind::measurement:
    case StatementKind::length_note:
      return true;
    default:
      return false;
  }
}
bool same_thing(const Statement& a, const Statement& b) {
  return a.kind == b.kind && a.subject == b.subject && a.qualifier == b.qualifier && a.unit == b.unit;
}

void say_labels(Reader& reader, const std::vector<SizeName>& names, std::vector<Statement>& out) {
  Statement labels;
  labels.kind = StatementKind::size_labels;
  labels.part = TextPart::sizes;
  labels.mention = ++reader.mention;
  labels.span = {names.front().span.begin, names.back().span.end};
  for (const SizeName& name : names) {
    PrintedValue label;
    label.span = name.span;
    if (double number = 0;
        std::from_chars(name.words.data(), name.words.data() + name.words.size(), number).ptr ==
        name.words.data() + name.words.size()) {
      label.number = number;
      label.half_step = 0.5;
    }
    labels.values.push_back(label);
    reader.size_names.push_back(name.words);
  }
  reader.sizes = {names.size(), false};
  out.push_back(std::move(labels));
}

// The values of one thing in all groups, at the places of the sizes; nothing where a group says it twice, or
// in another number of values than it has sizes.
struct Joined {
  Statement list;
  std::vector<std::size_t> parts;
};
std::optional<Joined> joined(const Reader& reader, const std::vector<Group>& groups, std::size_t first,
                             const std::vector<bool>& taken) {
  const auto& statements = reader.out.statements;
  Joined all{statements[first], {}};
  all.list.values.assign(reader.size_names.size(), {});
  all.list.all_sizes = false;
  TextSpan span = statements[first].span;
  for (std::size_t g = 0; g < groups.size(); ++g) {
    const std::size_t end = g + 1 < groups.size() ? groups[g + 1].says : statements.size();
    bool found = false;
    for (std::size_t k = groups[g].says; k < end; ++k) {
      const Statement& part = statements[k];
      if (taken[k] || !along_sizes(part) || !same_thing(part, all.list)) continue;
      const std::size_t sizes = groups[g].names.size();
      if (found || (part.values.size() != 1 && part.values.size() != sizes)) return std::nullopt;
      found = true;
      for (std::size_t n = 0; n < sizes; ++n)
        all.list.values[*place_of(reader, groups[g].names[n].words)] =
            part.values[part.values.size() == 1 ? 0 : n];
      all.list.yarn = std::max(all.list.yarn, part.yarn);
      span = {std::min(span.begin, part.span.begin), std::max(span.end, part.span.end)};
      all.parts.push_back(k);
    }
  }
  for (PrintedValue& value : all.list.values)
    if (value.span.empty()) value.span = {span.begin, span.begin};
  all.list.span = span;
  return all;
}

void join_groups(Reader& reader, const std::vector<Group>& groups) {
  auto& statements = reader.out.statements;
  std::vector<Statement> lists;
  if (reader.size_names.empty()) {
    std::vector<SizeName> names;
    for (const Group& group : groups) names.insert(names.end(), group.names.begin(), group.names.end());
    say_labels(reader, names, lists);
  }
  std::vector<bool> taken(statements.size(), false);
  for (std::size_t first = groups.front().says; first < statements.size(); ++first) {
    if (taken[first] || !along_sizes(statements[first])) continue;
    auto all = joined(reader, groups, first, taken);
    if (!all) continue;
    for (const std::size_t k : all->parts) taken[k] = true;
    all->list.mention = ++reader.mention;
    lists.push_back(std::move(all->list));
  }
  std::size_t kept = groups.front().says;
  for (std::size_t k = kept; k < statements.size(); ++k)
    if (!taken[k] && kept++ != k) statements[kept - 1] = std::move(statements[k]);
  statements.resize(kept);
  for (Statement& list : lists) statements.push_back(std::move(list));
}

// "M   96 cm   6"
bool holds_size_and_figures(const Reader& reader, const Clause& clause) {
  if (clause.headed || clause.first + 2 >= clause.last || reader.letter(clause.first + 1) != gap_shape ||
      !is_label(reader.plain, reader.items.tokens, clause.first) ||
      reader.roles.contains(reader.words(clause.first, clause.first + 1)))
    return false;
  for (std::size_t i = clause.first + 1; i < clause.last; ++i)
    if (reader.letter(i) != gap_shape && (!reader.is_list(i) || reader.letter(i) == label_list_shape))
      return false;
  return true;
}

}  // namespace

bool is_row_of_size(const Reader& reader, const std::vector<Clause>& clauses, std::size_t i) {
  return holds_size_and_figures(reader, clauses[i]) &&
         ((i > 0 && holds_size_and_figures(reader, clauses[i - 1])) ||
          (i + 1 < clauses.size() && holds_size_and_figures(reader, clauses[i + 1])));
}

std::size_t read_size_lines(Reader& reader, const std::vector<Clause>& clauses, std::size_t first) {
  std::vector<Group> groups = groups_from(reader, clauses, first);
  const auto known = [&](const Group& group) {
    return std::all_of(group.names.begin(), group.names.end(),
                       [&](const SizeName& name) { return place_of(reader, name.words).has_value(); });
  };
  const bool all_known = !groups.empty() && std::all_of(groups.begin(), groups.end(), known);
  const bool named = !reader.size_names.empty();
  // One group alone speaks of some sizes only where the others are known.
  const bool some = all_known && groups.front().names.size() < reader.size_names.size();
  if (named ? !some : groups.size() < 2) return first;
  std::size_t behind = first;
  for (Group& group : groups) {
    group.says = reader.out.statements.size();
    for (const Clause& clause : group.clauses) {
      reader.use(clauses[behind].first, clause.first);
      read_clause(reader, clause);
      ++behind;
    }
  }
  join_groups(reader, groups);
  return behind;
}

}  // namespace skeinproof
