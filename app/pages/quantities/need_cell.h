// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <cstddef>
#include <optional>

#include "app/document/reader_style.h"
#include "core/need/assessment.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// What one cell of the quantities grid says about one role in one size (or about all roles): ready to be
// drawn, read aloud and copied.
struct NeedCell {
  enum class State { plain, brimful, tips_over, not_checked };
  State state = State::not_checked;
  QString count;                 // "7", or a dash
  QString length;                // "1,203", or a dash
  QString word;                  // "87 %", "brimful", "tips over", "not checked"; in the total "lists 12"
  std::optional<QString> words;  // the designer's count where it differs; empty where the text gives none
  double share = 0;              // of the last skein, 0 to 1
  QString spoken;                // for screen readers and the tip
  QString reason;                // why not checked
  bool known = false;            // a length is known, counted or not
  bool is_total = false;
};

struct NeedCellInput {
  const Pattern& pattern;
  const Assessment& assessment;
  Layer layer = Layer::planned;
  const ReaderStyle& reader;
  bool show_words = true;  // the designer's count where it is not the planned one
};

NeedCell need_cell(const NeedCellInput& input, std::size_t role_row, std::size_t size_index);
NeedCell total_cell(const NeedCellInput& input, std::size_t size_index);

// "Knitted", "With swatch", "Planned": the layer's name in a sentence, in lower case.
QString layer_word(Layer layer);
// A reason as the engine words it, as a sentence of its own.
QString as_sentence(const std::string& words);
// "MC Peat 08".
QString role_title(const Role& role);
// A yarn length without decimals in the reader's first system, without its unit, and the unit.
QString length_figure(Metres length, const ReaderStyle& reader);
QString length_unit(const ReaderStyle& reader);
QString length_unit_word(const ReaderStyle& reader);  // "metres", "yards"

}  // namespace skeinproof
