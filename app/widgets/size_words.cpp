// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/size_words.h"

#include <algorithm>

#include "core/units/show.h"

namespace skeinproof {

QString size_words(const Pattern& pattern, std::size_t size_index) {
  const auto& sizes = pattern.sizes;
  QString words = QString::fromStdString(sizes[size_index].label);
  std::size_t first_group = 1;
  while (first_group < sizes.size() && !sizes[first_group].opens_group) ++first_group;
  if (first_group >= sizes.size() || size_index < first_group) return words;
  if (sizes[size_index].opens_group) words.prepend(QLatin1Char('('));
  if (size_index + 1 == sizes.size() || sizes[size_index + 1].opens_group) words.append(QLatin1Char(')'));
  return words;
}

QString size_measure(const Pattern& pattern, std::size_t size_index, const ReaderStyle& reader) {
  const Measurement* chosen = nullptr;
  for (const Measurement& measurement : pattern.measurements) {
    if (measurement.kind != MeasurementKind::circumference || measurement.values.empty()) continue;
    if (!chosen || (chosen->fit == Fit::to_fit && measurement.fit == Fit::finished)) chosen = &measurement;
  }
  const auto value = chosen ? chosen->values.at(size_index) : std::nullopt;
  if (!value) return {};
  if (reader.imperial_first)
    return QString::fromStdString(show_fraction(in_inches(value->value), 4, reader.numbers)) +
           QStringLiteral(" in");
  const double length = value->value.value();
  const int decimals = length == round_half_up(length) ? 0 : 1;
  return QString::fromStdString(show_number(length, decimals, reader.numbers)) + QStringLiteral(" cm");
}

}  // namespace skeinproof
