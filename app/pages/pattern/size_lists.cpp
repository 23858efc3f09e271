// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pattern/size_lists.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>
#include <algorithm>
#include <cmath>
#include <set>

#include "app/widgets/size_list_text.h"
#include "core/pattern/edits.h"
#include "core/pattern/size_line.h"
#include "core/units/read.h"
#include "core/units/show.h"

namespace skeinproof {

namespace {

QString say(const char* words) { return QCoreApplication::translate("SizeLists", words); }

const Measurement* find(const Pattern& pattern, MeasurementId id) {
  for (const Measurement& measurement : pattern.measurements)
    if (measurement.id == id) return &measurement;
  return nullptr;
}
Measurement* find(Pattern& pattern, MeasurementId id) {
  return const_cast<Measurement*>(find(static_cast<const Pattern&>(pattern), id));
}

QString label_of(const Measurement& measurement) {
  const QString name = QString::fromStdString(measurement.name);
  const QString fit = measurement.fit == Fit::finished ? say("finished") : say("to fit");
  return name.isEmpty() ? fit : name + QStringLiteral(", ") + fit;
}

SizeRow measurement_row(const Measurement& measurement) {
  const MeasurementId id = measurement.id;
  return size_row<Centimetres>(
      label_of(measurement), QuantityFormat::cloth(),
      [id](const Pattern& pattern) {
        const Measurement* found = find(pattern, id);
        return found != nullptr ? found->values : PerSize<Entered<Centimetres>>();
      },
      [id](Pattern& pattern, const PerSize<Entered<Centimetres>>& values) {
        if (Measurement* found = find(pattern, id)) found->values = values;
      });
}

// Inches to the quarter and centimetres to the millimetre, as patterns print them.
Entered<double> in_other_system(double cm, const ReaderStyle& reader) {
  if (reader.imperial_first) {
    const double shown = std::round(cm * 10) / 10;
    return {shown, show_number(shown, std::floor(shown) == shown ? 0 : 1, reader.numbers)};
  }
  const double inches = round_half_up(in_inches(centimetres(cm)), 0.25);
  return {inches, show_fraction(inches, 4, reader.numbers)};
}

SizeRow other_row(const Measurement& measurement, const ReaderStyle& reader) {
  SizeRow row;
  row.label = reader.imperial_first ? say("    the same in cm") : say("    the same in inches");
  row.undo_name = label_of(measurement) + row.label;
  row.format = QuantityFormat::number(0, 1e9, "inches");
  row.get = [id = measurement.id, reader](const Pattern& pattern) {
    PerSize<Entered<double>>::List other;
    if (const Measurement* found = find(pattern, id))
      for (const auto& value : found->values.list())
        other.push_back(value ? FieldValue(in_other_system(value->value.value(), reader)) : FieldValue());
    return PerSize<Entered<double>>(std::move(other));
  };
  return row;
}

SizeRow first_row() {
  return size_row<Centimetres>(
      say("bust, finished"), QuantityFormat::cloth(),
      [](const Pattern&) { return PerSize<Entered<Centimetres>>(); },
      [](Pattern& pattern, const PerSize<Entered<Centimetres>>& values) {
        if (values.empty()) return;
        Measurement first;
        first.id = take_id<MeasurementId>(pattern);
        first.name = say("bust").toStdString();
        first.values = values;
        pattern.measurements.push_back(std::move(first));
      });
}

SizeRow notion_row(const Notion& notion, std::size_t index) {
  const QString name = QString::fromStdString(notion.name);
  return size_row<double>(
      name.isEmpty() ? say("notion") : name, QuantityFormat::number(0, 1e6, "pieces"),
      [index](const Pattern& pattern) {
        return index < pattern.notions.size() ? pattern.notions[index].count : PerSize<Entered<double>>();
      },
      [index](Pattern& pattern, const PerSize<Entered<double>>& values) {
        if (index < pattern.notions.size()) pattern.notions[index].count = values;
      });
}

SizeRow total_row() {
  SizeRow row = size_row<double>(
      say("printed total"), QuantityFormat::number(0, 1e6, "skeins"),
      [](const Pattern& pattern) { return pattern.printed_total; },
      [](Pattern& pattern, const PerSize<Entered<double>>& values) { pattern.printed_total = values; });
  row.rule_above = true;
  return row;
}

// A unit at the end of a row's name: "bust (in)", "length cm".
QString take_unit(QString& name) {
  static const QRegularExpression unit(QStringLiteral("[\\s,(\\[]+(cm|in|inch|inches|mm)[)\\]]?\\s*:?$"),
                                       QRegularExpression::CaseInsensitiveOption);
  const auto found = unit.match(name);
  if (!found.hasMatch()) return {};
  name = name.left(found.capturedStart()).trimmed();
  return found.captured(1).toLower();
}

struct NamedLine {
  QString name;
  QString values;
};

NamedLine split_name(const QString& line) {
  const auto is_figure = [](QChar c) { return c.isNumber(); };
  if (const qsizetype tab = line.indexOf(QLatin1Char('\t')); tab >= 0) {
    const QString head = line.left(tab).trimmed();
    if (std::any_of(head.begin(), head.end(), is_figure) &&
        !std::any_of(head.begin(), head.end(), [](QChar c) { return c.isLetter(); }))
      return {{}, line};
    return {head, line.mid(tab + 1)};
  }
  const auto figure = std::find_if(line.begin(), line.end(), is_figure);
  const auto at = figure - line.begin();
  return {line.left(at).trimmed().remove(QLatin1Char(':')), line.mid(at)};
}

}  // namespace

ListRows list_rows(const Pattern& pattern, const ReaderStyle& reader) {
  ListRows all;
  const auto add = [&](ListRow what, SizeRow row) {
    all.what.push_back(what);
    all.rows.push_back(std::move(row));
  };
  if (pattern.measurements.empty()) add({ListRow::Kind::first_measurement, {}, 0}, first_row());
  for (const Measurement& measurement : pattern.measurements) {
    add({ListRow::Kind::measurement, measurement.id, 0}, measurement_row(measurement));
    add({ListRow::Kind::other_system, measurement.id, 0}, other_row(measurement, reader));
  }
  for (std::size_t i = 0; i < pattern.notions.size(); ++i) {
    SizeRow row = notion_row(pattern.notions[i], i);
    row.rule_above = i == 0;
    add({ListRow::Kind::notion, {}, i}, std::move(row));
  }
  add({ListRow::Kind::printed_total, {}, 0}, total_row());
  // The grid keeps unread texts by the names of rows, so no two may be called alike.
  std::set<QString> taken;
  for (SizeRow& row : all.rows) {
    if (row.undo_name.isEmpty()) row.undo_name = row.label;
    while (!taken.insert(row.undo_name).second) row.undo_name += QLatin1Char('\'');
  }
  return all;
}

MeasurementKind kind_by_name(const QString& name) {
  struct Word {
    const char* word;
    MeasurementKind kind;
  };
  static constexpr Word words[] = {
      {"sleeve length", MeasurementKind::sleeve_length},
      {"arm length", MeasurementKind::sleeve_length},
      {"sleeve", MeasurementKind::sleeve_width},
      {"upper arm", MeasurementKind::sleeve_width},
      {"yoke", MeasurementKind::yoke_depth},
      {"neck", MeasurementKind::neck_circumference},
      {"length", MeasurementKind::body_length},
      {"bust", MeasurementKind::circumference},
      {"chest", MeasurementKind::circumference},
      {"circumference", MeasurementKind::circumference},
  };
  for (const Word& row : words)
    if (name.contains(QLatin1String(row.word), Qt::CaseInsensitive)) return row.kind;
  return MeasurementKind::other;
}

Fit fit_by_name(const QString& name) {
  return name.contains(QLatin1String("to fit"), Qt::CaseInsensitive) ? Fit::to_fit : Fit::finished;
}

PastedMeasurements read_measurements(const QString& text, const Pattern& pattern, const ReaderStyle& reader) {
  PastedMeasurements pasted;
  Pattern named = pattern;  // the pasted sizes count for the rows that follow
  for (const QString& line :
       QString(text).remove(QLatin1Char('\r')).split(QLatin1Char('\n'), Qt::SkipEmptyParts)) {
    if (line.trimmed().isEmpty()) continue;
    NamedLine row = split_name(line);
    if (row.name.startsWith(QLatin1String("size"), Qt::CaseInsensitive)) {
      if (const auto sizes = read_size_line(row.values.toStdString())) {
        pasted.size_line = row.values.toStdString();
        set_sizes(named, *sizes);
      } else {
        pasted.left_out << row.name + QStringLiteral(": ") + sentence_of(sizes.error());
      }
      continue;
    }
    if (row.name.isEmpty()) {
      pasted.left_out << say("A row without a name in its first cell.");
      continue;
    }
    const QString unit = take_unit(row.name);
    const ListForSizes list = read_list_for_sizes(row.values, QuantityFormat::cloth(), reader, named);
    if (!list.reason.isEmpty()) {
      pasted.left_out << row.name + QStringLiteral(": ") + list.reason;
      continue;
    }
    PastedMeasurements::Taken taken{row.name.toStdString(), {}};
    for (std::size_t i = 0; i < list.values.size(); ++i) {
      if (list.values[i].isEmpty()) continue;
      const QString with_unit = unit.isEmpty() ? list.values[i] : list.values[i] + QLatin1Char(' ') + unit;
      if (const auto value = read_quantity(QuantityFormat::cloth(), reader, with_unit))
        taken.values.set(i, from_plain<Centimetres>(*value));
    }
    pasted.taken.push_back(std::move(taken));
  }
  return pasted;
}

void take_measurements(Pattern& pattern, const PastedMeasurements& pasted) {
  if (pasted.size_line)
    if (const auto sizes = read_size_line(*pasted.size_line)) set_sizes(pattern, *sizes);
  for (const PastedMeasurements::Taken& taken : pasted.taken) {
    const auto same =
        std::find_if(pattern.measurements.begin(), pattern.measurements.end(),
                     [&](const Measurement& measurement) { return measurement.name == taken.name; });
    if (same != pattern.measurements.end()) {
      same->values = taken.values;
      continue;
    }
    const QString name = QString::fromStdString(taken.name);
    pattern.measurements.push_back(
        {take_id<MeasurementId>(pattern), taken.name, kind_by_name(name), fit_by_name(name), taken.values});
  }
}

}  // namespace skeinproof
