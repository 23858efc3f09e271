// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/role_parts.h"

#include <algorithm>
#include <cmath>

#include "core/need/stitch_counts.h"

namespace skeinproof {
namespace {

// What one copy of a part asks of one role, before it is turned into metres.
struct PartCounts {
  double stitches = 0;
  double passed = 0;
  double extra_m = 0;
  double link_share = 0;  // of the stitches: intarsia links
  std::string missing;
};

// Works out one part and, where asked, writes its step.
class PartWork {
 public:
  PartWork(const NeedContext& context, const Role& role, const PartsWanted& wanted, const PartUse& use,
           Step* step, const NumberStyle& style)
      : context_(context), role_(role), wanted_(wanted), use_(use), step_(step), style_(style) {}

  // Copies of the piece that count here.
  double copies() const {
    if (wanted_.only == nullptr || wanted_.only->empty()) return use_.piece->copies;
    for (const WeighedCopies& weighed : *wanted_.only)
      if (weighed.piece == use_.piece->id) return weighed.copies;
    return 0;
  }

  PartCounts counts() {
    if (use_.edge != nullptr) return edge_counts();
    switch (use_.section->source) {
      case StitchSource::chart:
        return chart_counts();
      default:
        return use_.section->colouring == Colouring::stripes ? stripe_counts() : plain_counts();
    }
  }

  FabricId fabric() const { return use_.section != nullptr ? use_.section->fabric : use_.edge->fabric; }
  std::string name() const {
    const std::string& own = use_.section != nullptr ? use_.section->name : use_.edge->name;
    if (own.empty() || own == use_.piece->name) return use_.piece->name;
    return use_.piece->name.empty() ? own : use_.piece->name + ", " + own;
  }
  StepPlace place() const {
    return {"Pieces", use_.section != nullptr ? use_.section->id.value : use_.edge->id.value};
  }

 private:
  std::string number(double value, int decimals = 2) const {
    return show_number(value, value == std::floor(value) ? 0 : decimals, style_);
  }
  Step* part(std::string label, std::string how, double figure, FigureUnit unit, int decimals,
             Ground ground) {
    if (step_ == nullptr) return nullptr;
    Step made;
    made.label = std::move(label);
    made.how = std::move(how);
    made.figure = figure;
    made.unit = unit;
    made.decimals = decimals;
    made.ground = ground;
    made.place = place();
    step_->parts.push_back(std::move(made));
    return &step_->parts.back();
  }

  PartCounts plain_counts() {
    PartCounts counts;
    Step stitches;
    const StitchCount count =
        section_stitches(*use_.section, wanted_.size_index, step_ != nullptr ? &stitches : nullptr, style_);
    counts.missing = count.missing;
    counts.stitches = count.stitches.value_or(0);
    if (step_ != nullptr) step_->parts.push_back(std::move(stitches));
    return counts;
  }

  PartCounts stripe_counts() {
    PartCounts counts;
    const Section& section = *use_.section;
    counts.missing = section_stitches(section, wanted_.size_index).missing;
    if (!counts.missing.empty()) return counts;
    const auto shares = stripe_shares(section, wanted_.size_index);
    const auto mine =
        std::find_if(shares.begin(), shares.end(), [&](const StripeShare& s) { return s.role == role_.id; });
    if (mine == shares.end()) {
      counts.missing = "its stripes";
      return counts;
    }
    counts.stitches = mine->stitches;
    part("Stitches", "in stripes", mine->stitches, FigureUnit::stitches, 0, Ground::sheet);
    if (section.stripe_change == StripeChange::cut) {
      const double each = context_.constant_of("stripe_cut_m");
      counts.extra_m = mine->stripes * each;
      part("Cut stripes", number(mine->stripes) + " × " + number(each) + " m", counts.extra_m,
           FigureUnit::metres, 2, Ground::sheet);
    } else if (section.stripe_change == StripeChange::carried) {
      counts.extra_m = mine->passed_rows * row_height_m();
      part("Carried up", number(mine->passed_rows) + " rows", counts.extra_m, FigureUnit::metres, 2,
           Ground::sheet);
    }
    return counts;
  }

  double row_height_m() const {
    const Fabric* fabric_of = context_.pattern().fabric(use_.section->fabric);
    if (fabric_of == nullptr || !fabric_of->gauge.rows || fabric_of->gauge.rows->value <= 0) return 0;
    return fabric_of->gauge.over.value.value() / fabric_of->gauge.rows->value / 100;
  }

  PartCounts chart_counts() {
    PartCounts counts;
    const Chart* chart = context_.pattern().chart(use_.section->chart);
    const auto* repeats = use_.section->repeats.find(wanted_.size_index);
    if (chart == nullptr) counts.missing = "its chart";
    if (counts.missing.empty() && repeats == nullptr) counts.missing = "its repeats";
    if (!counts.missing.empty()) return counts;
    const Fabric* fabric_of = context_.pattern().fabric(use_.section->fabric);
    const bool intarsia = fabric_of != nullptr && fabric_of->structure == Structure::intarsia;
    const ChartCensus& counted = context_.census_of(chart->id);
    SymbolCount mine;
    long areas = 0;
    for (char symbol : symbols_of(*chart, role_.id)) {
      if (const auto found = counted.symbols.find(symbol); found != counted.symbols.end()) {
        mine.stitches += found->second.stitches;
        mine.passed += found->second.passed;
        mine.entries += found->second.entries;
      }
      const auto& areas_of_chart = context_.areas_of(chart->id);
      if (const auto found = areas_of_chart.find(symbol); found != areas_of_chart.end())
        areas += found->second;
    }
    counts.stitches = static_cast<double>(mine.stitches) * repeats->value;
    counts.passed = intarsia ? 0 : static_cast<double>(mine.passed) * repeats->value;
    counts.link_share = intarsia ? context_.constant_of("intarsia_link_pct") / 100 : 0;
    part("Repeats", "of the chart " + quoted_name(*chart), repeats->value, FigureUnit::repeats, 1,
         Ground::sheet);
    part("Stitches", number(static_cast<double>(mine.stitches)) + " a repeat", counts.stitches,
         FigureUnit::stitches, 0, Ground::chart);
    if (counts.passed > 0)
      part("Passed stitches", number(static_cast<double>(mine.passed)) + " a repeat", counts.passed,
           FigureUnit::stitches, 0, Ground::chart);
    // An entry is one new end for the whole round; in intarsia every area of every repeat has its own.
    if (intarsia)
      charge_ends(counts, "Areas", static_cast<double>(areas) * repeats->value);
    else
      charge_ends(counts, "Colour entries", static_cast<double>(mine.entries));
    return counts;
  }

  void charge_ends(PartCounts& counts, const char* label, double ends) {
    if (!role_.charge_entries || ends == 0) return;
    const double each = context_.constant_of("entry_m");
    counts.extra_m = ends * each;
    part(label, number(ends) + " × " + number(each) + " m", counts.extra_m, FigureUnit::metres, 2,
         Ground::chart);
  }

  static std::string quoted_name(const Chart& chart) { return "“" + chart.name + "”"; }

  PartCounts edge_counts() {
    PartCounts counts;
    const Edge& edge = *use_.edge;
    const auto* amount = edge.amount.find(wanted_.size_index);
    if (amount == nullptr) {
      counts.missing =
          edge.kind == EdgeKind::cast_on || edge.kind == EdgeKind::bind_off ? "its stitches" : "its length";
      return counts;
    }
    switch (edge.kind) {
      case EdgeKind::cast_on:
      case EdgeKind::bind_off: {
        const auto rate = stitch_rate_cm();
        if (!rate) {
          counts.missing = "its yarn a stitch, or a fabric with a gauge";
          return counts;
        }
        counts.extra_m = amount->value * *rate / 100;
        part("Stitches", "typed", amount->value, FigureUnit::stitches, 0, Ground::sheet);
        part("Yarn a stitch", edge.rate ? "typed" : "stitch widths", *rate, FigureUnit::centimetres, 2,
             Ground::sheet);
        return counts;
      }
      case EdgeKind::seam: {
        const double ratio = edge.rate ? edge.rate->value : context_.constant_of("seam_ratio");
        counts.extra_m = amount->value * ratio / 100;
        part("Seam", "typed", amount->value, FigureUnit::centimetres, 1, Ground::sheet);
        part("Yarn for a length of seam", edge.rate ? "typed" : "usual", ratio, FigureUnit::ratio, 2,
             Ground::sheet);
        return counts;
      }
      case EdgeKind::ends:
      case EdgeKind::other:
        counts.extra_m = amount->value;
        part("Length", "typed", amount->value, FigureUnit::metres, 2, Ground::sheet);
        return counts;
    }
    return counts;
  }

  std::optional<double> stitch_rate_cm() const {
    if (use_.edge->rate) return use_.edge->rate->value;
    const FabricLoop& loop = context_.loop_of(use_.edge->fabric);
    if (!loop.stitch_width) return std::nullopt;
    return loop.stitch_width->value() * context_.constant_of("cast_on_widths");
  }

  const NeedContext& context_;
  const Role& role_;
  const PartsWanted& wanted_;
  const PartUse& use_;
  Step* step_;
  const NumberStyle& style_;
};

// The loop in force as a step: calibrated by a sample, or as the fabric has it.
Step loop_step(const NeedContext& context, const Role& role, FabricId id, const PartsWanted& wanted,
               const NumberStyle& style) {
  Step base;
  const Fabric* fabric = context.pattern().fabric(id);
  if (fabric != nullptr) fabric_loop(context.pattern(), *fabric, context.main_yarn_of(id), &base, style);
  if (wanted.calibration == nullptr) return base;
  Step calibrated;
  calibrated.label = "Loop length ℓ";
  calibrated.figure = base.figure * wanted.loop_factor;
  calibrated.unit = FigureUnit::centimetres;
  calibrated.decimals = 4;
  calibrated.how = show_number(base.figure, 3, style) + " cm × " + show_number(wanted.loop_factor, 4, style);
  calibrated.place = {"Weighings", role.id.value};
  calibrated.parts = {base, *wanted.calibration};
  return calibrated;
}

void write_part_step(Step& step, const PartWork& work, const PartCounts& counts, double copies,
                     double strands, const FabricLoop& loop, double factor, const PartMetres& metres_of_part,
                     const NumberStyle& style) {
  step.label = work.name();
  step.figure = metres_of_part.total().value();
  step.unit = FigureUnit::metres;
  step.place = work.place();
  std::string how;
  const auto add = [&](const std::string& words) { how += (how.empty() ? "" : " + ") + words; };
  if (counts.stitches > 0 && loop.loop)
    add(show_number(counts.stitches, 0, style) + " sts × " +
        show_number(loop.loop->value() * factor, 3, style) + " cm");
  if (counts.passed > 0)
    add(show_number(counts.passed, 0, style) + " passed × " +
        show_number(loop.float_per_stitch.value(), 2, style) + " cm");
  if (counts.extra_m > 0) add(show_number(counts.extra_m, 2, style) + " m");
  const double times = copies * strands;
  if (times != 1) how = show_number(times, 0, style) + " × (" + how + ")";
  step.how = how;
}

}  // namespace

RoleParts role_parts(const NeedContext& context, const Role& role, const PartsWanted& wanted, Step* step,
                     const NumberStyle& style) {
  RoleParts sum;
  double error_metres = 0;
  for (const PartUse& use : context.parts_of(role.id)) {
    Step part_step;
    Step* sink = step != nullptr ? &part_step : nullptr;
    PartWork work(context, role, wanted, use, sink, style);
    const double copies = work.copies();
    if (copies == 0) continue;
    const PartCounts counts = work.counts();
    const FabricLoop& loop = context.loop_of(work.fabric());
    std::string missing = counts.missing;
    if (missing.empty() && counts.stitches > 0 && !loop.loop) missing = loop.missing;
    if (!missing.empty()) {
      if (sum.missing.empty()) {
        sum.missing = work.name() + " needs " + missing;
        sum.missing_place = work.place();
      }
      continue;
    }
    sum.worked_out = true;
    if (counts.stitches == 0 && counts.extra_m == 0) continue;
    const double times = copies * role.strands;
    const double loop_cm = loop.loop ? loop.loop->value() * wanted.loop_factor : 0;
    PartMetres metres_of_part;
    metres_of_part.piece = use.piece->id;
    if (use.section != nullptr) metres_of_part.section = use.section->id;
    if (use.edge != nullptr) metres_of_part.edge = use.edge->id;
    metres_of_part.stitches = metres(times * counts.stitches * (1 + counts.link_share) * loop_cm / 100);
    metres_of_part.floats = metres(times * counts.passed * loop.float_per_stitch.value() / 100);
    metres_of_part.extra = metres(times * counts.extra_m);
    if (sink != nullptr) {
      write_part_step(*sink, work, counts, copies, role.strands, loop, wanted.loop_factor, metres_of_part,
                      style);
      if (counts.stitches > 0) sink->parts.push_back(loop_step(context, role, work.fabric(), wanted, style));
      step->parts.push_back(std::move(part_step));
    }
    sum.stitches += metres_of_part.stitches;
    sum.floats += metres_of_part.floats;
    sum.extra += metres_of_part.extra;
    error_metres += metres_of_part.total().value() * loop.error;
    if (counts.stitches > 0) {
      sum.all_loops_typed = sum.all_loops_typed && loop.typed;
      if (sum.error_because.empty()) sum.error_because = loop.because;
    }
    sum.parts.push_back(metres_of_part);
  }
  if (const double total = sum.total().value(); total > 0) sum.error = error_metres / total;
  return sum;
}

}  // namespace skeinproof
