// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/base/csv_cells.h"
#include "core/base/text.h"
#include "core/file/shelf_csv.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

ShelfImport imported(const std::string& bytes) {
  const auto table = read_shelf_table(bytes, "yarns.csv");
  EXPECT_TRUE(table) << table.error().message();
  return table ? read_shelf_rows(*table, table->columns) : ShelfImport{};
}
ShelfYarn one(const std::string& bytes) {
  const ShelfImport import = imported(bytes);
  EXPECT_EQ(import.taken.size(), 1u);
  return import.taken.empty() ? ShelfYarn{} : import.taken.front().entry;
}

TEST(ShelfCsv, reads_units_of_any_system) {
  struct Case {
    const char* headings;
    const char* cells;
    double length_m, weight_g;
  };
  // 1 yd = 0.9144 m, 1 oz = 28.349523125 g, exact by definition.
  const Case cases[] = {
      {"Name,Put-up", "A,50g/175m", 175, 50},
      {"Name,Put-up", "A,1¾ oz / 191 yd", 191 * 0.9144, 1.75 * 28.349523125},
      {"Name,Put-up", "A,1 3/4 oz/191 yd", 191 * 0.9144, 1.75 * 28.349523125},
      {"Name,Put-up", "A,175 m / 191 yd per 50 g / 1¾ oz ball", 175, 50},
      {"Name,Put-up", "A,100 g = 350 m (skein)", 350, 100},
      {"Name,Put-up", "\"A\",\"50 g, 175 m\"", 175, 50},
      {"Yarn,Length (yd),Weight (oz)", "A,191,1¾", 191 * 0.9144, 1.75 * 28.349523125},
      {"Yarn,Yardage,Weight_g", "A,191,50", 191 * 0.9144, 50},
      {"yarn name;Length in m;Weight (g)", "A;87,5;50", 87.5, 50},
      {"Name\tMetres\tGrams", "A\t175\t50", 175, 50},
      {"sep=;\nName;Length;Weight", "A;175 m;0,05 kg", 175, 50},
  };
  for (const Case& each : cases) {
    const ShelfYarn entry = one(std::string(each.headings) + "\n" + each.cells + "\n");
    ASSERT_TRUE(entry.yarn.put_up.length && entry.yarn.put_up.weight) << each.headings << "\n" << each.cells;
    EXPECT_NEAR(entry.yarn.put_up.length->value.value(), each.length_m, 1e-9) << each.cells;
    EXPECT_NEAR(entry.yarn.put_up.weight->value.value(), each.weight_g, 1e-9) << each.cells;
    EXPECT_EQ(entry.note, "") << each.cells;
  }
  EXPECT_EQ(one("Name,Put-up\nA,50 g / 175 m ball").yarn.put_up.word, SkeinWord::ball);
}

TEST(ShelfCsv, reads_what_else_a_row_says) {
  const ShelfYarn entry =
      one("Name,Fibre,Weight,Price (EUR),Gauge,Needle size,Spun,Owned,Colour,No.,Discontinued,Invented\n"
          "Oddmere Fieldspun,\"75% wool, 25% polyamide\",DK,\"7,90\",24–26 sts,US 6,woollen,3 skeins + 41 "
          "g,Peat,08,no,yes\n");
  EXPECT_EQ(entry.yarn.composition.size(), 2u);
  EXPECT_EQ(entry.yarn.category, "DK");
  EXPECT_DOUBLE_EQ(entry.yarn.price->amount.value, 7.9);
  EXPECT_EQ(entry.yarn.price->currency, "EUR");
  EXPECT_EQ(entry.yarn.band_stitches_low->value, 24);
  EXPECT_EQ(entry.yarn.band_stitches_high->value, 26);
  EXPECT_DOUBLE_EQ(entry.yarn.band_needle->value.value(), 0.4);  // US 6 is 4 mm
  EXPECT_EQ(entry.yarn.spinning, Spinning::woollen);
  EXPECT_EQ(entry.skeins->value, 3);
  EXPECT_EQ(entry.weight->value, grams(41));
  EXPECT_EQ(entry.shade.name, "Peat");
  EXPECT_EQ(entry.shade.number, "08");
  EXPECT_FALSE(entry.yarn.withdrawn);
  EXPECT_TRUE(entry.invented);
  EXPECT_EQ(entry.note, "");
  EXPECT_EQ(one("Name,Price,Currency\nA,7.90,GBP").yarn.price->currency, "GBP");
  EXPECT_EQ(one("Name,Price\nA,£7.90").yarn.price->currency, "£");
  const auto sold = one("Name,Also sold as\nA,\"100 g / 350 m, 14.00 EUR; 25 g / 87 m\"").yarn.also_sold;
  ASSERT_EQ(sold.size(), 2u);
  EXPECT_EQ(sold[0].price->amount.value, 14);
  EXPECT_EQ(sold[1].put_up.length->value, metres(87));
}

TEST(ShelfCsv, tells_what_it_took_each_column_for) {
  auto table =
      read_shelf_table("Name;Karma;Length (yd);Weight;Length (m)\nA;7;191;50;175\n", "y.csv").value();
  EXPECT_EQ(table.separator, ';');
  ASSERT_EQ(table.columns.size(), 5u);
  EXPECT_EQ(table.columns[1].field, ShelfField::kept_in_note);
  EXPECT_FALSE(table.columns[1].known);
  EXPECT_EQ(table.columns[2].assumed, "yd");
  EXPECT_FALSE(table.columns[4].known) << "a second length must not overwrite the first";
  EXPECT_NE(table.notes.back().find("“Karma”, “Length (m)”"), std::string::npos) << table.notes.back();
  EXPECT_EQ(read_shelf_rows(table, table.columns).taken[0].entry.note, "Karma: 7\nLength (m): 175");
  // The mapping is the reader's to change.
  table.columns[1].field = ShelfField::lot;
  table.columns[2].field = ShelfField::left_out;
  table.columns[4].field = ShelfField::length;
  const ShelfYarn entry = read_shelf_rows(table, table.columns).taken[0].entry;
  EXPECT_EQ(entry.lot, "7");
  EXPECT_EQ(entry.yarn.put_up.length->value, metres(175));
  EXPECT_EQ(entry.note, "");
}

TEST(ShelfCsv, keeps_and_tells_what_it_cannot_read) {
  const ShelfImport import = imported(
      "Name,Length,Price,Note\n"
      "\"Two\nlines\",12 parsecs,7.90,mine\n"
      ",175 m,,\n"
      "Good,175 m,7.90 EUR,\n"
      "Long,175 m,,,further\n");
  ASSERT_EQ(import.taken.size(), 3u);
  const auto& doubtful = import.taken[0];
  EXPECT_EQ(doubtful.line, 2);
  ASSERT_EQ(doubtful.doubts.size(), 2u);
  EXPECT_EQ(doubtful.doubts[0].place, (Place{"yarns.csv", 3, 8})) << doubtful.doubts[0].message();
  EXPECT_NE(doubtful.doubts[0].message().find("“12 parsecs”"), std::string::npos);
  EXPECT_NE(doubtful.doubts[0].message().find("the column “Length”"), std::string::npos);
  EXPECT_EQ(doubtful.doubts[1].place, (Place{"yarns.csv", 3, 19}));
  EXPECT_NE(doubtful.doubts[1].message().find("currency"), std::string::npos);
  EXPECT_EQ(doubtful.entry.note, "mine\nLength: 12 parsecs\nPrice: 7.90");
  EXPECT_FALSE(doubtful.entry.yarn.price);
  ASSERT_EQ(import.failed.size(), 1u);
  EXPECT_EQ(import.failed[0].error.place.line, 4);
  EXPECT_TRUE(import.taken[1].doubts.empty());
  EXPECT_EQ(import.taken[2].entry.note, "further");
  ASSERT_EQ(import.taken[2].doubts.size(), 1u);
  EXPECT_EQ(import.taken[2].doubts[0].place, (Place{"yarns.csv", 6, 14}));
  // Fibres that cannot be, told at their row.
  EXPECT_EQ(imported("Name,Fibre\nA,\"75% wool, 30% silk\"").taken[0].doubts.size(), 1u);
  const auto table = read_shelf_table("Name,Length\n,175 m\n=A,2 m\n", "y.csv").value();
  EXPECT_EQ(failed_rows_csv(table, read_shelf_rows(table, table.columns)),
            "\xef\xbb\xbfName,Length\r\n,175 m\r\n");
}

TEST(ShelfCsv, refuses_what_is_no_table_of_yarns) {
  const auto refused = [](const std::string& bytes) {
    const auto table = read_shelf_table(bytes, "y.csv");
    EXPECT_FALSE(table) << bytes;
    return table ? std::string() : table.error().message();
  };
  EXPECT_NE(refused("Apples,Pears\n1,2\n").find("“Apples”, “Pears”"), std::string::npos);
  EXPECT_NE(refused("").find("empty"), std::string::npos);
  EXPECT_NE(refused("PK\x03\x04zip").find("saved as CSV"), std::string::npos);
  EXPECT_NE(refused(std::string("Name\0,x\n\0\0", 10)).find("saved as CSV"), std::string::npos);
  EXPECT_NE(refused("Name,Note\nA,\"never closed\nB,2\n").find("y.csv:2:3: found a quotation mark"),
            std::string::npos);
}

TEST(ShelfCsv, tells_a_foreign_encoding) {
  const auto table = read_shelf_table("Name,Put-up\nF\xe6r\xf8,1\xbe oz / 191 yd\n", "y.csv").value();
  EXPECT_EQ(table.encoding.empty(), false);
  EXPECT_NE(table.notes.front().find(table.encoding), std::string::npos);
  const auto import = read_shelf_rows(table, table.columns);
  EXPECT_EQ(import.taken[0].entry.yarn.name, "Færø");
  EXPECT_NEAR(import.taken[0].entry.yarn.put_up.weight->value.value(), 49.61, 0.01);
  std::string wide = "\xff\xfe";
  for (char c : std::string("Name,Shade\nA,B\n")) wide += {c, '\0'};
  EXPECT_EQ(one(wide).shade.name, "B");
}

TEST(CsvCells, cannot_run_as_formulas) {
  for (const char* text :
       {"=1+1", "+1", "-1", "@now", "\tx", "\rx", "\nx", " =1", "'=1", "''+1", "＝1", " ' @x"}) {
    EXPECT_EQ(without_formula(text), "'" + std::string(text));
    EXPECT_EQ(as_typed(without_formula(text)), text);
  }
  for (const char* text : {"", "wool", "'tis", "75% wool = 25%", "'", " "}) {
    EXPECT_EQ(without_formula(text), text);
    EXPECT_EQ(as_typed(text), text);
  }
  ShelfYarn entry;
  entry.yarn.name = "=HYPERLINK(\"x\")";
  entry.note = "a;=cmd|' /C calc'!A0";
  const std::string csv = shelf_csv(std::vector{entry});
  EXPECT_NE(csv.find("\"'=HYPERLINK(\"\"x\"\")\""), std::string::npos) << csv;
  EXPECT_NE(csv.find("\"a;=cmd|' /C calc'!A0\""), std::string::npos)
      << "no other separator may cut a cell open: " << csv;
  const ShelfYarn back = one(csv);
  EXPECT_EQ(back.yarn.name, entry.yarn.name);
  EXPECT_EQ(back.note, entry.note);
}

RC_GTEST_PROP(CsvCellsProperty, as_typed_undoes_without_formula, ()) {
  const auto text = *rc::gen::container<std::string>(rc::gen::elementOf(std::string("='+-@ \t\nab\"")));
  RC_ASSERT(as_typed(without_formula(text)) == text);
}

std::string some_words() {
  const auto text = *rc::gen::container<std::string>(rc::gen::elementOf(std::string("=+-@'\",;|\tab\n 1")));
  return std::string(trimmed(text));
}

RC_GTEST_PROP(ShelfCsvProperty, what_is_written_is_read_back, ()) {
  ShelfYarn entry;
  Yarn& yarn = entry.yarn;
  yarn.name = "N" + some_words();
  yarn.composition = {{"wool", "wool", {60, "60"}}, {"silk", "silk", {40, "40"}}};
  for (auto* text : {&yarn.structure, &yarn.surface, &yarn.colouring, &yarn.care, &yarn.description,
                     &yarn.twist, &yarn.treatment, &yarn.category, &entry.shade.name, &entry.shade.number,
                     &entry.lot, &entry.place, &entry.note})
    *text = some_words();
  const auto figure = [] { return *rc::gen::inRange(1, 1'000'000) / 1000.0; };
  yarn.put_up.length = Entered<Metres>{metres(figure()), ""};
  yarn.put_up.weight = Entered<Grams>{grams(figure()), ""};
  yarn.put_up.word = *rc::gen::element(SkeinWord::skein, SkeinWord::cone, SkeinWord::ball);
  yarn.spinning = *rc::gen::element(Spinning::unstated, Spinning::woollen, Spinning::filament);
  yarn.market = *rc::gen::element(Market::unstated, Market::united_states);
  yarn.withdrawn = *rc::gen::arbitrary<bool>();
  entry.invented = *rc::gen::arbitrary<bool>();
  yarn.price = Price{{figure(), ""}, *rc::gen::element<std::string>("EUR", "€", "kr", "NZ$")};
  yarn.also_sold = {{yarn.put_up, yarn.price}, {yarn.put_up, {}}};
  yarn.band_stitches_low = Entered<double>{22, ""};
  yarn.band_stitches_high = Entered<double>{24.5, ""};
  yarn.band_needle = Entered<Centimetres>{centimetres(0.35), ""};
  entry.skeins = Entered<double>{figure(), ""};
  entry.weight = Entered<Grams>{grams(figure()), ""};
  const ShelfImport import = imported(shelf_csv(std::vector{entry}));
  RC_ASSERT(import.taken.size() == 1u);
  const ShelfYarn& back = import.taken[0].entry;
  for (const ShelfFieldRow& row : shelf_field_rows())
    RC_ASSERT(field_text(back, row.field) == field_text(entry, row.field));
  RC_ASSERT(back.yarn.put_up.length->value == yarn.put_up.length->value);
  RC_ASSERT(back.yarn.price->amount.value == yarn.price->amount.value);
}

TEST(ShelfSample, is_read_without_a_doubt_and_all_of_it_is_invented) {
  const auto table =
      read_shelf_table(testing::project_text("sample-data/shelf/yarns.csv"), "yarns.csv").value();
  for (const ShelfColumn& column : table.columns) EXPECT_TRUE(column.known) << column.heading;
  const ShelfImport import = read_shelf_rows(table, table.columns);
  EXPECT_TRUE(import.failed.empty());
  EXPECT_GE(import.taken.size(), 300u);
  std::size_t without_length = 0, owned = 0, without_fibre = 0;
  for (const auto& taken : import.taken) {
    for (const Error& doubt : taken.doubts) ADD_FAILURE() << doubt.message();
    EXPECT_TRUE(taken.entry.invented);
    without_length += !taken.entry.yarn.put_up.length;
    without_fibre += taken.entry.yarn.composition.empty();
    owned += is_owned(taken.entry);
  }
  EXPECT_GT(without_length, 0u);
  EXPECT_GT(without_fibre, 0u);
  EXPECT_GT(owned, 50u);
}

// A list kept in a spreadsheet, in Windows' encoding, with yards, ounces, semicolons and commas for decimals.
TEST(ShelfSample, of_a_notebook_is_read_with_its_doubts_told) {
  const std::string bytes = testing::project_text("sample-data/shelf/notebook.csv");
  const auto table = read_shelf_table(bytes, "notebook.csv").value();
  EXPECT_EQ(table.encoding, "WINDOWS-1252");
  EXPECT_EQ(table.separator, ';');
  const ShelfImport import = read_shelf_rows(table, table.columns);
  ASSERT_EQ(import.taken.size(), 6u);
  EXPECT_NEAR(import.taken[0].entry.yarn.put_up.length->value.value(), 191 * 0.9144, 1e-9);
  EXPECT_EQ(import.taken[0].entry.yarn.price->currency, "€");
  EXPECT_EQ(import.taken[0].entry.note, "Bought: at the fair");
  ASSERT_EQ(import.taken[3].doubts.size(), 2u);
  EXPECT_EQ(import.taken[3].doubts[0].place, (Place{"notebook.csv", 5, 33}));
  EXPECT_NE(import.taken[3].doubts[0].message().find("“ca. 183” in the column “Yardage”"), std::string::npos);
  EXPECT_NE(import.taken[3].entry.note.find("Yardage: ca. 183"), std::string::npos);
  EXPECT_NE(import.taken[3].doubts[1].message().find("currency"), std::string::npos);
}

TEST(ShelfFields, refuse_without_changing_the_entry) {
  ShelfYarn entry;
  entry.yarn.name = "A";
  entry.yarn.put_up.length = Entered<Metres>{metres(175), "175 m"};
  const ShelfYarn before = entry;
  const std::pair<ShelfField, const char*> bad[] = {
      {ShelfField::length, "12 parsecs"},  {ShelfField::length, "-5 m"},
      {ShelfField::weight, "0 g"},         {ShelfField::put_up, "much"},
      {ShelfField::put_up, "50/175"},      {ShelfField::price, "7.90"},
      {ShelfField::price, "cheap"},        {ShelfField::price, "€7 GBP"},
      {ShelfField::currency, "EUR"},       {ShelfField::spinning, "spun"},
      {ShelfField::skeins_owned, "-1"},    {ShelfField::owned, "3 skeins + 4 skeins"},
      {ShelfField::band_stitches, "many"}, {ShelfField::band_needle, "US 99"},
      {ShelfField::invented, "perhaps"},   {ShelfField::lightness, "101"},
      {ShelfField::composition, "75 wool"}};
  for (const auto& [field, text] : bad) {
    const auto read = read_field(entry, field, text);
    EXPECT_FALSE(read) << text;
    EXPECT_EQ(entry, before) << text;
  }
  ASSERT_TRUE(read_field(entry, ShelfField::length, " "));
  EXPECT_FALSE(entry.yarn.put_up.length) << "an empty text clears";
}

}  // namespace
}  // namespace skeinproof
