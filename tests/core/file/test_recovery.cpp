// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <fstream>

#include "core/file/house_style_store.h"
#include "core/file/recovery.h"
#include "core/file/whole_file.h"
#include "tests/support/generate_pattern.h"
#include "tests/support/temporary_folder.h"

namespace skeinproof {
namespace {

namespace fs = std::filesystem;

std::size_t files_in(const fs::path& folder) {
  return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

TEST(Recovery, gives_back_what_was_written) {
  const TemporaryFolder scratch;
  const fs::path folder = scratch / "state" / "recovery";
  EXPECT_TRUE(list_recoveries(folder).empty());
  Pattern first = generated_pattern(1);
  first.title = "first";
  const Pattern second = generated_pattern(2);
  ASSERT_TRUE(write_recovery(folder, "a-1", second, "/home/x/my \"yoke\".skeinproof", 1000));
  ASSERT_TRUE(write_recovery(folder, "a-1", first, "/home/x/my \"yoke\".skeinproof", 2000));
  ASSERT_TRUE(write_recovery(folder, "b_2", second, {}, 3000));
  const auto all = list_recoveries(folder);
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(all[0].key, "b_2");
  EXPECT_TRUE(all[0].original.empty());
  EXPECT_EQ(all[1].key, "a-1");
  EXPECT_EQ(all[1].original, "/home/x/my \"yoke\".skeinproof");
  EXPECT_EQ(all[1].written_s, 2000);
  EXPECT_EQ(all[1].title, "first");
  EXPECT_EQ(read_recovery(folder, "a-1").value(), first);
  EXPECT_EQ(files_in(folder), 2u) << "nothing half written is left";
  ASSERT_TRUE(drop_recovery(folder, "a-1"));
  ASSERT_TRUE(drop_recovery(folder, "a-1"));
  EXPECT_EQ(list_recoveries(folder).size(), 1u);
  EXPECT_EQ(read_recovery(folder, "a-1").error().kind, ErrorKind::not_found);
}

TEST(Recovery, says_which_copies_cannot_be_read) {
  const TemporaryFolder folder;
  ASSERT_TRUE(write_recovery(folder.path(), "whole", new_pattern(), {}, 1));
  const std::string whole = read_whole_file(folder / "whole.recovery").value();
  for (std::size_t cut : {std::size_t{0}, std::size_t{10}, whole.find('\n') + 1, whole.size() - 20})
    std::ofstream(folder / ("cut-" + std::to_string(cut) + ".recovery")) << whole.substr(0, cut);
  std::ofstream(folder / "notes.txt") << "not a copy";
  std::ofstream(folder / "other.recovery") << "{\"schema\": \"other\"}\n{}";
  const auto all = list_recoveries(folder.path());
  ASSERT_EQ(all.size(), 6u);
  EXPECT_FALSE(all[0].damage);
  for (std::size_t i = 1; i < all.size(); ++i) {
    ASSERT_TRUE(all[i].damage) << all[i].key;
    EXPECT_FALSE(all[i].damage->message().empty());
  }
}

TEST(Recovery, refuses_keys_that_leave_the_folder) {
  const TemporaryFolder folder;
  for (const char* key : {"", "../x", "a/b", "a.b", "ä"}) {
    EXPECT_EQ(write_recovery(folder.path(), key, new_pattern(), {}, 1).error().kind, ErrorKind::unknown_name);
    EXPECT_FALSE(read_recovery(folder.path(), key));
    EXPECT_FALSE(drop_recovery(folder.path(), key));
  }
}

TEST(WholeFile, failures_leave_the_old_file) {
  const TemporaryFolder folder;
  EXPECT_EQ(write_whole_file(folder / "no" / "x", "new").error().kind, ErrorKind::not_found);
  EXPECT_EQ(write_whole_file(folder.path(), "new").error().kind, ErrorKind::wrong_format);
  EXPECT_EQ(write_whole_file(folder / std::string(300, 'n'), "new").error().kind, ErrorKind::wrong_format);
  EXPECT_EQ(write_whole_file("/dev/full/x", "new").error().kind, ErrorKind::not_found);
  EXPECT_EQ(read_whole_file(folder / "x").error().kind, ErrorKind::not_found);
  EXPECT_EQ(read_whole_file(folder.path()).error().kind, ErrorKind::wrong_format);
  ASSERT_TRUE(write_whole_file(folder / "x", std::string("old\0bytes", 9)));
  EXPECT_EQ(read_whole_file(folder / "x").value(), std::string("old\0bytes", 9));
  EXPECT_EQ(read_whole_file(folder / "x", 8).error().kind, ErrorKind::out_of_range);
  EXPECT_EQ(files_in(folder.path()), 1u);
}

TEST(WholeFile, keeps_permissions_and_links) {
  const TemporaryFolder folder;
  ASSERT_TRUE(write_whole_file(folder / "x", "old"));
  fs::permissions(folder / "x", fs::perms::owner_read | fs::perms::owner_write);
  fs::create_symlink("x", folder / "link");
  ASSERT_TRUE(write_whole_file(folder / "link", "new"));
  EXPECT_TRUE(fs::is_symlink(folder / "link"));
  EXPECT_EQ(read_whole_file(folder / "x").value(), "new");
  EXPECT_EQ(fs::status(folder / "x").permissions(), fs::perms::owner_read | fs::perms::owner_write);
}

TEST(HouseStyleStore, keeps_styles_by_name) {
  const TemporaryFolder scratch;
  const fs::path folder = scratch / "styles";
  EXPECT_TRUE(load_house_styles(folder).styles.empty());
  HouseStyle first;
  first.name = "a/b";
  HouseStyle second;
  second.name = "a?b";
  second.allowance_pct = 7.5;
  ASSERT_TRUE(store_house_style(folder, first));
  ASSERT_TRUE(store_house_style(folder, second));
  first.mark = DecimalMark::comma;
  ASSERT_TRUE(store_house_style(folder, first));
  auto stored = load_house_styles(folder);
  EXPECT_EQ(stored.styles, (std::vector<HouseStyle>{first, second}));
  EXPECT_TRUE(stored.problems.empty());
  std::ofstream(folder / "broken.json") << "{";
  ASSERT_TRUE(drop_house_style(folder, "a/b"));
  ASSERT_TRUE(drop_house_style(folder, "never there"));
  stored = load_house_styles(folder);
  EXPECT_EQ(stored.styles, std::vector<HouseStyle>{second});
  ASSERT_EQ(stored.problems.size(), 1u);
  EXPECT_EQ(stored.problems[0].kind, ErrorKind::wrong_format);
}

}  // namespace
}  // namespace skeinproof
