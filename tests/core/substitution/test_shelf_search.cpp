// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <random>
#include <set>

#include "core/substitution/shelf_nearest.h"
#include "core/substitution/shelf_search.h"
#include "core/yarn/read_composition.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

ShelfYarn yarn(const std::string& name, const std::string& fibres, double weight_g, double length_m) {
  ShelfYarn entry;
  entry.yarn.name = name;
  entry.yarn.composition = read_composition(fibres).value();
  entry.yarn.put_up.weight = Entered<Grams>{grams(weight_g), ""};
  entry.yarn.put_up.length = Entered<Metres>{metres(length_m), ""};
  return entry;
}

// Off, likeness lost, of every pair with one of `some`, in the order that is asked for.
using Key = std::pair<std::int64_t, int>;
std::vector<Key> all_pairs(const std::vector<NearYarn>& some, const std::vector<NearYarn>& others,
                           std::int64_t target) {
  std::vector<Key> keys;
  const auto add = [&](const NearYarn& a, const NearYarn& b) {
    keys.emplace_back(std::llabs(a.mg_per_km + b.mg_per_km - target), a.unlike + b.unlike);
  };
  for (std::size_t i = 0; i < some.size(); ++i) {
    for (std::size_t j = i + 1; j < some.size(); ++j) add(some[i], some[j]);
    for (const NearYarn& other : others) add(some[i], other);
  }
  std::sort(keys.begin(), keys.end());
  return keys;
}

struct NearCase {
  std::vector<NearYarn> some, others;
  std::int64_t target = 0;
  std::size_t keep = 0;
};
NearCase near_case(std::uint32_t seed, std::int64_t step) {
  std::mt19937 random(seed);
  const auto up_to = [&](std::uint32_t n) { return random() % (n + 1); };
  NearCase one;
  const std::size_t count = 1 + up_to(60);
  for (std::size_t i = 0; i < count; ++i) {
    const std::int64_t density = step * (1 + up_to(40)) + (step > 10 ? up_to(9) : 0);
    (up_to(2) > 0 ? one.some : one.others).push_back({density, static_cast<int>(up_to(most_unlike)), i});
  }
  one.target = step * (1 + up_to(90));
  one.keep = up_to(200);
  return one;
}

TEST(ShelfNearest, pairs_are_those_of_trying_all) {
  for (std::uint32_t seed = 0; seed < 200; ++seed) {
    const NearCase one = near_case(seed, seed % 2 == 0 ? 1 : 1000);  // many ties, hardly any
    std::vector<Key> expected = all_pairs(one.some, one.others, one.target);
    if (expected.size() > one.keep) expected.resize(one.keep);
    const auto found = nearest_pairs(one.some, one.others, one.target, one.keep);
    std::vector<Key> keys;
    std::set<std::set<std::size_t>> met;
    std::map<std::size_t, NearYarn> by_index;
    for (const auto* list : {&one.some, &one.others})
      for (const NearYarn& each : *list) by_index[each.index] = each;
    for (const Nearest& pair : found) {
      keys.emplace_back(std::llabs(pair.off), pair.unlike);
      EXPECT_NE(pair.first, pair.second);
      EXPECT_TRUE(met.insert({pair.first, pair.second}).second) << "the same two twice";
      EXPECT_EQ(by_index[pair.first].mg_per_km + by_index[pair.second].mg_per_km - one.target, pair.off);
      EXPECT_EQ(by_index[pair.first].unlike + by_index[pair.second].unlike, pair.unlike);
      EXPECT_GE(by_index[pair.first].mg_per_km, by_index[pair.second].mg_per_km);
    }
    ASSERT_EQ(keys, expected) << "seed " << seed;
  }
}

TEST(ShelfNearest, singles_and_doubled_are_those_of_trying_all) {
  for (std::uint32_t seed = 0; seed < 200; ++seed)
    for (int strands : {1, 2}) {
      const NearCase one = near_case(seed, 1000);
      std::vector<std::tuple<std::int64_t, int, std::size_t>> expected, keys;
      for (const NearYarn& each : one.some)
        expected.emplace_back(std::llabs(strands * each.mg_per_km - one.target), each.unlike, each.index);
      std::sort(expected.begin(), expected.end());
      if (expected.size() > one.keep) expected.resize(one.keep);
      for (const Nearest& found : nearest_singles(one.some, one.target, strands, one.keep))
        keys.emplace_back(std::llabs(found.off), found.unlike, found.first);
      ASSERT_EQ(keys, expected);
    }
}

// A few hundred yarns as a shelf has them.
std::vector<ShelfYarn> shelf_of(std::size_t count) {
  std::mt19937 random(7);
  const char* fibres[] = {
      "100% wool",           "75% superwash wool, 25% polyamide", "100% cotton", "", "60% mohair, 40% silk",
      "50% wool, 50% alpaca"};
  const char* cares[] = {"hand wash", "machine wash 30", "", "dry clean only"};
  std::vector<ShelfYarn> shelf;
  for (std::size_t i = 0; i < count; ++i) {
    ShelfYarn entry = yarn("Yarn " + std::to_string(i), fibres[random() % 6], random() % 2 == 0 ? 50 : 100,
                           60 + static_cast<double>(random() % 60) * 5);
    entry.yarn.care = cares[random() % 4];
    if (random() % 20 == 0) entry.yarn.put_up.length.reset();
    if (random() % 3 == 0) entry.skeins = Entered<double>{2, ""};
    shelf.push_back(std::move(entry));
  }
  return shelf;
}

ShelfQuestion like_quillmarsh() {
  ShelfQuestion question;
  question.like = like_role(testing::quillmarsh(), "MC").value();
  return question;
}

double tex_of(const ShelfYarn& entry) {
  return 1000 * entry.yarn.put_up.weight->value.value() / entry.yarn.put_up.length->value.value();
}

TEST(ShelfSearch, holds_the_nearest_thousand_of_every_kind) {
  const std::vector<ShelfYarn> shelf = shelf_of(300);
  ShelfQuestion question = like_quillmarsh();
  question.doubled = question.pairs = true;
  const ShelfIndex index(shelf);
  const auto answer = index.search(question).value();
  const double target = 1000.0 / 3.5;  // 175 m in 50 g
  std::vector<double> singles, doubled, pairs, found[3];
  for (std::size_t i = 0; i < shelf.size(); ++i) {
    if (!shelf[i].yarn.put_up.length) continue;
    singles.push_back(std::abs(tex_of(shelf[i]) - target));
    doubled.push_back(std::abs(2 * tex_of(shelf[i]) - target));
    for (std::size_t j = i + 1; j < shelf.size(); ++j)
      if (shelf[j].yarn.put_up.length)
        pairs.push_back(std::abs(tex_of(shelf[i]) + tex_of(shelf[j]) - target));
  }
  for (const ShelfHit& hit : answer.hits) {
    found[static_cast<int>(hit.holding)].push_back(std::abs(*hit.tex - target));
    EXPECT_NEAR(*hit.weight_pct, (*hit.tex / target - 1) * 100, 0.01);
  }
  std::vector<double>* expected[] = {&singles, &doubled, &pairs};
  for (int kind = 0; kind < 3; ++kind) {
    std::sort(expected[kind]->begin(), expected[kind]->end());
    std::sort(found[kind].begin(), found[kind].end());
    if (expected[kind]->size() > shelf_nearest) expected[kind]->resize(shelf_nearest);
    ASSERT_EQ(found[kind].size(), expected[kind]->size());
    for (std::size_t i = 0; i < found[kind].size(); ++i)
      ASSERT_NEAR(found[kind][i], (*expected[kind])[i], 0.002);
  }
  EXPECT_EQ(answer.without_put_up, shelf.size() - singles.size());
}

TEST(ShelfSearch, orders_by_the_rule_it_states) {
  ShelfQuestion question = like_quillmarsh();
  question.doubled = question.pairs = true;
  const ShelfIndex index(shelf_of(120));
  const auto hits = index.search(question).value().hits;
  for (std::size_t i = 1; i < hits.size(); ++i) {
    const auto key = [](const ShelfHit& hit) {
      const ShelfLikeness& l = hit.likeness;
      return std::make_tuple(l.thickness_step, l.fibre, l.care, l.surface, l.structure, l.colouring,
                             std::abs(*hit.thickness_pct));
    };
    EXPECT_LE(key(hits[i - 1]), key(hits[i]));
    const double off = std::abs(*hits[i].thickness_pct);
    EXPECT_EQ(hits[i].likeness.thickness_step, off <= 3 ? 0 : off <= 8 ? 1 : off <= 15 ? 2 : 3);
  }
  const std::string rule = shelf_order_words(question);
  EXPECT_NE(rule.find("First by thickness (within 3 %, within 8 %, within 15 %, more)"), std::string::npos)
      << rule;
  EXPECT_LT(rule.find("fibre"), rule.find("care"));
}

// Quillmarsh: wool, 175 m in 50 g, woollen-spun 2-ply, matte, heathered.
TEST(ShelfSearch, gives_its_reason_in_words) {
  std::vector<ShelfYarn> shelf = {yarn("Tallowhithe Strand", "70% cotton, 30% linen", 50, 130),
                                  yarn("Pillowgate Wisp", "60% mohair, 40% silk", 25, 210),
                                  yarn("Fieldlike", "100% lambswool", 100, 350)};
  shelf[0].yarn.care = "machine wash 40";
  shelf[2].yarn.structure = "2-ply";
  shelf[2].yarn.surface = "matte";
  shelf[2].yarn.colouring = "heathered";
  shelf[2].yarn.spinning = Spinning::worsted;
  shelf[2].skeins = Entered<double>{2, ""};
  ShelfQuestion question = like_quillmarsh();
  question.like->yarn.care = "hand wash";
  question.pairs = question.doubled = true;
  const ShelfIndex index(shelf);
  const auto hits = index.search(question).value().hits;
  const auto reason = [&](ShelfHolding holding, std::size_t first) {
    for (const ShelfHit& hit : hits)
      if (hit.holding == holding && hit.first == first) return index.reason(question, hit);
    return std::string("no such hit");
  };
  EXPECT_EQ(hits.front().first, 2u);
  EXPECT_EQ(
      reason(ShelfHolding::single, 2),
      "as thick, worsted-spun beside woollen-spun, so that may be 20 % out; same fibre; care not known; "
      "same surface; same structure; same colouring; price not known; 700 m at home");
  // t = sqrt(3.5 x 1.31 / (2.6 x 1.514)): the volume of cotton and flax against wool.
  const std::string cotton = reason(ShelfHolding::single, 0);
  EXPECT_EQ(
      cotton.substr(0, cotton.find("; surface")),
      "8 % thicker (35 % heavier by the metre); other fibre: cotton, flax; machine wash at 40, no stricter");
  const std::string doubled = reason(ShelfHolding::doubled, 1);
  EXPECT_NE(doubled.find("other fibre: mohair, silk; care not known; other surface: marked halo"),
            std::string::npos)
      << doubled;
  // Half a gram of every other fibre: 100 / 350 of the mass is wool against 25 / 210.
  const std::string pair = reason(ShelfHolding::pair, 2);
  EXPECT_NE(pair.find("mostly the same fibre (71 % in common)"), std::string::npos) << pair;
  EXPECT_NE(pair.find("one of them at home"), std::string::npos) << pair;
}

TEST(ShelfSearch, finds_words_in_every_field_and_says_where) {
  std::vector<ShelfYarn> shelf = {yarn("Oddmere Fieldspun", "100% wool", 50, 175),
                                  yarn("Pillowgate Wisp", "60% mohair, 40% silk", 25, 210),
                                  yarn("Cobbleside", "75% wool, 25% polyamide", 100, 425)};
  shelf[0].place = "Blue box";
  const ShelfIndex index(shelf);
  ShelfQuestion question;
  question.words = "WOOL  blue";
  auto hits = index.search(question).value().hits;
  ASSERT_EQ(hits.size(), 1u);
  EXPECT_EQ(index.reason(question, hits[0]), "“wool” in its composition; “blue” in its place");
  question.words = "";
  hits = index.search(question).value().hits;
  ASSERT_EQ(hits.size(), 3u);
  EXPECT_EQ(hits[0].first, 2u) << "by name";
  question.words = "angora";
  EXPECT_TRUE(index.search(question)->hits.empty());
  // Of two yarns one must have all the words.
  question = like_quillmarsh();
  question.words = "mohair";
  question.singles = false;
  question.pairs = true;
  hits = index.search(question).value().hits;
  ASSERT_EQ(hits.size(), 2u);
  for (const ShelfHit& hit : hits) EXPECT_TRUE(hit.first == 1 || hit.second == 1);
}

TEST(ShelfSearch, every_column_orders_with_the_unknown_last) {
  std::vector<ShelfYarn> shelf = shelf_of(80);
  for (std::size_t i = 0; i < shelf.size(); i += 3)
    shelf[i].yarn.price = Price{{4 + static_cast<double>(i % 7), ""}, i % 2 == 0 ? "EUR" : "£"};
  const ShelfIndex index(shelf);
  auto hits = index.search(like_quillmarsh()).value().hits;
  const std::size_t count = hits.size();
  for (const auto& [by, word] : EnumWords<ShelfOrder>::rows)
    for (bool descending : {false, true}) {
      index.order(hits, by, descending);
      ASSERT_EQ(hits.size(), count) << word;
      const auto again = hits;
      index.order(hits, by, descending);
      for (std::size_t i = 0; i < count; ++i) ASSERT_EQ(hits[i].first, again[i].first) << word;
    }
  index.order(hits, ShelfOrder::price, true);
  EXPECT_TRUE(hits.front().price_a_100m);
  EXPECT_FALSE(hits.back().price_a_100m);
  index.order(hits, ShelfOrder::thickness);
  EXPECT_LT(*hits.front().thickness_pct, *hits.back().thickness_pct);
  index.order(hits, ShelfOrder::owned);
  EXPECT_TRUE(owned_length(shelf[hits.front().first]));
  EXPECT_FALSE(owned_length(shelf[hits.back().first]));
}

TEST(ShelfSearch, wants_a_put_up_and_a_role) {
  Pattern pattern = testing::quillmarsh();
  EXPECT_EQ(like_role(pattern, "mc")->yarn.name, "Oddmere Fieldspun");
  EXPECT_EQ(like_role(pattern, "CC9").error().kind, ErrorKind::unknown_name);
  EXPECT_NE(like_role(pattern, "CC9").error().message().find("MC, CC1"), std::string::npos);
  EXPECT_FALSE(like_role(new_pattern(), ""));
  ShelfQuestion question = like_quillmarsh();
  question.like->yarn.put_up.length.reset();
  const auto answer = ShelfIndex(shelf_of(5)).search(question);
  ASSERT_FALSE(answer);
  EXPECT_NE(answer.error().message().find("no length of a skein of “Oddmere Fieldspun”"), std::string::npos)
      << answer.error().message();
  EXPECT_TRUE(ShelfIndex({}).search(like_quillmarsh())->hits.empty());
}

TEST(ShelfSearch, strands_of_the_pattern_count) {
  ShelfQuestion question = like_quillmarsh();
  question.like->strands = 2;
  const ShelfIndex index({yarn("Twice", "100% wool", 100, 175)});
  EXPECT_NEAR(*index.search(question)->hits.front().thickness_pct, 0, 1e-3);
}

TEST(ShelfSearch, what_is_chosen_goes_into_the_pattern) {
  Pattern pattern = testing::quillmarsh();
  ShelfYarn wisp = yarn("Pillowgate Wisp Two", "60% mohair, 40% silk", 25, 210);
  wisp.shade.name = "Fog";
  wisp.lot = "4411";
  wisp.skeins = Entered<double>{3, "3"};
  wisp.weight = Entered<Grams>{grams(12), "12 g"};
  const std::size_t yarns = pattern.yarns.size();
  const CandidateId candidate = candidate_from_shelf(pattern, wisp, nullptr, 2);
  EXPECT_EQ(pattern.candidates.back().id, candidate);
  EXPECT_EQ(pattern.candidates.back().yarns.front().strands, 2);
  const OnHandId on_hand = on_hand_from_shelf(pattern, wisp);
  EXPECT_EQ(pattern.yarns.size(), yarns + 1) << "the same yarn is not put there twice";
  EXPECT_EQ(pattern.yarn_on_hand(on_hand)->shade.name, "Fog");
  EXPECT_EQ(pattern.yarn_on_hand(on_hand)->whole_skeins->value, 3);
  EXPECT_EQ(pattern.yarn_on_hand(on_hand)->parts.front().value, grams(12));
  const ShelfYarn other = yarn("Thin", "100% silk", 50, 400);
  candidate_from_shelf(pattern, wisp, &other);
  EXPECT_EQ(pattern.yarn(pattern.candidates.back().yarns.front().held_with)->name, "Thin");
  EXPECT_TRUE(check_invariants(pattern));
  EXPECT_EQ(shelf_yarn_of(pattern, pattern.on_hand.back().yarn).yarn, wisp.yarn);
}

}  // namespace
}  // namespace skeinproof
