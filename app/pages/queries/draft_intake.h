// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QObject>
#include <deque>
#include <functional>
#include <memory>
#include <optional>

#include "app/document/latest_job.h"
#include "app/document/open_pattern.h"
#include "core/manuscript/facts_as_read.h"
#include "core/manuscript/text_of_file.h"

namespace skeinproof {

// Takes submitted texts into the open pattern, on a thread of its own and one after the other: the document
// can be worked on meanwhile, and what is added goes into it as it is by then.
class DraftIntake : public QObject {
  Q_OBJECT

 public:
  explicit DraftIntake(OpenPattern& open, QObject* parent = nullptr);

  // The next draft, from pasted text (no name) or from a file; one named step of undo.
  void add(const QByteArray& bytes, const QString& file_name);
  void add_file(const QString& path);
  // Reads the draft at hand for facts, to be looked at before they are in force.
  void read_facts();
  // Gives up what is being taken in and what waits; the document stays as it is.
  void stop();

  bool is_busy() const { return !waiting_.empty() || (job_.is_busy() && !given_up_); }
  QString progress() const;  // "Taking in yoke.html, 10.2 MB …"

 signals:
  void progressed();
  void draft_added();
  void facts_read(std::shared_ptr<const skeinproof::FactsAsRead> facts, quint64 state);
  void says(const QString& message);

 private:
  struct Outcome {
    std::optional<Error> error;
    QString name;  // of the file; empty = pasted
    std::optional<FileText> text;
    std::shared_ptr<const FactsAsRead> facts;
    quint64 state = 0;
  };
  struct Task {
    QString words;
    std::function<Outcome()> work;
  };
  void put(Task task);
  void start_next();
  void finish(Outcome outcome);
  void take(const Outcome& outcome);

  OpenPattern& open_;
  std::deque<Task> waiting_;
  QString words_;
  bool given_up_ = false;  // what runs still is dropped
  LatestJob<Outcome> job_;
};

}  // namespace skeinproof
