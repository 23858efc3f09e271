// SPDX-License-Identifier: GPL-3.0-or-later
#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <sys/stat.h>

#include <fstream>

#include "core/file/cell_reader.h"
#include "core/file/project_file.h"
#include "core/file/schema.h"
#include "core/file/whole_file.h"
#include "core/file/yarn_shelf.h"
#include "tests/support/generate_pattern.h"
#include "tests/support/temporary_folder.h"

namespace skeinproof {
namespace {

namespace fs = std::filesystem;
const ShelfOptions no_wait{0};

// Entries with every field by chance: the yarns of a generated pattern.
std::vector<ShelfYarn> entries_of(const Pattern& pattern) {
  std::vector<ShelfYarn> entries;
  for (const Yarn& yarn : pattern.yarns) {
    ShelfYarn entry = shelf_yarn_of(pattern, yarn.id);
    if (!pattern.roles.empty()) entry.shade = pattern.roles.front().shade;
    entry.lot = yarn.care;
    entry.place = yarn.surface;
    entry.note = yarn.description;
    entry.invented = yarn.withdrawn;
    if (yarn.band_stitches_low) entry.skeins = yarn.band_stitches_low;
    if (yarn.put_up.weight) entry.weight = yarn.put_up.weight;
    entries.push_back(std::move(entry));
  }
  return entries;
}

ShelfYarn named(const std::string& name) {
  ShelfYarn entry;
  entry.yarn.name = name;
  entry.yarn.put_up.length = Entered<Metres>{metres(175), "175 m"};
  entry.yarn.put_up.weight = Entered<Grams>{grams(50), ""};
  entry.yarn.composition = {{"wool", "wool", {75, "75"}}, {"polyamide", "nylon", {25, "25"}}};
  entry.yarn.also_sold = {
      {{{}, Entered<Grams>{grams(100), "100g"}, SkeinWord::hank}, Price{{14, ""}, "EUR"}}};
  entry.skeins = Entered<double>{3, "3"};
  return entry;
}

void change(const fs::path& path, const std::string& sql) {
  SQLite::Database(path.string(), SQLite::OPEN_READWRITE).exec(sql);
}

class YarnShelf : public testing::Test {
 protected:
  TemporaryFolder folder;
  fs::path path = folder / "deep" / "yarns.shelf";

  ErrorKind refused(const fs::path& file) {
    const std::string before = read_whole_file(file).value();
    const auto loaded = load_shelf(file, no_wait);
    const auto stored = store_on_shelf(file, std::vector{named("New")}, no_wait);
    EXPECT_FALSE(loaded);
    EXPECT_FALSE(stored);
    EXPECT_EQ(read_whole_file(file).value(), before) << "a file that is no shelf was written to";
    if (!loaded && !stored) {
      EXPECT_EQ(loaded.error().kind, stored.error().kind);
      EXPECT_EQ(loaded.error().place.file, file.string());
      message = loaded.error().message();
    }
    return loaded ? ErrorKind::system : loaded.error().kind;
  }
  std::string message;
};

TEST_F(YarnShelf, is_empty_where_there_is_none) {
  EXPECT_EQ(load_shelf(path)->size(), 0u);
  EXPECT_TRUE(drop_from_shelf(path, std::vector{ShelfYarnId{1}}));
  EXPECT_FALSE(fs::exists(path)) << "looking makes no file";
}

RC_GTEST_FIXTURE_PROP(YarnShelf, gives_back_what_was_put_there, (const Pattern& pattern)) {
  fs::remove(path);
  auto entries = entries_of(pattern);
  const auto ids = store_on_shelf(path, entries);
  RC_ASSERT(ids.has_value());
  for (std::size_t i = 0; i < entries.size(); ++i) entries[i].id = (*ids)[i];
  RC_ASSERT(load_shelf(path).value() == entries);
}

TEST_F(YarnShelf, edits_in_place_adds_and_removes) {
  const auto ids = store_on_shelf(path, std::vector{named("A"), named("B"), named("C")}).value();
  ShelfYarn changed = load_shelf(path)->at(1);
  changed.yarn.name = "B, changed";
  changed.yarn.composition = {{"cotton", "cotton", {100, "100"}}};
  changed.yarn.also_sold.clear();
  const auto again = store_on_shelf(path, std::vector{changed, named("D")}).value();
  EXPECT_EQ(again[0], ids[1]);
  ASSERT_TRUE(drop_from_shelf(path, std::vector{ids[0], again[1], ShelfYarnId{4711}}));
  const auto left = load_shelf(path).value();
  ASSERT_EQ(left.size(), 2u);
  EXPECT_EQ(left[0], changed);
  EXPECT_EQ(left[1].yarn.name, "C");
  const auto later = store_on_shelf(path, std::vector{named("E")}).value();
  EXPECT_GT(later[0], again[1]) << "no id is given twice";
  ASSERT_TRUE(drop_from_shelf(path, std::vector{ids[1]}));
  ASSERT_TRUE(store_on_shelf(path, std::vector{changed})) << "an entry that went meanwhile comes back";
  EXPECT_EQ(load_shelf(path)->front(), changed);
}

TEST_F(YarnShelf, stores_all_or_nothing) {
  ASSERT_TRUE(store_on_shelf(path, std::vector{named("A")}));
  ShelfYarn broken = named("C");
  broken.note = "\xff\xfe";
  const auto stored = store_on_shelf(path, std::vector{named("B"), broken});
  ASSERT_FALSE(stored);
  EXPECT_EQ(stored.error().kind, ErrorKind::broken_invariant);
  EXPECT_EQ(load_shelf(path)->size(), 1u);
}

TEST_F(YarnShelf, other_tools_can_read_it) {
  ASSERT_TRUE(store_on_shelf(path, std::vector{named("A")}));
  SQLite::Database database(path.string(), SQLite::OPEN_READONLY);
  EXPECT_EQ(database.execAndGet("PRAGMA application_id").getInt(), static_cast<int>(shelf_application_id));
  EXPECT_EQ(database.execAndGet("PRAGMA user_version").getInt(), shelf_schema_version);
  EXPECT_EQ(database
                .execAndGet("SELECT count(*) FROM pragma_table_list WHERE schema = 'main' AND NOT strict "
                            "AND name NOT LIKE 'sqlite%'")
                .getInt(),
            0);
  std::vector<std::string> columns;
  SQLite::Statement statement(database, "SELECT name FROM pragma_table_info('yarns')");
  while (statement.executeStep()) columns.push_back(statement.getColumn(0).getString());
  EXPECT_EQ(columns, column_names<ShelfYarn>()) << "every field has its column, in order";
}

TEST_F(YarnShelf, refuses_by_name_what_is_no_shelf) {
  std::ofstream(folder / "text") << std::string(3000, 'x');
  EXPECT_EQ(refused(folder / "text"), ErrorKind::not_ours);
  ASSERT_TRUE(save_project(folder / "project", generated_pattern(3)));
  EXPECT_EQ(refused(folder / "project"), ErrorKind::not_ours);
  EXPECT_NE(message.find("a Skeinproof project"), std::string::npos) << message;
  SQLite::Database((folder / "foreign").string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE)
      .exec("CREATE TABLE t (x)");
  EXPECT_EQ(refused(folder / "foreign"), ErrorKind::not_ours);
  ASSERT_TRUE(store_on_shelf(path, std::vector{named("A")}));
  change(path, "PRAGMA user_version = 9");
  EXPECT_EQ(refused(path), ErrorKind::too_new);
  EXPECT_NE(message.find("version 9"), std::string::npos) << message;
  EXPECT_FALSE(load_shelf(folder.path()));
  EXPECT_EQ(load_shelf(folder.path()).error().kind, ErrorKind::wrong_format);
}

TEST_F(YarnShelf, refuses_what_acts_and_what_is_damaged) {
  const auto damaged_by = [&](const std::string& sql) {
    fs::remove(path);
    EXPECT_TRUE(store_on_shelf(path, std::vector{named("A")}));
    change(path, sql);
    const auto loaded = load_shelf(path, no_wait);
    EXPECT_FALSE(loaded) << sql;
    return loaded ? ErrorKind::system : loaded.error().kind;
  };
  for (const char* sql :
       {"CREATE TRIGGER t AFTER INSERT ON yarns BEGIN DELETE FROM yarns; END", "CREATE VIEW v AS SELECT 1",
        "CREATE TABLE further (x)", "DROP TABLE yarn_also_sold",
        "PRAGMA foreign_keys = OFF; INSERT INTO yarn_composition VALUES (77, 1, '', 'x', 1, '')",
        "PRAGMA ignore_check_constraints = ON; UPDATE yarns SET put_up_word = 'bobbin'",
        "PRAGMA ignore_check_constraints = ON; UPDATE yarns SET invented = 7"})
    EXPECT_EQ(damaged_by(sql), ErrorKind::damaged) << sql;
}

TEST_F(YarnShelf, one_byte_changed_is_refused_or_harmless) {
  ASSERT_TRUE(store_on_shelf(path, std::vector{named("A"), named("B")}));
  const std::string whole = read_whole_file(path).value();
  for (std::size_t at = 0; at < whole.size(); at += at < 120 ? 1 : 1 + whole.size() / 300) {
    std::string bytes = whole;
    bytes[at] = static_cast<char>(bytes[at] ^ 0xff);
    std::ofstream(folder / "damaged", std::ios::binary) << bytes;
    const auto loaded = load_shelf(folder / "damaged", no_wait);
    EXPECT_TRUE(loaded || !loaded.error().message().empty()) << at;
  }
  for (std::size_t cut = 1; cut < whole.size(); cut += 1 + whole.size() / 50) {
    std::ofstream(folder / "damaged", std::ios::binary) << whole.substr(0, cut);
    EXPECT_FALSE(load_shelf(folder / "damaged", no_wait)) << cut;
  }
}

TEST_F(YarnShelf, waits_for_nobody_for_ever) {
  ASSERT_TRUE(store_on_shelf(path, std::vector{named("A")}));
  SQLite::Database other(path.string(), SQLite::OPEN_READWRITE);
  other.exec("BEGIN IMMEDIATE");
  const auto stored = store_on_shelf(path, std::vector{named("B")}, no_wait);
  ASSERT_FALSE(stored);
  EXPECT_EQ(stored.error().kind, ErrorKind::locked);
  EXPECT_EQ(load_shelf(path, no_wait)->size(), 1u) << "reading goes on meanwhile";
}

TEST_F(YarnShelf, an_empty_file_is_an_empty_shelf) {
  std::ofstream(folder / "empty").flush();
  EXPECT_EQ(load_shelf(folder / "empty")->size(), 0u);
  EXPECT_TRUE(store_on_shelf(folder / "empty", std::vector{named("A")}));
  EXPECT_EQ(load_shelf(folder / "empty")->size(), 1u);
}

TEST(ShelfDuplicates, are_recognised_whatever_the_units_and_case) {
  std::vector<ShelfYarn> shelf = {named("Oddmere Fieldspun"), named("Oddmere Fieldspun")};
  shelf[1].shade.name = "Peat";
  ShelfYarn same = named("  oddmere  FIELDSPUN ");
  same.yarn.put_up.length = Entered<Metres>{metres(191 * metres_per_yard), "191 yd"};
  same.yarn.put_up.weight = Entered<Grams>{grams(1.75 * grams_per_ounce), "1¾ oz"};
  std::swap(same.yarn.composition[0], same.yarn.composition[1]);
  same.shade.name = "peat";
  auto found = find_duplicates(shelf, std::vector{same});
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].on_shelf, 1u);
  EXPECT_TRUE(found[0].exact);
  same.lot = "4411";
  found = find_duplicates(shelf, std::vector{same});
  ASSERT_EQ(found.size(), 1u);
  EXPECT_FALSE(found[0].exact) << "another dye lot";
  same.yarn.put_up.length->value = metres(180);
  EXPECT_TRUE(find_duplicates(shelf, std::vector{same}).empty());
  same = named("Oddmere Fieldspun");
  same.yarn.composition[0].percent.value = 80;
  EXPECT_TRUE(find_duplicates(shelf, std::vector{same}).empty());
  found = find_duplicates(shelf);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].entry, 1u);
  EXPECT_FALSE(found[0].exact);
}

TEST(ShelfDuplicates, are_offered_and_never_merged) {
  std::vector<ShelfYarn> shelf = {named("Known"), named("Other")};
  shelf[0].id = {5};
  shelf[1].id = {6};
  std::vector<ShelfYarn> offered = {named("known"), named("New"), named("new"), named("Other")};
  offered[3].lot = "4411";
  const ShelfIntake left_out = plan_intake(shelf, offered, DuplicateChoice::leave_out);
  ASSERT_EQ(left_out.entries.size(), 2u);
  EXPECT_EQ(left_out.entries[0].yarn.name, "New");
  EXPECT_EQ(left_out.entries[1].lot, "4411");
  ASSERT_EQ(left_out.duplicates.size(), 1u);
  EXPECT_EQ(left_out.duplicates[0].entry, 0u);
  EXPECT_EQ(left_out.twice, 1u);
  EXPECT_EQ(left_out.other_lots, 1u);
  const ShelfIntake added = plan_intake(shelf, offered, DuplicateChoice::add);
  EXPECT_EQ(added.entries.size(), 4u);
  for (const ShelfYarn& entry : added.entries) EXPECT_FALSE(entry.id);
  const ShelfIntake replaced = plan_intake(shelf, offered, DuplicateChoice::replace);
  ASSERT_EQ(replaced.entries.size(), 3u);
  EXPECT_EQ(replaced.entries[0].id, ShelfYarnId{5});
  EXPECT_FALSE(replaced.entries[1].id);
}

}  // namespace
}  // namespace skeinproof
