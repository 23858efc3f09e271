// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <optional>
#include <set>

#include "core/base/text.h"
#include "core/manuscript/words.h"
#include "core/review/description_rules.h"
#include "core/review/finding_words.h"
#include "core/review/item_and_wearer.h"
#include "core/review/printed_gauge.h"
#include "core/review/printed_words.h"
#include "core/review/yarn_contents.h"

namespace skeinproof {
namespace {

// A statement's words in lower case, hyphens as spaces.
std::string plain_words(const PrintedView& printed, const Statement& statement) {
  std::string words =
      compared(statement.words.empty() ? printed.words(statement.span) : std::string_view(statement.words));
  std::replace(words.begin(), words.end(), '-', ' ');
  return words;
}

// The six things a description of a yarn may hold, and the words each is seen by. Common practice, no source.
struct DescriptionPart {
  std::string_view name;
  WordList qualifiers;  // of the statement
  WordList words;
  std::optional<DescriptionElement> element;
};
const DescriptionPart description_parts[] = {
    {"ply or structure",
     {"structure"},
     {"ply", "plies", "plied", "single", "cabled", "chainette", "blown", "tape", "ribbon", "core spun"},
     DescriptionElement::structure},
    {"spinning or twist",
     {"spinning", "twist"},
     {"spun", "twist", "twisted", "carded", "combed", "woollen", "handspun"},
     DescriptionElement::structure},
    {"thickness", {"category"}, {}, DescriptionElement::category},
    {"surface",
     {"surface"},
     {"matte", "matt", "smooth", "brushed", "halo", "lustrous", "lustre", "sheen", "shiny", "fuzzy", "crisp",
      "rustic", "hairy", "slubby", "lofty", "soft", "dry"},
     DescriptionElement::surface},
    {"colouring",
     {"colouring"},
     {"solid", "semi solid", "heathered", "heather", "marl", "marled", "tweed", "variegated", "self striping",
      "speckled", "tonal", "gradient", "hand dyed", "undyed", "mottled", "dyed"},
     DescriptionElement::colouring},
    {"treatment",
     {"treatment"},
     {"untreated", "superwash", "shrink resist", "mercerised", "mercerized", "organic", "recycled",
      "machine washable", "unbleached"},
     DescriptionElement::treatment},
};

bool holds_part(const PrintedView& printed, const PrintedYarn& yarn, const DescriptionPart& part) {
  for (const Statement* one : yarn.descriptions)
    for (const std::string_view qualifier : part.qualifiers)
      if (one->qualifier == qualifier) return true;
  for (const auto* group : {&yarn.descriptions, &yarn.fibres})
    for (const Statement* one : *group)
      if (says(plain_words(printed, *one), part.words)) return true;
  return false;
}

// The yarns that the text says are no longer made, by their indices; -1 = said of no yarn in particular.
std::set<int> said_withdrawn(const PrintedView& printed) {
  std::set<int> yarns;
  for (const Statement* one : printed.all(StatementKind::withdrawn)) yarns.insert(one->yarn);
  return yarns;
}
bool holds_yarn(const std::set<int>& withdrawn, const PrintedView& printed, const PrintedYarn& yarn) {
  if (withdrawn.count(-1) > 0 || (!withdrawn.empty() && printed.yarns().size() == 1)) return true;
  return withdrawn.count(static_cast<int>(&yarn - printed.yarns().data())) > 0;
}

void show_yarn(Finding& finding, const PrintedView& printed, const PrintedYarn& yarn) {
  for (const auto* group : {&yarn.names, &yarn.descriptions, &yarn.fibres, &yarn.lengths, &yarn.weights})
    if (!group->empty()) {
      show(finding, printed, *group->front());
      return;
    }
  finding.places.push_back(TextSpan{});
}

void description_is_full(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const std::set<int> withdrawn = said_withdrawn(printed);
  for (const PrintedYarn& yarn : printed.yarns()) {
    if (yarn.name.empty() && printed.yarns().size() > 1) continue;
    const Yarn* fact = input.pattern.yarn(yarn.fact);
    const bool gone = (fact != nullptr && fact->withdrawn) || holds_yarn(withdrawn, printed, yarn);
    const int wanted =
        gone ? static_cast<int>(std::size(description_parts)) : input.pattern.house().description_minimum;
    std::vector<std::string> held, lacking, proposed;
    for (const DescriptionPart& part : description_parts) {
      if (holds_part(printed, yarn, part)) {
        held.emplace_back(part.name);
        continue;
      }
      lacking.emplace_back(part.name);
      if (fact == nullptr || !part.element) continue;
      const std::string words = description_words(*fact, *part.element, input.pattern.house());
      if (!words.empty() && std::find(proposed.begin(), proposed.end(), words) == proposed.end())
        proposed.push_back(words);
    }
    const bool no_gauge = gone && yarn.band_gauges.empty();
    if (static_cast<int>(held.size()) >= wanted && !no_gauge) continue;
    if (no_gauge) lacking.emplace_back("gauge of the band");
    Finding& finding = findings.add("too little said of the yarn: " + quoted(name_of(yarn)));
    finding.apart = yarn.name;
    show_yarn(finding, printed, yarn);
    for (const Statement* one : yarn.descriptions) rest_on(finding, printed, *one);
    if (gone) finding.evidence.push_back("no longer made: whoever replaces it needs every word");
    finding.evidence.push_back(held.empty() ? "nothing is said of it" : "said: " + join(held, ", "));
    finding.evidence.push_back("not said: " + join(lacking, ", "));
    if (!proposed.empty()) finding.proposal_words = "add “" + join(proposed, ", ") + "”";
    finding.query = "So that others can find a stand-in for " + name_of(yarn) + ", could you add " +
                    listed(lacking) + "?";
  }
}

// Words that shut each other out, hyphens as spaces; `but_not` words excuse a match on the first side.
struct Opposed {
  WordList one, other, but_not;
};
const Opposed opposed_words[] = {
    {{"single", "singles", "single ply", "unplied"},
     {"plies", "plied", "2 ply", "two ply", "cabled", "chainette"},
     {"single skein"}},
    {{"smooth", "crisp"}, {"brushed", "fuzzy", "hairy", "fluffy", "boucle", "bouclé"}, {}},
    {{"matte", "matt"}, {"lustrous", "shiny", "glossy", "sheen"}, {}},
    {{"woollen spun", "woolen spun", "carded"},
     {"worsted spun", "combed"},
     {"semi worsted spun", "semi worsted"}},
    {{"tightly twisted", "tightly spun", "high twist", "firmly twisted"},
     {"softly twisted", "loosely twisted", "lightly twisted", "softly spun", "loosely spun", "low twist"},
     {}},
    {{"solid"},
     {"variegated", "self striping", "speckled", "heathered", "marled", "gradient"},
     {"semi solid"}},
    {{"undyed"}, {"hand dyed", "kettle dyed", "dyed in the wool"}, {}},
};

// A figure before "ply": 4 in "4-ply" and "four ply"; absent where there is none.
std::optional<int> plies_in(const std::string& plain) {
  constexpr std::string_view figures[] = {"one", "two", "three", "four", "five", "six", "seven", "eight"};
  const auto at = find_word(plain, {"ply", "plies"});
  if (!at || at.at < 2) return std::nullopt;
  std::size_t end = at.at;
  while (end > 0 && plain[end - 1] == ' ') --end;
  std::size_t begin = end;
  while (begin > 0 && plain[begin - 1] != ' ') --begin;
  const std::string word = plain.substr(begin, end - begin);
  if (!word.empty() && word.size() < 3 &&
      std::all_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; }))
    return std::stoi(word);
  for (std::size_t i = 0; i < std::size(figures); ++i)
    if (word == figures[i]) return static_cast<int>(i) + 1;
  return std::nullopt;
}

// "4-ply" may be a thickness. It is a structure where the yarn has another word for its thickness, which
// "4-ply" does not mean too, or where it says plies.
enum class PlyUse { none, structure, thickness, either };
PlyUse ply_use(const PrintedView& printed, const PrintedYarn& yarn, const Statement& statement) {
  const std::string plain = plain_words(printed, statement);
  const auto plies = plies_in(plain);
  if (!plies) return PlyUse::none;
  if (statement.qualifier == "category") return PlyUse::thickness;
  if (says(plain, {"plies"}) || *plies <= 2) return PlyUse::structure;
  const std::string as_thickness =
      lower_ascii(category_words(std::to_string(*plies) + "-ply", CategoryWords::united_states));
  for (const Statement* other : yarn.descriptions) {
    if (other == &statement || other->qualifier != "category") continue;
    const std::string words = other->words.empty() ? std::string(printed.words(other->span)) : other->words;
    return lower_ascii(category_words(words, CategoryWords::united_states)) == as_thickness
               ? PlyUse::either
               : PlyUse::structure;
  }
  return PlyUse::either;
}

void say_opposed(const ReviewInput& input, Findings& findings, const PrintedYarn& yarn, const Statement& one,
                 const Statement& other, const std::string& apart) {
  const PrintedView& printed = input.printed;
  const std::string a = printed_words(printed, one), b = printed_words(printed, other);
  Finding& finding = findings.add("a description against itself: " + (&one == &other ? a : a + " and " + b));
  finding.apart = yarn.name + ", " + apart;
  show(finding, printed, one);
  show(finding, printed, other);
  finding.evidence.push_back(&one == &other ? a + " says both" : a + " against " + b);
  if (const Yarn* fact = input.pattern.yarn(yarn.fact))
    if (const std::string known =
            description_words(*fact, DescriptionElement::structure, input.pattern.house());
        apart == "structure" && !known.empty())
      finding.evidence.push_back("in force: " + quoted(known));
  finding.query =
      name_of(yarn) + " is described as " + (&one == &other ? a : a + " and as " + b) + ". Which is it?";
}

// What the description says against the facts in force.
void say_against_facts(const ReviewInput& input, Findings& findings, const PrintedYarn& yarn,
                       const Statement& one, const std::string& known) {
  const std::string a = printed_words(input.printed, one);
  Finding& finding = findings.add("a description against the yarn in force: " + a);
  finding.apart = yarn.name + ", facts";
  show(finding, input.printed, one);
  finding.evidence.push_back(a + " against " + quoted(known) + " in force");
  finding.query = name_of(yarn) + " is described as " + a + "; we have it as " + known + ". Which is it?";
}

std::string description_in_force(const Yarn& yarn) {
  std::string words =
      lower_ascii(yarn.structure + ", " + yarn.twist + ", " + yarn.surface + ", " + yarn.colouring);
  if (yarn.spinning != Spinning::unstated) words += ", " + std::string(word_of(yarn.spinning));
  std::replace(words.begin(), words.end(), '-', ' ');
  return words;
}

void test_description(const ReviewInput& input, Findings& findings, const PrintedYarn& yarn) {
  const PrintedView& printed = input.printed;
  const Yarn* fact = input.pattern.yarn(yarn.fact);
  const auto first_that_says = [&](WordList words, WordList but_not) -> const Statement* {
    for (const Statement* one : yarn.descriptions) {
      const std::string plain = plain_words(printed, *one);
      if (one->qualifier != "category" && says(plain, words) && !says(plain, but_not)) return one;
    }
    return nullptr;
  };
  for (const Opposed& row : opposed_words) {
    const bool structure = &row == &opposed_words[0];
    const Statement* one = first_that_says(row.one, row.but_not);
    const Statement* other = first_that_says(row.other, {});
    if (structure && one != nullptr && other == nullptr)
      for (const Statement* said : yarn.descriptions)
        if (ply_use(printed, yarn, *said) == PlyUse::structure && plies_in(plain_words(printed, *said)) != 1)
          other = said;
    if (one != nullptr && other != nullptr) {
      say_opposed(input, findings, yarn, *one, *other,
                  structure ? "structure" : std::string(*row.one.begin()));
      continue;
    }
    if (fact == nullptr || (one == nullptr) == (other == nullptr)) continue;
    const std::string known = description_in_force(*fact);
    const bool known_one = says(known, row.one) && !says(known, row.but_not),
               known_other = says(known, row.other);
    if (one != nullptr && known_other && !known_one) say_against_facts(input, findings, yarn, *one, known);
    if (other != nullptr && known_one && !known_other)
      say_against_facts(input, findings, yarn, *other, known);
  }
  const Statement* first = nullptr;
  for (const Statement* said : yarn.descriptions) {
    if (ply_use(printed, yarn, *said) != PlyUse::structure) continue;
    if (first == nullptr)
      first = said;
    else if (plies_in(plain_words(printed, *said)) != plies_in(plain_words(printed, *first)))
      say_opposed(input, findings, yarn, *first, *said, "plies");
  }
}

void description_is_of_one_mind(const ReviewInput& input, Findings& findings) {
  for (const PrintedYarn& yarn : input.printed.yarns()) test_description(input, findings, yarn);
}

void ply_means_one_thing(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const Statement* structure = nullptr;
  const Statement* thickness = nullptr;
  for (const PrintedYarn& yarn : printed.yarns())
    for (const Statement* said : yarn.descriptions) {
      const PlyUse use = ply_use(printed, yarn, *said);
      if (use == PlyUse::structure && structure == nullptr && !says(plain_words(printed, *said), {"plies"}))
        structure = said;
      if (use == PlyUse::thickness && thickness == nullptr) thickness = said;
    }
  if (structure == nullptr || thickness == nullptr) return;
  Finding& finding = findings.add("ply as thickness and as structure: " + printed_words(printed, *thickness) +
                                  " and " + printed_words(printed, *structure));
  show(finding, printed, *thickness);
  show(finding, printed, *structure);
  finding.evidence = {printed_words(printed, *thickness) + " is a thickness",
                      printed_words(printed, *structure) + " counts the strands of the yarn"};
  finding.query = "Ply stands for the thickness in " + printed_words(printed, *thickness) +
                  " and for the strands in " + printed_words(printed, *structure) +
                  ". Could one of them be put in other words?";
}

// Why the colouring matters here: the fabric's name; empty where it does not.
std::string fabric_that_needs_colouring(const ReviewInput& input) {
  const auto matters = [](Structure structure) {
    return structure == Structure::lace || structure == Structure::cable || structure == Structure::stranded;
  };
  for (const Fabric& fabric : input.pattern.fabrics)
    if (matters(fabric.structure)) return std::string(word_of(fabric.structure));
  for (const Statement* fabric : input.printed.all(StatementKind::gauge_fabric))
    if (const auto structure = structure_of(fabric->words); structure && matters(*structure))
      return std::string(word_of(*structure));
  // Whole words only: "Lacewing Lane" is no lace.
  const FoundWord named =
      find_word(item_of(input).words, {"lace", "cable", "cabled", "stranded", "colourwork", "colorwork"});
  if (const auto structure = structure_of(named.word); structure && matters(*structure))
    return std::string(word_of(*structure));
  return {};
}

void colouring_is_named(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const std::string fabric = fabric_that_needs_colouring(input);
  if (fabric.empty()) return;
  const WordList named = {"solid",  "semi solid", "heathered",     "heather", "marl",     "marled",
                          "tweed",  "variegated", "self striping", "tonal",   "speckled", "gradient",
                          "undyed", "natural",    "mottled",       "ragg",    "tweedy"};
  for (const PrintedYarn& yarn : printed.yarns()) {
    const Statement* dyed = nullptr;
    bool found = false;
    for (const Statement* one : yarn.descriptions) {
      const std::string plain = plain_words(printed, *one);
      found = found || says(plain, named);
      if (says(plain, {"dyed"})) dyed = one;
    }
    if (found) continue;
    Finding& finding =
        findings.add("colouring not named, for " + fabric + ": " +
                     (dyed != nullptr ? printed_words(printed, *dyed) : quoted(name_of(yarn))));
    finding.apart = yarn.name;
    if (dyed != nullptr)
      show(finding, printed, *dyed);
    else
      show_yarn(finding, printed, yarn);
    finding.evidence.push_back("variegated yarn hides what " + fabric + " shows");
    if (const Yarn* fact = input.pattern.yarn(yarn.fact); fact != nullptr && !fact->colouring.empty())
      finding.proposal_words = "add “" + fact->colouring + "”";
    finding.query = dyed != nullptr ? name_of(yarn) + " is " + printed_words(printed, *dyed) +
                                          ", but which: solid, semi-solid or variegated?"
                                    : "Is " + name_of(yarn) + " solid, heathered or variegated?";
  }
}

void withdrawn_is_said(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const std::set<int> withdrawn = said_withdrawn(printed);
  for (const PrintedYarn& yarn : printed.yarns()) {
    const Yarn* fact = input.pattern.yarn(yarn.fact);
    if (fact == nullptr || !fact->withdrawn || holds_yarn(withdrawn, printed, yarn)) continue;
    Finding& finding = findings.add("no longer made: " + quoted(name_of(yarn)));
    finding.apart = yarn.name;
    show_yarn(finding, printed, yarn);
    finding.evidence.push_back(quoted(name_of(yarn)) + " is marked as no longer made in the list of yarns");
    finding.proposal_words = "add “" + input.pattern.house().withdrawn_words + "”";
    finding.query =
        name_of(yarn) + " is marked as no longer made. Should the text say so, or name another yarn?";
  }
}

}  // namespace

std::span<const Check> description_checks() {
  using Kind = StatementKind;
  static constexpr std::string_view practice = "common practice, no source";
  static const Check rows[] = {
      {"D1",
       "A description says enough to replace the yarn: as many of structure, spinning, thickness, surface, "
       "colouring "
       "and treatment as the house asks for; all six and the gauge of the band where it is no longer made.",
       Severity::ask,
       {Kind::yarn_description, Kind::fibre, Kind::yarn_name, Kind::withdrawn, Kind::band_gauge},
       practice,
       description_is_full},
      {"D2",
       "A description is of one mind with itself and with the yarn in force.",
       Severity::ask,
       {Kind::yarn_description, Kind::yarn_name},
       practice,
       description_is_of_one_mind},
      {"D3",
       "Ply is not used for a thickness in one place and for strands in another.",
       Severity::style,
       {Kind::yarn_description, Kind::yarn_name},
       practice,
       ply_means_one_thing},
      {"D4",
       "The colouring is named where the fabric is lace, cable or stranded.",
       Severity::ask,
       {Kind::yarn_description, Kind::yarn_name, Kind::gauge_fabric, Kind::item, Kind::title},
       practice,
       colouring_is_named},
      {"D5",
       "Each colour has the name and number of its shade as the house prints them.",
       Severity::style,
       {Kind::role, Kind::shade_name, Kind::shade_number, Kind::count, Kind::length_note,
        Kind::yarn_description},
       practice,
       shades_are_complete},
      {"D6",
       "One number is one shade, and two colours are never the same shade unless it is said.",
       Severity::stop,
       {Kind::role, Kind::shade_name, Kind::shade_number, Kind::yarn_name},
       practice,
       one_number_one_shade},
      {"D7",
       "A name outside the block is one of those in it, not one that is spelled nearly alike.",
       Severity::ask,
       {Kind::shade_name, Kind::yarn_name, Kind::legend_shade, Kind::shade_mention, Kind::role},
       practice,
       names_are_those_listed},
      {"D8",
       "A yarn that is no longer made is said to be so.",
       Severity::note,
       {Kind::yarn_name, Kind::withdrawn},
       practice,
       withdrawn_is_said},
  };
  return rows;
}

}  // namespace skeinproof
