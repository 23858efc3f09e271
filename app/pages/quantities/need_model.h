// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <QColor>
#include <vector>

#include "app/pages/quantities/need_cell.h"
#include "app/widgets/ink.h"

namespace skeinproof {

class OpenPattern;

// Roles by sizes, the last row all roles. Shows the open pattern's assessment in one layer; what is edited in
// a cell is the designer's printed count.
class NeedModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  // Of a column head: the measure under the size, whether a bracket opens. Of a row head: the shade, the
  // put-up, the colour of the chip (invalid = no lightness known).
  enum HeadRole { MeasureRole = Qt::UserRole + 1, OpensGroupRole, ShadeRole, PutUpRole, ChipRole };

  explicit NeedModel(OpenPattern& open, QObject* parent = nullptr);

  void refresh();  // after a change of the document or of the reader's style
  Layer layer() const { return layer_; }
  void set_layer(Layer layer);
  bool shows_words() const { return shows_words_; }
  void set_shows_words(bool shows);

  const NeedCell& cell(int row, int column) const {
    return cells_[static_cast<std::size_t>(row * columns_ + column)];
  }
  bool is_total(int row) const { return row == rows_ - 1; }
  bool any_known() const;
  double widest_cell(const Type& type, double unit) const;

  // Why a text is no printed count for this cell; empty where it can be taken. A list fills the row.
  QString problem_with(const QModelIndex& index, const QString& text) const;
  // Fills from `first` on what the clipboard holds, as one step; the reason where it cannot.
  QString paste(const QModelIndex& first, const QString& text);
  QString copy_text(const QModelIndexList& indexes, bool lengths) const;

  int rowCount(const QModelIndex& parent = {}) const override { return parent.isValid() ? 0 : rows_; }
  int columnCount(const QModelIndex& parent = {}) const override { return parent.isValid() ? 0 : columns_; }
  QVariant data(const QModelIndex& index, int role) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;

 private:
  QString printed_text(int row, int column) const;
  QString row_name(int row) const;
  QVariant size_head(std::size_t size, int role) const;
  QVariant role_head(int row, int role) const;

  OpenPattern& open_;
  Layer layer_ = Layer::planned;
  bool shows_words_ = true;
  int rows_ = 1;
  int columns_ = 0;
  std::vector<NeedCell> cells_;
};

}  // namespace skeinproof
