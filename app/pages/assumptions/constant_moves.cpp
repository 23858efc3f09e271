// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/assumptions/constant_moves.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "app/widgets/quantity_text.h"

namespace skeinproof {
namespace {

QString say(const char* text) { return QCoreApplication::translate("Assumptions", text); }
QString words(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

class MoveRows {
 public:
  MoveRows(const Pattern& pattern, const Constant& constant, const ReaderStyle& reader)
      : pattern_(pattern), constant_(constant), reader_(reader) {}

  void add_constant() {
    FigureRow row;
    row.name = say("In force");
    row.figure = value(constant(pattern_, constant_.key));
    row.how =
        say("%1; how far the source was read: %2").arg(words(constant_.source), words(constant_.confidence));
    row.source = say("May be typed between %1 and %2.").arg(value(constant_.low), value(constant_.high));
    row.strong = true;
    rows.push_back(row);
  }

  void add_move(const ConstantMove& move) {
    if (move.to == move.from) return;
    FigureRow head;
    head.name = say("At %1").arg(value(move.to));
    head.heading = true;
    rows.push_back(head);
    if (move.needs.empty()) {
      FigureRow none;
      none.name = say("No need moves");
      rows.push_back(none);
      return;
    }
    for (const NeedMove& need : move.needs)
      if (need.crosses_a_step()) add_step(need);
    add_largest(move, say("Planned length that moves most"), &NeedMove::planned_share,
                [this](const NeedMove& need) { return lengths(need.planned_before, need.planned_after); });
    add_largest(move, say("Upper bound that moves most"), &NeedMove::high_share,
                [this](const NeedMove& need) { return lengths(need.high_before, need.high_after); });
    add_largest(move, say("Chance that moves most"), &NeedMove::chance_points, [this](const NeedMove& need) {
      return say("%1 → %2 in 100").arg(hundredths(*need.chance_before), hundredths(*need.chance_after));
    });
    add_largest(move, say("What the printed counts leave open"), &NeedMove::told_share,
                [this](const NeedMove& need) { return lengths(*need.told_before, *need.told_after); });
  }

  std::vector<FigureRow> rows;

 private:
  QString value(double plain) const {
    const QString figure = QString::fromStdString(show_short(plain, 4, reader_.numbers));
    return constant_.unit.empty() ? figure : figure + QLatin1Char(' ') + words(constant_.unit);
  }
  QString place(const NeedMove& need) const {
    const Role* role = pattern_.role(need.role);
    return say("%1, size %2")
        .arg(role == nullptr ? QString() : QString::fromStdString(role->label),
             QString::fromStdString(pattern_.sizes[need.size].label));
  }
  QString length(Metres metres) const {
    return show_quantity(QuantityFormat::yarn_length(), reader_, {metres.value(), {}});
  }

  void add_step(const NeedMove& need) {
    FigureRow row;
    row.name = place(need);
    row.figure = say("%1 → %2 skeins").arg(need.skeins_before.value_or(0)).arg(need.skeins_after.value_or(0));
    row.how = say("planned %1 → %2").arg(length(need.planned_before), length(need.planned_after));
    row.strong = true;
    rows.push_back(row);
  }

  QString lengths(Metres before, Metres after) const {
    return say("%1 → %2").arg(length(before), length(after));
  }
  QString hundredths(double share) const {
    return QString::fromStdString(show_number(100 * share, 1, reader_.numbers));
  }

  template <class FromTo>
  void add_largest(const ConstantMove& move, const QString& name, double (NeedMove::*measure)() const,
                   FromTo&& from_to) {
    const auto& most = *std::max_element(move.needs.begin(), move.needs.end(),
                                         [measure](const NeedMove& a, const NeedMove& b) {
                                           return std::abs((a.*measure)()) < std::abs((b.*measure)());
                                         });
    const double moved = (most.*measure)();
    if (moved == 0) return;
    FigureRow row;
    row.name = name;
    row.figure = (moved < 0 ? QStringLiteral("−") : QStringLiteral("+")) + hundredths(std::abs(moved)) +
                 (measure == &NeedMove::chance_points ? say(" points") : QStringLiteral(" %"));
    row.how = say("%1: %2").arg(place(most), from_to(most));
    rows.push_back(row);
  }

  const Pattern& pattern_;
  const Constant& constant_;
  const ReaderStyle& reader_;
};

}  // namespace

std::vector<FigureRow> constant_rows(const Pattern& pattern, const Constant& constant,
                                     const ReaderStyle& reader) {
  MoveRows rows(pattern, constant, reader);
  rows.add_constant();
  return rows.rows;
}

std::vector<FigureRow> constant_moves(const Pattern& pattern, const Sensitivity& sensitivity,
                                      const ReaderStyle& reader) {
  MoveRows moves(pattern, *sensitivity.constant, reader);
  moves.add_constant();
  moves.add_move(sensitivity.lower);
  moves.add_move(sensitivity.higher);
  return moves.rows;
}

}  // namespace skeinproof
