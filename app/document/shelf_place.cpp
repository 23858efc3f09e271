// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/shelf_place.h"

#include <QDir>
#include <QStandardPaths>

namespace skeinproof {

QString shelf_place() {
  // The terminal face has no application to name its data folder after.
  const QDir data(QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation));
  return data.filePath(QStringLiteral("skeinproof/Skeinproof/yarns.shelf"));
}

}  // namespace skeinproof
