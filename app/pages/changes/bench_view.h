// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/document/reader_style.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// The pattern as the bench leaves it, which the questions below the table are asked of.
struct BenchView {
  Pattern pattern;
  SizeId size;
  bool changed = false;  // there are changes in it
  ReaderStyle reader;
};

}  // namespace skeinproof
