// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace skeinproof {

// A field reads its text when the focus leaves it. What is being typed belongs to what is saved, so this lets
// the focus leave and come back.
void take_focused_text();

}  // namespace skeinproof
