// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QBuffer>
#include <QFileInfo>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>
#include <QTemporaryDir>

#include "app/document/open_pattern.h"
#include "app/pages/page.h"
#include "app/print/paper_sheet.h"
#include "app/print/print_page.h"

namespace skeinproof {
namespace {

Sheet sheet_with_rows(int rows) {
  Sheet sheet;
  sheet.title = "Quillmarsh Yoke";
  sheet.parts.emplace_back(Paragraph{Voice::designer, "“5 (5, 6, 7)”"});
  sheet.parts.emplace_back(Paragraph{Voice::ground, "scale 261.4 g"});
  Table table;
  table.title = "Quantities";
  table.columns = {{"Role"}, {"1", Align::right}, {"(2", Align::right, true}};
  for (int row = 0; row < rows; ++row) table.rows.push_back({{words("MC"), figure(5, 0), figure(row, 1)}});
  sheet.parts.emplace_back(table);
  sheet.foot_notes = {"invented, for demonstration"};
  return sheet;
}

struct Written {
  int pages = 0;
  QByteArray bytes;
};

Written write(const Sheet& sheet, const std::vector<PaperBlock>& blocks = {}) {
  Written written;
  QBuffer buffer(&written.bytes);
  buffer.open(QIODevice::WriteOnly);
  {
    QPdfWriter writer(&buffer);
    writer.setPageLayout(QPageLayout(QPageSize(QPageSize::A4), QPageLayout::Portrait,
                                     QMarginsF(15, 15, 15, 15), QPageLayout::Millimeter));
    written.pages = paint_on_paper(writer, sheet, [&](double) { return blocks; });
  }
  return written;
}

// The count the PDF itself gives in its page tree.
int pages_in(const QByteArray& pdf) {
  const qsizetype at = pdf.lastIndexOf("/Count ");
  return at < 0 ? -1 : pdf.mid(at + 7, 6).split('\n').first().trimmed().toInt();
}

TEST(Paper, AShortSheetTakesOnePage) {
  const Written written = write(sheet_with_rows(5));
  EXPECT_EQ(written.pages, 1);
  EXPECT_EQ(pages_in(written.bytes), 1);
}

TEST(Paper, ALongTableRunsOverPages) {
  const Written written = write(sheet_with_rows(150));
  EXPECT_GT(written.pages, 3);
  EXPECT_EQ(pages_in(written.bytes), written.pages);
}

TEST(Paper, AWideTableFollowsBelow) {
  Sheet sheet;
  sheet.title = "wide";
  Table table;
  table.columns.push_back({"Role"});
  Row row{{words("MC")}};
  for (int size = 1; size <= 60; ++size) {
    table.columns.push_back({std::to_string(size), Align::right});
    row.cells.push_back(figure(1234.5, 1));
  }
  table.rows.assign(20, row);
  sheet.parts.emplace_back(table);
  EXPECT_GT(write(sheet).pages, 1);
}

TEST(Paper, APictureStaysWholeAndIsNeverHigherThanAPage) {
  std::vector<double> heights;
  const PaperBlock block{400, [&](QPainter&, const QRectF& rect) { heights.push_back(rect.height()); }};
  EXPECT_EQ(write(sheet_with_rows(5), {block, block}).pages, 2);
  heights.clear();
  const PaperBlock high{5000, [&](QPainter&, const QRectF& rect) { heights.push_back(rect.height()); }};
  EXPECT_EQ(write(sheet_with_rows(5), {high}).pages, 3) << "table, picture, foot note";
  for (const double height : heights) EXPECT_LT(height, 842);
}

TEST(Paper, WordsOfAnyLengthAreWrapped) {
  Sheet sheet;
  sheet.title = "long";
  std::string text;
  for (int i = 0; i < 3000; ++i) text += "stitch ";
  sheet.parts.emplace_back(Paragraph{Voice::worked_out, text});
  EXPECT_GT(write(sheet).pages, 2);
}

class OneSheetPage : public Page {
 public:
  explicit OneSheetPage(OpenPattern& open) : Page(open, nullptr) {}
  std::optional<Sheet> sheet() const override { return shown; }
  std::optional<Sheet> shown = sheet_with_rows(3);
};

TEST(PrintPage, AsksFirstAndPrintsNothingWhereThePersonGivesUp) {
  OpenPattern open;
  OneSheetPage page(open);
  QTemporaryDir folder;
  const QString path = folder.filePath("printed.pdf");
  int asked = 0;
  EXPECT_FALSE(print_page(page, nullptr, [&](QPrinter&, QWidget*) {
    ++asked;
    return false;
  }));
  EXPECT_EQ(asked, 1);
  EXPECT_TRUE(print_page(page, nullptr, [&](QPrinter& printer, QWidget*) {
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(path);
    return true;
  }));
  EXPECT_GT(QFileInfo(path).size(), 1000);
  page.shown.reset();
  EXPECT_FALSE(print_page(page, nullptr, [](QPrinter&, QWidget*) { return true; })) << "nothing for paper";
  EXPECT_FALSE(save_pdf(page, folder.filePath("none.pdf")));
}

}  // namespace
}  // namespace skeinproof
