// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace skeinproof {
namespace {

namespace fs = std::filesystem;

struct Outcome {
  int status = -1;
  std::string text;
};

Outcome run_generator(const fs::path& folder) {
  const fs::path program = fs::read_symlink("/proc/self/exe").parent_path() / "generate_reference";
  const std::string command =
      "'" + program.string() + "' '" + folder.string() + "' '" + (folder / "rows.inc").string() + "' 2>&1";
  std::FILE* pipe = popen(command.c_str(), "r");
  Outcome outcome;
  std::array<char, 400> line{};
  while (pipe && std::fgets(line.data(), static_cast<int>(line.size()), pipe)) outcome.text += line.data();
  if (pipe) outcome.status = pclose(pipe);
  return outcome;
}

// A copy of the published tables with the first occurrence of a text in one of them replaced.
class Generator : public testing::Test {
 protected:
  void SetUp() override {
    folder_ =
        fs::temp_directory_path() /
        ("skeinproof_tables_" + std::string(testing::UnitTest::GetInstance()->current_test_info()->name()));
    fs::remove_all(folder_);
    fs::copy(fs::path(SKEINPROOF_SOURCE_DIR) / "resources/reference", folder_);
  }
  void TearDown() override { fs::remove_all(folder_); }

  std::string fault_after(const std::string& file, const std::string& was, const std::string& becomes) {
    std::ifstream in(folder_ / file);
    std::string text{std::istreambuf_iterator<char>(in), {}};
    const auto at = text.find(was);
    EXPECT_NE(at, std::string::npos) << was;
    text.replace(at, was.size(), becomes);
    std::ofstream(folder_ / file) << text;
    const Outcome outcome = run_generator(folder_);
    EXPECT_NE(outcome.status, 0) << "a fault went through";
    const auto name = outcome.text.find(file);
    return name == std::string::npos ? outcome.text : outcome.text.substr(name);
  }

  fs::path folder_;
};

TEST_F(Generator, takes_the_tables_as_they_are) {
  const Outcome outcome = run_generator(folder_);
  EXPECT_EQ(outcome.status, 0) << outcome.text;
  EXPECT_GT(fs::file_size(folder_ / "rows.inc"), 100'000u);
}

TEST_F(Generator, stops_at_a_figure_that_is_none) {
  EXPECT_EQ(fault_after("moisture.csv", "wool,0,0,", "wool,0,none,"),
            "moisture.csv:2: found “none” in column “regain_pct”, expected a number\n");
}

TEST_F(Generator, stops_at_a_row_of_the_wrong_width) {
  EXPECT_EQ(fault_after("needles.csv", "0.75,", "0.75,,"), "needles.csv:2: found 14 cells, expected 13\n");
}

TEST_F(Generator, stops_at_a_figure_outside_its_band) {
  EXPECT_EQ(fault_after("moisture.csv", "wool,10,4.7,", "wool,10,9.7,"),
            "moisture.csv:3: found “4.32” in column “regain_low_pct”, expected low, value and high in this "
            "order\n");
}

TEST_F(Generator, stops_at_an_unknown_source) {
  EXPECT_EQ(fault_after("counts.csv", "ISO1144; GNU", "ISO1144; HEARSAY"),
            "counts.csv:2: found “ISO1144; HEARSAY” in column “source”, expected keys of sources.csv\n");
}

TEST_F(Generator, stops_at_an_unknown_confidence) {
  EXPECT_EQ(
      fault_after("counts.csv", "verified", "sure"),
      "counts.csv:2: found “sure” in column “confidence”, expected verified, memory or common practice\n");
}

TEST_F(Generator, stops_at_a_key_that_stands_twice) {
  EXPECT_EQ(fault_after("worked_examples.csv", "W02,", "W01,"),
            "worked_examples.csv:3: “W01” is empty or stands twice\n");
}

TEST_F(Generator, stops_at_a_missing_column) {
  EXPECT_EQ(fault_after("counts.csv", "constant_exact", "constant"),
            "counts.csv:1: has no column “constant_exact”\n");
}

TEST_F(Generator, stops_at_broken_quotes) {
  EXPECT_NE(fault_after("moisture.csv", "wool,0,", "\"wool,0,").find("is no comma-separated table"),
            std::string::npos);
}

TEST_F(Generator, stops_at_a_missing_table) {
  fs::remove(folder_ / "needles.csv");
  const Outcome outcome = run_generator(folder_);
  EXPECT_NE(outcome.status, 0);
  EXPECT_NE(outcome.text.find("needles.csv"), std::string::npos);
}

}  // namespace
}  // namespace skeinproof
