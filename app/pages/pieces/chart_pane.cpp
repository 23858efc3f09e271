// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/chart_pane.h"

#include <QActionGroup>
#include <QButtonGroup>
#include <QEvent>
#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QStackedLayout>
#include <QToolButton>
#include <QVBoxLayout>

#include "app/document/open_pattern.h"
#include "app/pages/pieces/chart_dialogs.h"
#include "app/pages/pieces/chart_import.h"
#include "app/pages/pieces/piece_words.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/chart_grid.h"
#include "app/widgets/chart_squares.h"
#include "app/widgets/heavy_when_checked.h"
#include "app/widgets/ink.h"
#include "app/widgets/quantity_text.h"
#include "core/fabric/gauge.h"
#include "core/pattern/edits.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

constexpr qint64 largest_file = 64 * 1024 * 1024;

QToolButton* switch_button(const QString& text, QButtonGroup* group, int id, QHBoxLayout* row) {
  auto* button = new QToolButton;
  button->setText(text);
  button->setCheckable(true);
  button->setFocusPolicy(Qt::TabFocus);
  group->addButton(button, id);
  row->addWidget(button);
  show_checked_heavy(button);
  return button;
}

}  // namespace

ChartPane::ChartPane(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      charts_(new ChoiceField),
      looks_(new QButtonGroup(this)),
      more_(new QToolButton),
      menu_(new QMenu(this)),
      grid_(new ChartGrid(open)),
      body_(new QWidget),
      empty_(new QWidget),
      stack_(new QStackedLayout),
      palette_row_(new QHBoxLayout),
      brushes_(new QButtonGroup(this)) {
  charts_->setAccessibleName(tr("Chart"));
  charts_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  charts_->setMinimumContentsLength(10);
  auto* head = new QHBoxLayout;
  head->setContentsMargins(scaled(this, 8), scaled(this, 6), scaled(this, 8), scaled(this, 6));
  head->setSpacing(scaled(this, 4));
  head->addWidget(charts_, 1);
  auto* switches = new QHBoxLayout;
  switches->setSpacing(0);
  switch_button(tr("&Colour"), looks_, static_cast<int>(ChartLook::colour), switches)->setChecked(true);
  switch_button(tr("L&ightness"), looks_, static_cast<int>(ChartLook::lightness), switches);
  switch_button(tr("&Letters"), looks_, static_cast<int>(ChartLook::letters), switches);
  head->addLayout(switches);
  more_->setText(tr("Edit"));
  more_->setAccessibleName(tr("Edit the chart"));
  more_->setPopupMode(QToolButton::InstantPopup);
  more_->setFocusPolicy(Qt::TabFocus);
  more_->setMenu(menu_);
  head->addWidget(more_);
  auto* body = new QVBoxLayout(body_);
  body->setContentsMargins(0, 0, 0, 0);
  body->setSpacing(0);
  body->addWidget(grid_, 1);
  palette_row_->setContentsMargins(scaled(this, 8), scaled(this, 4), scaled(this, 8), scaled(this, 4));
  palette_row_->setSpacing(scaled(this, 2));
  body->addLayout(palette_row_);
  stack_->addWidget(body_);
  stack_->addWidget(empty_);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addLayout(head);
  layout->addLayout(stack_, 1);

  brushes_->setExclusive(false);
  connect(charts_, &ChoiceField::chosen, this, [this](std::uint32_t chart) {
    show_chart(ChartId{chart});
    emit chart_chosen(chart);
  });
  connect(looks_, &QButtonGroup::idClicked, this,
          [this](int look) { set_look(static_cast<ChartLook>(look)); });
  connect(grid_, &ChartGrid::says, this, &ChartPane::says);
  connect(&open_, &OpenPattern::changed, this, &ChartPane::follow);
  make_menu();
  make_empty();
  follow();
}

// Without a chart the ways to one stand where its squares will be.
void ChartPane::make_empty() {
  auto* layout = new QVBoxLayout(empty_);
  const int inset = scaled(this, 12);
  layout->setContentsMargins(inset, inset, inset, inset);
  auto* words = new QLabel(tr("No chart yet: a section of coloured knitting repeats one."));
  words->setWordWrap(true);
  layout->addWidget(words);
  const auto way = [this, layout](const QString& text, auto&& act) {
    auto* button = new QPushButton(text);
    button->setAutoDefault(false);
    connect(button, &QPushButton::clicked, this, act);
    layout->addWidget(button, 0, Qt::AlignLeft);
  };
  way(tr("New chart…"), [this] { ask_new_chart(); });
  way(tr("Chart from text…"), [this] { import_text({}); });
  way(tr("Import a picture…"), [this] { ask_picture(); });
  layout->addStretch(1);
}

void ChartPane::ask_picture() {
  ask_file(tr("Import a chart as a picture"), tr("Pictures (*.png);;All files (*)"));
}

void ChartPane::make_menu() {
  const auto add = [this](const QString& text, auto&& press, const QKeySequence& keys = {}) {
    QAction* action = menu_->addAction(text, this, press);
    action->setShortcut(keys);
    action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    addAction(action);
  };
  add(tr("&New chart…"), [this] { ask_new_chart(); });
  add(tr("Chart from &text…"), [this] { import_text({}); });
  add(tr("Import a te&xt file…"),
      [this] { ask_file(tr("Import a chart as text"), tr("Text (*.txt *.csv *.tsv);;All files (*)")); });
  add(tr("Import a &picture…"),
      [this] { ask_file(tr("Import a chart as a picture"), tr("Pictures (*.png);;All files (*)")); });
  menu_->addSeparator();
  add(tr("Col&ours…"), [this] { ask_colours(); });
  add(tr("R&ename…"), [this] { ask_name(); });
  add(tr("&Duplicate"), [this] { duplicate_chart(); });
  add(tr("Delete chart"), [this] { delete_chart(); });
  menu_->addSeparator();
  add(
      tr("&Repeat the selection"), [this] { grid_->repeat_selection(); }, QKeySequence(Qt::CTRL | Qt::Key_R));
  add(
      tr("Insert a round &above"), [this] { grid_->insert_round(true); }, QKeySequence(Qt::Key_Insert));
  add(
      tr("Insert a round &below"), [this] { grid_->insert_round(false); },
      QKeySequence(Qt::SHIFT | Qt::Key_Insert));
  add(tr("Insert a stitch at the &left"), [this] { grid_->insert_stitch(true); });
  add(tr("Insert a stitch at the ri&ght"), [this] { grid_->insert_stitch(false); });
  add(
      tr("Delete the chosen ro&unds"), [this] { grid_->delete_rounds(); },
      QKeySequence(Qt::CTRL | Qt::Key_Delete));
  add(tr("Delete the chosen &stitches"), [this] { grid_->delete_stitches(); });
  menu_->addSeparator();
  add(tr("&Mirror left for right"),
      [this] { edit_chart(tr("mirror the chart"), [](Chart chart) { return mirrored(std::move(chart)); }); });
  add(tr("Upside do&wn"), [this] {
    edit_chart(tr("turn the chart upside down"), [](Chart chart) { return upside_down(std::move(chart)); });
  });
  QAction* flat = menu_->addAction(tr("Worked &flat: a repeat does not close on itself"));
  flat->setCheckable(true);
  connect(flat, &QAction::triggered, this, [this](bool on) {
    edit_chart(on ? tr("chart worked flat") : tr("chart worked in the round"), [on](Chart chart) {
      chart.worked = on ? Worked::flat : Worked::in_the_round;
      return chart;
    });
  });
  connect(menu_, &QMenu::aboutToShow, this, [this, flat] {
    const Chart* chart = open_.pattern().chart(id_);
    flat->setChecked(chart != nullptr && chart->worked == Worked::flat);
    for (QAction* action : menu_->actions().mid(4)) action->setEnabled(chart != nullptr);
  });
}

ChartId ChartPane::chart_id() const { return id_; }

bool ChartPane::show_chart(ChartId chart) {
  if (open_.pattern().chart(chart) == nullptr) return false;
  if (id_ != chart) choose_brush(std::nullopt);
  id_ = chart;
  follow();
  return true;
}

void ChartPane::set_fabric(FabricId id) {
  fabric_ = id;
  const Fabric* fabric = open_.pattern().fabric(id);
  const auto width = fabric != nullptr ? stitch_width(fabric->gauge) : failure(ErrorKind::not_found, {}, {});
  const auto height = fabric != nullptr ? row_height(fabric->gauge) : failure(ErrorKind::not_found, {}, {});
  constexpr double usual = 14.0 / 16.0;
  grid_->set_stitch_shape(width && height ? height->value() / width->value() : usual);
}

void ChartPane::set_look(ChartLook look) {
  looks_->button(static_cast<int>(look))->setChecked(true);
  grid_->set_look(look);
}

void ChartPane::follow() {
  const Pattern& pattern = open_.pattern();
  if (pattern.chart(id_) == nullptr) id_ = pattern.charts.empty() ? ChartId{} : pattern.charts.front().id;
  std::vector<Choice> choices;
  for (const Chart& chart : pattern.charts) {
    const std::size_t width = chart.rounds->empty() ? 0 : chart.rounds->front().size();
    choices.push_back(
        {tr("%1, %2 × %3").arg(text_of(chart.name)).arg(width).arg(chart.rounds->size()), chart.id.value});
  }
  charts_->set_choices(choices);
  charts_->show_choice(id_.value);
  charts_->setEnabled(!choices.empty());
  for (QAbstractButton* look : looks_->buttons()) look->setEnabled(!choices.empty());
  stack_->setCurrentWidget(choices.empty() ? empty_ : body_);
  grid_->show_chart(id_);
  set_fabric(fabric_);
  fill_palette();
}

void ChartPane::fill_palette() {
  const Pattern& pattern = open_.pattern();
  const Chart* chart = pattern.chart(id_);
  const Ink ink = ink_of(palette());
  QString shape = QString::number(id_.value) + ink.base.name();
  if (chart != nullptr)
    for (const ChartColour& colour : chart->colours)
      shape += text_of(colour.symbol) + role_words(pattern, colour.role) +
               role_fill(pattern, colour.role, ink).name();
  if (shape == palette_shape_) return;
  palette_shape_ = shape;
  while (QLayoutItem* item = palette_row_->takeAt(0)) {
    if (item->widget() != nullptr) item->widget()->deleteLater();
    delete item;
  }
  if (chart == nullptr) return;
  constexpr std::size_t most_with_names = 5;
  const auto brush_button = [&](char symbol, const QString& text, const QColor& fill) {
    auto* button = switch_button(text, brushes_, symbol, palette_row_);
    const QString words = symbol_words(pattern, *chart, symbol);
    button->setIcon(chip_picture(fill, fill, ink, scaled(this, 12), devicePixelRatioF()));
    button->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    button->setAutoRaise(true);
    button->setToolTip(tr("Paint %1 with the mouse; again to select").arg(words));
    button->setAccessibleName(tr("Paint %1").arg(words));
    button->setChecked(grid_->squares()->brush() == symbol);
    connect(button, &QToolButton::clicked, this,
            [this, symbol](bool on) { choose_brush(on ? std::optional(symbol) : std::nullopt); });
  };
  for (const ChartColour& colour : chart->colours) {
    if (colour.symbol.size() != 1) continue;
    const QString label = role_words(pattern, colour.role);
    const bool named = chart->colours.size() <= most_with_names && !label.isEmpty();
    brush_button(colour.symbol.front(),
                 named ? text_of(colour.symbol) + QLatin1Char(' ') + label : text_of(colour.symbol),
                 role_fill(pattern, colour.role, ink));
  }
  brush_button(no_stitch, QStringLiteral("–"), ink.base);
  palette_row_->addStretch(1);
}

void ChartPane::choose_brush(std::optional<char> brush) {
  grid_->set_brush(brush);
  for (QAbstractButton* button : brushes_->buttons())
    button->setChecked(brush && brushes_->id(button) == *brush);
}

void ChartPane::edit_chart(const QString& label, const std::function<Expected<Chart>(Chart)>& change) {
  const Chart* chart = open_.pattern().chart(id_);
  if (chart == nullptr) return;
  const Expected<Chart> changed = change(*chart);
  if (!changed) return void(emit says(sentence_of(changed.error())));
  open_.apply(label, [&](Pattern& pattern) { *find_chart(pattern, id_) = *changed; });
}

QString ChartPane::free_name() const {
  const auto& charts = open_.pattern().charts;
  return charts.empty() ? tr("chart") : tr("chart %1").arg(charts.size() + 1);
}

void ChartPane::add_chart(const QString& name, int width, int rounds) {
  ChartId id;
  open_.apply(tr("add chart %1").arg(name), [&](Pattern& pattern) {
    id = skeinproof::add_chart(pattern, name.toStdString(), static_cast<std::size_t>(width),
                               static_cast<std::size_t>(rounds));
  });
  if (show_chart(id)) emit chart_chosen(id.value);
  grid_->setFocus();
}

void ChartPane::rename_chart(const QString& name) {
  open_.apply(tr("name of chart %1").arg(name), [&](Pattern& pattern) {
    if (Chart* chart = find_chart(pattern, id_)) chart->name = name.toStdString();
  });
}

void ChartPane::duplicate_chart() {
  ChartId id;
  open_.apply(tr("duplicate the chart"),
              [&](Pattern& pattern) { id = skeinproof::duplicate_chart(pattern, id_); });
  if (show_chart(id)) emit chart_chosen(id.value);
}

void ChartPane::delete_chart() {
  const Chart* chart = open_.pattern().chart(id_);
  if (chart == nullptr) return;
  open_.apply(tr("delete chart %1").arg(text_of(chart->name)),
              [&](Pattern& pattern) { erase_chart(pattern, id_); });
  emit chart_chosen(id_.value);
}

void ChartPane::ask_new_chart() {
  auto* ask = new NewChartDialog(free_name(), this);
  connect(ask, &QDialog::accepted, this,
          [this, ask] { add_chart(ask->name(), ask->width_in_stitches(), ask->rounds()); });
  ask->open();
}

void ChartPane::ask_name() {
  const Chart* chart = open_.pattern().chart(id_);
  if (chart == nullptr) return;
  auto* ask = new NameDialog(tr("Name of the chart"), text_of(chart->name), this);
  connect(ask, &QDialog::accepted, this, [this, ask] { rename_chart(ask->name()); });
  ask->open();
}

void ChartPane::ask_colours() {
  if (open_.pattern().chart(id_) != nullptr) (new ChartColoursDialog(open_, id_, this))->open();
}

void ChartPane::ask_file(const QString& title, const QString& filter) {
  auto* ask = new QFileDialog(this, title, {}, filter);
  ask->setAttribute(Qt::WA_DeleteOnClose);
  ask->setFileMode(QFileDialog::ExistingFile);
  connect(ask, &QFileDialog::fileSelected, this, &ChartPane::import_file);
  ask->open();
}

ChartImport* ChartPane::import_text(const QString& text) {
  auto* import = new ChartImport(open_, free_name(), text, this);
  take_import(import);
  return import;
}

ChartImport* ChartPane::import_file(const QString& path) {
  QFile file(path);
  const QString name = QFileInfo(path).fileName();
  if (!file.open(QIODevice::ReadOnly) || file.size() > largest_file) {
    emit says(tr("%1 could not be read: %2")
                  .arg(name, file.isOpen() ? tr("it is too large for a chart") : file.errorString()));
    return nullptr;
  }
  const QByteArray bytes = file.readAll();
  if (!bytes.startsWith("\x89PNG")) {
    auto* import = new ChartImport(open_, QFileInfo(path).completeBaseName(), QString::fromUtf8(bytes), this);
    take_import(import);
    return import;
  }
  const auto* first_byte = reinterpret_cast<const std::byte*>(bytes.constData());
  auto picture = read_chart_picture({first_byte, static_cast<std::size_t>(bytes.size())}, {find_block_size});
  if (!picture) {
    emit says(tr("%1: %2").arg(name, sentence_of(picture.error())));
    return nullptr;
  }
  auto* import = new ChartImport(open_, QFileInfo(path).completeBaseName(), std::move(*picture), this);
  take_import(import);
  return import;
}

void ChartPane::take_import(ChartImport* import) {
  connect(import, &QDialog::accepted, this, [this, import] {
    if (!import->chart()) return;
    ChartId id;
    const auto refused =
        open_.apply(tr("add chart %1").arg(text_of(import->chart()->name)), [&](Pattern& pattern) {
          Chart chart = *import->chart();
          id = chart.id = take_id<ChartId>(pattern);
          pattern.charts.push_back(std::move(chart));
        });
    if (refused) return void(emit says(sentence_of(*refused)));
    if (show_chart(id)) emit chart_chosen(id.value);
  });
  import->open();
}

void ChartPane::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
    palette_shape_.clear();
    fill_palette();
  }
}

}  // namespace skeinproof
