// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/go_to_index.h"

#include <QCoreApplication>

#include "app/pages/candidates/candidate_pane.h"
#include "core/substitution/on_hand_length.h"

namespace skeinproof {

namespace {

QString text(const std::string& words) { return QString::fromStdString(words); }

QString joined(const std::string& first, const std::string& second) {
  return second.empty() ? text(first) : text(first) + QStringLiteral(", ") + text(second);
}

}  // namespace

std::vector<GoToTarget> go_to_targets(const Pattern& pattern, const QStringList& page_names) {
  std::vector<GoToTarget> targets;
  const auto add = [&](const QString& words, const char* page, std::uint32_t part) {
    const QString name = QString::fromLatin1(page);
    if (!words.trimmed().isEmpty() && page_names.contains(name)) targets.push_back({words, name, part});
  };
  for (const Size& size : pattern.sizes)
    targets.push_back(
        {QCoreApplication::translate("GoTo", "size %1").arg(text(size.label)), QString(), size.id.value});
  for (const Role& role : pattern.roles)
    add((text(role.label) + ' ' + text(role.shade.name) + ' ' + text(role.shade.number)).simplified(),
        "Quantities", role.id.value);
  for (const Candidate& candidate : pattern.candidates)
    add(candidate_name(pattern, candidate), "Candidates", candidate.id.value);
  for (const YarnOnHand& yarn : pattern.on_hand)
    add(QCoreApplication::translate("GoTo", "%1 on hand").arg(text(on_hand_name(pattern, yarn))), "On hand",
        yarn.id.value);
  for (const Yarn& yarn : pattern.yarns) add(text(yarn.name), "Yarns", yarn.id.value);
  for (const Measurement& measurement : pattern.measurements)
    add(text(measurement.name), "Pattern", measurement.id.value);
  for (const Fabric& fabric : pattern.fabrics) add(text(fabric.name), "Pieces", fabric.id.value);
  for (const Chart& chart : pattern.charts) add(text(chart.name), "Pieces", chart.id.value);
  for (const Piece& piece : pattern.pieces) {
    add(text(piece.name), "Pieces", piece.id.value);
    for (const Section& section : piece.sections)
      add(joined(piece.name, section.name), "Pieces", section.id.value);
    for (const Edge& edge : piece.edges) add(joined(piece.name, edge.name), "Pieces", edge.id.value);
  }
  for (const Weighing& weighing : pattern.weighings) add(text(weighing.name), "Weighings", weighing.id.value);
  for (const QString& page : page_names) targets.push_back({page, page, 0});
  return targets;
}

const GoToTarget* best_target(const std::vector<GoToTarget>& targets, const QString& typed) {
  const QString wanted = typed.simplified();
  if (wanted.isEmpty()) return nullptr;
  for (const GoToTarget& target : targets)
    if (target.words.startsWith(wanted, Qt::CaseInsensitive)) return &target;
  for (const GoToTarget& target : targets)
    if (target.words.contains(wanted, Qt::CaseInsensitive)) return &target;
  return nullptr;
}

}  // namespace skeinproof
