// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace skeinproof {

// Every part of the document names its fields once, in a static template
//   template <class Self, class Visit> static void describe(Self& self, Visit&& visit) { visit("name",
//   self.name); … }
// from which JSON, the project file, the per-size moves and the test generators all follow.
struct NoVisit {
  template <class T>
  void operator()(const char*, T&) const {}
};

template <class T>
concept Described = requires(T& value, NoVisit visit) {
  T::describe(value, visit);
};

}  // namespace skeinproof
