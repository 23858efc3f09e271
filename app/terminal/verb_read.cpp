// SPDX-License-Identifier: GPL-3.0-or-later
#include <filesystem>
#include <iostream>
#include <memory>

#include "app/terminal/verbs.h"
#include "app/version.h"
#include "core/base/text.h"
#include "core/file/project_file.h"
#include "core/file/whole_file.h"
#include "core/manuscript/submission.h"

namespace skeinproof {
namespace {

struct ReadCall {
  std::string block, into;
};

void tell(const TakenIn& taken, const std::string& text) {
  for (const std::string& note : taken.notes) std::cout << note << "\n";
  for (const FactChange& change : taken.facts.changes)
    std::cout << change.what << ": " << (change.before.empty() ? "" : change.before + " → ") << change.after
              << "\n";
  for (const std::string& left_out : taken.facts.left_out) std::cout << "left out: " << left_out << "\n";
  for (const NotUnderstood& one : taken.reading.not_understood) {
    if (one.told_nothing) continue;
    const LineColumn at = line_column(text, one.span.begin);
    std::cout << "not understood, line " << at.line << ", column " << at.column << ": "
              << skeinproof::quoted(words_at(text, one.span)) << "\n";
  }
}

Expected<void> read_into(const ReadCall& call) {
  const auto bytes = read_whole_file(call.block);
  if (!bytes) return tl::unexpected(bytes.error());
  const bool exists = std::filesystem::exists(call.into);
  OpenedProject project;
  if (exists) {
    auto opened = open_project(call.into);
    if (!opened) return tl::unexpected(opened.error());
    project = std::move(*opened);
  }
  auto taken = take_in(exists ? project.pattern : new_pattern(), *bytes, call.block);
  if (!taken) {
    taken.error().place.file = call.block;
    return tl::unexpected(taken.error());
  }
  SaveOptions options;
  options.program = std::string("Skeinproof ") + program_version;
  if (exists) options.last_seen = project.stamp;
  const auto saved = save_project(call.into, taken->facts.pattern, options);
  if (!saved) return tl::unexpected(saved.error());
  tell(*taken, taken->facts.pattern.draft()->text);
  return {};
}

}  // namespace

VerbAction add_read(CLI::App& subcommand) {
  const auto call = std::make_shared<ReadCall>();
  subcommand.add_option("BLOCK", call->block, "A submitted text (.txt .md .html .odt .docx)")->required();
  subcommand.add_option("--into", call->into, "A project; made where there is none")->required();
  return [call] {
    const auto read = read_into(*call);
    if (read) return exit_done;
    complain(read.error());
    return exit_unreadable;
  };
}

}  // namespace skeinproof
