// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <set>

#include "core/base/text.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/role_figures.h"
#include "core/review/role_labels.h"

namespace skeinproof {

void check_r8(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const auto roles = role_figures(input);
  if (roles.size() < 2) return;
  auto main = std::find_if(roles.begin(), roles.end(),
                           [](const RoleFigures& role) { return is_main(plain_label(role.printed->label)); });
  if (main == roles.end()) return;  // colours of equal standing
  std::vector<std::string> without;
  for (const RoleFigures& role : roles) {
    if (&role == &*main) continue;
    std::vector<std::size_t> less;
    bool known = false;
    for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
      const SizeNeed *own = main->need_at(i), *other = role.need_at(i);
      if (own == nullptr || other == nullptr) continue;
      known = true;
      if (own->planned < other->planned) less.push_back(i);
    }
    if (!known) without.push_back(role.printed->label);
    if (less.empty()) continue;
    Finding& finding = findings.add(main->printed->label + " takes less than " + role.printed->label);
    finding.roles = {main->printed->label, role.printed->label};
    for (const auto* one : {&*main, &role})
      if (one->printed->role != nullptr) show(finding, input.printed, *one->printed->role);
    for (const std::size_t size : less) {
      add_size(finding, input.printed, size);
      finding.evidence.push_back("size " + finding.sizes.back() + ": " + main->printed->label + " " +
                                 words.metres(main->need_at(size)->planned.value()) + ", " +
                                 role.printed->label + " " +
                                 words.metres(role.need_at(size)->planned.value()));
    }
    finding.query = main->printed->label + " takes less yarn than " + role.printed->label + " (" +
                    finding.evidence.back() + "). Are the two named as you mean them?";
  }
  if (!without.empty())
    findings.cannot("no need is known for both " + main->printed->label + " and " + listed(without),
                    "the stitches of the pieces, or a weighed sample");
}

void check_r9(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const FindingWords words(input);
  std::vector<std::string> unknown;
  for (const RoleFigures& role : role_figures(input)) {
    if (!role.printed->count || role.printed->count->printed != printed.sizes()) continue;
    const Statement& list = *role.printed->count->statement;
    std::vector<std::size_t> absent, idle;
    for (std::size_t i = 0; i < printed.sizes(); ++i) {
      const PrintedValue& value = list.values[i];
      const bool none = !value.number || *value.number == 0;
      const bool needed = role.need_at(i) != nullptr;
      const bool known = role.need != nullptr && role.in_force[i] &&
                         *role.in_force[i] < role.need->sizes.size() &&
                         role.need->sizes[*role.in_force[i]].known;
      if (none && needed) absent.push_back(i);
      if (!none && known && !needed) idle.push_back(i);
      if (none && !known && (unknown.empty() || unknown.back() != role.printed->label))
        unknown.push_back(role.printed->label);
    }
    const auto report = [&](const std::vector<std::size_t>& sizes, bool missing) {
      if (sizes.empty()) return;
      Finding& finding =
          findings.add(missing ? "left out of sizes that use it" : "listed for sizes that do without it");
      finding.roles = {role.printed->label};
      finding.apart = missing ? "absent" : "idle";
      for (const std::size_t size : sizes) {
        add_size(finding, printed, size);
        show_value(finding, printed, list, list.values[size]);
        const SizeNeed* need = role.need_at(size);
        finding.evidence.push_back(
            "size " + finding.sizes.back() + ": printed " + quoted(printed.words(list.values[size])) +
            ", the need sheet " +
            (need != nullptr ? "takes " + words.metres(need->planned.value()) : "takes none"));
        if (const auto wanted = role.count_in_force(size); missing && wanted && *wanted > 0)
          propose(finding, printed, list.values[size].span, std::to_string(*wanted));
        else if (!missing)
          propose(finding, printed, list.values[size].span, "–");
      }
      finding.query = role.printed->label + " is " + (missing ? "left out of " : "listed for ") +
                      sizes_in_words(finding.sizes) + " and the pieces " +
                      (missing ? "use it there" : "do without it there") + ". Which is right?";
    };
    report(absent, true);
    report(idle, false);
  }
  if (!unknown.empty())
    findings.cannot("no need is known for " + listed(unknown) + " in the sizes left out",
                    "the stitches of its pieces");
}

void check_r10(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const auto extras = printed.all(StatementKind::extra);
  if (extras.empty()) return;
  if (!printed.whole(TextPart::block)) {
    findings.cannot("the yarn block is not there as a whole", "the whole yarn block");
    return;
  }
  std::string listed_things;
  for (const StatementKind kind : {StatementKind::notion, StatementKind::yarn_name})
    for (const Statement* one : printed.all(kind))
      listed_things += compared(one->subject) + " " + compared(one->words) + " " +
                       compared(printed.words(one->span)) + "; ";
  for (const Piece& piece : input.pattern.pieces) {
    listed_things += compared(piece.name) + "; ";
    for (const Section& section : piece.sections) listed_things += compared(section.name) + "; ";
    for (const Edge& edge : piece.edges)
      listed_things += compared(edge.name) + " " + std::string(word_of(edge.kind)) + "; ";
  }
  const RoleLabels labels(printed);
  std::set<std::string> done;
  for (const Statement* extra : extras) {
    const TextSpan around = sentence_around(printed.text(), extra->span.begin);
    const std::string sentence = compared(printed.words(around));
    const std::string thing = compared(extra->words.empty() ? printed.words(extra->span) : extra->words);
    if (says(sentence,
             {"scrap", "oddment", "leftover", "left-over", "remnant", "remaining yarn", "same yarn"}))
      continue;
    bool has_yarn = !extra->subject.empty() && labels.holds(extra->subject);
    for (const PrintedRole& role : printed.roles()) {
      const std::string label = compared(role.label);
      has_yarn = has_yarn || (!label.empty() && find_word(sentence, {std::string_view(label)}));
      if (role.shade != nullptr) {
        const std::string shade = compared(role.shade->words);
        has_yarn = has_yarn || (shade.size() > 2 && find_word(sentence, {std::string_view(shade)}));
      }
    }
    // One colour: whatever is made of yarn is made of it.
    const bool waste = says(thing, {"waste yarn", "scrap yarn"});
    if (printed.roles().size() < 2 && !waste) has_yarn = true;
    if (has_yarn || find_word(listed_things, {std::string_view(thing)}) || !done.insert(thing).second)
      continue;
    Finding& finding = findings.add("an extra without its yarn: " + printed_words(printed, *extra));
    finding.apart = thing;
    show(finding, printed, *extra);
    finding.evidence = {
        printed_words(printed, around),
        "no colour is named there, and it is neither among the yarns and notions nor on the need sheet"};
    finding.query =
        "In which yarn, and how much of it, is this worked: " + printed_words(printed, around) + "?";
  }
}

}  // namespace skeinproof
