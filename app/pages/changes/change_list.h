// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>

#include "app/document/open_pattern.h"
#include "app/pages/changes/bench_outcome.h"

class QMenu;
class QWidget;

namespace skeinproof {

class PartTable;

// The outcome of a change as it was last worked out; null where there is none yet.
using OutcomeOf = std::function<const ChangeOutcome*(ChangeId)>;

// Where a list of changes lies: on the bench, or in a weighing; null where it is gone.
using ChangesIn = std::function<const std::vector<BenchChange>*(const Pattern&)>;
const std::vector<BenchChange>* changes_on_bench(const Pattern& pattern);

// The changes in the order they are made, each with its switch and what it does. Space sets the switch of the
// chosen one wherever the cursor is in its row, Del takes it away.
PartTable* make_change_list(OpenPattern& open, OutcomeOf outcome_of);
// What a tester knitted otherwise: the changes alone.
PartTable* make_altered_list(OpenPattern& open, ChangesIn changes);

// The kinds of change with their letters.
QMenu* make_kind_menu(QWidget* parent, const std::function<void(ChangeKind)>& add);

// Puts a change into a list behind the one with that id, at the end where there is none; what can be foreseen
// is filled in.
ChangeId add_change(Pattern& pattern, const ChangesIn& changes, ChangeKind kind, ChangeId behind);
// Rows without ids, at the end.
void add_changes(Pattern& pattern, std::vector<BenchChange> rows);

}  // namespace skeinproof
