// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <optional>
#include <vector>

namespace skeinproof {

// Yarns shared out over the roles of one size, as bare numbers. All lengths m; -1 names no role and no yarn.
// A yarn serves one role at most, or the colours would be one; it may take given parts of any role beside.
struct SharingProblem {
  struct Supply {
    double usable = 0;
    int kept_in = -1;             // the role it served before, from which it moves only for a reason
    std::vector<bool> may_serve;  // by role, its given parts too
    std::vector<bool> unlike;     // by role: its thickness will show beside the role's own yarn
    double thickness = 0;         // against any one measure; 0 = not known
    double skein = 0;             // that could be bought of it; 0 = none
    double price = 0;             // of one
  };
  // Stitches of one role that may be worked in a yarn of their own; two parts at one place never in the same.
  struct Part {
    int role = 0;
    int place = 0;
    double need = 0;
  };
  std::vector<double> needs;  // by role, parts included
  std::vector<Supply> supplies;
  std::vector<Part> parts;
  int yarns_a_role = 1;
  double join_m = 0.3;          // lost at every further yarn of a role
  double brimful_share = 0.95;  // of a yarn: nearly all is needed
  double unlike_share = 0.08;   // of thickness, between yarns that share a role
};

struct Sharing {
  std::vector<int> serves;   // the role of each supply
  std::vector<int> part_in;  // the supply of each part; -1 stays with its role
  std::vector<int> bought;   // skeins of each supply
};

// Whether a sharing keeps every rule, to a thousandth of a millimetre.
bool holds(const SharingProblem& problem, const Sharing& sharing);
// What speaks against a sharing that holds: a yarn that serves a role and gives parts of others beside weighs
// most, then a yarn for given parts, yarns that change their role, nearly empty yarns, thickness that shows,
// yarns at all, and parts left behind where others are given. Our own order: common practice, no source.
double weight_of(const SharingProblem& problem, const Sharing& sharing);

// Any sharing, or the proof that there is none.
std::optional<Sharing> any_sharing(const SharingProblem& problem);
// One of least weight: without given parts where that is possible, else with these in yarns of their own, and
// in both with yarns of one role that are alike where that is possible. Among very many yarns it is looked
// for in the likeliest; where there is a sharing, one is always found.
std::optional<Sharing> best_sharing(const SharingProblem& problem);
// The cheapest skeins to buy so that there is one: by price where all that can be bought have one, else the
// fewest.
std::optional<Sharing> cheapest_addition(const SharingProblem& problem);
// The first that comes to hand: the greatest need takes the smallest yarn that holds it.
std::optional<Sharing> sharing_at_hand(const SharingProblem& problem);

}  // namespace skeinproof
