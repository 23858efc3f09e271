// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

#include "app/document/open_pattern.h"
#include "core/substitution/candidate_facts.h"

namespace skeinproof {

class FigureList;
class LineField;
class PartTable;

// What must, should and need not hold, the budget, and which candidates meet it. Nothing is weighed against
// anything.
class WishesPane : public QWidget {
  Q_OBJECT

 public:
  explicit WishesPane(OpenPattern& open, QWidget* parent = nullptr);

  void show_facts(const std::vector<CandidateFacts>& facts);
  LineField* budget() const { return budget_; }
  PartTable* wishes() const { return wishes_; }
  FigureList* standing() const { return standing_; }

 signals:
  void says(const QString& message);

 private:
  QString met_by(std::size_t wish) const;
  void refresh();

  OpenPattern& open_;
  std::vector<CandidateFacts> facts_;
  LineField* budget_;
  PartTable* wishes_;
  FigureList* standing_;
};

}  // namespace skeinproof
