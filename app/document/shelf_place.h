// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

namespace skeinproof {

// Where the yarn shelf of the person at this machine lies: in the data folder of the program, with a window
// or without.
QString shelf_place();

}  // namespace skeinproof
