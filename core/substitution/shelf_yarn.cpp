// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/shelf_yarn.h"

#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "core/base/text.h"
#include "core/pattern/edits.h"
#include "core/yarn/linear_density.h"

namespace skeinproof {
namespace {

// Small letters, one space between words.
std::string plain_name(std::string_view name) {
  std::string plain;
  for (const std::string& word : split(folded_name(name), ' '))
    if (!word.empty()) plain += (plain.empty() ? "" : " ") + word;
  return plain;
}

// What two entries must have in common to the letter before their put-ups are compared.
std::string folded_key(const Yarn& yarn) {
  std::vector<std::string> shares;
  for (const FibreShare& share : yarn.composition)
    shares.push_back((share.fibre.empty() ? plain_name(share.words) : share.fibre) + " " +
                     std::to_string(std::lround(share.percent.value * 10)));
  std::sort(shares.begin(), shares.end());
  return plain_name(yarn.name) + "\n" + join(shares, "\n");
}

// "1¾ oz" for 50 g is rounded by 0.8 %.
constexpr double same_share = 0.01;

template <class Quantity>
bool alike(const std::optional<Entered<Quantity>>& a, const std::optional<Entered<Quantity>>& b) {
  if (!a || !b) return a.has_value() == b.has_value();
  const double x = a->value.value(), y = b->value.value();
  return std::abs(x - y) <= same_share * std::max(std::abs(x), std::abs(y));
}

bool same_put_up(const PutUp& a, const PutUp& b) {
  return alike(a.length, b.length) && alike(a.weight, b.weight);
}

bool same_lot(const ShelfYarn& a, const ShelfYarn& b) {
  return plain_name(a.shade.name) == plain_name(b.shade.name) &&
         plain_name(a.shade.number) == plain_name(b.shade.number) && plain_name(a.lot) == plain_name(b.lot);
}

// Entries by what they have in common, with the search among them.
class Alike {
 public:
  explicit Alike(std::span<const ShelfYarn> entries) : entries_(entries) {}

  void add(std::size_t index) { by_key_[folded_key(entries_[index].yarn)].push_back(index); }

  std::optional<ShelfDuplicate> find(const ShelfYarn& entry, std::size_t index) const {
    std::optional<ShelfDuplicate> found;
    const auto group = by_key_.find(folded_key(entry.yarn));
    if (group == by_key_.end()) return found;
    for (std::size_t other : group->second) {
      if (!same_put_up(entry.yarn.put_up, entries_[other].yarn.put_up)) continue;
      const bool exact = same_lot(entry, entries_[other]);
      if (!found || exact) found = ShelfDuplicate{index, other, exact};
      if (exact) break;
    }
    return found;
  }

 private:
  std::span<const ShelfYarn> entries_;
  std::unordered_map<std::string, std::vector<std::size_t>> by_key_;
};

}  // namespace

bool is_owned(const ShelfYarn& entry) {
  return (entry.skeins && entry.skeins->value > 0) || (entry.weight && entry.weight->value > grams(0));
}

std::optional<Metres> owned_length(const ShelfYarn& entry) {
  if (!is_owned(entry)) return std::nullopt;
  Metres length = metres(0);
  if (entry.skeins && entry.skeins->value > 0) {
    if (!entry.yarn.put_up.length) return std::nullopt;
    length += entry.skeins->value * entry.yarn.put_up.length->value;
  }
  if (entry.weight && entry.weight->value > grams(0)) {
    const auto density = linear_density(entry.yarn.put_up);
    if (!density) return std::nullopt;
    length += entry.weight->value * *density;
  }
  return length;
}

std::vector<ShelfDuplicate> find_duplicates(std::span<const ShelfYarn> shelf,
                                            std::span<const ShelfYarn> entries) {
  Alike on_shelf(shelf);
  for (std::size_t i = 0; i < shelf.size(); ++i) on_shelf.add(i);
  std::vector<ShelfDuplicate> all;
  for (std::size_t i = 0; i < entries.size(); ++i)
    if (const auto found = on_shelf.find(entries[i], i)) all.push_back(*found);
  return all;
}

std::vector<ShelfDuplicate> find_duplicates(std::span<const ShelfYarn> entries) {
  Alike before(entries);
  std::vector<ShelfDuplicate> all;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    if (const auto found = before.find(entries[i], i)) all.push_back(*found);
    before.add(i);
  }
  return all;
}

ShelfIntake plan_intake(std::span<const ShelfYarn> shelf, std::span<const ShelfYarn> offered,
                        DuplicateChoice choice) {
  ShelfIntake intake;
  std::vector<std::optional<std::size_t>> on_shelf(offered.size());
  std::vector<bool> again(offered.size());
  for (const ShelfDuplicate& duplicate : find_duplicates(shelf, offered)) {
    if (!duplicate.exact) {
      ++intake.other_lots;
      continue;
    }
    on_shelf[duplicate.entry] = duplicate.on_shelf;
    intake.duplicates.push_back(duplicate);
  }
  for (const ShelfDuplicate& duplicate : find_duplicates(offered)) again[duplicate.entry] = duplicate.exact;
  for (std::size_t i = 0; i < offered.size(); ++i) {
    const bool left_out = choice == DuplicateChoice::leave_out && on_shelf[i];
    if (again[i] && choice != DuplicateChoice::add) ++intake.twice;
    if (left_out || (again[i] && choice != DuplicateChoice::add)) continue;
    ShelfYarn& entry = intake.entries.emplace_back(offered[i]);
    entry.id = choice == DuplicateChoice::replace && on_shelf[i] ? shelf[*on_shelf[i]].id : ShelfYarnId{};
  }
  return intake;
}

YarnId yarn_from_shelf(Pattern& pattern, const ShelfYarn& entry) {
  for (const Yarn& there : pattern.yarns) {
    Yarn same = entry.yarn;
    same.id = there.id;
    if (same == there) return there.id;
  }
  const YarnId id = add_yarn(pattern, entry.yarn.name);
  for (Yarn& added : pattern.yarns)
    if (added.id == id) {
      added = entry.yarn;
      added.id = id;
    }
  return id;
}

CandidateId candidate_from_shelf(Pattern& pattern, const ShelfYarn& first, const ShelfYarn* held_with,
                                 int strands) {
  const YarnId yarn = yarn_from_shelf(pattern, first);
  const YarnId other = held_with != nullptr ? yarn_from_shelf(pattern, *held_with) : YarnId{};
  const CandidateId id = add_candidate(pattern, yarn);
  CandidateYarn& used = pattern.candidates.back().yarns.front();
  used.strands = strands;
  used.held_with = other;
  return id;
}

OnHandId on_hand_from_shelf(Pattern& pattern, const ShelfYarn& entry) {
  const OnHandId id = add_on_hand(pattern, yarn_from_shelf(pattern, entry));
  YarnOnHand& on_hand = pattern.on_hand.back();
  on_hand.shade = entry.shade;
  on_hand.lot = entry.lot;
  on_hand.whole_skeins = entry.skeins;
  if (entry.weight) on_hand.parts.push_back(*entry.weight);
  on_hand.note = entry.note;
  return id;
}

ShelfYarn shelf_yarn_of(const Pattern& pattern, YarnId yarn) {
  ShelfYarn entry;
  if (const Yarn* found = pattern.yarn(yarn)) entry.yarn = *found;
  entry.yarn.id = {};
  return entry;
}

}  // namespace skeinproof
