// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/on_hand/amount_text.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

#include "app/widgets/quantity_text.h"
#include "core/units/read.h"

namespace skeinproof {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(AmountText)
};

constexpr double most_skeins = 10000;
constexpr double most_turns = 1e6;
constexpr double most_wraps = 200;
const std::string wanted = "skeins, weights, a length, turns or wraps, such as 5 skeins + 41 g or 126 m";

std::string in_marks(const QString& text) { return "“" + text.trimmed().toStdString() + "”"; }

// The figure before a word, where the part ends in that word.
std::optional<std::string> figure_before(const QString& part, const QString& words) {
  const QRegularExpression shape(QStringLiteral("^(.+?)\\s*(?:%1)\\.?$").arg(words),
                                 QRegularExpression::CaseInsensitiveOption);
  const auto match = shape.match(part);
  return match.hasMatch() ? std::optional(match.captured(1).toStdString()) : std::nullopt;
}

QStringList parts_of(const QString& text) {
  static const QRegularExpression marks(QStringLiteral("\\s*(?:\\+|;|&|\\band\\b)\\s*"),
                                        QRegularExpression::CaseInsensitiveOption);
  return text.trimmed().split(marks, Qt::SkipEmptyParts);
}

bool ends_in_figure(const QString& part) { return !part.isEmpty() && !part.back().isLetter(); }

// Reads the parts into a yarn whose amount is empty.
Expected<void> read_parts(const QStringList& parts, YarnOnHand& yarn) {
  const QString skein_words = QStringLiteral("skeins?|balls?|hanks?|cakes?|cones?|sk");
  for (const QString& part : parts) {
    const std::string typed = part.toStdString();
    const bool alone = parts.size() == 1;
    if (const auto count = figure_before(part, skein_words); count || (alone && ends_in_figure(part))) {
      const auto skeins = read_number(count.value_or(typed), 0, most_skeins, "skeins");
      if (!skeins) return tl::unexpected<Error>(skeins.error());
      if (yarn.whole_skeins) return failure(ErrorKind::wrong_shape, in_marks(part), "skeins only once");
      yarn.whole_skeins = Entered<double>{skeins->value, count.value_or(typed)};
    } else if (ends_in_figure(part)) {
      return failure(ErrorKind::wrong_shape, in_marks(part),
                     "skeins or a unit behind it, such as " + typed + " g or " + typed + " skeins");
    } else if (const auto mass = read_mass(typed)) {
      yarn.parts.push_back(*mass);
    } else {
      return failure(ErrorKind::not_a_quantity, in_marks(part), wanted);
    }
  }
  yarn.length_by = LengthBy::skeins_and_weight;
  return {};
}

}  // namespace

QString amount_text(const YarnOnHand& yarn, const ReaderStyle& reader) {
  const auto number = [&](const Entered<double>& value) {
    return show_quantity(QuantityFormat::number(0, 1e9, "skeins"), reader, value);
  };
  const auto length = [&](const Entered<Metres>& value) {
    return show_quantity(QuantityFormat::yarn_length(), reader, to_plain(value));
  };
  switch (yarn.length_by) {
    case LengthBy::skeins_and_weight: {
      QStringList parts;
      if (yarn.whole_skeins)
        parts << (yarn.whole_skeins->value == 1 ? Words::tr("1 skein")
                                                : Words::tr("%1 skeins").arg(number(*yarn.whole_skeins)));
      for (const Entered<Grams>& part : yarn.parts) {
        const QString words = show_quantity(QuantityFormat::mass(), reader, to_plain(part));
        parts << (ends_in_figure(words) ? words + QLatin1Char(' ') + unit_of(QuantityFormat::mass(), reader)
                                        : words);
      }
      return parts.join(QStringLiteral(" + "));
    }
    case LengthBy::reel:
      if (!yarn.turns) return {};
      return yarn.circumference
                 ? Words::tr("%1 turns of %2").arg(number(*yarn.turns), length(*yarn.circumference))
                 : Words::tr("%1 turns").arg(number(*yarn.turns));
    case LengthBy::sampled_lengths:
      return yarn.sampled.empty() ? QString() : Words::tr("%1 sampled").arg(yarn.sampled.size());
    case LengthBy::typed_length:
      return yarn.length ? length(*yarn.length) : QString();
    case LengthBy::wraps:
      return yarn.wraps_per_cm ? Words::tr("%1 wraps in 1 cm").arg(number(*yarn.wraps_per_cm)) : QString();
  }
  return {};
}

Expected<void> read_amount(const QString& text, YarnOnHand& yarn) {
  const QString line = text.trimmed();
  YarnOnHand read = yarn;
  read.whole_skeins.reset();
  read.parts.clear();
  if (line.isEmpty()) {
    read.length.reset();
    read.turns.reset();
    read.wraps_per_cm.reset();
    yarn = std::move(read);
    return {};
  }
  static const QRegularExpression reel(QStringLiteral("^(.+?)\\s*turns?(?:\\s*(?:of|x|×|at)\\s*(.+))?$"),
                                       QRegularExpression::CaseInsensitiveOption);
  if (const auto match = reel.match(line); match.hasMatch()) {
    const auto turns = read_number(match.captured(1).toStdString(), 0, most_turns, "turns on a reel");
    if (!turns) return tl::unexpected<Error>(turns.error());
    yarn.length_by = LengthBy::reel;
    yarn.turns = *turns;
    if (match.captured(2).isEmpty()) return {};
    const auto round = read_length(match.captured(2).toStdString());
    if (!round) return tl::unexpected<Error>(round.error());
    yarn.circumference = *round;
    return {};
  }
  if (const auto count = figure_before(line, QStringLiteral("wraps?(?:\\s*(?:in|per|/)\\s*(?:1\\s*)?cm)?"))) {
    const auto wraps = read_number(*count, 0, most_wraps, "wraps in 1 cm");
    if (!wraps) return tl::unexpected<Error>(wraps.error());
    yarn.length_by = LengthBy::wraps;
    yarn.wraps_per_cm = *wraps;
    return {};
  }
  if (!ends_in_figure(line))
    if (const auto length = read_length(line.toStdString())) {
      yarn.length_by = LengthBy::typed_length;
      yarn.length = *length;
      return {};
    }
  if (auto done = read_parts(parts_of(line), read); !done) return done;
  yarn = std::move(read);
  return {};
}

}  // namespace skeinproof
