// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QTest>

#include "app/document/open_pattern.h"
#include "app/pages/yarns/yarn_figures.h"
#include "app/pages/yarns/yarn_form.h"
#include "app/pages/yarns/yarns_page.h"
#include "app/widgets/line_field.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"
#include "core/yarn/read_composition.h"
#include "tests/app/support/quillmarsh.h"

namespace skeinproof {
namespace {

class YarnsPageTest : public testing::Test {
 protected:
  YarnsPageTest() : page(open, nullptr) {
    page.resize(1280, 800);
    page.show();
    page.activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(&page));
    page.enter();
  }

  static void type(QLineEdit* field, const QString& text) {
    field->setFocus();
    field->selectAll();
    QTest::keyClicks(field, text);
    QTest::keyClick(field, Qt::Key_Return);
  }
  bool set(PartTable* table, int row, int column, const QString& text) {
    return table->model()->setData(table->model()->index(row, column), text, Qt::EditRole);
  }
  void add_yarn_named(const QString& name) {
    const int row = static_cast<int>(yarns().size());
    page.yarn_table()->setCurrentIndex(page.yarn_table()->model()->index(row, 0));
    ASSERT_TRUE(set(page.yarn_table(), row, 0, name));
  }
  QuantityField* field(const QString& name) {
    for (auto* each : page.form()->findChildren<QuantityField*>())
      if (each->accessibleName() == name) return each;
    return nullptr;
  }
  const FigureRow* figure(const QString& name) const {
    for (const FigureRow& row : page.figures()->rows())
      if (row.name == name) return &row;
    return nullptr;
  }
  int column(const PartTable* table, const QString& head) const {
    for (int at = 0; at < table->model()->columnCount(); ++at)
      if (table->part_model()->column(at).head == head) return at;
    return -1;
  }
  const std::vector<Yarn>& yarns() const { return open.pattern().yarns; }
  const std::vector<Role>& roles() const { return open.pattern().roles; }

  OpenPattern open;
  YarnsPage page;
};

TEST_F(YarnsPageTest, AnEmptyPageSaysWhereToType) {
  EXPECT_TRUE(page.figures()->rows().empty());
  EXPECT_EQ(page.yarn_table()->model()->rowCount(), 1);
  EXPECT_FALSE(page.form()->composition_line()->isEnabled());
  EXPECT_FALSE(page.sheet());
}

TEST_F(YarnsPageTest, FromABandFollowDensityThicknessAndAllowance) {
  add_yarn_named(QStringLiteral("Fieldspun"));
  EXPECT_EQ(page.form()->yarn(), yarns()[0].id);
  type(field(QStringLiteral("length of a skein")), QStringLiteral("175 m"));
  type(field(QStringLiteral("weight of a skein")), QStringLiteral("50 g"));
  EXPECT_EQ(open.undo_label(), QStringLiteral("weight of a skein, Fieldspun 50 g"));
  type(page.form()->composition_line(), QStringLiteral("100% wool"));
  ASSERT_EQ(yarns()[0].composition.size(), 1U);
  EXPECT_EQ(yarns()[0].composition[0].fibre, "wool");

  // 50 g / 175 m = 285.7 g in 1000 m; 3.5 m in a gram; 1 oz = 28.349523125 g, 1 yd = 0.9144 m by definition.
  ASSERT_NE(figure(QStringLiteral("Tex")), nullptr);
  EXPECT_EQ(figure(QStringLiteral("Tex"))->figure, QStringLiteral("285.7"));
  EXPECT_EQ(figure(QStringLiteral("Metric count"))->figure, QStringLiteral("Nm 3.50"));
  EXPECT_EQ(figure(QStringLiteral("Yards in an ounce"))->figure, QStringLiteral("108.5 yd"));
  // Density of wool: Morton and Hearle, Physical Properties of Textile Fibres.
  const FigureRow* density = figure(QStringLiteral("Density of the fibres"));
  ASSERT_NE(density, nullptr);
  EXPECT_EQ(density->figure, QStringLiteral("1.31 g/cm³"));
  EXPECT_FALSE(density->source.isEmpty());
  EXPECT_NE(figure(QStringLiteral("Thickness in the cloth")), nullptr);
  const FigureRow* allowance = figure(QStringLiteral("Official allowance"));
  ASSERT_NE(allowance, nullptr);
  EXPECT_TRUE(allowance->how.contains(QStringLiteral("13.60–18.25"))) << allowance->how.toStdString();
  EXPECT_FALSE(allowance->source.isEmpty());
}

TEST_F(YarnsPageTest, FibresThatDoNotAddUpAreTold) {
  add_yarn_named(QStringLiteral("Nibthorpe Sock"));
  type(page.form()->composition_line(), QStringLiteral("75% superwash wool, 30% polyamide"));
  ASSERT_EQ(yarns()[0].composition.size(), 2U);
  EXPECT_TRUE(page.form()->composition_problem().contains(QStringLiteral("105")))
      << page.form()->composition_problem().toStdString();
  type(page.form()->composition_line(), QStringLiteral("75% superwash wool, 25% polyamide"));
  EXPECT_TRUE(page.form()->composition_problem().isEmpty());
}

TEST_F(YarnsPageTest, AnAbsurdSkeinIsTold) {
  add_yarn_named(QStringLiteral("Long"));
  type(field(QStringLiteral("weight of a skein")), QStringLiteral("50 g"));
  type(field(QStringLiteral("length of a skein")), QStringLiteral("3 km"));
  type(field(QStringLiteral("length of a skein")), QStringLiteral("3000 m"));
  EXPECT_FALSE(page.form()->put_up_problem().isEmpty());
  type(field(QStringLiteral("length of a skein")), QStringLiteral("175 m"));
  EXPECT_TRUE(page.form()->put_up_problem().isEmpty());
}

TEST_F(YarnsPageTest, AWeightIsNoLength) {
  add_yarn_named(QStringLiteral("Fieldspun"));
  auto* length = field(QStringLiteral("length of a skein"));
  type(length, QStringLiteral("50 g"));
  EXPECT_EQ(length->text(), QStringLiteral("50 g"));
  EXPECT_FALSE(length->message().isEmpty());
  EXPECT_FALSE(yarns()[0].put_up.length);
}

TEST_F(YarnsPageTest, ABadTextDoesNotWanderToAnotherYarn) {
  add_yarn_named(QStringLiteral("A"));
  add_yarn_named(QStringLiteral("B"));
  page.yarn_table()->set_current_key(yarns()[0].id.value);
  type(page.form()->composition_line(), QStringLiteral("75 wool"));
  EXPECT_FALSE(page.form()->composition_line()->message().isEmpty());
  page.yarn_table()->set_current_key(yarns()[1].id.value);
  EXPECT_TRUE(page.form()->composition_line()->text().isEmpty());
  EXPECT_TRUE(page.form()->composition_line()->message().isEmpty());
}

TEST_F(YarnsPageTest, AFibreTheTablesDoNotKnowKeepsItsWords) {
  add_yarn_named(QStringLiteral("Moon"));
  type(page.form()->composition_line(), QStringLiteral("100% moonfluff"));
  EXPECT_TRUE(yarns()[0].composition[0].fibre.empty());
  const FigureRow* row = figure(QStringLiteral("moonfluff"));
  ASSERT_NE(row, nullptr);
  EXPECT_EQ(row->figure, QStringLiteral("–"));
  EXPECT_EQ(figure(QStringLiteral("Density of the fibres")), nullptr);
}

TEST_F(YarnsPageTest, ColoursAreAddedWithTheirSwatches) {
  add_yarn_named(QStringLiteral("Fieldspun"));
  PartTable* table = page.role_table();
  ASSERT_TRUE(set(table, 0, 0, QStringLiteral("MC")));
  ASSERT_EQ(roles().size(), 1U);
  EXPECT_EQ(roles()[0].yarn, yarns()[0].id);
  const int swatch = column(table, QStringLiteral("Swatch"));
  ASSERT_TRUE(set(table, 0, swatch, QStringLiteral("20 m")));
  EXPECT_EQ(open.undo_label(), QStringLiteral("swatch, MC 20 m"));
  EXPECT_EQ(roles()[0].swatch->value.value(), 20);
}

TEST_F(YarnsPageTest, StrandsAreWholeAndAtLeastOne) {
  open.replace(quillmarsh_draft());
  PartTable* table = page.role_table();
  const int strands = column(table, QStringLiteral("Strands"));
  for (const char* bad : {"0", "1.5", "13", "two", ""}) {
    EXPECT_FALSE(set(table, 0, strands, QString::fromLatin1(bad))) << bad;
    EXPECT_EQ(roles()[0].strands, 1) << bad;
    EXPECT_FALSE(table->part_model()->bad_reason(0, strands).isEmpty()) << bad;
  }
  EXPECT_TRUE(set(table, 0, strands, QStringLiteral("2")));
  EXPECT_EQ(roles()[0].strands, 2);
}

TEST_F(YarnsPageTest, ColoursDoNotGoAlongInACircle) {
  open.replace(quillmarsh_draft());
  PartTable* table = page.role_table();
  const int along = column(table, QStringLiteral("Along with"));
  ASSERT_TRUE(set(table, 1, along, QStringLiteral("MC")));
  EXPECT_EQ(roles()[1].goes_along_with, roles()[0].id);
  EXPECT_FALSE(set(table, 0, along, QStringLiteral("CC1")));
  EXPECT_FALSE(roles()[0].goes_along_with);
  EXPECT_FALSE(table->part_model()->bad_reason(0, along).isEmpty());
}

TEST_F(YarnsPageTest, ADeletedYarnLeavesItsColours) {
  open.replace(quillmarsh_draft());
  const YarnId gone = yarns()[0].id;
  page.yarn_table()->set_current_key(gone.value);
  page.yarn_table()->erase();
  EXPECT_EQ(open.pattern().yarn(gone), nullptr);
  ASSERT_EQ(roles().size(), 4U);
  EXPECT_FALSE(roles()[0].yarn);
  open.undo();
  EXPECT_EQ(open.pattern(), quillmarsh_draft());
}

TEST_F(YarnsPageTest, GoesToFindsAndPrints) {
  open.replace(quillmarsh_draft());
  EXPECT_TRUE(page.go_to(roles()[2].id.value));
  EXPECT_EQ(page.role_table()->current_row(), 2);
  EXPECT_TRUE(page.go_to(yarns()[0].id.value));
  EXPECT_FALSE(page.go_to(0));
  EXPECT_TRUE(page.find_next(QStringLiteral("ember")));
  EXPECT_EQ(page.role_table()->current_row(), 3);
  EXPECT_FALSE(page.find_next(QStringLiteral("nowhere")));
  const auto sheet = page.sheet();
  ASSERT_TRUE(sheet);
  EXPECT_GE(sheet->parts.size(), 3U);
  EXPECT_FALSE(sheet->foot_notes.empty());
}

TEST(YarnFigures, FollowTheReader) {
  PutUp put_up;
  put_up.length = Entered<Metres>{metres(175), {}};
  put_up.weight = Entered<Grams>{grams(50), {}};
  ReaderStyle metric;
  EXPECT_EQ(put_up_line(put_up, metric), QStringLiteral("175 m / 50 g"));
  EXPECT_EQ(other_system(put_up.length, metric), QStringLiteral("191 yd"));
  EXPECT_EQ(other_system(put_up.weight, metric), QStringLiteral("1.76 oz"));
  ReaderStyle comma = metric;
  comma.numbers.mark = DecimalMark::comma;
  EXPECT_EQ(other_system(put_up.weight, comma), QStringLiteral("1,76 oz"));
  EXPECT_EQ(put_up_line(PutUp(), metric), QStringLiteral("–"));
}

}  // namespace
}  // namespace skeinproof
