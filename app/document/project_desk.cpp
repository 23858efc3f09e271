// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/project_desk.h"

#include <QFileInfo>
#include <QtConcurrent>

#include "app/document/open_pattern.h"
#include "core/file/json.h"
#include "core/file/whole_file.h"

namespace skeinproof {

namespace {

std::filesystem::path as_path(const QString& path) { return std::filesystem::path(path.toStdU16String()); }

Expected<OpenedProject> read_any(const QString& path) {
  if (!is_json_path(path)) return open_project(as_path(path));
  const auto text = read_whole_file(as_path(path));
  if (!text) return tl::unexpected(text.error());
  auto pattern = pattern_from_json(*text, QFileInfo(path).fileName().toStdString());
  if (!pattern) return tl::unexpected(pattern.error());
  OpenedProject opened;
  opened.pattern = std::move(*pattern);
  return opened;
}

QString lock_path(const QString& path) {
  const QFileInfo file(QFileInfo::exists(path) ? QFileInfo(path).canonicalFilePath() : path);
  return file.absolutePath() + QStringLiteral("/.") + file.fileName() + QStringLiteral(".lock");
}

bool is_locked(const QString& path) {
  QLockFile lock(lock_path(path));
  lock.setStaleLockTime(0);
  return !lock.tryLock(0) && lock.error() == QLockFile::LockFailedError;
}

}  // namespace

bool is_json_path(const QString& path) { return path.endsWith(QLatin1String(".json"), Qt::CaseInsensitive); }

ProjectDesk::ProjectDesk(OpenPattern& open, QObject* parent) : QObject(parent), open_(open) {
  connect(&open_, &OpenPattern::changed, this, &ProjectDesk::title_changed);
}

ProjectDesk::~ProjectDesk() = default;

QString ProjectDesk::title() const {
  if (!open_.pattern().title.empty()) return QString::fromStdString(open_.pattern().title);
  return path_.isEmpty() ? tr("Untitled") : QFileInfo(path_).completeBaseName();
}

void ProjectDesk::set_path(const QString& path) {
  path_ = path;
  emit title_changed();
}

void ProjectDesk::set_busy(bool busy, bool opening) {
  busy_ = busy;
  opening_ = opening;
  emit busy_changed();
  if (busy) return;
  for (const auto& then : std::exchange(waiting_, {})) then();
}

void ProjectDesk::when_idle(std::function<void()> then) {
  if (busy_)
    waiting_.push_back(std::move(then));
  else
    then();
}

void ProjectDesk::start_new(Pattern pattern) {
  lock_.reset();
  stamp_.reset();
  saved_at_ = {};
  set_path({});
  open_.replace(std::move(pattern));
  emit opened({});
}

void ProjectDesk::open(const QString& path) { run_open(path, is_json_path(path)); }
void ProjectDesk::open_as_copy(const QString& path) { run_open(path, true); }

void ProjectDesk::run_open(const QString& path, bool as_copy) {
  if (busy_) return;
  set_busy(true, true);
  QtConcurrent::run(read_any, path).then(this, [this, path, as_copy](Expected<OpenedProject> opened) {
    if (opened)
      take_opened(std::move(*opened), path, as_copy);
    else
      emit failed(opened.error(), path);
    set_busy(false);
  });
}

void ProjectDesk::take_opened(OpenedProject opened, const QString& path, bool as_copy) {
  const QString name = QFileInfo(path).fileName();
  lock_.reset();
  QString words;
  if (!as_copy && !lock(path)) {
    as_copy = true;
    words =
        tr("“%1” is open in another window. This is a copy of it: saving asks for another name.").arg(name);
  } else if (opened.newer) {
    as_copy = true;
    words =
        tr("“%1” was written by a newer version that lets this one read it. This is a copy: saving asks for "
           "another name, and what the newer version added is not in it.")
            .arg(name);
  } else if (opened.journal_found) {
    words = tr("A save of “%1” was cut short. This is the state before it; the file itself was not touched.")
                .arg(name);
  } else if (opened.edited_elsewhere) {
    words = tr("“%1” was changed by another program. Its inputs are taken as they are; what is worked out "
               "from them is "
               "written anew when you save.")
                .arg(name);
  } else if (opened.migrated) {
    words = tr("“%1” was written by an older version. Saving brings it up to this one; until then it stays "
               "as it is.")
                .arg(name);
  } else if (!as_copy && !QFileInfo(path).isWritable()) {
    words = tr("“%1” may be read and not written. Saving asks for another name.").arg(name);
    as_copy = true;
  }
  stamp_.reset();
  if (!as_copy) stamp_ = opened.stamp;
  saved_at_ = {};
  set_path(as_copy ? QString() : path);
  open_.replace(std::move(opened.pattern));
  emit this->opened(path_);
  if (!words.isEmpty()) emit told(QStringLiteral("file"), words);
}

void ProjectDesk::take_recovered(Pattern pattern, const QString& path) {
  start_new(std::move(pattern));
  open_.mark_unsaved();
  // Without a stamp the first save finds the old file in its place and refuses to write over it unasked.
  if (!path.isEmpty() && QFileInfo::exists(path) && lock(path)) set_path(path);
  emit opened(path_);
}

void ProjectDesk::save(Then then) {
  SaveOptions options;
  options.last_seen = stamp_;
  run_save(path_, std::move(options), std::move(then));
}

void ProjectDesk::save_as(const QString& path, Then then) {
  SaveOptions options;
  options.replace_existing = true;
  run_save(path, std::move(options), std::move(then));
}

void ProjectDesk::run_save(const QString& path, SaveOptions options, Then then) {
  if (busy_) return when_idle([=, this] { run_save(path, options, then); });
  if (path != path_ && is_locked(path)) {
    emit failed(Error{ErrorKind::locked, {}, {}, {}}, path);
    if (then) then(false);
    return;
  }
  const quint64 state = open_.state();
  options.program =
      (QCoreApplication::applicationName() + ' ' + QCoreApplication::applicationVersion()).toStdString();
  set_busy(true);
  QtConcurrent::run([pattern = open_.pattern(), path, options] {
    return save_project(as_path(path), pattern, options);
  }).then(this, [this, path, state, then](Expected<FileStamp> stamp) {
    if (stamp) {
      stamp_ = *stamp;
      saved_at_ = QDateTime::currentDateTime();
      if (path != path_) {
        lock_.reset();
        lock(path);
        set_path(path);
      }
      open_.mark_saved(state);
      emit saved(path);
    } else {
      emit failed(stamp.error(), path);
    }
    set_busy(false);
    if (then) then(stamp.has_value());
  });
}

void ProjectDesk::export_json(const QString& path) {
  if (busy_) return when_idle([=, this] { export_json(path); });
  set_busy(true);
  QtConcurrent::run([pattern = open_.pattern(), path] {
    return write_whole_file(as_path(path), to_json(pattern));
  }).then(this, [this, path](Expected<void> written) {
    if (written)
      emit exported(path);
    else
      emit failed(written.error(), path);
    set_busy(false);
  });
}

bool ProjectDesk::lock(const QString& path) {
  auto fresh = std::make_unique<QLockFile>(lock_path(path));
  fresh->setStaleLockTime(0);
  if (!fresh->tryLock(0)) {
    // A folder that takes no lock file (read-only, a disc) has no second writer either.
    if (fresh->error() == QLockFile::LockFailedError) return false;
    fresh.reset();
  }
  lock_ = std::move(fresh);
  return true;
}

}  // namespace skeinproof
