// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractItemModel>
#include <vector>

#include "app/document/reader_style.h"
#include "core/need/working.h"

namespace skeinproof {

// The working of one figure as a tree: step; how, and from what; figure; source.
class WorkingModel : public QAbstractItemModel {
  Q_OBJECT

 public:
  enum Column { StepColumn, HowColumn, FigureColumn, SourceColumn, ColumnCount };
  enum Role { GroundRole = Qt::UserRole + 1 };

  explicit WorkingModel(QObject* parent = nullptr) : QAbstractItemModel(parent) {}
  ~WorkingModel() override;

  void show(Step step, const ReaderStyle& reader);
  void clear();
  const Step* step(const QModelIndex& index) const;
  // The way from the figure down to where it stands on the ground most firmly: a scale reading before a
  // swatch, a swatch before a chart, and so on.
  QModelIndex ground() const;
  // "1,202.85 m" in the reader's numbers.
  QString figure_text(const Step& step) const;

  QModelIndex index(int row, int column, const QModelIndex& parent = {}) const override;
  QModelIndex parent(const QModelIndex& index) const override;
  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  struct Node {
    const Step* step = nullptr;
    std::size_t parent = 0;  // of nodes_; the first node is the invisible root
    int row = 0;
    std::vector<std::size_t> children;
  };
  void grow(std::size_t node);
  const Node& node_of(const QModelIndex& index) const;

  std::vector<Step> roots_;  // none or one
  std::vector<Node> nodes_{Node{}};
  ReaderStyle reader_;
};

}  // namespace skeinproof
