// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/text.h"
#include "core/need/stitch_counts.h"
#include "core/review/check_runs.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/role_figures.h"

namespace skeinproof {
namespace {

using Kind = StatementKind;
constexpr std::string_view practice = "common practice, no source";
constexpr StatementKinds counts = {Kind::size_labels, Kind::role, Kind::count, Kind::put_up_length,
                                   Kind::put_up_weight};
constexpr StatementKinds notes = {Kind::size_labels, Kind::role, Kind::count, Kind::length_note,
                                  Kind::put_up_length};
constexpr StatementKinds roles_alone = {Kind::size_labels, Kind::role};

constexpr std::array all_rows = {
    Check{"N1", "The printed yarn holds what is knitted and the swatch.", Severity::stop, counts, practice,
          check_n1},
    Check{"N2", "The printed yarn leaves the whole allowance.", Severity::ask, counts, practice, check_n2},
    Check{"N3", "No skein is printed that no size needs.", Severity::ask, counts, practice, check_n3},
    Check{"N4", "The last skein is neither hardly begun nor used to its end.", Severity::note, roles_alone,
          practice, check_n4},
    Check{"N5", "A colour that takes a small part of one skein says how much.", Severity::ask, notes,
          practice, check_n5},
    Check{"N6", "A length note holds the need and stays within the printed skeins.", Severity::stop, notes,
          practice, check_n6},
    Check{"N7", "One length note for all sizes fits all of them, or says “at most”.", Severity::ask, notes,
          practice, check_n7},
    Check{"N8",
          "The sample's weight fits the skeins of its size.",
          Severity::stop,
          {Kind::size_labels, Kind::role, Kind::count, Kind::sample_weight, Kind::sample_size},
          practice,
          check_n8},
    Check{"N9",
          "A weighed loop is one that stocking stitch can have, and that of the swatch.",
          Severity::ask,
          {},
          practice,
          check_n9},
    Check{"N10", "The yarn of a size is what its area of cloth takes.", Severity::ask, counts, practice,
          check_n10},
    Check{"N11",
          "A colour's weighed or stated metres are those of its chart, floats counted.",
          Severity::ask,
          {Kind::size_labels, Kind::role, Kind::count, Kind::total_length},
          practice,
          check_n11},
    Check{"N12",
          "What is sold in pairs is counted for both.",
          Severity::stop,
          {Kind::size_labels, Kind::role, Kind::count, Kind::put_up_length, Kind::item, Kind::title},
          practice,
          check_n12},
    Check{"N13",
          "The sample's surplus weight is not that of its notions.",
          Severity::ask,
          {},
          practice,
          check_n13},
    Check{"N14", "A list does not differ from the need by the factor of a usual slip.", Severity::ask, counts,
          practice, check_n14},
    Check{"N15", "The allowance really left reaches the house's minimum.", Severity::ask, counts, practice,
          check_n15},
    Check{"N16",
          "Every piece the text heads is counted on the need sheet.",
          Severity::ask,
          {Kind::piece_heading},
          practice,
          check_n16},
    Check{"N17", "A colour grows with the sizes as cloth can.", Severity::ask, roles_alone, practice,
          check_n17},
    Check{"N18",
          "The sample is of the yarn and the size that are printed.",
          Severity::ask,
          {Kind::sample_size, Kind::size_labels, Kind::role, Kind::yarn_name},
          practice,
          check_n18},
    Check{"N19", "The ends of a colour that is begun often are counted.", Severity::note, roles_alone,
          practice, check_n19},
    Check{"N20", "No tester used more than the printed yarn.", Severity::stop, counts, practice, check_n20},
    Check{"N21",
          "Several skeins of a hand-dyed yarn come with advice on lots.",
          Severity::note,
          {Kind::size_labels, Kind::role, Kind::count, Kind::yarn_description, Kind::yarn_name, Kind::phrase,
           Kind::put_up_length},
          practice,
          check_n21},
};

double with_swatch(const SizeNeed& need) { return (need.knitted + need.swatch).value(); }

std::string layers(const FindingWords& words, const SizeNeed& need) {
  return "knitted " + words.metres(need.knitted.value()) + ", with the swatch " +
         words.metres(with_swatch(need)) + ", planned " + words.metres(need.planned.value());
}

// A finding about one printed count.
Finding& about(Findings& findings, const ReviewInput& input, const RoleFigures& role, std::size_t size,
               const PrintedSupply& supply, std::string title) {
  Finding& finding = findings.add(std::move(title));
  finding.roles = {role.printed->label};
  add_size(finding, input.printed, size);
  show_value(finding, input.printed, *supply.statement, *supply.value);
  return finding;
}

// The count in force in place of the printed one, where it is on the wanted side of it.
void propose_count(Finding& finding, const ReviewInput& input, const RoleFigures& role, std::size_t size,
                   const PrintedSupply& supply, bool more) {
  if (!supply.skeins) return;
  auto wanted = role.count_in_force(size);
  const auto sided = [&](const std::optional<int>& count) {
    return count && (more ? *count > *supply.skeins : *count < *supply.skeins);
  };
  if (!sided(wanted)) wanted = role.skeins_needed(size);
  if (sided(wanted)) propose(finding, input.printed, supply.value->span, std::to_string(*wanted));
}

std::string should_it_be(const Finding& finding) {
  return finding.proposal.empty() ? " Which is right?"
                                  : " Should it be " + finding.proposal.front().after + "?";
}

double allowance_left(const SizeNeed& need, const PrintedSupply& supply) {
  return supply.metres / with_swatch(need) - 1;
}

bool house_permits(const ReviewInput& input, const SizeNeed& need, const PrintedSupply& supply) {
  return input.pattern.house().rounding == Rounding::up_unless_hair_over && need.skeins && supply.skeins &&
         *need.skeins <= *supply.skeins;
}

// Rounds a role works in a section; absent where the sheet has none.
std::optional<double> rounds_of(const Section& section, RoleId role, std::size_t size) {
  const auto rows = section_stitches(section, size).rows;
  if (!rows || section.source != StitchSource::worked_out || section.colouring == Colouring::one_role)
    return section.source == StitchSource::worked_out ? rows : std::nullopt;
  double own = 0, all = 0;
  for (const Stripe& stripe : section.stripes) {
    all += stripe.rows.value;
    if (stripe.role == role) own += stripe.rows.value;
  }
  return all > 0 ? std::optional(*rows * own / all) : std::nullopt;
}

// How many rounds fewer of the section that takes most would save as much: an average over the section.
std::string nearest_change(const ReviewInput& input, const RoleFigures& role, std::size_t size,
                           const SizeNeed& need, double metres_over) {
  const PartUse* most = nullptr;
  double longest = 0, per_round = 0;
  for (const PartUse& use : input.need.parts_of(role.fact->id)) {
    if (use.section == nullptr) continue;
    const auto rounds = rounds_of(*use.section, role.fact->id, *role.in_force[size]);
    if (!rounds || !(*rounds > 0)) continue;
    for (const PartMetres& part : need.parts)
      if (part.section == use.section->id && part.total().value() > longest) {
        longest = part.total().value();
        per_round = longest / *rounds;
        most = &use;
      }
  }
  const double knitted = metres_over / (1 + input.pattern.house().allowance_pct / 100);
  if (most == nullptr || !(per_round > 0) || knitted > longest / 3) return {};
  const double fewer = std::ceil(knitted / per_round);
  const std::string name =
      most->section->name.empty() ? most->piece->name : most->piece->name + ", " + most->section->name;
  return show_short(fewer, 0) + (fewer == 1 ? " round" : " rounds") + " of it fewer in " + name;
}

}  // namespace

std::span<const Check> need_checks() { return all_rows; }

void check_n1(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  for_each_supply(
      input, findings,
      [&](const RoleFigures& role, std::size_t size, const SizeNeed& need, const PrintedSupply& supply) {
        const double short_by = with_swatch(need) - supply.metres;
        if (short_by <= 1e-9 * supply.metres) return;
        Finding& finding =
            about(findings, input, role, size, supply,
                  "does not hold what is knitted: “" + std::string(input.printed.words(*supply.value)) + "”");
        finding.evidence = {layers(words, need), supply.words(words)};
        const double knitted_short = need.knitted.value() - supply.metres;
        finding.evidence.push_back("short by " + words.metres(short_by) +
                                   (knitted_short > 0
                                        ? ", and by " + words.metres(knitted_short) + " without any swatch"
                                        : ", swatch counted"));
        finding.at_stake =
            "size " + input.printed.size_labels()[size] + " short by " + words.metres(short_by);
        propose_count(finding, input, role, size, supply, true);
        finding.query = role.printed->label + " in size " + input.printed.size_labels()[size] + " takes " +
                        words.metres(need.knitted.value()) + " knitted, " + words.metres(with_swatch(need)) +
                        " with the swatch; the list gives " + supply.given(words) + "." +
                        should_it_be(finding);
      });
}

void check_n2(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  for_each_supply(
      input, findings,
      [&](const RoleFigures& role, std::size_t size, const SizeNeed& need, const PrintedSupply& supply) {
        const double over = need.planned.value() - supply.metres;
        if (over <= 1e-9 * supply.metres || with_swatch(need) > supply.metres * (1 + 1e-9)) return;
        if (house_permits(input, need, supply)) return;
        Finding& finding = about(
            findings, input, role, size, supply,
            "rounded down over the allowance: “" + std::string(input.printed.words(*supply.value)) + "”");
        const std::string left = words.metres(over) + " over; allowance left " +
                                 words.percent(allowance_left(need, supply)) + " of the " +
                                 words.number(input.pattern.house().allowance_pct) + " % planned";
        finding.evidence = {layers(words, need), supply.words(words), left};
        finding.at_stake =
            "size " + input.printed.size_labels()[size] + ": " + words.metres(over) + " into the allowance";
        propose_count(finding, input, role, size, supply, true);
        finding.query = role.printed->label + " in size " + input.printed.size_labels()[size] +
                        " is planned at " + words.metres(need.planned.value()) + ", and the list gives " +
                        supply.given(words) + ": " + left + ". Shall we round up, or do you accept it?";
      });
}

void check_n3(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  for_each_supply(
      input, findings,
      [&](const RoleFigures& role, std::size_t size, const SizeNeed& need, const PrintedSupply& supply) {
        const auto needed = role.skeins_needed(size);
        if (!supply.skeins || !needed || *supply.skeins - *needed < 1) return;
        const double surplus = *supply.skeins - *needed;
        Finding& finding = about(findings, input, role, size, supply,
                                 words.skeins(surplus) + " more than needed: “" +
                                     std::string(input.printed.words(*supply.value)) + "”");
        finding.evidence = {"planned " + words.metres(need.planned.value()) + " = " + words.skeins(*needed) +
                                " of " + words.metres(*role.skein_m),
                            "printed " + supply.words(words)};
        const Yarn* yarn = role.fact != nullptr ? input.pattern.yarn(role.fact->yarn) : nullptr;
        if (yarn != nullptr && yarn->price)
          finding.evidence.push_back("each knitter buys for " + yarn->price->currency +
                                     words.fixed(surplus * yarn->price->amount.value, 2) + " more");
        propose_count(finding, input, role, size, supply, false);
        finding.query = role.printed->label + " in size " + input.printed.size_labels()[size] + " needs " +
                        words.metres(need.planned.value()) + ", that is " + words.skeins(*needed) +
                        ", and the list has " + words.skeins(*supply.skeins) +
                        ". Is the surplus kept for a reason?";
      });
}

void check_n4(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  for_each_need(input, findings, [&](const RoleFigures& role, std::size_t size, const SizeNeed& need) {
    const auto needed = role.skeins_needed(size);
    if (!needed || need.last_skein == LastSkein::plain) return;
    const bool tips = need.last_skein == LastSkein::tips_over;
    // A first skein hardly begun is still needed.
    if (tips && *needed < 2) return;
    const double over = need.planned.value() - (*needed - 1) * *role.skein_m;
    const double spare = *needed * *role.skein_m - need.planned.value();
    Finding& finding = findings.add(tips ? "tips over: the last skein is hardly begun"
                                         : "brimful: the last skein is nearly all needed");
    finding.roles = {role.printed->label};
    add_size(finding, input.printed, size);
    if (role.printed->count) {
      if (const PrintedValue* value = value_at(*role.printed->count, size))
        show_value(finding, input.printed, *role.printed->count->statement, *value);
    } else if (role.printed->role != nullptr) {
      show(finding, input.printed, *role.printed->role);
    }
    finding.evidence = {"planned " + words.metres(need.planned.value()) + " = " +
                            words.number(need.planned.value() / *role.skein_m, 3) + " skeins of " +
                            words.metres(*role.skein_m),
                        tips ? words.metres(over) + " over " + words.skeins(*needed - 1)
                             : words.metres(spare) + " to spare of " + words.skeins(*needed)};
    if (tips)
      if (const std::string change = nearest_change(input, role, size, need, over); !change.empty())
        finding.evidence.push_back("about " + change + " would save the skein");
    finding.query =
        role.printed->label + " in size " + input.printed.size_labels()[size] + ": " + finding.evidence[0] +
        ", " + finding.evidence[1] + ". " +
        (tips ? "Could a little less of it save a skein?" : "Is that near enough to mention a spare one?");
  });
}

void check_n15(const ReviewInput& input, Findings& findings) {
  const FindingWords words(input);
  const double minimum = input.pattern.house().minimum_allowance_pct / 100;
  Finding* open = nullptr;
  std::string label;
  std::vector<std::string> list;
  const auto close = [&] {
    if (open == nullptr) return;
    open->query = "For " + label + ", " + sizes_in_words(open->sizes) + " leave" +
                  (open->sizes.size() == 1 ? "s" : "") + " an allowance of " + listed(list) + ", below " +
                  words.percent(minimum) + ". Round up, or accept?";
    open = nullptr;
    list.clear();
  };
  for_each_supply(
      input, findings,
      [&](const RoleFigures& role, std::size_t size, const SizeNeed& need, const PrintedSupply& supply) {
        const double left = allowance_left(need, supply);
        if (left >= minimum - 1e-9) return;
        if (open != nullptr && label != role.printed->label) close();
        if (open == nullptr) {
          open = &about(findings, input, role, size, supply, "less allowance left than the house's minimum");
          label = role.printed->label;
        } else {
          add_size(*open, input.printed, size);
          open->places.push_back(supply.value->span);
        }
        open->evidence.push_back("size " + input.printed.size_labels()[size] + ": " + supply.words(words) +
                                 ", ÷ " + words.metres(with_swatch(need)) + " − 1 = " + words.percent(left));
        list.push_back(words.percent(left));
        propose_count(*open, input, role, size, supply, true);
      });
  close();
}

}  // namespace skeinproof
