// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/panes.h"

#include <QApplication>
#include <QSplitter>

#include "app/widgets/pane_header.h"

namespace skeinproof {

namespace {

bool takes_focus(const QWidget* widget) {
  return widget->isVisible() && widget->isEnabled() && (widget->focusPolicy() & Qt::TabFocus);
}

bool is_in_header(const QWidget* widget) {
  return qobject_cast<PaneHeader*>(widget->parentWidget()) != nullptr;
}

// The first widget of the pane that Tab would reach, or the one of a view that has its place in it; a button
// of the pane's bar only where there is nothing else.
QWidget* first_focus(QWidget* pane) {
  if (pane->focusWidget() && pane->focusWidget() != pane && takes_focus(pane->focusWidget()) &&
      !is_in_header(pane->focusWidget()))
    return pane->focusWidget();
  if (takes_focus(pane)) return pane;
  QWidget* button = nullptr;
  for (QWidget* at = pane->nextInFocusChain(); at != pane; at = at->nextInFocusChain())
    if (pane->isAncestorOf(at) && takes_focus(at)) {
      if (!is_in_header(at)) return at;
      if (button == nullptr) button = at;
    }
  return button;
}

void collect(QWidget* widget, std::vector<QWidget*>& panes) {
  QSplitter* splitter = qobject_cast<QSplitter*>(widget);
  if (!splitter)
    for (QSplitter* inner : widget->findChildren<QSplitter*>())
      if (inner->isVisible()) {
        splitter = inner;
        break;
      }
  if (!splitter) {
    if (widget->isVisible() && first_focus(widget)) panes.push_back(widget);
    return;
  }
  for (int i = 0; i < splitter->count(); ++i) collect(splitter->widget(i), panes);
}

}  // namespace

std::vector<QWidget*> panes_of(QWidget* widget) {
  std::vector<QWidget*> panes;
  collect(widget, panes);
  return panes;
}

void focus_next_pane(const std::vector<QWidget*>& panes, bool backwards) {
  if (panes.empty()) return;
  const QWidget* focus = QApplication::focusWidget();
  std::size_t at = backwards ? 0 : panes.size() - 1;
  bool inside = false;
  for (std::size_t i = 0; i < panes.size(); ++i)
    if (focus && (panes[i] == focus || panes[i]->isAncestorOf(focus))) {
      at = i;
      inside = true;
    }
  // The bar over several panes stands before the first of them.
  for (const QWidget* above = focus; above != nullptr && !inside; above = above->parentWidget())
    for (std::size_t i = 0; i < panes.size() && !inside; ++i)
      if (above->isAncestorOf(panes[i])) {
        at = backwards ? i : (i + panes.size() - 1) % panes.size();
        inside = true;
      }
  for (std::size_t tried = 0; tried < panes.size(); ++tried) {
    at = (at + (backwards ? panes.size() - 1 : 1)) % panes.size();
    if (QWidget* target = first_focus(panes[at])) {
      target->setFocus(backwards ? Qt::BacktabFocusReason : Qt::TabFocusReason);
      return;
    }
  }
}

}  // namespace skeinproof
