// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/manuscript/words.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/role_figures.h"

namespace skeinproof {
namespace {

// A length note as printed: in metres, or in yards where it has no metres.
struct PrintedNote {
  const Statement* statement = nullptr;
  double to_metres = 1;
  bool at_most = false;
  bool one_for_all = false;

  std::optional<double> at(const PrintedView& printed, std::size_t size) const {
    const PrintedValue* value = value_at(printed.list(*statement), size);
    if (value == nullptr || !value->number) return std::nullopt;
    return *value->number * to_metres;
  }
};

std::optional<PrintedNote> note_of(const PrintedRole& role) {
  const Statement* found = nullptr;
  for (const Statement* note : role.notes) {
    if (note->unit != PrintedUnit::metre && note->unit != PrintedUnit::yard) continue;
    if (found == nullptr || (found->unit == PrintedUnit::yard && note->unit == PrintedUnit::metre))
      found = note;
  }
  if (found == nullptr) return std::nullopt;
  PrintedNote note;
  note.statement = found;
  note.to_metres = found->unit == PrintedUnit::yard ? metres_per_yard : 1;
  note.at_most = says(compared(found->qualifier), {"at most", "max", "maximum", "up to", "no more than"});
  note.one_for_all = found->all_sizes || found->values.size() == 1;
  return note;
}

struct Planned {
  std::vector<double> metres;  // one entry for each printed size
  double least() const { return *std::min_element(metres.begin(), metres.end()); }
  double most() const { return *std::max_element(metres.begin(), metres.end()); }
};
std::optional<Planned> planned_of(const RoleFigures& role, std::size_t sizes) {
  Planned planned;
  for (std::size_t i = 0; i < sizes; ++i) {
    const SizeNeed* need = role.need_at(i);
    if (need == nullptr) return std::nullopt;
    planned.metres.push_back(need->planned.value());
  }
  return planned.metres.empty() ? std::nullopt : std::optional(planned);
}

double up_to_step(double metres, double step) {
  return step > 0 ? std::ceil(metres / step - 1e-9) * step : std::ceil(metres - 1e-9);
}

std::string with(std::string text, std::string_view name, const std::string& value) {
  for (auto at = text.find(name); at != std::string::npos; at = text.find(name, at + value.size()))
    text.replace(at, name.size(), value);
  return text;
}

std::string note_words(const HouseStyle& house, double at_most) {
  const Metres length = metres(at_most);
  std::string words =
      with(house.length_note_words, "{length}", length_words(length, house, Inside::brackets));
  words = with(words, "{metres}", metres_figure(length, house) + " m");
  return with(words, "{yards}", yards_figure(length) + " yd");
}

// In the note's own unit: one figure that holds for all sizes where it says "at most", else one a size.
std::string note_figures(const ReviewInput& input, const Planned& planned, const PrintedNote& note,
                         PrintedUnit unit) {
  const HouseStyle& house = input.pattern.house();
  const auto figure = [&](double of_metres) {
    const Metres length = metres(up_to_step(of_metres, house.note_step_m));
    return unit == PrintedUnit::yard ? yards_figure(length) : metres_figure(length, house);
  };
  if (note.one_for_all && note.at_most) return figure(planned.most());
  std::vector<std::optional<std::string>> figures;
  for (const double of_size : planned.metres) figures.push_back(figure(of_size));
  const bool alike =
      std::all_of(figures.begin(), figures.end(), [&](const auto& f) { return f == figures[0]; });
  if (alike) return *figures.front();
  return input.pattern.sizes.size() == figures.size()
             ? size_list(figures, input.pattern.sizes, house.brackets)
             : std::string();
}

void propose_note(Finding& finding, const ReviewInput& input, const RoleFigures& role, const Planned& planned,
                  const PrintedNote& note) {
  for (const Statement* one : role.printed->notes) {
    if (one->mention != note.statement->mention || one->values.empty()) continue;
    if (one->unit != PrintedUnit::metre && one->unit != PrintedUnit::yard) continue;
    // A list keeps what closes its brackets, so it is written anew only where it is one figure.
    if (one->values.size() != 1) continue;
    const std::string figures = note_figures(input, planned, note, one->unit);
    if (!figures.empty()) propose(finding, input.printed, one->values.front().span, figures);
  }
}

struct NoteAtSizes {
  std::vector<std::size_t> sizes;
  std::vector<std::string> lines;
};

Finding& note_finding(const ReviewInput& input, Findings& findings, const RoleFigures& role,
                      const PrintedNote& note, Severity severity, std::string title, std::string apart,
                      const NoteAtSizes& at) {
  Finding& finding = findings.add(severity, std::move(title));
  finding.roles = {role.printed->label};
  finding.apart = std::move(apart);
  show(finding, input.printed, *note.statement);
  for (const std::size_t size : at.sizes) add_size(finding, input.printed, size);
  finding.evidence = at.lines;
  return finding;
}

void check_note(const ReviewInput& input, Findings& findings, const RoleFigures& role,
                const PrintedNote& note) {
  const FindingWords words(input);
  NoteAtSizes below, beyond, idle;
  const auto take = [&](NoteAtSizes& at, std::size_t size, std::string line) {
    at.sizes.push_back(size);
    at.lines.push_back("size " + input.printed.size_labels()[size] + ": " + std::move(line));
  };
  std::size_t known = 0;
  for (std::size_t i = 0; i < input.printed.sizes(); ++i) {
    const auto length = note.at(input.printed, i);
    const SizeNeed* need = role.need_at(i);
    const auto supply = printed_supply(input, role, i);
    if (!length) continue;
    const std::string noted = "note " + words.metres(*length);
    if (need != nullptr && *length < need->planned.value() - input.need.constant_of("review_note_slack_m"))
      take(below, i, noted + ", planned " + words.metres(need->planned.value()));
    if (supply && *length > supply->metres + 0.5)
      take(beyond, i, noted + ", " + supply->words(words));
    else if (role.skein_m && *length >= *role.skein_m * input.need.constant_of("review_note_idle_share") &&
             *length <= *role.skein_m)
      take(idle, i, noted + " of " + words.metres(*role.skein_m));
    ++known;
  }
  const std::string printed = printed_words(input.printed, *note.statement);
  const auto planned = planned_of(role, input.printed.sizes());
  if (!below.sizes.empty()) {
    Finding& finding = note_finding(input, findings, role, note, Severity::stop,
                                    "a length note below the need: " + printed, "below", below);
    finding.at_stake = "who buys by the note runs out";
    if (planned) propose_note(finding, input, role, *planned, note);
    finding.query = "The note for " + role.printed->label + ", " + printed + ", does not hold " +
                    sizes_in_words(finding.sizes) + ": " + finding.evidence.back() + ". " +
                    (finding.proposal.empty() ? "Which is right?"
                                              : "Should it say " + finding.proposal.front().after + "?");
  }
  if (!beyond.sizes.empty()) {
    Finding& finding = note_finding(input, findings, role, note, Severity::stop,
                                    "a length note above the printed yarn: " + printed, "beyond", beyond);
    finding.query = "The note for " + role.printed->label + ", " + printed +
                    ", is more than the printed yarn holds: " + finding.evidence.front() +
                    ". Which is right?";
  }
  // A house that prints the metres of every role wants them beside a whole skein, too.
  const bool wanted = input.pattern.house().metres_line && note.statement->qualifier == "needed";
  if (known > 0 && idle.sizes.size() == known && below.sizes.empty() && !wanted) {
    Finding& finding = note_finding(input, findings, role, note, Severity::style,
                                    "a length note of nearly a whole skein: " + printed, "idle", idle);
    finding.query = "The note for " + role.printed->label + ", " + printed +
                    ", is nearly the whole skein. May we drop it?";
  }
}

}  // namespace

void check_n5(const ReviewInput& input, Findings& findings) {
  const HouseStyle& house = input.pattern.house();
  if (!house.length_notes) return;
  const FindingWords words(input);
  std::vector<std::string> without;
  const auto roles = role_figures(input);
  for (const RoleFigures& role : roles) {
    if (!role.printed->notes.empty() || !role.printed->count) continue;
    const auto planned = planned_of(role, input.printed.sizes());
    if (!planned || !role.skein_m) {
      without.push_back(role.printed->label);
      continue;
    }
    bool one_skein = true;
    for (std::size_t i = 0; i < input.printed.sizes(); ++i)
      one_skein = one_skein && role.printed_skeins(i).value_or(1) == 1;
    if (!one_skein || planned->most() > house.length_note_share * *role.skein_m) continue;
    const double at_most = up_to_step(planned->most(), house.note_step_m);
    Finding& finding = findings.add("a small part of one skein, and no length note");
    finding.roles = {role.printed->label};
    const Statement& list = *role.printed->count->statement;
    show(finding, input.printed, list);
    const std::string range =
        words.number(planned->least(), 0) == words.number(planned->most(), 0)
            ? words.number(planned->most(), 0)
            : words.number(planned->least(), 0) + "–" + words.number(planned->most(), 0);
    const std::string needs = "needs " + range + " of " + words.metres(*role.skein_m);
    finding.evidence = {needs, "at most " + words.percent(planned->most() / *role.skein_m) +
                                   " of a skein in every size; the house gives a note up to " +
                                   words.percent(house.length_note_share)};
    propose(finding, input.printed, {list.span.end, list.span.end}, " (" + note_words(house, at_most) + ")");
    finding.query = role.printed->label + " " + needs + ". May we add “" + note_words(house, at_most) + "”?";
  }
  if (roles.empty())
    findings.cannot("no colours were read in the yarn block", "a block that lists the colours");
  else if (!without.empty())
    findings.cannot("no need is known in every size for " + listed(without),
                    "the stitches of its pieces, or a weighed sample");
}

void check_n6(const ReviewInput& input, Findings& findings) {
  std::vector<std::string> without;
  for (const RoleFigures& role : role_figures(input)) {
    const auto note = note_of(*role.printed);
    if (!note) continue;
    bool any = false;
    for (std::size_t i = 0; i < input.printed.sizes(); ++i) any = any || role.need_at(i) != nullptr;
    if (!any) without.push_back(role.printed->label);
    check_note(input, findings, role, *note);
  }
  if (!without.empty())
    findings.cannot("no need is known for " + listed(without),
                    "the stitches of its pieces, or a weighed sample");
}

void check_n7(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  std::vector<std::string> without;
  for (const RoleFigures& role : role_figures(input)) {
    const auto note = note_of(*role.printed);
    if (!note || !note->one_for_all || note->at_most || input.printed.sizes() < 2) continue;
    const auto planned = planned_of(role, input.printed.sizes());
    if (!planned) {
      without.push_back(role.printed->label);
      continue;
    }
    const double half = (planned->most() - planned->least()) / 2;
    const double middle = (planned->most() + planned->least()) / 2;
    if (half <= middle * input.need.constant_of("review_note_span_pct") / 100) continue;
    const std::string printed = printed_words(input.printed, *note->statement);
    Finding& finding = findings.add("one length note for sizes that differ: " + printed);
    finding.roles = {role.printed->label};
    show(finding, input.printed, *note->statement);
    const std::string range =
        words.number(planned->least(), 0) + " to " + words.number(planned->most(), 0) + " m over the sizes";
    finding.evidence = {"planned " + range + ", ±" + words.percent(half / middle) + " about the middle"};
    propose_note(finding, input, role, *planned, *note);
    finding.query = "For " + role.printed->label + " one note, " + printed +
                    ", stands for all sizes; they need " + range +
                    ". For which size is it, and may we give one a size or say “at most”?";
  }
  if (!without.empty())
    findings.cannot("no need is known in every size for " + listed(without),
                    "the stitches of its pieces, or a weighed sample");
}

}  // namespace skeinproof
