// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/assessment_json.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "core/need/evidence.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using nlohmann::json;
using testing::quillmarsh;

json json_of(const Pattern& pattern) { return json::parse(assessment_json(pattern, assess(pattern))); }

TEST(AssessmentJson, EveryRoleAndSizeCarriesItsEvidenceAndChance) {
  const Pattern pattern = quillmarsh();
  const auto evidence = gather_evidence(pattern, assess(pattern));
  const json written = json_of(pattern);
  for (std::size_t role = 0; role < 4; ++role)
    for (std::size_t i = 0; i < 9; ++i) {
      const json& size = written["roles"][role]["sizes"][i];
      EXPECT_EQ(size["chance_sufficient"], *evidence[role].sizes[i].chance_sufficient);
      for (const char* road : {"stitches", "sample", "printed_counts"}) {
        const json& one = size["evidence"][road];
        EXPECT_LE(one["low_m"].get<double>(), size["planned_m"].get<double>()) << road;
        EXPECT_GE(one["high_m"].get<double>(), size["planned_m"].get<double>()) << road;
      }
    }
  const json& counts = written["roles"][0]["sizes"][3]["evidence"]["printed_counts"];
  EXPECT_NEAR(counts["low_m"].get<double>(), 1050, 1e-9);
  EXPECT_NEAR(counts["high_m"].get<double>(), 1098.2, 1.5);
  EXPECT_EQ(counts["told_low"], "4");
  EXPECT_EQ(counts["told_high"], "2");
}

TEST(AssessmentJson, WhatIsUnknownIsLeftOut) {
  Pattern pattern = quillmarsh();
  for (Role& role : pattern.roles) role.printed_count = {};
  pattern.weighings.clear();
  const json size = json_of(pattern)["roles"][0]["sizes"][3];
  EXPECT_FALSE(size["evidence"].contains("printed_counts"));
  EXPECT_FALSE(size["evidence"].contains("sample"));
  EXPECT_TRUE(size["evidence"].contains("stitches"));
  EXPECT_TRUE(size.contains("chance_sufficient"));
  pattern.yarns[0].put_up.length.reset();
  EXPECT_FALSE(json_of(pattern)["roles"][0]["sizes"][3].contains("chance_sufficient"));
  pattern.pieces.clear();
  const json bare = json_of(pattern)["roles"][0]["sizes"][3];
  EXPECT_TRUE(bare.contains("missing"));
  EXPECT_FALSE(bare.contains("evidence"));
  EXPECT_EQ(assessment_json(pattern, assess(pattern)).find("null"), std::string::npos);
}

TEST(AssessmentJson, CountsAloneStillSaySomething) {
  Pattern pattern = quillmarsh();
  pattern.pieces.clear();
  pattern.weighings.clear();
  const json size = json_of(pattern)["roles"][0]["sizes"][3];
  EXPECT_TRUE(size.contains("missing"));
  EXPECT_EQ(size["rests_on"], "printed_counts");
  EXPECT_EQ(size["low_m"], size["evidence"]["printed_counts"]["low_m"]);
  EXPECT_NEAR(size["high_m"].get<double>(), 1123.46, 0.01);
  EXPECT_GT(size["chance_sufficient"].get<double>(), 0.9);
  EXPECT_FALSE(size.contains("planned_m"));
}

}  // namespace
}  // namespace skeinproof
