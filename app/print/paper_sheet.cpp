// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/paper_sheet.h"

#include <QCoreApplication>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPicture>
#include <algorithm>

#include "app/print/paper_flow.h"
#include "app/print/paper_table.h"

namespace skeinproof {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Paper)
};

constexpr double points_per_inch = 72;
constexpr int least_fixed_points = 6;

QString from(const std::string& text) { return QString::fromStdString(text); }

struct PartWriter {
  PaperFlow& flow;
  const Sheet& sheet;

  void operator()(const Paragraph& paragraph) const {
    const bool designer = paragraph.voice == Voice::designer;
    const bool ground = paragraph.voice == Voice::ground;
    const QFont& font = designer ? flow.type().words : ground ? flow.type().foot : flow.type().body;
    const double indent = ground ? 12 : 0;
    if (ground) {
      // The foot on which a figure stands.
      flow.make_room(14);
      flow.painter().setPen(QPen(flow.ink().text, 2));
      flow.painter().drawLine(QPointF(flow.left(), flow.y() + 6), QPointF(flow.left() + 8, flow.y() + 6));
    }
    flow.write(from(paragraph.text), font, flow.left() + indent, flow.width() - indent);
    flow.advance(5);
  }
  void operator()(const Table& table) const { write_table(flow, table, sheet.numbers); }
  void operator()(const Lines& lines) const {
    QStringList texts;
    for (const auto& line : lines.lines) {
      QString text;
      for (const MarkedRun& run : line) text += from(run.text);
      texts << text;
    }
    // Spaces line things up, so a line is made smaller before it is broken.
    QFont font = flow.type().fixed;
    const auto widest = [&] {
      double width = 0;
      for (const QString& text : texts) width = std::max(width, QFontMetricsF(font).horizontalAdvance(text));
      return width;
    };
    while (font.pixelSize() > least_fixed_points && widest() > flow.width())
      font.setPixelSize(font.pixelSize() - 1);
    for (const QString& text : texts) flow.write(text, font, flow.left(), flow.width());
    flow.advance(8);
  }
};

void write_heading(PaperFlow& flow, const Sheet& sheet) {
  flow.write(from(sheet.title), flow.type().title, flow.left(), flow.width());
  if (!sheet.subtitle.empty()) flow.write(from(sheet.subtitle), flow.type().body, flow.left(), flow.width());
  flow.painter().setPen(QPen(flow.ink().text, 1));
  flow.painter().drawLine(QPointF(flow.left(), flow.y() + 3),
                          QPointF(flow.left() + flow.width(), flow.y() + 3));
  flow.advance(12);
}

void write_blocks(PaperFlow& flow, const std::vector<PaperBlock>& blocks) {
  for (const PaperBlock& block : blocks) {
    const double height = std::min(block.height, flow.whole_page());
    flow.make_room(height);
    flow.painter().save();
    block.paint(flow.painter(), QRectF(flow.left(), flow.y(), flow.width(), height));
    flow.painter().restore();
    flow.advance(height + 10);
  }
}

void write_foot_notes(PaperFlow& flow, const Sheet& sheet) {
  if (sheet.foot_notes.empty()) return;
  flow.make_room(24);
  flow.painter().setPen(QPen(flow.ink().text, 0.6));
  flow.painter().drawLine(QPointF(flow.left(), flow.y()), QPointF(flow.left() + flow.width() / 3, flow.y()));
  flow.advance(5);
  for (const std::string& note : sheet.foot_notes)
    flow.write(from(note), flow.type().foot, flow.left(), flow.width());
}

struct Laid {
  int pages = 0;
  bool failed = false;
};

Laid lay_out(QPainter& painter, const QRectF& page, const Sheet& sheet, const std::vector<PaperBlock>& blocks,
             const std::function<bool()>& new_page, int of_pages, PicturesStand stand) {
  const auto draw_foot = [&](QPainter& on, const QRectF& foot, int number) {
    const PaperType type = paper_type();
    on.setFont(type.foot);
    on.setPen(Qt::black);
    QString left = from(sheet.title);
    if (!sheet.date.empty()) left += QStringLiteral(", ") + from(sheet.date);
    on.drawText(foot, Qt::AlignLeft | Qt::AlignBottom,
                QFontMetricsF(type.foot).elidedText(left, Qt::ElideRight, foot.width() * 0.75));
    on.drawText(foot, Qt::AlignRight | Qt::AlignBottom, Words::tr("page %1 of %2").arg(number).arg(of_pages));
  };
  Laid laid;
  PaperFlow flow(painter, page, new_page, draw_foot);
  write_heading(flow, sheet);
  if (stand == PicturesStand::before_the_words) write_blocks(flow, blocks);
  for (const SheetPart& part : sheet.parts) std::visit(PartWriter{flow, sheet}, part);
  if (stand == PicturesStand::behind_the_words) write_blocks(flow, blocks);
  write_foot_notes(flow, sheet);
  laid.pages = flow.pages();
  laid.failed = flow.failed();
  return laid;
}

}  // namespace

int paint_on_paper(QPagedPaintDevice& device, const Sheet& sheet,
                   const std::function<std::vector<PaperBlock>(double width)>& blocks, PicturesStand stand) {
  const QRectF page(QPointF(), device.pageLayout().paintRectPoints().size());
  const std::vector<PaperBlock> pictures = blocks ? blocks(page.width()) : std::vector<PaperBlock>();
  // The pages are counted on a picture first, so that every foot can say of how many.
  QPicture nowhere;
  QPainter counting(&nowhere);
  const Laid counted = lay_out(
      counting, page, sheet, pictures, [] { return true; }, 0, stand);
  counting.end();

  QPainter painter;
  if (!painter.begin(&device)) return 0;
  painter.setRenderHint(QPainter::Antialiasing);
  painter.scale(device.logicalDpiX() / points_per_inch, device.logicalDpiY() / points_per_inch);
  const Laid laid = lay_out(
      painter, page, sheet, pictures, [&device] { return device.newPage(); }, counted.pages, stand);
  return painter.end() && !laid.failed ? laid.pages : 0;
}

}  // namespace skeinproof
