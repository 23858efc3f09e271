// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QLayout>
#include <vector>

namespace skeinproof {

// Lays widgets in a line and goes on in the next one where the width ends, so that nothing is cut at any text
// size. A stretch pushes what follows it to the right end while all stands in one line.
class FlowLayout : public QLayout {
 public:
  explicit FlowLayout(QWidget* parent = nullptr) : QLayout(parent) {}
  ~FlowLayout() override;

  void add_stretch() { stretch_before_ = items_.size(); }

  void addItem(QLayoutItem* item) override { items_.push_back(item); }
  int count() const override { return static_cast<int>(items_.size()); }
  QLayoutItem* itemAt(int index) const override;
  QLayoutItem* takeAt(int index) override;
  Qt::Orientations expandingDirections() const override { return {}; }
  bool hasHeightForWidth() const override { return true; }
  int heightForWidth(int width) const override { return lay(QRect(0, 0, width, 0), false); }
  QSize sizeHint() const override;
  QSize minimumSize() const override;
  void setGeometry(const QRect& rect) override;

 private:
  int lay(const QRect& rect, bool place) const;  // the height needed

  std::vector<QLayoutItem*> items_;
  std::size_t stretch_before_ = static_cast<std::size_t>(-1);
};

}  // namespace skeinproof
