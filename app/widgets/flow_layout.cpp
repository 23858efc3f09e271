// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/flow_layout.h"

#include <QWidget>
#include <algorithm>

namespace skeinproof {

FlowLayout::~FlowLayout() {
  for (QLayoutItem* item : items_) delete item;
}

QLayoutItem* FlowLayout::itemAt(int index) const {
  return index >= 0 && index < count() ? items_[static_cast<std::size_t>(index)] : nullptr;
}

QLayoutItem* FlowLayout::takeAt(int index) {
  QLayoutItem* item = itemAt(index);
  if (item) items_.erase(items_.begin() + index);
  return item;
}

QSize FlowLayout::sizeHint() const {
  int width = 0;
  for (const QLayoutItem* item : items_)
    if (!item->isEmpty()) width += item->sizeHint().width() + std::max(0, spacing());
  const QMargins margins = contentsMargins();
  width += margins.left() + margins.right();
  return {width, lay(QRect(0, 0, width, 0), false)};
}

QSize FlowLayout::minimumSize() const {
  QSize least;
  for (const QLayoutItem* item : items_)
    if (!item->isEmpty()) least = least.expandedTo(item->minimumSize());
  const QMargins margins = contentsMargins();
  return least + QSize(margins.left() + margins.right(), margins.top() + margins.bottom());
}

void FlowLayout::setGeometry(const QRect& rect) {
  QLayout::setGeometry(rect);
  lay(rect, true);
}

int FlowLayout::lay(const QRect& rect, bool place) const {
  const QRect area = rect.marginsRemoved(contentsMargins());
  const int gap = std::max(0, spacing());
  std::vector<std::vector<std::size_t>> lines;
  int used = 0;
  for (std::size_t i = 0; i < items_.size(); ++i) {
    if (items_[i]->isEmpty()) continue;
    const int width = items_[i]->sizeHint().width();
    if (lines.empty() || (used > 0 && used + width > area.width())) {
      lines.emplace_back();
      used = 0;
    }
    lines.back().push_back(i);
    used += width + gap;
  }
  int y = area.top();
  for (const auto& line : lines) {
    int height = 0, total = -gap;
    for (const std::size_t i : line) {
      height = std::max(height, items_[i]->sizeHint().height());
      total += items_[i]->sizeHint().width() + gap;
    }
    int x = area.left();
    for (const std::size_t i : line) {
      const QSize size = items_[i]->sizeHint();
      if (i == stretch_before_ && lines.size() == 1) x += std::max(0, area.width() - total);
      if (place)
        items_[i]->setGeometry(
            QRect(x, y + (height - size.height()) / 2, std::min(size.width(), area.width()), size.height()));
      x += size.width() + gap;
    }
    y += height + gap;
  }
  const QMargins margins = contentsMargins();
  return y - gap - rect.top() + (lines.empty() ? gap : 0) + margins.bottom();
}

}  // namespace skeinproof
