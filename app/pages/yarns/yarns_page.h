// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/pages/finder.h"
#include "app/pages/page.h"
#include "core/base/id.h"

namespace skeinproof {

class FigureList;
class PaneHeader;
class PartTable;
class YarnForm;

// The yarns of the pattern with what follows from their bands, and the colours worked in them.
class YarnsPage : public Page {
  Q_OBJECT

 public:
  YarnsPage(OpenPattern& open, QWidget* parent);
  ~YarnsPage() override { take_down(); }

  void enter() override;
  bool go_to(std::uint32_t part) override;
  bool find_next(const QString& words) override;
  std::optional<Sheet> sheet() const override;

  PartTable* yarn_table() const { return yarns_; }
  PartTable* role_table() const { return roles_; }
  YarnForm* form() const { return form_; }
  FigureList* figures() const { return figures_; }

 private:
  QWidget* make_list_pane();
  QWidget* make_form_pane();
  QWidget* make_role_pane();
  QWidget* make_figure_pane();
  void show_yarn(YarnId id);
  void refresh();

  PartTable* yarns_ = nullptr;
  PartTable* roles_ = nullptr;
  YarnForm* form_ = nullptr;
  FigureList* figures_ = nullptr;
  PaneHeader* form_head_ = nullptr;
  PaneHeader* role_head_ = nullptr;
  PaneHeader* figure_head_ = nullptr;
  Finder finder_;
};

}  // namespace skeinproof
