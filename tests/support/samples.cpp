// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/samples.h"

#include <fstream>
#include <sstream>
#include <stdexcept>

#include "core/file/json.h"

namespace skeinproof::testing {

std::string project_text(const std::string& path) {
  std::ifstream file(std::string(SKEINPROOF_SOURCE_DIR) + "/" + path, std::ios::binary);
  if (!file) throw std::runtime_error("no file " + path);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

Pattern sample(const std::string& name) {
  const std::string path = "sample-data/projects/" + name + ".json";
  auto pattern = pattern_from_json(project_text(path), path);
  if (!pattern) throw std::runtime_error(pattern.error().message());
  return std::move(*pattern);
}

}  // namespace skeinproof::testing
