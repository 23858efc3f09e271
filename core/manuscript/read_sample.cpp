// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/phrases.h"

namespace skeinproof {

// The words that begin what is said of the sample; the sizes, weights and shades behind them are its own.
bool take_shown(const PhrasePlace& at) {
  at.reader.run = Run::sample;
  at.reader.use(at.first, at.last);
  return true;
}

bool take_as_listed(const PhrasePlace& at) {
  if (at.reader.run != Run::sample) return false;
  at.reader.say(StatementKind::sample_shades, at.first, at.last).words = at.reader.words(at.first, at.last);
  return true;
}

}  // namespace skeinproof
