// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/changed_copy.h"

#include <algorithm>
#include <cmath>

#include "core/fabric/gauge.h"
#include "core/fabric/loop_length.h"
#include "core/need/area.h"
#include "core/need/fabric_loop.h"
#include "core/need/stitch_counts.h"
#include "core/pattern/edits.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

constexpr double most_rows_changed = 100000;

std::string whole(double value) { return show_short(value, 1); }
std::string rounds_word(double count) { return whole(count) + (count == 1 ? " round" : " rounds"); }

std::string name_of(const Piece& piece, const Section& section) {
  return section.name.empty() || section.name == piece.name ? piece.name : piece.name + ", " + section.name;
}

tl::unexpected<Error> unknown(const char* what, std::uint32_t id) {
  return failure(ErrorKind::unknown_name, std::string("no ") + what + " " + std::to_string(id),
                 "a part of the pattern");
}

double width_at(const PerSize<Entered<double>>& list, std::size_t size_index) {
  const auto* value = list.find(size_index);
  return value == nullptr ? 0 : value->value;
}
double from_width(const ShapeRun& run, std::size_t i) { return width_at(run.from, i); }
double to_width(const ShapeRun& run, std::size_t i) {
  return run.to.find(i) != nullptr ? width_at(run.to, i) : from_width(run, i);
}
bool tapers(const ShapeRun& run, std::size_t i) { return from_width(run, i) != to_width(run, i); }

// The run with the most rows among those that pass; -1 where none does.
template <class Passes>
int longest_run(const Section& section, std::size_t i, Passes&& passes) {
  int best = -1;
  for (int r = 0; r < static_cast<int>(section.runs.size()); ++r) {
    const ShapeRun& run = section.runs[static_cast<std::size_t>(r)];
    if (!passes(run)) continue;
    if (best < 0 || width_at(run.rows, i) > width_at(section.runs[static_cast<std::size_t>(best)].rows, i))
      best = r;
  }
  return best;
}

int run_to_lengthen(const Section& section, std::size_t i) {
  const int tapered = longest_run(section, i, [&](const ShapeRun& run) { return tapers(run, i); });
  return tapered >= 0 ? tapered : longest_run(section, i, [](const ShapeRun&) { return true; });
}

// The straight run at the greatest width; one without rows is put there where the piece has none yet.
int run_at_full_width(Section& section, std::size_t i) {
  double widest = 0;
  for (const ShapeRun& run : section.runs) widest = std::max({widest, from_width(run, i), to_width(run, i)});
  const int straight = longest_run(
      section, i, [&](const ShapeRun& run) { return !tapers(run, i) && from_width(run, i) == widest; });
  if (straight >= 0) return straight;
  for (std::size_t r = 0; r < section.runs.size(); ++r) {
    const bool at_end = to_width(section.runs[r], i) == widest;
    if (!at_end && from_width(section.runs[r], i) != widest) continue;
    ShapeRun run;
    const ShapeRun& beside = section.runs[r];
    for (std::size_t size = 0; size < beside.from.size(); ++size) {
      if (beside.from.find(size) == nullptr) continue;
      run.from.set(size, Entered<double>{at_end ? to_width(beside, size) : from_width(beside, size), ""});
      run.rows.set(size, Entered<double>{0, ""});
    }
    const std::size_t at = at_end ? r + 1 : r;
    section.runs.insert(section.runs.begin() + static_cast<std::ptrdiff_t>(at), std::move(run));
    return static_cast<int>(at);
  }
  return -1;
}

const Fabric* fabric_with_rows(const Pattern& pattern, const Section& section) {
  const Fabric* fabric = pattern.fabric(section.fabric);
  return fabric != nullptr && row_height(fabric->gauge) ? fabric : nullptr;
}

Section* section_to_lengthen(const Pattern& pattern, Piece& piece, SectionId wanted, std::size_t i) {
  Section* best = nullptr;
  double most = -1;
  for (Section& section : piece.sections) {
    if (wanted) {
      if (section.id == wanted) return &section;
      continue;
    }
    if (section.source != StitchSource::worked_out || section.runs.empty()) continue;
    // A section that cannot be measured is lengthened only where there is no other.
    const double rows =
        section_stitches(section, i).rows.value_or(0) + (fabric_with_rows(pattern, section) ? 1e6 : 0);
    if (rows > most) {
      most = rows;
      best = &section;
    }
  }
  return best;
}

}  // namespace

Expected<void> ChangedCopy::make(const Change& change) {
  return std::visit([this](const auto& one) { return make_one(one); }, change);
}

bool ChangedCopy::outdates(SizeId size) const {
  return whole_pattern_changed_ || std::find(outdated_.begin(), outdated_.end(), size) != outdated_.end();
}

std::vector<std::size_t> ChangedCopy::sizes_changed() const {
  if (!all_sizes_) return {size_index_};
  std::vector<std::size_t> all;
  for (std::size_t i = 0; i < pattern_.sizes.size(); ++i) all.push_back(i);
  return all;
}

Expected<void> ChangedCopy::add_rows(ShapeRun& run, double rows, const std::string& what) {
  for (std::size_t i : sizes_changed()) {
    const auto* had = run.rows.find(i);
    if (had == nullptr) {
      if (i != size_index_) continue;
      return failure(ErrorKind::wrong_shape, what + " without its rows in size " + pattern_.sizes[i].label,
                     "the rows of the section");
    }
    if (had->value + rows < 0)
      return failure(ErrorKind::out_of_range,
                     whole(-rows) + " rows off the " + whole(had->value) + " of " + what,
                     "not more than there are");
    run.rows.set(i, Entered<double>{had->value + rows, ""});
    outdated_.push_back(pattern_.sizes[i].id);
  }
  return {};
}

Expected<void> ChangedCopy::make_one(const LongerPiece& change) {
  Piece* piece = find_piece(pattern_, change.piece);
  if (piece == nullptr) return unknown("piece", change.piece.value);
  Section* section = section_to_lengthen(pattern_, *piece, change.section, size_index_);
  if (section == nullptr && change.section) return unknown("section", change.section.value);
  if (section == nullptr || section->runs.empty() || section->source != StitchSource::worked_out)
    return failure(ErrorKind::wrong_shape, piece->name + " without rows and widths",
                   "a section whose stitches are worked out from rows");
  const std::string name = name_of(*piece, *section);
  const Fabric* fabric = fabric_with_rows(pattern_, *section);
  if (fabric == nullptr)
    return failure(ErrorKind::wrong_shape, name + " in a fabric without a row gauge",
                   "rows in the gauge of its fabric");
  const double by = change.by.value() / row_height(fabric->gauge)->value();
  if (!std::isfinite(by) || std::abs(by) > most_rows_changed)
    return failure(ErrorKind::out_of_range, whole(change.by.value()) + " cm", "a length that can be knitted");
  const double rows = by < 0 ? -round_half_up(-by) : round_half_up(by);
  const int r = change.where == LongerWhere::spread ? run_to_lengthen(*section, size_index_)
                                                    : run_at_full_width(*section, size_index_);
  if (r < 0) return failure(ErrorKind::wrong_shape, name + " without widths", "the stitches across");
  ShapeRun& run = section->runs[static_cast<std::size_t>(r)];
  const double from = from_width(run, size_index_), to = to_width(run, size_index_);
  if (auto added = add_rows(run, rows, name); !added) return added;
  note(name + ": " + rounds_word(std::abs(rows)) + (rows < 0 ? " fewer" : " more") + " at " + whole(from) +
       (from == to ? "" : " to " + whole(to)) + " sts" +
       (piece->copies == 1 ? "" : ", " + std::to_string(piece->copies) + " times"));
  return {};
}

Expected<void> ChangedCopy::make_one(const ExtraRounds& change) {
  const PiecePlace place = find_in_pieces(pattern_, change.section.value);
  Section* section = find_section(pattern_, change.section);
  if (section == nullptr) return unknown("section", change.section.value);
  const std::string name = name_of(*place.piece, *section);
  if (std::abs(change.rounds) > most_rows_changed)
    return failure(ErrorKind::out_of_range, std::to_string(change.rounds) + " rounds",
                   "a number that can be knitted");
  if (section->source == StitchSource::chart) return chart_rounds(*section, change);
  const int r = section->source == StitchSource::worked_out
                    ? longest_run(*section, size_index_, [](const ShapeRun&) { return true; })
                    : -1;
  if (r < 0)
    return failure(ErrorKind::wrong_shape, name + " with its stitches typed as one sum",
                   "a section with rows and widths");
  if (change.role && (section->colouring != Colouring::one_role || section->role != change.role))
    return failure(ErrorKind::wrong_shape, name + " in other colours",
                   "a section worked in that colour alone");
  if (auto added = add_rows(section->runs[static_cast<std::size_t>(r)], change.rounds, name); !added)
    return added;
  note(name + ": " + rounds_word(std::abs(change.rounds)) + (change.rounds < 0 ? " fewer" : " more"));
  return {};
}

// The chart of one section alone changes: others that use it keep theirs.
Expected<void> ChangedCopy::chart_rounds(Section& section, const ExtraRounds& change) {
  const Chart* old = pattern_.chart(section.chart);
  if (old == nullptr) return failure(ErrorKind::wrong_shape, section.name + " without a chart", "its chart");
  const int count = static_cast<int>(old->rounds->size());
  int round = change.chart_round.value_or(0);
  std::string worked;
  if (!change.chart_round) {
    char symbol = 0;
    for (const ChartColour& colour : old->colours)
      for (int i = count; i-- > 0 && colour.role == change.role;) {
        if ((*old->rounds)[static_cast<std::size_t>(i)].find(colour.symbol[0]) == std::string::npos) continue;
        if (i + 1 > round) round = i + 1, symbol = colour.symbol[0];
        break;
      }
    if (round == 0)
      return failure(ErrorKind::wrong_shape, "the chart “" + old->name + "” without that colour",
                     "a round of the chart or a colour in it");
    if (change.rounds < 0)
      return failure(ErrorKind::wrong_shape, "rounds to leave out", "the round of the chart they begin at");
    worked = (*old->rounds)[static_cast<std::size_t>(round - 1)];
    for (char& square : worked)
      if (square != no_stitch) square = symbol;
  }
  if (round < 1 || round > count)
    return failure(ErrorKind::out_of_range,
                   "round " + std::to_string(round) + " of the chart “" + old->name + "”",
                   "a round from 1 to " + std::to_string(count));
  if (change.rounds < 0 && (round - 1 - change.rounds > count || -change.rounds >= count))
    return failure(ErrorKind::out_of_range,
                   std::to_string(-change.rounds) + " rounds left out from round " + std::to_string(round),
                   "fewer: the chart has " + std::to_string(count));
  if (change.rounds > 0 && static_cast<std::size_t>(count + change.rounds) > most_chart_squares)
    return failure(ErrorKind::out_of_range, std::to_string(count + change.rounds) + " rounds in a chart",
                   "at most " + std::to_string(most_chart_squares));
  std::vector<std::string> rounds = *old->rounds;
  const auto at = rounds.begin() + (change.rounds < 0 ? round - 1 : round);
  if (change.rounds < 0)
    rounds.erase(at, at - change.rounds);
  else
    rounds.insert(at, static_cast<std::size_t>(change.rounds),
                  worked.empty() ? rounds[static_cast<std::size_t>(round - 1)] : worked);
  note("Chart “" + old->name + "”, round " + std::to_string(round) + ": " +
       rounds_word(std::abs(change.rounds)) + (change.rounds < 0 ? " left out" : " more") + ", in all sizes");
  section.chart = duplicate_chart(pattern_, section.chart);
  find_chart(pattern_, section.chart)->rounds = Shared<std::vector<std::string>>(std::move(rounds));
  whole_pattern_changed_ = true;
  return {};
}

// Loops that are typed or weighed are not led by the gauge by themselves: a stitch takes yarn in proportion
// to the square root of its area, a float or an edge in proportion to its width.
void ChangedCopy::follow_gauge(double stitch_ratio, double row_ratio) {
  const double loop = 1 / std::sqrt(stitch_ratio * row_ratio);
  for (Fabric& fabric : pattern_.fabrics) {
    if (fabric.gauge.stitches)
      fabric.gauge.stitches = Entered<double>{fabric.gauge.stitches->value * stitch_ratio, ""};
    if (fabric.gauge.rows) fabric.gauge.rows = Entered<double>{fabric.gauge.rows->value * row_ratio, ""};
    if (fabric.typed_loop) fabric.typed_loop = Entered<Centimetres>{fabric.typed_loop->value * loop, ""};
    if (fabric.swatch.stitches)
      fabric.swatch.stitches = Entered<double>{fabric.swatch.stitches->value / loop, ""};
    if (fabric.float_per_stitch)
      fabric.float_per_stitch = Entered<Centimetres>{fabric.float_per_stitch->value / stitch_ratio, ""};
  }
  for (Piece& piece : pattern_.pieces)
    for (Edge& edge : piece.edges)
      if (edge.rate && (edge.kind == EdgeKind::cast_on || edge.kind == EdgeKind::bind_off))
        edge.rate = Entered<double>{edge.rate->value / stitch_ratio, ""};
}

void ChangedCopy::scale_counts(double stitch_ratio, double row_ratio) {
  const auto scale = [&](PerSize<Entered<double>>& list, double ratio) {
    for (std::size_t i = 0; i < list.size(); ++i)
      if (const auto* value = list.find(i)) {
        const double scaled = value->value * ratio;
        list.set(i, Entered<double>{to_keep_ ? round_half_up(scaled) : scaled, ""});
      }
  };
  for (Piece& piece : pattern_.pieces) {
    for (Section& section : piece.sections) {
      scale(section.stitches, stitch_ratio * row_ratio);
      // A chart to be knitted keeps its rounds; for a question they count as if they were as many as the
      // height asks.
      scale(section.repeats, to_keep_ ? stitch_ratio : stitch_ratio * row_ratio);
      for (ShapeRun& run : section.runs) {
        scale(run.from, stitch_ratio);
        scale(run.to, stitch_ratio);
        scale(run.rows, row_ratio);
      }
    }
    for (Edge& edge : piece.edges)
      if (edge.kind == EdgeKind::cast_on || edge.kind == EdgeKind::bind_off) scale(edge.amount, stitch_ratio);
  }
}

Expected<void> ChangedCopy::make_one(const OtherGauge& change) {
  const Fabric* fabric = pattern_.fabric(change.fabric);
  if (fabric == nullptr) return unknown("fabric", change.fabric.value);
  if (change.counts == CountsAre::not_said)
    return failure(ErrorKind::wrong_shape, "another gauge",
                   "whether the counts are kept or chosen again: the sign turns round");
  if (!fabric->gauge.rows || !row_height(fabric->gauge))
    return failure(ErrorKind::wrong_shape, fabric->name + " without a row gauge",
                   "stitches and rows in its gauge");
  const auto width = stitch_width(fabric->gauge);
  if (!width) return tl::unexpected<Error>(width.error());
  const double over = change.over.value();
  const double stitch_ratio = change.stitches / over * width->value();
  const double row_ratio = change.rows / over * row_height(fabric->gauge)->value();
  const auto possible = [](double ratio) { return ratio > 0.1 && ratio < 10; };
  if (!(over > 0) || !possible(stitch_ratio) || !possible(row_ratio))
    return failure(
        ErrorKind::out_of_range,
        "a gauge of " + whole(change.stitches) + " × " + whole(change.rows) + " in " + whole(over) + " cm",
        "a gauge near that of " + fabric->name);
  const std::string ratio = show_number(1 / std::sqrt(stitch_ratio * row_ratio), 4);
  if (change.counts == CountsAre::kept) {
    std::string words = "The same counts at the other gauge: a stitch takes × " + ratio;
    if (const auto around = finished_circumference(pattern_, size_index_))
      words += ", and " + whole(*around) + " cm around become " + whole(*around / stitch_ratio) + " cm";
    note(words);
    for (Measurement& measurement : pattern_.measurements)
      if (to_keep_ && measurement.fit == Fit::finished) {
        const bool along = measurement.kind == MeasurementKind::body_length ||
                           measurement.kind == MeasurementKind::sleeve_length ||
                           measurement.kind == MeasurementKind::yoke_depth;
        for (std::size_t i = 0; i < measurement.values.size(); ++i)
          if (const auto* value = measurement.values.find(i))
            measurement.values.set(
                i, Entered<Centimetres>{value->value / (along ? row_ratio : stitch_ratio), ""});
      }
  } else {
    scale_counts(stitch_ratio, row_ratio);
    note("Counts chosen again for the same size: × " + show_number(stitch_ratio, 4) + " stitches, × " +
         show_number(row_ratio, 4) + " rows, a stitch takes × " + ratio);
    if (to_keep_)
      note("Charts keep their rounds: see that their depth and the plain rounds beside them still fit");
  }
  follow_gauge(stitch_ratio, row_ratio);
  whole_pattern_changed_ = true;
  return {};
}

Expected<void> ChangedCopy::make_one(const OtherSize& change) {
  const auto index = pattern_.size_index(change.size);
  if (!index) return unknown("size", change.size.value);
  size_index_ = *index;
  note("Knitted in size " + pattern_.sizes[*index].label);
  return {};
}

Expected<void> ChangedCopy::make_one(const PieceLeftOut& change) {
  const Piece* piece = pattern_.piece(change.piece);
  if (piece == nullptr) return unknown("piece", change.piece.value);
  note(piece->name + " left out, in all sizes");
  erase_piece(pattern_, change.piece);
  whole_pattern_changed_ = true;
  return {};
}

Expected<void> ChangedCopy::make_one(const PieceAgain& change) {
  const auto piece = std::find_if(pattern_.pieces.begin(), pattern_.pieces.end(),
                                  [&](const Piece& row) { return row.id == change.piece; });
  if (piece == pattern_.pieces.end()) return unknown("piece", change.piece.value);
  if (change.copies < 1 || piece->copies + change.copies > 1000)
    return failure(ErrorKind::out_of_range, std::to_string(change.copies) + " copies more",
                   "1 to 1000 copies in all");
  piece->copies += change.copies;
  note(piece->name + " again, " + std::to_string(piece->copies) + " in all");
  whole_pattern_changed_ = true;
  return {};
}

Expected<void> ChangedCopy::make_one(const PieceAdded& change) {
  Piece piece = change.piece;
  if (piece.sections.empty() && piece.edges.empty())
    return failure(ErrorKind::wrong_shape, "a piece with nothing in it", "a section or an edge");
  piece.id = take_id<PieceId>(pattern_);
  for (Section& section : piece.sections) section.id = take_id<SectionId>(pattern_);
  for (Edge& edge : piece.edges) edge.id = take_id<EdgeId>(pattern_);
  note(piece.name + " added");
  pattern_.pieces.push_back(std::move(piece));
  whole_pattern_changed_ = true;
  return {};
}

Expected<RoleId> ChangedCopy::role_in_yarn(RoleId from, YarnId yarn_id) {
  const Yarn* yarn = pattern_.yarn(yarn_id);
  const Role* old = pattern_.role(from);
  if (yarn == nullptr) return unknown("yarn", yarn_id.value);
  if (old == nullptr) return unknown("colour", from.value);
  const std::string label = old->label + " in " + yarn->name;
  for (const Role& role : pattern_.roles)
    if (role.yarn == yarn_id && role.label == label) return role.id;
  Role role;
  role.label = label;
  role.yarn = yarn_id;
  role.strands = old->strands;
  role.charge_entries = old->charge_entries;
  role.growth = old->growth;
  role.id = take_id<RoleId>(pattern_);
  pattern_.roles.push_back(role);
  return role.id;
}

Expected<void> ChangedCopy::make_one(const GivenTo& change) {
  const PiecePlace place = find_in_pieces(pattern_, change.part);
  if (!place) return unknown("part", change.part);
  if (!change.yarn && pattern_.role(change.to) == nullptr) return unknown("colour", change.to.value);
  if (change.from && pattern_.role(change.from) == nullptr) return unknown("colour", change.from.value);
  std::vector<SectionId> sections;
  std::vector<EdgeId> edges;
  if (place.section != nullptr) sections.push_back(place.section->id);
  if (place.edge != nullptr) edges.push_back(place.edge->id);
  if (place.section == nullptr && place.edge == nullptr) {
    for (const Section& section : place.piece->sections) sections.push_back(section.id);
    for (const Edge& edge : place.piece->edges)
      if (edge.kind != EdgeKind::ends) edges.push_back(edge.id);
  }
  const std::string name =
      place.section != nullptr ? name_of(*place.piece, *place.section) : place.piece->name;
  int given = 0;
  const auto give = [&](RoleId& role) -> Expected<void> {
    if (!role || (change.from && role != change.from)) return {};
    const Expected<RoleId> to = change.yarn ? role_in_yarn(role, change.yarn) : Expected<RoleId>(change.to);
    if (!to) return tl::unexpected<Error>(to.error());
    if (role == *to) return {};
    role = *to;
    ++given;
    return {};
  };
  for (SectionId id : sections) {
    Section& section = *find_section(pattern_, id);
    if (section.source == StitchSource::chart) {
      if (!change.from)
        return failure(ErrorKind::wrong_shape, name + " with a chart in it",
                       "which colour of the chart is given away");
      section.chart = duplicate_chart(pattern_, section.chart);
      if (Chart* chart = find_chart(pattern_, section.chart))
        for (ChartColour& colour : chart->colours)
          if (auto done = give(colour.role); !done) return done;
    } else if (section.colouring == Colouring::stripes) {
      for (Stripe& stripe : section.stripes)
        if (auto done = give(stripe.role); !done) return done;
    } else if (auto done = give(section.role); !done) {
      return done;
    }
  }
  for (EdgeId id : edges)
    if (auto done = give(find_edge(pattern_, id)->role); !done) return done;
  if (given == 0)
    return failure(ErrorKind::wrong_shape, name + " without that colour to give away",
                   "a part that is worked in it");
  const Yarn* yarn = pattern_.yarn(change.yarn);
  note(name + " in " + (yarn != nullptr ? yarn->name : pattern_.role(change.to)->label) + ", in all sizes");
  whole_pattern_changed_ = true;
  return {};
}

Expected<ChangedCopy> changed_copy(const Pattern& pattern, const std::vector<Change>& changes, SizeId size,
                                   bool all_sizes, bool to_keep) {
  const auto index = pattern.size_index(size);
  if (!index)
    return failure(ErrorKind::unknown_name, "size " + std::to_string(size.value), "a size of the pattern");
  ChangedCopy copy(pattern, *index, all_sizes, to_keep);
  for (const Change& change : changes)
    if (auto made = copy.make(change); !made) return tl::unexpected<Error>(made.error());
  if (auto kept = check_invariants(copy.pattern()); !kept) return tl::unexpected<Error>(kept.error());
  return copy;
}

}  // namespace skeinproof
