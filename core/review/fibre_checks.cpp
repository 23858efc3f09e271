// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/manuscript/words.h"
#include "core/reference/fibre_words.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/yarn_contents.h"

namespace skeinproof {
namespace {

constexpr double exact = 1e-6;

TextSpan span_of(const Composition& composition) {
  return span_of(*composition.front().statement, *composition.back().statement);
}
void show_composition(Finding& finding, const PrintedView& printed, const Composition& composition) {
  finding.places.push_back(span_of(composition));
  for (const FibreSaid& said : composition) rest_on(finding, printed, *said.statement);
}

// One composition of one yarn, with where it stands among those of the yarn.
using CompositionVisit = void (*)(const ReviewInput&, Findings&, const PrintedYarn&, const Composition&,
                                  const std::string& apart);
void for_each_composition(const ReviewInput& input, Findings& findings, CompositionVisit visit) {
  for (const PrintedYarn& yarn : input.printed.yarns()) {
    std::size_t nth = 0;
    for (const Composition& composition : printed_compositions(yarn))
      visit(input, findings, yarn, composition, yarn.name + (nth++ > 0 ? ", " + std::to_string(nth) : ""));
  }
}

// A share that would let the others stay: the one in force, else what is left to 100.
struct OtherShare {
  const FibreSaid* said = nullptr;
  double percent = 0;
  bool in_force = false;
};
std::vector<OtherShare> other_shares(const ReviewInput& input, const PrintedYarn& yarn,
                                     const Composition& composition, double sum) {
  std::vector<OtherShare> others;
  const Yarn* fact = input.pattern.yarn(yarn.fact);
  for (const FibreSaid& said : composition) {
    const double left = *said.percent + 100 - sum;
    if (left < 1 || left > 99 || said.statement->values.empty()) continue;
    OtherShare other{&said, left, false};
    if (fact != nullptr && said.fibre != nullptr)
      for (const FibreShare& share : fact->composition)
        other.in_force = other.in_force || (share.fibre == said.fibre->id && share.percent.value == left);
    others.push_back(other);
  }
  std::stable_sort(others.begin(), others.end(),
                   [](const OtherShare& a, const OtherShare& b) { return a.in_force && !b.in_force; });
  return others;
}

// Shares as the list would print them with one of them changed: "75/25".
std::string shares_with(const Composition& composition, const OtherShare& other, const FindingWords& words) {
  std::vector<std::string> shares;
  for (const FibreSaid& said : composition)
    shares.push_back(words.number(&said == other.said ? other.percent : *said.percent, 2));
  return join(shares, "/");
}

// Equal parts of three or more, "33 % each", print to less than 100.
bool equal_parts_rounded(const Composition& composition, double sum) {
  const double first = *composition.front().percent;
  const bool equal = std::all_of(composition.begin(), composition.end(),
                                 [&](const FibreSaid& said) { return *said.percent == first; });
  const auto n = static_cast<double>(composition.size());
  return equal && composition.size() > 2 && std::abs(sum - 100) <= n * composition.front().half_step + exact;
}

// "98% cotton, a trace of elastane"
bool names_a_trace(const PrintedView& printed, const Composition& composition) {
  constexpr std::size_t beyond = 40;
  const TextSpan span = span_of(composition);
  const std::size_t end = std::min(printed.text().size(), span.end + beyond);
  return says(lower_ascii(printed.words(TextSpan{span.begin, end})),
              {"trace", "touch", "hint", "dash", "less than 1"});
}

void test_sum(const ReviewInput& input, Findings& findings, const PrintedYarn& yarn,
              const Composition& composition, const std::string& apart) {
  constexpr double most_trace_pct = 3;
  const FindingWords words(input);
  double sum = 0;
  std::size_t known = 0;
  std::vector<std::string> terms;
  for (const FibreSaid& said : composition)
    if (said.percent) {
      sum += *said.percent;
      ++known;
      terms.push_back(words.number(*said.percent, 2));
    }
  const bool whole = known == composition.size();
  if (known == 0 || std::abs(sum - 100) < exact) return;
  if (sum < 100 && sum >= 100 - most_trace_pct && (!whole || names_a_trace(input.printed, composition)))
    return;
  if (whole && equal_parts_rounded(composition, sum)) return;
  const std::string shown = printed_words(input.printed, span_of(composition));
  double rounding = 0;
  for (const FibreSaid& said : composition) rounding += said.half_step;
  const bool may_be_rounded = whole && known > 2 && std::abs(sum - 100) <= rounding && rounding < 3;
  const bool left_open = !whole && sum < 100;
  Finding& finding =
      findings.add(may_be_rounded || left_open ? Severity::ask : Severity::stop,
                   left_open ? "a share is missing: " + shown : "the fibres do not come to 100 %: " + shown);
  finding.apart = apart;
  show_composition(finding, input.printed, composition);
  finding.evidence.push_back(join(terms, " + ") + " = " + words.number(sum, 2));
  if (may_be_rounded) finding.evidence.push_back("a band may round its shares");
  finding.query = "The content of " + name_of(yarn) + " is given as " + shown + ", which comes to " +
                  words.number(sum, 2) + " %. ";
  const auto others = whole ? other_shares(input, yarn, composition, sum) : std::vector<OtherShare>{};
  if (others.empty()) {
    finding.query += "What does the band say?";
    return;
  }
  std::vector<std::string> ways;
  for (const OtherShare& other : others) ways.push_back(shares_with(composition, other, words));
  // Without a fact to go by, the last of the shares is the one most often filled up by head.
  const OtherShare& chosen = others.front().in_force ? others.front() : others.back();
  propose(finding, input.printed, chosen.said->statement->values.front().span,
          words.number(chosen.percent, 2));
  finding.query += "Is it " + join(ways, " or ") + "?";
}

void sums_to_100(const ReviewInput& input, Findings& findings) {
  for_each_composition(input, findings, test_sum);
}

void test_shares(const ReviewInput& input, Findings& findings, const PrintedYarn& yarn,
                 const Composition& composition, const std::string& apart) {
  const FindingWords words(input);
  const PrintedView& printed = input.printed;
  std::set<std::pair<const Fibre*, std::string>> named;
  double before = 101;
  bool descending = true;
  for (const FibreSaid& said : composition) {
    if (said.percent) {
      if (*said.percent < 1 || *said.percent > 100) {
        Finding& finding = findings.add("no share of a fibre: " + printed_words(printed, *said.statement));
        finding.apart = apart + ", " + said.words;
        show(finding, printed, *said.statement);
        finding.evidence.push_back(words.number(*said.percent, 2) + " % is not between 1 and 100 %");
        finding.query = "The share " + printed_words(printed, *said.statement) + " of " + name_of(yarn) +
                        " cannot be. What does the band say?";
      }
      descending = descending && *said.percent <= before;
      before = *said.percent;
    }
    // Two grades of one fibre are two names: "superfine merino, merino".
    const std::string bare = tidy_spaces(said.words);
    if (bare.empty() || named.emplace(said.fibre, bare).second) continue;
    Finding& finding = findings.add("a fibre named twice: " + printed_words(printed, span_of(composition)));
    finding.apart = apart + ", twice " + bare;
    show_composition(finding, printed, composition);
    finding.evidence.push_back(quoted(bare) + " stands twice in the list");
    finding.query = "The content of " + name_of(yarn) + " names " + bare +
                    " twice: " + printed_words(printed, span_of(composition)) +
                    ". Is one of them another fibre?";
  }
  if (descending) return;
  Finding& finding = findings.add(
      Severity::style, "fibres not in falling order: " + printed_words(printed, span_of(composition)));
  finding.apart = apart + ", order";
  show_composition(finding, printed, composition);
  finding.evidence.push_back("the largest share stands first by custom");
  finding.query = "Could the fibres of " + name_of(yarn) + " stand in falling order?";
}

void shares_are_possible(const ReviewInput& input, Findings& findings) {
  for_each_composition(input, findings, test_shares);
}

// What is wrong with the name of a fibre, and what it might be.
struct NameFault {
  std::string why;       // empty = nothing
  std::string proposed;  // empty = no proposal
};
// The legal list gives one name for most fibres; houses that want it print it.
NameFault fault_of(const FibreSaid& said, const HouseStyle& house) {
  const bool generic = house.fibre_names != FibreNames::as_written;
  if (said.fibre == nullptr) {
    if (says(said.words, {"other fibre", "other fiber", "other fibres", "unknown", "mixed fibre"})) return {};
    return {"no generic name of a fibre is known for it", ""};
  }
  if (says(said.words, {"angora"}) && says(said.words, {"goat", "mohair"}))
    return {"angora is the hair of a rabbit, mohair that of a goat", "mohair"};
  if (says(said.words, {"mohair"}) && says(said.words, {"rabbit"}))
    return {"mohair is the hair of a goat, angora that of a rabbit", "angora"};
  if (says(said.words, {"bamboo", "bambou", "bambus"}) &&
      !says(said.words, {"viscose", "viskose", "lyocell", "rayon"}))
    return {"bamboo is a plant; the fibre made of it is viscose or lyocell", "viscose"};
  if (generic && said.statement != nullptr) {
    Yarn one;
    one.composition.push_back({std::string(said.fibre->id), said.words, {said.percent.value_or(100), {}}});
    const std::string name = composition_words(one, house);
    const std::string wanted = name.substr(std::min(name.size(), name.find(' ') + 1));
    if (lower_ascii(wanted) != tidy_spaces(said.words)) return {"the house prints generic names", wanted};
  }
  return {};
}

void names_are_generic(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const Statement* polyamide = nullptr;
  const Statement* nylon = nullptr;
  std::set<std::string> seen;
  for (const PrintedYarn& yarn : printed.yarns())
    for (const Composition& composition : printed_compositions(yarn))
      for (const FibreSaid& said : composition) {
        if (says(said.words, {"nylon"}) && nylon == nullptr) nylon = said.statement;
        if (says(said.words, {"polyamide"}) && polyamide == nullptr) polyamide = said.statement;
        const NameFault fault = fault_of(said, input.pattern.house());
        if (fault.why.empty() || !seen.insert(said.words).second) continue;
        Finding& finding =
            findings.add("not a generic fibre name: " + printed_words(printed, *said.statement));
        finding.apart = said.words;
        show(finding, printed, *said.statement);
        finding.evidence.push_back(quoted(said.words) + ": " + fault.why);
        const TextSpan& whole = said.statement->span;
        const auto at = lower_ascii(printed.words(whole)).find(said.words);
        if (!fault.proposed.empty() && at != std::string::npos && !said.words.empty())
          propose(finding, printed, {whole.begin + at, whole.begin + at + said.words.size()}, fault.proposed);
        finding.query = "The content of " + name_of(yarn) + " names " + quoted(said.words) + ". " +
                        (fault.proposed.empty() ? std::string("What fibre is that by its generic name?")
                                                : "Could it read " + fault.proposed + "?");
      }
  if (nylon == nullptr || polyamide == nullptr) return;
  Finding& finding = findings.add("one fibre by two names: " + printed_words(printed, *nylon) + " and " +
                                  printed_words(printed, *polyamide));
  finding.apart = "nylon and polyamide";
  show(finding, printed, *nylon);
  show(finding, printed, *polyamide);
  finding.evidence.push_back("nylon and polyamide are the same fibre");
  finding.query =
      "The text has nylon in one place and polyamide in another. Could one of them stand throughout?";
}

// Fibre words that a yarn's name may promise. Short words and words of other languages are left out: they are
// parts of too many names.
const Fibre* fibre_promised(const std::string& word) {
  static const std::set<std::string> common = {
      "wool",    "merino",    "mohair", "cashmere",  "alpaca",   "llama",   "camel", "yak",
      "angora",  "silk",      "tussah", "cotton",    "linen",    "flax",    "hemp",  "bamboo",
      "viscose", "rayon",     "nylon",  "polyamide", "modal",    "lyocell", "cupro", "acrylic",
      "ramie",   "polyester", "possum", "qiviut",    "lambswool"};
  return common.count(word) > 0 ? fibre_by_words(word) : nullptr;
}

bool same_kind(const Fibre& promised, const Fibre& held, std::string_view word) {
  const auto kind = [](const Fibre& fibre) { return fibre.variety_of.empty() ? fibre.id : fibre.variety_of; };
  if (kind(promised) == kind(held)) return true;
  // "Wool" is said of many an animal's hair; rayon and bamboo of all fibres that are made of pulp.
  if (word == "wool") return held.fibre_class == "animal" && held.id != "silk" && held.id != "silk_tussah";
  return (word == "bamboo" || word == "rayon") && held.fibre_class == "regenerated";
}

void test_promises(const ReviewInput& input, Findings& findings, const PrintedYarn& yarn,
                   const Statement& said, const Composition& composition) {
  const std::string lower =
      lower_ascii(said.words.empty() ? input.printed.words(said.span) : std::string_view(said.words));
  std::string word;
  std::vector<std::string> words;
  for (const char c : lower + " ") {
    const bool letter = (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
    if (letter)
      word += c;
    else if (!word.empty())
      words.push_back(std::move(word)), word.clear();
  }
  for (std::size_t i = 0; i < words.size(); ++i) {
    const Fibre* promised = fibre_promised(words[i]);
    // "Wool-like", "silk touch", "cotton-soft" promise a hand, not a fibre.
    const bool likened = i + 1 < words.size() && (words[i + 1] == "like" || words[i + 1] == "touch" ||
                                                  words[i + 1] == "soft" || words[i + 1] == "feel");
    const bool denied = i > 0 && (words[i - 1] == "no" || words[i - 1] == "not" || words[i - 1] == "faux");
    if (promised == nullptr || likened || denied) continue;
    const bool held = std::any_of(composition.begin(), composition.end(), [&](const FibreSaid& fibre) {
      return says(fibre.words, {words[i]}) ||
             (fibre.fibre != nullptr && same_kind(*promised, *fibre.fibre, words[i]));
    });
    const bool all_known = std::all_of(composition.begin(), composition.end(),
                                       [](const FibreSaid& fibre) { return fibre.fibre != nullptr; });
    if (held || !all_known) continue;
    Finding& finding =
        findings.add("a fibre that the content does not hold: " + printed_words(input.printed, said));
    finding.apart = yarn.name + ", " + words[i];
    show(finding, input.printed, said);
    std::vector<std::string> fibres;
    for (const FibreSaid& fibre : composition) fibres.push_back(fibre.words);
    if (composition.front().statement != nullptr) show_composition(finding, input.printed, composition);
    finding.evidence = {quoted(words[i]) + " in " + printed_words(input.printed, said),
                        "content: " + join(fibres, ", ")};
    finding.query = printed_words(input.printed, said) + " speaks of " + words[i] + ", but the content is " +
                    join(fibres, ", ") + ". Is the content complete?";
  }
}

// Treatments that shut each other out.
struct Opposed {
  WordList one, other;
};
const Opposed opposed_treatments[] = {
    {{"untreated", "non-superwash", "non superwash"},
     {"superwash", "shrink-resist", "shrink-resistant", "machine washable", "machine-washable"}},
    {{"unmercerised", "unmercerized"}, {"mercerised", "mercerized"}},
    {{"unbleached"}, {"bleached"}},
};

void test_treatments(const ReviewInput& input, Findings& findings, const PrintedYarn& yarn) {
  std::vector<const Statement*> all = yarn.names;
  all.insert(all.end(), yarn.descriptions.begin(), yarn.descriptions.end());
  all.insert(all.end(), yarn.fibres.begin(), yarn.fibres.end());
  const auto first_that_says = [&](const WordList& words, const WordList& but_not) {
    return std::find_if(all.begin(), all.end(), [&](const Statement* one) {
      const std::string lower =
          lower_ascii(one->words.empty() ? input.printed.words(one->span) : std::string_view(one->words));
      return says(lower, words) && !says(lower, but_not);
    });
  };
  for (const Opposed& row : opposed_treatments) {
    const auto one = first_that_says(row.one, {});
    const auto other = first_that_says(row.other, row.one);
    if (one == all.end() || other == all.end()) continue;
    Finding& finding =
        findings.add("treatments that shut each other out: " + printed_words(input.printed, **one) + " and " +
                     printed_words(input.printed, **other));
    finding.apart = yarn.name + ", treatment";
    show(finding, input.printed, **one);
    show(finding, input.printed, **other);
    finding.evidence.push_back(printed_words(input.printed, **one) + " against " +
                               printed_words(input.printed, **other));
    finding.query = name_of(yarn) + " is called " + printed_words(input.printed, **one) + " and " +
                    printed_words(input.printed, **other) + ". Which of them is it?";
  }
}

void content_holds_what_is_promised(const ReviewInput& input, Findings& findings) {
  for (const PrintedYarn& yarn : input.printed.yarns()) {
    test_treatments(input, findings, yarn);
    const Composition composition = composition_of(input, yarn);
    if (composition.empty()) continue;
    if (!yarn.names.empty()) test_promises(input, findings, yarn, *yarn.names.front(), composition);
    for (const Statement* said : yarn.descriptions) test_promises(input, findings, yarn, *said, composition);
  }
}

void every_yarn_has_its_content(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  if (printed.yarns().empty()) findings.cannot("no yarn was read in the text", "a yarn with its content");
  for (const PrintedYarn& yarn : printed.yarns()) {
    if (!yarn.fibres.empty()) continue;
    // A length without a name beside yarns with names says how much of any yarn is needed.
    if (yarn.name.empty() && printed.yarns().size() > 1) continue;
    Finding& finding = findings.add("content not given: " + quoted(name_of(yarn)));
    finding.apart = yarn.name;
    for (const auto* group : {&yarn.names, &yarn.lengths, &yarn.weights})
      if (!group->empty() && finding.places.empty()) show(finding, printed, *group->front());
    if (finding.places.empty()) finding.places.push_back(TextSpan{});
    finding.evidence.push_back("no fibre is named for " + name_of(yarn));
    if (const Yarn* fact = input.pattern.yarn(yarn.fact); fact != nullptr && !fact->composition.empty())
      finding.proposal_words = "add “" + composition_words(*fact, input.pattern.house()) + "”";
    finding.query =
        "The fibre content of " + name_of(yarn) + " is not given. Could you supply it from the band?";
  }
}

}  // namespace

std::span<const Check> fibre_checks() {
  using Kind = StatementKind;
  static constexpr std::string_view names_list =
      "Regulation (EU) No 1007/2011, Annex I, read through the German act (Textilkennzeichnungsgesetz, 2012, "
      "Anlage 1); ISO 2076, from memory";
  static const Check rows[] = {
      {"F1",
       "The percentages of one composition come to exactly 100.",
       Severity::stop,
       {Kind::fibre, Kind::yarn_name},
       "definition of a percentage",
       sums_to_100},
      {"F2",
       "Each share is 1 to 100, no fibre is named twice, the largest stands first.",
       Severity::stop,
       {Kind::fibre, Kind::yarn_name},
       "common practice, no source",
       shares_are_possible},
      {"F3",
       "Fibres go by their generic names, treatment words beside them allowed.",
       Severity::style,
       {Kind::fibre, Kind::yarn_name},
       names_list,
       names_are_generic},
      {"F4",
       "A fibre or treatment in a yarn's name or description is in its content.",
       Severity::ask,
       {Kind::fibre, Kind::yarn_name, Kind::yarn_description},
       "common practice, no source",
       content_holds_what_is_promised},
      {"F5",
       "The content of every yarn is given.",
       Severity::ask,
       {Kind::fibre, Kind::yarn_name, Kind::put_up_length, Kind::put_up_weight},
       "common practice, no source",
       every_yarn_has_its_content},
  };
  return rows;
}

}  // namespace skeinproof
