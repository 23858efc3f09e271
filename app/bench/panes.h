// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <vector>

namespace skeinproof {

// The panes of a widget that take the focus, in reading order: what its splitters divide, down to the
// undivided; the widget itself where nothing is divided. Hidden ones are left out.
std::vector<QWidget*> panes_of(QWidget* widget);

// Moves the focus to the pane after (or before) the one that has it, round and round.
void focus_next_pane(const std::vector<QWidget*>& panes, bool backwards);

}  // namespace skeinproof
