// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPlainTextEdit>
#include <memory>
#include <vector>

#include "app/pages/queries/review_desk.h"
#include "app/pages/queries/text_places.h"

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
  void go_to(std::size_t byte);
  std::size_t place() const { return places_.byte(textCursor().position()); }
  // What stands in the margin of a line, from 0: "Q1 Q4".
  QString margin_words(int line) const;

 signals:
  void query_clicked(std::size_t cause);
  void place_changed(std::size_t byte);  // the cursor moved

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
  TextSpan seen() const;
  int position_of(std::size_t byte) const { return places_.position(byte); }
  void choose_at(int position);

  std::shared_ptr<const Reviewed> reviewed_;
  std::optional<std::size_t> chosen_;
  TextPlaces places_;
  TextSpan marked_;  // what was in view when it was marked last
  std::vector<QString> margin_lines_;
  QWidget* margin_;
};

}  // namespace skeinproof
