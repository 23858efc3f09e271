// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/census_pane.h"

#include <QApplication>
#include <QClipboard>
#include <QEvent>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScrollBar>
#include <QStandardItemModel>
#include <QTableView>
#include <QVBoxLayout>
#include <cmath>

#include "app/document/open_pattern.h"
#include "app/pages/pieces/piece_words.h"
#include "app/pages/pieces/share_picture.h"
#include "app/widgets/chart_inks.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/quantity_text.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

QTableView* quiet_table(QStandardItemModel* model, const QString& name) {
  auto* table = new QTableView;
  table->setModel(model);
  table->setAccessibleName(name);
  table->setFrameShape(QFrame::NoFrame);
  table->setShowGrid(false);
  table->setEditTriggers(QAbstractItemView::NoEditTriggers);
  table->setSelectionBehavior(QAbstractItemView::SelectRows);
  table->setTabKeyNavigation(false);
  table->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  table->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  table->verticalHeader()->hide();
  table->horizontalHeader()->setHighlightSections(false);
  table->horizontalHeader()->setSectionsClickable(false);
  return table;
}

void fit_table(QTableView* table) {
  QHeaderView* columns = table->horizontalHeader();
  columns->setSectionResizeMode(QHeaderView::ResizeToContents);
  columns->setSectionResizeMode(0, QHeaderView::Stretch);
  table->verticalHeader()->setDefaultSectionSize(scaled(table, 25));
  table->setFixedHeight(columns->sizeHint().height() + table->model()->rowCount() * scaled(table, 25) + 2);
}

QStandardItem* words_item(const QString& text, const QPixmap& chip = {}) {
  auto* item = new QStandardItem(text);
  item->setEditable(false);
  if (!chip.isNull()) item->setData(chip, Qt::DecorationRole);
  return item;
}

QStandardItem* figure_item(const QString& text, bool strong = false) {
  auto* item = words_item(text);
  item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
  if (strong) {
    QFont font;
    font.setWeight(QFont::DemiBold);
    item->setData(font, Qt::FontRole);
  }
  return item;
}

void set_heads(QStandardItemModel* model, const QStringList& heads) {
  model->setHorizontalHeaderLabels(heads);
  for (int i = 0; i < heads.size(); ++i)
    model->horizontalHeaderItem(i)->setTextAlignment((i == 0 ? Qt::AlignLeft : Qt::AlignRight) |
                                                     Qt::AlignVCenter);
}

QLabel* sentence(QVBoxLayout* layout, bool quiet) {
  QLabel* label = quiet ? new QuietLabel : new QLabel;
  label->setWordWrap(true);
  label->setTextFormat(Qt::PlainText);
  label->setTextInteractionFlags(Qt::TextSelectableByMouse);
  label->setContentsMargins(12, 2, 12, 2);
  layout->addWidget(label);
  return label;
}

void say(QLabel* label, const QString& words) {
  label->setText(words);
  label->setVisible(!words.isEmpty());
}

constexpr double yarn_differs = 0.10;  // from here on the yarn share is set in semibold

}  // namespace

CensusPane::CensusPane(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      colours_model_(new QStandardItemModel(this)),
      touches_model_(new QStandardItemModel(this)) {
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  auto* head = new PaneHeader(tr("Census"));
  head->set_note(tr("follows every stroke"));
  head->add_button(
      tr("C&opy"),
      [this] {
        QApplication::clipboard()->setText(text());
        emit says(tr("The census is on the clipboard."));
      },
      tr("Copy the census as text"));
  layout->addWidget(head);
  empty_ = new QLabel(tr("No chart: nothing to count."));
  empty_->setMargin(scaled(this, 12));
  empty_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  layout->addWidget(empty_, 1);
  auto* scroll = new QScrollArea;
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidgetResizable(true);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  body_ = scroll;
  auto* inside = new QWidget;
  inside->setBackgroundRole(QPalette::Base);
  inside->setAutoFillBackground(true);
  auto* body = new QVBoxLayout(inside);
  body->setContentsMargins(0, 0, 0, 0);
  body->setSpacing(0);
  scroll->setWidget(inside);
  layout->addWidget(scroll, 1);

  body->addWidget(repeat_head_ = new PaneHeader(tr("Per repeat")));
  body->addWidget(colours_ =
                      quiet_table(colours_model_, tr("Stitches and yarn of every colour, one repeat")));
  missing_ = sentence(body, true);
  auto* share_head = new PaneHeader(tr("Share of stitches, share of yarn"));
  share_head->set_note(tr("○ stitches  ● yarn"));
  body->addWidget(share_head);
  auto* shares = new QVBoxLayout;
  shares->setContentsMargins(scaled(this, 12), scaled(this, 4), scaled(this, 12), scaled(this, 4));
  shares->addWidget(shares_ = new SharePicture);
  body->addLayout(shares);
  body->addWidget(touch_head_ = new PaneHeader(tr("Where colours touch")));
  body->addWidget(touches_ = quiet_table(touches_model_, tr("Where two colours touch")));
  body->addWidget(round_head_ = new PaneHeader(tr("Round")));
  note_ = sentence(body, false);
  working_ = sentence(body, true);
  caution_ = sentence(body, false);
  body->addStretch(1);
  connect(&open_, &OpenPattern::reader_changed, this, &CensusPane::fill);
  fill();
}

void CensusPane::show_chart(const Chart* chart, const ChartCensus& census, FabricId fabric) {
  chart_ = chart != nullptr ? std::optional(*chart) : std::nullopt;
  census_ = census;
  fabric_ = fabric;
  fill();
}

void CensusPane::fill() {
  body_->setVisible(chart_.has_value());
  empty_->setVisible(!chart_);
  if (!chart_) return;
  const ReaderStyle& reader = open_.reader();
  facts_ = chart_facts(open_.pattern(), *chart_, census_, fabric_);
  repeat_head_->set_note(tr("%1 sts in %2 rounds").arg(census_.stitches).arg(chart_->rounds->size()));
  touch_head_->set_note(tr("%1 colour edges a repeat").arg(census_.neighbour_edges + census_.stacked_edges));
  fill_colours();
  fill_touches();
  std::vector<SharePicture::Row> rows;
  for (const ChartFacts::Colour& colour : facts_.colours) {
    if (!colour.share_of_yarn) continue;
    const double ratio = colour.share_of_stitches > 0 ? *colour.share_of_yarn / colour.share_of_stitches : 1;
    rows.push_back({colour.label, colour.share_of_stitches, *colour.share_of_yarn,
                    tr("%1 → %2 %")
                        .arg(percent_text(colour.share_of_stitches, reader),
                             percent_text(*colour.share_of_yarn, reader)),
                    std::abs(ratio - 1) >= yarn_differs});
  }
  shares_->show_rows(std::move(rows));
  say(missing_, facts_.missing.isEmpty() && !facts_.fabric.isEmpty() ? QString() : facts_.missing);
  say(caution_, float_caution(open_.pattern(), census_));
  show_round(round_);
}

void CensusPane::fill_colours() {
  const Ink ink = ink_of(palette());
  const ReaderStyle& reader = open_.reader();
  const QString unit = unit_of(QuantityFormat::yarn_length(), reader);
  colours_model_->clear();
  set_heads(colours_model_,
            {tr("Colour"), tr("worked"), tr("passed"), tr("entries"), tr("%1 a repeat").arg(unit)});
  long passed = 0, entries = 0;
  std::optional<double> metres = 0;
  for (const ChartFacts::Colour& colour : facts_.colours) {
    const QColor fill = role_fill(open_.pattern(), colour.role, ink);
    const QString label = QString(QLatin1Char(colour.symbol)) + QStringLiteral("  ") + colour.label;
    colours_model_->appendRow(
        {words_item(label, chip_picture(fill, fill, ink, scaled(this, 12), devicePixelRatioF())),
         figure_item(QString::number(colour.worked)), figure_item(QString::number(colour.passed)),
         figure_item(QString::number(colour.entries)),
         figure_item(colour.metres ? repeat_length_text(*colour.metres, reader) : QStringLiteral("–"),
                     true)});
    passed += colour.passed;
    entries += colour.entries;
    metres = metres && colour.metres ? std::optional(*metres + *colour.metres) : std::nullopt;
  }
  colours_model_->appendRow(
      {words_item(tr("All")), figure_item(QString::number(census_.stitches)),
       figure_item(QString::number(passed)), figure_item(QString::number(entries)),
       figure_item(metres ? repeat_length_text(*metres, reader) : QStringLiteral("–"))});
  fit_table(colours_);
}

void CensusPane::fill_touches() {
  const Ink ink = ink_of(palette());
  const ReaderStyle& reader = open_.reader();
  const auto inks = square_inks(open_.pattern(), *chart_, ChartLook::colour, ink);
  touches_model_->clear();
  set_heads(touches_model_, {tr("Pair"), tr("edges"), tr("share"), tr("ΔL*")});
  for (const ChartFacts::Touch& touch : facts_.touches) {
    const auto fill = [&](char symbol) { return inks.count(symbol) != 0 ? inks.at(symbol).fill : ink.base; };
    const QString difference =
        touch.lightness_difference
            ? QString::fromStdString(show_number(*touch.lightness_difference, 0, reader.numbers))
            : QStringLiteral("–");
    touches_model_->appendRow(
        {words_item(touch.words, chip_picture(fill(touch.first), fill(touch.second), ink, scaled(this, 12),
                                              devicePixelRatioF())),
         figure_item(QString::number(touch.edges)),
         figure_item(percent_text(touch.share, reader) + QStringLiteral(" %")), figure_item(difference)});
  }
  fit_table(touches_);
}

void CensusPane::show_round(std::size_t round) {
  round_ = round;
  if (!chart_) return;
  const RoundFacts said = round_facts(open_.pattern(), *chart_, facts_, round, open_.reader());
  round_head_->set_title(tr("Round %1").arg(round + 1));
  round_head_->set_note(said.held);
  say(note_, said.note);
  say(working_, said.working);
}

QString CensusPane::text() const {
  return chart_ ? chart_facts_text(open_.pattern(), *chart_, facts_, open_.reader()) : QString();
}

QString CensusPane::round_note() const { return note_->text(); }

void CensusPane::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) fill();
}

}  // namespace skeinproof
