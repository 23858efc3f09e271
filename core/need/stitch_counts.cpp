// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/stitch_counts.h"

#include <algorithm>
#include <cmath>

namespace skeinproof {
namespace {

constexpr double most_rows =
    100000;  // no hand-knit has more; keeps a mistyped count from being walked row by row

struct RunFigures {
  double from = 0, to = 0, rows = 0;
  double stitches() const { return rows * (from + to) / 2; }
};

std::optional<RunFigures> run_figures(const ShapeRun& run, std::size_t size_index) {
  const auto* from = run.from.find(size_index);
  const auto* rows = run.rows.find(size_index);
  if (from == nullptr || rows == nullptr) return std::nullopt;
  const auto* to = run.to.find(size_index);
  return RunFigures{from->value, to == nullptr ? from->value : to->value, rows->value};
}

std::string run_words(const RunFigures& run, const NumberStyle& style) {
  const auto number = [&](double value) {
    return show_number(value, value == std::floor(value) ? 0 : 1, style);
  };
  if (run.from == run.to) return number(run.from) + " sts × " + number(run.rows) + " rows";
  return number(run.rows) + " rows × (" + number(run.from) + " + " + number(run.to) + ") ÷ 2";
}

// Deals the rows of the runs to the stripes, one piece of constant colour at a time.
class StripeDeal {
 public:
  explicit StripeDeal(const std::vector<Stripe>& stripes)
      : stripes_(stripes), left_(stripes.front().rows.value) {
    for (const Stripe& stripe : stripes)
      if (find(stripe.role) == nullptr) shares_.push_back(StripeShare{stripe.role, 0, 0, 0});
    last_row_.assign(shares_.size(), -1);
  }

  void deal(const RunFigures& run) {
    double done = 0;
    while (done < run.rows - 1e-9) {
      const double take = std::min(left_, run.rows - done);
      const double start = run.from + (run.to - run.from) * done / run.rows;
      const double end = run.from + (run.to - run.from) * (done + take) / run.rows;
      give(take, take * (start + end) / 2);
      done += take;
      left_ -= take;
      if (left_ <= 1e-9) next_stripe();
    }
  }
  std::vector<StripeShare> take() { return std::move(shares_); }

 private:
  StripeShare* find(RoleId role) {
    const auto found =
        std::find_if(shares_.begin(), shares_.end(), [&](const StripeShare& s) { return s.role == role; });
    return found == shares_.end() ? nullptr : &*found;
  }
  void give(double rows, double stitches) {
    StripeShare* share = find(stripes_[at_].role);
    double& last = last_row_[static_cast<std::size_t>(share - shares_.data())];
    if (fresh_) share->stripes += 1;
    if (last >= 0) share->passed_rows += row_ - last;
    share->stitches += stitches;
    row_ += rows;
    last = row_;
    fresh_ = false;
  }
  void next_stripe() {
    at_ = (at_ + 1) % stripes_.size();
    left_ = stripes_[at_].rows.value;
    fresh_ = true;
  }

  const std::vector<Stripe>& stripes_;
  std::vector<StripeShare> shares_;
  std::vector<double> last_row_;
  std::size_t at_ = 0;
  double left_;
  double row_ = 0;
  bool fresh_ = true;
};

bool can_be_dealt(const std::vector<Stripe>& stripes) {
  return !stripes.empty() && std::all_of(stripes.begin(), stripes.end(),
                                         [](const Stripe& stripe) { return stripe.rows.value >= 0.5; });
}

std::vector<StripeShare> in_proportion(const Section& section, double stitches) {
  double rows = 0;
  for (const Stripe& stripe : section.stripes) rows += stripe.rows.value;
  std::vector<StripeShare> shares;
  for (const Stripe& stripe : section.stripes) {
    auto found = std::find_if(shares.begin(), shares.end(),
                              [&](const StripeShare& s) { return s.role == stripe.role; });
    if (found == shares.end()) found = shares.insert(shares.end(), StripeShare{stripe.role, 0, 0, 0});
    found->stitches += stitches * stripe.rows.value / rows;
  }
  return shares;
}

}  // namespace

StitchCount section_stitches(const Section& section, std::size_t size_index, Step* step,
                             const NumberStyle& style) {
  StitchCount count;
  if (section.source == StitchSource::typed) {
    if (const auto* typed = section.stitches.find(size_index))
      count.stitches = typed->value;
    else
      count.missing = "its stitches";
    if (step != nullptr) step->how = "typed";
  } else {
    double stitches = 0, rows = 0;
    std::string how;
    if (section.runs.empty()) count.missing = "a row of widths";
    for (const ShapeRun& run : section.runs) {
      const auto figures = run_figures(run, size_index);
      if (!figures) {
        count.missing = run.rows.find(size_index) == nullptr ? "its rows" : "its stitches across";
        break;
      }
      stitches += figures->stitches();
      rows += figures->rows;
      if (step != nullptr) how += (how.empty() ? "" : " + ") + run_words(*figures, style);
    }
    if (count.missing.empty()) {
      count.stitches = stitches;
      count.rows = rows;
    }
    if (step != nullptr) step->how = how;
  }
  if (step != nullptr && count.stitches) {
    step->label = "Stitches";
    step->figure = *count.stitches;
    step->unit = FigureUnit::stitches;
    step->decimals = *count.stitches == std::floor(*count.stitches) ? 0 : 1;
    step->ground = Ground::sheet;
    step->place = {"Pieces", section.id.value};
  }
  return count;
}

std::vector<StripeShare> stripe_shares(const Section& section, std::size_t size_index) {
  const StitchCount count = section_stitches(section, size_index);
  if (!count.stitches || !can_be_dealt(section.stripes)) return {};
  if (!count.rows || *count.rows > most_rows) return in_proportion(section, *count.stitches);
  StripeDeal deal(section.stripes);
  for (const ShapeRun& run : section.runs)
    if (const auto figures = run_figures(run, size_index)) deal.deal(*figures);
  return deal.take();
}

}  // namespace skeinproof
