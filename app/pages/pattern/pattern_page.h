// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/pages/finder.h"
#include "app/pages/page.h"
#include "app/widgets/part_form.h"

class QScrollArea;
class QStackedWidget;

namespace skeinproof {

class ListPane;
class MetresPane;
class PaneHeader;
class QuietLabel;
class SizeBar;
class StartPane;

// What the pattern is: title, wearer, sizes with their measurements, notions. Beside it the way in while it
// is empty, and the one question of metres from a weight.
class PatternPage : public Page {
  Q_OBJECT

 public:
  PatternPage(OpenPattern& open, QWidget* parent);
  ~PatternPage() override { take_down(); }

  void enter() override;
  bool go_to(std::uint32_t part) override;
  bool find_next(const QString& words) override;
  std::optional<Sheet> sheet() const override;

  SizeBar* sizes() const { return sizes_; }
  ListPane* lists() const { return lists_; }
  StartPane* start() const { return start_; }
  MetresPane* metres() const { return metres_; }
  TextField* title() const { return title_; }
  void show_metres(bool shown);
  QString cautions() const;

 private:
  QWidget* make_head();
  void refresh();
  void show_side();

  PartForm<Pattern> form_;
  TextField* title_ = nullptr;
  PaneHeader* head_;
  PaneHeader* caution_head_;
  QuietLabel* cautions_;
  SizeBar* sizes_;
  ListPane* lists_;
  QStackedWidget* side_;
  StartPane* start_;
  MetresPane* metres_;
  bool asks_metres_ = false;
  Finder finder_;
};

}  // namespace skeinproof
