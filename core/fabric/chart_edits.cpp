// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/chart_edits.h"

#include <algorithm>

#include "core/base/text.h"

namespace skeinproof {
namespace {

using Rounds = std::vector<std::string>;

std::size_t width_of(const Rounds& rounds) { return rounds.empty() ? 0 : rounds.front().size(); }

std::vector<ChartColour>::iterator find_colour(Chart& chart, char symbol) {
  return std::find_if(chart.colours.begin(), chart.colours.end(),
                      [&](const ChartColour& colour) { return colour.symbol == std::string(1, symbol); });
}

Expected<void> join_colours(Chart& chart, char symbol) {
  if (symbol == no_stitch || find_colour(chart, symbol) != chart.colours.end()) return {};
  if (!is_chart_symbol(symbol))
    return failure(ErrorKind::wrong_format, quoted(std::string(1, symbol)),
                   "a letter, a figure or a sign such as # or *");
  if (chart.colours.size() >= most_chart_symbols)
    return failure(ErrorKind::out_of_range, std::to_string(chart.colours.size() + 1) + " symbols",
                   "at most " + std::to_string(most_chart_symbols));
  chart.colours.push_back({std::string(1, symbol), RoleId{}});
  return {};
}

Expected<void> inside(const Chart& chart, Square at) {
  if (at.round < chart.rounds->size() && at.stitch < width_of(*chart.rounds)) return {};
  return failure(ErrorKind::out_of_range,
                 "square " + std::to_string(at.stitch + 1) + " of round " + std::to_string(at.round + 1),
                 "a square of the chart's " + std::to_string(width_of(*chart.rounds)) + " × " +
                     std::to_string(chart.rounds->size()));
}

Expected<void> may_be(std::size_t width, std::size_t rounds) {
  const auto fits = [](std::size_t side) { return side >= 1 && side <= most_chart_squares; };
  if (fits(width) && fits(rounds)) return {};
  return failure(ErrorKind::out_of_range,
                 std::to_string(width) + " stitches × " + std::to_string(rounds) + " rounds",
                 "1 to " + std::to_string(most_chart_squares) + " of each");
}

struct Rectangle {
  std::size_t first_round, last_round, first_stitch, last_stitch;
};

Rectangle rectangle(Square a, Square b) {
  return {std::min(a.round, b.round), std::max(a.round, b.round), std::min(a.stitch, b.stitch),
          std::max(a.stitch, b.stitch)};
}

// Checks first, then one copy of the rounds is edited.
template <class Change>
Expected<Chart> edited(Chart chart, Expected<void> allowed, Change&& change) {
  if (!allowed) return tl::unexpected(allowed.error());
  chart.rounds.edit(std::forward<Change>(change));
  return chart;
}

template <class Change>
Expected<Chart> painted(Chart chart, Expected<void> allowed, char symbol, Change&& change) {
  if (!allowed) return tl::unexpected(allowed.error());
  Expected<void> joined = join_colours(chart, symbol);
  return edited(std::move(chart), std::move(joined), std::forward<Change>(change));
}

}  // namespace

Expected<Chart> with_square(Chart chart, Square at, char symbol) {
  return with_rectangle(std::move(chart), at, at, symbol);
}

Expected<Chart> with_rectangle(Chart chart, Square corner, Square opposite, char symbol) {
  Expected<void> allowed = inside(chart, corner);
  if (allowed) allowed = inside(chart, opposite);
  const Rectangle area = rectangle(corner, opposite);
  return painted(std::move(chart), std::move(allowed), symbol, [&](Rounds& rounds) {
    for (std::size_t r = area.first_round; r <= area.last_round; ++r)
      rounds[r].replace(area.first_stitch, area.last_stitch - area.first_stitch + 1,
                        area.last_stitch - area.first_stitch + 1, symbol);
  });
}

Expected<Chart> with_patch(Chart chart, Square at, const Chart& patch) {
  Expected<void> allowed = inside(chart, at);
  for (const std::string& round : *patch.rounds)
    for (const char symbol : round)
      if (allowed) allowed = join_colours(chart, symbol);
  return edited(std::move(chart), std::move(allowed), [&](Rounds& rounds) {
    const std::size_t height = std::min(patch.rounds->size(), rounds.size() - at.round);
    for (std::size_t r = 0; r < height; ++r) {
      std::string& round = rounds[at.round + r];
      const std::string& over = (*patch.rounds)[r];
      std::copy_n(over.begin(), std::min(over.size(), round.size() - at.stitch),
                  round.begin() + static_cast<std::ptrdiff_t>(at.stitch));
    }
  });
}

Expected<Chart> with_repeated(Chart chart, Square corner, Square opposite) {
  Expected<void> allowed = inside(chart, corner);
  if (allowed) allowed = inside(chart, opposite);
  const Rectangle area = rectangle(corner, opposite);
  const std::size_t repeat = area.last_stitch - area.first_stitch + 1;
  return edited(std::move(chart), std::move(allowed), [&](Rounds& rounds) {
    for (std::size_t r = area.first_round; r <= area.last_round; ++r) {
      const std::string motif = rounds[r].substr(area.first_stitch, repeat);
      // Counted from the motif's own place, to the left as well as to the right.
      const std::size_t shift = repeat - area.first_stitch % repeat;
      for (std::size_t s = 0; s < rounds[r].size(); ++s) rounds[r][s] = motif[(s + shift) % repeat];
    }
  });
}

Expected<Chart> with_round(Chart chart, std::size_t before, char symbol) {
  const std::size_t width = width_of(*chart.rounds), height = chart.rounds->size();
  Expected<void> allowed = may_be(width, height + 1);
  if (allowed && before > height) allowed = inside(chart, {before, 0});
  return painted(std::move(chart), std::move(allowed), symbol, [&](Rounds& rounds) {
    rounds.insert(rounds.begin() + static_cast<std::ptrdiff_t>(before), std::string(width, symbol));
  });
}

Expected<Chart> with_column(Chart chart, std::size_t before, char symbol) {
  const std::size_t width = width_of(*chart.rounds);
  Expected<void> allowed = may_be(width + 1, chart.rounds->size());
  if (allowed && before > width) allowed = inside(chart, {0, before});
  return painted(std::move(chart), std::move(allowed), symbol, [&](Rounds& rounds) {
    for (std::string& round : rounds) round.insert(before, 1, symbol);
  });
}

Expected<Chart> without_round(Chart chart, std::size_t round) {
  Expected<void> allowed = inside(chart, {round, 0});
  if (allowed) allowed = may_be(width_of(*chart.rounds), chart.rounds->size() - 1);
  return edited(std::move(chart), std::move(allowed),
                [&](Rounds& rounds) { rounds.erase(rounds.begin() + static_cast<std::ptrdiff_t>(round)); });
}

Expected<Chart> without_column(Chart chart, std::size_t stitch) {
  Expected<void> allowed = inside(chart, {0, stitch});
  if (allowed) allowed = may_be(width_of(*chart.rounds) - 1, chart.rounds->size());
  return edited(std::move(chart), std::move(allowed), [&](Rounds& rounds) {
    for (std::string& round : rounds) round.erase(stitch, 1);
  });
}

Expected<Chart> resized(Chart chart, std::size_t width, std::size_t rounds, char symbol) {
  return painted(std::move(chart), may_be(width, rounds), symbol, [&](Rounds& all) {
    for (std::string& round : all) {
      if (round.size() > width) round.erase(0, round.size() - width);
      round.insert(0, width - round.size(), symbol);
    }
    all.resize(rounds, std::string(width, symbol));
  });
}

Chart mirrored(Chart chart) {
  chart.rounds.edit([](Rounds& rounds) {
    for (std::string& round : rounds) std::reverse(round.begin(), round.end());
  });
  return chart;
}

Chart upside_down(Chart chart) {
  chart.rounds.edit([](Rounds& rounds) { std::reverse(rounds.begin(), rounds.end()); });
  return chart;
}

Expected<Chart> with_symbol_replaced(Chart chart, char symbol, char by) {
  if (symbol == by) return chart;
  const auto old = find_colour(chart, symbol);
  const RoleId role = old == chart.colours.end() ? RoleId{} : old->role;
  if (old != chart.colours.end()) chart.colours.erase(old);
  if (auto joined = join_colours(chart, by); !joined) return tl::unexpected(joined.error());
  if (const auto now = find_colour(chart, by); now != chart.colours.end() && !now->role) now->role = role;
  chart.rounds.edit([&](Rounds& rounds) {
    for (std::string& round : rounds) std::replace(round.begin(), round.end(), symbol, by);
  });
  return chart;
}

Chart in_place_of(Chart read, const Chart& old) {
  read.id = old.id;
  read.name = old.name;
  read.worked = old.worked;
  for (const ChartColour& colour : old.colours)
    for (ChartColour& now : read.colours)
      if (now.symbol == colour.symbol) now.role = colour.role;
  return read;
}

}  // namespace skeinproof
