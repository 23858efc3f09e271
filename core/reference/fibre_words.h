// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>

#include "core/reference/tables.h"

namespace skeinproof {

// The fibre a label's words name ("superwash merino wool", "nylon", "Baumwolle", "baby alpaca"), in English
// and the common words of German, French, Italian, Spanish and the Scandinavian languages. Case, accents,
// hyphens and further words ("organic", "fine") do not matter. Null where no known word stands there, or
// words of two fibres do.
const Fibre* fibre_by_words(std::string_view words);

}  // namespace skeinproof
