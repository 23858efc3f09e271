// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/page_frame.h"

#include <QApplication>
#include <QSplitter>

#include "app/bench/person_settings.h"
#include "app/pages/page.h"

namespace skeinproof {

PageFrame::PageFrame(Page* page, PersonSettings& settings, QWidget* parent) : QScrollArea(parent) {
  setFrameShape(QFrame::NoFrame);
  setFocusPolicy(Qt::NoFocus);
  setWidgetResizable(true);
  setWidget(page);
  remember_splitters(page, settings);
  connect(qApp, &QApplication::focusChanged, this,
          [this](const QWidget*, QWidget* now) { follow_focus(now); });
}

void PageFrame::remember_splitters(Page* page, PersonSettings& settings) {
  int number = 0;
  for (QSplitter* splitter : page->findChildren<QSplitter*>()) {
    const QString name = QStringLiteral("%1/%2").arg(page->objectName()).arg(++number);
    const QList<int> sizes = settings.pane_sizes(name);
    if (sizes.size() == splitter->count()) splitter->setSizes(sizes);
    connect(splitter, &QSplitter::splitterMoved, this,
            [&settings, splitter, name] { settings.set_pane_sizes(name, splitter->sizes()); });
  }
}

void PageFrame::follow_focus(QWidget* now) {
  if (now == nullptr || !isVisible() || !widget()->isAncestorOf(now)) return;
  if (widget()->width() <= viewport()->width() && widget()->height() <= viewport()->height()) return;
  ensureWidgetVisible(now);
}

}  // namespace skeinproof
