// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/piece_tree_model.h"

#include <QFont>

#include "app/document/open_pattern.h"
#include "app/pages/pieces/piece_words.h"
#include "app/widgets/quantity_text.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {

PieceTreeModel::PieceTreeModel(OpenPattern& open, QObject* parent)
    : QAbstractItemModel(parent), open_(open), rows_(rows_now()) {
  connect(&open_, &OpenPattern::changed, this, &PieceTreeModel::follow);
  connect(&open_, &OpenPattern::reader_changed, this, &PieceTreeModel::follow);
}

std::vector<PieceTreeModel::PieceRows> PieceTreeModel::rows_now() const {
  std::vector<PieceRows> rows;
  for (const Piece& piece : open_.pattern().pieces) {
    PieceRows& row = rows.emplace_back();
    row.piece = piece.id.value;
    for (const Section& section : piece.sections) row.parts.push_back(section.id.value);
    for (const Edge& edge : piece.edges) row.parts.push_back(edge.id.value);
  }
  return rows;
}

void PieceTreeModel::follow() {
  auto now = rows_now();
  if (now != rows_) {
    beginResetModel();
    rows_ = std::move(now);
    endResetModel();
    return;
  }
  emit headerDataChanged(Qt::Horizontal, stitches, stitches);
  if (rows_.empty()) return;
  emit dataChanged(index(0, 0), index(static_cast<int>(rows_.size()) - 1, column_count - 1));
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const QModelIndex piece = index(static_cast<int>(i), 0);
    if (!rows_[i].parts.empty())
      emit dataChanged(index(0, 0, piece),
                       index(static_cast<int>(rows_[i].parts.size()) - 1, column_count - 1, piece));
  }
}

// A top row carries 0, a row inside a piece the place of its piece from 1.
QModelIndex PieceTreeModel::index(int row, int column, const QModelIndex& parent) const {
  if (row < 0 || column < 0 || column >= column_count || row >= rowCount(parent)) return {};
  return createIndex(row, column, parent.isValid() ? static_cast<quintptr>(parent.row()) + 1 : quintptr{0});
}

QModelIndex PieceTreeModel::parent(const QModelIndex& child) const {
  if (!child.isValid() || child.internalId() == 0) return {};
  return createIndex(static_cast<int>(child.internalId()) - 1, 0, quintptr{0});
}

int PieceTreeModel::rowCount(const QModelIndex& parent) const {
  if (!parent.isValid()) return static_cast<int>(rows_.size());
  if (parent.internalId() != 0 || parent.column() > 0) return 0;
  return static_cast<int>(rows_[static_cast<std::size_t>(parent.row())].parts.size());
}

int PieceTreeModel::columnCount(const QModelIndex&) const { return column_count; }

std::uint32_t PieceTreeModel::part_at(const QModelIndex& index) const {
  if (!index.isValid()) return 0;
  const auto row = static_cast<std::size_t>(index.row());
  if (index.internalId() == 0) return row < rows_.size() ? rows_[row].piece : 0;
  const auto& parts = rows_[index.internalId() - 1].parts;
  return row < parts.size() ? parts[row] : 0;
}

QModelIndex PieceTreeModel::index_of(std::uint32_t part) const {
  if (part == 0) return {};
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const QModelIndex piece = index(static_cast<int>(i), 0);
    if (rows_[i].piece == part) return piece;
    for (std::size_t k = 0; k < rows_[i].parts.size(); ++k)
      if (rows_[i].parts[k] == part) return index(static_cast<int>(k), 0, piece);
  }
  return {};
}

Qt::ItemFlags PieceTreeModel::flags(const QModelIndex& index) const {
  const bool in_place = index.column() == name || index.column() == copies;
  return QAbstractItemModel::flags(index) | (in_place ? Qt::ItemIsEditable : Qt::NoItemFlags);
}

QString PieceTreeModel::shown(const QModelIndex& index) const {
  const Pattern& pattern = open_.pattern();
  const PiecePlace place = find_in_pieces(pattern, part_at(index));
  if (!place) return {};
  const std::size_t size = open_.chosen_size_index();
  const bool whole_piece = place.section == nullptr && place.edge == nullptr;
  switch (index.column()) {
    case name:
      return text_of(place.section != nullptr ? place.section->name
                     : place.edge != nullptr  ? place.edge->name
                                              : place.piece->name);
    case fabric:
      if (place.section != nullptr) return fabric_words(pattern, place.section->fabric);
      return place.edge != nullptr ? text_of(std::string(word_of(place.edge->kind))) : QString();
    case yarn:
      if (place.section != nullptr) return yarn_words(pattern, *place.section);
      return place.edge != nullptr ? role_words(pattern, place.edge->role) : QString();
    case copies:
      return whole_piece && !(place.piece->sections.empty() && place.piece->edges.empty())
                 ? QString()
                 : QString::number(place.piece->copies);
    case rounds:
      return place.section != nullptr ? rounds_words(pattern, *place.section, size, open_.reader())
                                      : QString();
    case stitches:
      if (place.section != nullptr) return stitches_words(pattern, *place.section, size, open_.reader());
      return place.edge != nullptr ? edge_words(*place.edge, size, open_.reader()) : QString();
    default:
      return {};
  }
}

QString PieceTreeModel::spoken(const QModelIndex& index) const {
  const QString text = shown(index);
  const QString head = headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString();
  return index.column() == name ? text : head + QLatin1Char(' ') + (text.isEmpty() ? tr("nothing") : text);
}

QVariant PieceTreeModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const bool whole_piece = index.internalId() == 0;
  switch (role) {
    case Qt::DisplayRole:
      return shown(index);
    case Qt::EditRole: {
      if (index.column() != copies) return shown(index);
      const PiecePlace place = find_in_pieces(open_.pattern(), part_at(index));
      return place ? QString::number(place.piece->copies) : QString();
    }
    case Qt::AccessibleTextRole:
      return spoken(index);
    case Qt::FontRole:
      if (whole_piece) {
        QFont font;
        font.setWeight(QFont::DemiBold);
        return font;
      }
      return {};
    case Qt::TextAlignmentRole:
      return QVariant::fromValue((index.column() >= copies ? Qt::AlignRight : Qt::AlignLeft) |
                                 Qt::AlignVCenter);
    default:
      return {};
  }
}

QVariant PieceTreeModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  if (role == Qt::TextAlignmentRole)
    return QVariant::fromValue((section >= copies ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
  if (role != Qt::DisplayRole) return {};
  const Pattern& pattern = open_.pattern();
  switch (section) {
    case name:
      return tr("Piece");
    case fabric:
      return tr("Fabric");
    case yarn:
      return tr("Yarn");
    case copies:
      return tr("Copies");
    case rounds:
      return tr("Rounds");
    default:
      return tr("Stitches, %1").arg(text_of(pattern.sizes[open_.chosen_size_index()].label));
  }
}

bool PieceTreeModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  const std::uint32_t part = part_at(index);
  if (role != Qt::EditRole || part == 0) return false;
  const QString text = value.toString().trimmed();
  if (index.column() == name) {
    const std::string name_text = text.toStdString();
    open_.apply(tr("name %1").arg(text),
                [&](Pattern& pattern) { rename_in_pieces(pattern, part, name_text); });
    return true;
  }
  const auto read = read_quantity(QuantityFormat::number(1, 1000, "copies"), open_.reader(), text);
  if (!read || read->value != static_cast<int>(read->value)) {
    emit refused(read ? tr("Found %1, expected whole copies.").arg(text) : sentence_of(read.error()));
    return false;
  }
  const PiecePlace place = find_in_pieces(open_.pattern(), part);
  if (!place) return false;
  const PieceId piece = place.piece->id;
  open_.apply(tr("copies of %1, %2").arg(text_of(place.piece->name), text),
              [&](Pattern& pattern) { find_piece(pattern, piece)->copies = static_cast<int>(read->value); });
  return true;
}

}  // namespace skeinproof
