// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/as_you_go.h"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <numeric>

#include "core/need/chance.h"
#include "core/need/constants.h"
#include "core/yarn/linear_density.h"
#include "core/yarn/weigh.h"

namespace skeinproof {
namespace {

constexpr double usual_scale_step_g = 1;

struct Placed {
  const YarnReading* reading = nullptr;
  std::size_t steps_done = 0;
  std::string words;
};

template <class Kind>
auto refuse(Kind kind, const std::string& words, std::string found, std::string expected) {
  return failure(kind, (words.empty() ? "" : words + ": ") + std::move(found), std::move(expected));
}

Metres sum_of(const std::vector<WorkStep>& steps, std::size_t from, std::size_t to) {
  Metres sum;
  for (std::size_t i = from; i < to; ++i) sum += steps[i].needs;
  return sum;
}

// Behind the last step that is done at that place. A colour that a piece does not use has no step there: then
// all that stands before the piece is done.
Expected<Placed> place_of(const Pattern& pattern, const std::vector<WorkStep>& steps,
                          const YarnReading& reading) {
  const Piece* piece = pattern.piece(reading.piece);
  if (piece == nullptr)
    return failure(ErrorKind::wrong_shape, "a reading without a place", "the piece that was on the needles");
  if (reading.copy < 1 || reading.copy > piece->copies)
    return failure(ErrorKind::out_of_range, piece->name + " " + std::to_string(reading.copy),
                   "a copy from 1 to " + std::to_string(piece->copies));
  const double round = reading.round ? reading.round->value : 0;
  if (reading.round && (!(round >= 0) || round != std::floor(round)))
    return failure(ErrorKind::out_of_range, "round " + reading.round->typed, "a whole round");
  Placed placed{&reading, 0, {}};
  bool found = false;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const WorkStep& step = steps[i];
    if (step.piece != reading.piece || step.copy > reading.copy) continue;
    const bool in_section = reading.section && step.copy == reading.copy && step.section == reading.section;
    if (reading.section && step.copy == reading.copy && found && !in_section) break;
    found = found || in_section;
    if (in_section && reading.round && step.round > round) break;
    placed.steps_done = i + 1;
  }
  if (reading.section && !found)
    return failure(ErrorKind::unknown_name, piece->name + ": a section that does not use the colour",
                   "a section it is knitted in");
  placed.words = placed.steps_done > 0 ? work_step_words(pattern, steps[placed.steps_done - 1]) : piece->name;
  return placed;
}

Expected<void> check_grams(const Placed& placed) {
  const YarnReading& reading = *placed.reading;
  if (!reading.began_with)
    return refuse(ErrorKind::wrong_shape, placed.words, "no weight to begin with",
                  "the yarn before the first stitch");
  if (!reading.left)
    return refuse(ErrorKind::wrong_shape, placed.words, "no weight left", "the yarn left on the scale");
  if (!(reading.left->value >= grams(0)) || reading.left->value > reading.began_with->value)
    return refuse(ErrorKind::out_of_range, placed.words,
                  reading.left->typed + " left of " + reading.began_with->typed, "no more than there was");
  return {};
}

Expected<std::vector<Placed>> placed_readings(const Pattern& pattern, RoleId role,
                                              const std::vector<WorkStep>& steps) {
  std::vector<Placed> all;
  for (const YarnReading& reading : pattern.readings) {
    if (!reading.used || reading.role != role) continue;
    auto placed = place_of(pattern, steps, reading);
    if (!placed) return tl::unexpected<Error>(placed.error());
    if (auto sound = check_grams(*placed); !sound) return tl::unexpected<Error>(sound.error());
    all.push_back(std::move(*placed));
  }
  if (all.empty()) return failure(ErrorKind::wrong_count, "no reading", "yarn weighed while knitting");
  std::stable_sort(all.begin(), all.end(),
                   [](const Placed& a, const Placed& b) { return a.steps_done < b.steps_done; });
  return all;
}

Grams used_at(const Placed& placed) {
  return placed.reading->began_with->value - placed.reading->left->value;
}

Grams step_of(const YarnReading& reading) {
  return reading.scale_step ? reading.scale_step->value : grams(usual_scale_step_g);
}

Expected<std::vector<WeighedStretch>> stretches_of(const std::vector<Placed>& readings,
                                                   const std::vector<WorkStep>& steps,
                                                   MetresPerGram density) {
  std::vector<WeighedStretch> stretches;
  std::size_t from = 0;
  Grams used;
  for (const Placed& placed : readings) {
    const Grams now = used_at(placed);
    if (now < used)
      return refuse(ErrorKind::out_of_range, placed.words, "less used than at an earlier place",
                    "readings in the order of the work");
    stretches.push_back(WeighedStretch{placed.reading->id, placed.words,
                                       sum_of(steps, from, placed.steps_done), (now - used) * density, 0});
    from = placed.steps_done;
    used = now;
  }
  Metres whole;
  for (const WeighedStretch& stretch : stretches) whole += stretch.by_sheet;
  if (!(whole > metres(0)) || !(used > grams(0)))
    return refuse(ErrorKind::wrong_shape, readings.back().words, "nothing of the colour used yet",
                  "a place behind its first stitches");
  for (WeighedStretch& stretch : stretches) stretch.share = stretch.by_sheet / whole;
  return stretches;
}

double chance(Metres spare, Metres deviation) {
  if (!(deviation > metres(0))) return spare >= metres(0) ? 1 : 0;
  return boost::math::cdf(boost::math::normal(), (spare / deviation));
}

// The work as this hand knits it.
std::vector<WorkStep> steps_of_hand(std::vector<WorkStep> steps, double factor) {
  for (WorkStep& step : steps) step.needs *= factor;
  return steps;
}

// Whether a turning place lies before the place reached.
bool is_past(const TurnBack& back, const std::vector<WorkStep>& steps, std::size_t steps_done) {
  const int last_round = std::max(1, back.after_round);
  const auto decided = std::find_if(steps.begin(), steps.end(), [&](const WorkStep& step) {
    return step.section == back.section && step.copy == 1 && step.round == last_round;
  });
  const auto at = static_cast<std::size_t>(decided - steps.begin());
  return back.after_round > 0 ? at + 1 < steps_done : at < steps_done;
}

}  // namespace

Expected<AsYouGo> as_you_go(const Pattern& pattern, RoleId role_id, SizeId size, const NumberStyle& style) {
  const auto steps = work_steps(pattern, role_id, size);
  if (!steps) return tl::unexpected<Error>(steps.error());
  const Role& role = *pattern.role(role_id);
  const Yarn* yarn = pattern.yarn(role.yarn);
  if (yarn == nullptr || !yarn->put_up.length || !yarn->put_up.weight)
    return failure(ErrorKind::wrong_shape, role.label + " without a put-up", "length and weight of a skein");
  const MetresPerGram density = yarn->put_up.length->value / yarn->put_up.weight->value;
  const auto readings = placed_readings(pattern, role_id, *steps);
  if (!readings) return tl::unexpected<Error>(readings.error());
  auto stretches = stretches_of(*readings, *steps, density);
  if (!stretches) return tl::unexpected<Error>(stretches.error());

  AsYouGo go;
  go.role = role_id;
  go.stretches = std::move(*stretches);
  const Placed& last = readings->back();
  const Metres done = sum_of(*steps, 0, last.steps_done);
  const Metres used = used_at(last) * density;
  go.left = last.reading->left->value * density;
  go.factor = used / done;
  // Two readings stand behind what was used.
  const Grams step = step_of(*last.reading);
  go.error = std::max(constant(pattern, "error_weighed_pct") / 100,
                      std::sqrt(2.0) * scale_error_share(step, used_at(last)));
  go.to_go = sum_of(*steps, last.steps_done, steps->size()) * go.factor;
  go.low = go.to_go * std::max(0.0, 1 - go.error);
  go.high = go.to_go * (1 + go.error);
  const Metres scale = step * density / std::sqrt(12.0);
  go.chance_to_finish = chance(
      go.left - go.to_go, metres(std::hypot((go.to_go * deviation_of(go.error)).value(), scale.value())));
  go.run_out = run_out(pattern, role_id, steps_of_hand(*steps, go.factor), used + go.left, style);
  std::erase_if(go.run_out.turn_backs,
                [&](const TurnBack& back) { return is_past(back, *steps, last.steps_done); });
  return go;
}

}  // namespace skeinproof
