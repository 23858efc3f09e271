// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractItemModel>
#include <cstdint>
#include <vector>

#include "core/pattern/pattern.h"

namespace skeinproof {

class OpenPattern;

// The pieces of the open pattern with their sections and edges. Names and copies are edited in place; each
// edit is a step of undo.
class PieceTreeModel : public QAbstractItemModel {
  Q_OBJECT

 public:
  enum Column { name, fabric, yarn, copies, rounds, stitches, column_count };

  PieceTreeModel(OpenPattern& open, QObject* parent);

  std::uint32_t part_at(const QModelIndex& index) const;  // 0 where there is none
  QModelIndex index_of(std::uint32_t part) const;

  QModelIndex index(int row, int column, const QModelIndex& parent = {}) const override;
  QModelIndex parent(const QModelIndex& child) const override;
  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;

 signals:
  void refused(const QString& why);

 private:
  struct PieceRows {
    std::uint32_t piece = 0;
    std::vector<std::uint32_t> parts;
    bool operator==(const PieceRows&) const = default;
  };
  std::vector<PieceRows> rows_now() const;
  void follow();
  QString shown(const QModelIndex& index) const;
  QString spoken(const QModelIndex& index) const;

  OpenPattern& open_;
  std::vector<PieceRows> rows_;
};

}  // namespace skeinproof
