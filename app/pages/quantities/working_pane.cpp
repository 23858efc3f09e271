// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/quantities/working_pane.h"

#include <QApplication>
#include <QClipboard>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <vector>

#include "app/pages/quantities/working_model.h"
#include "app/pages/quantities/working_view.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"

namespace skeinproof {
namespace {

QString from(const std::string& text) { return QString::fromStdString(text); }

// The rows from the top down to a step: its place in the working, whatever the figures.
std::vector<int> way_to(QModelIndex index) {
  std::vector<int> way;
  for (; index.isValid(); index = index.parent()) way.insert(way.begin(), index.row());
  return way;
}

QModelIndex at_way(const WorkingModel& model, const std::vector<int>& way) {
  QModelIndex at;
  for (const int row : way) {
    const QModelIndex next = model.index(row, 0, at);
    if (!next.isValid()) return {};
    at = next;
  }
  return at;
}

// The labels along a way tell whether another working has the same steps.
QStringList labels_to(QModelIndex index) {
  QStringList labels;
  for (; index.isValid(); index = index.parent()) labels.prepend(index.siblingAtColumn(0).data().toString());
  return labels;
}

}  // namespace

WorkingPane::WorkingPane(QWidget* parent)
    : QWidget(parent),
      model_(new WorkingModel(this)),
      view_(new WorkingView(*model_)),
      title_(new QuietLabel),
      answer_row_(new QBoxLayout(QBoxLayout::LeftToRight)),
      answer_(new QLabel),
      beside_(new QLabel),
      range_(new QuietLabel),
      details_head_(new PaneHeader(tr("Step"))),
      details_(new QLabel),
      source_(new QuietLabel),
      go_(new QPushButton),
      copy_(new QPushButton(tr("Cop&y working"))) {
  setObjectName(QStringLiteral("working_pane"));
  for (QLabel* label : {static_cast<QLabel*>(title_), answer_, beside_, static_cast<QLabel*>(range_),
                        details_, static_cast<QLabel*>(source_)}) {
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(label != answer_);
  }
  for (QLabel* label : {answer_, beside_, details_})
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
  answer_->setObjectName(QStringLiteral("answer"));
  answer_row_->addWidget(answer_);
  answer_row_->addWidget(beside_, 1);
  auto* head = new QVBoxLayout;
  head->addWidget(title_);
  head->addLayout(answer_row_);
  head->addWidget(range_);
  head->setObjectName(QStringLiteral("head"));
  auto* details = new QVBoxLayout;
  details->addWidget(details_);
  details->addWidget(source_);
  auto* buttons = new QHBoxLayout;
  buttons->addWidget(copy_);
  buttons->addWidget(go_);
  buttons->addStretch(1);
  copy_->setToolTip(tr("Ctrl+Shift+C"));
  auto* all = new QVBoxLayout(this);
  all->addLayout(head);
  all->addWidget(view_, 1);
  all->addWidget(details_head_);
  all->addLayout(details);
  all->addLayout(buttons);
  setAutoFillBackground(true);
  setBackgroundRole(QPalette::Base);
  connect(view_, &WorkingView::step_chosen, this, &WorkingPane::show_details);
  connect(view_, &WorkingView::copy_asked, this, &WorkingPane::copy);
  connect(copy_, &QPushButton::clicked, this, &WorkingPane::copy);
  connect(go_, &QPushButton::clicked, this, [this] {
    if (const Step* step = model_->step(view_->currentIndex()))
      emit wants_place(from(step->place.page), step->place.part);
  });
  dress();
}

void WorkingPane::dress() {
  const Type type = type_of(font());
  title_->setFont(type.body);
  answer_->setFont(type.answer);
  beside_->setFont(type.body);
  range_->setFont(type.small);
  source_->setFont(type.small);
  const int inset = scaled(this, 12);
  auto* all = static_cast<QVBoxLayout*>(layout());
  all->setContentsMargins(0, scaled(this, 8), 0, scaled(this, 8));
  all->setSpacing(scaled(this, 6));
  for (int i = 0; i < all->count(); ++i)
    if (QLayout* part = all->itemAt(i)->layout()) {
      part->setContentsMargins(inset, 0, inset, 0);
      part->setSpacing(scaled(this, 2));
    }
  answer_row_->setContentsMargins(0, 0, 0, 0);
  answer_row_->setSpacing(scaled(this, 12));
}

void WorkingPane::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) dress();
}

void WorkingPane::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  const bool beside = width() >= scaled(this, 360);
  answer_row_->setDirection(beside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
  answer_row_->setSpacing(beside ? scaled(this, 12) : 0);
  // The steps are what the pane is for; where it is low, the details give way.
  const bool high = height() >= scaled(this, 360);
  details_head_->setVisible(high);
  details_->setVisible(high && !details_->text().isEmpty());
  source_->setVisible(high && !source_->text().isEmpty());
}

QSize WorkingPane::minimumSizeHint() const { return {scaled(this, 200), scaled(this, 90)}; }

QString WorkingPane::answer_text() const { return answer_->text() + QStringLiteral("  ") + beside_->text(); }

void WorkingPane::show_working(const Answer& answer, Step step, const ReaderStyle& reader) {
  const QModelIndex before = view_->currentIndex().siblingAtColumn(0);
  const std::vector<int> way = way_to(before);
  const QStringList labels = labels_to(before);
  title_->setText(answer.title);
  answer_->setText(answer.answer);
  beside_->setText(answer.beside);
  range_->setText(answer.range);
  range_->setVisible(!answer.range.isEmpty());
  copy_->setEnabled(true);
  model_->show(std::move(step), reader);
  const QModelIndex same = at_way(*model_, way);
  view_->drop_to(same.isValid() && labels_to(same) == labels ? same : model_->ground());
  show_details();
}

void WorkingPane::show_nothing(const QString& title, const QString& reason) {
  title_->setText(title);
  answer_->setText(QStringLiteral("–"));
  beside_->setText(reason);
  range_->hide();
  model_->clear();
  copy_->setEnabled(false);
  show_details();
}

void WorkingPane::show_details() {
  const Step* step = model_->step(view_->currentIndex());
  go_->setVisible(step && !step->place.page.empty());
  if (!step) {
    details_head_->set_title(tr("Step"));
    details_head_->set_note({});
    details_->clear();
    source_->clear();
    return;
  }
  const std::string_view ground = word_of(step->ground);
  details_head_->set_title(from(step->label));
  details_head_->set_note(QString::fromUtf8(ground.data(), static_cast<qsizetype>(ground.size())));
  details_->setText(step->how.empty() ? model_->figure_text(*step)
                                      : tr("%1 = %2").arg(from(step->how), model_->figure_text(*step)));
  source_->setText(from(step->source));
  source_->setVisible(details_head_->isVisible() && !step->source.empty());
  details_->setVisible(details_head_->isVisible());
  go_->setText(tr("Show on %1").arg(from(step->place.page)));
}

void WorkingPane::copy() const {
  const Step* step = model_->step(model_->index(0, 0));
  if (!step) return;
  QApplication::clipboard()->setText(title_->text() + QLatin1Char('\n') + answer_text() + QLatin1Char('\n') +
                                     from(working_text(*step)));
  emit says(tr("Working copied as text."));
}

}  // namespace skeinproof
