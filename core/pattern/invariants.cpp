// SPDX-License-Identifier: GPL-3.0-or-later
#include <set>
#include <string>

#include "core/base/for_each_per_size.h"
#include "core/pattern/pattern.h"

namespace skeinproof {
namespace {

// Gathers the first breach while it walks over the document.
class Breaches {
 public:
  explicit Breaches(const Pattern& pattern) : pattern_(pattern) {}

  void add(std::string found, std::string expected) {
    if (!first_) first_ = Error{ErrorKind::broken_invariant, {}, std::move(found), std::move(expected)};
  }
  Expected<void> verdict() const {
    if (first_) return tl::unexpected<Error>(*first_);
    return {};
  }

  template <class AnyId>
  void own(AnyId id, const std::string& what) {
    if (!id || id.value > pattern_.last_id)
      add(what + " with id " + std::to_string(id.value),
          "an id from 1 to " + std::to_string(pattern_.last_id));
    else if (!own_.insert(id.value).second)
      add("two parts with id " + std::to_string(id.value), "every id once");
  }
  template <class Found, class AnyId>
  void names(const Found* found, AnyId id, const std::string& what) {
    if (id && found == nullptr) add(what + " " + std::to_string(id.value), "an id of a part that exists");
  }

 private:
  const Pattern& pattern_;
  std::optional<Error> first_;
  std::set<std::uint32_t> own_;
};

void check_sizes(const Pattern& pattern, Breaches& breaches) {
  if (pattern.sizes.empty()) breaches.add("no size", "at least one size");
  for (const Size& size : pattern.sizes) breaches.own(size.id, "a size");
  if (pattern.house_styles.empty()) breaches.add("no house style", "at least one house style");
  for (SizeId id : {pattern.sample_size, pattern.chosen_size, pattern.on_hand_size})
    if (id && !pattern.size_index(id))
      breaches.add("size " + std::to_string(id.value), "an id of a size that exists");
  for_each_per_size(const_cast<Pattern&>(pattern), [&](const auto& list) {
    if (list.size() > pattern.sizes.size())
      breaches.add("a list of " + std::to_string(list.size()) + " values",
                   "at most one value for each of " + std::to_string(pattern.sizes.size()) + " sizes");
  });
}

void check_chart(const Pattern& pattern, const Chart& chart, Breaches& breaches) {
  breaches.own(chart.id, "a chart");
  std::string symbols(1, no_stitch);
  for (const ChartColour& colour : chart.colours) {
    breaches.names(pattern.role(colour.role), colour.role, "a chart colour of role");
    const bool usable = colour.symbol.size() == 1 && is_chart_symbol(colour.symbol[0]);
    if (!usable || symbols.find(colour.symbol[0]) != std::string::npos)
      breaches.add("the chart symbol “" + colour.symbol + "”",
                   "a letter, a digit or a mark that parts no squares, each once");
    else
      symbols += colour.symbol;
  }
  for (std::size_t i = 0; i < chart.rounds->size(); ++i) {
    const std::string& round = (*chart.rounds)[i];
    const std::string where = "round " + std::to_string(i + 1) + " of chart " + chart.name;
    if (round.size() != chart.rounds->front().size())
      breaches.add(where + " with " + std::to_string(round.size()) + " squares",
                   std::to_string(chart.rounds->front().size()) + " squares in every round");
    if (const auto at = round.find_first_not_of(symbols); at != std::string::npos)
      breaches.add(where + " with the symbol " + std::string(1, round[at]),
                   "a symbol of the chart's colours");
  }
}

void check_piece(const Pattern& pattern, const Piece& piece, Breaches& breaches) {
  breaches.own(piece.id, "a piece");
  if (piece.copies < 1 || piece.copies > 1000)
    breaches.add(std::to_string(piece.copies) + " copies of " + piece.name, "1 to 1000 copies");
  for (const Section& section : piece.sections) {
    breaches.own(section.id, "a section");
    breaches.names(pattern.fabric(section.fabric), section.fabric, "a section of fabric");
    breaches.names(pattern.chart(section.chart), section.chart, "a section of chart");
    breaches.names(pattern.role(section.role), section.role, "a section of role");
    for (const Stripe& stripe : section.stripes)
      breaches.names(pattern.role(stripe.role), stripe.role, "a stripe of role");
  }
  for (const Edge& edge : piece.edges) {
    breaches.own(edge.id, "an edge");
    breaches.names(pattern.role(edge.role), edge.role, "an edge of role");
    breaches.names(pattern.fabric(edge.fabric), edge.fabric, "an edge of fabric");
  }
}

void check_roles(const Pattern& pattern, Breaches& breaches) {
  for (const Role& role : pattern.roles) {
    breaches.own(role.id, "a role");
    breaches.names(pattern.yarn(role.yarn), role.yarn, "a role of yarn");
    breaches.names(pattern.role(role.goes_along_with), role.goes_along_with, "a role along with role");
    if (role.strands < 1 || role.strands > 12)
      breaches.add(std::to_string(role.strands) + " strands in " + role.label, "1 to 12 strands");
    const Role* leader = &role;
    for (std::size_t steps = 0; leader != nullptr && leader->goes_along_with; ++steps) {
      if (steps > pattern.roles.size()) {
        breaches.add("role " + role.label + " going along with itself", "no circle of roles");
        break;
      }
      leader = pattern.role(leader->goes_along_with);
    }
  }
}

template <class Part, class AnyId>
const Part* part_of(const Pattern& pattern, std::vector<Part> Piece::*parts, AnyId id) {
  for (const Piece& piece : pattern.pieces)
    for (const Part& part : piece.*parts)
      if (part.id == id) return &part;
  return nullptr;
}

void check_change(const Pattern& pattern, const BenchChange& change, Breaches& breaches) {
  breaches.own(change.id, "a change");
  breaches.names(pattern.piece(change.piece), change.piece, "a change of piece");
  breaches.names(part_of(pattern, &Piece::sections, change.section), change.section, "a change of section");
  breaches.names(part_of(pattern, &Piece::edges, change.edge), change.edge, "a change of edge");
  breaches.names(pattern.fabric(change.fabric), change.fabric, "a change of fabric");
  breaches.names(pattern.yarn(change.yarn), change.yarn, "a change to yarn");
  for (RoleId role : {change.from, change.to}) breaches.names(pattern.role(role), role, "a change of role");
  for (SizeId size : {change.size, change.other_size})
    if (size && !pattern.size_index(size))
      breaches.add("a change to size " + std::to_string(size.value), "an id of a size that exists");
}

void check_strands(const Candidate& candidate, int strands, Breaches& breaches) {
  if (strands < 1 || strands > 12)
    breaches.add(std::to_string(strands) + " strands in candidate " + candidate.name, "1 to 12 strands");
}

void check_bench(const Pattern& pattern, Breaches& breaches) {
  for (const Candidate& candidate : pattern.candidates) {
    breaches.own(candidate.id, "a candidate");
    for (const CandidateYarn& row : candidate.yarns) {
      breaches.names(pattern.role(row.role), row.role, "a candidate for role");
      for (YarnId yarn : {row.yarn, row.held_with})
        breaches.names(pattern.yarn(yarn), yarn, "a candidate of yarn");
      for (int strands : {row.strands, row.held_with_strands}) check_strands(candidate, strands, breaches);
    }
  }
  for (const YarnOnHand& yarn : pattern.on_hand) {
    breaches.own(yarn.id, "yarn on hand");
    breaches.names(pattern.yarn(yarn.yarn), yarn.yarn, "yarn on hand of yarn");
    breaches.names(pattern.role(yarn.role), yarn.role, "yarn on hand for role");
  }
  for (const GivenPart& part : pattern.given_parts) {
    breaches.names(pattern.piece(part.piece), part.piece, "a given part of piece");
    breaches.names(part_of(pattern, &Piece::sections, part.section), part.section, "a given part in section");
  }
}

}  // namespace

Expected<void> check_invariants(const Pattern& pattern) {
  Breaches breaches(pattern);
  check_sizes(pattern, breaches);
  for (const Measurement& measurement : pattern.measurements) breaches.own(measurement.id, "a measurement");
  for (const Yarn& yarn : pattern.yarns) breaches.own(yarn.id, "a yarn");
  check_roles(pattern, breaches);
  for (const Fabric& fabric : pattern.fabrics) {
    breaches.own(fabric.id, "a fabric");
    breaches.names(pattern.yarn(fabric.swatch.yarn), fabric.swatch.yarn, "a swatch of yarn");
  }
  for (const Chart& chart : pattern.charts) check_chart(pattern, chart, breaches);
  for (const Piece& piece : pattern.pieces) check_piece(pattern, piece, breaches);
  for (const Weighing& weighing : pattern.weighings) {
    breaches.own(weighing.id, "a weighing");
    if (weighing.size && !pattern.size_index(weighing.size))
      breaches.add("a weighing of size " + std::to_string(weighing.size.value),
                   "an id of a size that exists");
    for (const WeighedRole& weighed : weighing.roles)
      breaches.names(pattern.role(weighed.role), weighed.role, "a reading of role");
    for (const WeighedCopies& copies : weighing.only)
      breaches.names(pattern.piece(copies.piece), copies.piece, "a weighing of piece");
    for (const BenchChange& change : weighing.altered) check_change(pattern, change, breaches);
  }
  for (const Draft& draft : *pattern.drafts) breaches.own(draft.id, "a draft");
  for (const Query& query : pattern.queries) breaches.own(query.id, "a query");
  for (const BenchChange& change : pattern.changes) check_change(pattern, change, breaches);
  for (const YarnReading& reading : pattern.readings) {
    breaches.own(reading.id, "a reading");
    breaches.names(pattern.role(reading.role), reading.role, "a reading of role");
    breaches.names(pattern.piece(reading.piece), reading.piece, "a reading at piece");
    breaches.names(part_of(pattern, &Piece::sections, reading.section), reading.section,
                   "a reading at section");
  }
  check_bench(pattern, breaches);
  return breaches.verdict();
}

}  // namespace skeinproof
