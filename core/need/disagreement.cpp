// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/disagreement.h"

#include <algorithm>
#include <cmath>

#include "core/need/role_parts.h"
#include "core/need/weighed_sample.h"

namespace skeinproof {
namespace {

constexpr double heaviest_damp = 1.30;  // wool feels dry up to about 30 % of its weight in water

// One colour of a weighing: what the scale says over what the stitches say.
struct Colour {
  RoleId role;
  double ratio = 1;
  double errors = 0;
  double fit = 0;                                    // how near a ratio must come to an explanation
  std::vector<std::optional<double>> ratio_if_size;  // stitches of another size over those of its own
  bool pair = false;
  bool off() const { return std::abs(ratio - 1) > errors; }
  bool near(double expected) const { return std::abs(ratio / expected - 1) <= std::max(errors, fit); }
};

bool of_a_pair(const NeedContext& context, const Role& role) {
  const auto& parts = context.parts_of(role.id);
  return !parts.empty() &&
         std::all_of(parts.begin(), parts.end(), [](const PartUse& use) { return use.piece->copies == 2; });
}

std::optional<Colour> colour_of(const NeedContext& context, const Role& role, const SampleLength& sample) {
  const RoleParts model = parts_on_scale(context, role, sample);
  if (!model.any() || !model.missing.empty() || !(model.total() > metres(0))) return std::nullopt;
  Colour colour;
  colour.role = role.id;
  colour.ratio = sample.length / model.total();
  colour.errors = std::hypot(model.error, sample.error);
  colour.fit = sample.error;
  colour.pair = of_a_pair(context, role);
  for (std::size_t i = 0; i < context.pattern().sizes.size(); ++i) {
    const RoleParts there = parts_on_scale(context, role, *sample.weighing, i);
    const bool known = there.any() && there.missing.empty() && i != sample.size_index;
    colour.ratio_if_size.push_back(known ? std::optional<double>(there.total() / model.total())
                                         : std::nullopt);
  }
  return colour;
}

std::vector<Colour> colours_of(const NeedContext& context, const Weighing& weighing) {
  std::vector<Colour> colours;
  for (const Role& role : context.pattern().roles)
    for (const SampleLength& sample : sample_lengths(context, role))
      if (sample.weighing == &weighing)
        if (auto colour = colour_of(context, role, sample)) colours.push_back(std::move(*colour));
  return colours;
}

struct Explanation {
  DisagreementReason reason = DisagreementReason::not_clear;
  std::optional<std::size_t> fits_size;
};

// How far the worst colour is from the mean factor of all: water weighs the same share in every colour.
double spread_about_mean(const std::vector<Colour>& colours, double mean) {
  double worst = 0;
  for (const Colour& colour : colours) worst = std::max(worst, std::abs(colour.ratio / mean - 1));
  return worst;
}

struct SizeFit {
  std::size_t size_index = 0;
  double worst = 0;
};
std::optional<SizeFit> best_size(const std::vector<Colour>& colours) {
  std::optional<SizeFit> best;
  for (std::size_t i = 0; i < colours.front().ratio_if_size.size(); ++i) {
    double worst = 0;
    const bool all_known = std::all_of(colours.begin(), colours.end(), [&](const Colour& colour) {
      if (!colour.ratio_if_size[i]) return false;
      worst = std::max(worst, std::abs(colour.ratio / *colour.ratio_if_size[i] - 1));
      return true;
    });
    if (all_known && (!best || worst < best->worst)) best = SizeFit{i, worst};
  }
  return best;
}

Explanation explain_weighing(const Pattern& pattern, const Weighing& weighing,
                             const std::vector<Colour>& colours, const Colour& asked) {
  const auto all = [&](auto&& test) { return std::all_of(colours.begin(), colours.end(), test); };
  const bool halved = all([](const Colour& colour) { return colour.near(0.5); });
  const bool doubled = all([](const Colour& colour) { return colour.near(2); });
  if ((halved || doubled) && all([](const Colour& colour) { return colour.pair; }))
    return {DisagreementReason::one_of_a_pair, {}};
  if (halved || doubled || asked.near(0.5) || asked.near(2)) return {DisagreementReason::other_put_up, {}};

  const auto off =
      std::count_if(colours.begin(), colours.end(), [](const Colour& colour) { return colour.off(); });
  const bool only_this = off == 1 && asked.off() && asked.ratio > 1;
  if (only_this && (colours.size() > 1 || !pattern.notions.empty()))
    return {DisagreementReason::notions_left_in, {}};

  double mean = 0;
  for (const Colour& colour : colours) mean += colour.ratio / static_cast<double>(colours.size());
  const double tolerance = asked.fit;
  const double spread = spread_about_mean(colours, mean);
  const bool damp = weighing.moisture == Moisture::not_corrected && mean > 1 && mean <= heaviest_damp &&
                    spread <= tolerance;
  const auto size = best_size(colours);
  const bool sized = size && size->worst <= tolerance;
  if (damp && (!sized || colours.size() == 1 || spread <= size->worst)) return {DisagreementReason::damp, {}};
  if (sized) return {DisagreementReason::other_size, size->size_index};
  return {};
}

const Evidence* evidence_in_force(const SizeNeed& need) {
  for (const Evidence& one : need.all_evidence)
    if (one.kind == need.evidence) return &one;
  return nullptr;
}

// Whether the planned lengths of all sizes, taken `times`, would lie where the counts are.
bool all_fit(const RoleNeed& need, const StepReading& reading, double times) {
  for (std::size_t i = 0; i < need.sizes.size(); ++i) {
    const Evidence* evidence = evidence_in_force(need.sizes[i]);
    const SizeSteps& steps = reading.sizes[i];
    if (evidence == nullptr || !steps.known()) continue;
    if (evidence->low * times > steps.high->length || evidence->high * times <= steps.low->length)
      return false;
  }
  return true;
}

DisagreementReason count_reason(const NeedContext& context, const Role& role, const RoleNeed& need,
                                const StepReading& reading, std::size_t size_index, bool counts_too_low) {
  if (counts_too_low) {
    const auto own = own_steps(reading, size_index);
    constexpr double a_hair = 0.10;  // of a skein
    const double over = own ? ((need.sizes[size_index].planned - own->high) / reading.skein).value() : 1;
    if (own && over <= a_hair) return DisagreementReason::rounded_down;
    if (of_a_pair(context, role) && all_fit(need, reading, 0.5)) return DisagreementReason::one_of_a_pair;
    if (all_fit(need, reading, 0.5)) return DisagreementReason::other_put_up;
    return own && over < 1 ? DisagreementReason::rounded_down : DisagreementReason::not_clear;
  }
  return all_fit(need, reading, 2) ? DisagreementReason::other_put_up : DisagreementReason::generous_counts;
}

}  // namespace

std::vector<Disagreement> sample_disagreements(const NeedContext& context, const Role& role) {
  std::vector<Disagreement> found;
  for (const SampleLength& sample : sample_lengths(context, role)) {
    const auto asked = colour_of(context, role, sample);
    if (!asked || !asked->off()) continue;
    const Explanation why =
        explain_weighing(context.pattern(), *sample.weighing, colours_of(context, *sample.weighing), *asked);
    Disagreement one;
    one.size_index = sample.size_index;
    one.ratio = asked->ratio;
    one.errors = asked->errors;
    one.reason = why.reason;
    one.fits_size = why.fits_size;
    found.push_back(one);
  }
  return found;
}

std::vector<Disagreement> count_disagreements(const NeedContext& context, const Role& role,
                                              const RoleNeed& need, const StepReading& reading) {
  std::vector<Disagreement> found;
  if (reading.clash) return found;
  const double most_allowance = context.constant_of("most_allowance_pct") / 100;
  for (std::size_t i = 0; i < need.sizes.size() && i < reading.sizes.size(); ++i) {
    const Evidence* evidence = evidence_in_force(need.sizes[i]);
    const SizeSteps& steps = reading.sizes[i];
    if (evidence == nullptr || !steps.known()) continue;
    const bool too_low = evidence->low > steps.high->length;
    const bool too_high =
        evidence->knitted * (1 + evidence->error) < steps.low->length / (1 + most_allowance);
    if (!too_low && !too_high) continue;
    Disagreement one;
    one.size_index = i;
    one.one = LengthGround::printed_counts;
    one.other =
        evidence->kind == NeedEvidence::stitches ? LengthGround::stitches : LengthGround::weighed_sample;
    one.ratio = (too_low ? steps.high : steps.low)->length / evidence->planned;
    one.reason = count_reason(context, role, need, reading, i, too_low);
    found.push_back(one);
  }
  return found;
}

}  // namespace skeinproof
