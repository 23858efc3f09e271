// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

#include "core/need/assessment.h"
#include "core/pattern/pattern.h"

namespace skeinproof::testing {

// An invented pattern with needs given, not worked out: what a block and a sheet are written from.
struct Sample {
  Pattern pattern;
  Assessment assessment;
};

// A stranded yoke pullover in four colours and nine sizes.
Sample yoke_sample();
// Striped socks in two colours and five sizes.
Sample socks_sample();

// A file of tests/golden as it stands.
std::string golden(const std::string& name);

}  // namespace skeinproof::testing
