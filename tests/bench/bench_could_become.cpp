// SPDX-License-Identifier: GPL-3.0-or-later
#include <benchmark/benchmark.h>

#include <fstream>
#include <sstream>

#include "core/file/json.h"
#include "core/need/assessment.h"
#include "core/pattern/edits.h"
#include "core/substitution/could_become.h"

namespace {

using namespace skeinproof;

// The yoke pullover, 9 sizes and 4 colours, with so many yarns at home, no two of one thickness.
Pattern with_yarns(std::size_t count) {
  std::ifstream file(std::string(SKEINPROOF_SOURCE_DIR) + "/sample-data/projects/quillmarsh-yoke.json");
  std::ostringstream text;
  text << file.rdbuf();
  Pattern pattern = pattern_from_json(text.str()).value();
  pattern.on_hand.clear();
  for (std::size_t i = 0; i < count; ++i) {
    const YarnId id = add_yarn(pattern, "Yarn " + std::to_string(i));
    Yarn& yarn = pattern.yarns.back();
    yarn.composition = pattern.yarns.front().composition;
    yarn.put_up.length = Entered<Metres>{metres(150 + 1.5 * static_cast<double>(i)), ""};
    yarn.put_up.weight = Entered<Grams>{grams(50), ""};
    add_on_hand(pattern, id);
    YarnOnHand& on_hand = pattern.on_hand.back();
    on_hand.shade.name = "Shade " + std::to_string(i);
    on_hand.parts = {{grams(10 + static_cast<double>(i * 37 % 190)), ""}};
    if (i % 4 == 0) on_hand.role = pattern.roles[i / 4 % pattern.roles.size()].id;
  }
  pattern.sharing.yarns_a_role = 2;
  for (const Piece& piece : pattern.pieces) pattern.given_parts.push_back({piece.id, {}});
  return pattern;
}

void could_become_of(benchmark::State& state) {
  const Pattern pattern = with_yarns(static_cast<std::size_t>(state.range(0)));
  const Assessment assessment = assess(pattern);
  for (auto _ : state) benchmark::DoNotOptimize(could_become(pattern, assessment));
}
BENCHMARK(could_become_of)->Arg(5)->Arg(10)->Arg(20)->Arg(40)->Unit(benchmark::kMillisecond);

}  // namespace
