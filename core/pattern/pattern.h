// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/describe.h"
#include "core/base/error.h"
#include "core/base/id.h"
#include "core/base/shared.h"
#include "core/fabric/chart.h"
#include "core/fabric/fabric.h"
#include "core/pattern/bench_change.h"
#include "core/pattern/candidate.h"
#include "core/pattern/draft.h"
#include "core/pattern/house_style.h"
#include "core/pattern/piece.h"
#include "core/pattern/query.h"
#include "core/pattern/role.h"
#include "core/pattern/size.h"
#include "core/pattern/weighing.h"
#include "core/pattern/yarn_on_hand.h"
#include "core/pattern/yarn_reading.h"
#include "core/yarn/yarn.h"

namespace skeinproof {

// Buttons, zip, beads: things beside the yarn.
struct Notion {
  std::string name;
  PerSize<Entered<double>> count;
  std::optional<Entered<Grams>> weight_each;

  bool operator==(const Notion&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("name", self.name);
    visit("count", self.count);
    visit("weight_each_g", self.weight_each);
  }
};

// A constant of the method overwritten by the user; `key` is a row of `core/need/constants.h`.
struct ConstantOverride {
  std::string key;
  Entered<double> value;

  bool operator==(const ConstantOverride&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("key", self.key);
    visit("value", self.value);
  }
};

// Which evidence the needs of every size stand on. Automatic: a role whose loop lengths were all typed stands
// on the stitches, another on its weighed sample where there is one.
enum class Basis { automatic, stitches, weighed_sample };
template <>
struct EnumWords<Basis> {
  static constexpr auto rows = enum_rows<Basis>({{Basis::automatic, "automatic"},
                                                 {Basis::stitches, "stitches"},
                                                 {Basis::weighed_sample, "weighed sample"}});
};

// The whole document: a plain value, copied for every step of undo. Ids instead of pointers; large lists
// shared. Nothing derived is stored.
struct Pattern {
  std::string title;
  std::string item;    // "pullover", "socks"
  std::string wearer;  // "adult", "child", "baby"
  std::string note;    // "invented, for demonstration"
  std::vector<Size> sizes;
  std::vector<Measurement> measurements;
  std::vector<Yarn>
      yarns;  // of the roles; one that no role names lies on the bench, as a candidate or on hand
  std::vector<Role> roles;
  std::vector<Fabric> fabrics;
  std::vector<Chart> charts;
  std::vector<Piece> pieces;
  std::vector<Weighing> weighings;
  std::vector<Notion> notions;
  PerSize<Entered<double>> printed_total;  // skeins over all roles as printed
  SizeId sample_size;
  SizeId chosen_size;  // the size at the bench
  Basis basis = Basis::automatic;
  bool count_joins = false;  // 0.30 m for every skein after the first
  std::vector<ConstantOverride> constants;
  Shared<std::vector<Draft>> drafts;  // oldest first; the last is at hand, the others are frozen
  std::vector<Query> queries;
  std::vector<BenchChange> changes;   // on the fly, one after the other
  std::vector<YarnReading> readings;  // of the chosen size
  std::vector<Candidate> candidates;  // other yarns for the chosen size
  std::vector<Wish> wishes;
  std::optional<Price> budget;  // for all the yarn of one item: amount, not per skein
  std::vector<YarnOnHand> on_hand;
  SizeId on_hand_size;  // what it is meant for; none = the chosen size
  SharingRules sharing;
  std::vector<GivenPart> given_parts;    // may be worked in a yarn of their own
  std::vector<HouseStyle> house_styles;  // at least one; the first is in force
  std::uint32_t last_id = 0;             // ids are never used again

  bool operator==(const Pattern&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("title", self.title);
    visit("item", self.item);
    visit("wearer", self.wearer);
    visit("note", self.note);
    visit("sizes", self.sizes);
    visit("measurements", self.measurements);
    visit("yarns", self.yarns);
    visit("roles", self.roles);
    visit("fabrics", self.fabrics);
    visit("charts", self.charts);
    visit("pieces", self.pieces);
    visit("weighings", self.weighings);
    visit("notions", self.notions);
    visit("printed_total", self.printed_total);
    visit("sample_size", self.sample_size);
    visit("chosen_size", self.chosen_size);
    visit("basis", self.basis);
    visit("count_joins", self.count_joins);
    visit("constants", self.constants);
    visit("drafts", self.drafts);
    visit("queries", self.queries);
    visit("changes", self.changes);
    visit("readings", self.readings);
    visit("candidates", self.candidates);
    visit("wishes", self.wishes);
    visit("budget", self.budget);
    visit("on_hand", self.on_hand);
    visit("on_hand_size", self.on_hand_size);
    visit("sharing", self.sharing);
    visit("given_parts", self.given_parts);
    visit("house_styles", self.house_styles);
    visit("last_id", self.last_id);
  }

  const HouseStyle& house() const { return house_styles.front(); }
  std::optional<std::size_t> size_index(SizeId id) const;
  std::optional<std::size_t> size_index(std::string_view label) const;
  const Draft* draft() const { return drafts->empty() ? nullptr : &drafts->back(); }  // the one at hand
  const Yarn* yarn(YarnId id) const;
  const Role* role(RoleId id) const;
  const Fabric* fabric(FabricId id) const;
  const Chart* chart(ChartId id) const;
  const Piece* piece(PieceId id) const;
  const Candidate* candidate(CandidateId id) const;
  const YarnOnHand* yarn_on_hand(OnHandId id) const;
  bool is_on_bench(YarnId id) const;  // no role names it
};

// A pattern of one size, one house style and nothing else.
Pattern new_pattern();

// The rules every document keeps: unique ids not above last_id, at least one size and one house style, no
// list longer than the sizes, every id names a part that exists (or 0), copies and strands at least 1, chart
// rounds of equal width with known symbols, no circle of roles that go along with each other. The first
// breach is returned.
Expected<void> check_invariants(const Pattern& pattern);

}  // namespace skeinproof
