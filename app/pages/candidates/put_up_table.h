// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>

#include "app/document/open_pattern.h"

namespace skeinproof {

class PartTable;

// The other put-ups in which a yarn is sold, with their prices, typed as a band says them. `which` says which
// yarn.
PartTable* make_put_up_table(OpenPattern& open, std::function<YarnId()> which, QWidget* parent = nullptr);

}  // namespace skeinproof
