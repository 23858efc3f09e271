// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pattern/pattern_page.h"

#include <QGridLayout>
#include <QLabel>
#include <QScrollArea>
#include <QSplitter>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "app/document/open_pattern.h"
#include "app/pages/pattern/list_pane.h"
#include "app/pages/pattern/metres_pane.h"
#include "app/pages/pattern/size_bar.h"
#include "app/pages/pattern/start_pane.h"
#include "app/pages/printed_tables.h"
#include "app/widgets/count_words.h"
#include "app/widgets/ink.h"
#include "app/widgets/line_field.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/size_grid.h"
#include "core/need/cautions.h"

namespace skeinproof {

PatternPage::PatternPage(OpenPattern& open, QWidget* parent)
    : Page(open, parent),
      form_(open, this, [](const Pattern& pattern) { return &pattern; }, {}),
      head_(new PaneHeader(tr("Pattern"))),
      caution_head_(new PaneHeader(tr("Usual cautions"))),
      cautions_(new QuietLabel),
      sizes_(new SizeBar(open)),
      lists_(new ListPane(open)),
      side_(new QStackedWidget),
      start_(new StartPane(open)),
      metres_(new MetresPane(open)) {
  cautions_->setWordWrap(true);
  cautions_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  cautions_->setMargin(scaled(this, 12));
  auto* column = new QWidget;
  auto* rows = new QVBoxLayout(column);
  rows->setContentsMargins(0, 0, 0, 0);
  rows->setSpacing(0);
  for (QWidget* widget : std::initializer_list<QWidget*>{head_, make_head(), new PaneHeader(tr("Sizes")),
                                                         sizes_, lists_, caution_head_, cautions_})
    rows->addWidget(widget);
  rows->addStretch(1);
  const auto scrolling = [](QWidget* widget) {
    auto* area = new QScrollArea;
    area->setFocusPolicy(Qt::NoFocus);  // its fields take it
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setWidget(widget);
    return area;
  };
  side_->addWidget(scrolling(start_));
  side_->addWidget(scrolling(metres_));
  auto* whole = new QSplitter(Qt::Horizontal);
  whole->setChildrenCollapsible(false);
  whole->addWidget(scrolling(column));
  whole->addWidget(side_);
  whole->setStretchFactor(0, 1);
  whole->setSizes({scaled(this, 860), scaled(this, 380)});
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(whole);

  head_->add_button(
      tr("Metres from a weigh&t…"), [this] { show_metres(!asks_metres_); },
      tr("One question beside the pattern: how many metres are these grams?"));
  connect(lists_->grid(), &SizeGrid::current_changed, this,
          [this](int, std::size_t size) { open_.choose_size(size); });
  connect(sizes_, &SizeBar::says, this, &Page::says);
  connect(lists_, &ListPane::says, this, &Page::says);
  connect(metres_, &MetresPane::says, this, &Page::says);
  connect(metres_, &MetresPane::wants_close, this, [this] { show_metres(false); });
  connect(start_, &StartPane::wants_sizes, this, [this] {
    sizes_->line()->setFocus();
    sizes_->line()->selectAll();
  });
  connect(start_, &StartPane::wants_place, this, &Page::wants_place);
  connect(start_, &StartPane::wants_command, this, &Page::wants_command);
  connect(start_, &StartPane::wants_metres, this, [this] { show_metres(true); });
  connect(&open_, &OpenPattern::changed, this, &PatternPage::refresh);
  refresh();
}

QWidget* PatternPage::make_head() {
  auto* whole = new QWidget;
  auto* grid = new QGridLayout(whole);
  grid->setContentsMargins(scaled(this, 12), scaled(this, 8), scaled(this, 12), scaled(this, 8));
  grid->setHorizontalSpacing(scaled(this, 10));
  grid->setVerticalSpacing(scaled(this, 6));
  const auto add = [&](int row, int column, const QString& words, QWidget* field, int span = 1) {
    auto* label = new QLabel(words);
    label->setBuddy(field);
    grid->addWidget(label, row, column);
    grid->addWidget(field, row, column + 1, 1, span);
  };
  title_ = form_.text(
      tr("title"), [](auto& pattern) -> auto& { return pattern.title; });
  title_->setPlaceholderText(tr("what the pattern is called"));
  TextField* item = form_.text(
      tr("item"), [](auto& pattern) -> auto& { return pattern.item; });
  item->set_suggestions({tr("pullover"), tr("cardigan"), tr("socks"), tr("hat"), tr("mittens"), tr("shawl"),
                         tr("scarf"), tr("blanket"), tr("toy")});
  TextField* wearer = form_.text(
      tr("wearer"), [](auto& pattern) -> auto& { return pattern.wearer; });
  wearer->set_suggestions({tr("adult"), tr("child"), tr("baby")});
  TextField* note = form_.text(
      tr("note"), [](auto& pattern) -> auto& { return pattern.note; });
  add(0, 0, tr("Tit&le"), title_, 3);
  add(1, 0, tr("Item"), item);
  add(1, 2, tr("&Wearer"), wearer);
  add(2, 0, tr("Note"), note, 3);
  grid->setColumnStretch(1, 1);
  grid->setColumnStretch(3, 1);
  return whole;
}

void PatternPage::enter() {
  if (open_.pattern().title.empty())
    title_->setFocus();
  else
    lists_->grid()->setFocus();
}

void PatternPage::show_metres(bool shown) {
  asks_metres_ = shown;
  show_side();
  if (shown) metres_->focus_reading();
}

void PatternPage::show_side() {
  const bool starts = StartPane::is_wanted(open_);
  side_->setVisible(starts || asks_metres_);
  side_->setCurrentIndex(asks_metres_ ? 1 : 0);
}

QString PatternPage::cautions() const { return cautions_->text(); }

void PatternPage::refresh() {
  form_.refresh();
  const Pattern& pattern = open_.pattern();
  QStringList parts = {count_words(pattern.sizes.size(), tr("size"), tr("sizes"))};
  if (!pattern.roles.empty()) parts << count_words(pattern.roles.size(), tr("colour"), tr("colours"));
  if (!pattern.yarns.empty()) parts << count_words(pattern.yarns.size(), tr("yarn"), tr("yarns"));
  if (!pattern.pieces.empty()) parts << count_words(pattern.pieces.size(), tr("piece"), tr("pieces"));
  head_->set_note(parts.join(QStringLiteral(", ")));
  QStringList cautions;
  for (const std::string& caution : cautions_for(pattern)) cautions << QString::fromStdString(caution);
  cautions_->setText(cautions.join(QLatin1Char('\n')));
  for (QWidget* widget : std::initializer_list<QWidget*>{caution_head_, cautions_})
    widget->setVisible(!cautions.isEmpty());
  // The chosen size is the grid's column, wherever it was chosen.
  SizeGrid* grid = lists_->grid();
  if (grid->current_size() != open_.chosen_size_index())
    grid->set_current(grid->current_row(), open_.chosen_size_index());
  show_side();
}

bool PatternPage::go_to(std::uint32_t part) {
  const Pattern& pattern = open_.pattern();
  if (const auto size = pattern.size_index(SizeId{part}); size && part != 0) {
    open_.choose_size(*size);
    lists_->grid()->setFocus();
    return true;
  }
  if (!lists_->show_measurement(MeasurementId{part})) return false;
  lists_->grid()->setFocus();
  return true;
}

bool PatternPage::find_next(const QString& words) {
  const Pattern& pattern = open_.pattern();
  std::vector<FindPlace> places;
  places.push_back({QString::fromStdString(pattern.title + "\n" + pattern.item + "\n" + pattern.wearer +
                                           "\n" + pattern.note),
                    [this] { title_->setFocus(); }});
  for (const Size& size : pattern.sizes)
    places.push_back({QString::fromStdString(size.label), [this, id = size.id.value] { go_to(id); }});
  for (const Measurement& measurement : pattern.measurements)
    places.push_back(
        {QString::fromStdString(measurement.name), [this, id = measurement.id.value] { go_to(id); }});
  return finder_.find_next(places, words);
}

std::optional<Sheet> PatternPage::sheet() const {
  const Pattern& pattern = open_.pattern();
  Sheet sheet;
  sheet.title = pattern.title;
  sheet.subtitle = tr("Pattern").toStdString();
  sheet.numbers = open_.reader().numbers;
  sheet.parts.emplace_back(printed_table(
      QString(),
      std::vector<std::pair<QString, QString>>{{tr("Item"), QString::fromStdString(pattern.item)},
                                               {tr("Wearer"), QString::fromStdString(pattern.wearer)},
                                               {tr("Note"), QString::fromStdString(pattern.note)},
                                               {tr("Sizes"), sizes_->line()->text()}}));
  sheet.parts.emplace_back(printed_table(tr("Measurements and notions"), *lists_->grid()->model()));
  for (std::string& caution : cautions_for(pattern)) sheet.foot_notes.push_back(std::move(caution));
  return sheet;
}

}  // namespace skeinproof
