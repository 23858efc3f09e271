// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/role_figures.h"
#include "core/review/role_labels.h"

namespace skeinproof {
namespace {

using Kind = StatementKind;
constexpr std::string_view practice = "common practice, no source";
constexpr StatementKinds legend = {Kind::size_labels, Kind::role, Kind::legend_shade, Kind::legend_symbol};
constexpr StatementKinds counts = {Kind::size_labels, Kind::role, Kind::count};

constexpr std::array all_rows = {
    Check{"R1",
          "Every colour named in text, chart or chart key is in the yarn block.",
          Severity::stop,
          {Kind::role, Kind::role_mention, Kind::legend_shade, Kind::legend_symbol},
          practice,
          check_r1},
    Check{"R2",
          "Every colour of the yarn block is used.",
          Severity::ask,
          {Kind::role, Kind::role_mention, Kind::shade_mention, Kind::shade_name},
          practice,
          check_r2},
    Check{"R3",
          "The number of colours said is the number listed.",
          Severity::ask,
          {Kind::role, Kind::number_of_colours},
          practice,
          check_r3},
    Check{"R4",
          "The chart key gives each colour the shade of the yarn block.",
          Severity::stop,
          {Kind::role, Kind::shade_name, Kind::shade_number, Kind::legend_shade},
          practice,
          check_r4},
    Check{"R5", "Chart and chart key have the same symbols.", Severity::stop, legend, practice, check_r5},
    Check{"R6",
          "The colours are labelled in one scheme without gaps.",
          Severity::style,
          {Kind::role},
          practice,
          check_r6},
    Check{"R7",
          "No round uses more colours than are promised.",
          Severity::ask,
          {Kind::number_of_colours, Kind::phrase},
          practice,
          check_r7},
    Check{"R8",
          "The main colour takes the most yarn.",
          Severity::note,
          {Kind::size_labels, Kind::role},
          practice,
          check_r8},
    Check{"R9", "A colour is listed in those sizes that use it.", Severity::ask, counts, practice, check_r9},
    Check{"R10",
          "Every cord, pompom or embroidery has its yarn.",
          Severity::ask,
          {Kind::role, Kind::extra, Kind::notion, Kind::yarn_name},
          practice,
          check_r10},
    Check{"R11",
          "Long floats are caught.",
          Severity::note,
          {Kind::phrase, Kind::item, Kind::title, Kind::wearer},
          practice,
          check_r11},
    Check{"R12",
          "Shades that touch differ in lightness.",
          Severity::note,
          {Kind::role, Kind::shade_name},
          practice,
          check_r12},
    Check{"R13",
          "The stitches of a charted part are whole repeats.",
          Severity::stop,
          {Kind::size_labels, Kind::stitches, Kind::phrase},
          practice,
          check_r13},
    Check{"R14",
          "Declared shares of the colours are those of the chart.",
          Severity::ask,
          {Kind::role, Kind::phrase},
          practice,
          check_r14},
};

constexpr std::size_t most_places = 20;

struct UnlistedRole {
  std::string label;
  std::vector<const Statement*> places;
  std::vector<std::string> charts;
};

std::vector<UnlistedRole> unlisted_roles(const ReviewInput& input, const RoleLabels& labels) {
  std::vector<UnlistedRole> all;
  std::map<std::string, std::size_t> index;
  const auto entry = [&](const std::string& label) -> UnlistedRole& {
    const auto [at, added] = index.emplace(plain_label(label), all.size());
    if (added) all.push_back({label, {}, {}});
    return all[at->second];
  };
  for (const Kind kind : {Kind::role_mention, Kind::legend_shade, Kind::legend_symbol})
    for (const Statement* one : input.printed.all(kind))
      if (!one->subject.empty() && !labels.holds(one->subject))
        if (auto& places = entry(one->subject).places; places.size() < most_places) places.push_back(one);
  for (const Chart& chart : input.pattern.charts)
    for (const ChartColour& colour : chart.colours) {
      const Role* role = input.pattern.role(colour.role);
      if (role == nullptr || role->label.empty() || labels.holds(role->label)) continue;
      const auto& counted = input.need.census_of(chart.id).symbols;
      const auto found = colour.symbol.empty() ? counted.end() : counted.find(colour.symbol.front());
      if (found != counted.end() && found->second.stitches > 0)
        entry(role->label).charts.push_back(chart.name.empty() ? "the chart" : chart.name);
    }
  return all;
}

// The one colour in which the need sheet works what the sentence speaks of: "work 10 rounds rib".
const PrintedRole* role_worked_there(const ReviewInput& input, std::string_view sentence) {
  const std::string lower = compared(sentence);
  std::set<RoleId> roles;
  const auto speaks_of = [&](std::string_view name) {
    for (const std::string& word : split(compared(name), ' ')) {
      std::string bare;
      for (const char c : word)
        if (c >= 'a' && c <= 'z') bare += c;
      const bool of_any_part = says(bare, {"round", "row", "stitch", "sts", "plain", "work", "with", "and",
                                           "the", "chart", "colour", "color", "knit", "first", "second"});
      if (bare.size() >= 3 && !of_any_part && find_word(lower, {std::string_view(bare)})) return true;
    }
    return false;
  };
  for (const Piece& piece : input.pattern.pieces)
    for (const Section& section : piece.sections) {
      if (section.source == StitchSource::chart || section.colouring == Colouring::stripes) continue;
      const Fabric* fabric = input.pattern.fabric(section.fabric);
      const bool ribbed =
          fabric != nullptr && fabric->structure == Structure::rib && says(lower, {"rib", "ribbing"});
      if (ribbed || speaks_of(section.name) || speaks_of(piece.name)) roles.insert(section.role);
    }
  if (roles.size() != 1) return nullptr;
  for (const PrintedRole& role : input.printed.roles())
    if (role.fact == *roles.begin()) return &role;
  return nullptr;
}

// The label itself inside a statement that may be a whole sentence.
TextSpan label_span(const PrintedView& printed, const Statement& statement, const std::string& label) {
  const auto at = printed.words(statement.span).find(label);
  if (at == std::string_view::npos) return statement.span;
  return {statement.span.begin + at, statement.span.begin + at + label.size()};
}

bool same_shade(const PrintedRole& role, const PrintedView& printed, const Statement& in_legend) {
  const auto words_of = [&](const Statement* one) {
    return one == nullptr
               ? std::string()
               : compared(one->words.empty() ? printed.words(one->span) : std::string_view(one->words));
  };
  const std::string name = words_of(role.shade), number = words_of(role.number);
  const std::string here = words_of(&in_legend);
  if (here.empty() || (name.empty() && number.empty())) return true;
  return here == name || here == number || here == tidy_spaces(name + " " + number) ||
         here == tidy_spaces(number + " " + name) || (!number.empty() && here == name + " #" + number) ||
         (!number.empty() && here == name + " no. " + number);
}

// "CC2" is the scheme "cc" at 2, "B" the scheme of letters at 2.
struct SchemePlace {
  std::string scheme;
  int place = 0;
};
std::optional<SchemePlace> scheme_of(const std::string& plain) {
  if (plain.size() == 1 && plain.front() >= 'a' && plain.front() <= 'z')
    return SchemePlace{"letters", plain.front() - 'a' + 1};
  const auto digits = plain.find_first_of("0123456789");
  if (digits == std::string::npos) return std::nullopt;
  const std::string figures = plain.substr(digits);
  if (figures.size() > 3 || figures.find_first_not_of("0123456789") != std::string::npos) return std::nullopt;
  return SchemePlace{std::string(trimmed(plain.substr(0, digits))), std::stoi(figures)};
}

}  // namespace

std::span<const Check> role_checks() { return all_rows; }

void check_r1(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  if (printed.roles().empty()) {
    findings.cannot("no colours were read in the yarn block", "a block that lists the colours");
    return;
  }
  const RoleLabels labels(printed);
  for (const UnlistedRole& unlisted : unlisted_roles(input, labels)) {
    Finding& finding = findings.add("a colour that is not in the yarn block: “" + unlisted.label + "”");
    finding.roles = {unlisted.label};
    std::string where;
    const PrintedRole* instead = nullptr;
    for (const Statement* place : unlisted.places) {
      finding.places.push_back(label_span(printed, *place, unlisted.label));
      rest_on(finding, printed, *place);
      const TextSpan around = sentence_around(printed.text(), place->span.begin);
      const std::string sentence = printed_words(printed, around);
      finding.evidence.push_back(std::string(word_of(place->part)) + ": " + sentence);
      if (where.empty()) where = sentence;
      if (instead == nullptr && place->kind == Kind::role_mention)
        instead = role_worked_there(input, printed.words(around));
    }
    for (const std::string& chart : unlisted.charts) {
      finding.evidence.push_back("used in " + chart);
      if (where.empty()) where = chart;
    }
    std::vector<std::string> there;
    for (const PrintedRole& role : printed.roles()) there.push_back(role.label);
    finding.evidence.push_back("in the block: " + join(there, ", "));
    if (instead != nullptr) {
      finding.evidence.push_back("the need sheet works this in " + instead->label);
      for (const Statement* place : unlisted.places) {
        const TextSpan span = label_span(printed, *place, unlisted.label);
        if (printed.words(span) == unlisted.label) propose(finding, printed, span, instead->label);
      }
    }
    finding.at_stake = "a colour nobody can buy";
    finding.query = "“" + unlisted.label + "” stands in " + where + " and is not in the yarn block. " +
                    (instead != nullptr ? "Should it be " + instead->label + "?"
                                        : "What is it, and how much of it is needed?");
  }
}

void check_r2(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  if (printed.roles().size() < 2) return;
  if (!printed.whole(TextPart::text)) {
    findings.cannot("the instructions are not there as a whole", "the whole text of the pattern");
    return;
  }
  std::set<std::string> used, shades;
  for (const Statement* mention : printed.all(Kind::role_mention)) used.insert(plain_label(mention->subject));
  for (const Statement* mention : printed.all(Kind::shade_mention))
    shades.insert(compared(mention->words.empty() ? printed.words(mention->span) : mention->words));
  for (const Chart& chart : input.pattern.charts)
    for (const ChartColour& colour : chart.colours)
      if (const Role* role = input.pattern.role(colour.role)) used.insert(plain_label(role->label));
  const bool one_contrast = printed.roles().size() == 2;
  for (const PrintedRole& role : printed.roles()) {
    const std::string label = plain_label(role.label);
    bool found = used.count(label) > 0;
    if (!found && one_contrast && is_lone_contrast(label))
      found = std::any_of(used.begin(), used.end(), [](const auto& one) { return is_lone_contrast(one); });
    if (!found && is_main(label))
      found = std::any_of(used.begin(), used.end(), [](const auto& one) { return is_main(one); });
    if (!found && role.shade != nullptr) found = shades.count(compared(role.shade->words)) > 0;
    if (found || label.empty()) continue;
    Finding& finding = findings.add("listed and never used");
    finding.roles = {role.label};
    if (role.role != nullptr) show(finding, printed, *role.role);
    finding.evidence = {role.label + " found neither in the instructions nor in a chart"};
    if (role.fact && !input.need.parts_of(role.fact).empty())
      finding.evidence.push_back("the need sheet works parts in it");
    finding.query = "We did not find " + role.label + " in the instructions or a chart. Where is it used?";
  }
}

void check_r3(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const auto said = printed.all(Kind::number_of_colours);
  if (said.empty()) return;
  if (printed.roles().empty()) {
    findings.cannot("no colours were read in the yarn block", "a block that lists the colours");
    return;
  }
  for (const Statement* one : said) {
    const bool of_a_round = says(compared(one->qualifier), {"round", "row", "a round", "a row"});
    if (of_a_round || one->values.empty() || !one->values.front().number) continue;
    const double number = *one->values.front().number;
    if (number == static_cast<double>(printed.roles().size())) continue;
    Finding& finding =
        findings.add("other than the number of colours listed: " + printed_words(printed, *one));
    finding.apart = show_short(number, 0);
    show(finding, printed, *one);
    std::vector<std::string> labels;
    for (const PrintedRole& role : printed.roles()) {
      labels.push_back(role.label);
      if (role.role != nullptr) rest_on(finding, printed, *role.role);
    }
    finding.evidence = {"said: " + printed_words(printed, *one),
                        "listed: " + std::to_string(labels.size()) + ", " + join(labels, ", ")};
    finding.query = "The text says " + printed_words(printed, *one) + " and the block lists " +
                    std::to_string(labels.size()) + " (" + join(labels, ", ") + "). Which is right?";
  }
}

void check_r4(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  for (const Statement* in_legend : printed.all(Kind::legend_shade)) {
    const PrintedRole* role = printed.role(in_legend->subject);
    if (role == nullptr || same_shade(*role, printed, *in_legend)) continue;
    const Statement* in_block = role->shade != nullptr ? role->shade : role->number;
    const std::string key_words = printed_words(printed, *in_legend);
    const std::string block_words = printed_words(printed, *in_block);
    Finding& finding = findings.add("chart key " + key_words + ", block " + block_words);
    finding.roles = {role->label};
    const TextSpan shade =
        in_legend->words.empty() ? in_legend->span : label_span(printed, *in_legend, in_legend->words);
    finding.places.push_back(shade);
    rest_on(finding, printed, *in_legend);
    show(finding, printed, *in_block);
    const std::string wanted =
        in_block->words.empty() ? std::string(printed.words(in_block->span)) : in_block->words;
    finding.evidence = {"block: " + role->label + " " + block_words,
                        "chart key: " + role->label + " " + key_words};
    const Role* fact = role->fact ? input.pattern.role(role->fact) : nullptr;
    const bool key_is_right = fact != nullptr && !fact->shade.name.empty() &&
                              compared(fact->shade.name) == compared(printed.words(shade)) &&
                              in_block == role->shade;
    if (key_is_right)
      propose(finding, printed, in_block->span, fact->shade.name);
    else
      propose(finding, printed, shade, wanted);
    finding.query = "The chart key has " + key_words + " for " + role->label + ", the yarn block " +
                    block_words + ". Which is right?";
  }
}

void check_r6(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  std::map<std::string, std::set<int>> schemes;
  std::vector<std::string> labels;
  for (const PrintedRole& role : printed.roles()) {
    const std::string plain = plain_label(role.label);
    labels.push_back(role.label);
    if (is_main(plain) || plain.empty()) continue;
    if (const auto place = scheme_of(plain))
      schemes[place->scheme].insert(place->place);
    else
      schemes[plain].insert(1);
  }
  std::vector<std::string> doubts;
  for (const auto& [scheme, places] : schemes) {
    int expected = 1;
    for (const int place : places) {
      // Letters of contrasts may begin behind a main colour A, and C is also short for contrast.
      if (scheme == "letters" && expected == 1) expected = std::min(place, 3);
      if (place != expected) {
        const std::string missing = scheme == "letters"
                                        ? std::string(1, static_cast<char>('A' + expected - 1))
                                        : scheme + std::to_string(expected);
        std::string upper = missing;
        std::transform(upper.begin(), upper.end(), upper.begin(),
                       [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
        doubts.push_back("there is no " + upper);
      }
      expected = place + 1;
    }
  }
  if (schemes.size() > 1 && labels.size() > 2) doubts.push_back("the labels follow more than one scheme");
  if (doubts.empty()) return;
  Finding& finding = findings.add("labels of the colours: " + join(doubts, "; "));
  for (const PrintedRole& role : printed.roles())
    if (role.role != nullptr) show(finding, printed, *role.role);
  finding.evidence = {"labels: " + join(labels, ", ")};
  finding.query = "The colours are labelled " + join(labels, ", ") + ", and " + join(doubts, "; ") +
                  ". May we label them in one run?";
}

}  // namespace skeinproof
