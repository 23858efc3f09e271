// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/quantities/quantities_page.h"

#include <QButtonGroup>
#include <QCheckBox>
#include <QEvent>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QShortcut>
#include <QSplitter>
#include <QStackedWidget>
#include <QTabWidget>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/pages/quantities/chart_data.h"
#include "app/pages/quantities/choices_panel.h"
#include "app/pages/quantities/evidence_table.h"
#include "app/widgets/flow_layout.h"
#include "app/pages/quantities/need_grid.h"
#include "app/pages/quantities/need_model.h"
#include "app/pages/quantities/working_pane.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "core/need/layer.h"

namespace skeinproof {
namespace {

constexpr double large_from = 1190;
constexpr double medium_from = 800;
constexpr double pane_width_large = 420;
constexpr double pane_width_medium = 299;

struct LayerButton {
  Layer layer;
  const char* text;
};
constexpr LayerButton layer_buttons[] = {
    {Layer::knitted, QT_TRANSLATE_NOOP("skeinproof::QuantitiesPage", "&Knitted")},
    {Layer::with_swatch, QT_TRANSLATE_NOOP("skeinproof::QuantitiesPage", "with sw&atch")},
    {Layer::planned, QT_TRANSLATE_NOOP("skeinproof::QuantitiesPage", "&planned, with allowance")}};

}  // namespace

QuantitiesPage::QuantitiesPage(OpenPattern& open, QWidget* parent)
    : Page(open, parent),
      model_(new NeedModel(open, this)),
      grid_(new NeedGrid(*model_)),
      layers_(new QButtonGroup(this)),
      choices_button_(new QToolButton),
      choices_(new ChoicesPanel(open)),
      words_(new QCheckBox(tr("te&xt where it differs"))),
      across_(new QSplitter(Qt::Horizontal)),
      down_(new QSplitter(Qt::Vertical)),
      grid_part_(nullptr),
      lower_(new QStackedWidget),
      tabs_(new QTabWidget),
      empty_(new QWidget),
      empty_title_(new QLabel),
      curve_(new NeedCurve),
      by_piece_(new StackedLengths),
      by_role_(new StackedLengths),
      evidence_part_(new QWidget(this)),
      evidence_head_(new PaneHeader(tr("Evidence"))),
      evidence_(new EvidenceTable),
      working_(new WorkingPane) {
  setObjectName(QStringLiteral("quantities"));
  grid_part_ = make_grid_part();
  down_->addWidget(grid_part_);
  down_->addWidget(make_lower_part());
  across_->addWidget(down_);
  for (QSplitter* splitter : {across_, down_}) splitter->setChildrenCollapsible(false);
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(0, 0, 0, 0);
  all->setSpacing(0);
  all->addWidget(make_bar());
  all->addWidget(choices_);
  show_chosen_layer();
  all->addWidget(across_, 1);
  choices_->hide();
  setFocusProxy(grid_);
  connect_parts();
  chosen_size_ = open_.chosen_size_index();
  grid_->setCurrentIndex(model_->index(0, static_cast<int>(chosen_size_)));
  refresh();
}

// The parts go after the page itself and still speak while they are hidden.
QuantitiesPage::~QuantitiesPage() {
  for (QObject* part :
       {static_cast<QObject*>(grid_), static_cast<QObject*>(tabs_), static_cast<QObject*>(working_)})
    part->disconnect(this);
  delete grid_;  // before the model it shows
}

QWidget* QuantitiesPage::make_bar() {
  auto* bar = new QWidget;
  bar->setObjectName(QStringLiteral("page_bar"));
  auto* flow = new FlowLayout(bar);
  flow->addWidget(new QuietLabel(tr("Layer")));
  auto* switch_box = new QWidget;
  auto* switch_row = new QHBoxLayout(switch_box);
  switch_row->setContentsMargins(0, 0, 0, 0);
  switch_row->setSpacing(0);
  layers_->setExclusive(true);
  for (const LayerButton& row : layer_buttons) {
    auto* button = new QToolButton;
    button->setText(tr(row.text));
    button->setCheckable(true);
    button->setChecked(row.layer == Layer::planned);
    button->setFocusPolicy(Qt::StrongFocus);
    layers_->addButton(button, static_cast<int>(row.layer));
    switch_row->addWidget(button);
  }
  flow->addWidget(switch_box);
  choices_button_->setCheckable(true);
  choices_button_->setAutoRaise(true);
  choices_button_->setArrowType(Qt::DownArrow);
  choices_button_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  choices_button_->setFocusPolicy(Qt::StrongFocus);
  choices_button_->setToolTip(tr("Allowance, swatch, rounding and what the needs stand on"));
  flow->addWidget(choices_button_);
  flow->add_stretch();
  words_->setChecked(true);
  words_->setToolTip(tr("The designer's count in quotation marks, where it is not ours"));
  flow->addWidget(words_);
  return bar;
}

QWidget* QuantitiesPage::make_grid_part() {
  auto* part = new QWidget;
  auto* box = new QVBoxLayout(part);
  box->setContentsMargins(0, 0, 0, 0);
  box->setSpacing(0);
  box->addWidget(grid_);
  return part;
}

QWidget* QuantitiesPage::make_lower_part() {
  tabs_->setDocumentMode(true);
  tabs_->addTab(curve_, tr("Need &curve"));
  tabs_->addTab(by_piece_, tr("Lengths by p&iece"));
  tabs_->addTab(by_role_, tr("Lengths by &role"));
  auto* evidence_box = new QVBoxLayout(evidence_part_);
  evidence_box->setContentsMargins(0, 0, 0, 0);
  evidence_box->setSpacing(0);
  evidence_box->addWidget(evidence_head_);
  evidence_box->addWidget(evidence_, 1);

  empty_title_->setWordWrap(true);
  empty_title_->setTextFormat(Qt::PlainText);
  auto* ways = new QHBoxLayout;
  ways->addStretch(1);
  for (const char* page : {QT_TR_NOOP("Pieces"), QT_TR_NOOP("Weighings")}) {
    auto* go = new QPushButton(tr("Go to %1").arg(tr(page)));
    go->setAutoDefault(false);
    connect(go, &QPushButton::clicked, this,
            [this, page] { emit wants_place(QString::fromLatin1(page), 0); });
    ways->addWidget(go);
  }
  ways->addStretch(1);
  auto* empty_box = new QVBoxLayout(empty_);
  empty_box->addStretch(1);
  empty_title_->setAlignment(Qt::AlignCenter);
  empty_box->addWidget(empty_title_);
  empty_box->addLayout(ways);
  empty_box->addStretch(2);

  lower_->addWidget(tabs_);
  lower_->addWidget(empty_);
  return lower_;
}

void QuantitiesPage::connect_parts() {
  connect(&open_, &OpenPattern::changed, this, &QuantitiesPage::refresh);
  connect(&open_, &OpenPattern::reader_changed, this, &QuantitiesPage::refresh);
  connect(layers_, &QButtonGroup::idClicked, this, [this](int id) { choose_layer(static_cast<Layer>(id)); });
  connect(choices_button_, &QToolButton::toggled, this, [this](bool open) {
    choices_->setVisible(open);
    choices_button_->setArrowType(open ? Qt::UpArrow : Qt::DownArrow);
  });
  connect(words_, &QCheckBox::toggled, this, [this](bool shows) {
    model_->set_shows_words(shows);
    show_charts();
  });
  connect(grid_, &NeedGrid::current_moved, this, &QuantitiesPage::current_moved);
  connect(grid_, &NeedGrid::columns_moved, this, &QuantitiesPage::align_charts);
  connect(grid_, &NeedGrid::says, this, &QuantitiesPage::says);
  connect(tabs_, &QTabWidget::currentChanged, this, [this] {
    show_charts();
    align_charts();
  });
  connect(working_, &WorkingPane::says, this, &QuantitiesPage::says);
  connect(working_, &WorkingPane::wants_place, this, &QuantitiesPage::wants_place);
  const auto follow = [this](std::size_t size) {
    grid_->setCurrentIndex(model_->index(std::max(0, grid_->currentIndex().row()), static_cast<int>(size)));
  };
  for (SizeChart* chart : {static_cast<SizeChart*>(curve_), static_cast<SizeChart*>(by_piece_),
                           static_cast<SizeChart*>(by_role_)})
    connect(chart, &SizeChart::size_clicked, this, follow);
  auto* copy = new QShortcut(QKeySequence(QStringLiteral("Ctrl+Shift+C")), this);
  copy->setContext(Qt::WidgetWithChildrenShortcut);
  connect(copy, &QShortcut::activated, working_, &WorkingPane::copy);
}

NeedCellInput QuantitiesPage::input() const {
  return {open_.pattern(), open_.assessment(), model_->layer(), open_.reader(), model_->shows_words()};
}

std::size_t QuantitiesPage::current_role() const {
  const int row = grid_->currentIndex().row();
  return row < 0 || model_->is_total(row) ? 0 : static_cast<std::size_t>(row);
}
std::size_t QuantitiesPage::current_size() const {
  return static_cast<std::size_t>(std::max(0, grid_->currentIndex().column()));
}

const SizeNeed* QuantitiesPage::current_need() const {
  const Assessment& assessment = open_.assessment();
  if (current_role() >= assessment.roles.size() ||
      current_size() >= assessment.roles[current_role()].sizes.size())
    return nullptr;
  return &assessment.roles[current_role()].sizes[current_size()];
}

void QuantitiesPage::choose_layer(Layer layer) {
  if (auto* button = layers_->button(static_cast<int>(layer))) button->setChecked(true);
  show_chosen_layer();
  model_->set_layer(layer);
  show_figure();
  show_charts();
}

// In words as well as in shade: the layer in force is semibold.
void QuantitiesPage::show_chosen_layer() {
  for (QAbstractButton* button : layers_->buttons()) {
    QFont font = layers_->button(0)->parentWidget()->font();
    if (button->isChecked()) font.setWeight(QFont::DemiBold);
    button->setFont(font);
  }
}

void QuantitiesPage::current_moved(int row, int column) {
  (void)row;
  if (static_cast<std::size_t>(column) != open_.chosen_size_index()) {
    chosen_size_ = static_cast<std::size_t>(column);
    open_.choose_size(chosen_size_);  // comes back through refresh
  } else {
    show_figure();
    show_charts();
  }
  say_cell();
}

void QuantitiesPage::refresh() {
  const QModelIndex before = grid_->currentIndex();
  const int row_before = std::max(0, before.row());
  model_->refresh();
  chosen_size_ = open_.chosen_size_index();
  const int row = std::clamp(row_before, 0, model_->rowCount() - 1);
  const QModelIndex wanted = model_->index(row, static_cast<int>(chosen_size_));
  if (wanted != grid_->currentIndex()) {
    const QSignalBlocker quiet(grid_);
    grid_->setCurrentIndex(wanted);
  }
  choices_button_->setText(ChoicesPanel::summary(open_));
  show_figure();
  show_charts();
  show_empty_state();
  share_height();
  if (const QString now = attention(); now != attention_) {
    attention_ = now;
    emit attention_changed();
  }
}

void QuantitiesPage::show_figure() {
  const Pattern& pattern = open_.pattern();
  evidence_head_->set_note({});
  if (pattern.roles.empty()) {
    working_->show_nothing(tr("Working"), tr("No colours yet."));
    evidence_->show_evidence({});
    return;
  }
  const Role& role = pattern.roles[current_role()];
  const QString what = tr("%1, size %2, %3")
                           .arg(role_title(role), QString::fromStdString(pattern.sizes[current_size()].label),
                                layer_word(model_->layer()));
  const SizeNeed* need = current_need();
  const auto layer = need ? layer_need(pattern, role.id, *need, model_->layer()) : std::nullopt;
  if (!layer) {
    working_->show_nothing(tr("Working of %1").arg(what),
                           need ? as_sentence(need->missing) : tr("Not worked out."));
    show_evidence();
    return;
  }
  const ReaderStyle& reader = open_.reader();
  WorkingPane::Answer answer;
  answer.title = tr("Working of %1").arg(what);
  const QString length = length_figure(layer->length, reader) + QLatin1Char(' ') + length_unit(reader);
  if (layer->skeins) {
    answer.answer = *layer->skeins == 1 ? tr("1 skein") : tr("%1 skeins").arg(*layer->skeins);
    const bool enough = *layer->left_over >= metres(0);
    answer.beside = (enough ? tr("%1 of %2; %3 left over") : tr("%1 of %2; %3 short"))
                        .arg(length, length_figure(*layer->bought, reader),
                             length_figure(enough ? *layer->left_over : -*layer->left_over, reader) +
                                 QLatin1Char(' ') + length_unit(reader));
  } else {
    answer.answer = length;
    answer.beside = tr("skeins are not counted: the put-up has no length");
  }
  if (need->high > need->low && model_->layer() == Layer::planned)
    answer.range =
        tr("9 in 10: %1 to %2 %3")
            .arg(length_figure(need->low, reader), length_figure(need->high, reader), length_unit(reader));
  if (model_->layer() == Layer::planned) answer.range += chance_words();
  working_->show_working(answer, explain(pattern, role.id, current_size(), model_->layer(), reader.numbers),
                         reader);
  show_evidence();
}

// Only the chart that is seen is worked out; the others follow when their tab is opened.
void QuantitiesPage::show_charts() {
  const QWidget* seen = tabs_->currentWidget();
  if (seen == curve_) curve_->show_need(need_curve_data(input(), current_role(), current_size()));
  if (seen == by_piece_) by_piece_->show_stack(by_piece_data(input(), current_role(), current_size()));
  if (seen == by_role_) by_role_->show_stack(by_role_data(input(), current_size()));
}

void QuantitiesPage::show_empty_state() {
  const bool empty = !model_->any_known();
  grid_->set_is_empty(empty);
  lower_->setCurrentWidget(empty ? empty_ : static_cast<QWidget*>(tabs_));
  evidence_part_->setVisible(!empty);
  if (!empty) return;
  const SizeNeed* need = current_need();
  if (open_.pattern().roles.empty())
    empty_title_->setText(
        tr("No need yet: name the colours of the pattern on Yarns, then add a piece or weigh the sample."));
  else if (open_.pattern().pieces.empty() && open_.pattern().weighings.empty())
    empty_title_->setText(tr("No need yet: add a piece, or weigh the sample."));
  else
    empty_title_->setText(tr("No need yet. %1").arg(need ? as_sentence(need->missing) : QString()));
}

void QuantitiesPage::say_cell() {
  const QModelIndex at = grid_->currentIndex();
  if (!at.isValid()) return;
  const NeedCell& cell = model_->cell(at.row(), at.column());
  emit says(cell.reason.isEmpty() ? cell.spoken : cell.reason);
}

void QuantitiesPage::align_charts() {
  for (SizeChart* chart : {static_cast<SizeChart*>(curve_), static_cast<SizeChart*>(by_piece_),
                           static_cast<SizeChart*>(by_role_)}) {
    ChartColumns columns = grid_->columns();
    columns.left += grid_->mapTo(this, QPoint()).x() - chart->mapTo(this, QPoint()).x();
    chart->set_columns(columns);
  }
}

void QuantitiesPage::arrange() {
  const double unit = scaled(this, 100) / 100.0;
  const double room = width() / unit;
  const Arrangement wanted = room >= large_from    ? Arrangement::large
                             : room >= medium_from ? Arrangement::medium
                                                   : Arrangement::small;
  if (wanted == arrangement_) return;
  arrangement_ = wanted;
  const int open_tab = tabs_->currentIndex();
  if (wanted == Arrangement::large) {
    evidence_head_->show();
    down_->addWidget(evidence_part_);
  } else {
    tabs_->addTab(evidence_part_, tr("Evi&dence"));
  }
  if (wanted == Arrangement::small)
    tabs_->addTab(working_, tr("&Working"));
  else
    across_->addWidget(working_);
  working_->show();
  evidence_part_->setVisible(wanted != Arrangement::large || model_->any_known());
  tabs_->setCurrentIndex(std::clamp(open_tab, 0, tabs_->count() - 1));
  if (wanted != Arrangement::small) {
    // What the grid cannot use, the working takes; another pattern may have more sizes than this one.
    const int grid = grid_->verticalHeader()->width() + grid_->frameWidth() * 2 +
                     scaled(this, NeedGrid::most_cell_width) * std::max(9, model_->columnCount());
    const int least =
        static_cast<int>((wanted == Arrangement::large ? pane_width_large : pane_width_medium) * unit);
    const int pane = std::max(least, width() - grid);
    across_->setSizes({width() - pane, pane});
    across_->setStretchFactor(0, 0);
    across_->setStretchFactor(1, 1);
  }
  share_height();
}

void QuantitiesPage::share_height() {
  const int height = down_->height();
  if (height < 50) return;
  const int unit100 = scaled(this, 100);
  const int all_rows = grid_->height_of_all_rows();
  const bool stands_below = arrangement_ == Arrangement::large && !evidence_part_->isHidden();
  evidence_->setMinimumHeight(stands_below ? evidence_->sizeHint().height() : 0);
  const int evidence = stands_below ? evidence_part_->minimumSizeHint().height() : 0;
  // Roles first, but the curve stays readable and three roles show, two where the window is small for its
  // text.
  const int least = std::min(all_rows, unit100 * (arrangement_ == Arrangement::small ? 170 : 236) / 100);
  const int grid = std::clamp(height - evidence - 2 * unit100, least, all_rows);
  grid_part_->setMinimumHeight(least);
  grid_part_->setMaximumHeight(all_rows);
  const int handles = down_->handleWidth() * (down_->count() - 1);
  QList<int> sizes{grid, std::max(50, height - grid - evidence - handles)};
  if (down_->count() > 2) sizes << evidence;
  down_->setSizes(sizes);
}

void QuantitiesPage::resizeEvent(QResizeEvent* event) {
  Page::resizeEvent(event);
  arrange();
  share_height();
  align_charts();
}

void QuantitiesPage::showEvent(QShowEvent* event) {
  Page::showEvent(event);
  arrange();
  share_height();
  align_charts();
}

void QuantitiesPage::changeEvent(QEvent* event) {
  Page::changeEvent(event);
  if (event->type() != QEvent::FontChange) return;
  show_chosen_layer();
  arrange();
  share_height();
}

void QuantitiesPage::enter() { grid_->setFocus(); }

QString QuantitiesPage::attention() const {
  if (open_.pattern().roles.empty()) return {};
  for (int row = 0; row + 1 < model_->rowCount(); ++row)
    for (int column = 0; column < model_->columnCount(); ++column)
      if (!model_->cell(row, column).known) return tr("not checked");
  return {};
}

bool QuantitiesPage::go_to(std::uint32_t part) {
  const Pattern& pattern = open_.pattern();
  for (std::size_t row = 0; row < pattern.roles.size(); ++row)
    if (pattern.roles[row].id.value == part) {
      grid_->setCurrentIndex(model_->index(static_cast<int>(row), static_cast<int>(current_size())));
      return true;
    }
  if (const auto size = pattern.size_index(SizeId{part}); size && part != 0) {
    grid_->setCurrentIndex(model_->index(std::max(0, grid_->currentIndex().row()), static_cast<int>(*size)));
    return true;
  }
  return false;
}

bool QuantitiesPage::find_next(const QString& words) {
  const int columns = model_->columnCount();
  const int cells = model_->rowCount() * columns;
  if (words.trimmed().isEmpty() || cells == 0) return false;
  const QModelIndex at = grid_->currentIndex();
  const int start = at.isValid() ? at.row() * columns + at.column() : -1;
  for (int step = 1; step <= cells; ++step) {
    const int next = (start + step) % cells;
    if (!model_->cell(next / columns, next % columns).spoken.contains(words, Qt::CaseInsensitive)) continue;
    grid_->setCurrentIndex(model_->index(next / columns, next % columns));
    return true;
  }
  return false;
}

}  // namespace skeinproof
