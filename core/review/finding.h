// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/base/enum_words.h"
#include "core/base/id.h"
#include "core/manuscript/statement.h"

namespace skeinproof {

enum class Severity {
  stop,   // must not print
  ask,    // query the designer
  note,   // tell, no action forced
  style,  // house style only
};
template <>
struct EnumWords<Severity> {
  static constexpr auto rows = enum_rows<Severity>({{Severity::stop, "Stop"},
                                                    {Severity::ask, "Ask"},
                                                    {Severity::note, "Note"},
                                                    {Severity::style, "Style"}});
};

// Other words for printed ones: a proposal, a likely slip, a recorded reply, a rehearsed answer.
struct TextEdit {
  TextSpan span;
  std::string after;
  bool operator==(const TextEdit&) const = default;
};
// The text with the edits made, whatever their order. One that reaches outside the text, or into another that
// begins before it, is left out.
std::string edited(std::string_view text, std::vector<TextEdit> edits);

// One doubt about the printed words.
struct Finding {
  std::string check;  // "P1"
  Severity severity = Severity::ask;
  std::string title;                    // "a larger size asks for less: “8, 7”"
  std::vector<std::string> roles;       // labels
  std::vector<std::string> sizes;       // labels, in pattern order
  std::vector<TextSpan> places;         // the printed words; the first is where it shows
  std::vector<std::size_t> statements;  // indices into the reading that it rests on
  std::vector<std::string> evidence;    // the working, a line each
  std::string query;                    // to the designer: evidence, then a question
  std::string at_stake;                 // "size 6 short by 17 m"; may be empty
  std::vector<TextEdit> proposal;       // the smallest change that would satisfy it; may be empty
  std::string proposal_words;           // "197 yd → 191 yd"

  // The name under which decisions find it again: check, roles and sizes; what else tells two apart.
  std::string key() const;
  std::string apart;  // further part of the key, where a role and a size may have several
};

// A check that could not run.
struct NotChecked {
  std::string check;
  std::string because;     // "no need is known by stitches for CC2"
  std::string would_help;  // "the stitches of its pieces, or a weighed sample"
};

}  // namespace skeinproof
