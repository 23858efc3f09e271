// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/outside/gnu_units.h"

#include <array>
#include <cstdio>
#include <cstdlib>
#include <limits>
#include <memory>

namespace skeinproof {

double gnu_units(const std::string& expression, const std::string& unit) {
  constexpr double none = std::numeric_limits<double>::quiet_NaN();
  if ((expression + unit).find('\'') != std::string::npos) return none;
  const std::string command = "units --terse --digits 12 '" + expression + "' '" + unit + "' 2>&1";
  struct Close {
    void operator()(std::FILE* pipe) const { pclose(pipe); }
  };
  const std::unique_ptr<std::FILE, Close> pipe(popen(command.c_str(), "r"));
  if (!pipe) return none;
  std::array<char, 200> line{};
  if (!std::fgets(line.data(), static_cast<int>(line.size()), pipe.get())) return none;
  char* end = nullptr;
  const double value = std::strtod(line.data(), &end);
  return end == line.data() ? none : value;
}

}  // namespace skeinproof
