// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/write_block.h"

#include <algorithm>

#include "core/manuscript/block_parts.h"

namespace skeinproof {
namespace {

// Yarns straight before roles: each yarn leads its own roles. Otherwise they are two lists.
bool yarns_lead_their_roles(const HouseStyle& house) {
  const auto yarn = std::find(house.order.begin(), house.order.end(), BlockElement::yarn);
  return yarn != house.order.end() && std::next(yarn) != house.order.end() &&
         *std::next(yarn) == BlockElement::roles;
}

std::vector<const Role*> roles_of(const Pattern& pattern, YarnId yarn) {
  std::vector<const Role*> roles;
  for (const Role& role : pattern.roles)
    if (role.yarn == yarn) roles.push_back(&role);
  return roles;
}

void write_yarns(BlockDraft& draft) {
  const bool with_roles = yarns_lead_their_roles(draft.house);
  for (const Yarn& yarn : draft.pattern.yarns) {
    const auto roles = roles_of(draft.pattern, yarn.id);
    if (roles.empty() && !draft.pattern.roles.empty()) continue;
    write_yarn(draft, yarn);
    if (with_roles) write_roles(draft, roles, false, "  ");
  }
  const auto without = roles_of(draft.pattern, YarnId{});
  if (!without.empty() && with_roles) {
    draft.out.lines.push_back({{BlockPart::yarn_name, "–", {}, {}}, {BlockPart::plain, ":", {}, {}}});
    write_roles(draft, without, false, "  ");
  }
  if (draft.pattern.yarns.empty()) draft.missing("a yarn", "Yarns");
}

void write_roles_apart(BlockDraft& draft) {
  if (yarns_lead_their_roles(draft.house)) return;
  std::vector<const Role*> roles;
  for (const Role& role : draft.pattern.roles) roles.push_back(&role);
  const bool several = std::any_of(roles.begin(), roles.end(),
                                   [&](const Role* role) { return role->yarn != roles.front()->yarn; });
  write_roles(draft, roles, several, "");
}

using WriteElement = void (*)(BlockDraft&);
constexpr std::pair<BlockElement, WriteElement> elements[] = {
    {BlockElement::sizes, write_sizes},       {BlockElement::yarn, write_yarns},
    {BlockElement::roles, write_roles_apart}, {BlockElement::total, write_total},
    {BlockElement::gauge, write_gauge},       {BlockElement::needles, write_needles},
    {BlockElement::notions, write_notions}};

}  // namespace

void append(BlockLine& line, const BlockLine& more) { line.insert(line.end(), more.begin(), more.end()); }
void append(BlockLine& line, std::string plain) {
  if (!plain.empty()) line.push_back({BlockPart::plain, std::move(plain), {}, {}});
}

std::string BlockText::text() const {
  std::string all;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (i > 0) all += "\n";
    for (const BlockRun& run : lines[i]) all += run.text;
  }
  return all;
}

BlockText write_block(const Pattern& pattern, const Assessment& assessment, const HouseStyle& house) {
  BlockDraft draft{pattern, assessment, house, {}};
  const auto write = [&](BlockElement element) {
    for (const auto& [row, write_element] : elements)
      if (row == element) write_element(draft);
  };
  for (const BlockElement element : house.order) {
    write(element);
    const bool placed =
        std::find(house.order.begin(), house.order.end(), BlockElement::total) != house.order.end();
    if (element == BlockElement::roles && !placed) write(BlockElement::total);
  }
  return std::move(draft.out);
}

}  // namespace skeinproof
