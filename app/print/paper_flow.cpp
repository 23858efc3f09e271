// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/paper_flow.h"

#include <QApplication>
#include <QFontDatabase>
#include <QTextLayout>
#include <algorithm>

namespace skeinproof {
namespace {

constexpr double foot_height = 22;

QFont sized(QFont font, int points, QFont::Weight weight = QFont::Normal) {
  font.setPixelSize(points);  // the painter is scaled to points
  font.setWeight(weight);
  font.setHintingPreference(QFont::PreferNoHinting);
  return font;
}

}  // namespace

PaperType paper_type() {
  const QFont platform = QApplication::font();
  PaperType type;
  type.body = sized(platform, 10);
  type.strong = sized(platform, 10, QFont::DemiBold);
  type.head = sized(platform, 11, QFont::DemiBold);
  type.title = sized(platform, 16, QFont::DemiBold);
  type.foot = sized(platform, 9);
  type.words = sized(type_of(platform).words, 10);
  type.fixed = sized(QFontDatabase::systemFont(QFontDatabase::FixedFont), 10);
  return type;
}

PaperFlow::PaperFlow(QPainter& painter, const QRectF& page, std::function<bool()> new_page,
                     std::function<void(QPainter&, const QRectF&, int)> draw_foot)
    : painter_(painter),
      body_(page.adjusted(0, 0, 0, -foot_height)),
      foot_(page.left(), page.bottom() - foot_height, page.width(), foot_height),
      new_page_(std::move(new_page)),
      draw_foot_(std::move(draw_foot)),
      type_(paper_type()),
      ink_(paper_ink()),
      y_(page.top()) {}

PaperFlow::~PaperFlow() {
  if (!failed_) draw_foot_(painter_, foot_, pages_);
}

void PaperFlow::turn() {
  draw_foot_(painter_, foot_, pages_);
  if (!new_page_()) failed_ = true;
  ++pages_;
  y_ = body_.top();
}

bool PaperFlow::make_room(double height) {
  if (y_ + height <= body_.bottom() + 0.01 || y_ <= body_.top() + 0.01) return false;
  turn();
  return true;
}

void PaperFlow::write(const QString& text, const QFont& font, double x, double line_width) {
  painter_.setPen(ink_.text);
  for (const QString& part : text.split(QLatin1Char('\n'))) {
    QTextLayout layout(part, font);
    layout.beginLayout();
    std::vector<QTextLine> lines;
    for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
      line.setLineWidth(line_width);
      lines.push_back(line);
    }
    layout.endLayout();
    for (const QTextLine& line : lines) {
      make_room(line.height());
      line.draw(&painter_, QPointF(x, y_) - QPointF(0, line.y()));
      y_ += line.height() * 1.05;
    }
  }
}

}  // namespace skeinproof
