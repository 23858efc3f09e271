// SPDX-License-Identifier: GPL-3.0-or-later
// The built program, called as a script would call it.
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>

namespace {

namespace fs = std::filesystem;

const std::string source = SKEINPROOF_SOURCE_DIR;
const std::string projects = source + "/sample-data/projects/";

struct Answer {
  int code = -1;
  std::string text;  // both outputs
};

Answer call(const std::string& words) {
  const char* program = std::getenv("SKEINPROOF_BINARY");
  const std::string command =
      std::string("'") + (program != nullptr ? program : "skeinproof") + "' " + words + " 2>&1";
  Answer answer;
  FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) return answer;
  std::array<char, 4096> chunk;
  for (std::size_t got; (got = fread(chunk.data(), 1, chunk.size(), pipe)) > 0;)
    answer.text.append(chunk.data(), got);
  answer.code = WEXITSTATUS(pclose(pipe));
  return answer;
}

class Terminal : public ::testing::Test {
 protected:
  void SetUp() override {
    folder_ = fs::temp_directory_path() / ("skeinproof-test-" + std::to_string(::getpid()));
    fs::create_directories(folder_);
  }
  void TearDown() override { fs::remove_all(folder_); }
  std::string in_folder(const std::string& name) const { return (folder_ / name).string(); }
  static std::string text_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
  }
  fs::path folder_;
};

constexpr const char* quillmarsh_block =
    "Oddmere Fieldspun (100% wool; 175 m / 191 yd per 50 g / 1¾ oz skein): untreated, woollen-spun 2-ply, "
    "sport weight, "
    "matte, heathered.\n"
    "  MC  Peat 08    5 (5, 6, 7) (7, 8, 9, 9, 10) skeins\n"
    "  CC1 Lichen 21  2 (2, 2, 2) (2, 2, 2, 2, 2) skeins\n"
    "  CC2 Gorse 33   1 (1, 1, 1) (1, 1, 1, 1, 1) skein\n"
    "  CC3 Ember 40   1 (1, 1, 1) (1, 1, 1, 1, 1) skein (at most 80 m / 87 yd needed in any size)\n";

TEST_F(Terminal, TheBlockOfASampleProject) {
  for (const char* ending : {".json", ".skeinproof"}) {
    const Answer answer = call("hand-over " + projects + "quillmarsh-yoke" + ending + " --sheet block");
    EXPECT_EQ(answer.code, 0);
    EXPECT_EQ(answer.text, quillmarsh_block);
  }
}

TEST_F(Terminal, AssessAsJsonHasTheNeedsOfEveryColourAndSize) {
  const Answer answer = call("assess --json " + projects + "quillmarsh-yoke.skeinproof");
  ASSERT_EQ(answer.code, 0) << answer.text;
  const auto json = nlohmann::json::parse(answer.text);
  const auto& size_5 = json["roles"][0]["sizes"][4];
  EXPECT_EQ(size_5["size"], "5");
  EXPECT_NEAR(size_5["planned_m"], 1202.93, 0.01);
  EXPECT_EQ(size_5["skeins"], 7);
  EXPECT_NEAR(size_5["fraction"], 6.874, 0.001);
  EXPECT_NEAR(size_5["last_skein_share"], 0.874, 0.001);
  EXPECT_LT(size_5["low_m"], size_5["planned_m"]);
  EXPECT_EQ(json["length_notes"].size(), 1u);
  EXPECT_EQ(json["length_notes"][0]["label"], "CC3");
  EXPECT_EQ(json["length_notes"][0]["at_most_m"], 80);
  EXPECT_EQ(json["length_notes"][0]["sizes"].size(), 9u);
  EXPECT_EQ(answer.text.find("null"), std::string::npos);
}

TEST_F(Terminal, AFileThatCannotBeReadIsNamedAndTheOthersAreReported) {
  const std::string broken = in_folder("broken.json");
  std::ofstream(broken) << "{\"schema\": \"skeinproof pattern\",\n \"version\": 1, \"titel\": \"x\"}";
  const Answer answer =
      call("assess " + broken + " " + in_folder("none.skeinproof") + " " + projects + "lampwick-socks.json");
  EXPECT_EQ(answer.code, 2);
  EXPECT_NE(answer.text.find("broken.json"), std::string::npos);
  EXPECT_NE(answer.text.find("titel"), std::string::npos);
  EXPECT_NE(answer.text.find("none.skeinproof"), std::string::npos);
  EXPECT_NE(answer.text.find("Lampwick Stripe Socks"), std::string::npos);
}

TEST_F(Terminal, JsonAndProjectFileCarryTheWholeDocumentBothWays) {
  for (const char* name : {"quillmarsh-yoke", "lampwick-socks"}) {
    const std::string project = in_folder(std::string(name) + ".skeinproof"), json = in_folder("back.json"),
                      first = in_folder("first.json");
    ASSERT_EQ(call("to-json " + projects + name + ".json --out " + first).code, 0);
    ASSERT_EQ(call("from-json " + first + " --out " + project).code, 0);
    ASSERT_EQ(call("to-json " + project + " --out " + json).code, 0);
    EXPECT_EQ(text_of(first), text_of(json));
    EXPECT_EQ(call("from-json " + first + " --out " + project).code, 2)
        << "an existing file was replaced unasked";
    EXPECT_EQ(call("from-json " + first + " --replace --out " + project).code, 0);
  }
}

TEST_F(Terminal, SheetsAreWrittenInEveryFormat) {
  for (const char* ending : {".txt", ".html", ".csv", ".xlsx", ".odt", ".pdf"})
    for (const char* sheet : {"block", "quantities", "working", "queries", "sign-off"}) {
      if (std::string(ending) == ".csv" && std::string(sheet) != "quantities" &&
          std::string(sheet) != "working")
        continue;  // tables alone, and it has none
      const std::string out = in_folder(std::string(sheet) + ending);
      const Answer answer =
          call("hand-over " + projects + "quillmarsh-yoke.json --sheet " + sheet + " --out " + out);
      EXPECT_EQ(answer.code, 0) << answer.text;
      EXPECT_GT(fs::file_size(out), 40u) << out;
    }
  EXPECT_EQ(text_of(in_folder("block.txt")), quillmarsh_block);
  EXPECT_EQ(text_of(in_folder("block.pdf")).substr(0, 5), "%PDF-");
  EXPECT_EQ(call("hand-over " + projects + "quillmarsh-yoke.json --out " + in_folder("block.csv")).code, 2);
  EXPECT_EQ(call("hand-over " + projects + "quillmarsh-yoke.json --out " + in_folder("a.doc")).code, 2);
  EXPECT_EQ(call("hand-over " + projects + "quillmarsh-yoke.json --sheet nothing").code, 2);
  EXPECT_EQ(call("hand-over " + projects + "quillmarsh-yoke.json --style nothing").code, 2);
}

TEST_F(Terminal, QueriesAndDraftsOfSubmittedTexts) {
  std::string text =
      "Yarn: Oddmere Fieldspun (100% wool; 175 m / 197 yd per 50 g skein). MC Peat 08: 5 skeins.\n";
  const std::string first = in_folder("first.txt"), second = in_folder("second.txt");
  std::ofstream(first) << text;
  std::ofstream(second) << text.replace(text.find("197"), 3, "191");
  const Answer queries = call("hand-over " + first + " --sheet queries");
  EXPECT_EQ(queries.code, 0);
  EXPECT_NE(queries.text.find("175 m = 191.4 yd"), std::string::npos) << queries.text;
  const Answer drafts = call("hand-over " + second + " --earlier " + first + " --sheet drafts");
  EXPECT_EQ(drafts.code, 0);
  EXPECT_NE(drafts.text.find("Statements that differ: 1."), std::string::npos) << drafts.text;
  EXPECT_EQ(call("hand-over " + first + " --sheet drafts").code, 2) << "one draft alone";
}

// 18.4 g of wool at 40 % relative humidity from 50 g / 100 m balls made up at 18.25 %: 18.4 / 1.108 x 1.1825
// / 50 x 100.
TEST_F(Terminal, MetresFromAWeightWithItsRange) {
  const Answer answer = call(
      "metres '18.4 g' --skein '100 m' --per '50 g' --fibre '100% wool' --spun worsted-spun "
      "--market Europe --humidity 40 --scale '0.1 g' --json");
  ASSERT_EQ(answer.code, 0) << answer.text;
  const auto json = nlohmann::json::parse(answer.text);
  EXPECT_NEAR(json["length_m"], 39.27, 0.01);
  EXPECT_LT(json["low_m"], 39.27);
  EXPECT_GT(json["high_m"], 39.27);
}

TEST_F(Terminal, WhatIsNoQuantityIsNamed) {
  const Answer answer = call("metres '12 parsecs' --skein '100 m'");
  EXPECT_EQ(answer.code, 2);
  EXPECT_NE(answer.text.find("12 parsecs"), std::string::npos);
  EXPECT_EQ(call("metres '50 m' --skein '100 m' --per '50 g'").code, 2);
  EXPECT_EQ(call("metres '10 g' --skein '3 km' --per '50 g'").code, 2);
  EXPECT_EQ(call("no-such-verb").code, 2);
}

TEST_F(Terminal, TheShippedProjectsAreTheirJson) {
  for (const char* name : {"quillmarsh-yoke", "lampwick-socks"})
    EXPECT_EQ(call("to-json " + projects + name + ".skeinproof").text,
              call("to-json " + projects + name + ".json").text);
}

TEST_F(Terminal, TheResultsCanBeReadWithTheSqliteShell) {
  FILE* pipe = popen(("sqlite3 '" + projects +
                      "quillmarsh-yoke.skeinproof' \"SELECT role, size, skeins, round(planned_m, 1) "
                      "FROM v_need WHERE role = 'MC' AND size = '5'\"")
                         .c_str(),
                     "r");
  ASSERT_NE(pipe, nullptr);
  std::array<char, 256> line{};
  const bool got = fgets(line.data(), static_cast<int>(line.size()), pipe) != nullptr;
  pclose(pipe);
  ASSERT_TRUE(got);
  EXPECT_STREQ(line.data(), "MC|5|7|1202.9\n");
}

TEST_F(Terminal, CheckFindsWhatIsWrongInASubmittedText) {
  const std::string blocks = source + "/sample-data/blocks/";
  const Answer answer =
      call("check --json " + blocks + "lampwick-socks.txt " + blocks + "quillmarsh-yoke.txt");
  EXPECT_EQ(answer.code, 1);
  const auto json = nlohmann::json::parse(answer.text);
  ASSERT_EQ(json["files"].size(), 2u);
  EXPECT_EQ(json["files"][0]["file"], blocks + "lampwick-socks.txt");
  bool fibres = false;
  for (const auto& finding : json["files"][0]["findings"])
    if (finding["check"] == "F1") {
      fibres = true;
      EXPECT_EQ(finding["severity"], "Stop");
      EXPECT_EQ(finding["place"]["line"], 2);
      // Without the facts either share may be the wrong one.
      const std::string after = finding["likely_slip"]["after"];
      EXPECT_TRUE(after == "70" || after == "25") << after;
    }
  EXPECT_TRUE(fibres);
  EXPECT_FALSE(json["files"][0]["not_checked"].empty());
}

TEST_F(Terminal, CheckGoesOnBehindAFileThatCannotBeRead) {
  std::ofstream(in_folder("broken.docx")) << "no zip at all";
  const Answer answer = call("check " + in_folder("broken.docx") + " " + in_folder("missing.txt") + " " +
                             projects + "quillmarsh-yoke.skeinproof");
  EXPECT_EQ(answer.code, 2);
  EXPECT_NE(answer.text.find("broken.docx"), std::string::npos);
  EXPECT_NE(answer.text.find("missing.txt"), std::string::npos);
  EXPECT_NE(answer.text.find("a larger size asks for less"), std::string::npos);
}

TEST_F(Terminal, ReadTakesASubmissionIntoAProject) {
  const std::string project = in_folder("socks.skeinproof");
  Answer answer = call("read " + source + "/sample-data/blocks/lampwick-socks.txt --into " + project);
  EXPECT_EQ(answer.code, 0) << answer.text;
  EXPECT_NE(answer.text.find("left out: foot length: 4 values for 5 sizes"), std::string::npos)
      << answer.text;
  answer = call("to-json " + project);
  const auto json = nlohmann::json::parse(answer.text);
  EXPECT_EQ(json["sizes"].size(), 5u);
  EXPECT_EQ(json["roles"][1]["label"], "CC");
  EXPECT_EQ(json["drafts"][0]["source"], "lampwick-socks.txt");
  // Read again it is the next draft.
  EXPECT_EQ(call("read " + source + "/sample-data/blocks/lampwick-socks.txt --into " + project).code, 0);
  EXPECT_EQ(nlohmann::json::parse(call("to-json " + project).text)["drafts"].size(), 2u);
}

TEST_F(Terminal, TheQuerySheetOfASample) {
  const Answer answer = call("hand-over " + projects + "quillmarsh-yoke.skeinproof --sheet queries");
  EXPECT_EQ(answer.code, 0);
  EXPECT_NE(answer.text.find("[ ] exchange “8” and “7”"), std::string::npos) << answer.text;
}

TEST_F(Terminal, TheShelfTakesATableAndFindsYarnsLikeThePatterns) {
  const std::string shelf = " --shelf " + in_folder("yarns.shelf");
  EXPECT_EQ(call("shelf list" + shelf).text, "The shelf is empty.\n");
  const Answer preview = call("shelf import " + source + "/sample-data/shelf/notebook.csv --preview" + shelf);
  EXPECT_EQ(preview.code, 1) << "cells that could not be read are told";
  EXPECT_NE(preview.text.find("“Yardage” is length, in yd"), std::string::npos) << preview.text;
  EXPECT_NE(preview.text.find("notebook.csv:5:33: found “ca. 183”"), std::string::npos) << preview.text;
  EXPECT_FALSE(fs::exists(in_folder("yarns.shelf"))) << "a preview changes nothing";
  const Answer taken = call("shelf import " + source + "/sample-data/shelf/yarns.csv" + shelf);
  EXPECT_EQ(taken.code, 0) << taken.text;
  const Answer again = call("shelf import " + source + "/sample-data/shelf/yarns.csv" + shelf);
  EXPECT_NE(again.text.find("Put on the shelf: 0 yarns."), std::string::npos) << again.text;
  for (const std::string kind : {"", " --doubled", " --pairs"}) {
    const Answer found = call("shelf search --json --limit 3 --like " + projects +
                              "quillmarsh-yoke.json --role CC1" + kind + shelf);
    ASSERT_EQ(found.code, 0) << found.text;
    const auto json = nlohmann::json::parse(found.text);
    ASSERT_EQ(json["hits"].size(), 3u) << found.text;
    EXPECT_NEAR(json["hits"][0]["thickness_ratio"].get<double>(), 1, 0.1) << found.text;
    EXPECT_NE(json["hits"][0]["reason"].get<std::string>().find("fibre"), std::string::npos);
    EXPECT_EQ(found.text.find("score"), std::string::npos);
  }
  ASSERT_EQ(call("shelf export " + in_folder("out.csv") + shelf).code, 0);
  const std::string other = " --shelf " + in_folder("other.shelf");
  EXPECT_EQ(call("shelf import " + in_folder("out.csv") + other).code, 0);
  EXPECT_EQ(call("shelf list" + shelf).text, call("shelf list" + other).text);
}

TEST_F(Terminal, TheShelfSaysWhatIsWrong) {
  const Answer project = call("shelf list --shelf " + projects + "quillmarsh-yoke.skeinproof");
  EXPECT_EQ(project.code, 2);
  EXPECT_NE(project.text.find("expected a Skeinproof yarn shelf"), std::string::npos) << project.text;
  const std::string shelf = " --shelf " + in_folder("yarns.shelf");
  for (const std::string& bad : std::vector<std::string>{
           "search --pairs", "search --like " + projects + "quillmarsh-yoke.json --role CC9",
           "search --sort beauty", "import " + projects + "quillmarsh-yoke.json", "import /nowhere.csv",
           "import " + source + "/sample-data/shelf/notebook.csv --duplicates merge",
           "import " + source + "/sample-data/shelf/notebook.csv --column Bought=luck"}) {
    const Answer answer = call("shelf " + bad + shelf);
    EXPECT_EQ(answer.code, 2) << bad << ": " << answer.text;
    EXPECT_NE(answer.text.find("expected"), std::string::npos) << bad << ": " << answer.text;
  }
}

}  // namespace
