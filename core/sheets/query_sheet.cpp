// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/query_sheet.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/review/change_words.h"
#include "core/review/finding_words.h"
#include "core/sheets/query_words.h"
#include "core/sheets/sheet_parts.h"

namespace skeinproof {
namespace {

constexpr std::size_t most_places = 3;   // shown in a query
constexpr std::size_t most_answers = 3;  // to choose from
constexpr std::size_t most_working = 24;

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

std::string proposal_of(const Review& review, const Finding& finding) {
  const std::string change = change_words(review, finding.proposal);
  return change.empty() ? finding.proposal_words : change;
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
    proposals.push_back(change_words(review, cause.slip->edits));
    for (const LikelySlip& other : cause.others) {
      std::string words = change_words(review, other.edits);
      const bool new_words = std::find(proposals.begin(), proposals.end(), words) == proposals.end();
      if (proposals.size() < most_answers && new_words) proposals.push_back(std::move(words));
    }
  } else {
    for (const std::size_t f : cause.findings)
      if (const Finding& finding = review.findings[f]; !finding.proposal_words.empty()) {
        proposals.push_back(proposal_of(review, finding));
        break;
      }
  }
  const std::string settles = settled_too(review, cause);
  if (cause.slip) {
    std::string words = "We propose to " + proposals.front() + ".";
    if (!cause.slip->explains_too.empty()) words += " It agrees with " + cause.slip->explains_too + ".";
    if (!settles.empty()) words += " It settles too: " + settles + ".";
    sheet.parts.emplace_back(Paragraph{Voice::worked_out, std::move(words)});
  } else if (!settles.empty()) {
    sheet.parts.emplace_back(Paragraph{Voice::worked_out, "Of the same words: " + settles + "."});
  }
  Choices choices;
  for (const std::string& proposal : proposals) choices.choices.push_back({proposal, false});
  choices.choices.push_back({proposals.empty() ? "answer" : "amend to", true});
  choices.choices.push_back({"keep as it is, because", true});
  sheet.parts.emplace_back(std::move(choices));
}

std::string of_sizes_and_colours(const Pattern& pattern) {
  return counted(pattern.sizes.size(), "size") +
         (pattern.roles.empty() ? "" : ", " + counted(pattern.roles.size(), "colour"));
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
  const std::string title = pattern.title.empty() ? "your pattern" : pattern.title;
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

}  // namespace skeinproof
