// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/relaxation.h"

#include <array>
#include <cassert>

#include "core/reference/lookup.h"

namespace skeinproof {
namespace {

// Empty where the tables have no row.
constexpr std::string_view row_of(GaugeState state) {
  switch (state) {
    case GaugeState::washed:
      return "munden_fully_Ks";
    case GaugeState::wetted:
      return "munden_wet_Ks";
    case GaugeState::never_wetted:
      return "munden_dry_Ks";
    case GaugeState::unstated:
      return {};
  }
  return {};
}

constexpr double constant_of_unstated_state = 20.5;

constexpr std::array factors{
    StructureFactor{Structure::plain, 1.0, 1.0, 1.0, false, true},
    StructureFactor{Structure::rib, 0.93, 0.95, 0.97, true, false},  // worked on smaller needles
    StructureFactor{Structure::garter, 0.97, 0.985, 1.0, true, false},
    StructureFactor{Structure::moss, 0.97, 1.0, 1.03, true, false},
    StructureFactor{Structure::cable, 1.03, 1.055, 1.08, true, false},
    StructureFactor{Structure::stranded, 1.0, 1.025, 1.05, false, true},  // floats come on top
    StructureFactor{Structure::intarsia, 1.03, 1.04, 1.05, false, true},  // with the links, without the ends
    StructureFactor{Structure::lace, 0.95, 1.0, 1.1, true, false},
    StructureFactor{Structure::slip_stitch, 0.95, 1.0, 1.1, true, false},
    StructureFactor{Structure::brioche, 1.0, 1.2, 1.4, true, false},
    StructureFactor{Structure::other, 0.9, 1.0, 1.1, true, false},
};

}  // namespace

Relaxation relaxation(GaugeState state) {
  const std::string_view id = row_of(state);
  if (id.empty())
    return {constant_of_unstated_state,
            "between the constants of the published states, for a gauge of unstated state; common practice, "
            "no source"};
  const LoopConstant* row = loop_constant_by_id(id);
  assert(row && row->figure.value);
  return {*row->figure.value, citation(row->figure.source, row->figure.confidence)};
}

const StructureFactor& structure_factor(Structure structure) {
  for (const StructureFactor& factor : factors)
    if (factor.structure == structure) return factor;
  assert(false && "every structure has a row");
  return factors.back();
}

}  // namespace skeinproof
