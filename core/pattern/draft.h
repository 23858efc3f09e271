// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/base/describe.h"
#include "core/base/enum_words.h"
#include "core/base/id.h"

namespace skeinproof {

// A part of a submission. What is absent from a part can only be proved where the part is there as a whole.
enum class TextPart { block, sizes, gauge, needles, text, charts, legend, schematic };
template <>
struct EnumWords<TextPart> {
  static constexpr auto rows = enum_rows<TextPart>({{TextPart::block, "yarn block"},
                                                    {TextPart::sizes, "sizes and measurements"},
                                                    {TextPart::gauge, "gauge"},
                                                    {TextPart::needles, "needles"},
                                                    {TextPart::text, "instructions"},
                                                    {TextPart::charts, "charts"},
                                                    {TextPart::legend, "chart key"},
                                                    {TextPart::schematic, "schematic"}});
};
enum class PartExtent { absent, quoted_in_part, whole };
template <>
struct EnumWords<PartExtent> {
  static constexpr auto rows = enum_rows<PartExtent>({{PartExtent::absent, "absent"},
                                                      {PartExtent::quoted_in_part, "quoted in part"},
                                                      {PartExtent::whole, "whole"}});
};

// The user's word on how much of a part there is, over what the headings of the text say.
struct PartTold {
  TextPart part = TextPart::block;
  PartExtent extent = PartExtent::whole;

  bool operator==(const PartTold&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("part", self.part);
    visit("extent", self.extent);
  }
};

// The user's word on characters that the reading did not understand: what they are, or that they say nothing.
struct Telling {
  std::string words;  // exactly as they stand in the text
  std::string means;  // a kind of statement, or "nothing"
  std::string of;     // what it speaks of: a role, a fabric, a measurement

  bool operator==(const Telling&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("words", self.words);
    visit("means", self.means);
    visit("of", self.of);
  }
};

// A submission as it came, never corrected. What the text states is read from it anew each time.
struct Draft {
  DraftId id;
  std::string name;      // "draft 1"
  std::string received;  // as typed, or ISO 8601
  std::string source;    // name of the file it was read from; empty = pasted
  std::string encoding;  // assumed for the file's bytes; empty = UTF-8
  std::string text;
  std::vector<PartTold> parts;
  std::vector<Telling> tellings;

  bool operator==(const Draft&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("name", self.name);
    visit("received", self.received);
    visit("source", self.source);
    visit("encoding", self.encoding);
    visit("text", self.text);
    visit("parts", self.parts);
    visit("tellings", self.tellings);
  }
};

}  // namespace skeinproof
