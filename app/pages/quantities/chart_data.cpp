// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/quantities/chart_data.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/need/layer.h"

namespace skeinproof {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(ChartData)
};

SizeAxis axis_of(const Pattern& pattern, std::size_t chosen) {
  SizeAxis axis;
  for (const Size& size : pattern.sizes) {
    axis.labels.push_back(QString::fromStdString(size.label));
    axis.opens_group.push_back(size.opens_group && !axis.opens_group.empty());
  }
  axis.chosen = chosen;
  return axis;
}

const SizeNeed* need_at(const Assessment& assessment, std::size_t role, std::size_t size) {
  if (role >= assessment.roles.size() || size >= assessment.roles[role].sizes.size()) return nullptr;
  const SizeNeed& need = assessment.roles[role].sizes[size];
  return need.known ? &need : nullptr;
}

void add_if_any(StackData& data, StackData::Part part) {
  if (std::any_of(part.lengths.begin(), part.lengths.end(), [](double length) { return length > 0; }))
    data.parts.push_back(std::move(part));
}

}  // namespace

NeedCurveData need_curve_data(const NeedCellInput& input, std::size_t role_row, std::size_t chosen_size) {
  NeedCurveData data;
  data.axis = axis_of(input.pattern, chosen_size);
  data.reader = input.reader;
  data.points.resize(input.pattern.sizes.size());
  if (role_row >= input.pattern.roles.size()) return data;
  const Role& role = input.pattern.roles[role_row];
  data.role = role_title(role);
  const auto skein = skein_length(input.pattern, role.id);
  if (skein) data.skein = skein->value();
  for (std::size_t size = 0; size < data.points.size(); ++size) {
    const SizeNeed* need = need_at(input.assessment, role_row, size);
    if (!need) continue;
    auto& point = data.points[size];
    point.known = true;
    point.knitted = need->knitted.value();
    point.planned = need->planned.value();
    point.low = need->low.value();
    point.high = need->high.value();
    const auto planned = layer_need(input.pattern, role.id, *need, Layer::planned);
    if (!planned || !planned->skeins) continue;
    point.bought = planned->bought->value();
    const auto printed = role.printed_count.at(size);
    if (input.show_words && printed && printed->value != *planned->skeins)
      point.words_skeins = printed->value;
  }
  return data;
}

StackData by_piece_data(const NeedCellInput& input, std::size_t role_row, std::size_t chosen_size) {
  StackData data;
  data.axis = axis_of(input.pattern, chosen_size);
  data.reader = input.reader;
  const std::size_t sizes = input.pattern.sizes.size();
  data.known.assign(sizes, false);
  if (role_row >= input.pattern.roles.size()) return data;
  data.title = role_title(input.pattern.roles[role_row]);
  std::vector<StackData::Part> pieces;
  for (const Piece& piece : input.pattern.pieces)
    pieces.push_back({QString::fromStdString(piece.name), std::vector<double>(sizes, 0.0)});
  StackData::Part rest{Words::tr("other"), std::vector<double>(sizes, 0.0)};
  StackData::Part swatch{Words::tr("swatch"), std::vector<double>(sizes, 0.0)};
  StackData::Part allowance{Words::tr("allowance"), std::vector<double>(sizes, 0.0)};
  for (std::size_t size = 0; size < sizes; ++size) {
    const SizeNeed* need = need_at(input.assessment, role_row, size);
    if (!need) continue;
    data.known[size] = true;
    double in_pieces = 0;
    for (const PartMetres& part : need->parts)
      for (std::size_t piece = 0; piece < pieces.size(); ++piece)
        if (input.pattern.pieces[piece].id == part.piece) {
          pieces[piece].lengths[size] += part.total().value();
          in_pieces += part.total().value();
        }
    // Joins and whatever else belongs to no piece; rounding noise is not.
    const double beside = need->knitted.value() - in_pieces;
    rest.lengths[size] = beside > 0.05 ? beside : 0;
    if (input.layer != Layer::knitted) swatch.lengths[size] = need->swatch.value();
    if (input.layer == Layer::planned) allowance.lengths[size] = need->allowance.value();
  }
  for (auto& piece : pieces) add_if_any(data, std::move(piece));
  add_if_any(data, std::move(rest));
  add_if_any(data, std::move(swatch));
  add_if_any(data, std::move(allowance));
  return data;
}

StackData by_role_data(const NeedCellInput& input, std::size_t chosen_size) {
  StackData data;
  data.title = Words::tr("All roles, %1").arg(layer_word(input.layer));
  data.axis = axis_of(input.pattern, chosen_size);
  data.reader = input.reader;
  const std::size_t sizes = input.pattern.sizes.size();
  data.known.assign(sizes, !input.pattern.roles.empty());
  for (std::size_t row = 0; row < input.pattern.roles.size(); ++row) {
    const Role& role = input.pattern.roles[row];
    StackData::Part part{QString::fromStdString(role.label), std::vector<double>(sizes, 0.0)};
    for (std::size_t size = 0; size < sizes; ++size) {
      const SizeNeed* need = need_at(input.assessment, row, size);
      if (!need)
        data.known[size] = false;
      else
        part.lengths[size] = layer_need(input.pattern, role.id, *need, input.layer)->length.value();
    }
    data.parts.push_back(std::move(part));
  }
  return data;
}

}  // namespace skeinproof
