// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <CLI/CLI.hpp>
#include <filesystem>
#include <functional>
#include <string>

#include "core/base/error.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// A verb adds its subcommand; what it returns when called becomes the exit code.
using VerbAction = std::function<int()>;
struct Verb {
  const char* name;
  const char* purpose;
  VerbAction (*add)(CLI::App& subcommand);
};

VerbAction add_assess(CLI::App& subcommand);
VerbAction add_check(CLI::App& subcommand);
VerbAction add_hand_over(CLI::App& subcommand);
VerbAction add_metres(CLI::App& subcommand);
VerbAction add_read(CLI::App& subcommand);
VerbAction add_shelf(CLI::App& subcommand);
VerbAction add_to_json(CLI::App& subcommand);
VerbAction add_from_json(CLI::App& subcommand);

inline constexpr int exit_done = 0;
inline constexpr int exit_stop = 1;  // a finding that must not print
inline constexpr int exit_unreadable = 2;

// A project, a JSON document, or any other file as a submission of its own, with notes on the error output.
Expected<Pattern> read_pattern_or_text(const std::filesystem::path& path);
// Notes on what was read from a file, on the error output.
void tell(const std::filesystem::path& path, const std::vector<std::string>& notes);
// Writes a file, or the standard output where the path is "-" or empty.
Expected<void> write_text(const std::string& path, const std::string& text);
// One line on the error output.
void complain(const Error& error);

}  // namespace skeinproof
