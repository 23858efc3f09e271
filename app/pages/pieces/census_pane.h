// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QScrollArea>

#include "app/pages/pieces/chart_facts.h"

class QLabel;
class QStandardItemModel;
class QTableView;

namespace skeinproof {

class OpenPattern;
class PaneHeader;
class SharePicture;

// What the chosen chart says, following every stroke: stitches worked and passed, yarn a repeat, shares,
// where colours touch, and the chosen round.
class CensusPane : public QWidget {
  Q_OBJECT

 public:
  explicit CensusPane(OpenPattern& open, QWidget* parent = nullptr);

  // A chart as it is on the screen; null for none.
  void show_chart(const Chart* chart, const ChartCensus& census, FabricId fabric);
  void show_round(std::size_t round);
  QString text() const;  // all of it, as copied
  QString round_note() const;
  QTableView* colours() const { return colours_; }
  QTableView* touches() const { return touches_; }

 signals:
  void says(const QString& message);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void fill();
  void fill_colours();
  void fill_touches();

  OpenPattern& open_;
  PaneHeader* repeat_head_;
  PaneHeader* touch_head_;
  PaneHeader* round_head_;
  QTableView* colours_;
  QTableView* touches_;
  QStandardItemModel* colours_model_;
  QStandardItemModel* touches_model_;
  SharePicture* shares_;
  QLabel* share_key_;
  QLabel* missing_;
  QLabel* note_;
  QLabel* working_;
  QLabel* caution_;
  QWidget* body_;
  QLabel* empty_;
  std::optional<Chart> chart_;
  ChartCensus census_;
  FabricId fabric_;
  ChartFacts facts_;
  std::size_t round_ = 0;
};

}  // namespace skeinproof
