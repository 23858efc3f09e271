// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/pattern/pattern.h"
#include "core/review/review.h"

namespace skeinproof {

// Whether the content of a file is that of a project or a JSON document, or its name says so.
bool is_project_or_json(const std::filesystem::path& path);
// A project or a JSON document by its content, whatever its name.
Expected<Pattern> read_pattern(const std::filesystem::path& path);

// A file as something to check: a project as it is; any other as a submission of its own, whose statements
// are facts in force as well.
struct SubmissionFile {
  Pattern pattern;
  bool is_project = false;
  std::vector<std::string> notes;  // "read as Windows-1252", "left out: a picture"
};
Expected<SubmissionFile> read_submission(const std::filesystem::path& path);

// The same with its review.
struct CheckedSubmission {
  SubmissionFile file;
  Review review;
};
Expected<CheckedSubmission> check_file(const std::filesystem::path& path);

}  // namespace skeinproof
