// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/review/check.h"

namespace skeinproof {

class FindingWords;

// The yarn a printed list gives one size of one role.
struct PrintedSupply {
  const Statement* statement = nullptr;
  const PrintedValue* value = nullptr;
  double metres = 0;
  std::optional<double> skeins;  // where it is counted in skeins

  std::string words(const FindingWords& words) const;  // "7 skeins × 175 m = 1225 m"
  std::string given(const FindingWords& words) const;  // "7 skeins, 1225 m"
};

// A printed role beside the facts that stand behind it: the role in force of the same label, its need, the
// length and the weight of its skein (in force, else as printed).
struct RoleFigures {
  const PrintedRole* printed = nullptr;
  const Role* fact = nullptr;
  const RoleNeed* need = nullptr;
  const Statement* measured = nullptr;  // its count in grams or metres, where it is not in skeins
  const RoleEvidence* evidence = nullptr;
  std::optional<double> skein_m, skein_g;
  std::vector<std::optional<std::size_t>> in_force;  // the size in force of each printed size

  // Known, and more than nothing is knitted; else null.
  const SizeNeed* need_at(std::size_t printed_size) const;
  std::optional<double> printed_skeins(std::size_t printed_size) const;
  // The count a printed one should give way to: the one in force where it differs from the printed one, else
  // what the need asks for by the house's rounding.
  std::optional<int> count_in_force(std::size_t printed_size) const;
  // Planned length in whole skeins, rounded up whatever the house does.
  std::optional<int> skeins_needed(std::size_t printed_size) const;
};

std::vector<RoleFigures> role_figures(const ReviewInput& input);

// The length a role's count list gives a size; absent where the list has a gap, a dash or 0 there, or counts
// in a unit that its put-up cannot turn into metres.
std::optional<PrintedSupply> printed_supply(const ReviewInput& input, const RoleFigures& role,
                                            std::size_t printed_size);

// Visits every printed role and size whose need is known. Says once which roles have none.
using NeedVisit = std::function<void(const RoleFigures& role, std::size_t size, const SizeNeed& need)>;
void for_each_need(const ReviewInput& input, Findings& findings, const NeedVisit& visit);
// The same where a printed list gives the size a length.
using SupplyVisit = std::function<void(const RoleFigures& role, std::size_t size, const SizeNeed& need,
                                       const PrintedSupply& supply)>;
void for_each_supply(const ReviewInput& input, Findings& findings, const SupplyVisit& visit);

// Every list that has a value at each of the given sizes; the value of a lone figure counts for all sizes.
const PrintedValue* value_at(const PrintedList& list, std::size_t size);

// What the facts in force say where a list stands, in its printed unit, one entry per printed size.
std::vector<std::optional<double>> facts_behind(const ReviewInput& input, const Statement& list);

// Whether the item is one of two alike: socks, mittens; `one` is what a single one is called.
struct Pair {
  bool paired = false;
  std::string one;
};
Pair pair_of(const ReviewInput& input);

}  // namespace skeinproof
