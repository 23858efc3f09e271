// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/run_out.h"

#include <algorithm>
#include <cmath>

#include "core/fabric/gauge.h"
#include "core/need/layer.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

// Rests of metres that come of adding thousands of rounds are no lack of yarn.
constexpr double exact_fit_m = 1e-6;

std::string own_name(const std::string& piece, const std::string& part) {
  return part.empty() || part == piece ? piece : piece + ", " + part;
}

bool plain_of(const Pattern& pattern, const WorkStep& step, RoleId role) {
  const PiecePlace place = find_in_pieces(pattern, step.section.value);
  return place.section != nullptr && place.section->source == StitchSource::worked_out &&
         place.section->colouring == Colouring::one_role && place.section->role == role && step.rounds > 0;
}

std::optional<Centimetres> height_of(const Pattern& pattern, SectionId section, int rounds) {
  const PiecePlace place = find_in_pieces(pattern, section.value);
  const Fabric* fabric = pattern.fabric(place.section->fabric);
  if (fabric == nullptr) return std::nullopt;
  const auto height = row_height(fabric->gauge);
  if (!height) return std::nullopt;
  return *height * static_cast<double>(rounds);
}

// The rounds left out are the last ones of the section, of every copy, so that they can still be left out
// when the first copy has come that far.
std::optional<TurnBack> turn_back(const Pattern& pattern, const std::vector<WorkStep>& steps,
                                  std::size_t first, Metres short_of, const NumberStyle& style) {
  const WorkStep& begin = steps[first];
  Metres saved;
  int fewer = 0;
  for (int round = begin.rounds; round >= 1 && saved < short_of - metres(exact_fit_m); --round, ++fewer)
    saved += steps[first + static_cast<std::size_t>(round) - 1].needs * static_cast<double>(begin.copies);
  if (saved < short_of - metres(exact_fit_m)) return std::nullopt;
  TurnBack back;
  back.piece = begin.piece;
  back.section = begin.section;
  back.copies = begin.copies;
  back.rounds_fewer = fewer;
  back.after_round = begin.rounds - fewer;
  back.shorter = height_of(pattern, begin.section, fewer);
  back.saves = saved;
  const PiecePlace place = find_in_pieces(pattern, begin.section.value);
  back.words = std::to_string(fewer) + (fewer == 1 ? " round" : " rounds");
  if (back.shorter) back.words += " (" + show_number(back.shorter->value(), 1, style) + " cm)";
  back.words += " fewer in " + own_name(place.piece->name, place.section->name);
  if (begin.copies > 1) back.words += ", in each of " + std::to_string(begin.copies);
  back.words += back.after_round > 0 ? ": decide after round " + std::to_string(back.after_round)
                                     : ": decide before it begins";
  return back;
}

}  // namespace

std::string work_step_words(const Pattern& pattern, const WorkStep& step) {
  const PiecePlace place = find_in_pieces(pattern, step.section ? step.section.value : step.edge.value);
  if (!place) return {};
  std::string words = place.piece->name;
  if (step.copies > 1) words += " " + std::to_string(step.copy) + " of " + std::to_string(step.copies);
  if (place.edge != nullptr) return own_name(words, place.edge->name);
  if (step.in_chart) {
    const Chart* chart = pattern.chart(place.section->chart);
    const bool named =
        chart != nullptr && chart->name != place.piece->name && place.section->name != chart->name;
    if (step.round > 0 && (place.section->name == "chart" || !named))
      return words + ", chart round " + std::to_string(step.round);
  }
  words = own_name(words, place.section->name);
  return step.round > 0 ? words + ", round " + std::to_string(step.round) : words;
}

Expected<RunOut> run_out(const Pattern& pattern, RoleId role, SizeId size, Metres on_hand,
                         const std::vector<PieceId>& order, const NumberStyle& style) {
  if (!(on_hand >= metres(0)) || !std::isfinite(on_hand.value()))
    return failure(ErrorKind::out_of_range, show_short(on_hand.value(), 1, style) + " m on hand",
                   "0 m or more");
  const auto steps = work_steps(pattern, role, size, order);
  if (!steps) return tl::unexpected<Error>(steps.error());
  return run_out(pattern, role, *steps, on_hand, style);
}

RunOut run_out(const Pattern& pattern, RoleId role, const std::vector<WorkStep>& steps, Metres on_hand,
               const NumberStyle& style) {
  RunOut result;
  result.on_hand = on_hand;
  Metres left = on_hand;
  std::size_t fails_at = steps.size();
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const Metres needs = steps[i].needs;
    result.needs += needs;
    if (fails_at < steps.size()) continue;
    if (left + metres(exact_fit_m) < needs) {
      fails_at = i;
      result.fails_in = steps[i];
      result.left_before = left;
    } else {
      left -= needs;
    }
  }
  result.spare = on_hand - result.needs;
  const auto number = [&](Metres length) { return show_number(length.value(), 1, style) + " m"; };
  if (result.lasts()) {
    result.words = "It lasts: " + number(result.spare) + " to spare";
    return result;
  }
  result.where = work_step_words(pattern, *result.fails_in);
  result.words =
      result.where + ": " + number(result.left_before) + " left, needs " + number(result.fails_in->needs);
  for (std::size_t i = 0; i <= fails_at; ++i) {
    const WorkStep& step = steps[i];
    // A section in which the yarn ends can be shortened only by rounds that were not to be knitted anyway.
    if (step.round != 1 || step.copy != 1 || !plain_of(pattern, step, role)) continue;
    if (auto back = turn_back(pattern, steps, i, -result.spare, style))
      result.turn_backs.push_back(std::move(*back));
  }
  return result;
}

Expected<int> rounds_left(Grams weight, MetresPerGram density, double stitches, Centimetres loop) {
  if (!(weight >= grams(0)) || !(density.value() > 0) || !(stitches > 0) || !(loop.value() > 0))
    return failure(ErrorKind::out_of_range,
                   show_short(weight.value(), 2) + " g at " + show_short(density.value(), 3) + " m/g, " +
                       show_short(stitches, 1) + " sts of " + show_short(loop.value(), 3) + " cm",
                   "a weight of 0 or more, the others above 0");
  const double rounds = std::floor((weight * density).value() * 100 / (stitches * loop.value()) + 1e-9);
  return static_cast<int>(std::min(rounds, 1e9));
}

std::optional<SizeId> largest_size(const Pattern& pattern, const std::vector<OnHandLength>& on_hand,
                                   Layer layer) {
  const Assessment assessment = assess(pattern);
  std::optional<SizeId> largest;
  for (std::size_t i = 0; i < pattern.sizes.size(); ++i) {
    const bool covered = std::all_of(on_hand.begin(), on_hand.end(), [&](const OnHandLength& have) {
      for (const RoleNeed& role : assessment.roles) {
        if (role.role != have.role) continue;
        const auto need = layer_need(pattern, role.role, role.sizes[i], layer);
        return need && need->length <= have.length + metres(exact_fit_m);
      }
      return false;
    });
    if (covered && !on_hand.empty()) largest = pattern.sizes[i].id;
  }
  return largest;
}

Expected<LargestRepeats> largest_repeats(const Pattern& pattern, SectionId section_id, SizeId size,
                                         const std::vector<OnHandLength>& on_hand) {
  const PiecePlace place = find_in_pieces(pattern, section_id.value);
  const auto index = pattern.size_index(size);
  if (place.section == nullptr || !index)
    return failure(ErrorKind::unknown_name, "no such section or size", "a section and a size of the pattern");
  const auto* repeats = place.section->repeats.find(*index);
  if (place.section->source != StitchSource::chart || repeats == nullptr || !(repeats->value > 0))
    return failure(ErrorKind::wrong_shape,
                   own_name(place.piece->name, place.section->name) + " without repeats",
                   "a section of whole repeats of a chart");
  if (on_hand.empty())
    return failure(ErrorKind::wrong_count, "no yarn on hand", "the length of at least one colour");
  const Assessment assessment = assess(pattern);
  LargestRepeats result;
  double most = 1e9;
  for (const OnHandLength& have : on_hand) {
    const auto role = std::find_if(assessment.roles.begin(), assessment.roles.end(),
                                   [&](const RoleNeed& r) { return r.role == have.role; });
    if (role == assessment.roles.end())
      return failure(ErrorKind::unknown_name, "no colour " + std::to_string(have.role.value),
                     "a colour of the pattern");
    const SizeNeed& need = role->sizes[*index];
    if (!need.known) return failure(ErrorKind::wrong_shape, role->label + " not worked out", need.missing);
    double a_repeat = 0;
    for (const PartMetres& part : need.parts)
      if (part.section == section_id) a_repeat += (part.stitches + part.floats).value() / repeats->value;
    const double rest = need.knitted.value() - a_repeat * repeats->value;
    const double lasts = have.length.value() + exact_fit_m < rest ? 0
                         : a_repeat > 0 ? std::floor((have.length.value() - rest) / a_repeat + 1e-9)
                                        : 1e9;
    if (lasts < most) {
      most = lasts;
      result.held_back_by = have.role;
    }
  }
  if (most >= 1e9)
    return failure(ErrorKind::wrong_shape, "colours that the chart does not use",
                   "a colour that is knitted in it");
  result.repeats = static_cast<int>(std::max(0.0, most));
  return result;
}

double share_of_rows_at(double share_of_yarn) { return std::sqrt(std::clamp(share_of_yarn, 0.0, 1.0)); }

Expected<int> rows_of_growing_shape(Metres length, double first_row, double more_a_row, Centimetres loop) {
  if (!(length >= metres(0)) || !(first_row > 0) || !(more_a_row >= 0) || !(loop.value() > 0))
    return failure(ErrorKind::out_of_range,
                   show_short(first_row, 1) + " stitches and " + show_short(more_a_row, 2) + " more a row",
                   "stitches and loop above 0 and a shape that does not shrink");
  const double stitches = to_centimetres(length) / loop;
  // n rows hold n first + more n (n - 1) / 2 stitches; the positive root of that, without cancellation.
  const double half = more_a_row / 2, linear = first_row - half;
  const double root = std::sqrt(linear * linear + 4 * half * stitches);
  const double rows = half > 0 ? (linear > 0 ? 2 * stitches / (linear + root) : (root - linear) / (2 * half))
                               : stitches / first_row;
  return static_cast<int>(std::min(std::floor(rows + 1e-9), 1e9));
}

}  // namespace skeinproof
