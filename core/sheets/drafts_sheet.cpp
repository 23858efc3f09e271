// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/text.h"
#include "core/review/finding_words.h"
#include "core/sheets/query_sheet.h"
#include "core/sheets/sheet_parts.h"

namespace skeinproof {
namespace {

Table started_table(std::string title, std::initializer_list<const char*> headings) {
  Table table;
  table.title = std::move(title);
  for (const char* heading : headings) table.columns.push_back({heading, Align::left, false});
  return table;
}

Table statements_table(const DraftComparison& comparison) {
  Table table = started_table("Statements", {"", "what", "of"});
  table.columns.push_back({comparison.before_name, Align::left, false});
  table.columns.push_back({comparison.after_name, Align::left, false});
  for (const StatementChange& change : comparison.statements)
    table.rows.push_back(
        {{words(std::string(word_of(change.fate))), words(std::string(word_of(change.kind))),
          words(change.subject), words(change.before.empty() ? "" : quoted(change.before, 120)),
          words(change.after.empty() ? "" : quoted(change.after, 120))},
         false});
  return table;
}

Table findings_table(std::string title, const std::vector<Finding>& findings,
                     const std::vector<std::size_t>& which) {
  Table table = started_table(std::move(title), {"", "rule", "place", "finding"});
  for (const std::size_t i : which) {
    const Finding& finding = findings[i];
    std::vector<std::string> place;
    if (!finding.roles.empty()) place.push_back(listed(finding.roles));
    if (!finding.sizes.empty()) place.push_back(sizes_in_words(finding.sizes));
    table.rows.push_back({{words(std::string(word_of(finding.severity))), words(finding.check),
                           words(join(place, ", ")), words(finding.title)},
                          false});
    table.rows.back().cells.front().strong = finding.severity == Severity::stop;
  }
  return table;
}

Table not_moved_table(const DraftComparison& comparison) {
  Table table = started_table("Changed, and nothing that depends on it", {"what"});
  table.columns.push_back({comparison.before_name, Align::left, false});
  table.columns.push_back({comparison.after_name, Align::left, false});
  table.columns.push_back({"as before", Align::left, false});
  for (const NotMoved& one : comparison.not_moved) {
    std::vector<std::string> still;
    for (const StatementKind kind : one.still) still.emplace_back(word_of(kind));
    table.rows.push_back(
        {{words(one.what), words(quoted(one.was, 80)), words(quoted(one.is, 80)), words(listed(still))},
         false});
  }
  return table;
}

// Marked in letters too, for paper and plain text.
void add_run(Lines& lines, const WordRun& run) {
  const char* mark = run.fate == WordFate::same ? "plain" : run.fate == WordFate::gone ? "gone" : "added";
  const char* open = run.fate == WordFate::same ? "" : run.fate == WordFate::gone ? "[was: " : "[is: ";
  const char* shut = run.fate == WordFate::same ? "" : "] ";
  const auto parts = split(run.text, '\n');
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) lines.lines.emplace_back();
    const auto text = run.fate == WordFate::same ? std::string_view(parts[i]) : trimmed(parts[i]);
    if (!text.empty()) lines.lines.back().push_back({mark, open + std::string(text) + shut});
  }
}

}  // namespace

Sheet drafts_sheet(const Pattern& pattern, const DraftComparison& comparison, std::string_view date) {
  Sheet sheet = started_sheet(pattern, pattern.house(),
                              "From " + comparison.before_name + " to " + comparison.after_name, date);
  const FindingChange& change = comparison.findings;
  sheet.parts.emplace_back(
      Paragraph{Voice::worked_out, "Statements that differ: " + std::to_string(comparison.statements.size()) +
                                       ". Findings closed: " + std::to_string(change.closes.size()) +
                                       ", opened: " + std::to_string(change.opens.size()) +
                                       ", still open: " + std::to_string(change.stays.size()) + "."});
  for (Table table : {statements_table(comparison), not_moved_table(comparison),
                      findings_table("Opened", comparison.after, change.opens),
                      findings_table("Closed", comparison.before, change.closes),
                      findings_table("Still open", comparison.before, change.stays)})
    if (!table.rows.empty()) sheet.parts.emplace_back(std::move(table));
  sheet.foot_notes.push_back(
      "Both drafts as they came, without recorded replies, against the facts now in force.");
  return sheet;
}

Sheet block_comparison_sheet(const Pattern& pattern, const Assessment& assessment, std::string_view date) {
  Sheet sheet =
      started_sheet(pattern, pattern.house(), "The submitted block, and the block in the house style", date);
  const auto runs = compare_block(pattern, assessment);
  if (runs.empty()) {
    sheet.parts.emplace_back(Paragraph{Voice::worked_out, "There is no submitted block."});
    return sheet;
  }
  Lines lines;
  lines.lines.emplace_back();
  for (const WordRun& run : runs) add_run(lines, run);
  sheet.parts.emplace_back(std::move(lines));
  sheet.foot_notes.push_back("[was: …] stands in the submitted block, [is: …] in the house's.");
  return sheet;
}

}  // namespace skeinproof
