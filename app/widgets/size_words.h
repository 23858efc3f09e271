// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "app/document/reader_style.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// "(2", "4)": the label of a size with the brackets that open and close there. Sizes before the first bracket
// stand alone.
QString size_words(const Pattern& pattern, std::size_t size_index);
// What the size measures, as the head of a column says it: the finished circumference, else the one to fit,
// in the reader's first system ("120 cm", "47¼ in"); empty where none is known.
QString size_measure(const Pattern& pattern, std::size_t size_index, const ReaderStyle& reader);

}  // namespace skeinproof
