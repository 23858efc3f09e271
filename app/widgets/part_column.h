// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QColor>
#include <QString>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "app/widgets/bound_fields.h"
#include "app/widgets/quantity_text.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

class OpenPattern;

// A list of the document whose elements are the rows of a table.
struct PartList {
  QString part;      // "yarn", for undo steps: "add yarn", "delete yarn Fieldspun"
  QString add_hint;  // in the empty last row: "add a yarn"
  std::function<std::size_t(const Pattern&)> count;
  std::function<std::uint32_t(const Pattern&, std::size_t)>
      key;  // goes with the element when it moves; not 0
  std::function<QString(const Pattern&, std::size_t)> name;
  // Each may be absent; then the table does not offer it.
  std::function<void(Pattern&)> append;
  std::function<void(Pattern&, std::size_t)> erase;
  std::function<void(Pattern&, std::size_t)> duplicate;  // the copy goes behind the element
  std::function<void(Pattern&, std::size_t from, std::size_t to)> move;
};

using RowEdit = std::function<void(Pattern&, std::size_t row)>;

// One column: what its cells say, and what typing, choosing or ticking does. Columns are made by the
// functions below, which name the place in an element once, as `[](auto& pattern, std::size_t row) -> auto& {
// … }`.
struct PartColumn {
  QString head;
  QString undo_name;  // "swatch" in "swatch, MC 20 m"
  QString tip;
  bool right = false;   // figures stand at the right
  bool quiet = false;   // worked out, not typed
  bool strong = false;  // the answer
  int stretch = 0;      // takes what width is left
  std::function<QString(const Pattern&, std::size_t)> text;
  std::function<QString(const Pattern&, std::size_t)> spoken;  // where the text alone does not read aloud
  std::function<QColor(const Pattern&, std::size_t)> chip;
  // Typing: reads a text into an edit. Absent = not typed.
  std::function<Expected<RowEdit>(const QString& typed, std::size_t row)> read;
  // Choosing from a list.
  std::function<std::vector<Choice>(const Pattern&, std::size_t)> choices;
  std::function<void(Pattern&, std::size_t, std::uint32_t)> choose;
  // Ticking.
  std::function<bool(const Pattern&, std::size_t)> ticked;
  std::function<void(Pattern&, std::size_t, bool)> tick;

  bool editable() const { return read || choose || tick; }
};

PartColumn computed_column(QString head, std::function<QString(const Pattern&, std::size_t)> text);

template <class Where>
PartColumn text_column(QString head, QString undo_name, Where where) {
  PartColumn column;
  column.head = std::move(head);
  column.undo_name = std::move(undo_name);
  column.text = [where](const Pattern& pattern, std::size_t row) {
    return QString::fromStdString(where(pattern, row));
  };
  column.read = [where](const QString& typed, std::size_t) -> Expected<RowEdit> {
    return [where, words = typed.trimmed().toStdString()](Pattern& pattern, std::size_t row) {
      where(pattern, row) = words;
    };
  };
  return column;
}

// Shows and reads a quantity by two functions; an empty text is an absent value unless it must be there.
PartColumn field_column(OpenPattern& open, QString head, QString undo_name, QuantityFormat format,
                        std::function<FieldValue(const Pattern&, std::size_t)> get,
                        std::function<void(Pattern&, std::size_t, const FieldValue&)> set,
                        bool must_be_there);

// `where` gives an optional<Entered<Quantity>>.
template <class Quantity, class Where>
PartColumn quantity_column(OpenPattern& open, QString head, QString undo_name, QuantityFormat format,
                           Where where) {
  return field_column(
      open, std::move(head), std::move(undo_name), std::move(format),
      [where](const Pattern& pattern, std::size_t row) {
        const std::optional<Entered<Quantity>>& value = where(pattern, row);
        return value ? FieldValue(to_plain(*value)) : FieldValue();
      },
      [where](Pattern& pattern, std::size_t row, const FieldValue& value) {
        if (value)
          where(pattern, row) = from_plain<Quantity>(*value);
        else
          where(pattern, row).reset();
      },
      false);
}

// `where` gives an Entered<double>, or an int that is shown and read as a whole number.
template <class Where>
PartColumn number_column(OpenPattern& open, QString head, QString undo_name, QuantityFormat format,
                         Where where) {
  return field_column(
      open, std::move(head), std::move(undo_name), std::move(format),
      [where](const Pattern& pattern, std::size_t row) {
        if constexpr (std::is_same_v<std::decay_t<decltype(where(pattern, row))>, int>)
          return FieldValue(Entered<double>{static_cast<double>(where(pattern, row)), {}});
        else
          return FieldValue(where(pattern, row));
      },
      [where](Pattern& pattern, std::size_t row, const FieldValue& value) {
        if constexpr (std::is_same_v<std::decay_t<decltype(where(pattern, row))>, int>)
          where(pattern, row) = static_cast<int>(value->value);
        else
          where(pattern, row) = *value;
      },
      true);
}

// `where` gives an enumeration or an id; `list` its choices.
template <class Where>
PartColumn choice_column(QString head, QString undo_name, Where where,
                         std::function<std::vector<Choice>(const Pattern&, std::size_t)> list) {
  PartColumn column;
  column.head = std::move(head);
  column.undo_name = std::move(undo_name);
  column.choices = std::move(list);
  column.text = [where, choices = column.choices](const Pattern& pattern, std::size_t row) {
    std::uint32_t value;
    if constexpr (requires { where(pattern, row).value; })
      value = where(pattern, row).value;
    else
      value = static_cast<std::uint32_t>(where(pattern, row));
    for (const Choice& choice : choices(pattern, row))
      if (choice.value == value) return choice.text;
    return QString();
  };
  column.choose = [where](Pattern& pattern, std::size_t row, std::uint32_t value) {
    using Kind = std::decay_t<decltype(where(pattern, row))>;
    if constexpr (std::is_enum_v<Kind>)
      where(pattern, row) = static_cast<Kind>(value);
    else
      where(pattern, row) = Kind{value};
  };
  return column;
}

template <class Where>
PartColumn tick_column(QString head, QString undo_name, Where where) {
  PartColumn column;
  column.head = std::move(head);
  column.undo_name = std::move(undo_name);
  column.ticked = [where](const Pattern& pattern, std::size_t row) { return where(pattern, row); };
  column.tick = [where](Pattern& pattern, std::size_t row, bool on) { where(pattern, row) = on; };
  return column;
}

// Lists whose elements have ids, by a pointer to the member of Pattern.
template <class Part>
PartList part_list(QString part, QString add_hint, std::vector<Part> Pattern::*list) {
  PartList rows;
  rows.part = std::move(part);
  rows.add_hint = std::move(add_hint);
  rows.count = [list](const Pattern& pattern) { return (pattern.*list).size(); };
  rows.key = [list](const Pattern& pattern, std::size_t row) { return (pattern.*list)[row].id.value; };
  return rows;
}

}  // namespace skeinproof
