// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/reading_words.h"

#include <algorithm>
#include <string>
#include <unordered_map>

#include "core/manuscript/word_tables.h"

namespace skeinproof {
namespace {

struct Tables {
  std::unordered_map<std::string_view, WordEntry> entries;

  Tables() {
    for (const auto& tables :
         {words_of_figures(), words_of_cloth(), words_of_yarns_and_fibres(), words_of_things()})
      for (const std::span<const TradeWord> table : tables)
        for (const TradeWord& row : table) add(row);
  }

 private:
  void add(const TradeWord& row) {
    WordEntry& entry = entries[row.words];
    if (entry.row == nullptr) entry.row = &row;  // the first table that has the words
    const auto words = static_cast<std::size_t>(std::count(row.words.begin(), row.words.end(), ' '));
    std::size_t& further = entries[row.words.substr(0, row.words.find(' '))].further;
    further = std::max(further, words);
  }
};

const Tables& tables() {
  static const Tables all;
  return all;
}

}  // namespace

const TradeWord* trade_word(std::string_view words) { return word_entry(words).row; }

WordEntry word_entry(std::string_view word) {
  const auto found = tables().entries.find(word);
  return found == tables().entries.end() ? WordEntry{} : found->second;
}

}  // namespace skeinproof
