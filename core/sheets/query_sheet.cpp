// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/query_sheet.h"

#include <algorithm>
#include <map>

#include "core/base/text.h"
#include "core/review/finding_words.h"
#include "core/sheets/sheet_parts.h"

namespace skeinproof {
namespace {

constexpr std::size_t most_places = 3;   // shown in a query
constexpr std::size_t most_answers = 3;  // to choose from
constexpr std::size_t most_working = 24;

std::string name_of_draft(const Pattern& pattern) {
  const Draft* draft = pattern.draft();
  if (draft == nullptr) return "the facts as typed";
  return draft->name.empty() ? "your draft" : draft->name;
}

std::string in_one_line(std::string_view words) {
  std::string line = tidy_spaces(words);
  std::replace_if(
      line.begin(), line.end(), [](char c) { return c == '\n' || c == '\r' || c == '\t'; }, ' ');
  return line;
}

std::string counted(std::size_t count, const std::string& word) {
  return std::to_string(count) + " " + word + (count == 1 ? "" : "s");
}

// The printed words, each as often as it takes to see what is meant.
void add_printed_words(Sheet& sheet, const Review& review, const Finding& finding) {
  std::vector<std::string> shown;
  for (const TextSpan& place : finding.places) {
    const auto words = words_at(review.text, place);
    const std::string line = "line " + std::to_string(line_column(review.text, place.begin).line) + ": " +
                             quoted(in_one_line(words), 110);
    if (!words.empty() && std::find(shown.begin(), shown.end(), line) == shown.end()) shown.push_back(line);
  }
  const std::size_t left_out = shown.size() > most_places ? shown.size() - most_places : 0;
  shown.resize(shown.size() - left_out);
  std::string text;
  for (const std::string& line : shown) text += (text.empty() ? "In " : "\n") + line;
  if (left_out > 0) text += "\nand in " + counted(left_out, "place") + " more";
  if (!text.empty()) sheet.parts.emplace_back(Paragraph{Voice::worked_out, std::move(text)});
}

// The working, but for lines that the question says itself.
void add_working(Sheet& sheet, const Finding& finding, const std::string& question) {
  Lines lines;
  for (const std::string& line : finding.evidence) {
    if (question.find(line) != std::string::npos) continue;
    if (lines.lines.size() == most_working) {
      lines.lines.push_back({{"plain", "…"}});
      break;
    }
    lines.lines.push_back({{"plain", line}});
  }
  if (!lines.lines.empty()) sheet.parts.emplace_back(std::move(lines));
}

std::string change_words(const std::string& before, const std::string& after) {
  const std::string to = after.empty() ? "nothing" : quoted(in_one_line(after));
  return before.empty() ? to : quoted(in_one_line(before)) + " → " + to;
}

// Other findings that the same answer settles.
std::string settled_too(const Review& review, const Cause& cause) {
  std::vector<std::string> titles;
  for (std::size_t i = 1; i < cause.findings.size(); ++i) {
    const std::string& title = review.findings[cause.findings[i]].title;
    if (std::find(titles.begin(), titles.end(), title) == titles.end()) titles.push_back(title);
  }
  if (titles.size() > most_places) {
    const std::size_t more = titles.size() - most_places;
    titles.resize(most_places);
    titles.push_back("and " + std::to_string(more) + " more");
  }
  return join(titles, "; ");
}

void add_answers(Sheet& sheet, const Review& review, const Cause& cause) {
  std::vector<std::string> proposals;
  if (cause.slip) {
    proposals.push_back(change_words(cause.slip->before, cause.slip->after));
    for (const LikelySlip& other : cause.others)
      if (proposals.size() < most_answers) proposals.push_back(change_words(other.before, other.after));
  } else {
    for (const std::size_t f : cause.findings)
      if (const Finding& finding = review.findings[f]; !finding.proposal_words.empty()) {
        proposals.push_back(finding.proposal_words);
        break;
      }
  }
  const std::string settles = settled_too(review, cause);
  if (cause.slip) {
    std::string words = "We propose " + proposals.front() + ".";
    if (!cause.slip->explains_too.empty()) words += " It agrees with: " + cause.slip->explains_too + ".";
    if (!settles.empty()) words += " It settles too: " + settles + ".";
    sheet.parts.emplace_back(Paragraph{Voice::worked_out, std::move(words)});
  } else if (!settles.empty()) {
    sheet.parts.emplace_back(Paragraph{Voice::worked_out, "Of the same words: " + settles + "."});
  }
  Choices choices;
  for (std::size_t i = 0; i < proposals.size(); ++i)
    choices.choices.push_back({(i == 0 ? "accept: " : "or: ") + proposals[i], false});
  choices.choices.push_back({proposals.empty() ? "answer" : "amend to", true});
  choices.choices.push_back({"keep as it is, because", true});
  sheet.parts.emplace_back(std::move(choices));
}

std::string of_sizes_and_colours(const Pattern& pattern) {
  return counted(pattern.sizes.size(), "size") +
         (pattern.roles.empty() ? "" : ", " + counted(pattern.roles.size(), "colour"));
}

// What could not be checked, the same reason once: "no need is known (N1, N2)".
std::vector<std::string> reasons_not_checked(const Review& review) {
  std::vector<std::pair<std::string, std::vector<std::string>>> reasons;
  for (const NotChecked& one : review.not_checked) {
    const auto known = std::find_if(reasons.begin(), reasons.end(),
                                    [&](const auto& reason) { return reason.first == one.because; });
    if (known == reasons.end())
      reasons.push_back({one.because, {one.check}});
    else if (std::find(known->second.begin(), known->second.end(), one.check) == known->second.end())
      known->second.push_back(one.check);
  }
  std::vector<std::string> words;
  for (const auto& [because, checks] : reasons) words.push_back(because + " (" + join(checks, ", ") + ")");
  return words;
}

std::size_t not_understood(const Review& review) {
  return static_cast<std::size_t>(std::count_if(review.reading.not_understood.begin(),
                                                review.reading.not_understood.end(),
                                                [](const NotUnderstood& one) { return !one.told_nothing; }));
}

}  // namespace

std::string place_of_query(const Review& review, const Finding& finding) {
  std::vector<std::string> parts;
  if (!finding.roles.empty()) parts.push_back(listed(finding.roles));
  if (!finding.sizes.empty()) parts.push_back(sizes_in_words(finding.sizes));
  if (parts.empty() && !finding.places.empty())
    parts.push_back("line " + std::to_string(line_column(review.text, finding.places.front().begin).line));
  return join(parts, ", ");
}

Sheet query_sheet(const Pattern& pattern, const Review& review, const Record& record, std::string_view date) {
  Sheet sheet = started_sheet(
      pattern, pattern.house(),
      "Queries on " + name_of_draft(pattern) + ". " + of_sizes_and_colours(pattern) + "; gravest first.",
      date);
  const std::string title = sheet.title;
  sheet.title += ": queries";
  std::size_t asked = 0;
  for (const Decision& decision : record.decisions) asked += decision.on_sheet ? 1 : 0;
  sheet.parts.emplace_back(Paragraph{
      Voice::worked_out, asked == 0
                             ? "Thank you for " + title + ". We have no questions."
                             : "Thank you for " + title + ". We have " + counted(asked, "question") +
                                   ". Please tick an answer to each, or write your own, and send this sheet "
                                   "back. Words in “quotation marks” are yours, as submitted."});
  for (std::size_t c = 0; c < record.decisions.size(); ++c) {
    const Decision& decision = record.decisions[c];
    if (!decision.on_sheet) continue;
    const Finding& finding = review.findings[decision.finding];
    const std::string place = place_of_query(review, finding);
    sheet.parts.emplace_back(Heading{decision.number, std::string(word_of(finding.severity)),
                                     place.empty() ? finding.title : place + ": " + finding.title});
    if (decision.state == DecisionState::lapsed)
      sheet.parts.emplace_back(Paragraph{
          Voice::worked_out, "Kept before" +
                                 (decision.row->reply.empty() ? "" : ", because: " + decision.row->reply) +
                                 ". What that rested on has changed since."});
    add_printed_words(sheet, review, finding);
    add_working(sheet, finding, decision.wording);
    sheet.parts.emplace_back(Paragraph{Voice::worked_out, decision.wording});
    add_answers(sheet, review, review.causes[c]);
  }
  sheet.foot_notes.push_back(
      "Stop: must not print. Ask: we need your answer. Note and Style: for you to know.");
  sheet.foot_notes.push_back("Checked: " + counted(static_cast<std::size_t>(review.checks_run), "rule") +
                             ".");
  const auto reasons = reasons_not_checked(review);
  if (!reasons.empty()) {
    std::vector<std::string> first(reasons.begin(), reasons.begin() + static_cast<std::ptrdiff_t>(std::min(
                                                                          reasons.size(), most_places)));
    const std::size_t more = reasons.size() - first.size();
    sheet.foot_notes.push_back(
        "Not checked: " + join(first, "; ") +
        (more > 0 ? "; and " + std::to_string(more) + " more, told on request." : "."));
  }
  return sheet;
}

namespace {

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
  for (const char* heading : {"rule", "reply", "state", "who", "when"})
    table.columns.push_back({heading, Align::left, false});
  for (const ClosedQuery& one : record.closed) {
    const std::string change =
        one.row.before.empty() ? one.row.reply : change_words(one.row.before, one.row.after);
    table.rows.push_back({{words(one.row.finding.substr(0, one.row.finding.find('|'))), words(change),
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
  sheet.parts.emplace_back(Paragraph{Voice::worked_out, std::move(left)});
  for (Table table : {decisions_table(review, record), replies_table(record)})
    if (!table.rows.empty()) sheet.parts.emplace_back(std::move(table));
  add_cautions(sheet, pattern);
  return sheet;
}

}  // namespace skeinproof
