// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/message_bar.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <algorithm>

namespace skeinproof {

MessageBar::MessageBar(QWidget* parent)
    : QFrame(parent), text_(new QLabel), buttons_(new QWidget), buttons_layout_(new QHBoxLayout(buttons_)) {
  setFrameShape(QFrame::StyledPanel);
  setAccessibleName(tr("Message"));
  setAutoFillBackground(true);
  setBackgroundRole(QPalette::Base);
  setForegroundRole(QPalette::Text);
  text_->setForegroundRole(QPalette::Text);
  text_->setWordWrap(true);
  text_->setTextFormat(Qt::PlainText);
  text_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  buttons_layout_->setContentsMargins(0, 0, 0, 0);
  auto* layout = new QHBoxLayout(this);
  layout->addWidget(text_, 1);
  layout->addWidget(buttons_);
  hide();
}

void MessageBar::post(Message message) {
  std::erase_if(messages_, [&message](const Message& other) { return other.key == message.key; });
  messages_.insert(messages_.begin(), std::move(message));
  show_first();
}

void MessageBar::take_back(const QString& key) {
  const auto left = std::remove_if(messages_.begin(), messages_.end(),
                                   [&key](const Message& message) { return message.key == key; });
  if (left == messages_.end()) return;
  messages_.erase(left, messages_.end());
  show_first();
}

void MessageBar::drop_first() {
  messages_.erase(messages_.begin());
  show_first();
}

void MessageBar::show_first() {
  const auto old = buttons_->findChildren<QPushButton*>();
  for (QPushButton* button : old) {
    button->hide();
    button->deleteLater();
  }
  setVisible(!messages_.empty());
  if (messages_.empty()) return;

  const Message& first = messages_.front();
  text_->setText(first.text);
  setAccessibleDescription(first.text);
  for (const Choice& choice : first.choices) {
    auto* button = new QPushButton(choice.text);
    connect(button, &QPushButton::clicked, this, [this, take = choice.take] {
      drop_first();
      if (take) take();
    });
    buttons_layout_->addWidget(button);
    button->show();
  }
  if (!first.closable) return;
  auto* close = new QPushButton(tr("Close this message"));
  connect(close, &QPushButton::clicked, this, &MessageBar::drop_first);
  buttons_layout_->addWidget(close);
  close->show();
}

}  // namespace skeinproof
