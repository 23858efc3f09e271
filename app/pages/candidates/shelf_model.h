// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <map>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "core/substitution/shelf_fields.h"
#include "core/substitution/shelf_search.h"

namespace skeinproof {

// What a search of the shelf found, with all it rests on.
struct ShelfFound {
  std::shared_ptr<const ShelfIndex> index;
  ShelfQuestion question;
  ShelfAnswer answer;
  std::optional<Error> error;  // of the file, or of the question
  int writes = 0;              // how often the shelf had been written to when it was asked
};

// Hits of the shelf x columns. Fields of a single entry are typed over in place; what cannot be read stays in
// its cell with the reason until it is put right.
class ShelfModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  explicit ShelfModel(QObject* parent = nullptr);

  void show(std::shared_ptr<const ShelfFound> found);
  const ShelfFound* found() const { return found_.get(); }
  const std::vector<ShelfHit>& hits() const { return hits_; }
  // An entry as it is now, with what was typed since the search.
  const ShelfYarn& entry(std::size_t index) const;
  // The column that shows a field; -1 where none does.
  int column_of(ShelfField field) const;
  int reason_column() const;

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;
  void sort(int column, Qt::SortOrder order) override;

 signals:
  void entry_changed(std::size_t index);
  void says(const QString& message);

 private:
  QString text_at(const QModelIndex& index) const;

  std::shared_ptr<const ShelfFound> found_;
  std::vector<ShelfHit> hits_;
  std::map<std::size_t, ShelfYarn> edited_;
  struct BadText {
    QString text, reason;
  };
  std::map<std::pair<std::size_t, int>, BadText> bad_texts_;
};

}  // namespace skeinproof
