// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

namespace skeinproof {

// "nine sizes", "one size", "12 sizes": small numbers as words, with the word for one or for many.
QString count_words(std::size_t count, const QString& one, const QString& many);

}  // namespace skeinproof
