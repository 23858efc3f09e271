// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <vector>

#include "app/charts/grouped_bars.h"
#include "app/document/open_pattern.h"
#include "app/print/paper_block.h"
#include "core/substitution/candidate_facts.h"

class QButtonGroup;

namespace skeinproof {

class ChoiceField;

// The facts of the candidates that are shown, in every size.
using FactsBySize = std::vector<std::vector<CandidateFacts>>;

// Cost, mass, what is left over and how full the last skein of a colour is: by candidate in the chosen size,
// or by candidate and size.
class CandidateCharts : public QWidget {
  Q_OBJECT

 public:
  enum class Over { candidates, sizes };

  explicit CandidateCharts(OpenPattern& open, QWidget* parent = nullptr);

  void show_facts(FactsBySize facts);
  void follow_choice() { refresh(); }  // of another size
  void show_over(Over over);
  Over over() const { return over_; }
  const std::vector<GroupedBars*>& charts() const { return charts_; }
  std::vector<PaperBlock> paper_blocks() const;

 private:
  void refresh();

  OpenPattern& open_;
  FactsBySize facts_;
  Over over_ = Over::candidates;
  QButtonGroup* switch_;
  ChoiceField* role_;
  QWidget* key_;
  std::vector<GroupedBars*> charts_;
};

// What the charts show: cost, mass, left over, last skein of a role; in that order.
std::vector<BarsData> candidate_bars(const Pattern& pattern, const FactsBySize& facts,
                                     CandidateCharts::Over over, std::size_t chosen_size, RoleId role,
                                     const ReaderStyle& reader);

}  // namespace skeinproof
