// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/joins.h"

#include <QCoreApplication>
#include <cmath>

#include "app/pages/pieces/piece_words.h"
#include "app/widgets/quantity_text.h"
#include "core/need/stitch_counts.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

QString words(const char* text) { return QCoreApplication::translate("Pieces", text); }

QString figure(double value, const ReaderStyle& reader) {
  return show_figure_only(QuantityFormat::number(0, 1e9, {}), reader, value);
}

struct Neighbours {
  const Section* before = nullptr;
  const Section* after = nullptr;
};

Neighbours neighbours_of(const Piece& piece, const Section& section) {
  Neighbours neighbours;
  for (std::size_t i = 0; i < piece.sections.size(); ++i) {
    if (piece.sections[i].id != section.id) continue;
    if (i > 0) neighbours.before = &piece.sections[i - 1];
    if (i + 1 < piece.sections.size()) neighbours.after = &piece.sections[i + 1];
  }
  return neighbours;
}

QString count_word(std::size_t count) {
  static const char* const names[] = {"",         "",        "both",      "all three", "all four",
                                      "all five", "all six", "all seven", "all eight", "all nine"};
  if (count < 2) return {};
  return count < std::size(names) ? words(names[count]) : words("all %1").arg(count);
}

// Compares what one section leaves with what the next takes, in every size where both are said.
QString verdict_of(const Pattern& pattern, const Section& before, const Section& section) {
  QStringList different;
  std::size_t compared = 0;
  for (std::size_t size = 0; size < pattern.sizes.size(); ++size) {
    const auto left = widths_of(pattern, before, size).out;
    const auto taken = widths_of(pattern, section, size).in;
    if (!left || !taken) continue;
    ++compared;
    if (std::abs(*left - *taken) > 1e-6) different << text_of(pattern.sizes[size].label);
  }
  if (compared == 0) return {};
  if (different.isEmpty())
    return compared == 1 ? words("they agree") : words("%1 agree").arg(count_word(compared));
  return different.size() == 1 ? words("size %1 differs").arg(different.front())
                               : words("sizes %1 differ").arg(different.join(QStringLiteral(", ")));
}

QString chart_line(const Pattern& pattern, const Section& section, std::size_t size,
                   const ReaderStyle& reader) {
  const Chart* chart = section.source == StitchSource::chart ? pattern.chart(section.chart) : nullptr;
  const auto* repeats = section.repeats.find(size);
  if (chart == nullptr || repeats == nullptr) return {};
  const Widths widths = widths_of(pattern, section, size);
  return words("Size %1: %2 repeats × %3 = %4 stitches in, × %5 = %6 out.")
      .arg(text_of(pattern.sizes[size].label), figure(repeats->value, reader),
           QString::number(stitches_in_first_round(*chart)), figure(*widths.in, reader),
           QString::number(stitches_in_last_round(*chart)), figure(*widths.out, reader));
}

QString change_words(double left, double taken, const ReaderStyle& reader) {
  if (std::abs(left - taken) < 1e-6) return words("they meet");
  return left > taken ? words("%1 to decrease").arg(figure(left - taken, reader))
                      : words("%1 to increase").arg(figure(taken - left, reader));
}

QString meeting_line(const Pattern& pattern, const Section& lower, const Section& upper, std::size_t size,
                     const ReaderStyle& reader) {
  const auto left = widths_of(pattern, lower, size).out;
  const auto taken = widths_of(pattern, upper, size).in;
  if (!left || !taken) return {};
  return words("“%1” leaves %2, “%3” takes %4: %5.")
      .arg(text_of(lower.name), figure(*left, reader), text_of(upper.name), figure(*taken, reader),
           change_words(*left, *taken, reader));
}

bool has_stitches_anywhere(const Pattern& pattern, const Section& section) {
  for (std::size_t size = 0; size < pattern.sizes.size(); ++size)
    if (section_stitches(section, size).stitches) return true;
  return false;
}

QString section_lacks(const Pattern& pattern, const Section& section) {
  if (!section.fabric)
    return words("Choose a fabric: without one nothing says how much yarn a stitch takes.");
  if (section.source == StitchSource::chart) {
    if (!section.chart) return words("Choose the chart this section repeats, or make one beside.");
    if (section.repeats.empty()) return words("Type how often the chart is repeated in each size.");
    return {};
  }
  if (section.colouring == Colouring::stripes && section.stripes.empty())
    return words("Type the stripes: each yarn and its rows, such as MC 6, CC 4.");
  if (section.colouring != Colouring::stripes && !section.role)
    return words("Choose the yarn this section is knitted in.");
  if (section.source == StitchSource::worked_out && section.runs.empty())
    return words("Add a run of rows: stitches at its start, at its end, and its rows.");
  if (!has_stitches_anywhere(pattern, section))
    return section.source == StitchSource::typed
               ? words("Type the stitches of each size.")
               : words("Type the stitches across and the rows of each size.");
  return {};
}

QString edge_lacks(const Edge& edge) {
  if (!edge.role) return words("Choose the yarn of this edge.");
  const bool counted = edge.kind == EdgeKind::cast_on || edge.kind == EdgeKind::bind_off;
  if (counted && !edge.rate && !edge.fabric)
    return words("Choose a fabric, or type the yarn a stitch of this edge takes.");
  return edge.amount.empty() ? words("Type how much of it each size has.") : QString();
}

}  // namespace

Joins joins_of(const Pattern& pattern, std::uint32_t part, std::size_t size, const ReaderStyle& reader) {
  Joins joins;
  const PiecePlace place = find_in_pieces(pattern, part);
  if (place.section == nullptr) return joins;
  const Neighbours neighbours = neighbours_of(*place.piece, *place.section);
  const auto add = [&](const QString& line) {
    if (!line.isEmpty()) joins.lines << line;
  };
  add(chart_line(pattern, *place.section, size, reader));
  if (neighbours.before != nullptr) {
    joins.verdict = verdict_of(pattern, *neighbours.before, *place.section);
    add(meeting_line(pattern, *neighbours.before, *place.section, size, reader));
  }
  if (neighbours.after != nullptr)
    add(meeting_line(pattern, *place.section, *neighbours.after, size, reader));
  return joins;
}

QString what_is_missing(const Pattern& pattern, std::uint32_t part) {
  const PiecePlace place = find_in_pieces(pattern, part);
  if (place.section != nullptr) return section_lacks(pattern, *place.section);
  return place.edge != nullptr ? edge_lacks(*place.edge) : QString();
}

}  // namespace skeinproof
