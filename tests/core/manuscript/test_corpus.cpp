// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <iostream>
#include <map>

#include "core/manuscript/read_manuscript.h"
#include "tests/core/manuscript/corpus_blocks.h"

namespace skeinproof {
namespace {

using testing::BlockState;
using testing::corpus_half;
using testing::CorpusBlock;
using testing::ExpectedStatement;

const std::string seen = "seen", held_back = "held_back";

constexpr double least_share = 0.95;

std::vector<CorpusBlock> both_halves() {
  std::vector<CorpusBlock> all = corpus_half(seen);
  for (CorpusBlock& block : corpus_half(held_back)) all.push_back(std::move(block));
  return all;
}

// How much of a half is read rightly. Misses of the half that is held back are told by kind alone, so that
// nobody tunes the grammar to them.
struct Share {
  int right = 0;
  int expected = 0;
  int read = 0;
  double value() const { return static_cast<double>(right) / expected; }
};
Share share_of(const std::string& half) {
  Share share;
  std::map<std::string, int> missed;
  for (const CorpusBlock& block : corpus_half(half)) {
    const Reading reading = read_manuscript(block.text);
    const auto answers = answered(block, reading);
    share.read += static_cast<int>(reading.statements.size());
    share.expected += static_cast<int>(answers.size());
    for (std::size_t i = 0; i < answers.size(); ++i) {
      if (answers[i]) {
        ++share.right;
        continue;
      }
      ++missed[std::string(word_of(block.expected[i].kind))];
      if (half == seen) std::cout << "missed in " << block.name << ": " << shown(block.expected[i]) << "\n";
    }
  }
  for (const auto& [kind, times] : missed) std::cout << "missed " << times << " of " << kind << "\n";
  std::cout << half << ": " << share.right << " of " << share.expected << " read rightly ("
            << 100 * share.value() << " %), " << share.read << " statements read\n";
  return share;
}

TEST(Corpus, HoldsItsBlocksInBothHalves) {
  EXPECT_GE(corpus_half(seen).size(), 44U);
  EXPECT_GE(corpus_half(held_back).size(), 22U);
  for (const std::string& half : {seen, held_back}) {
    std::map<BlockState, int> states;
    for (const CorpusBlock& block : corpus_half(half)) ++states[block.state];
    EXPECT_GE(states[BlockState::chatter], 1);
    EXPECT_GE(states[BlockState::clean], 12);
    EXPECT_GE(states[BlockState::slips], 6);
  }
}

TEST(Corpus, ExpectedWordsStandInTheirBlock) {
  for (const CorpusBlock& block : both_halves()) {
    EXPECT_EQ(block.expected.empty(), block.state == BlockState::chatter) << block.name;
    for (const ExpectedStatement& expected : block.expected)
      EXPECT_NE(block.text.find(expected.words), std::string::npos) << block.name << ": " << shown(expected);
  }
}

TEST(Corpus, AStatementThatDiffersIsNoAnswer) {
  const std::string text = "MC Loam: 5 (6, 7) balls";
  Statement read;
  read.kind = StatementKind::count;
  read.subject = "MC";
  read.unit = PrintedUnit::skein;
  for (const double number : {5., 6., 7.}) read.values.push_back({number, 0.5, {}, false});
  read.span = {9, text.size()};
  ExpectedStatement expected{StatementKind::count, "MC", "", PrintedUnit::skein, {5, 6, 7}, "5 (6, 7)"};
  EXPECT_TRUE(is_read_as(read, expected, text));

  Statement other = read;
  other.values[1].number = 7;
  EXPECT_FALSE(is_read_as(other, expected, text));
  other = read;
  other.values.pop_back();
  EXPECT_FALSE(is_read_as(other, expected, text));
  other = read;
  other.unit = PrintedUnit::gram;
  EXPECT_FALSE(is_read_as(other, expected, text));
  other = read;
  other.subject = "CC";
  EXPECT_FALSE(is_read_as(other, expected, text));
  other = read;
  other.span = {0, 8};
  EXPECT_FALSE(is_read_as(other, expected, text));

  // One statement answers one expectation.
  const CorpusBlock twice{"", text, BlockState::clean, {expected, expected}};
  Reading reading;
  reading.statements = {read};
  const auto answers = answered(twice, reading);
  EXPECT_NE(answers[0].has_value(), answers[1].has_value());
}

TEST(Corpus, SeenHalfIsReadRightly) { EXPECT_GE(share_of(seen).value(), least_share); }

TEST(Corpus, HeldBackHalfIsReadRightly) { EXPECT_GE(share_of(held_back).value(), least_share); }

TEST(Corpus, NothingIsReadFromChatter) {
  for (const CorpusBlock& block : both_halves()) {
    if (block.state != BlockState::chatter) continue;
    for (const Statement& statement : read_manuscript(block.text).statements)
      ADD_FAILURE() << block.name << ": " << word_of(statement.kind) << " from "
                    << words_at(block.text, statement.span);
  }
}

TEST(Corpus, StatementsReadLieInTheirBlockInOrder) {
  for (const CorpusBlock& block : both_halves()) {
    std::size_t begin = 0;
    for (const Statement& statement : read_manuscript(block.text).statements) {
      EXPECT_LE(begin, statement.span.begin) << block.name;
      EXPECT_LE(statement.span.end, block.text.size()) << block.name;
      for (const PrintedValue& value : statement.values)
        EXPECT_TRUE(statement.span.holds(value.span)) << block.name << ": " << word_of(statement.kind);
      begin = statement.span.begin;
    }
  }
}

}  // namespace
}  // namespace skeinproof
