// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/substitution/comparing.h"

namespace skeinproof {

// What a rule looks at: one candidate beside the pattern's own yarn.
struct RuleInput {
  const Comparing& comparing;
  const CandidateThreads& own;
  const CandidateThreads& threads;
  const CandidateFacts& own_facts;
  const CandidateFacts& facts;
  bool washed_swatch = false;
};

// What it found. `missing` without `fires`: it could not be looked at.
struct RuleAnswer {
  bool fires = false;
  std::vector<std::string> because;
  std::vector<std::string> missing;
  std::vector<RoleId> roles;
  std::string title, short_words, test, short_test;  // in place of the row's, where not empty

  void fire(std::string words);                    // for the item
  void fire(const Role& role, std::string words);  // the same words of several roles are said once
};

struct ConsequenceRule {
  std::string_view id;
  ConsequenceWeight weight;
  std::string_view title;
  std::string_view short_words;
  void (*look)(const RuleInput& input, RuleAnswer& answer);
  std::string_view advice;
  std::string_view test;
  std::string_view short_test;
  std::string_view source;
};

// All rules, the worst first.
std::span<const ConsequenceRule> consequence_rules();

// Fills consequences and what could not be looked at.
void draw_consequences(const RuleInput& input, CandidateFacts& facts);

// Looking at the roles of a candidate.
const RoleUse& use_of(const RuleInput& input, std::size_t role);
bool worked_in(const RoleUse& use, std::initializer_list<Structure> structures);
std::string structures_in_words(const RoleUse& use, std::initializer_list<Structure> structures);
// "70 % of Tallowhithe Strand".
std::string share_words(const RuleInput& input, double percent, const Thread& thread);

// The rules, by what they look at.
namespace consequence {
// Length, weight and firmness of the cloth.
void grows_in_length(const RuleInput& input, RuleAnswer& answer);        // S1
void ribs_stay_slack(const RuleInput& input, RuleAnswer& answer);        // S2
void superwash_grows(const RuleInput& input, RuleAnswer& answer);        // S5
void too_firm_or_too_loose(const RuleInput& input, RuleAnswer& answer);  // S12
void alpaca_drapes(const RuleInput& input, RuleAnswer& answer);          // S15
void rows_differ(const RuleInput& input, RuleAnswer& answer);            // S21
void sheer_when_light(const RuleInput& input, RuleAnswer& answer);       // S22
// Surface, structure and colour against the patterning.
void halo_veils(const RuleInput& input, RuleAnswer& answer);             // S3
void colour_breaks_pattern(const RuleInput& input, RuleAnswer& answer);  // S4
void slick_shifts(const RuleInput& input, RuleAnswer& answer);           // S6
void stitches_stand_apart(const RuleInput& input, RuleAnswer& answer);   // S8
void woollen_for_worsted(const RuleInput& input, RuleAnswer& answer);    // S9
void thick_beside_thin(const RuleInput& input, RuleAnswer& answer);      // S10
void uneven_hides_chart(const RuleInput& input, RuleAnswer& answer);     // S11
void plant_in_colourwork(const RuleInput& input, RuleAnswer& answer);    // S14
// Wear, care and safety.
void pills_where_it_rubs(const RuleInput& input, RuleAnswer& answer);  // S7
void will_not_felt(const RuleInput& input, RuleAnswer& answer);        // S13
void strictest_care_wins(const RuleInput& input, RuleAnswer& answer);  // S16
void dark_dye_bleeds(const RuleInput& input, RuleAnswer& answer);      // S17
void unfit_for_a_baby(const RuleInput& input, RuleAnswer& answer);     // S18
void sock_wears_out(const RuleInput& input, RuleAnswer& answer);       // S19
void elastic_put_up(const RuleInput& input, RuleAnswer& answer);       // S20
void prickles(const RuleInput& input, RuleAnswer& answer);             // S23
void melts(const RuleInput& input, RuleAnswer& answer);                // S24
}  // namespace consequence

}  // namespace skeinproof
