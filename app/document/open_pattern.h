// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QObject>
#include <QString>
#include <functional>
#include <optional>
#include <vector>

#include "app/document/reader_style.h"
#include "core/base/error.h"
#include "core/need/assessment.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// The pattern that is open in the window: the value in force, its undo stack and its assessment. Everything
// that changes the document goes through `apply`; everything that shows it listens to `changed`.
class OpenPattern : public QObject {
  Q_OBJECT

 public:
  // Sets fields on a copy of the document, or calls functions of core/pattern/edits.h.
  using Edit = std::function<void(Pattern&)>;

  explicit OpenPattern(QObject* parent = nullptr);

  const Pattern& pattern() const { return steps_[at_].pattern; }
  // Of the pattern in force; worked out on first use after a change.
  const Assessment& assessment() const;

  // Copies, edits, checks the invariants, drops the edit if nothing changed, pushes a step named `label` and
  // emits `changed`. Edits with the same non-empty merge key that follow each other become one step ("typing
  // in one field"). A breach of an invariant leaves the document as it was and is returned.
  std::optional<Error> apply(const QString& label, const Edit& edit, const QString& merge_key = {});

  // Keeps what has happened outside the document and cannot be undone, as that a sheet went out: the edit is
  // made in every state of the undo stack and is no step of it. A state whose invariants it would break stays
  // as it was.
  void keep_in_every_step(const Edit& edit);

  void undo();
  void redo();
  bool can_undo() const { return at_ > 0; }
  bool can_redo() const { return at_ + 1 < steps_.size(); }
  QString undo_label() const;  // of the step undo would take back
  QString redo_label() const;

  // Replaces the document and forgets the steps (New, Open).
  void replace(Pattern pattern);

  // A number that is the same whenever the document is the same state of this undo stack.
  quint64 state() const { return steps_[at_].state; }
  bool is_saved() const { return state() == saved_state_; }
  // The document is on disk as it was at that state (a save on a worker may end after further edits).
  void mark_saved(quint64 saved);
  void mark_saved() { mark_saved(state()); }
  void mark_unsaved() { mark_saved(0); }  // recovered work

  std::size_t chosen_size_index() const;
  // Looking at another size is no edit: it makes no step of undo, leaves what can be redone, and stays
  // through undo.
  void choose_size(std::size_t size_index);

  // How the person at the desk reads figures; no part of the document and no step of undo.
  const ReaderStyle& reader() const { return reader_; }
  void set_reader(const ReaderStyle& reader);

 signals:
  void replaced();        // another document is open now; `changed` follows
  void changed();         // the document or its place in the undo stack
  void saved_changed();   // is_saved() may have changed
  void reader_changed();  // figures are to be shown anew

 private:
  void after_step(bool was_saved);
  void go_to_step(std::size_t at);

  struct StepOfUndo {
    Pattern pattern;
    QString label;
    QString merge_key;
    quint64 state = 0;
  };
  std::vector<StepOfUndo> steps_;
  std::size_t at_ = 0;
  quint64 last_state_ = 1;  // 0 is the state of no step
  quint64 saved_state_ = 1;
  bool may_merge_ = false;
  mutable std::optional<Assessment> assessment_;
  ReaderStyle reader_;
};

}  // namespace skeinproof
