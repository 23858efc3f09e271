// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <optional>

#include "app/document/reader_style.h"
#include "core/base/error.h"
#include "core/yarn/yarn.h"

namespace skeinproof {

// Lines of a ball band as people copy them. An empty text is an absent value. Figures keep what was typed.

// "50 g = 130 m", "130 m / 50 g", "50 g / 1¾ oz = 175 m / 191 yd": the first weight and the first length,
// each with its unit.
Expected<PutUp> read_put_up(const QString& text);
QString put_up_text(const PutUp& put_up, const ReaderStyle& reader);

// "23", "24–25 sts": stitches over 10 cm.
struct BandGauge {
  std::optional<Entered<double>> low, high;
};
Expected<BandGauge> read_band_gauge(const QString& text);
QString band_gauge_text(const Yarn& yarn, const ReaderStyle& reader);

// "€5.20", "5,20 EUR", "SEK 49". Refused without a currency.
Expected<std::optional<Price>> read_price(const QString& text);
QString price_text(const std::optional<Price>& price, const ReaderStyle& reader);

}  // namespace skeinproof
