// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QLockFile>
#include <QObject>
#include <QThreadPool>
#include <QTimer>
#include <memory>
#include <vector>

#include "core/file/recovery.h"

namespace skeinproof {

class OpenPattern;

// Keeps a copy of unsaved work in a folder, written on a worker within a second of each edit, and finds the
// copies that windows left which ended without closing.
class RecoveryKeeper : public QObject {
  Q_OBJECT

 public:
  RecoveryKeeper(OpenPattern& open, const QString& folder, QObject* parent = nullptr);
  ~RecoveryKeeper() override;  // leaves the copy: a window that closes in order calls drop()

  // The file the work belongs to; goes into the copy.
  void set_path(const QString& path) { path_ = path; }
  // There is nothing unsaved: the copy goes away.
  void drop();
  // Writes unsaved work at once, here; false where it could not be written.
  bool write_now();
  bool is_current() const { return written_state_ == wanted_state_; }

  // Copies of windows that are no more.
  std::vector<Recovery> left_behind() const;
  Expected<Pattern> read(const Recovery& recovery) const;
  void forget(const Recovery& recovery);

 signals:
  void written();
  void failed(const skeinproof::Error& error);

 private:
  void follow();
  void write();
  void show_alive();
  QString lock_path(const QString& key) const;

  OpenPattern& open_;
  QString folder_;
  QString key_;
  QString path_;
  std::unique_ptr<QLockFile> alive_;  // held as long as this window lives
  QThreadPool worker_;                // one thread, so that copies are written in order
  QTimer due_;
  quint64 wanted_state_ = 0;
  quint64 written_state_ = 0;
};

}  // namespace skeinproof
