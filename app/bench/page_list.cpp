// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/page_list.h"

#include <QEvent>
#include <QPainter>
#include <QStandardItemModel>
#include <QStyledItemDelegate>
#include <algorithm>

#include "app/widgets/ink.h"

namespace skeinproof {

namespace {

constexpr int attention_role = Qt::UserRole;

class PageListDelegate : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const auto* list = static_cast<const QWidget*>(option.widget);
    const int name = option.fontMetrics.horizontalAdvance(index.data().toString());
    const QString word = index.data(attention_role).toString();
    const int beside = word.isEmpty() ? 0 : option.fontMetrics.horizontalAdvance(word) + scaled(list, 10);
    return {name + beside + scaled(list, 22), scaled(list, 30)};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const Ink ink = ink_of(option.palette);
    const bool current = option.state & QStyle::State_Selected;
    const QRect inside = option.rect.adjusted(scaled(option.widget, 10), 0, -scaled(option.widget, 10), 0);
    painter->save();
    painter->fillRect(option.rect, current ? ink.highlight : ink.base);
    painter->setPen(current ? ink.highlighted_text : ink.text);
    painter->setFont(option.font);
    painter->drawText(inside, Qt::AlignLeft | Qt::AlignVCenter, index.data().toString());
    painter->setFont(type_of(option.font).small);
    painter->drawText(inside, Qt::AlignRight | Qt::AlignVCenter, index.data(attention_role).toString());
    if (current && (option.state & QStyle::State_HasFocus)) {
      painter->setPen(QPen(ink.highlighted_text, 1, Qt::DotLine));
      painter->drawRect(option.rect.adjusted(2, 2, -3, -3));
    }
    painter->restore();
  }
};

}  // namespace

PageList::PageList(QWidget* parent) : QListView(parent), items_(new QStandardItemModel(this)) {
  setModel(items_);
  setItemDelegate(new PageListDelegate(this));
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setFrameShape(QFrame::NoFrame);
  setUniformItemSizes(true);
  setAccessibleName(tr("Pages"));
}

void PageList::add(const QString& name) {
  auto* item = new QStandardItem(name);
  item->setEditable(false);
  item->setAccessibleText(name);
  items_->appendRow(item);
  fit();
}

void PageList::set_attention(int row, const QString& word) {
  QStandardItem* item = items_->item(row);
  if (!item || item->data(attention_role).toString() == word) return;
  item->setData(word, attention_role);
  item->setAccessibleText(word.isEmpty() ? item->text() : item->text() + QStringLiteral(", ") + word);
  fit();
}

QString PageList::name(int row) const { return items_->item(row)->text(); }
int PageList::count() const { return items_->rowCount(); }

void PageList::set_current(int row) { setCurrentIndex(items_->index(row, 0)); }

void PageList::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QListView::currentChanged(current, previous);
  if (current.isValid()) emit chosen(current.row());
}

void PageList::changeEvent(QEvent* event) {
  QListView::changeEvent(event);
  if (event->type() == QEvent::FontChange) fit();
}

void PageList::fit() {
  int widest = scaled(this, 164);
  for (int row = 0; row < count(); ++row)
    widest = std::max(widest, sizeHintForIndex(items_->index(row, 0)).width());
  setFixedWidth(widest);
  scheduleDelayedItemsLayout();
}

}  // namespace skeinproof
