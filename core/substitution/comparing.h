// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/substitution/candidate_facts.h"
#include "core/substitution/item_use.h"
#include "core/substitution/thread.h"

namespace skeinproof {

// What one stitch-by-stitch role needs whatever it is knitted in: lengths of the strands together.
struct RoleLength {
  bool known = false;
  bool at_most = false;  // by printed counts alone
  Metres worked, swatch;
  Metres planned;
  double error = 0;     // share, 9 in 10
  std::string because;  // its road, or what is missing
};

// What every candidate of one pattern and size is held against: worked out once.
struct Comparing {
  Comparing(const Pattern& pattern_in, const Assessment& assessment_in, std::size_t size_index_in);

  const Pattern& pattern;
  const Assessment& assessment;
  std::size_t size_index;
  NumberStyle style;
  NeedContext need;
  ItemUse use;
  std::vector<RoleLength> lengths;  // by role

  // The gauge another yarn is held against: stocking stitch, else the first fabric with a gauge.
  const Fabric* cloth = nullptr;
  std::optional<double> stitches_10cm;
  std::optional<double> density;    // stitches in cm²
  std::optional<Centimetres> loop;  // typed, weighed or calibrated
  std::string loop_because;
  std::optional<double> area_m2;

  double constant_of(std::string_view key) const { return need.constant_of(key); }
  std::string number(double value, int decimals) const { return show_number(value, decimals, style); }
  std::string short_number(double value, int decimals) const { return show_short(value, decimals, style); }
  std::string percent(double share, int decimals = 0) const;  // "+17 %"
};

// The yarns one candidate puts into the roles.
struct CandidateThreads {
  struct OfRole {
    const Role* role = nullptr;
    Thread thread;  // held in this role
    Thread stitch;  // with what goes along with it: what a stitch is made of
    bool same_as_pattern = false;
  };
  std::vector<OfRole> roles;  // as in the pattern
  std::vector<std::string> problems;
};
CandidateThreads own_threads(const Pattern& pattern);
CandidateThreads threads_of(const Pattern& pattern, const Candidate& candidate);

// Each fills its part of the facts; later ones read what earlier ones wrote.
void fill_lengths_and_buys(const Comparing& comparing, const CandidateThreads& threads,
                           CandidateFacts& facts);
void fill_basket(const Comparing& comparing, CandidateFacts& facts);
void fill_tight_and_left_over(const Comparing& comparing, CandidateFacts& facts);
void fill_cloth(const Comparing& comparing, const CandidateThreads& threads, const CandidateThreads& own,
                CandidateFacts& facts);
void fill_whole(const Comparing& comparing, const CandidateThreads& threads, const CandidateFacts* own,
                CandidateFacts& facts);
void fill_care(const CandidateThreads& threads, CandidateFacts& facts);

// "€104.00", "104.00 EUR", "104.00 in no currency".
std::string money_words(double amount, const std::string& currency, const NumberStyle& style);

}  // namespace skeinproof
