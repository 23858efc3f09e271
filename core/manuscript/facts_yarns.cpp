// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/manuscript/facts_parts.h"
#include "core/pattern/edits.h"
#include "core/yarn/read_composition.h"

namespace skeinproof {
namespace {

// The part of that name in force. A single nameless one on either side is the one meant.
template <class Part, class Name>
Part* part_of(std::vector<Part>& parts, std::string_view name, bool lone, Name&& name_of) {
  for (Part& part : parts)
    if (folded_name(name_of(part)) == folded_name(name)) return &part;
  const bool meant = lone && parts.size() == 1 && (name.empty() || name_of(parts.front()).empty());
  return meant ? &parts.front() : nullptr;
}

const std::string& label_of(const Statement& statement) {
  return statement.kind == StatementKind::role && statement.subject.empty() ? statement.words
                                                                            : statement.subject;
}

// A text may speak of thousands; a pattern that holds them all helps nobody.
constexpr std::size_t most_parts = 200;

// What is said of one yarn, kind by kind.
class OfYarn {
 public:
  void add(const Statement& statement) { said_[statement.kind].push_back(&statement); }
  const FactsTaken::Statements& operator()(StatementKind kind) const {
    static const FactsTaken::Statements none;
    const auto found = said_.find(kind);
    return found == said_.end() ? none : found->second;
  }

 private:
  std::map<StatementKind, FactsTaken::Statements> said_;
};

constexpr StatementKind yarn_kinds[] = {
    StatementKind::yarn_name,     StatementKind::fibre,       StatementKind::put_up_length,
    StatementKind::put_up_weight, StatementKind::put_up_word, StatementKind::yarn_description,
    StatementKind::yarn_care,     StatementKind::band_gauge,  StatementKind::withdrawn};

// What is said of each yarn; without an index it is said of the only one.
std::vector<OfYarn> by_yarn(const FactsTaken& taken) {
  std::size_t count = 0;
  bool nameless = false;
  for (const StatementKind kind : yarn_kinds)
    for (const Statement* statement : taken.all(kind)) {
      count = std::max(count, static_cast<std::size_t>(statement->yarn + 1));
      nameless = nameless || statement->yarn < 0;
    }
  if (count == 0 && nameless) count = 1;
  std::vector<OfYarn> yarns(count);
  for (const StatementKind kind : yarn_kinds)
    for (const Statement* statement : taken.all(kind)) {
      if (statement->yarn >= 0)
        yarns[static_cast<std::size_t>(statement->yarn)].add(*statement);
      else if (count == 1)
        yarns.front().add(*statement);
    }
  return yarns;
}

// The fibres of one breath; where each has a breath of its own, all until one comes again.
std::vector<const Statement*> one_composition(const FactsTaken::Statements& fibres) {
  std::vector<const Statement*> one;
  std::set<std::string> seen;
  for (const Statement* fibre : fibres) {
    if (!seen.insert(folded_name(fibre->words)).second && fibre->mention != fibres.front()->mention) break;
    one.push_back(fibre);
  }
  return one;
}

void take_composition(FactsTaken& taken, Yarn& yarn, const FactsTaken::Statements& fibres) {
  std::vector<FibreShare> composition;
  for (const Statement* fibre : one_composition(fibres)) {
    const PrintedValue* percent = first_figure(*fibre);
    if (percent != nullptr || fibres.size() == 1)
      composition.push_back(fibre_share(fibre->words, {percent == nullptr ? 100 : *percent->number, {}}));
    else
      taken.left_out.push_back(quoted(fibre->words) + " in " + yarn.name + ": no share in percent");
  }
  const auto alike = [](const FibreShare& a, const FibreShare& b) {
    return a.percent.value == b.percent.value && folded_name(a.words) == folded_name(b.words);
  };
  const bool same = std::equal(composition.begin(), composition.end(), yarn.composition.begin(),
                               yarn.composition.end(), alike);
  if (!composition.empty() && !same) yarn.composition = std::move(composition);
}

template <class Quantity>
void take_figure(const FactsTaken& taken, std::optional<Entered<Quantity>>& fact,
                 const FactsTaken::Statements& said, std::initializer_list<PrintedUnit> best_first) {
  for (const Statement* one : said) {
    const Statement* best = in_best_unit(taken.breath(one->mention), *one, best_first);
    const PrintedValue* figure = best == nullptr ? nullptr : first_figure(*best);
    if (figure == nullptr) continue;
    const double unit = in_fact_unit(best->unit);
    lay_figure(fact, *figure->number * unit, figure->half_step * unit, taken.typed(*figure, best->unit));
    return;
  }
}

void take_put_up(const FactsTaken& taken, Yarn& yarn, const OfYarn& of_yarn) {
  take_figure(taken, yarn.put_up.length, of_yarn(StatementKind::put_up_length),
              {PrintedUnit::metre, PrintedUnit::yard});
  take_figure(taken, yarn.put_up.weight, of_yarn(StatementKind::put_up_weight),
              {PrintedUnit::gram, PrintedUnit::ounce, PrintedUnit::kilogram, PrintedUnit::pound});
  for (const Statement* word : of_yarn(StatementKind::put_up_word))
    if (const auto skein = from_word<SkeinWord>(folded_name(word->words))) {
      yarn.put_up.word = *skein;
      break;
    }
}

std::optional<Spinning> spinning_of(std::string_view words) {
  const std::string lower = folded_name(words);
  const std::pair<std::string_view, Spinning> rows[] = {{"semi-worsted", Spinning::semi_worsted},
                                                        {"semi worsted", Spinning::semi_worsted},
                                                        {"worsted", Spinning::worsted},
                                                        {"woollen", Spinning::woollen},
                                                        {"woolen", Spinning::woollen},
                                                        {"filament", Spinning::filament}};
  for (const auto& [word, spinning] : rows)
    if (lower.find(word) != std::string::npos) return spinning;
  return std::nullopt;
}

// Every element of a description is laid once, in the words of all that is said of it.
void take_description(Yarn& yarn, const FactsTaken::Statements& said) {
  const std::pair<std::string_view, std::string*> places[] = {
      {"structure", &yarn.structure}, {"twist", &yarn.twist},         {"category", &yarn.category},
      {"surface", &yarn.surface},     {"colouring", &yarn.colouring}, {"treatment", &yarn.treatment},
      {"other", &yarn.description}};
  for (const auto& [qualifier, place] : places) {
    std::vector<std::string> words;
    for (const Statement* statement : said) {
      if (statement->qualifier != qualifier) continue;
      const auto same = [&](const std::string& word) {
        return folded_name(word) == folded_name(statement->words);
      };
      if (std::none_of(words.begin(), words.end(), same)) words.push_back(statement->words);
    }
    if (qualifier == "category" && !words.empty()) {
      words.resize(1);
      if (folded_name(words.front()).ends_with(" weight")) words.front().resize(words.front().size() - 7);
    }
    if (!words.empty() && folded_name(join(words, ", ")) != folded_name(*place)) *place = join(words, ", ");
  }
  for (const Statement* statement : said)
    if (const auto spinning = spinning_of(statement->words); spinning && statement->qualifier == "spinning") {
      yarn.spinning = *spinning;
      return;
    }
}

void take_band(Yarn& yarn, const FactsTaken::Statements& said) {
  if (said.empty() || !first_figure(*said.front())) return;
  const auto& values = said.front()->values;
  const auto& last = values.size() > 1 && values[1].number ? values[1] : values[0];
  lay_figure(yarn.band_stitches_low, *values[0].number, 0, {});
  lay_figure(yarn.band_stitches_high, *last.number, 0, {});
}

Yarn& yarn_named(Pattern& pattern, const std::string& name, bool lone) {
  Yarn* yarn =
      part_of(pattern.yarns, name, lone, [](const Yarn& one) -> const std::string& { return one.name; });
  if (yarn == nullptr) {
    add_yarn(pattern, name);
    return pattern.yarns.back();
  }
  if (yarn->name.empty()) yarn->name = name;
  return *yarn;
}

Role& role_named(Pattern& pattern, const std::string& label, bool lone) {
  Role* role =
      part_of(pattern.roles, label, lone, [](const Role& one) -> const std::string& { return one.label; });
  if (role == nullptr) {
    add_role(pattern, label);
    return pattern.roles.back();
  }
  if (role->label.empty()) role->label = label;
  return *role;
}

std::string label_or_words(const std::string& label) { return label.empty() ? "the colour" : label; }

void take_count(FactsTaken& taken, Role& role, const Statement& statement) {
  if (statement.unit == PrintedUnit::skein || statement.unit == PrintedUnit::none) {
    taken.lay_list(role.printed_count, statement, label_or_words(role.label));
    return;
  }
  const auto unit = std::string(word_of(statement.unit));
  taken.left_out.push_back(label_or_words(role.label) + ": counted in " + unit +
                           ", counts in force are skeins");
}

void take_note(FactsTaken& taken, Role& role, const Statement& statement) {
  const Statement* best =
      in_best_unit(taken.breath(statement.mention), statement, {PrintedUnit::metre, PrintedUnit::yard});
  if (best == nullptr) return;
  TextSpan all = statement.span;
  for (const Statement* other : taken.breath(statement.mention)) {
    if (other->kind != statement.kind || other->subject != statement.subject) continue;
    all = {std::min(all.begin, other->span.begin), std::max(all.end, other->span.end)};
  }
  role.printed_note = tidy_spaces(taken.words(all));
  // A list of lengths is no "at most"; its longest is.
  std::optional<PrintedValue> longest;
  for (const PrintedValue& value : best->values)
    if (value.number && (!longest || *longest->number < *value.number)) longest = value;
  if (!longest) return;
  const double unit = in_fact_unit(best->unit);
  lay_figure(role.printed_at_most, *longest->number * unit, longest->half_step * unit,
             taken.typed(*longest, best->unit));
}

constexpr StatementKind role_kinds[] = {StatementKind::role,         StatementKind::shade_name,
                                        StatementKind::shade_number, StatementKind::strands,
                                        StatementKind::count,        StatementKind::length_note};

// What is said of one role, in the order of the text.
struct RoleSaid {
  std::string label;
  FactsTaken::Statements statements;
  bool counted = false;  // or named by a statement of its own

  bool says(const Statement& other) const {
    return std::any_of(statements.begin(), statements.end(), [&](const Statement* one) {
      return one->kind == other.kind && one->unit == other.unit && one->mention != other.mention;
    });
  }
};

// Roles by their label. Of those without one, another begins where a shade or a count comes a second time.
std::vector<RoleSaid> roles_said(const FactsTaken& taken) {
  FactsTaken::Statements all;
  for (const StatementKind kind : role_kinds)
    all.insert(all.end(), taken.all(kind).begin(), taken.all(kind).end());
  std::stable_sort(all.begin(), all.end(),
                   [](const Statement* a, const Statement* b) { return a->span.begin < b->span.begin; });
  std::vector<RoleSaid> roles;
  std::map<std::string, std::size_t> by_label;
  std::optional<std::size_t> nameless;
  std::set<int> breaths;  // of the nameless role at hand
  for (const Statement* one : all) {
    const std::string label = folded_name(label_of(*one));
    const bool again = label.empty() && nameless && !breaths.contains(one->mention) &&
                       one->kind != StatementKind::length_note && one->kind != StatementKind::strands &&
                       roles[*nameless].says(*one);
    const auto known = by_label.find(label);
    std::size_t at = known == by_label.end() ? roles.size() : known->second;
    if (again) at = roles.size();
    if (at == roles.size()) {
      roles.push_back({label_of(*one), {}, false});
      by_label[label] = at;
    }
    if (label.empty()) {
      if (nameless != at) breaths.clear();
      nameless = at;
      breaths.insert(one->mention);
    }
    roles[at].statements.push_back(one);
    roles[at].counted =
        roles[at].counted || one->kind == StatementKind::role || one->kind == StatementKind::count;
  }
  std::erase_if(roles, [](const RoleSaid& role) { return !role.counted; });
  return roles;
}

// Of several lengths of a role the first that is a bound speaks for it.
void bounds_first(FactsTaken::Statements& statements) {
  std::stable_partition(statements.begin(), statements.end(), [](const Statement* one) {
    return one->kind != StatementKind::length_note || one->qualifier == "at most";
  });
}

Role* role_in(Pattern& pattern, RoleId id) {
  const auto found = std::find_if(pattern.roles.begin(), pattern.roles.end(),
                                  [&](const Role& role) { return role.id == id; });
  return found == pattern.roles.end() ? nullptr : &*found;
}

void take_of_role(FactsTaken& taken, Role& role, const Statement& statement) {
  const auto yarn = static_cast<std::size_t>(statement.yarn);
  if (statement.yarn >= 0 && yarn < taken.yarns.size()) role.yarn = taken.yarns[yarn];
  if (!role.yarn && taken.yarns.size() == 1) role.yarn = taken.yarns.front();
  if (!taken.first(std::string(word_of(statement.kind)) + " of " + std::to_string(role.id.value))) return;
  switch (statement.kind) {
    case StatementKind::shade_name:
      role.shade.name = statement.words;
      break;
    case StatementKind::shade_number:
      role.shade.number = statement.words;
      break;
    case StatementKind::strands:
      if (const PrintedValue* value = first_figure(statement);
          value != nullptr && *value->number >= 1 && *value->number <= 12)
        role.strands = static_cast<int>(*value->number);
      break;
    case StatementKind::count:
      take_count(taken, role, statement);
      break;
    case StatementKind::length_note:
      take_note(taken, role, statement);
      break;
    default:
      break;
  }
}

}  // namespace

void take_yarns(FactsTaken& taken) {
  std::vector<OfYarn> yarns = by_yarn(taken);
  if (yarns.size() > most_parts) {
    taken.left_out.push_back("yarns: " + std::to_string(yarns.size()) + " of them, the first " +
                             std::to_string(most_parts) + " are taken");
    yarns.resize(most_parts);
  }
  for (const OfYarn& of_yarn : yarns) {
    const auto& names = of_yarn(StatementKind::yarn_name);
    Yarn& yarn = yarn_named(taken.pattern, names.empty() ? "" : names.front()->words, yarns.size() == 1);
    taken.yarns.push_back(yarn.id);
    take_composition(taken, yarn, of_yarn(StatementKind::fibre));
    take_put_up(taken, yarn, of_yarn);
    take_description(yarn, of_yarn(StatementKind::yarn_description));
    take_band(yarn, of_yarn(StatementKind::band_gauge));
    if (const auto& care = of_yarn(StatementKind::yarn_care);
        !care.empty() && folded_name(care.front()->words) != folded_name(yarn.care))
      yarn.care = care.front()->words;
    if (!of_yarn(StatementKind::withdrawn).empty()) yarn.withdrawn = true;
  }
}

void take_roles(FactsTaken& taken) {
  std::vector<RoleSaid> said = roles_said(taken);
  if (said.size() > most_parts) {
    taken.left_out.push_back("roles: " + std::to_string(said.size()) + " of them, the first " +
                             std::to_string(most_parts) + " are taken");
    said.resize(most_parts);
  }
  std::vector<RoleId> nameless;  // in force
  for (const Role& role : taken.pattern.roles)
    if (role.label.empty()) nameless.push_back(role.id);
  std::size_t nameless_said = 0;
  for (RoleSaid& role : said) {
    RoleId id;
    if (said.size() > 1 && role.label.empty()) {
      if (nameless_said == nameless.size()) nameless.push_back(add_role(taken.pattern, ""));
      id = nameless[nameless_said++];
    } else {
      id = role_named(taken.pattern, role.label, said.size() == 1).id;
    }
    bounds_first(role.statements);
    for (const Statement* one : role.statements) take_of_role(taken, *role_in(taken.pattern, id), *one);
  }
}

}  // namespace skeinproof
