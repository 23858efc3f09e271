// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/printed_gauge.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>

#include "core/base/text.h"
#include "core/units/quantity.h"

namespace skeinproof {
namespace {

constexpr std::size_t most_gauges = 200;  // no pattern has more; keeps comparing them within bounds

// Longer words first where one holds another.
constexpr std::array<std::pair<std::string_view, Structure>, 26> structure_words = {{
    {"stranded", Structure::stranded},
    {"fair isle", Structure::stranded},
    {"colourwork", Structure::stranded},
    {"colorwork", Structure::stranded},
    {"colour work", Structure::stranded},
    {"intarsia", Structure::intarsia},
    {"stockinette", Structure::plain},
    {"stocking st", Structure::plain},
    {"st st", Structure::plain},
    {"plain", Structure::plain},
    {"garter", Structure::garter},
    {"moss", Structure::moss},
    {"seed st", Structure::moss},
    {"cable", Structure::cable},
    {"aran pattern", Structure::cable},
    {"lace", Structure::lace},
    {"openwork", Structure::lace},
    {"brioche", Structure::brioche},
    {"fisherman", Structure::brioche},
    {"slip st", Structure::slip_stitch},
    {"slipped st", Structure::slip_stitch},
    {"slip-st", Structure::slip_stitch},
    {"mosaic", Structure::slip_stitch},
    {"ribbing", Structure::rib},
    {"welt", Structure::rib},
    {"rib", Structure::rib},
}};

double over_in_cm(const Statement& over) {
  const double value = figure_of(&over).value_or(0);
  if (!(value > 0)) return 10;
  switch (over.unit) {
    case PrintedUnit::inch:
      return value == 4 ? 10 : value * centimetres_per_inch;
    case PrintedUnit::millimetre:
      return value / 10;
    default:
      return value;
  }
}

std::optional<double> per_10_cm(const Statement* counted, double over_cm) {
  const auto count = figure_of(counted);
  if (!count || !(*count > 0)) return std::nullopt;
  return *count * 10 / over_cm;
}

}  // namespace

std::optional<double> figure_of(const Statement* statement) {
  if (statement == nullptr) return std::nullopt;
  double sum = 0;
  int known = 0;
  for (const PrintedValue& value : statement->values)
    if (value.number && known < 2) {
      sum += *value.number;
      ++known;
    }
  return known == 0 ? std::nullopt : std::optional<double>(sum / known);
}

std::optional<Structure> structure_of(std::string_view words) {
  const std::string lower = lower_ascii(words);
  for (const auto& [word, structure] : structure_words)
    if (lower.find(word) != std::string::npos) return structure;
  return std::nullopt;
}

std::optional<double> PrintedGauge::stitches_per_10_cm() const { return per_10_cm(stitches, over_cm); }
std::optional<double> PrintedGauge::rows_per_10_cm() const { return per_10_cm(rows, over_cm); }

std::vector<const Statement*> PrintedGauge::all() const {
  std::vector<const Statement*> all;
  for (const Statement* one : {stitches, rows, fabric, over})
    if (one != nullptr) all.push_back(one);
  return all;
}

bool PrintedGauge::same_fabric(const PrintedGauge& other) const {
  if (structure && other.structure) {
    if (*structure != *other.structure) return false;
    // Two lace panels are two fabrics; two ways to say stocking stitch are one.
    if (*structure == Structure::plain || *structure == Structure::garter) return true;
    return fabric && other.fabric && lower_ascii(fabric->words) == lower_ascii(other.fabric->words);
  }
  if (fabric && other.fabric) return lower_ascii(fabric->words) == lower_ascii(other.fabric->words);
  return !fabric && !other.fabric;
}

std::vector<PrintedGauge> printed_gauges(const PrintedView& printed) {
  std::vector<PrintedGauge> gauges;
  std::map<int, std::size_t> by_mention;
  const auto of = [&](const Statement& statement) -> PrintedGauge& {
    if (gauges.size() == most_gauges && !by_mention.count(statement.mention)) return gauges.back();
    const auto [at, fresh] = by_mention.emplace(statement.mention, gauges.size());
    if (fresh) {
      gauges.emplace_back();
      gauges.back().mention = statement.mention;
    }
    return gauges[at->second];
  };
  const auto first_into = [](const Statement*& place, const Statement& statement) {
    if (place == nullptr) place = &statement;
  };
  for (const Statement& statement : printed.reading().statements) {
    switch (statement.kind) {
      case StatementKind::gauge_stitches:
        first_into(of(statement).stitches, statement);
        break;
      case StatementKind::gauge_rows:
        first_into(of(statement).rows, statement);
        break;
      case StatementKind::gauge_fabric:
        first_into(of(statement).fabric, statement);
        break;
      case StatementKind::gauge_state:
        first_into(of(statement).state, statement);
        break;
      case StatementKind::gauge_worked:
        first_into(of(statement).worked, statement);
        break;
      case StatementKind::gauge_over: {
        PrintedGauge& gauge = of(statement);
        if (gauge.over == nullptr || gauge.over->unit == PrintedUnit::inch) gauge.over = &statement;
        break;
      }
      default:
        break;
    }
  }
  const Statement *state = nullptr, *worked = nullptr, *over = nullptr;
  for (const PrintedGauge& gauge : gauges)
    if (!gauge.stitches && !gauge.rows) {
      if (!state) state = gauge.state;
      if (!worked) worked = gauge.worked;
    }
  std::erase_if(gauges, [](const PrintedGauge& gauge) { return !gauge.stitches && !gauge.rows; });
  // "26 sts and 34 rounds in stocking stitch, 26 sts in stranded pattern, both washed": the last word is of
  // all.
  if (!state && !gauges.empty()) state = gauges.back().state;
  if (!worked && !gauges.empty()) worked = gauges.front().worked;
  for (PrintedGauge& gauge : gauges) {
    if (!gauge.state) gauge.state = state;
    if (!gauge.worked) gauge.worked = worked;
    if (gauge.over) over = gauge.over;
    if (!gauge.over) gauge.over = over;
    if (gauge.fabric) gauge.structure = structure_of(gauge.fabric->words);
    if (gauge.over) {
      gauge.over_cm = over_in_cm(*gauge.over);
      gauge.per_inch = gauge.over->unit == PrintedUnit::inch && figure_of(gauge.over).value_or(4) < 4;
    }
  }
  return gauges;
}

const PrintedGauge* gauge_of(const std::vector<PrintedGauge>& gauges, const Fabric& fabric) {
  const std::string name = lower_ascii(fabric.name);
  const PrintedGauge* of_structure = nullptr;
  for (const PrintedGauge& gauge : gauges) {
    if (gauge.fabric && !name.empty() && lower_ascii(gauge.fabric->words).find(name) != std::string::npos)
      return &gauge;
    if (gauge.structure == fabric.structure && of_structure == nullptr) of_structure = &gauge;
  }
  if (of_structure) return of_structure;
  if (fabric.structure == Structure::plain && gauges.size() == 1 && !gauges.front().fabric)
    return &gauges.front();
  return nullptr;
}

}  // namespace skeinproof
