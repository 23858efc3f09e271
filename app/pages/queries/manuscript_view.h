// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPlainTextEdit>
#include <memory>
#include <vector>

#include "app/pages/queries/review_desk.h"

namespace skeinproof {

// The text as it is checked: what was read is dotted, what has a finding is underlined, what belongs to the
// chosen query is boxed; in the margin the lines and the queries that stand in them.
class ManuscriptView : public QPlainTextEdit {
  Q_OBJECT

 public:
  explicit ManuscriptView(QWidget* parent = nullptr);

  void show_review(std::shared_ptr<const Reviewed> reviewed);
  // Boxes the places of a query and brings the first into view.
  void choose(std::optional<std::size_t> cause);
  // What stands in the margin of a line, from 0: "Q1 Q4".
  QString margin_words(int line) const;

 signals:
  void query_clicked(std::size_t cause);

 protected:
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  friend class ManuscriptMargin;
  int margin_width() const;
  void paint_margin(QPaintEvent* event);
  void place_margin();
  void mark();
  int position_of(std::size_t byte) const;
  QTextEdit::ExtraSelection marked(const TextSpan& span, QTextCharFormat format) const;
  void choose_at(int position);

  std::shared_ptr<const Reviewed> reviewed_;
  std::optional<std::size_t> chosen_;
  std::vector<int> positions_;  // of every byte, in the document's units
  std::vector<QString> margin_lines_;
  QWidget* margin_;
};

}  // namespace skeinproof
