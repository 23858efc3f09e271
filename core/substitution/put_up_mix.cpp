// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/put_up_mix.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/base/text.h"
#include "core/need/bench_changes.h"
#include "core/need/changes.h"
#include "core/need/constants.h"
#include "core/need/plan.h"
#include "core/substitution/yarn_character.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

constexpr double exact_fit = 1e-9;
constexpr double same_cost = 1e-9;
constexpr double most_skeins = 1e5;
constexpr long most_tries = 2'000'000;

struct Offer {
  SoldAs sold_as;
  double length = 0;
  double price = 0;  // 0 where prices do not count
};

// Least cost, then fewest skeins, then least left over.
struct Worth {
  double cost = std::numeric_limits<double>::infinity();
  long skeins = std::numeric_limits<long>::max();
  double left_over = std::numeric_limits<double>::infinity();
};
bool better(const Worth& one, const Worth& other) {
  const double slack = same_cost * (1 + std::abs(one.cost));
  if (std::abs(one.cost - other.cost) > slack || std::isinf(other.cost)) return one.cost < other.cost;
  if (one.skeins != other.skeins) return one.skeins < other.skeins;
  return one.left_over < other.left_over - exact_fit;
}

// Counts of every offer, tried from the most of the cheapest metre downwards; a branch whose best end could
// not be better is left.
class MixSearch {
 public:
  MixSearch(std::vector<Offer> offers, double cover)
      : offers_(std::move(offers)), cover_(cover), counts_(offers_.size(), 0) {
    std::stable_sort(offers_.begin(), offers_.end(), [](const Offer& a, const Offer& b) {
      const double metre_a = a.price / a.length, metre_b = b.price / b.length;
      return metre_a != metre_b ? metre_a < metre_b : a.length > b.length;
    });
    longest_.assign(offers_.size(), 0);
    for (std::size_t i = offers_.size(); i-- > 0;)
      longest_[i] = std::max(offers_[i].length, i + 1 < offers_.size() ? longest_[i + 1] : 0);
  }

  void run() { look(0, cover_, 0, 0); }
  const std::vector<long>& best() const { return best_counts_; }
  const std::vector<Offer>& offers() const { return offers_; }
  bool proven() const { return tries_ < most_tries; }

 private:
  long enough_of(double rest, double length) const {
    return std::max(0L, static_cast<long>(std::ceil(rest / length - exact_fit)));
  }
  void look(std::size_t i, double rest, double cost, long skeins) {
    if (++tries_ >= most_tries && !best_counts_.empty()) return;
    if (rest <= exact_fit * cover_) return keep({cost, skeins, std::max(0.0, -rest)});
    if (i == offers_.size()) return;
    const Offer& offer = offers_[i];
    const Worth at_best{cost + rest * offer.price / offer.length, skeins + enough_of(rest, longest_[i]), 0};
    if (!better(at_best, best_)) return;
    const long most = enough_of(rest, offer.length);
    const long least = i + 1 == offers_.size() ? most : 0;
    for (long count = most; count >= least; --count) {
      counts_[i] = count;
      const double n = static_cast<double>(count);
      look(i + 1, rest - n * offer.length, cost + n * offer.price, skeins + count);
    }
    counts_[i] = 0;
  }
  void keep(const Worth& worth) {
    if (!better(worth, best_)) return;
    best_ = worth;
    best_counts_ = counts_;
  }

  std::vector<Offer> offers_;
  double cover_;
  std::vector<double> longest_;  // of the offers from there on
  std::vector<long> counts_, best_counts_;
  Worth best_;
  long tries_ = 0;
};

std::string put_up_name(const PutUp& put_up, std::size_t index) {
  if (put_up.weight && std::isfinite(put_up.weight->value.value()))
    return "the put-up of " + show_short(put_up.weight->value.value(), 1) + " g";
  return "put-up " + std::to_string(index + 1);
}

bool sound(double value) { return std::isfinite(value) && value > 0; }

std::string plain_currency(const std::string& currency) {
  struct Row {
    std::string_view sign, code;
  };
  constexpr std::array rows = {Row{"€", "eur"}, Row{"£", "gbp"}, Row{"$", "usd"}, Row{"¥", "jpy"},
                               Row{"zł", "pln"}};
  const std::string plain = lower_ascii(tidy_spaces(currency));
  for (const Row& row : rows)
    if (plain == row.sign) return std::string(row.code);
  return plain;
}

// The offers that have a length, their prices where these may be used.
class Offers {
 public:
  explicit Offers(const std::vector<SoldAs>& put_ups) {
    for (std::size_t i = 0; i < put_ups.size(); ++i) take(put_ups[i], i);
    settle_currency();
  }
  std::vector<Offer> usable;
  std::vector<Error> left_out;
  bool by_price = false;
  std::string currency;

 private:
  void leave_out(ErrorKind kind, std::string found, std::string expected) {
    left_out.push_back({kind, {}, std::move(found), std::move(expected)});
  }
  void take(const SoldAs& sold_as, std::size_t index) {
    const PutUp& put_up = sold_as.put_up;
    const std::string name = put_up_name(put_up, index);
    if (!put_up.length || !sound(put_up.length->value.value()))
      return leave_out(ErrorKind::not_found, name + " without a length", "the length of one skein");
    Offer offer{sold_as, put_up.length->value.value(), 0};
    if (offer.sold_as.price) {
      const double amount = offer.sold_as.price->amount.value;
      if (!std::isfinite(amount) || amount < 0) {
        leave_out(ErrorKind::out_of_range, name + " at a price of " + show_short(amount, 2),
                  "a price of 0 or more");
        offer.sold_as.price.reset();
      }
    }
    names_.push_back(name);
    usable.push_back(std::move(offer));
  }

  void settle_currency() {
    std::vector<std::string> found;
    bool named = false, nameless = false, priced = false, unpriced = false;
    for (const Offer& offer : usable) {
      if (!offer.sold_as.price) {
        unpriced = true;
        continue;
      }
      priced = true;
      const std::string& one = offer.sold_as.price->currency;
      if (plain_currency(one).empty()) {
        nameless = true;
        continue;
      }
      named = true;
      if (std::none_of(found.begin(), found.end(), [&](const auto& f) { return same_currency(f, one); }))
        found.push_back(one);
    }
    if (!priced) return;
    if (found.size() > 1) {
      leave_out(ErrorKind::wrong_shape, "prices in " + join(found, " and "),
                "prices of one yarn in one currency");
      return;
    }
    by_price = true;
    if (named) currency = found.front();
    if (unpriced || (named && nameless)) keep_priced(named);
    for (Offer& offer : usable) offer.price = offer.sold_as.price->amount.value;
  }
  void keep_priced(bool named) {
    std::vector<Offer> kept;
    for (std::size_t i = 0; i < usable.size(); ++i) {
      const auto& price = usable[i].sold_as.price;
      if (!price)
        leave_out(ErrorKind::not_found, names_[i] + " without a price", "a price, as the others have");
      else if (named && plain_currency(price->currency).empty())
        leave_out(ErrorKind::not_found, names_[i] + " with a price without a currency", "its currency");
      else
        kept.push_back(usable[i]);
    }
    usable = std::move(kept);
  }
  std::vector<std::string> names_;
};

PutUpMix mix_of(const MixSearch& search, double cover, const Offers& offers) {
  PutUpMix mix;
  double cost = 0, bought = 0, shortest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < search.best().size(); ++i) {
    const long count = search.best()[i];
    if (count == 0) continue;
    const Offer& offer = search.offers()[i];
    mix.counts.push_back({offer.sold_as, static_cast<int>(count)});
    mix.skeins += static_cast<int>(count);
    bought += static_cast<double>(count) * offer.length;
    cost += static_cast<double>(count) * offer.price;
    shortest = std::min(shortest, offer.length);
  }
  std::stable_sort(mix.counts.begin(), mix.counts.end(), [](const PutUpCount& a, const PutUpCount& b) {
    return a.sold_as.put_up.length->value > b.sold_as.put_up.length->value;
  });
  mix.bought = metres(bought);
  mix.left_over = metres(bought - cover);
  mix.last_skein_share = std::clamp((cover - (bought - shortest)) / shortest, 0.0, 1.0);
  mix.by_price = offers.by_price;
  if (offers.by_price) {
    mix.cost = cost;
    mix.currency = offers.currency;
  }
  mix.proven = search.proven();
  mix.left_out = offers.left_out;
  return mix;
}

}  // namespace

std::vector<SoldAs> put_ups_of(const Yarn& yarn) {
  std::vector<SoldAs> all = {{yarn.put_up, yarn.price}};
  all.insert(all.end(), yarn.also_sold.begin(), yarn.also_sold.end());
  return all;
}

Expected<PutUpMix> cheapest_mix(Metres cover, const std::vector<SoldAs>& put_ups) {
  if (!sound(cover.value()))
    return failure(ErrorKind::out_of_range, show_short(cover.value(), 1) + " m to be covered",
                   "a length above 0");
  const Offers offers(put_ups);
  if (offers.usable.empty()) {
    if (!offers.left_out.empty()) return tl::unexpected<Error>(offers.left_out.front());
    return failure(ErrorKind::not_found, "no put-up", "the length of one skein");
  }
  double longest = 0;
  for (const Offer& offer : offers.usable) longest = std::max(longest, offer.length);
  if (cover.value() / longest > most_skeins)
    return failure(ErrorKind::out_of_range,
                   show_short(cover.value(), 0) + " m in skeins of " + show_short(longest, 2) + " m",
                   "no more than 100,000 skeins");
  MixSearch search(offers.usable, cover.value());
  search.run();
  return mix_of(search, cover.value(), offers);
}

Metres length_to_cover(Metres planned, Metres bare, const Yarn& yarn, const HouseStyle& house) {
  if (!yarn.put_up.length || !sound(yarn.put_up.length->value.value())) return planned;
  const Metres skein = yarn.put_up.length->value;
  return std::min(planned, static_cast<double>(skeins_for(planned, bare, skein, house)) * skein);
}

bool same_currency(const std::string& one, const std::string& other) {
  return plain_currency(one) == plain_currency(other);
}

std::vector<SpareReason> reasons_for_spare(const Pattern& pattern, const Yarn& yarn, int skeins,
                                           double last_skein_share, bool lengthened) {
  std::vector<SpareReason> reasons;
  if (last_skein_share > constant(pattern, "bench_buy_one_more_share"))
    reasons.push_back(SpareReason::last_skein_nearly_full);
  if (character_of(yarn).hand_dyed && skeins >= 2) reasons.push_back(SpareReason::hand_dyed);
  if (yarn.withdrawn) reasons.push_back(SpareReason::withdrawn);
  if (lengthened) reasons.push_back(SpareReason::to_be_lengthened);
  return reasons;
}

std::vector<RoleId> lengthened_roles(const Pattern& pattern, SizeId size) {
  std::vector<RoleId> roles;
  for (const BenchChange& row : pattern.changes) {
    if (!row.made || row.kind != ChangeKind::longer_piece || !row.by || !(row.by->value.value() > 0))
      continue;
    const auto change = change_of(row);
    const auto what_if = change ? apply(pattern, {*change}, size) : tl::unexpected<Error>(change.error());
    if (!what_if) continue;
    for (const RoleChange& role : what_if->roles)
      if (role.knitted_more > metres(0) && std::find(roles.begin(), roles.end(), role.role) == roles.end())
        roles.push_back(role.role);
  }
  return roles;
}

}  // namespace skeinproof
