// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/candidates_page.h"

#include <QCheckBox>
#include <QDateTime>
#include <QFileDialog>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QShortcut>
#include <QTabBar>
#include <QTabWidget>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "app/document/open_pattern.h"
#include "app/pages/candidates/band_form.h"
#include "app/pages/candidates/buy_pane.h"
#include "app/pages/candidates/candidate_charts.h"
#include "app/pages/candidates/candidate_pane.h"
#include "app/pages/candidates/candidate_table.h"
#include "app/pages/candidates/shelf_dialog.h"
#include "app/pages/candidates/wishes_pane.h"
#include "app/print/save_sheet.h"
#include "app/widgets/count_words.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "app/widgets/part_table.h"
#include "app/widgets/quantity_text.h"
#include "core/sheets/comparison_sheet.h"

namespace skeinproof {
namespace {

QString qt(const std::string& text) { return QString::fromStdString(text); }

QString platform_path(QWidget* parent, const QString& suggestion, const QString& filter) {
  return QFileDialog::getSaveFileName(parent, {}, suggestion, filter);
}

}  // namespace

CandidatesPage::CandidatesPage(OpenPattern& open, QWidget* parent)
    : Page(open, parent),
      ask_path_(platform_path),
      job_([this](CandidatesOutcome outcome) {
        facts_ = std::move(outcome.facts);
        comparison_ = std::move(outcome.sheet);
        show_table();
        wishes_->show_facts(facts_);
        buy_->show_facts(facts_);
        emit worked_out();
      }),
      sizes_job_([this](std::vector<std::vector<CandidateFacts>> facts) {
        charts_->show_facts(std::move(facts));
        emit worked_out();
      }) {
  candidates_ = new CandidatePane(open_);
  wishes_ = new WishesPane(open_);
  buy_ = new BuyPane(open_);
  charts_ = new CandidateCharts(open_);
  tabs_ = new QTabWidget;
  tabs_->setDocumentMode(true);
  tabs_->addTab(make_side_by_side(), tr("Side b&y side"));
  tabs_->addTab(candidates_, tr("The candidates and their ban&ds"));
  tabs_->addTab(wishes_, tr("&What you ask"));
  tabs_->addTab(buy_, tr("What to b&uy"));
  tabs_->addTab(charts_, tr("Cha&rts"));
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(tabs_);
  connect(candidates_, &CandidatePane::says, this, &Page::says);
  connect(wishes_, &WishesPane::says, this, &Page::says);
  connect(buy_, &BuyPane::says, this, &Page::says);
  connect(buy_, &BuyPane::worked_out, this, &CandidatesPage::worked_out);
  connect(tabs_, &QTabWidget::currentChanged, this, [this] {
    work_out_sizes();
    if (isVisible() && !tabs_->tabBar()->hasFocus()) tabs_->currentWidget()->setFocus();
  });
  connect(&open_, &OpenPattern::changed, this, &CandidatesPage::refresh);
  connect(&open_, &OpenPattern::reader_changed, this, [this] {
    show_table();
    wishes_->show_facts(facts_);
    buy_->show_facts(facts_);
    sizes_worked_out_for_ = 0;
    work_out_sizes();
  });
  refresh();
}

CandidatesPage::~CandidatesPage() { take_down(); }

QWidget* CandidatesPage::make_side_by_side() {
  columns_ = new QPushButton;
  auto* column_words = new QLabel(tr("Co&lumns"));
  column_words->setBuddy(columns_);
  auto* add = new QPushButton(tr("Add a &candidate…"));
  add->setToolTip(tr("Type what a ball band says (Ins)"));
  auto* search = new QPushButton(tr("Se&arch the shelf…"));
  search->setToolTip(tr("Take a yarn from your own list"));
  differs_ = new QCheckBox(tr("&only rows that differ"));
  auto* comparison = new QPushButton(tr("Co&mparison sheet…"));
  comparison->setToolTip(tr("Save the comparison as PDF, text, HTML or a workbook"));
  auto* bar = new QWidget;
  auto* flow = new FlowLayout(bar);
  flow->setContentsMargins(scaled(this, 10), scaled(this, 7), scaled(this, 10), scaled(this, 7));
  flow->setSpacing(scaled(this, 8));
  for (QWidget* widget : std::initializer_list<QWidget*>{column_words, columns_, add, search})
    flow->addWidget(widget);
  flow->add_stretch();
  flow->addWidget(differs_);
  flow->addWidget(comparison);
  for (QPushButton* button : {columns_, add, search, comparison}) button->setAutoDefault(false);
  connect(columns_, &QPushButton::clicked, this, &CandidatesPage::show_column_menu);
  connect(add, &QPushButton::clicked, this, &CandidatesPage::add_candidate);
  connect(search, &QPushButton::clicked, this, &CandidatesPage::search_shelf);
  connect(differs_, &QCheckBox::toggled, this, &CandidatesPage::show_table);
  connect(comparison, &QPushButton::clicked, this, &CandidatesPage::save_comparison);

  band_ = new BandForm(open_);
  table_ = new CandidateTable;
  table_->set_empty_words(tr(
      "No other yarn yet: Add a candidate takes what its ball band says, Search the shelf takes one of your "
      "own."));
  auto* whole = new QWidget;
  auto* layout = new QVBoxLayout(whole);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(bar);
  layout->addWidget(band_);
  layout->addWidget(table_, 1);
  whole->setFocusProxy(table_);
  auto* insert = new QShortcut(QKeySequence(Qt::Key_Insert), table_);
  insert->setContext(Qt::WidgetShortcut);
  connect(insert, &QShortcut::activated, this, &CandidatesPage::add_candidate);
  connect(band_, &BandForm::says, this, &Page::says);
  connect(band_, &BandForm::left, this, [this](bool had_focus) {
    if (had_focus) table_->setFocus();
  });
  connect(band_, &BandForm::added, this, [this](CandidateId id) {
    const Candidate* added = open_.pattern().candidate(id);
    show_when_ready_ = id;
    table_->setFocus();
    if (added != nullptr)
      emit says(tr("Added %1; Undo takes it away again.").arg(candidate_name(open_.pattern(), *added)));
  });
  connect(table_, &CandidateTable::wants_all_consequences, this, [this] {
    all_consequences_ = !all_consequences_;
    show_table();
  });
  connect(table_, &CandidateTable::wants_candidate, this,
          [this](std::uint32_t id) { show_candidate(CandidateId{id}); });
  return whole;
}

bool CandidatesPage::is_busy() const { return job_.is_busy() || sizes_job_.is_busy() || buy_->is_busy(); }

QString CandidatesPage::attention() const { return attention_; }

void CandidatesPage::enter() { tabs_->currentWidget()->setFocus(); }

bool CandidatesPage::go_to(std::uint32_t part) {
  if (open_.pattern().candidate(CandidateId{part}) == nullptr) return false;
  show_candidate(CandidateId{part});
  return true;
}

void CandidatesPage::show_candidate(CandidateId id) {
  if (!id) {
    // The pattern's own yarn is at home on its own page.
    if (!open_.pattern().roles.empty())
      emit wants_place(QStringLiteral("Yarns"), open_.pattern().roles.front().yarn.value);
    return;
  }
  tabs_->setCurrentWidget(candidates_);
  candidates_->show_candidate(id);
  candidates_->list()->setFocus();
}

void CandidatesPage::add_candidate() {
  tabs_->setCurrentIndex(0);
  band_->begin();
}

void CandidatesPage::search_shelf() {
  if (shelf_ == nullptr) {
    const RoleId role = open_.pattern().roles.empty() ? RoleId{} : open_.pattern().roles.front().id;
    shelf_ = new ShelfDialog(open_, role, this);
    connect(shelf_, &ShelfDialog::says, this, &Page::says);
    connect(shelf_, &ShelfDialog::candidate_added, this,
            [this](std::uint32_t id) { show_when_ready_ = CandidateId{id}; });
  }
  shelf_->show();
  shelf_->raise();
  shelf_->activateWindow();
}

void CandidatesPage::show_column_menu() {
  auto* menu = new QMenu(this);
  menu->setAttribute(Qt::WA_DeleteOnClose);
  for (const Candidate& candidate : open_.pattern().candidates) {
    const QString name = candidate_name(open_.pattern(), candidate);
    QAction* action = menu->addAction(QString(name).replace(QLatin1Char('&'), QLatin1String("&&")));
    action->setCheckable(true);
    action->setChecked(candidate.shown);
    connect(action, &QAction::triggered, this, [this, id = candidate.id, name](bool on) {
      open_.apply(on ? tr("show candidate %1").arg(name) : tr("hide candidate %1").arg(name),
                  [id, on](Pattern& pattern) {
                    for (Candidate& each : pattern.candidates)
                      if (each.id == id) each.shown = on;
                  });
    });
  }
  if (menu->isEmpty()) menu->addAction(tr("No candidate yet"))->setEnabled(false);
  menu->popup(columns_->mapToGlobal(QPoint(0, columns_->height())));
  menu->setActiveAction(menu->actions().front());
}

void CandidatesPage::showEvent(QShowEvent* event) {
  Page::showEvent(event);
  work_out();
}

QString CandidatesPage::size_label() const {
  const Pattern& pattern = open_.pattern();
  return pattern.sizes.empty() ? QString() : qt(pattern.sizes[open_.chosen_size_index()].label);
}

void CandidatesPage::refresh() {
  const Pattern& pattern = open_.pattern();
  columns_->setText(shown_words(pattern));
  const QString attention =
      pattern.candidates.empty() ? QString() : QString::number(pattern.candidates.size());
  if (attention != attention_) {
    attention_ = attention;
    emit attention_changed();
  }
  work_out();
}

// Facts of many candidates with their plans take longer than a stroke of a key may.
void CandidatesPage::work_out() {
  const std::pair<quint64, std::size_t> wanted{open_.state(), open_.chosen_size_index()};
  if (!isVisible()) return;
  if (worked_out_for_ != wanted) {
    worked_out_for_ = wanted;
    job_.ask([pattern = open_.pattern(), assessment = open_.assessment(), size = wanted.second] {
      return CandidatesOutcome{compare_candidates(pattern, assessment, size),
                               comparison_sheet(pattern, assessment, pattern.house())};
    });
  }
  work_out_sizes();
}

void CandidatesPage::work_out_sizes() {
  if (!isVisible() || tabs_->currentWidget() != charts_) return;
  if (sizes_worked_out_for_ == open_.state()) return charts_->follow_choice();
  sizes_worked_out_for_ = open_.state();
  sizes_job_.ask([pattern = open_.pattern(), assessment = open_.assessment()] {
    std::vector<std::vector<CandidateFacts>> all;
    for (std::size_t size = 0; size < pattern.sizes.size(); ++size)
      all.push_back(compare_candidates(pattern, assessment, size));
    return all;
  });
}

void CandidatesPage::show_table() {
  const Pattern& pattern = open_.pattern();
  // Facts of an older document may name parts that went.
  const bool fits = std::all_of(facts_.begin(), facts_.end(), [&](const CandidateFacts& each) {
    return each.own || pattern.candidate(each.id) != nullptr;
  });
  if (!fits) return;
  table_->show_view(
      candidate_view({pattern, facts_, open_.reader(), all_consequences_, differs_->isChecked()}),
      tr("Facts, with size %1").arg(size_label()),
      tr("in %1").arg(count_words(pattern.roles.size(), tr("role"), tr("roles"))));
  if (const CandidateId added = std::exchange(show_when_ready_, {})) table_->show_from_top(added);
}

std::optional<Sheet> CandidatesPage::sheet() const {
  const Pattern& pattern = open_.pattern();
  if (pattern.roles.empty()) return std::nullopt;
  if (tabs_->currentWidget() == buy_ && buy_->sheet()) return buy_->sheet();
  // The first asking comes before the first job ends.
  return comparison_ ? *comparison_ : comparison_sheet(pattern, open_.assessment(), pattern.house());
}

std::vector<PaperBlock> CandidatesPage::paper_blocks(double) const {
  return tabs_->currentWidget() == charts_ ? charts_->paper_blocks() : std::vector<PaperBlock>();
}

void CandidatesPage::save_comparison() {
  const auto& whole = comparison_;
  if (!whole) return emit says(tr("Nothing to compare yet: name the colours of the pattern on Yarns."));
  const QString path =
      ask_path_(this, tr("comparison-size-%1.pdf").arg(size_label()),
                tr("PDF (*.pdf);;Text (*.txt);;HTML (*.html);;Workbook (*.xlsx);;CSV (*.csv)"));
  if (path.isEmpty()) return;
  const auto saved = save_sheet(*whole, path.toStdString(), QDateTime::currentSecsSinceEpoch());
  emit says(saved ? tr("Saved %1").arg(path) : sentence_of(saved.error()));
}

bool CandidatesPage::find_next(const QString& words) {
  std::vector<FindPlace> places;
  for (int row = 0; row < table_->candidates()->rowCount(); ++row)
    for (int column = 0; column < table_->candidates()->columnCount(); ++column) {
      const QModelIndex cell = table_->candidates()->index(row, column);
      places.push_back({cell.data(Qt::AccessibleTextRole).toString(), [this, cell] {
                          tabs_->setCurrentIndex(0);
                          table_->setCurrentIndex(cell);
                          table_->setFocus();
                        }});
    }
  return finder_.find_next(places, words);
}

}  // namespace skeinproof
