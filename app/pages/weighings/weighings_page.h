// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/pages/finder.h"
#include "app/pages/page.h"
#include "core/base/id.h"

class QTabWidget;

namespace skeinproof {

class AlteredPane;
class AsYouGoPane;
class FigureList;
class PaneHeader;
class PartTable;
class WeighingForm;

// Samples weighed colour by colour, and what they say about the loops and the needs of every size.
class WeighingsPage : public Page {
  Q_OBJECT

 public:
  WeighingsPage(OpenPattern& open, QWidget* parent);
  ~WeighingsPage() override { take_down(); }

  QString attention() const override;
  void enter() override;
  bool go_to(std::uint32_t part) override;
  bool find_next(const QString& words) override;
  std::optional<Sheet> sheet() const override;

  PartTable* weighing_table() const { return weighings_; }
  PartTable* readings() const { return readings_; }
  WeighingForm* form() const { return form_; }
  FigureList* figures() const { return figures_; }
  AsYouGoPane* as_you_go() const { return as_you_go_; }
  AlteredPane* altered() const { return altered_; }

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  QWidget* make_list_pane();
  QWidget* make_form_pane();
  QWidget* make_reading_pane();
  QWidget* make_figure_pane();
  void show_weighing(WeighingId id);
  void refresh();
  void refresh_figures();
  void add_as_you_go(Sheet& sheet) const;

  PartTable* weighings_ = nullptr;
  PartTable* readings_ = nullptr;
  WeighingForm* form_ = nullptr;
  FigureList* figures_ = nullptr;
  AsYouGoPane* as_you_go_ = nullptr;
  AlteredPane* altered_ = nullptr;
  QTabWidget* tabs_ = nullptr;
  PaneHeader* form_head_ = nullptr;
  PaneHeader* reading_head_ = nullptr;
  PaneHeader* figure_head_ = nullptr;
  QString attention_;
  Finder finder_;
};

}  // namespace skeinproof
