// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/listed.h"
#include "core/substitution/given_part.h"
#include "core/substitution/sharing_context.h"

namespace skeinproof {
namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

std::string counted(int count, SkeinWord word) {
  return std::to_string(count) + " " + std::string(word_of(word)) + (count == 1 ? "" : "s");
}

}  // namespace

std::string SharingContext::lengths(Metres needed, Metres had) const {
  return show_number(needed.value(), 1, style_) + " of " + show_number(had.value(), 1, style_) + " m";
}

SharingPlan SharingContext::plan(std::size_t size_index, const SharingProblem& problem,
                                 const Sharing& sharing) const {
  SharingPlan plan;
  plan.size = pattern_.sizes[size_index].id;
  std::vector<Part> parts;
  for (std::size_t p = 0; p < problem.parts.size(); ++p) parts.push_back(*part_needs_[size_index][p].part);
  std::vector<double> given_by_supply(supplies_.size(), 0), given_of_role(roles_.size(), 0);
  for (std::size_t p = 0; p < parts.size(); ++p) {
    if (sharing.part_in[p] < 0) continue;
    given_by_supply[at(sharing.part_in[p])] += problem.parts[p].need;
    given_of_role[parts[p].role] += problem.parts[p].need;
  }
  const auto finish = [&](SharedOut& share, double usable) {
    share.spare = metres(usable) - share.needed;
    share.brimful = share.needed.value() > problem.brimful_share * usable + 1e-6;
    plan.shares.push_back(std::move(share));
  };
  for (std::size_t r = 0; r < roles_.size(); ++r) {
    SharedOut share;
    share.role = roles_[r]->id;
    share.what = roles_[r]->label;
    share.needed = metres(problem.needs[r] - given_of_role[r]);
    double usable = problem.join_m;
    for (std::size_t s = 0; s < supplies_.size(); ++s) {
      if (sharing.serves[s] != static_cast<int>(r)) continue;
      share.supplies.push_back(s);
      share.had += supplies_[s].length - metres(given_by_supply[s]);
      usable += supplies_[s].usable.value() - given_by_supply[s] - problem.join_m;
    }
    if (!share.supplies.empty()) finish(share, usable);
    for (std::size_t s = 0; s < supplies_.size(); ++s) {
      SharedOut given;
      std::vector<std::string> names;
      for (std::size_t p = 0; p < parts.size(); ++p) {
        if (parts[p].role != r || sharing.part_in[p] != static_cast<int>(s)) continue;
        given.parts.push_back(parts[p].part);
        given.needed += metres(problem.parts[p].need);
        names.push_back(part_name(pattern_, parts[p].part));
      }
      if (given.parts.empty()) continue;
      given.role = roles_[r]->id;
      given.what = listed(names);
      given.supplies = {s};
      // What else it gives is not there for these.
      const double elsewhere = given_by_supply[s] - given.needed.value();
      const double served = sharing.serves[s] >= 0
                                ? problem.needs[at(sharing.serves[s])] - given_of_role[at(sharing.serves[s])]
                                : 0;
      const double kept = std::min(supplies_[s].usable.value() - given_by_supply[s], served);
      given.had = supplies_[s].length - metres(elsewhere + kept);
      finish(given, supplies_[s].usable.value() - elsewhere - kept);
    }
  }
  std::vector<std::string> words;
  for (const SharedOut& share : plan.shares) {
    std::vector<std::string> names;
    for (std::size_t s : share.supplies) names.push_back(supplies_[s].name);
    words.push_back(share.what + " in " + listed(names) + " (" + lengths(share.needed, share.had) + ")");
    if (share.brimful)
      plan.warnings.push_back(listed(names) + " brimful by " + show_number(share.spare.value(), 1, style_) +
                              " m: weigh while knitting");
    for (std::size_t s : share.supplies)
      if (supplies_[s].lots > 1)
        plan.warnings.push_back(supplies_[s].name + " lies in " + std::to_string(supplies_[s].lots) +
                                " lots: see the lot plan");
  }
  for (std::size_t i = 0; i < words.size(); ++i) plan.words += (i == 0 ? "" : ", ") + words[i];
  for (std::string& note : thickness_notes(size_index, plan.shares)) plan.warnings.push_back(std::move(note));
  return plan;
}

// Whether both are knitted in one piece, as far as the pieces are known.
bool SharingContext::meet(std::size_t size_index, const SharedOut& one, const SharedOut& other) const {
  const auto pieces_of = [&](const SharedOut& share) {
    std::vector<PieceId> pieces;
    for (const GivenPart& part : share.parts) pieces.push_back(part.piece);
    if (!share.parts.empty()) return pieces;
    for (const RoleNeed& need : assessment_.roles)
      if (need.role == share.role)
        for (const PartMetres& part : need.sizes[size_index].parts) pieces.push_back(part.piece);
    return pieces;
  };
  const auto first = pieces_of(one), second = pieces_of(other);
  if (first.empty() || second.empty()) return true;
  return std::any_of(first.begin(), first.end(), [&](PieceId piece) {
    return std::find(second.begin(), second.end(), piece) != second.end();
  });
}

std::vector<std::string> SharingContext::thickness_notes(std::size_t size_index,
                                                         const std::vector<SharedOut>& shares) const {
  std::vector<std::string> notes;
  const double limit = unlike_share_ - 1e-9;
  const auto percent = [&](double times) { return show_number(100 * (times - 1), 0, style_) + " %"; };
  for (std::size_t s = 0; s < supplies_.size(); ++s) {
    std::vector<std::string> thinner;
    double least = 1e9, most = 0;
    for (std::size_t t = 0; t < supplies_.size(); ++t) {
      const auto times = s == t ? std::nullopt : thicker(supplies_[s], supplies_[t]);
      if (!times || *times - 1 < limit) continue;
      const bool beside = std::any_of(shares.begin(), shares.end(), [&](const SharedOut& one) {
        return std::find(one.supplies.begin(), one.supplies.end(), s) != one.supplies.end() &&
               std::any_of(shares.begin(), shares.end(), [&](const SharedOut& other) {
                 return std::find(other.supplies.begin(), other.supplies.end(), t) != other.supplies.end() &&
                        meet(size_index, one, other);
               });
      });
      if (!beside) continue;
      thinner.push_back(supplies_[t].name);
      least = std::min(least, *times);
      most = std::max(most, *times);
    }
    if (!thinner.empty())
      notes.push_back("S10: " + supplies_[s].name + " is " +
                      (percent(least) != percent(most) ? "up to " : "") + percent(most) + " thicker than " +
                      listed(thinner) +
                      " in one piece: the thick colour stands out, the other sinks or puckers; swatch them "
                      "together");
  }
  for (const SharedOut& share : shares)
    for (std::size_t s : share.supplies) {
      const auto role =
          std::find_if(roles_.begin(), roles_.end(), [&](const Role* one) { return one->id == share.role; });
      const auto& times = times_[s][static_cast<std::size_t>(role - roles_.begin())];
      if (!times || std::abs(*times - 1) < limit) continue;
      const std::string note = supplies_[s].name + " is " + percent(*times > 1 ? *times : 2 - *times) +
                               (*times > 1 ? " thicker" : " thinner") +
                               " than the pattern's yarn: see that it meets the gauge";
      if (std::find(notes.begin(), notes.end(), note) == notes.end()) notes.push_back(note);
    }
  return notes;
}

NextSizeUp SharingContext::next_size(std::size_t size_index, const SharingProblem& problem,
                                     const Sharing& sharing, const std::vector<Buyable>& buyable) const {
  NextSizeUp next;
  next.size = pattern_.sizes[size_index].id;
  std::vector<std::string> words;
  for (std::size_t s = 0; s < problem.supplies.size(); ++s) {
    if (sharing.bought[s] == 0) continue;
    ToBuy buy;
    buy.yarn = buyable[s].yarn;
    buy.skeins = sharing.bought[s];
    buy.name = buyable[s].name;
    double given = 0, lacking = -problem.supplies[s].usable;
    for (std::size_t p = 0; p < problem.parts.size(); ++p)
      if (sharing.part_in[p] == static_cast<int>(s)) given += problem.parts[p].need;
    lacking += given;
    if (const int role = sharing.serves[s]; role >= 0) {
      buy.role = roles_[at(role)]->id;
      lacking += problem.needs[at(role)];
      for (std::size_t p = 0; p < problem.parts.size(); ++p)
        if (problem.parts[p].role == role && sharing.part_in[p] >= 0) lacking -= problem.parts[p].need;
      for (std::size_t t = 0; t < problem.supplies.size(); ++t)
        if (t != s && sharing.serves[t] == role) lacking -= problem.supplies[t].usable;
    }
    const double bought = buy.skeins * problem.supplies[s].skein;
    buy.lacking = metres(std::clamp(lacking, 0.0, bought));
    const Yarn* yarn = pattern_.yarn(buy.yarn);
    if (yarn->price) {
      buy.cost = buy.skeins * yarn->price->amount.value;
      buy.currency = yarn->price->currency;
    }
    const Role* role = pattern_.role(buy.role);
    std::string one = counted(buy.skeins, yarn->put_up.word) + " of " + yarn->name;
    if (buy.name != yarn->name) one += ", " + buy.name;
    one += " (" + show_number(buy.lacking.value(), 1, style_) + " m are lacking";
    if (role != nullptr) one += " for " + role->label;
    words.push_back(one + ")");
    next.buys.push_back(std::move(buy));
  }
  next.words = "For size " + pattern_.sizes[size_index].label + ": " + listed(words);
  return next;
}

}  // namespace skeinproof
