// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/item_use.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/fabric/gauge.h"
#include "core/need/stitch_counts.h"

namespace skeinproof {
namespace {

std::optional<double> measured(const Pattern& pattern, MeasurementKind kind, Fit fit,
                               std::size_t size_index) {
  for (const Measurement& one : pattern.measurements)
    if (one.kind == kind && one.fit == fit)
      if (const auto* value = one.values.find(size_index)) return value->value.value();
  return std::nullopt;
}

// Height of one copy of a section, cm.
std::optional<double> section_height(const NeedContext& context, const Section& section,
                                     std::size_t size_index) {
  const Pattern& pattern = context.pattern();
  std::optional<double> rows;
  if (section.source == StitchSource::chart) {
    if (const Chart* chart = pattern.chart(section.chart)) rows = static_cast<double>(chart->rounds->size());
  } else {
    rows = section_stitches(section, size_index).rows;
  }
  const Fabric* fabric = pattern.fabric(section.fabric);
  if (!rows || fabric == nullptr) return std::nullopt;
  auto height = row_height(fabric->gauge);
  for (auto plain = pattern.fabrics.begin(); !height && plain != pattern.fabrics.end(); ++plain)
    if (plain->structure == Structure::plain) height = row_height(plain->gauge);
  if (!height) return std::nullopt;
  return *rows * height->value();
}

std::optional<double> piece_height(const NeedContext& context, const Piece& piece, std::size_t size_index) {
  double cm = 0;
  for (const Section& section : piece.sections) {
    const auto height = section_height(context, section, size_index);
    if (!height) return std::nullopt;
    cm += *height;
  }
  return piece.sections.empty() ? std::nullopt : std::optional(cm);
}

// Bands stand up or lie along an edge: they do not hang.
bool is_band(const Pattern& pattern, const Piece& piece) {
  return std::all_of(piece.sections.begin(), piece.sections.end(), [&](const Section& section) {
    const Fabric* fabric = pattern.fabric(section.fabric);
    return fabric != nullptr && fabric->structure == Structure::rib;
  });
}

bool is_cast_on(const Piece& piece) {
  return std::any_of(piece.edges.begin(), piece.edges.end(),
                     [](const Edge& edge) { return edge.kind == EdgeKind::cast_on; });
}

// The widest piece that is cast on by itself, and those that go on from its stitches: body and yoke. Sleeves
// come in two copies and do not carry the body.
void hang_by_rows(const NeedContext& context, std::size_t size_index, ItemUse& use) {
  const Pattern& pattern = context.pattern();
  const Piece* start = nullptr;
  double widest = -1;
  for (const Piece& piece : pattern.pieces) {
    if (piece.copies != 1 || is_band(pattern, piece) || !is_cast_on(piece)) continue;
    double stitches = 0;
    for (const Section& section : piece.sections)
      stitches += section_stitches(section, size_index).stitches.value_or(0);
    if (stitches > widest) widest = stitches, start = &piece;
  }
  if (start == nullptr) {
    use.hanging_because = "no length of the item: its finished length, or rows of its pieces";
    return;
  }
  double cm = 0;
  for (const Piece& piece : pattern.pieces) {
    if (&piece != start && (piece.copies != 1 || is_cast_on(piece) || is_band(pattern, piece))) continue;
    const auto height = piece_height(context, piece, size_index);
    if (!height) {
      use.hanging_because = "no rows of “" + piece.name + "”";
      return;
    }
    cm += *height;
  }
  use.hanging_cm = cm;
  use.hanging_because = "by the rows of the sheet";
}

void find_hanging(const NeedContext& context, std::size_t size_index, ItemUse& use) {
  const Pattern& pattern = context.pattern();
  if (const auto length = measured(pattern, MeasurementKind::body_length, Fit::finished, size_index)) {
    use.hanging_cm =
        *length + measured(pattern, MeasurementKind::yoke_depth, Fit::finished, size_index).value_or(0);
    use.hanging_because = "by the finished measurements";
    return;
  }
  hang_by_rows(context, size_index, use);
  // An adult's garment hangs from the shoulder whether or not its length is known.
  if (use.hanging_cm || use.kind != ItemKind::garment || use.wearers.up_to_7_years) return;
  use.hanging_cm = context.constant_of("bench_hanging_adult_cm");
  use.hanging_because = "as is usual of a grown person's garment (" + use.hanging_because + ")";
}

RoleUse role_use(const NeedContext& context, const Role& role) {
  const Pattern& pattern = context.pattern();
  RoleUse use;
  use.role = role.id;
  for (const PartUse& part : context.parts_of(role.id)) {
    use.known = true;
    use.pieces.insert(part.piece->id);
    use.places += lower_ascii(part.piece->name) + "; ";
    if (part.edge != nullptr) use.places += lower_ascii(part.edge->name) + "; ";
    if (part.section == nullptr) continue;
    use.places += lower_ascii(part.section->name) + "; ";
    if (const Fabric* fabric = pattern.fabric(part.section->fabric)) use.structures.insert(fabric->structure);
  }
  if (!use.known && pattern.pieces.empty() && !pattern.fabrics.empty()) {
    use.known = true;
    for (const Fabric& fabric : pattern.fabrics) use.structures.insert(fabric.structure);
  }
  return use;
}

bool has_chart(const Pattern& pattern) {
  if (!pattern.charts.empty()) return true;
  return std::any_of(pattern.fabrics.begin(), pattern.fabrics.end(), [](const Fabric& fabric) {
    return fabric.structure == Structure::stranded || fabric.structure == Structure::intarsia;
  });
}

}  // namespace

const RoleUse* ItemUse::of(RoleId role) const {
  const auto found =
      std::find_if(roles.begin(), roles.end(), [&](const RoleUse& one) { return one.role == role; });
  return found == roles.end() ? nullptr : &*found;
}

ItemUse item_use(const NeedContext& context, std::size_t size_index) {
  const Pattern& pattern = context.pattern();
  ItemUse use;
  use.words = lower_ascii(pattern.item + "; " + pattern.title);
  use.kind = item_kind(lower_ascii(pattern.item));
  if (use.kind == ItemKind::unknown) use.kind = item_kind(use.words);
  use.wearers = wearer_ages(pattern);
  use.felted = is_felted_item(use.words);
  use.near_heat = used_near_heat(use.words);
  use.drapey = use.kind == ItemKind::shawl ||
               says(use.words, {"drapey", "draped", "draping", "waterfall", "scarf", "cowl", "poncho"});
  use.steek = says(use.words, {"steek", "steeked"}) ||
              (pattern.draft() != nullptr && says(lower_ascii(pattern.draft()->text), {"steek", "steeked"}));
  use.charted = has_chart(pattern);
  const auto finished = measured(pattern, MeasurementKind::circumference, Fit::finished, size_index);
  const auto to_fit = measured(pattern, MeasurementKind::circumference, Fit::to_fit, size_index);
  if (finished && to_fit) use.ease_cm = *finished - *to_fit;
  for (const Role& role : pattern.roles) use.roles.push_back(role_use(context, role));
  find_hanging(context, size_index, use);
  return use;
}

}  // namespace skeinproof
