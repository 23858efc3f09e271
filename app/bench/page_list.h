// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QListView>

class QStandardItemModel;

namespace skeinproof {

// The side list: the pages in the order of the work, each with a word at the right where it needs attention.
class PageList : public QListView {
  Q_OBJECT

 public:
  explicit PageList(QWidget* parent = nullptr);

  void add(const QString& name);
  void set_attention(int row, const QString& word);
  QString name(int row) const;
  int count() const;
  int current() const { return currentIndex().row(); }
  void set_current(int row);

 signals:
  void chosen(int row);

 protected:
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
  void changeEvent(QEvent* event) override;

 private:
  void fit();
  QStandardItemModel* items_;
};

}  // namespace skeinproof
