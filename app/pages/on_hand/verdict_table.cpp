// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/on_hand/verdict_table.h"

#include <QApplication>
#include <QClipboard>
#include <QEvent>
#include <QFontInfo>
#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>
#include <algorithm>
#include <cmath>

#include "app/widgets/flat_header.h"
#include "app/widgets/ink.h"
#include "app/widgets/quantity_text.h"

namespace skeinproof {
namespace {

constexpr double inset = 10;
constexpr double above = 7;
constexpr double colour_width = 118;
constexpr double words_width = 170;
constexpr double picture_width = 210;
constexpr double picture_height = 58;
constexpr double band_half = 6;
constexpr double stroke_half = 9;
constexpr double stroke_width = 3.5;
constexpr double room_beside = 0.35;  // of what lies between
constexpr double least_room = 0.2;    // of the farthest

QString qt(const std::string& text) { return QString::fromStdString(text); }

double unit_of_font(const QFont& font) { return QFontInfo(font).pixelSize() / 13.0; }

QFont semibold(QFont font) {
  font.setWeight(QFont::DemiBold);
  return font;
}

struct TextPiece {
  QString text;
  QFont font;
  QColor colour;
};

// Wrapped pieces under each other; returns the height.
double stack(QPainter* painter, const QRectF& rect, const std::vector<TextPiece>& pieces) {
  double y = rect.top();
  for (const TextPiece& piece : pieces) {
    if (piece.text.isEmpty()) continue;
    const QRectF room(rect.left(), y, rect.width(), 10000);
    const int flags = Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap;
    if (painter != nullptr) {
      painter->setFont(piece.font);
      painter->setPen(piece.colour);
      painter->drawText(room, flags, piece.text);
    }
    y += QFontMetricsF(piece.font).boundingRect(room, flags, piece.text).height() + 1;
  }
  return y - rect.top();
}

std::vector<TextPiece> colour_pieces(const VerdictRow& row, const Ink& ink, const Type& type) {
  return {{row.colour, type.role_name, ink.text}, {row.names, type.small, ink.muted}};
}
std::vector<TextPiece> word_pieces(const VerdictRow& row, const Ink& ink, const Type& type) {
  const QString settled =
      row.settled_by.isEmpty() ? QString() : VerdictTable::tr("What would settle it: %1").arg(row.settled_by);
  return {{row.word, type.role_name, ink.text},
          {row.short_or_over, type.body, ink.text},
          {row.because, type.small, ink.muted},
          {settled, semibold(type.small), ink.text}};
}

void draw_range(QPainter& painter, const QRectF& rect, const VerdictRow& row, const Ink& ink,
                const Type& type, double u) {
  const QFontMetricsF metrics(type.small);
  const double middle = rect.top() + (above + 14 + stroke_half) * u;
  const double left = rect.left() + inset * u, width = rect.width() - 2 * inset * u;
  const auto x_of = [&](double metres) {
    return left + width * std::clamp((metres - row.axis_low) / (row.axis_high - row.axis_low), 0.0, 1.0);
  };
  const auto write = [&](double x, double baseline, const QString& words, const QFont& font,
                         const QColor& colour) {
    const double room = QFontMetricsF(font).horizontalAdvance(words);
    painter.setFont(font);
    painter.setPen(colour);
    painter.drawText(QPointF(std::clamp(x - room / 2, left, left + std::max(0.0, width - room)), baseline),
                     words);
    return room;
  };
  painter.setPen(QPen(ink.edge, std::max(1.0, u)));
  painter.drawLine(QPointF(left, middle), QPointF(left + width, middle));
  if (row.has_range) {
    painter.setBrush(ink.band);
    painter.setPen(QPen(ink.text, std::max(1.0, u)));
    painter.drawRect(QRectF(QPointF(x_of(row.low), middle - band_half * u),
                            QPointF(x_of(row.high), middle + band_half * u)));
    painter.setBrush(Qt::NoBrush);
    const double foot = middle + (stroke_half + 2) * u + metrics.ascent();
    const QString both = row.low_words + QStringLiteral("–") + row.high_words;
    write((x_of(row.low) + x_of(row.high)) / 2, foot, both, type.small, ink.muted);
  }
  painter.fillRect(QRectF(x_of(row.have) - stroke_width / 2 * u, middle - stroke_half * u, stroke_width * u,
                          2 * stroke_half * u),
                   ink.text);
  write(x_of(row.have), middle - (stroke_half + 3) * u, row.have_words, semibold(type.small), ink.text);
}

class VerdictDelegate : public QStyledItemDelegate {
 public:
  VerdictDelegate(VerdictModel& model, QObject* parent) : QStyledItemDelegate(parent), model_(model) {}

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const Ink ink = ink_of(option.palette);
    const Type type = type_of(option.font);
    const double u = unit_of_font(option.font);
    const auto* view = qobject_cast<const QTableView*>(option.widget);
    const VerdictRow& row = model_.rows()[static_cast<std::size_t>(index.row())];
    const bool chosen = view != nullptr && view->currentIndex().row() == index.row();
    painter->save();
    painter->setClipRect(option.rect);
    painter->setRenderHint(QPainter::Antialiasing, false);
    painter->fillRect(option.rect, chosen ? ink.tint : ink.base);
    const QRectF room = QRectF(option.rect).adjusted(inset * u, above * u, -inset * u, 0);
    if (index.column() == VerdictModel::Colour)
      stack(painter, room, colour_pieces(row, ink, type));
    else if (index.column() == VerdictModel::Words) {
      const double below = stack(painter, room, word_pieces(row, ink, type));
      // Where there is no room beside the words, the picture stands under them.
      if (view != nullptr && view->isColumnHidden(VerdictModel::Range))
        draw_range(*painter, QRectF(option.rect).adjusted(0, below + above * u, 0, 0), row, ink, type, u);
    } else
      draw_range(*painter, option.rect, row, ink, type, u);
    painter->setPen(ink.rule);
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    if (view != nullptr && view->hasFocus() && view->currentIndex() == index) {
      painter->setPen(QPen(ink.focus, 2));
      painter->drawRect(option.rect.adjusted(1, 1, -1, -2));
    }
    painter->restore();
  }

 private:
  VerdictModel& model_;
};

}  // namespace

std::vector<VerdictRow> verdict_rows(const std::vector<RoleOnHand>& verdicts, const ReaderStyle& reader) {
  QuantityFormat format = QuantityFormat::yarn_length();
  format.decimals = 1;
  const auto metres = [&](double value) { return show_quantity(format, reader, {value, {}}); };
  const auto bare = [&](double value) { return show_figure_only(format, reader, value); };
  std::vector<VerdictRow> rows;
  for (const RoleOnHand& one : verdicts) {
    VerdictRow row;
    row.role = one.role;
    row.colour = qt(one.label);
    QStringList names;
    for (const std::string& name : one.names) names << qt(name);
    row.names = names.join(QStringLiteral(", "));
    row.word = one.verdict ? qt(std::string(word_of(*one.verdict))) : VerdictTable::tr("No verdict yet");
    if (one.short_of)
      row.short_or_over = VerdictTable::tr("%1 short").arg(metres(one.short_of->value()));
    else if (one.over)
      row.short_or_over = VerdictTable::tr("%1 over").arg(metres(one.over->value()));
    row.because = qt(one.because);
    row.settled_by = qt(one.settled_by);
    if (!one.verdict) {
      QStringList missing;
      for (const std::string& each : one.missing) missing << qt(each);
      row.because = missing.join(QStringLiteral(" "));
    }
    for (const Error& error : one.left_out)
      row.because += (row.because.isEmpty() ? QString() : QStringLiteral(" ")) + sentence_of(error);
    row.have = one.have.value();
    row.have_words = metres(row.have);
    if (!one.grounds.empty()) {
      row.has_range = true;
      row.low = one.grounds.front().evidence.low.value();
      row.high = one.grounds.front().evidence.high.value();
      row.low_words = bare(row.low);
      row.high_words = bare(row.high) + QLatin1Char(' ') + unit_of(format, reader);
    }
    const double nearest = row.has_range ? std::min(row.low, row.have) : 0;
    const double farthest = std::max(row.high, row.have);
    const double room = std::max(farthest - nearest, least_room * farthest) * room_beside;
    row.axis_low = std::max(0.0, nearest - room);
    row.axis_high = std::max(farthest + room, 1.0);
    row.spoken = VerdictTable::tr("%1, %2: %3").arg(row.colour, row.names, row.word);
    for (const QString& more :
         {row.short_or_over, VerdictTable::tr("%1 on hand").arg(row.have_words), row.because, row.settled_by})
      if (!more.isEmpty()) row.spoken += QStringLiteral("; ") + more;
    rows.push_back(std::move(row));
  }
  return rows;
}

void VerdictModel::show(std::vector<VerdictRow> rows) {
  beginResetModel();
  rows_ = std::move(rows);
  endResetModel();
}
int VerdictModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}
int VerdictModel::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : ColumnCount; }

QVariant VerdictModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const VerdictRow& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == Qt::AccessibleTextRole) return row.spoken;
  if (role != Qt::DisplayRole) return {};
  switch (index.column()) {
    case Colour:
      return row.names.isEmpty() ? row.colour : row.colour + QStringLiteral(", ") + row.names;
    case Words:
      return row.short_or_over.isEmpty() ? row.word : row.word + QStringLiteral(", ") + row.short_or_over;
    default:
      return row.has_range ? VerdictTable::tr("%1 on hand, needs %2 to %3")
                                 .arg(row.have_words, row.low_words, row.high_words)
                           : VerdictTable::tr("%1 on hand").arg(row.have_words);
  }
}

QVariant VerdictModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  if (role == Qt::TextAlignmentRole) return static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter);
  if (role != Qt::DisplayRole) return {};
  return section == Colour  ? VerdictTable::tr("Colour")
         : section == Words ? VerdictTable::tr("Verdict")
                            : VerdictTable::tr("On hand, and what is needed");
}

VerdictTable::VerdictTable(QWidget* parent) : QTableView(parent), model_(new VerdictModel(this)) {
  setObjectName(QStringLiteral("verdicts"));
  setAccessibleName(tr("Whether the yarn on hand will do"));
  setHorizontalHeader(new FlatHeader(this));
  setModel(model_);
  setItemDelegate(new VerdictDelegate(*model_, this));
  setShowGrid(false);
  setFrameShape(QFrame::NoFrame);
  setSelectionBehavior(QAbstractItemView::SelectRows);
  setSelectionMode(QAbstractItemView::SingleSelection);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setTabKeyNavigation(false);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  verticalHeader()->hide();
  verticalHeader()->setMinimumSectionSize(1);
  horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  horizontalHeader()->setMinimumSectionSize(1);
  share();
}

void VerdictTable::set_empty_words(const QString& words) {
  empty_words_ = words;
  viewport()->update();
}

void VerdictTable::show_rows(std::vector<VerdictRow> rows) {
  const RoleId kept = current_role();
  model_->show(std::move(rows));
  share();
  for (int row = 0; row < model_->rowCount(); ++row)
    if (model_->rows()[static_cast<std::size_t>(row)].role == kept) setCurrentIndex(model_->index(row, 0));
  if (!currentIndex().isValid() && model_->rowCount() > 0) setCurrentIndex(model_->index(0, 0));
}

RoleId VerdictTable::current_role() const {
  const auto at = static_cast<std::size_t>(std::max(0, currentIndex().row()));
  return currentIndex().isValid() && at < model_->rows().size() ? model_->rows()[at].role : RoleId{};
}

QString VerdictTable::as_text() const {
  QStringList lines;
  for (const VerdictRow& row : model_->rows()) lines << row.spoken;
  return lines.join(QLatin1Char('\n'));
}

void VerdictTable::keyPressEvent(QKeyEvent* event) {
  if (!event->matches(QKeySequence::Copy)) return QTableView::keyPressEvent(event);
  QApplication::clipboard()->setText(as_text());
  event->accept();
}

void VerdictTable::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QTableView::currentChanged(current, previous);
  viewport()->update();
  emit role_chosen(current_role().value);
}

void VerdictTable::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  if (event->size().width() != event->oldSize().width()) share();
}

void VerdictTable::changeEvent(QEvent* event) {
  QTableView::changeEvent(event);
  if (event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange) share();
}

void VerdictTable::paintEvent(QPaintEvent* event) {
  QTableView::paintEvent(event);
  if (model_->rowCount() > 0 || empty_words_.isEmpty()) return;
  QPainter painter(viewport());
  painter.setPen(ink_of(palette()).muted);
  const int room = scaled(this, 14);
  painter.drawText(viewport()->rect().adjusted(room, room, -room, -room),
                   Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, empty_words_);
}

void VerdictTable::share() {
  const Ink ink = ink_of(palette());
  const Type type = type_of(font());
  const double u = unit_of_font(font());
  horizontalHeader()->setFont(type.small);
  horizontalHeader()->setFixedHeight(scaled(this, 24));
  const bool narrow = viewport()->width() < scaled(this, colour_width + words_width + picture_width);
  const int colour = scaled(this, colour_width), picture = narrow ? 0 : scaled(this, picture_width);
  const int words = std::max(scaled(this, words_width), viewport()->width() - colour - picture);
  setColumnHidden(VerdictModel::Range, narrow);
  horizontalHeader()->resizeSection(VerdictModel::Colour, colour);
  horizontalHeader()->resizeSection(VerdictModel::Words, words);
  if (!narrow) horizontalHeader()->resizeSection(VerdictModel::Range, picture);
  for (int row = 0; row < model_->rowCount(); ++row) {
    const VerdictRow& shown = model_->rows()[static_cast<std::size_t>(row)];
    const auto height = [&](double width, const std::vector<TextPiece>& pieces) {
      return stack(nullptr, QRectF(0, 0, width - 2 * inset * u, 0), pieces);
    };
    const double words_height =
        height(words, word_pieces(shown, ink, type)) + (narrow ? picture_height * u : 0);
    const double tallest =
        std::max({height(colour, colour_pieces(shown, ink, type)), words_height, picture_height * u});
    verticalHeader()->resizeSection(row, static_cast<int>(std::ceil(tallest + 2 * above * u)));
  }
}

}  // namespace skeinproof
