// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/need/weighed_sample.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/weighed_samples.h"

namespace skeinproof {
namespace {

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
    const bool half_a_pair = pair_of(input).paired && one_of_a_pair(input, over_whole_item(sample));
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
    const double ratio = sample.whole_item ? over_whole_item(sample) : 0;
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
  const auto& weighings = input.pattern.weighings;
  if (std::none_of(weighings.begin(), weighings.end(), [](const Weighing& one) { return one.tester; })) {
    findings.cannot("no tester's weights are known", "testers' grams, colour by colour");
    return;
  }
  for (const RoleFigures& role : role_figures(input)) {
    const Role* fact = role.fact;
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
                          supply->words(words)};
      finding.at_stake = "size " + finding.sizes.front() + " short by " + words.metres(used - supply->metres);
      if (const auto wanted = role.count_in_force(*size);
          wanted && supply->skeins && *wanted > *supply->skeins)
        propose(finding, input.printed, supply->value->span, std::to_string(*wanted));
      finding.query = "In size " + finding.sizes.front() + " a tester used " + words.metres(used) + " of " +
                      role.printed->label + ", and the list gives " + supply->given(words) +
                      ". Was it the same yarn, and should the count go up?";
    }
  }
  if (!any) findings.cannot("no tester's weights are known", "testers' grams, colour by colour");
}

}  // namespace skeinproof
