// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/text.h"
#include "core/manuscript/facts_parts.h"
#include "core/manuscript/words.h"
#include "core/yarn/read_composition.h"

namespace skeinproof {
namespace {

class FactWriter {
 public:
  explicit FactWriter(const Pattern& pattern) : pattern_(pattern) {}

  void add(std::string key, std::string what, std::string words) {
    if (!words.empty()) facts.push_back({std::move(key), std::move(what), std::move(words)});
  }
  template <class Value>
  std::string list(const PerSize<Entered<Value>>& values) const {
    if (values.empty()) return {};
    std::vector<std::optional<std::string>> words(pattern_.sizes.size());
    for (std::size_t i = 0; i < words.size(); ++i)
      if (const auto* value = values.find(i)) words[i] = show_short(bare(value->value), 3);
    return size_list(words, pattern_.sizes, SizeBrackets::grouped);
  }
  void add_sizes();
  void add_yarn(const Yarn& yarn);
  void add_role(const Role& role);
  void add_fabric(const Fabric& fabric);

  std::vector<FactInWords> facts;

 private:
  static double bare(double value) { return value; }
  static double bare(Centimetres value) { return value.value(); }

  const Pattern& pattern_;
};

template <class Quantity>
std::string shown(const std::optional<Entered<Quantity>>& fact, std::string_view unit) {
  if (!fact) return {};
  if constexpr (std::is_same_v<Quantity, double>)
    return show_short(fact->value, 3) + std::string(unit);
  else
    return show_short(fact->value.value(), 3) + std::string(unit);
}

std::string joined(std::initializer_list<std::string> parts, std::string_view separator) {
  std::vector<std::string> known;
  for (const std::string& part : parts)
    if (!part.empty()) known.push_back(part);
  return join(known, separator);
}

std::string put_up_words(const PutUp& put_up) {
  const std::string figures =
      joined({shown(put_up.length, " m"), shown(put_up.weight, " g")}, put_up.length ? " per " : "");
  return figures.empty() ? figures : figures + " " + std::string(word_of(put_up.word));
}

std::string description_words(const Yarn& yarn) {
  const std::string spinning =
      yarn.spinning == Spinning::unstated ? std::string() : std::string(word_of(yarn.spinning));
  return joined({yarn.treatment, joined({yarn.twist, spinning, yarn.structure}, " "), yarn.category,
                 yarn.surface, yarn.colouring, yarn.description},
                ", ");
}

std::string gauge_words(const Gauge& gauge) {
  if (!gauge.stitches && !gauge.rows) return {};
  const std::string state =
      gauge.state == GaugeState::unstated ? std::string() : std::string(word_of(gauge.state));
  const std::string worked =
      gauge.worked == Worked::unstated ? std::string() : std::string(word_of(gauge.worked));
  return joined({joined({shown(gauge.stitches, " sts"), shown(gauge.rows, " rows")}, " and ") + " over " +
                     show_short(gauge.over.value.value(), 2) + " cm",
                 state, worked},
                ", ");
}

void FactWriter::add_sizes() {
  std::vector<std::optional<std::string>> labels;
  for (const Size& size : pattern_.sizes) labels.emplace_back(size.label);
  add("sizes", "sizes", size_list(labels, pattern_.sizes, SizeBrackets::grouped));
  if (const auto sample = pattern_.size_index(pattern_.sample_size))
    add("sample", "size of the sample", pattern_.sizes[*sample].label);
  for (const Measurement& measurement : pattern_.measurements) {
    const std::string values = list(measurement.values);
    add("measurement " + std::to_string(measurement.id.value),
        measurement.name + ", " + std::string(word_of(measurement.fit)),
        values.empty() ? values : values + " cm");
  }
}

void FactWriter::add_yarn(const Yarn& yarn) {
  const std::string key = "yarn " + std::to_string(yarn.id.value) + " ";
  const std::string of = " of " + (yarn.name.empty() ? "the yarn" : yarn.name);
  add(key, "yarn", yarn.name);
  add(key + "fibres", "fibres" + of, composition_text(yarn.composition));
  add(key + "put-up", "put-up" + of, put_up_words(yarn.put_up));
  add(key + "description", "description" + of, description_words(yarn));
  add(key + "care", "care" + of, yarn.care);
  add(key + "band", "stitches on the band" + of,
      joined({shown(yarn.band_stitches_low, ""), shown(yarn.band_stitches_high, "")}, "–"));
  add(key + "withdrawn", "availability" + of, yarn.withdrawn ? "no longer made" : "");
}

void FactWriter::add_role(const Role& role) {
  const std::string key = "role " + std::to_string(role.id.value) + " ";
  const std::string of = " of " + (role.label.empty() ? "the colour" : role.label);
  const Yarn* yarn = pattern_.yarn(role.yarn);
  add(key, "role", role.label);
  add(key + "yarn", "yarn" + of, yarn == nullptr ? "" : yarn->name);
  add(key + "shade", "shade" + of, joined({role.shade.name, role.shade.number}, " "));
  add(key + "strands", "strands" + of, role.strands == 1 ? "" : std::to_string(role.strands));
  add(key + "count", "skeins" + of, list(role.printed_count));
  const std::string at_most = shown(role.printed_at_most, " m");
  add(key + "note", "length note" + of, role.printed_note.empty() ? at_most : role.printed_note);
}

void FactWriter::add_fabric(const Fabric& fabric) {
  const std::string key = "fabric " + std::to_string(fabric.id.value) + " ";
  const std::string of =
      " of " + (fabric.name.empty() ? std::string(word_of(fabric.structure)) : fabric.name);
  add(key, "fabric", fabric.name);
  add(key + "gauge", "gauge" + of, gauge_words(fabric.gauge));
  add(key + "needle", "needle" + of,
      fabric.needle ? show_short(fabric.needle->value.value() * 10, 3) + " mm" : "");
}

}  // namespace

std::vector<FactInWords> facts_in_words(const Pattern& pattern) {
  FactWriter writer(pattern);
  writer.add("title", "title", pattern.title);
  writer.add("item", "item", pattern.item);
  writer.add("wearer", "wearer", pattern.wearer);
  writer.add_sizes();
  for (const Yarn& yarn : pattern.yarns) writer.add_yarn(yarn);
  for (const Role& role : pattern.roles) writer.add_role(role);
  writer.add("total", "total", writer.list(pattern.printed_total));
  for (const Fabric& fabric : pattern.fabrics) writer.add_fabric(fabric);
  for (std::size_t i = 0; i < pattern.notions.size(); ++i)
    writer.add("notion " + std::to_string(i), pattern.notions[i].name, writer.list(pattern.notions[i].count));
  return std::move(writer.facts);
}

}  // namespace skeinproof
