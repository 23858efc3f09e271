// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/samples.h"

#include <QDir>

namespace skeinproof {

std::vector<Sample> samples_in(const QString& folder) {
  std::vector<Sample> samples;
  if (folder.isEmpty()) return samples;
  for (const QFileInfo& file :
       QDir(folder).entryInfoList({QStringLiteral("*.skeinproof")}, QDir::Files, QDir::Name)) {
    QString title = file.completeBaseName().replace(QLatin1Char('-'), QLatin1Char(' '));
    title[0] = title[0].toUpper();
    samples.push_back({file.completeBaseName(), title, file.absoluteFilePath()});
  }
  return samples;
}

QString find_samples_folder(const QString& program_folder) {
  QDir folder(program_folder);
  for (int up = 0; up < 5; ++up) {
    for (const char* inside : {"share/skeinproof/sample-data/projects", "sample-data/projects"})
      if (folder.exists(QLatin1String(inside))) return folder.absoluteFilePath(QLatin1String(inside));
    if (!folder.cdUp()) break;
  }
  return {};
}

}  // namespace skeinproof
