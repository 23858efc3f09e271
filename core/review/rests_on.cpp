// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cctype>

#include "core/base/fingerprint.h"
#include "core/base/text.h"
#include "core/review/record_rows.h"

namespace skeinproof {
namespace {

// Where a line stands in the text is nothing that a decision rests on.
std::string_view without_line_number(std::string_view line) {
  if (!line.starts_with("line ")) return line;
  const auto end = line.find_first_not_of("0123456789", 5);
  return end == std::string_view::npos ? std::string_view() : line.substr(end);
}

class Mark {
 public:
  explicit Mark(std::string_view start) : mark_(fingerprint(start)) {}
  void add(std::string_view words) { mark_ = fingerprint(words, fingerprint("\x1f", mark_)); }
  std::string words() const { return fingerprint_words(mark_); }

 private:
  std::uint64_t mark_;
};

std::vector<std::string> printed_sizes(const Review& review) {
  std::vector<std::string> labels;
  for (const Statement& statement : review.reading.statements) {
    if (statement.kind != StatementKind::size_labels) continue;
    for (const PrintedValue& value : statement.values)
      labels.push_back(tidy_spaces(words_at(review.text, value.span)));
    break;
  }
  return labels;
}

bool is_of_a_word(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte >= 0x80 || std::isalnum(byte) != 0;
}

// The sizes that a line of the working names: "size 5: …", "told by size 4".
std::vector<std::string_view> sizes_named(std::string_view line) {
  constexpr std::string_view word = "size ";
  std::vector<std::string_view> named;
  for (auto at = line.find(word); at != std::string_view::npos; at = line.find(word, at + 1)) {
    if (at > 0 && is_of_a_word(line[at - 1])) continue;
    const std::size_t begin = at + word.size();
    std::size_t end = begin;
    while (end < line.size() && (is_of_a_word(line[end]) || line[end] == '-')) ++end;
    const auto label = line.substr(begin, end - begin);
    if (!label.empty() && std::find(named.begin(), named.end(), label) == named.end()) named.push_back(label);
  }
  return named;
}

// The cells of a line laid in columns, two spaces or more between them.
std::vector<std::string_view> cells_of(std::string_view line) {
  std::vector<std::string_view> cells;
  for (std::size_t at = 0; at < line.size();) {
    const std::size_t end = std::min(line.find("  ", at), line.size());
    cells.push_back(line.substr(at, end - at));
    at = std::min(line.find_first_not_of(' ', end), line.size());
  }
  return cells;
}

// What of the working concerns one size: its column, the lines that name it alone, those that name none.
void add_working(Mark& mark, const Finding& finding, std::string_view size) {
  std::vector<std::string_view> heads;
  for (const std::string& line : finding.evidence) {
    const auto cells = cells_of(line);
    if (cells.size() > 2 && cells.front() == "size") {
      heads = cells;
      continue;
    }
    if (!heads.empty() && cells.size() == heads.size()) {
      mark.add(cells.front());
      for (std::size_t i = 1; i < heads.size(); ++i)
        if (heads[i] == size) mark.add(cells[i]);
      continue;
    }
    const auto named = sizes_named(line);
    if (named.empty() || (named.size() == 1 && named.front() == size)) mark.add(without_line_number(line));
  }
}

// The printed values of those sizes; of a statement that is no list along the sizes all its words.
void add_statements(Mark& mark, const Review& review, const Finding& finding,
                    const std::vector<std::string>& sizes, const std::vector<std::string>& labels) {
  for (const std::size_t index : finding.statements) {
    if (index >= review.reading.statements.size()) continue;
    const Statement& statement = review.reading.statements[index];
    bool along = !sizes.empty() && statement.values.size() == labels.size();
    for (const std::string& size : sizes)
      along = along && std::find(labels.begin(), labels.end(), size) != labels.end();
    if (!along) mark.add(words_at(review.text, statement.span));
    for (std::size_t i = 0; along && i < labels.size(); ++i)
      if (std::find(sizes.begin(), sizes.end(), labels[i]) != sizes.end())
        mark.add(words_at(review.text, statement.values[i].span));
  }
}

std::string mark_of_size(const Review& review, const Finding& finding, const std::string& size,
                         const std::vector<std::string>& labels) {
  Mark mark(finding.check);
  add_working(mark, finding, size);
  add_statements(mark, review, finding, {size}, labels);
  return mark.words();
}

std::string without_sizes(const Finding& finding) {
  Finding same = finding;
  same.sizes.clear();
  return same.key();
}

// The sizes in the key of a row of the same check, roles and what else tells findings apart.
std::optional<std::vector<std::string>> sizes_of_row(const Query& query, const Finding& finding) {
  if (finding.sizes.empty() || !query.finding.starts_with(finding.check)) return std::nullopt;
  const std::string bare = without_sizes(finding);  // "N1|MC|" or "N1|MC||apart"
  const std::size_t head = bare.size() - (finding.apart.empty() ? 0 : finding.apart.size() + 1);
  const std::string_view row = query.finding, front = std::string_view(bare).substr(0, head),
                         back = std::string_view(bare).substr(head);
  if (row.size() < bare.size() || !row.starts_with(front) || !row.ends_with(back)) return std::nullopt;
  const auto sizes = row.substr(head, row.size() - bare.size());
  if (sizes.empty() || sizes.find('|') != std::string_view::npos) return std::nullopt;
  return split(sizes, ',');
}

bool within(const std::vector<std::string>& some, const std::vector<std::string>& all) {
  return !some.empty() && some.size() < all.size() &&
         std::all_of(some.begin(), some.end(), [&](const std::string& one) {
           return std::find(all.begin(), all.end(), one) != all.end();
         });
}

}  // namespace

std::string rests_on(const Review& review, const Finding& finding) {
  Mark whole(finding.check);
  for (const std::string& line : finding.evidence) whole.add(without_line_number(line));
  for (const TextSpan& place : finding.places) whole.add(words_at(review.text, place));
  const auto labels = printed_sizes(review);
  add_statements(whole, review, finding, finding.sizes, labels);
  std::string words = whole.words();
  for (const std::string& size : finding.sizes) words += " " + mark_of_size(review, finding, size, labels);
  return words;
}

bool is_narrowed(const Query& query, const Finding& finding) {
  const auto before = sizes_of_row(query, finding);
  return before && within(finding.sizes, *before);
}

bool is_widened(const Query& query, const Finding& finding) {
  const auto before = sizes_of_row(query, finding);
  return before && within(*before, finding.sizes);
}

bool rests_still(const Query& query, const Review& review, const Finding& finding) {
  const auto marks = split(query.rested_on, ' ');
  if (finding.key() == query.finding) return marks.front() == split(rests_on(review, finding), ' ').front();
  if (!is_narrowed(query, finding)) return false;
  const auto sizes = *sizes_of_row(query, finding);
  if (marks.size() != sizes.size() + 1) return false;
  const auto labels = printed_sizes(review);
  return std::all_of(finding.sizes.begin(), finding.sizes.end(), [&](const std::string& size) {
    const auto at = static_cast<std::size_t>(std::find(sizes.begin(), sizes.end(), size) - sizes.begin());
    return marks[at + 1] == mark_of_size(review, finding, size, labels);
  });
}

}  // namespace skeinproof
