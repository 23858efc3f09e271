// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/icons.h"

#include <QApplication>
#include <QFile>
#include <QPainter>
#include <QPalette>
#include <QPixmap>
#include <QSvgRenderer>

// The pictures live in a library, which does not load them by itself.
static void load_pictures() { Q_INIT_RESOURCE(icons); }

namespace skeinproof {

namespace {

QPixmap drawn(const QString& name, const QColor& ink, int side) {
  load_pictures();
  QFile file(QStringLiteral(":/icons/%1.svg").arg(name));
  if (!file.open(QIODevice::ReadOnly)) return {};
  QSvgRenderer picture(file.readAll().replace("currentColor", ink.name().toLatin1()));
  QPixmap pixmap(side, side);
  pixmap.fill(Qt::transparent);
  QPainter painter(&pixmap);
  picture.render(&painter);
  return pixmap;
}

}  // namespace

QIcon drawn_icon(DrawnIcon icon) {
  const QString name = icon == DrawnIcon::undo ? QStringLiteral("undo") : QStringLiteral("redo");
  const QPalette palette = QApplication::palette();
  QIcon both;
  for (const int side : {16, 24, 32, 48, 64}) {
    both.addPixmap(drawn(name, palette.color(QPalette::Active, QPalette::ButtonText), side));
    both.addPixmap(drawn(name, palette.color(QPalette::Disabled, QPalette::ButtonText), side),
                   QIcon::Disabled);
  }
  return both;
}

QIcon program_icon() {
  load_pictures();
  return QIcon(QStringLiteral(":/icons/skeinproof.svg"));
}

}  // namespace skeinproof
