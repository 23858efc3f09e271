// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/answer_pane.h"

#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/pages/changes/change_words.h"
#include "app/pages/pieces/piece_words.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"

namespace skeinproof {

AnswerPane::AnswerPane(const Words& words, const std::vector<Field>& more, QWidget* parent)
    : QWidget(parent),
      roles_(new ChoiceField),
      headline_(new QLabel),
      note_(new QuietLabel),
      answers_(new FigureList) {
  roles_->setAccessibleName(words.colour_name);
  headline_->setWordWrap(true);
  headline_->setTextFormat(Qt::PlainText);
  headline_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  QFont heavy = headline_->font();
  heavy.setWeight(QFont::DemiBold);
  headline_->setFont(heavy);
  note_->setWordWrap(true);
  answers_->view()->setAccessibleName(words.list_name);
  answers_->setMinimumHeight(scaled(this, 90));
  auto* put = new QPushButton(tr("Put on the bench"));
  put->setToolTip(words.put_tip);
  put->setAutoDefault(false);

  auto* bar = new QWidget;
  auto* question = new FlowLayout(bar);
  question->setContentsMargins(0, 0, 0, 0);
  question->setSpacing(scaled(this, 6));
  question->addWidget(new QLabel(words.question));
  question->addWidget(roles_);
  for (const Field& field : more) {
    question->addWidget(new QLabel(field.words));
    question->addWidget(field.field);
  }
  question->add_stretch();
  question->addWidget(put);
  auto* head = new QVBoxLayout;
  head->setContentsMargins(scaled(this, 12), scaled(this, 8), scaled(this, 12), scaled(this, 4));
  head->setSpacing(scaled(this, 4));
  head->addWidget(bar);
  head->addWidget(headline_);
  head->addWidget(note_);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addLayout(head);
  layout->addWidget(answers_, 1);
  setFocusProxy(roles_);
  connect(roles_, &ChoiceField::chosen, this, [this] {
    leave_role();
    ask_again();
  });
  connect(put, &QPushButton::clicked, this, &AnswerPane::put_chosen_on_bench);
  connect(answers_->view(), &QAbstractItemView::activated, this, &AnswerPane::put_chosen_on_bench);
}

void AnswerPane::show_bench(const BenchView& view) {
  view_ = view;
  const RoleId kept = role();
  roles_->set_choices(role_choices(view_.pattern, {}));
  if (view_.pattern.role(kept) == nullptr && roles_->count() > 0) roles_->setCurrentIndex(0);
  ask_again();
}

void AnswerPane::choose_role(RoleId role) {
  roles_->show_choice(role.value);
  ask_again();
}

RoleId AnswerPane::role() const { return RoleId{roles_->currentData().toUInt()}; }
QString AnswerPane::headline() const { return headline_->text(); }
QString AnswerPane::note() const { return note_->text(); }

void AnswerPane::show_words(const QString& headline, const QString& note) {
  headline_->setText(headline);
  note_->setText(view_.changed && !note.isEmpty()
                     ? note + QLatin1Char(' ') + tr("With the changes on the bench.")
                     : note);
}

void AnswerPane::ask_again() {
  stale_ = true;
  ask_if_seen();
}

void AnswerPane::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  ask_if_seen();
}

void AnswerPane::ask_if_seen() {
  if (!stale_ || !isVisible()) return;
  stale_ = false;
  ask();
}

void AnswerPane::put_chosen_on_bench() {
  const int row = answers_->view()->currentIndex().row();
  if (!is_busy() && row >= 0 && static_cast<std::size_t>(row) < answers_->rows().size())
    put_on_bench(static_cast<std::size_t>(row));
}

}  // namespace skeinproof
