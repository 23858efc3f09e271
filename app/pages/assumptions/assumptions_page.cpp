// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/assumptions/assumptions_page.h"

#include <QApplication>
#include <QClipboard>
#include <QListView>
#include <QSplitter>
#include <QVBoxLayout>
#include <QtConcurrent>
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/pages/assumptions/constant_moves.h"
#include "app/pages/assumptions/sensitivity_list.h"
#include "app/pages/printed_tables.h"
#include "app/widgets/count_words.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"
#include "core/need/assumptions.h"

namespace skeinproof {
namespace {

constexpr double tried_share = 0.10;
constexpr int value_column_at = 1;

QString words(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}
const Constant& row_of(std::size_t row) { return constants()[row]; }
QString key_of(std::uint32_t part) { return part == 0 ? QString() : words(row_of(part - 1).key); }

PartList constant_list() {
  PartList list;
  list.part = AssumptionsPage::tr("assumption");
  list.count = [](const Pattern&) { return constants().size(); };
  list.key = [](const Pattern&, std::size_t row) { return static_cast<std::uint32_t>(row + 1); };
  list.name = [](const Pattern&, std::size_t row) { return words(row_of(row).name); };
  return list;
}

PartColumn value_column_within(OpenPattern& open, double low, double high) {
  return field_column(
      open, AssumptionsPage::tr("Value"), AssumptionsPage::tr("assumption"),
      QuantityFormat::number(low, high, "number"),
      [](const Pattern& pattern, std::size_t row) -> FieldValue {
        const ConstantOverride* own = own_constant(pattern, row_of(row).key);
        return own != nullptr ? own->value : Entered<double>{row_of(row).value, {}};
      },
      [](Pattern& pattern, std::size_t row, const FieldValue& value) {
        (void)set_constant(pattern, row_of(row).key, value);
      },
      false);
}

// Each constant has limits of its own.
PartColumn value_column(OpenPattern& open) {
  PartColumn column = value_column_within(open, 0, 0);
  column.read = [&open](const QString& typed, std::size_t row) {
    return value_column_within(open, row_of(row).low, row_of(row).high).read(typed, row);
  };
  column.strong = true;
  return column;
}

}  // namespace

AssumptionsPage::AssumptionsPage(OpenPattern& open, QWidget* parent) : Page(open, parent) {
  auto* right = new QSplitter(Qt::Vertical);
  right->addWidget(make_sensitivity_pane());
  right->addWidget(make_figure_pane());
  right->setStretchFactor(0, 1);
  right->setSizes({scaled(this, 400), scaled(this, 300)});
  auto* whole = new QSplitter(Qt::Horizontal);
  whole->addWidget(make_table_pane());
  whole->addWidget(right);
  whole->setStretchFactor(0, 1);
  whole->setSizes({scaled(this, 760), scaled(this, 460)});
  for (QSplitter* splitter : {right, whole}) splitter->setChildrenCollapsible(false);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(whole);
  connect(table_, &PartTable::says, this, &Page::says);
  connect(table_, &PartTable::current_part_changed, this, [this](std::uint32_t part) {
    sensitivity_->choose(key_of(part));
    show_chosen();
  });
  connect(sensitivity_, &SensitivityList::chosen, this, [this](const QString& key) {
    for (std::size_t row = 0; row < constants().size(); ++row)
      if (words(row_of(row).key) == key) table_->set_current_key(static_cast<std::uint32_t>(row + 1));
  });
  connect(&open_, &OpenPattern::changed, this, &AssumptionsPage::refresh);
  connect(&open_, &OpenPattern::reader_changed, this, [this] {
    ranking_state_ = 0;
    refresh();
  });
  connect(&ranking_, &QFutureWatcherBase::finished, this, [this] {
    ranked_ = ranking_.result();
    show_ranking();
    show_chosen();
    rank();
    if (!ranking_.isRunning()) emit ranked();
  });
  table_->refresh(true);
  refresh();
}

QWidget* AssumptionsPage::make_table_pane() {
  PartColumn name = computed_column(tr("Assumption"),
                                    [](const Pattern&, std::size_t row) { return words(row_of(row).name); });
  name.stretch = 3;
  const PartColumn unit =
      computed_column(tr("Unit"), [](const Pattern&, std::size_t row) { return words(row_of(row).unit); });
  PartColumn normal = computed_column(tr("Default"), [this](const Pattern&, std::size_t row) {
    return QString::fromStdString(show_short(row_of(row).value, 4, open_.reader().numbers));
  });
  normal.right = normal.quiet = true;
  PartColumn source = computed_column(
      tr("Source"), [](const Pattern&, std::size_t row) { return words(row_of(row).source); });
  source.stretch = 2;
  source.quiet = true;
  table_ = new PartTable(open_, constant_list(), {name, value_column(open_), unit, normal, source});
  table_->setAccessibleName(tr("Assumptions"));
  table_head_ = new PaneHeader(tr("Assumptions"));
  table_head_->add_button(
      tr("Put the &default back"),
      [this] {
        const Constant* constant = chosen();
        if (constant == nullptr || own_constant(open_.pattern(), constant->key) == nullptr) return;
        open_.apply(tr("default of %1").arg(words(constant->name)), [constant](Pattern& pattern) {
          (void)set_constant(pattern, constant->key, std::nullopt);
        });
      },
      tr("Put the default of the chosen assumption back"));
  return make_pane(table_head_, table_);
}

QWidget* AssumptionsPage::make_figure_pane() {
  figures_ = new FigureList;
  figures_->view()->setAccessibleName(tr("What the chosen assumption moves"));
  figures_->set_empty_words(tr("Choose an assumption to see which needs follow it."));
  figure_head_ = new PaneHeader(tr("What it moves"));
  figure_head_->add_button(
      tr("C&opy"), [this] { QApplication::clipboard()->setText(figures_->as_text()); }, tr("Copy as text"));
  return make_pane(figure_head_, figures_);
}

QWidget* AssumptionsPage::make_sensitivity_pane() {
  sensitivity_ = new SensitivityList;
  sensitivity_head_ = new PaneHeader(tr("What moves most"));
  return make_pane(sensitivity_head_, sensitivity_);
}

QString AssumptionsPage::attention() const { return attention_; }

void AssumptionsPage::enter() {
  table_->setCurrentIndex(table_->model()->index(std::max(0, table_->current_row()), value_column_at));
  table_->setFocus();
}

const Constant* AssumptionsPage::chosen() const {
  const std::uint32_t part = table_->current_key();
  return part == 0 ? nullptr : &row_of(part - 1);
}

void AssumptionsPage::showEvent(QShowEvent* event) {
  Page::showEvent(event);
  refresh();
}

void AssumptionsPage::refresh() {
  const std::size_t own = open_.pattern().constants.size();
  table_head_->set_note(own == 0
                            ? tr("all as they come")
                            : tr("%1 changed for this pattern").arg(count_words(own, tr("is"), tr("are"))));
  const QString attention = own == 0 ? QString() : QString::number(own);
  if (attention != attention_) {
    attention_ = attention;
    emit attention_changed();
  }
  if (!isVisible()) return;
  show_chosen();
  rank();
}

// Each constant asks two whole assessments with their evidence; the window does not wait for them.
void AssumptionsPage::rank() {
  if (ranking_.isRunning() || ranking_state_ == open_.state()) return;
  ranking_state_ = open_.state();
  sensitivity_head_->set_note(tr("working it out …"));
  ranking_.setFuture(QtConcurrent::run(
      [pattern = open_.pattern()] { return rank_constants(AsItStands(pattern), tried_share); }));
}

void AssumptionsPage::show_ranking() {
  sensitivity_head_->set_note(ranked_.empty() ? tr("nothing moves: no need is known yet")
                                              : tr("each a tenth smaller and greater"));
  sensitivity_->show_rows(sensitivity_rows(ranked_, open_.reader()));
  sensitivity_->choose(key_of(table_->current_key()));
}

void AssumptionsPage::show_chosen() {
  const Constant* constant = chosen();
  figure_head_->set_note(constant == nullptr ? QString() : words(constant->name));
  if (constant == nullptr) return figures_->set_rows({});
  const bool up_to_date = !ranking_.isRunning() && ranking_state_ == open_.state();
  const auto found = std::find_if(ranked_.begin(), ranked_.end(),
                                  [&](const Sensitivity& one) { return one.constant == constant; });
  if (up_to_date && found != ranked_.end())
    return figures_->set_rows(constant_moves(open_.pattern(), *found, open_.reader()));
  std::vector<FigureRow> rows = constant_rows(open_.pattern(), *constant, open_.reader());
  FigureRow last;
  last.name = up_to_date ? tr("Nothing moves") : tr("Working it out …");
  rows.push_back(last);
  figures_->set_rows(std::move(rows));
}

bool AssumptionsPage::find_next(const QString& text) {
  std::vector<FindPlace> places;
  for (std::size_t row = 0; row < constants().size(); ++row)
    places.push_back({words(row_of(row).name) + QLatin1Char('\n') + words(row_of(row).source),
                      [this, row] { table_->set_current_key(static_cast<std::uint32_t>(row + 1)); }});
  return finder_.find_next(places, text);
}

std::optional<Sheet> AssumptionsPage::sheet() const {
  Sheet sheet;
  sheet.title = open_.pattern().title;
  sheet.subtitle = tr("Assumptions").toStdString();
  sheet.numbers = open_.reader().numbers;
  sheet.parts.emplace_back(printed_table(QString(), *table_->part_model()));
  std::vector<std::pair<QString, QString>> moves;
  for (const SensitivityRow& row : sensitivity_->sensitivity()->rows())
    moves.emplace_back(row.name, row.words());
  if (!moves.empty())
    sheet.parts.emplace_back(printed_table(tr("What moves most, each a tenth smaller and greater"), moves));
  return sheet;
}

}  // namespace skeinproof
