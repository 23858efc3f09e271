// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/part_table_model.h"

#include <algorithm>

#include "app/document/open_pattern.h"

namespace skeinproof {

PartTableModel::PartTableModel(OpenPattern& open, PartList list, std::vector<PartColumn> columns,
                               QObject* parent)
    : QAbstractTableModel(parent), open_(open), list_(std::move(list)), columns_(std::move(columns)) {
  keys_ = keys_now();
}

std::vector<std::uint32_t> PartTableModel::keys_now() const {
  std::vector<std::uint32_t> keys;
  const std::size_t count = list_.count(open_.pattern());
  for (std::size_t row = 0; row < count; ++row) keys.push_back(list_.key(open_.pattern(), row));
  return keys;
}

std::uint32_t PartTableModel::key_at(int row) const {
  return row >= 0 && row < part_count() ? keys_[static_cast<std::size_t>(row)] : 0;
}

int PartTableModel::row_of(std::uint32_t key) const {
  const auto found = std::find(keys_.begin(), keys_.end(), key);
  return found == keys_.end() ? -1 : static_cast<int>(found - keys_.begin());
}

bool PartTableModel::is_there(int row) const {
  return row >= 0 && row < part_count() && static_cast<std::size_t>(row) < list_.count(open_.pattern());
}

QString PartTableModel::name_at(int row) const {
  return row >= 0 && row < part_count() && list_.name
             ? list_.name(open_.pattern(), static_cast<std::size_t>(row))
             : QString();
}

int PartTableModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : part_count() + (list_.append ? 1 : 0);
}
int PartTableModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(columns_.size());
}

const PartTableModel::BadText* PartTableModel::bad_text(int row, int column) const {
  const auto found = bad_texts_.find({key_at(row), column});
  return found == bad_texts_.end() ? nullptr : &found->second;
}

QString PartTableModel::bad_reason(int row, int column) const {
  const BadText* bad = bad_text(row, column);
  return bad ? bad->reason : QString();
}

QString PartTableModel::cell_text(int row, int at) const {
  if (const BadText* bad = bad_text(row, at)) return bad->text;
  if (!is_there(row)) return {};
  const PartColumn& shown = column(at);
  const auto index = static_cast<std::size_t>(row);
  if (shown.ticked) return shown.ticked(open_.pattern(), index) ? tr("yes") : tr("no");
  return shown.text ? shown.text(open_.pattern(), index) : QString();
}

std::vector<Choice> PartTableModel::choices_at(int row, int at) const {
  const std::size_t index = is_empty_row(row) ? list_.count(open_.pattern()) : static_cast<std::size_t>(row);
  return column(at).choices ? column(at).choices(open_.pattern(), index) : std::vector<Choice>();
}

QString PartTableModel::spoken_text(int row, int at) const {
  if (!is_there(row)) return at == 0 && list_.append ? list_.add_hint : column(at).head + tr(": empty");
  const PartColumn& shown = column(at);
  QString said =
      shown.spoken ? shown.spoken(open_.pattern(), static_cast<std::size_t>(row)) : cell_text(row, at);
  if (said.isEmpty()) said = tr("empty");
  const QString name = name_at(row);
  QString whole = name.isEmpty() || name == said ? tr("%1: %2").arg(shown.head, said)
                                                 : tr("%1, %2: %3").arg(name, shown.head, said);
  if (const QString reason = bad_reason(row, at); !reason.isEmpty()) whole += QStringLiteral(". ") + reason;
  return whole;
}

QVariant PartTableModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const int row = index.row(), at = index.column();
  const PartColumn& shown = column(at);
  switch (role) {
    case Qt::DisplayRole:
      if (is_empty_row(row) && bad_text(row, at) == nullptr) return at == 0 ? list_.add_hint : QString();
      return shown.ticked ? QString() : cell_text(row, at);
    case Qt::EditRole:
      return cell_text(row, at);
    case Qt::CheckStateRole:
      if (!shown.ticked || !is_there(row)) return {};
      return shown.ticked(open_.pattern(), static_cast<std::size_t>(row)) ? Qt::Checked : Qt::Unchecked;
    case Qt::TextAlignmentRole:
      return QVariant((shown.right ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    case Qt::ToolTipRole:
      if (const QString reason = bad_reason(row, at); !reason.isEmpty()) return reason;
      return cell_text(row, at);
    case Qt::AccessibleTextRole:
      return spoken_text(row, at);
    case bad_text_role:
      return bad_text(row, at) != nullptr;
    case chip_role:
      return shown.chip && is_there(row)
                 ? QVariant(shown.chip(open_.pattern(), static_cast<std::size_t>(row)))
                 : QVariant();
    case quiet_role:
      return shown.quiet || is_empty_row(row);
    case strong_role:
      return shown.strong && !is_empty_row(row);
    case empty_row_role:
      return is_empty_row(row);
    default:
      return {};
  }
}

QVariant PartTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || section < 0 || section >= columnCount()) return {};
  const PartColumn& shown = column(section);
  if (role == Qt::DisplayRole) return shown.head;
  if (role == Qt::ToolTipRole && !shown.tip.isEmpty()) return shown.tip;
  if (role == Qt::TextAlignmentRole)
    return QVariant((shown.right ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
  return {};
}

Qt::ItemFlags PartTableModel::flags(const QModelIndex& index) const {
  if (!index.isValid()) return Qt::NoItemFlags;
  Qt::ItemFlags flags = Qt::ItemIsSelectable | Qt::ItemIsEnabled | Qt::ItemNeverHasChildren;
  const PartColumn& shown = column(index.column());
  if (shown.tick && !is_empty_row(index.row())) flags |= Qt::ItemIsUserCheckable;
  if (shown.read || shown.choose) flags |= Qt::ItemIsEditable;
  return flags;
}

QString PartTableModel::label_of(int row, int at, const QString& said) const {
  if (is_empty_row(row)) return tr("add %1").arg(list_.part) + QLatin1Char(' ') + said;
  const QString name = name_at(row);
  const QString value = said.isEmpty() ? tr("nothing") : said;
  if (name.isEmpty() || name == cell_text(row, at)) return column(at).undo_name + QLatin1Char(' ') + value;
  return column(at).undo_name + QStringLiteral(", ") + name + QLatin1Char(' ') + value;
}

bool PartTableModel::apply_edit(int row, int at, const QString& said, const RowEdit& edit) {
  const bool appends = is_empty_row(row);
  const auto refused = open_.apply(label_of(row, at, said), [&](Pattern& pattern) {
    if (appends) list_.append(pattern);
    const std::size_t count = list_.count(pattern);
    const std::size_t to = appends ? count - 1 : static_cast<std::size_t>(row);
    if (to < count) edit(pattern, to);
  });
  const CellKey key{key_at(row), at};
  if (refused)
    bad_texts_[key] = {said, sentence_of(*refused)};
  else
    bad_texts_.erase(key);
  const QModelIndex changed = index(std::min(row, rowCount() - 1), at);
  emit dataChanged(changed, changed);
  return !refused;
}

Expected<RowEdit> PartTableModel::read_cell(int row, int at, const QString& text) const {
  const PartColumn& into = column(at);
  if (into.read) return into.read(text, static_cast<std::size_t>(row));
  // A list and a tick are pasted by their words.
  if (into.choose) {
    QStringList words;
    for (const Choice& choice : choices_at(row, at)) {
      if (choice.text.compare(text.trimmed(), Qt::CaseInsensitive) == 0)
        return [choose = into.choose, value = choice.value](Pattern& pattern, std::size_t to) {
          choose(pattern, to, value);
        };
      if (!choice.text.isEmpty()) words << choice.text;
    }
    return failure(ErrorKind::unknown_name, text.toStdString(),
                   "one of " + words.join(QStringLiteral(", ")).toStdString());
  }
  const QString said = text.trimmed();
  const bool yes = said.compare(tr("yes"), Qt::CaseInsensitive) == 0;
  if (!yes && said.compare(tr("no"), Qt::CaseInsensitive) != 0)
    return failure(ErrorKind::unknown_name, text.toStdString(), "yes or no");
  return [tick = into.tick, yes](Pattern& pattern, std::size_t to) { tick(pattern, to, yes); };
}

bool PartTableModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (!index.isValid()) return false;
  const int row = index.row(), at = index.column();
  const PartColumn& into = column(at);
  if (role == Qt::CheckStateRole && into.tick) {
    const bool on = value.toInt() == Qt::Checked;
    return apply_edit(row, at, on ? tr("yes") : tr("no"),
                      [&into, on](Pattern& pattern, std::size_t to) { into.tick(pattern, to, on); });
  }
  if (role != Qt::EditRole) return false;
  if (into.choose && value.typeId() != QMetaType::QString) {
    const std::uint32_t chosen = value.toUInt();
    QString said;
    for (const Choice& choice : choices_at(row, at))
      if (choice.value == chosen) said = choice.text;
    return apply_edit(row, at, said, [&into, chosen](Pattern& pattern, std::size_t to) {
      into.choose(pattern, to, chosen);
    });
  }
  const QString text = value.toString();
  if (text == cell_text(row, at) && bad_text(row, at) == nullptr) return true;
  if (is_empty_row(row) && text.trimmed().isEmpty()) {
    give_up_bad_text(row, at);
    return true;
  }
  const auto edit = read_cell(row, at, text);
  if (!edit) {
    bad_texts_[{key_at(row), at}] = {text, sentence_of(edit.error())};
    emit dataChanged(index, index);
    return false;
  }
  return apply_edit(row, at, text.trimmed(), *edit);
}

int PartTableModel::write(const std::vector<CellText>& cells, const QString& undo_label) {
  struct Read {
    std::size_t row;
    RowEdit edit;
  };
  std::vector<Read> edits;
  std::map<CellKey, BadText> bad;
  int unread = 0, last_row = -1;
  for (const CellText& cell : cells) {
    if (cell.column >= columnCount() || !column(cell.column).editable()) continue;
    if (cell.row >= part_count() && !list_.append) continue;
    if (cell.row >= part_count() && cell.text.trimmed().isEmpty()) continue;
    auto edit = read_cell(cell.row, cell.column, cell.text);
    if (edit) {
      edits.push_back({static_cast<std::size_t>(cell.row), *edit});
      last_row = std::max(last_row, cell.row);
      bad_texts_.erase({key_at(cell.row), cell.column});
    } else {
      ++unread;
      bad[{key_at(cell.row), cell.column}] = {cell.text, sentence_of(edit.error())};
    }
  }
  const auto refused = open_.apply(undo_label, [&](Pattern& pattern) {
    while (list_.append && list_.count(pattern) <= static_cast<std::size_t>(std::max(last_row, 0)) &&
           last_row >= 0)
      list_.append(pattern);
    for (const Read& read : edits)
      if (read.row < list_.count(pattern)) read.edit(pattern, read.row);
  });
  for (auto& [key, text] : bad) bad_texts_[key] = text;
  if (rowCount() > 0) emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
  return refused ? static_cast<int>(cells.size()) : unread;
}

void PartTableModel::give_up_bad_text(int row, int at) {
  if (bad_texts_.erase({key_at(row), at}) == 0) return;
  emit dataChanged(index(row, at), index(row, at));
}

bool PartTableModel::follow(bool other_rows) {
  std::vector<std::uint32_t> now = keys_now();
  if (other_rows || now != keys_) {
    // The document has changed already, so the rows cannot be taken out one by one before it does.
    beginResetModel();
    if (other_rows) bad_texts_.clear();
    keys_ = std::move(now);
    endResetModel();
    return true;
  }
  if (rowCount() > 0) emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
  return false;
}

}  // namespace skeinproof
