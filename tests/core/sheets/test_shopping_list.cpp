// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/shopping_list.h"

#include <gmock/gmock.h>

#include "core/sheets/leftovers_record.h"
#include "core/sheets/write_sheet.h"
#include "core/substitution/put_up_mix.h"
#include "tests/core/substitution/yarn_at_home.h"

namespace skeinproof::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

// Lines as they run on are one.
std::string one_line(const std::string& text) {
  std::string joined;
  for (char c : text) {
    const char plain = c == '\n' ? ' ' : c;
    if (plain != ' ' || joined.empty() || joined.back() != ' ') joined += plain;
  }
  return joined;
}
std::string list_text(const Pattern& pattern, CandidateId candidate = {}, SizeId size = {}) {
  const auto sheet = shopping_list(pattern, assess(pattern), pattern.house(), candidate, size);
  return sheet ? one_line(plain_text(*sheet)) : sheet.error().message();
}
Pattern yoke() {
  Pattern pattern = quillmarsh();
  pattern.budget = Price{{90, ""}, "€"};
  return pattern;
}

TEST(ShoppingList, YokePulloverInSizeFour) {
  const Pattern pattern = yoke();
  const std::string text = list_text(pattern, {}, size_named(pattern, "4"));
  EXPECT_THAT(text, HasSubstr("Shopping list, size 4"));
  EXPECT_THAT(text,
              HasSubstr("MC Peat 08: 7 skeins of Oddmere Fieldspun, ONE dye lot (lot ____). Plan 1070 m of "
                        "1225 m: 155 m to spare; Body 5 cm longer (72 m) still fits."));
  EXPECT_THAT(text, HasSubstr("CC1 Lichen 21: 2 skeins"));
  EXPECT_THAT(text,
              HasSubstr("CC3 Ember 40: 1 skein of Oddmere Fieldspun. Plan 59 m of 175 m: 116 m to spare; a "
                        "17 g end of it would do."));
  EXPECT_THAT(text, HasSubstr("11 skeins, €86.90, within the budget of €90.00."));
  EXPECT_THAT(text, HasSubstr("One more: none needed by the rule (last skein of MC 11 % used)."));
  EXPECT_THAT(text, HasSubstr("return by ____"));
  EXPECT_THAT(text, HasSubstr("measure 48 h later. At 25.5 sts × 33.3 rows in 10 cm allow 21 m more of MC."));
}

// 857.2 m take 89.8 % of the fifth skein.
TEST(ShoppingList, OneMoreByTheRule) {
  Pattern pattern = yoke();
  const SizeId two = size_named(pattern, "2");
  EXPECT_THAT(list_text(pattern, {}, two),
              HasSubstr("One more: none needed by the rule (last skein of MC 90 % used)"));
  pattern.constants.push_back({"bench_buy_one_more_share", {0.89, ""}});
  EXPECT_THAT(list_text(pattern, {}, two),
              HasSubstr("for MC Peat 08, because the last skein is nearly all needed. Return by ____."));
  Pattern hand_dyed = yoke();
  yarn_named(hand_dyed, hand_dyed.roles[0].yarn)->colouring = "hand-dyed";
  const std::string text = list_text(hand_dyed, {}, size_named(hand_dyed, "4"));
  EXPECT_THAT(text,
              HasSubstr("One more: 1 skein of Oddmere Fieldspun for MC Peat 08, because hand-dyed skeins "
                        "differ, and more than one is needed. Return by ____."));
  EXPECT_THAT(text, HasSubstr("for CC1 Lichen 21, because"));
  EXPECT_THAT(text, Not(HasSubstr("for CC2 Gorse 33, because")));
  EXPECT_THAT(text, HasSubstr("With one more as below: €102.70."));
}

TEST(ShoppingList, ForACandidate) {
  Pattern pattern = yoke();
  pattern.candidates.clear();
  const YarnId other = add_yarn(pattern, "Tallowhithe Strand");
  Yarn& yarn = *yarn_named(pattern, other);
  yarn.put_up.length = Entered<Metres>{metres(130), ""};
  yarn.put_up.weight = Entered<Grams>{grams(50), ""};
  yarn.price = Price{{5.20, ""}, "€"};
  const CandidateId candidate = add_candidate(pattern, other);
  const std::string text = list_text(pattern, candidate, size_named(pattern, "5"));
  EXPECT_THAT(text, HasSubstr("Shopping list, size 5, in Tallowhithe Strand"));
  EXPECT_THAT(text, HasSubstr("MC: 10 skeins of Tallowhithe Strand, ONE dye lot"));
  EXPECT_THAT(text, HasSubstr("14 skeins, €72.80"));
  EXPECT_THAT(list_text(pattern, CandidateId{9999}), HasSubstr("a candidate that is not in the pattern"));
  EXPECT_THAT(list_text(pattern, {}, SizeId{9999}), HasSubstr("a size that is not in the pattern"));
}

TEST(ShoppingList, MixedPutUpsAreCountedOut) {
  Pattern pattern = yoke();
  Yarn& yarn = *yarn_named(pattern, pattern.roles[0].yarn);
  SoldAs large;
  large.put_up.length = Entered<Metres>{metres(350), ""};
  large.put_up.weight = Entered<Grams>{grams(100), ""};
  large.price = Price{{14.00, ""}, "EUR"};
  yarn.also_sold = {large};
  const std::string text = list_text(pattern, {}, size_named(pattern, "4"));
  EXPECT_THAT(text, HasSubstr("MC Peat 08: 3 skeins of 100 g and 1 skein of 50 g of Oddmere Fieldspun"));
}

TEST(ShoppingList, AChangeThatIsBeingTriedIsNotInIt) {
  Pattern pattern = yoke();
  BenchChange longer;
  longer.id = take_id<ChangeId>(pattern);
  longer.kind = ChangeKind::longer_piece;
  longer.piece = pattern.pieces[0].id;
  longer.by = Entered<Centimetres>{centimetres(5), ""};
  pattern.changes = {longer};
  const std::string text = list_text(pattern, {}, size_named(pattern, "5"));
  EXPECT_THAT(text, HasSubstr("Not in this list: Body 5 cm longer, which takes 84 m more of MC."));
  EXPECT_THAT(text, HasSubstr("because a piece is to be lengthened"));
}

TEST(ShoppingList, WithoutAPriceOrALengthItSaysSo) {
  Pattern pattern = yoke();
  Yarn& yarn = *yarn_named(pattern, pattern.roles[0].yarn);
  yarn.price->currency.clear();
  EXPECT_THAT(list_text(pattern), HasSubstr("86.90 without a currency"));
  yarn.put_up.length.reset();
  const std::string text = list_text(pattern);
  EXPECT_THAT(text, HasSubstr("skeins not known"));
}

TEST(LeftoversRecord, OfYarnAtHome) {
  const Pattern pattern = quillmarsh_at_home();
  const auto sheet = leftovers_record(pattern, assess(pattern), pattern.house());
  ASSERT_TRUE(sheet.has_value());
  EXPECT_EQ(sheet->subtitle, "Leftovers, size 4");
  const Table& table = std::get<Table>(sheet->parts.front());
  ASSERT_EQ(table.rows.size(), 4u);
  const auto& mc = table.rows[0].cells;
  EXPECT_NEAR(*mc[2].number, 1368.5, 1e-9);
  EXPECT_NEAR(*mc[3].number, 8, 1e-9);
  EXPECT_NEAR(*mc[4].number, 998.9 + 20, 0.06);
  EXPECT_NEAR(*mc[5].number, 1368.5 - 2.1 - 1018.9, 0.06);
  EXPECT_NEAR(*mc[6].number, (1368.5 - 2.1 - 1018.9) / 3.5, 0.02);
  EXPECT_NEAR(*mc[7].number, 1368.5 - 2.1 - 1069.9, 0.06);
  EXPECT_EQ(table.rows[3].cells[5].remark, "not enough");
}

TEST(LeftoversRecord, OfSkeinsToBuy) {
  Pattern pattern = quillmarsh();
  clear_home(pattern);
  const auto sheet = leftovers_record(pattern, assess(pattern), pattern.house());
  ASSERT_TRUE(sheet.has_value());
  EXPECT_EQ(sheet->subtitle, "Leftovers, size 5");
  const auto& mc = std::get<Table>(sheet->parts.front()).rows[0].cells;
  EXPECT_THAT(mc[1].text, HasSubstr("(to buy)"));
  EXPECT_NEAR(*mc[2].number, 7 * 175, 1e-9);
  EXPECT_NEAR(*mc[5].number, 7 * 175 - 6 * 0.30 - (1125.7 + 20), 0.1);
  EXPECT_FALSE(leftovers_record(pattern, assess(pattern), pattern.house(), SizeId{9999}).has_value());
}

}  // namespace
}  // namespace skeinproof::testing
