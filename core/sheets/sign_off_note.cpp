// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>

#include "core/base/text.h"
#include "core/sheets/query_sheet.h"
#include "core/sheets/query_words.h"
#include "core/sheets/sheet_parts.h"

namespace skeinproof {
namespace {

std::size_t not_understood(const Review& review) {
  return static_cast<std::size_t>(std::count_if(review.reading.not_understood.begin(),
                                                review.reading.not_understood.end(),
                                                [](const NotUnderstood& one) { return !one.told_nothing; }));
}

std::vector<const Decision*> of_state(const Record& record, DecisionState state) {
  std::vector<const Decision*> some;
  for (const Decision& decision : record.decisions)
    if (decision.state == state) some.push_back(&decision);
  return some;
}

std::vector<std::string> numbers(const std::vector<const Decision*>& decisions) {
  std::vector<std::string> all;
  for (const Decision* decision : decisions) all.push_back(decision->number);
  return all;
}

// "kept by the designer": by whom, where all of them say the same.
std::string kept_by(const std::vector<const Decision*>& kept) {
  const std::string& who = kept.front()->row->who;
  const bool one_voice = !who.empty() && std::all_of(kept.begin(), kept.end(), [&](const Decision* decision) {
    return decision->row->who == who;
  });
  return one_voice ? " kept by " + who : " kept";
}

std::string checked_words(const Pattern& pattern, const Review& review, const Record& record,
                          std::size_t closed) {
  std::string words = "Checked: " + counted(static_cast<std::size_t>(review.checks_run), "rule") + ", " +
                      name_of_draft(pattern) + ", " + counted(closed, "finding") + " closed";
  const auto kept = of_state(record, DecisionState::kept);
  if (!kept.empty())
    words += ", " + std::to_string(kept.size()) + kept_by(kept) + " (" + join(numbers(kept), ", ") + ")";
  std::map<Severity, std::vector<std::string>> open;
  for (const Decision& decision : record.decisions)
    if (decision.state != DecisionState::kept)
      open[review.findings[decision.finding].severity].push_back(decision.number);
  words += open.empty() ? ". Nothing is open." : ". Still there:";
  const char* between = " ";
  for (const auto& [severity, which] : open) {
    words += between + std::to_string(which.size()) + " " + std::string(word_of(severity)) + " (" +
             join(which, ", ") + ")";
    between = ", ";
  }
  return open.empty() ? words : words + ".";
}

Table decisions_table(const Review& review, const Record& record) {
  Table table;
  table.title = "Decisions";
  for (const char* heading : {"no.", "finding", "decision", "reason or reply", "who", "when"})
    table.columns.push_back({heading, Align::left, false});
  for (const Decision& decision : record.decisions) {
    if (!decision.row || decision.row->answer == QueryAnswer::none) continue;
    const Finding& finding = review.findings[decision.finding];
    const std::string place = place_of_query(review, finding);
    table.rows.push_back(
        {{words(decision.number), words(place.empty() ? finding.title : place + ": " + finding.title),
          words(std::string(word_of(decision.state))), words(decision.row->reply), words(decision.row->who),
          words(decision.row->when)},
         false});
  }
  return table;
}

Table replies_table(const Record& record) {
  Table table;
  table.title = "Replies";
  for (const char* heading : {"no.", "rule", "reply", "state", "who", "when"})
    table.columns.push_back({heading, Align::left, false});
  for (const ClosedQuery& one : record.closed) {
    const std::string change =
        one.row.before.empty() ? one.row.reply : replacement_words(one.row.before, one.row.after);
    table.rows.push_back(
        {{words(one.number), words(one.row.finding.substr(0, one.row.finding.find('|'))), words(change),
          words(one.row.answer == QueryAnswer::kept ? "kept, and found no more"
                                                    : std::string(word_of(one.state))),
          words(one.row.who), words(one.row.when)},
         false});
  }
  return table;
}

}  // namespace

Sheet sign_off_note(const Pattern& pattern, const Review& review, const Record& record, std::size_t closed,
                    std::string_view date) {
  Sheet sheet = started_sheet(pattern, pattern.house(), "Sign-off note", date);
  sheet.parts.emplace_back(Paragraph{Voice::worked_out, checked_words(pattern, review, record, closed)});
  const auto reasons = reasons_not_checked(review);
  std::string left = reasons.empty() ? "Not checked: nothing of what the rules ask."
                                     : "Not checked: " + join(reasons, "; ") + ".";
  if (const std::size_t count = not_understood(review); count > 0)
    left += " " + (count == 1 ? "1 stretch" : std::to_string(count) + " stretches") + " of the text " +
            (count == 1 ? "was" : "were") + " not understood.";
  if (const std::string words = words_on_language(review.reading); !words.empty()) left += " " + words;
  sheet.parts.emplace_back(Paragraph{Voice::worked_out, std::move(left)});
  for (Table table : {decisions_table(review, record), replies_table(record)})
    if (!table.rows.empty()) sheet.parts.emplace_back(std::move(table));
  add_cautions(sheet, pattern);
  return sheet;
}

}  // namespace skeinproof
