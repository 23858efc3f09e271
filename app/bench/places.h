// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <optional>
#include <vector>

namespace skeinproof {

// Where the person has been: a page and a part of it (0 = the page itself), for back and forward.
struct WindowPlace {
  int page = 0;
  std::uint32_t part = 0;
  bool operator==(const WindowPlace&) const = default;
};

class Places {
 public:
  // Going somewhere forgets the way forward; being there already adds nothing.
  void went_to(WindowPlace place);
  std::optional<WindowPlace> back();
  std::optional<WindowPlace> forward();
  bool can_go_back() const { return at_ > 0; }
  bool can_go_forward() const { return at_ + 1 < places_.size(); }
  void forget();

 private:
  std::vector<WindowPlace> places_;
  std::size_t at_ = 0;
};

}  // namespace skeinproof
