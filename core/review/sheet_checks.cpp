// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>

#include "core/base/text.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/role_figures.h"

namespace skeinproof {
namespace {

// Pieces by their usual headings; one name of a row on the need sheet counts for all of it.
struct PieceWords {
  WordList words;
};
const PieceWords piece_words[] = {
    {{"hood"}},
    {{"pocket", "pouch", "kangaroo"}},
    {{"neckband", "collar", "neckline", "neck", "neck edge", "turtleneck", "roll neck", "cowl"}},
    {{"belt", "sash"}},
    {{"lining", "facing"}},
    {{"button band", "buttonband", "buttonhole band", "front band", "band", "placket"}},
    {{"armband", "armhole edging", "armhole band", "armhole border", "band"}},
    {{"sleeve", "arm"}},
    {{"yoke"}},
    {{"body", "back", "front", "torso", "bodice"}},
    {{"cuff"}},
    {{"hem", "welt", "ribbing", "rib"}},
    {{"heel", "gusset"}},
    {{"toe"}},
    {{"foot", "sole", "instep"}},
    {{"leg"}},
    {{"thumb"}},
    {{"finger"}},
    {{"crown"}},
    {{"brim", "earflap", "ear flap"}},
    {{"strap", "handle"}},
    {{"edging", "border", "trim"}},
    {{"fringe", "tassel"}},
    {{"pompom", "pom-pom", "bobble"}},
    {{"pleat", "flounce", "frill", "ruffle", "peplum"}},
};

std::string sheet_words(const Pattern& pattern) {
  std::string words;
  for (const Piece& piece : pattern.pieces) {
    words += compared(piece.name) + "; ";
    for (const Section& section : piece.sections) {
      words += compared(section.name) + "; ";
      if (const Fabric* fabric = pattern.fabric(section.fabric)) words += compared(fabric->name) + "; ";
    }
    for (const Edge& edge : piece.edges) words += compared(edge.name) + "; ";
  }
  return words;
}

bool dyed_in_small_lots(std::string_view lower) {
  return says(lower, {"hand-dyed", "hand dyed", "handdyed", "hand-painted", "hand painted", "kettle-dyed",
                      "kettle dyed", "small batch", "small-batch", "naturally dyed", "plant-dyed",
                      "plant dyed", "indie-dyed", "handspun", "hand-spun", "hand spun"});
}

constexpr std::string_view lot_advice =
    "Skeins of one dye lot may still differ: buy them together, and alternate two skeins every two rounds.";

// Where a yarn is said to be dyed in small lots: printed, or of its facts.
struct SmallLots {
  bool are = false;
  const Statement* shown = nullptr;
  std::string words;
};
SmallLots small_lots(const ReviewInput& input, const RoleFigures& role) {
  const PrintedView& printed = input.printed;
  const int index = role.printed->yarn;
  if (index >= 0 && static_cast<std::size_t>(index) < printed.yarns().size()) {
    const PrintedYarn& yarn = printed.yarns()[static_cast<std::size_t>(index)];
    for (const auto* list : {&yarn.descriptions, &yarn.names})
      for (const Statement* one : *list)
        if (dyed_in_small_lots(compared(printed.words(one->span))) ||
            dyed_in_small_lots(compared(one->words)))
          return {true, one, printed_words(printed, *one)};
  }
  const Yarn* yarn = role.fact != nullptr ? input.pattern.yarn(role.fact->yarn) : nullptr;
  if (yarn == nullptr) return {};
  for (const std::string* words : {&yarn->colouring, &yarn->description, &yarn->treatment, &yarn->name})
    if (dyed_in_small_lots(compared(*words))) return {true, nullptr, quoted(*words)};
  return {};
}

}  // namespace

void check_n16(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  if (!printed.whole(TextPart::text)) {
    findings.cannot("the instructions are not there as a whole", "the whole text of the pattern");
    return;
  }
  if (input.pattern.pieces.empty()) {
    findings.cannot("the need sheet has no pieces", "the stitches of the pieces");
    return;
  }
  const std::string sheet = sheet_words(input.pattern);
  for (const Statement* heading : printed.all(StatementKind::piece_heading)) {
    const std::string words =
        compared(heading->words.empty() ? printed.words(heading->span) : heading->words);
    bool known = false, counted = false;
    for (const PieceWords& row : piece_words) {
      if (!says(words, row.words)) continue;
      known = true;
      counted = counted || says(sheet, row.words);
    }
    if (!known || counted) continue;
    const bool again = std::any_of(findings.found.begin(), findings.found.end(),
                                   [&](const Finding& one) { return one.apart == words; });
    if (again) continue;
    Finding& finding =
        findings.add("a piece that is not on the need sheet: " + printed_words(printed, *heading));
    finding.apart = words;
    show(finding, printed, *heading);
    std::vector<std::string> pieces;
    for (const Piece& piece : input.pattern.pieces) pieces.push_back(piece.name);
    finding.evidence = {"in the text: " + printed_words(printed, *heading),
                        "on the need sheet: " + join(pieces, ", ")};
    finding.query = "The text has a part headed " + printed_words(printed, *heading) +
                    ", and the yarn was worked out without it. Was it counted?";
  }
}

void check_n21(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  for (const Statement* phrase : printed.all(StatementKind::phrase))
    if (says(compared(phrase->qualifier), {"same lot", "alternate", "alternate skeins", "dye lot"})) return;
  for (const RoleFigures& role : role_figures(input)) {
    double most = 0;
    for (std::size_t i = 0; i < printed.sizes(); ++i)
      most = std::max(most, role.printed_skeins(i).value_or(0));
    if (most < 2) continue;
    const SmallLots lots = small_lots(input, role);
    if (!lots.are) continue;
    Finding& finding = findings.add("several skeins dyed by hand, and no word on lots");
    finding.roles = {role.printed->label};
    if (lots.shown != nullptr) show(finding, printed, *lots.shown);
    if (role.printed->count) show(finding, printed, *role.printed->count->statement);
    finding.evidence = {"the yarn is " + lots.words,
                        FindingWords(input).skeins(most) + " in the largest size",
                        "offered: " + quoted(lot_advice, 200)};
    finding.query = role.printed->label + " takes several skeins of a yarn that is " + lots.words +
                    ". May we add: " + quoted(lot_advice, 200);
    if (!finding.places.empty()) finding.proposal_words = std::string(lot_advice);
  }
}

}  // namespace skeinproof
