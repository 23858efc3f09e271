// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/need/changes.h"

namespace skeinproof {

// A pattern with changes worked into it, one after the other.
class ChangedCopy {
 public:
  // `to_keep`: counts are snapped to whole ones, as the document that comes out is meant to be knitted from.
  ChangedCopy(Pattern pattern, std::size_t size_index, bool all_sizes, bool to_keep)
      : pattern_(std::move(pattern)), size_index_(size_index), all_sizes_(all_sizes), to_keep_(to_keep) {}

  Expected<void> make(const Change& change);

  const Pattern& pattern() const { return pattern_; }
  Pattern& pattern() { return pattern_; }
  std::size_t size_index() const { return size_index_; }
  const std::vector<std::string>& notes() const { return notes_; }
  void note(std::string words) { notes_.push_back(std::move(words)); }
  // Whether samples of a size no longer show what the document says.
  bool outdates(SizeId size) const;

 private:
  Expected<void> make_one(const LongerPiece& change);
  Expected<void> make_one(const ExtraRounds& change);
  Expected<void> make_one(const OtherGauge& change);
  Expected<void> make_one(const OtherSize& change);
  Expected<void> make_one(const BetweenSizes& change);
  Expected<void> make_one(const PieceLeftOut& change);
  Expected<void> make_one(const PieceAgain& change);
  Expected<void> make_one(const PieceAdded& change);
  Expected<void> make_one(const GivenTo& change);

  std::vector<std::size_t> sizes_changed() const;
  Expected<void> add_rows(ShapeRun& run, double rows, const std::string& what);
  Expected<void> chart_rounds(Section& section, const ExtraRounds& change);
  void follow_gauge(double width_ratio, double row_ratio);
  void scale_counts(double stitch_ratio, double row_ratio);
  Expected<RoleId> role_in_yarn(RoleId from, YarnId yarn);

  Pattern pattern_;
  std::size_t size_index_;
  bool all_sizes_;
  bool to_keep_;
  bool whole_pattern_changed_ = false;
  std::vector<SizeId> outdated_;
  std::vector<std::string> notes_;
};

// The changes one after the other on a copy, from that size on; the copy keeps the document's rules.
Expected<ChangedCopy> changed_copy(const Pattern& pattern, const std::vector<Change>& changes, SizeId size,
                                   bool all_sizes = false, bool to_keep = false);

}  // namespace skeinproof
