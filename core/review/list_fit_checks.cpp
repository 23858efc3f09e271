// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/need/area.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/role_figures.h"

namespace skeinproof {
namespace {

using Counts = std::vector<std::optional<double>>;

// The printed skeins of a role along the sizes in force.
Counts printed_counts(const ReviewInput& input, const RoleFigures& role) {
  Counts counts(input.pattern.sizes.size());
  for (std::size_t i = 0; i < input.printed.sizes(); ++i)
    if (role.in_force[i]) counts[*role.in_force[i]] = role.printed_skeins(i);
  return counts;
}

std::string join_counts(const std::vector<std::optional<int>>& counts) {
  std::vector<std::string> words;
  for (const auto& count : counts) words.push_back(count ? std::to_string(*count) : "–");
  return join(words, ", ");
}

bool as_in_force(const RoleFigures& role, const Mend& mend) {
  for (std::size_t i = 0; i < role.in_force.size(); ++i) {
    const auto wanted = role.count_in_force(i);
    if (!wanted || !role.in_force[i] || mend.counts[*role.in_force[i]] != wanted) return false;
  }
  return true;
}

std::string mend_words(const Pattern& pattern, const StepReading& reading, const Mend& mend) {
  const auto label = [&](std::size_t size) { return pattern.sizes[size].label; };
  if (mend.exchanged_with)
    return "exchange sizes " + label(mend.size_index) + " and " + label(*mend.exchanged_with);
  const int count = *mend.counts[mend.size_index];
  return std::to_string(count) + " at size " + label(mend.size_index) + " instead of " +
         std::to_string(*reading.sizes[mend.size_index].count);
}

// The size between whose bounds nothing is left, and what bounds it.
void show_clash(Finding& finding, const ReviewInput& input, const StepReading& reading) {
  const FindingWords words(input);
  const auto& sizes = input.pattern.sizes;
  const Clash& clash = *reading.clash;
  for (const std::size_t size : {clash.asks_more, clash.allows_less}) {
    const int count = *reading.sizes[size].count;
    const auto own = own_steps(reading, size);
    finding.evidence.push_back("size " + sizes[size].label + ": " + words.skeins(count) + " of " +
                               words.metres(reading.skein.value()) + " say more than " +
                               words.metres(own->low.value()) + " and at most " +
                               words.metres(own->high.value()));
  }
  for (std::size_t i = 0; i < reading.sizes.size(); ++i) {
    const SizeSteps& steps = reading.sizes[i];
    if (!steps.known() || steps.low->told_by != clash.asks_more || steps.high->told_by != clash.allows_less ||
        steps.low->length < steps.high->length)
      continue;
    finding.evidence.push_back(
        "so size " + sizes[i].label + " takes more than " + words.metres(steps.low->length.value()) +
        " (told by size " + sizes[clash.asks_more].label + ") and at most " +
        words.metres(steps.high->length.value()) + " (told by size " + sizes[clash.allows_less].label + ")");
    break;
  }
  finding.evidence.push_back("growth band: " + std::string(word_of(reading.band)) + ", exponent " +
                             words.number(reading.limits.low, 2) + " to " +
                             words.number(reading.limits.high, 2) + " over the " +
                             std::string(word_of(reading.over)));
}

const Mend* best_mend(const RoleFigures& role, const Clash& clash) {
  for (const Mend& mend : clash.mends)
    if (as_in_force(role, mend)) return &mend;
  return clash.mends.empty() ? nullptr : &clash.mends.front();
}

void propose_counts(Finding& finding, const ReviewInput& input, const RoleFigures& role,
                    const std::vector<std::optional<int>>& counts) {
  for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
    if (!role.in_force[i] || !counts[*role.in_force[i]]) continue;
    const PrintedValue* value = value_at(*role.printed->count, i);
    if (value == nullptr || !value->number || *value->number == *counts[*role.in_force[i]]) continue;
    propose(finding, input.printed, value->span, std::to_string(*counts[*role.in_force[i]]));
  }
}

// The evidence holds the areas where it has read the counts in force.
Expected<StepReading> steps_as_printed(const ReviewInput& input, const RoleFigures& role,
                                       const Counts& counts) {
  if (role.fact == nullptr) return failure(ErrorKind::not_found, "no facts", "sizes and a put-up in force");
  if (role.evidence == nullptr || !role.evidence->steps) return read_steps(input.need, *role.fact, counts);
  const StepReading& in_force = *role.evidence->steps;
  auto reading = read_steps(StepInput{counts, in_force.extents, in_force.skein, in_force.limits});
  if (!reading) return reading;
  reading->over = in_force.over;
  reading->band = in_force.band;
  return reading;
}

void clash_finding(const ReviewInput& input, Findings& findings, const RoleFigures& role,
                   const StepReading& reading) {
  const Clash& clash = *reading.clash;
  const auto& sizes = input.pattern.sizes;
  Finding& finding = findings.add("two sizes cannot both be right");
  finding.roles = {role.printed->label};
  std::vector<std::size_t> pair = {clash.asks_more, clash.allows_less};
  std::sort(pair.begin(), pair.end());
  std::vector<std::string> quoted_counts;
  for (const std::size_t size : pair) {
    finding.sizes.push_back(sizes[size].label);
    for (std::size_t i = 0; i < input.printed.sizes(); ++i)
      if (role.in_force[i] == size)
        if (const PrintedValue* value = value_at(*role.printed->count, i)) {
          show_value(finding, input.printed, *role.printed->count->statement, *value);
          quoted_counts.emplace_back(input.printed.words(*value));
        }
  }
  finding.title += ": “" + join(quoted_counts, "” and “") + "”";
  show_clash(finding, input, reading);
  std::vector<std::string> mends;
  for (const Mend& mend : clash.mends)
    if (mends.size() < 6) mends.push_back(mend_words(input.pattern, reading, mend));
  finding.evidence.push_back(mends.empty() ? "no single change of one skein mends it"
                                           : "would mend it: " + join(mends, "; "));
  if (const Mend* mend = best_mend(role, clash)) {
    propose_counts(finding, input, role, mend->counts);
    finding.evidence.push_back("the mended list: " + join_counts(mend->counts));
  }
  finding.query = "For " + role.printed->label + ", the counts of sizes " + finding.sizes.front() + " and " +
                  finding.sizes.back() + " do not fit one way of growing: " + finding.evidence[2] +
                  ". Which is right" + (mends.empty() ? "?" : "? This would mend it: " + mends.front() + ".");
}

// The printed skeins of a role and the skeins it needs, both known for every size.
struct BothLists {
  const RoleFigures* role = nullptr;
  std::vector<int> printed, needed;
};
std::vector<BothLists> both_lists(const ReviewInput& input, Findings& findings,
                                  const std::vector<RoleFigures>& roles) {
  std::vector<BothLists> all;
  std::vector<std::string> without;
  for (const RoleFigures& role : roles) {
    BothLists lists;
    lists.role = &role;
    for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
      const auto printed = role.printed_skeins(i);
      const auto needed = role.skeins_needed(i);
      if (!printed || !needed) break;
      lists.printed.push_back(static_cast<int>(std::lround(*printed)));
      lists.needed.push_back(*needed);
    }
    if (lists.printed.size() == input.printed.sizes())
      all.push_back(std::move(lists));
    else
      without.push_back(role.printed->label);
  }
  if (!without.empty() || roles.empty())
    findings.cannot("not both the count and the need of every size are known" +
                        (without.empty() ? std::string() : " for " + listed(without)),
                    "a whole list of skeins, and the stitches of the pieces");
  return all;
}

int distance(const std::vector<int>& one, const std::vector<int>& other) {
  int sum = 0;
  for (std::size_t i = 0; i < one.size(); ++i) sum += std::abs(one[i] - other[i]);
  return sum;
}

// Whether the printed values are those of their neighbours' needs, all of them.
bool moved_by(const BothLists& lists, int by) {
  const auto n = static_cast<int>(lists.printed.size());
  for (int i = 0; i < n; ++i)
    if (i + by >= 0 && i + by < n &&
        lists.printed[static_cast<std::size_t>(i + by)] != lists.needed[static_cast<std::size_t>(i)])
      return false;
  return true;
}

std::vector<std::string> words_of(const std::string& name, const std::vector<int>& figures) {
  std::vector<std::string> row{name};
  for (const int figure : figures) row.push_back(std::to_string(figure));
  return row;
}

void propose_list(Finding& finding, const ReviewInput& input, const RoleFigures& role,
                  const std::vector<int>& list) {
  for (std::size_t i = 0; i < list.size(); ++i)
    if (const PrintedValue* value = value_at(*role.printed->count, i))
      if (value->number && *value->number != list[i])
        propose(finding, input.printed, value->span, std::to_string(list[i]));
}

// The extents the growth is measured over, of the smallest and the largest size.
struct GrowthSpan {
  double ratio = 1;
  GrowthOver over = GrowthOver::area;
};
std::optional<GrowthSpan> growth_span(const ReviewInput& input, std::size_t first, std::size_t last) {
  const auto& areas = input.assessment.area_m2;
  if (last < areas.size() && areas[first] && areas[last] && *areas[first] > 0)
    return GrowthSpan{*areas[last] / *areas[first], GrowthOver::area};
  const auto one = finished_circumference(input.pattern, first);
  const auto other = finished_circumference(input.pattern, last);
  if (one && other && *one > 0) return GrowthSpan{*other / *one, GrowthOver::circumference};
  return std::nullopt;
}

}  // namespace

void check_l4(const ReviewInput& input, Findings& findings) {
  const auto roles = role_figures(input);
  std::vector<std::string> without;
  std::string because;
  for (const RoleFigures& role : roles) {
    const Counts counts = printed_counts(input, role);
    if (!role.printed->count || role.printed->count->printed < 2) continue;
    const auto reading = steps_as_printed(input, role, counts);
    if (!reading) {
      without.push_back(role.printed->label);
      because = reading.error().found + "; wanted: " + reading.error().expected;
    } else if (reading->clash) {
      clash_finding(input, findings, role, *reading);
    }
  }
  if (roles.empty()) because = "no colours were read in the yarn block";
  if (!because.empty())
    findings.cannot((without.empty() ? "" : listed(without) + ": ") + because,
                    "counts in skeins, the put-up, and areas or finished measurements of the sizes");
}

void check_l5(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  std::vector<std::string> without;
  for (const RoleFigures& role : role_figures(input)) {
    if (!role.printed->count || role.fact == nullptr || input.printed.sizes() < 2) continue;
    const std::size_t n = input.printed.sizes();
    const auto count = role.printed_skeins(0);
    bool flat = count && *count >= 2;
    for (std::size_t i = 1; i < n && flat; ++i) flat = role.printed_skeins(i) == count;
    if (!flat || !role.in_force[0] || !role.in_force[n - 1]) continue;
    const auto span = growth_span(input, *role.in_force[0], *role.in_force[n - 1]);
    if (!span) {
      without.push_back(role.printed->label);
      continue;
    }
    const GrowthLimits limits =
        growth_limits(input.pattern, growth_band(input.pattern, *role.fact), span->over);
    if (!(limits.low > 0)) continue;
    const double allowed = std::pow(*count / (*count - 1), 1 / limits.low);
    if (span->ratio < allowed) continue;
    Finding& finding =
        findings.add("one count for all sizes: “" +
                     std::string(input.printed.words(role.printed->count->statement->span)) + "”");
    finding.roles = {role.printed->label};
    show(finding, input.printed, *role.printed->count->statement);
    const std::string line = words.skeins(*count) + " in " + std::to_string(n) +
                             " sizes would need a ratio of " + std::string(word_of(span->over)) + "s below " +
                             words.number(allowed, 2) + ", and it is " + words.number(span->ratio, 2);
    finding.evidence = {line, "(" + words.number(*count, 2) + " ÷ " + words.number(*count - 1, 2) +
                                  ")^(1 ÷ " + words.number(limits.low, 2) +
                                  ") = " + words.number(allowed, 2)};
    std::vector<std::optional<int>> wanted(input.pattern.sizes.size());
    for (std::size_t i = 0; i < n; ++i)
      if (role.in_force[i]) wanted[*role.in_force[i]] = role.count_in_force(i);
    propose_counts(finding, input, role, wanted);
    finding.query = role.printed->label + " has " + words.skeins(*count) + " in every size: " + line +
                    ". Is the yarn sold as a kit, or was one size's count used for all?";
  }
  if (!without.empty())
    findings.cannot("neither area nor circumference is known for the sizes of " + listed(without),
                    "the need sheet or finished measurements");
}

void check_l7(const ReviewInput& input, Findings& findings) {
  const auto roles = role_figures(input);
  for (const BothLists& lists : both_lists(input, findings, roles)) {
    if (lists.printed.size() < 3) continue;
    std::size_t off = 0;
    for (std::size_t i = 0; i < lists.printed.size(); ++i) off += lists.printed[i] != lists.needed[i] ? 1 : 0;
    // One figure that is off is a slip of that figure, even if a move would hide it.
    if (off < 2) continue;
    for (const int by : {1, -1}) {
      if (!moved_by(lists, by)) continue;
      const std::string where = by > 0 ? "one size too late" : "one size too early";
      Finding& finding = findings.add("the list fits when it is moved: it stands " + where);
      finding.roles = {lists.role->printed->label};
      show(finding, input.printed, *lists.role->printed->count->statement);
      std::vector<std::string> sizes{"size"};
      sizes.insert(sizes.end(), input.printed.size_labels().begin(), input.printed.size_labels().end());
      finding.evidence =
          in_columns({sizes, words_of("printed", lists.printed), words_of("needed", lists.needed)});
      propose_list(finding, input, *lists.role, lists.needed);
      finding.query = "The counts of " + lists.role->printed->label + ", " +
                      printed_words(input.printed, *lists.role->printed->count->statement) +
                      ", fit the sizes when the list is moved one place. Did it slip " + where + "?";
      break;
    }
  }
}

void check_l8(const ReviewInput& input, Findings& findings) {
  const auto roles = role_figures(input);
  if (roles.size() < 2) return;
  const auto all = both_lists(input, findings, roles);
  for (std::size_t a = 0; a < all.size(); ++a)
    for (std::size_t b = a + 1; b < all.size(); ++b) {
      const BothLists &one = all[a], &other = all[b];
      const int own = distance(one.printed, one.needed), cross = distance(one.printed, other.needed);
      const int own_b = distance(other.printed, other.needed), cross_b = distance(other.printed, one.needed);
      if (cross >= own || cross_b >= own_b) continue;
      const std::string first = one.role->printed->label, second = other.role->printed->label;
      Finding& finding = findings.add("two rows fit each other's need better than their own");
      finding.roles = {first, second};
      show(finding, input.printed, *one.role->printed->count->statement);
      show(finding, input.printed, *other.role->printed->count->statement);
      finding.evidence = in_columns(
          {words_of(first + " printed", one.printed), words_of(first + " needed", one.needed),
           words_of(second + " printed", other.printed), words_of(second + " needed", other.needed)});
      finding.evidence.push_back("skeins off: " + first + " " + std::to_string(own) + ", exchanged " +
                                 std::to_string(cross_b) + "; " + second + " " + std::to_string(own_b) +
                                 ", exchanged " + std::to_string(cross));
      propose_list(finding, input, *one.role, other.printed);
      propose_list(finding, input, *other.role, one.printed);
      finding.query = "The counts of " + first + " fit the need of " + second +
                      " and the other way round. Were the rows exchanged?";
    }
}

}  // namespace skeinproof
