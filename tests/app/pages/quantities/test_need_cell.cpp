// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

#include "app/pages/quantities/need_cell.h"
#include "app/pages/quantities/need_cell_painter.h"
#include "tests/app/support/quillmarsh.h"

namespace skeinproof {
namespace {

class NeedCellTest : public testing::Test {
 protected:
  Pattern pattern = quillmarsh_draft();
  ReaderStyle reader;

  NeedCell cell(std::size_t role, std::size_t size, Layer layer = Layer::planned, bool words = true) {
    const Assessment assessment = assess(pattern);
    return need_cell({pattern, assessment, layer, reader, words}, role, size);
  }
  NeedCell total(std::size_t size) {
    const Assessment assessment = assess(pattern);
    return total_cell({pattern, assessment, Layer::planned, reader, true}, size);
  }
};

TEST_F(NeedCellTest, SaysCountLengthShareAndTheTextThatDiffers) {
  const NeedCell shown = cell(0, 4);
  EXPECT_EQ(shown.count, "7");
  EXPECT_EQ(shown.length, "1,203");
  EXPECT_EQ(shown.word, "87 %");
  ASSERT_TRUE(shown.words);
  EXPECT_EQ(*shown.words, "8");
  EXPECT_EQ(shown.spoken,
            "MC Peat 08, size 5, planned: 7 skeins, 1,203 metres, last skein 87 percent, the text says 8.");
}

TEST_F(NeedCellTest, KeepsSilentWhereTheTextAgrees) { EXPECT_FALSE(cell(0, 0).words); }

TEST_F(NeedCellTest, TellsAMissingCountFromNothingPrintedAtAll) {
  const NeedCell missing = cell(2, 8);
  ASSERT_TRUE(missing.words);
  EXPECT_TRUE(missing.words->isEmpty());
  EXPECT_TRUE(missing.spoken.endsWith(", the text gives none."));
  pattern.roles[2].printed_count = {};
  EXPECT_FALSE(cell(2, 8).words);
}

TEST_F(NeedCellTest, ComparesTheTextWithThePlanInEveryLayer) {
  // Knitted alone, size 4 of MC takes six skeins; the text's seven is what the plan says too.
  const NeedCell knitted = cell(0, 3, Layer::knitted);
  EXPECT_EQ(knitted.count, "6");
  EXPECT_FALSE(knitted.words);
}

TEST_F(NeedCellTest, NamesABrimfulAndATippingSkein) {
  const NeedCell brimful = cell(1, 0, Layer::knitted);
  EXPECT_EQ(brimful.state, NeedCell::State::brimful);
  EXPECT_EQ(brimful.word, "brimful");
  EXPECT_EQ(brimful.count, "1");
  const NeedCell tips = cell(0, 8, Layer::knitted);
  EXPECT_EQ(tips.state, NeedCell::State::tips_over);
  EXPECT_EQ(tips.word, "tips over");
  // The share stays in what is read aloud.
  EXPECT_TRUE(tips.spoken.contains("last skein 4 percent, tips over")) << tips.spoken.toStdString();
}

TEST_F(NeedCellTest, SaysWhyAFigureIsNotChecked) {
  pattern.pieces.clear();
  pattern.weighings.clear();
  const NeedCell shown = cell(0, 4);
  EXPECT_EQ(shown.state, NeedCell::State::not_checked);
  EXPECT_EQ(shown.count, "–");
  EXPECT_EQ(shown.length, "–");
  EXPECT_EQ(shown.word, "not checked");
  EXPECT_FALSE(shown.reason.isEmpty());
  EXPECT_TRUE(shown.spoken.contains(shown.reason));
  EXPECT_FALSE(shown.known);
}

TEST_F(NeedCellTest, KeepsTheLengthWhereThePutUpHasNone) {
  pattern.yarns[0].put_up.length.reset();
  const NeedCell shown = cell(0, 4);
  EXPECT_EQ(shown.count, "–");
  EXPECT_EQ(shown.length, "1,203");
  EXPECT_TRUE(shown.known);
  EXPECT_TRUE(shown.reason.contains("put-up"));
}

TEST_F(NeedCellTest, ReadsInYardsAndWithTheReadersMarks) {
  reader.imperial_first = true;
  EXPECT_EQ(cell(0, 4).length, "1,316");  // 1202.9 m / 0.9144
  EXPECT_TRUE(cell(0, 4).spoken.contains("1,316 yards"));
  reader.imperial_first = false;
  reader.numbers.group_thousands = false;
  EXPECT_EQ(cell(0, 4).length, "1203");
}

TEST_F(NeedCellTest, AddsTheRolesAndWhatTheListsAddTo) {
  EXPECT_EQ(total(0).count, "9");
  EXPECT_EQ(total(0).word, "lists 8");
  EXPECT_EQ(total(1).count, "9");
  EXPECT_EQ(total(1).word, "");
  EXPECT_EQ(total(8).count, "14");
  pattern.printed_total.set(0, Entered<double>{8, "8"});
  ASSERT_TRUE(total(0).words);
  EXPECT_EQ(*total(0).words, "8");
  pattern.yarns[0].put_up.length.reset();
  EXPECT_EQ(total(0).count, "–");
}

QImage painted(const NeedCell& cell, const Ink& ink) {
  QImage image(84, 64, QImage::Format_RGB32);
  image.fill(ink.base);
  QPainter painter(&image);
  QFont font;
  font.setPixelSize(13);
  const Type type = type_of(font);
  paint_need_cell(painter, image.rect(), cell, {ink, type, 1, false});
  return image;
}

TEST_F(NeedCellTest, DrawsEveryStateApartInOneInk) {
  const Ink paper = paper_ink();
  std::vector<QImage> images;
  NeedCell shown = cell(0, 3);
  images.push_back(painted(shown, paper));
  images.push_back(painted(cell(0, 4), paper));
  images.push_back(painted(cell(1, 0, Layer::knitted), paper));
  images.push_back(painted(cell(0, 8, Layer::knitted), paper));
  pattern.pieces.clear();
  pattern.weighings.clear();
  images.push_back(painted(cell(0, 4), paper));
  for (std::size_t i = 0; i < images.size(); ++i)
    for (std::size_t j = i + 1; j < images.size(); ++j) EXPECT_NE(images[i], images[j]) << i << " and " << j;
  for (const QImage& image : images) EXPECT_TRUE(image.allGray());
}

// Where the bar is filled, at its half height.
bool filled_at(const QImage& image, double share, const Ink& ink) {
  return image.pixel(static_cast<int>(7 + 70 * share), 53) == ink.fill.rgb();
}

TEST_F(NeedCellTest, FillsTheBarToTheShareOfTheLastSkein) {
  const Ink ink = ink_of(QPalette(QColor(0xec, 0xec, 0xe8)));
  const QImage image = painted(cell(0, 4), ink);  // 87 %
  EXPECT_TRUE(filled_at(image, 0.10, ink));
  EXPECT_TRUE(filled_at(image, 0.84, ink));
  EXPECT_FALSE(filled_at(image, 0.91, ink));
  pattern.pieces.clear();
  pattern.weighings.clear();
  EXPECT_FALSE(filled_at(painted(cell(0, 4), ink), 0.10, ink));
}

TEST_F(NeedCellTest, NothingIsCutAtItsWidth) {
  QFont font;
  font.setPixelSize(26);
  const Type type = type_of(font);
  NeedCell wide = cell(0, 4);
  wide.count = "123";
  wide.length = "123,456";
  EXPECT_GT(need_cell_width(wide, type, 2), need_cell_width(cell(0, 4), type, 2));
  EXPECT_GE(need_cell_width(wide, type, 2), QFontMetricsF(type.count).horizontalAdvance(wide.count) +
                                                QFontMetricsF(type.body).horizontalAdvance(wide.length) + 28);
  EXPECT_GE(need_cell_width(cell(3, 0), type, 2), 168);
}

}  // namespace
}  // namespace skeinproof
