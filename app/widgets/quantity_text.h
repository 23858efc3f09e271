// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <optional>
#include <string>
#include <type_traits>

#include "app/document/reader_style.h"
#include "core/base/error.h"
#include "core/units/entered.h"
#include "core/units/quantity.h"

namespace skeinproof {

// What a field or a grid row holds, so that one widget serves every quantity: the value travels as a plain
// number of metres (yarn length), grams (mass), centimetres (cloth, needle) or units (number), with the text
// it was typed as.
enum class QuantityKind { yarn_length, mass, cloth, needle, number };

struct QuantityFormat {
  QuantityKind kind = QuantityKind::number;
  double low = 0;               // number; below 0 in cloth: a difference, which may be below 0
  double high = 1e9;            // number only
  std::string what = "number";  // number only: what it counts, for the message ("stitches", "percent")
  int decimals = -1;            // shown where nothing was typed; -1 = as many as the kind needs

  static QuantityFormat yarn_length() { return {QuantityKind::yarn_length, 0, 0, {}, -1}; }
  static QuantityFormat mass() { return {QuantityKind::mass, 0, 0, {}, -1}; }
  static QuantityFormat cloth() { return {QuantityKind::cloth, 0, 0, {}, -1}; }  // cm or in
  static QuantityFormat cloth_difference() { return {QuantityKind::cloth, -1, 0, {}, -1}; }
  static QuantityFormat needle() { return {QuantityKind::needle, 0, 0, {}, -1}; }  // mm
  static QuantityFormat number(double low, double high, std::string what, int decimals = -1) {
    return {QuantityKind::number, low, high, std::move(what), decimals};
  }
};

using FieldValue = std::optional<Entered<double>>;

// Reads a text without a unit in the reader's first system.
Expected<Entered<double>> read_quantity(const QuantityFormat& format, const ReaderStyle& reader,
                                        const QString& text);
// The typed text where it reads as the same value for this reader, else the figure, with its unit unless it
// is the bare number of a `number`.
QString show_quantity(const QuantityFormat& format, const ReaderStyle& reader, const Entered<double>& value);
// The figure alone, without a unit, as for a grid column.
QString show_figure_only(const QuantityFormat& format, const ReaderStyle& reader, double value);
// "m", "yd", "g", "oz", "cm", "in", "mm" or nothing.
QString unit_of(const QuantityFormat& format, const ReaderStyle& reader);
// "Found “12 parsecs”, expected a length such as 175 m", as a sentence for people.
QString sentence_of(const Error& error);

// From and to the typed quantities of the document.
template <class Quantity>
double plain_value(const Quantity& quantity) {
  if constexpr (std::is_same_v<Quantity, double>)
    return quantity;
  else
    return quantity.value();
}
template <class Quantity>
Entered<double> to_plain(const Entered<Quantity>& entered) {
  return {plain_value(entered.value), entered.typed};
}
template <class Quantity>
Entered<Quantity> from_plain(const Entered<double>& plain) {
  if constexpr (std::is_same_v<Quantity, double>)
    return plain;
  else
    return {Quantity::from_value(plain.value), plain.typed};
}

}  // namespace skeinproof
