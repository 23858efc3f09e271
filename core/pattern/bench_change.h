// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "core/base/describe.h"
#include "core/base/enum_words.h"
#include "core/base/id.h"
#include "core/units/entered.h"
#include "core/units/quantity.h"

namespace skeinproof {

enum class ChangeKind {
  longer_piece,
  extra_rounds,
  other_gauge,
  other_size,
  between_sizes,
  piece_left_out,
  piece_again,
  given_to,
};
template <>
struct EnumWords<ChangeKind> {
  static constexpr auto rows = enum_rows<ChangeKind>({{ChangeKind::longer_piece, "longer piece"},
                                                      {ChangeKind::extra_rounds, "extra rounds"},
                                                      {ChangeKind::other_gauge, "other gauge"},
                                                      {ChangeKind::other_size, "other size"},
                                                      {ChangeKind::between_sizes, "between sizes"},
                                                      {ChangeKind::piece_left_out, "piece left out"},
                                                      {ChangeKind::piece_again, "piece again"},
                                                      {ChangeKind::given_to, "part in another colour"}});
};

// Where a piece grows longer.
enum class LongerWhere {
  spread,      // over the rows of the taper; a piece without one over its straight rows
  full_width,  // straight on, where the piece is widest
};
template <>
struct EnumWords<LongerWhere> {
  static constexpr auto rows = enum_rows<LongerWhere>(
      {{LongerWhere::spread, "spread over the taper"}, {LongerWhere::full_width, "at full width"}});
};

// What another gauge does to the counts; the sign of the change in yarn turns round, so it must be said.
enum class CountsAre { not_said, kept, chosen_again };
template <>
struct EnumWords<CountsAre> {
  static constexpr auto rows =
      enum_rows<CountsAre>({{CountsAre::not_said, "not said"},
                            {CountsAre::kept, "the same counts"},
                            {CountsAre::chosen_again, "counts chosen again for the same size"}});
};

// A change on the fly as it lies on the bench: nothing of the pattern moves until it is adopted. Which fields
// speak follows the kind; the others are kept for when the kind is changed back.
struct BenchChange {
  ChangeId id;
  ChangeKind kind = ChangeKind::longer_piece;
  bool made = true;   // false: laid aside
  PieceId piece;      // longer, left out, again; given away with all its colours
  SectionId section;  // extra rounds; longer: none = the section with the most rows; given away
  EdgeId edge;        // given away
  RoleId from;        // given away: none = every colour; extra rounds of one colour
  RoleId to;          // given to this colour, or
  YarnId yarn;        // to another yarn
  FabricId fabric;    // other gauge
  SizeId size;        // other size; between: from
  SizeId other_size;  // between: to
  int copies = 1;     // piece again
  LongerWhere where = LongerWhere::spread;
  CountsAre counts = CountsAre::not_said;
  std::optional<Entered<Centimetres>> by;      // below 0: shorter
  std::optional<Entered<double>> rounds;       // below 0: fewer
  std::optional<Entered<double>> chart_round;  // from 1
  std::optional<Entered<double>> stitches;     // other gauge, per 10 cm
  std::optional<Entered<double>> rows;
  std::optional<Entered<double>> share_pct;  // between: the way from one size to the other

  bool operator==(const BenchChange&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("kind", self.kind);
    visit("made", self.made);
    visit("piece", self.piece);
    visit("section", self.section);
    visit("edge", self.edge);
    visit("from", self.from);
    visit("to", self.to);
    visit("yarn", self.yarn);
    visit("fabric", self.fabric);
    visit("size", self.size);
    visit("other_size", self.other_size);
    visit("copies", self.copies);
    visit("where", self.where);
    visit("counts", self.counts);
    visit("by_cm", self.by);
    visit("rounds", self.rounds);
    visit("chart_round", self.chart_round);
    visit("stitches", self.stitches);
    visit("rows", self.rows);
    visit("share_pct", self.share_pct);
  }
};

}  // namespace skeinproof
