// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/page_table.h"

#include <QCoreApplication>
#include <vector>

#include "app/pages/assumptions/assumptions_page.h"
#include "app/pages/candidates/candidates_page.h"
#include "app/pages/changes/changes_page.h"
#include "app/pages/hand_over/hand_over_page.h"
#include "app/pages/on_hand/on_hand_page.h"
#include "app/pages/pattern/pattern_page.h"
#include "app/pages/pieces/pieces_page.h"
#include "app/pages/quantities/quantities_page.h"
#include "app/pages/queries/queries_page.h"
#include "app/pages/weighings/weighings_page.h"
#include "app/pages/yarns/yarns_page.h"

namespace skeinproof {

namespace {

template <class SomePage>
Page* make(OpenPattern& open, QWidget* parent) {
  return new SomePage(open, parent);
}

}  // namespace

std::span<const PageRow> page_table() {
  static const std::vector<PageRow> rows = {
      {QT_TRANSLATE_NOOP("Pages", "Pattern"), &make<PatternPage>},
      {QT_TRANSLATE_NOOP("Pages", "Yarns"), &make<YarnsPage>},
      {QT_TRANSLATE_NOOP("Pages", "Pieces"), &make<PiecesPage>},
      {QT_TRANSLATE_NOOP("Pages", "Weighings"), &make<WeighingsPage>},
      {QT_TRANSLATE_NOOP("Pages", "Quantities"), &make<QuantitiesPage>},
      {QT_TRANSLATE_NOOP("Pages", "Changes"), &make<ChangesPage>},
      {QT_TRANSLATE_NOOP("Pages", "Queries"), &make<QueriesPage>},
      {QT_TRANSLATE_NOOP("Pages", "Candidates"), &make<CandidatesPage>},
      {QT_TRANSLATE_NOOP("Pages", "On hand"), &make<OnHandPage>},
      {QT_TRANSLATE_NOOP("Pages", "Hand over"), &make<HandOverPage>},
      {QT_TRANSLATE_NOOP("Pages", "Assumptions"), &make<AssumptionsPage>},
  };
  return rows;
}

}  // namespace skeinproof
