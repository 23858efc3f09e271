// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/yarn_contents.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/reference/fibre_words.h"
#include "core/reference/lookup.h"
#include "core/review/printed_words.h"

namespace skeinproof {

std::vector<Composition> printed_compositions(const PrintedYarn& yarn) {
  std::vector<Composition> all;
  int mention = 0;
  double sum = 0;
  for (const Statement* one : yarn.fibres) {
    // A list that has come to 100 % is full: what follows is another's.
    if (all.empty() || one->mention != mention || std::abs(sum - 100) < 1e-6) {
      all.emplace_back();
      sum = 0;
    }
    mention = one->mention;
    FibreSaid said;
    said.fibre = fibre_by_words(one->words);
    said.words = lower_ascii(one->words);
    said.statement = one;
    if (!one->values.empty()) {
      said.percent = one->values.front().number;
      said.half_step = one->values.front().half_step;
      sum += said.percent.value_or(0);
    }
    all.back().push_back(std::move(said));
  }
  return all;
}

Composition composition_of(const ReviewInput& input, const PrintedYarn& yarn) {
  auto all = printed_compositions(yarn);
  if (!all.empty()) return std::move(all.front());
  Composition composition;
  if (const Yarn* fact = input.pattern.yarn(yarn.fact))
    for (const FibreShare& share : fact->composition)
      composition.push_back(
          {fibre_by_id(share.fibre), lower_ascii(share.words), share.percent.value, 0, nullptr});
  return composition;
}

std::string name_of(const PrintedYarn& yarn) { return yarn.name.empty() ? "the yarn" : yarn.name; }

std::string printed_description(const PrintedView& printed, const PrintedYarn& yarn) {
  std::string words;
  for (const Statement* one : yarn.descriptions)
    words += lower_ascii(one->words.empty() ? printed.words(one->span) : std::string_view(one->words)) + ", ";
  return words;
}

bool is_shrink_resistant(const FibreSaid& fibre) {
  return (fibre.fibre != nullptr && fibre.fibre->id == "wool_superwash") ||
         says(fibre.words, {"superwash", "shrink-resist", "shrink resist", "shrink-resistant", "washable"});
}

bool is_animal(const FibreSaid& fibre) {
  return fibre.fibre != nullptr && fibre.fibre->fibre_class == "animal";
}

bool has_halo(const ReviewInput& input, const PrintedYarn& yarn) {
  std::string words = printed_description(input.printed, yarn);
  if (const Yarn* fact = input.pattern.yarn(yarn.fact)) words += lower_ascii(fact->surface);
  if (says(words, {"halo", "brushed", "fluffy", "fuzzy", "boucle", "bouclé"})) return true;
  return share_of(composition_of(input, yarn), [](const FibreSaid& said) {
           return said.fibre != nullptr && (said.fibre->id == "mohair" || said.fibre->id == "angora");
         }) >= 40;
}

double share_of(const Composition& composition, bool (*holds)(const FibreSaid&)) {
  double held = 0, all = 0;
  const bool shares = std::all_of(composition.begin(), composition.end(),
                                  [](const FibreSaid& said) { return said.percent.has_value(); });
  for (const FibreSaid& said : composition) {
    const double part = shares ? *said.percent : 1;
    all += part;
    if (holds(said)) held += part;
  }
  return all > 0 ? held / all * 100 : 0;
}

}  // namespace skeinproof
