// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/census.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace skeinproof {
namespace {

// Symbols are counted by a small number each, so that a square costs a look-up in an array.
constexpr int unnumbered = -1;

struct SymbolNumbers {
  std::array<int, 256> number;
  std::vector<char> symbols;
};

SymbolNumbers number_symbols(const std::vector<std::string>& rounds) {
  SymbolNumbers numbers;
  numbers.number.fill(unnumbered);
  std::array<bool, 256> used{};
  for (const std::string& round : rounds)
    for (const char square : round) used[static_cast<unsigned char>(square)] = true;
  used[static_cast<unsigned char>(no_stitch)] = false;
  for (std::size_t c = 0; c < used.size(); ++c) {
    if (!used[c]) continue;
    numbers.number[c] = static_cast<int>(numbers.symbols.size());
    numbers.symbols.push_back(static_cast<char>(c));
  }
  return numbers;
}

// One round without its squares of no stitch, as numbers of symbols.
using Row = std::vector<int>;

void compact(std::string_view round, const SymbolNumbers& numbers, Row& row) {
  row.clear();
  for (const char square : round) {
    const int number = numbers.number[static_cast<unsigned char>(square)];
    if (number != unnumbered) row.push_back(number);
  }
}

// Where a symbol stands in one round.
struct Run {
  long stitches = 0;
  long first = 0;
  long last = 0;
  long longest_gap = 0;
};

class Counter {
 public:
  Counter(const Chart& chart)
      : closes_(chart.worked != Worked::flat), numbers_(number_symbols(*chart.rounds)) {
    const std::size_t n = numbers_.symbols.size();
    counts_.resize(n);
    touching_.resize(n * n);
    for (const std::string& round : *chart.rounds) count_round(round);
    finish();
  }
  ChartCensus take() { return std::move(census_); }

 private:
  void count_round(std::string_view round) {
    RoundCensus& counted = census_.rounds.emplace_back();
    compact(round, numbers_, row_);
    if (row_.empty()) return;
    counted.stitches = static_cast<long>(row_.size());
    census_.stitches += counted.stitches;
    find_runs();
    count_symbols(counted);
    count_neighbours();
    if (before_.size() == row_.size())
      for (std::size_t i = 0; i < row_.size(); ++i) census_.stacked_edges += touch(before_[i], row_[i]);
    std::swap(before_, row_);
    std::swap(runs_before_, runs_);
  }

  void find_runs() {
    runs_.assign(numbers_.symbols.size(), Run{});
    for (std::size_t i = 0; i < row_.size(); ++i) {
      Run& run = runs_[static_cast<std::size_t>(row_[i])];
      const long at = static_cast<long>(i);
      if (run.stitches == 0)
        run.first = at;
      else
        run.longest_gap = std::max(run.longest_gap, at - run.last - 1);
      run.last = at;
      ++run.stitches;
    }
  }

  void count_symbols(RoundCensus& counted) {
    for (std::size_t s = 0; s < runs_.size(); ++s) {
      Run& run = runs_[s];
      if (run.stitches == 0) continue;
      const char symbol = numbers_.symbols[s];
      SymbolCount& count = counts_[s];
      count.stitches += run.stitches;
      count.passed += counted.stitches - run.stitches;
      if (runs_before_.empty() || runs_before_[s].stitches == 0) ++count.entries;
      counted.stitches_of.emplace(symbol, run.stitches);
      const long before = run.first;
      const long behind = counted.stitches - run.last - 1;
      const long longest = std::max(run.longest_gap, closes_ ? before + behind : std::max(before, behind));
      if (longest > counted.longest_float) {
        counted.longest_float = longest;
        counted.longest_float_symbol = symbol;
      }
    }
  }

  void count_neighbours() {
    for (std::size_t i = 1; i < row_.size(); ++i) census_.neighbour_edges += touch(row_[i - 1], row_[i]);
    if (closes_) census_.neighbour_edges += touch(row_.back(), row_.front());
  }

  // 1 where the two are different colours.
  long touch(int a, int b) {
    if (a == b) return 0;
    ++touching_[static_cast<std::size_t>(std::min(a, b)) * counts_.size() +
                static_cast<std::size_t>(std::max(a, b))];
    return 1;
  }

  void finish() {
    const std::size_t n = numbers_.symbols.size();
    for (std::size_t s = 0; s < n; ++s) census_.symbols.emplace(numbers_.symbols[s], counts_[s]);
    for (std::size_t a = 0; a < n; ++a)
      for (std::size_t b = a + 1; b < n; ++b)
        if (const long edges = touching_[a * n + b]; edges > 0)
          census_.edges.push_back({numbers_.symbols[a], numbers_.symbols[b], edges});
    std::stable_sort(census_.edges.begin(), census_.edges.end(),
                     [](const ColourEdge& a, const ColourEdge& b) { return a.edges > b.edges; });
    for (const RoundCensus& round : census_.rounds)
      census_.longest_float = std::max(census_.longest_float, round.longest_float);
    if (census_.longest_float == 0) return;
    for (std::size_t i = 0; i < census_.rounds.size(); ++i)
      if (census_.rounds[i].longest_float == census_.longest_float)
        census_.longest_float_rounds.push_back(static_cast<int>(i) + 1);
  }

  bool closes_;
  SymbolNumbers numbers_;
  std::vector<SymbolCount> counts_;
  std::vector<long> touching_;  // symbol x symbol, upper half
  Row row_, before_;
  std::vector<Run> runs_, runs_before_;
  ChartCensus census_;
};

}  // namespace

bool is_chart_symbol(char symbol) {
  constexpr std::string_view marks = "#*+=/\\|@%&$!?<>^~";
  return (symbol >= 'A' && symbol <= 'Z') || (symbol >= 'a' && symbol <= 'z') ||
         (symbol >= '0' && symbol <= '9') || marks.find(symbol) != std::string_view::npos;
}

ChartCensus census(const Chart& chart) { return Counter(chart).take(); }

std::map<char, Metres> chart_metres(const ChartCensus& census, Centimetres loop,
                                    Centimetres float_per_stitch) {
  std::map<char, Metres> needs;
  for (const auto& [symbol, count] : census.symbols)
    needs.emplace(symbol, to_metres(static_cast<double>(count.stitches) * loop +
                                    static_cast<double>(count.passed) * float_per_stitch));
  return needs;
}

std::vector<ColourShare> colour_shares(const ChartCensus& census, Centimetres loop,
                                       Centimetres float_per_stitch) {
  const auto needs = chart_metres(census, loop, float_per_stitch);
  Metres all;
  for (const auto& need : needs) all += need.second;
  std::vector<ColourShare> shares;
  for (const auto& [symbol, count] : census.symbols) {
    ColourShare share{symbol, 0, 0};
    if (census.stitches > 0)
      share.of_stitches = static_cast<double>(count.stitches) / static_cast<double>(census.stitches);
    if (all.value() > 0) share.of_yarn = needs.at(symbol) / all;
    shares.push_back(share);
  }
  return shares;
}

std::vector<ColourContrast> colour_contrasts(const ChartCensus& census,
                                             const std::map<char, double>& lightness) {
  const double all = static_cast<double>(census.neighbour_edges + census.stacked_edges);
  std::vector<ColourContrast> contrasts;
  for (const ColourEdge& edge : census.edges) {
    ColourContrast contrast{edge, static_cast<double>(edge.edges) / all, std::nullopt};
    const auto first = lightness.find(edge.first);
    const auto second = lightness.find(edge.second);
    if (first != lightness.end() && second != lightness.end())
      contrast.lightness_difference = std::abs(first->second - second->second);
    contrasts.push_back(contrast);
  }
  return contrasts;
}

}  // namespace skeinproof
