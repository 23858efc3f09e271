// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "app/document/reader_style.h"
#include "core/base/error.h"
#include "core/pattern/yarn_on_hand.h"

namespace skeinproof {

// How much of a yarn lies there, in one line: "5 skeins + 41 g", "44 g + 30 g", "126 m", "300 turns of 1.5
// m", "4 lengths", "7 wraps in 1 cm"; empty where nothing was entered.
QString amount_text(const YarnOnHand& yarn, const ReaderStyle& reader);

// Sets the amount from such a line, and with it how it was measured: skeins and weights, a length, turns, or
// wraps. A bare figure counts skeins where it stands alone; beside weights it needs a word or a unit.
Expected<void> read_amount(const QString& text, YarnOnHand& yarn);

}  // namespace skeinproof
