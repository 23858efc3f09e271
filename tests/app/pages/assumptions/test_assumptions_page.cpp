// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

#include "app/document/open_pattern.h"
#include "app/pages/assumptions/assumptions_page.h"
#include "app/pages/assumptions/sensitivity_list.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"
#include "core/need/constants.h"
#include "tests/app/support/quillmarsh.h"

namespace skeinproof {
namespace {

class AssumptionsPageTest : public testing::Test {
 protected:
  AssumptionsPageTest() : page(open, nullptr) {
    page.resize(1280, 800);
    page.show();
    open.replace(loops_from_gauge());
    wait();
  }

  static Pattern loops_from_gauge() {
    Pattern pattern = quillmarsh_draft();
    for (Fabric& fabric : pattern.fabrics) {
      fabric.loop_source = LoopSource::from_gauge;
      fabric.typed_loop.reset();
    }
    pattern.basis = Basis::stitches;
    return pattern;
  }
  void wait() {
    QSignalSpy ranked(&page, &AssumptionsPage::ranked);
    if (!page.is_ranking()) return;
    ASSERT_TRUE(ranked.wait(60000));
  }
  static int row_of(std::string_view key) {
    for (std::size_t row = 0; row < constants().size(); ++row)
      if (constants()[row].key == key) return static_cast<int>(row);
    return -1;
  }
  bool type(std::string_view key, const QString& text) {
    return page.table()->model()->setData(page.table()->model()->index(row_of(key), 1), text, Qt::EditRole);
  }
  QString cell(std::string_view key, int column) const {
    return page.table()->part_model()->cell_text(row_of(key), column);
  }
  const std::vector<SensitivityRow>& ranking() const { return page.sensitivity()->sensitivity()->rows(); }

  OpenPattern open;
  AssumptionsPage page;
};

TEST_F(AssumptionsPageTest, EveryConstantStandsWithItsDefaultAndSource) {
  ASSERT_EQ(page.table()->model()->rowCount(), static_cast<int>(constants().size()));
  EXPECT_EQ(cell("k_washed", 1), QStringLiteral("23.1"));
  EXPECT_EQ(cell("k_washed", 3), QStringLiteral("23.1"));
  for (int row = 0; row < page.table()->model()->rowCount(); ++row)
    EXPECT_FALSE(page.table()->part_model()->cell_text(row, 4).isEmpty());
}

TEST_F(AssumptionsPageTest, WhatMovesMostStandsFirst) {
  ASSERT_GE(ranking().size(), 3u);
  EXPECT_EQ(ranking().front().key, QStringLiteral("k_washed"));
  // Nearly all of MC is yarn in stitches: a tenth on K is √1.1 − 1 = 4.9 % on the loop.
  EXPECT_NEAR(ranking().front().higher, 0.0488, 0.002);
}

TEST_F(AssumptionsPageTest, AChangeIsOneStepOfUndoAndMovesThePicture) {
  const double before = open.assessment().roles[0].sizes[0].planned.value();
  ASSERT_TRUE(type("k_washed", QStringLiteral("21")));
  wait();
  EXPECT_LT(open.assessment().roles[0].sizes[0].planned.value(), before);
  EXPECT_EQ(page.attention(), QStringLiteral("1"));
  EXPECT_EQ(
      open.undo_label(),
      QStringLiteral("assumption, %1 21")
          .arg(QString::fromUtf8(constants()[static_cast<std::size_t>(row_of("k_washed"))].name.data())));
  open.undo();
  wait();
  EXPECT_EQ(open.assessment().roles[0].sizes[0].planned.value(), before);
  EXPECT_TRUE(page.attention().isEmpty());
}

TEST_F(AssumptionsPageTest, OutsideItsLimitsItStaysInTheCellAndChangesNothing) {
  EXPECT_FALSE(type("k_washed", QStringLiteral("500")));
  EXPECT_FALSE(open.can_undo());
  EXPECT_EQ(cell("k_washed", 1), QStringLiteral("500"));
  EXPECT_FALSE(type("k_washed", QStringLiteral("loose")));
  EXPECT_FALSE(open.can_undo());
}

TEST_F(AssumptionsPageTest, AnEmptyCellPutsTheDefaultBack) {
  ASSERT_TRUE(type("k_washed", QStringLiteral("21")));
  ASSERT_TRUE(type("k_washed", QString()));
  EXPECT_EQ(own_constant(open.pattern(), "k_washed"), nullptr);
  EXPECT_EQ(cell("k_washed", 1), QStringLiteral("23.1"));
}

TEST_F(AssumptionsPageTest, TheChosenOneSaysWhichCountsFollow) {
  ASSERT_TRUE(page.table()->set_current_key(static_cast<std::uint32_t>(row_of("k_washed") + 1)));
  const auto& rows = page.figures()->rows();
  ASSERT_FALSE(rows.empty());
  EXPECT_EQ(rows.front().figure, QStringLiteral("23.1"));
  std::size_t steps = 0;
  for (const FigureRow& row : rows) steps += row.figure.contains(QStringLiteral("skeins")) ? 1u : 0u;
  EXPECT_GT(steps, 0u);
  ASSERT_EQ(page.sensitivity()->currentIndex().row(), 0);
}

TEST_F(AssumptionsPageTest, ThePictureLeadsToTheTable) {
  page.sensitivity()->setCurrentIndex(page.sensitivity()->model()->index(1, 0));
  EXPECT_EQ(QString::fromUtf8(constants()[page.table()->current_key() - 1].key.data()), ranking()[1].key);
}

TEST_F(AssumptionsPageTest, PrintsTheTableAndThePicturesFigures) {
  const auto sheet = page.sheet();
  ASSERT_TRUE(sheet);
  EXPECT_EQ(sheet->parts.size(), 2u);
}

}  // namespace
}  // namespace skeinproof
