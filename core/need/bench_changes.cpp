// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/bench_changes.h"

#include <cmath>

namespace skeinproof {
namespace {

auto missing(std::string found, std::string expected) {
  return failure(ErrorKind::wrong_shape, std::move(found), std::move(expected));
}

// Whole rounds, copies, rows of a chart.
Expected<int> whole(const std::optional<Entered<double>>& entered, const std::string& what) {
  if (!entered) return missing("no " + what, "how many " + what);
  if (entered->value != std::floor(entered->value) || std::abs(entered->value) > 100000)
    return failure(ErrorKind::out_of_range, entered->typed, "a whole number of " + what);
  return static_cast<int>(entered->value);
}

Expected<Change> longer(const BenchChange& row) {
  if (!row.piece) return missing("no piece", "the piece that grows longer");
  if (!row.by) return missing("no length", "how much longer, below 0 shorter");
  return LongerPiece{row.piece, row.by->value, row.where, row.section};
}

Expected<Change> extra(const BenchChange& row) {
  if (!row.section) return missing("no section", "the section with more rounds");
  const auto rounds = whole(row.rounds, "rounds");
  if (!rounds) return tl::unexpected<Error>(rounds.error());
  ExtraRounds change{row.section, *rounds, {}, row.from};
  if (row.chart_round) {
    const auto at = whole(row.chart_round, "chart rounds");
    if (!at) return tl::unexpected<Error>(at.error());
    change.chart_round = *at;
  }
  return change;
}

Expected<Change> gauge(const BenchChange& row) {
  if (!row.fabric) return missing("no fabric", "the fabric with the other gauge");
  if (!row.stitches || !row.rows) return missing("half a gauge", "stitches and rows in 10 cm");
  if (row.counts == CountsAre::not_said)
    return missing("nothing said of the counts",
                   "whether they are kept or chosen again: the sign turns round");
  return OtherGauge{row.fabric, row.stitches->value, row.rows->value, centimetres(10), row.counts};
}

Expected<Change> between(const BenchChange& row) {
  if (!row.size || !row.other_size)
    return missing("fewer than two sizes", "the two sizes between which it lies");
  if (!row.share_pct) return missing("no share", "how far from one size to the other, in percent");
  return BetweenSizes{row.size, row.other_size, row.share_pct->value / 100};
}

Expected<Change> given(const BenchChange& row) {
  const std::uint32_t part = row.edge ? row.edge.value : row.section ? row.section.value : row.piece.value;
  if (part == 0) return missing("no part", "the piece, section or edge that is given away");
  if (!row.to && !row.yarn) return missing("no colour", "the colour or the yarn it is given to");
  return GivenTo{part, row.from, row.to, row.yarn};
}

}  // namespace

Expected<Change> change_of(const BenchChange& row) {
  switch (row.kind) {
    case ChangeKind::longer_piece:
      return longer(row);
    case ChangeKind::extra_rounds:
      return extra(row);
    case ChangeKind::other_gauge:
      return gauge(row);
    case ChangeKind::between_sizes:
      return between(row);
    case ChangeKind::given_to:
      return given(row);
    case ChangeKind::other_size:
      if (!row.size) return missing("no size", "the size that is knitted");
      return OtherSize{row.size};
    case ChangeKind::piece_left_out:
      if (!row.piece) return missing("no piece", "the piece that is left out");
      return PieceLeftOut{row.piece};
    case ChangeKind::piece_again:
      if (!row.piece) return missing("no piece", "the piece that is knitted again");
      return PieceAgain{row.piece, row.copies};
  }
  return missing("a change of no kind", "a kind of change");
}

Expected<std::vector<Change>> changes_of(const std::vector<BenchChange>& rows) {
  std::vector<Change> changes;
  for (const BenchChange& row : rows) {
    if (!row.made) continue;
    auto change = change_of(row);
    if (!change) return tl::unexpected<Error>(change.error());
    changes.push_back(std::move(*change));
  }
  return changes;
}

}  // namespace skeinproof
