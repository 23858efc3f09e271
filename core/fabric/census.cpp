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
  long last = -1;
  long longest_gap = 0;  // the one before the first stitch is one of them
};

// How often one symbol stands beside another, itself among them: symbol x symbol.
class Touching {
 public:
  explicit Touching(std::size_t symbols) : symbols_(symbols), times_(symbols * symbols) {}
  void add(int a, int b) { ++times_[static_cast<std::size_t>(a) * symbols_ + static_cast<std::size_t>(b)]; }
  long between(std::size_t a, std::size_t b) const {
    return times_[a * symbols_ + b] + times_[b * symbols_ + a];
  }

 private:
  std::size_t symbols_;
  std::vector<long> times_;
};

class Counter {
 public:
  explicit Counter(const Chart& chart)
      : closes_(chart.worked != Worked::flat),
        numbers_(number_symbols(*chart.rounds)),
        counts_(numbers_.symbols.size()),
        neighbours_(numbers_.symbols.size()),
        stacked_(numbers_.symbols.size()) {
    census_.rounds.reserve(chart.rounds->size());
    for (const std::string& round : *chart.rounds) count_round(round);
    finish_symbols();
    finish_floats();
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
    for (std::size_t i = 1; i < row_.size(); ++i) neighbours_.add(row_[i - 1], row_[i]);
    if (closes_) neighbours_.add(row_.back(), row_.front());
    if (before_.size() == row_.size())
      for (std::size_t i = 0; i < row_.size(); ++i) stacked_.add(before_[i], row_[i]);
    std::swap(before_, row_);
    std::swap(runs_before_, runs_);
  }

  void find_runs() {
    runs_.assign(numbers_.symbols.size(), Run{});
    long at = 0;
    for (const int symbol : row_) {
      Run& run = runs_[static_cast<std::size_t>(symbol)];
      if (run.stitches == 0) run.first = at;
      run.longest_gap = std::max(run.longest_gap, at - run.last - 1);
      run.last = at;
      ++run.stitches;
      ++at;
    }
  }

  void count_symbols(RoundCensus& counted) {
    for (std::size_t s = 0; s < runs_.size(); ++s) {
      const Run& run = runs_[s];
      if (run.stitches == 0) continue;
      const char symbol = numbers_.symbols[s];
      SymbolCount& count = counts_[s];
      count.stitches += run.stitches;
      count.passed += counted.stitches - run.stitches;
      if (runs_before_.empty() || runs_before_[s].stitches == 0) ++count.entries;
      counted.stitches_of.emplace_hint(counted.stitches_of.end(), symbol, run.stitches);
      const long behind = counted.stitches - run.last - 1;
      const long longest = std::max(run.longest_gap, closes_ ? run.first + behind : behind);
      if (longest > counted.longest_float) {
        counted.longest_float = longest;
        counted.longest_float_symbol = symbol;
      }
    }
  }

  void finish_symbols() {
    const auto& symbols = numbers_.symbols;
    for (std::size_t a = 0; a < symbols.size(); ++a) {
      census_.symbols.emplace(symbols[a], counts_[a]);
      for (std::size_t b = a + 1; b < symbols.size(); ++b) {
        const long neighbours = neighbours_.between(a, b), stacked = stacked_.between(a, b);
        census_.neighbour_edges += neighbours;
        census_.stacked_edges += stacked;
        if (neighbours + stacked > 0) census_.edges.push_back({symbols[a], symbols[b], neighbours + stacked});
      }
    }
    std::stable_sort(census_.edges.begin(), census_.edges.end(),
                     [](const ColourEdge& a, const ColourEdge& b) { return a.edges > b.edges; });
  }

  void finish_floats() {
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
  Touching neighbours_, stacked_;
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
