// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/review_desk.h"

namespace skeinproof {
namespace {

std::shared_ptr<const Reviewed> review_of(const Pattern& pattern, quint64 state) {
  auto reviewed = std::make_shared<Reviewed>();
  reviewed->pattern = pattern;
  reviewed->state = state;
  const Assessment assessment = assess(pattern);
  reviewed->review = review(reviewed->pattern, assessment);
  reviewed->record = record_of(reviewed->pattern, reviewed->review);
  reviewed->proposed = proposed_text(reviewed->review, reviewed->record);
  reviewed->contradictions = cannot_all_be_right(reviewed->pattern, assessment);
  return reviewed;
}

}  // namespace

ReviewDesk::ReviewDesk(OpenPattern& open, QObject* parent)
    : QObject(parent), open_(open), job_([this](std::shared_ptr<const Reviewed> reviewed) {
        latest_ = std::move(reviewed);
        emit this->reviewed();
      }) {
  connect(&open_, &OpenPattern::changed, this, &ReviewDesk::ask);
  connect(&open_, &OpenPattern::replaced, this, [this] { latest_.reset(); });
  ask();
}

void ReviewDesk::ask() {
  if (asked_ == open_.state() && latest_) return;
  asked_ = open_.state();
  job_.ask([pattern = open_.pattern(), state = open_.state()] { return review_of(pattern, state); });
  emit checking();
}

}  // namespace skeinproof
