// SPDX-License-Identifier: GPL-3.0-or-later
// Clean blocks in every ready house style, each with one slip of the pen: it is found, and its repair is
// among the first three edits offered.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <random>

#include "core/base/text.h"
#include "core/manuscript/house_styles.h"
#include "core/manuscript/read_manuscript.h"
#include "core/review/review.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

// How many slips are planted; SKEINPROOF_SLIPS asks for more.
int wished() {
  const char* more = std::getenv("SKEINPROOF_SLIPS");
  return more == nullptr ? 60 : std::atoi(more);
}

// A clean block of a sample in a house style, with its reading.
struct CleanBlock {
  Pattern pattern;
  std::string text;
  Reading reading;
};

std::vector<CleanBlock> clean_blocks() {
  std::vector<CleanBlock> blocks;
  for (Pattern pattern : {testing::quillmarsh(), testing::lampwick()}) {
    pattern.drafts = {};
    pattern.queries.clear();
    for (const HouseStyle& house : ready_house_styles()) {
      CleanBlock block{pattern, {}, {}};
      block.pattern.house_styles = {house};
      const Assessment assessment = assess(block.pattern);
      block.text = review(block.pattern, assessment, {false}).text;
      block.reading = read_manuscript(block.text);
      blocks.push_back(std::move(block));
    }
  }
  return blocks;
}

bool can_slip(StatementKind kind) {
  switch (kind) {
    case StatementKind::count:
    case StatementKind::total_count:
    case StatementKind::measurement:
    case StatementKind::put_up_length:
    case StatementKind::fibre:
    case StatementKind::gauge_rows:
      return true;
    default:
      return false;
  }
}

struct Slip {
  std::string kind;
  std::vector<TextEdit> edits;
};

class Planter {
 public:
  explicit Planter(unsigned seed) : random_(seed) {}

  std::size_t below(std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random_); }

  // One slip in the block; without edits where the dice fell on none.
  Slip plant(const CleanBlock& block) {
    std::vector<const Statement*> able;
    for (const Statement& statement : block.reading.statements)
      if (can_slip(statement.kind) && !statement.values.empty()) able.push_back(&statement);
    const Statement& statement = *able[below(able.size())];
    switch (below(5)) {
      case 0:
        return digit(block, statement);
      case 1:
        return transposed(block, statement);
      case 2:
        return neighbours(block, statement);
      case 3:
        return units(block, statement);
      default:
        return left_out(block, statement);
    }
  }

 private:
  std::string words(const CleanBlock& block, const PrintedValue& value) {
    return std::string(words_at(block.text, value.span));
  }

  Slip digit(const CleanBlock& block, const Statement& statement) {
    const PrintedValue& value = statement.values[below(statement.values.size())];
    std::string after = words(block, value);
    std::vector<std::size_t> digits;
    for (std::size_t i = 0; i < after.size(); ++i)
      if (after[i] >= '0' && after[i] <= '9') digits.push_back(i);
    if (digits.empty()) return {};
    const std::size_t at = digits[below(digits.size())];
    const char before = after[at];
    after[at] = static_cast<char>('0' + below(10));
    if (after[at] == before || after.front() == '0') return {};
    return {"digit of " + std::string(word_of(statement.kind)), {{value.span, after}}};
  }

  Slip transposed(const CleanBlock& block, const Statement& statement) {
    const PrintedValue& value = statement.values[below(statement.values.size())];
    std::string after = words(block, value);
    if (after.size() < 2) return {};
    const std::size_t at = below(after.size() - 1);
    const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
    if (!is_digit(after[at]) || !is_digit(after[at + 1]) || after[at] == after[at + 1] ||
        after[at + 1] == '0')
      return {};
    std::swap(after[at], after[at + 1]);
    return {"digits transposed in " + std::string(word_of(statement.kind)), {{value.span, after}}};
  }

  Slip neighbours(const CleanBlock& block, const Statement& statement) {
    if (statement.values.size() < 2) return {};
    const std::size_t at = below(statement.values.size() - 1);
    const std::string a = words(block, statement.values[at]), b = words(block, statement.values[at + 1]);
    if (a == b) return {};
    return {"neighbours exchanged in " + std::string(word_of(statement.kind)),
            {{statement.values[at].span, b}, {statement.values[at + 1].span, a}}};
  }

  Slip units(const CleanBlock& block, const Statement& statement) {
    for (const Statement& other : block.reading.statements) {
      if (&other == &statement || other.kind != statement.kind || other.mention != statement.mention)
        continue;
      if (other.values.size() != statement.values.size() || other.unit == statement.unit) continue;
      Slip slip{"units exchanged in " + std::string(word_of(statement.kind)), {}};
      for (std::size_t v = 0; v < other.values.size(); ++v) {
        slip.edits.push_back({statement.values[v].span, words(block, other.values[v])});
        slip.edits.push_back({other.values[v].span, words(block, statement.values[v])});
      }
      return slip;
    }
    return {};
  }

  Slip left_out(const CleanBlock& block, const Statement& statement) {
    (void)block;
    if (statement.values.size() < 3) return {};
    const std::size_t at = 1 + below(statement.values.size() - 1);
    const bool last = at + 1 == statement.values.size();
    if (!last && statement.values[at + 1].opens_group) return {};
    if (last && statement.values[at].opens_group) return {};
    const TextSpan cut = last
                             ? TextSpan{statement.values[at - 1].span.end, statement.values[at].span.end}
                             : TextSpan{statement.values[at].span.begin, statement.values[at + 1].span.begin};
    return {"value left out of " + std::string(word_of(statement.kind)), {{cut, ""}}};
  }

  std::mt19937 random_;
};

struct Tally {
  int planted = 0, found = 0, repaired = 0;
};

bool repairs(const LikelySlip& slip, const std::string& planted, const std::string& clean) {
  return edited(planted, slip.edits) == clean;
}

TEST(PlantedSlips, AreFoundAndTheirRepairIsAmongTheFirstThree) {
  const auto blocks = clean_blocks();
  Planter planter(20);
  std::map<std::string, Tally> tallies;
  Tally all;
  for (int tries = 0; all.planted < wished() && tries < 100 * wished(); ++tries) {
    const CleanBlock& block = blocks[planter.below(blocks.size())];
    const Slip slip = planter.plant(block);
    if (slip.edits.empty()) continue;
    Pattern pattern = block.pattern;
    const std::string text = edited(block.text, slip.edits);
    pattern.drafts.edit([&](std::vector<Draft>& drafts) {
      drafts.emplace_back();
      drafts.back().text = text;
    });
    const Assessment assessment = assess(pattern);
    const Review clean = review(block.pattern, assess(block.pattern), {false});
    const Review planted = review(pattern, assessment);
    Tally& tally = tallies[slip.kind];
    ++tally.planted;
    ++all.planted;
    const bool found =
        std::any_of(planted.findings.begin(), planted.findings.end(), [&](const Finding& finding) {
          return std::none_of(clean.findings.begin(), clean.findings.end(),
                              [&](const Finding& other) { return other.key() == finding.key(); });
        });
    bool repaired = false;
    for (const Cause& cause : planted.causes) {
      if (!cause.slip) continue;
      repaired = repaired || repairs(*cause.slip, text, block.text);
      for (std::size_t i = 0; i < cause.others.size() && i < 2; ++i)
        repaired = repaired || repairs(cause.others[i], text, block.text);
    }
    tally.found += found;
    tally.repaired += repaired;
    all.found += found;
    all.repaired += repaired;
    if ((!found || !repaired) && std::getenv("SKEINPROOF_SLIPS_SHOWN") != nullptr) {
      std::string was, is;
      for (const TextEdit& edit : slip.edits) {
        was += std::string(words_at(block.text, edit.span)) + " ";
        is += edit.after + " ";
      }
      GTEST_LOG_(INFO) << (found ? "not repaired: " : "not found: ") << slip.kind << ": " << was << "-> "
                       << is;
    }
  }
  for (const auto& [kind, tally] : tallies)
    RecordProperty(kind, std::to_string(tally.found) + " found, " + std::to_string(tally.repaired) +
                             " repaired of " + std::to_string(tally.planted));
  EXPECT_EQ(all.planted, wished());
  EXPECT_GE(all.found, 0.9 * all.planted);
  EXPECT_GE(all.repaired, 0.9 * all.planted);
  if (std::getenv("SKEINPROOF_SLIPS_SHOWN") != nullptr)
    for (const auto& [kind, tally] : tallies)
      GTEST_LOG_(INFO) << kind << ": " << tally.planted << " planted, " << tally.found << " found, "
                       << tally.repaired << " repaired";
}

}  // namespace
}  // namespace skeinproof
