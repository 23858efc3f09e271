// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <vector>

#include "app/document/open_pattern.h"
#include "app/widgets/figure_list.h"

namespace skeinproof {

class PartTable;

// Yarn weighed while the chosen size is on the needles, and what it says of the rest: what is left, whether
// it will do, where it would run out and where the course can still be changed.
class AsYouGoPane : public QWidget {
  Q_OBJECT

 public:
  explicit AsYouGoPane(OpenPattern& open, QWidget* parent = nullptr);

  PartTable* table() const { return table_; }
  FigureList* figures() const { return figures_; }

 signals:
  void says(const QString& message);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void refresh();
  void refresh_figures();

  OpenPattern& open_;
  PartTable* table_;
  FigureList* figures_;
};

// What the readings of a colour say for the chosen size; the first row says why where they say nothing.
std::vector<FigureRow> as_you_go_figures(const OpenPattern& open, RoleId role);

}  // namespace skeinproof
