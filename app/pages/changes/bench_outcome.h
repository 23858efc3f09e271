// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <vector>

#include "core/need/changes.h"

namespace skeinproof {

// What lies on the bench, worked out for one size. Nothing here knows of the window, so that it can be done
// on a thread of its own.

struct RoleMove {
  RoleId role;
  std::string label;
  Metres knitted_more;
};

// One change that is made: what it does behind those before it, or why it cannot be made.
struct ChangeOutcome {
  ChangeId id;
  std::optional<Error> problem;
  bool lacks_a_field = false;   // the problem is something not filled in yet
  std::vector<RoleMove> moves;  // colours of which it takes more or less
  std::optional<int> more_skeins;
};

struct BenchOutcome {
  std::vector<ChangeOutcome> changes;  // those made, in their order
  std::vector<ChangeId> taken;         // those that could be made
  std::vector<Change> made;            // the same, as changes
  Expected<WhatIf> what_if;            // of all that could be made
  // The pattern as it would be with them taken into this size, and its size then.
  Pattern changed;
  SizeId changed_size;
};
// A change that lacks something or cannot be made is left out; those behind it are made without it.
BenchOutcome work_out_bench(const Pattern& pattern, SizeId size);

// Skeins of one colour in one size that a document with the changes taken in would ask for.
struct SkeinMove {
  std::string size, role;
  std::optional<int> before, after;
};
struct AdoptPreview {
  AdoptIn in = AdoptIn::this_size;
  Expected<Adopted> adopted;
  std::vector<SkeinMove> moves;  // only those that change
};
AdoptPreview preview_adopted(const Pattern& pattern, const std::vector<Change>& changes, SizeId size,
                             AdoptIn in);

// The rows of the bench that say these changes of `pattern`, without ids; a piece that is added has no row.
std::vector<BenchChange> bench_rows(const Pattern& pattern, const std::vector<Change>& changes);

}  // namespace skeinproof
