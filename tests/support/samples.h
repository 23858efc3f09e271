// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

#include "core/pattern/pattern.h"

namespace skeinproof::testing {

// The text of a file below the root of the project; fails the test where there is none.
std::string project_text(const std::string& path);
// A sample of sample-data/projects by its name, read from its JSON.
Pattern sample(const std::string& name);
inline Pattern quillmarsh() { return sample("quillmarsh-yoke"); }
inline Pattern lampwick() { return sample("lampwick-socks"); }

}  // namespace skeinproof::testing
