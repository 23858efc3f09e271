// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/document/open_pattern.h"

class QWidget;

namespace skeinproof {

class PartTable;

// Yarn on hand, a shade and lot a row, typed as it comes to hand: naming a yarn the pattern does not know
// makes it known, and what is typed as the amount says how it was measured.
PartTable* make_on_hand_table(OpenPattern& open, QWidget* parent = nullptr);

// "1,368.5 m ±1.2 %" or, where no length follows, "–".
QString length_words(const Pattern& pattern, const YarnOnHand& yarn, const ReaderStyle& reader);
// Why no length follows; empty where it does.
QString length_problem(const Pattern& pattern, const YarnOnHand& yarn);

}  // namespace skeinproof
