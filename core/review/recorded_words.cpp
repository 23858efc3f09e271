// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/recorded_words.h"

#include <algorithm>

#include "core/review/printed_view.h"

namespace skeinproof {
namespace {

constexpr std::size_t longest_line = 400;  // bytes

TextSpan hull(const TextSpan& a, const TextSpan& b) {
  return {std::min(a.begin, b.begin), std::max(a.end, b.end)};
}
bool meet(const TextSpan& a, const TextSpan& b) {
  return a == b || (a.begin < b.end && b.begin < a.end) ||
         (a.empty() && b.begin <= a.begin && a.begin <= b.end) ||
         (b.empty() && a.begin <= b.begin && b.begin <= a.end);
}

// The way between the text in force and the draft under it.
class UnderReplies {
 public:
  explicit UnderReplies(const std::vector<TextEdit>& replies) : replies_(replies) {
    std::size_t taken = 0, put = 0;
    for (const TextEdit& reply : replies_) {
      const std::size_t begin = reply.span.begin - taken + put;
      laid_.push_back({begin, begin + reply.after.size()});
      taken += reply.span.end - reply.span.begin;
      put += reply.after.size();
    }
  }

  // A stretch of the text in force, widened over the replies that it meets.
  TextSpan over_replies(TextSpan span) const {
    for (const TextSpan& laid : laid_)
      if (meet(span, laid)) span = hull(span, laid);
    return span;
  }
  TextSpan in_draft(const TextSpan& span) const {
    return {offset_in_draft(span.begin, false), offset_in_draft(span.end, true)};
  }

 private:
  // An offset outside the replies; `behind` one that ends there, else before it.
  std::size_t offset_in_draft(std::size_t at, bool behind) const {
    std::size_t offset = at;
    for (std::size_t i = 0; i < laid_.size(); ++i) {
      const bool before = behind ? laid_[i].end <= at : laid_[i].end <= at && laid_[i].begin < at;
      if (!before) break;
      offset = replies_[i].span.end + (at - laid_[i].end);
    }
    return offset;
  }

  const std::vector<TextEdit>& replies_;
  std::vector<TextSpan> laid_;  // of each reply in the text in force
};

TextSpan line_of(std::string_view text, const TextSpan& span) {
  const auto before = span.begin == 0 ? std::string_view::npos : text.rfind('\n', span.begin - 1);
  const auto behind = text.find('\n', span.end);
  return {before == std::string_view::npos ? 0 : before + 1,
          behind == std::string_view::npos ? text.size() : behind};
}

// The words on either side of a change in a line without end.
TextSpan words_around(std::string_view text, const TextSpan& span) {
  constexpr std::size_t far = 80;
  const auto before = text.find(' ', span.begin < far ? 0 : span.begin - far);
  const auto behind = text.rfind(' ', std::min(text.size(), span.end + far));
  return hull(span, {std::min(before, span.begin), behind == std::string_view::npos ? span.end : behind});
}

const Statement* statement_of(const Reading& reading, const TextSpan& span) {
  const Statement* least = nullptr;
  for (const Statement& one : reading.statements)
    if (one.span.holds(span) &&
        (least == nullptr || one.span.end - one.span.begin < least->span.end - least->span.begin))
      least = &one;
  return least;
}

// Wider and wider stretches around a change.
std::vector<TextSpan> wider(const Review& review, const TextSpan& span) {
  std::vector<TextSpan> all;
  if (const Statement* statement = statement_of(review.reading, span)) {
    all.push_back(statement->span);
    TextSpan breath = statement->span;
    for (const Statement& one : review.reading.statements)
      if (one.mention == statement->mention) breath = hull(breath, one.span);
    all.push_back(breath);
  }
  const TextSpan line = line_of(review.text, span);
  all.push_back(line.end - line.begin <= longest_line ? line : words_around(review.text, span));
  return all;
}

bool stands_once(std::string_view text, std::string_view words) {
  const auto first = text.find(words);
  return !words.empty() && text.find(words, first + 1) == std::string_view::npos;
}

}  // namespace

std::vector<RecordedWords> recorded_words(const std::string& draft, const std::vector<TextEdit>& replies,
                                          const Review& review, std::vector<TextEdit> edits) {
  const UnderReplies under(replies);
  std::stable_sort(edits.begin(), edits.end(),
                   [](const TextEdit& a, const TextEdit& b) { return a.span.begin < b.span.begin; });
  struct Group {
    TextSpan span;
    std::vector<TextEdit> edits;
  };
  std::vector<Group> groups;
  for (const TextEdit& edit : edits) {
    const bool inside = edit.span.begin <= edit.span.end && edit.span.end <= review.text.size();
    if (!inside || words_at(review.text, edit.span) == edit.after) continue;
    const Statement* statement = statement_of(review.reading, edit.span);
    const TextSpan home = statement != nullptr ? statement->span : edit.span;
    if (!groups.empty() &&
        (meet(groups.back().span, home) || line_of(review.text, groups.back().span).holds(edit.span))) {
      groups.back().span = hull(groups.back().span, home);
      groups.back().edits.push_back(edit);
    } else {
      groups.push_back({home, {edit}});
    }
  }
  std::vector<RecordedWords> recorded;
  for (const Group& group : groups) {
    TextSpan span;
    std::string_view before;
    for (const TextSpan& wide : wider(review, group.span)) {
      span = under.over_replies(hull(wide, group.span));
      before = words_at(draft, under.in_draft(span));
      if (stands_once(draft, before)) break;
    }
    if (before.empty()) continue;
    std::vector<TextEdit> inside = group.edits;
    for (TextEdit& edit : inside) edit.span = {edit.span.begin - span.begin, edit.span.end - span.begin};
    recorded.push_back({std::string(before), edited(words_at(review.text, span), std::move(inside)),
                        occurrence_of(draft, under.in_draft(span))});
  }
  return recorded;
}

}  // namespace skeinproof
