// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/text.h"
#include "core/manuscript/phrases.h"

namespace skeinproof {
namespace {

void say_sizes(const PhrasePlace& at, std::size_t list) {
  Reader& reader = at.reader;
  ++reader.mention;
  Statement& statement = reader.say_list(StatementKind::size_labels, at.first, at.last, list);
  const FigureList& labels = reader.list(list);
  if (reader.size_names.empty() || statement.values.size() >= reader.size_names.size()) {
    reader.sizes = {statement.values.size(), labels.slashed};
    reader.size_names.clear();
    for (std::size_t k = 0; k < labels.cells; ++k) {
      const ListCell& cell = reader.items.cells[labels.first_cell + k];
      reader.size_names.push_back(tidy_spaces(reader.plain.text.substr(cell.begin, cell.end - cell.begin)));
    }
  } else {
    reader.some_sizes = true;
  }
  ++reader.mention;
}

}  // namespace

bool take_sizes(const PhrasePlace& at) {
  Reader& reader = at.reader;
  const std::size_t list = at.last - 1;
  const bool lone = reader.list(list).cells == 1;
  if (reader.run == Run::sample && lone) {
    reader.say(StatementKind::sample_size, at.first, at.last).words = reader.words(list, list + 1);
    return true;
  }
  // Of another size than the first list says: "in size 1".
  if (lone && reader.sizes.count > 1) {
    reader.some_sizes = true;
    reader.use(at.first, at.last);
    return true;
  }
  say_sizes(at, list);
  return true;
}

bool take_head_row(const PhrasePlace& at) {
  for (std::size_t i = at.clause.first; i < at.first; ++i)
    if (at.reader.letter(i) != gap_shape) return false;
  say_sizes(at, at.first);
  return true;
}

}  // namespace skeinproof
