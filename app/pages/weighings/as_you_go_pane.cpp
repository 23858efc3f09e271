// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/weighings/as_you_go_pane.h"

#include <QListView>
#include <QSplitter>
#include <QVBoxLayout>

#include "app/widgets/ink.h"
#include "app/widgets/part_table.h"
#include "core/need/as_you_go.h"
#include "core/need/evidence.h"
#include "core/pattern/edits.h"

namespace skeinproof {
namespace {

std::vector<Choice> role_list(const Pattern& pattern, std::size_t) {
  std::vector<Choice> choices;
  for (const Role& role : pattern.roles)
    choices.push_back({QString::fromStdString(role.label), role.id.value});
  return choices;
}

std::vector<Choice> piece_list(const Pattern& pattern, std::size_t) {
  std::vector<Choice> choices;
  for (const Piece& piece : pattern.pieces)
    choices.push_back({QString::fromStdString(piece.name), piece.id.value});
  return choices;
}

std::vector<Choice> section_list(const Pattern& pattern, std::size_t row) {
  std::vector<Choice> choices = {{AsYouGoPane::tr("all of it"), 0}};
  if (const Piece* piece = pattern.piece(pattern.readings[row].piece))
    for (const Section& section : piece->sections)
      choices.push_back({QString::fromStdString(section.name), section.id.value});
  return choices;
}

PartList reading_list() {
  PartList list = part_list(AsYouGoPane::tr("reading"), AsYouGoPane::tr("add a reading"), &Pattern::readings);
  list.name = [](const Pattern& pattern, std::size_t row) {
    const Role* role = pattern.role(pattern.readings[row].role);
    return role != nullptr ? QString::fromStdString(role->label) : QString();
  };
  list.append = [](Pattern& pattern) {
    YarnReading reading;
    // The next reading is nearly always of the same yarn on the same scale.
    if (!pattern.readings.empty()) {
      reading = pattern.readings.back();
      reading.left.reset();
      reading.note.clear();
    } else {
      if (!pattern.roles.empty()) reading.role = pattern.roles.front().id;
      if (!pattern.pieces.empty()) reading.piece = pattern.pieces.front().id;
    }
    reading.id = take_id<ReadingId>(pattern);
    pattern.readings.push_back(std::move(reading));
  };
  list.erase = [](Pattern& pattern, std::size_t row) {
    pattern.readings.erase(pattern.readings.begin() + static_cast<std::ptrdiff_t>(row));
  };
  list.move = [](Pattern& pattern, std::size_t from, std::size_t to) {
    move_part(pattern.readings, from, to);
  };
  return list;
}

std::vector<PartColumn> reading_columns(OpenPattern& open) {
  const auto tr = [](const char* words) { return AsYouGoPane::tr(words); };
  return {
      choice_column(
          tr("Colour"), tr("colour of reading"),
          [](auto& pattern, std::size_t row) -> auto& { return pattern.readings[row].role; }, role_list),
      quantity_column<Grams>(
          open, tr("Began with"), tr("yarn begun with"), QuantityFormat::mass(),
          [](auto& pattern, std::size_t row) -> auto& { return pattern.readings[row].began_with; }),
      quantity_column<Grams>(
          open, tr("Left"), tr("yarn left"), QuantityFormat::mass(),
          [](auto& pattern, std::size_t row) -> auto& { return pattern.readings[row].left; }),
      choice_column(
          tr("After piece"), tr("piece of reading"),
          [](auto& pattern, std::size_t row) -> auto& { return pattern.readings[row].piece; }, piece_list),
      choice_column(
          tr("Part"), tr("part of reading"),
          [](auto& pattern, std::size_t row) -> auto& { return pattern.readings[row].section; },
          section_list),
      number_column(
          open, tr("Copy"), tr("copy of reading"), QuantityFormat::number(1, 1000, "copy"),
          [](auto& pattern, std::size_t row) -> auto& { return pattern.readings[row].copy; }),
      quantity_column<double>(
          open, tr("Round"), tr("round of reading"), QuantityFormat::number(0, 100000, "round"),
          [](auto& pattern, std::size_t row) -> auto& { return pattern.readings[row].round; }),
      quantity_column<Grams>(
          open, tr("Scale step"), tr("scale step of reading"), QuantityFormat::mass(),
          [](auto& pattern, std::size_t row) -> auto& { return pattern.readings[row].scale_step; }),
      text_column(
          tr("When"), tr("when weighed"),
          [](auto& pattern, std::size_t row) -> auto& { return pattern.readings[row].when; }),
      tick_column(
          tr("Used"), tr("use reading"),
          [](auto& pattern, std::size_t row) -> auto& { return pattern.readings[row].used; })};
}

// Figures in the reader's writing.
class Rows {
 public:
  explicit Rows(const ReaderStyle& reader) : reader_(reader) {}

  void add(const QString& name, const QString& figure, const QString& how = {}, bool strong = false) {
    FigureRow row;
    row.name = name;
    row.figure = figure;
    row.how = how;
    row.strong = strong;
    rows.push_back(std::move(row));
  }
  void add_heading(const QString& name) {
    FigureRow row;
    row.name = name;
    row.heading = true;
    rows.push_back(std::move(row));
  }
  QString length(Metres value) const {
    return show_quantity(QuantityFormat::yarn_length(), reader_, {value.value(), {}});
  }
  QString per_cent(double share) const {
    return QString::fromStdString(show_number(100 * share, 1, reader_.numbers)) + QStringLiteral(" %");
  }

  std::vector<FigureRow> rows;

 private:
  const ReaderStyle& reader_;
};

void add_rest(const AsYouGo& go, Rows& rows) {
  rows.add(AsYouGoPane::tr("Left on the scale"), rows.length(go.left));
  rows.add(AsYouGoPane::tr("To the end by this hand"), rows.length(go.to_go),
           AsYouGoPane::tr("%1 to %2, 9 times in 10").arg(rows.length(go.low), rows.length(go.high)));
  rows.add(AsYouGoPane::tr("It will do"),
           AsYouGoPane::tr("in %1 of 100").arg(QString::fromStdString(chance_of_100(go.chance_to_finish))),
           QString::fromStdString(go.run_out.words), true);
  rows.add(AsYouGoPane::tr("This hand takes"), rows.per_cent(go.factor),
           AsYouGoPane::tr("of what the sheet says; error %1, 9 times in 10").arg(rows.per_cent(go.error)));
}

void add_places(const AsYouGo& go, Rows& rows) {
  if (!go.run_out.turn_backs.empty())
    rows.add_heading(AsYouGoPane::tr("Where the course can still be changed"));
  for (const TurnBack& back : go.run_out.turn_backs) {
    const bool last = &back == &go.run_out.turn_backs.back();
    rows.add(
        QString::fromStdString(back.words), rows.length(back.saves),
        last && go.run_out.turn_backs.size() > 1 ? AsYouGoPane::tr("the last turning place") : QString());
  }
  rows.add_heading(AsYouGoPane::tr("Stretches weighed"));
  for (const WeighedStretch& stretch : go.stretches)
    rows.add(AsYouGoPane::tr("to %1").arg(QString::fromStdString(stretch.words)), rows.length(stretch.used),
             AsYouGoPane::tr("by the sheet %1; %2 of what was weighed")
                 .arg(rows.length(stretch.by_sheet), rows.per_cent(stretch.share)));
}

}  // namespace

std::vector<FigureRow> as_you_go_figures(const OpenPattern& open, RoleId role) {
  const Pattern& pattern = open.pattern();
  Rows rows(open.reader());
  if (pattern.role(role) == nullptr) return {};
  const SizeId size = pattern.sizes[open.chosen_size_index()].id;
  const auto go = as_you_go(pattern, role, size, open.reader().numbers);
  if (!go) {
    rows.add(AsYouGoPane::tr("Nothing can be said yet"), {}, sentence_of(go.error()));
    return rows.rows;
  }
  add_rest(*go, rows);
  add_places(*go, rows);
  return rows.rows;
}

AsYouGoPane::AsYouGoPane(OpenPattern& open, QWidget* parent) : QWidget(parent), open_(open) {
  table_ = new PartTable(open_, reading_list(), reading_columns(open_));
  table_->setAccessibleName(tr("Readings while knitting"));
  figures_ = new FigureList;
  figures_->view()->setAccessibleName(tr("What is left and how far it goes"));
  figures_->set_empty_words(
      tr("Weigh the yarn before the first stitch and again at any place: the rest follows for the chosen "
         "size."));
  auto* split = new QSplitter(Qt::Vertical);
  split->addWidget(table_);
  split->addWidget(figures_);
  split->setStretchFactor(1, 1);
  split->setChildrenCollapsible(false);
  split->setSizes({scaled(this, 130), scaled(this, 260)});
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(split);
  connect(table_, &PartTable::says, this, &AsYouGoPane::says);
  connect(table_, &PartTable::current_part_changed, this, &AsYouGoPane::refresh_figures);
  connect(&open_, &OpenPattern::changed, this, &AsYouGoPane::refresh_figures);
  connect(&open_, &OpenPattern::replaced, this, &AsYouGoPane::refresh);
  connect(&open_, &OpenPattern::reader_changed, this, &AsYouGoPane::refresh_figures);
  refresh();
}

void AsYouGoPane::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  refresh_figures();
}

void AsYouGoPane::refresh() {
  table_->refresh(true);
  refresh_figures();
}

void AsYouGoPane::refresh_figures() {
  // The working costs more than an edit should; a hidden pane need not have it.
  if (!isVisible()) return;
  const int row = table_->current_row();
  const auto& readings = open_.pattern().readings;
  const bool chosen = row >= 0 && static_cast<std::size_t>(row) < readings.size();
  if (!chosen && readings.empty()) return figures_->set_rows({});
  const RoleId role = chosen ? readings[static_cast<std::size_t>(row)].role : readings.front().role;
  figures_->set_rows(as_you_go_figures(open_, role));
}

}  // namespace skeinproof
