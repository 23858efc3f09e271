// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/file_words.h"

#include <QCoreApplication>
#include <QFileInfo>

namespace skeinproof {

namespace {

struct FailureWords {
  ErrorKind kind;
  const char* words;
};

#define TEXT(words) QT_TRANSLATE_NOOP("FileFailure", words)
constexpr FailureWords words_of_kind[] = {
    {ErrorKind::not_ours, TEXT("“%1” is not a project of this program. The file was not changed.")},
    {ErrorKind::too_new,
     TEXT("“%1” was written by a newer version of this program. The file was not changed. Open it "
          "with that version, or ask for it as JSON of this version.")},
    {ErrorKind::damaged,
     TEXT("“%1” is damaged and could not be read. The file was not changed. Try an older copy, or "
          "a recovery copy where one is offered.")},
    {ErrorKind::changed_behind_our_back,
     TEXT("“%1” was changed by another program since it was opened here. Nothing "
          "was written; your work is still open.")},
    {ErrorKind::locked,
     TEXT("“%1” is in use by another program. Nothing was written; your work is still open. Try "
          "again, or save it under another name.")},
    {ErrorKind::read_only,
     TEXT("“%1” cannot be written here. The file was not changed; your work is still open. Save "
          "it under another name.")},
    {ErrorKind::no_space,
     TEXT("There is no room to write “%1”. The file is as it was; your work is still open. Make "
          "room, or save it elsewhere.")},
    {ErrorKind::not_found, TEXT("“%1” is not there any more.")},
    {ErrorKind::wrong_format, TEXT("“%1” could not be read as a project. The file was not changed.")},
    {ErrorKind::broken_invariant,
     TEXT("“%1” does not hold together and was not opened. The file was not changed.")},
    {ErrorKind::wrong_shape,
     TEXT("“%1” does not hold together and was not opened. The file was not changed.")},
};
#undef TEXT

}  // namespace

QString file_failure_words(const Error& error, const QString& path) {
  const char* words =
      QT_TRANSLATE_NOOP("FileFailure", "Something went wrong with “%1”. Your work is still open.");
  for (const FailureWords& row : words_of_kind)
    if (row.kind == error.kind) words = row.words;
  QString sentence = QCoreApplication::translate("FileFailure", words).arg(QFileInfo(path).fileName());
  const QString detail = QString::fromStdString(error.message()).trimmed();
  if (!detail.isEmpty())
    sentence += QLatin1Char(' ') + QCoreApplication::translate("FileFailure", "In detail: %1.").arg(detail);
  return sentence;
}

}  // namespace skeinproof
