// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>
#include <vector>

#include "core/manuscript/reading_words.h"

namespace skeinproof {

// The tables behind `trade_word`, in the order in which the first that has the words decides.
std::vector<std::span<const TradeWord>> words_of_figures();
std::vector<std::span<const TradeWord>> words_of_cloth();
std::vector<std::span<const TradeWord>> words_of_yarns_and_fibres();
std::vector<std::span<const TradeWord>> words_of_things();

}  // namespace skeinproof
