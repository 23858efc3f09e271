// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/manuscript/statement.h"
#include "core/need/assessment.h"
#include "core/need/evidence.h"
#include "core/pattern/pattern.h"
#include "core/review/finding.h"

namespace skeinproof {

// A printed list laid along the sizes. Values are aligned by order; where there are fewer than sizes, by the
// brackets of the sizes line, gaps at the end of the short group.
struct PrintedList {
  const Statement* statement = nullptr;
  std::vector<const PrintedValue*> values;  // one entry for each size; null = gap, or no figure there
  std::size_t printed = 0;                  // how many values stand there
  bool complete = false;                    // as many as sizes, or said of all sizes
};

struct PrintedYarn {
  std::string name;
  std::vector<const Statement*> names, fibres, lengths, weights, descriptions, band_gauges, care;
  // First mention; absent where not printed. Metric where both stand there.
  std::optional<double> metres, grams;
  YarnId fact;  // the yarn in force of the same name, or 0
};

struct PrintedRole {
  std::string label;
  const Statement* role = nullptr;
  const Statement* shade = nullptr;
  const Statement* number = nullptr;
  std::optional<PrintedList> count;     // skeins
  std::vector<const Statement*> notes;  // metres and yards
  int yarn = -1;                        // index into PrintedView::yarns
  RoleId fact;                          // the role in force of the same label, or 0
};

// What the checks test: the printed words with recorded replies laid over them; where there is no submission,
// what the block writer prints from the facts. Points into `reading`, so it cannot be copied.
class PrintedView {
 public:
  PrintedView(std::string text, const std::vector<PartTold>& parts, const std::vector<Telling>& tellings,
              const Pattern& pattern);
  // Of a text that was read already.
  PrintedView(std::string text, Reading reading, const Pattern& pattern);
  PrintedView(const PrintedView&) = delete;
  PrintedView& operator=(const PrintedView&) = delete;

  const std::string& text() const { return text_; }
  const Reading& reading() const { return reading_; }
  const std::vector<PrintedYarn>& yarns() const { return yarns_; }
  const std::vector<PrintedRole>& roles() const { return roles_; }
  const PrintedRole* role(std::string_view label) const;
  const std::vector<std::string>& size_labels() const { return size_labels_; }  // as printed, else in force
  std::size_t sizes() const { return size_labels_.size(); }
  const Statement* sizes_line() const { return sizes_line_; }
  std::optional<PrintedList> total() const;

  std::vector<const Statement*> all(StatementKind kind) const;
  std::vector<const Statement*> mentioned_with(
      const Statement& statement) const;  // of the same breath, with it
  PrintedList list(const Statement& statement) const;
  std::string_view words(const TextSpan& span) const { return words_at(text_, span); }
  std::string_view words(const PrintedValue& value) const { return words(value.span); }
  std::size_t index(const Statement& statement) const;  // in reading().statements
  bool whole(TextPart part) const { return reading_.extent(part) == PartExtent::whole; }

 private:
  std::string text_;
  Reading reading_;
  std::vector<PrintedYarn> yarns_;
  std::vector<PrintedRole> roles_;
  std::vector<std::string> size_labels_;
  const Statement* sizes_line_ = nullptr;
  std::vector<std::size_t> groups_;  // sizes in each bracket of the sizes line
};

// Which of the equal words of a text a span is, counted from 1 over every place where they begin, and back;
// absent where the words do not stand there so often.
int occurrence_of(std::string_view text, const TextSpan& span);
std::optional<TextSpan> span_of(std::string_view text, std::string_view words, int occurrence);

// Where the old words of a recorded reply stand in a draft; absent where they do not, or where the draft has
// the new words there already.
std::optional<TextSpan> reply_place(std::string_view draft, const Query& query);

// The changes of words that accepted and amended queries record, as edits of the draft at hand, in the order
// of the text. A query whose words stand there no more changes nothing; of two that meet, the later counts.
std::vector<TextEdit> recorded_replies(const Pattern& pattern);

// The text in force: the draft at hand with its replies laid over it, or the block of the facts with all of
// its elements that the facts hold.
std::string printed_text(const Pattern& pattern, const Assessment& assessment);

}  // namespace skeinproof
