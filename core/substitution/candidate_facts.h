// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/enum_words.h"
#include "core/need/assessment.h"
#include "core/pattern/pattern.h"
#include "core/substitution/consequence.h"

namespace skeinproof {

// A figure with how well it is known, or, where it is absent, the one thing that is missing.
struct Known {
  std::optional<double> value;
  double error_share = 0;  // half width, 9 times in 10; 0 where none is given
  std::string because;     // its road and its error in words, or what is missing
  explicit operator bool() const { return value.has_value(); }
};

// One yarn of the strands that are held together.
struct StrandOf {
  YarnId yarn;
  int strands = 1;
};

// So many of one put-up.
struct PutUpBought {
  PutUp put_up;
  int count = 0;
  std::optional<Price> price;  // of one
};

// What one role asks of one yarn to buy.
struct YarnToBuy {
  YarnId yarn;
  std::string name;
  int strands = 1;
  Metres planned;                          // all strands
  std::vector<PutUpBought> put_ups;        // empty where no put-up has a length
  std::optional<int> skeins;               // of them all
  std::optional<double> fraction;          // planned / skein, where there is one kind of put-up
  std::optional<double> last_skein_share;  // in (0, 1]
  LastSkein last_skein = LastSkein::plain;
  std::optional<Metres> spare;    // bought - planned; below 0 under a policy that rounds a hair over down
  std::optional<double> cost;     // where every put-up has a price in one currency
  std::string currency;           // as typed
  std::string missing;            // what stands in the way of skeins or cost
  std::string tight;              // where one more is needed for little, or nothing is left; empty = neither
  std::optional<double> cheaper;  // skeins of this role are one fewer then: what the basket would be
};

// One role in the yarns of a candidate.
struct CandidateRole {
  RoleId role;
  std::string label;
  std::vector<StrandOf> yarns;  // empty where the role has no yarn
  int strands = 0;              // of all of them together
  bool same_as_pattern = false;
  std::optional<MetresPerGram> density;  // of the strands together
  std::string thread;                    // "Tallowhithe Strand", "Pillowgate Wisp held double"
  Known worked;                          // knitted length, strands together: the same in every candidate, m
  Known planned;                         // with swatch and allowance, strands together, m
  bool at_most = false;                  // lengths are the most that printed counts allow
  std::vector<YarnToBuy> buys;
  std::optional<int> skeins;  // of all its yarns
  Known mass_g;               // knitted
  Known thickness_by_mass;    // sqrt(mu of the pattern's yarn / mu of this)
  Known thickness_by_volume;  // the same with the densities of the fibres
  Known gauge_by_mass;        // stitches in 10 cm at the firmness of the pattern
  Known gauge_by_volume;
  Known firmness;          // sqrt(tex) / loop at the gauge of the pattern, K 20.5
  Known firmness_by_loop;  // the same by the loop that was typed or calibrated
};

// Whether the gauge of the pattern is within reach.
enum class GaugeReach { unknown, meets, needle_change, another_fabric };
template <>
struct EnumWords<GaugeReach> {
  static constexpr auto rows =
      enum_rows<GaugeReach>({{GaugeReach::unknown, "not known"},
                             {GaugeReach::meets, "should meet gauge"},
                             {GaugeReach::needle_change, "reachable with a needle change"},
                             {GaugeReach::another_fabric, "will not be this fabric"}});
};

struct CurrencySum {
  std::string currency;  // as typed; empty = none is named
  double amount = 0;
};

// One wish of the pattern, answered for a candidate. Neither met nor not met where a fact is missing.
struct WishAnswer {
  std::optional<bool> met;
  std::string because;
};

// All that is worked out of one candidate in one size. Figures of the whole are those of `main_role`, the
// role that takes the most yarn, where they are not sums.
struct CandidateFacts {
  CandidateId id;  // none = the pattern's own yarn
  std::string name;
  bool own = false;
  bool shown = true;
  std::vector<CandidateRole> roles;  // in the order of the pattern
  std::size_t main_role = 0;         // index into roles

  std::optional<int> skeins;
  std::optional<double> basket;       // in one currency
  std::string currency;               // as typed
  std::vector<CurrencySum> sums;      // by currency, where several or one without a name
  std::string basket_words;           // "€104.00", or why there is no sum
  Known cost_per_metre;               // of a metre worked, strands together, in `currency`
  std::optional<bool> within_budget;  // absent where there is no budget or no comparison
  std::string budget_words;

  Known mass_g;         // of the yarn in the garment, no notions
  Known mass_more;      // share above the pattern's own: 0.17
  Known mass_per_area;  // g/m²
  Known thickness_by_mass, thickness_by_volume;
  Known gauge_by_mass, gauge_by_volume;
  std::optional<double> gauge_low, gauge_high;  // of both roads
  GaugeReach reach_by_mass = GaugeReach::unknown, reach_by_volume = GaugeReach::unknown;
  std::string gauge_words;  // "reachable with a needle change, cloth looser (F 11.1→10.4)"
  std::string label_gauge;  // what its own band says, and how far that is from the pattern's
  Known firmness, firmness_by_loop;
  std::string needle;  // where to begin swatching; empty where nothing follows

  std::optional<int> care_rank;        // of the strictest yarn; as in core/yarn/care.h
  std::string care_words;              // "hand wash, because of Tallowhithe Strand"
  std::vector<std::string> tight;      // by role, the tightest first
  std::vector<std::string> left_over;  // by role
  std::optional<double> spare_share;   // of the length bought

  std::vector<Consequence> consequences;  // worst first
  std::vector<NotLookedAt> not_looked_at;
  std::vector<std::string> cautions;  // the usual ones, each with its rule
  std::vector<std::string> problems;  // what is missing or amiss, each with what it keeps from being known
  std::vector<WishAnswer> wishes;     // in the order of the pattern's
};

// The pattern's own yarns first, then every candidate of the pattern, shown or not, in its order. Pure;
// `assessment` is that of the pattern. A size index beyond the sizes gives an empty list.
std::vector<CandidateFacts> compare_candidates(const Pattern& pattern, const Assessment& assessment,
                                               std::size_t size_index);

// The size at the bench: the chosen one, else that of the sample, else the first.
std::size_t bench_size(const Pattern& pattern);

// "not looked at: S7, S8 (no structure of …)": one line.
std::string not_looked_at_words(const std::vector<NotLookedAt>& rows);

}  // namespace skeinproof
