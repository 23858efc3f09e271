// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/candidate_table.h"

#include <QApplication>
#include <QClipboard>
#include <QEvent>
#include <QFontInfo>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QStyledItemDelegate>
#include <algorithm>
#include <cmath>

#include "app/pages/candidates/candidate_cell_painter.h"
#include "app/widgets/ink.h"

namespace skeinproof {
namespace {

constexpr double head_height = 50;
constexpr double least_column = 212;
constexpr double widest_column = 380;
constexpr double head_width = 176;
constexpr double inset = 10;
constexpr double heading_height = 26;
constexpr double heavy_rule = 3;

double unit_of_font(const QFont& font) { return QFontInfo(font).pixelSize() / 13.0; }

QFont semibold(QFont font) {
  font.setWeight(QFont::DemiBold);
  return font;
}

// A name over a quiet note, both wrapped; returns the height.
double two_lines(QPainter* painter, const QRectF& rect, const QString& name, const QFont& name_font,
                 const QString& note, const QFont& note_font, const Ink& ink) {
  const auto lay = [&](double top, const QString& text, const QFont& font, const QColor& colour) {
    const QRectF room(rect.left(), top, rect.width(), 10000);
    const int flags = Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap;
    const QRectF taken = QFontMetricsF(font).boundingRect(room, flags, text);
    if (painter != nullptr) {
      painter->setFont(font);
      painter->setPen(colour);
      painter->drawText(room, flags, text);
    }
    return text.isEmpty() ? 0 : taken.height();
  };
  const double first = lay(rect.top(), name, name_font, ink.text);
  return first + lay(rect.top() + first, note, note_font, ink.muted);
}

class FactDelegate : public QStyledItemDelegate {
 public:
  FactDelegate(CandidateModel& model, QObject* parent) : QStyledItemDelegate(parent), model_(model) {}

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const Ink ink = ink_of(option.palette);
    const Type type = type_of(option.font);
    const double unit = unit_of_font(option.font);
    const FactRow& row = model_.view().rows[static_cast<std::size_t>(index.row())];
    const auto* view = qobject_cast<const QTableView*>(option.widget);
    const bool chosen = view != nullptr && view->currentIndex() == index && view->hasFocus();
    painter->save();
    painter->setClipRect(option.rect);
    const bool heading = row.kind == FactRow::Kind::heading;
    painter->fillRect(option.rect, heading || index.column() == 0 ? ink.header : ink.base);
    if (heading) {
      painter->fillRect(QRectF(option.rect.left(), option.rect.top(), option.rect.width(), heavy_rule * unit),
                        ink.text);
      painter->setPen(ink.rule);
      painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
      painter->restore();
      return;
    }
    lay_fact_cell(painter, option.rect, row.cells[static_cast<std::size_t>(index.column())],
                  {ink, type, unit, chosen});
    painter->setPen(ink.rule);
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    // The pattern's own yarn stands apart from the candidates.
    painter->setPen(index.column() == 0 ? ink.edge : ink.rule);
    painter->drawLine(option.rect.topRight(), option.rect.bottomRight());
    if (chosen) {
      painter->setPen(QPen(ink.focus, 2));
      painter->drawRect(option.rect.adjusted(1, 1, -2, -2));
    }
    painter->restore();
  }

 private:
  CandidateModel& model_;
};

class CandidateHead : public QHeaderView {
 public:
  CandidateHead(Qt::Orientation way, CandidateModel& model, QWidget* parent)
      : QHeaderView(way, parent), model_(model) {
    setSectionsClickable(false);
    setHighlightSections(false);
  }

  double needed_height(int section, const QFont& font) const {
    const Ink ink = ink_of(palette());
    const double u = unit_of_font(font);
    const Type type = type_of(font);
    const QRectF room(
        0, 0, (orientation() == Qt::Horizontal ? sectionSize(section) : head_width * u) - 2 * inset * u,
        10000);
    const auto [name, note] = words(section);
    return two_lines(nullptr, room, name, name_font(type), note, type.small, ink) + 2 * 7 * u;
  }

 protected:
  void paintSection(QPainter* painter, const QRect& rect, int section) const override {
    const Ink ink = ink_of(palette());
    const QFont base = QApplication::font(this);
    const Type type = type_of(parentWidget() != nullptr ? parentWidget()->font() : base);
    const double u = unit_of_font(type.body);
    const bool across = orientation() == Qt::Horizontal;
    painter->save();
    painter->fillRect(rect, across && section != 0 ? ink.base : ink.header);
    const auto [name, note] = words(section);
    const bool heading =
        !across && model_.view().rows[static_cast<std::size_t>(section)].kind == FactRow::Kind::heading;
    if (heading) painter->fillRect(QRectF(rect.left(), rect.top(), rect.width(), heavy_rule * u), ink.text);
    const double across_inset = across ? 12 * u : inset * u;
    const QRectF room(rect.left() + across_inset,
                      rect.top() + (across    ? 7
                                    : heading ? 5
                                              : 6) *
                                       u,
                      rect.width() - 2 * inset * u, rect.height());
    two_lines(painter, room, name, name_font(type), note, type.small, ink);
    painter->setPen(across ? ink.edge : ink.rule);
    painter->drawLine(rect.bottomLeft(), rect.bottomRight());
    painter->setPen(!across || section == 0 ? ink.edge : ink.rule);
    painter->drawLine(rect.topRight(), rect.bottomRight());
    painter->restore();
  }

 private:
  std::pair<QString, QString> words(int section) const {
    const CandidateView& view = model_.view();
    const auto at = static_cast<std::size_t>(section);
    if (orientation() == Qt::Horizontal)
      return at < view.heads.size() ? std::pair(view.heads[at].name, view.heads[at].note)
                                    : std::pair(QString(), QString());
    return at < view.rows.size() ? std::pair(view.rows[at].name, view.rows[at].note)
                                 : std::pair(QString(), QString());
  }
  QFont name_font(const Type& type) const {
    return orientation() == Qt::Horizontal ? type.role_name : semibold(type.body);
  }

  CandidateModel& model_;
};

// What the columns and rows are, in the corner.
class Corner : public QWidget {
 public:
  Corner(const QString& words, const QString& note, QWidget* parent)
      : QWidget(parent), words_(words), note_(note) {
    setAttribute(Qt::WA_TransparentForMouseEvents);
  }

 protected:
  void paintEvent(QPaintEvent*) override {
    const Ink ink = ink_of(palette());
    const Type type = type_of(font());
    const double u = unit_of_font(font());
    QPainter painter(this);
    painter.fillRect(rect(), ink.header);
    two_lines(&painter, QRectF(inset * u, 8 * u, width() - 2 * inset * u, height()), words_, type.small,
              note_, type.small, ink);
    painter.setPen(ink.edge);
    painter.drawLine(rect().bottomLeft(), rect().bottomRight());
    painter.drawLine(rect().topRight(), rect().bottomRight());
  }

 private:
  const QString& words_;
  const QString& note_;
};

}  // namespace

void CandidateModel::show(CandidateView view) {
  beginResetModel();
  view_ = std::move(view);
  endResetModel();
}

int CandidateModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(view_.rows.size());
}
int CandidateModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(view_.heads.size());
}

QVariant CandidateModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const FactRow& row = view_.rows[static_cast<std::size_t>(index.row())];
  const FactCell& cell = row.cells[static_cast<std::size_t>(index.column())];
  if (role == Qt::DisplayRole) return cell.spoken;
  if (role == Qt::AccessibleTextRole)
    return view_.heads[static_cast<std::size_t>(index.column())].name + QStringLiteral(", ") + row.name +
           QStringLiteral(": ") + cell.spoken;
  return {};
}

QVariant CandidateModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole) return {};
  const auto at = static_cast<std::size_t>(section);
  if (orientation == Qt::Horizontal) return at < view_.heads.size() ? view_.heads[at].name : QVariant();
  return at < view_.rows.size() ? view_.rows[at].name : QVariant();
}

Qt::ItemFlags CandidateModel::flags(const QModelIndex& index) const {
  if (!index.isValid()) return Qt::NoItemFlags;
  const bool heading = view_.rows[static_cast<std::size_t>(index.row())].kind == FactRow::Kind::heading;
  return heading ? Qt::NoItemFlags : Qt::ItemIsEnabled | Qt::ItemIsSelectable;
}

CandidateTable::CandidateTable(QWidget* parent)
    : QTableView(parent),
      model_(new CandidateModel(this)),
      corner_(new Corner(corner_words_, corner_note_, this)) {
  setObjectName(QStringLiteral("candidates"));
  setAccessibleName(tr("Candidates beside the pattern’s yarn"));
  setHorizontalHeader(new CandidateHead(Qt::Horizontal, *model_, this));
  setVerticalHeader(new CandidateHead(Qt::Vertical, *model_, this));
  setModel(model_);
  setItemDelegate(new FactDelegate(*model_, this));
  setShowGrid(false);
  setFrameShape(QFrame::NoFrame);
  setSelectionMode(QAbstractItemView::SingleSelection);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setTabKeyNavigation(false);
  setCornerButtonEnabled(false);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  for (QHeaderView* head : {horizontalHeader(), verticalHeader()}) {
    head->setSectionResizeMode(QHeaderView::Fixed);
    head->setMinimumSectionSize(1);
  }
  dress();
}

void CandidateTable::set_empty_words(const QString& words) {
  empty_words_ = words;
  viewport()->update();
}

void CandidateTable::show_view(CandidateView view, const QString& corner, const QString& corner_note) {
  const int row = std::max(0, currentIndex().row());
  const CandidateId kept = current_candidate();
  const QString row_name = currentIndex().isValid()
                               ? model_->headerData(row, Qt::Vertical, Qt::DisplayRole).toString()
                               : QString();
  corner_words_ = corner;
  corner_note_ = corner_note;
  model_->show(std::move(view));
  share_width();
  int again = 0;
  for (int at = 0; at < model_->rowCount(); ++at)
    if (model_->headerData(at, Qt::Vertical, Qt::DisplayRole).toString() == row_name) again = at;
  if (model_->rowCount() > 0) setCurrentIndex(model_->index(again, 0));
  choose_candidate(kept);
  // A cell that grew beyond the window is read from its top.
  if (currentIndex().isValid() && rowHeight(currentIndex().row()) > viewport()->height() / 2)
    scrollTo(currentIndex(), QAbstractItemView::PositionAtTop);
  corner_->update();
}

CandidateId CandidateTable::current_candidate() const {
  const auto& heads = model_->view().heads;
  const auto at = static_cast<std::size_t>(std::max(0, currentIndex().column()));
  return at < heads.size() ? heads[at].candidate : CandidateId{};
}

void CandidateTable::show_from_top(CandidateId id) {
  if (model_->rowCount() == 0) return;
  setCurrentIndex(model_->index(0, 0));
  scrollToTop();
  choose_candidate(id);
}

void CandidateTable::choose_candidate(CandidateId id) {
  const auto& heads = model_->view().heads;
  for (std::size_t at = 0; at < heads.size(); ++at)
    if (heads[at].candidate == id)
      setCurrentIndex(model_->index(std::max(0, currentIndex().row()), static_cast<int>(at)));
}

QString CandidateTable::as_text() const {
  QStringList lines, head{QString()};
  for (const FactHead& one : model_->view().heads) head << one.name;
  lines << head.join(QLatin1Char('\t'));
  for (const FactRow& row : model_->view().rows) {
    QStringList cells{row.name};
    for (const FactCell& cell : row.cells) cells << cell.spoken;
    lines << cells.join(QLatin1Char('\t'));
  }
  return lines.join(QLatin1Char('\n'));
}

void CandidateTable::activate_current() {
  const QModelIndex cell = currentIndex();
  if (!cell.isValid()) return;
  if (model_->view().rows[static_cast<std::size_t>(cell.row())].kind == FactRow::Kind::consequences)
    emit wants_all_consequences();
  else
    emit wants_candidate(current_candidate().value);
}

void CandidateTable::keyPressEvent(QKeyEvent* event) {
  if (event->matches(QKeySequence::Copy))
    QApplication::clipboard()->setText(as_text());
  else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
    activate_current();
  else
    return QTableView::keyPressEvent(event);
  event->accept();
}

void CandidateTable::mouseDoubleClickEvent(QMouseEvent* event) {
  QTableView::mouseDoubleClickEvent(event);
  if (indexAt(event->position().toPoint()).isValid()) activate_current();
}

void CandidateTable::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  if (event->size().width() != event->oldSize().width()) share_width();
}

void CandidateTable::changeEvent(QEvent* event) {
  QTableView::changeEvent(event);
  if (event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange) dress();
}

void CandidateTable::paintEvent(QPaintEvent* event) {
  QTableView::paintEvent(event);
  if (empty_words_.isEmpty() || model_->columnCount() > 1) return;
  const int left = horizontalHeader()->length() + scaled(this, 24);
  const QRect room = viewport()->rect().adjusted(left, scaled(this, 20), -scaled(this, 24), 0);
  QPainter painter(viewport());
  painter.setPen(ink_of(palette()).muted);
  painter.drawText(room, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, empty_words_);
}

void CandidateTable::updateGeometries() {
  QTableView::updateGeometries();
  corner_->setGeometry(0, 0, verticalHeader()->width(), horizontalHeader()->height());
  corner_->raise();
  corner_->setVisible(model_->columnCount() > 0);
}

void CandidateTable::dress() {
  verticalHeader()->setFixedWidth(scaled(this, head_width));
  share_width();
}

void CandidateTable::share_width() {
  const int columns = model_->columnCount();
  if (columns == 0) return;
  const int room = width() - verticalHeader()->width() - scaled(this, 16);
  const int each = std::clamp(room / columns, scaled(this, least_column), scaled(this, widest_column));
  for (int column = 0; column < columns; ++column) horizontalHeader()->resizeSection(column, each);
  share_height();
}

// Rows as high as their fullest cell.
void CandidateTable::share_height() {
  const Ink ink = ink_of(palette());
  const Type type = type_of(font());
  const double unit = unit_of_font(font());
  const CellLook look{ink, type, unit, false};
  auto* across = static_cast<CandidateHead*>(horizontalHeader());
  double head = head_height * unit;
  for (int column = 0; column < model_->columnCount(); ++column)
    head = std::max(head, across->needed_height(column, font()));
  across->setFixedHeight(static_cast<int>(std::ceil(head)));
  auto* down = static_cast<CandidateHead*>(verticalHeader());
  const auto& rows = model_->view().rows;
  for (std::size_t row = 0; row < rows.size(); ++row) {
    double height = heading_height * unit;
    if (rows[row].kind != FactRow::Kind::heading) {
      height = std::max(height, down->needed_height(static_cast<int>(row), font()) - 3 * unit);
      for (std::size_t column = 0; column < rows[row].cells.size(); ++column) {
        const QRectF room(0, 0, horizontalHeader()->sectionSize(static_cast<int>(column)), 0);
        height = std::max(height, lay_fact_cell(nullptr, room, rows[row].cells[column], look));
      }
    }
    down->resizeSection(static_cast<int>(row), static_cast<int>(std::ceil(height)));
  }
  updateGeometries();
}

}  // namespace skeinproof
