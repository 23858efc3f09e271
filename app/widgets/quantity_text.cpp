// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/quantity_text.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/units/read.h"
#include "core/units/show.h"

namespace skeinproof {

namespace {

template <class Quantity>
Expected<Entered<double>> plain(const Expected<Entered<Quantity>>& read) {
  if (!read) return tl::unexpected(read.error());
  return to_plain(*read);
}

// What a figure is divided by to be shown in the unit of the reader.
double unit_size(const QuantityFormat& format, const ReaderStyle& reader) {
  const bool imperial = reader.imperial_first;
  switch (format.kind) {
    case QuantityKind::yarn_length:
      return imperial ? metres_per_yard : 1;
    case QuantityKind::mass:
      return imperial ? grams_per_ounce : 1;
    case QuantityKind::cloth:
      return imperial ? centimetres_per_inch : 1;
    case QuantityKind::needle:
      return 0.1;
    case QuantityKind::number:
      break;
  }
  return 1;
}

int usual_decimals(const QuantityFormat& format) { return format.kind == QuantityKind::number ? 3 : 2; }

// A difference may have a sign before its figure: a hyphen, a minus or a plus.
Expected<Entered<double>> read_difference(const QuantityFormat& format, const ReaderStyle& reader,
                                          const QString& text) {
  const QString words = text.trimmed();
  const QChar sign = words.isEmpty() ? QChar() : words.front();
  const bool below = sign == QLatin1Char('-') || sign == QChar(0x2212);
  QuantityFormat size = format;
  size.low = 0;
  auto read = read_quantity(size, reader, below || sign == QLatin1Char('+') ? words.mid(1) : words);
  if (!read) return read;
  if (below) read->value = -read->value;
  read->typed = text.toStdString();
  return read;
}

bool same_value(double a, double b) { return std::abs(a - b) <= 1e-9 * std::max(std::abs(a), std::abs(b)); }

}  // namespace

Expected<Entered<double>> read_quantity(const QuantityFormat& format, const ReaderStyle& reader,
                                        const QString& text) {
  const std::string typed = text.toStdString();
  const bool imperial = reader.imperial_first;
  switch (format.kind) {
    case QuantityKind::yarn_length:
      return plain(read_length(typed, imperial ? LengthUnit::yard : LengthUnit::metre));
    case QuantityKind::mass:
      return plain(read_mass(typed, imperial ? MassUnit::ounce : MassUnit::gram));
    case QuantityKind::cloth:
      if (format.low < 0) return read_difference(format, reader, text);
      return plain(read_measure(typed, imperial ? MeasureUnit::inch : MeasureUnit::centimetre));
    case QuantityKind::needle:
      return plain(read_measure(typed, MeasureUnit::millimetre));
    case QuantityKind::number:
      break;
  }
  return read_number(typed, format.low, format.high, format.what);
}

QString show_figure_only(const QuantityFormat& format, const ReaderStyle& reader, double value) {
  const double shown = value / unit_size(format, reader);
  if (format.decimals >= 0)
    return QString::fromStdString(show_number(shown, format.decimals, reader.numbers));
  // As many decimals as the figure needs, up to what the kind is measured to.
  const int most = usual_decimals(format);
  int decimals = 0;
  double step = 1;
  while (decimals < most && !same_value(shown, round_half_up(shown, step))) {
    ++decimals;
    step /= 10;
  }
  return QString::fromStdString(show_number(shown, decimals, reader.numbers));
}

QString show_quantity(const QuantityFormat& format, const ReaderStyle& reader, const Entered<double>& value) {
  if (!value.typed.empty()) {
    const QString typed = QString::fromStdString(value.typed);
    const auto again = read_quantity(format, reader, typed);
    if (again && same_value(again->value, value.value)) return typed;
  }
  const QString unit = unit_of(format, reader);
  const QString figure = show_figure_only(format, reader, value.value);
  return unit.isEmpty() ? figure : figure + QLatin1Char(' ') + unit;
}

QString unit_of(const QuantityFormat& format, const ReaderStyle& reader) {
  const bool imperial = reader.imperial_first;
  switch (format.kind) {
    case QuantityKind::yarn_length:
      return imperial ? QStringLiteral("yd") : QStringLiteral("m");
    case QuantityKind::mass:
      return imperial ? QStringLiteral("oz") : QStringLiteral("g");
    case QuantityKind::cloth:
      return imperial ? QStringLiteral("in") : QStringLiteral("cm");
    case QuantityKind::needle:
      return QStringLiteral("mm");
    case QuantityKind::number:
      break;
  }
  return {};
}

QString sentence_of(const Error& error) {
  const QString found = QString::fromStdString(error.found),
                expected = QString::fromStdString(error.expected);
  if (found.isEmpty()) return QCoreApplication::translate("Quantity", "Expected %1.").arg(expected);
  return QCoreApplication::translate("Quantity", "Found %1, expected %2.").arg(found, expected);
}

}  // namespace skeinproof
