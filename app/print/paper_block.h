// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QRectF>
#include <functional>

class QPainter;

namespace skeinproof {

// A picture that stands on paper in one piece. Measured in points (1/72 inch); `paint` draws into the
// rectangle it is given, black on white.
struct PaperBlock {
  double height = 0;
  std::function<void(QPainter& painter, const QRectF& rect)> paint;
};

enum class PicturesStand { behind_the_words, before_the_words };

}  // namespace skeinproof
