// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/need/need_context.h"
#include "core/review/finding.h"
#include "core/review/printed_view.h"

namespace skeinproof {

// What the checks look at. `need`, `evidence` and the facts of the pattern are the evidence; the printed view
// is what is tested.
struct ReviewInput {
  const Pattern& pattern;
  const NeedContext& need;
  const Assessment& assessment;
  const std::vector<RoleEvidence>& evidence;
  const PrintedView& printed;
};

// Collects what one check says.
class Findings {
 public:
  explicit Findings(std::string_view check, Severity severity) : check_(check), severity_(severity) {}

  // A finding with the check's id and severity filled in, to be completed by the caller.
  Finding& add(std::string title);
  Finding& add(Severity severity, std::string title);
  void cannot(std::string because, std::string would_help);

  std::vector<Finding> found;
  std::vector<NotChecked> not_checked;

 private:
  std::string check_;
  Severity severity_;
};

// Which printed statements a check reads, besides the facts; the search for likely slips runs again only the
// checks that read what a slip touches.
class StatementKinds {
 public:
  constexpr StatementKinds(std::initializer_list<StatementKind> kinds) {
    for (StatementKind kind : kinds) bits_ |= std::uint64_t{1} << static_cast<unsigned>(kind);
  }
  // Every kind there is.
  static constexpr StatementKinds all() {
    StatementKinds kinds{};
    kinds.bits_ = ~std::uint64_t{0};
    return kinds;
  }
  constexpr void add(StatementKind kind) { bits_ |= std::uint64_t{1} << static_cast<unsigned>(kind); }
  constexpr bool holds(StatementKind kind) const { return (bits_ >> static_cast<unsigned>(kind)) & 1; }
  constexpr bool meets(StatementKinds other) const { return (bits_ & other.bits_) != 0; }

 private:
  std::uint64_t bits_ = 0;
};

// A row of the catalogue. Limits that can be overwritten are constants (`core/need/constants.h`).
struct Check {
  std::string_view id;    // "P1"
  std::string_view rule;  // in a sentence
  Severity severity;      // the gravest it gives
  StatementKinds reads;
  std::string_view source;  // citation, or "common practice, no source"
  void (*run)(const ReviewInput& input, Findings& findings);
};

// The catalogue, family by family.
std::span<const Check> put_up_checks();       // P
std::span<const Check> fibre_checks();        // F
std::span<const Check> description_checks();  // D
std::span<const Check> role_checks();         // R
std::span<const Check> list_checks();         // L
std::span<const Check> need_checks();         // N
std::span<const Check> gauge_checks();        // G
std::span<const Check> measurement_checks();  // M
std::span<const Check> care_checks();         // C
std::span<const Check> text_checks();         // T
const std::vector<const Check*>& all_checks();
const Check* check_by_id(std::string_view id);

}  // namespace skeinproof
