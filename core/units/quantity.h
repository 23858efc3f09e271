// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <boost/units/base_units/cgs/gram.hpp>
#include <boost/units/base_units/si/meter.hpp>
#include <boost/units/make_system.hpp>
#include <boost/units/physical_dimensions/length.hpp>
#include <boost/units/physical_dimensions/mass.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/systems/cgs/length.hpp>

namespace skeinproof {

// Quantities of the trade. Yarn is counted in metres and grams, cloth in centimetres; the two lengths are
// different types and meet only through the two functions below.
using YarnSystem =
    boost::units::make_system<boost::units::si::meter_base_unit, boost::units::cgs::gram_base_unit>::type;

using Metres = boost::units::quantity<boost::units::unit<boost::units::length_dimension, YarnSystem>>;
using Grams = boost::units::quantity<boost::units::unit<boost::units::mass_dimension, YarnSystem>>;
using MetresPerGram = decltype(Metres() / Grams());
using Centimetres = boost::units::quantity<boost::units::cgs::length>;

constexpr Metres metres(double value) { return Metres::from_value(value); }
constexpr Grams grams(double value) { return Grams::from_value(value); }
constexpr Centimetres centimetres(double value) { return Centimetres::from_value(value); }
constexpr MetresPerGram metres_per_gram(double value) { return MetresPerGram::from_value(value); }

constexpr Metres to_metres(Centimetres length) { return metres(length.value() / 100.0); }
constexpr Centimetres to_centimetres(Metres length) { return centimetres(length.value() * 100.0); }

// Exact by definition: international yard and pound agreement of 1959.
inline constexpr double metres_per_yard = 0.9144;
inline constexpr double grams_per_ounce = 28.349523125;
inline constexpr double centimetres_per_inch = 2.54;

}  // namespace skeinproof
