// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/manuscript/statement.h"

namespace skeinproof::testing {

// A statement to be read from a block, as tests/core/manuscript/corpus/README.md lays down.
struct ExpectedStatement {
  StatementKind kind = StatementKind::phrase;
  std::string subject;    // empty = not compared
  std::string qualifier;  // empty = not compared
  std::optional<PrintedUnit> unit;
  std::vector<std::optional<double>> values;  // empty = not compared
  std::string words;
};

enum class BlockState { clean, slips, chatter };

struct CorpusBlock {
  std::string name;
  std::string text;
  BlockState state = BlockState::clean;
  std::vector<ExpectedStatement> expected;
};

// The blocks of a half, "seen" or "held_back", by name. Throws std::runtime_error on a line it cannot take.
std::vector<CorpusBlock> corpus_half(const std::string& half);

bool is_read_as(const Statement& read, const ExpectedStatement& expected, const std::string& text);
// For each expected statement the index of the read one that answers it, none answering two; as many as can
// be.
std::vector<std::optional<std::size_t>> answered(const CorpusBlock& block, const Reading& reading);

std::string shown(const ExpectedStatement& expected);

}  // namespace skeinproof::testing
