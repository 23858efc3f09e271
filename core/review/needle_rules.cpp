// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/reference/lookup.h"
#include "core/review/gauge_rules.h"
#include "core/review/item_and_wearer.h"
#include "core/review/printed_measures.h"
#include "core/review/printed_words.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

constexpr std::size_t most_needles = 200;  // no pattern has more; keeps comparing them within bounds

std::string_view name_words(const PrintedView& printed, const Statement& needle) {
  return needle.values.empty() ? std::string_view(needle.words) : printed.words(needle.values.front());
}

std::string_view in_system(const NeedleRow& row, PrintedUnit system) {
  switch (system) {
    case PrintedUnit::needle_us:
      return row.us.text;
    case PrintedUnit::needle_uk:
      return row.uk_old.text;
    default:
      return row.japan.text;
  }
}

std::vector<const NeedleRow*> rows_of(PrintedUnit system, const std::string& name) {
  switch (system) {
    case PrintedUnit::needle_us:
      return needles_by_us(name);
    case PrintedUnit::needle_uk:
      return needles_by_uk_old(name);
    default:
      return needles_by_japan(name);
  }
}

std::string system_word(PrintedUnit system) {
  switch (system) {
    case PrintedUnit::needle_us:
      return "US ";
    case PrintedUnit::needle_uk:
      return "UK ";
    default:
      return "JP ";
  }
}

// A table keeps halves as decimals; a list that prints "2½" goes on so.
std::string like(std::string_view name, std::string_view printed) {
  std::string out(name);
  const auto half = out.find(".5");
  if (half != std::string::npos && printed.find('.') == std::string_view::npos) out.replace(half, 2, "½");
  return out;
}

int changed_characters(std::string_view before, std::string_view after) {
  const auto a = code_points(before), b = code_points(after);
  const std::size_t shared = std::min(a.size(), b.size());
  int changed = static_cast<int>(std::max(a.size(), b.size()) - shared);
  for (std::size_t i = 0; i < shared; ++i) changed += a[i] != b[i];
  return changed;
}

void compare_names(const ReviewInput& input, Findings& findings, const Statement& metric,
                   const Statement& named) {
  const PrintedView& printed = input.printed;
  const double mm = *metric.values.front().number;
  const NeedleRow* row = needle_by_mm(mm);
  const std::string name(name_words(printed, named));
  const auto rows = rows_of(named.unit, name);
  const bool blank = row != nullptr && in_system(*row, named.unit).empty();
  if (row == nullptr || rows.empty() || blank) {
    findings.cannot("the needle table joins no " + system_word(named.unit) + name + " and " + figure(mm, 2) +
                        " mm: one of the two has no entry there",
                    "the maker's own list of sizes");
    return;
  }
  if (std::any_of(rows.begin(), rows.end(), [&](const NeedleRow* one) { return one->mm == mm; })) return;
  const std::string metric_words(printed.words(metric.values.front()));
  const std::string right_name = like(in_system(*row, named.unit), name);
  const std::string right_mm = figure(rows.front()->mm, 2);
  const bool change_name = changed_characters(name, right_name) <= changed_characters(metric_words, right_mm);
  Finding& finding = findings.add("two needle sizes: " + printed_words(printed, metric) + ", " +
                                  printed_words(printed, named));
  show(finding, printed, named);
  show(finding, printed, metric);
  finding.apart = metric.subject + " " + metric_words;
  finding.evidence = {figure(mm, 2) + " mm = " + system_word(named.unit) + right_name,
                      system_word(named.unit) + name + " = " + right_mm + " mm"};
  const PrintedValue& changed = change_name ? named.values.front() : metric.values.front();
  finding.proposal = {{changed.span, change_name ? right_name : right_mm}};
  finding.proposal_words = change_name ? system_word(named.unit) + name + " → " + right_name
                                       : metric_words + " → " + right_mm + " mm";
  finding.query = figure(mm, 2) + " mm is " + system_word(named.unit) + right_name + ", and " +
                  system_word(named.unit) + name + " is " + right_mm + " mm. Which needle is meant?";
}

// What a needle is for: its own words, and those of the fabric whose gauge is printed with it.
bool for_rib(const Statement& needle) {
  return says(lower_ascii(needle.subject), {"rib", "ribbing", "welt", "cuff", "hem", "edging", "border"});
}

std::vector<const Statement*> metric_needles(const ReviewInput& input) {
  std::vector<const Statement*> needles;
  for (const Statement* needle : input.printed.all(StatementKind::needle))
    if (needle->unit == PrintedUnit::millimetre && figure_of(needle).value_or(0) > 0 &&
        needles.size() < most_needles)
      needles.push_back(needle);
  return needles;
}

// The needle of the plain cloth: for the body or for nothing in particular, the thickest of several.
const Statement* main_needle(const ReviewInput& input) {
  const Statement* main = nullptr;
  bool main_named = false;
  for (const Statement* needle : metric_needles(input)) {
    if (for_rib(*needle)) continue;
    const std::string subject = lower_ascii(needle->subject);
    const bool named = says(subject, {"body", "main", "stocking", "stockinette", "plain", "leg", "foot"});
    if (!subject.empty() && !named) continue;
    const bool better = main == nullptr || (named && !main_named) ||
                        (named == main_named && *figure_of(needle) > *figure_of(main));
    if (better) {
      main = needle;
      main_named = named;
    }
  }
  return main;
}

struct Tube {
  double cm = 0;
  std::string name, size;
  const Statement* statement = nullptr;
};
void take_smaller(std::optional<Tube>& smallest, Tube tube) {
  if (tube.cm > 0 && (!smallest || tube.cm < smallest->cm)) smallest = std::move(tube);
}

// The smallest tube that the printed measurements and the need sheet know of.
std::optional<Tube> smallest_tube(const ReviewInput& input) {
  std::optional<Tube> smallest;
  const auto& labels = input.printed.size_labels();
  for (const PrintedMeasure& measure : printed_measures(input.printed))
    if (measure.around())
      for (std::size_t i = 0; i < labels.size(); ++i)
        if (const auto cm = measure.at_cm(i))
          take_smaller(smallest, {*cm, measure.subject, labels[i], measure.list().statement});
  const auto gauges = printed_gauges(input.printed);
  for (const StitchWidths& widths : stitch_widths(input)) {
    const Fabric* fabric = input.pattern.fabric(widths.fabric);
    if (fabric == nullptr || fabric->gauge.worked != Worked::in_the_round) continue;
    const auto width = input.need.loop_of(fabric->id).stitch_width;
    if (!width) continue;
    for (std::size_t i = 0; i < labels.size() && i < widths.stitches.size(); ++i)
      if (widths.stitches[i])
        take_smaller(smallest, {*widths.stitches[i] * width->value(), widths.name, labels[i], nullptr});
  }
  return smallest;
}

bool worked_in_the_round(const ReviewInput& input) {
  for (const PrintedGauge& gauge : printed_gauges(input.printed)) {
    if (gauge.worked && says(lower_ascii(gauge.worked->words), {"round", "in the round", "rnd"})) return true;
    if (gauge.rows && says(lower_ascii(input.printed.words(gauge.rows->span)), {"round", "rnd"})) return true;
  }
  return std::any_of(input.pattern.fabrics.begin(), input.pattern.fabrics.end(),
                     [](const Fabric& fabric) { return fabric.gauge.worked == Worked::in_the_round; });
}

}  // namespace

namespace {

std::size_t apart(const TextSpan& one, const TextSpan& other) {
  return one.begin < other.begin ? other.begin - std::min(one.end, other.begin)
                                 : one.begin - std::min(other.end, one.begin);
}

// Where several needles stand in one breath, a name belongs to the millimetres it stands nearest to, and they
// to the nearest name of each system.
bool belong_together(const std::vector<const Statement*>& breath, const Statement& metric,
                     const Statement& name) {
  const std::size_t distance = apart(metric.span, name.span);
  return std::none_of(breath.begin(), breath.end(), [&](const Statement* other) {
    if (other->kind != StatementKind::needle || other == &metric || other == &name) return false;
    return (other->unit == name.unit && apart(metric.span, other->span) < distance) ||
           (other->unit == metric.unit && apart(other->span, name.span) < distance);
  });
}

}  // namespace

void needle_names(const ReviewInput& input, Findings& findings) {
  for (const Statement* metric : metric_needles(input)) {
    const auto breath = input.printed.mentioned_with(*metric);
    for (const Statement* other : breath) {
      const bool named = other->unit == PrintedUnit::needle_us || other->unit == PrintedUnit::needle_uk ||
                         other->unit == PrintedUnit::needle_japan;
      if (other->kind == StatementKind::needle && named && !other->values.empty() &&
          belong_together(breath, *metric, *other))
        compare_names(input, findings, *metric, *other);
    }
  }
}

void needle_to_stitch(const ReviewInput& input, Findings& findings) {
  const auto gauges = printed_gauges(input.printed);
  const auto plain = std::find_if(gauges.begin(), gauges.end(), [](const PrintedGauge& gauge) {
    const bool cloth =
        !gauge.fabric || gauge.structure == Structure::plain || gauge.structure == Structure::lace;
    return cloth && gauge.stitches_per_10_cm();
  });
  const Statement* needle = main_needle(input);
  if (plain == gauges.end() || needle == nullptr) {
    findings.cannot(needle == nullptr ? "no needle is given in mm" : "no gauge of plain cloth is given",
                    "the gauge and the needle it was worked on");
    return;
  }
  const auto limit = [&](std::string_view key) { return input.need.constant_of(key); };
  const ItemKind item = item_of(input).kind;
  double low = limit("review_needle_plain_low"), high = limit("review_needle_plain_high");
  std::string cloth = "plain cloth";
  if (item == ItemKind::sock) {
    low = limit("review_needle_sock_low");
    high = limit("review_needle_sock_high");
    cloth = "socks";
  } else if (item != ItemKind::garment) {
    low = std::min(low, limit("review_needle_sock_low"));
    cloth = "knitting";
  }
  if (plain->structure == Structure::lace || item == ItemKind::shawl) {
    high = limit("review_needle_lace_high");
    cloth = "lace";
  }
  const double mm = *figure_of(needle), width_mm = 100 / *plain->stitches_per_10_cm();
  const double ratio = mm / width_mm;
  if (ratio >= low - 1e-9 && ratio <= high + 1e-9) return;
  Finding& finding =
      findings.add((ratio < low ? "a thin needle for the gauge: " : "a thick needle for the gauge: ") +
                   printed_words(input.printed, *needle));
  show(finding, input.printed, *needle);
  show(finding, input.printed, *plain->stitches);
  finding.evidence = {
      "Width of a stitch: 100 mm ÷ " + figure(*plain->stitches_per_10_cm()) + " = " + figure(width_mm, 2) +
          " mm",
      "Needle ÷ stitch: " + figure(mm, 2) + " ÷ " + figure(width_mm, 2) + " = " + figure(ratio, 2),
      cloth + " lies between " + figure(low, 2) + " and " + figure(high, 2)};
  finding.query = "A needle of " + figure(mm, 2) + " mm is " + figure(ratio, 2) +
                  " of the width of a stitch; " + cloth + " is worked at " + figure(low, 2) + " to " +
                  figure(high, 2) + ". Are the needle and the gauge both right?";
}

void rib_needle(const ReviewInput& input, Findings& findings) {
  if (item_of(input).kind != ItemKind::garment) return;
  const Statement *main = main_needle(input), *rib = nullptr;
  for (const Statement* needle : metric_needles(input))
    if (for_rib(*needle) && rib == nullptr) rib = needle;
  if (main == nullptr || rib == nullptr) {
    if (!input.printed.whole(TextPart::needles) || main == nullptr || metric_needles(input).size() > 1)
      findings.cannot("the needles of the rib and of the body are not both named", "what each needle is for");
    return;
  }
  const double less = *figure_of(main) - *figure_of(rib);
  if (less >= input.need.constant_of("review_rib_needle_low_mm") - 1e-9 &&
      less <= input.need.constant_of("review_rib_needle_high_mm") + 1e-9)
    return;
  Finding& finding = findings.add("rib needle beside the main one: " + printed_words(input.printed, *rib));
  show(finding, input.printed, *rib);
  show(finding, input.printed, *main);
  finding.evidence = {"Main needle − rib needle: " + figure(*figure_of(main), 2) + " − " +
                      figure(*figure_of(rib), 2) + " = " + figure(less, 2) + " mm"};
  finding.query = "The rib is worked on " + figure(*figure_of(rib), 2) + " mm and the body on " +
                  figure(*figure_of(main), 2) + " mm. Is that meant?";
}

void circular_fits_tube(const ReviewInput& input, Findings& findings) {
  const Statement* shortest = nullptr;
  const auto cm_of = [](const Statement& length) {
    const double value = figure_of(&length).value_or(0);
    return length.unit == PrintedUnit::inch ? value * centimetres_per_inch : value;
  };
  for (const Statement* length : input.printed.all(StatementKind::needle_length)) {
    if (length->unit != PrintedUnit::centimetre && length->unit != PrintedUnit::inch) continue;
    for (const PrintedValue& value : length->values)
      if (!value.number || !(*value.number > 0)) return;
    const bool smaller = shortest == nullptr || cm_of(*length) < cm_of(*shortest) - 2;
    if (!length->values.empty() && smaller) shortest = length;
  }
  if (shortest == nullptr || !worked_in_the_round(input)) return;
  for (const Statement* type : input.printed.all(StatementKind::needle_type))
    if (says(lower_ascii(type->words),
             {"dpn", "dpns", "double-pointed", "double pointed", "long loop", "long-loop", "two circulars",
              "small circumference", "small-circumference", "loop"}))
      return;
  const auto tube = smallest_tube(input);
  if (!tube) {
    findings.cannot("no circumference is known", "the finished circumference of the smallest tube");
    return;
  }
  double shortest_cm = cm_of(*shortest);
  for (const PrintedValue& value : shortest->values)
    shortest_cm = std::min(shortest_cm,
                           *value.number * (shortest->unit == PrintedUnit::inch ? centimetres_per_inch : 1));
  if (shortest_cm <= tube->cm + 0.5) return;
  Finding& finding = findings.add("needle longer than the tube: " + printed_words(input.printed, *shortest));
  show(finding, input.printed, *shortest);
  if (tube->statement) rest_on(finding, input.printed, *tube->statement);
  finding.evidence = {
      "Shortest circular needle: " + figure(shortest_cm) + " cm",
      "Smallest tube: " + tube->name + " in size " + tube->size + ", " + figure(tube->cm) + " cm",
      "No double-pointed needles and no long loop are listed"};
  finding.query = "A " + figure(shortest_cm) + " cm needle cannot go round a tube of " + figure(tube->cm) +
                  " cm (" + tube->name + ", size " + tube->size +
                  "). Should DPNs or a long circular be listed?";
}

}  // namespace skeinproof
