// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QByteArray>
#include <QStringList>

#include "app/bench/appearance.h"
#include "app/document/reader_style.h"

class QSettings;

namespace skeinproof {

// What one person chose for all files, kept in a settings store that is handed in. Nothing of a document is
// here.
class PersonSettings {
 public:
  explicit PersonSettings(QSettings& store) : store_(store) {}

  ReaderStyle reader() const;
  void set_reader(const ReaderStyle& reader);
  Shades shades() const;
  void set_shades(Shades shades);
  int text_percent() const;
  void set_text_percent(int percent);

  QStringList recent_files() const;  // latest first, at most ten
  void add_recent_file(const QString& path);
  void drop_recent_file(const QString& path);

  QByteArray window_place() const;
  void set_window_place(const QByteArray& place);
  QList<int> pane_sizes(const QString& splitter) const;  // empty where none were chosen
  void set_pane_sizes(const QString& splitter, const QList<int>& sizes);

 private:
  QSettings& store_;
};

}  // namespace skeinproof
