// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/manuscript/file_texts.h"

namespace skeinproof {
namespace {

// A row of one cell, or with whole pages in a cell, lays out a page and is no table.
constexpr std::size_t most_lines_in_a_cell = 12;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

}  // namespace

void DocumentLines::collapsed(std::string_view text) {
  constexpr std::string_view white = " \t\n\r\f";
  for (std::size_t at = 0; at < text.size();) {
    const auto word = std::min(text.find_first_not_of(white, at), text.size());
    if (word > at && !open_.empty() && white.find(open_.back()) == std::string_view::npos) open_ += ' ';
    const auto end = std::min(text.find_first_of(white, word), text.size());
    open_.append(text, word, end - word);
    at = end;
  }
}

void DocumentLines::raised(std::string_view text) {
  if (!open_.empty() && is_digit(open_.back()) && !text.empty() && is_digit(text.front())) open_ += ' ';
  open_ += text;
}

void DocumentLines::end_line() {
  lines_.emplace_back(open_.substr(0, open_.find_last_not_of(" \t") + 1));
  open_.clear();
}

void DocumentLines::end_block() {
  if (open_.find_first_not_of(" \t") != std::string::npos) end_line();
  open_.clear();
}

void DocumentLines::begin_row() {
  end_block();
  rows_.emplace_back();
}

void DocumentLines::begin_cell() {
  if (rows_.empty()) return;
  rows_.back().outside.emplace_back(std::move(lines_), std::move(open_));
  lines_.clear();
  open_.clear();
}

void DocumentLines::end_cell() {
  if (rows_.empty() || rows_.back().outside.empty()) return;
  end_block();
  lines_.erase(std::remove(lines_.begin(), lines_.end(), ""), lines_.end());
  rows_.back().cells.push_back(std::move(lines_));
  std::tie(lines_, open_) = std::move(rows_.back().outside.back());
  rows_.back().outside.pop_back();
}

void DocumentLines::end_row() {
  if (rows_.empty()) return;
  while (!rows_.back().outside.empty()) end_cell();
  std::vector<Lines> cells = std::move(rows_.back().cells);
  rows_.pop_back();
  while (!cells.empty() && cells.back().empty()) cells.pop_back();
  const bool page = cells.size() < 2 || std::any_of(cells.begin(), cells.end(), [](const Lines& cell) {
                      return cell.size() > most_lines_in_a_cell;
                    });
  if (page) {
    for (Lines& cell : cells) std::move(cell.begin(), cell.end(), std::back_inserter(lines_));
    return;
  }
  std::vector<std::string> words;
  for (const Lines& cell : cells) words.push_back(join(cell, " "));
  lines_.push_back(join(words, "\t"));
}

std::string DocumentLines::take() {
  while (!rows_.empty()) end_row();
  end_block();
  std::string text;
  bool blank = true;  // none leads
  for (const std::string& line : lines_) {
    if (line.empty() && blank) continue;
    blank = line.empty();
    text += line + "\n";
  }
  lines_.clear();
  while (text.ends_with("\n\n")) text.pop_back();
  return text;
}

}  // namespace skeinproof
