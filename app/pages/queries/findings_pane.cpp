// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/findings_pane.h"

#include <QDate>
#include <QPlainTextEdit>
#include <QSplitter>
#include <QTabWidget>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/pages/queries/drafts_view.h"
#include "app/pages/queries/finding_detail.h"
#include "app/pages/queries/finding_tree.h"
#include "app/pages/queries/queries_widgets.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "core/sheets/query_sheet.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {

FindingsPane::FindingsPane(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      head_(new PaneHeader(tr("Findings"))),
      tabs_(new QTabWidget),
      tree_(new FindingTree),
      detail_(new FindingDetail(open)),
      not_checked_(
          flat_table(tr("Not checked"), {tr("Rule"), tr("Because"), tr("What would let it run")}, 1)),
      sheet_view_(reading_text(tr("Query sheet"), Pitch::fixed)),
      sign_off_view_(reading_text(tr("Sign-off note"), Pitch::fixed)),
      drafts_(new DraftsView(open)),
      counting_([this](Closed closed) {
        closed_ = std::move(closed);
        refresh_sheets();
      }) {
  not_checked_->setWordWrap(true);
  not_checked_->setUniformRowHeights(false);
  tabs_->setDocumentMode(true);
  tabs_->addTab(make_list(), tr("Fi&ndings"));
  tabs_->addTab(not_checked_, tr("Not checked"));
  tabs_->addTab(sheet_view_, tr("&Query sheet"));
  tabs_->addTab(sign_off_view_, tr("Sign-off note"));
  tabs_->addTab(drafts_, tr("Drafts"));
  connect(tabs_, &QTabWidget::currentChanged, this, &FindingsPane::refresh_sheets);
  head_->add_button(
      tr("Cop&y"), [this] { emit wants_copy(); },
      tr("The query sheet, or the note or comparison that is shown, as text"));
  head_->add_button(
      tr("Save sheet…"), [this] { emit wants_save(); },
      tr("The query sheet, or the note or comparison that is shown: text, HTML, .odt, PDF"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(head_);
  column->addWidget(tabs_, 1);
}

QWidget* FindingsPane::make_list() {
  list_ = new QWidget;
  auto* column = new QVBoxLayout(list_);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(make_filters());
  split_ = new QSplitter(Qt::Vertical);
  split_->addWidget(tree_);
  split_->addWidget(detail_);
  split_->setStretchFactor(1, 1);
  split_->setSizes({scaled(this, 270), scaled(this, 440)});
  split_->setChildrenCollapsible(false);
  column->addWidget(split_, 1);
  return list_;
}

QWidget* FindingsPane::make_filters() {
  auto* filters = new QWidget;
  auto* row = new FlowLayout(filters);
  row->setContentsMargins(scaled(this, 12), scaled(this, 4), scaled(this, 12), scaled(this, 4));
  row->setSpacing(scaled(this, 6));
  const auto add = [&](ChoiceField*& field, const QString& name) {
    field = new ChoiceField;
    field->setAccessibleName(name);
    connect(field, &ChoiceField::chosen, this, &FindingsPane::filter);
    row->addWidget(field);
  };
  add(shown_, tr("Which queries are shown"));
  add(role_, tr("Colour"));
  add(size_, tr("Size"));
  shown_->set_choices({{tr("Open"), static_cast<std::uint32_t>(QueriesShown::undecided)},
                       {tr("Kept and answered"), static_cast<std::uint32_t>(QueriesShown::kept)},
                       {tr("All"), static_cast<std::uint32_t>(QueriesShown::all)}});
  shown_->show_choice(static_cast<std::uint32_t>(QueriesShown::undecided));
  return filters;
}

void FindingsPane::set_detail_in_tab(bool in_tab) {
  if (in_tab == detail_in_tab_) return;
  detail_in_tab_ = in_tab;
  const bool had_focus = detail_->isAncestorOf(focusWidget());
  if (in_tab) {
    split_sizes_ = split_->sizes();
    tabs_->insertTab(1, detail_, tr("The finding"));
    if (had_focus) show_detail();
  } else {
    const bool shown = tabs_->currentWidget() == detail_;
    split_->addWidget(detail_);
    detail_->show();
    if (split_sizes_.size() == 2) split_->setSizes(split_sizes_);
    if (shown) tabs_->setCurrentWidget(list_);
  }
}

void FindingsPane::show_list() {
  tabs_->setCurrentWidget(list_);
  tree_->setFocus();
}

void FindingsPane::show_detail() {
  tabs_->setCurrentWidget(detail_in_tab_ ? static_cast<QWidget*>(detail_) : list_);
  detail_->start();
}

void FindingsPane::show_checking() {
  head_->set_note(reviewed_ ? tr("checking anew …") : tr("reading and checking …"));
}

void FindingsPane::show_review(std::shared_ptr<const Reviewed> reviewed) {
  reviewed_ = std::move(reviewed);
  tree_->show_review(reviewed_);
  refresh_filters();
  show_not_checked();
  refresh_sheets();
  if (!reviewed_) return show_checking();
  const auto& decisions = reviewed_->record.decisions;
  const auto open =
      std::count_if(decisions.begin(), decisions.end(), [](const Decision& one) { return one.undecided(); });
  head_->set_note(tr("%1 rules had what they need, %2 open, %3 not checked")
                      .arg(reviewed_->review.checks_run)
                      .arg(open)
                      .arg(reviewed_->review.not_checked.size()));
}

void FindingsPane::refresh_filters() {
  const auto choices = [](const QString& all, const auto& parts) {
    std::vector<Choice> list = {{all, 0}};
    for (const auto& part : parts) list.push_back({from_core(part.label), part.id.value});
    return list;
  };
  const auto offer = [](ChoiceField* field, const std::vector<Choice>& list) {
    const int chosen = std::clamp(field->currentIndex(), 0, static_cast<int>(list.size()) - 1);
    field->set_choices(list);
    field->show_choice(list[static_cast<std::size_t>(chosen)].value);
  };
  offer(role_, choices(tr("All colours"), open_.pattern().roles));
  offer(size_, choices(tr("All sizes"), open_.pattern().sizes));
}

void FindingsPane::filter() {
  const auto chosen = [](const ChoiceField* field) {
    return field->currentIndex() > 0 ? field->currentText() : QString();
  };
  tree_->show_only(static_cast<QueriesShown>(std::max(0, shown_->currentIndex())), chosen(role_),
                   chosen(size_));
}

void FindingsPane::show_not_checked() {
  not_checked_->clear();
  if (!reviewed_) return;
  for (const NotChecked& one : reviewed_->review.not_checked)
    new QTreeWidgetItem(not_checked_,
                        {from_core(one.check), from_core(one.because), from_core(one.would_help)});
  not_checked_->resizeColumnToContents(0);
  not_checked_->setColumnWidth(2, scaled(this, 260));
  tabs_->setTabText(tabs_->indexOf(not_checked_),
                    tr("Not checked, %1").arg(reviewed_->review.not_checked.size()));
  const auto& decisions = reviewed_->record.decisions;
  const auto ticked =
      std::count_if(decisions.begin(), decisions.end(), [](const Decision& one) { return one.on_sheet; });
  tabs_->setTabText(tabs_->indexOf(sheet_view_), tr("&Query sheet, %1 ticked").arg(ticked));
}

void FindingsPane::refresh_sheets() {
  if (!reviewed_) return;
  const QWidget* shown = tabs_->currentWidget();
  QPlainTextEdit* view = shown == sheet_view_      ? sheet_view_
                         : shown == sign_off_view_ ? sign_off_view_
                                                   : nullptr;
  if (view == nullptr) return;
  if (view == sign_off_view_) count_closed();
  const auto whole = sheet();
  const QString text =
      whole ? QString::fromStdString(plain_text(*whole)) : tr("Counting what the drafts have closed …");
  if (view->toPlainText() != text) view->setPlainText(text);
}

// Every earlier draft is checked for it, which takes its time.
void FindingsPane::count_closed() {
  if (counted_ == reviewed_) return;
  counted_ = reviewed_;
  counting_.ask([reviewed = reviewed_] {
    return Closed{reviewed, findings_closed(reviewed->pattern, assess(reviewed->pattern), reviewed->review)};
  });
}

bool FindingsPane::shows_sign_off() const { return tabs_->currentWidget() == sign_off_view_; }

bool FindingsPane::shows_query_sheet() const {
  return !shows_sign_off() && tabs_->currentWidget() != drafts_;
}

std::optional<Sheet> FindingsPane::sheet() const {
  const std::string date = QDate::currentDate().toString(Qt::ISODate).toStdString();
  if (tabs_->currentWidget() == drafts_) return drafts_->sheet(date);
  if (!reviewed_) return std::nullopt;
  const Reviewed& latest = *reviewed_;
  if (shows_sign_off()) {
    if (closed_.reviewed != reviewed_) return std::nullopt;
    return sign_off_note(latest.pattern, latest.review, latest.record, closed_.count, date);
  }
  return query_sheet(latest.pattern, latest.review, latest.record, date);
}

}  // namespace skeinproof
