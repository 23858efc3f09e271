// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/on_hand_verdict.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/need/constants.h"

namespace skeinproof {
namespace {

// How far each end of an interval lies from its middle: skeins of one yarn err together, those of different
// yarns each for itself.
struct SummedLength {
  Metres have;
  std::map<std::uint32_t, std::pair<double, double>> off_by_yarn;  // shorter, longer

  void add(const YarnOnHand& yarn, const LengthOnHand& length) {
    have += length.length;
    auto& off = off_by_yarn[yarn.yarn.value];
    off.first += (length.length - length.low).value();
    off.second += (length.high - length.length).value();
  }
  double off(double std::pair<double, double>::*side) const {
    double squares = 0;
    for (const auto& [yarn, both] : off_by_yarn) squares += both.*side * (both.*side);
    return std::sqrt(squares);
  }
  Metres low() const { return std::max(metres(0), have - metres(off(&std::pair<double, double>::first))); }
  Metres high() const { return have + metres(off(&std::pair<double, double>::second)); }
};

class RoleVerdict {
 public:
  RoleVerdict(const Pattern& pattern, const Role& role, const SizeNeed& need, const RoleEvidence& evidence,
              std::size_t size_index, const NumberStyle& style)
      : pattern_(pattern),

        need_(need),
        evidence_(evidence),
        size_index_(size_index),
        style_(style),
        rules_(leftover_rules(pattern, role)) {
    result_.role = role.id;
    result_.label = role.label;
    result_.size = pattern.sizes[size_index].id;
  }

  void hold(const YarnOnHand& yarn) {
    const auto length = length_on_hand(pattern_, yarn);
    if (!length) {
      result_.left_out.push_back(length.error());
      return;
    }
    sum_.add(yarn, *length);
    result_.pieces += length->pieces;
    result_.yarns.push_back(yarn.id);
    result_.names.push_back(on_hand_name(pattern_, yarn));
    if (!yarn.lot.empty()) lots_.insert(yarn.lot);
    kinds_.insert(yarn.yarn.value);
  }

  RoleOnHand take() {
    if (result_.yarns.empty()) {
      result_.missing.push_back("no yarn on hand with a length");
      return std::move(result_);
    }
    result_.have = sum_.have;
    result_.low = sum_.low();
    result_.high = sum_.high();
    result_.usable = usable(result_.have);
    judge();
    note_lots();
    return std::move(result_);
  }

 private:
  OnHand on_hand(Metres length) const { return {length, std::max(1, result_.pieces)}; }
  Metres usable(Metres length) const {
    return std::max(metres(0), length - metres(rules_.join_m * (std::max(1, result_.pieces) - 1)));
  }
  std::string shown(Metres length) const { return show_number(length.value(), 1, style_) + " m"; }

  void judge() {
    const std::vector<LengthEvidence> known = evidence_.sizes[size_index_].all();
    const auto verdict = leftover_verdict(on_hand(result_.have), known, rules_);
    if (!verdict) {
      result_.missing.push_back(need_.missing.empty() ? verdict.error().expected : need_.missing);
      return;
    }
    result_.verdict = verdict->verdict;
    result_.ground = verdict->ground;
    result_.settled_by = verdict->settled_by;
    const BoundSide side = verdict->verdict == Verdict::not_enough ? BoundSide::least : BoundSide::most;
    result_.because = evidence_in_words(pattern_, evidence_, size_index_, side, style_);
    for (const LengthEvidence& one : known)
      if (const auto alone = leftover_verdict(on_hand(result_.have), {one}, rules_))
        result_.grounds.push_back({alone->verdict, one, ground_words(one, alone->verdict)});
    measure(known);
    put_in_words();
    take_chance();
    note_length(known);
  }

  std::string ground_words(const LengthEvidence& one, Verdict verdict) const {
    if (one.ground != LengthGround::printed_counts) return length_in_words(one, style_);
    std::vector<std::string> labels;
    for (const Size& size : pattern_.sizes) labels.push_back(size.label);
    return counts_in_words(*evidence_.steps, labels, size_index_,
                           verdict == Verdict::not_enough ? BoundSide::least : BoundSide::most, style_);
  }

  // Against the need in force, whatever decides; against the counts where these alone explain the verdict.
  void measure(const std::vector<LengthEvidence>& known) {
    if (need_.known) measure(need_.planned, need_.knitted, false);
    const bool explained = (result_.over && *result_.verdict == Verdict::enough) ||
                           (result_.short_of && *result_.verdict == Verdict::not_enough);
    if (explained || *result_.verdict == Verdict::too_close_to_call) return;
    for (const LengthEvidence& one : known)
      if (one.ground == LengthGround::printed_counts)
        measure(one.high, one.low / (1 + rules_.most_allowance), true);
  }
  void measure(Metres wanted, Metres least, bool by_counts) {
    result_.over = result_.usable >= wanted ? std::optional(result_.usable - wanted) : std::nullopt;
    result_.short_of = result_.usable < least ? std::optional(least - result_.usable) : std::nullopt;
    by_counts_ = by_counts;
  }

  void put_in_words() {
    result_.words = std::string(word_of(*result_.verdict));
    const bool counts = result_.ground == LengthGround::printed_counts;
    if (result_.over)
      result_.words +=
          ": " + shown(*result_.over) + (counts ? " above the most that is needed" : " to spare");
    if (result_.short_of) result_.words += ": short by " + shown(*result_.short_of);
    if (*result_.verdict == Verdict::too_close_to_call && !result_.settled_by.empty())
      result_.words += ", settled by " + result_.settled_by;
  }

  // The length of yarn at hand errs as one skein would.
  void take_chance() {
    const auto& basis = evidence_.sizes[size_index_].chance_basis;
    if (!basis || !(result_.usable > metres(0))) return;
    const double off = deviation_of(((result_.high - result_.low) / result_.usable) / 2);
    result_.chance =
        chance_sufficient(basis->knitted, basis->swatch, basis->need, 1, result_.usable, {off, 0});
  }

  // What the verdict would be at the ends of the length's own interval.
  void note_length(const std::vector<LengthEvidence>& known) {
    const auto at = [&](Metres length) { return leftover_verdict(on_hand(length), known, rules_); };
    const auto low = at(result_.low), high = at(result_.high);
    const auto note = [&](const LeftoverVerdict& other, Metres length, const char* side) {
      if (other.verdict == *result_.verdict) return;
      result_.notes.push_back("The yarn itself may be as " + std::string(side) + " as " + shown(length) +
                              "; then it is " + std::string(word_of(other.verdict)) +
                              ". A finer scale, or a whole new skein beside it, tells more");
    };
    if (low) note(*low, result_.low, "short");
    if (high) note(*high, result_.high, "long");
  }

  void note_lots() {
    if (lots_.size() > 1)
      result_.notes.push_back(std::to_string(lots_.size()) +
                              " dye lots in one colour: see the lot plan before casting on");
    if (kinds_.size() > 1)
      result_.notes.push_back(std::to_string(kinds_.size()) +
                              " yarns in one colour: swatch them side by side before they share a piece");
  }

  const Pattern& pattern_;
  const SizeNeed& need_;
  const RoleEvidence& evidence_;
  std::size_t size_index_;
  const NumberStyle& style_;
  LeftoverRules rules_;
  bool by_counts_ = false;  // what over and short are measured against
  SummedLength sum_;
  std::set<std::string> lots_;
  std::set<std::uint32_t> kinds_;
  RoleOnHand result_;
};

}  // namespace

std::optional<std::size_t> on_hand_size_index(const Pattern& pattern) {
  return pattern.size_index(pattern.on_hand_size ? pattern.on_hand_size : pattern.chosen_size);
}

std::vector<RoleOnHand> on_hand_verdicts(const Pattern& pattern, const Assessment& assessment,
                                         const NumberStyle& style) {
  std::vector<RoleOnHand> all;
  const auto size_index = on_hand_size_index(pattern);
  const auto holds = [](const YarnOnHand& yarn) { return yarn.used && yarn.role; };
  if (!size_index || std::none_of(pattern.on_hand.begin(), pattern.on_hand.end(), holds)) return all;
  const std::vector<RoleEvidence> evidence = gather_evidence(pattern, assessment);
  for (std::size_t i = 0; i < assessment.roles.size(); ++i) {
    const Role* role = pattern.role(assessment.roles[i].role);
    if (role == nullptr || *size_index >= assessment.roles[i].sizes.size()) continue;
    RoleVerdict verdict(pattern, *role, assessment.roles[i].sizes[*size_index], evidence[i], *size_index,
                        style);
    bool any = false;
    for (const YarnOnHand& yarn : pattern.on_hand)
      if (holds(yarn) && yarn.role == role->id) {
        verdict.hold(yarn);
        any = true;
      }
    if (any) all.push_back(verdict.take());
  }
  return all;
}

}  // namespace skeinproof
