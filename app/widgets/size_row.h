// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <functional>

#include "app/widgets/quantity_text.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// One row of a size grid: a per-size list of the document, or figures worked out from it (no setter).
struct SizeRow {
  QString label;      // "Repeats"
  QString undo_name;  // what an undo step of this row is called; empty = the label. It also tells rows apart
                      // when a page gives its rows anew: "repeats, Yoke, chart".
  QuantityFormat format;
  std::function<PerSize<Entered<double>>(const Pattern&)> get;
  std::function<void(Pattern&, const PerSize<Entered<double>>&)> set;  // empty = read only
  bool strong = false;                                                 // the row the grid is about
  bool rule_above = false;  // a heavier line above: worked-out rows below typed ones
};

// A row of a list of the document. The functions find the list by the ids of its parts; the getter returns an
// empty list where the part is gone.
template <class Quantity>
SizeRow size_row(QString label, QuantityFormat format,
                 std::function<PerSize<Entered<Quantity>>(const Pattern&)> get,
                 std::function<void(Pattern&, const PerSize<Entered<Quantity>>&)> set = {}) {
  SizeRow row;
  row.label = std::move(label);
  row.format = std::move(format);
  row.get = [get](const Pattern& pattern) {
    PerSize<Entered<double>>::List plain;
    const auto typed = get(pattern);
    for (const auto& value : typed.list())
      plain.push_back(value ? FieldValue(to_plain(*value)) : FieldValue());
    return PerSize<Entered<double>>(std::move(plain));
  };
  if (set)
    row.set = [set](Pattern& pattern, const PerSize<Entered<double>>& plain) {
      typename PerSize<Entered<Quantity>>::List typed;
      for (const auto& value : plain.list())
        typed.push_back(value ? std::optional(from_plain<Quantity>(*value)) : std::nullopt);
      set(pattern, PerSize<Entered<Quantity>>(std::move(typed)));
    };
  return row;
}

}  // namespace skeinproof
