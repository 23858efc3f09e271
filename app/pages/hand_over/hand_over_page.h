// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>

#include "app/pages/finder.h"
#include "app/pages/page.h"
#include "core/manuscript/write_block.h"

class QComboBox;
class QListWidget;
class QPlainTextEdit;
class QTabWidget;

namespace skeinproof {

class ChoiceField;
class HouseStyleForm;
class PaneHeader;

// The finished block in the house style, the table of quantities, and what they still miss; copied, saved,
// printed.
class HandOverPage : public Page {
  Q_OBJECT

 public:
  // Asks for a path to save to or, where `saving` is false, to open; empty where the person gave up.
  using PathQuestion =
      std::function<QString(QWidget* parent, bool saving, const QString& suggestion, const QString& filter)>;

  HandOverPage(OpenPattern& open, QWidget* parent);
  ~HandOverPage() override { take_down(); }
  void set_path_question(PathQuestion question) { ask_path_ = std::move(question); }

  QString attention() const override;
  void enter() override;
  bool find_next(const QString& words) override;
  std::optional<Sheet> sheet() const override;

  QString block_text() const;

 private:
  enum class Shown { block, quantities };
  QWidget* make_style_pane();
  QWidget* make_block_pane();
  void refresh();
  void refresh_styles();
  void refresh_missing(const std::vector<MissingFact>& missing);
  Shown shown() const;
  void copy();
  void save_as();
  void add_style();
  void erase_style();
  void choose_style(std::uint32_t index);
  void carry_style_out();
  void bring_style_in();
  void say_failure(const Error& error);

  PathQuestion ask_path_;
  ChoiceField* style_choice_ = nullptr;
  PaneHeader* block_head_ = nullptr;
  QTabWidget* tabs_ = nullptr;
  QPlainTextEdit* block_ = nullptr;
  QPlainTextEdit* quantities_ = nullptr;
  QListWidget* missing_ = nullptr;
  PaneHeader* missing_head_ = nullptr;
  std::vector<MissingFact> missing_facts_;
  Finder finder_;
};

}  // namespace skeinproof
