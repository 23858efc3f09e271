// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <functional>
#include <optional>
#include <vector>

#include "app/document/latest_job.h"
#include "app/document/open_pattern.h"
#include "app/widgets/figure_list.h"
#include "core/sheets/sheet.h"
#include "core/substitution/candidate_facts.h"

class QPlainTextEdit;

namespace skeinproof {

class ChoiceField;

// What to buy for one candidate, put-up by put-up, and the shopping list as it will be printed.
class BuyPane : public QWidget {
  Q_OBJECT

 public:
  explicit BuyPane(OpenPattern& open, QWidget* parent = nullptr);

  void show_facts(const std::vector<CandidateFacts>& facts);
  void choose_candidate(CandidateId id);  // none = the pattern's own yarn
  CandidateId candidate() const;
  FigureList* figures() const { return figures_; }
  ChoiceField* choice() const { return choice_; }
  QString list_text() const;
  // The list as it was worked out last; none before.
  const std::optional<Sheet>& sheet() const { return sheet_; }
  bool is_busy() const { return job_.is_busy(); }

  using PathQuestion =
      std::function<QString(QWidget* parent, const QString& suggestion, const QString& filter)>;
  void set_path_question(PathQuestion question) { ask_path_ = std::move(question); }
  void save_list();

 signals:
  void says(const QString& message);
  void worked_out();

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void refresh();
  void work_out();
  void take(Expected<Sheet> list);

  OpenPattern& open_;
  PathQuestion ask_path_;
  std::vector<CandidateFacts> facts_;
  std::pair<quint64, std::uint32_t> wanted_{0, 0};  // state of the document, candidate
  std::optional<Sheet> sheet_;
  ChoiceField* choice_;
  FigureList* figures_;
  QPlainTextEdit* list_;
  LatestJob<Expected<Sheet>> job_;
};

std::vector<FigureRow> buy_figures(const CandidateFacts& facts, const ReaderStyle& reader);

}  // namespace skeinproof
