// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/pages/quantities/evidence_table.h"
#include "app/pages/quantities/quantities_page.h"
#include "app/widgets/pane_header.h"

namespace skeinproof {
namespace {

QString words(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

}  // namespace

const RoleEvidence& QuantitiesPage::current_evidence() {
  if (gathered_state_ != open_.state() || evidence_gathered_.empty()) {
    evidence_gathered_ = gather_evidence(open_.pattern(), open_.assessment());
    gathered_state_ = open_.state();
  }
  return evidence_gathered_[current_role()];
}

QString QuantitiesPage::chance_words() {
  const SizeEvidence& size = current_evidence().sizes[current_size()];
  if (!size.chance_sufficient) return {};
  return tr("; the skeins suffice in %1 of 100")
      .arg(QString::fromStdString(chance_of_100(*size.chance_sufficient)));
}

void QuantitiesPage::show_evidence() {
  const SizeNeed* need = current_need();
  if (need == nullptr) {
    evidence_->show_evidence({});
    return;
  }
  const Pattern& pattern = open_.pattern();
  const RoleEvidence& gathered = current_evidence();
  EvidenceData evidence = evidence_of(pattern, gathered, *need, current_size(), open_.reader());
  const QString place = tr("%1 size %2, planned")
                            .arg(QString::fromStdString(pattern.roles[current_role()].label),
                                 QString::fromStdString(pattern.sizes[current_size()].label));
  const int ways = static_cast<int>(evidence.rows.size());
  QString note = ways == 1 ? tr("for %1: one way to the number").arg(place)
                           : tr("for %1: %2 ways to the same number").arg(place).arg(ways);
  const auto parted =
      std::find_if(gathered.disagreements.begin(), gathered.disagreements.end(),
                   [this](const Disagreement& one) { return one.size_index == current_size(); });
  if (parted != gathered.disagreements.end())
    note +=
        tr("; they part by more than their errors, likeliest because %1").arg(words(word_of(parted->reason)));
  else if (gathered.steps && gathered.steps->clash)
    note += tr("; the printed counts contradict each other");
  evidence_head_->set_note(note);
  evidence_->show_evidence(std::move(evidence));
}

}  // namespace skeinproof
