// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/manuscript/facts_as_read.h"
#include "core/manuscript/read_manuscript.h"
#include "core/pattern/edits.h"
#include "core/review/review.h"
#include "tests/core/manuscript/corpus_blocks.h"

namespace skeinproof {
namespace {

using testing::BlockState;
using testing::corpus_half;
using testing::CorpusBlock;

Pattern submitted(const CorpusBlock& block) {
  Pattern pattern = new_pattern();
  add_draft(pattern, block.text);
  return pattern;
}

int stops(const Pattern& pattern, const CorpusBlock& block, bool told) {
  int count = 0;
  const Review review = skeinproof::review(pattern, assess(pattern), {.search_slips = false});
  for (const Finding& finding : review.findings) {
    if (finding.severity != Severity::stop) continue;
    ++count;
    if (told) ADD_FAILURE() << block.name << ": " << finding.check << " " << finding.title;
  }
  return count;
}

void expect_no_stop_where_clean(const std::string& half) {
  for (const CorpusBlock& block : corpus_half(half)) {
    if (block.state == BlockState::slips) continue;
    const Pattern alone = submitted(block);
    stops(alone, block, true);
    stops(facts_as_read(alone, block.text, read_manuscript(block.text)).pattern, block, true);
  }
}

TEST(CorpusReview, NoStopOnCleanBlocksSeen) { expect_no_stop_where_clean("seen"); }

TEST(CorpusReview, NoStopOnCleanBlocksHeldBack) { expect_no_stop_where_clean("held_back"); }

// Most of the slips planted are of the kinds that must not print; that the clean ones stay silent would say
// nothing otherwise.
TEST(CorpusReview, BlocksWithSlipsAreStopped) {
  for (const std::string half : {"seen", "held_back"}) {
    int blocks = 0, stopped = 0;
    for (const CorpusBlock& block : corpus_half(half)) {
      if (block.state != BlockState::slips) continue;
      ++blocks;
      if (stops(submitted(block), block, false) > 0) ++stopped;
    }
    EXPECT_GE(4 * stopped, 3 * blocks) << half << ": " << stopped << " of " << blocks;
  }
}

}  // namespace
}  // namespace skeinproof
