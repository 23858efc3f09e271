// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/pages/page.h"
#include "app/pages/quantities/need_cell.h"
#include "core/need/evidence.h"

class QButtonGroup;
class QCheckBox;
class QLabel;
class QSplitter;
class QStackedWidget;
class QTabWidget;
class QToolButton;

namespace skeinproof {

class ChoicesPanel;
class EvidenceTable;
class NeedCurve;
class NeedGrid;
class NeedModel;
class PaneHeader;
class StackedLengths;
class WorkingPane;

// What has to be bought, role by role and size by size: the grid, the working of the chosen figure beside it,
// the need curve and the evidence under it in the same columns.
class QuantitiesPage : public Page {
  Q_OBJECT

 public:
  QuantitiesPage(OpenPattern& open, QWidget* parent);
  ~QuantitiesPage() override;

  QString attention() const override;
  void enter() override;
  bool go_to(std::uint32_t part) override;
  bool find_next(const QString& words) override;
  std::optional<Sheet> sheet() const override;
  std::vector<PaperBlock> paper_blocks(double width) const override;
  PicturesStand pictures_stand() const override { return PicturesStand::before_the_words; }

  NeedGrid* grid() const { return grid_; }
  NeedModel* model() const { return model_; }
  WorkingPane* working() const { return working_; }
  NeedCurve* curve() const { return curve_; }
  void choose_layer(Layer layer);

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void showEvent(QShowEvent* event) override;

 private:
  // How the parts stand, by the width there is at the text size in force.
  enum class Arrangement { none, small, medium, large };

  QWidget* make_bar();
  QWidget* make_grid_part();
  QWidget* make_lower_part();
  void connect_parts();
  void refresh();      // after a change of the document
  void show_figure();  // of the current cell
  void show_charts();
  void show_chosen_layer();
  void show_empty_state();
  void current_moved(int row, int column);
  void align_charts();
  void arrange();
  void share_height();
  NeedCellInput input() const;
  std::size_t current_role() const;
  std::size_t current_size() const;
  const SizeNeed* current_need() const;
  const RoleEvidence& current_evidence();  // gathered on first use after a change
  void show_evidence();
  QString chance_words();
  void say_cell();

  NeedModel* model_;
  NeedGrid* grid_;
  QButtonGroup* layers_;
  QToolButton* choices_button_;
  ChoicesPanel* choices_;
  QCheckBox* words_;
  QSplitter* across_;
  QSplitter* down_;
  QWidget* grid_part_;
  QStackedWidget* lower_;
  QTabWidget* tabs_;
  QWidget* empty_;
  QLabel* empty_title_;
  NeedCurve* curve_;
  StackedLengths* by_piece_;
  StackedLengths* by_role_;
  QWidget* evidence_part_;
  PaneHeader* evidence_head_;
  EvidenceTable* evidence_;
  WorkingPane* working_;
  Arrangement arrangement_ = Arrangement::none;
  std::size_t chosen_size_ = 0;
  std::vector<RoleEvidence> evidence_gathered_;
  quint64 gathered_state_ = 0;  // of the open pattern
  QString attention_;
};

}  // namespace skeinproof
