// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yarn/weigh.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/reference/lookup.h"
#include "core/units/show.h"
#include "core/yarn/moisture.h"

namespace skeinproof {
namespace {

std::string figure(double value, std::string_view unit) {
  return show_short(value, 4) + (unit.empty() ? "" : " ") + std::string(unit);
}

std::string percent_words(double share) { return show_short(share * 100, 1) + " %"; }

double together(std::initializer_list<double> shares) {
  double squares = 0;
  for (double share : shares) squares += share * share;
  return std::sqrt(squares);
}

double percent_of_rule(std::string_view id, std::optional<double> Figure::*member) {
  const RuleOfThumb* rule = rule_by_id(id);
  return rule ? std::abs((rule->figure.*member).value_or(0)) / 100 : 0;
}

// What one skein of the label weighs on this scale, and how uncertain the air makes it.
struct SkeinOnScale {
  Grams weight{};
  ErrorShare moisture;
};

class LengthByWeight {
 public:
  explicit LengthByWeight(const WeighedYarn& yarn) : yarn_(yarn) {}

  Expected<WeighedLength> work_out() {
    if (auto missing = what_is_missing()) return tl::unexpected(*missing);
    net_ = yarn_.reading - yarn_.notions;
    line("Yarn on the scale", net_.value(), "g",
         yarn_.notions.value() > 0 ? figure(yarn_.reading.value(), "g") + " less " +
                                         figure(yarn_.notions.value(), "g") + " of notions"
                                   : "",
         "scale");
    const auto skein = skein_on_scale();
    if (!skein) return tl::unexpected(skein.error());
    result_.moisture = skein->moisture;
    state_scale_error(skein->weight);
    state_label_error();
    state_moisture_error();
    state_length(skein->weight);
    return std::move(result_);
  }

 private:
  std::optional<Error> what_is_missing() const {
    const auto error = [](ErrorKind kind, std::string found, std::string expected) {
      return std::optional(Error{kind, {}, std::move(found), std::move(expected)});
    };
    const auto sound = [](double value) { return std::isfinite(value) && value > 0; };
    if (!sound(yarn_.reading.value()))
      return error(ErrorKind::out_of_range, "no weight", "grams on the scale");
    if (!(yarn_.notions.value() >= 0) || !(yarn_.notions < yarn_.reading))
      return error(ErrorKind::out_of_range, "notions of " + figure(yarn_.notions.value(), "g"),
                   "less than the " + figure(yarn_.reading.value(), "g") + " on the scale");
    if (!yarn_.put_up.length || !sound(yarn_.put_up.length->value.value()))
      return error(ErrorKind::not_found, "no length", "the length of one skein by its label");
    if (yarn_.new_skein && !sound(yarn_.new_skein->value()))
      return error(ErrorKind::out_of_range, "a new skein of no weight", "its grams on the scale");
    if (!yarn_.new_skein && (!yarn_.put_up.weight || !sound(yarn_.put_up.weight->value.value())))
      return error(ErrorKind::not_found, "no weight",
                   "the weight of one skein by its label, or a new skein on the same scale");
    if (yarn_.scale_step && !sound(yarn_.scale_step->value()))
      return error(ErrorKind::out_of_range, "a scale step of nothing", "the smallest step the scale shows");
    return std::nullopt;
  }

  Expected<SkeinOnScale> skein_on_scale() {
    if (yarn_.new_skein) {
      line("A new skein in the same hour", yarn_.new_skein->value(), "g", "same scale, same air", "scale");
      return SkeinOnScale{*yarn_.new_skein, {}};
    }
    return yarn_.humidity_pct ? skein_at_humidity(*yarn_.humidity_pct) : skein_by_label();
  }

  Expected<SkeinOnScale> skein_at_humidity(double humidity_pct) {
    const auto gram = label_gram(yarn_.composition, yarn_.spinning, yarn_.market, humidity_pct);
    if (!gram) return tl::unexpected(gram.error());
    assume(gram->assumed);
    const double label = yarn_.put_up.weight->value.value();
    const std::string sources = join(gram->sources, "; ");
    const std::string weight = figure(label, "g");
    line("Weight of one skein", label, "g", "", "label");
    line("Dry fibre in it", label * gram->dry, "g",
         weight + " × " + figure(gram->dry, "") + " by the official allowance", sources);
    line("One skein in air of " + figure(humidity_pct, "%"), label * gram->on_scale, "g",
         weight + " × " + figure(gram->on_scale, "") + " with the water it holds there", sources);
    return SkeinOnScale{grams(label * gram->on_scale),
                        {1 - gram->on_scale / gram->high, gram->on_scale / gram->low - 1}};
  }

  Expected<SkeinOnScale> skein_by_label() {
    const auto span = [&](double humidity_pct) {
      auto gram = label_gram(yarn_.composition, yarn_.spinning, yarn_.market, humidity_pct);
      if (gram) return *gram;
      // Wool takes up more water than any other yarn fibre.
      const std::vector<FibreShare> wool = {{"wool", "wool", {100, {}}}};
      return *label_gram(wool, yarn_.spinning, yarn_.market, humidity_pct);
    };
    const LabelGram dry = span(dry_room_pct);
    const LabelGram damp = span(damp_room_pct);
    if (!label_gram(yarn_.composition, yarn_.spinning, yarn_.market, dry_room_pct))
      assume({"fibres not known: allowed for the water of wool, which holds most"});
    assume(dry.assumed);
    assume({"moisture not corrected: allowed for air of " + figure(dry_room_pct, "") + "–" +
            figure(damp_room_pct, "%") + " relative humidity"});
    line("Weight of one skein", yarn_.put_up.weight->value.value(), "g", "as if it weighed this here",
         "label");
    return SkeinOnScale{yarn_.put_up.weight->value,
                        {std::max(0.0, 1 - 1 / damp.high), std::max(0.0, 1 / dry.low - 1)}};
  }

  void state_scale_error(Grams skein) {
    Grams step = yarn_.scale_step.value_or(grams(0));
    if (!yarn_.scale_step) {
      const RuleOfThumb* kitchen = rule_by_id("scale_kitchen");
      step = grams(kitchen ? kitchen->figure.value.value_or(1) : 1);
      assume({"scale step not stated: " + figure(step.value(), "g") + ", as a kitchen scale has"});
    }
    const double once = scale_error_share(step, net_);
    const double own = once * std::sqrt(std::max(1, yarn_.readings));
    const double notions = yarn_.notions.value() > 0 ? once : 0;
    const double whole = yarn_.new_skein ? scale_error_share(step, skein) : 0;
    const double share = together({own, notions, whole});
    result_.scale = {share, share};
    line("Error of the scale", share * 100, "%",
         "half a step of " + figure(step.value(), "g") + " in each reading", "scale");
  }

  void state_label_error() {
    constexpr std::string_view rule = "skein_var_mill";
    if (yarn_.label) {
      result_.label = *yarn_.label;
    } else {
      result_.label = {percent_of_rule(rule, &Figure::low), percent_of_rule(rule, &Figure::high)};
      assume({"length of a skein against its label taken as for mill-spun yarn"});
    }
    line("Error of the label", std::max(result_.label.shorter, result_.label.longer) * 100, "%",
         percent_words(result_.label.shorter) + " shorter to " + percent_words(result_.label.longer) +
             " longer",
         yarn_.label ? "stated" : "common practice, no source");
  }

  void state_moisture_error() {
    line("Error of the moisture", std::max(result_.moisture.shorter, result_.moisture.longer) * 100, "%",
         yarn_.new_skein ? "cancelled by the new skein"
                         : percent_words(result_.moisture.shorter) + " shorter to " +
                               percent_words(result_.moisture.longer) + " longer",
         "");
  }

  void state_length(Grams skein) {
    const Metres label = yarn_.put_up.length->value;
    line("Length of one skein", label.value(), "m", "", "label");
    result_.length = net_ / skein * label;
    const double shorter = together({result_.scale.shorter, result_.label.shorter, result_.moisture.shorter});
    const double longer = together({result_.scale.longer, result_.label.longer, result_.moisture.longer});
    result_.low = result_.length * std::max(0.0, 1 - shorter);
    result_.high = result_.length * (1 + longer);
    line("Length of the yarn", result_.length.value(), "m",
         figure(net_.value(), "g") + " ÷ " + figure(skein.value(), "g") + " × " + figure(label.value(), "m"),
         "");
  }

  void line(std::string label, double value, std::string unit, std::string how, std::string source) {
    result_.lines.push_back({std::move(label), value, std::move(unit), std::move(how), std::move(source)});
  }
  void assume(const std::vector<std::string>& sentences) {
    for (const std::string& sentence : sentences)
      if (std::find(result_.assumed.begin(), result_.assumed.end(), sentence) == result_.assumed.end())
        result_.assumed.push_back(sentence);
  }

  const WeighedYarn& yarn_;
  Grams net_{};
  WeighedLength result_;
};

}  // namespace

Expected<WeighedLength> weighed_length(const WeighedYarn& yarn) { return LengthByWeight(yarn).work_out(); }

double scale_error_share(Grams step, Grams reading) { return 0.5 * step.value() / reading.value(); }

}  // namespace skeinproof
