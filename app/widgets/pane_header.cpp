// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/pane_header.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/widgets/ink.h"

namespace skeinproof {

QuietLabel::QuietLabel(const QString& text, QWidget* parent) : QLabel(text, parent) {
  setTextFormat(Qt::PlainText);
  setForegroundRole(QPalette::WindowText);  // the quiet one, on whatever it stands
  dress();
}

void QuietLabel::changeEvent(QEvent* event) {
  QLabel::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) dress();
}

void QuietLabel::dress() {
  const QColor quiet = ink_of(palette()).muted;
  if (palette().color(QPalette::WindowText) == quiet) return;
  QPalette dressed = palette();
  dressed.setColor(QPalette::WindowText, quiet);
  setPalette(dressed);
}

PaneHeader::PaneHeader(const QString& title, QWidget* parent)
    : QWidget(parent), row_(new QHBoxLayout(this)), title_(new QLabel(title)), note_(new QuietLabel) {
  title_->setTextFormat(Qt::PlainText);
  note_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  note_->installEventFilter(this);
  row_->addWidget(title_);
  row_->addWidget(note_, 1);
  setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
  dress();
}

void PaneHeader::set_title(const QString& title) { title_->setText(title); }
void PaneHeader::set_note(const QString& note) {
  whole_note_ = note;
  fit_note();
}

void PaneHeader::fit_note() {
  const QString fitted = note_->fontMetrics().elidedText(whole_note_, Qt::ElideRight, note_->width());
  note_->setText(fitted);
  note_->setToolTip(fitted == whole_note_ ? QString() : whole_note_);
  note_->setAccessibleName(whole_note_);
}

bool PaneHeader::eventFilter(QObject* watched, QEvent* event) {
  if (watched == note_ && event->type() == QEvent::Resize) fit_note();
  return QWidget::eventFilter(watched, event);
}

QPushButton* PaneHeader::add_button(const QString& text, const std::function<void()>& press,
                                    const QString& tip) {
  auto* button = new QPushButton(text);
  button->setAutoDefault(false);
  if (!tip.isEmpty()) button->setToolTip(tip);
  connect(button, &QPushButton::clicked, this, press);
  row_->addWidget(button);
  buttons_.push_back(button);
  dress();
  return button;
}

void PaneHeader::paintEvent(QPaintEvent*) {
  const Ink ink = ink_of(palette());
  QPainter painter(this);
  painter.fillRect(rect(), ink.header);
  painter.setPen(ink.rule);
  painter.drawLine(rect().topLeft(), rect().topRight());
  painter.drawLine(rect().bottomLeft(), rect().bottomRight());
}

void PaneHeader::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) dress();
}

void PaneHeader::dress() {
  QFont heavy = font();
  heavy.setWeight(QFont::DemiBold);
  title_->setFont(heavy);
  note_->setFont(type_of(font()).small);
  row_->setContentsMargins(scaled(this, 10), scaled(this, 4), scaled(this, 8), scaled(this, 4));
  row_->setSpacing(scaled(this, 8));
  setMinimumHeight(scaled(this, 36));
  // As wide as their words; the style's own least width would push them out of a narrow pane.
  for (QPushButton* button : buttons_)
    button->setFixedWidth(fontMetrics().horizontalAdvance(button->text().remove(QLatin1Char('&'))) +
                          scaled(this, 22));
  fit_note();
}

QWidget* make_pane(PaneHeader* head, QWidget* body) {
  auto* whole = new QWidget;
  auto* layout = new QVBoxLayout(whole);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(head);
  layout->addWidget(body, 1);
  return whole;
}

}  // namespace skeinproof
