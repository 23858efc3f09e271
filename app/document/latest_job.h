// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFutureWatcher>
#include <QtConcurrent>
#include <functional>
#include <optional>
#include <utility>

namespace skeinproof {

// Work on a thread of its own, of which only the latest asking counts: what is asked for while another runs
// waits for it and replaces what waited before. The result comes back to the thread that asked; where the job
// is gone by then, nobody is told. The work owns everything it reads.
template <class Result>
class LatestJob {
 public:
  using Work = std::function<Result()>;
  using Done = std::function<void(Result)>;

  explicit LatestJob(Done done) : done_(std::move(done)) {
    QObject::connect(&watcher_, &QFutureWatcherBase::finished, &watcher_, [this] { follow(); });
  }
  LatestJob(const LatestJob&) = delete;
  LatestJob& operator=(const LatestJob&) = delete;

  void ask(Work work) {
    if (busy_)
      waiting_ = std::move(work);
    else
      start(std::move(work));
  }
  bool is_busy() const { return busy_; }

 private:
  void start(Work work) {
    busy_ = true;
    watcher_.setFuture(QtConcurrent::run(std::move(work)));
  }
  void follow() {
    if (waiting_) {
      start(*std::exchange(waiting_, std::nullopt));
      return;
    }
    busy_ = false;
    done_(watcher_.result());
  }

  Done done_;
  bool busy_ = false;
  std::optional<Work> waiting_;
  QFutureWatcher<Result> watcher_;
};

}  // namespace skeinproof
