// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/on_hand/on_hand_page.h"

#include <QDateTime>
#include <QFileDialog>
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QTabBar>
#include <QTabWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/pages/candidates/shelf_dialog.h"
#include "app/pages/on_hand/become_pane.h"
#include "app/pages/on_hand/on_hand_form.h"
#include "app/pages/on_hand/on_hand_table.h"
#include "app/pages/on_hand/verdict_table.h"
#include "app/pages/printed_tables.h"
#include "app/print/save_sheet.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"
#include "app/widgets/quantity_text.h"
#include "core/need/cautions.h"
#include "core/sheets/leftovers_record.h"

namespace skeinproof {
namespace {

constexpr double small_below = 1000;  // px of page at 100 %

QString qt(const std::string& text) { return QString::fromStdString(text); }

QString platform_path(QWidget* parent, const QString& suggestion, const QString& filter) {
  return QFileDialog::getSaveFileName(parent, {}, suggestion, filter);
}

QScrollArea* scrolled(QWidget* inside) {
  auto* area = new QScrollArea;
  area->setFocusPolicy(Qt::NoFocus);  // what is inside takes it
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  area->setWidget(inside);
  return area;
}

FigureRow figure_row(const QString& name, const QString& figure = {}, const QString& how = {},
                     bool strong = false) {
  FigureRow row;
  row.name = name;
  row.figure = figure;
  row.how = how;
  row.strong = strong;
  return row;
}
FigureRow heading_row(const QString& name) {
  FigureRow row;
  row.name = name;
  row.heading = true;
  return row;
}

void add_length_working(const Pattern& pattern, const YarnOnHand& yarn, const ReaderStyle& reader,
                        std::vector<FigureRow>& rows) {
  const auto length = length_on_hand(pattern, yarn);
  if (!length)
    return rows.push_back(figure_row(OnHandPage::tr("No length yet"), {}, sentence_of(length.error())));
  for (const FigureLine& line : length->lines) {
    QString figure =
        qt(show_number(line.value, line.unit.empty() || line.unit == "m/g" ? 3 : 1, reader.numbers));
    if (!line.unit.empty()) figure += QLatin1Char(' ') + qt(line.unit);
    rows.push_back({qt(line.label), figure, qt(line.how), qt(line.source), false, false});
  }
  if (!length->lines.empty()) rows.back().strong = true;
  for (const std::string& sentence : length->assumed)
    rows.push_back(figure_row(OnHandPage::tr("Taken as given"), {}, qt(sentence)));
}

void add_grounds(const RoleOnHand& role, std::vector<FigureRow>& rows) {
  for (const GroundVerdict& ground : role.grounds)
    rows.push_back(figure_row(qt(std::string(word_of(ground.evidence.ground))),
                              qt(std::string(word_of(ground.verdict))), qt(ground.words),
                              ground.evidence.ground == role.ground));
  if (role.chance)
    rows.push_back(figure_row(OnHandPage::tr("It suffices"),
                              OnHandPage::tr("in %1 of 100").arg(qt(chance_of_100(*role.chance))),
                              OnHandPage::tr("for what is knitted, and the swatch")));
  for (const std::string& note : role.notes) rows.push_back(figure_row(qt(note)));
  for (const std::string& missing : role.missing) rows.push_back(figure_row(qt(missing)));
}

}  // namespace

std::vector<FigureRow> lot_figures(const std::vector<LotPlan>& plans, const ReaderStyle& reader) {
  QuantityFormat format = QuantityFormat::yarn_length();
  format.decimals = 1;
  const auto metres = [&](Metres value) { return show_quantity(format, reader, {value.value(), {}}); };
  std::vector<FigureRow> rows;
  for (const LotPlan& plan : plans) {
    rows.push_back(
        heading_row(OnHandPage::tr("%1: %2").arg(qt(plan.label), qt(std::string(word_of(plan.cut))))));
    for (const LotOfRole& lot : plan.lots) {
      QStringList pieces;
      for (const LotPiece& piece : lot.pieces)
        pieces << OnHandPage::tr("%1 %2").arg(qt(piece.name), metres(piece.planned));
      if (lot.first) pieces << OnHandPage::tr("swatch and ends");
      rows.push_back(figure_row(
          OnHandPage::tr("Lot %1").arg(lot.lot.empty() ? OnHandPage::tr("not stated") : qt(lot.lot)),
          OnHandPage::tr("%1 of %2").arg(metres(lot.planned), metres(lot.usable)),
          OnHandPage::tr("%1; %2 to spare").arg(pieces.join(QStringLiteral(", ")), metres(lot.spare)), true));
    }
    if (!plan.words.empty() && plan.lots.empty()) rows.push_back(figure_row(qt(plan.words)));
    if (plan.short_of)
      rows.push_back(figure_row(OnHandPage::tr("All lots together"),
                                OnHandPage::tr("%1 short").arg(metres(*plan.short_of))));
    if (!plan.advice.empty()) rows.push_back(figure_row(OnHandPage::tr("How to mix"), {}, qt(plan.advice)));
  }
  return rows;
}

OnHandPage::OnHandPage(OpenPattern& open, QWidget* parent)
    : Page(open, parent),
      ask_path_(platform_path),
      job_([this](OnHandOutcome outcome) {
        outcome_ = std::move(outcome);
        show_outcome();
        emit worked_out();
      }),
      become_job_([this](Expected<CouldBecome> result) {
        became_ = std::move(result);
        become_->show_result(*became_);
        emit worked_out();
      }) {
  auto* upper = make_table_pane();
  lower_ = new QSplitter(Qt::Horizontal);
  form_pane_ = make_form_pane();
  lower_->addWidget(form_pane_);
  verdicts_ = new VerdictTable;
  verdicts_->set_empty_words(
      tr("No verdict yet: say in the table which colour a yarn is for, and how much of it there is."));
  verdict_head_ = new PaneHeader(tr("Will it do?"));
  verdict_pane_ = make_pane(verdict_head_, verdicts_);
  lower_->addWidget(verdict_pane_);
  lower_->addWidget(make_tabs());
  lower_->setStretchFactor(1, 1);
  lower_->setStretchFactor(2, 1);
  lower_->setSizes({scaled(this, 300), scaled(this, 530), scaled(this, 460)});
  whole_ = new QSplitter(Qt::Vertical);
  whole_->addWidget(upper);
  whole_->addWidget(lower_);
  whole_->setStretchFactor(1, 1);
  whole_->setSizes({scaled(this, 212), scaled(this, 480)});
  for (QSplitter* splitter : {lower_, whole_}) splitter->setChildrenCollapsible(false);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(make_bar());
  layout->addWidget(whole_, 1);
  connect(table_, &PartTable::says, this, &Page::says);
  connect(form_, &OnHandForm::says, this, &Page::says);
  connect(become_, &BecomePane::says, this, &Page::says);
  connect(table_, &PartTable::current_part_changed, this, [this](std::uint32_t key) {
    form_->show_yarn(OnHandId{key});
    show_form_note();
    show_working();
  });
  connect(verdicts_, &VerdictTable::role_chosen, this, &OnHandPage::show_working);
  connect(&open_, &OpenPattern::changed, this, &OnHandPage::refresh);
  connect(&open_, &OpenPattern::reader_changed, this, [this] {
    show_outcome();
    if (became_) become_->show_result(*became_);
  });
  table_->refresh(true);
  refresh();
}

OnHandPage::~OnHandPage() { take_down(); }

QWidget* OnHandPage::make_bar() {
  size_ = new ChoiceField;
  size_->setAccessibleName(tr("Size the yarn on hand is meant for"));
  auto* words = new QLabel(tr("Meant for si&ze"));
  words->setBuddy(size_);
  connect(size_, &ChoiceField::chosen, this, [this](std::uint32_t value) {
    open_.apply(tr("yarn on hand meant for size %1").arg(size_->currentText()),
                [value](Pattern& pattern) { pattern.on_hand_size = SizeId{value}; });
  });
  auto* search = new QPushButton(tr("Sea&rch the shelf…"));
  search->setToolTip(tr("Take a yarn from your own list"));
  auto* weigh = new QPushButton(tr("Weigh while &knitting"));
  weigh->setToolTip(tr("To the page Weighings: a reading at any round says how far the rest goes"));
  auto* record = new QPushButton(tr("Left&overs record…"));
  record->setToolTip(tr("Save what will be left of every yarn as PDF, text, HTML or a workbook"));
  connect(search, &QPushButton::clicked, this, &OnHandPage::search_shelf);
  connect(weigh, &QPushButton::clicked, this, [this] { emit wants_place(QStringLiteral("Weighings"), 0); });
  connect(record, &QPushButton::clicked, this, &OnHandPage::save_leftovers_record);
  auto* bar = new QWidget;
  auto* flow = new FlowLayout(bar);
  flow->setContentsMargins(scaled(this, 10), scaled(this, 7), scaled(this, 10), scaled(this, 7));
  flow->setSpacing(scaled(this, 8));
  flow->addWidget(words);
  flow->addWidget(size_);
  flow->addWidget(search);
  flow->add_stretch();
  flow->addWidget(weigh);
  flow->addWidget(record);
  for (QPushButton* button : {search, weigh, record}) button->setAutoDefault(false);
  return bar;
}

QWidget* OnHandPage::make_table_pane() {
  table_ = make_on_hand_table(open_);
  auto* head = new PaneHeader(tr("Yarn on hand"));
  head->add_button(
      tr("&Add"), [this] { table_->add(); }, tr("Add a yarn"));
  head->add_button(
      tr("Dupli&cate"), [this] { table_->duplicate(); }, tr("Add a copy of the chosen row"));
  head->add_button(
      tr("&Delete"), [this] { table_->erase(); }, tr("Delete the chosen row (Ctrl+Del)"));
  return make_pane(head, table_);
}

QWidget* OnHandPage::make_form_pane() {
  form_ = new OnHandForm(open_);
  form_head_ = new PaneHeader(tr("How it was measured"));
  return make_pane(form_head_, scrolled(form_));
}

QWidget* OnHandPage::make_tabs() {
  become_ = new BecomePane(open_);
  lots_ = new FigureList;
  lots_->view()->setAccessibleName(tr("Lots to pieces"));
  lots_->set_empty_words(
      tr("No lot plan: it is made for a colour that lies here in two lots or more of one shade."));
  working_ = new FigureList;
  working_->view()->setAccessibleName(tr("How it comes about"));
  working_->set_empty_words(tr("Choose a yarn: how its length comes about stands here."));
  tabs_ = new QTabWidget;
  tabs_->setDocumentMode(true);
  tabs_->setUsesScrollButtons(true);
  tabs_->addTab(working_, tr("How it comes a&bout"));
  tabs_->addTab(scrolled(become_), tr("What it could beco&me"));
  tabs_->addTab(lots_, tr("&Lots"));
  connect(tabs_, &QTabWidget::currentChanged, this, [this] { work_out_become(); });
  return tabs_;
}

QString OnHandPage::attention() const { return attention_; }

void OnHandPage::enter() {
  if (!table_->currentIndex().isValid()) table_->setCurrentIndex(table_->model()->index(0, 0));
  table_->setFocus();
}

bool OnHandPage::go_to(std::uint32_t part) {
  if (part == 0 || !table_->set_current_key(part)) return false;
  table_->setFocus();
  return true;
}

void OnHandPage::search_shelf() {
  if (shelf_ == nullptr) {
    const RoleId role = open_.pattern().roles.empty() ? RoleId{} : open_.pattern().roles.front().id;
    shelf_ = new ShelfDialog(open_, role, this);
    connect(shelf_, &ShelfDialog::says, this, &Page::says);
    connect(shelf_, &ShelfDialog::on_hand_added, this,
            [this](std::uint32_t id) { table_->set_current_key(id); });
  }
  shelf_->show();
  shelf_->raise();
  shelf_->activateWindow();
}

void OnHandPage::showEvent(QShowEvent* event) {
  Page::showEvent(event);
  arrange();
  work_out();
}

void OnHandPage::changeEvent(QEvent* event) {
  Page::changeEvent(event);
  if (event->type() == QEvent::FontChange && lower_ != nullptr) arrange();
}

void OnHandPage::resizeEvent(QResizeEvent* event) {
  Page::resizeEvent(event);
  arrange();
}

// Where the window is small for its text, the verdicts and the form become tabs.
void OnHandPage::arrange() {
  const bool small = width() * 100.0 / scaled(this, 100) < small_below;
  if (small == is_small_) return;
  is_small_ = small;
  const QSignalBlocker quiet(tabs_);
  if (small) {
    tabs_->insertTab(0, verdict_pane_, tr("Will it do?"));
    tabs_->insertTab(1, form_pane_, tr("How it was measured"));
    tabs_->setCurrentIndex(0);
  } else {
    lower_->insertWidget(0, form_pane_);
    lower_->insertWidget(1, verdict_pane_);
    lower_->setSizes({scaled(this, 300), scaled(this, 530), scaled(this, 460)});
  }
  whole_->setSizes(small ? QList<int>{45, 55} : QList<int>{scaled(this, 212), scaled(this, 480)});
  verdict_pane_->show();
  form_pane_->show();
}

void OnHandPage::show_form_note() {
  const YarnOnHand* yarn = open_.pattern().yarn_on_hand(form_->yarn());
  form_head_->set_note(yarn != nullptr ? qt(on_hand_name(open_.pattern(), *yarn)) : QString());
}

void OnHandPage::refresh() {
  const Pattern& pattern = open_.pattern();
  std::vector<Choice> choices = {
      {pattern.sizes.empty()
           ? tr("the chosen one")
           : tr("%1, the chosen one").arg(qt(pattern.sizes[open_.chosen_size_index()].label)),
       0}};
  for (const Size& each : pattern.sizes) choices.push_back({qt(each.label), each.id.value});
  size_->set_choices(choices);
  size_->show_choice(pattern.on_hand_size.value);
  show_form_note();
  work_out();
}

// The verdicts are wanted beside the name of the page before anybody looks at it.
void OnHandPage::work_out() {
  const std::pair<quint64, std::size_t> wanted{open_.state(),
                                               on_hand_size_index(open_.pattern()).value_or(0)};
  if (worked_out_for_ != wanted) {
    worked_out_for_ = wanted;
    if (open_.pattern().on_hand.empty()) {
      outcome_ = {};
      show_outcome();
    } else {
      job_.ask([pattern = open_.pattern(), assessment = open_.assessment(), style = open_.reader().numbers] {
        return OnHandOutcome{on_hand_verdicts(pattern, assessment, style),
                             lot_plans(pattern, assessment, style)};
      });
    }
  }
  work_out_become();
}

void OnHandPage::work_out_become() {
  if (!isVisible() || become_for_ == open_.state() || !become_->isVisible()) return;
  become_for_ = open_.state();
  become_job_.ask([pattern = open_.pattern(), assessment = open_.assessment(),
                   style = open_.reader().numbers] { return could_become(pattern, assessment, style); });
}

void OnHandPage::show_outcome() {
  const Pattern& pattern = open_.pattern();
  verdicts_->show_rows(verdict_rows(outcome_.verdicts, open_.reader()));
  lots_->set_rows(lot_figures(outcome_.lots, open_.reader()));
  const auto at = on_hand_size_index(pattern);
  verdict_head_->set_note(at ? tr("size %1").arg(qt(pattern.sizes[*at].label)) : QString());
  show_working();
  QString attention;
  for (const Verdict verdict : {Verdict::too_close_to_call, Verdict::not_enough})
    for (const RoleOnHand& role : outcome_.verdicts)
      if (role.verdict == std::optional(verdict)) attention = qt(std::string(word_of(verdict)));
  if (attention == attention_) return;
  attention_ = attention;
  emit attention_changed();
}

// Of the chosen yarn, and of the colour it is for.
void OnHandPage::show_working() {
  const Pattern& pattern = open_.pattern();
  std::vector<FigureRow> rows;
  const YarnOnHand* yarn = pattern.yarn_on_hand(OnHandId{table_->current_key()});
  const RoleId chosen = verdicts_->hasFocus() || yarn == nullptr ? verdicts_->current_role() : yarn->role;
  if (yarn != nullptr && yarn->role == chosen) {
    rows.push_back(heading_row(tr("Length of %1").arg(qt(on_hand_name(pattern, *yarn)))));
    add_length_working(pattern, *yarn, open_.reader(), rows);
  }
  for (const RoleOnHand& role : outcome_.verdicts)
    if (role.role == chosen && chosen) {
      rows.push_back(heading_row(tr("What is known of %1").arg(qt(role.label))));
      add_grounds(role, rows);
    }
  working_->set_rows(std::move(rows));
}

void OnHandPage::save_leftovers_record() {
  const Pattern& pattern = open_.pattern();
  const auto whole = leftovers_record(pattern, open_.assessment(), pattern.house());
  if (!whole) return emit says(sentence_of(whole.error()));
  const QString path =
      ask_path_(this, tr("leftovers-record.pdf"),
                tr("PDF (*.pdf);;Text (*.txt);;HTML (*.html);;Workbook (*.xlsx);;CSV (*.csv)"));
  if (path.isEmpty()) return;
  const auto saved = save_sheet(*whole, path.toStdString(), QDateTime::currentSecsSinceEpoch());
  emit says(saved ? tr("Saved %1").arg(path) : sentence_of(saved.error()));
}

std::optional<Sheet> OnHandPage::sheet() const {
  const Pattern& pattern = open_.pattern();
  if (pattern.on_hand.empty()) return std::nullopt;
  Sheet sheet;
  sheet.title = pattern.title;
  const auto at = on_hand_size_index(pattern);
  sheet.subtitle =
      (at ? tr("Yarn on hand, size %1").arg(qt(pattern.sizes[*at].label)) : tr("Yarn on hand")).toStdString();
  sheet.numbers = open_.reader().numbers;
  sheet.parts.emplace_back(printed_table(tr("Yarn on hand"), *table_->part_model()));
  std::vector<FigureRow> verdicts;
  for (const VerdictRow& row : verdicts_->verdicts()->rows()) {
    QString how = row.because;
    if (!row.settled_by.isEmpty())
      how += QStringLiteral(" ") + tr("What would settle it: %1").arg(row.settled_by);
    verdicts.push_back(figure_row(
        tr("%1, %2 on hand").arg(row.colour, row.have_words),
        row.short_or_over.isEmpty() ? row.word : row.word + QStringLiteral(", ") + row.short_or_over, how,
        true));
  }
  if (!verdicts.empty()) sheet.parts.emplace_back(printed_table(tr("Will it do?"), verdicts));
  if (became_)
    sheet.parts.emplace_back(printed_table(tr("What it could become"), become_figures(pattern, *became_)));
  if (!outcome_.lots.empty())
    sheet.parts.emplace_back(printed_table(tr("Lots"), lot_figures(outcome_.lots, open_.reader())));
  for (std::string& caution : cautions_for(pattern)) sheet.foot_notes.push_back(std::move(caution));
  return sheet;
}

bool OnHandPage::find_next(const QString& words) {
  std::vector<FindPlace> places;
  const Pattern& pattern = open_.pattern();
  for (std::size_t row = 0; row < pattern.on_hand.size(); ++row) {
    QStringList all;
    for (int column = 0; column < table_->part_model()->columnCount(); ++column)
      all << table_->part_model()->cell_text(static_cast<int>(row), column);
    places.push_back(
        {all.join(QLatin1Char('\n')), [this, id = pattern.on_hand[row].id.value] { go_to(id); }});
  }
  for (int row = 0; row < verdicts_->verdicts()->rowCount(); ++row)
    places.push_back({verdicts_->verdicts()->rows()[static_cast<std::size_t>(row)].spoken, [this, row] {
                        verdicts_->setCurrentIndex(verdicts_->verdicts()->index(row, 0));
                        verdicts_->setFocus();
                      }});
  return finder_.find_next(places, words);
}

}  // namespace skeinproof
