// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/pieces_sheet.h"

#include <QCoreApplication>
#include <QStringList>

#include "app/pages/pieces/fabric_figures.h"
#include "app/pages/pieces/piece_words.h"
#include "app/widgets/chart_inks.h"
#include "app/widgets/quantity_text.h"

namespace skeinproof {
namespace {

std::string say(const char* text) { return QCoreApplication::translate("Pieces", text).toStdString(); }

Column right_column(std::string heading) {
  Column column;
  column.heading = std::move(heading);
  column.align = Align::right;
  return column;
}

Column left_column(std::string heading) {
  Column column;
  column.heading = std::move(heading);
  return column;
}

Table pieces_table(const Pattern& pattern, const ReaderStyle& reader) {
  Table table;
  table.title = say("Pieces: stitches of one copy");
  table.columns = {left_column(say("Piece")), left_column(say("Fabric")), left_column(say("Yarn")),
                   right_column(say("Copies"))};
  for (const Size& size : pattern.sizes) {
    table.columns.push_back(right_column(size.label));
    table.columns.back().opens_group = size.opens_group;
  }
  const auto add = [&](const std::string& name, const QString& fabric, const QString& yarn, int copies,
                       auto&& amount) {
    Row row;
    row.cells = {words(name, 1), words(fabric.toStdString()), words(yarn.toStdString()),
                 words(std::to_string(copies))};
    for (std::size_t size = 0; size < pattern.sizes.size(); ++size)
      row.cells.push_back(words(amount(size).toStdString()));
    table.rows.push_back(std::move(row));
  };
  for (const Piece& piece : pattern.pieces) {
    Row head;
    head.cells = {words(piece.name)};
    head.cells.front().strong = true;
    head.opens_group = true;
    table.rows.push_back(std::move(head));
    for (const Section& section : piece.sections)
      add(section.name, fabric_words(pattern, section.fabric), yarn_words(pattern, section), piece.copies,
          [&](std::size_t size) { return stitches_words(pattern, section, size, reader); });
    for (const Edge& edge : piece.edges)
      add(edge.name, text_of(std::string(word_of(edge.kind))), role_words(pattern, edge.role), piece.copies,
          [&](std::size_t size) { return edge_words(edge, size, reader); });
  }
  return table;
}

Table fabrics_table(const Pattern& pattern, const ReaderStyle& reader) {
  Table table;
  table.title = say("Fabrics");
  table.columns = {left_column(say("Fabric")), left_column(say("Structure")), right_column(say("Gauge")),
                   left_column(say("State")), right_column(say("Loop length"))};
  for (const Fabric& fabric : pattern.fabrics) {
    Row row;
    row.cells = {words(fabric.name), words(std::string(word_of(fabric.structure))),
                 words(gauge_line(fabric.gauge, reader).toStdString()),
                 words(std::string(word_of(fabric.gauge.state))),
                 words(loop_line(pattern, fabric, reader).toStdString())};
    table.rows.push_back(std::move(row));
  }
  return table;
}

Table census_table(const Chart& chart, const ChartFacts& facts, const ReaderStyle& reader) {
  Table table;
  table.title = QCoreApplication::translate("Pieces", "Chart %1: one repeat, %2 stitches in %3 rounds")
                    .arg(text_of(chart.name))
                    .arg(facts.census.stitches)
                    .arg(chart.rounds->size())
                    .toStdString();
  table.columns = {left_column(say("Colour")),
                   right_column(say("worked")),
                   right_column(say("passed")),
                   right_column(say("entries")),
                   right_column(unit_of(QuantityFormat::yarn_length(), reader).toStdString()),
                   right_column(say("of stitches, %")),
                   right_column(say("of yarn, %"))};
  for (const ChartFacts::Colour& colour : facts.colours) {
    Row row;
    row.cells = {
        words(std::string(1, colour.symbol) + "  " + colour.label.toStdString()),
        words(std::to_string(colour.worked)),
        words(std::to_string(colour.passed)),
        words(std::to_string(colour.entries)),
        words(colour.metres ? repeat_length_text(*colour.metres, reader).toStdString() : "–"),
        words(percent_text(colour.share_of_stitches, reader).toStdString()),
        words(colour.share_of_yarn ? percent_text(*colour.share_of_yarn, reader).toStdString() : "–")};
    table.rows.push_back(std::move(row));
  }
  return table;
}

// As drawn: the last round above, each with its number.
Lines chart_lines(const Chart& chart, const ChartFacts& facts) {
  Lines lines;
  const auto& rounds = *chart.rounds;
  for (std::size_t i = rounds.size(); i-- > 0;) {
    QStringList beside;
    for (const ChartFacts::Colour& colour : facts.colours)
      if (const auto count = facts.census.rounds[i].stitches_of.find(colour.symbol);
          count != facts.census.rounds[i].stitches_of.end())
        beside << QString(QLatin1Char(colour.symbol)) + QLatin1Char(' ') + QString::number(count->second);
    const std::string number = QString::number(i + 1).rightJustified(4).toStdString();
    lines.lines.push_back({{"number", number + "  "},
                           {"squares", rounds[i]},
                           {"count", "  " + beside.join(QLatin1Char(' ')).toStdString()}});
  }
  return lines;
}

}  // namespace

Sheet pieces_sheet(const Pattern& pattern, const ReaderStyle& reader) {
  Sheet sheet;
  sheet.title = pattern.title;
  sheet.subtitle = say("Pieces, fabrics and charts");
  sheet.numbers = reader.numbers;
  if (!pattern.pieces.empty()) sheet.parts.push_back(pieces_table(pattern, reader));
  if (!pattern.fabrics.empty()) sheet.parts.push_back(fabrics_table(pattern, reader));
  for (const Chart& chart : pattern.charts) {
    const ChartCensus counted = census(chart);
    const ChartFacts facts = chart_facts(pattern, chart, counted, fabric_of_chart(pattern, chart.id, 0));
    sheet.parts.push_back(census_table(chart, facts, reader));
    if (counted.longest_float > 0)
      sheet.parts.push_back(
          Paragraph{Voice::worked_out,
                    round_facts(pattern, chart, facts,
                                static_cast<std::size_t>(counted.longest_float_rounds.front()) - 1, reader)
                        .note.toStdString()});
    sheet.parts.push_back(chart_lines(chart, facts));
    if (const QString caution = float_caution(pattern, counted); !caution.isEmpty())
      sheet.foot_notes.push_back(caution.toStdString());
  }
  return sheet;
}

}  // namespace skeinproof
