// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>

namespace skeinproof {

class OpenPattern;
class Page;
}  // namespace skeinproof

class QWidget;

namespace skeinproof {

// The pages of the window in the order of the work. The name is what StepPlace::page holds; it is translated
// for showing.
struct PageRow {
  const char* name;
  Page* (*make)(OpenPattern& open, QWidget* parent);
};

std::span<const PageRow> page_table();

}  // namespace skeinproof
