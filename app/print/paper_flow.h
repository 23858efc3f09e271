// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFont>
#include <QPainter>
#include <QRectF>
#include <QString>
#include <functional>

#include "app/widgets/ink.h"

class QTextLayout;

namespace skeinproof {

// Fonts on paper, sized in points; the painter is scaled so that one unit is one point.
struct PaperType {
  QFont body, strong, head, title, foot, words, fixed;
};
PaperType paper_type();

// Where the next thing stands on paper: from top to bottom, on to a new page where it does not fit.
class PaperFlow {
 public:
  // `new_page` is called before every page but the first; `draw_foot` at the end of each with its number.
  PaperFlow(QPainter& painter, const QRectF& page, std::function<bool()> new_page,
            std::function<void(QPainter&, const QRectF& foot, int page)> draw_foot);
  ~PaperFlow();
  PaperFlow(const PaperFlow&) = delete;
  PaperFlow& operator=(const PaperFlow&) = delete;

  QPainter& painter() { return painter_; }
  const PaperType& type() const { return type_; }
  const Ink& ink() const { return ink_; }
  double left() const { return body_.left(); }
  double width() const { return body_.width(); }
  double y() const { return y_; }
  double room() const { return body_.bottom() - y_; }
  double whole_page() const { return body_.height(); }
  int pages() const { return pages_; }
  bool failed() const { return failed_; }

  // Goes to a new page unless `height` fits; true where it did. What is higher than a page starts on a fresh
  // one.
  bool make_room(double height);
  void advance(double height) { y_ += height; }
  // Wrapped words at `x`, over as many pages as they need.
  void write(const QString& text, const QFont& font, double x, double line_width);

 private:
  void turn();

  QPainter& painter_;
  QRectF body_;
  QRectF foot_;
  std::function<bool()> new_page_;
  std::function<void(QPainter&, const QRectF&, int)> draw_foot_;
  PaperType type_;
  Ink ink_;
  double y_ = 0;
  int pages_ = 1;
  bool failed_ = false;
};

}  // namespace skeinproof
