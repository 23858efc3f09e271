// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/consequence_rules.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/reference/lookup.h"

namespace skeinproof {
namespace {

using Weight = ConsequenceWeight;
constexpr std::string_view practice = "common practice, no source";

// The worst first: what must not be, what spoils the item as a whole, what changes it, what is to be known.
const ConsequenceRule rules[] = {
    {"S24", Weight::stop, "Melts near heat", "melts", consequence::melts,
     "take wool or cotton in a thick double layer", "none: it must not be used so", "none",
     "EN 407 for protective gloves; engineering judgement"},
    {"S13", Weight::stop, "Will not felt", "will not felt", consequence::will_not_felt,
     "take untreated wool or another fibre that felts", "felt a swatch before you buy the rest",
     "felt a swatch", practice},
    {"S18", Weight::changes_item, "Fluff, care or small parts for a baby", "care with a baby",
     consequence::unfit_for_a_baby,
     "take a smooth yarn that is washed by machine, and no beads; what the law of the place and a licensed "
     "test "
     "ask for comes first",
     "rub a swatch with a damp finger and look for loose fibre", "rub test", practice},
    {"S12", Weight::changes_item, "Cloth too firm or too loose", "firmness",
     consequence::too_firm_or_too_loose, "choose another gauge or another yarn",
     "knit a swatch at the pattern's gauge and wash it", "swatch at the gauge", practice},
    {"S1", Weight::changes_item, "Grows in length and narrows", "lengthens", consequence::grows_in_length,
     "shorten body and sleeves by what the hang test says, or choose a firmer gauge", "", "", practice},
    {"S10", Weight::changes_item, "Thick beside thin in one piece", "thick beside thin",
     consequence::thick_beside_thin,
     "the thick colour dominates, the thin one sinks or puckers: take both of one thickness",
     "a swatch with both yarns side by side, washed", "swatch of both", practice},
    {"S11", Weight::changes_item, "Chart unreadable in an uneven yarn", "chart unreadable",
     consequence::uneven_hides_chart, "take a smooth yarn for the charted part", "ten rounds of the chart",
     "ten chart rounds", practice},
    {"S8", Weight::changes_item, "Stitches stand apart, background shows", "denser, crisp",
     consequence::stitches_stand_apart, "contrast is crisp, cloth less windproof; a finer gauge closes it",
     "a chart swatch, washed, held to a window", "chart swatch, washed", practice},
    {"S3", Weight::changes_item, "Halo veils the pattern", "halo veils", consequence::halo_veils,
     "take it for the plain parts; it cannot be ripped back cleanly either",
     "a chart swatch seen from across the room; then rip four rows", "chart swatch", practice},
    {"S4", Weight::changes_item, "Colour breaks the pattern", "colours break up",
     consequence::colour_breaks_pattern,
     "use it in plain stitch or slip stitch, or in turn with a solid colour",
     "a chart swatch, photographed in grey", "chart swatch in grey", practice},
    {"S2", Weight::changes_item, "Ribs do not spring back", "ribs slack", consequence::ribs_stay_slack,
     "a smaller needle, twisted rib, or an elastic thread knitted in",
     "stretch a washed rib swatch half as wide again for a minute, measure how far it comes back",
     "stretch a rib swatch", practice},
    {"S6", Weight::changes_item, "Stitches shift and floats slide", "floats slip", consequence::slick_shifts,
     "reinforce what is cut, catch floats more often, blunter needles",
     "a chart swatch, washed; pull at a float, and cut one edge if a steek is planned",
     "chart swatch, washed", practice},
    {"S14", Weight::changes_item, "No give: uneven tension shows", "uneven floats",
     consequence::plant_in_colourwork, "keep floats loose, strand over a larger needle",
     "a chart swatch, washed", "chart swatch, washed", practice},
    {"S5", Weight::changes_item, "Superwash grows when wetted", "superwash grows",
     consequence::superwash_grows,
     "expect 5–10 % on wetting, which only a short tumble drying takes back; measure the washed swatch",
     "wash and dry a swatch as the garment will be, measure before and after", "wash a swatch as the garment",
     practice},
    {"S17", Weight::changes_item, "Dark hand-dyed yarn may bleed", "may bleed", consequence::dark_dye_bleeds,
     "rinse the dark skeins until the water is clear before you begin", "wash a striped swatch first",
     "striped swatch", practice},
    {"S19", Weight::changes_item, "Heel and toe wear through", "heels wear", consequence::sock_wears_out,
     "knit heels and toes with a reinforcing thread", "rub a swatch over a table edge two hundred times",
     "rub test", practice},
    {"S21", Weight::changes_item, "Rows differ while stitches meet", "rows differ", consequence::rows_differ,
     "work by centimetres where the text counts rows: yoke, armhole, sleeve",
     "count rows over 10 cm of the washed swatch", "count rows", practice},
    {"S15", Weight::changes_item, "Drapes and lengthens with wear", "drapes longer with wear",
     consequence::alpaca_drapes, "also when it is light; warm: fewer layers; firmer gauge or shorter body",
     "hang a washed swatch by its edge for two days", "hang a swatch, two days", practice},
    {"S7", Weight::worth_knowing, "Pills and thins where it rubs", "pills", consequence::pills_where_it_rubs,
     "keep it for parts that do not rub, or choose a firmer twist",
     "rub a washed swatch on itself a hundred times", "rub test", practice},
    {"S9", Weight::worth_knowing, "Lighter, blooms, breaks when seaming", "blooms when washed",
     consequence::woollen_for_worsted, "it shrinks a little on washing; seam with another yarn",
     "wash a swatch; pull a tail until it breaks", "wash a swatch", practice},
    {"S20", Weight::worth_knowing, "Elastic put-up", "length uncertain", consequence::elastic_put_up,
     "was the put-up measured relaxed? knit slack; the length is uncertain by 10 %",
     "reel off 2 m slack and 2 m stretched and weigh both", "weigh 2 m", practice},
    {"S23", Weight::worth_knowing, "May prickle", "prickles", consequence::prickles,
     "line neck and cuffs, or take a finer wool there", "wear the swatch at the throat for an hour",
     "swatch at the throat", "ZALL17"},
    {"S22", Weight::worth_knowing, "Sheer in a light shade", "sheer", consequence::sheer_when_light,
     "firmer gauge or a darker shade", "lay the swatch over black and over white", "swatch over black",
     practice},
    {"S16", Weight::worth_knowing, "The whole takes the strictest care", "strictest care",
     consequence::strictest_care_wins, "wash all of it by the strictest band",
     "wash a striped swatch by that band", "striped swatch", "ISO 3758, from memory"},
};

std::string or_row(const std::string& own, std::string_view row) {
  return own.empty() ? std::string(row) : own;
}

void add_missing(CandidateFacts& facts, std::string_view id, const std::string& because) {
  for (NotLookedAt& row : facts.not_looked_at)
    if (row.because == because) {
      row.rules.emplace_back(id);
      return;
    }
  facts.not_looked_at.push_back({{std::string(id)}, because});
}

int number_of(const std::string& id) { return std::stoi(id.substr(1)); }

}  // namespace

void RuleAnswer::fire(std::string words) {
  fires = true;
  if (std::find(because.begin(), because.end(), words) == because.end()) because.push_back(std::move(words));
}

void RuleAnswer::fire(const Role& role, std::string words) {
  fire(std::move(words));
  if (std::find(roles.begin(), roles.end(), role.id) == roles.end()) roles.push_back(role.id);
}

std::span<const ConsequenceRule> consequence_rules() { return rules; }

void draw_consequences(const RuleInput& input, CandidateFacts& facts) {
  for (const ConsequenceRule& rule : rules) {
    RuleAnswer answer;
    rule.look(input, answer);
    if (!answer.fires) {
      std::sort(answer.missing.begin(), answer.missing.end());
      answer.missing.erase(std::unique(answer.missing.begin(), answer.missing.end()), answer.missing.end());
      for (const std::string& missing : answer.missing) add_missing(facts, rule.id, missing);
      continue;
    }
    Consequence fired;
    fired.id = rule.id;
    fired.weight = rule.weight;
    fired.title = or_row(answer.title, rule.title);
    fired.short_words = or_row(answer.short_words, rule.short_words);
    fired.because = join(answer.because, "; ");
    fired.advice = rule.advice;
    fired.test = or_row(answer.test, rule.test);
    fired.short_test = or_row(answer.short_test, rule.short_test);
    if (answer.roles.size() < input.threads.roles.size()) fired.roles = answer.roles;
    fired.source = source_by_key(rule.source) != nullptr ? citation(rule.source) : std::string(rule.source);
    facts.consequences.push_back(std::move(fired));
  }
  for (NotLookedAt& row : facts.not_looked_at)
    std::sort(row.rules.begin(), row.rules.end(),
              [](const std::string& a, const std::string& b) { return number_of(a) < number_of(b); });
}

const RoleUse& use_of(const RuleInput& input, std::size_t role) { return input.comparing.use.roles[role]; }

bool worked_in(const RoleUse& use, std::initializer_list<Structure> structures) {
  return std::any_of(structures.begin(), structures.end(),
                     [&](Structure one) { return use.structures.count(one) > 0; });
}

std::string structures_in_words(const RoleUse& use, std::initializer_list<Structure> structures) {
  std::vector<std::string> words;
  for (const Structure one : structures) {
    if (use.structures.count(one) == 0) continue;
    words.emplace_back(word_of(one));
    if (one == Structure::stranded) words.back() += " knitting";
    if (one == Structure::cable) words.back() += "s";
  }
  return join(words, ", ");
}

std::string share_words(const RuleInput& input, double percent, const Thread& thread) {
  return input.comparing.number(percent, 0) + " % of " + thread.name();
}

}  // namespace skeinproof
