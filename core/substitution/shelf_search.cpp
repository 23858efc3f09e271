// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/shelf_search.h"

#include <algorithm>
#include <iterator>

#include "core/base/text.h"
#include "core/substitution/shelf_fields.h"
#include "core/substitution/shelf_likeness.h"
#include "core/substitution/shelf_nearest.h"
#include "core/units/show.h"
#include "core/yarn/linear_density.h"

namespace skeinproof {
namespace {

// The fields that words are looked for in.
constexpr ShelfField searched[] = {
    ShelfField::name,      ShelfField::composition, ShelfField::shade,       ShelfField::shade_number,
    ShelfField::category,  ShelfField::structure,   ShelfField::twist,       ShelfField::surface,
    ShelfField::treatment, ShelfField::colouring,   ShelfField::care,        ShelfField::spinning,
    ShelfField::lot,       ShelfField::place,       ShelfField::description, ShelfField::note};

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  for (std::string& word : split(folded_name(text), ' '))
    if (!word.empty()) words.push_back(std::move(word));
  return words;
}

std::string text_of(const ShelfYarn& entry) {
  std::string text;
  for (ShelfField field : searched) text += folded_name(field_text(entry, field)) + "\n";
  return text;
}

bool holds(const std::string& text, const std::vector<std::string>& words) {
  return std::all_of(words.begin(), words.end(),
                     [&](const std::string& word) { return text.find(word) != std::string::npos; });
}

std::string name_of(const ShelfYarn& entry) {
  const std::string name = entry.yarn.name.empty() ? "a yarn without a name" : entry.yarn.name;
  const std::string shade = join({entry.shade.name, entry.shade.number}, " ");
  return trimmed(shade).empty() ? name : name + ", " + std::string(trimmed(shade));
}

}  // namespace

struct ShelfIndex::Ready {
  std::vector<ShelfYarn> entries;
  std::vector<std::string> texts;  // what words are looked for in
  std::vector<LikeYarn> like;

  LikeYarn of(const ShelfHit& hit) const {
    if (hit.holding == ShelfHolding::pair) return held_together(like[hit.first], like[hit.second]);
    return held(like[hit.first], hit.holding == ShelfHolding::doubled ? 2 : 1);
  }
  ShelfHit hit(ShelfHolding holding, std::size_t first, std::size_t second, const LikeYarn* asked) const;
  std::vector<ShelfHit> nearest(const ShelfQuestion& question, const std::vector<bool>& wanted,
                                const LikeYarn& asked) const;
};

ShelfHit ShelfIndex::Ready::hit(ShelfHolding holding, std::size_t first, std::size_t second,
                                const LikeYarn* asked) const {
  ShelfHit hit;
  hit.holding = holding;
  hit.first = first;
  hit.second = second;
  const LikeYarn yarn = of(hit);
  if (yarn.mg_per_km > 0) hit.tex = static_cast<double>(yarn.mg_per_km) / 1000;
  hit.price_a_100m = yarn.price_a_100m;
  hit.currency = yarn.currency;
  if (asked == nullptr) return hit;
  hit.likeness = likeness_of(yarn, *asked);
  if (const auto difference = thickness_difference(yarn, *asked)) {
    hit.thickness_pct = difference->thicker_pct;
    hit.weight_pct = difference->heavier_pct;
  }
  return hit;
}

// The nearest in grams a metre of each kind that is asked for.
std::vector<ShelfHit> ShelfIndex::Ready::nearest(const ShelfQuestion& question,
                                                 const std::vector<bool>& wanted,
                                                 const LikeYarn& asked) const {
  std::vector<NearYarn> some, others;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    if (like[i].mg_per_km <= 0 || (question.owned_only && !is_owned(entries[i]))) continue;
    if (!wanted[i] && !question.pairs) continue;
    const int unlike =
        fibre_level(like[i], asked) + care_level(like[i], asked) + (like[i].surface == asked.surface ? 0 : 1);
    (wanted[i] ? some : others).push_back({like[i].mg_per_km, unlike, i});
  }
  std::vector<ShelfHit> hits;
  const auto add = [&](ShelfHolding holding, const std::vector<Nearest>& found) {
    for (const Nearest& one : found) hits.push_back(hit(holding, one.first, one.second, &asked));
  };
  if (question.singles) add(ShelfHolding::single, nearest_singles(some, asked.mg_per_km, 1, shelf_nearest));
  if (question.doubled) add(ShelfHolding::doubled, nearest_singles(some, asked.mg_per_km, 2, shelf_nearest));
  if (question.pairs) add(ShelfHolding::pair, nearest_pairs(some, others, asked.mg_per_km, shelf_nearest));
  return hits;
}

ShelfIndex::ShelfIndex(std::vector<ShelfYarn> entries) {
  auto ready = std::make_unique<Ready>();
  ready->entries = std::move(entries);
  for (const ShelfYarn& entry : ready->entries) {
    ready->texts.push_back(text_of(entry));
    ready->like.push_back(like_yarn(entry.yarn));
  }
  ready_ = std::move(ready);
}
ShelfIndex::~ShelfIndex() = default;
ShelfIndex::ShelfIndex(ShelfIndex&&) noexcept = default;
ShelfIndex& ShelfIndex::operator=(ShelfIndex&&) noexcept = default;

const std::vector<ShelfYarn>& ShelfIndex::entries() const { return ready_->entries; }

Expected<ShelfAnswer> ShelfIndex::search(const ShelfQuestion& question) const {
  std::optional<LikeYarn> asked;
  if (question.like) {
    if (const auto density = linear_density(question.like->yarn.put_up); !density)
      return failure(density.error().kind,
                     density.error().found + " of a skein of " + quoted(question.like->yarn.name),
                     "its length and weight, for a thickness to compare by");
    asked = held(like_yarn(question.like->yarn), std::max(1, question.like->strands));
  }
  ShelfAnswer answer;
  const std::vector<std::string> words = words_of(question.words);
  std::vector<bool> wanted(entries().size());
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    wanted[i] = holds(ready_->texts[i], words);
    const bool shown = wanted[i] && (!question.owned_only || is_owned(entries()[i]));
    if (shown && asked && ready_->like[i].mg_per_km <= 0) ++answer.without_put_up;
    if (shown && !asked) answer.hits.push_back(ready_->hit(ShelfHolding::single, i, i, nullptr));
  }
  if (asked) answer.hits = ready_->nearest(question, wanted, *asked);
  order(answer.hits, asked ? ShelfOrder::rule : ShelfOrder::name);
  return answer;
}

std::string ShelfIndex::reason(const ShelfQuestion& question, const ShelfHit& hit) const {
  std::vector<std::string> parts;
  if (question.like) {
    const LikeYarn asked = held(like_yarn(question.like->yarn), std::max(1, question.like->strands));
    parts.push_back(likeness_words(ready_->of(hit), asked, hit.likeness));
  }
  for (const std::string& word : words_of(question.words)) {
    const ShelfYarn& with =
        holds(ready_->texts[hit.first], {word}) ? entries()[hit.first] : entries()[hit.second];
    for (ShelfField field : searched)
      if (folded_name(field_text(with, field)).find(word) != std::string::npos) {
        parts.push_back(quoted(word) + " in its " + lower_ascii(shelf_field_row(field).heading));
        break;
      }
  }
  const auto& first = entries()[hit.first];
  const auto& second = entries()[hit.second];
  if (is_owned(first) && is_owned(second)) {
    const auto owned = owned_length(first);
    parts.push_back(hit.holding == ShelfHolding::pair ? "both at home"
                    : owned                           ? show_short(owned->value(), 0) + " m at home"
                                                      : "some at home");
  } else if (is_owned(first) || is_owned(second)) {
    parts.push_back("one of them at home");
  }
  if (first.yarn.withdrawn || second.yarn.withdrawn) parts.emplace_back("no longer made");
  return join(parts, "; ");
}

Expected<ShelfLike> like_role(const Pattern& pattern, std::string_view role_label) {
  for (const Role& role : pattern.roles) {
    if (!role_label.empty() && folded_name(role.label) != folded_name(role_label)) continue;
    const Yarn* yarn = pattern.yarn(role.yarn);
    if (yarn == nullptr)
      return failure(ErrorKind::not_found, "no yarn for the role " + quoted(role.label),
                     "a role with a yarn");
    return ShelfLike{*yarn, role.strands};
  }
  std::vector<std::string> labels;
  for (const Role& role : pattern.roles) labels.push_back(role.label);
  return failure(
      ErrorKind::unknown_name,
      role_label.empty() ? std::string("a pattern without roles") : "the role " + quoted(role_label),
      labels.empty() ? std::string("a pattern with a role") : "one of " + join(labels, ", "));
}

std::string shelf_order_words(const ShelfQuestion& question) {
  if (!question.like) return "By name.";
  std::vector<std::string> steps;
  for (double step : shelf_thickness_steps) steps.push_back("within " + show_short(step, 1) + " %");
  return "Of each kind the " + show_short(static_cast<double>(shelf_nearest), 0) +
         " nearest in grams a metre are compared. First by thickness (" + join(steps, ", ") +
         ", more); inside each step by fibre (same, mostly, partly, other, not known), then by care (no "
         "stricter, not known, stricter), surface, structure and colouring (same, not known, other); then "
         "the "
         "nearest in thickness, then the lowest price a metre, then by name.";
}

std::string hit_name(std::span<const ShelfYarn> entries, const ShelfHit& hit) {
  const std::string first = name_of(entries[hit.first]);
  switch (hit.holding) {
    case ShelfHolding::doubled:
      return first + ", held double";
    case ShelfHolding::pair:
      return first + " with " + name_of(entries[hit.second]);
    default:
      return first;
  }
}

}  // namespace skeinproof
