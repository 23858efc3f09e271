// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/write_sheet.h"

#include <csv.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <limits>

#include "core/base/text.h"
#include "core/sheets/make_sheets.h"
#include "core/sheets/printable.h"
#include "tests/core/manuscript/block_samples.h"
#include "tests/core/sheets/unzip.h"

namespace skeinproof {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using testing::Sample;
using testing::yoke_sample;

const std::string hostile = "<script>alert('x')</script>&\"quoted\"\x01\xff\xe2\x80\xae";

// A table of words and figures, all words the same.
Sheet sheet_of(const std::string& text) {
  Sheet sheet;
  sheet.title = sheet.subtitle = sheet.date = text;
  sheet.foot_notes = {text};
  sheet.parts = {Paragraph{Voice::designer, text}, Lines{{{{text, text}}}},
                 Table{text,
                       {{text, Align::left, false}, {"n", Align::right, true}},
                       {{{words(text), figure(1.25, 1)}, true}}}};
  return sheet;
}

std::vector<std::vector<std::string>> read_csv(const std::string& text, char separator = ',') {
  struct Rows {
    std::vector<std::vector<std::string>> done;
    std::vector<std::string> open;
  } rows;
  csv_parser parser;
  csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI);
  csv_set_delim(&parser, static_cast<unsigned char>(separator));
  csv_set_space_func(&parser, [](unsigned char) { return 0; });  // spaces belong to the cell
  const auto cell = [](void* bytes, std::size_t size, void* to) {
    static_cast<Rows*>(to)->open.emplace_back(static_cast<char*>(bytes), size);
  };
  const auto row = [](int, void* to) {
    auto* all = static_cast<Rows*>(to);
    all->done.push_back(std::move(all->open));
    all->open.clear();
  };
  EXPECT_EQ(csv_parse(&parser, text.data(), text.size(), cell, row, &rows), text.size());
  csv_fini(&parser, cell, row, &rows);
  csv_free(&parser);
  return rows.done;
}

TEST(PlainText, TheThreeVoices) {
  Sheet sheet;
  sheet.parts = {Paragraph{Voice::designer, "5 (5, 6)"}, Paragraph{Voice::worked_out, "It is 6."},
                 Paragraph{Voice::ground, "sheet"}};
  sheet.foot_notes = {"note"};
  EXPECT_EQ(plain_text(sheet), "“5 (5, 6)”\nIt is 6.\n  sheet\n\nnote\n");
}

TEST(PlainText, ColumnsStandUnderEachOtherInCodePoints) {
  Sheet sheet;
  sheet.numbers.mark = DecimalMark::comma;
  sheet.parts = {
      Table{"",
            {{"größe", Align::left, false}, {"m", Align::right, true}},
            {{{words("é"), figure(2.675, 2)}, false}, {{words("abc"), figure(std::nullopt, 0)}, true}}}};
  EXPECT_EQ(plain_text(sheet),
            "größe |    m\n"
            "----- | ----\n"
            "é     | 2,68\n"
            "\n"
            "abc   |    –\n");
}

TEST(Html, IsAWholePageInOneInk) {
  const Sample sample = yoke_sample();
  const std::string page = html(block_sheet(sample.pattern, sample.assessment, HouseStyle{}, "1 March 2025"));
  EXPECT_THAT(page, ::testing::StartsWith("<!DOCTYPE html>\n<html lang=\"en\">"));
  EXPECT_THAT(page, HasSubstr("<meta charset=\"utf-8\">"));
  EXPECT_THAT(page, HasSubstr("<h1>Quillmarsh Yoke</h1>"));
  EXPECT_THAT(page, HasSubstr("<p class=\"subtitle\">Yarn · 1 March 2025</p>"));
  EXPECT_THAT(page, HasSubstr("  <span class=\"role\">MC</span>  <span class=\"shade\">Peat 08</span>    "
                              "<span class=\"counts\">5 (5, 6, 7) (7, 8, 9, 9, 10)</span> skeins\n"));
  EXPECT_THAT(page, Not(HasSubstr("http")));
  EXPECT_THAT(page, Not(HasSubstr("<script")));
  for (std::size_t at = page.find('#'); at != std::string::npos; at = page.find('#', at + 1)) {
    const std::string colour = page.substr(at, 4);
    EXPECT_TRUE(colour == "#000" || colour == "#fff") << colour;
  }
}

TEST(Html, BarsAreDrawnAndFiguresRounded) {
  const Sample sample = yoke_sample();
  const std::string page = html(per_size_sheet(sample.pattern, sample.assessment, HouseStyle{}));
  EXPECT_THAT(page, HasSubstr(">87<span class=\"bar\" aria-hidden=\"true\"><span style=\"width:87.4%\">"));
  EXPECT_THAT(page, HasSubstr("<td class=\"figure opens\">1203</td>"));
}

TEST(Html, HostileWordsAreEscaped) {
  const std::string page = html(sheet_of(hostile));
  EXPECT_THAT(page, Not(HasSubstr("<script")));
  EXPECT_THAT(page, Not(HasSubstr("'x'")));
  EXPECT_THAT(
      page,
      HasSubstr(
          "<h1>&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt;&amp;&quot;quoted&quot; \xef\xbf\xbd </h1>"));
  EXPECT_TRUE(is_utf8(page));
}

// Whatever stands in a sheet, the page has the same tags as a harmless one.
RC_GTEST_PROP(Html, WordsMakeNoTags, (const std::string& text)) {
  const auto tags = [](const std::string& page) {
    std::string all;
    bool inside = false;
    for (const char c : page) {
      inside = inside || c == '<';
      if (inside) all += c;
      if (c == '>') inside = false;
    }
    return all;
  };
  Sheet harmless = sheet_of(text.empty() ? "" : "x"), any = sheet_of(text);
  for (Sheet* sheet : {&harmless, &any})
    std::get<Lines>(sheet->parts[1]).lines = {{{"shade", text.empty() ? "" : text}}};
  std::get<Lines>(harmless.parts[1]).lines = {{{"shade", "x"}}};
  RC_ASSERT(tags(html(any)) == tags(html(harmless)));
}

TEST(Csv, RowsOfATable) {
  Sheet sheet;
  sheet.parts = {Table{"",
                       {{"colour", Align::left, false}, {"m", Align::right, false}},
                       {{{words("Peat, dark"), figure(1202.985, 0)}, false},
                        {{words("say \"no\""), figure(std::nullopt, 0)}, false}}}};
  EXPECT_EQ(csv(sheet), "colour,m\r\n\"Peat, dark\",1202.985\r\n\"say \"\"no\"\"\",–\r\n");
  sheet.numbers.mark = DecimalMark::comma;
  EXPECT_EQ(csv(sheet), "colour,m\r\n\"Peat, dark\",\"1202,985\"\r\n\"say \"\"no\"\"\",–\r\n");
  EXPECT_EQ(csv(sheet, {';', true}),
            "\xef\xbb\xbf"
            "colour;m\r\nPeat, dark;1202,985\r\n\"say \"\"no\"\"\";–\r\n");
}

TEST(Csv, FormulasAreMadeHarmless) {
  for (const char* formula : {"=1+1", "+1", "-1", "@now", "\tx", "\rx", "\nx"}) {
    const auto rows = read_csv(csv(sheet_of(formula)));
    ASSERT_EQ(rows.size(), 2u);
    EXPECT_EQ(rows[0][0].front(), '\'') << formula;
    EXPECT_EQ(rows[1][0].front(), '\'') << formula;
  }
  Sheet sheet = sheet_of("x");
  std::get<Table>(sheet.parts[2]).rows[0].cells[1] = figure(-1.5, 1);
  EXPECT_EQ(read_csv(csv(sheet))[1][1], "-1.5") << "a figure is no formula";
}

TEST(Csv, AWordBesideAFigureKeepsTheFigure) {
  Sheet sheet = sheet_of("x");
  std::get<Table>(sheet.parts[2]).rows[0].cells[1].remark = "tips over";
  std::get<Table>(sheet.parts[2]).rows[0].cells[0].repeats = true;
  EXPECT_EQ(csv(sheet), "x,n\r\nx,1.25\r\n");
  EXPECT_THAT(plain_text(sheet), HasSubstr("  | tips over\n"));
}

RC_GTEST_PROP(Csv, WordsReadBack, (const std::string& text, bool comma)) {
  const char separator = comma ? ',' : ';';
  const auto rows = read_csv(csv(sheet_of(text), {separator, false}), separator);
  RC_ASSERT(rows.size() == 2u);
  std::string back = rows[1][0];
  RC_ASSERT(rows[1].size() == 2u);
  if (back != printable(text, true)) {
    RC_ASSERT(back.front() == '\'');
    back.erase(0, 1);
  }
  RC_ASSERT(back == printable(text, true));
  RC_ASSERT(rows[1][1] == "1.25");
}

class Xlsx : public ::testing::Test {
 protected:
  void SetUp() override {
    folder_ = std::filesystem::temp_directory_path() / ("skeinproof-xlsx-" + std::to_string(getpid()));
    std::filesystem::create_directories(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  std::string path(const char* name) const { return (folder_ / name).string(); }
  std::filesystem::path folder_;
};

TEST_F(Xlsx, FiguresAreNumbersAndTheHeadingStays) {
  const Sample sample = yoke_sample();
  const Sheet sheet = per_size_sheet(sample.pattern, sample.assessment, HouseStyle{}, "1 March 2025");
  ASSERT_TRUE(save_xlsx(sheet, path("a.xlsx"), 1740787200).has_value());
  auto entries = testing::unzipped(path("a.xlsx"));
  const std::string& page = entries["xl/worksheets/sheet1.xml"];
  EXPECT_THAT(page, HasSubstr("<pane xSplit=\"2\" ySplit=\"1\" topLeftCell=\"C2\""));
  EXPECT_THAT(page, ::testing::ContainsRegex("<c r=\"G3\" s=\"[0-9]+\"><v>1202.985</v></c>"));
  EXPECT_THAT(page, ::testing::ContainsRegex("<c r=\"C2\" s=\"[0-9]+\"><v>5</v></c>"));
  EXPECT_THAT(entries["xl/workbook.xml"], HasSubstr("sheet name=\"Yarn by size and colour\""));
  EXPECT_THAT(entries["xl/workbook.xml"], HasSubstr("sheet name=\"Notes\""));
  EXPECT_THAT(entries["xl/sharedStrings.xml"], HasSubstr("Lichen 21"));
  EXPECT_THAT(entries["docProps/core.xml"], HasSubstr("2025-03-01T00:00:00Z"));
  EXPECT_FALSE(std::filesystem::exists(path("a.xlsx.part")));
}

TEST_F(Xlsx, TheSameSheetGivesTheSameBytes) {
  const Sample sample = yoke_sample();
  const Sheet sheet = block_sheet(sample.pattern, sample.assessment, HouseStyle{});
  ASSERT_TRUE(save_xlsx(sheet, path("a.xlsx"), 0).has_value());
  ASSERT_TRUE(save_xlsx(sheet, path("b.xlsx"), 0).has_value());
  const auto read = [](const std::string& from) {
    std::ostringstream bytes;
    bytes << std::ifstream(from, std::ios::binary).rdbuf();
    return bytes.str();
  };
  EXPECT_EQ(read(path("a.xlsx")), read(path("b.xlsx")));
}

TEST_F(Xlsx, HostileWordsStayWords) {
  Sheet sheet = sheet_of(hostile);
  sheet.parts.push_back(sheet.parts[2]);  // two pages of one name
  sheet.parts.push_back(Table{"=A1+[x]:*?/\\", {{"=1+1", Align::left, false}}, {{{words("=1+1")}, false}}});
  std::get<Table>(sheet.parts[2]).rows[0].cells[1].number = std::numeric_limits<double>::quiet_NaN();
  ASSERT_TRUE(save_xlsx(sheet, path("a.xlsx"), 1).has_value());
  auto entries = testing::unzipped(path("a.xlsx"));
  ASSERT_EQ(entries.count("xl/worksheets/sheet5.xml"), 1u);
  for (const auto& [name, text] : entries) {
    EXPECT_TRUE(is_utf8(text)) << name;
    EXPECT_THAT(text, Not(HasSubstr("<f>"))) << name;
    EXPECT_THAT(text, Not(HasSubstr("<script"))) << name;
    EXPECT_THAT(text, Not(HasSubstr("nan"))) << name;
  }
}

TEST_F(Xlsx, APlaceThatCannotBeWrittenToSaysSo) {
  const auto nowhere = save_xlsx(sheet_of("x"), path("no/such/folder/a.xlsx"), 1);
  ASSERT_FALSE(nowhere.has_value());
  EXPECT_EQ(nowhere.error().kind, ErrorKind::not_found);
  EXPECT_THAT(nowhere.error().message(), HasSubstr("a.xlsx"));
  std::filesystem::create_directories(path("folder/within"));
  EXPECT_FALSE(save_xlsx(sheet_of("x"), path("folder"), 1).has_value());
  EXPECT_FALSE(std::filesystem::exists(path("folder.part")));
}

}  // namespace
}  // namespace skeinproof
