// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QHeaderView>

namespace skeinproof {

// The head of a table in the window's own ink: quiet words over their columns and one line below.
class FlatHeader : public QHeaderView {
  Q_OBJECT

 public:
  explicit FlatHeader(QWidget* parent = nullptr);

 protected:
  void paintSection(QPainter* painter, const QRect& rect, int section) const override;
  void paintEvent(QPaintEvent* event) override;
  QSize sectionSizeFromContents(int section) const override;
};

}  // namespace skeinproof
