// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/part_rows.h"

#include <QCoreApplication>
#include <QStringList>

#include "app/document/open_pattern.h"
#include "app/pages/pieces/piece_words.h"
#include "core/need/stitch_counts.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

using Figures = PerSize<Entered<double>>;

constexpr double most_stitches = 1e7;
constexpr double most_rows = 1e5;

QString words(const char* text) { return QCoreApplication::translate("Pieces", text); }

QString full_name(const PiecePlace& place) {
  const QString piece = text_of(place.piece->name);
  if (place.section != nullptr) return piece + QLatin1Char(' ') + text_of(place.section->name);
  return place.edge != nullptr ? piece + QLatin1Char(' ') + text_of(place.edge->name) : piece;
}

// A list of a section or an edge, named once for showing and for editing.
template <class PartId, class Find, class Where>
SizeRow typed_row(const QString& label, const QString& of, QuantityFormat format, PartId id, Find find,
                  Where where) {
  SizeRow row;
  row.label = label;
  row.undo_name = label.toLower() + QStringLiteral(", ") + of;
  row.format = std::move(format);
  row.get = [=](const Pattern& pattern) {
    // The finder is for editing; nothing is written here.
    const auto* part = find(const_cast<Pattern&>(pattern), id);
    const Figures* list = part != nullptr ? where(*part) : nullptr;
    return list != nullptr ? *list : Figures();
  };
  row.set = [=](Pattern& pattern, const Figures& figures) {
    auto* part = find(pattern, id);
    if (part == nullptr) return;
    if (const Figures* list = where(*part)) *const_cast<Figures*>(list) = figures;
  };
  return row;
}

template <class Compute>
SizeRow computed_row(const QString& label, QuantityFormat format, Compute compute) {
  SizeRow row;
  row.label = label;
  row.format = std::move(format);
  row.get = [compute](const Pattern& pattern) {
    Figures figures;
    for (std::size_t size = 0; size < pattern.sizes.size(); ++size)
      if (const std::optional<double> figure = compute(pattern, size))
        figures.set(size, Entered<double>{*figure, {}});
    return figures;
  };
  return row;
}

QuantityFormat stitches_format() { return QuantityFormat::number(0, most_stitches, "stitches"); }

void add_run_rows(std::vector<SizeRow>& rows, const Section& section, const QString& of) {
  struct Field {
    const char* label;
    PerSize<Entered<double>> ShapeRun::*list;
    QuantityFormat format;
  };
  const Field fields[] = {{"From", &ShapeRun::from, stitches_format()},
                          {"To", &ShapeRun::to, stitches_format()},
                          {"Rows", &ShapeRun::rows, QuantityFormat::number(0, most_rows, "rows")}};
  for (std::size_t run = 0; run < section.runs.size(); ++run)
    for (const Field& field : fields) {
      const QString label = section.runs.size() == 1 ? words(field.label)
                                                     : words("%1, %2").arg(words(field.label)).arg(run + 1);
      rows.push_back(typed_row(label, of, field.format, section.id, find_section,
                               [run, list = field.list](const Section& part) -> const Figures* {
                                 return run < part.runs.size() ? &(part.runs[run].*list) : nullptr;
                               }));
      rows.back().rule_above = run > 0 && field.list == &ShapeRun::from;
    }
  const SectionId id = section.id;
  rows.push_back(
      computed_row(words("Stitches"), stitches_format(), [id](const Pattern& pattern, std::size_t size) {
        const PiecePlace place = find_in_pieces(pattern, id.value);
        return place.section != nullptr ? section_stitches(*place.section, size).stitches : std::nullopt;
      }));
  rows.back().rule_above = true;
}

void add_chart_rows(std::vector<SizeRow>& rows, const Section& section, const QString& of) {
  const SectionId id = section.id;
  const auto width = [id](std::optional<double> Widths::*end) {
    return [id, end](const Pattern& pattern, std::size_t size) -> std::optional<double> {
      const PiecePlace place = find_in_pieces(pattern, id.value);
      return place.section != nullptr ? widths_of(pattern, *place.section, size).*end : std::nullopt;
    };
  };
  rows.push_back(computed_row(words("Stitches in"), stitches_format(), width(&Widths::in)));
  rows.push_back(typed_row(words("Repeats"), of, QuantityFormat::number(0, 1e4, "repeats"), id, find_section,
                           [](const Section& part) { return &part.repeats; }));
  rows.back().strong = true;
  rows.push_back(computed_row(words("Stitches out"), stitches_format(), width(&Widths::out)));
}

void add_section_rows(std::vector<SizeRow>& rows, const Section& section, const QString& of) {
  switch (section.source) {
    case StitchSource::typed:
      rows.push_back(typed_row(words("Stitches"), of, stitches_format(), section.id, find_section,
                               [](const Section& part) { return &part.stitches; }));
      rows.back().strong = true;
      break;
    case StitchSource::worked_out:
      add_run_rows(rows, section, of);
      break;
    case StitchSource::chart:
      add_chart_rows(rows, section, of);
      break;
  }
}

void add_edge_row(std::vector<SizeRow>& rows, const Edge& edge, const QString& of) {
  struct Amount {
    EdgeKind kind;
    const char* label;
    QuantityFormat format;
  };
  const Amount amounts[] = {{EdgeKind::cast_on, "Stitches", stitches_format()},
                            {EdgeKind::bind_off, "Stitches", stitches_format()},
                            {EdgeKind::seam, "Seam", QuantityFormat::cloth()},
                            {EdgeKind::ends, "Yarn", QuantityFormat::yarn_length()},
                            {EdgeKind::other, "Yarn", QuantityFormat::yarn_length()}};
  for (const Amount& amount : amounts) {
    if (amount.kind != edge.kind) continue;
    rows.push_back(typed_row(words(amount.label), of, amount.format, edge.id, find_edge,
                             [](const Edge& part) { return &part.amount; }));
    rows.back().strong = true;
  }
}

// Metres of a role in one part, all copies, as assessed; absent where the part takes none of it.
std::optional<double> metres_in(const Assessment& assessment, RoleId role, std::uint32_t part,
                                std::size_t size) {
  for (const RoleNeed& need : assessment.roles) {
    if (need.role != role || size >= need.sizes.size()) continue;
    std::optional<double> metres;
    for (const PartMetres& found : need.sizes[size].parts)
      if (found.section.value == part || found.edge.value == part || found.piece.value == part)
        metres = metres.value_or(0) + found.total().value();
    return metres;
  }
  return std::nullopt;
}

std::vector<RoleId> roles_taken(const OpenPattern& open, std::uint32_t part) {
  std::vector<RoleId> roles;
  const Pattern& pattern = open.pattern();
  for (const Role& role : pattern.roles)
    for (std::size_t size = 0; size < pattern.sizes.size(); ++size)
      if (metres_in(open.assessment(), role.id, part, size)) {
        roles.push_back(role.id);
        break;
      }
  return roles;
}

void add_metres_rows(std::vector<SizeRow>& rows, OpenPattern& open, std::uint32_t part) {
  QuantityFormat format = QuantityFormat::yarn_length();
  format.decimals = 1;
  bool first = true;
  for (RoleId role : roles_taken(open, part)) {
    const QString label =
        role_words(open.pattern(), role) + QLatin1Char(' ') + unit_of(format, open.reader());
    rows.push_back(computed_row(label, format, [&open, role, part](const Pattern&, std::size_t size) {
      return metres_in(open.assessment(), role, part, size);
    }));
    rows.back().rule_above = first && rows.size() > 1;
    first = false;
  }
}

}  // namespace

std::vector<SizeRow> part_rows(OpenPattern& open, std::uint32_t part) {
  std::vector<SizeRow> rows;
  const PiecePlace place = find_in_pieces(open.pattern(), part);
  if (!place) return rows;
  if (place.section != nullptr) add_section_rows(rows, *place.section, full_name(place));
  if (place.edge != nullptr) add_edge_row(rows, *place.edge, full_name(place));
  add_metres_rows(rows, open, part);
  return rows;
}

QString part_rows_shape(const OpenPattern& open, std::uint32_t part) {
  const PiecePlace place = find_in_pieces(open.pattern(), part);
  if (!place) return {};
  QStringList shape{QString::number(part), full_name(place),
                    open.reader().imperial_first ? QStringLiteral("i") : QString()};
  if (place.section != nullptr)
    shape << QString::number(static_cast<int>(place.section->source))
          << QString::number(place.section->runs.size());
  if (place.edge != nullptr) shape << QString::number(static_cast<int>(place.edge->kind));
  for (RoleId role : roles_taken(open, part))
    shape << QString::number(role.value) << role_words(open.pattern(), role);
  return shape.join(QLatin1Char('\n'));
}

}  // namespace skeinproof
