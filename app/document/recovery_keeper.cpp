// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/recovery_keeper.h"

#include <QDateTime>
#include <QDir>
#include <QUuid>
#include <QtConcurrent>

#include "app/document/open_pattern.h"

namespace skeinproof {

namespace {

constexpr int wait_ms = 400;  // leaves the rest of the second to the disk

std::filesystem::path as_path(const QString& path) { return std::filesystem::path(path.toStdU16String()); }

}  // namespace

RecoveryKeeper::RecoveryKeeper(OpenPattern& open, const QString& folder, QObject* parent)
    : QObject(parent),
      open_(open),
      folder_(folder),
      key_(QUuid::createUuid().toString(QUuid::WithoutBraces)) {
  worker_.setMaxThreadCount(1);
  due_.setSingleShot(true);
  due_.setInterval(wait_ms);
  wanted_state_ = written_state_ = open_.state();
  connect(&due_, &QTimer::timeout, this, &RecoveryKeeper::write);
  connect(&open_, &OpenPattern::changed, this, &RecoveryKeeper::follow);
  connect(&open_, &OpenPattern::saved_changed, this, &RecoveryKeeper::follow);
}

RecoveryKeeper::~RecoveryKeeper() { worker_.waitForDone(); }

QString RecoveryKeeper::lock_path(const QString& key) const { return QDir(folder_).filePath(key + ".lock"); }

void RecoveryKeeper::follow() {
  if (open_.is_saved()) return drop();
  wanted_state_ = open_.state();
  // The timer is not started anew by further edits, or steady typing would put the copy off for ever.
  if (!is_current() && !due_.isActive()) due_.start();
}

void RecoveryKeeper::show_alive() {
  if (alive_) return;
  QDir().mkpath(folder_);
  alive_ = std::make_unique<QLockFile>(lock_path(key_));
  alive_->setStaleLockTime(0);
  alive_->tryLock(0);
}

void RecoveryKeeper::write() {
  show_alive();
  const quint64 state = open_.state();
  QtConcurrent::run(&worker_, [folder = as_path(folder_), key = key_.toStdString(), pattern = open_.pattern(),
                               original = as_path(path_), now_s = QDateTime::currentSecsSinceEpoch()] {
    return write_recovery(folder, key, pattern, original, now_s);
  }).then(this, [this, state](Expected<void> done) {
    if (done) {
      written_state_ = state;
      emit written();
    } else {
      emit failed(done.error());
    }
  });
}

bool RecoveryKeeper::write_now() {
  if (open_.is_saved()) return true;
  show_alive();
  due_.stop();
  worker_.waitForDone();
  const auto done = write_recovery(as_path(folder_), key_.toStdString(), open_.pattern(), as_path(path_),
                                   QDateTime::currentSecsSinceEpoch());
  if (done) written_state_ = wanted_state_ = open_.state();
  return done.has_value();
}

void RecoveryKeeper::drop() {
  due_.stop();
  wanted_state_ = written_state_ = open_.state();
  if (!alive_) return;
  // On the worker, after what it may still be writing.
  worker_.start([folder = as_path(folder_), key = key_.toStdString()] {
    const auto gone = drop_recovery(folder, key);
    (void)gone;  // a copy that stays is offered at the next start and can be thrown away there
  });
}

std::vector<Recovery> RecoveryKeeper::left_behind() const {
  std::vector<Recovery> left;
  for (Recovery& found : list_recoveries(as_path(folder_))) {
    const QString key = QString::fromStdString(found.key);
    if (key == key_) continue;
    QLockFile alive(lock_path(key));
    alive.setStaleLockTime(0);
    if (alive.tryLock(0)) left.push_back(std::move(found));
  }
  return left;
}

Expected<Pattern> RecoveryKeeper::read(const Recovery& recovery) const {
  return read_recovery(as_path(folder_), recovery.key);
}

void RecoveryKeeper::forget(const Recovery& recovery) {
  if (const auto gone = drop_recovery(as_path(folder_), recovery.key); !gone) emit failed(gone.error());
}

}  // namespace skeinproof
