// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/change_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <cmath>
#include <cstdlib>

#include "app/pages/pieces/piece_words.h"
#include "core/need/bench_changes.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Changes)
};

struct KindWords {
  ChangeKind kind;
  const char* words;
};
constexpr KindWords kinds[] = {
    {ChangeKind::longer_piece, QT_TRANSLATE_NOOP("Changes", "Longer or shorter")},
    {ChangeKind::extra_rounds, QT_TRANSLATE_NOOP("Changes", "More or fewer rounds")},
    {ChangeKind::other_gauge, QT_TRANSLATE_NOOP("Changes", "Another gauge")},
    {ChangeKind::other_size, QT_TRANSLATE_NOOP("Changes", "Another size")},
    {ChangeKind::between_sizes, QT_TRANSLATE_NOOP("Changes", "Between two sizes")},
    {ChangeKind::piece_left_out, QT_TRANSLATE_NOOP("Changes", "Piece left out")},
    {ChangeKind::piece_again, QT_TRANSLATE_NOOP("Changes", "Piece once again")},
    {ChangeKind::given_to, QT_TRANSLATE_NOOP("Changes", "Part in another colour")}};

QString sentence(QString words) {
  if (!words.isEmpty()) words[0] = words[0].toUpper();
  return words;
}

QString longer_words(const Pattern& pattern, const BenchChange& row, const ReaderStyle& reader) {
  const bool shorter = row.by->value.value() < 0;
  const Entered<double> size{std::abs(row.by->value.value()), {}};
  QString words = (shorter ? Words::tr("%1 %2 shorter") : Words::tr("%1 %2 longer"))
                      .arg(part_words(pattern, row.section ? row.section.value : row.piece.value),
                           show_quantity(QuantityFormat::cloth(), reader, size));
  if (row.where == LongerWhere::full_width) words += Words::tr(", at full width");
  return words;
}

void add_none(std::vector<Choice>& choices, const QString& none) {
  if (!none.isEmpty()) choices.push_back({none, 0});
}

}  // namespace

QString kind_words(ChangeKind kind) {
  for (const KindWords& row : kinds)
    if (row.kind == kind) return Words::tr(row.words);
  return {};
}

QString row_words(const Pattern& pattern, const BenchChange& row, const ReaderStyle& reader) {
  const auto change = change_of(row);
  if (!change) {
    const QString part = part_of_row(pattern, row);
    return part.isEmpty() ? kind_words(row.kind) : Words::tr("%1: %2").arg(kind_words(row.kind), part);
  }
  if (row.kind == ChangeKind::longer_piece) return longer_words(pattern, row, reader);
  return QString::fromStdString(change_words(pattern, *change, reader.numbers));
}

QString problem_words(const ChangeOutcome& outcome) {
  if (!outcome.problem) return {};
  if (!outcome.lacks_a_field) return sentence_of(*outcome.problem);
  return Words::tr("%1: say %2.")
      .arg(sentence(text_of(outcome.problem->found)), text_of(outcome.problem->expected));
}

QString moves_words(const ChangeOutcome& outcome, const ReaderStyle& reader) {
  if (outcome.problem) return {};
  if (outcome.moves.empty()) return Words::tr("no yarn");
  if (outcome.moves.size() == 1)
    return text_of(outcome.moves.front().label) + QLatin1Char(' ') +
           signed_words(outcome.moves.front().knitted_more, reader);
  Metres sum, more;
  for (const RoleMove& move : outcome.moves) {
    sum += move.knitted_more;
    if (move.knitted_more > metres(0)) more += move.knitted_more;
  }
  // From one colour to another.
  if (std::abs(sum.value()) < 0.05 && more > metres(0))
    return Words::tr("%1 moved").arg(yarn_words(more, reader));
  return signed_words(sum, reader);
}

QString part_words(const Pattern& pattern, std::uint32_t part) {
  const PiecePlace place = find_in_pieces(pattern, part);
  if (!place) return {};
  const std::string own = place.section != nullptr ? place.section->name
                          : place.edge != nullptr  ? place.edge->name
                                                   : std::string();
  const QString piece = text_of(place.piece->name);
  return own.empty() || own == place.piece->name ? piece : Words::tr("%1, %2").arg(piece, text_of(own));
}

QString part_of_row(const Pattern& pattern, const BenchChange& row) {
  const std::uint32_t part = row.kind == ChangeKind::other_gauge || row.kind == ChangeKind::other_size ||
                                     row.kind == ChangeKind::between_sizes
                                 ? 0
                             : row.edge    ? row.edge.value
                             : row.section ? row.section.value
                                           : row.piece.value;
  return part != 0 ? part_words(pattern, part) : QString();
}

std::vector<Choice> piece_choices(const Pattern& pattern) {
  std::vector<Choice> choices;
  for (const Piece& piece : pattern.pieces) choices.push_back({text_of(piece.name), piece.id.value});
  return choices;
}

std::vector<Choice> section_choices(const Pattern& pattern) {
  std::vector<Choice> choices;
  for (const Piece& piece : pattern.pieces)
    for (const Section& section : piece.sections)
      choices.push_back({part_words(pattern, section.id.value), section.id.value});
  return choices;
}

std::vector<Choice> sections_of_piece(const Pattern& pattern, PieceId id, const QString& none) {
  std::vector<Choice> choices;
  add_none(choices, none);
  if (const Piece* piece = pattern.piece(id))
    for (const Section& section : piece->sections)
      choices.push_back(
          {section.name.empty() ? text_of(piece->name) : text_of(section.name), section.id.value});
  return choices;
}

std::vector<Choice> part_choices(const Pattern& pattern) {
  std::vector<Choice> choices;
  for (const Piece& piece : pattern.pieces) {
    choices.push_back({text_of(piece.name), piece.id.value});
    for (const Section& section : piece.sections)
      choices.push_back(
          {Words::tr("%1, %2").arg(text_of(piece.name), text_of(section.name)), section.id.value});
    for (const Edge& edge : piece.edges)
      choices.push_back({Words::tr("%1, %2").arg(text_of(piece.name), text_of(edge.name)), edge.id.value});
  }
  return choices;
}

std::vector<Choice> fabric_choices(const Pattern& pattern) {
  std::vector<Choice> choices;
  for (const Fabric& fabric : pattern.fabrics) choices.push_back({text_of(fabric.name), fabric.id.value});
  return choices;
}

std::vector<Choice> size_choices(const Pattern& pattern) {
  std::vector<Choice> choices;
  for (const Size& size : pattern.sizes) choices.push_back({text_of(size.label), size.id.value});
  return choices;
}

std::vector<Choice> role_choices(const Pattern& pattern, const QString& none) {
  std::vector<Choice> choices;
  add_none(choices, none);
  for (const Role& role : pattern.roles)
    choices.push_back(
        {(text_of(role.label) + QLatin1Char(' ') + text_of(role.shade.name)).trimmed(), role.id.value});
  return choices;
}

std::vector<Choice> yarn_choices(const Pattern& pattern, const QString& none) {
  std::vector<Choice> choices;
  add_none(choices, none);
  for (const Yarn& yarn : pattern.yarns) choices.push_back({text_of(yarn.name), yarn.id.value});
  return choices;
}

QString yarn_figure(Metres length, const ReaderStyle& reader) {
  const double shown = reader.imperial_first ? in_yards(length) : length.value();
  return QString::fromStdString(show_number(shown, 1, reader.numbers));
}

QString yarn_words(Metres length, const ReaderStyle& reader) {
  return yarn_figure(length, reader) + QLatin1Char(' ') + unit_of(QuantityFormat::yarn_length(), reader);
}

QString signed_figure(Metres length, const ReaderStyle& reader) {
  const QString figure = yarn_figure(length, reader), none = yarn_figure(metres(0), reader);
  const QString size = yarn_figure(metres(std::abs(length.value())), reader);
  if (size == none) return none;
  return length.value() > 0 ? QLatin1Char('+') + figure : figure;
}

QString signed_words(Metres length, const ReaderStyle& reader) {
  return signed_figure(length, reader) + QLatin1Char(' ') + unit_of(QuantityFormat::yarn_length(), reader);
}

QString an_ordinal(int number) {
  const int last = number % 10, last_two = number % 100;
  const bool teen = last_two >= 11 && last_two <= 13;
  const char* ending = teen || last == 0 || last > 3 ? "th" : last == 1 ? "st" : last == 2 ? "nd" : "rd";
  const bool vowel = number == 11 || number == 18 || QString::number(number).startsWith(QLatin1Char('8'));
  return QStringLiteral("%1 %2%3")
      .arg(vowel ? Words::tr("an") : Words::tr("a"))
      .arg(number)
      .arg(Words::tr(ending));
}

QString step_words(const RoleChange& change, const ReaderStyle& reader) {
  if (!change.crosses_step) return {};
  if (change.skeins_more < 0)
    return change.skeins_more == -1 ? Words::tr("a skein fewer")
                                    : Words::tr("%1 skeins fewer").arg(-change.skeins_more);
  const QString last = an_ordinal(change.after.skeins.value_or(0));
  if (!change.beyond_step) return Words::tr("%1 skein").arg(last);
  const QString beyond = yarn_words(*change.beyond_step, reader);
  if (change.skeins_more == 1) return Words::tr("%1 skein for %2").arg(last, beyond);
  return Words::tr("%1 skeins more, the last for %2").arg(change.skeins_more).arg(beyond);
}

QStringList state_words(const RoleChange& change) {
  QStringList words;
  if (change.crosses_step) words << Words::tr("crosses a step");
  if (change.known() && change.after.last_skein == LastSkein::brimful) words << Words::tr("brimful");
  if (change.known() && change.after.last_skein == LastSkein::tips_over) words << Words::tr("tips over");
  return words;
}

}  // namespace skeinproof
