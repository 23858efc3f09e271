// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <random>

#include "core/manuscript/read_manuscript.h"
#include "tests/core/manuscript/corpus_blocks.h"

namespace skeinproof {
namespace {

// What must hold of the reading of any text.
void expect_sound(const std::string& text, const Reading& reading) {
  std::size_t begin = 0;
  ASSERT_EQ(reading.parts.size(), EnumWords<TextPart>::rows.size());
  for (const Statement& statement : reading.statements) {
    ASSERT_LE(begin, statement.span.begin);
    ASSERT_LT(statement.span.begin, statement.span.end) << word_of(statement.kind);
    ASSERT_LE(statement.span.end, text.size());
    begin = statement.span.begin;
    for (const PrintedValue& value : statement.values)
      ASSERT_TRUE(statement.span.holds(value.span)) << word_of(statement.kind);
  }
  for (const NotUnderstood& stretch : reading.not_understood) {
    ASSERT_LT(stretch.span.begin, stretch.span.end);
    ASSERT_LE(stretch.span.end, text.size());
  }
}

const std::vector<std::string> pieces = {
    "(",     ")",       "[",      "]",        ",",      ";",         ":",       "/",        "-",
    "–",     "\"",      "\n",     "\t",       "   ",    ".",         "1",       "1,5",      "½",
    "1 3/4", "08",      "MC",     "CC2",      "A",      "sizes",     "Size ",   "m",        " yd",
    " g",    "%",       " in",    " cm",      " mm",    " sts",      " rounds", "US ",      "UK ",
    "#",     "Peat",    "x",      " balls",   "skein",  "in ",       "and ",    "Text: \"", "Chart key: \"",
    "Gauge", "Needles", "to fit", "finished", "ease",   "shown in ", "Total ",  "at most ", "wool",
    "\xff",  "\xc3",    "\u00ad", "\u00a0",   "\u202f", "…",         "=",       "+",        "HOOD\n"};

std::string changed(std::string text, const std::string& other, std::mt19937& random) {
  const auto below = [&](std::size_t n) { return n == 0 ? 0 : random() % n; };
  for (std::size_t times = 1 + below(6); times > 0; --times) {
    const std::size_t at = below(text.size() + 1);
    switch (below(5)) {
      case 0:
        text.insert(at, pieces[below(pieces.size())]);
        break;
      case 1:
        text.erase(at, 1 + below(12));
        break;
      case 2:
        text.insert(at, text.substr(below(text.size() + 1), below(80)));
        break;
      case 3:
        text.insert(at, other.substr(below(other.size() + 1), below(120)));
        break;
      default:
        if (at < text.size()) text[at] = static_cast<char>(below(256));
    }
  }
  return text;
}

TEST(ReadManuscriptMutated, any_change_of_a_block_is_read) {
  std::mt19937 random(20250301);
  const auto blocks = testing::corpus_half("seen");
  ASSERT_FALSE(blocks.empty());
  for (int i = 0; i < 1500; ++i) {
    const std::string text =
        changed(blocks[random() % blocks.size()].text, blocks[random() % blocks.size()].text, random);
    SCOPED_TRACE(text);
    expect_sound(text, read_manuscript(text));
    if (::testing::Test::HasFatalFailure()) return;
  }
}

// Twenty kilobytes of each: work that grows as the square of the length would not end within the test.
TEST(ReadManuscriptMutated, long_rows_of_one_thing_are_read) {
  const std::string yarns = "Yarn: Peat Moss (100% wool). ";
  for (const std::string& unit : std::vector<std::string>{
           "(",           "((1",      "7",         "½",      "1,",      "1 (",      "1(1m",
           "1 m (1, ",    "-",        "1-",        ".",      " ",       "\t",       "\n",
           ";\n(",        "\"",       "Peat ",     "wool ",  "MC ",     "A ",       "Size M, ",
           "S (M ",       "Text: \"", "50% wool ", "Peat (", "1/",      "x-",       "MC Peat 08: 5 skeins ",
           "bust 5 cm ",  "12 m / ",  "26 sts ",   "US 3 ",  "With A ", "5 balls ", "button ",
           "caution MC ", "Peat, ",   "\xff",      yarns}) {
    std::string text;
    while (text.size() < 20000) text += unit;
    SCOPED_TRACE(unit);
    expect_sound(text, read_manuscript(text));
    if (::testing::Test::HasFatalFailure()) return;
  }
}

TEST(ReadManuscriptMutated, many_names_are_read) {
  std::string text;
  for (int i = 0; i < 1500; ++i)
    text += "Yarn: Peat" + std::to_string(i) + " Moss (100% wool). Colour " + std::to_string(i) +
            ": Fog, 1 ball.\n";
  expect_sound(text, read_manuscript(text));
}

}  // namespace
}  // namespace skeinproof
