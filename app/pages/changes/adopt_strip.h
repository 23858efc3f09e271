// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFrame>

#include "app/document/latest_job.h"
#include "app/document/open_pattern.h"
#include "app/pages/changes/bench_outcome.h"

class QLabel;
class QPushButton;

namespace skeinproof {

// Before the changes become part of the pattern: what will change, in this size or in all, and whether to
// take it in. Taking in is one step of undo; the changes leave the bench with it.
class AdoptStrip : public QFrame {
  Q_OBJECT

 public:
  explicit AdoptStrip(OpenPattern& open, QWidget* parent = nullptr);

  // `made` and `taken` as worked out for the document as it is now.
  void ask(AdoptIn in, const std::vector<Change>& made, const std::vector<ChangeId>& taken);
  void leave();
  void take_in();
  bool is_busy() const { return job_.is_busy(); }
  QString words() const;

 signals:
  void says(const QString& message);
  void shown();  // the list stands, or why it cannot be done
  void left(bool had_focus);

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void show_preview(AdoptPreview preview);
  QString preview_words(const AdoptPreview& preview) const;
  QString name_of_step() const;

  OpenPattern& open_;
  std::vector<Change> made_;
  std::vector<ChangeId> taken_;
  AdoptIn in_ = AdoptIn::this_size;
  quint64 state_ = 0;  // of the document that was asked about
  bool asking_ = false;
  std::optional<Adopted> adopted_;
  LatestJob<AdoptPreview> job_;
  QLabel* title_;
  QLabel* list_;
  QPushButton* take_;
  QPushButton* leave_;
};

}  // namespace skeinproof
