// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QLineEdit>
#include <QPointer>
#include <functional>

#include "app/widgets/field_message.h"
#include "app/widgets/quantity_text.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

class OpenPattern;

// A field for one quantity. It shows what was typed, else the figure in the reader's style, and reads its
// text on Enter or when the focus leaves. A text that is no such quantity stays, underlined, with the reason
// under the field; Esc gives back the value in force. An empty field is an absent value. The wheel changes
// nothing.
//
//   auto* swatch = new QuantityField(QuantityFormat::yarn_length(), open, this);
//   swatch->bind<Metres>("swatch", [id](const Pattern& p) { return …optional<Entered<Metres>>; },
//                        [id](Pattern& p, const std::optional<Entered<Metres>>& v) { … });
// or, unbound: set_value(…) and the signal committed(…).
class QuantityField : public QLineEdit {
  Q_OBJECT

 public:
  QuantityField(QuantityFormat format, OpenPattern& open, QWidget* parent = nullptr);

  const QuantityFormat& format() const { return format_; }
  // The value in force. Setting it leaves a text alone that is being typed or could not be read.
  const FieldValue& value() const { return value_; }
  void set_value(const FieldValue& value);
  template <class Quantity>
  void set_value(const std::optional<Entered<Quantity>>& value) {
    set_value(value ? FieldValue(to_plain(*value)) : FieldValue());
  }
  template <class Quantity>
  std::optional<Entered<Quantity>> value_as() const {
    return value_ ? std::optional(from_plain<Quantity>(*value_)) : std::nullopt;
  }

  // Shows and edits a place of the open pattern; `undo_name` is what the undo step is called. The getter is
  // called after every change of the document, so it finds its part by id and says absent where the part is
  // gone.
  template <class Quantity>
  void bind(const QString& undo_name, std::function<std::optional<Entered<Quantity>>(const Pattern&)> get,
            std::function<void(Pattern&, const std::optional<Entered<Quantity>>&)> set) {
    bind_plain(
        undo_name,
        [get](const Pattern& pattern) {
          const auto value = get(pattern);
          return value ? FieldValue(to_plain(*value)) : FieldValue();
        },
        [set](Pattern& pattern, const FieldValue& value) {
          set(pattern, value ? std::optional(from_plain<Quantity>(*value)) : std::nullopt);
        });
  }
  void bind_plain(const QString& undo_name, std::function<FieldValue(const Pattern&)> get,
                  std::function<void(Pattern&, const FieldValue&)> set);

  // Refuses an empty field (a swatch length that must be there); the sentence is the message.
  void set_required(const QString& sentence) { required_ = sentence; }
  // Why the text could not be read; empty while it can.
  const QString& message() const { return message_; }

  // Reads the text now, as Enter does; false where it cannot be read.
  bool commit();
  void give_back();  // as Esc does

 signals:
  void committed(const skeinproof::FieldValue& value);  // only where it differs from the value in force
  void message_changed(const QString& message);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;

 private:
  void show_value_unless_typing();
  void show_value();
  void set_message(const QString& message);

  QuantityFormat format_;
  OpenPattern& open_;
  FieldValue value_;
  QString shown_;
  QString required_;
  QString message_;
  QPointer<FieldMessage> message_label_;
  std::function<FieldValue(const Pattern&)> get_;
};

}  // namespace skeinproof
