// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/finding_tree.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <algorithm>
#include <array>

#include "app/widgets/ink.h"
#include "core/sheets/query_sheet.h"

namespace skeinproof {
namespace {

constexpr int cause_role = Qt::UserRole;
enum Column { number_column, place_column, title_column, stake_column, rules_column, column_count };

struct SeverityWords {
  Severity severity;
  const char* meaning;
};
constexpr std::array severities = {
    SeverityWords{Severity::stop, QT_TRANSLATE_NOOP("skeinproof::FindingTree", "must not print")},
    SeverityWords{Severity::ask, QT_TRANSLATE_NOOP("skeinproof::FindingTree", "query the designer")},
    SeverityWords{Severity::note, QT_TRANSLATE_NOOP("skeinproof::FindingTree", "tell, no action forced")},
    SeverityWords{Severity::style, QT_TRANSLATE_NOOP("skeinproof::FindingTree", "house style only")}};

const Finding& first_of(const Reviewed& reviewed, std::size_t cause) {
  return reviewed.review.findings[reviewed.review.causes[cause].findings.front()];
}

bool holds(const std::vector<std::string>& labels, const QString& wanted) {
  return std::find(labels.begin(), labels.end(), wanted.toStdString()) != labels.end();
}

QString state_words(DecisionState state) {
  switch (state) {
    case DecisionState::kept:
      return FindingTree::tr("kept");
    case DecisionState::lapsed:
      return FindingTree::tr("lapsed");
    case DecisionState::answered:
      return FindingTree::tr("answered");
    case DecisionState::open:
      break;
  }
  return {};
}

}  // namespace

QString place_words(const Reviewed& reviewed, std::size_t cause) {
  return QString::fromStdString(place_of_query(reviewed.review, first_of(reviewed, cause)));
}

FindingTree::FindingTree(QWidget* parent) : QTreeWidget(parent) {
  setAccessibleName(tr("Findings"));
  setColumnCount(column_count);
  setHeaderLabels({tr("No."), tr("Place"), tr("Finding"), tr("At stake"), tr("Rules")});
  setFrameShape(QFrame::NoFrame);
  setUniformRowHeights(true);
  setAllColumnsShowFocus(true);
  setExpandsOnDoubleClick(false);
  setTabKeyNavigation(false);
  setIndentation(scaled(this, 14));
  header()->setStretchLastSection(false);
  header()->setSectionResizeMode(title_column, QHeaderView::Stretch);
  header()->setHighlightSections(false);
  connect(this, &QTreeWidget::currentItemChanged, this, [this](QTreeWidgetItem* item) {
    if (filling_) return;
    chosen_key_ = item != nullptr && reviewed_ && item->parent() != nullptr
                      ? QString::fromStdString(
                            first_of(*reviewed_, item->data(0, cause_role).value<std::size_t>()).key())
                      : QString();
    emit chosen_changed();
  });
  connect(this, &QTreeWidget::itemChanged, this, [this](QTreeWidgetItem* item, int column) {
    if (!filling_ && column == number_column && item->parent() != nullptr)
      emit ticked(item->data(0, cause_role).value<std::size_t>(),
                  item->checkState(number_column) == Qt::Checked);
  });
}

void FindingTree::show_review(std::shared_ptr<const Reviewed> reviewed) {
  reviewed_ = std::move(reviewed);
  fill();
}

void FindingTree::show_only(QueriesShown which, const QString& role, const QString& size) {
  which_ = which;
  role_ = role;
  size_ = size;
  fill();
}

bool FindingTree::is_shown(std::size_t cause) const {
  const Decision& decision = reviewed_->record.decisions[cause];
  if (which_ == QueriesShown::undecided && !decision.undecided()) return false;
  if (which_ == QueriesShown::kept && decision.undecided()) return false;
  const auto& findings = reviewed_->review.causes[cause].findings;
  return std::any_of(findings.begin(), findings.end(), [&](std::size_t index) {
    const Finding& finding = reviewed_->review.findings[index];
    return (role_.isEmpty() || holds(finding.roles, role_)) &&
           (size_.isEmpty() || holds(finding.sizes, size_));
  });
}

void FindingTree::fill() {
  filling_ = true;
  clear();
  if (reviewed_) {
    for (const SeverityWords& row : severities) {
      auto* group = new QTreeWidgetItem;
      for (std::size_t cause = 0; cause < reviewed_->review.causes.size(); ++cause)
        if (first_of(*reviewed_, cause).severity == row.severity && is_shown(cause)) add(group, cause);
      const std::string_view name = word_of(row.severity);
      group->setText(number_column,
                     QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())) +
                         QStringLiteral("   ") + tr(row.meaning) + QStringLiteral("   ") +
                         (group->childCount() == 0 ? tr("none") : QString::number(group->childCount())));
      group->setFlags(Qt::ItemIsEnabled);
      addTopLevelItem(group);
      group->setFirstColumnSpanned(true);
      group->setExpanded(row.severity != Severity::style);
    }
    for (int column : {number_column, place_column, stake_column, rules_column})
      resizeColumnToContents(column);
    setColumnWidth(place_column, std::min(columnWidth(place_column), scaled(this, 190)));
    setColumnWidth(stake_column, std::min(columnWidth(stake_column), scaled(this, 180)));
  }
  QTreeWidgetItem* again = nullptr;
  for (QTreeWidgetItem* item : rows())
    if (QString::fromStdString(first_of(*reviewed_, item->data(0, cause_role).value<std::size_t>()).key()) ==
        chosen_key_)
      again = item;
  if (again == nullptr && !rows().empty()) again = rows().front();
  if (again != nullptr) setCurrentItem(again);
  filling_ = false;
  emit chosen_changed();
}

void FindingTree::add(QTreeWidgetItem* group, std::size_t cause) {
  const Finding& finding = first_of(*reviewed_, cause);
  const Decision& decision = reviewed_->record.decisions[cause];
  const std::size_t together = reviewed_->review.causes[cause].findings.size();
  auto* item = new QTreeWidgetItem(group);
  item->setData(0, cause_role, QVariant::fromValue(cause));
  item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
  item->setCheckState(number_column, decision.on_sheet ? Qt::Checked : Qt::Unchecked);
  item->setText(number_column, QString::fromStdString(decision.number));
  item->setText(place_column, place_words(*reviewed_, cause));
  const QString state = state_words(decision.state);
  item->setText(title_column, (state.isEmpty() ? QString() : state + QStringLiteral(": ")) +
                                  QString::fromStdString(finding.title));
  item->setText(stake_column, QString::fromStdString(finding.at_stake));
  item->setText(rules_column, together == 1 ? QString() : tr("%1 in one").arg(together));
  QFont weight = type_of(font()).body;
  weight.setBold(finding.severity == Severity::stop);
  if (finding.severity == Severity::ask || decision.state == DecisionState::lapsed)
    weight.setWeight(QFont::DemiBold);
  item->setFont(number_column, weight);
  for (int column : {place_column, title_column, stake_column}) item->setToolTip(column, item->text(column));
  const std::string_view severity = word_of(finding.severity);
  item->setData(title_column, Qt::AccessibleTextRole,
                tr("%1, %2, %3: %4")
                    .arg(QString::fromStdString(decision.number),
                         QString::fromUtf8(severity.data(), static_cast<qsizetype>(severity.size())),
                         item->text(place_column), item->text(title_column)));
}

std::vector<QTreeWidgetItem*> FindingTree::rows() const {
  std::vector<QTreeWidgetItem*> all;
  for (int group = 0; group < topLevelItemCount(); ++group)
    for (int row = 0; row < topLevelItem(group)->childCount(); ++row)
      all.push_back(topLevelItem(group)->child(row));
  return all;
}

std::optional<std::size_t> FindingTree::chosen() const {
  const QTreeWidgetItem* item = currentItem();
  if (item == nullptr || item->parent() == nullptr) return std::nullopt;
  return item->data(0, cause_role).value<std::size_t>();
}

void FindingTree::choose(std::size_t cause) {
  for (QTreeWidgetItem* item : rows())
    if (item->data(0, cause_role).value<std::size_t>() == cause) setCurrentItem(item);
}

void FindingTree::step(int by) {
  const auto all = rows();
  if (all.empty()) return;
  const auto at = std::find(all.begin(), all.end(), currentItem());
  const int now = at == all.end() ? (by > 0 ? -1 : 0) : static_cast<int>(at - all.begin());
  const int count = static_cast<int>(all.size());
  setCurrentItem(all[static_cast<std::size_t>((now + by + count) % count)]);
}

void FindingTree::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Space && chosen()) {
    QTreeWidgetItem* item = currentItem();
    item->setCheckState(number_column,
                        item->checkState(number_column) == Qt::Checked ? Qt::Unchecked : Qt::Checked);
    return;
  }
  QTreeWidget::keyPressEvent(event);
}

void FindingTree::changeEvent(QEvent* event) {
  QTreeWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange && !filling_) fill();
}

}  // namespace skeinproof
