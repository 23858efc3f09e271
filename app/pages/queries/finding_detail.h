// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <memory>
#include <optional>

#include "app/pages/queries/review_desk.h"
#include "core/review/rehearsal.h"

class QCheckBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace skeinproof {

class FigureList;
class QuietLabel;

// One query: its working, likely slips, what cannot all be right, the wording for the designer, and what was
// decided. An answer is rehearsed while it is typed.
class FindingDetail : public QWidget {
  Q_OBJECT

 public:
  explicit FindingDetail(OpenPattern& open, QWidget* parent = nullptr);

  void show_query(std::shared_ptr<const Reviewed> reviewed, std::optional<std::size_t> cause);

  void start();        // puts the focus on the working
  void take_change();  // the likely slip's, else the proposal's
  void start_keeping();
  void keep();
  void answer();
  void reopen();

  FigureList* figures() const { return figures_; }
  QLineEdit* answer_field() const { return answer_; }
  QLineEdit* reason_field() const { return reason_; }
  QPlainTextEdit* wording() const { return wording_; }
  QString rehearsal_words() const;

 signals:
  void says(const QString& message);
  void rehearsed();

 protected:
  void changeEvent(QEvent* event) override;

 private:
  using Edit = std::function<Expected<void>(Pattern&, const Review&, std::size_t cause)>;
  void lay_out();
  void show_rows();
  void show_change(const QString& change);
  void rehearse_answer();
  void show_rehearsal(const Rehearsal& rehearsal);
  void show_rehearsal_words(const QString& words);
  void decide(const QString& step, const Edit& edit);
  void save_wording();
  const Finding& finding() const;
  const Decision& decision() const { return reviewed_->record.decisions[*cause_]; }

  OpenPattern& open_;
  std::shared_ptr<const Reviewed> reviewed_;
  std::optional<std::size_t> cause_;
  QLabel* title_;
  QuietLabel* rule_;
  FigureList* figures_;
  QPlainTextEdit* wording_;
  QCheckBox* remember_;
  QPushButton* take_;
  QLineEdit* answer_;
  QPushButton* record_;
  QuietLabel* rehearsal_;
  QLineEdit* reason_;
  QPushButton* keep_;
  QPushButton* reopen_;
  LatestJob<std::optional<Rehearsal>> rehearsing_;
};

}  // namespace skeinproof
