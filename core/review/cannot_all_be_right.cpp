// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/cannot_all_be_right.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/base/text.h"
#include "core/reference/lookup.h"
#include "core/review/check_bench.h"
#include "core/review/contradictions.h"
#include "core/review/printed_measures.h"
#include "core/review/printed_words.h"
#include "core/review/role_figures.h"
#include "core/units/quantity.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

using Interval = IntervalSystem::Interval;

Interval around(double value, double half, double factor = 1) {
  return {std::max(0.0, (value - half) * factor), (value + half) * factor};
}

// One thing that several figures speak of.
struct Case {
  std::string about, size;
  IntervalSystem system;
  std::vector<DoubtedFigure> figures;  // by number of the statement
  std::vector<std::size_t> quantity;   // that each speaks of
  std::vector<double> factor;          // its unit in the unit of the system
  std::vector<std::string> unit;
  // What the first quantity would be by arithmetic alone, best first; said where it fits.
  std::vector<double> likely;

  void state(std::size_t of, Interval within, DoubtedFigure figure, std::string in, double in_units = 1) {
    if (system.state(of, within) == IntervalSystem::most_statements) return;
    figures.push_back(std::move(figure));
    quantity.push_back(of);
    factor.push_back(in_units);
    unit.push_back(std::move(in));
  }
};

std::string singular(const std::string& figure, const std::string& unit) {
  return figure == "1" && unit == "skeins" ? "skein" : unit;
}

// A figure of an interval: a likely one that lies in it, else the roundest: a whole one, or one of few
// decimals.
std::string figure_in(const Interval& left, double factor, const std::vector<double>& likely) {
  for (const double value : likely)
    if (value >= left.low && value <= left.high) return show_short(value / factor, 1);
  const double low = left.low / factor, high = left.high / factor;
  if (!std::isfinite(high)) return low > 0 ? "at least " + show_short(low, 1) : "";
  for (const double step : {1.0, 0.5, 0.25, 0.1, 0.05, 0.01}) {
    const double nearest = std::round((low + high) / 2 / step) * step;
    for (const double value : {nearest, nearest + step, nearest - step})
      if (value >= low - 1e-9 && value <= high + 1e-9) return show_short(value, 2);
  }
  return show_short((low + high) / 2, 2);
}

class Cases {
 public:
  Cases(const ReviewInput& input, std::size_t most_steps) : input_(input), steps_(most_steps) {}

  CannotAllBeRight run() {
    widths();
    skeins();
    put_ups();
    fibres();
    needles();
    std::stable_sort(found_.contradictions.begin(), found_.contradictions.end(),
                     [](const Contradiction& a, const Contradiction& b) { return place(a) < place(b); });
    return std::move(found_);
  }

 private:
  static std::size_t place(const Contradiction& one) {
    std::size_t first = std::string::npos;
    for (const DoubtedFigure& figure : one.figures)
      if (!figure.place.empty()) first = std::min(first, figure.place.begin);
    return first;
  }

  DoubtedFigure printed(const Statement& statement, const PrintedValue& value, std::string unit,
                        std::string source) const {
    const std::string words = tidy_spaces(input_.printed.words(value));
    return {unit.empty() ? words : words + " " + singular(words, unit), std::move(source), value.span,
            input_.printed.index(statement)};
  }

  // The measurement of every size in both units, and the stitches and the gauge that make it.
  void widths() {
    const auto gauges = printed_gauges(input_.printed);
    const auto all = stitch_widths(input_);
    for (const PrintedMeasure& measure : printed_measures(input_.printed)) {
      const auto fit =
          measure.around() && !measure.to_fit() ? fit_of(input_, measure, gauges, all) : std::nullopt;
      for (std::size_t i = 0; i < input_.printed.sizes(); ++i) width(measure, fit, i);
    }
  }

  void width(const PrintedMeasure& measure, const std::optional<MeasureFit>& fit, std::size_t i) {
    const std::string size = input_.printed.size_labels()[i];
    Case one{measure.subject + ", size " + size, size, {}, {}, {}, {}, {}, {}};
    const std::size_t cm = one.system.add_quantity();
    const auto say = [&](const std::optional<PrintedList>& list, const char* unit, double factor) {
      const PrintedValue* value = list && i < list->values.size() ? list->values[i] : nullptr;
      if (value != nullptr && value->number)
        one.state(cm, around(*value->number, finest_half_step(*list), factor),
                  printed(*list->statement, *value, unit, one.about), unit, factor);
    };
    say(measure.cm, "cm", 1);
    say(measure.inches, "in", centimetres_per_inch);
    if (one.figures.empty()) return;
    const auto stitches = fit && i < fit->widths.stitches.size() ? fit->widths.stitches[i] : std::nullopt;
    if (stitches) {
      const std::size_t across = one.system.add_quantity(), density = one.system.add_quantity();
      one.system.product(across, cm, density, fit_slack_cm(measure, fit->stitches_per_cm));
      if (fit->cm[i]) one.likely.push_back(*fit->cm[i]);
      const double all = *stitches * fit->times;
      const std::string words = show_short(all, 1) + " sts";
      if (fit->widths.printed)
        one.state(
            across, around(all, 0),
            {words, fit->widths.name, fit->widths.printed->span, input_.printed.index(*fit->widths.printed)},
            "sts");
      else
        one.state(across, around(all, 0), {words, "need sheet: " + fit->widths.name, {}, {}}, "sts");
      gauge(one, density, *fit);
    }
    judge(one);
  }

  void gauge(Case& one, std::size_t density, const MeasureFit& fit) {
    if (fit.gauge == nullptr) {
      one.state(density, around(fit.stitches_per_cm, 0),
                {show_short(10 * fit.stitches_per_cm, 1) + " sts/10 cm", "gauge in force", {}, {}}, "sts/cm");
      return;
    }
    const PrintedValue& value = fit.gauge->stitches->values.front();
    const double half = value.half_step / fit.gauge->over_cm;
    one.state(density, around(fit.stitches_per_cm, half),
              {show_short(*fit.gauge->stitches_per_10_cm(), 1) + " sts/10 cm", "gauge", value.span,
               input_.printed.index(*fit.gauge->stitches)},
              "sts/10 cm", 0.1);
  }

  // The skeins of every role, their sum, and what the need sheet asks for.
  void skeins() {
    const auto roles = role_figures(input_);
    const auto total = input_.printed.total();
    for (std::size_t i = 0; i < input_.printed.sizes(); ++i) {
      const std::string size = input_.printed.size_labels()[i];
      Case one{"skeins of size " + size, size, {}, {}, {}, {}, {}, {}};
      std::vector<IntervalSystem::Term> terms;
      std::map<const Statement*, std::size_t> put_ups;  // one quantity for all roles of a yarn
      bool all_known = total.has_value();
      for (const RoleFigures& role : roles) {
        if (!role.printed->count) continue;
        const PrintedValue* value = value_at(*role.printed->count, i);
        if (value == nullptr || !value->number) {
          all_known = false;
          continue;
        }
        const std::size_t count = one.system.add_quantity();
        one.state(count, around(*value->number, 0),
                  printed(*role.printed->count->statement, *value, "skeins", role.printed->label), "skeins");
        terms.push_back({1, count});
        need(one, role, i, count, put_ups);
      }
      const PrintedValue* sum = total && i < total->values.size() ? total->values[i] : nullptr;
      if (all_known && sum != nullptr && sum->number && !terms.empty()) {
        const std::size_t all = one.system.add_quantity();
        one.state(all, around(*sum->number, 0), printed(*total->statement, *sum, "skeins", "total"),
                  "skeins");
        terms.push_back({-1, all});
        one.system.sum(std::move(terms), {0, 0});
      }
      judge(one);
    }
  }

  // count x length of a skein is at least the knitted length and the swatch.
  void need(Case& one, const RoleFigures& role, std::size_t size, std::size_t count,
            std::map<const Statement*, std::size_t>& put_ups) {
    const SizeNeed* need = role.need_at(size);
    if (need == nullptr || role.printed->yarn < 0) return;
    const auto& yarn = input_.printed.yarns().at(static_cast<std::size_t>(role.printed->yarn));
    const Statement* length = nullptr;
    for (const Statement* statement : yarn.lengths)
      if (!statement->values.empty() && statement->values.front().number &&
          (length == nullptr || (length->unit == PrintedUnit::yard && statement->unit == PrintedUnit::metre)))
        length = statement;
    if (length == nullptr) return;
    const auto [skein, fresh] = put_ups.try_emplace(length, 0);
    if (fresh) {
      const bool yards = length->unit == PrintedUnit::yard;
      const double factor = yards ? metres_per_yard : 1;
      const PrintedValue& value = length->values.front();
      skein->second = one.system.add_quantity();
      one.state(skein->second, around(*value.number, value.half_step, factor),
                printed(*length, value, yards ? "yd" : "m", "put-up"), yards ? "yd" : "m", factor);
    }
    const std::size_t supply = one.system.add_quantity(), asked = one.system.add_quantity();
    one.system.product(supply, count, skein->second);
    const double metres = need->knitted.value() + need->swatch.value();
    one.state(
        asked, {metres, metres},
        {show_short(metres, 1) + " m", "need sheet: " + role.printed->label + " knitted and swatch", {}, {}},
        "m");
    one.system.sum({{1, supply}, {-1, asked}}, {0, std::numeric_limits<double>::infinity()});
  }

  // Each breath of a put-up in its units.
  void put_ups() {
    for (const PrintedYarn& yarn : input_.printed.yarns())
      for (const auto* statements : {&yarn.lengths, &yarn.weights}) {
        const std::string about = (yarn.name.empty() ? "" : yarn.name + ", ") +
                                  (statements == &yarn.lengths ? "length of a skein" : "weight of a skein");
        Case one{about, "", {}, {}, {}, {}, {}, {}};
        const std::size_t quantity = one.system.add_quantity();
        for (const Statement* statement : *statements) {
          const auto factor = factor_of(statement->unit);
          if (!factor || statement->values.empty() || !statement->values.front().number) continue;
          const PrintedValue& value = statement->values.front();
          const std::string unit(word_of(statement->unit));
          one.state(quantity, around(*value.number, value.half_step, *factor),
                    printed(*statement, value, unit, about), unit, *factor);
        }
        judge(one);
      }
  }

  static std::optional<double> factor_of(PrintedUnit unit) {
    switch (unit) {
      case PrintedUnit::metre:
      case PrintedUnit::gram:
        return 1;
      case PrintedUnit::yard:
        return metres_per_yard;
      case PrintedUnit::ounce:
        return grams_per_ounce;
      default:
        return std::nullopt;
    }
  }

  void fibres() {
    for (const PrintedYarn& yarn : input_.printed.yarns()) {
      Case one{(yarn.name.empty() ? "" : yarn.name + ", ") + "fibre content", "", {}, {}, {}, {}, {}, {}};
      std::vector<IntervalSystem::Term> terms;
      bool known = !yarn.fibres.empty();
      int breath = known ? yarn.fibres.front()->mention : 0;
      for (const Statement* fibre : yarn.fibres) {
        if (fibre->mention != breath) continue;
        known = known && !fibre->values.empty() && fibre->values.front().number;
        if (!known) break;
        const std::size_t share = one.system.add_quantity();
        one.state(share, around(*fibre->values.front().number, 0),
                  printed(*fibre, fibre->values.front(), "% " + fibre->words, one.about), "%");
        terms.push_back({1, share});
      }
      if (!known) continue;
      one.system.sum(std::move(terms), {100, 100});
      judge(one);
    }
  }

  void needles() {
    std::size_t taken = 0;
    for (const Statement* metric : input_.printed.all(StatementKind::needle)) {
      if (metric->unit != PrintedUnit::millimetre || metric->values.empty() || !metric->values.front().number)
        continue;
      if (++taken > most_needles) break;
      const PrintedValue& value = metric->values.front();
      Case one{"needle " + std::string(input_.printed.words(value)) + " mm", "", {}, {}, {}, {}, {}, {}};
      const std::size_t mm = one.system.add_quantity();
      one.state(mm, around(*value.number, 0.005), printed(*metric, value, "mm", one.about), "mm");
      for (const Statement* other : input_.printed.mentioned_with(*metric)) {
        if (other->kind != StatementKind::needle || other->values.empty()) continue;
        const std::string name(input_.printed.words(other->values.front()));
        std::vector<const NeedleRow*> rows;
        if (other->unit == PrintedUnit::needle_us) rows = needles_by_us(name);
        if (other->unit == PrintedUnit::needle_uk) rows = needles_by_uk_old(name);
        if (other->unit == PrintedUnit::needle_japan) rows = needles_by_japan(name);
        // A name of several sizes, or a size that the table gives no name in this system, contradicts
        // nothing.
        if (rows.size() != 1 || !named_in(*value.number, other->unit)) continue;
        DoubtedFigure figure = printed(*other, other->values.front(), "", one.about);
        figure.words = std::string(word_of(other->unit)) + " " + figure.words;
        one.state(mm, around(rows.front()->mm, 0.005), std::move(figure), "mm");
      }
      judge(one);
    }
  }

  static bool named_in(double mm, PrintedUnit system) {
    const NeedleRow* row = needle_by_mm(mm);
    if (row == nullptr) return false;
    if (system == PrintedUnit::needle_us) return !row->us.text.empty();
    if (system == PrintedUnit::needle_uk) return !row->uk_old.text.empty();
    return !row->japan.text.empty();
  }

  void judge(const Case& one) {
    const std::size_t n = one.system.statements();
    if (n < 2) return;
    if (steps_ == 0) {
      found_.complete = false;
      return;
    }
    --steps_;
    const std::uint64_t all = n == 64 ? ~std::uint64_t{0} : (std::uint64_t{1} << n) - 1;
    if (one.system.consistent(all)) return;
    const std::size_t budget = std::min<std::size_t>(steps_, 20000);
    SmallestSets smallest = smallest_contradictions(one.system, budget);
    steps_ -= std::min(steps_, smallest.complete ? budget / 10 : budget);
    found_.complete = found_.complete && smallest.complete;
    if (!smallest.sets.empty()) report(one, std::move(smallest.sets), all);
  }

  void report(const Case& one, std::vector<std::uint64_t> sets, std::uint64_t all) {
    const auto members = [](std::uint64_t set) { return __builtin_popcountll(set); };
    std::stable_sort(sets.begin(), sets.end(),
                     [&](std::uint64_t a, std::uint64_t b) { return members(a) < members(b); });
    Contradiction found;
    found.about = one.about;
    found.size = one.size;
    std::uint64_t in_any = 0, in_all = all;
    for (const std::uint64_t set : sets) {
      in_any |= set;
      in_all &= set;
    }
    std::vector<std::size_t> index(one.figures.size());
    for (std::size_t i = 0; i < one.figures.size(); ++i)
      if (in_any >> i & 1) {
        index[i] = found.figures.size();
        found.figures.push_back(one.figures[i]);
      }
    for (const std::uint64_t set : sets) {
      found.sets.emplace_back();
      for (std::size_t i = 0; i < one.figures.size(); ++i)
        if (set >> i & 1) found.sets.back().push_back(index[i]);
    }
    if (members(in_all) == 1) {
      const auto dropped = static_cast<std::size_t>(__builtin_ctzll(in_all));
      std::vector<Interval> left;
      if (one.system.consistent(all & ~in_all, &left)) {
        found.drop = index[dropped];
        const std::size_t of = one.quantity[dropped];
        const std::string value =
            figure_in(left[of], one.factor[dropped], of == 0 ? one.likely : std::vector<double>{});
        if (!value.empty()) found.rest_agree_on = value + " " + singular(value, one.unit[dropped]);
      }
    }
    found_.contradictions.push_back(std::move(found));
  }

  static constexpr std::size_t most_needles = 200;
  const ReviewInput& input_;
  std::size_t steps_;
  CannotAllBeRight found_;
};

}  // namespace

CannotAllBeRight cannot_all_be_right(const ReviewInput& input, std::size_t most_steps) {
  return Cases(input, most_steps).run();
}

CannotAllBeRight cannot_all_be_right(const Pattern& pattern, const Assessment& assessment,
                                     std::size_t most_steps) {
  static const Draft none;
  const Draft& draft = pattern.draft() ? *pattern.draft() : none;
  const PrintedView printed(printed_text(pattern, assessment), draft.parts, draft.tellings, pattern);
  const CheckBench bench(pattern, assessment, printed);
  return cannot_all_be_right(bench.input(printed), most_steps);
}

}  // namespace skeinproof
