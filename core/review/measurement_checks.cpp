// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/text.h"
#include "core/review/item_and_wearer.h"
#include "core/review/printed_measures.h"
#include "core/review/printed_words.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

using Kind = StatementKind;
constexpr std::string_view trade = "common practice, no source";

void units_agree(const ReviewInput& input, Findings& findings);         // M1
void steps_are_even(const ReviewInput& input, Findings& findings);      // M2
void fit_is_told(const ReviewInput& input, Findings& findings);         // M3
void schematic_agrees(const ReviewInput& input, Findings& findings);    // M4
void joins_add_up(const ReviewInput& input, Findings& findings);        // M5
void lengths_never_fall(const ReviewInput& input, Findings& findings);  // M6

constexpr std::array rows = {
    Check{"M1",
          "Centimetres and inches agree within the rounding of both lists",
          Severity::stop,
          {Kind::measurement, Kind::size_labels},
          "inch of 2.54 cm: international yard and pound agreement of 1959",
          units_agree},
    Check{"M2",
          "Steps between sizes lie near their median",
          Severity::ask,
          {Kind::measurement, Kind::size_labels},
          trade,
          steps_are_even},
    Check{"M3",
          "Finished and to-fit measurements are told apart and lie the stated ease apart",
          Severity::ask,
          {Kind::measurement, Kind::ease, Kind::size_labels, Kind::gauge_stitches, Kind::gauge_rows,
           Kind::gauge_over, Kind::gauge_fabric, Kind::stitches},
          trade,
          fit_is_told},
    Check{"M4",
          "The schematic prints the measurements of the text",
          Severity::stop,
          {Kind::measurement, Kind::size_labels},
          trade,
          schematic_agrees},
    Check{"M5",
          "Stitches that are joined add up",
          Severity::stop,
          {Kind::stitches, Kind::size_labels},
          trade,
          joins_add_up},
    Check{"M6",
          "No measurement falls as the size grows",
          Severity::ask,
          {Kind::measurement, Kind::size_labels},
          trade,
          lengths_never_fall},
};

std::string with_unit(const PrintedView& printed, const PrintedValue& value, bool inch) {
  return std::string(printed.words(value)) + (inch ? " in" : " cm");
}

const PrintedValue* number_at(const PrintedList& list, std::size_t i) {
  const PrintedValue* value = i < list.values.size() ? list.values[i] : nullptr;
  return value != nullptr && value->number ? value : nullptr;
}

// The measurement of the facts that a printed one states.
const Measurement* in_force(const ReviewInput& input, const PrintedMeasure& measure, Fit fit) {
  const auto& all = input.pattern.measurements;
  const std::string name = lower_ascii(measure.subject);
  const auto found = std::find_if(all.begin(), all.end(), [&](const Measurement& one) {
    const std::string other = lower_ascii(one.name);
    const bool same = other == name || (!other.empty() && name.find(other) != std::string::npos) ||
                      (!name.empty() && other.find(name) != std::string::npos);
    return one.fit == fit && same;
  });
  return found == all.end() ? nullptr : &*found;
}

// How far a value lies off the line between its neighbours, cm; none at the ends of a list.
std::optional<double> off_the_line(const PrintedList& list, std::size_t i, double to_cm) {
  if (i == 0) return std::nullopt;
  const PrintedValue *before = number_at(list, i - 1), *here = number_at(list, i),
                     *after = number_at(list, i + 1);
  if (!before || !here || !after) return std::nullopt;
  return to_cm * std::abs(*here->number - (*before->number + *after->number) / 2);
}

std::optional<double> cm_in_force(const ReviewInput& input, const PrintedMeasure& measure, std::size_t i) {
  const Measurement* fact = in_force(input, measure, measure.to_fit() ? Fit::to_fit : Fit::finished);
  const auto* known = fact == nullptr ? nullptr : fact->values.find(i);
  return known == nullptr ? std::nullopt : std::optional<double>(known->value.value());
}

// Which of the two units is the likelier one: as in force, else as the sizes around it grow.
std::optional<bool> inches_are_right(const ReviewInput& input, const PrintedMeasure& measure, std::size_t i) {
  const double cm = *number_at(*measure.cm, i)->number;
  const double inches = *number_at(*measure.inches, i)->number * centimetres_per_inch;
  if (const auto known = cm_in_force(input, measure, i))
    return std::abs(*known - inches) < std::abs(*known - cm);
  const auto off_cm = off_the_line(*measure.cm, i, 1);
  const auto off_inches = off_the_line(*measure.inches, i, centimetres_per_inch);
  if (!off_cm || !off_inches) return std::nullopt;
  return *off_inches < *off_cm;
}

void units_agree(const ReviewInput& input, Findings& findings) {
  for (const PrintedMeasure& measure : printed_measures(input.printed)) {
    if (!measure.cm || !measure.inches) continue;
    const PrintedList &cm = *measure.cm, &inches = *measure.inches;
    const double slack = centimetres_per_inch * finest_half_step(inches) + finest_half_step(cm) + 1e-9;
    for (std::size_t i = 0; i < cm.values.size(); ++i) {
      const PrintedValue *metric = number_at(cm, i), *imperial = number_at(inches, i);
      if (!metric || !imperial) continue;
      const double in_cm = *imperial->number * centimetres_per_inch;
      if (std::abs(in_cm - *metric->number) <= slack) continue;
      const std::string cm_words = with_unit(input.printed, *metric, false);
      const std::string inch_words = with_unit(input.printed, *imperial, true);
      Finding& finding = findings.add(measure.subject + ": two units, two lengths: " + quoted(cm_words) +
                                      ", " + quoted(inch_words));
      finding.sizes = {input.printed.size_labels()[i]};
      finding.apart = measure.subject + measure.qualifier;
      finding.places = {metric->span, imperial->span};
      rest_on(finding, input.printed, *cm.statement);
      rest_on(finding, input.printed, *inches.statement);
      finding.evidence = {inch_words + " = " + figure(in_cm) + " cm",
                          cm_words + " = " + figure(*metric->number / centimetres_per_inch, 2) + " in",
                          "Rounding of both lists: " + figure(slack, 2) + " cm"};
      const auto right = inches_are_right(input, measure, i);
      if (right) {
        const PrintedValue& changed = *right ? *metric : *imperial;
        const double to_unit = *right ? 1 : 1 / centimetres_per_inch;
        double wanted = *right ? in_cm : *metric->number;
        // The facts tell what the other list rounds.
        if (const auto known = cm_in_force(input, measure, i); known && std::abs(*known - wanted) <= slack)
          wanted = *known;
        const std::string after = as_in_list(wanted * to_unit, *right ? cm : inches, input.printed.text());
        finding.proposal = {{changed.span, after}};
        finding.proposal_words = (*right ? cm_words : inch_words) + " → " + after + (*right ? " cm" : " in");
      }
      finding.query = "The " + measure.subject + " of size " + finding.sizes.front() + " is printed as " +
                      cm_words + " and " + inch_words + ", which is " + figure(in_cm) +
                      " cm. Which is right?";
    }
  }
}

// Steps of a list; absent where a value on either side is.
std::vector<std::optional<double>> steps_of(const PrintedMeasure& measure) {
  const double to_cm = measure.cm ? 1 : centimetres_per_inch;
  std::vector<std::optional<double>> steps;
  for (std::size_t i = 0; i + 1 < measure.list().values.size(); ++i) {
    const PrintedValue *a = number_at(measure.list(), i), *b = number_at(measure.list(), i + 1);
    steps.push_back(a && b ? std::optional<double>((*b->number - *a->number) * to_cm) : std::nullopt);
  }
  return steps;
}

std::string steps_row(const PrintedMeasure& measure) {
  std::string row;
  for (const auto& step : steps_of(measure)) row += (row.empty() ? "" : " · ") + (step ? figure(*step) : "–");
  return row;
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 ? values[half] : (values[half - 1] + values[half]) / 2;
}

// A finding about two neighbouring sizes of a measurement.
Finding& pair_finding(const ReviewInput& input, Findings& findings, const PrintedMeasure& measure,
                      std::size_t i, std::string_view title) {
  const PrintedView& printed = input.printed;
  const PrintedValue &a = *measure.value(i), &b = *measure.value(i + 1);
  const std::string pair = std::string(printed.words(a)) + ", " + std::string(printed.words(b));
  Finding& finding = findings.add(measure.subject + std::string(title) + quoted(pair));
  finding.sizes = {printed.size_labels()[i], printed.size_labels()[i + 1]};
  finding.apart = measure.subject + measure.qualifier;
  finding.places = {a.span, b.span};
  rest_on(finding, printed, *measure.list().statement);
  return finding;
}

void steps_are_even(const ReviewInput& input, Findings& findings) {
  const double least = input.need.constant_of("review_step_cm");
  for (const PrintedMeasure& measure : printed_measures(input.printed)) {
    const auto steps = steps_of(measure);
    std::vector<double> known;
    for (const auto& step : steps)
      if (step) known.push_back(*step);
    if (known.size() < 3) continue;
    const double middle = median(known);
    const double slack = std::max(least, std::abs(middle) / 2) + 1e-9;
    for (std::size_t i = 0; i < steps.size(); ++i) {
      if (!steps[i] || std::abs(*steps[i] - middle) <= slack) continue;
      Finding& finding = pair_finding(input, findings, measure, i, ": an uneven step: ");
      finding.evidence = {"Steps between the sizes, cm: " + steps_row(measure),
                          "Median " + figure(middle) + ", this one " + figure(*steps[i])};
      finding.query = "From size " + finding.sizes[0] + " to " + finding.sizes[1] + " the " +
                      measure.subject + " grows by " + figure(*steps[i]) + " cm, elsewhere by about " +
                      figure(middle) + " cm. Is that meant?";
    }
  }
}

void lengths_never_fall(const ReviewInput& input, Findings& findings) {
  for (const PrintedMeasure& measure : printed_measures(input.printed)) {
    const auto steps = steps_of(measure);
    for (std::size_t i = 0; i < steps.size(); ++i) {
      if (!steps[i] || *steps[i] >= -1e-9) continue;
      Finding& finding = pair_finding(input, findings, measure, i, ": smaller in a larger size: ");
      finding.evidence = {"Steps between the sizes, cm: " + steps_row(measure)};
      finding.query = "The " + measure.subject + " of size " + finding.sizes[1] +
                      " is smaller than that of size " + finding.sizes[0] +
                      ". Is that meant, or are two figures exchanged?";
    }
  }
}

// The stated ease, cm.
struct Ease {
  double least = 0, most = 0;
  const Statement* statement = nullptr;
};
std::optional<Ease> stated_ease(const ReviewInput& input) {
  std::optional<Ease> ease;
  for (const Statement* statement : input.printed.all(Kind::ease)) {
    const bool inch = statement->unit == PrintedUnit::inch;
    if (!inch && statement->unit != PrintedUnit::centimetre) continue;
    if (ease && inch) continue;
    const double to_cm = inch ? centimetres_per_inch : 1;
    const bool negative = says(lower_ascii(statement->qualifier + " " + statement->words), {"negative"});
    std::vector<double> figures;
    double rounding = 0;
    for (const PrintedValue& value : statement->values)
      if (value.number) {
        figures.push_back((negative ? -std::abs(*value.number) : *value.number) * to_cm);
        rounding = value.half_step * to_cm;
      }
    if (figures.empty() || figures.size() > 2) continue;
    const auto [low, high] = std::minmax_element(figures.begin(), figures.end());
    const double about = figures.size() == 1 ? input.need.constant_of("review_ease_cm") : rounding;
    ease = Ease{*low - about, *high + about, statement};
  }
  return ease;
}

// The other measure that a finished one is compared with: printed, or else of the facts.
struct ToFit {
  const PrintedMeasure* printed = nullptr;
  const Measurement* fact = nullptr;
  std::optional<double> at(std::size_t i) const {
    if (printed) return printed->at_cm(i);
    const auto* value = fact ? fact->values.find(i) : nullptr;
    return value ? std::optional<double>(value->value.value()) : std::nullopt;
  }
};

bool sized_by(const PrintedMeasure& measure) {
  return says(lower_ascii(measure.subject), {"bust", "chest", "waist", "hip"});
}

void ask_which(const ReviewInput& input, Findings& findings, const PrintedMeasure& measure) {
  Finding& finding =
      findings.add(measure.subject + ": finished or to fit? " +
                   quoted(tidy_spaces(input.printed.words(measure.list().statement->span)), 40));
  show(finding, input.printed, *measure.list().statement);
  finding.apart = measure.subject;
  finding.evidence = {"The " + measure.subject + " is printed without “finished” or “to fit”",
                      "Neither a stated ease nor the stitches tell which it is"};
  finding.query = "Is the " + measure.subject + " the finished measurement, or that of the body to fit?";
}

void compare_ease(const ReviewInput& input, Findings& findings, const PrintedMeasure& finished,
                  const ToFit& to_fit, const Ease& ease) {
  for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
    const auto garment = finished.at_cm(i), body = to_fit.at(i);
    if (!garment || !body || !finished.holds(i)) continue;
    const double apart = *garment - *body;
    if (apart >= ease.least - 1e-9 && apart <= ease.most + 1e-9) continue;
    const std::string words = with_unit(input.printed, *finished.value(i), !finished.cm);
    Finding& finding = findings.add(finished.subject + " leaves the stated ease: " + quoted(words));
    finding.sizes = {input.printed.size_labels()[i]};
    finding.apart = finished.subject;
    finding.places.push_back(finished.value(i)->span);
    rest_on(finding, input.printed, *finished.list().statement);
    rest_on(finding, input.printed, *ease.statement);
    if (to_fit.printed) rest_on(finding, input.printed, *to_fit.printed->list().statement);
    finding.evidence = {
        "Finished − to fit: " + figure(*garment) + " − " + figure(*body) + " = " + figure(apart) + " cm",
        "Stated: " + printed_words(input.printed, *ease.statement)};
    finding.query = "In size " + finding.sizes.front() + " the ease is " + figure(apart) + " cm, and " +
                    printed_words(input.printed, *ease.statement) + " is stated. Which is right?";
  }
}

void fit_is_told(const ReviewInput& input, Findings& findings) {
  const auto measures = printed_measures(input.printed);
  const auto ease = stated_ease(input);
  const auto gauges = printed_gauges(input.printed);
  const auto widths = stitch_widths(input);
  for (const PrintedMeasure& measure : measures) {
    if (!sized_by(measure) || measure.to_fit()) continue;
    const auto same_subject = [&](const PrintedMeasure& other) {
      return &other != &measure && lower_ascii(other.subject) == lower_ascii(measure.subject);
    };
    const auto other = std::find_if(measures.begin(), measures.end(), same_subject);
    const bool alone = other == measures.end();
    const bool told = measure.finished() || (ease && alone) || (!alone && other->to_fit()) || [&] {
      const auto fit = fit_of(input, measure, gauges, widths);
      return fit && !fit->by_name;
    }();
    if (!told) ask_which(input, findings, measure);
    if (!told || !ease) continue;
    ToFit to_fit{!alone && other->to_fit() ? &*other : nullptr, nullptr};
    if (!to_fit.printed) to_fit.fact = in_force(input, measure, Fit::to_fit);
    if (to_fit.printed || to_fit.fact) compare_ease(input, findings, measure, to_fit, *ease);
  }
}

void schematic_agrees(const ReviewInput& input, Findings& findings) {
  if (!input.printed.whole(TextPart::schematic)) {
    findings.cannot("the schematic is not there as a whole", "the figures of the schematic");
    return;
  }
  const auto measures = printed_measures(input.printed);
  for (const PrintedMeasure& drawn : measures) {
    if (drawn.list().statement->part != TextPart::schematic) continue;
    for (const PrintedMeasure& said : measures) {
      if (said.list().statement->part == TextPart::schematic || said.to_fit() != drawn.to_fit()) continue;
      if (lower_ascii(said.subject) != lower_ascii(drawn.subject)) continue;
      const bool one_unit = said.cm.has_value() == drawn.cm.has_value();
      const double slack =
          one_unit ? 1e-9
                   : centimetres_per_inch * finest_half_step(said.cm ? drawn.list() : said.list()) + 0.5;
      for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
        const auto a = said.at_cm(i), b = drawn.at_cm(i);
        if (!a || !b || !said.holds(i) || !drawn.holds(i) || std::abs(*a - *b) <= slack) continue;
        const std::string text = with_unit(input.printed, *said.value(i), !said.cm);
        const std::string schematic = with_unit(input.printed, *drawn.value(i), !drawn.cm);
        Finding& finding = findings.add(said.subject + ": the schematic differs: " + quoted(text) + ", " +
                                        quoted(schematic));
        finding.sizes = {input.printed.size_labels()[i]};
        finding.apart = said.subject;
        finding.places = {drawn.value(i)->span, said.value(i)->span};
        rest_on(finding, input.printed, *drawn.list().statement);
        rest_on(finding, input.printed, *said.list().statement);
        finding.evidence = {"Text: " + text, "Schematic: " + schematic};
        finding.query = "The " + said.subject + " of size " + finding.sizes.front() + " is " + text +
                        " in the text and " + schematic + " in the schematic. Which is right?";
      }
    }
  }
}

struct JoinPart {
  std::string_view word;
  int times;
  const Statement* statement = nullptr;
  PrintedList list;
};

void joins_add_up(const ReviewInput& input, Findings& findings) {
  std::array<JoinPart, 4> parts = {{{"body", 1, nullptr, {}},
                                    {"sleeve", 2, nullptr, {}},
                                    {"underarm", -4, nullptr, {}},
                                    {"yoke", -1, nullptr, {}}}};
  for (const Statement* statement : input.printed.all(Kind::stitches)) {
    const std::string words = lower_ascii(statement->qualifier + " " + statement->subject);
    // Body and sleeve shrink or grow on the way: the count that is joined is the last before the yoke.
    if (parts[3].statement != nullptr) break;
    for (JoinPart& part : parts)
      if (words.find(part.word) != std::string::npos) {
        part.statement = statement;
        part.list = input.printed.list(*statement);
        break;
      }
  }
  std::vector<std::string> missing;
  for (const JoinPart& part : parts)
    if (part.statement == nullptr) missing.emplace_back(part.word);
  if (!missing.empty()) {
    findings.cannot("no stitch counts of " + join(missing, ", ") + " are printed",
                    "the counts at the join: body, sleeve, underarm and yoke");
    return;
  }
  for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
    double sum = 0;
    bool known = true;
    for (const JoinPart& part : parts) {
      const PrintedValue* value = number_at(part.list, i);
      known = known && value != nullptr;
      if (value) sum += part.times * *value->number;
    }
    if (!known || std::abs(sum) < 0.5) continue;
    const auto at = [&](int part) {
      return figure(*number_at(parts[static_cast<std::size_t>(part)].list, i)->number, 0);
    };
    const double joined = sum + *number_at(parts[3].list, i)->number;
    Finding& finding = findings.add("joined stitches do not add up: " + quoted(at(3)));
    finding.sizes = {input.printed.size_labels()[i]};
    finding.places.push_back(number_at(parts[3].list, i)->span);
    for (const JoinPart& part : parts) rest_on(finding, input.printed, *part.statement);
    finding.evidence = {"Body + 2 × sleeve − 4 × underarm: " + at(0) + " + 2 × " + at(1) + " − 4 × " + at(2) +
                            " = " + figure(joined, 0),
                        "Printed for the yoke: " + at(3)};
    finding.query = "In size " + finding.sizes.front() + " body, sleeves and underarms join to " +
                    figure(joined, 0) + " stitches, and " + at(3) + " are printed. Which is right?";
  }
}

}  // namespace

std::span<const Check> measurement_checks() { return rows; }

}  // namespace skeinproof
