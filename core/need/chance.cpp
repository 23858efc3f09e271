// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/chance.h"

#include <algorithm>
#include <array>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <string>

#include "core/base/text.h"
#include "core/need/constants.h"

namespace skeinproof {
namespace {

constexpr double most_skeins = 1e6;

double normal_cdf(double z) { return boost::math::cdf(boost::math::normal(), z); }

bool says_hand_dyed(const Yarn& yarn) {
  const std::string words = lower_ascii(yarn.colouring + " " + yarn.treatment + " " + yarn.description);
  constexpr std::array ways = {"hand-dyed",    "hand dyed",   "hand-painted",
                               "hand painted", "kettle-dyed", "kettle dyed"};
  return std::any_of(ways.begin(), ways.end(),
                     [&](const char* way) { return words.find(way) != std::string::npos; });
}

// Mean of f over [low, high]; the value itself where the interval has no width.
template <class F>
double mean_over(double low, double high, F&& f) {
  if (!(high > low)) return f(high);
  constexpr unsigned deepest = 6;
  constexpr double tolerance = 1e-7;
  return boost::math::quadrature::gauss_kronrod<double, 15>::integrate(f, low, high, deepest, tolerance) /
         (high - low);
}

}  // namespace

SupplyErrors supply_errors(const Pattern& pattern, const Yarn* yarn) {
  if (yarn != nullptr && says_hand_dyed(*yarn)) {
    const double both = constant(pattern, "sigma_hand_dyed_pct") / 100;
    return {both, both};
  }
  return {constant(pattern, "sigma_lot_pct") / 100, constant(pattern, "sigma_skein_pct") / 100};
}

std::optional<SupplyErrors> handspun_errors(double coefficient_of_variation, int lengths_weighed) {
  if (!(coefficient_of_variation >= 0) || lengths_weighed < 1) return std::nullopt;
  return SupplyErrors{coefficient_of_variation / std::sqrt(lengths_weighed), 0};
}

double deviation_of(double error_at_9_in_10) {
  static const double deviations = boost::math::quantile(boost::math::normal(), 0.95);
  return error_at_9_in_10 / deviations;
}

double scale_deviation(Grams step, Grams weighed) {
  return weighed > grams(0) ? step.value() / weighed.value() / std::sqrt(12.0) : 0;
}

double chance_sufficient(Metres knitted, Metres swatch, const NeedErrors& need, int skeins, Metres skein,
                         const SupplyErrors& supply) {
  const double k = skeins, length = skein.value();
  const double spare = k * length - (knitted + swatch).value();
  const double need_deviation = knitted.value() * std::hypot(need.length, need.hand);
  const double supply_deviation = length * std::hypot(k * supply.lot, std::sqrt(k) * supply.skein);
  const double deviation = std::hypot(need_deviation, supply_deviation);
  if (!(deviation > 0)) return spare >= 0 ? 1 : 0;
  return normal_cdf(spare / deviation);
}

double chance_from_counts(Metres low, Metres high, double most_allowance, const NeedErrors& need, int skeins,
                          Metres skein, const SupplyErrors& supply) {
  return mean_over(low.value(), high.value(), [&](double planned) {
    return mean_over(0, most_allowance, [&](double allowance) {
      return chance_sufficient(metres(planned / (1 + allowance)), metres(0), need, skeins, skein, supply);
    });
  });
}

std::optional<int> skeins_for_chance(double wished, Metres knitted, Metres swatch, const NeedErrors& need,
                                     Metres skein, const SupplyErrors& supply) {
  if (!(wished > 0 && wished < 1) || !(skein > metres(0))) return std::nullopt;
  const auto reached = [&](int skeins) {
    return chance_sufficient(knitted, swatch, need, skeins, skein, supply) >= wished;
  };
  // The chance rises with the count, so the first that reaches it lies between a miss and a doubling that
  // hits.
  int hit = 1;
  while (!reached(hit)) {
    if (hit > most_skeins) return std::nullopt;
    hit *= 2;
  }
  int miss = hit / 2;
  while (hit - miss > 1) {
    const int middle = miss + (hit - miss) / 2;
    (reached(middle) ? hit : miss) = middle;
  }
  return hit;
}

}  // namespace skeinproof
