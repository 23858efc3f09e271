// SPDX-License-Identifier: GPL-3.0-or-later
#include <memory>

#include "app/terminal/verbs.h"
#include "core/file/json.h"
#include "core/file/project_file.h"
#include "core/file/submission_file.h"
#include "core/file/whole_file.h"

namespace skeinproof {
namespace {

struct ConvertCall {
  std::string file;
  std::string out;
  bool replace = false;
};

int write_json(const ConvertCall& call) {
  const auto pattern = read_pattern(call.file);
  if (!pattern) {
    complain(pattern.error());
    return exit_unreadable;
  }
  if (const auto written = write_text(call.out, to_json(*pattern)); !written) {
    complain(written.error());
    return exit_unreadable;
  }
  return exit_done;
}

int make_project(const ConvertCall& call) {
  const auto text = read_whole_file(call.file);
  const auto pattern = text ? pattern_from_json(*text, call.file) : tl::unexpected(text.error());
  if (!pattern) {
    complain(pattern.error());
    return exit_unreadable;
  }
  SaveOptions options;
  options.replace_existing = call.replace;
  if (const auto saved = save_project(call.out, *pattern, options); !saved) {
    complain(saved.error());
    return exit_unreadable;
  }
  return exit_done;
}

}  // namespace

VerbAction add_to_json(CLI::App& subcommand) {
  const auto call = std::make_shared<ConvertCall>();
  subcommand.add_option("FILE", call->file, "A project")->required();
  subcommand.add_option("--out", call->out, "Where to; the screen if left out");
  return [call] { return write_json(*call); };
}

VerbAction add_from_json(CLI::App& subcommand) {
  const auto call = std::make_shared<ConvertCall>();
  subcommand.add_option("JSON", call->file, "A document written by to-json")->required();
  subcommand.add_option("--out", call->out, "The project file to make")->required();
  subcommand.add_flag("--replace", call->replace, "Replace what stands there");
  return [call] { return make_project(*call); };
}

}  // namespace skeinproof
