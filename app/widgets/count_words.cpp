// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/count_words.h"

#include <QCoreApplication>

namespace skeinproof {

QString count_words(std::size_t count, const QString& one, const QString& many) {
  static const char* const figures[] = {
      QT_TRANSLATE_NOOP("Count", "no"),    QT_TRANSLATE_NOOP("Count", "one"),
      QT_TRANSLATE_NOOP("Count", "two"),   QT_TRANSLATE_NOOP("Count", "three"),
      QT_TRANSLATE_NOOP("Count", "four"),  QT_TRANSLATE_NOOP("Count", "five"),
      QT_TRANSLATE_NOOP("Count", "six"),   QT_TRANSLATE_NOOP("Count", "seven"),
      QT_TRANSLATE_NOOP("Count", "eight"), QT_TRANSLATE_NOOP("Count", "nine"),
      QT_TRANSLATE_NOOP("Count", "ten")};
  const QString figure = count < std::size(figures) ? QCoreApplication::translate("Count", figures[count])
                                                    : QString::number(count);
  return figure + QLatin1Char(' ') + (count == 1 ? one : many);
}

}  // namespace skeinproof
