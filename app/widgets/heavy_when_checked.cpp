// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/heavy_when_checked.h"

#include <QAbstractButton>
#include <QFont>

namespace skeinproof {

void show_checked_heavy(QAbstractButton* button) {
  const auto show = [button](bool on) {
    QFont font;  // only its weight is set: family and size stay the parent's
    font.setWeight(on ? QFont::DemiBold : QFont::Normal);
    button->setFont(font);
  };
  QObject::connect(button, &QAbstractButton::toggled, button, show);
  show(button->isChecked());
}

}  // namespace skeinproof
