// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <vector>

class QTreeWidget;

namespace skeinproof {

class Page;

// All keys on one page: the rows of the command table, what the pages add, and what grids and fields take
// themselves.
class ShortcutList : public QDialog {
  Q_OBJECT

 public:
  ShortcutList(const std::vector<Page*>& pages, QWidget* parent);
  // One line a key, parted by tabs.
  QString as_text() const;

 private:
  void add(const QString& group, const QString& keys, const QString& what);
  QTreeWidget* rows_;
};

}  // namespace skeinproof
