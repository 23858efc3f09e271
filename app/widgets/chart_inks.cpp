// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/chart_inks.h"

#include <QCoreApplication>
#include <QPainter>
#include <algorithm>
#include <cmath>

namespace skeinproof {
namespace {

const Role* role_of(const Pattern& pattern, const Chart& chart, char symbol) {
  const auto found = std::find_if(chart.colours.begin(), chart.colours.end(), [&](const ChartColour& colour) {
    return colour.symbol.size() == 1 && colour.symbol.front() == symbol;
  });
  return found == chart.colours.end() ? nullptr : pattern.role(found->role);
}

double value_or_nought(const std::optional<Entered<double>>& value) { return value ? value->value : 0; }

}  // namespace

QColor role_fill(const Pattern& pattern, RoleId id, const Ink& ink) {
  const Role* role = pattern.role(id);
  if (role == nullptr || !role->shade.lightness) return ink.base;
  return shade_colour(role->shade.lightness->value, value_or_nought(role->shade.a),
                      value_or_nought(role->shade.b));
}

std::map<char, SquareInk> square_inks(const Pattern& pattern, const Chart& chart, ChartLook look,
                                      const Ink& ink) {
  std::map<char, SquareInk> inks;
  for (const ChartColour& colour : chart.colours) {
    if (colour.symbol.size() != 1) continue;
    const Role* role = pattern.role(colour.role);
    QColor fill = ink.base;
    if (look == ChartLook::colour) fill = role_fill(pattern, colour.role, ink);
    if (look == ChartLook::lightness && role != nullptr && role->shade.lightness)
      fill = shade_colour(role->shade.lightness->value, 0, 0);
    inks[colour.symbol.front()] = {fill, fill == ink.base ? ink.text : letter_on(fill)};
  }
  return inks;
}

QPixmap chip_picture(const QColor& first, const QColor& second, const Ink& ink, int height,
                     double pixel_ratio) {
  const bool two = first != second;
  const int width = two ? 2 * height : height;
  QPixmap picture(QSize(width, height) * pixel_ratio);
  picture.setDevicePixelRatio(pixel_ratio);
  picture.fill(Qt::transparent);
  QPainter painter(&picture);
  painter.fillRect(QRect(0, 0, height, height), first);
  if (two) painter.fillRect(QRect(height, 0, height, height), second);
  painter.setPen(ink.edge);
  painter.drawRect(QRectF(0.5, 0.5, width - 1, height - 1));
  return picture;
}

QString symbol_label(const Pattern& pattern, const Chart& chart, char symbol) {
  const Role* role = role_of(pattern, chart, symbol);
  return role != nullptr && !role->label.empty() ? QString::fromStdString(role->label)
                                                 : QString(QLatin1Char(symbol));
}

QString symbol_words(const Pattern& pattern, const Chart& chart, char symbol) {
  if (symbol == no_stitch) return QCoreApplication::translate("Chart", "no stitch");
  const Role* role = role_of(pattern, chart, symbol);
  if (role == nullptr)
    return QCoreApplication::translate("Chart", "%1, a colour without a yarn").arg(QLatin1Char(symbol));
  return QString::fromStdString(role->shade.name.empty() ? role->label
                                                         : role->label + " " + role->shade.name);
}

}  // namespace skeinproof
