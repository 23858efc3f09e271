// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/support/quillmarsh.h"

#include <fstream>
#include <sstream>

#include "core/file/json.h"

namespace skeinproof {

Pattern quillmarsh_draft() {
  std::ifstream file(SKEINPROOF_SOURCE_DIR "/sample-data/projects/quillmarsh-yoke.json");
  std::ostringstream text;
  text << file.rdbuf();
  Pattern pattern = pattern_from_json(text.str()).value();
  pattern.roles[0].printed_count.set(4, Entered<double>{8, "8"});
  pattern.roles[0].printed_count.set(5, Entered<double>{7, "7"});
  pattern.roles[1].printed_count.set(0, Entered<double>{1, "1"});
  pattern.roles[2].printed_count.set(8, std::nullopt);
  pattern.chosen_size = pattern.sizes[4].id;
  return pattern;
}

}  // namespace skeinproof
