// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/piece_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "app/widgets/quantity_text.h"
#include "core/need/stitch_counts.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

QString words(const char* text) { return QCoreApplication::translate("Pieces", text); }

QString number_word(std::size_t count) {
  static const char* const names[] = {"two",   "three", "four", "five",   "six",   "seven",
                                      "eight", "nine",  "ten",  "eleven", "twelve"};
  return count >= 2 && count <= 12 ? words(names[count - 2]) : QString::number(count);
}

QString figure(double value, const ReaderStyle& reader) {
  return show_figure_only(QuantityFormat::number(0, 1e12, {}, -1), reader, value);
}

std::vector<RoleId> roles_of(const Pattern& pattern, const Section& section) {
  std::vector<RoleId> roles;
  const auto add = [&](RoleId role) {
    if (std::find(roles.begin(), roles.end(), role) == roles.end()) roles.push_back(role);
  };
  if (section.source == StitchSource::chart) {
    if (const Chart* chart = pattern.chart(section.chart))
      for (const ChartColour& colour : chart->colours) add(colour.role);
  } else if (section.colouring == Colouring::stripes) {
    for (const Stripe& stripe : section.stripes) add(stripe.role);
  } else if (section.role) {
    add(section.role);
  }
  return roles;
}

long stitches_of(const std::string& round) {
  return static_cast<long>(round.size()) - std::count(round.begin(), round.end(), no_stitch);
}

}  // namespace

QString text_of(const std::string& utf8) { return QString::fromStdString(utf8); }

QString fabric_words(const Pattern& pattern, FabricId id) {
  const Fabric* fabric = pattern.fabric(id);
  return fabric != nullptr ? text_of(fabric->name) : QString();
}

QString role_words(const Pattern& pattern, RoleId id) {
  const Role* role = pattern.role(id);
  return role != nullptr ? text_of(role->label) : QString();
}

QString yarn_words(const Pattern& pattern, const Section& section) {
  const std::vector<RoleId> roles = roles_of(pattern, section);
  if (roles.size() > 2) return number_word(roles.size());
  QStringList labels;
  for (RoleId role : roles) labels << (role ? role_words(pattern, role) : QStringLiteral("?"));
  return labels.join(QStringLiteral(", "));
}

QString rounds_words(const Pattern& pattern, const Section& section, std::size_t size,
                     const ReaderStyle& reader) {
  if (section.source == StitchSource::chart) {
    const Chart* chart = pattern.chart(section.chart);
    return chart != nullptr ? QString::number(chart->rounds->size()) : QString();
  }
  const StitchCount count = section_stitches(section, size);
  return count.rows ? figure(*count.rows, reader) : QString();
}

QString stitches_words(const Pattern& pattern, const Section& section, std::size_t size,
                       const ReaderStyle& reader) {
  if (section.source != StitchSource::chart) {
    const StitchCount count = section_stitches(section, size);
    return count.stitches ? figure(*count.stitches, reader) : QString();
  }
  const Chart* chart = pattern.chart(section.chart);
  const auto* repeats = section.repeats.find(size);
  if (chart == nullptr || repeats == nullptr) return {};
  return words("%1 × %2").arg(figure(repeats->value, reader), QString::number(stitches_in_repeat(*chart)));
}

QString edge_words(const Edge& edge, std::size_t size, const ReaderStyle& reader) {
  const auto* amount = edge.amount.find(size);
  if (amount == nullptr) return {};
  const Entered<double> bare{amount->value, {}};
  switch (edge.kind) {
    case EdgeKind::cast_on:
    case EdgeKind::bind_off:
      return words("%1 sts").arg(figure(amount->value, reader));
    case EdgeKind::seam:
      return show_quantity(QuantityFormat::cloth(), reader, bare);
    case EdgeKind::ends:
    case EdgeKind::other:
      break;
  }
  return show_quantity(QuantityFormat::yarn_length(), reader, bare);
}

Widths widths_of(const Pattern& pattern, const Section& section, std::size_t size) {
  Widths widths;
  if (section.source == StitchSource::worked_out && !section.runs.empty()) {
    if (const auto* from = section.runs.front().from.find(size)) widths.in = from->value;
    const ShapeRun& last = section.runs.back();
    const auto* to = last.to.find(size);
    if (to == nullptr) to = last.from.find(size);
    if (to != nullptr) widths.out = to->value;
  }
  const Chart* chart = section.source == StitchSource::chart ? pattern.chart(section.chart) : nullptr;
  if (const auto* repeats = section.repeats.find(size); chart != nullptr && repeats != nullptr) {
    widths.in = repeats->value * static_cast<double>(stitches_in_first_round(*chart));
    widths.out = repeats->value * static_cast<double>(stitches_in_last_round(*chart));
  }
  return widths;
}

long stitches_in_first_round(const Chart& chart) {
  return chart.rounds->empty() ? 0 : stitches_of(chart.rounds->front());
}
long stitches_in_last_round(const Chart& chart) {
  return chart.rounds->empty() ? 0 : stitches_of(chart.rounds->back());
}

long stitches_in_repeat(const Chart& chart) {
  long stitches = 0;
  for (const std::string& round : *chart.rounds) stitches += stitches_of(round);
  return stitches;
}

QString widths_of_repeat(const Chart& chart) {
  QStringList widths;
  for (const std::string& round : *chart.rounds)
    if (const QString width = QString::number(stitches_of(round)); widths.isEmpty() || widths.back() != width)
      widths << width;
  constexpr qsizetype most_shown = 6;
  if (widths.size() > most_shown) widths = QStringList{widths.front(), QStringLiteral("…"), widths.back()};
  return widths.join(QStringLiteral(", "));
}

}  // namespace skeinproof
