// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/page_table.h"

#include <QCoreApplication>
#include <vector>

#include "app/pages/page.h"

namespace skeinproof {

namespace {

template <class SomePage>
Page* make(OpenPattern& open, QWidget* parent) {
  return new SomePage(open, parent);
}

}  // namespace

std::span<const PageRow> page_table() {
  // In this order: Pattern, Yarns, Pieces, Weighings, Quantities, Hand over. A page's line, with its include
  // above:
  //   {QT_TRANSLATE_NOOP("Pages", "Pattern"), &make<PatternPage>},
  static const std::vector<PageRow> rows = {};
  return rows;
}

}  // namespace skeinproof
