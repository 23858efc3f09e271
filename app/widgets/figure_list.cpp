// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/figure_list.h"

#include <QAbstractListModel>
#include <QApplication>
#include <QClipboard>
#include <QKeyEvent>
#include <QListView>
#include <QPainter>
#include <QStyledItemDelegate>
#include <QVBoxLayout>

#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"

namespace skeinproof {

class FigureListModel : public QAbstractListModel {
 public:
  using QAbstractListModel::QAbstractListModel;

  void set_rows(std::vector<FigureRow> rows) {
    const bool same_length = rows.size() == rows_.size();
    if (!same_length) beginResetModel();
    rows_ = std::move(rows);
    if (!same_length)
      endResetModel();
    else if (!rows_.empty())
      emit dataChanged(index(0), index(rowCount() - 1));
  }
  const std::vector<FigureRow>& rows() const { return rows_; }
  const FigureRow& at(const QModelIndex& index) const { return rows_[static_cast<std::size_t>(index.row())]; }

  int rowCount(const QModelIndex& parent = {}) const override {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
  }
  QVariant data(const QModelIndex& index, int role) const override {
    if (!index.isValid()) return {};
    const FigureRow& row = at(index);
    if (role == Qt::DisplayRole) return row.heading ? row.name : row.name + QLatin1Char('\t') + row.figure;
    if (role == Qt::AccessibleTextRole)
      return row.heading ? row.name
                         : row.name + QStringLiteral(": ") + row.figure + QStringLiteral(". ") + row.how;
    if (role == Qt::ToolTipRole) return row.how;
    return {};
  }
  Qt::ItemFlags flags(const QModelIndex& index) const override {
    if (!index.isValid()) return Qt::NoItemFlags;
    return at(index).heading ? Qt::ItemIsEnabled : Qt::ItemIsEnabled | Qt::ItemIsSelectable;
  }

 private:
  std::vector<FigureRow> rows_;
};

namespace {

class FigureDelegate : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const FigureRow& row = row_of(index);
    const int line = option.fontMetrics.height();
    const int gap = scaled(option.widget, 7);
    if (row.heading) return {0, line + scaled(option.widget, 12)};
    return {0, line + gap + (row.how.isEmpty() ? 0 : QFontMetrics(type_of(option.font).small).height())};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const FigureRow& row = row_of(index);
    const Ink ink = ink_of(option.palette);
    const Type type = type_of(option.font);
    const QRect cell = option.rect;
    const int inset = scaled(option.widget, 12);
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    painter->save();
    painter->fillRect(cell, chosen ? ink.tint : ink.base);
    QRect inside = cell.adjusted(inset, scaled(option.widget, 3), -inset, -scaled(option.widget, 3));
    QFont heavy = type.body;
    heavy.setWeight(QFont::DemiBold);
    if (row.heading) {
      painter->setFont(heavy);
      painter->setPen(ink.text);
      painter->drawText(inside, Qt::AlignLeft | Qt::AlignBottom | Qt::TextSingleLine, row.name);
      painter->setPen(ink.edge);
      painter->drawLine(cell.left() + inset, cell.bottom(), cell.right() - inset, cell.bottom());
      painter->restore();
      return;
    }
    const int line = QFontMetrics(type.body).height();
    const QRect first(inside.left(), inside.top(), inside.width(), line);
    painter->setFont(row.strong ? heavy : type.body);
    painter->setPen(ink.text);
    const int figure_width = painter->fontMetrics().horizontalAdvance(row.figure);
    painter->drawText(first, Qt::AlignRight | Qt::TextSingleLine, row.figure);
    const int left = std::max(0, first.width() - figure_width - scaled(option.widget, 8));
    painter->drawText(QRect(first.left(), first.top(), left, line), Qt::AlignLeft | Qt::TextSingleLine,
                      painter->fontMetrics().elidedText(row.name, Qt::ElideRight, left));
    if (!row.how.isEmpty()) {
      painter->setFont(type.small);
      painter->setPen(ink.muted);
      const QRect second(inside.left(), first.bottom() + 1, inside.width(),
                         QFontMetrics(type.small).height());
      painter->drawText(second, Qt::AlignLeft | Qt::TextSingleLine,
                        painter->fontMetrics().elidedText(row.how, Qt::ElideRight, second.width()));
    }
    painter->setPen(ink.rule);
    painter->drawLine(cell.left() + inset, cell.bottom(), cell.right() - inset, cell.bottom());
    if (option.state.testFlag(QStyle::State_HasFocus)) {
      painter->setPen(QPen(ink.focus, 2));
      painter->drawRect(cell.adjusted(1, 1, -1, -2));
    }
    painter->restore();
  }

 private:
  static const FigureRow& row_of(const QModelIndex& index) {
    return static_cast<const FigureListModel*>(index.model())->at(index);
  }
};

}  // namespace

FigureList::FigureList(QWidget* parent)
    : QWidget(parent),
      model_(new FigureListModel(this)),
      view_(new QListView),
      empty_(new QuietLabel),
      foot_(new QWidget),
      chosen_(new QuietLabel) {
  view_->setModel(model_);
  view_->setItemDelegate(new FigureDelegate(view_));
  view_->setFrameShape(QFrame::NoFrame);
  view_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  view_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  view_->setResizeMode(QListView::Adjust);
  view_->installEventFilter(this);
  empty_->setWordWrap(true);
  empty_->setMargin(scaled(this, 12));
  chosen_->setWordWrap(true);
  chosen_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  auto* foot = new QVBoxLayout(foot_);
  foot->addWidget(chosen_);
  foot->setContentsMargins(scaled(this, 12), scaled(this, 8), scaled(this, 12), scaled(this, 8));
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(empty_);
  layout->addWidget(view_, 1);
  layout->addWidget(foot_);
  setFocusProxy(view_);
  connect(view_->selectionModel(), &QItemSelectionModel::currentChanged, this, &FigureList::show_chosen);
  set_rows({});
}

void FigureList::set_empty_words(const QString& words) { empty_->setText(words); }

void FigureList::set_rows(std::vector<FigureRow> rows) {
  model_->set_rows(std::move(rows));
  const bool any = model_->rowCount() > 0;
  empty_->setVisible(!any && !empty_->text().isEmpty());
  show_chosen();
  view_->doItemsLayout();
}

const std::vector<FigureRow>& FigureList::rows() const { return model_->rows(); }
QString FigureList::chosen_words() const { return chosen_->text(); }

QString FigureList::as_text() const {
  QStringList lines;
  for (const FigureRow& row : model_->rows()) {
    if (row.heading) {
      lines << row.name;
      continue;
    }
    QString line = row.name + QLatin1Char('\t') + row.figure;
    if (!row.how.isEmpty() || !row.source.isEmpty()) line += QLatin1Char('\t') + row.how;
    if (!row.source.isEmpty()) line += QLatin1Char('\t') + row.source;
    lines << line;
  }
  return lines.join(QLatin1Char('\n'));
}

void FigureList::show_chosen() {
  const QModelIndex index = view_->currentIndex();
  QString words;
  if (index.isValid()) {
    const FigureRow& row = model_->at(index);
    words = row.how;
    if (!row.source.isEmpty())
      words += (words.isEmpty() ? QString() : QStringLiteral("\n")) + tr("Source: %1").arg(row.source);
  }
  chosen_->setText(words);
  foot_->setVisible(!words.isEmpty());
}

bool FigureList::eventFilter(QObject* watched, QEvent* event) {
  if (watched == view_ && event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->matches(QKeySequence::Copy)) {
    QApplication::clipboard()->setText(as_text());
    return true;
  }
  if (watched == view_ && event->type() == QEvent::FocusIn && !view_->currentIndex().isValid())
    for (int row = 0; row < model_->rowCount(); ++row)
      if (!model_->rows()[static_cast<std::size_t>(row)].heading) {
        view_->setCurrentIndex(model_->index(row));
        break;
      }
  return QWidget::eventFilter(watched, event);
}

void FigureList::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) view_->doItemsLayout();
}

}  // namespace skeinproof
