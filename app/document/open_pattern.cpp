// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/open_pattern.h"

namespace skeinproof {

OpenPattern::OpenPattern(QObject* parent) : QObject(parent) {
  steps_.push_back({new_pattern(), {}, {}, last_state_});
}

const Assessment& OpenPattern::assessment() const {
  if (!assessment_) assessment_ = assess(pattern());
  return *assessment_;
}

std::optional<Error> OpenPattern::apply(const QString& label, const Edit& edit, const QString& merge_key) {
  Pattern next = pattern();
  edit(next);
  if (const auto kept = check_invariants(next); !kept) return kept.error();
  if (next == pattern()) return std::nullopt;

  const bool was_saved = is_saved();
  steps_.resize(at_ + 1);
  const bool merges = may_merge_ && !merge_key.isEmpty() && steps_[at_].merge_key == merge_key;
  if (merges && !was_saved) {
    steps_[at_].pattern = std::move(next);
    steps_[at_].label = label;
  } else {
    steps_.push_back({std::move(next), label, merge_key, 0});
    ++at_;
  }
  steps_[at_].state = ++last_state_;
  may_merge_ = true;
  after_step(was_saved);
  return std::nullopt;
}

void OpenPattern::keep_in_every_step(const Edit& edit) {
  const bool was_saved = is_saved();
  bool here = false;
  for (std::size_t i = 0; i < steps_.size(); ++i) {
    Pattern kept = steps_[i].pattern;
    edit(kept);
    if (kept == steps_[i].pattern || !check_invariants(kept)) continue;
    steps_[i].pattern = std::move(kept);
    steps_[i].state = ++last_state_;
    here = here || i == at_;
  }
  if (here) after_step(was_saved);
}

void OpenPattern::undo() {
  if (!can_undo()) return;
  const bool was_saved = is_saved();
  go_to_step(at_ - 1);
  may_merge_ = false;  // typing on after an undo is a step of its own
  after_step(was_saved);
}

void OpenPattern::redo() {
  if (!can_redo()) return;
  const bool was_saved = is_saved();
  go_to_step(at_ + 1);
  may_merge_ = false;
  after_step(was_saved);
}

QString OpenPattern::undo_label() const { return can_undo() ? steps_[at_].label : QString(); }
QString OpenPattern::redo_label() const { return can_redo() ? steps_[at_ + 1].label : QString(); }

void OpenPattern::replace(Pattern pattern) {
  steps_.clear();
  at_ = 0;
  saved_state_ = ++last_state_;
  steps_.push_back({std::move(pattern), {}, {}, last_state_});
  may_merge_ = false;
  assessment_.reset();
  emit replaced();
  emit changed();
  emit saved_changed();
}

void OpenPattern::mark_saved(quint64 saved) {
  if (saved_state_ == saved) return;
  saved_state_ = saved;
  emit saved_changed();
}

void OpenPattern::after_step(bool was_saved) {
  assessment_.reset();
  emit changed();
  if (was_saved != is_saved()) emit saved_changed();
}

std::size_t OpenPattern::chosen_size_index() const {
  return pattern().size_index(pattern().chosen_size).value_or(0);
}

void OpenPattern::choose_size(std::size_t size_index) {
  if (size_index >= pattern().sizes.size() || size_index == chosen_size_index()) return;
  steps_[at_].pattern.chosen_size = pattern().sizes[size_index].id;
  emit changed();
}

void OpenPattern::go_to_step(std::size_t at) {
  const SizeId chosen = pattern().chosen_size;
  at_ = at;
  if (pattern().size_index(chosen)) steps_[at_].pattern.chosen_size = chosen;
}

void OpenPattern::set_reader(const ReaderStyle& reader) {
  if (reader_ == reader) return;
  reader_ = reader;
  emit reader_changed();
}

}  // namespace skeinproof
