// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/house_style_store.h"

#include <algorithm>
#include <system_error>

#include "core/base/fingerprint.h"
#include "core/file/json.h"
#include "core/file/whole_file.h"

namespace skeinproof {
namespace fs = std::filesystem;
namespace {

// A name may hold what a file name may not, and two names may differ only in that; the fingerprint tells them
// apart, the letters are for the eye.
fs::path path_of(const fs::path& folder, const std::string& name) {
  std::string words;
  for (char c : name.substr(0, 40)) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    if (plain)
      words += c;
    else if (!words.empty() && words.back() != '-')
      words += '-';
  }
  return folder / (words + "-" + fingerprint_words(fingerprint(name)) + ".json");
}

}  // namespace

StoredHouseStyles load_house_styles(const fs::path& folder) {
  StoredHouseStyles stored;
  std::error_code code;
  for (fs::directory_iterator at(folder, code), end; !code && at != end; at.increment(code)) {
    if (at->path().extension() != ".json") continue;
    const auto text = read_whole_file(at->path());
    auto style = text ? house_style_from_json(*text, at->path().string())
                      : Expected<HouseStyle>(tl::unexpected<Error>(text.error()));
    if (style)
      stored.styles.push_back(std::move(*style));
    else
      stored.problems.push_back(std::move(style.error()));
  }
  std::sort(stored.styles.begin(), stored.styles.end(),
            [](const HouseStyle& a, const HouseStyle& b) { return a.name < b.name; });
  return stored;
}

Expected<void> store_house_style(const fs::path& folder, const HouseStyle& style) {
  std::error_code code;
  fs::create_directories(folder, code);
  if (code) return tl::unexpected<Error>(system_failure(code.value(), folder, "make"));
  return write_whole_file(path_of(folder, style.name), to_json(style));
}

Expected<void> drop_house_style(const fs::path& folder, const std::string& name) {
  const fs::path path = path_of(folder, name);
  std::error_code code;
  fs::remove(path, code);
  if (code) return tl::unexpected<Error>(system_failure(code.value(), path, "remove"));
  return {};
}

}  // namespace skeinproof
