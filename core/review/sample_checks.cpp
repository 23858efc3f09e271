// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/need/fabric_loop.h"
#include "core/need/weighed_sample.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/role_figures.h"

namespace skeinproof {
namespace {

const PrintedValue* lone_value(const Statement& statement) {
  return statement.values.size() == 1 ? &statement.values.front() : nullptr;
}

std::optional<std::size_t> size_of_sample(const PrintedView& printed, const Statement* of_size) {
  if (of_size == nullptr) return std::nullopt;
  std::string label(trimmed(of_size->words));
  if (label.empty() && !of_size->values.empty()) label = std::string(printed.words(of_size->values.front()));
  for (std::size_t i = 0; i < printed.sizes(); ++i)
    if (lower_ascii(printed.size_labels()[i]) == lower_ascii(label)) return i;
  return std::nullopt;
}

// One colour of a sample on a scale: printed, or weighed by ourselves.
struct OnScale {
  const RoleFigures* role = nullptr;
  const Statement* statement = nullptr;  // null where it was not printed
  const Weighing* weighing = nullptr;
  std::size_t size = 0;  // printed size
  double grams = 0;
  bool whole_item = true;
};

std::optional<std::size_t> printed_size(const RoleFigures& role, std::size_t in_force) {
  for (std::size_t i = 0; i < role.in_force.size(); ++i)
    if (role.in_force[i] == in_force) return i;
  return std::nullopt;
}

void take_weighings(const ReviewInput& input, const RoleFigures& role, std::vector<OnScale>& all) {
  if (role.fact == nullptr) return;
  for (const Weighing& weighing : input.pattern.weighings) {
    const auto index = input.pattern.size_index(weighing.size);
    const auto size = index ? printed_size(role, *index) : std::nullopt;
    if (!weighing.used || weighing.tester || !size) continue;
    for (const WeighedRole& weighed : weighing.roles) {
      if (weighed.role != role.fact->id || !weighed.reading) continue;
      OnScale one;
      one.role = &role;
      one.weighing = &weighing;
      one.size = *size;
      one.grams = weighed.reading->value.value() - (weighed.notions ? weighed.notions->value.value() : 0);
      one.whole_item = weighing.only.empty() && weighing.altered.empty();
      all.push_back(one);
    }
  }
}

// Every colour of every sample; what is printed speaks before what was weighed.
std::vector<OnScale> samples_of(const ReviewInput& input, const std::vector<RoleFigures>& roles) {
  std::vector<OnScale> all;
  const auto sample_sizes = input.printed.all(StatementKind::sample_size);
  const auto size = size_of_sample(input.printed, sample_sizes.empty() ? nullptr : sample_sizes.front());
  const auto weights = input.printed.all(StatementKind::sample_weight);
  for (const RoleFigures& role : roles) {
    bool stated = false;
    for (const Statement* weight : weights) {
      const PrintedValue* value = lone_value(*weight);
      if (weight->subject != role.printed->label || weight->unit != PrintedUnit::gram || !size) continue;
      if (value == nullptr || !value->number) continue;
      OnScale one;
      one.role = &role;
      one.statement = weight;
      one.size = *size;
      one.grams = *value->number;
      all.push_back(one);
      stated = true;
    }
    if (!stated) take_weighings(input, role, all);
  }
  return all;
}

void show_sample(Finding& finding, const ReviewInput& input, const OnScale& sample) {
  finding.roles = {sample.role->printed->label};
  add_size(finding, input.printed, sample.size);
  if (sample.statement != nullptr) show(finding, input.printed, *sample.statement);
}

std::string weighing_name(const Pattern& pattern, const Weighing& weighing) {
  if (!weighing.name.empty()) return weighing.name;
  const auto index = pattern.size_index(weighing.size);
  return index ? "sample of size " + pattern.sizes[*index].label : "sample";
}

void nothing_weighed(Findings& findings) {
  findings.cannot("no weighed sample is known", "the sample's grams, colour by colour");
}

const Role* role_of(const ReviewInput& input, const RoleFigures& role) {
  return role.fact != nullptr ? input.pattern.role(role.fact->id) : nullptr;
}

double over_pair(const OnScale& sample) {
  const SizeNeed* need = sample.role->need_at(sample.size);
  if (need == nullptr || !sample.role->skein_m || !sample.role->skein_g) return 0;
  return sample.grams * *sample.role->skein_m / *sample.role->skein_g / need->knitted.value();
}

bool one_of_a_pair(const ReviewInput& input, double ratio) {
  return ratio >= input.need.constant_of("review_pair_low") &&
         ratio <= input.need.constant_of("review_pair_high");
}

// Skeins of one item alone, by the same layers as for both.
std::optional<int> skeins_of_one(const ReviewInput& input, const RoleFigures& role, std::size_t size) {
  const SizeNeed* need = role.need_at(size);
  if (need == nullptr || !role.skein_m || !(*role.skein_m > 0)) return std::nullopt;
  const double planned =
      (need->knitted.value() / 2 + need->swatch.value()) * (1 + input.pattern.house().allowance_pct / 100);
  return static_cast<int>(std::ceil(planned / *role.skein_m - 1e-9));
}

void pair_counted_once(const ReviewInput& input, Findings& findings, const RoleFigures& role,
                       const Pair& pair) {
  if (!role.printed->count) return;
  const FindingWords words(input);
  const std::size_t n = input.printed.sizes();
  std::vector<std::string> sizes{"size"}, printed{"printed"}, one{"one " + pair.one}, both{"pair"};
  std::vector<std::size_t> differ;
  for (std::size_t i = 0; i < n; ++i) {
    const auto stated = role.printed_skeins(i);
    const auto of_one = skeins_of_one(input, role, i);
    const auto of_both = role.skeins_needed(i);
    if (!stated || !of_one || !of_both || *stated != *of_one) return;
    if (*of_both != *of_one) differ.push_back(i);
    sizes.push_back(input.printed.size_labels()[i]);
    printed.push_back(words.number(*stated, 2));
    one.push_back(std::to_string(*of_one));
    both.push_back(std::to_string(*of_both));
  }
  if (differ.empty()) return;
  const PrintedList& list = *role.printed->count;
  Finding& finding =
      findings.add("counted for one " + pair.one + ": " + printed_words(input.printed, *list.statement));
  finding.roles = {role.printed->label};
  finding.apart = "count";
  show(finding, input.printed, *list.statement);
  for (const std::size_t size : differ) {
    add_size(finding, input.printed, size);
    const PrintedValue* value = value_at(list, size);
    if (value != nullptr && list.printed == n)
      propose(finding, input.printed, value->span, std::to_string(*role.skeins_needed(size)));
  }
  finding.evidence = in_columns({sizes, printed, one, both});
  finding.query = "The counts of " + role.printed->label + ", " +
                  printed_words(input.printed, *list.statement) + ", are those of one " + pair.one +
                  "; the pair takes " + words.skeins(*role.skeins_needed(differ.back())) + " in size " +
                  finding.sizes.back() + ". Were they counted from one " + pair.one + "?";
}

}  // namespace

void check_n8(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const auto roles = role_figures(input);
  const auto samples = samples_of(input, roles);
  if (samples.empty()) nothing_weighed(findings);
  for (const OnScale& sample : samples) {
    const RoleFigures& role = *sample.role;
    const auto skeins = role.printed_skeins(sample.size);
    if (!skeins || !role.skein_g || !role.skein_m || *skeins < 1) continue;
    const double bought = *skeins * *role.skein_g;
    const std::string printed =
        words.skeins(*skeins) + " × " + words.number(*role.skein_g) + " g = " + words.number(bought) + " g";
    const std::string weighed = "the sample weighs " + words.number(sample.grams) + " g";
    if (sample.grams > bought) {
      Finding& finding = findings.add(Severity::stop, "the sample weighs more than the printed yarn");
      show_sample(finding, input, sample);
      show_value(finding, input.printed, *role.printed->count->statement,
                 *value_at(*role.printed->count, sample.size));
      finding.evidence = {weighed, printed};
      finding.at_stake =
          "size " + finding.sizes.front() + " short by " + words.number(sample.grams - bought) + " g";
      finding.query = "In size " + finding.sizes.front() + " " + weighed + " in " + role.printed->label +
                      ", and " + printed + ". Were notions on the scale, or is the count too low?";
      continue;
    }
    const SizeNeed* need = role.need_at(sample.size);
    const double swatch = need != nullptr ? need->swatch.value() : 0;
    const double planned = (sample.grams * *role.skein_m / *role.skein_g + swatch) *
                           (1 + input.pattern.house().allowance_pct / 100);
    const bool half_a_pair = pair_of(input).paired && one_of_a_pair(input, over_pair(sample));
    if (!sample.whole_item || half_a_pair || planned > (*skeins - 1) * *role.skein_m * (1 + 1e-9)) continue;
    Finding& finding = findings.add(Severity::ask, "the sample took a skein less than is printed");
    show_sample(finding, input, sample);
    show_value(finding, input.printed, *role.printed->count->statement,
               *value_at(*role.printed->count, sample.size));
    finding.evidence = {"(" + words.number(sample.grams) + " g × " + words.metres(*role.skein_m) + " ÷ " +
                            words.number(*role.skein_g) + " g + swatch " + words.metres(swatch) + ") × " +
                            words.number(1 + input.pattern.house().allowance_pct / 100, 3) + " = " +
                            words.metres(planned),
                        words.skeins(*skeins - 1) + " hold " + words.metres((*skeins - 1) * *role.skein_m)};
    finding.query = "By the sample of size " + finding.sizes.front() + ", " + role.printed->label +
                    " takes " + words.metres(planned) + " with everything counted, which " +
                    words.skeins(*skeins - 1) + " hold; printed are " + words.number(*skeins, 2) +
                    ". Is that meant?";
  }
}

void check_n9(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const auto& calibrations = input.assessment.calibrations;
  if (calibrations.empty()) {
    nothing_weighed(findings);
    return;
  }
  const double low = input.need.constant_of("loop_widths_low");
  const double high = input.need.constant_of("loop_widths_high");
  for (const Calibration& calibration : calibrations) {
    const Role* role = input.pattern.role(calibration.role);
    if (role == nullptr) continue;
    for (const Calibration::Loop& loop : calibration.loops) {
      const Fabric* fabric = input.pattern.fabric(loop.fabric);
      if (fabric == nullptr) continue;
      std::vector<std::string> lines;
      if (!loop.plausible && loop.widths)
        lines.push_back("weighed loop " + words.number(loop.loop.value(), 3) +
                        " cm = " + words.number(*loop.widths, 2) + " stitch widths, expected " +
                        words.number(low, 1) + " to " + words.number(high, 1));
      Fabric swatched = *fabric;
      swatched.loop_source = LoopSource::from_swatch;
      const FabricLoop swatch =
          fabric->swatch.weight && fabric->swatch.stitches
              ? fabric_loop(input.pattern, swatched, input.need.main_yarn_of(fabric->id))
              : FabricLoop{};
      if (swatch.loop && swatch.loop->value() > 0) {
        const double off = loop.loop.value() / swatch.loop->value() - 1;
        if (std::abs(off) > input.need.constant_of("review_swatch_loop_pct") / 100)
          lines.push_back("weighed loop " + words.number(loop.loop.value(), 3) + " cm, swatch " +
                          words.number(swatch.loop->value(), 3) + " cm: " + words.percent(off) + " apart");
      }
      if (lines.empty()) continue;
      Finding& finding = findings.add("a weighed sample whose loops do not fit");
      finding.roles = {role->label};
      finding.apart = fabric->name + " " + std::to_string(calibration.weighing.value);
      for (const Statement* weight : input.printed.all(StatementKind::sample_weight))
        if (weight->subject == role->label) show(finding, input.printed, *weight);
      finding.evidence = lines;
      finding.query = "From the weight of the sample, one stitch of " + role->label + " in " + fabric->name +
                      " comes out wrong: " + join(lines, "; ") +
                      ". Were buttons in, was it dry, and which size was it?";
    }
  }
}

void check_n11(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const double most = input.need.constant_of("review_chart_metres_pct") / 100;
  bool any_chart = false, any_length = false;
  for (const RoleFigures& role : role_figures(input)) {
    const Role* fact = role_of(input, role);
    if (fact == nullptr) continue;
    const auto& uses = input.need.parts_of(fact->id);
    const bool charted = std::any_of(uses.begin(), uses.end(), [](const PartUse& use) {
      return use.section != nullptr && use.section->source == StitchSource::chart;
    });
    if (!charted) continue;
    any_chart = true;
    for (const SampleLength& sample : sample_lengths(input.need, *fact)) {
      any_length = true;
      const RoleParts model = parts_on_scale(input.need, *fact, sample);
      if (!model.any() || !model.missing.empty() || !(model.total() > metres(0))) continue;
      const double off = sample.length / model.total() - 1;
      if (std::abs(off) <= most) continue;
      Finding& finding = findings.add("the sample and the chart ask for different lengths");
      finding.roles = {role.printed->label};
      finding.apart = std::to_string(sample.weighing->id.value);
      if (const auto size = printed_size(role, sample.size_index)) add_size(finding, input.printed, *size);
      if (role.printed->role != nullptr) show(finding, input.printed, *role.printed->role);
      finding.evidence = {
          weighing_name(input.pattern, *sample.weighing) + ": " + words.metres(sample.length.value()),
          "by the chart: " + words.metres(model.total().value()) + ", of it stitches " +
              words.percent(model.stitches / model.total()) + ", floats " +
              words.percent(model.floats / model.total()) + ", edges and ends " +
              words.percent(model.extra / model.total()),
          words.percent(off) + " apart; up to " + words.percent(most) + " is usual"};
      finding.query = "For " + role.printed->label + " the weighed sample comes to " +
                      words.metres(sample.length.value()) + " and the chart with its floats to " +
                      words.metres(model.total().value()) + ". Is the chart the one that was knitted?";
    }
    const auto supply_unit = [&](std::size_t size) {
      const auto supply = printed_supply(input, role, size);
      return supply && !supply->skeins ? supply : std::nullopt;
    };
    std::vector<std::size_t> outside;
    std::vector<std::string> lines;
    const Statement* list = nullptr;
    for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
      const auto supply = supply_unit(i);
      const SizeNeed* need = role.need_at(i);
      if (!supply || need == nullptr) continue;
      any_length = true;
      if (supply->metres >= need->knitted.value() * (1 - most) &&
          supply->metres <= need->planned.value() * (1 + most))
        continue;
      list = supply->statement;
      outside.push_back(i);
      lines.push_back("size " + input.printed.size_labels()[i] + ": printed " + supply->words +
                      "; by the chart " + words.metres(need->knitted.value()) + " knitted, " +
                      words.metres(need->planned.value()) + " planned");
    }
    if (outside.empty()) continue;
    Finding& finding = findings.add("the stated length and the chart differ");
    finding.roles = {role.printed->label};
    finding.apart = "stated";
    show(finding, input.printed, *list);
    for (const std::size_t size : outside) add_size(finding, input.printed, size);
    finding.evidence = lines;
    finding.query = "For " + role.printed->label +
                    " the stated length does not fit the chart: " + lines.front() + ". Which is right?";
  }
  if (!any_chart)
    findings.cannot("no chart is worked in any colour listed", "the chart and where it is worked");
  else if (!any_length)
    findings.cannot("no sample is weighed and no length stated", "the sample's grams, colour by colour");
}

void check_n12(const ReviewInput& input, Findings& findings) {
  const Pair pair = pair_of(input);
  if (!pair.paired) return;
  const FindingWords words(input);
  const auto roles = role_figures(input);
  std::vector<std::string> without;
  for (const RoleFigures& role : roles) {
    bool known = false;
    for (std::size_t i = 0; i < input.printed.sizes(); ++i) known = known || role.need_at(i) != nullptr;
    if (!known) without.push_back(role.printed->label);
    pair_counted_once(input, findings, role, pair);
  }
  for (const OnScale& sample : samples_of(input, roles)) {
    const double ratio = sample.whole_item ? over_pair(sample) : 0;
    if (!one_of_a_pair(input, ratio)) continue;
    Finding& finding = findings.add("the sample's weight is that of one " + pair.one);
    show_sample(finding, input, sample);
    finding.apart = "weight";
    const SizeNeed* need = sample.role->need_at(sample.size);
    finding.evidence = {words.number(sample.grams) + " g = " + words.metres(ratio * need->knitted.value()),
                        "the pair by its stitches: " + words.metres(need->knitted.value()) + ", so " +
                            words.percent(ratio) + " of it was on the scale"};
    finding.query = "The sample's " + words.number(sample.grams) + " g of " + sample.role->printed->label +
                    " are " + words.percent(ratio) + " of what the pair takes in size " +
                    finding.sizes.front() + ". Was one " + pair.one + " weighed?";
  }
  if (!without.empty())
    findings.cannot("no need is known for " + listed(without),
                    "the stitches of its pieces, or a weighed sample");
}

void check_n13(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  bool any = false;
  for (const Weighing& weighing : input.pattern.weighings) {
    const auto index = input.pattern.size_index(weighing.size);
    if (!weighing.used || !index || weighing.only.size() > 0) continue;
    double notions = 0;
    std::vector<std::string> names;
    for (const Notion& notion : input.pattern.notions) {
      const auto* count = notion.count.find(*index);
      if (count == nullptr || !notion.weight_each) continue;
      notions += count->value * notion.weight_each->value.value();
      names.push_back(words.number(count->value, 2) + " × " +
                      words.number(notion.weight_each->value.value()) + " g " + notion.name);
    }
    if (!(notions > 0)) continue;
    double surplus = 0;
    std::vector<std::string> labels;
    bool known = !weighing.roles.empty();
    for (const WeighedRole& weighed : weighing.roles) {
      const Role* role = input.pattern.role(weighed.role);
      if (role == nullptr || !weighed.reading) continue;
      const Yarn* yarn = input.pattern.yarn(role->yarn);
      const RoleParts model = parts_on_scale(input.need, *role, weighing, *index);
      if (weighed.notions || yarn == nullptr || !yarn->put_up.length || !yarn->put_up.weight ||
          !model.missing.empty() || !model.any()) {
        known = false;
        break;
      }
      const double skein =
          weighed.new_skein ? weighed.new_skein->value.value() : yarn->put_up.weight->value.value();
      surplus +=
          weighed.reading->value.value() - model.total().value() * skein / yarn->put_up.length->value.value();
      labels.push_back(role->label);
    }
    if (!known) continue;
    any = true;
    const double step = weighing.scale_step ? weighing.scale_step->value.value() : 0;
    const double tolerance = notions * input.need.constant_of("review_notions_pct") / 100;
    if (std::abs(surplus - notions) > tolerance || surplus <= 2 * step) continue;
    Finding& finding = findings.add("the sample's surplus weight is that of its notions");
    finding.roles = labels;
    finding.apart = std::to_string(weighing.id.value);
    for (const Statement* weight : input.printed.all(StatementKind::sample_weight))
      show(finding, input.printed, *weight);
    const std::string line =
        words.number(surplus) + " g extra ≈ " + listed(names) + " = " + words.number(notions) + " g";
    finding.evidence = {weighing_name(input.pattern, weighing) + ": " + line};
    finding.query = "The sample weighs more than its stitches: " + line + ". Were the notions on the scale?";
  }
  if (!any)
    findings.cannot("no whole sample with notions of known weight is weighed",
                    "the sample's grams, and what its notions weigh each");
}

void check_n18(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const auto shown = printed.all(StatementKind::sample_size);
  const auto shown_size = size_of_sample(printed, shown.empty() ? nullptr : shown.front());
  const auto roles = role_figures(input);
  bool any = false;
  for (const Weighing& weighing : input.pattern.weighings) {
    const auto index = input.pattern.size_index(weighing.size);
    if (!weighing.used || weighing.tester || !index || !weighing.altered.empty()) continue;
    any = true;
    const auto size = roles.empty() ? std::nullopt : printed_size(roles.front(), *index);
    if (!shown_size || !size || *shown_size == *size || !weighing.note.empty()) continue;
    Finding& finding = findings.add("the sample weighed is not of the size shown");
    finding.apart = std::to_string(weighing.id.value);
    show(finding, printed, *shown.front());
    add_size(finding, printed, *shown_size);
    add_size(finding, printed, *size);
    finding.evidence = {
        "printed: " + printed_words(printed, *shown.front()),
        "weighed: " + weighing_name(input.pattern, weighing) + ", size " + printed.size_labels()[*size]};
    finding.query = "The text shows size " + printed.size_labels()[*shown_size] +
                    " and the sample weighed is of size " + printed.size_labels()[*size] +
                    ". Which was it, and was anything scaled?";
  }
  for (const Fabric& fabric : input.pattern.fabrics) {
    const Yarn* swatched = input.pattern.yarn(fabric.swatch.yarn);
    const Yarn* used = input.need.main_yarn_of(fabric.id);
    if (swatched == nullptr || used == nullptr || !fabric.swatch.weight) continue;
    any = true;
    if (swatched->id == used->id) continue;
    Finding& finding = findings.add("the swatch is in another yarn than the piece");
    finding.apart = "swatch " + fabric.name;
    for (const PrintedYarn& yarn : printed.yarns())
      if (yarn.fact == used->id && !yarn.names.empty()) show(finding, printed, *yarn.names.front());
    finding.evidence = {"swatch of " + fabric.name + ": " + swatched->name, "pattern: " + used->name};
    finding.query = "The swatch of " + fabric.name + " was knitted in " + swatched->name +
                    " and the pattern is in " + used->name + ". Was its yarn scaled?";
  }
  if (!any) nothing_weighed(findings);
}

void check_n20(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  bool any = false;
  for (const RoleFigures& role : role_figures(input)) {
    const Role* fact = role_of(input, role);
    if (fact == nullptr) continue;
    for (const SampleLength& sample : sample_lengths(input.need, *fact)) {
      if (!sample.weighing->tester) continue;
      any = true;
      const auto size = printed_size(role, sample.size_index);
      const auto supply = size ? printed_supply(input, role, *size) : std::nullopt;
      if (!supply) continue;
      // What was knitted otherwise, or in part, is brought back to the pattern by its stitches.
      const RoleParts model = parts_on_scale(input.need, *fact, sample);
      const SizeNeed* need = role.need_at(*size);
      const bool as_printed = sample.weighing->altered.empty() && sample.weighing->only.empty();
      double used = sample.length.value();
      if (!as_printed) {
        if (need == nullptr || !model.any() || !model.missing.empty() || !(model.total() > metres(0)))
          continue;
        used *= need->knitted / model.total();
      }
      if (used <= supply->metres) continue;
      Finding& finding = findings.add("a tester used more than the printed yarn");
      finding.roles = {role.printed->label};
      add_size(finding, input.printed, *size);
      finding.apart = std::to_string(sample.weighing->id.value);
      show_value(finding, input.printed, *supply->statement, *supply->value);
      const std::string who = sample.weighing->who.empty() ? weighing_name(input.pattern, *sample.weighing)
                                                           : sample.weighing->who;
      finding.evidence = {who + ": " + words.metres(sample.length.value()) + " on the scale" +
                              (as_printed ? "" : ", " + words.metres(used) + " for the piece as written"),
                          supply->words};
      finding.at_stake = "size " + finding.sizes.front() + " short by " + words.metres(used - supply->metres);
      if (const auto wanted = role.count_in_force(*size);
          wanted && supply->skeins && *wanted > *supply->skeins)
        propose(finding, input.printed, supply->value->span, std::to_string(*wanted));
      finding.query = "In size " + finding.sizes.front() + " a tester used " + words.metres(used) + " of " +
                      role.printed->label + ", and " + supply->words +
                      ". Was it the same yarn, and should the count go up?";
    }
  }
  if (!any) findings.cannot("no tester's weights are known", "testers' grams, colour by colour");
}

}  // namespace skeinproof
