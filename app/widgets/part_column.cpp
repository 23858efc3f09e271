// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/part_column.h"

#include <cmath>

#include "app/document/open_pattern.h"

namespace skeinproof {

PartColumn computed_column(QString head, std::function<QString(const Pattern&, std::size_t)> text) {
  PartColumn column;
  column.head = std::move(head);
  column.text = std::move(text);
  column.quiet = true;
  return column;
}

PartColumn field_column(OpenPattern& open, QString head, QString undo_name, QuantityFormat format,
                        std::function<FieldValue(const Pattern&, std::size_t)> get,
                        std::function<void(Pattern&, std::size_t, const FieldValue&)> set,
                        bool must_be_there) {
  PartColumn column;
  column.head = std::move(head);
  column.undo_name = std::move(undo_name);
  column.right = true;
  column.text = [&open, format, get](const Pattern& pattern, std::size_t row) {
    const FieldValue value = get(pattern, row);
    return value ? show_quantity(format, open.reader(), *value) : QString();
  };
  column.read = [&open, format, set, must_be_there](const QString& typed, std::size_t) -> Expected<RowEdit> {
    if (typed.trimmed().isEmpty() && !must_be_there)
      return [set](Pattern& pattern, std::size_t row) { set(pattern, row, std::nullopt); };
    auto value = read_quantity(format, open.reader(), typed);
    if (!value) return tl::unexpected(value.error());
    const bool whole = format.kind == QuantityKind::number && format.decimals == 0;
    if (whole && value->value != std::floor(value->value))
      return failure(ErrorKind::out_of_range, typed.toStdString(), "a whole number of " + format.what);
    return [set, read = *value](Pattern& pattern, std::size_t row) { set(pattern, row, read); };
  };
  return column;
}

}  // namespace skeinproof
