// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/pattern/house_style.h"

namespace skeinproof {

// The user's own house styles, one JSON file each in a folder, known by their names.
struct StoredHouseStyles {
  std::vector<HouseStyle> styles;  // by name
  std::vector<Error> problems;     // files that could not be read
};

// A folder that does not exist holds none.
StoredHouseStyles load_house_styles(const std::filesystem::path& folder);

// Replaces the style of the same name; makes the folder where it is missing. Failures as write_whole_file.
Expected<void> store_house_style(const std::filesystem::path& folder, const HouseStyle& style);

// Nothing happens where there is none of that name.
Expected<void> drop_house_style(const std::filesystem::path& folder, const std::string& name);

}  // namespace skeinproof
