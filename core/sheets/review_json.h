// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/review/review.h"

namespace skeinproof {

struct CheckedFile {
  std::string file;  // as given
  Review review;
};

// What `check --json` writes: files[], each with file, findings[], not_checked[] and not_understood[], and a
// note where the text is in another language. Lines and columns count from 1 in code points of the text as
// read.
std::string review_json(const std::vector<CheckedFile>& files);

}  // namespace skeinproof
