// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "core/need/changes.h"
#include "core/need/run_out.h"
#include "core/need/save_skein.h"
#include "tests/support/generate_pattern.h"

namespace skeinproof {
namespace {

// One of every kind, at every part of the document.
std::vector<Change> changes_for(const Pattern& pattern) {
  std::vector<Change> changes;
  for (const Piece& piece : pattern.pieces) {
    for (double by : {5.0, -3.0})
      for (LongerWhere where : {LongerWhere::spread, LongerWhere::full_width})
        changes.push_back(LongerPiece{piece.id, centimetres(by), where, {}});
    for (const Section& section : piece.sections) {
      changes.push_back(ExtraRounds{section.id, 2, {}, {}});
      changes.push_back(ExtraRounds{section.id, -1, 1, {}});
      for (const Role& role : pattern.roles)
        changes.push_back(GivenTo{section.id.value, section.role, role.id, {}});
      for (const Yarn& yarn : pattern.yarns)
        changes.push_back(GivenTo{section.id.value, section.role, {}, yarn.id});
    }
    changes.push_back(PieceLeftOut{piece.id});
    changes.push_back(PieceAdded{piece});
  }
  for (const Fabric& fabric : pattern.fabrics)
    for (CountsAre counts : {CountsAre::kept, CountsAre::chosen_again})
      changes.push_back(OtherGauge{fabric.id, 21, 29, centimetres(10), counts});
  for (const Size& size : pattern.sizes) {
    changes.push_back(OtherSize{size.id});
    changes.push_back(BetweenSizes{pattern.sizes.front().id, size.id, 0.4});
  }
  return changes;
}

RC_GTEST_PROP(ChangesOnAnyPattern, AreRefusedInWordsOrLeaveADocumentInOrder, (const Pattern& pattern)) {
  const Pattern before = pattern;
  for (const Change& change : changes_for(pattern)) {
    const SizeId size = pattern.sizes.back().id;
    const auto asked = apply(pattern, {change}, size);
    if (!asked) {
      RC_ASSERT(!asked.error().found.empty());
      RC_ASSERT(!asked.error().expected.empty());
      continue;
    }
    RC_ASSERT(!asked->notes.empty());
    RC_ASSERT(asked->roles.size() >= pattern.roles.size());
    RC_ASSERT(!change_words(pattern, change).empty());
    const auto adopted = adopt(pattern, {change}, size, AdoptIn::this_size);
    RC_ASSERT(adopted.has_value());
    RC_ASSERT(check_invariants(adopted->pattern).has_value());
  }
  RC_ASSERT(pattern == before);
}

RC_GTEST_PROP(ChangesOnAnyPattern, StepsOfTheWorkAddUp, (const Pattern& pattern)) {
  const Assessment assessment = assess(pattern);
  for (const RoleNeed& role : assessment.roles)
    for (std::size_t i = 0; i < role.sizes.size(); ++i) {
      const auto steps = work_steps(pattern, role.role, pattern.sizes[i].id);
      if (!steps) continue;
      double parts = 0, sum = 0;
      for (const PartMetres& part : role.sizes[i].parts) parts += part.total().value();
      for (const WorkStep& step : *steps) sum += step.needs.value();
      RC_ASSERT(std::abs(sum - parts) <= 1e-6 * std::max(1.0, parts));
    }
}

RC_GTEST_PROP(ChangesOnAnyPattern, ASavedSkeinIsSaved, (const Pattern& pattern)) {
  for (const Role& role : pattern.roles) {
    const auto saved = save_skein(pattern, role.id, pattern.sizes.front().id, 3);
    if (!saved) continue;
    for (const SavedSkein& way : saved->ways)
      for (const RoleChange& change : way.what_if.roles)
        RC_ASSERT((change.role == role.id ? change.skeins_more < 0 : change.skeins_more <= 0));
  }
}

}  // namespace
}  // namespace skeinproof
