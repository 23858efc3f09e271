// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QCheckBox>
#include <QObject>
#include <functional>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "app/document/open_pattern.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/quantity_field.h"
#include "core/base/enum_words.h"

namespace skeinproof {

// The choices of a stored enumeration, by the words it is stored with or by the page's own words for them.
template <WordedEnum E>
std::vector<Choice> choices_of(const std::function<QString(E)>& say = {}) {
  std::vector<Choice> choices;
  for (const auto& [value, word] : EnumWords<E>::rows)
    choices.push_back({say ? say(value) : QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size())),
                       static_cast<std::uint32_t>(value)});
  return choices;
}

// Fields of one part of the document: a yarn, a weighing, or the pattern itself. A field names its place
// once, as
// `[](auto& yarn) -> auto& { return yarn.put_up.length; }`, which serves for showing and for editing; each
// edit is one step of undo called "put-up length, Oddmere Fieldspun 175 m". The form makes the fields; the
// page lays them out and calls `refresh` when the document or the chosen part has changed.
template <class Part>
class PartForm {
 public:
  using Find = std::function<const Part*(const Pattern&)>;
  using Name = std::function<QString(const Part&)>;

  PartForm(OpenPattern& open, QWidget* parent, Find find, Name name)
      : open_(open), parent_(parent), find_(std::move(find)), name_(std::move(name)) {}

  template <class Where>
  TextField* text(const QString& undo_name, Where where) {
    auto* field = new TextField(parent_);
    field->setAccessibleName(undo_name);
    QObject::connect(field, &QLineEdit::textEdited, parent_, [this, undo_name, where](const QString& words) {
      // One step for a run of typing; the part's own name is left out, for it may be what is being typed.
      change(
          undo_name, [where, words](Part& part) { where(part) = words.toStdString(); }, undo_name);
    });
    follow(field,
           [field, where](const Part& part) { field->show_words(QString::fromStdString(where(part))); });
    return field;
  }

  template <class Quantity, class Where>
  QuantityField* quantity(const QuantityFormat& format, const QString& undo_name, Where where) {
    auto* field = new QuantityField(format, open_, parent_);
    field->setAccessibleName(undo_name);
    QObject::connect(
        field, &QuantityField::committed, parent_, [this, field, undo_name, where](const FieldValue& value) {
          const QString shown =
              value ? show_quantity(field->format(), open_.reader(), *value) : QObject::tr("nothing");
          change(label(undo_name, shown), [where, value](Part& part) {
            if (value)
              where(part) = from_plain<Quantity>(*value);
            else
              where(part).reset();
          });
        });
    follow(
        field,
        [field, where](const Part& part) {
          const std::optional<Entered<Quantity>>& value = where(part);
          field->set_value(value ? FieldValue(to_plain(*value)) : FieldValue());
        },
        [field] { field->give_back(); });
    return field;
  }

  template <class E, class Where>
  ChoiceField* choice(const QString& undo_name, Where where, std::function<QString(E)> say = {}) {
    auto* field = new ChoiceField(parent_);
    field->setAccessibleName(undo_name);
    field->set_choices(choices_of<E>(say));
    QObject::connect(field, &ChoiceField::chosen, parent_,
                     [this, field, undo_name, where](std::uint32_t value) {
                       change(label(undo_name, field->currentText()),
                              [where, value](Part& part) { where(part) = static_cast<E>(value); });
                     });
    follow(field,
           [field, where](const Part& part) { field->show_choice(static_cast<std::uint32_t>(where(part))); });
    return field;
  }

  // A choice among parts of the document, whose list changes with it.
  template <class AnyId, class Where>
  ChoiceField* part_choice(const QString& undo_name, Where where,
                           std::function<std::vector<Choice>(const Pattern&)> list) {
    auto* field = new ChoiceField(parent_);
    field->setAccessibleName(undo_name);
    QObject::connect(field, &ChoiceField::chosen, parent_,
                     [this, field, undo_name, where](std::uint32_t value) {
                       change(label(undo_name, field->currentText()),
                              [where, value](Part& part) { where(part) = AnyId{value}; });
                     });
    follow(field, [this, field, where, list](const Part& part) {
      field->set_choices(list(open_.pattern()));
      field->show_choice(where(part).value);
    });
    return field;
  }

  template <class Where>
  QCheckBox* check(const QString& words, const QString& undo_name, Where where) {
    auto* field = new QCheckBox(words, parent_);
    QObject::connect(field, &QCheckBox::clicked, parent_, [this, undo_name, where](bool on) {
      change(label(undo_name, on ? QObject::tr("yes") : QObject::tr("no")),
             [where, on](Part& part) { where(part) = on; });
    });
    follow(field, [field, where](const Part& part) { field->setChecked(where(part)); });
    return field;
  }

  // A field the page made itself.
  void follow(QWidget* field, std::function<void(const Part&)> show, std::function<void()> give_back = {}) {
    followers_.push_back({field, std::move(show), std::move(give_back)});
  }

  const Part* part() const { return find_(open_.pattern()); }

  // Shows the part in force; `other_part` where it is not the one shown before, so that a text that could not
  // be read does not wander along.
  void refresh(bool other_part = false) {
    static const Part nothing{};
    const Part* shown = part();
    for (const Follower& follower : followers_) {
      follower.field->setEnabled(shown != nullptr);
      if (other_part && follower.give_back) follower.give_back();
      follower.show(shown != nullptr ? *shown : nothing);
    }
  }

  void change(const QString& step, const std::function<void(Part&)>& edit, const QString& merge = {}) {
    const Part* now = part();
    if (now == nullptr) return;
    open_.apply(
        step,
        [this, &edit](Pattern& pattern) {
          // The pattern is the copy being edited, so its part may be written to.
          if (auto* editable = const_cast<Part*>(find_(pattern))) edit(*editable);
        },
        merge.isEmpty() ? QString() : merge + QLatin1Char('/') + key_of(*now));
  }

  // What a step that sets a field to a value is called.
  QString label(const QString& undo_name, const QString& value) const {
    const Part* now = part();
    const QString name = now != nullptr && name_ ? name_(*now) : QString();
    return name.isEmpty() ? undo_name + QLatin1Char(' ') + value
                          : undo_name + ", " + name + QLatin1Char(' ') + value;
  }

 private:
  struct Follower {
    QWidget* field;
    std::function<void(const Part&)> show;
    std::function<void()> give_back;
  };

  static QString key_of(const Part& part) {
    if constexpr (requires { part.id.value; })
      return QString::number(part.id.value);
    else
      return {};
  }

  OpenPattern& open_;
  QWidget* parent_;
  Find find_;
  Name name_;
  std::vector<Follower> followers_;
};

}  // namespace skeinproof
