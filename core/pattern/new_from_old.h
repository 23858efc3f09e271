// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/pattern/pattern.h"

namespace skeinproof {

// A new pattern that starts where an old one is: its sizes, measurements, yarns, colours, fabrics, charts,
// pieces, constants and house styles. What belongs to the old one alone is left behind: title, note,
// weighings, printed counts and length notes, readings of swatches.
Pattern new_from_old(const Pattern& old);

}  // namespace skeinproof
