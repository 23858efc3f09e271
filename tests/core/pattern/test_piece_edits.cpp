// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/pattern/piece_edits.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/pattern/edits.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::quillmarsh;

const Piece& piece_named(const Pattern& pattern, std::string_view name) {
  for (const Piece& piece : pattern.pieces)
    if (piece.name == name) return piece;
  ADD_FAILURE() << "no piece " << name;
  return pattern.pieces.front();
}

TEST(PieceEdits, APartIsFoundByItsIdAlone) {
  const Pattern pattern = quillmarsh();
  const Piece& sleeves = piece_named(pattern, "Sleeves");
  const PiecePlace place = find_in_pieces(pattern, sleeves.sections[1].id.value);
  EXPECT_EQ(place.piece, &sleeves);
  EXPECT_EQ(place.section, &sleeves.sections[1]);
  EXPECT_EQ(place.edge, nullptr);
  EXPECT_FALSE(find_in_pieces(pattern, 0));
  EXPECT_FALSE(find_in_pieces(pattern, pattern.sizes[0].id.value));
}

TEST(PieceEdits, ANewSectionIsLikeTheOneBeforeIt) {
  Pattern pattern = quillmarsh();
  const Piece& body = piece_named(pattern, "Body");
  const FabricId fabric = body.sections.back().fabric;
  const RoleId role = body.sections.back().role;
  const SectionId id = add_section(pattern, body.id, "hem facing");
  EXPECT_EQ(find_section(pattern, id)->fabric, fabric);
  EXPECT_EQ(find_section(pattern, id)->role, role);
  EXPECT_TRUE(check_invariants(pattern).has_value());
}

TEST(PieceEdits, ACopyOfAPieceHasIdsOfItsOwn) {
  Pattern pattern = quillmarsh();
  const std::uint32_t original = piece_named(pattern, "Sleeves").id.value;
  const std::uint32_t copy = duplicate_in_pieces(pattern, original);
  ASSERT_NE(copy, 0u);
  ASSERT_TRUE(check_invariants(pattern).has_value());
  EXPECT_EQ(pattern.pieces[2].id.value, copy);
  EXPECT_EQ(pattern.pieces[2].name, pattern.pieces[1].name);
  EXPECT_NE(pattern.pieces[2].sections[0].id, pattern.pieces[1].sections[0].id);
  EXPECT_EQ(duplicate_in_pieces(pattern, 0), 0u);
}

TEST(PieceEdits, ASectionAtTheEndGoesOnToTheNextPiece) {
  Pattern pattern = quillmarsh();
  const SectionId plain = pattern.pieces[0].sections.back().id;
  move_in_pieces(pattern, plain.value, 1);
  EXPECT_EQ(pattern.pieces[1].sections.front().id, plain);
  move_in_pieces(pattern, plain.value, -1);
  EXPECT_EQ(pattern.pieces[0].sections.back().id, plain);
  const Pattern before = pattern;
  move_in_pieces(pattern, pattern.pieces[0].sections.front().id.value, -1);
  EXPECT_EQ(pattern, before);  // there is nothing above the first
}

TEST(PieceEdits, ErasingAPieceTakesItsWeighingsAlong) {
  Pattern pattern = quillmarsh();
  const PieceId yoke = piece_named(pattern, "Yoke").id;
  Weighing& weighing = *(add_weighing(pattern, pattern.sizes[0].id), &pattern.weighings.back());
  weighing.only.push_back(WeighedCopies{yoke, 1});
  erase_from_pieces(pattern, yoke.value);
  EXPECT_EQ(pattern.piece(yoke), nullptr);
  EXPECT_TRUE(check_invariants(pattern).has_value());
}

RC_GTEST_PROP(PieceEdits, AnyRunOfEditsKeepsTheRules, ()) {
  Pattern pattern = quillmarsh();
  const int edits = *rc::gen::inRange(1, 25);
  for (int i = 0; i < edits; ++i) {
    const std::uint32_t part = *rc::gen::inRange<std::uint32_t>(0, pattern.last_id + 2);
    switch (*rc::gen::inRange(0, 5)) {
      case 0:
        duplicate_in_pieces(pattern, part);
        break;
      case 1:
        move_in_pieces(pattern, part, 1);
        break;
      case 2:
        move_in_pieces(pattern, part, -1);
        break;
      case 3:
        rename_in_pieces(pattern, part, "renamed");
        break;
      default:
        if (pattern.pieces.size() > 1) erase_from_pieces(pattern, part);
    }
    RC_ASSERT(check_invariants(pattern).has_value());
  }
}

}  // namespace
}  // namespace skeinproof
