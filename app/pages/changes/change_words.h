// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>
#include <cstdint>
#include <vector>

#include "app/document/reader_style.h"
#include "app/pages/changes/bench_outcome.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/quantity_text.h"

namespace skeinproof {

// "Longer or shorter": the kind as the list to choose from says it.
QString kind_words(ChangeKind kind);
// "Body 5 cm longer"; where something is not said yet, the kind with what there is: "Longer or shorter:
// Body".
QString row_words(const Pattern& pattern, const BenchChange& row, const ReaderStyle& reader);
// "No piece: say the piece that grows longer", "Found the chart has 50, expected a round from 1 to 50."
QString problem_words(const ChangeOutcome& outcome);
// "MC +79.6 m", "17.7 m moved" from one colour to another, "+24.1 m" over all colours.
QString moves_words(const ChangeOutcome& outcome, const ReaderStyle& reader);

// "Body", "Body, plain": a piece, a section or an edge.
QString part_words(const Pattern& pattern, std::uint32_t part);

// The part that a change on the bench is about; empty where it is about none or none is named yet.
QString part_of_row(const Pattern& pattern, const BenchChange& row);

// Parts to choose from; with value 0 as `none` where that is not empty.
std::vector<Choice> piece_choices(const Pattern& pattern);
std::vector<Choice> section_choices(const Pattern& pattern);
std::vector<Choice> sections_of_piece(const Pattern& pattern, PieceId piece, const QString& none);
std::vector<Choice> part_choices(const Pattern& pattern);  // pieces, their sections and edges
std::vector<Choice> fabric_choices(const Pattern& pattern);
std::vector<Choice> size_choices(const Pattern& pattern);
std::vector<Choice> role_choices(const Pattern& pattern, const QString& none);
std::vector<Choice> yarn_choices(const Pattern& pattern, const QString& none);

// Yarn lengths to a decimal, with their unit: "1,202.9 m", "+79.6 m".
QString yarn_figure(Metres length, const ReaderStyle& reader);
QString yarn_words(Metres length, const ReaderStyle& reader);
QString signed_figure(Metres length, const ReaderStyle& reader);
QString signed_words(Metres length, const ReaderStyle& reader);

// "an 8th", "a 7th".
QString an_ordinal(int number);
// "an 8th skein for 1.9 m", "2 skeins more, the last for 1.9 m", "a skein fewer"; empty where none is
// crossed.
QString step_words(const RoleChange& change, const ReaderStyle& reader);
// "crosses a step", "brimful", "tips over" of the need after the change, in this order.
QStringList state_words(const RoleChange& change);

}  // namespace skeinproof
