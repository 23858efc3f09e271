// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <set>

#include "core/need/need_context.h"
#include "core/need/role_need.h"
#include "core/need/run_out.h"
#include "core/need/stitch_counts.h"

namespace skeinproof {
namespace {

constexpr double most_steps = 100000;

// How a part's yarn is dealt to its rounds, before it is scaled to the metres of the part.
struct RoundWeight {
  double stitches = 0, passed = 0, extra = 0;
};

std::vector<RoundWeight> chart_weights(const Pattern& pattern, const Section& section, RoleId role) {
  std::vector<RoundWeight> weights;
  const Chart* chart = pattern.chart(section.chart);
  if (chart == nullptr) return weights;
  const std::string symbols = symbols_of(*chart, role);
  std::set<char> before;
  for (const RoundCensus& round : census(*chart).rounds) {
    RoundWeight weight;
    std::set<char> now;
    for (char symbol : symbols) {
      const auto found = round.stitches_of.find(symbol);
      if (found == round.stitches_of.end() || found->second == 0) continue;
      now.insert(symbol);
      weight.stitches += static_cast<double>(found->second);
      weight.passed += static_cast<double>(round.stitches - found->second);
      if (before.count(symbol) == 0) weight.extra += 1;
    }
    before = std::move(now);
    weights.push_back(weight);
  }
  return weights;
}

// One width a row: the mean of the row as the run goes evenly from one width to the other. A last part of a
// row is a step of its own.
std::vector<RoundWeight> row_weights(const Section& section, std::size_t size_index) {
  std::vector<RoundWeight> weights;
  for (const ShapeRun& run : section.runs) {
    const auto *rows = run.rows.find(size_index), *from = run.from.find(size_index);
    if (rows == nullptr || from == nullptr || rows->value > most_steps) return {};
    const auto* end = run.to.find(size_index);
    const double to = end == nullptr ? from->value : end->value;
    for (double done = 0; done < rows->value - 1e-9; done += 1) {
      const double part = std::min(1.0, rows->value - done);
      weights.push_back({part * (from->value + (to - from->value) * (done + part / 2) / rows->value), 0, 0});
    }
  }
  return weights;
}

void keep_stripes_of(std::vector<RoundWeight>& weights, const Section& section, RoleId role) {
  double cycle = 0;
  for (const Stripe& stripe : section.stripes) cycle += stripe.rows.value;
  if (!(cycle > 0)) return;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    double at = std::fmod(static_cast<double>(i) + 0.5, cycle);
    for (const Stripe& stripe : section.stripes) {
      if (at < stripe.rows.value) {
        if (stripe.role != role) weights[i].stitches = 0;
        break;
      }
      at -= stripe.rows.value;
    }
  }
}

std::vector<RoundWeight> section_weights(const Pattern& pattern, const Section& section, RoleId role,
                                         std::size_t i) {
  if (section.source == StitchSource::chart) return chart_weights(pattern, section, role);
  if (section.source == StitchSource::typed) return {};
  std::vector<RoundWeight> weights = row_weights(section, i);
  if (section.colouring == Colouring::stripes) keep_stripes_of(weights, section, role);
  return weights;
}

// Splits what a part takes over its rounds so that they add up to it.
void deal(std::vector<WorkStep>& steps, const WorkStep& like, const PartMetres& part,
          const std::vector<RoundWeight>& weights) {
  RoundWeight sum;
  for (const RoundWeight& weight : weights) {
    sum.stitches += weight.stitches;
    sum.passed += weight.passed;
    sum.extra += weight.extra;
  }
  const double copies = like.copies;
  if (!(sum.stitches > 0)) {
    steps.push_back(like);
    steps.back().needs = part.total() / copies;
    return;
  }
  for (std::size_t i = 0; i < weights.size(); ++i) {
    const RoundWeight& weight = weights[i];
    const double stitches = weight.stitches / sum.stitches;
    // Floats and ends that the rounds do not tell apart go with the stitches.
    const double passed = sum.passed > 0 ? weight.passed / sum.passed : stitches;
    const double extra = sum.extra > 0 ? weight.extra / sum.extra : stitches;
    WorkStep step = like;
    step.round = static_cast<int>(i) + 1;
    step.rounds = static_cast<int>(weights.size());
    step.needs = (part.stitches * stitches + part.floats * passed + part.extra * extra) / copies;
    steps.push_back(step);
  }
}

class StepWalk {
 public:
  StepWalk(const Pattern& pattern, const Role& role, const SizeNeed& need, std::size_t size_index)
      : pattern_(pattern), role_(role), need_(need), size_index_(size_index) {}

  void walk(const Piece& piece) {
    for (int copy = 1; copy <= piece.copies; ++copy) {
      for (const Edge& edge : piece.edges)
        if (edge.kind == EdgeKind::cast_on) edge_step(piece, edge, copy);
      for (const Section& section : piece.sections) section_steps(piece, section, copy);
      for (const Edge& edge : piece.edges)
        if (edge.kind != EdgeKind::cast_on) edge_step(piece, edge, copy);
    }
  }
  std::vector<WorkStep> take() { return std::move(steps_); }

 private:
  WorkStep like(const Piece& piece, int copy) const {
    WorkStep step;
    step.piece = piece.id;
    step.copy = copy;
    step.copies = piece.copies;
    return step;
  }
  void edge_step(const Piece& piece, const Edge& edge, int copy) {
    for (const PartMetres& part : need_.parts) {
      if (part.edge != edge.id) continue;
      WorkStep step = like(piece, copy);
      step.edge = edge.id;
      deal(steps_, step, part, {});
    }
  }
  void section_steps(const Piece& piece, const Section& section, int copy) {
    for (const PartMetres& part : need_.parts) {
      if (part.section != section.id || !part.section) continue;
      WorkStep step = like(piece, copy);
      step.section = section.id;
      step.in_chart = section.source == StitchSource::chart;
      std::vector<RoundWeight> weights = section_weights(pattern_, section, role_.id, size_index_);
      // A strand that goes along with another colour is in the rounds of that one.
      if (weights_empty(weights) && role_.goes_along_with)
        weights = section_weights(pattern_, section, role_.goes_along_with, size_index_);
      deal(steps_, step, part, weights);
    }
  }
  static bool weights_empty(const std::vector<RoundWeight>& weights) {
    return std::none_of(weights.begin(), weights.end(),
                        [](const RoundWeight& weight) { return weight.stitches > 0; });
  }

  const Pattern& pattern_;
  const Role& role_;
  const SizeNeed& need_;
  std::size_t size_index_;
  std::vector<WorkStep> steps_;
};

}  // namespace

Expected<std::vector<WorkStep>> work_steps(const Pattern& pattern, RoleId role_id, SizeId size,
                                           const std::vector<PieceId>& order) {
  const Role* role = pattern.role(role_id);
  const auto index = pattern.size_index(size);
  if (role == nullptr)
    return failure(ErrorKind::unknown_name, "no colour " + std::to_string(role_id.value),
                   "a colour of the pattern");
  if (!index)
    return failure(ErrorKind::unknown_name, "no size " + std::to_string(size.value), "a size of the pattern");
  std::vector<const Piece*> pieces;
  for (PieceId id : order) {
    const Piece* piece = pattern.piece(id);
    if (piece == nullptr)
      return failure(ErrorKind::unknown_name, "no piece " + std::to_string(id.value),
                     "a piece of the pattern");
    if (std::find(pieces.begin(), pieces.end(), piece) != pieces.end())
      return failure(ErrorKind::wrong_count, piece->name + " twice in the order", "every piece once");
    pieces.push_back(piece);
  }
  if (order.empty())
    for (const Piece& piece : pattern.pieces) pieces.push_back(&piece);
  const NeedContext context(pattern);
  const SizeNeed need = role_need(context, role_basis(context, *role), *index);
  if (!need.known || need.parts.empty())
    return failure(ErrorKind::wrong_shape,
                   role->label + " without stitches in size " + pattern.sizes[*index].label,
                   need.missing.empty() ? "stitches by piece and row" : need.missing);
  StepWalk walk(pattern, *role, need, *index);
  for (const Piece* piece : pieces) walk.walk(*piece);
  return walk.take();
}

}  // namespace skeinproof
