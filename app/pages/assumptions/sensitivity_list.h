// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractListModel>
#include <QListView>
#include <vector>

#include "app/document/reader_style.h"
#include "core/need/assumptions.h"

namespace skeinproof {

// What one constant does to the needs, as a row of the picture: to planned lengths, else to upper bounds,
// else to chances, else to what the printed counts leave open.
enum class Moves { planned, upper_bound, chance, printed_counts };
struct SensitivityRow {
  QString key, name;
  Moves moves = Moves::planned;
  double lower = 0, higher = 0;  // share of what moves most, with its sign
  QString figures;               // "−4.2 to +4.0 %"
  QString counts;                // "three counts", or nothing
  QString words() const { return counts.isEmpty() ? figures : figures + QStringLiteral(", ") + counts; }
};
std::vector<SensitivityRow> sensitivity_rows(const std::vector<Sensitivity>& ranked,
                                             const ReaderStyle& reader);

class SensitivityModel : public QAbstractListModel {
  Q_OBJECT

 public:
  explicit SensitivityModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}
  void show(std::vector<SensitivityRow> rows);
  const std::vector<SensitivityRow>& rows() const { return rows_; }
  double widest() const { return widest_; }

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;

 private:
  std::vector<SensitivityRow> rows_;
  double widest_ = 0;
};

// Constants under each other, the one that moves most first: a bar to both sides of where the need stands
// now, filled for planned lengths, outlined where only bounds or chances move.
class SensitivityList : public QListView {
  Q_OBJECT

 public:
  explicit SensitivityList(QWidget* parent = nullptr);
  SensitivityModel* sensitivity() const { return model_; }
  void show_rows(std::vector<SensitivityRow> rows);
  void choose(const QString& key);

 signals:
  void chosen(const QString& key);

 protected:
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

 private:
  SensitivityModel* model_;
};

}  // namespace skeinproof
