// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>
#include <vector>

#include "app/document/reader_style.h"
#include "app/widgets/size_row.h"

namespace skeinproof {

// What a row of the pattern's grid is about.
struct ListRow {
  enum class Kind { first_measurement, measurement, other_system, notion, printed_total };
  Kind kind = Kind::first_measurement;
  MeasurementId measurement;  // measurement, other_system
  std::size_t notion = 0;
  bool operator==(const ListRow&) const = default;
};

// The measurements, each with its figures in the other system below; the notions; the printed total. A
// pattern without measurements shows an empty row for the first.
struct ListRows {
  std::vector<ListRow> what;
  std::vector<SizeRow> rows;
};
ListRows list_rows(const Pattern& pattern, const ReaderStyle& reader);

// The kind of a measurement by its name ("upper arm", "bust to fit"), by common practice.
MeasurementKind kind_by_name(const QString& name);
Fit fit_by_name(const QString& name);

// A table with the names of its rows in the first column, from a spreadsheet or a page: "Size 1 2 3", "bust
// (in) 32 34 36". Rows become measurements, or replace the values of those with the same name; a row named
// "size" names the sizes. Rows that cannot be taken are told and left out.
struct PastedMeasurements {
  struct Taken {
    std::string name;
    PerSize<Entered<Centimetres>> values;
  };
  std::optional<std::string> size_line;
  std::vector<Taken> taken;
  QStringList left_out;  // sentences
};
PastedMeasurements read_measurements(const QString& text, const Pattern& pattern, const ReaderStyle& reader);
void take_measurements(Pattern& pattern, const PastedMeasurements& pasted);

}  // namespace skeinproof
