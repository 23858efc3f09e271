// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <QTableView>

#include "app/pages/candidates/candidate_rows.h"

namespace skeinproof {

class CandidateModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  using QAbstractTableModel::QAbstractTableModel;
  void show(CandidateView view);
  const CandidateView& view() const { return view_; }

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;

 private:
  CandidateView view_;
};

// The pattern's own yarn and the candidates as columns; facts above a heavy rule, consequences below. What a
// row is of stands frozen at the left. Enter on a consequence shows all of them with their reasons, on any
// other cell it leads to the candidate.
class CandidateTable : public QTableView {
  Q_OBJECT

 public:
  explicit CandidateTable(QWidget* parent = nullptr);

  void show_view(CandidateView view, const QString& corner, const QString& corner_note);
  CandidateModel* candidates() const { return model_; }
  CandidateId current_candidate() const;  // none = the pattern's own, or nothing
  void choose_candidate(CandidateId id);
  void show_from_top(CandidateId id);
  QString as_text() const;  // tab-separated
  void set_empty_words(const QString& words);

 signals:
  void wants_all_consequences();
  void wants_candidate(std::uint32_t candidate);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void updateGeometries() override;

 private:
  void dress();
  void share_width();
  void share_height();
  void activate_current();

  CandidateModel* model_;
  QWidget* corner_;
  QString corner_words_, corner_note_, empty_words_;
};

}  // namespace skeinproof
