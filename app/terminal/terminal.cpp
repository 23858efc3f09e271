// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/terminal/terminal.h"

#include <array>
#include <map>

#include "app/terminal/verbs.h"
#include "app/version.h"

namespace skeinproof {
namespace {

constexpr std::array verbs = {
    Verb{"assess", "Length, fraction of a skein and skeins for every role and size", add_assess},
    Verb{"check", "Every doubt about a submitted text, with its working", add_check},
    Verb{"read", "Read a submitted text into a project", add_read},
    Verb{"hand-over", "Write a sheet: yarn block, quantities or working", add_hand_over},
    Verb{"metres", "Length of yarn from a weight, with its range", add_metres},
    Verb{"shelf", "List and search your own yarns, take them from CSV and write them to it", add_shelf},
    Verb{"to-json", "Write a whole project as JSON", add_to_json},
    Verb{"from-json", "Make a project file from JSON", add_from_json},
};

}  // namespace

int run_terminal(int argc, char** argv) {
  CLI::App app{
      "Skeinproof: a pattern's yarn block, made, checked and put to use, with the working behind every "
      "number.\nWithout a verb it opens the window.",
      "skeinproof"};
  app.set_version_flag("--version", std::string("Skeinproof ") + program_version);
  app.require_subcommand(1);
  app.footer("FILE is a project (*.skeinproof) or its JSON.");
  std::map<const CLI::App*, VerbAction> actions;
  for (const Verb& verb : verbs) {
    CLI::App* subcommand = app.add_subcommand(verb.name, verb.purpose);
    actions[subcommand] = verb.add(*subcommand);
  }
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    const int code = app.exit(error);
    return code == 0 ? exit_done : exit_unreadable;
  }
  for (const auto& [subcommand, action] : actions)
    if (subcommand->parsed()) return action();
  return exit_unreadable;
}

}  // namespace skeinproof
