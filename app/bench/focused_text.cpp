// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/focused_text.h"

#include <QApplication>
#include <QPointer>
#include <QWidget>

namespace skeinproof {

void take_focused_text() {
  const QPointer<QWidget> typing(QApplication::focusWidget());
  if (!typing) return;
  typing->clearFocus();
  if (typing) typing->setFocus();
}

}  // namespace skeinproof
