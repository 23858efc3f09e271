// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/write_block.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <map>

#include "core/base/text.h"
#include "core/manuscript/house_styles.h"
#include "core/units/read.h"
#include "tests/core/manuscript/block_samples.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using ::testing::Contains;
using testing::golden;
using ::testing::HasSubstr;
using ::testing::Not;
using testing::Sample;
using testing::socks_sample;
using testing::yoke_sample;

std::string block_text(const Sample& sample, const HouseStyle& house) {
  return write_block(sample.pattern, sample.assessment, house).text();
}

std::vector<std::string> missing_in(const Sample& sample, const HouseStyle& house) {
  std::vector<std::string> all;
  for (const MissingFact& fact : write_block(sample.pattern, sample.assessment, house).missing)
    all.push_back(fact.what);
  return all;
}

std::string file_name(std::string_view sample, std::string_view style) {
  std::string name = std::string(sample) + "_";
  for (const char c : lower_ascii(style))
    if (c != ',') name += c == ' ' ? '_' : c;
  return name + ".txt";
}

constexpr const char* yoke_block =
    "Oddmere Fieldspun (100% wool; 175 m / 191 yd per 50 g / 1¾ oz skein): untreated, woollen-spun 2-ply, "
    "sport weight, matte, heathered.\n"
    "  MC  Peat 08    5 (5, 6, 7) (7, 8, 9, 9, 10) skeins\n"
    "  CC1 Lichen 21  2 (2, 2, 2) (2, 2, 2, 2, 2) skeins\n"
    "  CC2 Gorse 33   1 (1, 1, 1) (1, 1, 1, 1, 1) skein\n"
    "  CC3 Ember 40   1 (1, 1, 1) (1, 1, 1, 1, 1) skein (at most 80 m / 87 yd needed in any size)";

TEST(WriteBlock, DefaultStyleCharacterForCharacter) {
  EXPECT_EQ(block_text(yoke_sample(), HouseStyle{}), yoke_block);
}

// The same from the samples as they are kept, with needs worked out from their stitches.
TEST(WriteBlock, FromTheWorkedOutNeedsOfTheSamples) {
  const Pattern yoke = testing::quillmarsh();
  EXPECT_EQ(write_block(yoke, assess(yoke), HouseStyle{}).text(), yoke_block);
  const Pattern socks = testing::lampwick();
  EXPECT_THAT(write_block(socks, assess(socks), HouseStyle{}).text(),
              ::testing::EndsWith("\n  MC Soot 204      1 (1, 1, 1, 1) ball\n"
                                  "  CC Marigold 311  1 (1, 1, 2, 2) balls"));
}

TEST(WriteBlock, ReadyStylesAsLaidDown) {
  for (const HouseStyle& house : ready_house_styles()) {
    EXPECT_EQ(block_text(yoke_sample(), house) + "\n", golden(file_name("yoke", house.name))) << house.name;
    EXPECT_EQ(block_text(socks_sample(), house) + "\n", golden(file_name("socks", house.name))) << house.name;
  }
}

TEST(WriteBlock, NothingIsMissingFromACompletePattern) {
  for (const HouseStyle& house : ready_house_styles())
    EXPECT_TRUE(missing_in(yoke_sample(), house).empty()) << house.name;
}

// One choice changed from the default, and what the block of the yoke (or the socks) then says.
struct Choice {
  const char* name;
  void (*choose)(HouseStyle&);
  const char* says;
  bool socks = false;
};

const Choice choices[] = {
    {"imperial first", [](HouseStyle& h) { h.systems = SystemOrder::imperial_first; },
     "191 yd / 175 m per 1¾ oz / 50 g skein"},
    {"metric only", [](HouseStyle& h) { h.systems = SystemOrder::metric_only; },
     "wool; 175 m per 50 g skein)"},
    {"imperial only", [](HouseStyle& h) { h.systems = SystemOrder::imperial_only; },
     "wool; 191 yd per 1¾ oz skein)"},
    {"second system in brackets", [](HouseStyle& h) { h.second_system = SecondSystem::in_brackets; },
     "175 m [191 yd] per 50 g [1¾ oz] skein"},
    {"decimal comma",
     [](HouseStyle& h) {
       h.mark = DecimalMark::comma;
       h.order.insert(h.order.begin(), BlockElement::sizes);
     },
     "15 (17,5; 20; 22,5; 25) cm", true},
    {"slashed fractions",
     [](HouseStyle& h) {
       h.fractions = FractionStyle::slashed;
       h.order.insert(h.order.begin(), BlockElement::sizes);
     },
     "6 (7, 7 3/4, 8 3/4, 9 3/4) in", true},
    {"slashed fractions in a list of slashes",
     [](HouseStyle& h) {
       h.fractions = FractionStyle::slashed;
       h.brackets = SizeBrackets::slashes;
       h.order.insert(h.order.begin(), BlockElement::sizes);
     },
     "6 / 7 / 7 3/4 / 8 3/4 / 9 3/4 in", true},
    {"slashed ounces", [](HouseStyle& h) { h.ounces = FractionStyle::slashed; }, "50 g / 1 3/4 oz"},
    {"decimal ounces", [](HouseStyle& h) { h.ounces = FractionStyle::decimal; }, "50 g / 1.75 oz"},
    {"one bracket", [](HouseStyle& h) { h.brackets = SizeBrackets::one_bracket; },
     "5 (5, 6, 7, 7, 8, 9, 9, 10) skeins"},
    {"colons", [](HouseStyle& h) { h.brackets = SizeBrackets::colons; }, "5[5:6:7:7:8:9:9:10] skeins"},
    {"slashes", [](HouseStyle& h) { h.brackets = SizeBrackets::slashes; }, "5/5/6/7/7/8/9/9/10 skeins"},
    {"commas", [](HouseStyle& h) { h.brackets = SizeBrackets::commas; }, "5, 5, 6, 7, 7, 8, 9, 9, 10 skeins"},
    {"in grams", [](HouseStyle& h) { h.counted_in = CountedIn::grams; },
     "225 (245, 281, 306) (344, 373, 411, 440, 481) g / "},
    {"in grams, a little colour", [](HouseStyle& h) { h.counted_in = CountedIn::grams; },
     "13.7 (14.6, 15.9, 16.7) (18.0, 18.9, 20.2, 21.0, 22.3) g / "},
    {"in metres", [](HouseStyle& h) { h.counted_in = CountedIn::metres; },
     "788 (857, 982, 1070) (1203, 1304, 1437, 1541, 1682) m / 862 ("},
    {"unit on each value", [](HouseStyle& h) { h.unit_word = UnitWord::on_each_value; },
     "311  1 ball (1 ball, 1 ball, 2 balls, 2 balls)", true},
    {"own word", [](HouseStyle& h) { h.skein_word = "pull"; }, "50 g / 1¾ oz pull)"},
    {"own word, its plural", [](HouseStyle& h) { h.skein_word = "pull"; }, "9, 10) pulls"},
    {"own plural",
     [](HouseStyle& h) {
       h.skein_word = "loaf";
       h.skein_word_plural = "loaves";
     },
     "9, 10) loaves"},
    {"role after shade", [](HouseStyle& h) { h.role_place = RolePlace::after_shade; },
     "  Peat 08   (MC)   5 (5"},
    {"number sign", [](HouseStyle& h) { h.shade_number = ShadeNumber::with_number_sign; }, "MC  Peat #08 "},
    {"no. before the number", [](HouseStyle& h) { h.shade_number = ShadeNumber::with_no_dot; },
     "MC  Peat no. 08 "},
    {"no shade number", [](HouseStyle& h) { h.shade_number = ShadeNumber::left_out; }, "  MC  Peat    5 (5"},
    {"roles parted by semicolons", [](HouseStyle& h) { h.role_separator = RoleSeparator::semicolon; },
     "  MC Soot 204: 1 (1, 1, 1, 1) ball; CC Marigold 311: 1 (1, 1, 2, 2) balls.", true},
    {"roles parted by commas", [](HouseStyle& h) { h.role_separator = RoleSeparator::comma; },
     "  MC Soot 204: 1 (1, 1, 1, 1) ball, CC Marigold 311: 1 (1, 1, 2, 2) balls.", true},
    {"not aligned", [](HouseStyle& h) { h.align_roles = false; }, "\n  MC Peat 08: 5 (5"},
    {"no length note", [](HouseStyle& h) { h.length_notes = false; }, "1, 1, 1, 1, 1) skein"},
    {"words of the note", [](HouseStyle& h) { h.length_note_words = "{metres} or {yards} will do"; },
     "skein (80 m or 87 yd will do)"},
    {"total line",
     [](HouseStyle& h) {
       h.total_line = true;
       h.total_words = "In all";
     },
     "\nIn all 9 (9, 10, 11) (11, 12, 13, 13, 14) skeins."},
    {"metres of every colour", [](HouseStyle& h) { h.metres_line = true; },
     "\n                 needs 186 (199, 216, 229) (248, 261, 280, 292, 311) m / 203 ("},
    {"order of the description",
     [](HouseStyle& h) {
       h.description = {DescriptionElement::category, DescriptionElement::treatment};
     },
     "skein): sport weight, untreated."},
    {"US words", [](HouseStyle& h) { h.category_words = CategoryWords::united_states; }, ", fingering weight",
     true},
    {"UK words", [](HouseStyle& h) { h.category_words = CategoryWords::united_kingdom; },
     ", light DK weight"},
    {"ply numbers", [](HouseStyle& h) { h.category_words = CategoryWords::ply_number; }, ", 5-ply weight"},
    {"nylon", [](HouseStyle& h) { h.fibre_names = FibreNames::generic_nylon; },
     "75% superwash wool, 25% nylon", true},
    {"polyamide", [](HouseStyle& h) { h.fibre_names = FibreNames::generic_polyamide; }, "25% polyamide",
     true},
    {"needles",
     [](HouseStyle& h) {
       h.order.push_back(BlockElement::needles);
       h.needles_old_uk = h.needles_japanese = true;
     },
     "Needles: 3.25 mm (US 3, old UK 10, Japanese 4) for stocking stitch, 3.5 mm (US 4, Japanese 5) for "
     "stranded"},
    {"needles without millimetres",
     [](HouseStyle& h) {
       h.order.push_back(BlockElement::needles);
       h.needles_metric = false;
     },
     "Needles: US 3 for stocking stitch"},
    {"washed",
     [](HouseStyle& h) {
       h.order.push_back(BlockElement::gauge);
       h.washed_words = "washed and dried flat";
     },
     "Gauge: 26 sts and 34 rounds = 10 cm / 4 in in stocking stitch, washed and dried flat; 26 sts and 30 "
     "rounds"},
};

TEST(WriteBlock, EveryChoiceHasItsEffect) {
  for (const Choice& choice : choices) {
    const Sample sample = choice.socks ? socks_sample() : yoke_sample();
    HouseStyle house;
    choice.choose(house);
    EXPECT_THAT(block_text(sample, house), HasSubstr(choice.says)) << choice.name;
    EXPECT_NE(house, HouseStyle{}) << choice.name;
  }
}

TEST(WriteBlock, NoNoteWhereNoneIsWanted) {
  HouseStyle house;
  house.length_notes = false;
  EXPECT_THAT(block_text(yoke_sample(), house), Not(HasSubstr("at most")));
}

TEST(WriteBlock, UnknownCountsAreDashesAndListed) {
  Sample sample = yoke_sample();
  sample.assessment.roles[1].sizes[3] = SizeNeed{};
  sample.assessment.roles[1].sizes[3].missing = "rows of the yoke";
  sample.assessment.roles[3].sizes.clear();
  HouseStyle house;
  house.total_line = true;
  const std::string text = block_text(sample, house);
  EXPECT_THAT(text, HasSubstr("CC1 Lichen 21  2 (2, 2, –) (2, 2, 2, 2, 2) skeins\n"));
  EXPECT_THAT(text, HasSubstr("CC3 Ember 40   – (–, –, –) (–, –, –, –, –) skeins"));
  EXPECT_THAT(text, HasSubstr("Total – (–, –, –) (–, –, –, –, –) skeins."));
  EXPECT_THAT(missing_in(sample, house), Contains("skeins of CC1 in size 4: rows of the yoke"));
  EXPECT_THAT(missing_in(sample, house), Contains("skeins of CC3: not worked out"));
  EXPECT_EQ(missing_in(sample, house).size(), 2u);
}

TEST(WriteBlock, UnknownFactsOfAYarnAreLeftOutAndListed) {
  Sample sample = yoke_sample();
  Yarn& yarn = sample.pattern.yarns.front();
  yarn.put_up.length.reset();
  yarn.composition.clear();
  yarn.surface.clear();
  yarn.colouring.clear();
  yarn.category.clear();
  sample.pattern.roles[0].shade = {};
  for (SizeNeed& size : sample.assessment.roles[0].sizes) size.skeins.reset();
  const std::string text = block_text(sample, HouseStyle{});
  EXPECT_THAT(text, HasSubstr("Oddmere Fieldspun (50 g / 1¾ oz skein): untreated, woollen-spun 2-ply.\n"));
  EXPECT_THAT(text, HasSubstr("  MC             – (–, –, –)"));
  const auto missing = missing_in(sample, HouseStyle{});
  for (const char* what : {"fibres of Oddmere Fieldspun", "length in a skein of Oddmere Fieldspun",
                           "shade of MC", "skeins of MC: length in a skein",
                           "description of Oddmere Fieldspun: weight name, surface, colouring"})
    EXPECT_THAT(missing, Contains(what));
}

TEST(WriteBlock, AWithdrawnYarnSaysSo) {
  Sample sample = socks_sample();
  sample.pattern.yarns.front().withdrawn = true;
  HouseStyle house;
  house.withdrawn_words = "discontinued";
  EXPECT_THAT(block_text(sample, house), HasSubstr("fingering weight; discontinued.\n"));
}

TEST(WriteBlock, EachYarnLeadsItsRoles) {
  Sample sample = socks_sample();
  Yarn other = sample.pattern.yarns.front();
  other.id = YarnId{++sample.pattern.last_id};
  other.name = "Cobbleside";
  sample.pattern.yarns.push_back(other);
  sample.pattern.roles[1].yarn = other.id;
  sample.pattern.roles[1].strands = 2;
  const std::string text = block_text(sample, HouseStyle{});
  const auto first = text.find("Nibthorpe Sock (");
  const auto mc = text.find("  MC Soot 204  1 (");
  const auto second = text.find("Cobbleside (");
  const auto cc = text.find("  CC Marigold 311  1 (1, 1, 2, 2) balls (held double)");
  ASSERT_NE(cc, std::string::npos) << text;
  EXPECT_TRUE(first < mc && mc < second && second < cc) << text;

  HouseStyle apart;
  apart.order = {BlockElement::roles, BlockElement::yarn};
  EXPECT_THAT(block_text(sample, apart),
              ::testing::StartsWith("MC Nibthorpe Sock Soot 204  1 (1, 1, 1, 1) ball\n"
                                    "CC Cobbleside Marigold 311  1 (1, 1, 2, 2) balls"));
}

TEST(WriteBlock, ARoleWithoutYarnIsShownAndListed) {
  Sample sample = socks_sample();
  sample.pattern.roles[1].yarn = {};
  EXPECT_THAT(block_text(sample, HouseStyle{}), HasSubstr("\n–:\n  CC Marigold 311  1 (1, 1, 2, 2) skeins"));
  EXPECT_THAT(missing_in(sample, HouseStyle{}), Contains("yarn of CC"));
}

TEST(WriteBlock, OneColourOneSize) {
  Sample sample = socks_sample();
  sample.pattern.sizes.resize(1);
  sample.pattern.roles.resize(1);
  sample.pattern.roles[0].label.clear();
  sample.pattern.roles[0].shade = {};
  sample.assessment.roles.resize(1);
  sample.assessment.roles[0].sizes.resize(1);
  HouseStyle house;
  EXPECT_THAT(block_text(sample, house), ::testing::EndsWith("weight.\n  1 ball"));
  house.role_separator = RoleSeparator::semicolon;
  EXPECT_THAT(block_text(sample, house), ::testing::EndsWith("weight.\n  1 ball."));
}

TEST(WriteBlock, NotionsOfAllSizes) {
  Sample sample = socks_sample();
  Notion button{"buttons", {}, {}};
  for (std::size_t i = 0; i < 5; ++i) button.count.set(i, Entered<double>{i < 2 ? 4.0 : 6.0, {}});
  Notion zip{"zip", {}, {}};
  for (std::size_t i = 0; i < 5; ++i) zip.count.set(i, Entered<double>{1, {}});
  sample.pattern.notions = {button, zip, {"bead", {}, {}}};
  HouseStyle house;
  house.order.push_back(BlockElement::notions);
  EXPECT_THAT(block_text(sample, house), HasSubstr("Notions: 4 (4, 6, 6, 6) buttons; 1 zip; – bead."));
  EXPECT_THAT(missing_in(sample, house), Contains("number of bead"));
}

TEST(WriteBlock, RunsSayWhatTheyAre) {
  const Sample sample = yoke_sample();
  const BlockText block = write_block(sample.pattern, sample.assessment, HouseStyle{});
  std::map<BlockPart, std::vector<std::string>> by_part;
  for (const BlockLine& line : block.lines)
    for (const BlockRun& run : line) by_part[run.part].push_back(run.text);
  EXPECT_THAT(by_part[BlockPart::yarn_name], ::testing::ElementsAre("Oddmere Fieldspun"));
  EXPECT_THAT(by_part[BlockPart::put_up], ::testing::ElementsAre("175 m / 191 yd per 50 g / 1¾ oz skein"));
  EXPECT_THAT(by_part[BlockPart::role], ::testing::ElementsAre("MC", "CC1", "CC2", "CC3"));
  EXPECT_THAT(by_part[BlockPart::counts], Contains("5 (5, 6, 7) (7, 8, 9, 9, 10)"));
  EXPECT_THAT(by_part[BlockPart::length_note],
              ::testing::ElementsAre("at most 80 m / 87 yd needed in any size"));
}

// Whatever the counts and the style, the printed list reads back to the counts.
RC_GTEST_PROP(WriteBlock, CountsReadBack, ()) {
  Sample sample = yoke_sample();
  HouseStyle house;
  house.brackets = *rc::gen::elementOf(
      std::vector<SizeBrackets>{SizeBrackets::grouped, SizeBrackets::one_bracket, SizeBrackets::colons,
                                SizeBrackets::slashes, SizeBrackets::commas});
  house.role_separator = *rc::gen::elementOf(
      std::vector<RoleSeparator>{RoleSeparator::new_line, RoleSeparator::semicolon, RoleSeparator::comma});
  const auto roles = sample.assessment.roles.size();
  std::vector<std::vector<std::optional<std::string>>> counts(roles);
  for (std::size_t r = 0; r < roles; ++r)
    for (SizeNeed& size : sample.assessment.roles[r].sizes) {
      const int count = *rc::gen::inRange(0, 30);
      size.known = count > 0;
      size.skeins = count;
      counts[r].push_back(size.known ? std::optional(std::to_string(count)) : std::nullopt);
    }
  std::vector<std::string> printed;
  for (const BlockLine& line : write_block(sample.pattern, sample.assessment, house).lines)
    for (const BlockRun& run : line)
      if (run.part == BlockPart::counts) printed.push_back(run.text);
  RC_ASSERT(printed.size() == roles);
  for (std::size_t r = 0; r < roles; ++r) {
    const auto read = read_size_list(printed[r], sample.pattern.sizes.size());
    RC_ASSERT(read.has_value());
    RC_ASSERT(read->values == counts[r]);
  }
}

}  // namespace
}  // namespace skeinproof
