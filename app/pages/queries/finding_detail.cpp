// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/finding_detail.h"

#include <QCheckBox>
#include <QDate>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/pages/queries/finding_tree.h"
#include "app/pages/queries/queries_widgets.h"
#include "app/widgets/count_words.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/quantity_text.h"
#include "core/review/change_words.h"

namespace skeinproof {
namespace {

Signed signed_now(std::string reply) {
  return {std::move(reply), {}, QDate::currentDate().toString(Qt::ISODate).toStdString()};
}

QString rules_of(const Review& review, const std::vector<std::size_t>& findings) {
  QStringList rules;
  for (std::size_t index : findings) {
    const QString rule = from_core(review.findings[index].check);
    if (!rules.contains(rule)) rules << rule;
  }
  return rules.join(QStringLiteral(", "));
}

class Rows {
 public:
  void heading(const QString& name) {
    FigureRow row;
    row.name = name;
    row.heading = true;
    rows.push_back(std::move(row));
  }
  void add(const QString& name, const QString& figure = {}, const QString& how = {}, bool strong = false) {
    FigureRow row;
    row.name = name;
    row.figure = figure;
    row.how = how;
    row.strong = strong;
    rows.push_back(std::move(row));
  }
  std::vector<FigureRow> rows;
};

void add_slip(const Review& review, const LikelySlip& slip, bool first, Rows& rows) {
  QString how = FindingDetail::tr("clears %1").arg(rules_of(review, slip.clears));
  how += slip.opens == 0 ? FindingDetail::tr("; opens nothing")
                         : FindingDetail::tr("; opens %1")
                               .arg(count_words(static_cast<std::size_t>(slip.opens),
                                                FindingDetail::tr("finding"), FindingDetail::tr("findings")));
  if (!slip.explains_too.empty())
    how += FindingDetail::tr("; explains too: %1").arg(from_core(slip.explains_too));
  rows.add(from_core(change_words(review, slip.edits)), from_core(slip.name), how, first);
}

void add_contradictions(const Reviewed& reviewed, std::size_t cause, Rows& rows) {
  std::vector<std::size_t> statements;
  for (std::size_t finding : reviewed.review.causes[cause].findings)
    for (std::size_t statement : reviewed.review.findings[finding].statements)
      statements.push_back(statement);
  for (const Contradiction& one : reviewed.contradictions.contradictions) {
    const bool concerned =
        std::any_of(one.figures.begin(), one.figures.end(), [&](const DoubtedFigure& figure) {
          return figure.statement &&
                 std::find(statements.begin(), statements.end(), *figure.statement) != statements.end();
        });
    const Finding& first = reviewed.review.findings[reviewed.review.causes[cause].findings.front()];
    const bool same_size = one.size.empty() || first.sizes.empty() ||
                           std::find(first.sizes.begin(), first.sizes.end(), one.size) != first.sizes.end();
    if (!concerned || !same_size) continue;
    rows.heading(FindingDetail::tr("Cannot all be right: %1").arg(from_core(one.about)));
    for (const auto& set : one.sets) {
      QStringList words;
      for (std::size_t index : set) words << from_core(one.figures[index].words);
      rows.add(words.join(QStringLiteral(" · ")));
    }
    if (one.drop)
      rows.add(
          FindingDetail::tr("Without “%1” all others agree").arg(from_core(one.figures[*one.drop].words)),
          from_core(one.rest_agree_on), {}, true);
  }
}

}  // namespace

FindingDetail::FindingDetail(OpenPattern& open, QWidget* parent)
    : QWidget(parent), open_(open), rehearsing_([this](std::optional<Rehearsal> rehearsal) {
        if (rehearsal) show_rehearsal(*rehearsal);
        emit rehearsed();
      }) {
  title_ = new QLabel;
  title_->setWordWrap(true);
  rule_ = new QuietLabel;
  figures_ = new FigureList;
  figures_->view()->setAccessibleName(tr("Working of the chosen finding"));
  figures_->set_empty_words(tr("Choose a finding to see its working."));
  wording_ = new QPlainTextEdit;
  wording_->setAccessibleName(tr("Wording on the query sheet"));
  wording_->setTabChangesFocus(true);
  remember_ = new QCheckBox(tr("Remember these words for the ho&use"));
  take_ = new QPushButton;
  answer_ = new QLineEdit;
  answer_->setAccessibleName(tr("The designer's answer, in the place of the printed words"));
  record_ = new QPushButton(tr("Record the ans&wer"));
  rehearsal_ = new QuietLabel;
  rehearsal_->setWordWrap(true);
  reason_ = new QLineEdit;
  reason_->setAccessibleName(tr("Reason for keeping"));
  reason_->setPlaceholderText(tr("the designer says …"));
  keep_ = new QPushButton(tr("Keep, &because"));
  reopen_ = new QPushButton(tr("Reopen"));
  lay_out();
  connect(take_, &QPushButton::clicked, this, &FindingDetail::take_change);
  connect(record_, &QPushButton::clicked, this, &FindingDetail::answer);
  connect(answer_, &QLineEdit::textEdited, this, &FindingDetail::rehearse_answer);
  connect(answer_, &QLineEdit::returnPressed, this, &FindingDetail::answer);
  connect(keep_, &QPushButton::clicked, this, &FindingDetail::keep);
  connect(reason_, &QLineEdit::returnPressed, this, &FindingDetail::keep);
  connect(reopen_, &QPushButton::clicked, this, &FindingDetail::reopen);
  connect(wording_, &QPlainTextEdit::textChanged, this, &FindingDetail::save_wording);
  connect(remember_, &QCheckBox::clicked, this, &FindingDetail::save_wording);
  show_query(nullptr, {});
}

void FindingDetail::lay_out() {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(scaled(this, 12), scaled(this, 8), scaled(this, 12), scaled(this, 8));
  auto* head = new QHBoxLayout;
  head->addWidget(title_, 1);
  head->addWidget(rule_, 0, Qt::AlignTop | Qt::AlignRight);
  column->addLayout(head);
  column->addWidget(figures_, 1);
  auto* grid = new QGridLayout;
  auto* wording_label = new QLabel(tr("Word&ing"));
  wording_label->setBuddy(wording_);
  grid->addWidget(wording_label, 0, 0, Qt::AlignTop);
  grid->addWidget(wording_, 0, 1, 1, 2);
  wording_->setFixedHeight(scaled(this, 46));
  grid->addWidget(remember_, 1, 1, 1, 2);
  auto* answer_label = new QLabel(tr("Their &answer"));
  answer_label->setBuddy(answer_);
  grid->addWidget(answer_label, 2, 0);
  grid->addWidget(answer_, 2, 1);
  grid->addWidget(record_, 2, 2);
  grid->addWidget(rehearsal_, 3, 1, 1, 2);
  grid->addWidget(keep_, 4, 0);
  grid->addWidget(reason_, 4, 1, 1, 2);
  grid->addWidget(take_, 5, 1);
  grid->addWidget(reopen_, 5, 2);
  grid->setColumnStretch(1, 1);
  column->addLayout(grid);
}

const Finding& FindingDetail::finding() const {
  return reviewed_->review.findings[reviewed_->review.causes[*cause_].findings.front()];
}

void FindingDetail::show_query(std::shared_ptr<const Reviewed> reviewed, std::optional<std::size_t> cause) {
  if (reviewed_ == reviewed && cause_ == cause && reviewed_) return;
  const std::string key_before = cause_ ? finding().key() : std::string();
  reviewed_ = std::move(reviewed);
  cause_ = reviewed_ ? cause : std::nullopt;
  const bool same_finding = cause_ && finding().key() == key_before;
  for (QWidget* field :
       std::initializer_list<QWidget*>{wording_, remember_, take_, answer_, record_, reason_, keep_, reopen_})
    field->setEnabled(cause_.has_value());
  QFont semibold = type_of(font()).title;
  title_->setFont(semibold);
  show_rehearsal_words({});
  if (!cause_) {
    show_change({});
    title_->setText({});
    rule_->setText({});
    figures_->set_rows({});
    return;
  }
  title_->setText(from_core(decision().number) + QStringLiteral("  ") + place_words(*reviewed_, *cause_) +
                  QStringLiteral(": ") + from_core(finding().title));
  const QString rule =
      tr("%1, rule %2").arg(from_core(word_of(finding().severity)), from_core(finding().check));
  rule_->setText(decision().asked ? tr("%1, asked").arg(rule) : rule);
  show_rows();
  const QString words = from_core(decision().wording);
  if (wording_->toPlainText() != words && !(same_finding && wording_->hasFocus())) {
    const QSignalBlocker quiet(wording_);
    wording_->setPlainText(words);
  }
  const Review& review = reviewed_->review;
  const auto proposed = proposed_answer(review, *cause_);
  take_->setEnabled(!proposed.empty() && open_.pattern().draft() != nullptr);
  show_change(from_core(change_words(review, proposed)));
  // What is being typed stays while the text is checked again.
  if (!(same_finding && answer_->hasFocus()))
    answer_->setText(from_core(words_at(review.text, words_in_question(review, *cause_))));
  record_->setEnabled(open_.pattern().draft() != nullptr);
  if (!(same_finding && reason_->hasFocus()))
    reason_->setText(decision().row && decision().row->answer == QueryAnswer::kept
                         ? from_core(decision().row->reply)
                         : QString());
  reopen_->setEnabled(decision().row && decision().row->answer != QueryAnswer::none);
}

// The button says what it does as far as there is room; its tip all of it.
void FindingDetail::show_change(const QString& change) {
  constexpr int longest = 44;
  const QString shown =
      change.size() <= longest ? change : change.left(longest - 1).trimmed() + QStringLiteral("…");
  take_->setText(change.isEmpty()
                     ? tr("&Take the change")
                     : tr("&Take: %1").arg(QString(shown).replace(QLatin1Char('&'), QLatin1String("&&"))));
  take_->setToolTip(change);
  take_->setAccessibleName(tr("Take the change: %1").arg(change));
}

void FindingDetail::start() { figures_->view()->setFocus(); }

void FindingDetail::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::FontChange) return;
  wording_->setFixedHeight(scaled(this, 46));
  title_->setFont(type_of(font()).title);
}

void FindingDetail::show_rows() {
  const Review& review = reviewed_->review;
  const Cause& cause = review.causes[*cause_];
  Rows rows;
  if (decision().state == DecisionState::kept || decision().state == DecisionState::lapsed)
    rows.add(
        decision().state == DecisionState::kept ? tr("Kept") : tr("Was kept; what it rested on has changed"),
        from_core(decision().row->when), from_core(decision().row->reply), true);
  rows.heading(tr("Working"));
  for (const std::string& line : finding().evidence) rows.add(from_core(line));
  if (cause.slip || !cause.others.empty()) rows.heading(tr("Likely slip"));
  if (cause.slip) add_slip(review, *cause.slip, true, rows);
  for (const LikelySlip& slip : cause.others) add_slip(review, slip, false, rows);
  if (!cause.slip && !finding().proposal_words.empty()) {
    rows.heading(tr("Smallest change"));
    const QString change = from_core(change_words(review, finding().proposal));
    rows.add(change.isEmpty() ? from_core(finding().proposal_words) : change, {}, {}, true);
  }
  add_contradictions(*reviewed_, *cause_, rows);
  if (cause.findings.size() > 1) rows.heading(tr("Of the same cause"));
  for (std::size_t i = 1; i < cause.findings.size(); ++i) {
    const Finding& other = review.findings[cause.findings[i]];
    rows.add(from_core(other.title), from_core(other.check),
             from_core(other.evidence.empty() ? std::string() : other.evidence.front()));
  }
  figures_->set_rows(std::move(rows.rows));
}

void FindingDetail::rehearse_answer() {
  if (!cause_) return;
  show_rehearsal_words(tr("Trying it …"));
  rehearsing_.ask([reviewed = reviewed_, cause = *cause_, words = answer_->text().toStdString()] {
    const auto edits = amended_answer(reviewed->review, cause, words);
    if (edits.empty()) return std::optional<Rehearsal>();
    return std::optional(rehearse(reviewed->pattern, assess(reviewed->pattern), reviewed->review, edits));
  });
}

void FindingDetail::show_rehearsal(const Rehearsal& rehearsal) {
  const Review& review = reviewed_->review;
  QString words = rehearsal.closes.empty() ? tr("Closes nothing")
                                           : tr("Closes %1").arg(rules_of(review, rehearsal.closes));
  QStringList opens;
  for (const Finding& opened : rehearsal.opens)
    opens << from_core(opened.check) + QStringLiteral(" ") + from_core(opened.title);
  words +=
      opens.isEmpty() ? tr("; opens nothing.") : tr("; opens: %1.").arg(opens.join(QStringLiteral("; ")));
  show_rehearsal_words(words);
}

void FindingDetail::show_rehearsal_words(const QString& words) {
  rehearsal_->setText(words);
  rehearsal_->setVisible(!words.isEmpty());
}

QString FindingDetail::rehearsal_words() const { return rehearsal_->text(); }

void FindingDetail::decide(const QString& step, const Edit& edit) {
  if (!cause_) return;
  if (reviewed_->state != open_.state()) {
    emit says(tr("The text is being checked again: try once more in a moment."));
    return;
  }
  Expected<void> done;
  open_.apply(step, [&](Pattern& pattern) { done = edit(pattern, reviewed_->review, *cause_); });
  if (!done) emit says(sentence_of(done.error()));
}

void FindingDetail::take_change() {
  if (!cause_) return;
  decide(tr("change of %1").arg(from_core(decision().number)),
         [](Pattern& pattern, const Review& review, std::size_t cause) {
           return accept(pattern, review, cause, signed_now({}));
         });
}

void FindingDetail::answer() {
  if (!cause_) return;
  const std::string words = answer_->text().toStdString();
  decide(tr("answer to %1").arg(from_core(decision().number)),
         [&](Pattern& pattern, const Review& review, std::size_t cause) {
           return amend(pattern, review, cause, words, signed_now(words));
         });
}

void FindingDetail::start_keeping() {
  if (cause_) reason_->setFocus();
}

void FindingDetail::keep() {
  if (!cause_) return;
  if (reason_->text().trimmed().isEmpty()) {
    reason_->setFocus();
    emit says(tr("Say why it stays: the reason is kept with the finding."));
    return;
  }
  decide(tr("keep %1").arg(from_core(decision().number)),
         [words = reason_->text().trimmed().toStdString()](Pattern& pattern, const Review& review,
                                                           std::size_t cause) {
           skeinproof::keep(pattern, review, cause, signed_now(words));
           return Expected<void>();
         });
}

void FindingDetail::reopen() {
  if (!cause_ || !decision().row) return;
  decide(tr("reopen %1").arg(from_core(decision().number)),
         [id = decision().row->id](Pattern& pattern, const Review&, std::size_t) {
           skeinproof::reopen(pattern, id);
           return Expected<void>();
         });
}

void FindingDetail::save_wording() {
  // The review may be a keystroke behind; it still knows which finding is meant.
  if (!cause_) return;
  const std::string words = wording_->toPlainText().toStdString();
  const bool remember = remember_->isChecked();
  bool remembered = true;
  open_.apply(
      tr("wording of %1").arg(from_core(decision().number)),
      [&](Pattern& pattern) {
        set_wording(pattern, reviewed_->review, *cause_, words);
        if (remember) remembered = remember_wording(pattern, reviewed_->review, *cause_, words);
      },
      QStringLiteral("wording/") + from_core(finding().key()));
  if (!remembered)
    emit says(tr("Not remembered for the house: the words hold figures of this finding alone."));
}

}  // namespace skeinproof
