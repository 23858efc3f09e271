// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/text.h"
#include "core/fabric/gauge.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/role_figures.h"

namespace skeinproof {
namespace {

struct UsualSlip {
  double factor;  // printed over true
  std::string_view meaning;
};
constexpr std::array usual_slips = {
    UsualSlip{metres_per_yard, "metres taken for yards and turned into metres again"},
    UsualSlip{1 / metres_per_yard, "yards printed as metres"},
    UsualSlip{0.5, "one of a pair, one of two strands, or the length per 100 g taken for 50 g"},
    UsualSlip{2, "counted twice, or the length per 50 g taken for 100 g"},
    UsualSlip{4 * grams_per_ounce / 100, "4 oz taken for 100 g"},
};

std::string others(const std::vector<const UsualSlip*>& fits) {
  std::vector<std::string> words;
  for (std::size_t i = 1; i < fits.size(); ++i)
    words.push_back(show_short(fits[i]->factor, 3) + " (" + std::string(fits[i]->meaning) + ")");
  return join(words, "; ");
}

Finding& slip_finding(const ReviewInput& input, Findings& findings, const RoleFigures& role,
                      const Statement& list, const std::vector<const UsualSlip*>& fits) {
  const UsualSlip& slip = *fits.front();
  Finding& finding = findings.add("the whole list is off by a factor of " + show_short(slip.factor, 3) +
                                  ": " + printed_words(input.printed, list));
  finding.roles = {role.printed->label};
  show(finding, input.printed, list);
  finding.query = "The figures of " + role.printed->label + ", " + printed_words(input.printed, list) +
                  ", are " + show_short(slip.factor, 3) +
                  " times what the pieces take: " + std::string(slip.meaning) + "?";
  return finding;
}

// Lists of skeins: as many as the need by the factor would take, where the need itself takes others.
void factor_of_counts(const ReviewInput& input, Findings& findings, const RoleFigures& role) {
  if (!role.printed->count || !role.skein_m) return;
  const FindingWords words(input);
  const std::size_t n = input.printed.sizes();
  std::vector<double> planned;
  std::vector<int> printed;
  std::size_t off = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const auto stated = role.printed_skeins(i);
    const auto needed = role.skeins_needed(i);
    if (!stated || !needed) return;
    planned.push_back(role.need_at(i)->planned.value());
    printed.push_back(static_cast<int>(std::lround(*stated)));
    off += printed.back() != *needed ? 1 : 0;
  }
  if (off < 2) return;
  std::vector<const UsualSlip*> fits;
  for (const UsualSlip& slip : usual_slips) {
    bool all = true;
    for (std::size_t i = 0; i < n && all; ++i)
      all = static_cast<int>(std::ceil(slip.factor * planned[i] / *role.skein_m - 1e-9)) == printed[i];
    if (all) fits.push_back(&slip);
  }
  if (fits.empty()) return;
  Finding& finding = slip_finding(input, findings, role, *role.printed->count->statement, fits);
  std::vector<std::string> sizes{"size"}, stated{"printed"}, by_slip{"by the factor"}, needed{"needed"};
  for (std::size_t i = 0; i < n; ++i) {
    sizes.push_back(input.printed.size_labels()[i]);
    stated.push_back(std::to_string(printed[i]));
    by_slip.push_back(words.number(fits.front()->factor * planned[i] / *role.skein_m, 2));
    needed.push_back(words.number(planned[i] / *role.skein_m, 2));
    const auto wanted = *role.skeins_needed(i);
    if (wanted == printed[i]) continue;
    add_size(finding, input.printed, i);
    const PrintedList& list = *role.printed->count;
    if (list.printed == n) propose(finding, input.printed, value_at(list, i)->span, std::to_string(wanted));
  }
  finding.evidence = in_columns({sizes, stated, by_slip, needed});
  if (fits.size() > 1) finding.evidence.push_back("would fit, too: " + others(fits));
}

// One length a size, in metres as printed.
struct StatedLengths {
  const Statement* list = nullptr;
  std::vector<std::size_t> sizes;
  std::vector<double> metres;
};

StatedLengths stated_lengths(const ReviewInput& input, const RoleFigures& role) {
  StatedLengths stated;
  for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
    const auto supply = printed_supply(input, role, i);
    if (!supply || supply->skeins || !role.need_at(i)) continue;
    stated.list = supply->statement;
    stated.sizes.push_back(i);
    stated.metres.push_back(supply->metres);
  }
  if (!stated.sizes.empty()) return stated;
  for (const Statement* note : role.printed->notes) {
    if (note->values.size() < 2 || (note->unit != PrintedUnit::metre && note->unit != PrintedUnit::yard))
      continue;
    const PrintedList list = input.printed.list(*note);
    for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
      const PrintedValue* value = value_at(list, i);
      if (value == nullptr || !value->number || !role.need_at(i)) continue;
      stated.sizes.push_back(i);
      stated.metres.push_back(*value->number * (note->unit == PrintedUnit::yard ? metres_per_yard : 1));
    }
    stated.list = note;
    return stated;
  }
  return stated;
}

void factor_of_lengths(const ReviewInput& input, Findings& findings, const RoleFigures& role) {
  const FindingWords words(input);
  const StatedLengths stated = stated_lengths(input, role);
  if (stated.sizes.empty()) return;
  const double near = input.need.constant_of("review_factor_pct") / 100;
  constexpr double well_known = 0.03;
  const SizeNeed& first = *role.need_at(stated.sizes.front());
  const double error = (first.high - first.low).value() / (2 * first.planned.value());
  if (stated.sizes.size() < 2 && error > well_known) return;
  using Layer = double (*)(const SizeNeed&);
  constexpr Layer layers[] = {[](const SizeNeed& need) { return need.planned.value(); },
                              [](const SizeNeed& need) { return (need.knitted + need.swatch).value(); },
                              [](const SizeNeed& need) { return need.knitted.value(); }};
  const auto all_near = [&](Layer layer, double factor, double tolerance) {
    for (std::size_t i = 0; i < stated.sizes.size(); ++i)
      if (std::abs(stated.metres[i] / layer(*role.need_at(stated.sizes[i])) / factor - 1) > tolerance)
        return false;
    return true;
  };
  // A list of the need itself, in any of its layers, is no slip.
  for (const Layer layer : layers)
    if (all_near(layer, 1, well_known)) return;
  std::vector<const UsualSlip*> fits;
  for (const UsualSlip& slip : usual_slips)
    if (all_near(layers[0], slip.factor, near) || all_near(layers[2], slip.factor, near))
      fits.push_back(&slip);
  if (fits.empty()) return;
  Finding& finding = slip_finding(input, findings, role, *stated.list, fits);
  finding.apart = "length";
  for (std::size_t i = 0; i < stated.sizes.size(); ++i) {
    const SizeNeed& need = *role.need_at(stated.sizes[i]);
    add_size(finding, input.printed, stated.sizes[i]);
    finding.evidence.push_back("size " + finding.sizes.back() + ": " + words.metres(stated.metres[i]) +
                               " ÷ " + words.metres(need.planned.value()) +
                               " planned = " + words.number(stated.metres[i] / need.planned.value(), 3));
  }
  if (fits.size() > 1) finding.evidence.push_back("would fit, too: " + others(fits));
}

// The plain cloth of the pattern: the first fabric of stocking stitch with both counts.
std::optional<double> plain_density(const Pattern& pattern) {
  for (const Fabric& fabric : pattern.fabrics)
    if (fabric.structure == Structure::plain)
      if (const auto density = stitches_per_cm2(fabric.gauge)) return *density;
  return std::nullopt;
}

// Yarn in a size over all colours: the planned length where it is known for all, else what the counts allow.
struct YarnOfSize {
  double low = 0, high = 0;
  bool planned = true;
  bool known = false;
};
YarnOfSize yarn_of_size(const std::vector<RoleFigures>& roles, std::size_t size) {
  YarnOfSize yarn;
  const auto all = [&](auto&& test) { return std::all_of(roles.begin(), roles.end(), test); };
  yarn.planned = all([&](const RoleFigures& role) { return role.need_at(size) != nullptr; });
  if (yarn.planned) {
    for (const RoleFigures& role : roles) yarn.low += role.need_at(size)->planned.value();
    yarn.high = yarn.low;
    yarn.known = !roles.empty();
    return yarn;
  }
  yarn.known = !roles.empty() && all([&](const RoleFigures& role) {
    return role.printed_skeins(size).has_value() && role.skein_m.has_value();
  });
  if (!yarn.known) return yarn;
  for (const RoleFigures& role : roles) {
    const double skeins = *role.printed_skeins(size);
    yarn.low += std::max(0.0, skeins - 1) * *role.skein_m;
    yarn.high += skeins * *role.skein_m;
  }
  return yarn;
}

}  // namespace

void check_n10(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const auto roles = role_figures(input);
  const auto density = plain_density(input.pattern);
  const bool thick =
      std::any_of(input.pattern.fabrics.begin(), input.pattern.fabrics.end(), [](const Fabric& fabric) {
        return fabric.structure == Structure::brioche || fabric.structure == Structure::slip_stitch;
      });
  if (thick) return;  // cloth of more than one layer takes what it takes
  const bool areas = std::any_of(input.assessment.area_m2.begin(), input.assessment.area_m2.end(),
                                 [](const auto& area) { return area.has_value(); });
  if (roles.empty() || !density || !areas) {
    findings.cannot(!density ? "no gauge of plain cloth with stitches and rows is in force"
                    : !areas ? "the area of no size is known"
                             : "no colours were read in the yarn block",
                    "a plain gauge, and the stitches of the pieces or finished measurements");
    return;
  }
  const double per_m2 = metres_per_square_metre(*density);
  const double low = input.need.constant_of("review_cloth_low"),
               high = input.need.constant_of("review_cloth_high");
  Finding* open = nullptr;
  for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
    const auto size = roles.front().in_force[i];
    const YarnOfSize yarn = yarn_of_size(roles, i);
    if (!size || !yarn.known || *size >= input.assessment.area_m2.size()) continue;
    const auto area = input.assessment.area_m2[*size];
    if (!area || !(*area > 0)) continue;
    const double least = low * per_m2 * *area, most = high * per_m2 * *area;
    if (yarn.high >= least && yarn.low <= most) continue;
    if (open == nullptr) {
      open = &findings.add("more or less yarn than the cloth can take");
      for (const RoleFigures& role : roles) {
        open->roles.push_back(role.printed->label);
        if (role.printed->count) show(*open, input.printed, *role.printed->count->statement);
      }
    }
    add_size(*open, input.printed, i);
    const std::string has = yarn.planned ? "planned " + words.metres(yarn.low)
                                         : "more than " + words.metres(yarn.low) + " and at most " +
                                               words.metres(yarn.high) + " by the counts";
    open->evidence.push_back("size " + open->sizes.back() + ": " + has + "; " + words.number(*area, 3) +
                             " m² of this cloth take " + words.number(least, 0) + "–" +
                             words.metres(std::round(most)));
  }
  if (open != nullptr)
    open->query = "The yarn of " + sizes_in_words(open->sizes) +
                  " does not fit its cloth: " + open->evidence.front() +
                  ". Was one size's figure used for all?";
}

void check_n14(const ReviewInput& input, Findings& findings) {
  std::vector<std::string> without;
  const auto roles = role_figures(input);
  for (const RoleFigures& role : roles) {
    bool known = false;
    for (std::size_t i = 0; i < input.printed.sizes(); ++i) known = known || role.need_at(i) != nullptr;
    if (!known) without.push_back(role.printed->label);
    factor_of_counts(input, findings, role);
    factor_of_lengths(input, findings, role);
  }
  if (roles.empty() || !without.empty())
    findings.cannot(
        roles.empty() ? "no colours were read in the yarn block" : "no need is known for " + listed(without),
        "the stitches of its pieces, or a weighed sample");
}

void check_n17(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const double most = input.need.constant_of("review_growth_high");
  const auto& areas = input.assessment.area_m2;
  std::vector<std::string> without;
  const auto roles = role_figures(input);
  for (const RoleFigures& role : roles) {
    std::optional<std::size_t> first, last;
    for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
      if (role.need_at(i) == nullptr || *role.in_force[i] >= areas.size() || !areas[*role.in_force[i]])
        continue;
      if (!first) first = i;
      last = i;
    }
    if (!first) {
      without.push_back(role.printed->label);
      continue;
    }
    const double growth = *areas[*role.in_force[*last]] / *areas[*role.in_force[*first]];
    // Sizes of nearly one area say nothing about growth.
    if (!(growth > 1.05)) continue;
    const double need = role.need_at(*last)->knitted / role.need_at(*first)->knitted;
    const double exponent = std::log(need) / std::log(growth);
    if (exponent >= 0 && exponent <= most) continue;
    Finding& finding = findings.add("grows otherwise than cloth does, exponent " + words.number(exponent, 2));
    finding.roles = {role.printed->label};
    add_size(finding, input.printed, *first);
    add_size(finding, input.printed, *last);
    if (role.printed->role != nullptr) show(finding, input.printed, *role.printed->role);
    finding.evidence = {
        "knitted " + words.metres(role.need_at(*first)->knitted.value()) + " → " +
            words.metres(role.need_at(*last)->knitted.value()) + ", × " + words.number(need, 3),
        "area " + words.number(*areas[*role.in_force[*first]], 3) + " → " +
            words.number(*areas[*role.in_force[*last]], 3) + " m², × " + words.number(growth, 3),
        "ln " + words.number(need, 3) + " ÷ ln " + words.number(growth, 3) + " = " +
            words.number(exponent, 2) + "; usual is 0 to " + words.number(most, 1)};
    finding.query = "From size " + finding.sizes.front() + " to size " + finding.sizes.back() +
                    " the need of " + role.printed->label + " grows × " + words.number(need, 2) +
                    " and the cloth × " + words.number(growth, 2) +
                    ". Is a piece counted for one size alone?";
  }
  if (roles.empty() || !without.empty())
    findings.cannot(roles.empty() ? "no colours were read in the yarn block"
                                  : "need and area are not both known for " + listed(without),
                    "the stitches of the pieces and a gauge");
}

void check_n19(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  if (input.pattern.charts.empty()) {
    findings.cannot("no chart is known", "the chart");
    return;
  }
  const double each = input.need.constant_of("entry_m");
  const double least = input.need.constant_of("review_entries_pct") / 100;
  for (const RoleFigures& role : role_figures(input)) {
    if (role.fact == nullptr || role.fact->charge_entries) continue;
    long entries = 0;
    for (const PartUse& use : input.need.parts_of(role.fact->id)) {
      const Chart* chart = use.section != nullptr && use.section->source == StitchSource::chart
                               ? input.pattern.chart(use.section->chart)
                               : nullptr;
      if (chart == nullptr) continue;
      const ChartCensus& counted = input.need.census_of(chart->id);
      for (const char symbol : symbols_of(*chart, role.fact->id))
        if (const auto found = counted.symbols.find(symbol); found != counted.symbols.end())
          entries += found->second.entries * use.piece->copies;
    }
    const double length = static_cast<double>(entries) * each;
    std::optional<std::size_t> worst;
    for (std::size_t i = 0; i < input.printed.sizes(); ++i)
      if (const SizeNeed* need = role.need_at(i); need != nullptr && length >= least * need->knitted.value())
        if (!worst || need->knitted < role.need_at(*worst)->knitted) worst = i;
    if (entries == 0 || !worst) continue;
    Finding& finding = findings.add("ends that are not counted: " + words.metres(length));
    finding.roles = {role.printed->label};
    if (role.printed->role != nullptr) show(finding, input.printed, *role.printed->role);
    const double share = length / role.need_at(*worst)->knitted.value();
    finding.evidence = {
        std::to_string(entries) + " entries × " + words.number(each, 2) + " m = " + words.metres(length),
        words.percent(share) + " of the colour in size " + input.printed.size_labels()[*worst]};
    finding.query = role.printed->label + " is begun anew " + std::to_string(entries) + " times, " +
                    words.metres(length) + " in ends or " + words.percent(share) +
                    " of it. Is it carried, or should the ends be counted?";
  }
}

}  // namespace skeinproof
