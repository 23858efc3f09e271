// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/shelf_model.h"

#include <QFont>
#include <array>

#include "app/widgets/quantity_text.h"

namespace skeinproof {
namespace {

// A column shows a field, or what the search worked out, and orders the hits its own way.
struct ShelfViewColumn {
  const char* title;
  std::optional<ShelfField> field;
  ShelfOrder order;
};
constexpr std::array columns = {
    ShelfViewColumn{QT_TRANSLATE_NOOP("ShelfModel", "Yarn"), ShelfField::name, ShelfOrder::name},
    ShelfViewColumn{QT_TRANSLATE_NOOP("ShelfModel", "Shade"), ShelfField::shade, ShelfOrder::name},
    ShelfViewColumn{QT_TRANSLATE_NOOP("ShelfModel", "Thickness"), std::nullopt, ShelfOrder::thickness},
    ShelfViewColumn{QT_TRANSLATE_NOOP("ShelfModel", "Fibres"), ShelfField::composition, ShelfOrder::fibre},
    ShelfViewColumn{QT_TRANSLATE_NOOP("ShelfModel", "Put-up"), ShelfField::put_up, ShelfOrder::weight},
    ShelfViewColumn{QT_TRANSLATE_NOOP("ShelfModel", "Care"), ShelfField::care, ShelfOrder::care},
    ShelfViewColumn{QT_TRANSLATE_NOOP("ShelfModel", "Surface"), ShelfField::surface, ShelfOrder::surface},
    ShelfViewColumn{QT_TRANSLATE_NOOP("ShelfModel", "Structure"), ShelfField::structure,
                    ShelfOrder::structure},
    ShelfViewColumn{QT_TRANSLATE_NOOP("ShelfModel", "Colouring"), ShelfField::colouring,
                    ShelfOrder::colouring},
    ShelfViewColumn{QT_TRANSLATE_NOOP("ShelfModel", "Price a skein"), ShelfField::price, ShelfOrder::price},
    ShelfViewColumn{QT_TRANSLATE_NOOP("ShelfModel", "Owned"), ShelfField::owned, ShelfOrder::owned},
    ShelfViewColumn{QT_TRANSLATE_NOOP("ShelfModel", "Place"), ShelfField::place, ShelfOrder::name},
    ShelfViewColumn{QT_TRANSLATE_NOOP("ShelfModel", "Why"), std::nullopt, ShelfOrder::rule},
};
const ShelfViewColumn& column_at(int column) { return columns[static_cast<std::size_t>(column)]; }

QString from(const std::string& words) { return QString::fromStdString(words); }

QString thickness_text(const ShelfHit& hit) {
  if (!hit.tex) return {};
  if (!hit.thickness_pct) return ShelfModel::tr("%1 tex").arg(from(show_number(*hit.tex, 0)));
  const std::string figure = show_short(*hit.thickness_pct, 0);
  return ShelfModel::tr("%1 %").arg(from((*hit.thickness_pct >= 0.5 ? "+" : "") + figure));
}

}  // namespace

ShelfModel::ShelfModel(QObject* parent) : QAbstractTableModel(parent) {}

void ShelfModel::show(std::shared_ptr<const ShelfFound> found) {
  beginResetModel();
  found_ = std::move(found);
  hits_ = found_ ? found_->answer.hits : std::vector<ShelfHit>{};
  edited_.clear();
  bad_texts_.clear();
  endResetModel();
}

const ShelfYarn& ShelfModel::entry(std::size_t index) const {
  const auto edited = edited_.find(index);
  return edited != edited_.end() ? edited->second : found_->index->entries()[index];
}

int ShelfModel::column_of(ShelfField field) const {
  for (std::size_t i = 0; i < columns.size(); ++i)
    if (columns[i].field == field) return static_cast<int>(i);
  return -1;
}

int ShelfModel::reason_column() const { return static_cast<int>(columns.size()) - 1; }

int ShelfModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(hits_.size());
}
int ShelfModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(columns.size());
}

QString ShelfModel::text_at(const QModelIndex& index) const {
  const ShelfHit& hit = hits_[static_cast<std::size_t>(index.row())];
  const ShelfViewColumn& column = column_at(index.column());
  if (index.column() == reason_column()) return from(found_->index->reason(found_->question, hit));
  if (!column.field) return thickness_text(hit);
  const QString first = from(field_text(entry(hit.first), *column.field));
  if (hit.holding == ShelfHolding::single) return first;
  const bool of_yarn = column.field == ShelfField::name;
  if (hit.holding == ShelfHolding::doubled) return of_yarn ? tr("%1, held double").arg(first) : first;
  const QString second = from(field_text(entry(hit.second), *column.field));
  if (of_yarn) return tr("%1 with %2").arg(first, second);
  return first == second ? first : tr("%1 | %2").arg(first, second);
}

QVariant ShelfModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const auto bad = bad_texts_.find({hits_[static_cast<std::size_t>(index.row())].first, index.column()});
  switch (role) {
    case Qt::DisplayRole:
    case Qt::EditRole:
      return bad != bad_texts_.end() ? bad->second.text : text_at(index);
    case Qt::ToolTipRole:
    case Qt::AccessibleDescriptionRole:
      return bad != bad_texts_.end() ? bad->second.reason : text_at(index);
    case Qt::FontRole:
      if (bad != bad_texts_.end()) {
        QFont font;
        font.setUnderline(true);
        return font;
      }
      return {};
    default:
      return {};
  }
}

QVariant ShelfModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  return tr(column_at(section).title);
}

Qt::ItemFlags ShelfModel::flags(const QModelIndex& index) const {
  Qt::ItemFlags flags = QAbstractTableModel::flags(index);
  if (!index.isValid()) return flags;
  const bool one = hits_[static_cast<std::size_t>(index.row())].holding == ShelfHolding::single;
  if (one && column_at(index.column()).field) flags |= Qt::ItemIsEditable;
  return flags;
}

bool ShelfModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  const ShelfViewColumn& column = column_at(index.column());
  if (role != Qt::EditRole || !column.field) return false;
  const std::size_t at = hits_[static_cast<std::size_t>(index.row())].first;
  const std::pair key{at, index.column()};
  const QString text = value.toString();
  ShelfYarn changed = entry(at);
  if (const auto read = read_field(changed, *column.field, text.toStdString()); !read) {
    const QString reason = sentence_of(read.error());
    bad_texts_[key] = {text, reason};
    emit dataChanged(index, index);
    emit says(reason);
    return false;
  }
  bad_texts_.erase(key);
  const bool other = !(changed == entry(at));
  if (other) edited_[at] = std::move(changed);
  emit dataChanged(this->index(index.row(), 0), this->index(index.row(), columnCount() - 1));
  if (other) emit entry_changed(at);
  return true;
}

void ShelfModel::sort(int column, Qt::SortOrder order) {
  if (!found_ || !found_->index || column < 0 || column >= columnCount()) return;
  emit layoutAboutToBeChanged({}, QAbstractItemModel::VerticalSortHint);
  const auto key = [this](int row) {
    const ShelfHit& hit = hits_[static_cast<std::size_t>(row)];
    return std::make_tuple(hit.holding, hit.first, hit.second);
  };
  const QModelIndexList before = persistentIndexList();
  std::map<decltype(key(0)), int> rows;
  std::vector<decltype(key(0))> kept;
  for (const QModelIndex& index : before) kept.push_back(key(index.row()));
  found_->index->order(hits_, column_at(column).order, order == Qt::DescendingOrder);
  if (!kept.empty())
    for (int row = 0; row < rowCount(); ++row) rows[key(row)] = row;
  QModelIndexList after;
  for (qsizetype i = 0; i < before.size(); ++i)
    after << index(rows.at(kept[static_cast<std::size_t>(i)]), before[i].column());
  changePersistentIndexList(before, after);
  emit layoutChanged({}, QAbstractItemModel::VerticalSortHint);
}

}  // namespace skeinproof
