// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/weighed_samples.h"

#include "core/base/text.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"

namespace skeinproof {
namespace {

const PrintedValue* lone_value(const Statement& statement) {
  return statement.values.size() == 1 ? &statement.values.front() : nullptr;
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

}  // namespace

std::optional<std::size_t> size_of_sample(const PrintedView& printed, const Statement* of_size) {
  if (of_size == nullptr) return std::nullopt;
  std::string label(trimmed(of_size->words));
  if (label.empty() && !of_size->values.empty()) label = std::string(printed.words(of_size->values.front()));
  for (std::size_t i = 0; i < printed.sizes(); ++i)
    if (lower_ascii(printed.size_labels()[i]) == lower_ascii(label)) return i;
  return std::nullopt;
}

std::optional<std::size_t> printed_size(const RoleFigures& role, std::size_t in_force) {
  for (std::size_t i = 0; i < role.in_force.size(); ++i)
    if (role.in_force[i] == in_force) return i;
  return std::nullopt;
}

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

double over_whole_item(const OnScale& sample) {
  const SizeNeed* need = sample.role->need_at(sample.size);
  if (need == nullptr || !sample.role->skein_m || !sample.role->skein_g) return 0;
  return sample.grams * *sample.role->skein_m / *sample.role->skein_g / need->knitted.value();
}

bool one_of_a_pair(const ReviewInput& input, double ratio) {
  return ratio >= input.need.constant_of("review_pair_low") &&
         ratio <= input.need.constant_of("review_pair_high");
}

}  // namespace skeinproof
