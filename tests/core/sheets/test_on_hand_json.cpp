// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "core/sheets/assessment_json.h"
#include "tests/support/samples.h"

namespace skeinproof::testing {
namespace {

using Json = nlohmann::json;

Json assessed(const Pattern& pattern) { return Json::parse(assessment_json(pattern, assess(pattern))); }

TEST(OnHandJson, YokePullover) {
  const Json json = assessed(quillmarsh());
  const Json& roles = json.at("on_hand");
  ASSERT_EQ(roles.size(), 4u);
  const struct {
    const char *label, *verdict;
    double have_m;
  } wanted[] = {
      {"MC", "Enough", 1368.5}, {"CC1", "Enough", 259}, {"CC2", "Enough", 126}, {"CC3", "Not enough", 38.75}};
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_EQ(roles[i].at("label"), wanted[i].label);
    EXPECT_EQ(roles[i].at("verdict"), wanted[i].verdict);
    EXPECT_NEAR(roles[i].at("have_m").get<double>(), wanted[i].have_m, 1e-6);
    EXPECT_EQ(roles[i].at("size"), "4");
    EXPECT_FALSE(roles[i].at("yarns").empty());
  }
  EXPECT_NEAR(roles[3].at("short_m").get<double>(), 12.1, 0.05);
  EXPECT_NEAR(roles[0].at("over_m").get<double>(), 1368.5 - 2.1 - 1069.9, 0.06);
  ASSERT_EQ(json.at("lot_plan").size(), 1u);
  EXPECT_EQ(json.at("lot_plan")[0].at("lots")[1].at("pieces")[0].at("name"), "Sleeves");
}

TEST(OnHandJson, SocksAndWhatTheyCouldBecome) {
  const Json json = assessed(lampwick());
  const Json& become = json.at("could_become");
  EXPECT_EQ(become.at("in_force").at("best").at("size"), "4");
  ASSERT_EQ(become.at("rungs").size(), 4u);
  const char* sizes[] = {"2", "3", "4", "5"};
  for (std::size_t i = 0; i < 4; ++i) EXPECT_EQ(become.at("rungs")[i].at("best").at("size"), sizes[i]);
  EXPECT_EQ(become.at("next").at("size"), "5");
  EXPECT_EQ(json.at("on_hand").size(), 2u);
}

TEST(OnHandJson, NothingAtHomeNothingSaid) {
  Pattern pattern = quillmarsh();
  pattern.on_hand.clear();
  const Json json = assessed(pattern);
  EXPECT_TRUE(json.at("on_hand").empty());
  EXPECT_TRUE(json.at("lot_plan").empty());
  EXPECT_FALSE(json.contains("could_become"));
}

}  // namespace
}  // namespace skeinproof::testing
