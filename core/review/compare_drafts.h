// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/enum_words.h"
#include "core/review/compare_findings.h"
#include "core/review/review.h"

namespace skeinproof {

enum class StatementFate { changed, added, gone };
template <>
struct EnumWords<StatementFate> {
  static constexpr auto rows = enum_rows<StatementFate>(
      {{StatementFate::changed, "changed"}, {StatementFate::added, "added"}, {StatementFate::gone, "gone"}});
};
struct StatementChange {
  StatementFate fate = StatementFate::changed;
  StatementKind kind = StatementKind::phrase;
  std::string subject;
  std::string before, after;  // the printed words, odd spaces made plain
  TextSpan was, is;           // in either draft; empty where it does not stand
};
// Statements are matched by kind, subject, qualifier and unit, in the order they stand; moved ones are the
// same. In the order of the later draft, each gone one where it stood.
std::vector<StatementChange> compare_statements(std::string_view before, const Reading& before_reading,
                                                std::string_view after, const Reading& after_reading);

// Something changed, and nothing that depends on it.
struct NotMoved {
  std::string what;  // "the gauge"
  std::string was, is;
  std::vector<StatementKind> changed;
  std::vector<StatementKind> still;  // that stayed as before
};
std::vector<NotMoved> dependents_not_moved(std::string_view before, const Reading& before_reading,
                                           std::string_view after, const Reading& after_reading);

// Two drafts as they came, without recorded replies, tested against the same facts in force.
struct DraftComparison {
  std::string before_name, after_name;
  std::vector<StatementChange> statements;
  std::vector<NotMoved> not_moved;
  std::vector<Finding> before, after;  // ranked
  FindingChange findings;              // indices into them
};
// `before` and `after` are indices into the drafts of the pattern.
DraftComparison compare_drafts(const Pattern& pattern, const Assessment& assessment, std::size_t before,
                               std::size_t after);

// How many findings of the drafts up to the one at hand, as they came, are in its review no more.
std::size_t findings_closed(const Pattern& pattern, const Assessment& assessment, const Review& review);

// A text against another, word by word.
enum class WordFate { same, gone, added };
struct WordRun {
  WordFate fate = WordFate::same;
  std::string text;
};
// The fewest words taken out and put in, up to some hundreds of them at a stretch; beyond, not always the
// fewest. Words are parted by white space, which goes with the word before it and counts for nothing. The
// greedy algorithm of E. W. Myers, "An O(ND) difference algorithm and its variations", Algorithmica 1 (1986)
// 251-266.
std::vector<WordRun> compare_words(std::string_view before, std::string_view after);
// The lines of the draft at hand that hold its yarn block, against the block the house would print. Empty
// where there is no draft.
std::vector<WordRun> compare_block(const Pattern& pattern, const Assessment& assessment);

}  // namespace skeinproof
