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

  // Numbers and their words stand in the margin of what follows them.
  double margin = 0;
  double left() const { return flow.left() + margin; }
  double width() const { return flow.width() - margin; }

  void operator()(const Heading& heading) {
    constexpr double number_width = 34, word_width = 36;
    margin = number_width + word_width;
    flow.advance(3);
    flow.make_room(60);
    flow.painter().setPen(QPen(flow.ink().text, 0.6));
    flow.painter().drawLine(QPointF(flow.left(), flow.y()), QPointF(flow.left() + flow.width(), flow.y()));
    flow.advance(4);
    flow.painter().setFont(flow.type().strong);
    const QRectF line(flow.left(), flow.y(), margin, 14);
    flow.painter().drawText(line, Qt::AlignLeft | Qt::AlignTop, from(heading.number));
    flow.painter().drawText(line.adjusted(number_width, 0, 0, 0), Qt::AlignLeft | Qt::AlignTop,
                            from(heading.word));
    flow.write(from(heading.text), flow.type().strong, left(), width());
    flow.advance(2);
  }
  void operator()(const Choices& choices) const {
    constexpr double box = 8, gap = 6, least_room = 120, after = 16;
    const QFont& font = flow.type().body;
    const double height = QFontMetricsF(font).height() * 1.25;
    double x = left();
    flow.make_room(height);
    for (const TickBox& choice : choices.choices) {
      const QString text = from(choice.text);
      const double text_width = QFontMetricsF(font).horizontalAdvance(text);
      const double needed = box + gap + text_width + (choice.room ? gap + least_room : 0);
      if (x > left() && x + needed > left() + width()) {
        flow.advance(height);
        flow.make_room(height);
        x = left();
      }
      const double base = flow.y() + height - 5;
      flow.painter().setPen(QPen(flow.ink().text, 0.6));
      flow.painter().drawRect(QRectF(x, base - box, box, box));
      const double text_left = x + box + gap;
      if (text_width > width() - box - gap) {
        flow.write(text, font, text_left, width() - box - gap);
        if (choice.room) flow.advance(height);
        x = left();
        continue;
      }
      flow.painter().setFont(font);
      flow.painter().drawText(QPointF(text_left, base), text);
      x = text_left + text_width + after;
      if (!choice.room) continue;
      flow.painter().drawLine(QPointF(text_left + text_width + gap, base + 1),
                              QPointF(left() + width(), base + 1));
      flow.advance(height);
      flow.make_room(height);
      x = left();
    }
    if (x > left()) flow.advance(height);
    flow.advance(4);
  }
  void operator()(const Paragraph& paragraph) const {
    const bool designer = paragraph.voice == Voice::designer;
    const bool ground = paragraph.voice == Voice::ground;
    const QFont& font = designer ? flow.type().words : ground ? flow.type().foot : flow.type().body;
    const double indent = ground ? 12 : 0;
    if (ground) {
      // The foot on which a figure stands.
      flow.make_room(14);
      flow.painter().setPen(QPen(flow.ink().text, 2));
      flow.painter().drawLine(QPointF(left(), flow.y() + 6), QPointF(left() + 8, flow.y() + 6));
    }
    flow.write(from(paragraph.text), font, left() + indent, width() - indent);
    flow.advance(5);
  }
  void operator()(const Table& table) {
    margin = 0;
    write_table(flow, table, sheet.numbers);
  }
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
    while (font.pixelSize() > least_fixed_points && widest() > width())
      font.setPixelSize(font.pixelSize() - 1);
    for (const QString& text : texts) flow.write(text, font, left(), width());
    flow.advance(margin > 0 ? 4 : 8);
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
  PartWriter writer{flow, sheet};
  for (const SheetPart& part : sheet.parts) std::visit(writer, part);
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
