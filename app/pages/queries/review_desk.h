// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QObject>
#include <memory>

#include "app/document/latest_job.h"
#include "app/document/open_pattern.h"
#include "core/review/cannot_all_be_right.h"
#include "core/review/proposed_text.h"
#include "core/review/record.h"

namespace skeinproof {

// A review with what it was made of.
struct Reviewed {
  Pattern pattern;
  quint64 state = 0;  // of the open pattern
  Review review;
  Record record;
  ProposedText proposed;
  CannotAllBeRight contradictions;
};

// Checks the open pattern again after every change, on a thread of its own.
class ReviewDesk : public QObject {
  Q_OBJECT

 public:
  explicit ReviewDesk(OpenPattern& open, QObject* parent = nullptr);

  // The latest review; null before the first is done. It may be of an earlier state of the document.
  const std::shared_ptr<const Reviewed>& latest() const { return latest_; }
  bool is_up_to_date() const { return latest_ && latest_->state == open_.state() && !job_.is_busy(); }

 signals:
  void reviewed();
  void checking();  // it runs anew, and what is shown is of an earlier state

 private:
  void ask();

  OpenPattern& open_;
  quint64 asked_ = 0;
  std::shared_ptr<const Reviewed> latest_;
  LatestJob<std::shared_ptr<const Reviewed>> job_;
};

}  // namespace skeinproof
