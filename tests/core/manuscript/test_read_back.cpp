// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <iostream>
#include <map>

#include "core/base/text.h"
#include "core/manuscript/facts_as_read.h"
#include "core/manuscript/house_styles.h"
#include "core/manuscript/read_manuscript.h"
#include "core/manuscript/write_block.h"
#include "core/pattern/edits.h"
#include "core/pattern/size_line.h"
#include "core/review/review.h"
#include "core/units/show.h"
#include "core/yarn/read_composition.h"
#include "tests/core/manuscript/clean_pattern.h"

namespace skeinproof {
namespace {

using testing::generate_clean_pattern;
using testing::generate_house_style;
using testing::Sample;
using Words = std::vector<std::string>;

bool prints(const HouseStyle& house, BlockElement element) {
  return std::find(house.order.begin(), house.order.end(), element) != house.order.end();
}

std::string fibres_of(const Yarn& yarn) {
  std::string words;
  for (const FibreShare& share : yarn.composition)
    words += std::to_string(static_cast<int>(share.percent.value)) + " " + share.fibre + " ";
  return words;
}

double bare(double value) { return value; }
template <class Quantity>
double bare(Quantity value) {
  return value.value();
}
template <class Quantity>
std::string figure(const std::optional<Entered<Quantity>>& entered) {
  return entered ? show_short(bare(entered->value), 6) : "none";
}

std::string put_up_of(const Yarn& yarn) {
  return figure(yarn.put_up.length) + " m per " + figure(yarn.put_up.weight) + " g " +
         std::string(word_of(yarn.put_up.word));
}

// What a block says that does not come back, one line each.
class ReadBack {
 public:
  ReadBack(const Sample& sample, const HouseStyle& house) : sample_(sample), house_(house) {
    text_ = write_block(sample.pattern, sample.assessment, house).text();
    Pattern bare = new_pattern();
    if (!prints(house, BlockElement::sizes)) set_sizes(bare, size_line(sample.pattern));
    const FactsAsRead facts = facts_as_read(bare, text_, read_manuscript(text_));
    read_ = facts.pattern;
    compare("sizes", join(size_line(sample.pattern).labels, " "), join(size_line(read_).labels, " "));
    compare_yarns();
    compare_roles();
    if (prints(house, BlockElement::sizes)) compare_measurements();
    if (prints(house, BlockElement::gauge)) compare_gauges();
    if (prints(house, BlockElement::needles)) compare_needles();
    if (prints(house, BlockElement::notions)) compare_notions();
  }

  const Words& differences() const { return differences_; }
  std::string report() const { return join(differences_, "\n") + "\nin\n" + text_; }

 private:
  void compare(const std::string& what, const std::string& written, const std::string& read) {
    if (written != read) differences_.push_back(what + ": " + written + " -> " + read);
  }

  void compare_yarns() {
    const auto& written = sample_.pattern.yarns;
    compare("number of yarns", std::to_string(written.size()), std::to_string(read_.yarns.size()));
    for (std::size_t i = 0; i < std::min(written.size(), read_.yarns.size()); ++i) {
      compare("yarn", written[i].name, read_.yarns[i].name);
      compare("fibres", fibres_of(written[i]), fibres_of(read_.yarns[i]));
      compare("put-up", put_up_of(written[i]), put_up_of(read_.yarns[i]));
    }
  }

  void compare_roles() {
    const auto& written = sample_.pattern.roles;
    compare("number of roles", std::to_string(written.size()), std::to_string(read_.roles.size()));
    for (std::size_t i = 0; i < std::min(written.size(), read_.roles.size()); ++i) {
      const Role &was = written[i], &is = read_.roles[i];
      compare("role", was.label, is.label);
      compare("shade", was.shade.name, is.shade.name);
      compare("shade number", was.shade.number, is.shade.number);
      const Yarn *yarn = sample_.pattern.yarn(was.yarn), *read = read_.yarn(is.yarn);
      compare("yarn of role", yarn->name, read == nullptr ? "none" : read->name);
      if (house_.counted_in == CountedIn::skeins) compare_counts(was, is);
    }
  }

  template <class Value>
  std::string list(const PerSize<Entered<Value>>& values) const {
    std::string words;
    for (std::size_t i = 0; i < sample_.pattern.sizes.size(); ++i)
      words += (values.find(i) == nullptr ? "–" : figure(values.at(i))) + " ";
    return words;
  }

  void compare_measurements() {
    const auto& written = sample_.pattern.measurements;
    compare("number of measurements", std::to_string(written.size()),
            std::to_string(read_.measurements.size()));
    for (std::size_t i = 0; i < std::min(written.size(), read_.measurements.size()); ++i)
      compare("measurement", written[i].name + " " + list(written[i].values),
              read_.measurements[i].name + " " + list(read_.measurements[i].values));
  }

  static std::string gauge_of(const Fabric& fabric) {
    const Gauge& gauge = fabric.gauge;
    return fabric.name + " " + figure(gauge.stitches) + " " + figure(gauge.rows) + " " +
           exact_number(gauge.over.value.value()) + " " + std::string(word_of(gauge.state)) + " " +
           std::string(word_of(gauge.worked)) + " " + std::string(word_of(fabric.structure));
  }
  void compare_gauges() {
    for (const Fabric& fabric : sample_.pattern.fabrics) {
      const Fabric* read = fabric_read(fabric.name);
      compare("gauge", gauge_of(fabric), read == nullptr ? "none" : gauge_of(*read));
    }
  }
  void compare_needles() {
    for (const Fabric& fabric : sample_.pattern.fabrics) {
      const Fabric* read = fabric_read(fabric.name);
      compare("needle", figure(fabric.needle), read == nullptr ? "none" : figure(read->needle));
    }
  }
  const Fabric* fabric_read(const std::string& name) const {
    const auto found = std::find_if(read_.fabrics.begin(), read_.fabrics.end(),
                                    [&](const Fabric& fabric) { return fabric.name == name; });
    return found == read_.fabrics.end() ? nullptr : &*found;
  }

  void compare_notions() {
    const auto& written = sample_.pattern.notions;
    compare("number of notions", std::to_string(written.size()), std::to_string(read_.notions.size()));
    for (std::size_t i = 0; i < std::min(written.size(), read_.notions.size()); ++i)
      compare("notion", written[i].name + " " + list(written[i].count),
              read_.notions[i].name + " " + list(read_.notions[i].count));
  }

  void compare_counts(const Role& was, const Role& is) {
    for (const RoleNeed& need : sample_.assessment.roles) {
      if (need.role != was.id) continue;
      std::string written, read;
      for (std::size_t i = 0; i < need.sizes.size(); ++i) {
        written += std::to_string(*need.sizes[i].skeins) + " ";
        const auto* count = is.printed_count.find(i);
        read += count == nullptr ? "– " : exact_number(count->value) + " ";
      }
      compare("count", written, read);
    }
    for (const LengthNote& note : sample_.assessment.length_notes)
      if (note.role == was.id)
        compare("note", exact_number(note.at_most.value()), figure(is.printed_at_most));
  }

  const Sample& sample_;
  const HouseStyle& house_;
  std::string text_;
  Pattern read_;
  Words differences_;
};

class ReadBackInStyle : public ::testing::TestWithParam<std::size_t> {};

TEST_P(ReadBackInStyle, gives_the_facts_that_were_written) {
  const HouseStyle& house = ready_house_styles()[GetParam()];
  EXPECT_TRUE(rc::check(house.name, [&] {
    const Sample sample = *generate_clean_pattern();
    const ReadBack back(sample, house);
    if (!back.differences().empty()) RC_FAIL(back.report());
  }));
}

INSTANTIATE_TEST_SUITE_P(every, ReadBackInStyle,
                         ::testing::Range<std::size_t>(0, ready_house_styles().size()));

// Any choices together, sensible or not; the shortest block of each kind of loss is shown. The size is that
// at which a range is drawn from whole.
TEST(read_back, in_house_styles_drawn_by_chance_gives_the_facts_of_every_block) {
  constexpr int blocks = 300, size = rc::kNominalSize;
  int read = 0;
  std::map<std::string, std::pair<int, std::string>> lost;  // by what is lost: how often, the shortest block
  for (int i = 1; i <= blocks; ++i) {
    const auto seed = static_cast<std::uint64_t>(i);
    const Sample sample = generate_clean_pattern()(rc::Random(seed), size).value();
    const HouseStyle house = generate_house_style()(rc::Random(seed + blocks), size).value();
    const ReadBack back(sample, house);
    read += back.differences().empty();
    if (back.differences().empty()) continue;
    const std::string& first = back.differences().front();
    auto& [times, example] = lost[first.substr(0, first.find(':'))];
    if (times++ == 0 || back.report().size() < example.size()) example = back.report();
  }
  std::cout << read << " of " << blocks << " blocks read back\n";
  for (const auto& [what, cases] : lost)
    std::cout << cases.first << " x " << what << "\n" << cases.second << "\n";
  EXPECT_EQ(read, blocks);
}

// What a review says of a block that is not to be said of a clean one, a line each.
Words said_of(const Pattern& pattern, const HouseStyle& house) {
  Words said;
  for (const Finding& finding : review(pattern, assess(pattern), {.search_slips = false}).findings) {
    // No block names its sample. A house that counts plies for the thickness says ply twice.
    const bool counts_plies = house.category_words == CategoryWords::ply_number ||
                              house.category_words == CategoryWords::united_kingdom;
    const bool by_house = finding.check == "D3" && counts_plies;
    if (finding.check != "L11" && !by_house) said.push_back(finding.check + " " + finding.title);
  }
  return said;
}

TEST(read_back, a_clean_block_in_any_house_style_raises_no_finding) {
  constexpr int blocks = 100, size = rc::kNominalSize;
  for (int i = 1; i <= blocks; ++i) {
    const auto seed = static_cast<std::uint64_t>(i);
    const Sample sample = generate_clean_pattern()(rc::Random(seed), size).value();
    HouseStyle house = generate_house_style()(rc::Random(seed + blocks), size).value();
    if (sample.pattern.roles.front().shade.number.empty()) house.shade_number = ShadeNumber::left_out;
    const std::string text = write_block(sample.pattern, sample.assessment, house).text();
    Pattern alone = new_pattern();
    alone.house_styles = {house};
    add_draft(alone, text);
    EXPECT_EQ(join(said_of(alone, house), "\n"), "") << text;
    const Pattern read = facts_as_read(alone, text, read_manuscript(text)).pattern;
    EXPECT_EQ(join(said_of(read, house), "\n"), "") << text;
  }
}

}  // namespace
}  // namespace skeinproof
