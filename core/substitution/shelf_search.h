// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/substitution/shelf_yarn.h"

namespace skeinproof {

// The yarn that hits are to be like, with the strands it is held in.
struct ShelfLike {
  Yarn yarn;
  int strands = 1;
};
// The yarn of a role by its label, or of the first role where the label is empty. Fails where there is no
// such role or it has no yarn.
Expected<ShelfLike> like_role(const Pattern& pattern, std::string_view role_label);

struct ShelfQuestion {
  std::string words;              // all of them must be found; for two yarns, all in one of them
  std::optional<ShelfLike> like;  // without it hits come by name, and only singles
  bool singles = true;
  bool doubled = false;  // two strands of one yarn
  bool pairs = false;    // two entries of the shelf held together
  bool owned_only = false;
};

enum class ShelfHolding { single, doubled, pair };
template <>
struct EnumWords<ShelfHolding> {
  static constexpr auto rows = enum_rows<ShelfHolding>(
      {{ShelfHolding::single, "single"}, {ShelfHolding::doubled, "doubled"}, {ShelfHolding::pair, "pair"}});
};

// How near a hit is to the yarn that was asked for, one thing at a time; a smaller number is nearer. Of two
// yarns held together the fibres count by the mass of each, the stricter care and the more marked surface and
// colouring. There is no figure that adds them up.
struct ShelfLikeness {
  int thickness_step = 0;  // index into shelf_thickness_steps, or past its end
  int fibre = 0;           // 0 same, 1 mostly, 2 partly, 3 other, 4 not known
  int care = 0;            // 0 no stricter, 1 not known, 2 stricter
  int surface = 0;         // 0 same, 1 not known, 2 other; so are the next two
  int structure = 0;
  int colouring = 0;
  bool operator==(const ShelfLikeness&) const = default;
};

// Differences in thickness, in percent, inside which hits count as equally thick. Common practice, no source:
// hands do not tell 3 %, and from 8 % on two yarns in one cloth look different.
inline constexpr double shelf_thickness_steps[] = {3, 8, 15};
// So many of each kind, the nearest in grams a metre, are compared further.
inline constexpr std::size_t shelf_nearest = 1000;

struct ShelfHit {
  ShelfHolding holding = ShelfHolding::single;
  std::size_t first = 0;                // index on the shelf
  std::size_t second = 0;               // of a pair, the thinner strand; else the same as `first`
  std::optional<double> tex;            // of all strands together
  std::optional<double> thickness_pct;  // thicker than the yarn asked for, by the volume of the fibres where
                                        // both are known, else by weight; below 0 = thinner
  std::optional<double> weight_pct;     // heavier by the metre
  std::optional<double> price_a_100m;   // of all strands; in `currency`
  std::string currency;
  ShelfLikeness likeness;
};

struct ShelfAnswer {
  std::vector<ShelfHit> hits;
  std::size_t without_put_up = 0;  // entries that have the words, but no thickness to compare by
};

// How hits are ordered, in words for people.
std::string shelf_order_words(const ShelfQuestion& question);

// The columns hits can be ordered by.
enum class ShelfOrder {
  rule,
  name,
  thickness,
  weight,
  fibre,
  care,
  surface,
  structure,
  colouring,
  price,
  owned
};
template <>
struct EnumWords<ShelfOrder> {
  static constexpr auto rows = enum_rows<ShelfOrder>({{ShelfOrder::rule, "likeness"},
                                                      {ShelfOrder::name, "name"},
                                                      {ShelfOrder::thickness, "thickness"},
                                                      {ShelfOrder::weight, "weight"},
                                                      {ShelfOrder::fibre, "fibre"},
                                                      {ShelfOrder::care, "care"},
                                                      {ShelfOrder::surface, "surface"},
                                                      {ShelfOrder::structure, "structure"},
                                                      {ShelfOrder::colouring, "colouring"},
                                                      {ShelfOrder::price, "price"},
                                                      {ShelfOrder::owned, "owned"}});
};

// A shelf made ready for searching. It does not change and may be read from several threads.
class ShelfIndex {
 public:
  explicit ShelfIndex(std::vector<ShelfYarn> entries);
  ~ShelfIndex();
  ShelfIndex(ShelfIndex&&) noexcept;
  ShelfIndex& operator=(ShelfIndex&&) noexcept;

  const std::vector<ShelfYarn>& entries() const;
  // Fails where the yarn to be like has no length or no weight of a skein.
  Expected<ShelfAnswer> search(const ShelfQuestion& question) const;
  // What is not known comes last either way.
  void order(std::vector<ShelfHit>& hits, ShelfOrder by, bool descending = false) const;
  // Why a hit is one, in words: "3 % thicker; same fibre; hand wash, stricter; …".
  std::string reason(const ShelfQuestion& question, const ShelfHit& hit) const;

 private:
  struct Ready;
  std::unique_ptr<const Ready> ready_;
};

// The names of a hit's yarns: "Oddmere Fieldspun", "Pillowgate Wisp, doubled", "A + B".
std::string hit_name(std::span<const ShelfYarn> entries, const ShelfHit& hit);

}  // namespace skeinproof
