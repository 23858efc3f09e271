// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QWidget>
#include <vector>

#include "app/widgets/ink.h"

class QPainter;

namespace skeinproof {

// Two shares of every colour on one scale: an open ring for its stitches, a full dot for its yarn, and the
// line between them. Means the same in one ink.
class SharePicture : public QWidget {
  Q_OBJECT

 public:
  struct Row {
    QString label;
    double stitches = 0;  // 0 to 1
    double yarn = 0;
    QString words;  // "36.6 → 34.2 %"
    bool strong = false;
  };

  explicit SharePicture(QWidget* parent = nullptr);
  void show_rows(std::vector<Row> rows);
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

  // The same drawing for screen and paper; returns the height it takes.
  static double draw(QPainter& painter, const Ink& ink, const std::vector<Row>& rows, double width,
                     double row_height);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  std::vector<Row> rows_;
};

}  // namespace skeinproof
