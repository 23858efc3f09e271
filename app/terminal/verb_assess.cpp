// SPDX-License-Identifier: GPL-3.0-or-later
#include <iostream>
#include <memory>
#include <vector>

#include "app/terminal/verbs.h"
#include "core/file/submission_file.h"
#include "core/need/assessment.h"
#include "core/sheets/assessment_json.h"
#include "core/sheets/make_sheets.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

struct AssessCall {
  std::vector<std::string> files;
  bool json = false;
};

int assess_files(const AssessCall& call) {
  int code = exit_done;
  for (const std::string& file : call.files) {
    const auto pattern = read_pattern(file);
    if (!pattern) {
      complain(pattern.error());
      code = exit_unreadable;
      continue;
    }
    const Assessment assessment = assess(*pattern);
    std::cout << (call.json ? assessment_json(*pattern, assessment)
                            : plain_text(per_size_sheet(*pattern, assessment, pattern->house())) + "\n")
              << std::flush;
  }
  return code;
}

}  // namespace

VerbAction add_assess(CLI::App& subcommand) {
  const auto call = std::make_shared<AssessCall>();
  subcommand.add_option("FILE", call->files, "Projects or their JSON")->required();
  subcommand.add_flag("--json", call->json, "For other programs: m, shares 0 to 1, unrounded");
  return [call] { return assess_files(*call); };
}

}  // namespace skeinproof
