// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/changes_page.h"

#include <QApplication>
#include <QClipboard>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QSplitter>
#include <QTabBar>
#include <QTabWidget>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "app/document/open_pattern.h"
#include "app/pages/changes/adopt_strip.h"
#include "app/pages/changes/change_form.h"
#include "app/pages/changes/change_list.h"
#include "app/pages/changes/change_words.h"
#include "app/pages/changes/effect_table.h"
#include "app/pages/changes/run_out_pane.h"
#include "app/pages/changes/save_skein_pane.h"
#include "app/pages/pieces/piece_words.h"
#include "app/pages/printed_tables.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"

namespace skeinproof {
namespace {

constexpr double small_below = 800;  // px of page at 100 %
constexpr double effect_height = 350;
constexpr double tabs_height = 340;

QScrollArea* scrolled(QWidget* inside) {
  auto* area = new QScrollArea;
  area->setFocusPolicy(Qt::NoFocus);  // what is inside takes it
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  area->setWidget(inside);
  return area;
}

}  // namespace

ChangesPage::ChangesPage(OpenPattern& open, QWidget* parent)
    : Page(open, parent), job_([this](BenchOutcome outcome) { take(std::move(outcome)); }) {
  auto* left = new QSplitter(Qt::Vertical);
  left->addWidget(make_list_pane());
  left->addWidget(make_form_pane());
  left->setStretchFactor(1, 1);
  left->setSizes({scaled(this, 230), scaled(this, 460)});
  right_ = new QSplitter(Qt::Vertical);
  effect_pane_ = make_effect_pane();
  right_->addWidget(effect_pane_);
  right_->addWidget(make_tabs());
  right_->setStretchFactor(1, 1);
  right_->setSizes({scaled(this, effect_height), scaled(this, tabs_height)});
  auto* whole = new QSplitter(Qt::Horizontal);
  whole->addWidget(left);
  whole->addWidget(right_);
  whole->setStretchFactor(1, 1);
  whole->setSizes({scaled(this, 370), scaled(this, 800)});
  for (QSplitter* splitter : {left, right_, whole}) splitter->setChildrenCollapsible(false);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(whole);
  connect(list_, &PartTable::says, this, &Page::says);
  connect(list_, &PartTable::current_part_changed, this, [this](std::uint32_t key) {
    form_->show_change(ChangeId{key});
    show_problem();
  });
  connect(&open_, &OpenPattern::changed, this, &ChangesPage::refresh);
  connect(&open_, &OpenPattern::reader_changed, this, &ChangesPage::show_outcome);
  list_->refresh(true);
  refresh();
}

QWidget* ChangesPage::make_list_pane() {
  list_ = make_change_list(open_, [this](ChangeId id) { return outcome_of(id); });
  list_head_ = new PaneHeader(tr("Changes"));
  add_button_ = list_head_->add_button(
      tr("&Add"), [this] { show_kind_menu(); }, tr("Put a change on the bench (Ins)"));
  list_head_->add_button(
      tr("Dupli&cate"), [this] { list_->duplicate(); }, tr("Put the chosen change there once more"));
  list_head_->add_button(
      tr("&Delete"), [this] { list_->erase(); }, tr("Take the chosen change off the bench (Del)"));
  auto* insert = new QShortcut(QKeySequence(Qt::Key_Insert), this);
  insert->setContext(Qt::WidgetWithChildrenShortcut);
  connect(insert, &QShortcut::activated, this, &ChangesPage::show_kind_menu);
  return make_pane(list_head_, list_);
}

QWidget* ChangesPage::make_form_pane() {
  form_ = new ChangeForm(open_);
  form_head_ = new PaneHeader(tr("The chosen change"));
  return make_pane(form_head_, scrolled(form_));
}

QWidget* ChangesPage::make_effect_pane() {
  effect_ = new EffectTable;
  connect(effect_, &EffectTable::width_changed, this, &ChangesPage::fit_table, Qt::QueuedConnection);
  strip_ = new AdoptStrip(open_);
  notes_ = new QLabel;
  notes_->setWordWrap(true);
  notes_->setTextFormat(Qt::PlainText);
  notes_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  notes_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  notes_->setMargin(scaled(this, 10));
  notes_->setAccessibleName(tr("What is done"));
  effect_head_ = new PaneHeader(tr("What they do"));
  effect_head_->add_button(
      tr("Copy"),
      [this] { QApplication::clipboard()->setText(effect_->as_text() + QLatin1Char('\n') + notes()); },
      tr("Copy the table and the notes as text"));
  take_here_ = new QPushButton(tr("&Take into this size"));
  take_here_->setToolTip(tr("Make the changes part of the pattern in this size"));
  take_everywhere_ = new QPushButton(tr("Take into a&ll sizes"));
  take_everywhere_->setToolTip(tr("Make the changes part of the pattern in every size"));
  connect(take_here_, &QPushButton::clicked, this, [this] { ask_to_adopt(AdoptIn::this_size); });
  connect(take_everywhere_, &QPushButton::clicked, this, [this] { ask_to_adopt(AdoptIn::all_sizes); });
  auto* takes = new QWidget;
  auto* flow = new FlowLayout(takes);
  flow->setContentsMargins(scaled(this, 10), scaled(this, 8), scaled(this, 10), 0);
  flow->setSpacing(scaled(this, 8));
  for (QPushButton* button : {take_here_, take_everywhere_}) {
    button->setAutoDefault(false);
    flow->addWidget(button);
  }
  auto* below = new QWidget;  // what is done, and what to do with it
  auto* below_layout = new QVBoxLayout(below);
  below_layout->setContentsMargins(0, 0, 0, 0);
  below_layout->setSpacing(0);
  below_layout->addWidget(takes);
  below_layout->addWidget(notes_);
  below_layout->addStretch(1);
  auto* body = new QWidget;
  auto* layout = new QVBoxLayout(body);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(strip_);
  layout->addWidget(effect_);
  layout->addWidget(below, 1);
  connect(strip_, &AdoptStrip::says, this, &Page::says);
  auto* area = scrolled(body);
  connect(strip_, &AdoptStrip::shown, this, [this, below, area] {
    below->hide();  // it says the same
    area->ensureWidgetVisible(strip_);
  });
  connect(strip_, &AdoptStrip::left, this, [this, below](bool had_focus) {
    below->show();
    if (had_focus) list_->setFocus();
  });
  return make_pane(effect_head_, area);
}

QWidget* ChangesPage::make_tabs() {
  save_ = new SaveSkeinPane;
  run_out_ = new RunOutPane;
  tabs_ = new QTabWidget;
  tabs_->setDocumentMode(true);
  tabs_->addTab(scrolled(save_), tr("Save a skei&n"));
  tabs_->addTab(scrolled(run_out_), tr("Run-&out point"));
  connect(tabs_, &QTabWidget::currentChanged, this, [this] {
    if (!isVisible() || tabs_->tabBar()->hasFocus()) return;
    for (QWidget* inside : std::initializer_list<QWidget*>{effect_, save_, run_out_})
      if (tabs_->currentWidget()->isAncestorOf(inside)) inside->setFocus();
  });
  connect(save_, &SaveSkeinPane::wants_changes, this, &ChangesPage::put_on_bench);
  connect(run_out_, &RunOutPane::wants_changes, this, &ChangesPage::put_on_bench);
  connect(save_, &SaveSkeinPane::worked_out, this, &ChangesPage::worked_out);
  connect(run_out_, &RunOutPane::worked_out, this, &ChangesPage::worked_out);
  return tabs_;
}

QString ChangesPage::attention() const { return attention_; }
QString ChangesPage::notes() const { return notes_->text(); }

void ChangesPage::enter() {
  if (!list_->currentIndex().isValid()) list_->setCurrentIndex(list_->model()->index(0, 1));
  list_->setFocus();
}

bool ChangesPage::go_to(std::uint32_t part) {
  if (part == 0 || !list_->set_current_key(part)) return false;
  list_->setFocus();
  return true;
}

void ChangesPage::show_kind_menu() {
  QMenu* menu = make_kind_menu(this, [this](ChangeKind kind) { add(kind); });
  menu->setAttribute(Qt::WA_DeleteOnClose);
  menu->popup(add_button_->mapToGlobal(QPoint(0, add_button_->height())));
  if (!menu->actions().isEmpty()) menu->setActiveAction(menu->actions().front());
}

void ChangesPage::add(ChangeKind kind) {
  ChangeId added;
  open_.apply(tr("add change %1").arg(kind_words(kind).toLower()), [&](Pattern& pattern) {
    added = add_change(pattern, &changes_on_bench, kind, ChangeId{list_->current_key()});
  });
  list_->set_current_key(added.value);
  form_->enter();
}

void ChangesPage::put_on_bench(const std::vector<Change>& changes, const QString& words) {
  const Pattern& asked = outcome_ ? outcome_->changed : open_.pattern();
  std::vector<BenchChange> rows = bench_rows(asked, changes);
  if (rows.empty()) return;
  const auto refused = open_.apply(tr("put on the bench %1").arg(words),
                                   [&](Pattern& pattern) { add_changes(pattern, std::move(rows)); });
  if (!refused && !open_.pattern().changes.empty())
    list_->set_current_key(open_.pattern().changes.back().id.value);
  emit says(refused ? sentence_of(*refused) : tr("On the bench: %1").arg(words));
}

void ChangesPage::ask_to_adopt(AdoptIn in) {
  show_tab(effect_);
  // What was just typed counts; it is asked as soon as it is worked out.
  if (!outcome_ || job_.is_busy()) {
    adopt_when_ready_ = in;
    return;
  }
  if (outcome_->made.empty()) {
    emit says(tr("No change that can be made is on the bench."));
    return;
  }
  strip_->ask(in, outcome_->made, outcome_->taken);
}

bool ChangesPage::is_busy() const {
  return job_.is_busy() || save_->is_busy() || run_out_->is_busy() || strip_->is_busy();
}

const ChangeOutcome* ChangesPage::outcome_of(ChangeId id) const {
  if (outcome_)
    for (const ChangeOutcome& one : outcome_->changes)
      if (one.id == id) return &one;
  return nullptr;
}

void ChangesPage::showEvent(QShowEvent* event) {
  Page::showEvent(event);
  arrange();
  fit_table();
  work_out();
}

void ChangesPage::changeEvent(QEvent* event) {
  Page::changeEvent(event);
  if (event->type() != QEvent::FontChange || effect_ == nullptr) return;
  arrange();
  fit_table();
}

void ChangesPage::resizeEvent(QResizeEvent* event) {
  Page::resizeEvent(event);
  arrange();
}

// Where the window is small for its text, what the changes do becomes the first tab.
void ChangesPage::arrange() {
  const bool small = width() * 100.0 / scaled(this, 100) < small_below;
  if (small == is_small_) return;
  is_small_ = small;
  const QSignalBlocker quiet(tabs_);
  if (small) {
    tabs_->insertTab(0, effect_pane_, tr("What the&y do"));
    tabs_->setCurrentIndex(0);
  } else {
    right_->insertWidget(0, effect_pane_);
    right_->setSizes({scaled(this, effect_height), scaled(this, tabs_height)});
  }
  effect_pane_->show();
}

void ChangesPage::show_tab(QWidget* inside) {
  for (int tab = 0; tab < tabs_->count(); ++tab)
    if (tabs_->widget(tab)->isAncestorOf(inside)) tabs_->setCurrentIndex(tab);
}

void ChangesPage::refresh() {
  const Pattern& pattern = open_.pattern();
  const auto made = std::count_if(pattern.changes.begin(), pattern.changes.end(),
                                  [](const BenchChange& row) { return row.made; });
  list_head_->set_note(pattern.changes.empty() ? tr("none yet")
                                               : tr("%1 of %2 made").arg(made).arg(pattern.changes.size()));
  const BenchChange* row = find_change(pattern, form_->change());
  form_head_->set_note(row != nullptr ? row_words(pattern, *row, open_.reader()) : QString());
  const QString attention = made == 0 ? QString() : QString::number(made);
  if (attention != attention_) {
    attention_ = attention;
    emit attention_changed();
  }
  show_problem();
  work_out();
}

// A what-if asks whole needs, once for each change; the window does not wait for them.
void ChangesPage::work_out() {
  const std::pair<quint64, std::size_t> wanted{open_.state(), open_.chosen_size_index()};
  if (!isVisible() || worked_out_for_ == wanted) return;
  worked_out_for_ = wanted;
  job_.ask([pattern = open_.pattern(), size = open_.pattern().sizes[wanted.second].id] {
    return work_out_bench(pattern, size);
  });
}

void ChangesPage::take(BenchOutcome outcome) {
  outcome_ = std::move(outcome);
  show_outcome();
  if (const auto in = std::exchange(adopt_when_ready_, std::nullopt)) ask_to_adopt(*in);
  emit worked_out();
}

void ChangesPage::show_outcome() {
  list_->refresh();
  show_problem();
  if (!outcome_) return;
  const ReaderStyle& reader = open_.reader();
  const bool any = !outcome_->made.empty();
  take_here_->setEnabled(any);
  take_everywhere_->setEnabled(any);
  if (outcome_->what_if) {
    effect_->show_rows(effect_rows(open_.pattern(), *outcome_->what_if, reader),
                       unit_of(QuantityFormat::yarn_length(), reader));
    effect_head_->set_note(tr("size %1").arg(text_of(outcome_->what_if->size)));
    QStringList lines;
    for (const std::string& note : outcome_->what_if->notes) lines << text_of(note);
    if (outcome_->what_if->roles.empty())
      lines << tr(
          "No need yet: name the colours of the pattern on Yarns, then add a piece or weigh the sample.");
    else if (lines.isEmpty())
      lines << tr("The need as it stands. Nothing of the pattern moves until a change is taken in.");
    notes_->setText(lines.join(QLatin1Char('\n')));
  }
  fit_table();
  const BenchView view{outcome_->changed, outcome_->changed_size, any, reader};
  save_->show_bench(view);
  run_out_->show_bench(view);
}

void ChangesPage::show_problem() {
  const ChangeOutcome* one = outcome_of(form_->change());
  const BenchChange* row = find_change(open_.pattern(), form_->change());
  form_->show_problem(one != nullptr && row != nullptr && row->made ? problem_words(*one) : QString());
}

void ChangesPage::fit_table() {
  effect_->setFixedHeight(std::max(effect_->whole_height(), scaled(this, 66)));
}

bool ChangesPage::find_next(const QString& words) {
  std::vector<FindPlace> places;
  for (const BenchChange& row : open_.pattern().changes)
    places.push_back(
        {row_words(open_.pattern(), row, open_.reader()), [this, id = row.id.value] { go_to(id); }});
  for (int row = 0; row < effect_->effect()->rowCount(); ++row)
    places.push_back({effect_->effect()->index(row, 0).data(Qt::AccessibleTextRole).toString(), [this, row] {
                        show_tab(effect_);
                        effect_->setCurrentIndex(effect_->effect()->index(row, 0));
                        effect_->setFocus();
                      }});
  return finder_.find_next(places, words);
}

std::optional<Sheet> ChangesPage::sheet() const {
  if (!outcome_ || !outcome_->what_if || outcome_->what_if->roles.empty()) return std::nullopt;
  Sheet sheet;
  sheet.title = open_.pattern().title;
  sheet.subtitle = tr("Changes on the fly, size %1").arg(text_of(outcome_->what_if->size)).toStdString();
  sheet.numbers = open_.reader().numbers;
  if (!open_.pattern().changes.empty())
    sheet.parts.emplace_back(printed_table(tr("Changes"), *list_->part_model()));
  sheet.parts.emplace_back(printed_effect(tr("What they do"), *effect_->effect()));
  sheet.foot_notes = printed_steps(*effect_->effect());
  for (const std::string& note : outcome_->what_if->notes) sheet.foot_notes.push_back(note);
  if (auto ways = save_->printed()) sheet.parts.emplace_back(std::move(*ways));
  if (auto point = run_out_->printed()) sheet.parts.emplace_back(std::move(*point));
  return sheet;
}

}  // namespace skeinproof
