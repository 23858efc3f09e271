// SPDX-License-Identifier: GPL-3.0-or-later
// Chances beside products simulated skein by skein with log-normal errors, which is not how they are worked
// out.
#include "core/need/chance.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <random>

namespace skeinproof {
namespace {

// Enough for every push; the long run asks for more.
int simulated_products() {
  const char* wished = std::getenv("SKEINPROOF_PRODUCTS");
  return wished != nullptr ? std::atoi(wished) : 5000;
}

constexpr SupplyErrors mill{0.015, 0.015};
constexpr double hand = 0.03;

// One product: a knitter's need and her skeins. std::normal_distribution differs between libraries; the
// margins are wider than that.
class Simulation {
 public:
  explicit Simulation(unsigned seed) : random_(seed) {}

  double uniform(double low, double high) { return std::uniform_real_distribution<>(low, high)(random_); }
  int whole(int low, int high) { return std::uniform_int_distribution<>(low, high)(random_); }

  bool suffices(double knitted, double swatch, const NeedErrors& need, int skeins, double skein,
                const SupplyErrors& supply) {
    const double used = knitted * factor(need.length) * factor(need.hand) + swatch;
    const double lot = factor(supply.lot);
    double bought = 0;
    for (int i = 0; i < skeins; ++i) bought += skein * lot * factor(supply.skein);
    return used <= bought;
  }

 private:
  double factor(double deviation) { return std::exp(deviation * std::normal_distribution<>()(random_)); }
  std::mt19937_64 random_;
};

double chance(double knitted, double swatch, const NeedErrors& need, int skeins, double skein,
              const SupplyErrors& supply = mill) {
  return chance_sufficient(metres(knitted), metres(swatch), need, skeins, metres(skein), supply);
}

// The knitted length for which k skeins suffice with the wished chance, by halving.
double knitted_for(double wished, double swatch, const NeedErrors& need, int skeins, double skein,
                   const SupplyErrors& supply) {
  double low = 0, high = skeins * skein * 2;
  for (int turn = 0; turn < 80; ++turn) {
    const double middle = (low + high) / 2;
    (chance(middle, swatch, need, skeins, skein, supply) > wished ? low : high) = middle;
  }
  return low;
}

TEST(Chance, ClosedFormAsWorkedOutBySeparateScript) {
  EXPECT_NEAR(chance(1125.7, 20, {deviation_of(0.12), hand}, 7, 175), 0.80838, 1e-5);
  EXPECT_NEAR(chance(1125.7, 20, {deviation_of(0.03), hand}, 7, 175), 0.96381, 1e-5);
  EXPECT_NEAR(chance(172.5, 5, {deviation_of(0.12), hand}, 1, 175), 0.42966, 1e-5);
  EXPECT_NEAR(chance(172.5, 5, {deviation_of(0.12), hand}, 2, 175), 1.0, 1e-4);
}

TEST(Chance, DeviationsOfTheUsualErrors) {
  EXPECT_NEAR(deviation_of(0.08), 0.049, 0.0005);
  EXPECT_NEAR(deviation_of(0.12), 0.073, 0.0005);
  EXPECT_NEAR(deviation_of(0.03), 0.018, 0.0005);
  EXPECT_NEAR(scale_deviation(grams(1), grams(14)), 0.0206, 0.0001);
  EXPECT_EQ(scale_deviation(grams(1), grams(0)), 0);
}

TEST(Chance, OfTheCasesCalledNinetyPercentAboutNinetySuffice) {
  Simulation simulation(20);
  int sufficient = 0;
  const int products = simulated_products();
  for (int i = 0; i < products; ++i) {
    const NeedErrors need{deviation_of(std::vector<double>{0.03, 0.08, 0.12}[i % 3]), hand};
    const SupplyErrors supply = i % 4 == 0 ? SupplyErrors{0.03, 0.03} : mill;
    const int skeins = simulation.whole(1, 14);
    const double skein = simulation.uniform(50, 400), swatch = simulation.uniform(0, 0.1) * skein;
    const double knitted = knitted_for(0.9, swatch, need, skeins, skein, supply);
    sufficient += simulation.suffices(knitted, swatch, need, skeins, skein, supply);
  }
  EXPECT_GE(sufficient, 0.88 * products);
  EXPECT_LE(sufficient, 0.92 * products);
}

TEST(Chance, OtherChancesAreCalibratedToo) {
  Simulation simulation(21);
  for (const double called : {0.5, 0.75, 0.97}) {
    int sufficient = 0;
    const int products = simulated_products();
    const NeedErrors need{deviation_of(0.08), hand};
    const double knitted = knitted_for(called, 10, need, 6, 175, mill);
    for (int i = 0; i < products; ++i) sufficient += simulation.suffices(knitted, 10, need, 6, 175, mill);
    EXPECT_NEAR(double(sufficient) / products, called, 0.025) << called;
  }
}

TEST(Chance, FromCountsAloneAgreesWithSimulation) {
  const NeedErrors need{0, hand};
  const auto by_quadrature = [&](double low, double high, int skeins) {
    return chance_from_counts(metres(low), metres(high), 0.15, need, skeins, metres(175), mill);
  };
  Simulation simulation(22);
  const auto by_simulation = [&](double low, double high, int skeins) {
    constexpr int products = 20000;
    int sufficient = 0;
    for (int i = 0; i < products; ++i) {
      const double planned = simulation.uniform(low, high);
      sufficient +=
          simulation.suffices(planned / (1 + simulation.uniform(0, 0.15)), 0, need, skeins, 175, mill);
    }
    return sufficient / double{products};
  };
  EXPECT_NEAR(by_quadrature(1050, 1098.2, 6), 0.80524, 1e-4);  // midpoint rule in a separate script
  EXPECT_NEAR(by_quadrature(1050, 1098.2, 6), by_simulation(1050, 1098.2, 6), 0.015);
  EXPECT_NEAR(by_quadrature(700, 875, 5), by_simulation(700, 875, 5), 0.015);
  EXPECT_NEAR(by_quadrature(0, 141.4, 1), by_simulation(0, 141.4, 1), 0.015);
  // Without any width it is the closed form.
  EXPECT_NEAR(chance_from_counts(metres(1000), metres(1000), 0, need, 6, metres(175), mill),
              chance(1000, 0, need, 6, 175), 1e-12);
}

TEST(Chance, TheCountForAWishedForChanceIsTheFewest) {
  const NeedErrors need{deviation_of(0.12), hand};
  for (const double wished : {0.5, 0.9, 0.99}) {
    const auto skeins = skeins_for_chance(wished, metres(1125.7), metres(20), need, metres(175), mill);
    ASSERT_TRUE(skeins);
    EXPECT_GE(chance(1125.7, 20, need, *skeins, 175), wished);
    EXPECT_LT(chance(1125.7, 20, need, *skeins - 1, 175), wished);
  }
  EXPECT_EQ(skeins_for_chance(0.5, metres(1125.7), metres(20), need, metres(175), mill), 7);
  EXPECT_EQ(skeins_for_chance(0.9, metres(1125.7), metres(20), need, metres(175), mill), 8);
  EXPECT_EQ(skeins_for_chance(0.9, metres(10), metres(0), need, metres(175), mill), 1);
}

TEST(Chance, RefusesWishesNoCountCanFulfil) {
  const NeedErrors need{0.05, hand};
  EXPECT_FALSE(skeins_for_chance(1, metres(100), metres(0), need, metres(175), mill));
  EXPECT_FALSE(skeins_for_chance(0, metres(100), metres(0), need, metres(175), mill));
  EXPECT_FALSE(skeins_for_chance(0.9, metres(100), metres(0), need, metres(0), mill));
  // A lot that may be off by its whole length caps the chance of any count.
  EXPECT_FALSE(skeins_for_chance(0.95, metres(100), metres(0), need, metres(175), {1.0, 0}));
}

TEST(Chance, WithoutAnyErrorItIsPlainArithmetic) {
  EXPECT_EQ(chance(175, 0, {}, 1, 175, {}), 1);
  EXPECT_EQ(chance(175.1, 0, {}, 1, 175, {}), 0);
}

TEST(Chance, SupplyErrorsFollowTheYarn) {
  Pattern pattern = new_pattern();
  Yarn yarn;
  yarn.colouring = "solid";
  EXPECT_EQ(supply_errors(pattern, &yarn).lot, 0.015);
  EXPECT_EQ(supply_errors(pattern, nullptr).skein, 0.015);
  yarn.colouring = "Hand-dyed, variegated";
  EXPECT_EQ(supply_errors(pattern, &yarn).skein, 0.03);
  pattern.constants.push_back({"sigma_hand_dyed_pct", {5, "5"}});
  EXPECT_EQ(supply_errors(pattern, &yarn).lot, 0.05);
  EXPECT_DOUBLE_EQ(handspun_errors(0.10, 4)->lot, 0.05);
  EXPECT_FALSE(handspun_errors(0.10, 0));
  EXPECT_FALSE(handspun_errors(-0.1, 4));
}

}  // namespace
}  // namespace skeinproof
