// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <charconv>
#include <set>

#include "core/base/text.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/item_and_wearer.h"
#include "core/review/printed_words.h"

namespace skeinproof {
namespace {

using Labels = std::vector<std::string>;

Labels labels_of(const PrintedView& printed, const Statement& line) {
  Labels labels;
  for (const PrintedValue& value : line.values) labels.emplace_back(trimmed(printed.words(value)));
  return labels;
}

std::optional<double> number_of(const std::string& label) {
  double value = 0;
  const auto [end, error] = std::from_chars(label.data(), label.data() + label.size(), value);
  if (error != std::errc() || end != label.data() + label.size()) return std::nullopt;
  return value;
}

// XS, S, M … in steps; 2XL is XXL.
std::optional<double> letters_rank(const std::string& label) {
  std::string letters = lower_ascii(label);
  int times = 0;
  if (!letters.empty() && letters.front() >= '2' && letters.front() <= '9') {
    times = letters.front() - '0' - 1;
    letters.erase(0, 1);
    if (letters.empty() || letters.front() != 'x') return std::nullopt;
  }
  while (letters.size() > 1 && letters.front() == 'x') {
    ++times;
    letters.erase(0, 1);
  }
  if (letters == "s") return -1 - times;
  if (letters == "m" && times == 0) return 0;
  if (letters == "l") return 1 + times;
  return std::nullopt;
}

template <class Rank>
std::optional<std::size_t> out_of_order(const Labels& labels, Rank&& rank) {
  std::optional<double> before;
  std::optional<std::size_t> found;
  for (std::size_t i = 0; i < labels.size(); ++i) {
    const auto now = rank(labels[i]);
    if (!now) return std::nullopt;
    if (before && *now < *before && !found) found = i;
    before = now;
  }
  return found;
}

void twice_or_out_of_order(const PrintedView& printed, Findings& findings, const Statement& line) {
  const Labels labels = labels_of(printed, line);
  std::set<std::string> seen;
  for (std::size_t i = 0; i < labels.size(); ++i) {
    if (seen.insert(lower_ascii(labels[i])).second) continue;
    Finding& finding = findings.add("a size named twice: " + quoted(labels[i]));
    finding.sizes = {labels[i]};
    finding.apart = "twice";
    show_value(finding, printed, line, line.values[i]);
    finding.evidence = {"sizes: " + join(labels, ", ")};
    finding.query = "In the line of sizes " + quoted(labels[i]) + " stands twice. Which is it?";
    return;
  }
  auto at = out_of_order(labels, number_of);
  if (!at) at = out_of_order(labels, letters_rank);
  if (!at) return;
  const std::string pair = "“" + labels[*at - 1] + ", " + labels[*at] + "”";
  Finding& finding = findings.add("sizes out of order: " + pair);
  finding.sizes = {labels[*at - 1], labels[*at]};
  finding.apart = "order";
  show_value(finding, printed, line, line.values[*at]);
  finding.evidence = {"sizes: " + join(labels, ", ")};
  finding.query = "The sizes run " + join(labels, ", ") + ". Are " + pair + " in their order?";
}

bool some_of(const Labels& part, const Labels& whole) {
  return std::includes(whole.begin(), whole.end(), part.begin(), part.end(),
                       [](const auto& a, const auto& b) { return a < b; });
}

// A line that names a few of the sizes speaks of those alone; one short of a single size has lost it.
bool of_some_sizes(const PrintedView& printed, const Statement& line, Labels part, Labels whole) {
  std::sort(part.begin(), part.end());
  std::sort(whole.begin(), whole.end());
  if (!some_of(part, whole)) return false;
  if (part.size() + 1 < whole.size()) return true;
  const TextSpan around = sentence_around(printed.text(), line.span.begin);
  return says(lower_ascii(printed.words(around)), {"only"});
}

struct SampleItem {
  StatementKind kind;
  const char* name;
};

}  // namespace

void check_l10(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const auto lines = printed.all(StatementKind::size_labels);
  if (lines.empty()) {
    findings.cannot("no line of sizes is printed", "the sizes as they are printed");
    return;
  }
  for (const Statement* line : lines) {
    if (line->mention == lines.front()->mention && line != lines.front()) continue;
    twice_or_out_of_order(printed, findings, *line);
    const Labels first = labels_of(printed, *lines.front()), here = labels_of(printed, *line);
    if (here == first || of_some_sizes(printed, *line, here, first)) continue;
    Finding& finding = findings.add("other sizes here than at first: " + printed_words(printed, *line));
    finding.apart = "elsewhere";
    show(finding, printed, *line);
    show(finding, printed, *lines.front());
    finding.evidence = {"first: " + std::to_string(first.size()) + " sizes, " + join(first, ", "),
                        "here: " + std::to_string(here.size()) + " sizes, " + join(here, ", ")};
    finding.query = "The sizes are " + printed_words(printed, *lines.front()) + " in one place and " +
                    printed_words(printed, *line) + " in another. Which is right?";
  }
}

void check_l11(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  if (!printed.whole(TextPart::sizes)) {
    findings.cannot("the sizes and measurements are not there as a whole",
                    "the whole text, or the word that this part is whole");
    return;
  }
  std::vector<std::string> missing;
  if (printed.sizes() > 1 && printed.all(StatementKind::sample_size).empty())
    missing.push_back("the size of the sample");
  const bool shades = printed.roles().size() > 1 || !printed.all(StatementKind::shade_name).empty();
  if (shades && printed.all(StatementKind::sample_shades).empty())
    missing.push_back("the shades of the sample");
  if (item_of(input).kind == ItemKind::garment && printed.all(StatementKind::ease).empty() &&
      printed.all(StatementKind::model_measure).empty())
    missing.push_back("the ease or the model's measure");
  if (missing.empty()) return;
  Finding& finding = findings.add("not said: " + listed(missing));
  finding.apart = join(missing, ", ");
  if (const Statement* line = printed.sizes_line()) show(finding, printed, *line);
  finding.evidence = {"not found in the text: " + listed(missing)};
  finding.query = "We did not find " + listed(missing) + ". Could you add it?";
}

}  // namespace skeinproof
