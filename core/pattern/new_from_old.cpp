// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/pattern/new_from_old.h"

namespace skeinproof {

Pattern new_from_old(const Pattern& old) {
  Pattern fresh = old;
  fresh.title.clear();
  fresh.note.clear();
  fresh.weighings.clear();
  fresh.drafts = {};
  fresh.queries.clear();
  fresh.changes.clear();
  fresh.readings.clear();
  fresh.candidates.clear();
  fresh.on_hand.clear();
  fresh.given_parts.clear();
  fresh.printed_total = {};
  for (Role& role : fresh.roles) {
    role.printed_count = {};
    role.printed_note.clear();
    role.printed_at_most.reset();
  }
  for (Fabric& fabric : fresh.fabrics) {
    fabric.swatch = {};
    if (fabric.loop_source == LoopSource::from_swatch) fabric.loop_source = LoopSource::from_gauge;
  }
  return fresh;
}

}  // namespace skeinproof
