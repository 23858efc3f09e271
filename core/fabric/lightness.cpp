// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/lightness.h"

#include <algorithm>
#include <cmath>

namespace skeinproof {
namespace {

// IEC 61966-2-1 gives both matrices with four decimals; white is the sum of a row.
constexpr double to_xyz[3][3] = {
    {0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722}, {0.0193, 0.1192, 0.9505}};
constexpr double to_rgb[3][3] = {
    {3.2406, -1.5372, -0.4986}, {-0.9689, 1.8758, 0.0415}, {0.0557, -0.2040, 1.0570}};
constexpr double white[3] = {0.9505, 1.0, 1.0890};

// ISO/CIE 11664-4: the cube root gives way to a straight line below (6/29)³.
constexpr double knee = 6.0 / 29.0;

double linear(std::uint8_t channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

std::uint8_t channel_of(double linear) {
  const double c = linear <= 0.0031308 ? 12.92 * linear : 1.055 * std::pow(linear, 1 / 2.4) - 0.055;
  return static_cast<std::uint8_t>(std::lround(std::clamp(c, 0.0, 1.0) * 255));
}

double compress(double t) {
  return t > knee * knee * knee ? std::cbrt(t) : t / (3 * knee * knee) + 4.0 / 29.0;
}
double expand(double f) { return f > knee ? f * f * f : 3 * knee * knee * (f - 4.0 / 29.0); }

}  // namespace

Lab lab_of(Srgb colour) {
  const double rgb[3] = {linear(colour.red), linear(colour.green), linear(colour.blue)};
  double f[3];
  for (int i = 0; i < 3; ++i)
    f[i] = compress((to_xyz[i][0] * rgb[0] + to_xyz[i][1] * rgb[1] + to_xyz[i][2] * rgb[2]) / white[i]);
  return {116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])};
}

Srgb srgb_of(const Lab& colour) {
  const double f = (colour.lightness + 16) / 116;
  const double xyz[3] = {expand(f + colour.a / 500) * white[0], expand(f) * white[1],
                         expand(f - colour.b / 200) * white[2]};
  std::uint8_t rgb[3];
  for (int i = 0; i < 3; ++i)
    rgb[i] = channel_of(to_rgb[i][0] * xyz[0] + to_rgb[i][1] * xyz[1] + to_rgb[i][2] * xyz[2]);
  return {rgb[0], rgb[1], rgb[2]};
}

}  // namespace skeinproof
