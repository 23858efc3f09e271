// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/save_skein_pane.h"

#include "app/pages/changes/change_words.h"
#include "app/pages/pieces/piece_words.h"
#include "app/pages/printed_tables.h"
#include "app/widgets/count_words.h"
#include "app/widgets/figure_list.h"

namespace skeinproof {
namespace {

Expected<SaveSkein> nothing_yet() { return failure(ErrorKind::wrong_shape, "no colour yet", "a colour"); }

FigureRow row_of(const SavedSkein& way, const ReaderStyle& reader) {
  FigureRow row;
  row.name = text_of(way.words);
  row.figure = (way.brimful ? SaveSkeinPane::tr("%1 to spare, brimful") : SaveSkeinPane::tr("%1 to spare"))
                   .arg(yarn_words(way.spare, reader));
  row.how = text_of(way.reason);
  row.strong = true;
  return row;
}

}  // namespace

SaveSkeinPane::SaveSkeinPane(QWidget* parent)
    : AnswerPane({tr("A skein less of"), tr("Colour that shall take a skein less"),
                  tr("Ways to save a skein, cheapest first"),
                  tr("Put the chosen way on the bench as changes (Enter)")},
                 {}, parent),
      shown_(nothing_yet()),
      job_([this](Expected<SaveSkein> result) { take(std::move(result)); }) {}

// It asks hundreds of what-ifs.
void SaveSkeinPane::ask() {
  show_words(headline(), tr("working it out …"));
  job_.ask([pattern = view().pattern, size = view().size, role = role(), numbers = view().reader.numbers] {
    constexpr std::size_t most_ways = 8;
    return pattern.role(role) == nullptr ? nothing_yet()
                                         : save_skein(pattern, role, size, most_ways, numbers);
  });
}

void SaveSkeinPane::take(Expected<SaveSkein> result) {
  shown_ = std::move(result);
  std::vector<FigureRow> rows;
  if (!shown_) {
    const Role* role = view().pattern.role(this->role());
    const bool too_few = shown_.error().kind == ErrorKind::out_of_range && role != nullptr;
    show_words(too_few
                   ? tr("%1 takes no more than one skein: there is none to save.").arg(text_of(role->label))
                   : sentence_of(shown_.error()),
               {});
  } else {
    for (const SavedSkein& way : shown_->ways) rows.push_back(row_of(way, view().reader));
    show_words(tr("%1 takes %2: %3 planned, and one skein less holds %4.")
                   .arg(text_of(shown_->label),
                        count_words(static_cast<std::size_t>(shown_->skeins), tr("skein"), tr("skeins")),
                        yarn_words(shown_->planned, view().reader), yarn_words(shown_->step, view().reader)),
               rows.empty()
                   ? tr("No part in another colour, and not a third of the rounds of a section, saves it.")
                   : tr("The way that moves the least yarn stands first; Enter puts it on the bench."));
  }
  answers()->set_rows(std::move(rows));
  emit worked_out();
}

void SaveSkeinPane::put_on_bench(std::size_t row) {
  if (!shown_ || row >= shown_->ways.size()) return;
  emit wants_changes(shown_->ways[row].changes, text_of(shown_->ways[row].words));
}

std::optional<Table> SaveSkeinPane::printed() const {
  if (!shown_ || answers()->rows().empty() || is_stale() || job_.is_busy()) return std::nullopt;
  return printed_table(tr("Save a skein of %1").arg(text_of(shown_->label)), answers()->rows());
}

}  // namespace skeinproof
