// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/need/fabric_loop.h"
#include "core/need/weighed_sample.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/weighed_samples.h"

namespace skeinproof {

namespace {

bool charted(const ReviewInput& input, RoleId role) {
  const auto& uses = input.need.parts_of(role);
  return std::any_of(uses.begin(), uses.end(), [](const PartUse& use) {
    return use.section != nullptr && use.section->source == StitchSource::chart;
  });
}

double most_apart(const ReviewInput& input) {
  return input.need.constant_of("review_chart_metres_pct") / 100;
}

std::string shares_in_words(const FindingWords& words, const SizeNeed& need) {
  Metres stitches, floats, extra;
  for (const PartMetres& part : need.parts) {
    stitches += part.stitches;
    floats += part.floats;
    extra += part.extra;
  }
  const Metres whole = stitches + floats + extra;
  if (!(whole > metres(0))) return {};
  return ", of it stitches " + words.percent(stitches / whole) + ", floats " + words.percent(floats / whole) +
         ", edges and ends " + words.percent(extra / whole);
}

// Whether the role was weighed at all.
bool sample_beside_chart(const ReviewInput& input, Findings& findings, const RoleFigures& role) {
  const FindingWords words(input);
  bool weighed = false;
  for (const Calibration& calibration : input.assessment.calibrations) {
    if (calibration.role != role.fact->id) continue;
    weighed = true;
    const auto weighing = std::find_if(input.pattern.weighings.begin(), input.pattern.weighings.end(),
                                       [&](const Weighing& one) { return one.id == calibration.weighing; });
    if (weighing == input.pattern.weighings.end() || role.evidence == nullptr) continue;
    const auto index = input.pattern.size_index(weighing->size);
    if (!index || *index >= role.evidence->sizes.size()) continue;
    const SizeEvidence& evidence = role.evidence->sizes[*index];
    if (!evidence.stitches || !(evidence.stitches->knitted > metres(0))) continue;
    // The whole item was weighed, or the part that was is scaled to it.
    const bool whole_item = weighing->only.empty() && weighing->altered.empty();
    if (!whole_item && !evidence.sample) continue;
    const Metres on_scale = whole_item ? calibration.weighed : evidence.sample->knitted;
    const double off = on_scale / evidence.stitches->knitted - 1;
    if (std::abs(off) <= most_apart(input)) continue;
    Finding& finding = findings.add("the sample and the chart ask for different lengths");
    finding.roles = {role.printed->label};
    finding.apart = std::to_string(weighing->id.value);
    if (const auto size = printed_size(role, *index)) add_size(finding, input.printed, *size);
    if (role.printed->role != nullptr) show(finding, input.printed, *role.printed->role);
    const std::string shares =
        *index < role.need->sizes.size() ? shares_in_words(words, role.need->sizes[*index]) : "";
    finding.evidence = {
        weighing_name(input.pattern, *weighing) + ": " + words.metres(on_scale.value()),
        "by the chart: " + words.metres(evidence.stitches->knitted.value()) + shares,
        words.percent(off) + " apart; up to " + words.percent(most_apart(input)) + " is usual"};
    finding.query = "For " + role.printed->label + " the weighed sample comes to " +
                    words.metres(on_scale.value()) + " and the chart with its floats to " +
                    words.metres(evidence.stitches->knitted.value()) +
                    ". Is the chart the one that was knitted?";
  }
  return weighed;
}

// Whether the role's length is stated at all.
bool stated_beside_chart(const ReviewInput& input, Findings& findings, const RoleFigures& role) {
  if (role.printed->count || role.measured == nullptr) return false;
  const FindingWords words(input);
  const double most = most_apart(input);
  std::vector<std::size_t> outside;
  std::vector<std::string> lines;
  bool any = false;
  for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
    const auto supply = printed_supply(input, role, i);
    const SizeNeed* need = role.need_at(i);
    if (!supply || need == nullptr) continue;
    any = true;
    if (supply->metres >= need->knitted.value() * (1 - most) &&
        supply->metres <= need->planned.value() * (1 + most))
      continue;
    outside.push_back(i);
    lines.push_back("size " + input.printed.size_labels()[i] + ": printed " + supply->words(words) +
                    "; by the chart " + words.metres(need->knitted.value()) + " knitted, " +
                    words.metres(need->planned.value()) + " planned");
  }
  if (outside.empty()) return any;
  Finding& finding = findings.add("the stated length and the chart differ");
  finding.roles = {role.printed->label};
  finding.apart = "stated";
  show(finding, input.printed, *role.measured);
  for (const std::size_t size : outside) add_size(finding, input.printed, size);
  finding.evidence = lines;
  finding.query = "For " + role.printed->label +
                  " the stated length does not fit the chart: " + lines.front() + ". Which is right?";
  return true;
}

}  // namespace

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
  bool any_chart = false, any_length = false;
  for (const RoleFigures& role : role_figures(input)) {
    if (role.fact == nullptr || !charted(input, role.fact->id)) continue;
    any_chart = true;
    any_length = sample_beside_chart(input, findings, role) || any_length;
    any_length = stated_beside_chart(input, findings, role) || any_length;
  }
  if (!any_chart)
    findings.cannot("no chart is worked in any colour listed", "the chart and where it is worked");
  else if (!any_length)
    findings.cannot("no sample is weighed and no length stated", "the sample's grams, colour by colour");
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

}  // namespace skeinproof
