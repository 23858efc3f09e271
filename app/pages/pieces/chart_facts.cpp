// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/chart_facts.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "app/pages/pieces/piece_words.h"
#include "app/widgets/chart_inks.h"
#include "app/widgets/quantity_text.h"
#include "core/base/text.h"
#include "core/need/fabric_loop.h"
#include "core/need/need_context.h"
#include "core/reference/lookup.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

QString words(const char* text) { return QCoreApplication::translate("Pieces", text); }

QString number(double value, int decimals, const ReaderStyle& reader) {
  return QString::fromStdString(show_number(value, decimals, reader.numbers));
}

QString stitches_text(long count) { return count == 1 ? words("1 st") : words("%1 sts").arg(count); }

std::map<char, double> lightness_of(const Pattern& pattern, const Chart& chart) {
  std::map<char, double> lightness;
  for (const ChartColour& colour : chart.colours)
    if (const Role* role = pattern.role(colour.role);
        role != nullptr && role->shade.lightness && !colour.symbol.empty())
      lightness[colour.symbol.front()] = role->shade.lightness->value;
  return lightness;
}

void add_colours(ChartFacts& facts, const Pattern& pattern, const Chart& chart) {
  const bool known = facts.loop && facts.float_per_stitch;
  const Centimetres loop = facts.loop.value_or(centimetres(1));
  const Centimetres passed = facts.float_per_stitch.value_or(centimetres(0));
  const auto metres = chart_metres(facts.census, loop, passed);
  const auto shares = colour_shares(facts.census, loop, passed);
  for (const ChartColour& colour : chart.colours) {
    const char symbol = colour.symbol.empty() ? no_stitch : colour.symbol.front();
    const auto count = facts.census.symbols.find(symbol);
    const auto share =
        std::find_if(shares.begin(), shares.end(), [&](const ColourShare& s) { return s.symbol == symbol; });
    if (count == facts.census.symbols.end() || share == shares.end()) continue;
    ChartFacts::Colour& row = facts.colours.emplace_back();
    row.symbol = symbol;
    row.role = colour.role;
    row.label = symbol_label(pattern, chart, symbol);
    row.worked = count->second.stitches;
    row.passed = count->second.passed;
    row.entries = count->second.entries;
    row.share_of_stitches = share->of_stitches;
    if (known) {
      row.metres = metres.at(symbol).value();
      row.share_of_yarn = share->of_yarn;
    }
  }
}

// The lighter part of a pair does not come first; the order of the palette does.
void add_touches(ChartFacts& facts, const Pattern& pattern, const Chart& chart) {
  const auto place = [&](char symbol) {
    return std::find_if(chart.colours.begin(), chart.colours.end(),
                        [&](const ChartColour& colour) { return colour.symbol == std::string(1, symbol); });
  };
  for (const ColourContrast& contrast : colour_contrasts(facts.census, lightness_of(pattern, chart))) {
    ChartFacts::Touch& touch = facts.touches.emplace_back();
    const bool in_order = place(contrast.edge.first) < place(contrast.edge.second);
    touch.first = in_order ? contrast.edge.first : contrast.edge.second;
    touch.second = in_order ? contrast.edge.second : contrast.edge.first;
    touch.words =
        words("%1 with %2")
            .arg(symbol_label(pattern, chart, touch.first), symbol_label(pattern, chart, touch.second));
    touch.edges = contrast.edge.edges;
    touch.share = contrast.share;
    touch.lightness_difference = contrast.lightness_difference;
  }
}

QString rounds_list(const std::vector<int>& rounds) {
  QStringList numbers;
  for (int round : rounds) numbers << QString::number(round);
  if (numbers.size() == 1) return words("round %1").arg(numbers.front());
  const QString last = numbers.takeLast();
  return words("rounds %1 and %2").arg(numbers.join(QStringLiteral(", ")), last);
}

std::vector<int> rounds_with_float(const ChartCensus& census, const RoundCensus& like) {
  std::vector<int> rounds;
  for (std::size_t i = 0; i < census.rounds.size(); ++i)
    if (census.rounds[i].longest_float == like.longest_float &&
        census.rounds[i].longest_float_symbol == like.longest_float_symbol)
      rounds.push_back(static_cast<int>(i) + 1);
  return rounds;
}

}  // namespace

QString percent_text(double share, const ReaderStyle& reader, int decimals) {
  return number(100 * share, decimals, reader);
}

QString repeat_length_text(double metres_per_repeat, const ReaderStyle& reader) {
  QuantityFormat format = QuantityFormat::yarn_length();
  format.decimals = 3;
  return show_figure_only(format, reader, metres_per_repeat);
}

FabricId fabric_of_chart(const Pattern& pattern, ChartId chart, std::uint32_t part) {
  FabricId fabric;
  for (const Piece& piece : pattern.pieces)
    for (const Section& section : piece.sections) {
      if (section.source != StitchSource::chart || section.chart != chart) continue;
      if (section.id.value == part) return section.fabric;
      if (!fabric) fabric = section.fabric;
    }
  return fabric;
}

ChartFacts chart_facts(const Pattern& pattern, const Chart& chart, const ChartCensus& census, FabricId id) {
  ChartFacts facts;
  facts.census = census;
  const Fabric* fabric = pattern.fabric(id);
  if (fabric == nullptr) {
    facts.missing = words("Give the chart to a section with a fabric, and the metres appear.");
  } else {
    const FabricLoop loop = NeedContext(pattern).loop_of(id);
    facts.fabric = text_of(fabric->name);
    facts.loop = loop.loop;
    facts.float_per_stitch = loop.float_per_stitch;
    facts.stitch_width = loop.stitch_width;
    if (!loop.loop) facts.missing = words("No metres without %1.").arg(text_of(loop.missing));
  }
  add_colours(facts, pattern, chart);
  add_touches(facts, pattern, chart);
  return facts;
}

RoundFacts round_facts(const Pattern& pattern, const Chart& chart, const ChartFacts& facts, std::size_t round,
                       const ReaderStyle& reader) {
  RoundFacts said;
  if (round >= facts.census.rounds.size()) return said;
  const RoundCensus& counted = facts.census.rounds[round];
  QStringList held;
  for (const ChartFacts::Colour& colour : facts.colours)
    if (const auto count = counted.stitches_of.find(colour.symbol); count != counted.stitches_of.end())
      held << QString(QLatin1Char(colour.symbol)) + QLatin1Char(' ') + stitches_text(count->second);
  said.held = held.join(QStringLiteral(", "));
  if (counted.longest_float == 0) {
    said.note =
        held.size() < 2 ? words("One colour: nothing is carried.") : words("No colour passes a stitch.");
    return said;
  }
  const char symbol = counted.longest_float_symbol;
  const QString label = symbol_label(pattern, chart, symbol);
  QString length;
  if (facts.stitch_width) {
    QuantityFormat cloth = QuantityFormat::cloth();
    cloth.decimals = 1;
    const Entered<double> width{static_cast<double>(counted.longest_float) * facts.stitch_width->value(), {}};
    length = words(", a float of %1").arg(show_quantity(cloth, reader, width));
  }
  const QString passes =
      counted.longest_float == 1 ? words("1 stitch") : words("%1 stitches").arg(counted.longest_float);
  const std::vector<int> alike = rounds_with_float(facts.census, counted);
  constexpr std::size_t most_listed = 6;
  const QString where =
      alike.size() > 1 && alike.size() <= most_listed ? words("; %1").arg(rounds_list(alike)) : QString();
  said.note = words("%1 passes %2%3%4.").arg(label, passes, length, where);
  if (!facts.loop || !facts.float_per_stitch) return said;
  const long worked = counted.stitches_of.at(symbol);
  const long passed = counted.stitches - worked;
  const double yarn = static_cast<double>(worked) * facts.loop->value() +
                      static_cast<double>(passed) * facts.float_per_stitch->value();
  said.working = words("%1 × %2 + %3 × %4 = %5 cm of %6 in one repeat of this round.")
                     .arg(worked)
                     .arg(number(facts.loop->value(), 2, reader))
                     .arg(passed)
                     .arg(number(facts.float_per_stitch->value(), 2, reader), number(yarn, 2, reader), label);
  return said;
}

QString float_caution(const Pattern& pattern, const ChartCensus& census) {
  const std::string wearer = lower_ascii(pattern.wearer);
  const bool infant = wearer.find("baby") != std::string::npos ||
                      wearer.find("infant") != std::string::npos ||
                      wearer.find("newborn") != std::string::npos;
  if (!infant || census.longest_float == 0) return {};
  const Caution* caution = caution_by_id("hair_tourniquet");
  return caution != nullptr ? text_of(std::string(caution->text)) : QString();
}

QString chart_facts_text(const Pattern& pattern, const Chart& chart, const ChartFacts& facts,
                         const ReaderStyle& reader) {
  const QString unit = unit_of(QuantityFormat::yarn_length(), reader);
  QStringList lines{
      words("Chart %1: %2 stitches a repeat in %3 rounds")
          .arg(text_of(chart.name))
          .arg(facts.census.stitches)
          .arg(chart.rounds->size()),
      words("Colour\tworked\tpassed\tentries\t%1 a repeat\tshare of stitches %\tshare of yarn %").arg(unit)};
  for (const ChartFacts::Colour& colour : facts.colours)
    lines << QStringList{colour.label,
                         QString::number(colour.worked),
                         QString::number(colour.passed),
                         QString::number(colour.entries),
                         colour.metres ? repeat_length_text(*colour.metres, reader) : QString(),
                         percent_text(colour.share_of_stitches, reader),
                         colour.share_of_yarn ? percent_text(*colour.share_of_yarn, reader) : QString()}
                 .join(QLatin1Char('\t'));
  lines << words("Where colours touch\tedges\tshare %\tdifference of lightness");
  for (const ChartFacts::Touch& touch : facts.touches)
    lines << QStringList{touch.words, QString::number(touch.edges), percent_text(touch.share, reader),
                         touch.lightness_difference ? number(*touch.lightness_difference, 0, reader)
                                                    : QString()}
                 .join(QLatin1Char('\t'));
  if (facts.census.longest_float > 0)
    lines << round_facts(pattern, chart, facts,
                         static_cast<std::size_t>(facts.census.longest_float_rounds.front() - 1), reader)
                 .note;
  if (!facts.missing.isEmpty()) lines << facts.missing;
  return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

}  // namespace skeinproof
