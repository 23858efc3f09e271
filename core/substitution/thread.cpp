// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/thread.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/yarn/linear_density.h"

namespace skeinproof {
namespace {

std::string name_of(const Yarn& yarn) { return yarn.name.empty() ? "a yarn without a name" : yarn.name; }

// What a strand weighs beside the others: grams a metre, or nothing known.
std::optional<double> weight_of(const Yarn& yarn) {
  const auto density = linear_density(yarn.put_up);
  return density ? std::optional(1 / density->value()) : std::nullopt;
}

}  // namespace

int Thread::count() const {
  int all = 0;
  for (const auto& [yarn, times] : strands) all += times;
  return all;
}

std::string Thread::name() const {
  std::vector<std::string> names;
  for (const auto& [yarn, times] : strands) {
    std::string name = name_of(*yarn);
    if (times == 2) name += " held double";
    if (times == 3) name += " held triple";
    if (times > 3) name += " held " + std::to_string(times) + " times";
    names.push_back(std::move(name));
  }
  return join(names, " with ");
}

Expected<MetresPerGram> density_of(const Thread& thread) {
  std::vector<MetresPerGram> strands;
  for (const auto& [yarn, times] : thread.strands) {
    const auto density = linear_density(yarn->put_up);
    if (!density)
      return failure(ErrorKind::not_found, "no length and weight of " + name_of(*yarn),
                     "both, from the band");
    strands.push_back(*density / static_cast<double>(std::max(1, times)));
  }
  if (strands.empty()) return failure(ErrorKind::not_found, "no yarn", "a yarn for the role");
  return held_together(strands);
}

std::vector<FibreShare> composition_of(const Thread& thread) {
  if (thread.strands.size() == 1) return thread.strands.front().first->composition;
  std::vector<FibreShare> mixed;
  for (const auto& [yarn, times] : thread.strands) {
    const auto weight = weight_of(*yarn);
    double total = 0;
    for (const FibreShare& share : yarn->composition) total += std::max(0.0, share.percent.value);
    if (!weight || !(total > 0)) return {};
    for (FibreShare share : yarn->composition) {
      share.percent.value = std::max(0.0, share.percent.value) / total * *weight * times;
      mixed.push_back(std::move(share));
    }
  }
  return mixed;
}

FibreShares shares_of(const Thread& thread) {
  if (thread.strands.size() == 1)
    return fibre_shares(thread.strands.front().first->composition, thread.strands.front().first->treatment);
  // Treatment belongs to a yarn, so a treated strand's wool is named as such before the strands are mixed.
  std::vector<Yarn> named;
  Thread mixed;
  named.reserve(thread.strands.size());
  for (const auto& [yarn, times] : thread.strands) {
    named.push_back(*yarn);
    for (FibreShare& share : named.back().composition)
      if (fibre_shares({share}, yarn->treatment).superwash > 0) share.fibre = "wool_superwash";
    mixed.strands.emplace_back(&named.back(), times);
  }
  return fibre_shares(composition_of(mixed), {});
}

double mass_share(const Thread& thread, bool (*holds)(const Yarn& yarn)) {
  double all = 0, some = 0;
  const bool weighed = std::all_of(thread.strands.begin(), thread.strands.end(),
                                   [](const auto& one) { return weight_of(*one.first).has_value(); });
  for (const auto& [yarn, times] : thread.strands) {
    const double weight = times * (weighed ? weight_of(*yarn).value_or(1) : 1);
    all += weight;
    if (holds(*yarn)) some += weight;
  }
  return all > 0 ? 100 * some / all : 0;
}

AirClass air_class(const Thread& thread) {
  if (thread.empty()) return AirClass::unstated;
  const AirClass first = air_class(*thread.strands.front().first);
  const bool alike = std::all_of(thread.strands.begin(), thread.strands.end(),
                                 [&](const auto& one) { return air_class(*one.first) == first; });
  return alike ? first : AirClass::unstated;
}

}  // namespace skeinproof
