// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/pattern/pattern.h"

namespace skeinproof {

// The sample of the stranded pullover in nine sizes and four colours, with the counts of a draft that has
// slips in them: MC exchanged in sizes 5 and 6, CC1 one short in size 1, CC2 none in size 9.
Pattern quillmarsh_draft();

}  // namespace skeinproof
