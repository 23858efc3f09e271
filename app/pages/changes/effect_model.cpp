// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/effect_model.h"

#include "app/pages/changes/change_words.h"
#include "app/pages/pieces/piece_words.h"
#include "app/pages/quantities/need_cell.h"
#include "app/widgets/chart_inks.h"

namespace skeinproof {
namespace {

const QString dash = QStringLiteral("–");

BeforeAfter lengths(const SizeNeed& before, const SizeNeed& after, Metres SizeNeed::*which,
                    const ReaderStyle& reader) {
  const auto figure = [&](const SizeNeed& need) {
    return need.known ? yarn_figure(need.*which, reader) : dash;
  };
  return {figure(before), figure(after)};
}

BeforeAfter fills(const SizeNeed& before, const SizeNeed& after, const ReaderStyle& reader) {
  const auto figure = [&](const SizeNeed& need) {
    return need.known && need.fraction
               ? QString::fromStdString(show_number(*need.fraction, 2, reader.numbers))
               : dash;
  };
  return {figure(before), figure(after)};
}

QString count_figure(const std::optional<int>& count) { return count ? QString::number(*count) : dash; }

// A dash where nothing moves, so that what moves is seen.
QString more_figure(Metres more, const ReaderStyle& reader) {
  const QString figure = signed_figure(more, reader);
  return figure == signed_figure(metres(0), reader) ? dash : figure;
}

EffectRow role_row(const Pattern& pattern, const RoleChange& change, const ReaderStyle& reader) {
  EffectRow row;
  row.colour = text_of(change.label);
  if (const Role* role = pattern.role(change.role)) {
    row.shade = text_of(role->shade.name);
    row.chip = role_fill(pattern, change.role, {});
  }
  row.knitted = lengths(change.before, change.after, &SizeNeed::knitted, reader);
  row.planned = lengths(change.before, change.after, &SizeNeed::planned, reader);
  row.fill = fills(change.before, change.after, reader);
  row.skeins = {count_figure(change.before.known ? change.before.skeins : std::nullopt),
                count_figure(change.after.known ? change.after.skeins : std::nullopt)};
  if (!change.known()) {
    row.state = EffectModel::tr("not checked");
    row.detail = as_sentence(change.after.missing);
    return row;
  }
  row.knitted_more = more_figure(change.knitted_more, reader);
  row.planned_more = more_figure(change.planned_more, reader);
  row.share = change.after.last_skein_share;
  row.state = state_words(change).join(QStringLiteral(", "));
  row.detail = step_words(change, reader);
  return row;
}

EffectRow total_row(const WhatIf& what_if, const ReaderStyle& reader) {
  EffectRow row;
  row.colour = EffectModel::tr("All colours");
  row.is_total = true;
  SizeNeed before, after;
  before.known = after.known = true;
  Metres knitted_more, planned_more;
  for (const RoleChange& role : what_if.roles) {
    before.known = before.known && (role.before.known || role.before.missing.empty());
    after.known = after.known && role.known();
    before.knitted += role.before.knitted;
    before.planned += role.before.planned;
    after.knitted += role.after.knitted;
    after.planned += role.after.planned;
    knitted_more += role.knitted_more;
    planned_more += role.planned_more;
  }
  row.knitted = lengths(before, after, &SizeNeed::knitted, reader);
  row.planned = lengths(before, after, &SizeNeed::planned, reader);
  row.skeins = {count_figure(what_if.total_skeins_before), count_figure(what_if.total_skeins_after)};
  if (before.known && after.known) {
    row.knitted_more = more_figure(knitted_more, reader);
    row.planned_more = more_figure(planned_more, reader);
  }
  if (!what_if.total_skeins_before || !what_if.total_skeins_after) return row;
  const int more = *what_if.total_skeins_after - *what_if.total_skeins_before;
  if (more != 0)
    row.state =
        more > 0
            ? (more == 1 ? EffectModel::tr("a skein more") : EffectModel::tr("%1 skeins more").arg(more))
            : (more == -1 ? EffectModel::tr("a skein fewer") : EffectModel::tr("%1 skeins fewer").arg(-more));
  return row;
}

}  // namespace

std::vector<EffectRow> effect_rows(const Pattern& pattern, const WhatIf& what_if, const ReaderStyle& reader) {
  std::vector<EffectRow> rows;
  for (const RoleChange& change : what_if.roles) rows.push_back(role_row(pattern, change, reader));
  if (!rows.empty()) rows.push_back(total_row(what_if, reader));
  return rows;
}

void EffectModel::show(std::vector<EffectRow> rows, const QString& unit) {
  const bool same_length = rows.size() == rows_.size();
  if (!same_length) beginResetModel();
  rows_ = std::move(rows);
  const bool other_unit = unit != unit_;
  unit_ = unit;
  if (!same_length)
    endResetModel();
  else if (!rows_.empty())
    emit dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
  if (other_unit) emit headerDataChanged(Qt::Horizontal, 0, ColumnCount - 1);
}

int EffectModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}
int EffectModel::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : ColumnCount; }

const BeforeAfter* EffectModel::figures(int row, int column) const {
  const EffectRow& shown = rows_[static_cast<std::size_t>(row)];
  switch (column) {
    case Knitted:
      return &shown.knitted;
    case Planned:
      return &shown.planned;
    case Fill:
      return &shown.fill;
    case Skeins:
      return &shown.skeins;
    default:
      return nullptr;
  }
}

QString EffectModel::cell_text(int row, int column) const {
  if (const BeforeAfter* both = figures(row, column)) return both->words();
  const EffectRow& shown = rows_[static_cast<std::size_t>(row)];
  switch (column) {
    case Colour:
      return shown.colour;
    case KnittedMore:
      return shown.knitted_more;
    case PlannedMore:
      return shown.planned_more;
    default:
      return shown.step();
  }
}

QString EffectModel::spoken(const EffectRow& row) const {
  const auto both = [](const BeforeAfter& figures) {
    return figures.moves() ? tr("from %1 to %2").arg(figures.before, figures.after) : figures.after;
  };
  QString words = tr("%1: planned %2 %3, knitted %4 %3, skeins %5")
                      .arg(row.colour, both(row.planned), unit_, both(row.knitted), both(row.skeins));
  if (!row.fill.after.isEmpty()) words += tr(", filled to %1").arg(both(row.fill));
  if (const QString step = row.step(); !step.isEmpty()) words += QStringLiteral(", ") + step;
  return words;
}

QVariant EffectModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  if (role == Qt::DisplayRole) return cell_text(index.row(), index.column());
  const EffectRow& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == Qt::AccessibleTextRole || role == Qt::ToolTipRole) return spoken(row);
  return {};
}

QVariant EffectModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  struct Head {
    const char *words, *tip;
    bool has_unit;
  };
  static constexpr Head heads[ColumnCount] = {
      {QT_TR_NOOP("Colour"), QT_TR_NOOP("The colours of the pattern, and those that the changes make"),
       false},
      {QT_TR_NOOP("Knitted"), QT_TR_NOOP("Knitted length before and after"), true},
      {QT_TR_NOOP("± knitted"), QT_TR_NOOP("Knitted length more or less"), false},
      {QT_TR_NOOP("Planned"), QT_TR_NOOP("With swatch and allowance, before and after"), true},
      {QT_TR_NOOP("± planned"), QT_TR_NOOP("Planned length more or less"), false},
      {QT_TR_NOOP("In skeins"),
       QT_TR_NOOP("Planned length by the length of a skein; the bar is the last skein"), false},
      {QT_TR_NOOP("To buy"), QT_TR_NOOP("Whole skeins before and after"), false},
      {QT_TR_NOOP("Step"), QT_TR_NOOP("Whether the count of skeins changes, and by how little"), false}};
  if (section < 0 || section >= ColumnCount) return {};
  const Head& head = heads[section];
  if (role == Qt::DisplayRole)
    return head.has_unit ? tr("%1, %2").arg(tr(head.words), unit_) : tr(head.words);
  if (role == Qt::ToolTipRole || role == Qt::AccessibleTextRole) return tr(head.tip);
  if (role == Qt::TextAlignmentRole)
    return QVariant((section == Colour || section == Step ? Qt::AlignLeft : Qt::AlignRight) |
                    Qt::AlignVCenter);
  return {};
}

Table printed_effect(const QString& title, const EffectModel& model) {
  Table table;
  table.title = title.toStdString();
  for (int column = 0; column < EffectModel::Step; ++column)
    table.columns.push_back(
        {model.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().toStdString(),
         column == EffectModel::Colour ? Align::left : Align::right, false});
  for (int row = 0; row < model.rowCount(); ++row) {
    Row printed;
    for (int column = 0; column < EffectModel::Step; ++column) {
      Cell cell = words(model.cell_text(row, column).toStdString());
      cell.strong = model.rows()[static_cast<std::size_t>(row)].is_total;
      printed.cells.push_back(cell);
    }
    table.rows.push_back(std::move(printed));
  }
  return table;
}

std::vector<std::string> printed_steps(const EffectModel& model) {
  std::vector<std::string> lines;
  for (const EffectRow& row : model.rows())
    if (const QString step = row.step(); !step.isEmpty())
      lines.push_back((row.colour + QStringLiteral(": ") + step).toStdString());
  return lines;
}

}  // namespace skeinproof
