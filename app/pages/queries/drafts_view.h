// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <memory>
#include <optional>

#include "app/document/latest_job.h"
#include "app/document/open_pattern.h"
#include "core/review/compare_drafts.h"
#include "core/sheets/sheet.h"

class QPlainTextEdit;
class QStackedWidget;
class QTreeWidget;

namespace skeinproof {

class ChoiceField;
class QuietLabel;

// Two drafts beside each other: what of their statements changed, what hangs on it and did not move, which
// findings opened, closed and stayed. Or the submitted block against the one the house would print, word by
// word. Compared on a thread of its own, and only while it is shown.
class DraftsView : public QWidget {
  Q_OBJECT

 public:
  explicit DraftsView(OpenPattern& open, QWidget* parent = nullptr);

  // As printed; none before anything was compared.
  std::optional<Sheet> sheet(const std::string& date) const;
  bool is_busy() const { return job_.is_busy(); }
  QTreeWidget* table() const { return table_; }
  QPlainTextEdit* words() const { return words_; }
  ChoiceField* earlier() const { return earlier_; }
  ChoiceField* later() const { return later_; }
  QString summary() const;

  // Chooses what is compared: drafts by their index; or the blocks.
  void compare(std::size_t before, std::size_t after);
  void compare_blocks();

 signals:
  void compared();

 protected:
  void showEvent(QShowEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  struct Compared {
    Pattern pattern;
    quint64 state = 0;
    std::optional<DraftComparison> drafts;
    std::vector<WordRun> runs;
    Sheet sheet;
  };
  void offer_drafts();
  void ask();
  void show_compared();
  void show_drafts(const DraftComparison& comparison);
  void show_words();

  OpenPattern& open_;
  ChoiceField* earlier_;
  ChoiceField* later_;
  QuietLabel* note_;
  QStackedWidget* stack_;
  QTreeWidget* table_;
  QPlainTextEdit* words_;
  quint64 asked_ = 0;
  std::shared_ptr<const Compared> compared_;
  LatestJob<std::shared_ptr<const Compared>> job_;
};

}  // namespace skeinproof
