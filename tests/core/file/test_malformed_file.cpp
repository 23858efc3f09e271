// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <fstream>

#include "core/file/project_file.h"
#include "core/file/whole_file.h"
#include "tests/support/generate_pattern.h"
#include "tests/support/temporary_folder.h"

namespace skeinproof {
namespace {

class MalformedFile : public testing::Test {
 protected:
  void SetUp() override {
    ASSERT_TRUE(save_project(folder / "whole", pattern));
    whole = read_whole_file(folder / "whole").value();
  }
  // A damaged file is refused; or the damage lies where nothing is, or the change is told.
  void expect_sound_or_refused(const std::string& bytes, const std::string& what) {
    std::ofstream(folder / "damaged", std::ios::binary) << bytes;
    const auto project = open_project(folder / "damaged", {0, folder.path()});
    if (!project) {
      EXPECT_FALSE(project.error().message().empty()) << what;
    } else if (!project->newer) {
      EXPECT_TRUE(project->pattern == pattern || project->edited_elsewhere) << what;
    }
  }

  TemporaryFolder folder;
  Pattern pattern = generated_pattern(1);
  std::string whole;
};

TEST_F(MalformedFile, truncated_anywhere_is_refused) {
  for (std::size_t cut = 0; cut < whole.size(); cut += 1 + whole.size() / 100) {
    std::ofstream(folder / "damaged", std::ios::binary) << whole.substr(0, cut);
    EXPECT_FALSE(open_project(folder / "damaged", {0, {}})) << cut;
  }
}

TEST_F(MalformedFile, one_byte_changed) {
  // Every byte of the header and the first page's table of contents, then spread over all pages.
  for (std::size_t at = 0; at < whole.size(); at += at < 120 ? 1 : 1 + whole.size() / 200) {
    for (int mask : {0xff, 0x01}) {
      std::string bytes = whole;
      bytes[at] = static_cast<char>(bytes[at] ^ mask);
      expect_sound_or_refused(bytes, "byte " + std::to_string(at) + " mask " + std::to_string(mask));
    }
  }
}

TEST_F(MalformedFile, pages_overwritten) {
  constexpr std::size_t page = 1024;
  for (std::size_t at = 0; at < whole.size(); at += page) {
    for (char fill : {'\0', '\xff', 'A'}) {
      std::string bytes = whole;
      std::fill_n(bytes.begin() + static_cast<std::ptrdiff_t>(at), page, fill);
      expect_sound_or_refused(bytes, "page at " + std::to_string(at));
    }
    std::string bytes = whole;
    const std::size_t other = (at + 5 * page) % whole.size();
    std::copy_n(whole.begin() + static_cast<std::ptrdiff_t>(other), page,
                bytes.begin() + static_cast<std::ptrdiff_t>(at));
    expect_sound_or_refused(bytes, "page of " + std::to_string(other) + " at " + std::to_string(at));
  }
}

RC_GTEST_FIXTURE_PROP(MalformedFile, several_bytes_changed, ()) {
  std::string bytes = whole;
  const auto changes = *rc::gen::nonEmpty(rc::gen::container<std::vector<std::pair<std::size_t, char>>>(
      rc::gen::pair(rc::gen::inRange<std::size_t>(0, whole.size()), rc::gen::arbitrary<char>())));
  for (const auto& [at, byte] : changes) bytes[at] = byte;
  expect_sound_or_refused(bytes, "several");
}

TEST_F(MalformedFile, a_journal_of_rubbish) {
  std::ofstream(folder / "whole-journal", std::ios::binary) << std::string(3000, 'x');
  const auto project = open_project(folder / "whole", {0, folder.path()});
  ASSERT_TRUE(project) << project.error().message();
  EXPECT_TRUE(project->journal_found);
  EXPECT_EQ(project->pattern, pattern);
}

}  // namespace
}  // namespace skeinproof
