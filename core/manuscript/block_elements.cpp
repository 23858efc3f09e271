// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/manuscript/block_parts.h"
#include "core/manuscript/unit_list.h"
#include "core/manuscript/words.h"

namespace skeinproof {
namespace {

std::string fabric_name(const Fabric& fabric) {
  return fabric.name.empty() ? std::string(word_of(fabric.structure)) : fabric.name;
}

std::string state_words(GaugeState state, const HouseStyle& house) {
  switch (state) {
    case GaugeState::washed:
      return house.washed_words;
    case GaugeState::wetted:
      return "wetted";
    case GaugeState::never_wetted:
      return "not wetted";
    case GaugeState::unstated:
      break;
  }
  return {};
}

}  // namespace

void write_sizes(BlockDraft& draft) {
  std::vector<std::optional<std::string>> labels;
  for (const Size& size : draft.pattern.sizes) labels.emplace_back(size.label);
  BlockLine line;
  append(line, labels.size() > 1 ? "Sizes " : "Size ");
  line.push_back({BlockPart::sizes, size_list(labels, draft.pattern.sizes, draft.house.brackets), {}, {}});
  append(line, ".");
  draft.out.lines.push_back(line);
  bool any = false;
  for (const Measurement& measurement : draft.pattern.measurements) {
    if (measurement.values.empty()) continue;
    any = true;
    BlockLine measures;
    append(measures, (measurement.fit == Fit::finished ? "Finished " : "To fit ") + measurement.name + " ");
    append(measures, list_runs(measure_lists(measurement.values, draft.pattern.sizes.size(), draft.house),
                               draft.pattern.sizes, draft.house, {BlockPart::sizes, {}, {}, {}}));
    append(measures, ".");
    draft.out.lines.push_back(measures);
  }
  if (!any) draft.missing("a measurement of the sizes", "Pattern", 0);
}

void write_gauge(BlockDraft& draft) {
  std::vector<std::string> gauges;
  for (const Fabric& fabric : draft.pattern.fabrics) {
    const Gauge& gauge = fabric.gauge;
    if (!gauge.stitches && !gauge.rows) continue;
    const auto shown = [&](const auto& count) {
      return count ? short_number(count->value, 2, draft.house) : "–";
    };
    std::string words = shown(gauge.stitches) + " sts and " + shown(gauge.rows) +
                        (gauge.worked == Worked::in_the_round ? " rounds" : " rows") + " = " +
                        measure_words(gauge.over.value, draft.house) + " in " + fabric_name(fabric);
    const std::string state = state_words(gauge.state, draft.house);
    if (!state.empty()) words += ", " + state;
    gauges.push_back(std::move(words));
    const auto lacks = [&](const char* what) {
      draft.missing(what + fabric_name(fabric), "Pattern", fabric.id.value);
    };
    if (!gauge.stitches) lacks("stitch gauge of ");
    if (!gauge.rows) lacks("row gauge of ");
    if (gauge.state == GaugeState::unstated) lacks("state (washed or not) of the gauge of ");
  }
  if (gauges.empty()) draft.missing("gauge", "Pattern", 0);
  draft.out.lines.push_back({{BlockPart::plain, "Gauge: ", {}, {}},
                             {BlockPart::gauge, gauges.empty() ? "–" : join(gauges, "; "), {}, {}},
                             {BlockPart::plain, ".", {}, {}}});
}

void write_needles(BlockDraft& draft) {
  std::vector<std::string> needles;
  for (const Fabric& fabric : draft.pattern.fabrics)
    if (fabric.needle)
      needles.push_back(needle_words(fabric.needle->value, draft.house) + " for " + fabric_name(fabric));
  if (needles.empty()) draft.missing("needles", "Pattern", 0);
  draft.out.lines.push_back({{BlockPart::plain, "Needles: ", {}, {}},
                             {BlockPart::needles, needles.empty() ? "–" : join(needles, ", "), {}, {}},
                             {BlockPart::plain, ".", {}, {}}});
}

void write_notions(BlockDraft& draft) {
  std::vector<std::string> notions;
  for (const Notion& notion : draft.pattern.notions) {
    std::vector<std::optional<std::string>> counts(draft.pattern.sizes.size());
    for (std::size_t i = 0; i < counts.size(); ++i)
      if (const auto* count = notion.count.find(i)) counts[i] = short_number(count->value, 2, draft.house);
    const bool same =
        std::all_of(counts.begin(), counts.end(), [&](const auto& c) { return c == counts.front(); });
    notions.push_back(
        (same ? counts.front().value_or("–") : size_list(counts, draft.pattern.sizes, draft.house.brackets)) +
        " " + notion.name);
    if (std::any_of(counts.begin(), counts.end(), [](const auto& count) { return !count; }))
      draft.missing("number of " + notion.name, "Pattern", 0);
  }
  if (notions.empty()) return;  // most patterns need none
  draft.out.lines.push_back({{BlockPart::plain, "Notions: ", {}, {}},
                             {BlockPart::notions, join(notions, "; "), {}, {}},
                             {BlockPart::plain, ".", {}, {}}});
}

}  // namespace skeinproof
