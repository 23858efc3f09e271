// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QTreeWidget>
#include <memory>
#include <optional>

#include "app/pages/queries/review_desk.h"

namespace skeinproof {

// Which queries are shown.
enum class QueriesShown { undecided, kept, all };

// The queries of a review, one row a cause, under the severity of its gravest finding.
class FindingTree : public QTreeWidget {
  Q_OBJECT

 public:
  explicit FindingTree(QWidget* parent = nullptr);

  // Keeps the chosen query where the new review has it still. Empty words show every role or size.
  void show_review(std::shared_ptr<const Reviewed> reviewed);
  void show_only(QueriesShown which, const QString& role, const QString& size);
  std::optional<std::size_t> chosen() const;
  void choose(std::size_t cause);
  void step(int by);  // to the next or previous query

 signals:
  void chosen_changed();
  void ticked(std::size_t cause, bool on);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void fill();
  bool is_shown(std::size_t cause) const;
  void add(QTreeWidgetItem* group, std::size_t cause);
  std::vector<QTreeWidgetItem*> rows() const;

  std::shared_ptr<const Reviewed> reviewed_;
  QueriesShown which_ = QueriesShown::undecided;
  QString role_, size_;
  QString chosen_key_;
  bool filling_ = false;
};

// "no.", place, title and what else a row says, for printing and reading aloud.
QString place_words(const Reviewed& reviewed, std::size_t cause);

}  // namespace skeinproof
