// SPDX-License-Identifier: GPL-3.0-or-later
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>

#include "app/terminal/verbs.h"
#include "core/units/read.h"
#include "core/units/show.h"
#include "core/yarn/check_yarn.h"
#include "core/yarn/read_composition.h"
#include "core/yarn/weigh.h"

namespace skeinproof {
namespace {

struct MetresCall {
  std::string weight, skein_length, skein_weight, fibre, spinning, market, humidity, new_skein, scale,
      notions;
  bool json = false;
};

// Reads one option into its place; an empty option leaves it as it is.
template <class Target, class Read>
Expected<void> take(const std::string& text, Target& target, Read read) {
  if (text.empty()) return {};
  auto value = read(text);
  if (!value) return tl::unexpected(value.error());
  target = value->value;
  return {};
}

template <class Word>
Expected<void> take_word(const std::string& text, Word& target) {
  if (text.empty()) return {};
  if (const auto word = from_word<Word>(text)) {
    target = *word;
    return {};
  }
  std::string known;
  for (const auto& row : EnumWords<Word>::rows)
    known += (known.empty() ? "" : ", ") + std::string(row.second);
  return failure(ErrorKind::unknown_name, "“" + text + "”", "one of: " + known);
}

Expected<WeighedYarn> read_call(const MetresCall& call) {
  WeighedYarn yarn;
  const auto mass = [](std::string_view text) { return read_mass(text); };
  const auto length = [](std::string_view text) { return read_length(text); };
  const auto percent = [](std::string_view text) {
    return read_number(text, 0, 100, "relative humidity in percent");
  };
  if (auto done = take(call.weight, yarn.reading, mass); !done) return tl::unexpected(done.error());
  if (auto done = take(call.notions, yarn.notions, mass); !done) return tl::unexpected(done.error());
  if (!call.skein_length.empty()) {
    auto read = length(call.skein_length);
    if (!read) return tl::unexpected(read.error());
    yarn.put_up.length = *read;
  }
  if (!call.skein_weight.empty()) {
    auto read = mass(call.skein_weight);
    if (!read) return tl::unexpected(read.error());
    yarn.put_up.weight = *read;
  }
  if (auto done = take(call.humidity, yarn.humidity_pct, percent); !done) return tl::unexpected(done.error());
  if (auto done = take(call.new_skein, yarn.new_skein, mass); !done) return tl::unexpected(done.error());
  if (auto done = take(call.scale, yarn.scale_step, mass); !done) return tl::unexpected(done.error());
  if (auto done = take_word(call.spinning, yarn.spinning); !done) return tl::unexpected(done.error());
  if (auto done = take_word(call.market, yarn.market); !done) return tl::unexpected(done.error());
  auto composition = read_composition(call.fibre);
  if (!composition) return tl::unexpected(composition.error());
  yarn.composition = std::move(*composition);
  for (const auto& problems : {check_composition(yarn.composition), check_put_up(yarn.put_up)})
    if (!problems.empty()) return tl::unexpected(problems.front());
  return yarn;
}

void print_text(const WeighedLength& length) {
  std::cout << show_number(length.length.value(), 1) << " m (" << show_number(length.low.value(), 1) << "–"
            << show_number(length.high.value(), 1) << " m, 9 in 10), "
            << show_number(in_yards(length.length), 1) << " yd\n";
  for (const FigureLine& line : length.lines) {
    std::cout << "  " << line.label << ": " << show_number(line.value, 3) << (line.unit.empty() ? "" : " ")
              << line.unit;
    if (!line.how.empty()) std::cout << " = " << line.how;
    if (!line.source.empty()) std::cout << " [" << line.source << "]";
    std::cout << "\n";
  }
  for (const std::string& sentence : length.assumed) std::cout << "  " << sentence << "\n";
  std::cout << std::flush;
}

void print_json(const WeighedLength& length) {
  using Json = nlohmann::ordered_json;
  Json json{
      {"length_m", length.length.value()}, {"low_m", length.low.value()}, {"high_m", length.high.value()}};
  const auto share = [](const ErrorShare& error) {
    return Json{{"shorter", error.shorter}, {"longer", error.longer}};
  };
  json["error"] = {
      {"scale", share(length.scale)}, {"label", share(length.label)}, {"moisture", share(length.moisture)}};
  json["assumed"] = length.assumed;
  for (const FigureLine& line : length.lines)
    json["working"].push_back({{"label", line.label},
                               {"value", line.value},
                               {"unit", line.unit},
                               {"how", line.how},
                               {"source", line.source}});
  std::cout << json.dump(2, ' ', false, Json::error_handler_t::replace) << std::endl;
}

int answer(const MetresCall& call) {
  const auto yarn = read_call(call);
  const auto length = yarn ? weighed_length(*yarn) : tl::unexpected(yarn.error());
  if (!length) {
    complain(length.error());
    return exit_unreadable;
  }
  call.json ? print_json(*length) : print_text(*length);
  return exit_done;
}

}  // namespace

VerbAction add_metres(CLI::App& subcommand) {
  const auto call = std::make_shared<MetresCall>();
  subcommand.add_option("WEIGHT", call->weight, "On the scale: \"18.4 g\", \"¾ oz\"")->required();
  subcommand
      .add_option("--skein", call->skein_length,
                  "Length of a whole skein by its label: \"100 m\", \"109 yd\"")
      ->required();
  subcommand.add_option("--per", call->skein_weight,
                        "Weight of a whole skein by its label: \"50 g\", \"1¾ oz\"");
  subcommand.add_option("--fibre", call->fibre, "Composition: \"75% wool, 25% polyamide\"");
  subcommand.add_option("--spun", call->spinning, "worsted-spun, semi-worsted, woollen-spun, filament");
  subcommand.add_option("--market", call->market, "Where the label is from: Europe, United States");
  subcommand.add_option("--humidity", call->humidity, "Relative humidity at the scale, percent");
  subcommand.add_option("--new-skein", call->new_skein,
                        "A whole new skein on the same scale in the same hour");
  subcommand.add_option("--scale", call->scale, "Smallest division of the scale: \"1 g\", \"0.1 g\"");
  subcommand.add_option("--notions", call->notions, "Buttons, zip, labels that were on the scale too");
  subcommand.add_flag("--json", call->json, "For other programs");
  return [call] { return answer(*call); };
}

}  // namespace skeinproof
