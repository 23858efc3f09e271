// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <tuple>

#include "core/base/text.h"
#include "core/substitution/shelf_fields.h"
#include "core/substitution/shelf_search.h"

namespace skeinproof {
namespace {

// What a hit is ordered by, worked out once: the levels, then the number, the text and the price. What is
// absent comes last whichever way the order runs.
struct OrderKey {
  std::array<int, 6> levels{};
  std::optional<double> number;
  std::optional<std::string> text;
  std::optional<double> price;
  std::array<std::string, 2> names;
};

template <class T>
int compare_known(const std::optional<T>& a, const std::optional<T>& b, bool descending) {
  if (!a || !b) return static_cast<int>(!a.has_value()) - static_cast<int>(!b.has_value());
  if (*a == *b) return 0;
  return (*a < *b) != descending ? -1 : 1;
}

int compare(const OrderKey& a, const OrderKey& b, bool descending) {
  if (a.levels != b.levels) return (a.levels < b.levels) != descending ? -1 : 1;
  if (const int order = compare_known(a.number, b.number, descending); order != 0) return order;
  if (const int order = compare_known(a.text, b.text, descending); order != 0) return order;
  return compare_known(a.price, b.price, descending);
}

std::optional<std::string> known(std::string text) {
  if (text.empty()) return std::nullopt;
  return lower_ascii(text);
}

OrderKey key_of(const std::vector<ShelfYarn>& entries, const ShelfHit& hit, ShelfOrder by) {
  const ShelfYarn& first = entries[hit.first];
  const ShelfLikeness& like = hit.likeness;
  OrderKey key;
  key.names = {lower_ascii(first.yarn.name), lower_ascii(entries[hit.second].yarn.name)};
  const auto field = [&](int level, ShelfField name) {
    key.levels[0] = level;
    key.text = known(field_text(first, name));
  };
  // Prices of two currencies do not compare, so each currency stands by itself.
  const auto price = [&] {
    key.text = hit.price_a_100m ? known(hit.currency) : std::nullopt;
    key.price = hit.price_a_100m;
  };
  switch (by) {
    case ShelfOrder::rule:
      key.levels = {like.thickness_step, like.fibre, like.care, like.surface, like.structure, like.colouring};
      if (hit.thickness_pct) key.number = std::abs(*hit.thickness_pct);
      price();
      break;
    case ShelfOrder::name:
      key.text = key.names[0];
      break;
    case ShelfOrder::thickness:
      key.number = hit.thickness_pct ? hit.thickness_pct : hit.tex;
      break;
    case ShelfOrder::weight:
      key.number = hit.tex;
      break;
    case ShelfOrder::fibre:
      field(like.fibre, ShelfField::composition);
      break;
    case ShelfOrder::care:
      field(like.care, ShelfField::care);
      break;
    case ShelfOrder::surface:
      field(like.surface, ShelfField::surface);
      break;
    case ShelfOrder::structure:
      field(like.structure, ShelfField::structure);
      break;
    case ShelfOrder::colouring:
      field(like.colouring, ShelfField::colouring);
      break;
    case ShelfOrder::price:
      price();
      break;
    case ShelfOrder::owned:
      if (const auto owned = owned_length(first)) key.number = owned->value();
      break;
  }
  return key;
}

}  // namespace

void ShelfIndex::order(std::vector<ShelfHit>& hits, ShelfOrder by, bool descending) const {
  std::vector<OrderKey> keys;
  keys.reserve(hits.size());
  for (const ShelfHit& hit : hits) keys.push_back(key_of(entries(), hit, by));
  std::vector<std::size_t> places(hits.size());
  std::iota(places.begin(), places.end(), std::size_t{0});
  const auto tie = [&](std::size_t i) {
    return std::tie(keys[i].names, hits[i].first, hits[i].second, hits[i].holding);
  };
  std::sort(places.begin(), places.end(), [&](std::size_t a, std::size_t b) {
    const int order = compare(keys[a], keys[b], descending);
    return order != 0 ? order < 0 : tie(a) < tie(b);
  });
  std::vector<ShelfHit> ordered;
  ordered.reserve(hits.size());
  for (std::size_t place : places) ordered.push_back(std::move(hits[place]));
  hits = std::move(ordered);
}

}  // namespace skeinproof
