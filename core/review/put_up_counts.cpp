// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <span>

#include "core/base/text.h"
#include "core/need/layer.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/put_up_rules.h"
#include "core/review/role_figures.h"
#include "core/review/yarn_contents.h"
#include "core/units/quantity.h"

namespace skeinproof {
namespace {

// A yarn of the pattern by another length of its skein.
struct OtherSkein {
  std::string yarn;
  double metres = 0;
};
std::vector<OtherSkein> other_skeins(const ReviewInput& input, const RoleFigures& role) {
  std::vector<OtherSkein> others;
  const auto add = [&](const std::string& name, double length) {
    if (!(length > 0) || length == *role.skein_m) return;
    for (const OtherSkein& other : others)
      if (other.metres == length) return;
    others.push_back({name, length});
  };
  for (const Yarn& yarn : input.pattern.yarns)
    if (yarn.put_up.length) add(yarn.name, yarn.put_up.length->value.value());
  for (const PrintedYarn& yarn : input.printed.yarns())
    if (yarn.metres && !yarn.fact) add(name_of(yarn), *yarn.metres);
  return others;
}

// How many sizes of a printed list are the planned length in whole skeins of some length; absent where a size
// is not known.
struct Fit {
  std::size_t sizes = 0, fitting = 0;
};
std::optional<Fit> fit_of(const ReviewInput& input, const RoleFigures& role, double skein_m) {
  Fit fit;
  for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
    const SizeNeed* need = role.need_at(i);
    const auto printed = role.printed_skeins(i);
    if (need == nullptr || !printed) return std::nullopt;
    ++fit.sizes;
    if (*printed == whole_skeins(need->planned, metres(skein_m))) ++fit.fitting;
  }
  return fit;
}

std::optional<double> metres_or_grams(const Statement& statement, double value) {
  switch (statement.unit) {
    case PrintedUnit::metre:
    case PrintedUnit::gram:
      return value;
    case PrintedUnit::yard:
      return value * metres_per_yard;
    case PrintedUnit::ounce:
      return value * grams_per_ounce;
    case PrintedUnit::kilogram:
      return value * 1000;
    case PrintedUnit::pound:
      return value * grams_per_ounce * 16;
    default:
      return std::nullopt;
  }
}
bool is_weight(PrintedUnit unit) {
  return unit == PrintedUnit::gram || unit == PrintedUnit::kilogram || unit == PrintedUnit::ounce ||
         unit == PrintedUnit::pound;
}
double unit_factor(const Statement& statement) { return metres_or_grams(statement, 1).value_or(1); }

// What the printed counts of some colours come to in one size. `step` is the length or weight of the last
// skein of each.
struct Capacity {
  double amount = 0;  // m or g
  double step = 0;
  std::string words;  // "5 × 175 m"
};
std::optional<Capacity> capacity(std::span<const RoleFigures> roles, std::size_t size, bool by_weight,
                                 const FindingWords& words) {
  Capacity all;
  bool any = false;
  for (const RoleFigures& role : roles) {
    const auto skein = by_weight ? role.skein_g : role.skein_m;
    const auto count = role.printed_skeins(size);
    if (!skein || !count) return std::nullopt;
    all.amount += *count * *skein;
    all.step += *skein;
    if (any) all.words += " + ";
    all.words += words.number(*count) + " × " + words.number(*skein) + (by_weight ? " g" : " m");
    any = true;
  }
  return any ? std::optional<Capacity>(all) : std::nullopt;
}

// Finds the counts that a length is equated with.
class Equations {
 public:
  Equations(const ReviewInput& input, const std::vector<RoleFigures>& roles) : roles_(roles) {
    for (std::size_t i = 0; i < roles.size(); ++i) by_label_.emplace(roles[i].printed->label, i);
    for (const Statement& one : input.printed.reading().statements)
      if ((one.kind == StatementKind::count || one.kind == StatementKind::total_count) &&
          (one.unit == PrintedUnit::skein || one.unit == PrintedUnit::none))
        counts_.emplace(one.mention, &one);
  }

  // The one colour named beside it, else all.
  std::span<const RoleFigures> roles_of(const Statement& total) const {
    std::string label = total.subject;
    if (label.empty())
      if (const Statement* count = count_of(total); count != nullptr && count->kind == StatementKind::count)
        label = count->subject;
    const auto named = by_label_.find(label);
    if (named != by_label_.end()) return std::span(roles_).subspan(named->second, 1);
    return label.empty() ? std::span(roles_) : std::span<const RoleFigures>{};
  }
  const Statement* count_of(const Statement& total) const {
    const auto same = counts_.find(total.mention);
    return same == counts_.end() ? nullptr : same->second;
  }

 private:
  const std::vector<RoleFigures>& roles_;
  std::map<std::string, std::size_t> by_label_;
  std::map<int, const Statement*> counts_;
};

// What is off in one size, in words; empty where nothing is.
std::string off_in_size(const Statement& total, const PrintedValue& value, const Capacity& capacity,
                        const FindingWords& words) {
  const double factor = unit_factor(total);
  const std::string unit = std::string(" ") + std::string(word_of(total.unit));
  const bool stated_need = !total.qualifier.empty() || total.kind == StatementKind::length_note;
  const std::string comes_to = capacity.words + " = " + words.number(capacity.amount / factor) + unit;
  if (!stated_need) {
    const double apart = std::abs(*value.number - capacity.amount / factor);
    // Yards and ounces of one skein are rounded before they are counted up.
    const double slack = value.half_step + (factor == 1 ? 0 : 0.5 * capacity.amount / capacity.step) + 1e-9;
    return apart <= slack ? "" : comes_to + ", printed " + words.number(*value.number) + unit;
  }
  const double need = *value.number * factor, half = value.half_step * factor;
  if (need - half > capacity.amount && total.kind != StatementKind::length_note)
    return comes_to + ", less than the " + words.number(*value.number) + unit + " stated";
  const bool used = says(lower_ascii(total.qualifier), {"used"});
  if (!used && need + half <= capacity.amount - capacity.step)
    return words.number(*value.number) + unit + " would be held by one skein fewer than " + comes_to;
  return {};
}

void test_total(const ReviewInput& input, Findings& findings, const Equations& equations,
                const Statement& total) {
  const FindingWords words(input);
  const PrintedList list = input.printed.list(total);
  const auto roles = equations.roles_of(total);
  std::vector<std::size_t> sizes;
  std::vector<std::string> evidence;
  for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
    const PrintedValue* value = value_at(list, i);
    if (value == nullptr || !value->number || !(*value->number > 0)) continue;
    const auto held = capacity(roles, i, is_weight(total.unit), words);
    if (!held || !(held->step > 0)) continue;
    const std::string off = off_in_size(total, *value, *held, words);
    if (off.empty()) continue;
    sizes.push_back(i);
    evidence.push_back("size " + input.printed.size_labels()[i] + ": " + off);
  }
  if (sizes.empty()) return;
  const bool equated = total.qualifier.empty() && total.kind == StatementKind::total_length;
  const std::string shown = printed_words(input.printed, total);
  Finding& finding = findings.add(
      equated ? Severity::stop : Severity::ask,
      equated ? "the skeins do not come to " + shown : "the skeins do not fit the need of " + shown);
  if (roles.size() == 1) finding.roles.push_back(roles.front().printed->label);
  for (const std::size_t size : sizes) add_size(finding, input.printed, size);
  finding.apart = word_of(total.unit);
  show(finding, input.printed, total);
  if (const Statement* count = equations.count_of(total)) show(finding, input.printed, *count);
  finding.evidence = std::move(evidence);
  finding.query = "The text gives " + shown + "; " + finding.evidence.front() +
                  ". Which is right, the list or the total?";
}

// Where a role holds several strands by the text: named, in one breath with its count, or said of its yarn.
const Statement* strands_of(const PrintedView& printed, const std::vector<const Statement*>& said,
                            const std::set<int>& counted, const RoleFigures& role) {
  const std::string label = compared(role.printed->label);
  const int index = role.printed->yarn;
  const std::string yarn = index < 0 ? "" : compared(printed.yarns()[static_cast<std::size_t>(index)].name);
  for (const Statement* one : said) {
    if (one->values.empty() || one->values.front().number.value_or(0) < 2) continue;
    const std::string subject = compared(one->subject);
    if (!subject.empty() && subject != yarn) {
      if (subject == label) return one;
      continue;
    }
    if (counted.count(one->mention) > 0) {
      if (role.printed->count && role.printed->count->statement->mention == one->mention) return one;
    } else if (printed.roles().size() == 1 || (index >= 0 && one->yarn == index)) {
      return one;
    }
  }
  return nullptr;
}

void test_strands(const ReviewInput& input, Findings& findings, const RoleFigures& role,
                  const Statement& strands) {
  const FindingWords words(input);
  const double n = *strands.values.front().number;
  const int counted = role.fact != nullptr ? std::max(1, role.fact->strands) : 1;
  std::vector<std::size_t> sizes;
  std::vector<std::string> evidence;
  bool any = false;
  for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
    const SizeNeed* need = role.need_at(i);
    const auto supply = printed_supply(input, role, i);
    if (need == nullptr || !supply) continue;
    any = true;
    const double one = need->knitted.value() / counted;
    if (supply->metres >= n * one || supply->metres < one) continue;
    sizes.push_back(i);
    evidence.push_back("size " + input.printed.size_labels()[i] + ": " + words.number(n) + " strands × " +
                       words.metres(one) + " = " + words.metres(n * one) + "; printed " +
                       supply->words(words));
  }
  if (!any) {
    findings.cannot("no need is known for " + role.printed->label + ", which is held in several strands",
                    "the stitches of its pieces, or a weighed sample");
    return;
  }
  if (sizes.empty()) return;
  Finding& finding =
      findings.add("the count is enough for one strand only: " +
                   (role.printed->count ? printed_words(input.printed, *role.printed->count->statement)
                                        : quoted(role.printed->label)));
  finding.roles.push_back(role.printed->label);
  for (const std::size_t size : sizes) add_size(finding, input.printed, size);
  if (role.printed->count) show(finding, input.printed, *role.printed->count->statement);
  show(finding, input.printed, strands);
  finding.evidence = std::move(evidence);
  finding.query = role.printed->label + " is worked with " + printed_words(input.printed, strands) + "; " +
                  finding.evidence.front() + ". Is the count for one strand?";
}

// Two colours that the text works together from beginning to end: the sentence that says so.
std::optional<TextSpan> held_throughout(const PrintedView& printed) {
  if (printed.roles().size() != 2) return std::nullopt;
  const std::string lower = lower_ascii(printed.text());
  for (FoundWord found = find_word(lower, {"together", "alongside"}); found;
       found = find_word(lower, {"together", "alongside"}, found.at + 1)) {
    const TextSpan sentence = sentence_around(printed.text(), found.at);
    const std::string_view words =
        std::string_view(lower).substr(sentence.begin, sentence.end - sentence.begin);
    if (says(words, {"throughout"}) &&
        says(words, {"held", "hold", "holding", "strand", "work", "carry", "knit"}) &&
        !says(words, {"k2", "k2tog", "stitches together"}))
      return sentence;
  }
  return std::nullopt;
}

void test_held_together(const ReviewInput& input, Findings& findings, const RoleFigures& a,
                        const RoleFigures& b, const std::optional<TextSpan>& said) {
  const FindingWords words(input);
  const double slack = 1 + input.need.constant_of("review_held_together_pct") / 100;
  std::vector<std::size_t> sizes;
  std::vector<std::string> evidence;
  for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
    const auto one = printed_supply(input, a, i), two = printed_supply(input, b, i);
    if (!one || !two) continue;
    const auto strands = [](const RoleFigures& role) {
      return role.fact != nullptr ? std::max(1, role.fact->strands) : 1;
    };
    const auto least = [&](const RoleFigures& role, const PrintedSupply& supply) {
      return supply.skeins && role.skein_m ? (supply.metres - *role.skein_m) / strands(role)
                                           : supply.metres / strands(role);
    };
    const double most_a = one->metres / strands(a), most_b = two->metres / strands(b);
    if (least(a, *one) <= most_b * slack && least(b, *two) <= most_a * slack) continue;
    sizes.push_back(i);
    evidence.push_back("size " + input.printed.size_labels()[i] + ": " + a.printed->label + " " +
                       one->words(words) + "; " + b.printed->label + " " + two->words(words));
  }
  if (sizes.empty()) return;
  Finding& finding = findings.add("two yarns held together last differently: " + quoted(a.printed->label) +
                                  " and " + quoted(b.printed->label));
  finding.roles = {a.printed->label, b.printed->label};
  for (const std::size_t size : sizes) add_size(finding, input.printed, size);
  for (const RoleFigures* role : {&a, &b})
    if (role->printed->count) show(finding, input.printed, *role->printed->count->statement);
  if (said) finding.places.push_back(*said);
  if (finding.places.empty() && a.printed->role != nullptr) show(finding, input.printed, *a.printed->role);
  finding.evidence = std::move(evidence);
  finding.query = "Held together throughout, both yarns need the same length; " + finding.evidence.front() +
                  ". Which count is right?";
}

}  // namespace

void counted_in_own_skeins(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const auto roles = role_figures(input);
  std::vector<std::string> unknown;
  for (const RoleFigures& role : roles) {
    if (!role.printed->count || !role.skein_m || !(*role.skein_m > 0)) continue;
    const auto others = other_skeins(input, role);
    if (others.empty()) continue;
    const auto own = fit_of(input, role, *role.skein_m);
    if (!own) {
      unknown.push_back(role.printed->label);
      continue;
    }
    if (own->fitting == own->sizes) continue;
    for (const OtherSkein& other : others) {
      const auto fit = fit_of(input, role, other.metres);
      if (!fit || fit->sizes == 0 || fit->fitting < fit->sizes) continue;
      const Statement& list = *role.printed->count->statement;
      const std::string shown = printed_words(input.printed, list);
      Finding& finding = findings.add("counted in the skeins of another yarn: " + shown);
      finding.roles.push_back(role.printed->label);
      show(finding, input.printed, list);
      for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
        const double planned = role.need_at(i)->planned.value();
        finding.evidence.push_back(
            "size " + input.printed.size_labels()[i] + ": " + words.metres(planned) + " = " +
            words.number(planned / *role.skein_m, 2) + " skeins of " + words.metres(*role.skein_m) + ", " +
            words.number(planned / other.metres, 2) + " of " + words.metres(other.metres) + "; printed " +
            words.number(*role.printed_skeins(i)));
      }
      finding.query = "The list " + shown + " for " + role.printed->label + " fits skeins of " +
                      words.metres(other.metres) + " (" + other.yarn +
                      ") in every size, and not its own of " + words.metres(*role.skein_m) +
                      ". Was it counted in the wrong skeins?";
      break;
    }
  }
  if (!unknown.empty())
    findings.cannot("the need of " + listed(unknown) + " is not known in every size",
                    "the stitches of its pieces, or a weighed sample");
}

void totals_equal_counts(const ReviewInput& input, Findings& findings) {
  const auto roles = role_figures(input);
  const Equations equations(input, roles);
  for (const Statement& one : input.printed.reading().statements) {
    if (one.values.empty() || !metres_or_grams(one, 1)) continue;
    const bool total = one.kind == StatementKind::total_length;
    // A note of one figure for many sizes speaks of the largest need, not of each.
    const bool stated_need = one.kind == StatementKind::length_note &&
                             one.values.size() == input.printed.sizes() &&
                             says(lower_ascii(one.qualifier), {"about", "needed", "need", "required"});
    // "7 hanks / 1190 m in size 1": one figure that is not said of every size.
    const bool of_one_size = one.values.size() == 1 && !one.all_sizes && input.printed.sizes() > 1;
    if ((total || stated_need) && !of_one_size) test_total(input, findings, equations, one);
  }
}

void strands_are_counted(const ReviewInput& input, Findings& findings) {
  const auto roles = role_figures(input);
  std::set<int> counted;  // breaths that hold a count
  for (const RoleFigures& role : roles)
    if (role.printed->count) counted.insert(role.printed->count->statement->mention);
  const auto all_strands = input.printed.all(StatementKind::strands);
  for (const RoleFigures& role : roles)
    if (const Statement* strands = strands_of(input.printed, all_strands, counted, role))
      test_strands(input, findings, role, *strands);
  const auto said = held_throughout(input.printed);
  bool tested = false;
  for (const RoleFigures& role : roles) {
    if (role.fact == nullptr || !role.fact->goes_along_with) continue;
    for (const RoleFigures& other : roles)
      if (other.fact != nullptr && other.fact->id == role.fact->goes_along_with) {
        test_held_together(input, findings, other, role, said);
        tested = true;
      }
  }
  if (said && !tested) test_held_together(input, findings, roles[0], roles[1], said);
}

}  // namespace skeinproof
