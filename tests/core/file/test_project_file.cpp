// SPDX-License-Identifier: GPL-3.0-or-later
#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <sys/stat.h>

#include <fstream>

#include "core/file/document_rows.h"
#include "core/file/json.h"
#include "core/file/migrate.h"
#include "core/file/project_file.h"
#include "core/file/schema.h"
#include "core/file/whole_file.h"
#include "core/need/assessment.h"
#include "tests/support/generate_pattern.h"
#include "tests/support/temporary_folder.h"

namespace skeinproof {
namespace {

namespace fs = std::filesystem;

const int read_write = SQLite::OPEN_READWRITE;
const OpenOptions no_wait{0, {}};

SaveOptions seen(const FileStamp& stamp) {
  SaveOptions options;
  options.last_seen = stamp;
  options.wait_ms = 0;
  return options;
}

SaveOptions replacing() {
  SaveOptions options;
  options.replace_existing = true;
  options.wait_ms = 0;
  return options;
}

void write_text(const fs::path& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}
std::string bytes_of(const fs::path& path) { return read_whole_file(path).value(); }

void change(const fs::path& path, const std::string& sql) {
  SQLite::Database(path.string(), read_write).exec(sql);
}

// Name and content of everything in a folder.
std::vector<std::pair<std::string, std::string>> contents(const fs::path& folder) {
  std::vector<std::pair<std::string, std::string>> all;
  for (const auto& entry : fs::directory_iterator(folder))
    all.emplace_back(entry.path().filename(), entry.is_regular_file() ? bytes_of(entry.path()) : "");
  std::sort(all.begin(), all.end());
  return all;
}

class ProjectFile : public testing::Test {
 protected:
  TemporaryFolder folder;
  fs::path path = folder / "yoke.skeinproof";
  Pattern pattern = generated_pattern(1);

  FileStamp saved() {
    const auto stamp = save_project(path, pattern);
    EXPECT_TRUE(stamp) << stamp.error().message();
    return *stamp;
  }
  ErrorKind open_error() {
    const auto project = open_project(path, no_wait);
    EXPECT_FALSE(project);
    return project ? ErrorKind::system : project.error().kind;
  }
};

RC_GTEST_PROP(ProjectFileProperty, gives_back_every_document, (const Pattern& first, const Pattern& second)) {
  const TemporaryFolder folder;
  const fs::path path = folder / "p.skeinproof";
  const auto stamp = save_project(path, first);
  RC_ASSERT(stamp.has_value());
  auto opened = open_project(path);
  RC_ASSERT(opened.has_value());
  RC_ASSERT(opened->pattern == first);
  RC_ASSERT(opened->stamp == *stamp);
  RC_ASSERT(!opened->edited_elsewhere);
  RC_ASSERT(save_project(path, second, seen(*stamp)).has_value());
  RC_ASSERT(open_project(path)->pattern == second);
}

TEST_F(ProjectFile, tables_are_those_the_document_needs) {
  saved();
  SQLite::Database database(path.string());
  for (const auto& [table, columns] : document_tables()) {
    std::vector<std::string> found;
    SQLite::Statement info(database, "SELECT name FROM pragma_table_info('" + table + "')");
    while (info.executeStep()) found.push_back(info.getColumn(0).getString());
    auto expected = columns;
    std::sort(expected.begin(), expected.end());
    std::sort(found.begin(), found.end());
    EXPECT_EQ(found, expected) << table;
  }
}

TEST_F(ProjectFile, marks_itself) {
  saved();
  SQLite::Database database(path.string());
  EXPECT_EQ(database.execAndGet("PRAGMA application_id").getInt64(), 0x536b7066);
  EXPECT_EQ(database.execAndGet("PRAGMA user_version").getInt(), project_schema_version);
  EXPECT_EQ(database.execAndGet("SELECT oldest_reader FROM meta").getInt(), project_oldest_reader);
  EXPECT_EQ(database
                .execAndGet("SELECT count(*) FROM pragma_table_list WHERE type = 'table' AND NOT strict AND "
                            "name NOT LIKE 'sqlite_%'")
                .getInt(),
            0);
  EXPECT_EQ(database.execAndGet("PRAGMA integrity_check").getString(), "ok");
  SQLite::Statement keys(database, "PRAGMA foreign_key_check");
  EXPECT_FALSE(keys.executeStep());
}

TEST_F(ProjectFile, stores_results_beside_the_inputs) {
  saved();
  const Assessment assessment = assess(pattern);
  SQLite::Database database(path.string());
  std::size_t rows = 0;
  SQLite::Statement need(database, "SELECT role, size, planned_m, skeins FROM v_need");
  for (const RoleNeed& role : assessment.roles) {
    for (std::size_t i = 0; i < role.sizes.size(); ++i, ++rows) {
      ASSERT_TRUE(need.executeStep());
      EXPECT_EQ(need.getColumn(0).getString(), role.label);
      EXPECT_EQ(need.getColumn(1).getString(), pattern.sizes[i].label);
      EXPECT_EQ(need.getColumn(2).isNull(), !role.sizes[i].known);
      if (role.sizes[i].known) {
        EXPECT_EQ(need.getColumn(2).getDouble(), role.sizes[i].planned.value());
      }
      EXPECT_EQ(need.getColumn(3).isNull(), !role.sizes[i].skeins);
    }
  }
  EXPECT_FALSE(need.executeStep());
  EXPECT_GT(rows, 0u);
}

TEST_F(ProjectFile, opening_changes_nothing) {
  saved();
  const auto before = contents(folder.path());
  const auto time = fs::last_write_time(path);
  ASSERT_TRUE(open_project(path));
  EXPECT_EQ(contents(folder.path()), before);
  EXPECT_EQ(fs::last_write_time(path), time);
}

TEST_F(ProjectFile, save_leaves_one_file) {
  const FileStamp stamp = saved();
  ASSERT_TRUE(save_project(path, generated_pattern(2), seen(stamp)));
  EXPECT_EQ(contents(folder.path()).size(), 1u);
}

TEST_F(ProjectFile, stamp_follows_from_save_to_save) {
  FileStamp stamp = saved();
  for (std::uint64_t seed = 2; seed < 5; ++seed) {
    EXPECT_FALSE(has_changed(path, stamp));
    const auto next = save_project(path, generated_pattern(seed), seen(stamp));
    ASSERT_TRUE(next) << next.error().message();
    EXPECT_TRUE(has_changed(path, stamp));
    stamp = *next;
  }
}

TEST_F(ProjectFile, refuses_to_save_over_what_somebody_else_wrote) {
  const FileStamp stamp = saved();
  change(path, "UPDATE pattern SET title = 'theirs'");
  EXPECT_TRUE(has_changed(path, stamp));
  const auto theirs = bytes_of(path);
  const auto refused = save_project(path, pattern, seen(stamp));
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().kind, ErrorKind::changed_behind_our_back);
  EXPECT_EQ(bytes_of(path), theirs);
  auto agreed = seen(stamp);
  agreed.replace_existing = true;
  ASSERT_TRUE(save_project(path, pattern, agreed));
  EXPECT_EQ(open_project(path)->pattern, pattern);
}

TEST_F(ProjectFile, says_when_another_program_wrote_the_tables) {
  saved();
  change(path, "UPDATE pattern SET title = 'theirs'");
  const auto project = open_project(path);
  ASSERT_TRUE(project);
  EXPECT_EQ(project->pattern.title, "theirs");
  EXPECT_TRUE(project->edited_elsewhere);
}

TEST_F(ProjectFile, a_copied_back_file_is_the_same_file) {
  const FileStamp stamp = saved();
  fs::copy_file(path, folder / "copy");
  fs::rename(folder / "copy", path);
  EXPECT_FALSE(has_changed(path, stamp));
  EXPECT_TRUE(save_project(path, pattern, seen(stamp)));
}

TEST_F(ProjectFile, does_not_save_over_another_project_unasked) {
  saved();
  const auto before = bytes_of(path);
  const auto refused = save_project(path, generated_pattern(2));
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().kind, ErrorKind::changed_behind_our_back);
  EXPECT_EQ(bytes_of(path), before);
  ASSERT_TRUE(save_project(path, generated_pattern(2), replacing()));
  EXPECT_EQ(open_project(path)->pattern, generated_pattern(2));
}

TEST_F(ProjectFile, does_not_save_over_a_foreign_file_unasked) {
  SQLite::Database((folder / "db").string(), read_write | SQLite::OPEN_CREATE).exec("CREATE TABLE t (x)");
  write_text(folder / "text", "dear diary");
  write_text(folder / "empty", "");
  for (const char* name : {"db", "text", "empty"}) {
    const auto before = bytes_of(folder / name);
    const auto refused = save_project(folder / name, pattern);
    ASSERT_FALSE(refused) << name;
    EXPECT_EQ(refused.error().kind, ErrorKind::not_ours) << name;
    EXPECT_EQ(bytes_of(folder / name), before);
    ASSERT_TRUE(save_project(folder / name, pattern, replacing())) << name;
    EXPECT_EQ(open_project(folder / name)->pattern, pattern);
  }
}

TEST_F(ProjectFile, a_lost_journal_does_not_reach_a_new_file) {
  saved();
  fs::copy_file(path, folder / "other-journal");
  write_text(folder / "other-wal", "left behind");
  ASSERT_TRUE(save_project(folder / "other", pattern));
  EXPECT_EQ(open_project(folder / "other")->pattern, pattern);
  EXPECT_FALSE(fs::exists(folder / "other-journal"));
  EXPECT_FALSE(fs::exists(folder / "other-wal"));
}

TEST_F(ProjectFile, saves_through_a_link) {
  const FileStamp stamp = saved();
  fs::create_symlink("yoke.skeinproof", folder / "link");
  ASSERT_TRUE(save_project(folder / "link", generated_pattern(2), seen(stamp)));
  EXPECT_TRUE(fs::is_symlink(folder / "link"));
  EXPECT_EQ(open_project(path)->pattern, generated_pattern(2));
  write_text(folder / "text", "x");
  fs::create_symlink("text", folder / "link2");
  ASSERT_TRUE(save_project(folder / "link2", pattern, replacing()));
  EXPECT_TRUE(fs::is_symlink(folder / "link2"));
  EXPECT_EQ(open_project(folder / "text")->pattern, pattern);
}

TEST_F(ProjectFile, takes_any_name) {
  for (const char* name : {"file:odd?mode=ro", "ñandú #1 100%.skeinproof", "new\nline", "it's"}) {
    ASSERT_TRUE(save_project(folder / name, pattern)) << name;
    EXPECT_EQ(open_project(folder / name)->pattern, pattern) << name;
  }
}

TEST_F(ProjectFile, says_what_is_missing) {
  EXPECT_EQ(open_error(), ErrorKind::not_found);
  EXPECT_EQ(open_project(folder.path()).error().kind, ErrorKind::wrong_format);
  EXPECT_EQ(save_project(folder.path(), pattern).error().kind, ErrorKind::wrong_format);
  EXPECT_EQ(save_project(folder / "no" / "file", pattern).error().kind, ErrorKind::not_found);
  const FileStamp stamp = saved();
  fs::remove(path);
  const auto gone = save_project(path, pattern, seen(stamp));
  ASSERT_FALSE(gone);
  EXPECT_EQ(gone.error().kind, ErrorKind::not_found);
  EXPECT_EQ(gone.error().place.file, path.string());
  ::mkfifo((folder / "pipe").c_str(), 0600);
  EXPECT_EQ(open_project(folder / "pipe").error().kind, ErrorKind::wrong_format);
}

TEST_F(ProjectFile, says_when_it_is_locked) {
  const FileStamp stamp = saved();
  SQLite::Database other(path.string(), read_write);
  other.exec("BEGIN IMMEDIATE");
  EXPECT_TRUE(open_project(path, no_wait)) << "one who is about to write does not keep others from reading";
  EXPECT_EQ(save_project(path, pattern, seen(stamp)).error().kind, ErrorKind::locked);
  other.exec("COMMIT");
  other.exec("BEGIN EXCLUSIVE");
  EXPECT_EQ(open_error(), ErrorKind::locked);
  EXPECT_EQ(save_project(path, pattern, replacing()).error().kind, ErrorKind::locked);
  other.exec("ROLLBACK");
  EXPECT_TRUE(save_project(path, pattern, seen(stamp)));
}

TEST_F(ProjectFile, refuses_what_is_not_ours) {
  write_text(path, "");
  EXPECT_EQ(open_error(), ErrorKind::not_ours);
  write_text(path, "SQLite format 3");
  EXPECT_EQ(open_error(), ErrorKind::not_ours);
  write_text(path, std::string(5000, 'x'));
  EXPECT_EQ(open_error(), ErrorKind::not_ours);
  fs::remove(path);
  SQLite::Database(path.string(), read_write | SQLite::OPEN_CREATE).exec("CREATE TABLE pattern (title)");
  EXPECT_EQ(open_error(), ErrorKind::not_ours);
}

TEST_F(ProjectFile, refuses_a_newer_one_by_name_unless_it_lets_us_read) {
  const FileStamp stamp = saved();
  change(path,
         "PRAGMA user_version = 7; UPDATE meta SET oldest_reader = 5; CREATE TABLE lots (x); "
         "ALTER TABLE roles ADD COLUMN dye TEXT");
  const auto refused = open_project(path);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().kind, ErrorKind::too_new);
  EXPECT_EQ(refused.error().found, "a project of schema version 7");
  EXPECT_EQ(refused.error().expected, "at most version " + std::to_string(project_schema_version));

  change(path, "UPDATE meta SET oldest_reader = 1");
  const auto project = open_project(path);
  ASSERT_TRUE(project) << project.error().message();
  EXPECT_TRUE(project->newer);
  EXPECT_EQ(project->schema_version, 7);
  EXPECT_EQ(project->pattern, pattern);
  const auto before = bytes_of(path);
  EXPECT_EQ(save_project(path, pattern, seen(project->stamp)).error().kind, ErrorKind::too_new);
  EXPECT_EQ(save_project(path, pattern, seen(stamp)).error().kind, ErrorKind::too_new);
  EXPECT_EQ(bytes_of(path), before);

  change(path, "CREATE TRIGGER t AFTER UPDATE ON meta BEGIN DELETE FROM roles; END");
  EXPECT_EQ(open_error(), ErrorKind::too_new);
}

TEST_F(ProjectFile, refuses_a_schema_that_is_not_ours) {
  for (const char* sql :
       {"CREATE TRIGGER t AFTER UPDATE ON meta BEGIN DELETE FROM roles; END",
        "CREATE VIEW v AS SELECT load_extension('x')", "CREATE TABLE extra (x)",
        "CREATE INDEX i ON roles (label)", "DROP VIEW v_need", "PRAGMA user_version = 0",
        "ALTER TABLE roles RENAME COLUMN label TO name", "CREATE VIRTUAL TABLE f USING fts5(x)"}) {
    fs::remove(path);
    saved();
    change(path, sql);
    EXPECT_EQ(open_error(), ErrorKind::damaged) << sql;
    EXPECT_EQ(save_project(path, pattern, SaveOptions{FileStamp{}, false, "x", 0}).error().kind,
              ErrorKind::damaged);
    EXPECT_TRUE(save_project(path, pattern, replacing())) << sql;
    EXPECT_TRUE(open_project(path)) << sql;
  }
}

TEST_F(ProjectFile, statistics_of_the_database_do_no_harm) {
  saved();
  change(path, "ANALYZE");
  EXPECT_TRUE(open_project(path));
}

TEST_F(ProjectFile, refuses_values_that_cannot_be) {
  for (const char* sql :
       {"UPDATE sizes SET label = x'ff'",
        "PRAGMA ignore_check_constraints = 1; UPDATE pattern SET basis = 'guess'",
        "PRAGMA ignore_check_constraints = 1; UPDATE pattern SET count_joins = 9", "DELETE FROM pattern",
        "DELETE FROM house_styles", "UPDATE pattern SET last_id = 1e0 * 4294967296",
        "UPDATE pattern SET last_id = 0", "UPDATE sizes SET label = CAST(x'ff' AS TEXT)",
        "INSERT INTO printed_total VALUES (4000, 1.0, '')"}) {
    fs::remove(path);
    saved();
    try {
      change(path, std::string("PRAGMA foreign_keys = OFF; ") + sql);
    } catch (const SQLite::Exception&) {
      continue;  // the tables themselves refuse it
    }
    EXPECT_EQ(open_error(), ErrorKind::damaged) << sql;
  }
}

TEST_F(ProjectFile, refuses_a_document_that_breaks_its_rules) {
  pattern.sizes.clear();
  EXPECT_EQ(save_project(path, pattern).error().kind, ErrorKind::broken_invariant);
  pattern = new_pattern();
  pattern.title = "\xff";
  EXPECT_EQ(save_project(path, pattern).error().kind, ErrorKind::broken_invariant);
  pattern = new_pattern();
  pattern.house_styles[0].allowance_pct = std::numeric_limits<double>::quiet_NaN();
  const auto refused = save_project(path, pattern);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().expected, "a finite number in allowance_pct");
  EXPECT_FALSE(fs::exists(path));
}

TEST_F(ProjectFile, a_write_ahead_log_is_read_from_a_copy) {
  const FileStamp stamp = saved();
  {
    SQLite::Database other(path.string(), read_write);
    other.exec("PRAGMA journal_mode = WAL");
    other.exec("UPDATE pattern SET title = 'in the log'");
    const auto before = contents(folder.path());
    const auto project = open_project(path, no_wait);
    ASSERT_TRUE(project) << project.error().message();
    EXPECT_EQ(project->pattern.title, "in the log");
    EXPECT_TRUE(project->journal_found);
    EXPECT_EQ(contents(folder.path()), before);
  }
  EXPECT_EQ(save_project(path, pattern, seen(stamp)).error().kind, ErrorKind::changed_behind_our_back);
  ASSERT_TRUE(save_project(path, pattern, replacing()));
  EXPECT_EQ(contents(folder.path()).size(), 1u);
  EXPECT_EQ(open_project(path)->pattern, pattern);
}

TEST_F(ProjectFile, a_missing_scratch_folder_is_said) {
  saved();
  change(path, "PRAGMA journal_mode = WAL");
  EXPECT_EQ(open_project(path, {0, folder / "no"}).error().kind, ErrorKind::not_found);
}

TEST(Migrate, goes_step_by_step_and_says_what_is_missing) {
  SQLite::Database copy(":memory:", read_write | SQLite::OPEN_CREATE);
  copy.exec("CREATE TABLE t (a); INSERT INTO t VALUES (1)");
  const Migration steps[] = {{1, "ALTER TABLE t ADD COLUMN b DEFAULT 2"}, {2, "UPDATE t SET a = a + b"}};
  ASSERT_TRUE(migrate(copy, 1, 3, steps));
  EXPECT_EQ(copy.execAndGet("SELECT a FROM t").getInt(), 3);
  EXPECT_EQ(copy.execAndGet("PRAGMA user_version").getInt(), 3);
  EXPECT_EQ(migrate(copy, 3, 4, steps).error().kind, ErrorKind::damaged);
  EXPECT_EQ(migrate(copy, 5, 4, steps).error().kind, ErrorKind::too_new);
  const Migration wrong[] = {{3, "UPDATE t SET a = 9; UPDATE nothing SET a = 1"}};
  EXPECT_EQ(migrate(copy, 3, 4, wrong).error().kind, ErrorKind::damaged);
  EXPECT_EQ(copy.execAndGet("SELECT a FROM t").getInt(), 3) << "all of the steps or none";
}

TEST(Migrate, there_is_a_step_from_every_released_schema) {
  for (int version = 1; version < project_schema_version; ++version) {
    EXPECT_FALSE(project_schema(version).empty());
    EXPECT_EQ(migrations()[static_cast<std::size_t>(version - 1)].from, version);
  }
  EXPECT_EQ(migrations().size(), static_cast<std::size_t>(project_schema_version - 1));
}

TEST(SchemaSamples, every_released_schema_opens) {
  for (int version = 1; version <= project_schema_version; ++version) {
    const fs::path base = fs::path(SKEINPROOF_SOURCE_DIR) / "sample-data" / "schema";
    const std::string name = "schema-" + std::to_string(version);
    const auto project = open_project(base / (name + ".skeinproof"));
    ASSERT_TRUE(project) << project.error().message();
    EXPECT_EQ(project->schema_version, version);
    EXPECT_EQ(project->migrated, version < project_schema_version);
    const auto expected = pattern_from_json(bytes_of(base / (name + ".json")), name);
    ASSERT_TRUE(expected) << expected.error().message();
    EXPECT_EQ(project->pattern, *expected);
  }
}

}  // namespace
}  // namespace skeinproof
