// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/check_bench.h"

#include <algorithm>

namespace skeinproof {
namespace {

std::vector<RoleEvidence> evidence_with_printed(const Pattern& pattern, const Assessment& assessment,
                                                const PrintedView& printed) {
  Pattern counted = pattern;
  bool taken = false;
  for (Role& role : counted.roles) {
    const PrintedRole* said = printed.role(role.label);
    const bool whole = said != nullptr && said->count && said->count->complete;
    if (!role.printed_count.empty() || !whole || printed.sizes() != pattern.sizes.size()) continue;
    for (std::size_t i = 0; i < pattern.sizes.size(); ++i)
      if (const PrintedValue* value = said->count->values[i])
        role.printed_count.set(i, Entered<double>{*value->number, ""});
    taken = true;
  }
  return gather_evidence(taken ? counted : pattern, assessment);
}

}  // namespace

CheckBench::CheckBench(const Pattern& pattern, const Assessment& assessment, const PrintedView& printed)
    : pattern_(pattern),
      assessment_(assessment),
      need_(pattern),
      evidence_(evidence_with_printed(pattern, assessment, printed)) {}

CheckResult CheckBench::run(const Check& check, const PrintedView& printed) const {
  Findings findings(check.id, check.severity);
  check.run(input(printed), findings);
  return {std::move(findings.found), std::move(findings.not_checked)};
}

std::vector<CheckResult> CheckBench::run_all(const PrintedView& printed) const {
  std::vector<CheckResult> results;
  for (const Check* check : all_checks()) results.push_back(run(*check, printed));
  return results;
}

}  // namespace skeinproof
