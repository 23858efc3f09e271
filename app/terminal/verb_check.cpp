// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <iostream>
#include <memory>
#include <vector>

#include "app/terminal/verbs.h"
#include "core/file/submission_file.h"
#include "core/sheets/review_json.h"
#include "core/sheets/review_sheet.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

struct CheckCall {
  std::vector<std::string> files;
  bool json = false;
};

bool must_not_print(const Review& review) {
  return std::any_of(review.findings.begin(), review.findings.end(),
                     [](const Finding& finding) { return finding.severity == Severity::stop; });
}

int check_files(const CheckCall& call) {
  int code = exit_done;
  std::vector<CheckedFile> checked;
  for (const std::string& file : call.files) {
    auto found = check_file(file);
    if (!found) {
      complain(found.error());
      code = exit_unreadable;
      continue;
    }
    tell(file, found->file.notes);
    if (code == exit_done && must_not_print(found->review)) code = exit_stop;
    if (!call.json)
      std::cout << file << "\n"
                << plain_text(findings_sheet(found->file.pattern, found->review)) << "\n"
                << std::flush;
    checked.push_back({file, std::move(found->review)});
  }
  if (call.json) std::cout << review_json(checked) << std::flush;
  return code;
}

}  // namespace

VerbAction add_check(CLI::App& subcommand) {
  const auto call = std::make_shared<CheckCall>();
  subcommand
      .add_option("FILE", call->files, "Submitted texts (.txt .md .html .odt .docx), projects or their JSON")
      ->required();
  subcommand.add_flag("--json", call->json, "For other programs");
  return [call] { return check_files(*call); };
}

}  // namespace skeinproof
