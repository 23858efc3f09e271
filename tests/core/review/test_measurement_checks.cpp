// SPDX-License-Identifier: GPL-3.0-or-later
// Measurements: each check where it fires and near it where it stays silent.
#include <gtest/gtest.h>

#include "tests/core/review/checked_text.h"

namespace skeinproof {
namespace {

using testing::CheckedText;
using testing::lampwick;
using testing::quillmarsh;
using testing::whole;

using Places = std::vector<std::string>;

CheckedText text(const std::string& words, std::vector<PartTold> parts = {}) {
  return CheckedText(new_pattern(), words, std::move(parts));
}
const std::string sizes = "Sizes 1 (2, 3, 4, 5).\n";

TEST(MeasurementChecks, CentimetresAndInchesAgree) {
  const CheckedText yoke(quillmarsh());
  EXPECT_EQ(yoke.where("M1"), Places{" 7"});
  const auto found = yoke.found("M1");
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_NE(yoke.text_with(found[0]).find("129, 140, 149"), std::string::npos);
  EXPECT_EQ(CheckedText(lampwick()).where("M1"), Places{" 4"});  // 20 cm is 7¾ in
  const CheckedText right(quillmarsh(), testing::submitted(quillmarsh(), {{"145", "140"}}));
  EXPECT_TRUE(right.found("M1").empty());
}

TEST(MeasurementChecks, AHouseOfWholeInchesRoundsMore) {
  EXPECT_TRUE(
      text(sizes + "Finished bust 85 (95, 105, 115, 125) cm / 33 (37, 41, 45, 49) in.").found("M1").empty());
  EXPECT_EQ(text(sizes + "Finished bust 85 (95, 105, 115, 125) cm / 33 (39, 41, 45, 49) in.").where("M1"),
            Places{" 2"});
}

TEST(MeasurementChecks, QuartersOfAnInchMayBeDecimals) {
  EXPECT_TRUE(text(sizes + "Finished bust 80 (87.5, 95, 102.5, 110) cm / 31.5 (34.5, 37.5, 40.25, 43.25) in.")
                  .found("M1")
                  .empty());
  EXPECT_EQ(text(sizes + "Finished bust 80 (87.5, 95, 102.5, 110) cm / 31.5 (35, 37.5, 40.25, 43.25) in.")
                .where("M1"),
            Places{" 2"});
  // Tenths are as fine as they look.
  EXPECT_EQ(text(sizes + "Finished bust 80 (87.5, 95, 102.5, 110) cm / 31.5 (34.7, 37.4, 40.4, 43.3) in.")
                .where("M1"),
            Places{" 2"});
}

TEST(MeasurementChecks, StepsLieNearTheirMedian) {
  EXPECT_EQ(CheckedText(quillmarsh()).where("M2"), (Places{" 6,7", " 7,8"}));
  const CheckedText right(quillmarsh(), testing::submitted(quillmarsh(), {{"145", "140"}}));
  EXPECT_TRUE(right.found("M2").empty());
  EXPECT_TRUE(text(sizes + "Finished bust 80 (90, 100, 112, 124) cm.").found("M2").empty());
  EXPECT_EQ(text(sizes + "Finished bust 80 (90, 100, 125, 135) cm.").where("M2"), Places{" 3,4"});
}

TEST(MeasurementChecks, FinishedAndToFitLieTheEaseApart) {
  const CheckedText yoke(quillmarsh());
  EXPECT_EQ(yoke.where("M3"), Places{" 7"});
  const CheckedText right(quillmarsh(), testing::submitted(quillmarsh(), {{"145", "140"}}));
  EXPECT_TRUE(right.found("M3").empty());
  const std::string fit = "To fit bust 75 (85, 95, 105, 115) cm. ";
  EXPECT_TRUE(
      text(sizes + fit + "Finished bust 82 (92, 102, 112, 122) cm, 5–10 cm ease.").found("M3").empty());
  EXPECT_EQ(text(sizes + fit + "Finished bust 82 (92, 109, 112, 122) cm, 5–10 cm ease.").where("M3"),
            Places{" 3"});
}

TEST(MeasurementChecks, ABustIsFinishedOrToFit) {
  EXPECT_EQ(text(sizes + "Bust 82 (92, 102, 112, 122) cm.").found("M3").size(), 1u);
  EXPECT_TRUE(text(sizes + "Finished bust 82 (92, 102, 112, 122) cm.").found("M3").empty());
  EXPECT_TRUE(text(sizes + "To fit bust 82 (92, 102, 112, 122) cm.").found("M3").empty());
  EXPECT_TRUE(CheckedText(lampwick()).found("M3").empty());  // a foot is no bust
}

TEST(MeasurementChecks, TheSchematicSaysWhatTheTextSays) {
  const std::string bust = "Finished bust 80 (90, 100, 110, 120) cm.\n\n";
  const std::string same = "Schematic\nFinished bust 80 (90, 100, 110, 120) cm.\n";
  const std::string other = "Schematic\nFinished bust 80 (90, 102, 110, 120) cm.\n";
  EXPECT_TRUE(text(sizes + bust + same).found("M4").empty());
  EXPECT_FALSE(text(sizes + bust + same).not_checked("M4"));
  EXPECT_EQ(text(sizes + bust + other).where("M4"), Places{" 3"});
  EXPECT_TRUE(text(sizes + bust).not_checked("M4"));
}

TEST(MeasurementChecks, JoinedStitchesAddUp) {
  EXPECT_TRUE(text(sizes + "Cast on 80 sts.").not_checked("M5"));
}

TEST(MeasurementChecks, LengthsNeverFall) {
  EXPECT_TRUE(text(sizes + "Body length 40 (41, 41, 42, 43) cm.").found("M6").empty());
  const auto found = text(sizes + "Body length 40 (42, 41, 42, 43) cm.").found("M6");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].sizes, (std::vector<std::string>{"2", "3"}));
}

}  // namespace
}  // namespace skeinproof
