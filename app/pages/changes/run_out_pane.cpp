// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/run_out_pane.h"

#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/pages/changes/change_words.h"
#include "app/pages/changes/on_hand.h"
#include "app/pages/pieces/piece_words.h"
#include "app/pages/printed_tables.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "app/widgets/line_field.h"
#include "app/widgets/pane_header.h"

namespace skeinproof {
namespace {

Expected<RunOut> nothing_yet() { return failure(ErrorKind::wrong_shape, "no colour yet", "a colour"); }

// "10 rounds (2.9 cm) fewer in Body, plain: decide after round 90" in its two parts.
FigureRow row_of(const TurnBack& turn, bool last, const ReaderStyle& reader) {
  const QString words = text_of(turn.words);
  const qsizetype colon = words.lastIndexOf(QStringLiteral(": "));
  FigureRow row;
  row.name = colon < 0 ? words : words.left(colon);
  row.figure = RunOutPane::tr("saves %1").arg(yarn_words(turn.saves, reader));
  row.how = colon < 0 ? QString() : words.mid(colon + 2);
  if (last) row.how = RunOutPane::tr("the last place to turn back: %1").arg(row.how);
  row.strong = last;
  return row;
}

}  // namespace

RunOutPane::RunOutPane(QWidget* parent)
    : QWidget(parent),
      shown_(nothing_yet()),
      job_([this](Expected<RunOut> result) {
        if (awaited_) take(std::move(result));
      }),
      roles_(new ChoiceField),
      on_hand_(new LineField([this](const QString& line) { return set_on_hand(line); })),
      headline_(new QLabel),
      note_(new QuietLabel),
      turns_(new FigureList) {
  roles_->setAccessibleName(tr("Colour on hand"));
  on_hand_->setAccessibleName(tr("Yarn on hand: skeins, weight or length"));
  on_hand_->setPlaceholderText(tr("4 skeins, 120 g, 640 m"));
  headline_->setWordWrap(true);
  headline_->setTextFormat(Qt::PlainText);
  headline_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  QFont heavy = headline_->font();
  heavy.setWeight(QFont::DemiBold);
  headline_->setFont(heavy);
  note_->setWordWrap(true);
  turns_->view()->setAccessibleName(tr("Places to turn back"));
  auto* put = new QPushButton(tr("Put on the bench"));
  put->setToolTip(tr("Put the chosen place to turn back on the bench as a change (Enter)"));
  put->setAutoDefault(false);
  auto* bar = new QWidget;
  auto* flow = new FlowLayout(bar);
  flow->setContentsMargins(0, 0, 0, 0);
  flow->setSpacing(scaled(this, 6));
  flow->addWidget(new QLabel(tr("Of")));
  flow->addWidget(roles_);
  flow->addWidget(new QLabel(tr("on hand")));
  flow->addWidget(on_hand_);
  flow->add_stretch();
  flow->addWidget(put);
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
  layout->addWidget(turns_, 1);
  turns_->setMinimumHeight(scaled(this, 90));
  setFocusProxy(on_hand_);
  connect(roles_, &ChoiceField::chosen, this, [this] {
    on_hand_->give_back();
    stale_ = true;
    work_out();
  });
  connect(put, &QPushButton::clicked, this, &RunOutPane::put_chosen_on_bench);
  connect(turns_->view(), &QAbstractItemView::activated, this, &RunOutPane::put_chosen_on_bench);
}

void RunOutPane::show_bench(const BenchView& view) {
  view_ = view;
  const RoleId kept = role();
  roles_->set_choices(role_choices(view_.pattern, {}));
  if (view_.pattern.role(kept) == nullptr && roles_->count() > 0) roles_->setCurrentIndex(0);
  stale_ = true;
  work_out();
}

void RunOutPane::choose_role(RoleId role) {
  roles_->show_choice(role.value);
  stale_ = true;
  work_out();
}

RoleId RunOutPane::role() const { return RoleId{roles_->currentData().toUInt()}; }
QString RunOutPane::headline() const { return headline_->text(); }
QString RunOutPane::note() const { return note_->text(); }

QString RunOutPane::typed() const {
  const auto found = typed_.find(role());
  return found != typed_.end() ? found->second : QString();
}

QString RunOutPane::set_on_hand(const QString& line) {
  if (line.trimmed().isEmpty()) {
    typed_.erase(role());
  } else {
    const auto read = read_on_hand(view_.pattern, role(), line);
    if (!read) return sentence_of(read.error());
    typed_[role()] = line.trimmed();
  }
  stale_ = true;
  work_out();
  return {};
}

void RunOutPane::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  work_out();
}

void RunOutPane::work_out() {
  if (!stale_ || !isVisible()) return;
  stale_ = awaited_ = false;
  on_hand_->show_line(typed());
  if (typed().isEmpty()) {
    headline_->setText(tr("How much of it is on hand?"));
    note_->setText(
        tr("Type skeins, grams or metres: the round in which it runs out follows, and where one could "
           "still turn to something shorter."));
    shown_ = nothing_yet();
    turns_->set_rows({});
    emit worked_out();
    return;
  }
  const auto on_hand = read_on_hand(view_.pattern, role(), typed());
  if (!on_hand) {
    take(tl::unexpected<Error>(on_hand.error()));
    return;
  }
  awaited_ = true;
  job_.ask([pattern = view_.pattern, size = view_.size, role = role(), metres = *on_hand,
            numbers = view_.reader.numbers] { return run_out(pattern, role, size, metres, {}, numbers); });
}

void RunOutPane::take(Expected<RunOut> result) {
  shown_ = std::move(result);
  std::vector<FigureRow> rows;
  if (!shown_) {
    headline_->setText(sentence_of(shown_.error()));
    note_->setText({});
  } else {
    const ReaderStyle& reader = view_.reader;
    const RunOut& out = *shown_;
    headline_->setText(out.lasts() ? tr("It lasts: %1 to spare").arg(yarn_words(out.spare, reader))
                                   : tr("It runs out in %1: %2 left, needs %3")
                                         .arg(text_of(out.where), yarn_words(out.left_before, reader),
                                              yarn_words(out.fails_in->needs, reader)));
    QString note = tr("%1 on hand, %2 knitted; swatch and allowance are not in it.")
                       .arg(yarn_words(out.on_hand, reader), yarn_words(out.needs, reader));
    if (!out.lasts()) {
      note += QLatin1Char(' ') + tr("%1 short.").arg(yarn_words(-out.spare, reader));
      if (out.turn_backs.empty())
        note += QLatin1Char(' ') + tr("No plain section before it is long enough to be shortened by that.");
    }
    if (view_.changed) note += QLatin1Char(' ') + tr("With the changes on the bench.");
    note_->setText(note);
    for (const TurnBack& turn : out.turn_backs)
      rows.push_back(row_of(turn, &turn == &out.turn_backs.back(), reader));
  }
  turns_->set_rows(std::move(rows));
  emit worked_out();
}

void RunOutPane::put_chosen_on_bench() {
  const int row = turns_->view()->currentIndex().row();
  if (!shown_ || job_.is_busy() || row < 0 || static_cast<std::size_t>(row) >= shown_->turn_backs.size())
    return;
  const TurnBack& turn = shown_->turn_backs[static_cast<std::size_t>(row)];
  emit wants_changes({ExtraRounds{turn.section, -turn.rounds_fewer, {}, {}}},
                     turns_->rows()[static_cast<std::size_t>(row)].name);
}

std::optional<Table> RunOutPane::printed() const {
  if (!shown_ || stale_ || job_.is_busy()) return std::nullopt;
  std::vector<FigureRow> rows;
  FigureRow answer;
  answer.name = headline();
  answer.how = note();
  answer.strong = true;
  rows.push_back(answer);
  rows.insert(rows.end(), turns_->rows().begin(), turns_->rows().end());
  return printed_table(tr("Run-out point of %1, %2 on hand").arg(roles_->currentText(), typed()), rows);
}

}  // namespace skeinproof
