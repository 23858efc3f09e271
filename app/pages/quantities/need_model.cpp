// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/quantities/need_model.h"

#include <QStringList>
#include <algorithm>
#include <map>

#include "app/document/open_pattern.h"
#include "app/pages/quantities/need_cell_painter.h"
#include "app/widgets/quantity_text.h"
#include "app/widgets/size_list_text.h"
#include "app/widgets/size_words.h"

namespace skeinproof {
namespace {

// The printed list a row of the grid stands for.
template <class AnyPattern>
auto& counts_of(AnyPattern& pattern, int row) {
  const auto role = static_cast<std::size_t>(row);
  return role < pattern.roles.size() ? pattern.roles[role].printed_count : pattern.printed_total;
}

const QuantityFormat& count_format() {
  static const QuantityFormat format = QuantityFormat::number(0, 10000, "a count of skeins");
  return format;
}

// A text that was found readable before.
std::optional<Entered<double>> count_of(const QString& text, const ReaderStyle& reader) {
  if (text.trimmed().isEmpty()) return std::nullopt;
  const auto count = read_quantity(count_format(), reader, text);
  return count ? std::optional(*count) : std::nullopt;
}

}  // namespace

NeedModel::NeedModel(OpenPattern& open, QObject* parent) : QAbstractTableModel(parent), open_(open) {
  refresh();
}

void NeedModel::refresh() {
  const Pattern& pattern = open_.pattern();
  const int rows = static_cast<int>(pattern.roles.size()) + 1;
  const int columns = static_cast<int>(pattern.sizes.size());
  const bool same_shape = rows == rows_ && columns == columns_;
  if (!same_shape) beginResetModel();
  rows_ = rows;
  columns_ = columns;
  const NeedCellInput input{pattern, open_.assessment(), layer_, open_.reader(), shows_words_};
  cells_.clear();
  for (std::size_t role = 0; role < pattern.roles.size(); ++role)
    for (std::size_t size = 0; size < pattern.sizes.size(); ++size)
      cells_.push_back(need_cell(input, role, size));
  for (std::size_t size = 0; size < pattern.sizes.size(); ++size) cells_.push_back(total_cell(input, size));
  // Where nothing is known at all, one sentence below says so; dashes are enough here.
  if (!any_known())
    for (NeedCell& shown : cells_) shown.word.clear();
  if (!same_shape) {
    endResetModel();
    return;
  }
  emit dataChanged(index(0, 0), index(rows_ - 1, columns_ - 1));
  emit headerDataChanged(Qt::Horizontal, 0, columns_ - 1);
  emit headerDataChanged(Qt::Vertical, 0, rows_ - 1);
}

void NeedModel::set_layer(Layer layer) {
  layer_ = layer;
  refresh();
}

void NeedModel::set_shows_words(bool shows) {
  shows_words_ = shows;
  refresh();
}

bool NeedModel::any_known() const {
  return std::any_of(cells_.begin(), cells_.end(),
                     [](const NeedCell& cell) { return !cell.is_total && cell.known; });
}

double NeedModel::widest_cell(const Type& type, double unit) const {
  double widest = 0;
  for (const NeedCell& shown : cells_) widest = std::max(widest, need_cell_width(shown, type, unit));
  return widest;
}

Qt::ItemFlags NeedModel::flags(const QModelIndex& index) const {
  if (!index.isValid()) return Qt::NoItemFlags;
  return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsEditable | Qt::ItemNeverHasChildren;
}

QString NeedModel::printed_text(int row, int column) const {
  const auto count = counts_of(open_.pattern(), row).at(static_cast<std::size_t>(column));
  if (!count) return {};
  return show_quantity(count_format(), open_.reader(), *count);
}

QVariant NeedModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rows_ || index.column() >= columns_) return {};
  const NeedCell& shown = cell(index.row(), index.column());
  switch (role) {
    case Qt::DisplayRole:
      return shown.count;
    case Qt::EditRole:
      return printed_text(index.row(), index.column());
    case Qt::AccessibleTextRole:
    case Qt::ToolTipRole:
      return shown.spoken;
    default:
      return {};
  }
}

QString NeedModel::row_name(int row) const {
  return is_total(row) ? tr("total")
                       : QString::fromStdString(open_.pattern().roles[static_cast<std::size_t>(row)].label);
}

QString NeedModel::problem_with(const QModelIndex& index, const QString& text) const {
  if (!index.isValid() || text.trimmed().isEmpty()) return {};
  if (is_size_list(text))
    return read_list_for_sizes(text, count_format(), open_.reader(), open_.pattern()).reason;
  const auto count = read_quantity(count_format(), open_.reader(), text);
  return count ? QString() : sentence_of(count.error());
}

bool NeedModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::EditRole || !index.isValid()) return false;
  const QString text = value.toString();
  if (!problem_with(index, text).isEmpty()) return false;
  const int row = index.row();
  const auto at = static_cast<std::size_t>(index.column());
  const ReaderStyle& reader = open_.reader();
  if (!is_size_list(text)) {
    const QString size = QString::fromStdString(open_.pattern().sizes[at].label);
    return !open_.apply(tr("printed count, %1 size %2").arg(row_name(row), size),
                        [&](Pattern& pattern) { counts_of(pattern, row).set(at, count_of(text, reader)); });
  }
  const ListForSizes list = read_list_for_sizes(text, count_format(), reader, open_.pattern());
  return !open_.apply(tr("printed counts, %1").arg(row_name(row)), [&](Pattern& pattern) {
    for (std::size_t size = 0; size < list.values.size(); ++size)
      counts_of(pattern, row).set(size, count_of(list.values[size], reader));
  });
}

QString NeedModel::paste(const QModelIndex& first, const QString& text) {
  if (!first.isValid() || text.trimmed().isEmpty()) return {};
  if (!text.trimmed().contains(QLatin1Char('\n')) && is_size_list(text)) {
    const QString problem = problem_with(first, text);
    if (problem.isEmpty()) setData(first, text, Qt::EditRole);
    return problem;
  }
  const PastedTable table = read_pasted_table(text, columns_);
  const auto row = static_cast<std::size_t>(first.row());
  if (row + table.size() > static_cast<std::size_t>(rows_))
    return tr("%1 rows do not fit from here; nothing was filled in.").arg(table.size());
  const std::size_t width = table.front().size();
  const std::size_t column =
      width == static_cast<std::size_t>(columns_) ? 0 : static_cast<std::size_t>(first.column());
  if (column + width > static_cast<std::size_t>(columns_))
    return tr("%1 values do not fit from this size on; nothing was filled in.").arg(width);
  for (const auto& line : table)
    for (const QString& text_of_cell : line)
      if (const QString problem = problem_with(first, text_of_cell); !problem.isEmpty()) return problem;
  const ReaderStyle& reader = open_.reader();
  const auto failed = open_.apply(tr("pasted printed counts"), [&](Pattern& pattern) {
    for (std::size_t i = 0; i < table.size(); ++i)
      for (std::size_t j = 0; j < width; ++j)
        counts_of(pattern, static_cast<int>(row + i)).set(column + j, count_of(table[i][j], reader));
  });
  return failed ? sentence_of(*failed) : QString();
}

QString NeedModel::copy_text(const QModelIndexList& indexes, bool lengths) const {
  std::map<int, std::map<int, QString>> rows;
  for (const QModelIndex& chosen : indexes) {
    const NeedCell& shown = cell(chosen.row(), chosen.column());
    rows[chosen.row()][chosen.column()] = lengths ? shown.length : shown.count;
  }
  QStringList lines;
  for (const auto& [row, columns] : rows) {
    QStringList cells;
    for (const auto& [column, text] : columns) cells << text;
    lines << cells.join(QLatin1Char('\t'));
  }
  return lines.join(QLatin1Char('\n'));
}

QVariant NeedModel::size_head(std::size_t size, int role) const {
  const Pattern& pattern = open_.pattern();
  switch (role) {
    case Qt::DisplayRole:
      return size_words(pattern, size);
    case MeasureRole:
      return size_measure(pattern, size, open_.reader());
    case OpensGroupRole:
      return pattern.sizes[size].opens_group;
    case Qt::AccessibleTextRole:
      return tr("size %1, %2")
          .arg(QString::fromStdString(pattern.sizes[size].label),
               size_measure(pattern, size, open_.reader()));
    default:
      return {};
  }
}

QVariant NeedModel::role_head(int row, int role) const {
  if (is_total(row)) return role == Qt::DisplayRole ? tr("All roles") : QVariant();
  const Role& colour = open_.pattern().roles[static_cast<std::size_t>(row)];
  const Yarn* yarn = open_.pattern().yarn(colour.yarn);
  switch (role) {
    case Qt::DisplayRole:
      return QString::fromStdString(colour.label);
    case ShadeRole:
      return role_title(colour).mid(static_cast<int>(QString::fromStdString(colour.label).size())).trimmed();
    case PutUpRole:
      if (!yarn) return tr("no yarn");
      if (!yarn->put_up.length) return tr("no put-up");
      return tr("%1 %2 %3")
          .arg(QString::fromUtf8(word_of(yarn->put_up.word).data()),
               length_figure(yarn->put_up.length->value, open_.reader()), length_unit(open_.reader()));
    case ChipRole:
      if (!colour.shade.lightness) return QColor();
      return shade_colour(colour.shade.lightness->value, colour.shade.a ? colour.shade.a->value : 0,
                          colour.shade.b ? colour.shade.b->value : 0);
    case Qt::AccessibleTextRole:
      return role_title(colour);
    default:
      return {};
  }
}

QVariant NeedModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (section < 0) return {};
  if (orientation == Qt::Horizontal)
    return section < columns_ ? size_head(static_cast<std::size_t>(section), role) : QVariant();
  return section < rows_ ? role_head(section, role) : QVariant();
}

}  // namespace skeinproof
