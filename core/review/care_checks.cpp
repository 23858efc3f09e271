// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <optional>

#include "core/base/text.h"
#include "core/reference/lookup.h"
#include "core/review/care_rules.h"
#include "core/review/finding_words.h"
#include "core/review/item_and_wearer.h"
#include "core/review/printed_words.h"
#include "core/review/yarn_contents.h"
#include "core/yarn/care.h"

namespace skeinproof {
namespace {

// What is said of washing, in the text or in the facts.
struct CareSaid {
  std::string words;  // lower case
  const Statement* statement = nullptr;
};
std::vector<CareSaid> care_said(const PrintedView& printed, const std::vector<const Statement*>& statements) {
  std::vector<CareSaid> said;
  for (const Statement* one : statements)
    said.push_back({lower_ascii(std::string(printed.words(one->span)) + " " + one->words), one});
  return said;
}
std::vector<CareSaid> care_of_item(const PrintedView& printed) {
  return care_said(printed, printed.all(StatementKind::care));
}
std::vector<CareSaid> care_of_yarn(const ReviewInput& input, const PrintedYarn& yarn) {
  auto said = care_said(input.printed, yarn.care);
  if (said.empty())
    if (const Yarn* fact = input.pattern.yarn(yarn.fact); fact != nullptr && !fact->care.empty())
      said.push_back({lower_ascii(fact->care), nullptr});
  return said;
}
std::string words_of(const PrintedView& printed, const CareSaid& care) {
  return care.statement != nullptr ? printed_words(printed, *care.statement) : quoted(care.words);
}

bool machine_without_wool_cycle(const std::string& care) {
  return says_machine(care) && !denies_machine(care) && !says_gentle(care);
}

bool treated(const ReviewInput& input, const PrintedYarn& yarn) {
  std::string words = printed_description(input.printed, yarn) + lower_ascii(yarn.name);
  if (const Yarn* fact = input.pattern.yarn(yarn.fact)) words += " " + lower_ascii(fact->treatment);
  return says(words, {"superwash", "shrink-resist", "shrink resist", "shrink-resistant"}) &&
         !says(words, {"non-superwash", "non superwash"});
}

void show_fibre(Finding& finding, const PrintedView& printed, const FibreSaid& fibre) {
  if (fibre.statement != nullptr) show(finding, printed, *fibre.statement);
}

// Whether some of these say machine wash; null where none does, or where one of them names the wool cycle and
// may mean it for all.
const CareSaid* machine_washed(const std::vector<CareSaid>& care) {
  const CareSaid* machine = nullptr;
  for (const CareSaid& said : care) {
    if (says_gentle(said.words)) return nullptr;
    if (machine == nullptr && machine_without_wool_cycle(said.words)) machine = &said;
  }
  return machine;
}

void machine_wash_of_untreated(const ReviewInput& input, Findings& findings) {
  const auto item_care = care_of_item(input.printed);
  const CareSaid* item_machine = machine_washed(item_care);
  const bool item_gentle = std::any_of(item_care.begin(), item_care.end(),
                                       [](const CareSaid& said) { return says_gentle(said.words); });
  bool any_care = !item_care.empty();
  for (const PrintedYarn& yarn : input.printed.yarns()) {
    const auto care = care_of_yarn(input, yarn);
    any_care = any_care || !care.empty();
    const Composition composition = composition_of(input, yarn);
    const auto wool = std::find_if(composition.begin(), composition.end(), [](const FibreSaid& said) {
      return is_animal(said) && !is_shrink_resistant(said);
    });
    if (wool == composition.end() || treated(input, yarn)) continue;
    const bool gentle = item_gentle || std::any_of(care.begin(), care.end(), [](const CareSaid& said) {
                          return says_gentle(said.words);
                        });
    const CareSaid* machine = item_machine != nullptr ? item_machine : machine_washed(care);
    if (machine == nullptr || gentle) continue;
    const std::string shown = words_of(input.printed, *machine);
    Finding& finding = findings.add("machine wash of untreated " + wool->words + ": " + shown);
    finding.apart = yarn.name;
    if (machine->statement != nullptr) show(finding, input.printed, *machine->statement);
    show_fibre(finding, input.printed, *wool);
    if (finding.places.empty()) finding.places.push_back(TextSpan{});
    finding.evidence = {shown + "; " + name_of(yarn) + " holds " + quoted(wool->words) +
                        ", not said to be shrink-resistant"};
    if (const Caution* felting = caution_by_id("felt_shrink")) finding.evidence.emplace_back(felting->text);
    finding.query = "The care is " + shown + ", but " + name_of(yarn) + " holds untreated " + wool->words +
                    ". Should it be hand wash, or the wool cycle?";
  }
  if (!any_care) findings.cannot("no care is given", "care for the item or for its yarns");
}

void hand_wash_of_superwash(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const auto care = care_of_item(printed);
  const auto by_hand =
      std::find_if(care.begin(), care.end(), [](const CareSaid& said) { return care_rank(said.words) == 1; });
  const bool by_machine = std::any_of(care.begin(), care.end(), [](const CareSaid& said) {
    return says_machine(said.words) && !denies_machine(said.words);
  });
  if (by_hand == care.end() || by_machine || printed.yarns().empty()) return;
  const FibreSaid* superwash = nullptr;
  std::vector<Composition> kept;
  for (const PrintedYarn& yarn : printed.yarns()) {
    kept.push_back(composition_of(input, yarn));
    const bool yarn_treated = treated(input, yarn);
    if (kept.back().empty()) return;
    bool any = false;
    for (const FibreSaid& said : kept.back()) {
      const bool wool =
          said.fibre != nullptr && (said.fibre->id == "wool" || said.fibre->variety_of == "wool");
      const bool resists = is_shrink_resistant(said) || (yarn_treated && wool);
      const bool hardy =
          said.fibre != nullptr && (said.fibre->fibre_class == "synthetic" || said.fibre->id == "cotton");
      // Another delicate fibre is reason enough to wash by hand.
      if (!resists && !hardy) return;
      any = any || resists;
      if (resists && superwash == nullptr && said.statement != nullptr) superwash = &said;
    }
    if (!any) return;
  }
  Finding& finding = findings.add("hand wash of superwash yarn: " + words_of(printed, *by_hand));
  show(finding, printed, *by_hand->statement);
  finding.evidence = {words_of(printed, *by_hand) + "; every yarn is superwash"};
  if (superwash != nullptr) rest_on(finding, printed, *superwash->statement);
  finding.query = "The yarn is superwash, the care " + words_of(printed, *by_hand) +
                  " only. Is that meant, or would the care on the band do?";
}

void felting_needs_fibre_that_felts(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const ItemRead item = item_of(input);
  const bool felted = says(item.words, {"felted", "fulled", "felting"}) ||
                      says(lower_ascii(input.printed.text()),
                           {"before felting", "after felting", "felt the bag", "felt the piece",
                            "felt in the washing machine", "machine felt"});
  if (!felted) return;
  const double least = input.need.constant_of("review_feltable_pct");
  for (const PrintedYarn& yarn : input.printed.yarns()) {
    const Composition composition = composition_of(input, yarn);
    if (composition.empty()) {
      findings.cannot("the content of " + name_of(yarn) + " is not known", "its fibres and their shares");
      continue;
    }
    const double felts = treated(input, yarn) ? 0 : share_of(composition, [](const FibreSaid& said) {
      return said.fibre != nullptr && said.fibre->felting == "yes" && !is_shrink_resistant(said);
    });
    const bool superwash =
        treated(input, yarn) || std::any_of(composition.begin(), composition.end(), is_shrink_resistant);
    if (felts >= least && !superwash) continue;
    Finding& finding = findings.add("a felted item in yarn that hardly felts: " + quoted(name_of(yarn)));
    finding.apart = yarn.name;
    for (const FibreSaid& said : composition) show_fibre(finding, input.printed, said);
    if (item.shown != nullptr) show(finding, input.printed, *item.shown);
    if (finding.places.empty()) finding.places.push_back(TextSpan{});
    finding.evidence = {words.number(felts) + " % of " + name_of(yarn) + " felts; at least " +
                        words.number(least) + " % should"};
    if (superwash) finding.evidence.emplace_back("superwash wool is treated so that it does not felt");
    finding.query = "The item is felted, but only " + words.number(felts) + " % of " + name_of(yarn) +
                    " is fibre that felts. Is the content right?";
  }
}

bool is_slick_or_plant(const FibreSaid& said) {
  if (said.fibre == nullptr) return false;
  const std::string_view kind = said.fibre->fibre_class;
  return kind == "plant" || kind == "regenerated" || kind == "synthetic" || said.fibre->id == "silk" ||
         said.fibre->id == "silk_tussah" || said.fibre->id == "alpaca" || is_shrink_resistant(said);
}

void steeks_hold(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const Statement* steek = nullptr;
  bool reinforced =
      says(lower_ascii(printed.text()),
           {"reinforce", "reinforced", "reinforcing", "reinforcement", "machine sew", "machine-sew",
            "machine-sewn", "sewing machine", "machine stitch", "sewn line", "sew two lines", "stay stitch",
            "crochet chain", "crocheted chain", "crochet steek", "crocheted steek", "backstitch"});
  for (const Statement* one : printed.all(StatementKind::phrase)) {
    if (one->qualifier == "steek" && steek == nullptr) steek = one;
    reinforced = reinforced || one->qualifier == "reinforce";
  }
  if (steek == nullptr || reinforced) return;
  for (const PrintedYarn& yarn : printed.yarns()) {
    const Composition composition = composition_of(input, yarn);
    const bool slick = treated(input, yarn) || share_of(composition, is_slick_or_plant) >= 50;
    if (!slick || composition.empty()) continue;
    Finding& finding = findings.add("a steek in slick yarn, not reinforced: " + quoted(name_of(yarn)));
    finding.apart = yarn.name;
    show(finding, printed, *steek);
    for (const FibreSaid& said : composition) show_fibre(finding, printed, said);
    finding.evidence = {printed_words(printed, *steek) + "; " + name_of(yarn) +
                        " is slick or of plant fibre, so cut stitches may run"};
    finding.query = "The text cuts a steek, and " + name_of(yarn) +
                    " is too smooth to hold cut stitches by itself. Should it be sewn or crocheted first?";
  }
}

void socks_wear(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const ItemRead item = item_of(input);
  if (item.kind != ItemKind::sock ||
      says(item.words, {"bed", "bed-sock", "bedsock", "house", "slipper", "christmas", "baby"}))
    return;
  const double least = input.need.constant_of("review_sock_fibre_pct");
  if (says(lower_ascii(input.printed.text()),
           {"reinforce", "reinforced", "reinforcing", "reinforcement", "doubled heel", "double heel",
            "doubled toe", "held double", "slip-stitch heel", "slip stitch heel", "slipped-stitch heel",
            "heel stitch", "eye of partridge"}))
    return;
  const PrintedYarn* shown = nullptr;
  double most = -1;
  for (const PrintedYarn& yarn : input.printed.yarns()) {
    const Composition composition = composition_of(input, yarn);
    if (composition.empty()) {
      findings.cannot("the content of " + name_of(yarn) + " is not known", "its fibres and their shares");
      return;
    }
    const double share = share_of(composition, [](const FibreSaid& said) {
      return said.fibre != nullptr && (said.fibre->id == "polyamide" || said.fibre->id == "polyester" ||
                                       said.fibre->id == "polypropylene");
    });
    if (share <= most) continue;
    most = share;
    shown = &yarn;
  }
  if (shown == nullptr || most >= least) return;
  Finding& finding = findings.add("socks without hard-wearing fibre: " + quoted(name_of(*shown)));
  for (const FibreSaid& said : composition_of(input, *shown)) show_fibre(finding, input.printed, said);
  if (finding.places.empty()) finding.places.push_back(TextSpan{});
  finding.evidence = {words.number(most) + " % of hard-wearing fibre; " + words.number(least) +
                      " % and more are usual, or heels and toes worked double"};
  finding.query = "The sock yarn holds " + words.number(most) +
                  " % of hard-wearing fibre. Should heels and toes be worked with a second thread?";
}

void strictest_care(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  if (printed.yarns().size() < 2) return;
  const auto item = care_of_item(printed);
  if (item.empty()) {
    findings.cannot("no care of the finished item is given", "its care");
    return;
  }
  std::optional<int> of_item, strictest;
  const CareSaid* item_said = nullptr;
  for (const CareSaid& said : item)
    if (const auto rank = care_rank(said.words); rank && (!of_item || *rank < *of_item)) {
      of_item = rank;
      item_said = &said;
    }
  std::vector<std::string> table;
  std::vector<const Statement*> shown;
  for (const PrintedYarn& yarn : printed.yarns()) {
    std::optional<int> of_yarn;
    for (const CareSaid& said : care_of_yarn(input, yarn)) {
      const auto rank = care_rank(said.words);
      if (!rank) continue;
      of_yarn = of_yarn ? std::min(*of_yarn, *rank) : *rank;
      if (said.statement != nullptr) shown.push_back(said.statement);
    }
    if (!of_yarn) {
      findings.cannot("the care of " + name_of(yarn) + " is not known", "the care on its band");
      return;
    }
    table.push_back(name_of(yarn) + ": " + std::string(care_rank_words(*of_yarn)));
    strictest = strictest ? std::min(*strictest, *of_yarn) : *of_yarn;
  }
  if (!of_item || *of_item == *strictest) return;
  const std::string words = words_of(printed, *item_said);
  Finding& finding = findings.add("care is not that of the most delicate yarn: " + words);
  show(finding, printed, *item_said->statement);
  for (const Statement* one : shown) show(finding, printed, *one);
  finding.evidence = table;
  finding.evidence.push_back("printed for the item: " + std::string(care_rank_words(*of_item)));
  if (const Caution* care = caution_by_id("care_iso")) finding.evidence.emplace_back(care->text);
  finding.query = "The care is " + words + ", but the most delicate of the yarns asks for: " +
                  std::string(care_rank_words(*strictest)) + ". Which should the text print?";
}

void dark_beside_light(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const PrintedView& printed = input.printed;
  const double least = input.need.constant_of("review_bleeding_lightness");
  if (printed.roles().size() < 2) return;
  const PrintedRole *darkest = nullptr, *lightest = nullptr;
  double low = 0, high = 0;
  std::size_t known = 0;
  for (const PrintedRole& role : printed.roles()) {
    const Role* fact = input.pattern.role(role.fact);
    if (fact == nullptr || !fact->shade.lightness) continue;
    const double lightness = fact->shade.lightness->value;
    ++known;
    if (darkest == nullptr || lightness < low) low = lightness, darkest = &role;
    if (lightest == nullptr || lightness > high) high = lightness, lightest = &role;
  }
  if (known < 2) {
    findings.cannot("the lightness of the shades is not known", "L* of each shade");
    return;
  }
  const bool fast = says(lower_ascii(printed.text()), {"colourfast", "colorfast", "colour-fast", "color-fast",
                                                       "colour fast", "fast dyes", "fast to washing"});
  if (high - low <= least || fast) return;
  const auto name = [&](const PrintedRole& role) {
    return role.label + (role.shade != nullptr ? " " + role.shade->words : "");
  };
  Finding& finding =
      findings.add("very dark beside very light: " + quoted(name(*darkest) + ", " + name(*lightest)));
  for (const PrintedRole* role : {darkest, lightest}) {
    finding.roles.push_back(role->label);
    for (const Statement* one : {role->shade, role->role})
      if (one != nullptr) {
        show(finding, printed, *one);
        break;
      }
  }
  if (finding.places.empty()) finding.places.push_back(TextSpan{});
  finding.evidence = {name(*darkest) + " L* " + words.number(low) + ", " + name(*lightest) + " L* " +
                          words.number(high) + ": " + words.number(high - low) + " apart",
                      "nothing is said of fast colours"};
  finding.proposal_words = "add “wash a striped swatch before you begin”";
  finding.query = name(*darkest) + " may stain " + name(*lightest) +
                  " in the wash. Could the text say to wash a striped swatch first?";
}

}  // namespace

std::span<const Check> care_checks() {
  using Kind = StatementKind;
  static constexpr std::string_view practice = "common practice, no source";
  static const Check rows[] = {
      {"C1",
       "Untreated animal fibre is not washed by machine, unless the wool cycle is named.",
       Severity::ask,
       {Kind::care, Kind::yarn_care, Kind::fibre, Kind::yarn_description, Kind::yarn_name},
       practice,
       machine_wash_of_untreated},
      {"C2",
       "Superwash yarn that is washed by hand only is worth a word.",
       Severity::note,
       {Kind::care, Kind::fibre, Kind::yarn_description, Kind::yarn_name},
       practice,
       hand_wash_of_superwash},
      {"C3",
       "A felted item is of fibre that felts.",
       Severity::stop,
       {Kind::item, Kind::title, Kind::fibre, Kind::yarn_description, Kind::yarn_name},
       practice,
       felting_needs_fibre_that_felts},
      {"C4",
       "A steek in slick or plant fibre is reinforced.",
       Severity::ask,
       {Kind::phrase, Kind::fibre, Kind::yarn_description, Kind::yarn_name},
       practice,
       steeks_hold},
      {"C5",
       "Buttons, beads and pompoms for children under three come with a caution.",
       Severity::ask,
       {Kind::size_labels, Kind::wearer, Kind::title, Kind::item, Kind::notion, Kind::extra, Kind::caution},
       "16 CFR 1501.1-1501.4; EN 71-1, from memory",
       small_parts_for_the_youngest},
      {"C6",
       "No cord, tie or drawstring at the hood or neck of a child up to seven years.",
       Severity::stop,
       {Kind::size_labels, Kind::wearer, Kind::title, Kind::item, Kind::phrase, Kind::extra,
        Kind::piece_heading},
       "EN 14682:2014; 16 CFR 1120.3 and ASTM F1816-97",
       cords_at_childrens_necks},
      {"C7",
       "No fibre that sheds and no floats inside for babies up to twelve months.",
       Severity::ask,
       {Kind::size_labels, Kind::wearer, Kind::title, Kind::item, Kind::fibre, Kind::yarn_description,
        Kind::yarn_name},
       "Barton, Sloan and Nichter 1988, Pediatrics 82, 925-928; shedding: engineering judgement",
       fluff_and_floats_for_babies},
      {"C8",
       "Socks hold hard-wearing fibre, or their heels and toes are doubled.",
       Severity::note,
       {Kind::item, Kind::title, Kind::fibre, Kind::yarn_name, Kind::phrase},
       practice,
       socks_wear},
      {"C9",
       "Nothing that is used near heat is of fibre that melts.",
       Severity::stop,
       {Kind::item, Kind::title, Kind::fibre, Kind::yarn_name},
       "engineering judgement; EN 407 for protective gloves",
       melting_fibre_near_heat},
      {"C10",
       "Of several yarns the most delicate decides the care that is printed.",
       Severity::ask,
       {Kind::care, Kind::yarn_care, Kind::yarn_name},
       "ISO 3758, from memory",
       strictest_care},
      {"C11",
       "Very dark beside very light asks for fast colours.",
       Severity::note,
       {Kind::role, Kind::shade_name},
       practice,
       dark_beside_light},
  };
  return rows;
}

}  // namespace skeinproof
