// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/need/assessment.h"
#include "core/substitution/could_become.h"
#include "core/substitution/sharing_problem.h"

namespace skeinproof {

// How loosely yarns may be shared out.
struct LooseRules {
  bool exchange = false;
  bool parts = false;
  int yarns_a_role = 1;
  bool holds(const LooseRules& tighter) const {
    return (exchange || !tighter.exchange) && (parts || !tighter.parts) &&
           yarns_a_role >= tighter.yarns_a_role;
  }
  bool operator==(const LooseRules&) const = default;
};

// A pattern with its yarn on hand as problems of bare numbers, one for each size, and their answers in words.
class SharingContext {
 public:
  SharingContext(const Pattern& pattern, const Assessment& assessment, const NumberStyle& style);
  SharingContext(const SharingContext&) = delete;
  SharingContext& operator=(const SharingContext&) = delete;

  const Pattern& pattern() const { return pattern_; }
  const std::vector<YarnSupply>& supplies() const { return supplies_; }
  std::vector<Error>& left_out() { return left_out_; }
  std::vector<std::string> not_looked_at() const;
  bool has_parts() const;
  bool known(std::size_t size_index) const;  // every role's need
  std::vector<int> own_roles() const;        // of every supply, -1 = none

  // `kept`: the role of each supply from which it moves only for a reason; empty = none.
  SharingProblem problem(std::size_t size_index, const LooseRules& rules, const std::vector<int>& kept) const;
  SharingPlan plan(std::size_t size_index, const SharingProblem& problem, const Sharing& sharing) const;

  // The problem with skeins to buy: more of what is there, and the pattern's own yarns. `buys` names what the
  // supplies from `supplies().size()` on are.
  struct Buyable {
    YarnId yarn;
    RoleId role;
    std::string name;
  };
  SharingProblem with_shop(SharingProblem problem, std::vector<Buyable>& buyable) const;
  NextSizeUp next_size(std::size_t size_index, const SharingProblem& problem, const Sharing& sharing,
                       const std::vector<Buyable>& buyable) const;

 private:
  struct Part {
    GivenPart part;
    std::size_t role = 0;
    int place = 0;
  };
  struct PartNeed {
    const Part* part = nullptr;
    double need = 0;
  };
  void take_needs(const Assessment& assessment);
  void take_parts();
  void compare_thickness();
  std::optional<double> thicker(const YarnSupply& supply, const YarnSupply& than) const;
  double part_need(const Part& part, std::size_t size_index) const;
  std::vector<std::string> thickness_notes(std::size_t size_index,
                                           const std::vector<SharedOut>& shares) const;
  bool meet(std::size_t size_index, const SharedOut& one, const SharedOut& other) const;
  std::string lengths(Metres needed, Metres had) const;

  const Pattern& pattern_;
  const Assessment& assessment_;
  NumberStyle style_;
  std::vector<YarnSupply> supplies_;
  std::vector<Error> left_out_;
  std::vector<const Role*> roles_;
  std::vector<std::vector<std::optional<double>>> needs_;  // by size, by role
  std::vector<std::string> missing_;                       // by size
  std::vector<Part> parts_;
  std::vector<std::vector<PartNeed>> part_needs_;          // by size, those that need anything there
  std::vector<std::vector<std::optional<double>>> times_;  // a supply is thicker than a role's yarn
  double unlike_share_ = 0;
};

}  // namespace skeinproof
