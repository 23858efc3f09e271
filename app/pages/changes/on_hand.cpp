// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/on_hand.h"

#include <QRegularExpression>

#include "core/need/layer.h"
#include "core/units/read.h"
#include "core/yarn/linear_density.h"

namespace skeinproof {
namespace {

constexpr double most_skeins = 1000;
const std::string wanted = "skeins, a weight or a length, such as 4 skeins, 120 g or 640 m";

// The text before a word for skeins; the whole text where it ends in a figure; nothing where a unit follows.
std::optional<QString> skeins_in(const QString& text) {
  static const QRegularExpression skeins(QStringLiteral("^(.*?)\\s*(skeins?|balls?|hanks?|cones?|sk)\\.?$"),
                                         QRegularExpression::CaseInsensitiveOption);
  if (const auto match = skeins.match(text); match.hasMatch()) return match.captured(1);
  if (!text.isEmpty() && !text.back().isLetter()) return text;
  return std::nullopt;
}

}  // namespace

Expected<Metres> read_on_hand(const Pattern& pattern, RoleId role_id, const QString& typed) {
  const QString text = typed.trimmed();
  const Role* role = pattern.role(role_id);
  const Yarn* yarn = role != nullptr ? pattern.yarn(role->yarn) : nullptr;
  if (text.isEmpty()) return failure(ErrorKind::wrong_shape, "nothing", wanted);
  if (const auto count = skeins_in(text)) {
    const auto skeins = read_number(count->toStdString(), 0, most_skeins, "skeins");
    if (!skeins) return tl::unexpected<Error>(skeins.error());
    const auto skein = skein_length(pattern, role_id);
    if (!skein)
      return failure(ErrorKind::wrong_shape, "skeins of a yarn whose put-up has no length",
                     "that length on the page Yarns, or metres");
    return skeins->value * *skein;
  }
  if (const auto length = read_length(text.toStdString())) return length->value;
  const auto mass = read_mass(text.toStdString());
  if (!mass) return failure(ErrorKind::not_a_quantity, "“" + text.toStdString() + "”", wanted);
  const auto density =
      yarn != nullptr
          ? linear_density(yarn->put_up)
          : Expected<MetresPerGram>(failure(ErrorKind::wrong_shape, "a colour without a yarn", ""));
  if (!density)
    return failure(ErrorKind::wrong_shape, "a weight of a yarn whose put-up lacks length or weight",
                   "both on the page Yarns, or metres");
  return mass->value * *density;
}

}  // namespace skeinproof
