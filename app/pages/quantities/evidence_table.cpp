// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/quantities/evidence_table.h"

#include <QEvent>
#include <QFontInfo>
#include <QHeaderView>
#include <QPainter>
#include <QStyledItemDelegate>
#include <algorithm>
#include <cmath>

#include "app/pages/quantities/need_cell.h"
#include "core/need/layer.h"

namespace skeinproof {
namespace {

constexpr double row_height = 31;
constexpr double head_height = 22;
constexpr double band_height = 12;
constexpr double stroke_width = 3.5;

double x_in(const QRectF& rect, const EvidenceData& data, double length) {
  const double share = data.to > data.from ? (length - data.from) / (data.to - data.from) : 0;
  return rect.left() + rect.width() * std::clamp(share, 0.0, 1.0);
}
QRectF picture_of(const QRect& rect, double unit) {
  return QRectF(rect).adjusted(10 * unit, 0, -10 * unit, 0);
}

double unit_of_font(const QFont& font) { return QFontInfo(font).pixelSize() / 13.0; }

class EvidenceHead : public QHeaderView {
 public:
  EvidenceHead(EvidenceModel& model, QWidget* parent) : QHeaderView(Qt::Horizontal, parent), model_(model) {}

 protected:
  void paintSection(QPainter* painter, const QRect& rect, int section) const override {
    const Ink ink = ink_of(palette());
    const Type type = type_of(font());
    const double unit = unit_of_font(font());
    const QFontMetricsF metrics(type.small);
    const double baseline = rect.center().y() + (metrics.ascent() - metrics.descent()) / 2;
    painter->save();
    painter->fillRect(rect, ink.base);
    painter->setFont(type.small);
    painter->setPen(ink.muted);
    if (section == EvidenceModel::PictureColumn) {
      const QRectF picture = picture_of(rect, unit);
      double free_from = rect.left();
      for (const ScaleMark& mark : model_.shown().marks) {
        const QString words =
            mark.left.isEmpty() ? mark.right : mark.left + QStringLiteral(", ") + mark.right;
        const double width = metrics.horizontalAdvance(words);
        const double x = std::clamp(x_in(picture, model_.shown(), mark.value) - width / 2,
                                    double(rect.left()), std::max<double>(rect.left(), rect.right() - width));
        if (x < free_from) continue;
        painter->drawText(QPointF(x, baseline), words);
        free_from = x + width + 8 * unit;
      }
    } else {
      const QString words = model_.headerData(section, Qt::Horizontal, Qt::DisplayRole).toString();
      painter->drawText(QPointF(rect.right() - 8 * unit - metrics.horizontalAdvance(words), baseline), words);
    }
    painter->setPen(ink.rule);
    painter->drawLine(rect.bottomLeft(), rect.bottomRight());
    painter->restore();
  }

 private:
  EvidenceModel& model_;
};

class EvidenceDelegate : public QStyledItemDelegate {
 public:
  EvidenceDelegate(EvidenceModel& model, QObject* parent) : QStyledItemDelegate(parent), model_(model) {}

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const Ink ink = ink_of(option.palette);
    const Type type = type_of(option.font);
    const double unit = unit_of_font(option.font);
    const EvidenceRow& row = model_.shown().rows[static_cast<std::size_t>(index.row())];
    painter->save();
    if (option.state.testFlag(QStyle::State_Selected)) painter->fillRect(option.rect, ink.tint);
    if (index.column() == EvidenceModel::KindColumn)
      paint_kind(*painter, option.rect, row, ink, type, unit);
    else if (index.column() == EvidenceModel::PictureColumn)
      paint_picture(*painter, option.rect, row, ink, unit);
    else
      paint_figure(*painter, option.rect, index, ink, type, unit);
    painter->setPen(ink.rule);
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    painter->restore();
  }

 private:
  static void paint_kind(QPainter& painter, const QRect& rect, const EvidenceRow& row, const Ink& ink,
                         const Type& type, double unit) {
    QFont strong = type.body;
    strong.setWeight(QFont::DemiBold);
    const double left = rect.left() + 10 * unit;
    const double middle = rect.center().y();
    painter.setFont(strong);
    painter.setPen(ink.text);
    painter.drawText(QPointF(left, middle - 2 * unit), row.kind);
    painter.setFont(type.small);
    painter.setPen(ink.muted);
    painter.drawText(QPointF(left, middle + 11.5 * unit),
                     QFontMetricsF(type.small).elidedText(row.because, Qt::ElideRight, rect.right() - left));
  }

  void paint_picture(QPainter& painter, const QRect& rect, const EvidenceRow& row, const Ink& ink,
                     double unit) const {
    const EvidenceData& data = model_.shown();
    const QRectF picture = picture_of(rect, unit);
    painter.setPen(ink.edge);
    for (const ScaleMark& mark : data.marks) {
      const double x = x_in(picture, data, mark.value);
      painter.drawLine(QPointF(x, rect.top()), QPointF(x, rect.bottom()));
    }
    const QRectF band(QPointF(x_in(picture, data, row.low), picture.center().y() - band_height * unit / 2),
                      QPointF(x_in(picture, data, row.high), picture.center().y() + band_height * unit / 2));
    painter.setBrush(ink.band);
    painter.setPen(ink.text);
    painter.drawRect(band);
    if (!row.planned) return;
    painter.setPen(QPen(ink.text, stroke_width * unit, Qt::SolidLine, Qt::FlatCap));
    const double x = x_in(picture, data, *row.planned);
    painter.drawLine(QPointF(x, band.top() - 3 * unit), QPointF(x, band.bottom() + 3 * unit));
  }

  static void paint_figure(QPainter& painter, const QRect& rect, const QModelIndex& index, const Ink& ink,
                           const Type& type, double unit) {
    QFont font = type.body;
    if (index.column() == EvidenceModel::PlannedColumn) font.setWeight(QFont::DemiBold);
    painter.setFont(font);
    painter.setPen(index.column() == EvidenceModel::SkeinsColumn ? ink.muted : ink.text);
    painter.drawText(QRectF(rect).adjusted(0, 0, -8 * unit, 0), Qt::AlignRight | Qt::AlignVCenter,
                     index.data().toString());
  }

  EvidenceModel& model_;
};

QString range_of(const QString& low, const QString& high) {
  return low == high ? low : low + QStringLiteral("–") + high;
}

QString with_capital(QString words) {
  if (!words.isEmpty()) words[0] = words[0].toUpper();
  return words;
}

QString length_range(Metres low, Metres high, const ReaderStyle& reader) {
  return range_of(length_figure(low, reader), length_figure(high, reader)) + QLatin1Char(' ') +
         length_unit(reader);
}

EvidenceRow row_of(const Evidence& evidence, const ReaderStyle& reader) {
  EvidenceRow row;
  const std::string_view kind = word_of(evidence.kind);
  row.kind = with_capital(QString::fromUtf8(kind.data(), static_cast<qsizetype>(kind.size())));
  row.because = QString::fromStdString(evidence.because);
  row.planned = evidence.planned.value();
  row.low = evidence.low.value();
  row.high = evidence.high.value();
  row.planned_text = length_figure(evidence.planned, reader) + QLatin1Char(' ') + length_unit(reader);
  row.range_text = length_range(evidence.low, evidence.high, reader);
  return row;
}

EvidenceRow row_of_counts(const Pattern& pattern, const SizeEvidence& size, const ReaderStyle& reader) {
  EvidenceRow row;
  row.kind = EvidenceTable::tr("By printed counts");
  const auto label = [&](std::size_t at) { return QString::fromStdString(pattern.sizes[at].label); };
  row.because = EvidenceTable::tr("least told by size %1, most told by size %2")
                    .arg(label(size.told_low), label(size.told_high));
  row.low = size.printed_counts->low.value();
  row.high = size.printed_counts->high.value();
  row.range_text = length_range(size.printed_counts->low, size.printed_counts->high, reader);
  return row;
}

// Room beside the ranges, and whole skeins on both sides, which give the range its place.
void set_scale(EvidenceData& data, double least, double most, const ReaderStyle& reader) {
  const double margin = std::max((most - least) * 0.1, most * 0.01);
  data.from = std::max(0.0, least - margin);
  data.to = most + margin;
  if (!data.skein) return;
  const double skein = *data.skein;
  data.from = std::min(data.from, std::floor(least / skein) * skein);
  data.to = std::max(data.to, std::ceil(most / skein) * skein);
  for (double count = std::max(1.0, std::ceil(data.from / skein)); count * skein <= data.to + 1e-9; ++count)
    data.marks.push_back(
        {count * skein, count == 1 ? EvidenceTable::tr("1 skein") : EvidenceTable::tr("%1 skeins").arg(count),
         length_figure(metres(count * skein), reader) + QLatin1Char(' ') + length_unit(reader), false});
}

}  // namespace

EvidenceData evidence_of(const Pattern& pattern, const RoleEvidence& gathered, const SizeNeed& need,
                         std::size_t size_index, const ReaderStyle& reader) {
  EvidenceData data;
  const auto skein = skein_length(pattern, gathered.role);
  if (skein) data.skein = skein->value();
  for (const Evidence& evidence : need.all_evidence) data.rows.push_back(row_of(evidence, reader));
  const SizeEvidence& size = gathered.sizes[size_index];
  if (size.printed_counts) data.rows.push_back(row_of_counts(pattern, size, reader));
  if (data.rows.empty()) return data;
  double least = 1e300, most = 0;
  for (EvidenceRow& row : data.rows) {
    if (skein)
      row.skeins_text = range_of(QString::number(whole_skeins(metres(row.low), *skein)),
                                 QString::number(whole_skeins(metres(row.high), *skein)));
    least = std::min(least, row.low);
    most = std::max(most, row.high);
  }
  set_scale(data, least, most, reader);
  return data;
}

void EvidenceModel::show(EvidenceData data) {
  beginResetModel();
  data_ = std::move(data);
  endResetModel();
}

int EvidenceModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(data_.rows.size());
}
int EvidenceModel::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : ColumnCount; }

QVariant EvidenceModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || static_cast<std::size_t>(index.row()) >= data_.rows.size()) return {};
  const EvidenceRow& row = data_.rows[static_cast<std::size_t>(index.row())];
  if (role == Qt::ToolTipRole) return row.because;
  if (role == Qt::AccessibleTextRole)
    return row.planned ? tr("%1: planned %2, 9 in 10 between %3, skeins %4. %5")
                             .arg(row.kind, row.planned_text, row.range_text, row.skeins_text, row.because)
                       : tr("%1: between %2, skeins %3. %4")
                             .arg(row.kind, row.range_text, row.skeins_text, row.because);
  if (role != Qt::DisplayRole) return {};
  switch (index.column()) {
    case KindColumn:
      return row.kind;
    case PictureColumn:
    case RangeColumn:
      return row.range_text;
    case PlannedColumn:
      return row.planned_text;
    case SkeinsColumn:
      return row.skeins_text;
    default:
      return {};
  }
}

QVariant EvidenceModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  switch (section) {
    case PlannedColumn:
      return tr("planned");
    case RangeColumn:
      return tr("range, 9 in 10");
    case SkeinsColumn:
      return tr("skeins");
    default:
      return QString();
  }
}

EvidenceTable::EvidenceTable(QWidget* parent) : QTableView(parent), model_(new EvidenceModel(this)) {
  setObjectName(QStringLiteral("evidence"));
  setAccessibleName(tr("Evidence for the chosen figure"));
  setHorizontalHeader(new EvidenceHead(*model_, this));
  setItemDelegate(new EvidenceDelegate(*model_, this));
  setModel(model_);
  setShowGrid(false);
  setFrameShape(QFrame::NoFrame);
  setSelectionBehavior(QAbstractItemView::SelectRows);
  setSelectionMode(QAbstractItemView::SingleSelection);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setTabKeyNavigation(false);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  verticalHeader()->hide();
  horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  horizontalHeader()->setMinimumSectionSize(1);
  re_ink();
}

void EvidenceTable::show_evidence(EvidenceData shown) {
  model_->show(std::move(shown));
  share_width();
  updateGeometry();
}

void EvidenceTable::re_ink() {
  const double unit = unit_of_font(font());
  verticalHeader()->setMinimumSectionSize(1);
  verticalHeader()->setDefaultSectionSize(static_cast<int>(std::lround(row_height * unit)));
  horizontalHeader()->setFixedHeight(static_cast<int>(std::lround(head_height * unit)));
  share_width();
}

void EvidenceTable::share_width() {
  const double unit = unit_of_font(font());
  const QFontMetricsF metrics(type_of(font()).body);
  int taken = 0;
  for (const int column :
       {EvidenceModel::PlannedColumn, EvidenceModel::RangeColumn, EvidenceModel::SkeinsColumn}) {
    double widest =
        metrics.horizontalAdvance(model_->headerData(column, Qt::Horizontal, Qt::DisplayRole).toString());
    for (int row = 0; row < model_->rowCount(); ++row)
      widest =
          std::max(widest, metrics.horizontalAdvance(model_->index(row, column).data().toString()) * 1.06);
    const int width = static_cast<int>(widest + 18 * unit);
    horizontalHeader()->resizeSection(column, width);
    taken += width;
  }
  const int rest = std::max(2, viewport()->width() - taken);
  const int kind = std::min(static_cast<int>(250 * unit), rest / 2);
  horizontalHeader()->resizeSection(EvidenceModel::KindColumn, kind);
  horizontalHeader()->resizeSection(EvidenceModel::PictureColumn, std::max(1, rest - kind));
}

QSize EvidenceTable::sizeHint() const {
  const double unit = unit_of_font(font());
  return {static_cast<int>(600 * unit),
          static_cast<int>((head_height + row_height * std::max(2, model_->rowCount()) + 1) * unit)};
}

void EvidenceTable::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  share_width();
}

void EvidenceTable::changeEvent(QEvent* event) {
  QTableView::changeEvent(event);
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange ||
      event->type() == QEvent::StyleChange)
    re_ink();
}

}  // namespace skeinproof
