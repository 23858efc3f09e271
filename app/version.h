// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace skeinproof {

inline constexpr const char* program_version = SKEINPROOF_VERSION;

}  // namespace skeinproof
