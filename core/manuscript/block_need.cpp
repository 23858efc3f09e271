// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>

#include "core/base/text.h"
#include "core/manuscript/block_parts.h"

namespace skeinproof {
namespace {

const RoleNeed* need_of(const Assessment& assessment, RoleId role) {
  const auto found = std::find_if(assessment.roles.begin(), assessment.roles.end(),
                                  [&](const RoleNeed& need) { return need.role == role; });
  return found == assessment.roles.end() ? nullptr : &*found;
}

}  // namespace

std::vector<std::optional<double>> need_figures(BlockDraft& draft, const Role& role, CountedIn counted_in) {
  const RoleNeed* need = need_of(draft.assessment, role.id);
  const Yarn* yarn = draft.pattern.yarn(role.yarn);
  const PutUp put_up = yarn == nullptr ? PutUp{} : yarn->put_up;
  std::vector<std::optional<double>> figures(draft.pattern.sizes.size());
  std::map<std::string, std::vector<std::string>> unknown;  // sizes by reason
  for (std::size_t i = 0; i < figures.size(); ++i) {
    std::string reason;
    if (need == nullptr || i >= need->sizes.size()) {
      reason = "not worked out";
    } else if (const SizeNeed& size = need->sizes[i]; !size.known) {
      reason = size.missing.empty() ? "not worked out" : size.missing;
    } else if (counted_in == CountedIn::metres) {
      figures[i] = size.planned.value();
    } else if (counted_in == CountedIn::grams) {
      if (put_up.length && put_up.weight)
        figures[i] = size.planned.value() * put_up.weight->value.value() / put_up.length->value.value();
      else
        reason = "length and weight of a skein";
    } else if (size.skeins) {
      figures[i] = *size.skeins;
    } else {
      reason = "length in a skein";
    }
    if (!figures[i]) unknown[reason].push_back(draft.pattern.sizes[i].label);
  }
  for (const auto& [reason, labels] : unknown)
    draft.missing(std::string(word_of(counted_in)) + " of " + (role.label.empty() ? "a colour" : role.label) +
                      (labels.size() == figures.size() ? "" : " in size " + join(labels, ", ")) + ": " +
                      reason,
                  "Quantities", role.id.value);
  return figures;
}

}  // namespace skeinproof
