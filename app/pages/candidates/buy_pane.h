// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <functional>
#include <optional>
#include <vector>

#include "app/document/open_pattern.h"
#include "app/widgets/figure_list.h"
#include "core/sheets/sheet.h"
#include "core/substitution/candidate_facts.h"

class QPlainTextEdit;

namespace skeinproof {

class ChoiceField;
class LineField;

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
  std::optional<Sheet> sheet() const;

  using PathQuestion =
      std::function<QString(QWidget* parent, const QString& suggestion, const QString& filter)>;
  void set_path_question(PathQuestion question) { ask_path_ = std::move(question); }
  void save_list();

 signals:
  void says(const QString& message);

 private:
  void refresh();

  OpenPattern& open_;
  PathQuestion ask_path_;
  std::vector<CandidateFacts> facts_;
  QString return_by_;
  ChoiceField* choice_;
  LineField* return_field_;
  FigureList* figures_;
  QPlainTextEdit* list_;
};

std::vector<FigureRow> buy_figures(const CandidateFacts& facts, const ReaderStyle& reader);

}  // namespace skeinproof
