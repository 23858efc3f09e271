// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>

#include "core/fabric/chart_text.h"

namespace skeinproof::test {

inline std::string file_bytes(const std::string& name) {
  std::ifstream file(std::string(SKEINPROOF_SOURCE_DIR) + "/sample-data/charts/" + name, std::ios::binary);
  if (!file) throw std::runtime_error("no sample chart " + name);
  std::ostringstream bytes;
  bytes << file.rdbuf();
  return bytes.str();
}

// An invented stranded yoke of 50 rounds: 12 stitches a repeat, decreased to 9, 6 and 4.
inline Chart yoke_chart() { return read_chart_text(file_bytes("quillmarsh-yoke.txt")).value(); }

inline Chart chart_of(std::vector<std::string> rounds, Worked worked = Worked::in_the_round) {
  Chart chart;
  chart.worked = worked;
  for (const std::string& round : rounds)
    for (const char c : round) {
      bool known = c == no_stitch;
      for (const ChartColour& colour : chart.colours) known = known || colour.symbol[0] == c;
      if (!known) chart.colours.push_back({std::string(1, c), RoleId{}});
    }
  chart.rounds = std::move(rounds);
  return chart;
}

}  // namespace skeinproof::test
