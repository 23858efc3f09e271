// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"
#include "core/yarn/yarn.h"

namespace skeinproof {

// "75% superwash wool, 25 % polyamide", "wool 75%, polyamide 25%"; "merino" alone is 100 %. Parts stand
// apart by commas, semicolons, slashes, plus signs or "and"; shares need not add to 100 (see
// check_composition). A fibre the tables do not know keeps its words and has no id. An empty text is an empty
// composition.
Expected<std::vector<FibreShare>> read_composition(std::string_view text);
// "75% superwash wool, 25% polyamide", in the words of the label.
std::string composition_text(const std::vector<FibreShare>& composition);

// One fibre by its words, with the id of the table's fibre where one is known.
FibreShare fibre_share(std::string_view words, Entered<double> percent);

}  // namespace skeinproof
