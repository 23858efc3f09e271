// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/chart_squares.h"

#include <QAbstractItemDelegate>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

namespace skeinproof {

ChartModel::ChartModel(QObject* parent) : QAbstractTableModel(parent) {}

void ChartModel::show(const Pattern& pattern, const Chart& chart) {
  std::map<char, QString> names;
  for (const ChartColour& colour : chart.colours)
    if (colour.symbol.size() == 1)
      names[colour.symbol.front()] = symbol_words(pattern, chart, colour.symbol.front());
  const auto& before = *chart_.rounds;
  const auto& now = *chart.rounds;
  const bool same_shape = chart.id == chart_.id && before.size() == now.size() &&
                          (now.empty() || before.front().size() == now.front().size());
  if (!same_shape) {
    beginResetModel();
    chart_ = chart;
    names_ = std::move(names);
    endResetModel();
    return;
  }
  const Chart old = std::exchange(chart_, chart);
  names_ = std::move(names);
  for (std::size_t round = 0; round < now.size(); ++round) {
    const auto& was = (*old.rounds)[round];
    const auto& is = now[round];
    if (was == is) continue;
    const auto first =
        static_cast<std::size_t>(std::mismatch(is.begin(), is.end(), was.begin()).first - is.begin());
    std::size_t last = is.size() - 1;
    while (last > first && was[last] == is[last]) --last;
    emit dataChanged(index_of({round, first}), index_of({round, last}));
  }
}

Square ChartModel::square_at(const QModelIndex& index) const {
  return {static_cast<std::size_t>(rowCount() - 1 - index.row()), static_cast<std::size_t>(index.column())};
}

QModelIndex ChartModel::index_of(Square square) const {
  return index(rowCount() - 1 - static_cast<int>(square.round), static_cast<int>(square.stitch));
}

char ChartModel::symbol_at(Square square) const { return (*chart_.rounds)[square.round][square.stitch]; }

int ChartModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(chart_.rounds->size());
}

int ChartModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() || chart_.rounds->empty() ? 0 : static_cast<int>(chart_.rounds->front().size());
}

QVariant ChartModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const Square square = square_at(index);
  const char symbol = symbol_at(square);
  if (role == Qt::DisplayRole) return QString(QLatin1Char(symbol));
  if (role == Qt::AccessibleTextRole || role == Qt::ToolTipRole) {
    const auto name = names_.find(symbol);
    return tr("round %1, stitch %2, %3")
        .arg(square.round + 1)
        .arg(columnCount() - index.column())
        .arg(name != names_.end() ? name->second : tr("no stitch"));
  }
  return {};
}

QVariant ChartModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (role != Qt::DisplayRole) return {};
  return orientation == Qt::Vertical ? tr("round %1").arg(rowCount() - section)
                                     : tr("stitch %1").arg(columnCount() - section);
}

namespace {

// The squares are painted in one go by the view; a delegate that does nothing keeps the table from painting
// each.
class NoDelegate : public QAbstractItemDelegate {
 public:
  using QAbstractItemDelegate::QAbstractItemDelegate;
  void paint(QPainter*, const QStyleOptionViewItem&, const QModelIndex&) const override {}
  QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override { return {1, 1}; }
};

}  // namespace

ChartSquares::ChartSquares(QWidget* parent) : QTableView(parent), model_(new ChartModel(this)) {
  setModel(model_);
  setItemDelegate(new NoDelegate(this));
  setShowGrid(false);
  setFrameShape(QFrame::NoFrame);
  setEditTriggers(NoEditTriggers);
  setSelectionMode(ContiguousSelection);
  setTabKeyNavigation(false);
  setHorizontalScrollMode(ScrollPerPixel);
  setVerticalScrollMode(ScrollPerPixel);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setAccessibleName(tr("Chart"));
  setAccessibleDescription(
      tr("A letter paints, Shift with the arrows selects, R repeats the selection, - is no stitch"));
  for (QHeaderView* header : {horizontalHeader(), verticalHeader()}) {
    header->hide();
    header->setSectionResizeMode(QHeaderView::Fixed);
    header->setMinimumSectionSize(1);
  }
  connect(model_, &QAbstractItemModel::modelReset, this, [this] {
    if (model_->rowCount() > 0) set_current({0, static_cast<std::size_t>(model_->columnCount() - 1)});
  });
}

void ChartSquares::set_inks(std::map<char, SquareInk> inks) {
  inks_ = std::move(inks);
  pictures_.clear();
  viewport()->update();
}

void ChartSquares::set_square_size(QSize size) {
  if (size == size_ && horizontalHeader()->defaultSectionSize() == size.width()) return;
  size_ = size;
  horizontalHeader()->setDefaultSectionSize(size.width());
  verticalHeader()->setDefaultSectionSize(size.height());
  pictures_.clear();
  viewport()->update();
}

QSize ChartSquares::content_size() const {
  return {model_->columnCount() * size_.width() + 1, model_->rowCount() * size_.height() + 1};
}

void ChartSquares::set_brush(std::optional<char> brush) {
  brush_ = brush;
  viewport()->setCursor(brush_ ? Qt::CrossCursor : Qt::ArrowCursor);
}

Square ChartSquares::current() const {
  return currentIndex().isValid() ? model_->square_at(currentIndex()) : Square{};
}

void ChartSquares::set_current(Square square) { setCurrentIndex(model_->index_of(square)); }

std::pair<Square, Square> ChartSquares::selection() const {
  const QItemSelection ranges = selectionModel()->selection();
  if (ranges.isEmpty()) return {current(), current()};
  return {model_->square_at(ranges.front().topLeft()), model_->square_at(ranges.front().bottomRight())};
}

void ChartSquares::select(Square corner, Square opposite) {
  selectionModel()->setCurrentIndex(model_->index_of(opposite), QItemSelectionModel::NoUpdate);
  selectionModel()->select(QItemSelection(model_->index_of({std::max(corner.round, opposite.round),
                                                            std::min(corner.stitch, opposite.stitch)}),
                                          model_->index_of({std::min(corner.round, opposite.round),
                                                            std::max(corner.stitch, opposite.stitch)})),
                           QItemSelectionModel::ClearAndSelect);
}

bool ChartSquares::event(QEvent* event) {
  // Plain letters are the chart's own while it has the focus, whatever they open elsewhere.
  if (event->type() == QEvent::ShortcutOverride) {
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool plain = (key->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier)) == 0;
    if ((plain && !key->text().isEmpty() && key->text().front().isPrint()) ||
        key->matches(QKeySequence::Copy) || key->matches(QKeySequence::Paste) ||
        key->matches(QKeySequence::SelectAll)) {
      event->accept();
      return true;
    }
  }
  return QTableView::event(event);
}

void ChartSquares::keyPressEvent(QKeyEvent* event) {
  if (model_->rowCount() == 0) return QTableView::keyPressEvent(event);
  if (event->matches(QKeySequence::Copy)) return void(emit wants_copy());
  if (event->matches(QKeySequence::Paste)) return void(emit wants_paste());
  if (event->key() == Qt::Key_R && event->modifiers() == Qt::ControlModifier)
    return void(emit wants_repeat());
  if (event->key() == Qt::Key_Delete || event->key() == Qt::Key_Backspace) {
    if (event->modifiers() == Qt::NoModifier) return void(emit typed(no_stitch));
  }
  const bool plain = (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier)) == 0;
  const QString text = event->text();
  if (!plain || text.size() != 1 || text.front() <= QLatin1Char(' ') || text.front() >= QChar(127)) {
    QTableView::keyPressEvent(event);
    return;
  }
  const char letter = text.front().toLatin1();
  const char capital = static_cast<char>(text.front().toUpper().toLatin1());
  if (letter == no_stitch || inks_.count(letter) != 0)
    emit typed(letter);
  else if (inks_.count(capital) != 0)
    emit typed(capital);
  else if (capital == 'R')
    emit wants_repeat();
  else
    emit typed(letter);  // no colour of the chart: whoever listens says so
}

void ChartSquares::mousePressEvent(QMouseEvent* event) {
  const QModelIndex index = indexAt(event->position().toPoint());
  const bool paints = brush_ && event->button() == Qt::LeftButton && event->modifiers() == Qt::NoModifier;
  if (!paints || !index.isValid()) return QTableView::mousePressEvent(event);
  setFocus(Qt::MouseFocusReason);
  setCurrentIndex(index);
  stroke_at_ = model_->square_at(index);
  emit stroke_began();
  emit stroke_touched(*stroke_at_, *stroke_at_);
}

void ChartSquares::mouseMoveEvent(QMouseEvent* event) {
  if (!stroke_at_) return QTableView::mouseMoveEvent(event);
  const QModelIndex index = indexAt(event->position().toPoint());
  if (!index.isValid() || model_->square_at(index) == *stroke_at_) return;
  const Square from = std::exchange(*stroke_at_, model_->square_at(index));
  emit stroke_touched(from, *stroke_at_);
}

void ChartSquares::mouseReleaseEvent(QMouseEvent* event) {
  if (!stroke_at_) return QTableView::mouseReleaseEvent(event);
  stroke_at_.reset();
  emit stroke_ended();
}

const QPixmap& ChartSquares::picture_of(char symbol) {
  QPixmap& picture = pictures_[symbol];
  if (!picture.isNull()) return picture;
  const double ratio = devicePixelRatioF();
  picture = QPixmap(size_ * ratio);
  picture.setDevicePixelRatio(ratio);
  const Ink ink = ink_of(palette());
  const auto found = inks_.find(symbol);
  const SquareInk square = found != inks_.end() ? found->second : SquareInk{ink.base, ink.muted};
  picture.fill(square.fill);
  QPainter painter(&picture);
  painter.setPen(ink.rule);
  painter.drawLine(0, size_.height() - 1, size_.width() - 1, size_.height() - 1);
  painter.drawLine(size_.width() - 1, 0, size_.width() - 1, size_.height() - 1);
  QFont letter = font();
  letter.setPixelSize(std::max(6, static_cast<int>(std::lround(size_.height() * 0.78))));
  painter.setFont(letter);
  painter.setPen(square.letter);
  const QString text = symbol == no_stitch ? QStringLiteral("–") : QString(QLatin1Char(symbol));
  painter.drawText(QRect(0, 0, size_.width() - 1, size_.height() - 1), Qt::AlignCenter, text);
  return picture;
}

void ChartSquares::paint_squares(QPainter& painter, const QRect& area) {
  const int rows = model_->rowCount(), columns = model_->columnCount();
  const int top = rowAt(std::max(0, area.top())), left = columnAt(std::max(0, area.left()));
  if (top < 0 || left < 0) return;
  for (int row = top; row < rows; ++row) {
    const int y = rowViewportPosition(row);
    if (y > area.bottom()) break;
    const std::string& round = (*model_->chart().rounds)[static_cast<std::size_t>(rows - 1 - row)];
    int x = columnViewportPosition(left);
    for (int column = left; column < columns && x <= area.right(); ++column, x += size_.width())
      painter.drawPixmap(x, y, picture_of(round[static_cast<std::size_t>(column)]));
  }
}

void ChartSquares::frame(QPainter& painter, const QRect& area, const QColor& colour, int thick) {
  painter.setPen(Qt::NoPen);
  painter.setBrush(colour);
  painter.drawRect(QRect(area.left(), area.top(), area.width(), thick));
  painter.drawRect(QRect(area.left(), area.bottom() - thick + 1, area.width(), thick));
  painter.drawRect(QRect(area.left(), area.top(), thick, area.height()));
  painter.drawRect(QRect(area.right() - thick + 1, area.top(), thick, area.height()));
}

void ChartSquares::paintEvent(QPaintEvent* event) {
  const Ink ink = ink_of(palette());
  QPainter painter(viewport());
  painter.fillRect(event->rect(), ink.base);
  if (model_->rowCount() == 0) return;
  paint_squares(painter, event->rect());
  const int width = content_size().width() - 1;
  const QRect now = visualRect(currentIndex());
  if (!now.isValid()) return;
  const int left = columnViewportPosition(0);
  frame(painter, QRect(left, now.top() - 1, width, now.height() + 1), ink.focus, 2);
  const auto [a, b] = selection();
  const QRect chosen =
      visualRect(model_->index_of(a)).united(visualRect(model_->index_of(b))).adjusted(-1, -1, 0, 0);
  if (hasFocus() || chosen.size() != now.adjusted(-1, -1, 0, 0).size()) {
    frame(painter, chosen, ink.focus, 3);
    frame(painter, chosen.adjusted(3, 3, -3, -3), ink.base, 1);
  }
}

void ChartSquares::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QTableView::currentChanged(current, previous);
  viewport()->update();
  emit current_moved();
}

void ChartSquares::selectionChanged(const QItemSelection& selected, const QItemSelection& deselected) {
  QTableView::selectionChanged(selected, deselected);
  viewport()->update();
}

void ChartSquares::focusInEvent(QFocusEvent* event) {
  QTableView::focusInEvent(event);
  viewport()->update();
}

void ChartSquares::focusOutEvent(QFocusEvent* event) {
  QTableView::focusOutEvent(event);
  viewport()->update();
}

}  // namespace skeinproof
