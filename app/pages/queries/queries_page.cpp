// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/queries_page.h"

#include <QApplication>
#include <QClipboard>
#include <QDateTime>
#include <QFileDialog>
#include <QMessageBox>
#include <QPushButton>
#include <QShortcut>
#include <QSplitter>
#include <QTabWidget>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/pages/queries/draft_intake.h"
#include "app/pages/queries/finding_detail.h"
#include "app/pages/queries/finding_tree.h"
#include "app/pages/queries/findings_pane.h"
#include "app/pages/queries/manuscript_pane.h"
#include "app/pages/queries/manuscript_view.h"
#include "app/pages/queries/queries_widgets.h"
#include "app/pages/queries/statement_list.h"
#include "app/print/save_sheet.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/quantity_text.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

// Widths at 100 % below which the chosen finding, and below which text and findings, become tabs.
constexpr int least_for_detail = 1240, least_for_both = 900;
constexpr int least_text = 420, least_findings = 440;

QString platform_path(QWidget* parent, bool saving, const QString& suggestion, const QString& filter) {
  return saving ? QFileDialog::getSaveFileName(parent, {}, suggestion, filter)
                : QFileDialog::getOpenFileName(parent, {}, suggestion, filter);
}

bool platform_take_over(QWidget* parent, const QString& changes) {
  QMessageBox box(QMessageBox::NoIcon, QueriesPage::tr("Take over what was read"),
                  QueriesPage::tr("These facts will be in force; one undo takes all of them back."),
                  QMessageBox::Ok | QMessageBox::Cancel, parent);
  box.setDetailedText(changes);
  box.button(QMessageBox::Ok)->setText(QueriesPage::tr("&Take over"));
  box.setInformativeText(changes.section(QLatin1Char('\n'), 0, 11));
  return box.exec() == QMessageBox::Ok;
}

QString lines_of(const FactsAsRead& facts) {
  QStringList lines;
  for (const FactChange& change : facts.changes)
    lines << from_core(change.what) + QStringLiteral(": ") +
                 (change.before.empty() ? QString() : from_core(change.before) + QStringLiteral(" → ")) +
                 from_core(change.after);
  for (const std::string& left_out : facts.left_out)
    lines << QueriesPage::tr("left out: %1").arg(from_core(left_out));
  return lines.join(QLatin1Char('\n'));
}

}  // namespace

QueriesPage::QueriesPage(OpenPattern& open, QWidget* parent)
    : Page(open, parent),
      desk_(new ReviewDesk(open, this)),
      intake_(new DraftIntake(open, this)),
      manuscript_(new ManuscriptPane(open, *intake_)),
      findings_(new FindingsPane(open)),
      layout_(new QVBoxLayout(this)),
      beside_(new QSplitter(Qt::Horizontal)),
      in_tabs_(new QTabWidget),
      ask_path_(platform_path),
      ask_take_over_(platform_take_over) {
  beside_->addWidget(manuscript_);
  beside_->addWidget(findings_);
  beside_->setStretchFactor(1, 1);
  beside_->setSizes({scaled(this, 540), scaled(this, 700)});
  beside_->setChildrenCollapsible(false);
  in_tabs_->hide();
  layout_->setContentsMargins(0, 0, 0, 0);
  layout_->addWidget(beside_);
  layout_->addWidget(in_tabs_);
  make_keys();
  connect(desk_, &ReviewDesk::reviewed, this, &QueriesPage::refresh);
  connect(desk_, &ReviewDesk::checking, findings_, &FindingsPane::show_checking);
  connect(desk_, &ReviewDesk::checking, manuscript_, &ManuscriptPane::show_checking);
  connect(tree(), &FindingTree::chosen_changed, this, &QueriesPage::show_chosen);
  connect(tree(), &FindingTree::ticked, this, &QueriesPage::set_ticked);
  connect(tree(), &QTreeWidget::itemActivated, this, [this] { findings_->show_detail(); });
  connect(manuscript_, &ManuscriptPane::query_clicked, this, [this](std::size_t cause) {
    tree()->choose(cause);
    if (in_tabs_->isVisible()) show_findings();
  });
  connect(manuscript_, &ManuscriptPane::wants_paste, this, &QueriesPage::paste_draft);
  connect(manuscript_, &ManuscriptPane::wants_open, this, &QueriesPage::open_draft);
  connect(manuscript_, &ManuscriptPane::wants_take_over, this, &QueriesPage::take_over);
  connect(manuscript_->statements(), &StatementList::says, this, &Page::says);
  connect(findings_, &FindingsPane::wants_copy, this, &QueriesPage::copy_sheet);
  connect(findings_, &FindingsPane::wants_save, this, &QueriesPage::save_sheet_as);
  connect(detail(), &FindingDetail::says, this, &Page::says);
  connect(intake_, &DraftIntake::says, this, &Page::says);
  connect(intake_, &DraftIntake::draft_added, this, &QueriesPage::go_on_with_findings);
  connect(
      intake_, &DraftIntake::facts_read, this,
      [this](const std::shared_ptr<const FactsAsRead>& facts, quint64 state) { take_facts(*facts, state); });
  fit();
  refresh();
}

FindingTree* QueriesPage::tree() const { return findings_->tree(); }
FindingDetail* QueriesPage::detail() const { return findings_->detail(); }
ManuscriptView* QueriesPage::manuscript() const { return manuscript_->manuscript(); }
QTreeWidget* QueriesPage::statements() const { return manuscript_->statements()->table(); }

void QueriesPage::make_keys() {
  const auto key = [this](const char* keys, auto&& action) {
    // In the whole window, while the page is seen: also from the side list and the tools.
    connect(new QShortcut(QKeySequence(QString::fromLatin1(keys)), this), &QShortcut::activated, this,
            action);
  };
  key("F8", [this] { tree()->step(1); });
  key("Shift+F8", [this] { tree()->step(-1); });
  key("Ctrl+T", [this] {
    if (const auto cause = tree()->chosen())
      set_ticked(*cause, !desk_->latest()->record.decisions[*cause].on_sheet);
  });
  key("Ctrl+V", [this] { paste_draft(); });
  key("Ctrl+Return", [this] { detail()->take_change(); });
  key("Ctrl+K", [this] {
    show_findings();
    findings_->show_detail();
    detail()->start_keeping();
  });
}

void QueriesPage::set_questions(AskPath ask_path, AskTakeOver ask_take_over) {
  ask_path_ = std::move(ask_path);
  ask_take_over_ = std::move(ask_take_over);
}

QString QueriesPage::attention() const { return attention_; }

// Work starts with the findings, or with a draft where there is none yet.
void QueriesPage::enter() {
  if (in_tabs_->isVisible())
    in_tabs_->currentWidget()->setFocus();
  else if (open_.pattern().draft() == nullptr)
    manuscript_->start();
  else
    findings_->show_list();
}

// The panes may be made narrower than their buttons ask for, so that the page is never wider than the window.
void QueriesPage::fit() {
  manuscript_->setMinimumWidth(scaled(this, least_text));
  findings_->setMinimumWidth(scaled(this, least_findings));
}

void QueriesPage::fold() {
  findings_->set_detail_in_tab(width() < scaled(this, least_for_detail));
  const bool tabs = width() < scaled(this, least_for_both);
  if (tabs == in_tabs_->isVisibleTo(this)) return;
  QWidget* focus = focusWidget();
  if (tabs) {
    beside_sizes_ = beside_->sizes();
    in_tabs_->addTab(manuscript_, tr("Manuscript"));
    in_tabs_->addTab(findings_, tr("Findings"));
  } else {
    for (QWidget* pane : std::initializer_list<QWidget*>{manuscript_, findings_}) {
      beside_->addWidget(pane);
      pane->show();
    }
    if (beside_sizes_.size() == 2) beside_->setSizes(beside_sizes_);
  }
  in_tabs_->setVisible(tabs);
  beside_->setVisible(!tabs);
  if (focus == nullptr) return;
  if (tabs)
    in_tabs_->setCurrentWidget(findings_->isAncestorOf(focus) ? static_cast<QWidget*>(findings_)
                                                              : manuscript_);
  focus->setFocus();
}

void QueriesPage::show_findings() {
  if (in_tabs_->isVisible()) in_tabs_->setCurrentWidget(findings_);
}

// From a button that has done its work; who types or reads is left where they are.
void QueriesPage::go_on_with_findings() {
  if (isVisible() && qobject_cast<QPushButton*>(QApplication::focusWidget()) != nullptr &&
      isAncestorOf(QApplication::focusWidget())) {
    show_findings();
    findings_->show_list();
  }
}

void QueriesPage::resizeEvent(QResizeEvent* event) {
  Page::resizeEvent(event);
  fold();
}

void QueriesPage::changeEvent(QEvent* event) {
  Page::changeEvent(event);
  if (event->type() != QEvent::FontChange || layout_ == nullptr) return;
  fit();
  fold();
}

void QueriesPage::refresh() {
  const auto& latest = desk_->latest();
  manuscript_->show_review(latest);
  findings_->show_review(latest);
  std::size_t open = 0;
  if (latest)
    for (const Decision& decision : latest->record.decisions) open += decision.undecided() ? 1 : 0;
  const QString attention =
      open == 0 || open_.pattern().draft() == nullptr ? QString() : tr("%1 open").arg(open);
  if (attention != attention_) {
    attention_ = attention;
    emit attention_changed();
  }
  show_chosen();
}

void QueriesPage::show_chosen() {
  detail()->show_query(desk_->latest(), tree()->chosen());
  manuscript_->choose(tree()->chosen());
}

void QueriesPage::set_ticked(std::size_t cause, bool on) {
  const auto latest = desk_->latest();
  if (!latest) return;
  const QString number = from_core(latest->record.decisions[cause].number);
  open_.apply(on ? tr("tick %1").arg(number) : tr("untick %1").arg(number), [&](Pattern& pattern) {
    set_on_sheet(pattern, latest->review, cause, on ? OnSheet::yes : OnSheet::no);
  });
}

void QueriesPage::paste_draft() {
  const QString text = QApplication::clipboard()->text();
  if (text.trimmed().isEmpty()) {
    emit says(tr("There is no text on the clipboard."));
    return;
  }
  intake_->add(text.toUtf8(), {});
}

void QueriesPage::open_draft() {
  const QString path =
      ask_path_(this, false, {}, tr("Texts (*.txt *.md *.html *.htm *.odt *.docx);;All files (*)"));
  if (!path.isEmpty()) intake_->add_file(path);
}

bool QueriesPage::take_file(const QString& path) {
  intake_->add_file(path);
  return true;
}

void QueriesPage::take_over() {
  if (open_.pattern().draft() == nullptr)
    emit says(tr("There is no draft to take over: paste one, or open a file."));
  else
    intake_->read_facts();
}

void QueriesPage::take_facts(const FactsAsRead& facts, quint64 state) {
  if (state != open_.state()) {
    emit says(tr("The pattern was changed while the draft was read: take it over once more."));
    return;
  }
  const QString lines = lines_of(facts);
  if (facts.changes.empty()) {
    emit says(tr("Everything that was read is in force already."));
    return;
  }
  if (!ask_take_over_(this, lines)) return;
  // The question may have stood open while a job of another thread ended.
  if (state != open_.state())
    return emit says(tr("The pattern was changed meanwhile: take it over once more."));
  open_.apply(tr("take over what was read"), [&](Pattern& pattern) { pattern = facts.pattern; });
  go_on_with_findings();
}

std::optional<Sheet> QueriesPage::sheet() const { return findings_->sheet(); }

void QueriesPage::sheet_went_out() {
  const auto& latest = desk_->latest();
  if (!latest || !findings_->shows_query_sheet()) return;
  const auto asked = asked_now(latest->review, latest->record);
  if (asked.empty()) return;
  open_.keep_in_every_step([&](Pattern& pattern) { keep_numbers(pattern, asked); });
}

void QueriesPage::save_sheet_as() {
  const auto whole = sheet();
  if (!whole) return;
  const QString stem = findings_->shows_sign_off()      ? tr("sign-off")
                       : findings_->shows_query_sheet() ? tr("queries")
                                                        : tr("drafts");
  const QString path = ask_path_(this, true, stem + QStringLiteral(".odt"),
                                 tr("Text document (*.odt);;PDF (*.pdf);;HTML (*.html);;Text (*.txt)"));
  if (path.isEmpty()) return;
  const auto saved = save_sheet(*whole, path.toStdString(), QDateTime::currentSecsSinceEpoch());
  if (saved) sheet_went_out();
  emit says(saved ? tr("Saved %1").arg(path) : sentence_of(saved.error()));
}

void QueriesPage::copy_sheet() {
  const auto whole = sheet();
  if (!whole) return;
  QApplication::clipboard()->setText(QString::fromStdString(plain_text(*whole)));
  sheet_went_out();
  emit says(tr("Copied: %1").arg(from_core(whole->title)));
}

bool QueriesPage::find_next(const QString& words) {
  std::vector<FindPlace> places;
  if (const auto& latest = desk_->latest())
    for (std::size_t cause = 0; cause < latest->review.causes.size(); ++cause) {
      QString text = from_core(latest->record.decisions[cause].number) + QLatin1Char('\n');
      for (std::size_t finding : latest->review.causes[cause].findings)
        text += from_core(latest->review.findings[finding].check) + QLatin1Char('\n') +
                from_core(latest->review.findings[finding].title) + QLatin1Char('\n');
      places.push_back({text + place_words(*latest, cause), [this, cause] {
                          show_findings();
                          tree()->choose(cause);
                        }});
    }
  return finder_.find_next(places, words);
}

}  // namespace skeinproof
