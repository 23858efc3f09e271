// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QColor>
#include <QString>
#include <optional>
#include <vector>

#include "app/document/reader_style.h"
#include "core/substitution/candidate_facts.h"

namespace skeinproof {

// What stands in a cell of the table of candidates, apart from how it is drawn.
struct FactWords {
  enum class Weight { plain, quiet, strong };
  QString text;
  Weight weight = Weight::plain;
};
struct FactLine {
  std::vector<FactWords> runs;
  bool boxed = false;     // what was not looked at
  bool indented = false;  // reasons under what they are of
};

// A mark on the range of firmness that garments have.
struct FirmnessMark {
  double value = 0;
  std::optional<double> own;  // of the pattern's yarn
  double low = 0, high = 0;   // of the range
  double axis_low = 0, axis_high = 0;
  QString low_words, high_words, value_words;
  QString range_words;  // "garments"
};
// A bar against the pattern's own.
struct MassBar {
  QString figure;
  double share = 0, own_share = 0;  // of the longest
  QString more;                     // "+17 %"
};
struct SkeinLine {
  QString role;
  QString count;
  std::optional<double> share;  // of the last skein
  QString word;                 // "87 %", "tips over 1 %"
  bool strong = false;
};
struct FactCell {
  std::vector<FactLine> lines;  // below the mark, the bar or the skeins
  std::optional<FirmnessMark> firmness;
  std::optional<MassBar> mass;
  std::vector<SkeinLine> skeins;
  QString spoken;  // all of it in words
};
struct FactRow {
  enum class Kind { fact, heading, consequences };
  Kind kind = Kind::fact;
  QString name, note;
  std::vector<FactCell> cells;  // the pattern's own first
};

struct FactHead {
  CandidateId candidate;  // none = the pattern's own
  QString name, note;
};

struct CandidateView {
  std::vector<FactHead> heads;
  std::vector<FactRow> rows;
};

struct CandidateRowsInput {
  const Pattern& pattern;
  const std::vector<CandidateFacts>& facts;  // of all candidates
  const ReaderStyle& reader;
  bool all_consequences = false;  // else three at most
  bool only_what_differs = false;
};

// Columns of the candidates that are shown beside the pattern's own yarn: facts, then consequences.
CandidateView candidate_view(const CandidateRowsInput& input);

// "€104.00", "104.00 SEK".
QString money_words(double amount, int decimals, const QString& currency, const ReaderStyle& reader);
// "pattern and 3 of 5"
QString shown_words(const Pattern& pattern);

}  // namespace skeinproof
