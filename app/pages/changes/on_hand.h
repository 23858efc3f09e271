// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "app/document/reader_style.h"
#include "core/base/error.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// Yarn of one colour that somebody has, typed as skeins ("4", "3½ skeins"), a weight ("120 g") or a length
// ("640 m"). A bare number counts skeins. Fails where the text is none of them, and where the yarn's put-up
// lacks the length or the weight that turns it into metres.
Expected<Metres> read_on_hand(const Pattern& pattern, RoleId role, const QString& text);

}  // namespace skeinproof
