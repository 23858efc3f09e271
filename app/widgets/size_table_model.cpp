// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/size_table_model.h"

#include <QFont>
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/widgets/size_words.h"

namespace skeinproof {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace

SizeTableModel::SizeTableModel(OpenPattern& open, QObject* parent)
    : QAbstractTableModel(parent), open_(open) {
  connect(&open_, &OpenPattern::changed, this, &SizeTableModel::follow);
  connect(&open_, &OpenPattern::reader_changed, this, &SizeTableModel::follow);
  connect(&open_, &OpenPattern::replaced, this, [this] { bad_texts_.clear(); });
  shown_sizes_ = size_count();
}

int SizeTableModel::size_count() const { return static_cast<int>(open_.pattern().sizes.size()); }

void SizeTableModel::set_rows(std::vector<SizeRow> rows) {
  beginResetModel();
  rows_ = std::move(rows);
  shown_sizes_ = size_count();
  read_lists();
  endResetModel();
}

void SizeTableModel::set_second_line(std::function<QString(const Pattern&, std::size_t)> line) {
  second_line_ = std::move(line);
  emit headerDataChanged(Qt::Horizontal, 0, shown_sizes_ - 1);
}

void SizeTableModel::read_lists() {
  lists_.clear();
  for (const SizeRow& row : rows_) lists_.push_back(row.get(open_.pattern()));
}

void SizeTableModel::follow() {
  read_lists();
  const int sizes = size_count();
  if (sizes > shown_sizes_) {
    beginInsertColumns({}, shown_sizes_, sizes - 1);
    shown_sizes_ = sizes;
    endInsertColumns();
  } else if (sizes < shown_sizes_) {
    beginRemoveColumns({}, sizes, shown_sizes_ - 1);
    shown_sizes_ = sizes;
    endRemoveColumns();
  }
  if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, shown_sizes_ - 1));
  emit headerDataChanged(Qt::Horizontal, 0, shown_sizes_ - 1);
}

int SizeTableModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int SizeTableModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : shown_sizes_;
}

SizeTableModel::CellKey SizeTableModel::key_of(int row, int size) const {
  return {undo_name(row), open_.pattern().sizes[at(size)].id.value};
}

const SizeTableModel::BadText* SizeTableModel::bad_text(int row, int size) const {
  const auto found = bad_texts_.find(key_of(row, size));
  return found == bad_texts_.end() ? nullptr : &found->second;
}

FieldValue SizeTableModel::value_at(int row, int size) const { return lists_[at(row)].at(at(size)); }

bool SizeTableModel::is_editable(int row) const { return bool(rows_[at(row)].set); }

QString SizeTableModel::undo_name(int row) const {
  const SizeRow& found = rows_[at(row)];
  return found.undo_name.isEmpty() ? found.label : found.undo_name;
}

QString SizeTableModel::cell_text(int row, int size) const {
  if (const BadText* bad = bad_text(row, size)) return bad->text;
  const FieldValue value = value_at(row, size);
  if (!value) return {};
  const QuantityFormat& format = rows_[at(row)].format;
  const QString text = show_quantity(format, open_.reader(), *value);
  const bool ours = text.toStdString() != value->typed;
  return ours ? show_figure_only(format, open_.reader(), value->value) : text;
}

QString SizeTableModel::list_text(int row) const {
  if (lists_[at(row)].empty()) return {};
  // A comma that is a decimal mark inside a figure must not be taken for one between figures.
  QString list;
  bool in_bracket = false;
  const QString between =
      open_.reader().numbers.mark == DecimalMark::comma ? QStringLiteral("; ") : QStringLiteral(", ");
  for (int size = 0; size < shown_sizes_; ++size) {
    const QString text = cell_text(row, size);
    const bool opens = size > 0 && open_.pattern().sizes[at(size)].opens_group;
    if (opens)
      list += in_bracket ? QStringLiteral(") (") : QStringLiteral(" (");
    else if (size > 0)
      list += between;
    in_bracket = in_bracket || opens;
    list += text.isEmpty() ? QStringLiteral("–") : text;
  }
  return in_bracket ? list + QLatin1Char(')') : list;
}

QVariant SizeTableModel::spoken_text(int row, int size) const {
  const SizeRow& spoken = rows_[at(row)];
  const QString text = cell_text(row, size);
  const QString unit = unit_of(spoken.format, open_.reader());
  const QString label = QString::fromStdString(open_.pattern().sizes[at(size)].label);
  QString words = tr("%1, size %2: %3").arg(spoken.label, label, text.isEmpty() ? tr("nothing typed") : text);
  const bool says_unit = std::any_of(text.begin(), text.end(), [](QChar c) { return c.isLetter(); });
  if (!text.isEmpty() && !unit.isEmpty() && !says_unit) words += QLatin1Char(' ') + unit;
  if (const BadText* bad = bad_text(row, size)) words += tr(". Not taken: %1").arg(bad->reason);
  return words;
}

QVariant SizeTableModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const int row = index.row(), size = index.column();
  switch (role) {
    case Qt::DisplayRole:
    case Qt::EditRole:
      return cell_text(row, size);
    case Qt::TextAlignmentRole:
      return QVariant::fromValue(Qt::Alignment(Qt::AlignRight | Qt::AlignVCenter));
    case Qt::AccessibleTextRole:
      return spoken_text(row, size);
    case Qt::ToolTipRole:
    case bad_text_role: {
      const BadText* bad = bad_text(row, size);
      return bad ? QVariant(bad->reason) : QVariant();
    }
    case opens_group_role:
      return size > 0 && open_.pattern().sizes[at(size)].opens_group;
    case chosen_role:
      return at(size) == open_.chosen_size_index();
    case rule_above_role:
      return rows_[at(row)].rule_above;
    case Qt::FontRole: {
      QFont font;
      font.setWeight(rows_[at(row)].strong && at(size) == open_.chosen_size_index() ? QFont::DemiBold
                                                                                    : QFont::Normal);
      return font;
    }
    default:
      return {};
  }
}

QVariant SizeTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation == Qt::Vertical) {
    const SizeRow& row = rows_[at(section)];
    const QString unit = unit_of(row.format, open_.reader());
    if (role == Qt::DisplayRole)
      return unit.isEmpty() || row.label.contains(unit) ? row.label : row.label + QLatin1Char(' ') + unit;
    if (role == Qt::TextAlignmentRole)
      return QVariant::fromValue(Qt::Alignment(Qt::AlignLeft | Qt::AlignVCenter));
    if (role == rule_above_role) return row.rule_above;
    if (role == Qt::FontRole) {
      QFont font;
      font.setWeight(row.strong ? QFont::DemiBold : QFont::Normal);
      return font;
    }
    return {};
  }
  if (section >= size_count()) return {};
  const bool chosen = at(section) == open_.chosen_size_index();
  switch (role) {
    case Qt::DisplayRole: {
      const QString second = second_line_ ? second_line_(open_.pattern(), at(section)) : QString();
      return second.isEmpty() ? size_words(open_.pattern(), at(section))
                              : size_words(open_.pattern(), at(section)) + QLatin1Char('\n') + second;
    }
    case Qt::AccessibleTextRole:
      return tr("size %1").arg(QString::fromStdString(open_.pattern().sizes[at(section)].label)) +
             (chosen ? tr(", chosen") : QString());
    case opens_group_role:
      return section > 0 && open_.pattern().sizes[at(section)].opens_group;
    case chosen_role:
      return chosen;
    default:
      return {};
  }
}

Qt::ItemFlags SizeTableModel::flags(const QModelIndex& index) const {
  if (!index.isValid()) return Qt::NoItemFlags;
  Qt::ItemFlags flags = Qt::ItemIsSelectable | Qt::ItemIsEnabled | Qt::ItemNeverHasChildren;
  if (is_editable(index.row())) flags |= Qt::ItemIsEditable;
  return flags;
}

bool SizeTableModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (!index.isValid() || role != Qt::EditRole || !is_editable(index.row())) return false;
  if (value.toString() == cell_text(index.row(), index.column())) return true;
  const QString label = QString::fromStdString(open_.pattern().sizes[at(index.column())].label);
  return write({{index.row(), index.column(), value.toString()}},
               tr("%1, size %2").arg(undo_name(index.row()), label)) == 0;
}

int SizeTableModel::write(const std::vector<CellText>& cells, const QString& undo_label) {
  int bad = 0;
  std::vector<std::pair<CellText, FieldValue>> read;
  for (const CellText& cell : cells) {
    if (!is_editable(cell.row)) continue;
    bad_texts_.erase(key_of(cell.row, cell.size));
    const QString text = cell.text.trimmed();
    if (text.isEmpty() || text == QLatin1String("–") || text == QLatin1String("-")) {
      read.emplace_back(cell, FieldValue());
      continue;
    }
    const auto value = read_quantity(rows_[at(cell.row)].format, open_.reader(), cell.text);
    if (value) {
      read.emplace_back(cell, *value);
    } else {
      bad_texts_[key_of(cell.row, cell.size)] = {cell.text, sentence_of(value.error())};
      ++bad;
    }
  }
  const auto refused = open_.apply(undo_label, [&](Pattern& pattern) {
    std::map<int, PerSize<Entered<double>>> lists;
    for (const auto& [cell, value] : read) {
      auto& list = lists.try_emplace(cell.row, rows_[at(cell.row)].get(pattern)).first->second;
      list.set(at(cell.size), value);
    }
    for (const auto& [row, list] : lists) rows_[at(row)].set(pattern, list);
  });
  if (refused)
    for (const auto& [cell, value] : read) {
      bad_texts_[key_of(cell.row, cell.size)] = {cell.text, sentence_of(*refused)};
      ++bad;
    }
  follow();
  return bad;
}

void SizeTableModel::give_up_bad_text(int row, int size) {
  if (bad_texts_.erase(key_of(row, size)) == 0) return;
  emit dataChanged(index(row, size), index(row, size));
}

}  // namespace skeinproof
