// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFrame>
#include <functional>
#include <vector>

class QLabel;
class QHBoxLayout;

namespace skeinproof {

// A line above the page for what went wrong or is offered: what happened, what is safe, what to do. It stops
// nobody from working. The latest is shown and the earlier ones wait behind it; one with the same key
// replaces the earlier one.
class MessageBar : public QFrame {
  Q_OBJECT

 public:
  struct Choice {
    QString text;
    std::function<void()> take;  // the message goes away when it was taken
  };
  struct Message {
    QString key;
    QString text;
    std::vector<Choice> choices;
    bool closable = true;
  };

  explicit MessageBar(QWidget* parent = nullptr);

  void post(Message message);
  void take_back(const QString& key);
  const std::vector<Message>& messages() const { return messages_; }

 private:
  void show_first();
  void drop_first();

  std::vector<Message> messages_;
  QLabel* text_;
  QWidget* buttons_;
  QHBoxLayout* buttons_layout_;
};

}  // namespace skeinproof
