// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/printed_view.h"

#include <algorithm>
#include <cassert>
#include <functional>
#include <map>
#include <numeric>

#include "core/base/text.h"
#include "core/manuscript/read_manuscript.h"
#include "core/manuscript/write_block.h"
#include "core/review/finding.h"
#include "core/units/quantity.h"

namespace skeinproof {
namespace {

// How many values stand in each bracket, the first without one.
template <class Values, class Opens>
std::vector<std::size_t> groups_of(const Values& values, Opens&& opens) {
  std::vector<std::size_t> groups;
  for (const auto& value : values) {
    if (groups.empty() || opens(value)) groups.push_back(0);
    ++groups.back();
  }
  return groups;
}

// The size of each value of a short list. Brackets tell where the gaps are only if there are as many of them
// as in the sizes line and none holds more.
std::vector<std::size_t> places_of(const std::vector<PrintedValue>& values,
                                   const std::vector<std::size_t>& sizes) {
  const auto groups = groups_of(values, [](const PrintedValue& value) { return value.opens_group; });
  std::vector<std::size_t> places(values.size());
  std::iota(places.begin(), places.end(), std::size_t{0});
  const bool fits = groups.size() == sizes.size() &&
                    std::equal(groups.begin(), groups.end(), sizes.begin(), std::less_equal<>{});
  if (!fits) return places;
  std::size_t value = 0, first = 0;
  for (std::size_t g = 0; g < groups.size(); ++g) {
    for (std::size_t i = 0; i < groups[g]; ++i) places[value++] = first + i;
    first += sizes[g];
  }
  return places;
}

bool of_a_yarn(StatementKind kind) {
  switch (kind) {
    case StatementKind::yarn_name:
    case StatementKind::fibre:
    case StatementKind::put_up_length:
    case StatementKind::put_up_weight:
    case StatementKind::yarn_description:
    case StatementKind::yarn_care:
    case StatementKind::band_gauge:
      return true;
    default:
      return false;
  }
}

bool of_a_role(const Statement& statement) {
  switch (statement.kind) {
    case StatementKind::role:
    case StatementKind::shade_name:
    case StatementKind::shade_number:
    case StatementKind::count:
    case StatementKind::length_note:
      return true;
    default:
      return false;
  }
}

std::string_view label_of(const Statement& statement) {
  return statement.kind == StatementKind::role && statement.subject.empty() ? statement.words
                                                                            : statement.subject;
}

bool counts_skeins(const Statement& statement) {
  return statement.unit == PrintedUnit::skein || statement.unit == PrintedUnit::none;
}

struct UnitFactor {
  PrintedUnit unit;
  double factor;  // to metres or grams
};
constexpr UnitFactor unit_factors[] = {{PrintedUnit::metre, 1},
                                       {PrintedUnit::gram, 1},
                                       {PrintedUnit::centimetre, 0.01},
                                       {PrintedUnit::yard, metres_per_yard},
                                       {PrintedUnit::ounce, grams_per_ounce},
                                       {PrintedUnit::kilogram, 1000},
                                       {PrintedUnit::pound, 16 * grams_per_ounce}};

// What a put-up says at its first mention; metric before imperial where both stand in that breath.
std::optional<double> first_mention(const std::vector<const Statement*>& statements) {
  std::optional<double> said;
  std::optional<int> mention;
  for (const UnitFactor& row : unit_factors)
    for (const Statement* statement : statements) {
      const bool figure = !statement->values.empty() && statement->values.front().number;
      if (!figure) continue;
      if (!mention) mention = statement->mention;
      if (statement->mention == mention && statement->unit == row.unit && !said)
        said = *statement->values.front().number * row.factor;
    }
  return said;
}

// The part of that name; a lone one without a name on either side is the one meant.
template <class Part, class Name>
auto fact_of(const std::vector<Part>& facts, std::string_view printed, bool lone, Name&& name) {
  const std::string wanted = folded_name(printed);
  for (const Part& fact : facts)
    if (folded_name(name(fact)) == wanted) return fact.id;
  if (lone && facts.size() == 1 && (wanted.empty() || folded_name(name(facts.front())).empty()))
    return facts.front().id;
  return decltype(Part::id){};
}

std::vector<PrintedYarn> gather_yarns(const Reading& reading, const Pattern& pattern) {
  int count = 0;
  bool nameless = false;
  for (const Statement& statement : reading.statements) {
    count = std::max(count, statement.yarn + 1);
    nameless = nameless || (statement.yarn < 0 && of_a_yarn(statement.kind));
  }
  if (count == 0 && nameless) count = 1;
  std::vector<PrintedYarn> yarns(static_cast<std::size_t>(count));
  for (const Statement& statement : reading.statements) {
    const int index = statement.yarn < 0 && count == 1 ? 0 : statement.yarn;
    if (index < 0) continue;
    PrintedYarn& yarn = yarns[static_cast<std::size_t>(index)];
    const std::pair<StatementKind, std::vector<const Statement*>*> places[] = {
        {StatementKind::yarn_name, &yarn.names},
        {StatementKind::fibre, &yarn.fibres},
        {StatementKind::put_up_length, &yarn.lengths},
        {StatementKind::put_up_weight, &yarn.weights},
        {StatementKind::yarn_description, &yarn.descriptions},
        {StatementKind::band_gauge, &yarn.band_gauges},
        {StatementKind::yarn_care, &yarn.care}};
    for (const auto& [kind, list] : places)
      if (kind == statement.kind) list->push_back(&statement);
  }
  for (PrintedYarn& yarn : yarns) {
    if (!yarn.names.empty()) yarn.name = yarn.names.front()->words;
    yarn.metres = first_mention(yarn.lengths);
    yarn.grams = first_mention(yarn.weights);
    yarn.fact = fact_of(pattern.yarns, yarn.name, count == 1,
                        [](const Yarn& fact) -> const std::string& { return fact.name; });
  }
  return yarns;
}

// The yarn a role is said to be in: by its statements' own index, by name, else the only one.
int yarn_of(const Statement& statement, const std::vector<PrintedYarn>& yarns) {
  if (statement.yarn >= 0) return statement.yarn;
  if (statement.kind != StatementKind::role || statement.qualifier.empty()) return -1;
  for (std::size_t i = 0; i < yarns.size(); ++i)
    if (folded_name(yarns[i].name) == folded_name(statement.qualifier)) return static_cast<int>(i);
  return -1;
}

// Roles in the order of their first mention, found again by label.
class RoleGatherer {
 public:
  explicit RoleGatherer(const PrintedView& view) : view_(view) {}

  void take(const Statement& statement) {
    PrintedRole& role = role_of(statement);
    const auto first = [&](const Statement*& place) {
      if (place == nullptr) place = &statement;
    };
    switch (statement.kind) {
      case StatementKind::role:
        first(role.role);
        break;
      case StatementKind::shade_name:
        first(role.shade);
        break;
      case StatementKind::shade_number:
        first(role.number);
        break;
      case StatementKind::count:
        if (counts_skeins(statement) && !role.count) role.count = view_.list(statement);
        break;
      default:
        role.notes.push_back(&statement);
    }
    if (role.yarn < 0) role.yarn = yarn_of(statement, view_.yarns());
  }

  std::vector<PrintedRole> finish(const Pattern& pattern) {
    for (PrintedRole& role : roles_) {
      if (role.yarn < 0 && view_.yarns().size() == 1) role.yarn = 0;
      role.fact = fact_of(pattern.roles, role.label, roles_.size() == 1,
                          [](const Role& fact) -> const std::string& { return fact.label; });
    }
    return std::move(roles_);
  }

 private:
  PrintedRole& role_of(const Statement& statement) {
    const std::string_view label = label_of(statement);
    const auto [found, added] = index_.try_emplace(folded_name(label), roles_.size());
    if (added) roles_.emplace_back().label = std::string(label);
    return roles_[found->second];
  }

  const PrintedView& view_;
  std::vector<PrintedRole> roles_;
  std::map<std::string, std::size_t> index_;
};

}  // namespace

PrintedView::PrintedView(std::string text, const std::vector<PartTold>& parts,
                         const std::vector<Telling>& tellings, const Pattern& pattern)
    : PrintedView(text, read_manuscript(text, parts, tellings), pattern) {}

PrintedView::PrintedView(std::string text, Reading reading, const Pattern& pattern)
    : text_(std::move(text)), reading_(std::move(reading)) {
  for (const Statement& statement : reading_.statements)
    if (statement.kind == StatementKind::size_labels && sizes_line_ == nullptr) sizes_line_ = &statement;
  if (sizes_line_ != nullptr) {
    for (const PrintedValue& value : sizes_line_->values) size_labels_.emplace_back(words(value));
    groups_ = groups_of(sizes_line_->values, [](const PrintedValue& value) { return value.opens_group; });
  } else {
    for (const Size& size : pattern.sizes) size_labels_.push_back(size.label);
    groups_ = groups_of(pattern.sizes, [](const Size& size) { return size.opens_group; });
  }
  yarns_ = gather_yarns(reading_, pattern);
  RoleGatherer gatherer(*this);
  for (const Statement& statement : reading_.statements)
    if (of_a_role(statement)) gatherer.take(statement);
  roles_ = gatherer.finish(pattern);
}

const PrintedRole* PrintedView::role(std::string_view label) const {
  const std::string wanted = folded_name(label);
  const auto found = std::find_if(roles_.begin(), roles_.end(),
                                  [&](const PrintedRole& role) { return folded_name(role.label) == wanted; });
  return found == roles_.end() ? nullptr : &*found;
}

std::optional<PrintedList> PrintedView::total() const {
  for (const Statement& statement : reading_.statements)
    if (statement.kind == StatementKind::total_count && counts_skeins(statement)) return list(statement);
  return std::nullopt;
}

std::vector<const Statement*> PrintedView::all(StatementKind kind) const {
  std::vector<const Statement*> found;
  for (const Statement& statement : reading_.statements)
    if (statement.kind == kind) found.push_back(&statement);
  return found;
}

std::vector<const Statement*> PrintedView::mentioned_with(const Statement& statement) const {
  std::vector<const Statement*> found;
  for (const Statement& other : reading_.statements)
    if (other.mention == statement.mention) found.push_back(&other);
  return found;
}

PrintedList PrintedView::list(const Statement& statement) const {
  PrintedList list;
  list.statement = &statement;
  list.printed = statement.values.size();
  list.values.resize(sizes());
  list.complete = list.printed == sizes() || statement.all_sizes;
  const auto figure = [&](const PrintedValue& value) {
    return value.number || statement.kind == StatementKind::size_labels ? &value : nullptr;
  };
  if (statement.all_sizes && list.printed == 1) {
    std::fill(list.values.begin(), list.values.end(), figure(statement.values.front()));
    return list;
  }
  const auto places = places_of(statement.values, groups_);
  for (std::size_t i = 0; i < places.size(); ++i)
    if (places[i] < list.values.size()) list.values[places[i]] = figure(statement.values[i]);
  return list;
}

std::size_t PrintedView::index(const Statement& statement) const {
  const Statement* first = reading_.statements.data();
  assert(&statement >= first && &statement < first + reading_.statements.size());
  return static_cast<std::size_t>(&statement - first);
}

int occurrence_of(std::string_view text, const TextSpan& span) {
  const std::string_view words = words_at(text, span);
  int occurrence = 1;
  for (auto at = text.find(words); at < span.begin; at = text.find(words, at + 1)) ++occurrence;
  return occurrence;
}

std::optional<TextSpan> span_of(std::string_view text, std::string_view words, int occurrence) {
  if (words.empty() || occurrence < 1) return std::nullopt;
  auto at = text.find(words);
  for (int seen = 1; seen < occurrence && at != std::string_view::npos; ++seen) at = text.find(words, at + 1);
  if (at == std::string_view::npos) return std::nullopt;
  return TextSpan{at, at + words.size()};
}

std::optional<TextSpan> reply_place(std::string_view draft, const Query& query) {
  const auto span = span_of(draft, query.before, query.occurrence);
  if (!span) return std::nullopt;
  // The old words may stand in the new ones.
  for (auto at = query.after.find(query.before); at != std::string::npos;
       at = query.after.find(query.before, at + 1))
    if (at <= span->begin && draft.substr(span->begin - at).starts_with(query.after)) return std::nullopt;
  return span;
}

std::vector<TextEdit> recorded_replies(const Pattern& pattern) {
  std::vector<TextEdit> edits;
  const Draft* draft = pattern.draft();
  if (draft == nullptr) return edits;
  for (const Query& query : pattern.queries) {
    if (query.answer != QueryAnswer::accepted && query.answer != QueryAnswer::amended) continue;
    const auto span = reply_place(draft->text, query);
    if (!span) continue;
    const auto meets = [&](const TextEdit& edit) {
      return edit.span.begin < span->end && span->begin < edit.span.end;
    };
    edits.erase(std::remove_if(edits.begin(), edits.end(), meets), edits.end());
    edits.push_back({*span, query.after});
  }
  std::sort(edits.begin(), edits.end(),
            [](const TextEdit& a, const TextEdit& b) { return a.span.begin < b.span.begin; });
  return edits;
}

std::string printed_text(const Pattern& pattern, const Assessment& assessment) {
  if (const Draft* draft = pattern.draft()) return edited(draft->text, recorded_replies(pattern));
  HouseStyle house = pattern.house();
  const auto add = [&](BlockElement element, bool held, std::vector<BlockElement>::iterator before) {
    const bool there = std::find(house.order.begin(), house.order.end(), element) != house.order.end();
    if (held && !there) house.order.insert(before, element);
  };
  const auto any_fabric = [&](auto&& holds) {
    return std::any_of(pattern.fabrics.begin(), pattern.fabrics.end(), holds);
  };
  add(BlockElement::sizes, pattern.sizes.size() > 1 || !pattern.measurements.empty(), house.order.begin());
  add(BlockElement::needles, any_fabric([](const Fabric& fabric) { return fabric.needle.has_value(); }),
      house.order.end());
  add(BlockElement::gauge,
      any_fabric([](const Fabric& fabric) { return fabric.gauge.stitches || fabric.gauge.rows; }),
      house.order.end());
  add(BlockElement::notions, !pattern.notions.empty(), house.order.end());
  return write_block(pattern, assessment, house).text();
}

}  // namespace skeinproof
