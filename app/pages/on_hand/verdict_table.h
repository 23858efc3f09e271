// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <QTableView>
#include <vector>

#include "app/document/reader_style.h"
#include "core/substitution/on_hand_verdict.h"

namespace skeinproof {

// The verdict on the yarn of one colour, apart from how it is drawn.
struct VerdictRow {
  RoleId role;
  QString colour, names;  // "CC3", "Ember handspun"
  QString word;           // "Not enough"
  QString short_or_over;  // "12.1 m short"
  QString because;        // the evidence that decides
  QString settled_by;     // the one fact that would settle it
  bool has_range = false;
  double low = 0, high = 0;            // of the need, m
  double have = 0;                     // m, before joins
  double axis_low = 0, axis_high = 1;  // m, the ends of the picture
  QString low_words, high_words, have_words;
  QString spoken;
};
std::vector<VerdictRow> verdict_rows(const std::vector<RoleOnHand>& verdicts, const ReaderStyle& reader);

class VerdictModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  enum Column { Colour, Words, Range, ColumnCount };
  using QAbstractTableModel::QAbstractTableModel;
  void show(std::vector<VerdictRow> rows);
  const std::vector<VerdictRow>& rows() const { return rows_; }

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  std::vector<VerdictRow> rows_;
};

// Enough, too close to call or not enough, colour by colour: the range of the need as an outlined band, what
// is on hand as a stroke right of it, inside it or left of it.
class VerdictTable : public QTableView {
  Q_OBJECT

 public:
  explicit VerdictTable(QWidget* parent = nullptr);
  void show_rows(std::vector<VerdictRow> rows);
  void set_empty_words(const QString& words);
  VerdictModel* verdicts() const { return model_; }
  RoleId current_role() const;
  QString as_text() const;

 signals:
  void role_chosen(std::uint32_t role);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  void share();

  VerdictModel* model_;
  QString empty_words_;
};

}  // namespace skeinproof
