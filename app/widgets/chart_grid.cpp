// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/chart_grid.h"

#include <QApplication>
#include <QClipboard>
#include <QEvent>
#include <QPaintEvent>
#include <QPainter>
#include <QScrollBar>
#include <algorithm>
#include <cmath>

#include "app/document/open_pattern.h"
#include "app/widgets/chart_margin.h"
#include "app/widgets/chart_squares.h"
#include "app/widgets/quantity_text.h"
#include "core/fabric/chart_text.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

// A selection is copied as it is drawn.
ChartTextOptions as_drawn() {
  ChartTextOptions options;
  options.order = RoundOrder::last_line_first;
  return options;
}

bool knows(const Chart& chart, char symbol) {
  return symbol == no_stitch ||
         std::any_of(chart.colours.begin(), chart.colours.end(), [&](const ChartColour& colour) {
           return colour.symbol.size() == 1 && colour.symbol.front() == symbol;
         });
}

}  // namespace

ChartGrid::ChartGrid(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      squares_(new ChartSquares(this)),
      numbers_(new ChartMargin(*squares_, ChartMargin::numbers, this)),
      counts_(new ChartMargin(*squares_, ChartMargin::counts, this)),
      scroll_(new QScrollBar(Qt::Vertical, this)) {
  setFocusProxy(squares_);
  connect(&open_, &OpenPattern::changed, this, &ChartGrid::follow);
  connect(squares_, &ChartSquares::typed, this, &ChartGrid::paint);
  connect(squares_, &ChartSquares::wants_repeat, this, &ChartGrid::repeat_selection);
  connect(squares_, &ChartSquares::wants_copy, this, &ChartGrid::copy);
  connect(squares_, &ChartSquares::wants_paste, this, [this] { paste(QApplication::clipboard()->text()); });
  connect(squares_, &ChartSquares::stroke_touched, this, &ChartGrid::touch);
  connect(squares_, &ChartSquares::stroke_ended, this, &ChartGrid::end_stroke);
  connect(squares_, &ChartSquares::current_moved, this, [this] {
    numbers_->update();
    counts_->update();
    emit current_round_changed(current_round());
  });
  QScrollBar* inner = squares_->verticalScrollBar();
  connect(inner, &QScrollBar::rangeChanged, this, [this, inner](int low, int high) {
    scroll_->setRange(low, high);
    scroll_->setPageStep(inner->pageStep());
    scroll_->setSingleStep(squares_->square_size().height());
    scroll_->setVisible(high > low);
  });
  connect(inner, &QScrollBar::valueChanged, this, [this](int value) {
    scroll_->setValue(value);
    numbers_->update();
    counts_->update();
  });
  connect(scroll_, &QScrollBar::valueChanged, inner, &QScrollBar::setValue);
  dress();
}

const Chart* ChartGrid::chart() const { return shown_ ? &*shown_ : nullptr; }

std::size_t ChartGrid::current_round() const { return squares_->current().round; }

void ChartGrid::show_chart(ChartId chart) {
  if (id_ != chart) stroke_.reset();
  id_ = chart;
  follow();
}

void ChartGrid::follow() {
  if (stroke_) return;  // what is being drawn stays in sight; its end follows
  const Chart* chart = open_.pattern().chart(id_);
  if (chart != nullptr && chart->rounds->empty()) chart = nullptr;
  if (chart == nullptr) {
    shown_.reset();
    census_ = {};
    squares_->squares()->show(open_.pattern(), Chart{});
  } else {
    show_squares(*chart);
  }
  dress();
}

void ChartGrid::show_squares(const Chart& chart) {
  if (!shown_ || *shown_ != chart) census_ = skeinproof::census(chart);
  shown_ = chart;
  squares_->squares()->show(open_.pattern(), chart);
  numbers_->show_census(census_);
  counts_->show_census(census_);
  emit edited();
}

void ChartGrid::set_look(ChartLook look) {
  look_ = look;
  dress();
}

void ChartGrid::set_stitch_shape(double height_to_width) {
  const double shape = std::clamp(height_to_width, 0.5, 1.5);
  if (std::abs(shape - shape_) < 1e-9) return;
  shape_ = shape;
  dress();
}

void ChartGrid::set_brush(std::optional<char> brush) { squares_->set_brush(brush); }

void ChartGrid::dress() {
  if (shown_) squares_->set_inks(square_inks(open_.pattern(), *shown_, look_, ink_of(palette())));
  const int width = scaled(this, 16);
  squares_->set_square_size({width, static_cast<int>(std::lround(width * shape_))});
  lay_out();
}

void ChartGrid::lay_out() {
  const int left = numbers_->wanted_width(), right = counts_->wanted_width();
  const int bar = scroll_->sizeHint().width();
  const int top = head_height();
  const QSize content = squares_->content_size();
  // The squares come first; what stands beside them may be cut short.
  const int least = std::min(content.width(), scaled(this, 80));
  const int room = std::max({least, width() - left - right - bar, (width() - left - bar) * 2 / 3});
  const int wide = std::min(content.width(), room);
  const int tall = std::max(0, height() - top);
  numbers_->setGeometry(0, top, left, tall);
  squares_->setGeometry(left, top, wide, tall);
  counts_->setGeometry(left + wide, top, std::max(0, width() - left - wide - bar), tall);
  scroll_->setGeometry(width() - bar, top, bar, tall);
  setMinimumWidth(left + least + right / 2 + bar);
  update();
}

int ChartGrid::head_height() const { return scaled(this, 22); }

void ChartGrid::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  lay_out();
}

void ChartGrid::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange) dress();
}

void ChartGrid::paintEvent(QPaintEvent* event) {
  const Ink ink = ink_of(palette());
  QPainter painter(this);
  painter.fillRect(event->rect(), ink.base);
  if (!shown_) return;
  painter.setFont(type_of(font()).small);
  const int pad = scaled(this, 8);
  const auto write = [&](const QColor& pen, int left, int right, Qt::Alignment side, const QString& words) {
    painter.setPen(pen);
    painter.drawText(QRect(left, 0, right - left, head_height()), static_cast<int>(side) | Qt::AlignVCenter,
                     words);
  };
  const QRect counts = counts_->geometry();
  write(ink.muted, squares_->x(), counts.left(), Qt::AlignLeft, tr("stitch 1 at the right"));
  if (counts.width() > 2 * pad) {
    painter.fillRect(QRect(counts.left(), 0, width() - counts.left(), head_height()), ink.base);
    write(ink.text, counts.left() + pad, counts.right(), Qt::AlignLeft, tr("Stitches"));
    write(ink.text, counts.left(), counts.right() - pad, Qt::AlignRight, tr("Float"));
  }
  painter.setPen(ink.rule);
  painter.drawLine(0, head_height() - 1, width(), head_height() - 1);
}

bool ChartGrid::commit(const QString& label, const Expected<Chart>& edited_chart) {
  if (!edited_chart) {
    emit says(sentence_of(edited_chart.error()));
    return false;
  }
  const auto refused = open_.apply(label, [&](Pattern& pattern) {
    if (Chart* chart = find_chart(pattern, id_)) *chart = *edited_chart;
  });
  if (refused) emit says(sentence_of(*refused));
  return !refused;
}

void ChartGrid::move_on(Square from) {
  const auto columns = static_cast<std::size_t>(squares_->squares()->columnCount());
  const auto rounds = static_cast<std::size_t>(squares_->squares()->rowCount());
  if (from.stitch + 1 < columns)
    squares_->set_current({from.round, from.stitch + 1});
  else if (from.round + 1 < rounds)
    squares_->set_current({from.round + 1, 0});
}

void ChartGrid::paint(char symbol) {
  if (!shown_) return;
  if (!knows(*shown_, symbol)) {
    emit says(tr("%1 is no colour of this chart; add it under Colours.").arg(QLatin1Char(symbol)));
    return;
  }
  const auto [a, b] = squares_->selection();
  const Square at = squares_->current();
  const QString what = symbol == no_stitch ? tr("no stitch") : symbol_label(open_.pattern(), *shown_, symbol);
  if (a == b) {
    if (commit(tr("paint %1, round %2").arg(what).arg(at.round + 1), with_square(*shown_, at, symbol)))
      move_on(at);
    return;
  }
  const auto squares = (a.round - b.round + 1) * (b.stitch - a.stitch + 1);
  if (commit(tr("fill %1 squares with %2").arg(squares).arg(what), with_rectangle(*shown_, a, b, symbol)))
    squares_->select(a, b);
}

void ChartGrid::repeat_selection() {
  if (!shown_) return;
  const auto [a, b] = squares_->selection();
  commit(tr("repeat %1 stitches, rounds %2 to %3")
             .arg(b.stitch - a.stitch + 1)
             .arg(b.round + 1)
             .arg(a.round + 1),
         with_repeated(*shown_, a, b));
}

void ChartGrid::insert_round(bool above) {
  if (!shown_) return;
  const Square at = squares_->current();
  const std::size_t before = above ? at.round + 1 : at.round;
  // A new round goes on in the colour of the square the cursor is on.
  if (commit(tr("insert round %1").arg(before + 1),
             with_round(*shown_, before, squares_->squares()->symbol_at(at))))
    squares_->set_current({before, at.stitch});
}

void ChartGrid::insert_stitch(bool at_left) {
  if (!shown_) return;
  const Square at = squares_->current();
  const std::size_t before = at_left ? at.stitch : at.stitch + 1;
  if (commit(tr("insert a stitch"), with_column(*shown_, before, squares_->squares()->symbol_at(at))))
    squares_->set_current({at.round, before});
}

void ChartGrid::delete_rounds() {
  if (!shown_) return;
  const auto [top, bottom] = squares_->selection();
  const std::size_t stitch = squares_->current().stitch;
  Expected<Chart> left = *shown_;
  for (std::size_t round = top.round + 1; left && round-- > bottom.round;)
    left = without_round(std::move(*left), round);
  const QString label = top.round == bottom.round
                            ? tr("delete round %1").arg(top.round + 1)
                            : tr("delete rounds %1 to %2").arg(bottom.round + 1).arg(top.round + 1);
  if (commit(label, left) && shown_)
    squares_->set_current({std::min(bottom.round, shown_->rounds->size() - 1), stitch});
}

void ChartGrid::delete_stitches() {
  if (!shown_) return;
  const auto [first, last] = squares_->selection();
  const std::size_t round = squares_->current().round;
  Expected<Chart> left = *shown_;
  for (std::size_t stitch = last.stitch + 1; left && stitch-- > first.stitch;)
    left = without_column(std::move(*left), stitch);
  const std::size_t count = last.stitch - first.stitch + 1;
  if (commit(count == 1 ? tr("delete a stitch") : tr("delete %1 stitches").arg(count), left) && shown_)
    squares_->set_current({round, std::min(first.stitch, shown_->rounds->front().size() - 1)});
}

QString ChartGrid::selected_text() const {
  if (!shown_) return {};
  const auto [top, bottom] = squares_->selection();
  Chart part;
  std::vector<std::string> rounds;
  for (std::size_t round = bottom.round; round <= top.round; ++round)
    rounds.push_back((*shown_->rounds)[round].substr(top.stitch, bottom.stitch - top.stitch + 1));
  part.rounds = std::move(rounds);
  return QString::fromStdString(chart_text(part, as_drawn()));
}

void ChartGrid::copy() const {
  if (shown_) QApplication::clipboard()->setText(selected_text());
}

void ChartGrid::paste(const QString& text) {
  if (!shown_ || text.trimmed().isEmpty()) return;
  const auto patch = read_chart_text(text.toStdString(), as_drawn());
  if (!patch) {
    emit says(tr("Nothing pasted. %1").arg(sentence_of(patch.error())));
    return;
  }
  const Square at{squares_->selection().second.round, squares_->selection().first.stitch};
  const std::size_t rounds = patch->rounds->size(), width = patch->rounds->front().size();
  commit(tr("paste %1 × %2 squares").arg(width).arg(rounds), with_patch(*shown_, at, *patch));
}

// Every square on the straight way between two, so that a quick hand leaves no gap.
void ChartGrid::touch(Square from, Square to) {
  const std::optional<char> brush = squares_->brush();
  if (!brush || (!stroke_ && !shown_)) return;
  if (!stroke_) stroke_ = *shown_;
  const auto signed_of = [](std::size_t value) { return static_cast<long>(value); };
  const long across = signed_of(to.stitch) - signed_of(from.stitch),
             up = signed_of(to.round) - signed_of(from.round);
  const long steps = std::max({std::labs(across), std::labs(up), 1L});
  stroke_->rounds.edit([&](std::vector<std::string>& rounds) {
    for (long step = 0; step <= steps; ++step) {
      const double share = static_cast<double>(step) / static_cast<double>(steps);
      const auto round = signed_of(from.round) + std::lround(share * static_cast<double>(up));
      const auto stitch = signed_of(from.stitch) + std::lround(share * static_cast<double>(across));
      rounds[static_cast<std::size_t>(round)][static_cast<std::size_t>(stitch)] = *brush;
    }
  });
  show_squares(*stroke_);
}

void ChartGrid::end_stroke() {
  if (!stroke_) return;
  const Chart drawn = *std::exchange(stroke_, std::nullopt);
  const char brush = squares_->brush().value_or(no_stitch);
  const QString what = brush == no_stitch ? tr("no stitch") : symbol_label(open_.pattern(), drawn, brush);
  if (!commit(tr("stroke of %1").arg(what), drawn)) follow();
}

}  // namespace skeinproof
