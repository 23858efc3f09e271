// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/cautions.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/pattern/edits.h"

namespace skeinproof {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

Yarn of(const char* fibre) {
  Yarn yarn;
  yarn.composition = {{fibre, fibre, {100, {}}}};
  return yarn;
}

TEST(CautionsOfYarns, AYarnThatIsOnlyThoughtOfSaysNothingOfThePattern) {
  Pattern pattern = new_pattern();
  pattern.item = "vest";
  Yarn mohair = of("mohair");
  mohair.id = take_id<YarnId>(pattern);
  pattern.yarns = {mohair};
  EXPECT_THAT(cautions_for(pattern), Contains(HasSubstr("keep away from fire")));
  add_candidate(pattern, mohair.id);
  EXPECT_THAT(cautions_for(pattern), IsEmpty());
  EXPECT_THAT(cautions_for(pattern, {&pattern.yarns.front()}), Contains(HasSubstr("keep away from fire")));
}

TEST(CautionsOfYarns, FollowTheYarnThatIsAskedAbout) {
  Pattern pattern = new_pattern();
  pattern.item = "pot holder";
  const Yarn cotton = of("cotton"), acrylic = of("acrylic"), rubber = of("elastodiene"),
             soy = of("protein_soy");
  EXPECT_THAT(cautions_for(pattern, {&cotton}), IsEmpty());
  EXPECT_THAT(cautions_for(pattern, {&acrylic}), Contains(HasSubstr("melting")));
  EXPECT_THAT(cautions_for(pattern, {&cotton, &rubber}), Contains(HasSubstr("latex")));
  EXPECT_THAT(cautions_for(pattern, {&soy}), Contains(HasSubstr("soy")));
}

TEST(CautionsOfYarns, AgesInTheSizesCallForThoseOfInfantsAndChildren) {
  Pattern pattern = new_pattern();
  pattern.item = "hooded jacket with a cord";
  const Yarn angora = of("angora");
  pattern.sizes.front().label = "12 years";
  EXPECT_THAT(cautions_for(pattern, {&angora}), Not(Contains(HasSubstr("shedding"))));
  pattern.sizes.front().label = "0–3 months";
  const auto cautions = cautions_for(pattern, {&angora});
  EXPECT_THAT(cautions, Contains(HasSubstr("shedding")));
  EXPECT_THAT(cautions, Contains(HasSubstr("EN 14682")));
  EXPECT_THAT(cautions, Contains(HasSubstr("16 CFR 1120")));
  EXPECT_THAT(std::string(law_comes_first()), HasSubstr("licensed test"));
}

}  // namespace
}  // namespace skeinproof
