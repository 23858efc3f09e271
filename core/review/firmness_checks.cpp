// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/text.h"
#include "core/fabric/gauge.h"
#include "core/manuscript/words.h"
#include "core/review/finding_words.h"
#include "core/review/item_and_wearer.h"
#include "core/review/printed_gauge.h"
#include "core/review/printed_words.h"
#include "core/review/put_up_rules.h"
#include "core/review/yarn_contents.h"
#include "core/yarn/linear_density.h"

namespace skeinproof {
namespace {

// What a name of thickness promises: metres in 100 g, and stitches over 10 cm of stocking stitch; 0 = no
// bound. Common practice, no source. Names are those of the United States list.
struct ThicknessBand {
  std::string_view name;
  double least_metres, most_metres;
  double least_stitches, most_stitches;
};
constexpr ThicknessBand thickness_bands[] = {
    // Names that two thicknesses share come first.
    {"10-ply", 150, 220, 16, 21},        {"10 ply", 150, 220, 16, 21},
    {"medium", 150, 220, 16, 21},        {"afghan", 150, 220, 16, 21},
    {"baby", 290, 620, 24, 36},          {"lace", 600, 0, 0, 0},
    {"light fingering", 440, 620, 0, 0}, {"fingering", 360, 460, 27, 32},
    {"sport", 290, 370, 24, 27},         {"DK", 200, 295, 21, 24},
    {"worsted", 180, 220, 18, 21},       {"heavy worsted", 150, 190, 16, 19},
    {"bulky", 90, 150, 12, 16},          {"super bulky", 30, 100, 6, 12},
};

std::string bare_category(std::string_view words) {
  std::string lower = lower_ascii(tidy_spaces(words));
  for (const std::string_view ending : {" weight", "-weight", " yarn"})
    if (lower.size() > ending.size() && lower.ends_with(ending)) lower.resize(lower.size() - ending.size());
  return lower;
}

const ThicknessBand* band_of(std::string_view words) {
  const std::string bare = bare_category(words);
  const std::string name = category_words(bare, CategoryWords::united_states);
  for (const ThicknessBand& band : thickness_bands)
    if (bare == band.name || name == band.name) return &band;
  return nullptr;
}

bool outside(double value, double least, double most) {
  return (least > 0 && value < least) || (most > 0 && value > most);
}
std::string in_words(double least, double most, const FindingWords& words) {
  if (!(most > 0)) return "more than " + words.number(least);
  return words.number(least) + " to " + words.number(most);
}

// Gauges stand over 10 cm; they may be rounded to whole stitches.
struct GaugeSeen {
  std::optional<PrintedGauge> printed;
  std::optional<double> stitches, rows;  // in 10 cm
};
// The gauge of plain cloth: as printed, else in force. Another fabric than plain only where `any_fabric`.
std::optional<GaugeSeen> gauge_seen(const ReviewInput& input, bool any_fabric) {
  for (const bool named_plain : {true, false})
    for (const PrintedGauge& gauge : printed_gauges(input.printed)) {
      const bool plain =
          gauge.structure ? *gauge.structure == Structure::plain : !gauge.fabric && !named_plain;
      const bool wanted = plain || (any_fabric && !named_plain);
      if (wanted && gauge.stitches != nullptr)
        return GaugeSeen{gauge, gauge.stitches_per_10_cm(), gauge.rows_per_10_cm()};
    }
  for (const Fabric& fabric : input.pattern.fabrics) {
    if (fabric.structure != Structure::plain && !any_fabric) continue;
    const auto width = stitch_width(fabric.gauge), height = row_height(fabric.gauge);
    if (!width) continue;
    GaugeSeen seen;
    seen.stitches = 10 / width->value();
    if (height) seen.rows = 10 / height->value();
    return seen;
  }
  return std::nullopt;
}

void show_gauge(Finding& finding, const PrintedView& printed, const GaugeSeen& gauge) {
  if (!gauge.printed) return;
  if (gauge.printed->stitches != nullptr) show(finding, printed, *gauge.printed->stitches);
  if (gauge.printed->rows != nullptr) show(finding, printed, *gauge.printed->rows);
}

// Strands of a yarn held together in the fabric, by the text or the facts.
int strands_held(const ReviewInput& input, std::size_t yarn_index) {
  int strands = 1;
  const PrintedYarn& yarn = input.printed.yarns()[yarn_index];
  for (const Statement* one : input.printed.all(StatementKind::strands))
    if (!one->values.empty() && one->values.front().number)
      strands = std::max(strands, static_cast<int>(std::min(20.0, *one->values.front().number)));
  for (const Role& role : input.pattern.roles)
    if (role.yarn == yarn.fact && yarn.fact) {
      strands = std::max(strands, role.strands);
      if (role.goes_along_with) strands = std::max(strands, 2);
    }
  return strands;
}

bool mostly_plant(const ReviewInput& input, const PrintedYarn& yarn) {
  return share_of(composition_of(input, yarn), [](const FibreSaid& said) {
           return said.fibre != nullptr && said.fibre->fibre_class == "plant";
         }) >= 50;
}

// The yarn the gauge is knitted in: the first colour's, else the only one.
std::optional<std::size_t> main_yarn(const PrintedView& printed) {
  for (const PrintedRole& role : printed.roles())
    if (role.yarn >= 0 && static_cast<std::size_t>(role.yarn) < printed.yarns().size())
      return static_cast<std::size_t>(role.yarn);
  return printed.yarns().size() == 1 ? std::optional<std::size_t>(0) : std::nullopt;
}

void test_category(const ReviewInput& input, Findings& findings, std::size_t index, const Statement& said,
                   const std::optional<GaugeSeen>& gauge) {
  const FindingWords words(input);
  const PrintedYarn& yarn = input.printed.yarns()[index];
  const ThicknessBand* band = band_of(said.words.empty() ? input.printed.words(said.span) : said.words);
  if (band == nullptr || has_halo(input, yarn)) return;
  const auto fineness = metres_per_gram_of(input, yarn);
  const double per_100 = fineness ? *fineness * 100 : 0;
  // Plant fibres weigh more: the same thickness has fewer metres.
  const bool metres_off =
      fineness && outside(per_100, mostly_plant(input, yarn) ? 0 : band->least_metres, band->most_metres);
  const bool alone = main_yarn(input.printed) == index && strands_held(input, index) == 1;
  const bool stitches_known = alone && gauge && gauge->stitches && band->least_stitches > 0;
  const bool stitches_off =
      stitches_known && outside(*gauge->stitches, band->least_stitches - 0.5, band->most_stitches + 0.5);
  if (!metres_off && !stitches_off) return;
  const std::string shown = printed_words(input.printed, said);
  Finding& finding = findings.add(metres_off && stitches_off ? Severity::ask : Severity::note,
                                  "thickness does not fit its figures: " + shown);
  finding.apart = yarn.name;
  show(finding, input.printed, said);
  if (fineness)
    finding.evidence.push_back(words.number(per_100) + " m in 100 g; " + shown + " is " +
                               in_words(band->least_metres, band->most_metres, words));
  if (stitches_known)
    finding.evidence.push_back(words.number(*gauge->stitches) + " sts in 10 cm; " + shown + " is " +
                               in_words(band->least_stitches, band->most_stitches, words));
  if (metres_off && !yarn.lengths.empty()) show(finding, input.printed, *yarn.lengths.front());
  if (stitches_off) show_gauge(finding, input.printed, *gauge);
  std::string fits;
  for (const ThicknessBand& other : thickness_bands)
    if (fineness && &other >= &thickness_bands[5] &&
        !outside(per_100, other.least_metres, other.most_metres) &&
        (!stitches_known || !outside(*gauge->stitches, other.least_stitches, other.most_stitches)))
      fits = other.name;
  if (!fits.empty()) finding.evidence.push_back("these figures are those of " + fits);
  finding.query = name_of(yarn) + " is called " + shown + ", but " +
                  finding.evidence[!metres_off && stitches_known && fineness ? 1 : 0] + ". " +
                  (fits.empty() ? "Is the name right?" : "Is it " + fits + "?");
}

// A band of firmness: the row's keys are constants that can be overwritten.
struct FirmnessBand {
  ItemKind kind;
  std::string_view what, least, most;
};
constexpr FirmnessBand firmness_bands[] = {
    {ItemKind::garment, "garments", "review_firmness_garment_low", "review_firmness_garment_high"},
    {ItemKind::sock, "socks", "review_firmness_sock_low", "review_firmness_sock_high"},
    {ItemKind::hat_or_mitten, "hats and mittens", "review_firmness_hat_low", "review_firmness_hat_high"},
    {ItemKind::shawl, "shawls", "review_firmness_shawl_low", "review_firmness_shawl_high"},
};
constexpr FirmnessBand heavy_band{ItemKind::garment, "heavy yarn", "review_firmness_heavy_low",
                                  "review_firmness_heavy_high"};
constexpr FirmnessBand halo_band{ItemKind::unknown, "yarn with a halo", "review_firmness_halo_low",
                                 "review_firmness_halo_high"};

// Hair that stands off by itself; a brushed yarn of other fibres may be knitted like any other.
bool is_of_long_hair(const ReviewInput& input, const PrintedYarn& yarn) {
  return share_of(composition_of(input, yarn), [](const FibreSaid& said) {
           return said.fibre != nullptr && (said.fibre->id == "mohair" || said.fibre->id == "angora");
         }) >= 40;
}

const FirmnessBand* item_band(const ReviewInput& input, ItemKind kind, double metres_per_gram) {
  const bool heavy = metres_per_gram * 100 < input.need.constant_of("review_heavy_m_per_100g");
  if (heavy && (kind == ItemKind::garment || kind == ItemKind::hat_or_mitten)) return &heavy_band;
  for (const FirmnessBand& band : firmness_bands)
    if (band.kind == kind) return &band;
  return nullptr;
}

// What the firmness should lie between: outside the inner limits a word, outside the outer ones a question.
struct FirmnessLimits {
  std::string_view what;
  double least = 0, note_least = 0, note_most = 0, most = 0;
};
std::optional<FirmnessLimits> firmness_limits(const ReviewInput& input, ItemKind kind,
                                              const PrintedYarn& yarn, double metres_per_gram) {
  const auto constant = [&](std::string_view key) { return input.need.constant_of(key); };
  const FirmnessBand* band = item_band(input, kind, metres_per_gram);
  const double halo_least = constant(halo_band.least), halo_most = constant(halo_band.most);
  if (is_of_long_hair(input, yarn) ||
      (band == nullptr && says(printed_description(input.printed, yarn), {"halo"})))
    return FirmnessLimits{halo_band.what, halo_least, halo_least, halo_most, halo_most};
  if (band == nullptr) return std::nullopt;
  const double least = constant(band->least), most = constant(band->most);
  FirmnessLimits limits{band->what, least, least, most, most};
  if (band->kind == ItemKind::garment && band != &heavy_band) {
    limits.note_least = constant("review_firmness_garment_note_low");
    limits.note_most = constant("review_firmness_garment_note_high");
  }
  if (has_halo(input, yarn)) limits.least = limits.note_least = std::min(halo_least, least);
  return limits;
}

// What is held together in the fabric, as one yarn.
std::optional<MetresPerGram> held_fineness(const ReviewInput& input, std::size_t index) {
  const PrintedYarn& yarn = input.printed.yarns()[index];
  const auto fineness = metres_per_gram_of(input, yarn);
  if (!fineness || !(*fineness > 0)) return std::nullopt;
  std::vector<MetresPerGram> strands;
  for (const Role& role : input.pattern.roles)
    if (role.goes_along_with) {
      const Role* other = input.pattern.role(role.goes_along_with);
      for (const Role* held : {&role, other})
        if (held != nullptr)
          if (const Yarn* fact = input.pattern.yarn(held->yarn))
            if (const auto density = linear_density(fact->put_up))
              strands.insert(strands.end(), static_cast<std::size_t>(std::clamp(held->strands, 1, 20)),
                             *density);
      if (strands.size() > 1) return held_together(strands);
    }
  strands.assign(static_cast<std::size_t>(strands_held(input, index)), metres_per_gram(*fineness));
  return held_together(strands);
}

const WordList reasons_of_gauge = {
    "drape",   "drapey",     "drapy",        "looser",        "firmly",         "firmer",
    "tighter", "densely",    "dense",        "denser",        "airy",           "open fabric",
    "sturdy",  "on purpose", "deliberately", "larger needle", "smaller needle", "relaxed fabric"};

}  // namespace

void category_fits_figures(const ReviewInput& input, Findings& findings) {
  const auto gauge = gauge_seen(input, false);
  bool named = false;
  for (std::size_t i = 0; i < input.printed.yarns().size(); ++i) {
    const PrintedYarn& yarn = input.printed.yarns()[i];
    const auto said =
        std::find_if(yarn.descriptions.begin(), yarn.descriptions.end(),
                     [](const Statement* description) { return description->qualifier == "category"; });
    if (said == yarn.descriptions.end()) continue;
    named = true;
    test_category(input, findings, i, **said, gauge);
    if (!metres_per_gram_of(input, yarn))
      findings.cannot("length and weight of " + name_of(yarn) + " are not both known",
                      "its put-up from the band");
  }
  if (!named && !input.printed.yarns().empty())
    findings.cannot("no yarn is called by a thickness", "a word such as sport or DK");
}

void firmness_fits_item(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const ItemRead item = item_of(input);
  const auto index = main_yarn(input.printed);
  if (!index) {
    findings.cannot("it is not known which yarn the gauge is in", "the yarn of the first colour");
    return;
  }
  const PrintedYarn& yarn = input.printed.yarns()[*index];
  const auto gauge = gauge_seen(input, item.kind == ItemKind::shawl);
  const auto fineness = held_fineness(input, *index);
  if (!gauge || !gauge->rows || !gauge->stitches || !fineness) {
    findings.cannot(!fineness ? "length and weight of " + name_of(yarn) + " are not both known"
                              : "stitches and rows of plain cloth are not both known",
                    !fineness ? "its put-up from the band" : "a gauge in stitches and rows");
    return;
  }
  if (says(item.words, {"felted", "fulled", "felting"})) {
    findings.cannot("a felted item is knitted loose on purpose", "nothing");
    return;
  }
  const auto limits = firmness_limits(input, item.kind, yarn, fineness->value());
  if (!limits) {
    findings.cannot(item.kind == ItemKind::unknown ? "it is not said what the item is"
                                                   : "there is no band of firmness for this item",
                    "an item such as a pullover or socks");
    return;
  }
  const double density = *gauge->stitches * *gauge->rows / 100;
  const double firm = firmness_from_gauge(density, *fineness);
  const double note_least = limits->note_least, note_most = limits->note_most;
  const double shown_firm = std::round(firm * 100) / 100;
  if (shown_firm >= note_least && shown_firm <= note_most) return;
  const bool ask = shown_firm < limits->least || shown_firm > limits->most;
  Finding& finding = findings.add(
      ask ? Severity::ask : Severity::note,
      std::string(firm < note_least ? "loose" : "firm") + " for " + std::string(limits->what) + ": " +
          (gauge->printed ? printed_words(input.printed,
                                          span_of(*gauge->printed->stitches, gauge->printed->rows != nullptr
                                                                                 ? *gauge->printed->rows
                                                                                 : *gauge->printed->stitches))
                          : "firmness " + words.number(firm)));
  if (gauge->printed) show_gauge(finding, input.printed, *gauge);
  for (const auto* put_up : {&yarn.lengths, &yarn.weights})
    if (!put_up->empty()) show(finding, input.printed, *put_up->front());
  finding.evidence = {words.number(*gauge->stitches) + " × " + words.number(*gauge->rows) +
                          " in 10 cm = " + words.number(density, 2) + " stitches in a square centimetre; " +
                          words.number(fineness->value(), 2) + " m in a gram",
                      "firmness 6.98 × √(" + words.number(density, 2) + " ÷ " +
                          words.number(fineness->value(), 2) + ") = " + words.number(firm) + "; " +
                          std::string(limits->what) + " " + words.number(note_least) + " to " +
                          words.number(note_most)};
  if (firm < note_least)
    finding.evidence.push_back(
        "with twice the metres in a gram it would be looser still, with half as many " +
        words.number(firm * std::sqrt(2)));
  else
    finding.evidence.push_back("with twice the metres in a gram it would be " +
                               words.number(firm / std::sqrt(2)));
  finding.query = "Gauge and put-up together give a firmness of " + words.number(firm) + ", where " +
                  std::string(limits->what) + " lie between " + words.number(note_least) + " and " +
                  words.number(note_most) +
                  ". Is the gauge right, or was the length per 100 g given as per 50 g?";
}

void band_gauge_is_near(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const auto index = main_yarn(input.printed);
  if (!index) return;
  const PrintedYarn& yarn = input.printed.yarns()[*index];
  const Yarn* fact = input.pattern.yarn(yarn.fact);
  std::optional<double> least, most;
  const Statement* band = yarn.band_gauges.empty() ? nullptr : yarn.band_gauges.front();
  if (band != nullptr && !band->values.empty()) {
    least = band->values.front().number;
    most = band->values.back().number;
  } else if (fact != nullptr && fact->band_stitches_low) {
    least = fact->band_stitches_low->value;
    most = fact->band_stitches_high ? fact->band_stitches_high->value : *least;
  }
  if (!least || !most) {
    findings.cannot("the gauge on the band of " + name_of(yarn) + " is not known",
                    "the band's stitches in 10 cm");
    return;
  }
  const auto gauge = gauge_seen(input, false);
  if (!gauge || !gauge->stitches) {
    findings.cannot("no gauge of plain cloth is known", "stitches over 10 cm of stocking stitch");
    return;
  }
  const ItemRead item = item_of(input);
  const bool meant = item.kind == ItemKind::sock || item.kind == ItemKind::shawl ||
                     strands_held(input, *index) > 1 || says(item.words, {"felted", "fulled", "felting"}) ||
                     says(lower_ascii(input.printed.text()), reasons_of_gauge);
  const double tolerance = input.need.constant_of("review_band_gauge_stitches");
  const double apart = std::max(*least - *gauge->stitches, *gauge->stitches - *most);
  if (meant || apart <= tolerance) return;
  const std::string on_band =
      (*least == *most ? words.number(*least) : words.number(*least) + "–" + words.number(*most)) +
      " sts in 10 cm";
  Finding& finding = findings.add("gauge " + std::string(*gauge->stitches > *most ? "firmer" : "looser") +
                                  " than on the band: " +
                                  (gauge->printed ? printed_words(input.printed, *gauge->printed->stitches)
                                                  : quoted(words.number(*gauge->stitches) + " sts")));
  if (gauge->printed) show(finding, input.printed, *gauge->printed->stitches);
  if (band != nullptr) show(finding, input.printed, *band);
  finding.evidence = {"pattern " + words.number(*gauge->stitches) + " sts in 10 cm", "band " + on_band};
  finding.query = "The band of " + name_of(yarn) + " gives " + on_band + ", the pattern " +
                  words.number(*gauge->stitches) + ". Is that meant, and should the text say why?";
}

}  // namespace skeinproof
