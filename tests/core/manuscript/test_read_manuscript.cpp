// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/read_manuscript.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/core/manuscript/said.h"

namespace skeinproof {
namespace {

using ::testing::ElementsAre;
using testing::said;

const std::string yoke =
    R"(Sizes 1 (2, 3, 4) (5, 6, 7, 8, 9). Finished bust 81.5 (91, 100, 109) (120, 129, 145, 149, 160) cm / 32 (35¾, 39¼, 43) (47¼, 50¾, 55, 58¾, 63) in, 5–10 cm ease; shown in size 3, shades as listed.
Yarn: Oddmere Fieldspun (100% wool; 175 m / 197 yd per 50 g / 1¾ oz skein), untreated woollen-spun 2-ply, sport weight, matte, heathered. In four colours:
MC Peat 08: 5 (5, 6, 7) (8, 7, 9, 9, 10) skeins. CC1 Lichen 21: 1 (2, 2, 2) (2, 2, 2, 2, 2). CC2 Gorse 33: 1 (1, 1, 1) (1, 1, 1, 1). CC3 Ember 40: 1 (1, 1, 1) (1, 1, 1, 1, 1).
Total 9 (9, 10, 11) (11, 12, 13, 13, 14) skeins. Needles 3.25 mm (US 3) body, 3.5 mm (US 5) yoke, 3 mm (US 2½) ribs: 40, 80 cm circulars, DPNs.
Gauge 26 sts and 34 rounds = 10 cm / 4 in in stocking stitch; 26 sts in stranded pattern; washed. Chart key: "CC2 Goarse". Text: "With CC4, work 10 rounds rib; bind off.")";

const std::string socks =
    R"(Sizes 1 (2, 3, 4, 5). Foot circumference 15 (17.5, 20, 23.5, 25) cm / 6 (7, 7¾, 8¾, 9¾) in. Foot length 15.5 (19.5, 23, 30.5) cm.
Nibthorpe Sock (75% superwash wool, 30% polyamide; 210 yd / 230 m per 50 g / 1.76 oz ball), a tightly twisted single, four plies, fingering weight.
MC Soot 204: 1 (1, 1, 1, 1) ball (approx. 70 m / 77 yd used). CC Marigold 204: 1 (1, 1, 1, 1) ball. Needle 2.25 mm (US 1) circular, 40 cm / 16 in.
Gauge 32 sts and 24 rounds = 10 cm / 4 in in stocking stitch, washed. Shown in size 3, Soot and Marigold.)";

TEST(ReadManuscript, yarn_block_of_a_yoke) {
  EXPECT_THAT(said(yoke, StatementKind::size_labels), ElementsAre("1 (2 3 4 (5 6 7 8 9"));
  EXPECT_THAT(said(yoke, StatementKind::measurement),
              ElementsAre("bust, finished: 81.5 (91 100 109 (120 129 145 149 160 cm",
                          "bust, finished: 32 (35.75 39.25 43 (47.25 50.75 55 58.75 63 in"));
  EXPECT_THAT(said(yoke, StatementKind::ease), ElementsAre("5 10 cm"));
  EXPECT_THAT(said(yoke, StatementKind::yarn_name), ElementsAre("Oddmere Fieldspun"));
  EXPECT_THAT(said(yoke, StatementKind::fibre), ElementsAre("wool 100 %"));
  EXPECT_THAT(said(yoke, StatementKind::put_up_length), ElementsAre("175 m", "197 yd"));
  EXPECT_THAT(said(yoke, StatementKind::put_up_weight), ElementsAre("50 g", "1.75 oz"));
  EXPECT_THAT(said(yoke, StatementKind::yarn_description),
              ElementsAre("treatment: untreated", "spinning: woollen-spun", "structure: 2-ply",
                          "category: sport", "surface: matte", "colouring: heathered"));
  EXPECT_THAT(said(yoke, StatementKind::number_of_colours), ElementsAre("4"));
  EXPECT_THAT(said(yoke, StatementKind::count),
              ElementsAre("MC: 5 (5 6 7 (8 7 9 9 10 skeins", "CC1: 1 (2 2 2 (2 2 2 2 2 skeins",
                          "CC2: 1 (1 1 1 (1 1 1 1 skeins", "CC3: 1 (1 1 1 (1 1 1 1 1 skeins"));
  EXPECT_THAT(said(yoke, StatementKind::shade_name),
              ElementsAre("MC: Peat", "CC1: Lichen", "CC2: Gorse", "CC3: Ember"));
  EXPECT_THAT(said(yoke, StatementKind::shade_number),
              ElementsAre("MC: 08", "CC1: 21", "CC2: 33", "CC3: 40"));
  EXPECT_THAT(said(yoke, StatementKind::total_count), ElementsAre("9 (9 10 11 (11 12 13 13 14 skeins"));
  EXPECT_THAT(said(yoke, StatementKind::needle), ElementsAre("body: 3.25 mm", "body: 3 US", "yoke: 3.5 mm",
                                                             "yoke: 5 US", "ribs: 3 mm", "ribs: 2.5 US"));
  EXPECT_THAT(said(yoke, StatementKind::gauge_stitches), ElementsAre("26 sts", "26 sts"));
  EXPECT_THAT(said(yoke, StatementKind::gauge_rows), ElementsAre("34 rows"));
  EXPECT_THAT(said(yoke, StatementKind::gauge_fabric), ElementsAre("stocking stitch", "stranded pattern"));
  EXPECT_THAT(said(yoke, StatementKind::legend_shade), ElementsAre("CC2: Goarse"));
  EXPECT_THAT(said(yoke, StatementKind::role_mention), ElementsAre("CC4: With CC4, work 10 rounds rib"));
  EXPECT_THAT(read_manuscript(yoke).not_understood, ::testing::IsEmpty());
}

TEST(ReadManuscript, yarn_block_of_socks) {
  EXPECT_THAT(
      said(socks, StatementKind::measurement),
      ElementsAre("foot circumference: 15 (17.5 20 23.5 25 cm", "foot circumference: 6 (7 7.75 8.75 9.75 in",
                  "foot length: 15.5 (19.5 23 30.5 cm"));
  EXPECT_THAT(said(socks, StatementKind::fibre), ElementsAre("superwash wool 75 %", "polyamide 30 %"));
  EXPECT_THAT(said(socks, StatementKind::put_up_length), ElementsAre("210 yd", "230 m"));
  EXPECT_THAT(said(socks, StatementKind::yarn_description),
              ElementsAre("twist: tightly twisted", "structure: single", "structure: four plies",
                          "category: fingering"));
  EXPECT_THAT(said(socks, StatementKind::length_note), ElementsAre("MC, used: 70 m", "MC, used: 77 yd"));
  EXPECT_THAT(said(socks, StatementKind::shade_number), ElementsAre("MC: 204", "CC: 204"));
  EXPECT_THAT(said(socks, StatementKind::needle_length), ElementsAre("40 cm", "16 in"));
  EXPECT_THAT(said(socks, StatementKind::sample_size), ElementsAre("3"));
  EXPECT_THAT(said(socks, StatementKind::sample_shades), ElementsAre("Soot and Marigold"));
}

TEST(ReadManuscript, parts_are_whole_by_heading_or_statement_and_quoted_by_quotation) {
  const Reading reading = read_manuscript(yoke);
  for (const TextPart part : {TextPart::block, TextPart::sizes, TextPart::gauge, TextPart::needles})
    EXPECT_EQ(reading.extent(part), PartExtent::whole) << word_of(part);
  for (const TextPart part : {TextPart::text, TextPart::legend})
    EXPECT_EQ(reading.extent(part), PartExtent::quoted_in_part) << word_of(part);
  for (const TextPart part : {TextPart::charts, TextPart::schematic})
    EXPECT_EQ(reading.extent(part), PartExtent::absent) << word_of(part);
}

}  // namespace
}  // namespace skeinproof
