// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/save_skein_pane.h"

#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/pages/changes/change_words.h"
#include "app/pages/pieces/piece_words.h"
#include "app/pages/printed_tables.h"
#include "app/widgets/count_words.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"

namespace skeinproof {
namespace {

Expected<SaveSkein> nothing_yet() { return failure(ErrorKind::wrong_shape, "no colour yet", "a colour"); }

FigureRow row_of(const SavedSkein& way, const ReaderStyle& reader) {
  FigureRow row;
  row.name = text_of(way.words);
  row.figure = (way.brimful ? SaveSkeinPane::tr("%1 to spare, brimful") : SaveSkeinPane::tr("%1 to spare"))
                   .arg(yarn_words(way.spare, reader));
  row.how = text_of(way.reason);
  row.strong = true;
  return row;
}

}  // namespace

SaveSkeinPane::SaveSkeinPane(QWidget* parent)
    : QWidget(parent),
      shown_(nothing_yet()),
      job_([this](Expected<SaveSkein> result) { take(std::move(result)); }),
      roles_(new ChoiceField),
      headline_(new QLabel),
      note_(new QuietLabel),
      ways_(new FigureList) {
  roles_->setAccessibleName(tr("Colour that shall take a skein less"));
  headline_->setWordWrap(true);
  headline_->setTextFormat(Qt::PlainText);
  QFont heavy = headline_->font();
  heavy.setWeight(QFont::DemiBold);
  headline_->setFont(heavy);
  note_->setWordWrap(true);
  ways_->view()->setAccessibleName(tr("Ways to save a skein, cheapest first"));
  auto* put = new QPushButton(tr("Put on the bench"));
  put->setToolTip(tr("Put the chosen way on the bench as changes (Enter)"));
  put->setAutoDefault(false);
  auto* bar = new QWidget;
  auto* flow = new FlowLayout(bar);
  flow->setContentsMargins(0, 0, 0, 0);
  flow->setSpacing(scaled(this, 6));
  flow->addWidget(new QLabel(tr("A skein less of")));
  flow->addWidget(roles_);
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
  layout->addWidget(ways_, 1);
  ways_->setMinimumHeight(scaled(this, 90));
  setFocusProxy(roles_);
  connect(roles_, &ChoiceField::chosen, this, [this] {
    stale_ = true;
    work_out();
  });
  connect(put, &QPushButton::clicked, this, &SaveSkeinPane::put_chosen_on_bench);
  connect(ways_->view(), &QAbstractItemView::activated, this, &SaveSkeinPane::put_chosen_on_bench);
}

void SaveSkeinPane::show_bench(const BenchView& view) {
  view_ = view;
  const RoleId kept = role();
  roles_->set_choices(role_choices(view_.pattern, {}));
  if (view_.pattern.role(kept) == nullptr && roles_->count() > 0) roles_->setCurrentIndex(0);
  stale_ = true;
  work_out();
}

void SaveSkeinPane::choose_role(RoleId role) {
  roles_->show_choice(role.value);
  stale_ = true;
  work_out();
}

RoleId SaveSkeinPane::role() const { return RoleId{roles_->currentData().toUInt()}; }
QString SaveSkeinPane::headline() const { return headline_->text(); }

void SaveSkeinPane::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  work_out();
}

// It asks hundreds of what-ifs, so only while somebody looks.
void SaveSkeinPane::work_out() {
  if (!stale_ || !isVisible()) return;
  stale_ = false;
  note_->setText(tr("working it out …"));
  job_.ask([pattern = view_.pattern, size = view_.size, role = role(), numbers = view_.reader.numbers] {
    constexpr std::size_t most_ways = 8;
    return pattern.role(role) == nullptr ? nothing_yet()
                                         : save_skein(pattern, role, size, most_ways, numbers);
  });
}

void SaveSkeinPane::take(Expected<SaveSkein> result) {
  shown_ = std::move(result);
  std::vector<FigureRow> rows;
  if (!shown_) {
    headline_->setText(sentence_of(shown_.error()));
    note_->setText({});
  } else {
    for (const SavedSkein& way : shown_->ways) rows.push_back(row_of(way, view_.reader));
    headline_->setText(
        tr("%1 takes %2: %3 planned, and one skein less holds %4.")
            .arg(text_of(shown_->label),
                 count_words(static_cast<std::size_t>(shown_->skeins), tr("skein"), tr("skeins")),
                 yarn_words(shown_->planned, view_.reader), yarn_words(shown_->step, view_.reader)));
    QString note =
        rows.empty() ? tr("No part in another colour, and not a third of the rounds of a section, saves it.")
                     : tr("The way that moves the least yarn stands first; Enter puts it on the bench.");
    if (view_.changed) note += QLatin1Char(' ') + tr("With the changes on the bench.");
    note_->setText(note);
  }
  ways_->set_rows(std::move(rows));
  emit worked_out();
}

void SaveSkeinPane::put_chosen_on_bench() {
  const int row = ways_->view()->currentIndex().row();
  if (!shown_ || job_.is_busy() || row < 0 || static_cast<std::size_t>(row) >= shown_->ways.size()) return;
  const SavedSkein& way = shown_->ways[static_cast<std::size_t>(row)];
  emit wants_changes(way.changes, text_of(way.words));
}

std::optional<Table> SaveSkeinPane::printed() const {
  if (!shown_ || ways_->rows().empty() || stale_ || job_.is_busy()) return std::nullopt;
  return printed_table(tr("Save a skein of %1").arg(text_of(shown_->label)), ways_->rows());
}

}  // namespace skeinproof
