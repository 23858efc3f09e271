// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/weighings/weighings_page.h"

#include <QApplication>
#include <QClipboard>
#include <QListView>
#include <QScrollArea>
#include <QSplitter>
#include <QTabWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/pages/printed_tables.h"
#include "app/pages/weighings/altered_pane.h"
#include "app/pages/weighings/as_you_go_pane.h"
#include "app/pages/weighings/reading_table.h"
#include "app/pages/weighings/weighing_form.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"
#include "core/pattern/edits.h"

namespace skeinproof {

namespace {

QString size_label(const Pattern& pattern, SizeId id) {
  const auto index = pattern.size_index(id);
  return index ? QString::fromStdString(pattern.sizes[*index].label) : QStringLiteral("–");
}

PartList weighing_list() {
  PartList list =
      part_list(WeighingsPage::tr("weighing"), WeighingsPage::tr("add a weighing"), &Pattern::weighings);
  list.name = [](const Pattern& pattern, std::size_t row) {
    return QString::fromStdString(pattern.weighings[row].name);
  };
  list.append = [](Pattern& pattern) {
    const SizeId size = pattern.sample_size ? pattern.sample_size : pattern.chosen_size;
    add_weighing(pattern, size ? size : pattern.sizes.front().id);
  };
  list.erase = [](Pattern& pattern, std::size_t row) { erase_weighing(pattern, pattern.weighings[row].id); };
  list.duplicate = [](Pattern& pattern, std::size_t row) {
    Weighing copy = pattern.weighings[row];
    copy.id = take_id<WeighingId>(pattern);
    pattern.weighings.insert(pattern.weighings.begin() + static_cast<std::ptrdiff_t>(row) + 1,
                             std::move(copy));
  };
  list.move = [](Pattern& pattern, std::size_t from, std::size_t to) {
    move_part(pattern.weighings, from, to);
  };
  return list;
}

double grams_in_all(const Weighing& weighing) {
  double sum = 0;
  for (const WeighedRole& weighed : weighing.roles)
    if (weighed.reading) sum += weighed.reading->value.value();
  return sum;
}

}  // namespace

WeighingsPage::WeighingsPage(OpenPattern& open, QWidget* parent) : Page(open, parent) {
  auto* left = new QSplitter(Qt::Vertical);
  left->addWidget(make_list_pane());
  left->addWidget(make_form_pane());
  left->setStretchFactor(1, 1);
  left->setSizes({scaled(this, 150), scaled(this, 540)});
  auto* right = new QSplitter(Qt::Vertical);
  right->addWidget(make_reading_pane());
  tabs_ = new QTabWidget;
  tabs_->setDocumentMode(true);
  tabs_->addTab(make_figure_pane(), tr("What it sa&ys"));
  tabs_->addTab(as_you_go_ = new AsYouGoPane(open_), tr("&While knitting"));
  tabs_->addTab(altered_ = new AlteredPane(open_), tr("Knitted other&wise"));
  right->addWidget(tabs_);
  right->setStretchFactor(1, 1);
  right->setSizes({scaled(this, 210), scaled(this, 480)});
  auto* whole = new QSplitter(Qt::Horizontal);
  whole->addWidget(left);
  whole->addWidget(right);
  whole->setStretchFactor(1, 1);
  whole->setSizes({scaled(this, 440), scaled(this, 800)});
  for (QSplitter* splitter : {left, right, whole}) splitter->setChildrenCollapsible(false);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(whole);
  for (PartTable* table : {weighings_, readings_}) connect(table, &PartTable::says, this, &Page::says);
  connect(form_, &WeighingForm::says, this, &Page::says);
  connect(as_you_go_, &AsYouGoPane::says, this, &Page::says);
  connect(weighings_, &PartTable::current_part_changed, this,
          [this](std::uint32_t key) { show_weighing(WeighingId{key}); });
  connect(readings_, &PartTable::current_part_changed, this, &WeighingsPage::refresh_figures);
  connect(&open_, &OpenPattern::changed, this, &WeighingsPage::refresh);
  connect(&open_, &OpenPattern::reader_changed, this, &WeighingsPage::refresh);
  weighings_->refresh(true);
  refresh();
}

QWidget* WeighingsPage::make_list_pane() {
  PartColumn name = text_column(
      tr("Weighing"), tr("name of weighing"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.weighings[row].name; });
  name.stretch = 1;
  PartColumn size = computed_column(tr("Size"), [](const Pattern& pattern, std::size_t row) {
    return size_label(pattern, pattern.weighings[row].size);
  });
  PartColumn used = tick_column(
      tr("Used"), tr("use weighing"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.weighings[row].used; });
  weighings_ = new PartTable(open_, weighing_list(), {name, size, used});
  weighings_->setAccessibleName(tr("Weighings"));
  auto* head = new PaneHeader(tr("Weighings"));
  head->add_button(
      tr("&Add"), [this] { weighings_->add(); }, tr("Add a weighing"));
  head->add_button(tr("Dupli&cate"), [this] { weighings_->duplicate(); });
  head->add_button(
      tr("&Delete"), [this] { weighings_->erase(); }, tr("Delete the chosen weighing (Ctrl+Del)"));
  return make_pane(head, weighings_);
}

QWidget* WeighingsPage::make_form_pane() {
  form_ = new WeighingForm(open_);
  auto* area = new QScrollArea;
  area->setFocusPolicy(Qt::NoFocus);  // its fields take it
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  area->setWidget(form_);
  form_head_ = new PaneHeader(tr("What was weighed"));
  return make_pane(form_head_, area);
}

QWidget* WeighingsPage::make_reading_pane() {
  readings_ = make_reading_table(
      open_, [this] { return form_->weighing(); }, nullptr);
  reading_head_ = new PaneHeader(tr("Readings"));
  return make_pane(reading_head_, readings_);
}

QWidget* WeighingsPage::make_figure_pane() {
  figures_ = new FigureList;
  figures_->view()->setAccessibleName(tr("What the reading says"));
  figures_->set_empty_words(
      tr("Nothing to say yet: type the grams of a colour, and its yarn's skein on the page Yarns."));
  figure_head_ = new PaneHeader(tr("What it says"));
  figure_head_->add_button(
      tr("C&opy"), [this] { QApplication::clipboard()->setText(figures_->as_text()); }, tr("Copy as text"));
  return make_pane(figure_head_, figures_);
}

QString WeighingsPage::attention() const { return attention_; }

void WeighingsPage::enter() {
  if (!weighings_->currentIndex().isValid()) weighings_->setCurrentIndex(weighings_->model()->index(0, 0));
  if (open_.pattern().weighings.empty())
    weighings_->setFocus();
  else
    readings_->setFocus();
}

bool WeighingsPage::go_to(std::uint32_t part) {
  if (part == 0) return false;
  for (PartTable* table : {weighings_, readings_, as_you_go_->table()})
    if (table->set_current_key(part)) {
      if (table == as_you_go_->table()) tabs_->setCurrentWidget(as_you_go_);
      table->setFocus();
      return true;
    }
  return false;
}

void WeighingsPage::show_weighing(WeighingId id) {
  form_->show_weighing(id);
  altered_->show_weighing(id);
  readings_->refresh(true);
  refresh();
}

void WeighingsPage::showEvent(QShowEvent* event) {
  Page::showEvent(event);
  refresh_figures();
}

void WeighingsPage::refresh() {
  const Pattern& pattern = open_.pattern();
  const Weighing* weighing = find_weighing(pattern, form_->weighing());
  readings_->setEnabled(weighing != nullptr);
  form_head_->set_note(weighing != nullptr ? tr("size %1").arg(size_label(pattern, weighing->size))
                                           : tr("No weighing yet: type its name in the list"));
  const double sum = weighing != nullptr ? grams_in_all(*weighing) : 0;
  reading_head_->set_note(
      pattern.roles.empty() ? tr("No colour yet: add one on the page Yarns")
      : sum > 0 ? tr("%1 in all").arg(show_quantity(QuantityFormat::mass(), open_.reader(), {sum, {}}))
                : tr("grams of each colour"));
  QString attention;
  if (!pattern.weighings.empty())
    for (const Calibration& calibration : open_.assessment().calibrations)
      if (std::any_of(calibration.loops.begin(), calibration.loops.end(),
                      [](const Calibration::Loop& loop) { return !loop.plausible; }))
        attention = tr("look");
  if (attention != attention_) {
    attention_ = attention;
    emit attention_changed();
  }
  refresh_figures();
}

void WeighingsPage::refresh_figures() {
  // The working costs more than an edit should; a hidden page need not have it.
  if (!isVisible()) return;
  const Pattern& pattern = open_.pattern();
  RoleId role{readings_->current_key()};
  if (!role && !pattern.roles.empty()) role = pattern.roles.front().id;
  const Role* shown = pattern.role(role);
  figure_head_->set_note(shown != nullptr ? QString::fromStdString(shown->label) : QString());
  figures_->set_rows(reading_figures(open_, form_->weighing(), role));
}

bool WeighingsPage::find_next(const QString& words) {
  std::vector<FindPlace> places;
  for (const Weighing& weighing : open_.pattern().weighings)
    places.push_back({QString::fromStdString(weighing.name + "\n" + weighing.who + "\n" + weighing.when +
                                             "\n" + weighing.state + "\n" + weighing.note),
                      [this, id = weighing.id.value] { go_to(id); }});
  for (const Role& role : open_.pattern().roles)
    places.push_back({QString::fromStdString(role.label + "\n" + role.shade.name),
                      [this, id = role.id.value] { go_to(id); }});
  return finder_.find_next(places, words);
}

std::optional<Sheet> WeighingsPage::sheet() const {
  const Pattern& pattern = open_.pattern();
  const Weighing* weighing = find_weighing(pattern, form_->weighing());
  Sheet sheet;
  sheet.title = pattern.title;
  if (weighing == nullptr && pattern.readings.empty()) return std::nullopt;
  if (weighing == nullptr) {
    sheet.subtitle = tr("While knitting").toStdString();
    add_as_you_go(sheet);
    return sheet;
  }
  sheet.subtitle = tr("Weighing %1").arg(QString::fromStdString(weighing->name)).toStdString();
  sheet.numbers = open_.reader().numbers;
  const std::string_view moisture = word_of(weighing->moisture);
  sheet.parts.emplace_back(printed_table(
      QString(),
      std::vector<std::pair<QString, QString>>{
          {tr("Size"), size_label(pattern, weighing->size)},
          {tr("Moisture"), QString::fromUtf8(moisture.data(), static_cast<qsizetype>(moisture.size()))},
          {tr("State"), QString::fromStdString(weighing->state)},
          {tr("Weighed by"), QString::fromStdString(weighing->who)},
          {tr("When"), QString::fromStdString(weighing->when)},
          {tr("Note"), QString::fromStdString(weighing->note)}}));
  sheet.parts.emplace_back(printed_table(tr("Readings"), *readings_->part_model()));
  for (const Role& role : pattern.roles) {
    const auto figures = reading_figures(open_, weighing->id, role.id);
    if (!figures.empty())
      sheet.parts.emplace_back(printed_table(QString::fromStdString(role.label), figures));
  }
  add_as_you_go(sheet);
  return sheet;
}

void WeighingsPage::add_as_you_go(Sheet& sheet) const {
  const Pattern& pattern = open_.pattern();
  if (pattern.readings.empty()) return;
  sheet.parts.emplace_back(printed_table(tr("While knitting"), *as_you_go_->table()->part_model()));
  for (const Role& role : pattern.roles)
    if (std::any_of(pattern.readings.begin(), pattern.readings.end(),
                    [&](const YarnReading& reading) { return reading.role == role.id; }))
      sheet.parts.emplace_back(
          printed_table(QString::fromStdString(role.label), as_you_go_figures(open_, role.id)));
}

}  // namespace skeinproof
