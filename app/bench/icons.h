// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QIcon>

namespace skeinproof {

enum class DrawnIcon { undo, redo };

// A picture of resources/icons in the text colour of the palette in force.
QIcon drawn_icon(DrawnIcon icon);
// The program's own.
QIcon program_icon();

}  // namespace skeinproof
