// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yarn/check_yarn.h"

#include <cmath>

#include "core/base/text.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

Error problem(ErrorKind kind, std::string found, std::string expected) {
  return {kind, {}, std::move(found), std::move(expected)};
}

std::string figure(double value) { return show_short(value, 2); }

std::string name_of(const FibreShare& share) {
  return quoted(share.words.empty() ? share.fibre : share.words);
}

// A plain quantity that is there but cannot be.
bool impossible(double value) { return !(std::isfinite(value) && value > 0); }

}  // namespace

std::vector<Error> check_composition(const std::vector<FibreShare>& composition) {
  std::vector<Error> problems;
  double sum = 0;
  for (std::size_t i = 0; i < composition.size(); ++i) {
    const FibreShare& share = composition[i];
    const double percent = share.percent.value;
    if (impossible(percent) || percent > 100)
      problems.push_back(problem(ErrorKind::out_of_range, figure(percent) + " % of " + name_of(share),
                                 "a share of more than 0 and at most 100 %"));
    if (share.fibre.empty() && trimmed(share.words).empty())
      problems.push_back(
          problem(ErrorKind::unknown_name, figure(percent) + " % of nothing", "the name of a fibre"));
    else if (share.fibre.empty())
      problems.push_back(
          problem(ErrorKind::unknown_name, name_of(share), "the name of a fibre in the table"));
    for (std::size_t k = 0; k < i; ++k)
      if (!share.fibre.empty() && composition[k].fibre == share.fibre) {
        problems.push_back(
            problem(ErrorKind::wrong_count, name_of(share) + " twice", "one share of each fibre"));
        break;
      }
    sum += percent;
  }
  constexpr double rounding = 0.5;  // of a percentage printed whole
  if (!composition.empty() && !(std::abs(sum - 100) <= rounding))
    problems.push_back(problem(ErrorKind::out_of_range, "fibres that add to " + figure(sum) + " %", "100 %"));
  return problems;
}

std::vector<Error> check_put_up(const PutUp& put_up) {
  std::vector<Error> problems;
  const bool has_length = put_up.length.has_value(), has_weight = put_up.weight.has_value();
  if (has_length != has_weight)
    problems.push_back(problem(ErrorKind::not_found,
                               has_length ? "a length without a weight" : "a weight without a length",
                               "both length and weight of one skein, from its band"));
  const double length = has_length ? put_up.length->value.value() : 1;
  const double weight = has_weight ? put_up.weight->value.value() : 1;
  const std::string word(word_of(put_up.word));
  if (impossible(length))
    problems.push_back(problem(ErrorKind::out_of_range, figure(length) + " m", "a length of more than zero"));
  const double most_metres = put_up.word == SkeinWord::cone ? most_cone_metres : most_skein_metres;
  if (length > most_metres)
    problems.push_back(problem(ErrorKind::out_of_range, "a " + word + " of " + figure(length) + " m",
                               "at most " + figure(most_metres) + " m on one " + word));
  if (impossible(weight))
    problems.push_back(problem(ErrorKind::out_of_range, figure(weight) + " g", "a weight of more than zero"));
  if (weight > most_put_up_grams)
    problems.push_back(problem(ErrorKind::out_of_range, "a " + word + " of " + figure(weight) + " g",
                               "at most " + figure(most_put_up_grams) + " g"));
  if (!has_length || !has_weight || impossible(length) || impossible(weight)) return problems;
  const double density = length / weight;
  if (density < least_metres_per_gram || density > most_metres_per_gram)
    problems.push_back(
        problem(ErrorKind::out_of_range,
                figure(length) + " m in " + figure(weight) + " g, which is " + figure(density) + " m/g",
                figure(least_metres_per_gram) + " to " + figure(most_metres_per_gram) +
                    " m/g, from roving to thread"));
  return problems;
}

}  // namespace skeinproof
