// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDateTime>
#include <QLockFile>
#include <QObject>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "core/file/project_file.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

class OpenPattern;

// Where the open pattern lives on disk: new, opened, saved; on a worker, so that the window never waits for a
// disk. One thing is done at a time. It guards against a second window on the same file: that one works on a
// copy.
class ProjectDesk : public QObject {
  Q_OBJECT

 public:
  using Then = std::function<void(bool done)>;

  explicit ProjectDesk(OpenPattern& open, QObject* parent = nullptr);
  ~ProjectDesk() override;

  const QString& path() const { return path_; }  // empty: never saved under a name
  QString title() const;                         // the pattern's title, else the file's name, else "Untitled"
  bool is_busy() const { return busy_; }
  bool is_opening() const { return opening_; }
  // When the file was last written by this window.
  const QDateTime& saved_at() const { return saved_at_; }

  void start_new(Pattern pattern);
  void open(const QString& path);          // .json is read as JSON and has no file yet
  void open_as_copy(const QString& path);  // a sample: keeps no path
  // Work that was kept from a crash: unsaved, belonging to a file or to none. That file is not opened.
  void take_recovered(Pattern pattern, const QString& path);
  // Saves to the path the document has.
  void save(Then then = {});
  // Under another name, or over what somebody else wrote meanwhile; the person agreed to lose what stands
  // there.
  void save_as(const QString& path, Then then = {});
  void export_json(const QString& path);
  // Runs when what is being done is done; at once when nothing is.
  void when_idle(std::function<void()> then);

 signals:
  void title_changed();
  void busy_changed();
  void opened(const QString& path);
  void saved(const QString& path);
  void exported(const QString& path);
  void told(const QString& key, const QString& sentence);
  void failed(const skeinproof::Error& error, const QString& path);

 private:
  void run_open(const QString& path, bool as_copy);
  void take_opened(OpenedProject opened, const QString& path, bool as_copy);
  void run_save(const QString& path, SaveOptions options, Then then);
  bool lock(const QString& path);
  void set_path(const QString& path);
  void set_busy(bool busy, bool opening = false);

  OpenPattern& open_;
  QString path_;
  std::optional<FileStamp> stamp_;
  std::unique_ptr<QLockFile> lock_;
  QDateTime saved_at_;
  bool busy_ = false;
  bool opening_ = false;
  std::vector<std::function<void()>> waiting_;
};

// Whether a path names a project as JSON.
bool is_json_path(const QString& path);

}  // namespace skeinproof
