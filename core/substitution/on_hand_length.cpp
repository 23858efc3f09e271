// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/on_hand_length.h"

#include <algorithm>
#include <cmath>

#include "core/need/chance.h"
#include "core/need/constants.h"
#include "core/reference/lookup.h"
#include "core/substitution/yarn_character.h"
#include "core/units/show.h"
#include "core/yarn/linear_density.h"
#include "core/yarn/thickness.h"
#include "core/yarn/weigh.h"

namespace skeinproof {
namespace {

constexpr std::string_view trade = "common practice, no source";
constexpr double most_metres = 1e7;

std::string shown(double value, std::string_view unit) {
  return show_short(value, 4) + (unit.empty() ? "" : " ") + std::string(unit);
}

double percent_of_rule(std::string_view id, std::optional<double> Figure::*member, double fallback) {
  const RuleOfThumb* rule = rule_by_id(id);
  return std::abs(rule ? (rule->figure.*member).value_or(fallback) : fallback) / 100;
}

// Of a skein against its label, or of a length that somebody typed.
ErrorShare label_error(const Yarn& yarn) {
  const std::string_view rule = character_of(yarn).hand_dyed ? "skein_var_hand" : "skein_var_mill";
  return {percent_of_rule(rule, &Figure::low, 3), percent_of_rule(rule, &Figure::high, 5)};
}

double together(std::initializer_list<double> lengths) {
  double squares = 0;
  for (double length : lengths) squares += length * length;
  return std::sqrt(squares);
}

class LengthWork {
 public:
  LengthWork(const Pattern& pattern, const YarnOnHand& on_hand, const Yarn& yarn, std::string name)
      : pattern_(pattern), on_hand_(on_hand), yarn_(yarn), name_(std::move(name)) {}

  Expected<LengthOnHand> work_out() {
    result_.id = on_hand_.id;
    if (const auto density = linear_density(yarn_.put_up)) result_.density = *density;
    if (auto amiss = what_is_amiss()) return tl::unexpected<Error>(std::move(*amiss));
    const auto done = by_kind();
    if (!done) return tl::unexpected<Error>(named(done.error()));
    if (!std::isfinite(result_.length.value()) || result_.length.value() > most_metres)
      return failure(ErrorKind::out_of_range, name_ + ": " + shown(result_.length.value(), "m"),
                     "a length somebody could have at home");
    if (result_.length > metres(0))
      result_.deviation = deviation_of((result_.high - result_.low) / result_.length / 2);
    return std::move(result_);
  }

 private:
  Error named(Error error) const {
    error.found = name_ + ": " + error.found;
    return error;
  }
  std::optional<Error> amiss(ErrorKind kind, std::string found, std::string expected) const {
    return named(Error{kind, {}, std::move(found), std::move(expected)});
  }

  std::optional<Error> what_is_amiss() const {
    const auto wrong = [](double value) { return !std::isfinite(value) || value < 0; };
    if (on_hand_.whole_skeins && wrong(on_hand_.whole_skeins->value))
      return amiss(ErrorKind::out_of_range, shown(on_hand_.whole_skeins->value, "whole skeins"),
                   "none or more of them");
    for (const Entered<Grams>& part : on_hand_.parts)
      if (wrong(part.value.value()))
        return amiss(ErrorKind::out_of_range, "a remainder of " + shown(part.value.value(), "g"),
                     "grams on the scale, 0 or more");
    if (on_hand_.scale_step && !(on_hand_.scale_step->value > grams(0)))
      return amiss(ErrorKind::out_of_range,
                   "a scale step of " + shown(on_hand_.scale_step->value.value(), "g"),
                   "the smallest step the scale shows");
    return std::nullopt;
  }

  Expected<void> by_kind() {
    switch (on_hand_.length_by) {
      case LengthBy::skeins_and_weight:
        return by_skeins_and_weight();
      case LengthBy::reel:
        return by_reel();
      case LengthBy::sampled_lengths:
        return by_samples();
      case LengthBy::typed_length:
        return by_typed_length();
      case LengthBy::wraps:
        return failure(ErrorKind::wrong_shape, "wraps alone",
                       "a weight, a length or the turns of a reel: wraps say how thick a yarn is, never how "
                       "long");
    }
    return failure(ErrorKind::wrong_shape, "no way to know its length", "skeins, a weight or a length");
  }

  // Parts that weigh something, each its own reading.
  std::vector<Grams> weighed_parts() const {
    std::vector<Grams> parts;
    for (const Entered<Grams>& part : on_hand_.parts)
      if (part.value > grams(0)) parts.push_back(part.value);
    return parts;
  }
  static Grams sum_of(const std::vector<Grams>& parts) {
    Grams sum;
    for (Grams part : parts) sum += part;
    return sum;
  }
  double whole_skeins() const { return on_hand_.whole_skeins ? on_hand_.whole_skeins->value : 0; }
  Grams scale_step() {
    if (on_hand_.scale_step) return on_hand_.scale_step->value;
    const RuleOfThumb* kitchen = rule_by_id("scale_kitchen");
    const Grams step = grams(kitchen ? kitchen->figure.value.value_or(1) : 1);
    assume("scale step not stated: " + shown(step.value(), "g") + ", as a kitchen scale has");
    return step;
  }

  Expected<void> by_skeins_and_weight() {
    const std::vector<Grams> parts = weighed_parts();
    const double whole = whole_skeins();
    if (!on_hand_.whole_skeins && on_hand_.parts.empty())
      return failure(ErrorKind::not_found, "neither skeins nor a weight",
                     "whole skeins, or grams of a part skein");
    if (!yarn_.put_up.length || !(yarn_.put_up.length->value > metres(0)))
      return failure(ErrorKind::not_found, "no length of a skein", "the length of one skein by its label");
    const Metres skein = yarn_.put_up.length->value;
    const ErrorShare label = label_error(yarn_);
    const Metres wholes = whole * skein;
    if (whole > 0)
      line("Whole skeins", wholes.value(), "m", shown(whole, "") + " × " + shown(skein.value(), "m"),
           "label");
    ErrorShare scale, moisture;
    Metres by_weight;
    if (!parts.empty()) {
      const auto weighed = weighed_length(on_scale(parts, label));
      if (!weighed) return tl::unexpected<Error>(weighed.error());
      by_weight = weighed->length;
      scale = weighed->scale;
      moisture = weighed->moisture;
      result_.lines.insert(result_.lines.end(), weighed->lines.begin(), weighed->lines.end());
      for (const std::string& sentence : weighed->assumed) assume(sentence);
    } else if (whole > 0) {
      assume("length of a skein taken from its label");
    }
    result_.length = wholes + by_weight;
    const double all = result_.length.value(), part = by_weight.value();
    result_.low = metres(
        std::max(0.0, all - together({all * label.shorter, part * scale.shorter, part * moisture.shorter})));
    result_.high = metres(all + together({all * label.longer, part * scale.longer, part * moisture.longer}));
    result_.pieces =
        std::max(1, static_cast<int>(std::ceil(whole - 1e-9) + static_cast<double>(parts.size())));
    if (whole > 0 && !parts.empty())
      line("Length of the yarn", all, "m", shown(wholes.value(), "m") + " + " + shown(part, "m"), "");
    return {};
  }

  WeighedYarn on_scale(const std::vector<Grams>& parts, const ErrorShare& label) const {
    WeighedYarn weighed;
    weighed.reading = sum_of(parts);
    weighed.readings = static_cast<int>(parts.size());
    weighed.put_up = yarn_.put_up;
    weighed.composition = yarn_.composition;
    weighed.spinning = yarn_.spinning;
    weighed.market = yarn_.market;
    if (on_hand_.new_skein) weighed.new_skein = on_hand_.new_skein->value;
    if (on_hand_.humidity_pct) weighed.humidity_pct = on_hand_.humidity_pct->value;
    if (on_hand_.scale_step) weighed.scale_step = on_hand_.scale_step->value;
    weighed.label = label;
    return weighed;
  }

  Expected<void> by_reel() {
    const auto above_zero = [](const auto& entered, double value) {
      return entered && std::isfinite(value) && value > 0;
    };
    if (!above_zero(on_hand_.turns, on_hand_.turns ? on_hand_.turns->value : 0))
      return failure(ErrorKind::not_found, "a reel without turns", "how many turns were counted");
    if (!above_zero(on_hand_.circumference,
                    on_hand_.circumference ? on_hand_.circumference->value.value() : 0))
      return failure(ErrorKind::not_found, "a reel without a circumference", "the length of one turn");
    const double stretch = on_hand_.stretch_pct ? on_hand_.stretch_pct->value : 0;
    if (!std::isfinite(stretch) || stretch < 0 || stretch >= 100)
      return failure(ErrorKind::out_of_range, "a stretch of " + shown(stretch, "%"),
                     "what ten turns lose when let go: 0 or more and below 100 %");
    const double turns = on_hand_.turns->value, around = on_hand_.circumference->value.value();
    line("Turns on the reel", turns, "", "counted", "");
    line("Circumference", around, "m", "one turn", "");
    line("Stretch", stretch, "%",
         on_hand_.stretch_pct ? "ten turns let go and measured again" : "not measured", "");
    result_.length = metres(turns * around * (1 - stretch / 100));
    double shorter = constant(pattern_, "bench_reel_error_pct") / 100;
    const double longer = shorter;
    if (!on_hand_.stretch_pct) {
      const double feared = constant(pattern_, "bench_reel_stretch_pct");
      shorter = together({shorter, feared / 100});
      assume("stretch on the reel not measured: it may shrink by up to " + shown(feared, "%") +
             " when let go. Let ten turns relax and measure them again");
    }
    err(shorter, longer);
    line("Error of the count", 100 * longer, "%", "of turns and circumference", std::string(trade));
    line("Length of the yarn", result_.length.value(), "m",
         shown(turns, "") + " × " + shown(around, "m") + " × (1 − " + shown(stretch / 100, "") + ")", "");
    const std::vector<Grams> parts = weighed_parts();
    if (!parts.empty()) result_.density = result_.length / sum_of(parts);
    result_.pieces = pieces_said(parts);
    return {};
  }

  // Skeins that a length known as a whole lies in.
  int pieces_said(const std::vector<Grams>& parts) const {
    return std::max(1, static_cast<int>(std::ceil(whole_skeins() - 1e-9)) + static_cast<int>(parts.size()));
  }

  Expected<void> by_samples() {
    std::vector<double> densities;
    Metres length;
    Grams weight;
    for (std::size_t i = 0; i < on_hand_.sampled.size(); ++i) {
      const SampledLength& one = on_hand_.sampled[i];
      const std::string which = "sample " + std::to_string(i + 1);
      if (!one.length || !(one.length->value > metres(0)) || !std::isfinite(one.length->value.value()))
        return failure(ErrorKind::not_found, which + " without a length", "a length above 0");
      if (!one.weight || !(one.weight->value > grams(0)) || !std::isfinite(one.weight->value.value()))
        return failure(ErrorKind::not_found, which + " without a weight", "a weight above 0");
      length += one.length->value;
      weight += one.weight->value;
      densities.push_back((one.length->value / one.weight->value).value());
    }
    if (densities.empty())
      return failure(ErrorKind::not_found, "no sampled length", "lengths of the yarn and their weights");
    std::vector<Grams> parts = weighed_parts();
    Grams all = sum_of(parts);
    if (const double whole = whole_skeins(); whole > 0) {
      if (!yarn_.put_up.weight)
        return failure(ErrorKind::not_found, "whole skeins of no known weight", "the weight of a skein");
      all += whole * yarn_.put_up.weight->value;
    }
    if (!(all > grams(0)))
      return failure(ErrorKind::not_found, "samples without the weight of all the yarn",
                     "grams of the yarn on the scale");
    state_samples(densities, length, weight, all, parts.size());
    result_.pieces = pieces_said(parts);
    return {};
  }

  void state_samples(const std::vector<double>& densities, Metres length, Grams weight, Grams all,
                     std::size_t readings) {
    const double n = static_cast<double>(densities.size());
    const Grams step = scale_step();
    const double scale = scale_error_share(step, weight);
    const double scale_of_all =
        scale_error_share(step, all) * std::sqrt(static_cast<double>(std::max<std::size_t>(1, readings)));
    const double spread = spread_of(densities) / std::sqrt(n);
    result_.length = all * (length / weight);
    result_.density = length / weight;
    line("Sampled lengths", length.value(), "m", shown(n, "") + (n == 1 ? " length" : " lengths"), "");
    line("Their weight", weight.value(), "g", "", "scale");
    line("Metres in a gram", result_.density->value(), "m/g",
         shown(length.value(), "m") + " ÷ " + shown(weight.value(), "g"), "");
    line("Error of the scale", 100 * scale, "%",
         "half a step of " + shown(step.value(), "g") + " in " + shown(weight.value(), "g"), "scale");
    line("Spread of the lengths", 100 * spread, "%",
         shown(100 * spread * std::sqrt(n), "%") + " ÷ √" + shown(n, ""), "");
    line("Error of the sample", 100 * together({scale, spread}), "%", "both together", "");
    // The spread is one standard deviation; half a scale step is as far as a scale can be off.
    const double error = together({scale, scale_of_all, spread / deviation_of(1)});
    err(error, error);
    line("Length of the yarn", result_.length.value(), "m",
         shown(all.value(), "g") + " × " + shown(result_.density->value(), "m/g"), "");
  }

  // Coefficient of variation of a metre's weight from length to length.
  double spread_of(const std::vector<double>& densities) {
    constexpr std::size_t enough = 4;
    const double n = static_cast<double>(densities.size());
    double mean = 0, squares = 0;
    for (double density : densities) mean += density / n;
    for (double density : densities) squares += (density - mean) * (density - mean);
    const double found = n > 1 ? std::sqrt(squares / (n - 1)) / mean : 0;
    if (densities.size() >= enough) return found;
    const double usual = constant(pattern_, "bench_handspun_cv_pct") / 100;
    assume("fewer than four lengths say little of the spread: at least " + shown(100 * usual, "%") +
           " taken");
    return std::max(found, usual);
  }

  Expected<void> by_typed_length() {
    if (!on_hand_.length) return failure(ErrorKind::not_found, "no length", "its length");
    const double length = on_hand_.length->value.value();
    if (!std::isfinite(length) || length < 0)
      return failure(ErrorKind::out_of_range, "a length of " + shown(length, "m"), "0 m or more");
    result_.length = on_hand_.length->value;
    const ErrorShare label = label_error(yarn_);
    err(label.shorter, label.longer);
    assume("a length as typed, taken to err as the length of a skein does");
    line("Length of the yarn", length, "m", "typed", "");
    const std::vector<Grams> parts = weighed_parts();
    if (!parts.empty() && length > 0) result_.density = result_.length / sum_of(parts);
    result_.pieces = pieces_said(parts);
    return {};
  }

  void err(double shorter, double longer) {
    result_.low = result_.length * std::max(0.0, 1 - shorter);
    result_.high = result_.length * (1 + longer);
  }
  void line(std::string label, double value, std::string unit, std::string how, std::string source) {
    result_.lines.push_back({std::move(label), value, std::move(unit), std::move(how), std::move(source)});
  }
  void assume(std::string sentence) {
    auto& all = result_.assumed;
    if (std::find(all.begin(), all.end(), sentence) == all.end()) all.push_back(std::move(sentence));
  }

  const Pattern& pattern_;
  const YarnOnHand& on_hand_;
  const Yarn& yarn_;
  std::string name_;
  LengthOnHand result_;
};

std::string shade_name(const Shade& shade) {
  return shade.name.empty() || shade.number.empty() ? shade.name + shade.number
                                                    : shade.name + " " + shade.number;
}

}  // namespace

Expected<LengthOnHand> length_on_hand(const Pattern& pattern, const YarnOnHand& on_hand) {
  const std::string name = on_hand_name(pattern, on_hand);
  const Yarn* yarn = pattern.yarn(on_hand.yarn);
  // What was reeled, sampled or typed needs no band.
  static const Yarn unknown;
  return LengthWork(pattern, on_hand, yarn != nullptr ? *yarn : unknown, name).work_out();
}

std::optional<Centimetres> width_of_wrap(const YarnOnHand& yarn) {
  if (!yarn.wraps_per_cm || !std::isfinite(yarn.wraps_per_cm->value) || !(yarn.wraps_per_cm->value > 0))
    return std::nullopt;
  return centimetres(1 / yarn.wraps_per_cm->value);
}

std::string on_hand_name(const Pattern& pattern, const YarnOnHand& on_hand) {
  const Yarn* yarn = pattern.yarn(on_hand.yarn);
  std::string name = shade_name(on_hand.shade);
  if (name.empty() && yarn != nullptr) name = yarn->name;
  if (name.empty()) name = "Yarn without a name";
  if (!on_hand.lot.empty()) name += ", lot " + on_hand.lot;
  return name;
}

std::optional<double> times_thicker(const Yarn& yarn, std::optional<MetresPerGram> density, const Yarn& than,
                                    std::optional<MetresPerGram> than_density) {
  if (!density || !than_density || !(density->value() > 0) || !(than_density->value() > 0))
    return std::nullopt;
  const auto fibres = fibre_density(yarn.composition), than_fibres = fibre_density(than.composition);
  if (!fibres || !than_fibres) return thickness_ratio(*than_density, 1, *density, 1);
  return thickness_ratio(*than_density, than_fibres->g_per_cm3, *density, fibres->g_per_cm3);
}

}  // namespace skeinproof
