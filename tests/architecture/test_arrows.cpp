// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <functional>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

const fs::path root = SKEINPROOF_SOURCE_DIR;

// A room may include rooms of a smaller number and itself.
const std::map<std::string, int> height = {
    {"base", 0},    {"units", 1}, {"reference", 2},  {"yarn", 3},   {"fabric", 4},
    {"pattern", 5}, {"need", 6},  {"manuscript", 7}, {"review", 8}, {"substitution", 8},
    {"sheets", 9},  {"file", 9},  {"app", 10}};

struct Source {
  std::string path;  // from the root
  std::string room;
  std::vector<std::string> lines;
  std::vector<std::string> includes;  // own headers, from the root
};

std::string room_of(const std::string& path) {
  if (path.rfind("app/", 0) == 0) return "app";
  const auto from = path.find('/') + 1;
  return path.substr(from, path.find('/', from) - from);
}

std::vector<Source> sources() {
  std::vector<Source> all;
  const std::regex own_include("^#include \"([^\"]+)\"");
  for (const char* top : {"core", "app"})
    for (const auto& entry : fs::recursive_directory_iterator(root / top)) {
      const auto extension = entry.path().extension();
      if (extension != ".h" && extension != ".cpp") continue;
      Source source;
      source.path = fs::relative(entry.path(), root).generic_string();
      source.room = room_of(source.path);
      std::ifstream file(entry.path());
      for (std::string line; std::getline(file, line);) {
        std::smatch match;
        if (std::regex_search(line, match, own_include)) source.includes.push_back(match[1]);
        source.lines.push_back(line);
      }
      all.push_back(std::move(source));
    }
  return all;
}

const std::vector<Source>& all_sources() {
  static const auto all = sources();
  return all;
}

TEST(Architecture, ThereAreSources) { EXPECT_GT(all_sources().size(), 50u); }

TEST(Architecture, ArrowsRunDownwards) {
  for (const Source& source : all_sources()) {
    ASSERT_TRUE(height.count(source.room)) << source.path << " is in an unknown room";
    for (const std::string& include : source.includes) {
      if (include.rfind("core/", 0) != 0 && include.rfind("app/", 0) != 0) continue;
      const std::string target = room_of(include);
      ASSERT_TRUE(height.count(target)) << source.path << " includes " << include;
      EXPECT_TRUE(target == source.room || height.at(target) < height.at(source.room))
          << source.path << " (" << source.room << ") includes " << include << " (" << target << ")";
    }
  }
}

TEST(Architecture, OwnHeadersAreNamedFromTheRoot) {
  const std::set<std::string> generated = {"reference_rows.inc"};
  for (const Source& source : all_sources())
    for (const std::string& include : source.includes) {
      if (generated.count(include) || include.find(".moc") != std::string::npos) continue;
      EXPECT_TRUE(fs::exists(root / include)) << source.path << " includes \"" << include << "\"";
    }
}

TEST(Architecture, NoCircleOfHeaders) {
  std::map<std::string, std::vector<std::string>> graph;
  for (const Source& source : all_sources()) graph[source.path] = source.includes;
  std::map<std::string, int> state;  // 1 = on the way, 2 = done
  std::function<void(const std::string&)> visit = [&](const std::string& path) {
    state[path] = 1;
    for (const std::string& next : graph[path]) {
      EXPECT_NE(state[next], 1) << path << " and " << next << " include each other";
      if (state[next] == 0) visit(next);
    }
    state[path] = 2;
  };
  for (const Source& source : all_sources())
    if (state[source.path] == 0) visit(source.path);
}

TEST(Architecture, NoQtInTheCore) {
  const std::regex qt("^#include [<\"](Q[A-Z]|Qt)");
  for (const Source& source : all_sources())
    if (source.room != "app") {
      for (const std::string& line : source.lines)
        EXPECT_FALSE(std::regex_search(line, qt)) << source.path << ": " << line;
    }
}

TEST(Architecture, NoClockNoLocaleNoEnvironmentInTheCore) {
  const std::regex ambient(R"(\b(setlocale|std::locale|getenv|system_clock|localtime|std::time)\b)");
  for (const Source& source : all_sources())
    if (source.room != "app") {
      for (const std::string& line : source.lines)
        EXPECT_FALSE(std::regex_search(line, ambient)) << source.path << ": " << line;
    }
}

TEST(Architecture, EveryFileNamesItsLicenceAndStaysShort) {
  for (const Source& source : all_sources()) {
    ASSERT_FALSE(source.lines.empty()) << source.path;
    EXPECT_EQ(source.lines.front(), "// SPDX-License-Identifier: GPL-3.0-or-later") << source.path;
    if (source.path.find("file/schema_") != std::string::npos) continue;  // one text of SQL
    const std::size_t limit = source.path.find("main_window") != std::string::npos ? 600 : 500;
    EXPECT_LE(source.lines.size(), limit) << source.path;
  }
}

TEST(Architecture, NothingElseAtTheTop) {
  const std::set<std::string> known = {
      "CMakeLists.txt", "CMakePresets.json", "README.md", "DEVELOPERS.md", "LICENSE", "app",
      "core",           "resources",         "tests",     "sample-data",   "build"};
  for (const auto& entry : fs::directory_iterator(root)) {
    const std::string name = entry.path().filename().string();
    EXPECT_TRUE(name.front() == '.' || known.count(name)) << name;
  }
}

}  // namespace
