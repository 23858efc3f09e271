// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <QTableView>
#include <vector>

#include "app/charts/size_chart.h"
#include "app/document/reader_style.h"
#include "core/need/evidence.h"

namespace skeinproof {

// One kind of evidence for one figure, lengths in metres.
struct EvidenceRow {
  QString kind, because;
  std::optional<double> planned;  // counts give bounds alone
  double low = 0, high = 0;
  QString planned_text, range_text, skeins_text;
};
struct EvidenceData {
  std::vector<EvidenceRow> rows;
  std::optional<double> skein;
  double from = 0, to = 1;       // of the picture
  std::vector<ScaleMark> marks;  // whole skeins within it
};
EvidenceData evidence_of(const Pattern& pattern, const RoleEvidence& evidence, const SizeNeed& need,
                         std::size_t size_index, const ReaderStyle& reader);

class EvidenceModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  enum Column { KindColumn, PictureColumn, PlannedColumn, RangeColumn, SkeinsColumn, ColumnCount };
  explicit EvidenceModel(QObject* parent = nullptr) : QAbstractTableModel(parent) {}
  void show(EvidenceData data);
  const EvidenceData& shown() const { return data_; }

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  EvidenceData data_;
};

// The ways to one figure under each other: the range of each as an outlined band with a stroke at its best
// figure, on a scale of whole skeins.
class EvidenceTable : public QTableView {
  Q_OBJECT

 public:
  explicit EvidenceTable(QWidget* parent = nullptr);
  void show_evidence(EvidenceData shown);
  EvidenceModel* evidence() const { return model_; }
  QSize sizeHint() const override;

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void re_ink();
  void share_width();

  EvidenceModel* model_;
};

}  // namespace skeinproof
