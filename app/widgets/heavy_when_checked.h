// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QAbstractButton;

namespace skeinproof {

// A switch says that it is on by its weight as well as by its shade, which some palettes hardly show.
void show_checked_heavy(QAbstractButton* button);

}  // namespace skeinproof
