// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/manuscript/words.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/put_up_rules.h"
#include "core/review/yarn_contents.h"
#include "core/units/quantity.h"
#include "core/yarn/check_yarn.h"
#include "core/yarn/linear_density.h"

namespace skeinproof {
namespace {

std::optional<double> first_in(const std::vector<const Statement*>& statements, PrintedUnit metric,
                               PrintedUnit imperial, double factor) {
  std::optional<double> converted;
  for (const Statement* one : statements) {
    if (one->values.empty() || !one->values.front().number) continue;
    const double value = *one->values.front().number;
    if (one->unit == metric) return value;
    if (one->unit == imperial && !converted) converted = value * factor;
  }
  return converted;
}

void show_mention(Finding& finding, const PrintedView& printed, const PutUpMention& mention) {
  finding.places.push_back(mention.span());
  for (const Statement* one : mention.all()) rest_on(finding, printed, *one);
}

// Whether a mention says that it is of one skein: "350 m" alone may be a need.
bool is_of_one_skein(const PrintedView& printed, const PutUpMention& mention) {
  if (!mention.lengths.empty() && !mention.weights.empty()) return true;
  const TextSpan span = mention.span();
  const std::size_t end = std::min(printed.text().size(), span.end + 16);
  return says(lower_ascii(printed.words(TextSpan{span.begin, end})),
              {"skein", "ball", "hank", "cake", "cone", "per 50", "per 100", "per 25"});
}

// Whether a mention belongs to another time: "formerly 50 g / 160 m".
bool of_another_time(const PrintedView& printed, const PutUpMention& mention) {
  const TextSpan sentence = sentence_around(printed.text(), mention.span().begin);
  return says(lower_ascii(printed.words(sentence)),
              {"formerly", "previously", "old", "older", "new", "newer", "used to", "until", "since", "once",
               "earlier", "changed", "replaces", "discontinued"});
}

// The yarns, by their indices, that come on cones and are counted by weight or length, not in cones.
std::set<int> sold_on_cones_by_weight(const PrintedView& printed) {
  std::set<int> by_weight, sold;
  for (const PrintedRole& role : printed.roles())
    if (!role.count) by_weight.insert(role.yarn);
  for (const Statement* word : printed.all(StatementKind::put_up_word)) {
    const int yarn = printed.yarns().size() == 1 ? 0 : word->yarn;
    if (by_weight.count(yarn) > 0 && says(lower_ascii(word->words), {"cone"})) sold.insert(yarn);
  }
  return sold;
}

// The letters between the figures of a list and behind its last one.
struct ListUnits {
  std::size_t between = 0;  // gaps between two figures that hold letters
  bool behind = false;
};
ListUnits units_in(const PrintedView& printed, const Statement& list) {
  const auto holds_letters = [&](std::size_t begin, std::size_t end) {
    const std::string words = lower_ascii(printed.words(TextSpan{begin, std::max(begin, end)}));
    return std::any_of(words.begin(), words.end(), [](char c) { return c >= 'a' && c <= 'z'; });
  };
  ListUnits units;
  for (std::size_t i = 0; i + 1 < list.values.size(); ++i)
    if (holds_letters(list.values[i].span.end, list.values[i + 1].span.begin)) ++units.between;
  units.behind = holds_letters(list.values.back().span.end, list.span.end);
  return units;
}

const WordList unit_words = {"skein",  "ball",   "hank",  "cake",     "cone",  "g",     "gr",
                             "gram",   "gramme", "m",     "mtr",      "metre", "meter", "yd",
                             "yard",   "oz",     "ounce", "50g",      "100g",  "pull",  "spool",
                             "bobbin", "reel",   "skn",   "quantity", "amount"};

// Whether a line is the head of a table that names what is counted: "Colour, balls".
bool heads_a_table(std::string_view line) {
  const bool figures = line.find_first_of("0123456789") != std::string_view::npos;
  return !figures && says(lower_ascii(line), unit_words);
}

// Whether a unit stands before a list in its sentence ("Balls: 5 (5, 6)"), as the next word behind it, or at
// the head of its table.
bool unit_beside(const PrintedView& printed, const Statement& list) {
  constexpr std::size_t behind = 14, most_lines = 8;
  const std::string& text = printed.text();
  const TextSpan sentence = sentence_around(text, list.span.begin);
  const std::size_t to = std::min(text.size(), list.span.end + behind);
  if (says(lower_ascii(printed.words(TextSpan{sentence.begin, list.values.front().span.begin})),
           unit_words) ||
      says(lower_ascii(printed.words(TextSpan{list.values.back().span.end, to})), unit_words))
    return true;
  std::size_t end = text.rfind('\n', list.span.begin);
  for (std::size_t lines = 0; lines < most_lines && end != std::string::npos && end > 0; ++lines) {
    const std::size_t before = text.rfind('\n', end - 1);
    const std::size_t begin = before == std::string::npos ? 0 : before + 1;
    if (end - begin < 200 && heads_a_table(std::string_view(text).substr(begin, end - begin))) return true;
    end = before;
  }
  return false;
}

std::string skeins_of_yarn(const ReviewInput& input, const Statement& list) {
  SkeinWord word = SkeinWord::skein;
  if (const PrintedRole* role = input.printed.role(list.subject))
    if (const Role* fact = input.pattern.role(role->fact))
      if (const Yarn* yarn = input.pattern.yarn(fact->yarn)) word = yarn->put_up.word;
  return skein_word(word, true, input.pattern.house());
}

void put_up_is_complete(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  if (printed.yarns().empty()) {
    findings.cannot("no yarn was read in the text", "a yarn with its name and put-up");
    return;
  }
  const std::set<int> by_weight = sold_on_cones_by_weight(printed);
  for (std::size_t i = 0; i < printed.yarns().size(); ++i) {
    const PrintedYarn& yarn = printed.yarns()[i];
    if (yarn.metres && yarn.grams) continue;
    // A length without a name beside yarns with names says how much of any yarn is needed.
    if (yarn.name.empty() && printed.yarns().size() > 1) continue;
    if (by_weight.count(static_cast<int>(i)) > 0) continue;
    const std::string missing = !yarn.metres && !yarn.grams ? "length and weight of a skein"
                                : !yarn.metres              ? "length of a skein"
                                                            : "weight of a skein";
    Finding& finding = findings.add(missing + " not given: " + quoted(name_of(yarn)));
    finding.apart = yarn.name;
    for (const auto* group : {&yarn.names, &yarn.lengths, &yarn.weights})
      if (!group->empty()) show(finding, printed, *group->front());
    if (finding.places.empty()) finding.places.push_back(TextSpan{});
    finding.evidence.push_back("without the " + missing + " no other yarn can be put in its place");
    if (const Yarn* fact = input.pattern.yarn(yarn.fact)) {
      const std::string known = put_up_words(*fact, input.pattern.house());
      if (fact->put_up.length && fact->put_up.weight) finding.proposal_words = "add “" + known + "”";
    }
    finding.query = "For " + name_of(yarn) + " the " + missing +
                    " is not given. Could you supply the put-up from the band?";
  }
}

void fineness_is_possible(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const double low = input.need.constant_of("review_twice_low");
  const double high = input.need.constant_of("review_twice_high");
  const auto per_50_and_100 = [&](double fineness) {
    return words.number(fineness, 2) + " m/g: " + words.number(fineness * 50) + " m in 50 g, " +
           words.number(fineness * 100) + " m in 100 g";
  };
  for (const PrintedYarn& yarn : input.printed.yarns()) {
    std::string said = lower_ascii(yarn.name) + " " + printed_description(input.printed, yarn);
    const bool no_knitting_yarn = says(said, {"thread", "roving", "pencil roving", "unspun", "top"});
    const auto mentions = put_up_mentions(yarn);
    const PutUpMention* first = nullptr;
    for (const PutUpMention& mention : mentions) {
      const auto fineness = mention.metres_per_gram();
      if (!fineness) continue;
      if ((*fineness < least_metres_per_gram || *fineness > most_metres_per_gram) && !no_knitting_yarn) {
        Finding& finding = findings.add(
            "no yarn is that " + std::string(*fineness < least_metres_per_gram ? "heavy: " : "fine: ") +
            printed_words(input.printed, mention.span()));
        finding.apart = yarn.name;
        show_mention(finding, input.printed, mention);
        finding.evidence = {per_50_and_100(*fineness), "yarns lie between " +
                                                           words.number(least_metres_per_gram) + " and " +
                                                           words.number(most_metres_per_gram) + " m/g"};
        finding.query = "The put-up of " + name_of(yarn) + " comes to " + words.number(*fineness, 2) +
                        " m in a gram. Which figure is wrong?";
      }
      if (first == nullptr) {
        first = &mention;
        continue;
      }
      const double one = *first->metres_per_gram();
      const double factor = std::max(one, *fineness) / std::min(one, *fineness);
      if (factor < low || factor > high) continue;
      Finding& finding = findings.add("one yarn twice as fine in another place: " +
                                      printed_words(input.printed, mention.span()));
      finding.apart = yarn.name + ", twice";
      show_mention(finding, input.printed, mention);
      show_mention(finding, input.printed, *first);
      finding.evidence = {printed_words(input.printed, first->span()) + " is " + per_50_and_100(one),
                          printed_words(input.printed, mention.span()) + " is " + per_50_and_100(*fineness)};
      finding.query = "Two put-ups of " + name_of(yarn) + " differ by a factor of " +
                      words.number(factor, 2) + ": " + printed_words(input.printed, first->span()) + " and " +
                      printed_words(input.printed, mention.span()) + ". Is the length per 50 g or per 100 g?";
    }
  }
}

void one_put_up_a_yarn(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  constexpr double same_share = 0.01;  // figures that are printed in two systems are rounded twice
  const auto differ = [&](const std::optional<double>& a, const std::optional<double>& b) {
    return a && b && std::abs(*a - *b) > same_share * std::max(*a, *b);
  };
  for (const PrintedYarn& yarn : input.printed.yarns()) {
    auto mentions = put_up_mentions(yarn);
    std::erase_if(mentions,
                  [&](const PutUpMention& mention) { return !is_of_one_skein(input.printed, mention); });
    for (std::size_t i = 1; i < mentions.size(); ++i) {
      const PutUpMention &first = mentions.front(), &other = mentions[i];
      if (!differ(first.metres, other.metres) && !differ(first.grams, other.grams)) continue;
      if (of_another_time(input.printed, first) || of_another_time(input.printed, other)) continue;
      const auto one = first.metres_per_gram(), two = other.metres_per_gram();
      const bool same_fineness = one && two && std::abs(*one - *two) <= same_share * std::max(*one, *two);
      const std::string a = printed_words(input.printed, first.span());
      const std::string b = printed_words(input.printed, other.span());
      Finding& finding = findings.add(same_fineness ? Severity::note : Severity::stop,
                                      "two put-ups of one yarn: " + a + " and " + b);
      finding.apart = yarn.name + (i > 1 ? ", " + std::to_string(i) : "");
      show_mention(finding, input.printed, other);
      show_mention(finding, input.printed, first);
      finding.evidence = {"first " + a, "then " + b};
      if (same_fineness)
        finding.evidence.push_back("both come to " + words.number(*one, 2) +
                                   " m/g; the counts are in skeins of one of them");
      finding.query = "The put-up of " + name_of(yarn) + " is given as " + a + " and as " + b +
                      ". Which is on the current band?";
    }
  }
}

void lists_carry_a_unit(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const bool on_each = input.pattern.house().unit_word == UnitWord::on_each_value;
  const Statement* first = nullptr;
  bool carried = false;
  for (const Statement& list : printed.reading().statements) {
    if (list.kind != StatementKind::count && list.kind != StatementKind::total_count) continue;
    if (list.values.empty()) continue;
    if (first == nullptr) first = &list;
    const ListUnits units = units_in(printed, list);
    carried = carried || units.between > 0 || units.behind || unit_beside(printed, list);
    const std::size_t gaps = list.values.size() - 1;
    if (gaps == 0 || (on_each ? units.between == gaps : units.between < gaps)) continue;
    Finding& finding = findings.add(on_each ? "a unit once only: " + printed_words(printed, list)
                                            : "a unit on each value: " + printed_words(printed, list));
    if (!list.subject.empty()) finding.roles.push_back(list.subject);
    finding.apart = on_each ? "each" : "once";
    show(finding, printed, list);
    finding.evidence.push_back(on_each ? "the house puts the unit on each value"
                                       : "the house puts the unit once a list");
    finding.query = on_each ? "Could the unit stand on each value?" : "Could the unit stand once a list?";
  }
  if (first == nullptr) {
    findings.cannot("no list of counts was read", "counts for each colour");
    return;
  }
  if (carried) return;
  Finding& finding = findings.add("no unit in the lists: " + printed_words(printed, *first));
  if (!first->subject.empty()) finding.roles.push_back(first->subject);
  show(finding, printed, *first);
  finding.evidence.push_back("neither skeins nor grams nor metres are named in these lists");
  propose(finding, printed, TextSpan{first->span.end, first->span.end}, " " + skeins_of_yarn(input, *first));
  finding.query = "The counts " + printed_words(printed, *first) + " name no unit. Are they " +
                  skeins_of_yarn(input, *first) + "?";
}

}  // namespace

std::vector<const Statement*> PutUpMention::all() const {
  std::vector<const Statement*> both = lengths;
  both.insert(both.end(), weights.begin(), weights.end());
  return both;
}

TextSpan PutUpMention::span() const {
  TextSpan span = first().span;
  for (const Statement* one : all()) {
    span.begin = std::min(span.begin, one->span.begin);
    span.end = std::max(span.end, one->span.end);
  }
  return span;
}

std::optional<double> PutUpMention::metres_per_gram() const {
  if (!metres || !grams || !(*metres > 0) || !(*grams > 0)) return std::nullopt;
  return *metres / *grams;
}

std::vector<PutUpMention> put_up_mentions(const PrintedYarn& yarn) {
  std::vector<PutUpMention> mentions;
  std::map<int, std::size_t> by_mention;
  const auto of = [&](const Statement& one) -> PutUpMention& {
    const auto [at, fresh] = by_mention.emplace(one.mention, mentions.size());
    if (fresh) mentions.emplace_back().mention = one.mention;
    return mentions[at->second];
  };
  for (const Statement* one : yarn.lengths) of(*one).lengths.push_back(one);
  for (const Statement* one : yarn.weights) of(*one).weights.push_back(one);
  for (PutUpMention& mention : mentions) {
    mention.metres = first_in(mention.lengths, PrintedUnit::metre, PrintedUnit::yard, metres_per_yard);
    mention.grams = first_in(mention.weights, PrintedUnit::gram, PrintedUnit::ounce, grams_per_ounce);
  }
  std::stable_sort(mentions.begin(), mentions.end(), [](const PutUpMention& a, const PutUpMention& b) {
    return a.span().begin < b.span().begin;
  });
  return mentions;
}

std::optional<double> metres_per_gram_of(const ReviewInput& input, const PrintedYarn& yarn) {
  if (const Yarn* fact = input.pattern.yarn(yarn.fact))
    if (const auto density = linear_density(fact->put_up)) return density->value();
  if (!yarn.metres || !yarn.grams || !(*yarn.grams > 0) || !(*yarn.metres > 0)) return std::nullopt;
  return *yarn.metres / *yarn.grams;
}

std::span<const Check> put_up_checks() {
  using Kind = StatementKind;
  static constexpr std::string_view practice = "common practice, no source";
  static constexpr std::string_view definition =
      "international yard and pound agreement of 1959: 1 yd = 0.9144 m, 1 oz = 28.349523125 g";
  static const Check rows[] = {
      {"P1",
       "Metres and yards of one put-up or note are the same length, each rounded to its own figures.",
       Severity::stop,
       {Kind::put_up_length, Kind::length_note, Kind::total_length, Kind::count},
       definition,
       metres_and_yards_agree},
      {"P2",
       "There are never fewer yards than metres.",
       Severity::stop,
       {Kind::put_up_length, Kind::length_note, Kind::total_length, Kind::count},
       definition,
       yards_not_below_metres},
      {"P3",
       "Grams and ounces are the same weight, within the trade's usual fractions.",
       Severity::stop,
       {Kind::put_up_weight, Kind::sample_weight},
       definition,
       ounces_and_grams_agree},
      {"P4",
       "Every yarn has the length and the weight of a skein.",
       Severity::ask,
       {Kind::yarn_name, Kind::put_up_length, Kind::put_up_weight, Kind::put_up_word, Kind::count},
       practice,
       put_up_is_complete},
      {"P5",
       "A yarn's metres per gram are possible, and nowhere twice what they are in another place.",
       Severity::stop,
       {Kind::yarn_name, Kind::yarn_description, Kind::put_up_length, Kind::put_up_weight},
       practice,
       fineness_is_possible},
      {"P6",
       "One yarn has one put-up in the whole text.",
       Severity::stop,
       {Kind::yarn_name, Kind::put_up_length, Kind::put_up_weight},
       practice,
       one_put_up_a_yarn},
      {"P7",
       "Each colour is counted in skeins of its own yarn.",
       Severity::stop,
       {Kind::yarn_name, Kind::role, Kind::count, Kind::put_up_length, Kind::size_labels},
       practice,
       counted_in_own_skeins},
      {"P8",
       "Each run of lists carries its unit once, or each value its own where the house asks for it.",
       Severity::style,
       {Kind::count, Kind::total_count, Kind::role},
       practice,
       lists_carry_a_unit},
      {"P9",
       "A length or weight that the text equates with a count is as many skeins.",
       Severity::stop,
       {Kind::total_length, Kind::length_note, Kind::count, Kind::total_count, Kind::put_up_length,
        Kind::put_up_weight, Kind::role, Kind::size_labels},
       practice,
       totals_equal_counts},
      {"P10",
       "The name of a yarn's thickness fits its metres in 100 g and the gauge.",
       Severity::ask,
       {Kind::yarn_name, Kind::yarn_description, Kind::put_up_length, Kind::put_up_weight, Kind::fibre,
        Kind::gauge_stitches, Kind::gauge_over, Kind::gauge_fabric, Kind::strands, Kind::item},
       practice,
       category_fits_figures},
      {"P11",
       "The firmness of the fabric, 6.98 × √(stitches in a square centimetre ÷ metres in a gram), fits "
       "the item.",
       Severity::ask,
       {Kind::yarn_name, Kind::put_up_length, Kind::put_up_weight, Kind::gauge_stitches, Kind::gauge_rows,
        Kind::gauge_over, Kind::gauge_fabric, Kind::strands, Kind::item, Kind::title, Kind::fibre,
        Kind::yarn_description},
       "tightness factor √tex ÷ loop length: Munden 1959, J. Text. Inst. 50, T448–T471; bands: common "
       "practice, no source",
       firmness_fits_item},
      {"P12",
       "The gauge is near the one on the yarn's band, unless a reason is given.",
       Severity::note,
       {Kind::band_gauge, Kind::gauge_stitches, Kind::gauge_over, Kind::gauge_fabric, Kind::yarn_name,
        Kind::item, Kind::title, Kind::strands},
       practice,
       band_gauge_is_near},
      {"P13",
       "Strands held together are all counted, and two yarns held together last equally long.",
       Severity::stop,
       {Kind::strands, Kind::role, Kind::count, Kind::put_up_length, Kind::size_labels, Kind::phrase},
       practice,
       strands_are_counted},
  };
  return rows;
}

}  // namespace skeinproof
