// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cassert>

#include "core/base/text.h"
#include "core/fabric/gauge.h"
#include "core/reference/lookup.h"
#include "core/review/care_rules.h"
#include "core/review/finding_words.h"
#include "core/review/item_and_wearer.h"
#include "core/review/printed_words.h"
#include "core/review/yarn_contents.h"

namespace skeinproof {
namespace {

// The sentence a pattern might print, with the rule it comes from; never that a thing is safe.
std::string offered(std::string_view id) {
  const Caution* caution = caution_by_id(id);
  assert(caution != nullptr);
  if (caution == nullptr) return {};
  std::string text(caution->text);
  if (!caution->instrument.empty()) text += " (" + std::string(caution->instrument) + ")";
  return text;
}

constexpr std::string_view law_first = "what the law of the place and a licensed test ask for comes first";

void offer(Finding& finding, std::string_view caution) {
  const Caution* row = caution_by_id(caution);
  finding.evidence.push_back(offered(caution));
  if (row != nullptr && !row->source.empty())
    finding.evidence.push_back("source: " + citation(row->source, row->confidence));
  finding.evidence.emplace_back(law_first);
}

// What is named where: a statement of the text, or a notion of the facts.
struct Named {
  std::string words;
  const Statement* statement = nullptr;
};
std::vector<Named> small_parts(const ReviewInput& input) {
  const WordList small = {"button", "bead",   "pompom",     "pom pom", "pom-pom",
                          "bell",   "toggle", "safety eye", "sequin",  "charm"};
  std::vector<Named> parts;
  const auto add = [&](const std::string& words, const Statement* statement) {
    const FoundWord found = find_word(lower_ascii(words), small);
    if (!found) return;
    for (const Named& part : parts)
      if (part.words == found.word) return;
    parts.push_back({std::string(found.word), statement});
  };
  for (const StatementKind kind : {StatementKind::notion, StatementKind::extra})
    for (const Statement* one : input.printed.all(kind))
      add(one->subject + " " + one->words + " " + std::string(input.printed.words(one->span)), one);
  for (const Notion& notion : input.pattern.notions) add(notion.name, nullptr);
  return parts;
}

bool cautions_of_small_parts(const PrintedView& printed) {
  if (says(lower_ascii(printed.text()), {"choking", "swallowed", "small parts"})) return true;
  for (const Statement* one : printed.all(StatementKind::caution)) {
    const TextSpan sentence = sentence_around(printed.text(), one->span.begin);
    if (says(lower_ascii(printed.words(sentence)) + " " + lower_ascii(printed.words(one->span)),
             {"choking", "choke", "swallow", "swallowed", "small part", "firmly", "securely", "under three",
              "under 3", "36 months", "three years"}))
      return true;
  }
  return false;
}

void show_wearer(Finding& finding, const PrintedView& printed, const Wearers& wearers) {
  if (wearers.shown != nullptr) show(finding, printed, *wearers.shown);
  if (finding.places.empty()) finding.places.push_back(TextSpan{});
}

const WordList cord_words = {"drawstring", "draw string",   "draw-string",     "cord",        "drawcord",
                             "ties",       "tie cord",      "tie-cord",        "neck tie",    "chin tie",
                             "ribbon",     "crochet chain", "crocheted chain", "lace through"};
const WordList neck_words = {"hood", "neck", "neckline", "neckband", "collar", "throat", "chin"};
const WordList other_places = {"waist", "waistband", "hem",   "cuff", "sleeve", "ankle",
                               "leg",   "bag",       "thumb", "back", "belt"};

// "I-cord edge" is a finish of the cloth, not a cord.
bool is_edging(std::string_view sentence, std::size_t at, std::string_view word) {
  const bool i_cord =
      at >= 2 && sentence[at - 2] == 'i' && (sentence[at - 1] == '-' || sentence[at - 1] == ' ');
  if (!i_cord && word != "crochet chain" && word != "crocheted chain") return false;
  return says(sentence,
              {"edge", "edging", "bind-off", "bind off", "bound-off", "cast-off", "cast off", "cast-on",
               "cast on", "border", "trim", "steek", "provisional", "buttonhole", "button loop"});
}

bool denied(std::string_view sentence) {
  return says(sentence, {"no", "without", "instead of", "never", "do not", "omit", "leave out", "avoid"});
}

// A length of cord that holds stitches while others are worked.
bool holds_stitches(std::string_view sentence) {
  return says(sentence, {"holder", "on hold", "waste", "spare", "scrap", "cable", "circular", "live"});
}

// The heading of the piece that a place of the text belongs to.
std::string heading_before(const PrintedView& printed, const std::vector<const Statement*>& headings,
                           std::size_t at) {
  std::string heading;
  for (const Statement* one : headings)
    if (one->span.begin <= at) heading = lower_ascii(printed.words(one->span));
  return heading;
}

// The sentences that put a cord at a hood or a neck.
std::vector<TextSpan> cords_at_the_neck(const PrintedView& printed) {
  constexpr std::size_t most = 20;
  std::vector<TextSpan> found;
  const std::string lower = lower_ascii(printed.text());
  const auto headings = printed.all(StatementKind::piece_heading);
  for (FoundWord cord = find_word(lower, cord_words); cord && found.size() < most;
       cord = find_word(lower, cord_words, cord.at + 1)) {
    const TextSpan span = sentence_around(printed.text(), cord.at);
    const std::string_view sentence = std::string_view(lower).substr(span.begin, span.end - span.begin);
    if (!found.empty() && found.back() == span) continue;
    if (denied(sentence) || holds_stitches(sentence) || is_edging(sentence, cord.at - span.begin, cord.word))
      continue;
    const bool here = says(sentence, neck_words);
    const bool under_heading =
        !says(sentence, other_places) && says(heading_before(printed, headings, cord.at), neck_words);
    if (here || under_heading) found.push_back(span);
  }
  return found;
}

struct LongestFloat {
  double cm = 0;
  long stitches = 0;
  std::string chart;
  bool width_unknown = false;
};
LongestFloat longest_float(const ReviewInput& input) {
  LongestFloat longest;
  for (const Piece& piece : input.pattern.pieces)
    for (const Section& section : piece.sections) {
      if (section.source != StitchSource::chart) continue;
      const Chart* chart = input.pattern.chart(section.chart);
      const Fabric* fabric = input.pattern.fabric(section.fabric);
      if (chart == nullptr || fabric == nullptr || fabric->structure == Structure::intarsia) continue;
      const long stitches = input.need.census_of(chart->id).longest_float;
      const auto width = stitch_width(fabric->gauge);
      if (!width) {
        longest.width_unknown = longest.width_unknown || stitches > 0;
        continue;
      }
      const double cm = static_cast<double>(stitches) * width->value();
      if (cm > longest.cm) longest = {cm, stitches, chart->name, longest.width_unknown};
    }
  return longest;
}

bool is_lined(const PrintedView& printed) {
  return says(lower_ascii(printed.text()), {"lined", "lining", "line the"});
}

void say_fluff(const ReviewInput& input, Findings& findings, const Wearers& wearers) {
  for (const PrintedYarn& yarn : input.printed.yarns()) {
    const Composition composition = composition_of(input, yarn);
    const auto sheds = std::find_if(composition.begin(), composition.end(), [](const FibreSaid& said) {
      return said.fibre != nullptr &&
             (said.fibre->id == "angora" || said.fibre->id == "mohair" || said.fibre->id == "possum");
    });
    const Statement* halo = nullptr;
    for (const Statement* one : yarn.descriptions)
      if (says(lower_ascii(input.printed.words(one->span)), {"halo", "brushed", "fluffy", "fuzzy", "hairy"}))
        halo = one;
    if (sheds == composition.end() && halo == nullptr) continue;
    const std::string what =
        sheds != composition.end() ? sheds->words : std::string(input.printed.words(halo->span));
    Finding& finding = findings.add("fluff for a baby: " + quoted(what));
    finding.apart = yarn.name + ", fluff";
    if (sheds != composition.end() && sheds->statement != nullptr)
      show(finding, input.printed, *sheds->statement);
    else if (halo != nullptr)
      show(finding, input.printed, *halo);
    show_wearer(finding, input.printed, wearers);
    finding.evidence = {quoted(what) + " in " + name_of(yarn), "for " + wearers.because};
    offer(finding, "shed");
    finding.query = name_of(yarn) + " sheds (" + quoted(what) + ") and the sizes include " + wearers.because +
                    ". Could a smooth yarn stand in its place, or a lining be added?";
  }
}

void say_floats(const ReviewInput& input, Findings& findings, const Wearers& wearers) {
  const FindingWords words(input);
  const LongestFloat longest = longest_float(input);
  if (longest.width_unknown)
    findings.cannot("the stitch width of the charted fabric is not known", "its gauge");
  if (longest.cm <= input.need.constant_of("review_infant_float_cm")) return;
  Finding& finding = findings.add("floats inside for a baby: " + quoted(words.number(longest.cm) + " cm"));
  finding.apart = "floats";
  show_wearer(finding, input.printed, wearers);
  finding.evidence = {"longest float of " + (longest.chart.empty() ? "the chart" : longest.chart) + ": " +
                          words.number(static_cast<double>(longest.stitches)) +
                          " sts = " + words.number(longest.cm) + " cm",
                      "for " + wearers.because};
  offer(finding, "hair_tourniquet");
  finding.query = "Floats of " + words.number(longest.cm) + " cm lie inside, and the sizes include " +
                  wearers.because + ". Could they be caught at every stitch, or the piece be lined?";
}

}  // namespace

void small_parts_for_the_youngest(const ReviewInput& input, Findings& findings) {
  const Wearers wearers = wearers_of(input);
  if (!wearers.under_3_years || cautions_of_small_parts(input.printed)) return;
  const auto parts = small_parts(input);
  if (parts.empty()) return;
  std::vector<std::string> names;
  for (const Named& part : parts) names.push_back(part.words + "s");
  Finding& finding = findings.add("small parts without a caution: " + quoted(join(names, ", ")));
  for (const Named& part : parts)
    if (part.statement != nullptr) show(finding, input.printed, *part.statement);
  show_wearer(finding, input.printed, wearers);
  finding.evidence = {listed(names) + ", for " + wearers.because};
  offer(finding, "small_parts_us");
  const bool buttons =
      std::any_of(parts.begin(), parts.end(), [](const Named& part) { return part.words == "button"; });
  finding.proposal_words = "add “" + offered(buttons ? "small_parts_clothes" : "small_parts_us") + "”";
  finding.query = "The sizes include " + wearers.because + ", and there are " + listed(names) +
                  ". Could the text carry a caution, such as: " + offered("small_parts_us") + "?";
}

void cords_at_childrens_necks(const ReviewInput& input, Findings& findings) {
  const Wearers wearers = wearers_of(input);
  const ItemRead item = item_of(input);
  const bool plaything = says(item.words, {"doll", "toy", "bear", "soft toy"});
  if (!wearers.up_to_7_years || plaything) return;
  for (const TextSpan& span : cords_at_the_neck(input.printed)) {
    const std::string shown = printed_words(input.printed, span);
    Finding& finding = findings.add("a cord at a child's hood or neck: " + shown);
    finding.apart = compared(input.printed.words(span));
    finding.places.push_back(span);
    for (const StatementKind kind : {StatementKind::phrase, StatementKind::extra})
      for (const Statement* one : input.printed.all(kind))
        if (span.holds(one->span)) rest_on(finding, input.printed, *one);
    if (wearers.shown != nullptr) rest_on(finding, input.printed, *wearers.shown);
    finding.evidence = {shown, "for " + wearers.because, offered("cord_us")};
    if (item.kind == ItemKind::hat_or_mitten) finding.evidence.push_back(offered("cord_scope"));
    offer(finding, "cord_neck");
    finding.query =
        "The text has " + shown + ", and the sizes include " + wearers.because +
        ". A cord at the neck can strangle a child; EN 14682 keeps them off such clothes. Could a button "
        "or a plain band take its place?";
  }
}

void fluff_and_floats_for_babies(const ReviewInput& input, Findings& findings) {
  const Wearers wearers = wearers_of(input);
  if (!wearers.up_to_12_months || is_lined(input.printed)) return;
  say_fluff(input, findings, wearers);
  say_floats(input, findings, wearers);
}

void melting_fibre_near_heat(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const ItemRead item = item_of(input);
  if (!used_near_heat(item.words)) return;
  for (const PrintedYarn& yarn : input.printed.yarns()) {
    const Composition composition = composition_of(input, yarn);
    if (composition.empty()) {
      findings.cannot("the content of " + name_of(yarn) + " is not known", "its fibres and their shares");
      continue;
    }
    const auto melts = [](const FibreSaid& said) {
      return said.fibre != nullptr && said.fibre->fibre_class == "synthetic";
    };
    const double share = share_of(composition, melts);
    if (!(share > 0)) continue;
    const auto first = std::find_if(composition.begin(), composition.end(), melts);
    Finding& finding = findings.add("fibre that melts, near heat: " + quoted(first->words));
    finding.apart = yarn.name;
    for (const FibreSaid& said : composition)
      if (melts(said) && said.statement != nullptr) show(finding, input.printed, *said.statement);
    if (item.shown != nullptr) show(finding, input.printed, *item.shown);
    if (finding.places.empty()) finding.places.push_back(TextSpan{});
    finding.evidence = {name_of(yarn) + " holds " + words.number(share) + " % of fibre that melts (" +
                        first->words + ")"};
    offer(finding, "melt");
    finding.query = "This is used near heat, and " + name_of(yarn) + " holds " + words.number(share) + " % " +
                    first->words + ", which melts. Could it be wool or cotton?";
  }
}

}  // namespace skeinproof
