// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/manuscript/block_parts.h"
#include "core/manuscript/words.h"

namespace skeinproof {
namespace {

void description_missing(BlockDraft& draft, const Yarn& yarn) {
  const bool treated =
      !yarn.treatment.empty() ||
      std::any_of(yarn.composition.begin(), yarn.composition.end(), [](const FibreShare& share) {
        return share.fibre == "wool_superwash" || share.fibre == "cotton_mercerised";
      });
  const std::pair<bool, const char*> elements[] = {
      {!yarn.structure.empty(), "plies"},
      {yarn.spinning != Spinning::unstated || !yarn.twist.empty(), "spinning or twist"},
      {!yarn.category.empty(), "weight name"},
      {!yarn.surface.empty(), "surface"},
      {!yarn.colouring.empty(), "colouring"},
      {treated, "treatment"}};
  std::vector<std::string> unknown;
  for (const auto& [known, word] : elements)
    if (!known) unknown.emplace_back(word);
  if (static_cast<int>(std::size(elements) - unknown.size()) < draft.house.description_minimum)
    draft.missing("description of " + yarn.name + ": " + join(unknown, ", "), "Yarns", yarn.id.value);
}

}  // namespace

void write_yarn(BlockDraft& draft, const Yarn& yarn) {
  BlockLine line = {{BlockPart::yarn_name, yarn.name.empty() ? "–" : yarn.name, yarn.id, {}}};
  const std::string composition = composition_words(yarn, draft.house);
  const std::string put_up = put_up_words(yarn, draft.house, Inside::brackets);
  if (!composition.empty() || !put_up.empty()) append(line, " (");
  if (!composition.empty()) line.push_back({BlockPart::composition, composition, yarn.id, {}});
  if (!composition.empty() && !put_up.empty()) append(line, "; ");
  if (!put_up.empty()) line.push_back({BlockPart::put_up, put_up, yarn.id, {}});
  if (!composition.empty() || !put_up.empty()) append(line, ")");
  std::vector<std::string> description;
  for (const DescriptionElement element : draft.house.description) {
    std::string words = description_words(yarn, element, draft.house);
    if (!words.empty()) description.push_back(std::move(words));
  }
  if (!yarn.description.empty()) description.push_back(yarn.description);
  std::string words = join(description, ", ");
  if (yarn.withdrawn && !draft.house.withdrawn_words.empty())
    words += (words.empty() ? "" : "; ") + draft.house.withdrawn_words;
  if (!words.empty()) {
    append(line, ": ");
    line.push_back({BlockPart::description, words, yarn.id, {}});
  }
  append(line, ".");
  draft.out.lines.push_back(line);

  const std::string name = yarn.name.empty() ? "a yarn" : yarn.name;
  if (yarn.name.empty()) draft.missing("name of a yarn", "Yarns", yarn.id.value);
  if (composition.empty()) draft.missing("fibres of " + name, "Yarns", yarn.id.value);
  if (!yarn.put_up.length) draft.missing("length in a skein of " + name, "Yarns", yarn.id.value);
  if (!yarn.put_up.weight) draft.missing("weight of a skein of " + name, "Yarns", yarn.id.value);
  description_missing(draft, yarn);
}

}  // namespace skeinproof
