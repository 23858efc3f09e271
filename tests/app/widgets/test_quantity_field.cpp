// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QLabel>
#include <QSignalSpy>
#include <QTest>
#include <QVBoxLayout>
#include <QWheelEvent>

#include "app/document/open_pattern.h"
#include "app/widgets/field_message.h"
#include "app/widgets/quantity_field.h"

namespace skeinproof {
namespace {

class QuantityFieldTest : public testing::Test {
 protected:
  QuantityFieldTest() {
    open.apply("role", [this](Pattern& pattern) {
      Role role;
      role.id = id = RoleId{++pattern.last_id};
      role.label = "MC";
      pattern.roles.push_back(role);
    });
    field = new QuantityField(QuantityFormat::yarn_length(), open, &window);
    other = new QLineEdit(&window);
    layout.addWidget(field);
    layout.addWidget(other);
    field->bind<Metres>(
        "swatch, MC", [this](const Pattern& pattern) { return pattern.role(id)->swatch; },
        [](Pattern& pattern, const std::optional<Entered<Metres>>& value) {
          pattern.roles.front().swatch = value;
        });
    window.show();
    window.activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(&window));
    field->setFocus();
  }

  void type(const QString& text) {
    field->selectAll();
    QTest::keyClicks(field, text);
  }
  std::optional<Entered<Metres>> swatch() const { return open.pattern().roles.front().swatch; }

  OpenPattern open;
  RoleId id;
  QWidget window;
  QVBoxLayout layout{&window};
  QuantityField* field = nullptr;
  QLineEdit* other = nullptr;
};

TEST_F(QuantityFieldTest, ConvertsAndRemembersWhatWasTyped) {
  type("191yd");
  QTest::keyClick(field, Qt::Key_Return);
  ASSERT_TRUE(swatch());
  EXPECT_DOUBLE_EQ(swatch()->value.value(), 191 * 0.9144);  // international yard, 1959
  EXPECT_EQ(swatch()->typed, "191yd");
  EXPECT_EQ(field->text(), "191yd");
  EXPECT_EQ(open.undo_label(), "swatch, MC");
  open.undo();
  EXPECT_FALSE(swatch());
  EXPECT_EQ(field->text(), "");
}

TEST_F(QuantityFieldTest, TakesBothDecimalMarksAndFractions) {
  for (const auto& [text, value] :
       {std::pair{"17.5", 17.5}, {"17,5", 17.5}, {"17½", 17.5}, {"17 1/2 m", 17.5}}) {
    type(QString::fromUtf8(text));
    QTest::keyClick(field, Qt::Key_Return);
    ASSERT_TRUE(swatch()) << text;
    EXPECT_DOUBLE_EQ(swatch()->value.value(), value) << text;
  }
}

TEST_F(QuantityFieldTest, LeavingTheFieldReadsIt) {
  type("20");
  EXPECT_FALSE(swatch());
  other->setFocus();
  ASSERT_TRUE(swatch());
  EXPECT_DOUBLE_EQ(swatch()->value.value(), 20);
}

TEST_F(QuantityFieldTest, ABadTextStaysWithItsReason) {
  type("20");
  QTest::keyClick(field, Qt::Key_Return);
  for (const char* bad : {"12 parsecs", "3 g", "-4", "0", "wool", "500 km"}) {
    type(bad);
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_EQ(field->text(), bad);
    EXPECT_FALSE(field->message().isEmpty()) << bad;
    EXPECT_EQ(field->accessibleDescription(), field->message());
    EXPECT_DOUBLE_EQ(swatch()->value.value(), 20) << bad;
  }
  const auto* under = window.findChild<FieldMessage*>();
  ASSERT_TRUE(under);
  EXPECT_TRUE(under->isVisible());
  EXPECT_EQ(under->text(), field->message());
  EXPECT_FALSE(under->geometry().intersects(field->geometry()));
  other->setFocus();
  open.apply("title", [](Pattern& pattern) { pattern.title = "another edit"; });
  EXPECT_EQ(field->text(), "500 km");
  EXPECT_FALSE(field->message().isEmpty());
}

TEST_F(QuantityFieldTest, EscapeGivesBackTheValueInForce) {
  type("20 m");
  QTest::keyClick(field, Qt::Key_Return);
  type("12 parsecs");
  QTest::keyClick(field, Qt::Key_Return);
  QTest::keyClick(field, Qt::Key_Escape);
  EXPECT_EQ(field->text(), "20 m");
  EXPECT_TRUE(field->message().isEmpty());
  EXPECT_EQ(field->accessibleDescription(), "");
}

TEST_F(QuantityFieldTest, AnEmptyFieldIsAnAbsentValueUnlessItMustBeThere) {
  type("20");
  QTest::keyClick(field, Qt::Key_Return);
  field->clear();
  field->set_required("A swatch length is needed.");
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_TRUE(swatch());
  EXPECT_EQ(field->message(), "A swatch length is needed.");
  field->set_required({});
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_FALSE(swatch());
}

TEST_F(QuantityFieldTest, TheSameTextAgainIsNoEdit) {
  type("20");
  QTest::keyClick(field, Qt::Key_Return);
  QSignalSpy committed(field, &QuantityField::committed);
  QTest::keyClick(field, Qt::Key_Return);
  other->setFocus();
  EXPECT_EQ(committed.count(), 0);
}

TEST_F(QuantityFieldTest, AFigureWithoutUnitIsReadInTheFirstSystem) {
  ReaderStyle reader;
  reader.imperial_first = true;
  open.set_reader(reader);
  type("100");
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_DOUBLE_EQ(swatch()->value.value(), 91.44);
  EXPECT_EQ(field->text(), "100");
  // For a metric reader “100” would say something else, so the figure is shown.
  open.set_reader({});
  EXPECT_EQ(field->text(), "91.44");
  reader = {};
  reader.numbers.mark = DecimalMark::comma;
  open.set_reader(reader);
  EXPECT_EQ(field->text(), "91,44");
}

TEST_F(QuantityFieldTest, TheWheelChangesNothing) {
  type("20");
  QTest::keyClick(field, Qt::Key_Return);
  QWheelEvent wheel(QPointF(5, 5), field->mapToGlobal(QPointF(5, 5)), {}, {0, 120}, Qt::NoButton,
                    Qt::NoModifier, Qt::NoScrollPhase, false);
  QApplication::sendEvent(field, &wheel);
  EXPECT_EQ(field->text(), "20");
  EXPECT_FALSE(wheel.isAccepted());
}

TEST_F(QuantityFieldTest, AnotherDocumentTakesABadTextAway) {
  type("12 parsecs");
  QTest::keyClick(field, Qt::Key_Return);
  Pattern pattern = open.pattern();
  pattern.roles.front().swatch = Entered<Metres>{metres(7), "7"};
  open.replace(pattern);
  EXPECT_EQ(field->text(), "7");
  EXPECT_TRUE(field->message().isEmpty());
}

TEST(QuantityText, ShowsFiguresInTheReadersStyle) {
  ReaderStyle reader;
  EXPECT_EQ(show_quantity(QuantityFormat::mass(), reader, {261.4, ""}), "261.4 g");
  EXPECT_EQ(show_quantity(QuantityFormat::number(0, 1e6, "stitches"), reader, {10944, ""}), "10,944");
  EXPECT_EQ(show_quantity(QuantityFormat::needle(), reader, {0.325, ""}), "3.25 mm");
  reader.imperial_first = true;
  EXPECT_EQ(show_quantity(QuantityFormat::cloth(), reader, {2.54, ""}), "1 in");
  EXPECT_EQ(show_quantity(QuantityFormat::cloth(), reader, {2.54, "2.54 cm"}), "2.54 cm");
}

TEST(QuantityText, ADifferenceOfClothMayBeBelowNothing) {
  const QuantityFormat difference = QuantityFormat::cloth_difference();
  ReaderStyle reader;
  const auto value = [&](const char* text) {
    const auto read = read_quantity(difference, reader, QString::fromUtf8(text));
    return read ? read->value : 999;
  };
  EXPECT_DOUBLE_EQ(value("5"), 5);
  EXPECT_DOUBLE_EQ(value("+5 cm"), 5);
  EXPECT_DOUBLE_EQ(value("-2 in"), -5.08);
  EXPECT_DOUBLE_EQ(value("\u2212"
                         "1½ in"),
                   -3.81);
  EXPECT_EQ(value("--5"), 999);
  EXPECT_EQ(value("-"), 999);
  EXPECT_EQ(value("0"), 999);
  EXPECT_EQ(show_quantity(difference, reader, {-5, "-5 cm"}), "-5 cm");
  EXPECT_EQ(show_quantity(difference, reader, {-5, ""}), QStringLiteral("−5 cm"));
  EXPECT_FALSE(read_quantity(QuantityFormat::cloth(), reader, QStringLiteral("-5")));
}

}  // namespace
}  // namespace skeinproof
