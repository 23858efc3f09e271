// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/assumptions/sensitivity_list.h"

#include <QFontInfo>
#include <QPainter>
#include <QStyledItemDelegate>
#include <algorithm>
#include <cmath>

#include "app/widgets/count_words.h"
#include "app/widgets/ink.h"

namespace skeinproof {
namespace {

constexpr double row_height = 40;
constexpr double bar_height = 9;
constexpr double margin = 10;

double unit_of_font(const QFont& font) { return QFontInfo(font).pixelSize() / 13.0; }

QString share_text(double share, const ReaderStyle& reader) {
  const QString size = QString::fromStdString(show_number(std::abs(100 * share), 1, reader.numbers));
  return (share < 0 ? QStringLiteral("−") : share > 0 ? QStringLiteral("+") : QString()) + size;
}

struct Measure {
  Moves moves;
  double (Sensitivity::*largest)() const;
  double (ConstantMove::*of_move)() const;
  const char* words;
};
constexpr Measure measures[] = {
    {Moves::planned, &Sensitivity::largest_planned_share, &ConstantMove::largest_planned_share,
     QT_TRANSLATE_NOOP("skeinproof::SensitivityList", "%1 to %2 %")},
    {Moves::upper_bound, &Sensitivity::largest_high_share, &ConstantMove::largest_high_share,
     QT_TRANSLATE_NOOP("skeinproof::SensitivityList", "upper bound %1 to %2 %")},
    {Moves::chance, &Sensitivity::largest_chance_points, &ConstantMove::largest_chance_points,
     QT_TRANSLATE_NOOP("skeinproof::SensitivityList", "chance %1 to %2 points")},
    {Moves::printed_counts, &Sensitivity::largest_told_share, &ConstantMove::largest_told_share,
     QT_TRANSLATE_NOOP("skeinproof::SensitivityList", "left open by the counts %1 to %2 %")}};

const Measure& measure_of(const Sensitivity& one) {
  for (const Measure& measure : measures)
    if ((one.*measure.largest)() > 0) return measure;
  return measures[0];
}

class SensitivityDelegate : public QStyledItemDelegate {
 public:
  SensitivityDelegate(SensitivityModel& model, QObject* parent)
      : QStyledItemDelegate(parent), model_(model) {}

  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const override {
    return {static_cast<int>(280 * unit_of_font(option.font)),
            static_cast<int>(std::lround(row_height * unit_of_font(option.font)))};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const SensitivityRow& row = model_.rows()[static_cast<std::size_t>(index.row())];
    const Ink ink = ink_of(option.palette);
    const Type type = type_of(option.font);
    const double unit = unit_of_font(option.font);
    const QRectF rect = QRectF(option.rect).adjusted(margin * unit, 0, -margin * unit, 0);
    painter->save();
    if (option.state.testFlag(QStyle::State_Selected)) painter->fillRect(option.rect, ink.tint);
    paint_words(*painter, rect, row, ink, type, unit);
    paint_bar(*painter, rect, row, ink, unit);
    painter->setPen(ink.rule);
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    painter->restore();
  }

 private:
  static void paint_words(QPainter& painter, const QRectF& rect, const SensitivityRow& row, const Ink& ink,
                          const Type& type, double unit) {
    const QString right = row.words();
    const double baseline = rect.top() + 16 * unit;
    const QFontMetricsF small(type.small), body(type.body);
    const double right_width = small.horizontalAdvance(right);
    painter.setFont(type.small);
    painter.setPen(row.counts.isEmpty() ? ink.muted : ink.text);
    painter.drawText(QPointF(rect.right() - right_width, baseline), right);
    painter.setFont(type.body);
    painter.setPen(ink.text);
    painter.drawText(QPointF(rect.left(), baseline),
                     body.elidedText(row.name, Qt::ElideRight, rect.width() - right_width - 12 * unit));
  }

  void paint_bar(QPainter& painter, const QRectF& rect, const SensitivityRow& row, const Ink& ink,
                 double unit) const {
    const double middle = rect.center().x();
    const double scale = model_.widest() > 0 ? rect.width() / 2 / model_.widest() : 0;
    const double top = rect.top() + 23 * unit;
    painter.setPen(ink.text);
    painter.setBrush(row.moves == Moves::planned ? ink.fill : ink.base);
    for (const double share : {row.lower, row.higher})
      if (std::abs(share * scale) >= 0.5)
        painter.drawRect(
            QRectF(QPointF(middle, top), QPointF(middle + share * scale, top + bar_height * unit))
                .normalized());
    painter.setPen(ink.edge);
    painter.drawLine(QPointF(middle, top - 3 * unit), QPointF(middle, top + (bar_height + 3) * unit));
  }

  SensitivityModel& model_;
};

}  // namespace

std::vector<SensitivityRow> sensitivity_rows(const std::vector<Sensitivity>& ranked,
                                             const ReaderStyle& reader) {
  std::vector<SensitivityRow> rows;
  for (const Sensitivity& one : ranked) {
    SensitivityRow row;
    row.key = QString::fromUtf8(one.constant->key.data(), static_cast<qsizetype>(one.constant->key.size()));
    row.name =
        QString::fromUtf8(one.constant->name.data(), static_cast<qsizetype>(one.constant->name.size()));
    const Measure& measure = measure_of(one);
    row.moves = measure.moves;
    row.lower = (one.lower.*measure.of_move)();
    row.higher = (one.higher.*measure.of_move)();
    row.figures =
        SensitivityList::tr(measure.words).arg(share_text(row.lower, reader), share_text(row.higher, reader));
    if (one.counts_moved() > 0)
      row.counts = count_words(one.counts_moved(), SensitivityList::tr("skein count"),
                               SensitivityList::tr("skein counts"));
    rows.push_back(std::move(row));
  }
  return rows;
}

void SensitivityModel::show(std::vector<SensitivityRow> rows) {
  beginResetModel();
  rows_ = std::move(rows);
  widest_ = 0;
  for (const SensitivityRow& row : rows_)
    widest_ = std::max({widest_, std::abs(row.lower), std::abs(row.higher)});
  endResetModel();
}

int SensitivityModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant SensitivityModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || static_cast<std::size_t>(index.row()) >= rows_.size()) return {};
  const SensitivityRow& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == Qt::DisplayRole || role == Qt::ToolTipRole) return row.name;
  if (role == Qt::AccessibleTextRole) return row.name + QStringLiteral(": ") + row.words();
  return {};
}

SensitivityList::SensitivityList(QWidget* parent) : QListView(parent), model_(new SensitivityModel(this)) {
  setObjectName(QStringLiteral("sensitivity"));
  setAccessibleName(tr("What moves the needs most"));
  setModel(model_);
  setItemDelegate(new SensitivityDelegate(*model_, this));
  setFrameShape(QFrame::NoFrame);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setUniformItemSizes(true);
}

void SensitivityList::show_rows(std::vector<SensitivityRow> rows) {
  const QString key = currentIndex().isValid()
                          ? model_->rows()[static_cast<std::size_t>(currentIndex().row())].key
                          : QString();
  model_->show(std::move(rows));
  choose(key);
}

void SensitivityList::choose(const QString& key) {
  const auto& rows = model_->rows();
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const SensitivityRow& row) { return row.key == key; });
  const QModelIndex index =
      found == rows.end() ? QModelIndex() : model_->index(static_cast<int>(found - rows.begin()));
  if (index == currentIndex()) return;
  setCurrentIndex(index);
  if (index.isValid()) scrollTo(index);
}

void SensitivityList::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QListView::currentChanged(current, previous);
  if (current.isValid()) emit chosen(model_->rows()[static_cast<std::size_t>(current.row())].key);
}

}  // namespace skeinproof
