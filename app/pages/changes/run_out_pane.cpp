// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/run_out_pane.h"

#include "app/pages/changes/change_words.h"
#include "app/pages/changes/on_hand.h"
#include "app/pages/pieces/piece_words.h"
#include "app/pages/printed_tables.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/line_field.h"

namespace skeinproof {
namespace {

Expected<RunOut> nothing_yet() { return failure(ErrorKind::wrong_shape, "no colour yet", "a colour"); }

// "10 rounds (2.9 cm) fewer in Body, plain: decide after round 90" in its two parts.
FigureRow row_of(const TurnBack& turn, bool last, const ReaderStyle& reader) {
  const QString words = text_of(turn.words);
  const qsizetype colon = words.lastIndexOf(QStringLiteral(": "));
  FigureRow row;
  row.name = colon < 0 ? words : words.left(colon);
  row.figure = RunOutPane::tr("saves %1").arg(yarn_words(turn.saves, reader));
  row.how = colon < 0 ? QString() : words.mid(colon + 2);
  if (last) row.how = RunOutPane::tr("the last place to turn back: %1").arg(row.how);
  row.strong = last;
  return row;
}

}  // namespace

RunOutPane::RunOutPane(QWidget* parent)
    : RunOutPane(new LineField([this](const QString& line) { return set_on_hand(line); }), parent) {}

RunOutPane::RunOutPane(LineField* on_hand, QWidget* parent)
    : AnswerPane({tr("Of"), tr("Colour on hand"), tr("Places to turn back"),
                  tr("Put the chosen place to turn back on the bench as a change (Enter)")},
                 {{tr("on hand"), on_hand}}, parent),
      shown_(nothing_yet()),
      job_([this](Expected<RunOut> result) {
        if (awaited_) take(std::move(result));
      }),
      on_hand_(on_hand) {
  on_hand_->setAccessibleName(tr("Yarn on hand: skeins, weight or length"));
  on_hand_->setPlaceholderText(tr("4 skeins, 120 g, 640 m"));
  setFocusProxy(on_hand_);
}

void RunOutPane::leave_role() { on_hand_->give_back(); }

QString RunOutPane::typed() const {
  const auto found = typed_.find(role());
  return found != typed_.end() ? found->second : QString();
}

QString RunOutPane::set_on_hand(const QString& line) {
  if (line.trimmed().isEmpty()) {
    typed_.erase(role());
  } else {
    const auto read = read_on_hand(view().pattern, role(), line);
    if (!read) return sentence_of(read.error());
    typed_[role()] = line.trimmed();
  }
  ask_again();
  return {};
}

void RunOutPane::ask() {
  awaited_ = false;
  on_hand_->show_line(typed());
  if (typed().isEmpty()) {
    show_words(tr("How much of it is on hand?"),
               tr("Type skeins, grams or metres: the round in which it runs out follows, and where one could "
                  "still turn to something shorter."));
    shown_ = nothing_yet();
    answers()->set_rows({});
    emit worked_out();
    return;
  }
  const auto on_hand = read_on_hand(view().pattern, role(), typed());
  if (!on_hand) {
    take(tl::unexpected<Error>(on_hand.error()));
    return;
  }
  awaited_ = true;
  job_.ask([pattern = view().pattern, size = view().size, role = role(), metres = *on_hand,
            numbers = view().reader.numbers] { return run_out(pattern, role, size, metres, {}, numbers); });
}

void RunOutPane::take(Expected<RunOut> result) {
  shown_ = std::move(result);
  std::vector<FigureRow> rows;
  if (!shown_) {
    show_words(sentence_of(shown_.error()), {});
  } else {
    const ReaderStyle& reader = view().reader;
    const RunOut& out = *shown_;
    QString note = tr("%1 on hand, %2 knitted; swatch and allowance are not in it.")
                       .arg(yarn_words(out.on_hand, reader), yarn_words(out.needs, reader));
    if (!out.lasts()) {
      note += QLatin1Char(' ') + tr("%1 short.").arg(yarn_words(-out.spare, reader));
      if (out.turn_backs.empty())
        note += QLatin1Char(' ') + tr("No plain section before it is long enough to be shortened by that.");
    }
    show_words(out.lasts() ? tr("It lasts: %1 to spare").arg(yarn_words(out.spare, reader))
                           : tr("It runs out in %1: %2 left, needs %3")
                                 .arg(text_of(out.where), yarn_words(out.left_before, reader),
                                      yarn_words(out.fails_in->needs, reader)),
               note);
    for (const TurnBack& turn : out.turn_backs)
      rows.push_back(row_of(turn, &turn == &out.turn_backs.back(), reader));
  }
  answers()->set_rows(std::move(rows));
  emit worked_out();
}

void RunOutPane::put_on_bench(std::size_t row) {
  if (!shown_ || row >= shown_->turn_backs.size()) return;
  const TurnBack& turn = shown_->turn_backs[row];
  emit wants_changes({ExtraRounds{turn.section, -turn.rounds_fewer, {}, {}}}, answers()->rows()[row].name);
}

std::optional<Table> RunOutPane::printed() const {
  if (!shown_ || is_stale() || job_.is_busy()) return std::nullopt;
  std::vector<FigureRow> rows;
  FigureRow answer;
  answer.name = headline();
  answer.how = note();
  answer.strong = true;
  rows.push_back(answer);
  rows.insert(rows.end(), answers()->rows().begin(), answers()->rows().end());
  return printed_table(tr("Run-out point of %1, %2 on hand").arg(roles()->currentText(), typed()), rows);
}

}  // namespace skeinproof
