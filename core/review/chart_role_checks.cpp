// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/fabric/census.h"
#include "core/fabric/gauge.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/item_and_wearer.h"
#include "core/review/printed_words.h"

namespace skeinproof {
namespace {

std::string name_of(const Chart& chart) {
  return chart.name.empty() ? "the chart" : "the chart " + quoted(chart.name);
}

bool no_charts(const ReviewInput& input, Findings& findings) {
  if (!input.pattern.charts.empty()) return false;
  findings.cannot("no chart is known", "the chart");
  return true;
}

// The label of what a symbol stands for, or the symbol.
std::string label_of(const ReviewInput& input, const Chart& chart, char symbol) {
  for (const ChartColour& colour : chart.colours)
    if (colour.symbol == std::string(1, symbol))
      if (const Role* role = input.pattern.role(colour.role); role != nullptr && !role->label.empty())
        return role->label;
  return std::string(1, symbol);
}

void show_role(Finding& finding, const ReviewInput& input, std::string_view label) {
  const PrintedRole* role = input.printed.role(label);
  if (role != nullptr && role->role != nullptr) show(finding, input.printed, *role->role);
}

std::string rounds_in_words(const std::vector<int>& rounds) {
  std::vector<std::string> words;
  for (std::size_t i = 0; i < rounds.size() && i < 12; ++i) words.push_back(std::to_string(rounds[i]));
  return (rounds.size() == 1 ? "round " : "rounds ") + listed(words) +
         (rounds.size() > 12 ? " and " + std::to_string(rounds.size() - 12) + " more" : "");
}

struct ChartWorked {
  std::optional<double> stitch_cm;
  bool intarsia = true;  // in every place it is worked; no yarn is carried there
  bool placed = false;
};
ChartWorked worked(const ReviewInput& input, const Chart& chart) {
  ChartWorked found;
  for (const Piece& piece : input.pattern.pieces)
    for (const Section& section : piece.sections) {
      const Fabric* fabric = input.pattern.fabric(section.fabric);
      if (section.source != StitchSource::chart || section.chart != chart.id || fabric == nullptr) continue;
      found.placed = true;
      if (fabric->structure == Structure::intarsia) continue;
      found.intarsia = false;
      if (const auto width = stitch_width(fabric->gauge); width && !found.stitch_cm)
        found.stitch_cm = width->value();
    }
  if (found.placed) return found;
  found.intarsia = false;
  for (const Structure wanted : {Structure::stranded, Structure::plain})
    for (const Fabric& fabric : input.pattern.fabrics)
      if (fabric.structure == wanted && !found.stitch_cm)
        if (const auto width = stitch_width(fabric.gauge)) found.stitch_cm = width->value();
  return found;
}

bool small_item(const ReviewInput& input) {
  const ItemRead item = item_of(input);
  return item.kind == ItemKind::sock || wearers_of(input).up_to_12_months ||
         says(item.words, {"mitten", "mitt", "glove", "slipper", "bootie", "bootee"});
}

// Lengths of floats with the rounds that have them as their longest, longest first.
std::map<long, std::vector<int>, std::greater<>> floats_of(const ChartCensus& counted) {
  std::map<long, std::vector<int>, std::greater<>> floats;
  for (std::size_t i = 0; i < counted.rounds.size(); ++i)
    if (counted.rounds[i].longest_float > 0)
      floats[counted.rounds[i].longest_float].push_back(static_cast<int>(i) + 1);
  return floats;
}

// "up to two colours a round": the number, where it is promised.
struct Promise {
  const Statement* statement = nullptr;
  double colours = 0;
};
std::optional<Promise> colours_promised(const PrintedView& printed) {
  for (const StatementKind kind : {StatementKind::number_of_colours, StatementKind::phrase})
    for (const Statement* one : printed.all(kind)) {
      const bool number = !one->values.empty() && one->values.front().number;
      const std::string qualifier = compared(one->qualifier);
      if (number &&
          (says(qualifier, {"round", "row"}) || says(qualifier, {"colours a round", "colors a round"})))
        return Promise{one, *one->values.front().number};
    }
  return std::nullopt;
}

long round_width(const ChartCensus& counted) {
  for (const RoundCensus& round : counted.rounds)
    if (round.stitches > 0) return round.stitches;
  return 0;
}

// The stitches printed of the part that a chart is worked in: named as the piece or the section.
bool names_part(const Statement& stitches, const Piece& piece, const Section& section) {
  const std::string words = compared(stitches.subject) + " " + compared(stitches.qualifier);
  for (const std::string* name : {&piece.name, &section.name}) {
    const std::string plain = compared(*name);
    if (!plain.empty() && find_word(words, {std::string_view(plain)})) return true;
  }
  return false;
}

}  // namespace

void check_r5(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  if (no_charts(input, findings)) return;
  if (!printed.whole(TextPart::legend)) {
    findings.cannot("the chart key is not there as a whole", "the whole chart key");
    return;
  }
  std::set<std::string> symbols, roles, used_symbols, used_roles;
  for (const StatementKind kind : {StatementKind::legend_symbol, StatementKind::legend_shade})
    for (const Statement* one : printed.all(kind)) {
      if (kind == StatementKind::legend_symbol) symbols.insert(one->words);
      if (!one->subject.empty()) roles.insert(compared(one->subject));
    }
  for (const Chart& chart : input.pattern.charts) {
    const ChartCensus& counted = input.need.census_of(chart.id);
    for (const auto& [symbol, count] : counted.symbols) {
      if (count.stitches == 0 || symbol == no_stitch) continue;
      const std::string label = label_of(input, chart, symbol);
      used_symbols.insert(std::string(1, symbol));
      used_roles.insert(compared(label));
      if (symbols.count(std::string(1, symbol)) > 0 || roles.count(compared(label)) > 0) continue;
      Finding& finding = findings.add(
          Severity::stop, "a chart symbol that the key does not name: “" + std::string(1, symbol) + "”");
      if (input.printed.role(label) != nullptr) finding.roles = {label};
      finding.apart = name_of(chart) + " " + symbol;
      show_role(finding, input, label);
      std::vector<int> rounds;
      for (std::size_t i = 0; i < counted.rounds.size(); ++i)
        if (counted.rounds[i].stitches_of.count(symbol) > 0) rounds.push_back(static_cast<int>(i) + 1);
      finding.evidence = {name_of(chart) + ": " + std::to_string(count.stitches) + " squares, " +
                          rounds_in_words(rounds)};
      finding.query = "The symbol “" + std::string(1, symbol) + "” of " + name_of(chart) + " (" +
                      finding.evidence.front() + ") is not in the chart key. What does it stand for?";
    }
  }
  for (const Statement* one : printed.all(StatementKind::legend_symbol)) {
    const bool used = used_symbols.count(one->words) > 0 ||
                      (!one->subject.empty() && used_roles.count(compared(one->subject)) > 0);
    // Only what stands for a colour can be told to be missing from a chart of colours.
    if (used || one->subject.empty()) continue;
    Finding& finding = findings.add(
        Severity::note, "a symbol of the chart key that no chart uses: " + printed_words(printed, *one));
    finding.apart = one->words;
    show(finding, printed, *one);
    finding.evidence = {"chart key: " + printed_words(printed, *one), "found in no chart"};
    finding.query =
        "The chart key names " + printed_words(printed, *one) + ", and no chart uses it. Is a chart missing?";
  }
}

void check_r7(const ReviewInput& input, Findings& findings) {
  const auto promise = colours_promised(input.printed);
  if (!promise) return;
  if (no_charts(input, findings)) return;
  for (const Chart& chart : input.pattern.charts) {
    const ChartCensus& counted = input.need.census_of(chart.id);
    std::vector<int> rounds;
    std::size_t most = 0;
    for (std::size_t i = 0; i < counted.rounds.size(); ++i) {
      std::set<std::string> colours;
      for (const auto& [symbol, stitches] : counted.rounds[i].stitches_of)
        if (stitches > 0) colours.insert(label_of(input, chart, symbol));
      most = std::max(most, colours.size());
      if (static_cast<double>(colours.size()) > promise->colours) rounds.push_back(static_cast<int>(i) + 1);
    }
    if (rounds.empty()) continue;
    Finding& finding = findings.add("more colours in a round than promised");
    finding.apart = name_of(chart);
    show(finding, input.printed, *promise->statement);
    finding.evidence = {
        "said: " + printed_words(input.printed, *promise->statement),
        name_of(chart) + ": up to " + std::to_string(most) + " colours in " + rounds_in_words(rounds)};
    finding.query = "The text says " + printed_words(input.printed, *promise->statement) + ", and " +
                    name_of(chart) + " has " + std::to_string(most) + " colours in " +
                    rounds_in_words(rounds) + ". Which is right?";
  }
}

void check_r11(const ReviewInput& input, Findings& findings) {
  if (no_charts(input, findings)) return;
  for (const Statement* phrase : input.printed.all(StatementKind::phrase))
    if (says(compared(phrase->qualifier), {"catch floats", "catch"})) return;
  const FindingWords words(input);
  const double most = input.need.constant_of(small_item(input) ? "review_float_small_cm" : "review_float_cm");
  std::vector<std::string> without;
  for (const Chart& chart : input.pattern.charts) {
    const ChartWorked place = worked(input, chart);
    if (place.intarsia) continue;
    if (!place.stitch_cm) {
      without.push_back(name_of(chart));
      continue;
    }
    std::vector<std::string> lines;
    for (const auto& [stitches, rounds] : floats_of(input.need.census_of(chart.id))) {
      const double cm = static_cast<double>(stitches) * *place.stitch_cm;
      if (cm <= most + 1e-9) break;
      lines.push_back(rounds_in_words(rounds) + ": " + std::to_string(stitches) +
                      " sts = " + words.number(cm) + " cm");
    }
    if (lines.empty()) continue;
    Finding& finding = findings.add("long floats, and no word on catching them: " + lines.front());
    finding.apart = name_of(chart);
    for (const ChartColour& colour : chart.colours)
      if (const Role* role = input.pattern.role(colour.role)) {
        const char longest = input.need.census_of(chart.id)
                                 .rounds[static_cast<std::size_t>(
                                     input.need.census_of(chart.id).longest_float_rounds.front() - 1)]
                                 .longest_float_symbol;
        if (colour.symbol == std::string(1, longest) && !role->label.empty()) {
          finding.roles = {role->label};
          show_role(finding, input, role->label);
        }
      }
    finding.evidence = lines;
    finding.evidence.push_back("a float of more than " + words.number(most) + " cm is usually caught");
    finding.query = "In " + name_of(chart) + " the longest floats are " + lines.front() +
                    ". Should the text say to catch floats of more than " + words.number(most) + " cm?";
  }
  if (!without.empty())
    findings.cannot("no stitch gauge is known where " + listed(without) + " is worked",
                    "the stitch gauge of the stranded fabric");
}

void check_r12(const ReviewInput& input, Findings& findings) {
  if (no_charts(input, findings)) return;
  const FindingWords words(input);
  const double least_share = input.need.constant_of("review_edge_share_pct") / 100;
  const double least_difference = input.need.constant_of("review_lightness");
  std::set<std::string> without;
  for (const Chart& chart : input.pattern.charts) {
    std::map<char, double> lightness;
    std::map<char, const Role*> roles;
    for (const ChartColour& colour : chart.colours) {
      const Role* role = input.pattern.role(colour.role);
      if (role == nullptr || colour.symbol.size() != 1) continue;
      roles[colour.symbol.front()] = role;
      if (role->shade.lightness) lightness[colour.symbol.front()] = role->shade.lightness->value;
    }
    const ChartCensus& counted = input.need.census_of(chart.id);
    const long all_edges = counted.neighbour_edges + counted.stacked_edges;
    for (const ColourContrast& contrast : colour_contrasts(counted, lightness)) {
      if (contrast.share < least_share) continue;
      const auto one = roles.find(contrast.edge.first), other = roles.find(contrast.edge.second);
      if (one == roles.end() || other == roles.end() || one->second == other->second) continue;
      if (!contrast.lightness_difference) {
        for (const auto* side : {&*one, &*other})
          if (!side->second->shade.lightness) without.insert(side->second->label);
        continue;
      }
      const double difference = std::abs(*contrast.lightness_difference);
      if (difference >= least_difference) continue;
      Finding& finding = findings.add("two shades that touch hardly differ in lightness");
      finding.roles = {one->second->label, other->second->label};
      if (finding.roles[0] > finding.roles[1]) std::swap(finding.roles[0], finding.roles[1]);
      finding.apart = name_of(chart);
      for (const std::string& label : finding.roles) show_role(finding, input, label);
      finding.evidence = {std::to_string(contrast.edge.edges) + " of " + std::to_string(all_edges) +
                              " colour edges a repeat, " + words.percent(contrast.share),
                          "lightness L* " + words.number(one->second->shade.lightness->value) + " and " +
                              words.number(other->second->shade.lightness->value) + ", " +
                              words.number(difference) + " apart; below " + words.number(least_difference) +
                              " they read as one"};
      finding.query = finding.roles[0] + " and " + finding.roles[1] + " touch along " +
                      words.percent(contrast.share) + " of the colour edges and are " +
                      words.number(difference) + " apart in lightness. Is tone on tone wanted?";
    }
  }
  if (!without.empty())
    findings.cannot("no lightness is known for " + listed({without.begin(), without.end()}),
                    "the lightness of these shades");
}

void check_r13(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const auto counts = printed.all(StatementKind::stitches);
  bool any = false;
  const auto remainders = [&](const Statement& list, long repeat, const std::string& of_what) {
    any = true;
    const PrintedList laid = printed.list(list);
    std::map<long, std::vector<std::size_t>> by_remainder;
    for (std::size_t i = 0; i < printed.sizes(); ++i) {
      const PrintedValue* value = i < laid.values.size() ? laid.values[i] : nullptr;
      if (value != nullptr && value->number) by_remainder[std::lround(*value->number) % repeat].push_back(i);
    }
    // Edge stitches are the same in every size.
    if (by_remainder.size() < 2) return;
    const auto usual =
        std::max_element(by_remainder.begin(), by_remainder.end(),
                         [](const auto& a, const auto& b) { return a.second.size() < b.second.size(); });
    Finding& finding = findings.add("stitches that are not whole repeats: " + printed_words(printed, list));
    finding.apart = of_what + " " + std::to_string(list.mention);
    show(finding, printed, list);
    for (const auto& [remainder, sizes] : by_remainder)
      for (const std::size_t size : sizes) {
        const double stitches = *laid.values[size]->number;
        if (remainder == usual->first) continue;
        add_size(finding, printed, size);
        finding.evidence.push_back("size " + printed.size_labels()[size] + ": " + show_short(stitches, 0) +
                                   " = " + std::to_string(std::lround(stitches) / repeat) + " × " +
                                   std::to_string(repeat) + " + " + std::to_string(remainder));
      }
    finding.evidence.push_back("the other sizes leave " + std::to_string(usual->first));
    finding.query = "The stitches " + printed_words(printed, list) + " for " + of_what + " of " +
                    std::to_string(repeat) + " stitches are not whole repeats in " +
                    sizes_in_words(finding.sizes) + ": " + finding.evidence.front() + ". Which is right?";
  };
  for (const Piece& piece : input.pattern.pieces)
    for (const Section& section : piece.sections) {
      const Chart* chart =
          section.source == StitchSource::chart ? input.pattern.chart(section.chart) : nullptr;
      const long width = chart != nullptr ? round_width(input.need.census_of(chart->id)) : 0;
      if (width < 2) continue;
      for (const Statement* list : counts)
        if (list->values.size() == printed.sizes() && names_part(*list, piece, section))
          remainders(*list, width, name_of(*chart));
    }
  if (!any && !input.pattern.charts.empty())
    findings.cannot("no stitch count is printed for a charted part", "the stitches in the instructions");
}

void check_r14(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const FindingWords words(input);
  std::vector<const Statement*> declared;
  for (const Statement* one : printed.all(StatementKind::phrase))
    if (one->unit == PrintedUnit::percent && !one->values.empty() && one->values.front().number &&
        printed.role(one->subject) != nullptr)
      declared.push_back(one);
  if (declared.empty()) return;
  if (no_charts(input, findings)) return;
  const double most = input.need.constant_of("review_share_points");
  long all = 0;
  std::map<std::string, long> counted;
  for (const Chart& chart : input.pattern.charts)
    for (const auto& [symbol, count] : input.need.census_of(chart.id).symbols) {
      if (symbol == no_stitch) continue;
      all += count.stitches;
      counted[compared(label_of(input, chart, symbol))] += count.stitches;
    }
  if (all == 0) return;
  for (const Statement* one : declared) {
    const double said = *one->values.front().number;
    const long stitches = counted[compared(one->subject)];
    const double share = 100.0 * static_cast<double>(stitches) / static_cast<double>(all);
    if (std::abs(share - said) <= most + one->values.front().half_step) continue;
    Finding& finding = findings.add("another share of the chart than said: " + printed_words(printed, *one));
    finding.roles = {one->subject};
    show(finding, printed, *one);
    finding.evidence = {std::to_string(stitches) + " of " + std::to_string(all) +
                        " stitches = " + words.number(share) + " %, said " + words.number(said) + " %"};
    propose(finding, printed, one->values.front().span, words.number(share, 0));
    finding.query = "The text gives " + one->subject + " " + printed_words(printed, *one) + "; we count " +
                    finding.evidence.front() + ". Which is right?";
  }
}

}  // namespace skeinproof
