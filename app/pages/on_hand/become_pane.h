// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <optional>
#include <vector>

#include "app/document/open_pattern.h"
#include "app/widgets/figure_list.h"
#include "core/substitution/could_become.h"

class QCheckBox;

namespace skeinproof {

class PartTable;
class QuantityField;

// What yarn on hand could become, over all sizes: the rules of sharing it out, the parts that may be worked
// in a yarn of their own, and the best size for each way of sharing.
class BecomePane : public QWidget {
  Q_OBJECT

 public:
  explicit BecomePane(OpenPattern& open, QWidget* parent = nullptr);

  void show_result(const Expected<CouldBecome>& result);
  FigureList* figures() const { return figures_; }
  QCheckBox* exchange() const { return exchange_; }
  QuantityField* yarns_a_role() const { return yarns_; }
  PartTable* given_parts() const { return given_; }

 signals:
  void says(const QString& message);

 private:
  PartTable* make_given_parts();
  void refresh();

  OpenPattern& open_;
  QCheckBox* exchange_;
  QuantityField* yarns_;
  QuantityField* thickness_;
  PartTable* given_;
  FigureList* figures_;
};

// The best size first, then every loosening of the rules, then what to buy for the next size up.
std::vector<FigureRow> become_figures(const Pattern& pattern, const Expected<CouldBecome>& result);

}  // namespace skeinproof
