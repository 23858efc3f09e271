// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/manuscript/facts_as_read.h"
#include "core/pattern/edits.h"
#include "tests/core/manuscript/said.h"

namespace skeinproof {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using testing::said;
using Kind = StatementKind;

TEST(ReadPutUps, in_either_system_and_any_order) {
  const std::vector<std::string> texts = {
      "Oddmere Fieldspun (100% wool; 175 m / 191 yd per 50 g / 1¾ oz skein)",
      "Oddmere Fieldspun, 100% wool, 50 g / 1.75 oz = 175 m / 191 yd",
      "Yarn: Oddmere Fieldspun; 50g balls, approx 191yds (175m), wool 100%",
      "Oddmere Fieldspun – 100 % wool – 191 yd (175 m) to 1 3/4 oz (50 g)",
      "Oddmere Fieldspun (wool 100%), each 50-g ball approx. 175 metres/191 yards",
      "Oddmere Fieldspun is 100 percent wool with 175 m in 50 g"};
  for (const std::string& text : texts) {
    EXPECT_THAT(said(text, Kind::yarn_name), ElementsAre("Oddmere Fieldspun")) << text;
    EXPECT_THAT(said(text, Kind::put_up_length), ::testing::Contains("175 m")) << text;
    EXPECT_THAT(said(text, Kind::put_up_weight), ::testing::Contains("50 g")) << text;
    EXPECT_THAT(said(text, Kind::fibre), ElementsAre("wool 100 %")) << text;
    EXPECT_THAT(said(text, Kind::count), IsEmpty()) << text;
  }
}

TEST(ReadPutUps, metres_and_grams_of_one_yarn_share_a_breath) {
  const Reading reading =
      read_manuscript("Oddmere Fieldspun (100% wool; 175 m / 191 yd per 50 g / 1¾ oz skein)");
  std::vector<int> mentions;
  for (const Statement& statement : reading.statements)
    if (statement.kind == Kind::put_up_length || statement.kind == Kind::put_up_weight)
      mentions.push_back(statement.mention);
  ASSERT_EQ(mentions.size(), 4U);
  EXPECT_THAT(mentions, ::testing::Each(mentions.front()));
}

TEST(ReadYarns, each_with_its_own_facts) {
  const Reading reading = read_manuscript(
      "Hold one strand of Bramscote Lace (100% alpaca, 25 g = 200 m) and one strand of Tarrowfell Halo (70% "
      "mohair, "
      "30% silk; 25 g = 210 m) together.");
  std::vector<int> yarns;
  for (const Statement& statement : reading.statements)
    if (statement.kind == Kind::fibre) yarns.push_back(statement.yarn);
  EXPECT_THAT(yarns, ElementsAre(0, 1, 1));
}

struct NamedYarn {
  std::string text, name;
  std::vector<std::string> length;
};
TEST(ReadYarns, named_beside_what_is_said_of_them) {
  const std::vector<NamedYarn> cases = {
      {"8 (8, 9) x 50 g balls of Grebe 4 ply, 100% wool, approx 181 m per ball", "Grebe", {"181 m"}},
      {"2 (2, 3) 50g balls of Dumpling Baby 4ply (55% merino, 45% bamboo, 185 m)",
       "Dumpling Baby",
       {"185 m"}},
      {"1 x 100 g skein (220 m / 241 yd) of Rookhope DK, 100% merino", "Rookhope DK", {"220 m", "241 yd"}},
      {"5 (6) skeins Larkfield Worsted in Juniper (100% wool; 200 m per 100 g)",
       "Larkfield Worsted",
       {"200 m"}},
      {"YARN  Grasmoor Aran 10 (11) x 100g in Slate 17", "Grasmoor Aran", {}},
      {"Yarn: 12 balls (600 g) Skarn Chunky. 85 m per ball.", "Skarn Chunky", {"85 m"}},
      {"Yarn: 4 (5) hanks of Marl DK (200 m/100 g; 100% wool)", "Marl DK", {"200 m"}},
      {"The yarn is Oddmere Fieldspun (a woollen-spun 2ply, 100% wool, 175m per 50g).",
       "Oddmere Fieldspun",
       {"175 m"}}};
  for (const NamedYarn& c : cases) {
    EXPECT_THAT(said(c.text, Kind::yarn_name), ElementsAre(c.name)) << c.text;
    EXPECT_THAT(said(c.text, Kind::put_up_length), ::testing::ElementsAreArray(c.length)) << c.text;
    for (const Statement& statement : read_manuscript(c.text).statements)
      EXPECT_EQ(statement.yarn, 0) << c.text << ": " << word_of(statement.kind);
  }
}

TEST(ReadYarns, roles_of_a_clause_are_in_the_yarn_it_names) {
  const Reading reading = read_manuscript(
      "Yarn A: 1 hank Thistlecombe Lace (100% alpaca; 800 m/100 g)\n"
      "Yarn B: 3 balls Thistlecombe Haze (100% mohair; 210 m/25 g)\n");
  for (const Statement& statement : reading.statements)
    if (statement.kind == Kind::role || statement.kind == Kind::count) {
      EXPECT_EQ(statement.yarn, statement.subject == "B" || statement.words == "B" ? 1 : 0);
    }
}

TEST(ReadYarns, another_yarn_that_would_do_describes_none) {
  EXPECT_THAT(said("Yarn: Merle Fingering (400 m / 100 g) or any aran yarn", Kind::yarn_description),
              IsEmpty());
}

TEST(ReadYarns, descriptions_by_what_they_describe) {
  EXPECT_THAT(
      said("Yarn: Oddmere Fieldspun (100% wool; 175 m per 50 g), tightly twisted worsted-spun 3-ply, DK "
           "weight, "
           "smooth, hand-dyed semi-solid, superwash",
           Kind::yarn_description),
      ElementsAre("twist: tightly twisted", "spinning: worsted-spun", "structure: 3-ply", "category: DK",
                  "surface: smooth", "colouring: hand-dyed semi-solid", "treatment: superwash"));
}

struct RoleCase {
  const char* name;
  std::string line, role, shade, number, count;
};
void PrintTo(const RoleCase& c, std::ostream* out) { *out << c.name; }
class ReadRoles : public ::testing::TestWithParam<RoleCase> {};
TEST_P(ReadRoles, with_shade_and_count) {
  const RoleCase& c = GetParam();
  const std::string text = "Yarn: Oddmere Fieldspun (100% wool; 175 m per 50 g)\n" + c.line;
  EXPECT_THAT(said(text, Kind::role), ElementsAre(c.role));
  EXPECT_THAT(said(text, Kind::shade_name), ElementsAre(c.role + ": " + c.shade));
  if (!c.number.empty()) {
    EXPECT_THAT(said(text, Kind::shade_number), ElementsAre(c.role + ": " + c.number));
  }
  EXPECT_THAT(said(text, Kind::count), ElementsAre(c.role + ": " + c.count));
}
INSTANTIATE_TEST_SUITE_P(
    styles, ReadRoles,
    ::testing::Values(
        RoleCase{"plain", "MC Peat 08: 5 (5, 6) skeins", "MC", "Peat", "08", "5 (5 6 skeins"},
        RoleCase{"bracket_behind", "Peat 08 (MC): 5 (5, 6) skeins", "MC", "Peat", "08", "5 (5 6 skeins"},
        RoleCase{"times", "Peat (MC) x 5[5:6] balls", "MC", "Peat", "", "5 (5 6 skeins"},
        RoleCase{"in_words", "Main colour (MC): Peat, shade 08, 5 (5, 6) balls", "MC", "Peat", "08",
                 "5 (5 6 skeins"},
        RoleCase{"number_sign", "CC1: Peat Moss #08 – 5 (5, 6) balls", "CC1", "Peat Moss", "08",
                 "5 (5 6 skeins"},
        RoleCase{"colour_letter", "Colour A (Peat, no. 08): 5 (5, 6) balls", "A", "Peat", "08",
                 "5 (5 6 skeins"},
        RoleCase{"letter", "A: Peat 08, 5 (5, 6) balls", "A", "Peat", "08", "5 (5 6 skeins"},
        RoleCase{"numbered", "Color 1 – Peat: 5 (5, 6) skeins", "Color 1", "Peat", "", "5 (5 6 skeins"},
        RoleCase{"number_before_the_role", "Peat no. 08 (MC): 1 skein", "MC", "Peat", "08", "1 skeins"},
        RoleCase{"shade_number_before_the_role", "Peat, shade 08 (A)  5, 5, 6 balls", "A", "Peat", "08",
                 "5 5 6 skeins"},
        RoleCase{"both_in_brackets", "Peat (08) (MC): 1 skein", "MC", "Peat", "08", "1 skeins"},
        RoleCase{"count_first", "5 (5, 6) balls in Peat 08 (MC)", "MC", "Peat", "08", "5 (5 6 skeins"},
        RoleCase{"metres", "MC Peat 08: 800 (860, 980) m", "MC", "Peat", "08", "800 (860 980 m"},
        RoleCase{"grams_of_skeins", "MC Peat 08: 5 (5, 6) x 50 g balls", "MC", "Peat", "08",
                 "5 (5 6 skeins"}),
    [](const auto& one) { return std::string(one.param.name); });

TEST(ReadRoles, one_behind_another) {
  const std::string yarn = "Yarn: Oddmere Fieldspun (100% wool; 175 m per 50 g)\n";
  const std::string counts[] = {"A Peat: 1 (1) skein, B Lichen 04: 2 (3) skeins",
                                "A Peat: 1 skein (1 skein), B Lichen 04: 2 skeins (3 skeins)",
                                "Balls of A – 1 (1). Balls of B – 2 (3)"};
  for (const std::string& line : counts)
    EXPECT_THAT(said(yarn + line, Kind::count), ElementsAre("A: 1 (1 skeins", "B: 2 (3 skeins")) << line;
  EXPECT_THAT(said(yarn + counts[0], Kind::shade_name), ElementsAre("A: Peat", "B: Lichen"));
  EXPECT_THAT(said(yarn + "Peat no. 03 (MC): 1 skein, Lichen no. 08 (CC): 2 skeins.", Kind::shade_number),
              ElementsAre("MC: 03", "CC: 08"));
  EXPECT_THAT(said(yarn + "Colour 21 (C): 1 skein", Kind::shade_number), ElementsAre("C: 21"));
}

TEST(ReadRoles, count_before_the_colour) {
  const std::string text =
      "You need 7-8-8 balls of colour 04 petrol and 1-1-2 balls of colour 11, Skarn Alpaca (65% wool, "
      "35% alpaca, 50 g = ca. 100 m)";
  EXPECT_THAT(said(text, Kind::count), ElementsAre("colour 04: 7 8 8 skeins", "colour 11: 1 1 2 skeins"));
  EXPECT_THAT(said(text, Kind::shade_name), ElementsAre("colour 04: petrol"));
  EXPECT_THAT(said(text, Kind::put_up_length), ElementsAre("100 m"));
  for (const Statement& statement : read_manuscript(text).statements) EXPECT_EQ(statement.yarn, 0);
}

TEST(ReadRoles, one_count_of_each) {
  const std::string text =
      "6 balls Pippin Cotton (100% cotton; 125 m per 50 g): 2 balls each of Cream 01 (A), Sky 14 (B) and "
      "Sand 22 (C)\nApprox. 100 m of A is used for the border.";
  EXPECT_THAT(said(text, Kind::total_count), ElementsAre("6 skeins"));
  EXPECT_THAT(said(text, Kind::count), ElementsAre("A: 2 skeins", "B: 2 skeins", "C: 2 skeins"));
  EXPECT_THAT(said(text, Kind::shade_number), ElementsAre("A: 01", "B: 14", "C: 22"));
  EXPECT_THAT(said(text, Kind::length_note), ElementsAre("A, used: 100 m"));
}

TEST(ReadRoles, shades_by_number_or_behind_their_label) {
  const std::string yarn = "Yarn: Oddmere Fieldspun (100% wool; 175 m per 50 g)\n";
  EXPECT_THAT(said(yarn + "Col. 12 Heath: 350 (400) g\nCol. 201 off-white 50 (50) g", Kind::shade_number),
              ElementsAre("12", "201"));
  EXPECT_THAT(said(yarn + "Col. 12 Heath: 350 (400) g\nCol. 201 off-white 50 (50) g", Kind::shade_name),
              ElementsAre("Heath", "off-white"));
  EXPECT_THAT(said(yarn + "4 (5) balls Main Colour (MC – Denim 32)", Kind::count),
              ElementsAre("MC: 4 (5 skeins"));
  EXPECT_THAT(said(yarn + "4 (5) balls Main Colour (MC – Denim 32)", Kind::shade_name),
              ElementsAre("MC: Denim"));
  EXPECT_THAT(said(yarn + "MC Peat: 5 skeins, Lichen: 2 skeins", Kind::count),
              ElementsAre("MC: 5 skeins", "2 skeins"));
  EXPECT_THAT(said(yarn + "MC  14  15  16   x 50 g", Kind::count), ElementsAre("MC: 14 15 16 skeins"));
}

TEST(ReadRoles, shade_numbers_in_a_column) {
  const std::string text =
      "Yarn: Skelda Shetland (100% wool; 108 m per 25 g)\n"
      "MC    FC 22       7     8     9\nA     FC 41       1     1     1\nB     202         2     2     2\n";
  EXPECT_THAT(said(text, Kind::shade_number), ElementsAre("MC: FC 22", "A: FC 41", "B: 202"));
  EXPECT_THAT(said(text, Kind::count), ElementsAre("MC: 7 8 9 skeins", "A: 1 1 1 skeins", "B: 2 2 2 skeins"));
}

TEST(ReadSamples, lengths_of_a_sample_are_left_to_be_told) {
  const Reading reading = read_manuscript("MC Peat: 5 skeins\nSample used approx. 310 m of MC in size 2.");
  ASSERT_EQ(reading.not_understood.size(), 1U);
}

TEST(ReadRoles, notes_beside_the_count) {
  const std::string yarn = "Yarn: Oddmere Fieldspun (100% wool; 175 m per 50 g)\n";
  EXPECT_THAT(
      said(yarn + "CC3 Ember 40: 1 skein (at most 80 m / 87 yd needed in any size)", Kind::length_note),
      ElementsAre("CC3, at most: 80 m", "CC3, at most: 87 yd"));
  EXPECT_THAT(said(yarn + "CC3 Ember 40: 1 skein; about 80 m", Kind::length_note),
              ElementsAre("CC3, about: 80 m"));
  EXPECT_THAT(said(yarn + "MC Peat: 5 skeins / 875 m", Kind::total_length), ElementsAre("MC: 875 m"));
  EXPECT_THAT(said(yarn + "MC Peat: 5 skeins\nTotal: 9 skeins", Kind::total_count), ElementsAre("9 skeins"));
  EXPECT_THAT(said(yarn + "MC Peat: 5 skeins\n9 skeins in total", Kind::total_count),
              ElementsAre("9 skeins"));
}

struct GaugeCase {
  std::string text;
  std::vector<std::string> stitches, rows, over;
};
TEST(ReadGauge, in_the_usual_wordings) {
  const std::vector<GaugeCase> cases = {
      {"Gauge 26 sts and 34 rounds = 10 cm / 4 in in stocking stitch",
       {"26 sts"},
       {"34 rows"},
       {"10 cm", "4 in"}},
      {"26 sts x 34 rows = 10cm", {"26 sts"}, {"34 rows"}, {"10 cm"}},
      {"Tension: 26 sts & 34 rows to 10 cm (4 in) over st st", {"26 sts"}, {"34 rows"}, {"10 cm", "4 in"}},
      {"Tension 24/32", {"24 sts"}, {"32 rows"}, {}},
      {"Gauge: 6½ sts per inch", {"6.5 sts"}, {}, {"1 in"}},
      {"Gauge (10 cm square): 21 sts, 29 rows", {"21 sts"}, {"29 rows"}, {"10 cm"}},
      {"Tension: 20,5 sts and 26 rows on 4,5 mm needles = 10 cm", {"20.5 sts"}, {"26 rows"}, {"10 cm"}}};
  for (const GaugeCase& c : cases) {
    EXPECT_THAT(said(c.text, Kind::gauge_stitches), ::testing::ElementsAreArray(c.stitches)) << c.text;
    EXPECT_THAT(said(c.text, Kind::gauge_rows), ::testing::ElementsAreArray(c.rows)) << c.text;
    EXPECT_THAT(said(c.text, Kind::gauge_over), ::testing::ElementsAreArray(c.over)) << c.text;
    EXPECT_THAT(said(c.text, Kind::measurement), IsEmpty()) << c.text;
  }
}

TEST(ReadNeedles, in_every_system) {
  EXPECT_THAT(
      said("Needles: 3.25 mm (US 3, old UK 10, JP 4) for body; US 2½ / 3 mm for ribs", Kind::needle),
      ElementsAre("body: 3.25 mm", "body: 3 US", "body: 10 UK", "body: 4 JP", "ribs: 2.5 US", "ribs: 3 mm"));
  EXPECT_THAT(said("Pair each No. 10 and No. 12 needles", Kind::needle), ElementsAre("10 UK", "12 UK"));
  EXPECT_THAT(said("Needles 2½ mm and 3 mm dpns (US 1½ and 2½)", Kind::needle),
              ElementsAre("2.5 mm", "3 mm", "1.5 US", "2.5 US"));
  EXPECT_THAT(said("4.5 mm nee-\ndles for ribs", Kind::needle), ElementsAre("ribs: 4.5 mm"));
  EXPECT_THAT(said("Needles US3 (3.25mm): 16\"/40 cm circular and DPNs", Kind::needle_length),
              ElementsAre("16 in", "40 cm"));
  EXPECT_THAT(said("Needles US3 (3.25mm): 16\"/40 cm circular and DPNs", Kind::needle_type),
              ElementsAre("circular", "DPNs"));
}

TEST(ReadMeasurements, with_names_fit_and_ease) {
  EXPECT_THAT(said("To fit bust 76 (84, 92) cm. Finished bust 81.5 (91, 100) cm.", Kind::measurement),
              ElementsAre("bust, to fit: 76 (84 92 cm", "bust, finished: 81.5 (91 100 cm"));
  EXPECT_THAT(said("Sizes 1 (2, 3)\nSleeve seam 43 (44, 45) cm / 17 (17¼, 17¾) in", Kind::measurement),
              ElementsAre("sleeve seam: 43 (44 45 cm", "sleeve seam: 17 (17.25 17.75 in"));
  EXPECT_THAT(said("Bust 81 (91) cm, to be worn with 5–10 cm positive ease", Kind::ease),
              ElementsAre("positive: 5 10 cm"));
}

TEST(ReadSamples, sizes_weights_and_models) {
  EXPECT_THAT(said("MC Peat: 5 skeins. Sample shown in size M weighs 356 g.", Kind::sample_size),
              ElementsAre("M"));
  EXPECT_THAT(said("MC Peat: 5 skeins. Sample shown in size M weighs 356 g.", Kind::sample_weight),
              ElementsAre("356 g"));
  EXPECT_THAT(said("MC Peat: 5 skeins. The sample used MC 261 g, CC1 57 g.", Kind::sample_weight),
              ElementsAre("MC: 261 g", "CC1: 57 g"));
  EXPECT_THAT(said("MC Peat: 5 skeins. Model has an 86 cm bust.", Kind::model_measure),
              ElementsAre("bust: 86 cm"));
}

TEST(ReadRemarks, notions_cautions_and_pieces) {
  const std::string text =
      "Nettle Jacket\nMC Peat: 5 skeins\nNotions: 6 (6, 7) buttons, 15 mm; stitch markers\n\nHOOD\nWith MC, "
      "cast on 52 (56, "
      "60) sts. Thread a cord through the hem.\nCaution: loose buttons are a choking hazard.\n";
  EXPECT_THAT(said(text, Kind::notion), ElementsAre("buttons: 6 (6 7 pieces", "stitch markers: "));
  EXPECT_THAT(said(text, Kind::piece_heading), ElementsAre("HOOD"));
  EXPECT_THAT(said(text, Kind::stitches), ElementsAre("cast on: 52 (56 60 sts"));
  EXPECT_THAT(said(text, Kind::role_mention), ::testing::SizeIs(1));
  EXPECT_THAT(said(text, Kind::extra), ElementsAre("cord"));
  EXPECT_THAT(said(text, Kind::caution), ::testing::SizeIs(1));
  EXPECT_THAT(said(text, Kind::title), ElementsAre("Nettle Jacket"));
  EXPECT_THAT(said(text, Kind::item), ElementsAre("jacket"));
}

TEST(ReadRemarks, of_common_hands) {
  EXPECT_THAT(said("MC Peat: 5 balls\nNotions: stitch markers (8), 3 buttons", Kind::notion),
              ElementsAre("stitch markers: 8 pieces", "buttons: 3 pieces"));
  EXPECT_THAT(
      said("Yarn: Cloudberry (100% wool), 150 m = 50 g. 5 (6) 7 balls, worked with 2 strands", Kind::count),
      ElementsAre("5 (6 7 skeins"));
  EXPECT_THAT(said("Yarn: Tarn DK (100% wool)\n4 mm\n22 sts, 28 rows", Kind::gauge_rows),
              ElementsAre("28 rows"));
  EXPECT_THAT(read_manuscript("1 pair each of 2¾ mm (No 12) and 3¼ mm (No 10) needles").not_understood,
              IsEmpty());
}

TEST(ReadParts, what_the_user_tells_wins) {
  const Reading reading =
      read_manuscript("Text: \"With CC4, work on.\"", {{TextPart::text, PartExtent::whole}});
  EXPECT_EQ(reading.extent(TextPart::text), PartExtent::whole);
  EXPECT_EQ(read_manuscript("Text: \"With CC4, work on.\"").extent(TextPart::text),
            PartExtent::quoted_in_part);
  EXPECT_EQ(read_manuscript("Instructions\nWith MC, cast on 52 sts.").extent(TextPart::text),
            PartExtent::whole);
  EXPECT_EQ(read_manuscript("").extent(TextPart::block), PartExtent::absent);
}

TEST(ReadTellings, a_statement_or_nothing) {
  const std::string text = "MC Peat: 5 skeins\nPlatzhalter 17 Knopf\nWindow seat, please 44 ahead";
  const Reading untold = read_manuscript(text);
  ASSERT_EQ(untold.not_understood.size(), 2U);
  EXPECT_EQ(words_at(text, untold.not_understood[0].span), "Platzhalter 17 Knopf");

  const Reading told = read_manuscript(
      text, {},
      {{"Platzhalter 17 Knopf", "notion", "buttons"}, {"Window seat, please 44 ahead", "nothing", ""}});
  ASSERT_EQ(told.not_understood.size(), 1U);
  EXPECT_TRUE(told.not_understood[0].told_nothing);
  const Statement& notion = told.statements.back();
  EXPECT_EQ(notion.kind, Kind::notion);
  EXPECT_EQ(notion.subject, "buttons");
  ASSERT_EQ(notion.values.size(), 1U);
  EXPECT_EQ(*notion.values[0].number, 17);
  EXPECT_EQ(words_at(text, notion.span), "Platzhalter 17 Knopf");
}

struct OtherLanguage {
  std::string language, text;
};
TEST(ReadOtherLanguages, are_said_and_only_figures_with_units_are_read) {
  const std::vector<OtherLanguage> blocks = {
      {"German",
       "Größe: S (M, L)\nGarn: Oddmere Fieldspun, 100 % Schurwolle, LL 175 m / 50 g\nMC Peat 08: 5 (6, 7) "
       "Knäuel\n"
       "Nadeln: Rundnadel 3,5 mm, 80 cm\nMaschenprobe: 26 M und 34 R = 10 x 10 cm glatt rechts\n"},
      {"French",
       "Tailles : S (M, L)\nFil : Oddmere Fieldspun, 100 % laine, 175 m par pelote de 50 g\nColoris Peat 08 "
       ": 5 "
       "(6, 7) pelotes\nAiguilles 3,5 mm\nÉchantillon : 26 m et 34 rgs = 10 cm en jersey endroit\n"},
      {"Spanish",
       "Tallas: S (M, L)\nHilo: Oddmere Fieldspun, 100 % lana, 175 m por ovillo de 50 g\nColor Peat 08: 5 "
       "(6, 7) "
       "ovillos\nAgujas: 3,5 mm circulares de 80 cm\nMuestra: 26 p. y 34 h. = 10 x 10 cm en punto jersey\n"}};
  for (const OtherLanguage& block : blocks) {
    const Reading reading = read_manuscript(block.text);
    EXPECT_THAT(words_on_language(reading), ::testing::HasSubstr("in " + block.language));
    EXPECT_EQ(reading.extent(TextPart::block), PartExtent::quoted_in_part);
    EXPECT_THAT(said(block.text, Kind::put_up_length), ElementsAre("175 m"));
    EXPECT_THAT(said(block.text, Kind::put_up_weight), ElementsAre("50 g"));
    EXPECT_THAT(said(block.text, Kind::needle), ElementsAre("3.5 mm"));
    EXPECT_EQ(said(block.text, Kind::fibre).size(), 1U);
    EXPECT_EQ(reading.statements.size(), 4U) << block.language;
    EXPECT_GE(reading.not_understood.size(), 4U);
    const FactsAsRead facts = facts_as_read(new_pattern(), block.text, reading);
    EXPECT_THAT(facts.left_out, ::testing::Contains(words_on_language(reading)));
  }
}

TEST(ReadOtherLanguages, an_english_block_with_a_foreign_name_is_english) {
  EXPECT_EQ(words_on_language(
                read_manuscript("Yarn: Garn Nadel Wool (100% wool; 175 m per 50 g)\nMC Peat: 5 balls\n"
                                "Needles: 3.5 mm\nGauge: 22 sts = 10 cm")),
            "");
}

TEST(ReadNothing, from_empty_text_letters_and_recipes) {
  for (const std::string text :
       {"", " \n\t ", "Dear Oonagh, thank you so much for the parcel, which came on the 14th.",
        "Rub 125 g of cold butter into 250 g of flour and add 2 eggs. Bake for 45 to 50 minutes."})
    EXPECT_THAT(read_manuscript(text).statements, IsEmpty()) << text;
  EXPECT_THAT(read_manuscript("Rub 125 g of cold butter into 250 g of flour.").not_understood,
              ::testing::SizeIs(1));
}

}  // namespace
}  // namespace skeinproof
