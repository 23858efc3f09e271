// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/odt.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <pugixml.hpp>

#include "core/manuscript/text_of_file.h"
#include "tests/core/sheets/unzip.h"
#include "tests/support/temporary_folder.h"

namespace skeinproof {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

Sheet sheet_of(const std::string& text) {
  Sheet sheet;
  sheet.title = sheet.subtitle = sheet.date = text;
  sheet.foot_notes = {text};
  sheet.parts = {Heading{"Q1", "Stop", text}, Paragraph{Voice::designer, text},
                 Lines{{{{"plain", text}, {"gone", text}}}}, Choices{{{text, false}, {text, true}}},
                 Table{text,
                       {{text, Align::left, false}, {"n", Align::right, true}},
                       {{{words(text), figure(1.25, 1)}, true}, {{}, false}}}};
  return sheet;
}

std::string packed(const Sheet& sheet, std::int64_t created = 0) {
  const auto bytes = odt(sheet, created);
  EXPECT_TRUE(bytes);
  return bytes ? *bytes : std::string();
}

TEST(Odt, SaysWhatItIsFirstAndUnpacked) {
  const std::string bytes = packed(sheet_of("Peat"));
  EXPECT_EQ(bytes.substr(0, 4), "PK\x03\x04");
  EXPECT_EQ(bytes.substr(8, 2), std::string(2, '\0'));           // stored
  EXPECT_EQ(bytes.substr(26, 4), std::string("\x08\0\0\0", 4));  // eight letters, nothing beside
  EXPECT_EQ(bytes.substr(30, 47), "mimetypeapplication/vnd.oasis.opendocument.text");
}

TEST(Odt, EveryFileIsWellFormedAndListed) {
  const TemporaryFolder folder;
  const std::string path = (folder / "sheet.odt").string();
  std::ofstream(path, std::ios::binary) << packed(sheet_of("<Peat> & \"Gorse\" \x01\xff ☐ ½"));
  const auto files = testing::unzipped(path);
  ASSERT_EQ(files.size(), 5U);
  for (const auto& [name, content] : files) {
    if (name == "mimetype") continue;
    pugi::xml_document document;
    EXPECT_TRUE(document.load_string(content.c_str())) << name;
    if (name == "META-INF/manifest.xml") continue;
    EXPECT_THAT(files.at("META-INF/manifest.xml"), HasSubstr("full-path=\"" + name + "\""));
  }
  EXPECT_THAT(files.at("content.xml"), HasSubstr("&lt;Peat&gt; &amp; "));
  EXPECT_THAT(files.at("content.xml"), Not(HasSubstr("\x01")));
}

// Styles that are used and not told would fall back to something else without a word.
TEST(Odt, EveryStyleThatIsUsedIsThere) {
  const TemporaryFolder folder;
  const std::string path = (folder / "sheet.odt").string();
  std::ofstream(path, std::ios::binary) << packed(sheet_of("Peat"));
  const auto files = testing::unzipped(path);
  pugi::xml_document content, styles;
  ASSERT_TRUE(content.load_string(files.at("content.xml").c_str()));
  ASSERT_TRUE(styles.load_string(files.at("styles.xml").c_str()));
  const auto told = [&](const std::string& name) {
    const auto is_it = [&](const pugi::xml_node& node) {
      return node.attribute("style:name").value() == name;
    };
    return content.find_node(is_it) || styles.find_node(is_it);
  };
  for (const auto& used : content.select_nodes("//@text:style-name | //@table:style-name"))
    EXPECT_TRUE(told(used.attribute().value())) << used.attribute().value();
  for (const auto& used : styles.select_nodes("//@style:parent-style-name"))
    EXPECT_TRUE(told(used.attribute().value())) << used.attribute().value();
}

TEST(Odt, ReadsBackAsTheWordsOfTheSheet) {
  Sheet sheet = sheet_of("Peat  08");
  sheet.parts.emplace_back(Paragraph{Voice::worked_out, "one\ntwo"});
  const auto text = text_of_bytes(packed(sheet), "sheet.odt");
  ASSERT_TRUE(text) << text.error().message();
  EXPECT_THAT(text->text, HasSubstr("Q1\tStop\tPeat  08"));
  EXPECT_THAT(text->text, HasSubstr("“Peat  08”"));
  EXPECT_THAT(text->text, HasSubstr("☐ Peat  08"));
  EXPECT_THAT(text->text, HasSubstr("1.3"));
  EXPECT_THAT(text->text, HasSubstr("one\ntwo"));
}

TEST(Odt, TheSameSheetAndTimeGiveTheSameBytes) {
  EXPECT_EQ(packed(sheet_of("Peat"), 1'700'000'000), packed(sheet_of("Peat"), 1'700'000'000));
  EXPECT_NE(packed(sheet_of("Peat"), 1'700'000'000), packed(sheet_of("Peat"), 1'700'000'001));
  EXPECT_FALSE(packed(Sheet{}).empty());
}

}  // namespace
}  // namespace skeinproof
