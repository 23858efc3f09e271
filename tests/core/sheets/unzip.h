// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <string>

namespace skeinproof::testing {

// The entries of a small zip file by name; empty where it is none. For looking into workbooks in tests.
std::map<std::string, std::string> unzipped(const std::string& path);

}  // namespace skeinproof::testing
