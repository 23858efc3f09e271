// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/band_lines.h"

#include <QRegularExpression>
#include <QStringList>

#include "app/pages/yarns/yarn_figures.h"
#include "app/widgets/quantity_text.h"
#include "core/units/read.h"

namespace skeinproof {
namespace {

constexpr double most_stitches = 100;
constexpr double highest_price = 1e6;

std::string in_marks(const QString& text) { return "“" + text.trimmed().toStdString() + "”"; }

// A slash parts only where it is no fraction.
QStringList parts_of(const QString& text) {
  static const QRegularExpression marks(QStringLiteral("\\s*(?:=|;|\\bper\\b|(?<!\\d)/|/(?!\\d))\\s*"),
                                        QRegularExpression::CaseInsensitiveOption);
  return text.split(marks, Qt::SkipEmptyParts);
}

}  // namespace

Expected<PutUp> read_put_up(const QString& text) {
  static const QRegularExpression letter(QStringLiteral("\\p{L}"));
  PutUp put_up;
  for (const QString& part : parts_of(text)) {
    const std::string typed = part.trimmed().toStdString();
    if (typed.empty()) continue;
    const bool has_unit = part.contains(letter);
    if (const auto mass = read_mass(typed); has_unit && mass) {
      if (!put_up.weight) put_up.weight = *mass;
    } else if (const auto length = read_length(typed); has_unit && length) {
      if (!put_up.length) put_up.length = *length;
    } else {
      return failure(ErrorKind::not_a_quantity, in_marks(part),
                     "a weight and a length with their units, such as 50 g = 130 m");
    }
  }
  return put_up;
}

QString put_up_text(const PutUp& put_up, const ReaderStyle& reader) {
  QStringList parts;
  if (put_up.weight) parts << show_quantity(QuantityFormat::mass(), reader, to_plain(*put_up.weight));
  if (put_up.length) parts << show_quantity(QuantityFormat::yarn_length(), reader, to_plain(*put_up.length));
  return parts.join(QStringLiteral(" = "));
}

Expected<BandGauge> read_band_gauge(const QString& text) {
  static const QRegularExpression shape(
      QStringLiteral("^([^–—-]+?)(?:\\s*(?:[–—-]|\\bto\\b)\\s*([^–—-]+?))?\\s*(?:sts?|stitches)?\\.?$"),
      QRegularExpression::CaseInsensitiveOption);
  BandGauge gauge;
  if (text.trimmed().isEmpty()) return gauge;
  const auto match = shape.match(text.trimmed());
  const std::string expected = "stitches over 10 cm, such as 23 or 24–25";
  if (!match.hasMatch()) return failure(ErrorKind::not_a_quantity, in_marks(text), expected);
  const auto low = read_number(match.captured(1).toStdString(), 1, most_stitches, "stitches over 10 cm");
  if (!low) return tl::unexpected<Error>(low.error());
  gauge.low = *low;
  if (match.captured(2).isEmpty()) return gauge;
  const auto high = read_number(match.captured(2).toStdString(), 1, most_stitches, "stitches over 10 cm");
  if (!high) return tl::unexpected<Error>(high.error());
  if (high->value < low->value) return failure(ErrorKind::out_of_range, in_marks(text), expected);
  gauge.high = *high;
  return gauge;
}

QString band_gauge_text(const Yarn& yarn, const ReaderStyle& reader) {
  const auto format = QuantityFormat::number(1, most_stitches, "stitches over 10 cm");
  QStringList ends;
  for (const auto* end : {&yarn.band_stitches_low, &yarn.band_stitches_high})
    if (*end) ends << show_quantity(format, reader, **end);
  ends.removeDuplicates();
  return ends.join(QStringLiteral("–"));
}

Expected<std::optional<Price>> read_price(const QString& text) {
  const QString line = text.trimmed();
  if (line.isEmpty()) return std::optional<Price>();
  static const QRegularExpression shape(QStringLiteral(
      "^([^\\d+\\-\\x{2212}]*?)\\s*(\\d[\\d.,'\\s\\x{a0}\\x{202f}]*?)\\s*([^\\d+\\-\\x{2212}]*)$"));
  const auto match = shape.match(line);
  const std::string expected = "a price with its currency, such as €5.20 or 5.20 EUR";
  if (!match.hasMatch()) return failure(ErrorKind::not_a_quantity, in_marks(text), expected);
  const QString before = match.captured(1).trimmed(), behind = match.captured(3).trimmed();
  if (before.isEmpty() == behind.isEmpty())  // none, or one on each side
    return failure(ErrorKind::wrong_shape, in_marks(text), expected);
  const auto amount = read_number(match.captured(2).trimmed().toStdString(), 0, highest_price, "a price");
  if (!amount) return tl::unexpected<Error>(amount.error());
  return std::optional(Price{*amount, (before.isEmpty() ? behind : before).toStdString()});
}

QString price_text(const std::optional<Price>& price, const ReaderStyle& reader) {
  if (!price) return {};
  const QString currency = QString::fromStdString(price->currency);
  const QString figure = QString::fromStdString(show_number(price->amount.value, 2, reader.numbers));
  const bool is_word = !currency.isEmpty() && currency.back().isLetter();
  return is_word ? figure + QLatin1Char(' ') + currency : currency + figure;
}

}  // namespace skeinproof
