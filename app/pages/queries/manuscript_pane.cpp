// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/manuscript_pane.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QSplitter>
#include <QTabWidget>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "app/pages/queries/draft_intake.h"
#include "app/pages/queries/manuscript_view.h"
#include "app/pages/queries/queries_widgets.h"
#include "app/pages/queries/statement_list.h"
#include "app/pages/queries/statement_strip.h"
#include "app/pages/queries/text_places.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "core/review/statement_along.h"

namespace skeinproof {

ManuscriptPane::ManuscriptPane(OpenPattern& open, DraftIntake& intake, QWidget* parent)
    : QWidget(parent),
      open_(open),
      intake_(intake),
      head_(new PaneHeader(tr("Manuscript"))),
      tabs_(new QTabWidget),
      manuscript_(new ManuscriptView),
      submitted_(reading_text(tr("As submitted"), Pitch::proportional)),
      proposed_(reading_text(tr("As proposed"), Pitch::proportional)),
      statements_(new StatementList(open)),
      strip_(new StatementStrip) {
  paste_ = head_->add_button(
      tr("&Paste a draft"), [this] { emit wants_paste(); },
      tr("Take the text on the clipboard as the next draft"));
  head_->add_button(
      tr("&Open…"), [this] { emit wants_open(); }, tr("A text, Markdown, HTML, .odt or .docx file"));
  head_->add_button(
      tr("Ta&ke over…"), [this] { emit wants_take_over(); }, tr("Take over what was read as facts in force"));
  manuscript_->setPlaceholderText(
      tr("Paste a draft here with Ctrl+V, drop a file on the window, or open one."));
  tabs_->setDocumentMode(true);
  tabs_->addTab(manuscript_, tr("&Checked text"));
  tabs_->addTab(submitted_, tr("As sub&mitted"));
  tabs_->addTab(statements_, tr("As rea&d"));
  tabs_->addTab(proposed_, tr("As p&roposed"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(head_);
  column->addWidget(make_progress());
  auto* split = new QSplitter(Qt::Vertical);
  split->addWidget(tabs_);
  split->addWidget(strip_);
  split->setStretchFactor(0, 1);
  split->setChildrenCollapsible(false);
  column->addWidget(split, 1);
  connect(tabs_, &QTabWidget::currentChanged, this, &ManuscriptPane::show_tab);
  connect(&intake_, &DraftIntake::progressed, this, &ManuscriptPane::follow_intake);
  connect(manuscript_, &ManuscriptView::query_clicked, this, &ManuscriptPane::query_clicked);
  connect(manuscript_, &ManuscriptView::place_changed, this, &ManuscriptPane::show_place);
  connect(statements_, &StatementList::place_chosen, this, [this](std::size_t byte) {
    tabs_->setCurrentWidget(manuscript_);
    manuscript_->go_to(byte);
    manuscript_->setFocus();
  });
  use_type();
  follow_intake();
}

QWidget* ManuscriptPane::make_progress() {
  progress_ = new QWidget;
  progress_words_ = new QLabel;
  progress_words_->setTextFormat(Qt::PlainText);
  progress_words_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  auto* bar = new QProgressBar;
  bar->setRange(0, 0);  // how far it is cannot be told
  bar->setTextVisible(false);
  bar->setFixedWidth(scaled(this, 90));
  auto* stop = new QPushButton(tr("Stop"));
  stop->setAutoDefault(false);
  connect(stop, &QPushButton::clicked, &intake_, &DraftIntake::stop);
  auto* row = new QHBoxLayout(progress_);
  row->setContentsMargins(scaled(this, 10), scaled(this, 4), scaled(this, 8), scaled(this, 4));
  row->addWidget(progress_words_, 1);
  row->addWidget(bar);
  row->addWidget(stop);
  return progress_;
}

void ManuscriptPane::follow_intake() {
  const QString words = intake_.progress();
  progress_words_->setText(words);
  progress_words_->setAccessibleName(words);
  progress_->setVisible(!words.isEmpty());
}

QString ManuscriptPane::progress_words() const {
  return progress_->isHidden() ? QString() : progress_words_->text();
}

void ManuscriptPane::show_review(std::shared_ptr<const Reviewed> reviewed) {
  reviewed_ = std::move(reviewed);
  chosen_.reset();
  const Draft* draft = open_.pattern().draft();
  head_->set_note(draft == nullptr ? tr("no draft yet: this is the block that would be printed")
                  : draft->source.empty()
                      ? from_core(draft->name)
                      : tr("%1, from %2").arg(from_core(draft->name), from_core(draft->source)));
  manuscript_->show_review(reviewed_);
  show_tab();
  show_place(manuscript_->place());
}

void ManuscriptPane::show_checking() {
  const Draft* draft = open_.pattern().draft();
  const Draft* shown = reviewed_ ? reviewed_->pattern.draft() : nullptr;
  if (draft == nullptr || (shown != nullptr && shown->id == draft->id)) return;
  head_->set_note(shown == nullptr ? tr("%1 is being read and checked …").arg(from_core(draft->name))
                                   : tr("%1 is being read and checked; this is still %2")
                                         .arg(from_core(draft->name), from_core(shown->name)));
}

void ManuscriptPane::start() { paste_->setFocus(); }

void ManuscriptPane::choose(std::optional<std::size_t> cause) {
  chosen_ = cause;
  manuscript_->choose(cause);
  show_place(manuscript_->place());
  mark_proposed();
}

// Long texts are laid out for the tab alone that is seen.
void ManuscriptPane::show_tab() {
  const QWidget* shown = tabs_->currentWidget();
  if (shown == submitted_) show_submitted();
  if (shown == statements_) statements_->show_review(reviewed_);
  if (shown == proposed_) show_proposed();
}

void ManuscriptPane::show_submitted() {
  const Draft* draft = open_.pattern().draft();
  const QString text =
      draft != nullptr ? from_core(draft->text) : tr("Paste a draft, or open a file with one.");
  if (submitted_->toPlainText() != text) submitted_->setPlainText(text);
}

void ManuscriptPane::show_proposed() {
  if (shown_proposal_ != reviewed_) {
    shown_proposal_ = reviewed_;
    const QString text = reviewed_ ? from_core(reviewed_->proposed.text) : QString();
    if (proposed_->toPlainText() != text) proposed_->setPlainText(text);
  }
  mark_proposed();
}

void ManuscriptPane::mark_proposed() {
  if (tabs_->currentWidget() != proposed_ || !shown_proposal_) return;
  const ProposedText& proposed = shown_proposal_->proposed;
  const TextPlaces places(proposed.text);
  const Ink ink = ink_of(palette());
  QList<QTextEdit::ExtraSelection> marks;
  std::optional<int> first;
  for (const ProposedText::Change& change : proposed.changes) {
    TextSpan span = change.span;
    // Where words were taken out, what stands on either side is marked.
    if (span.empty()) {
      if (span.begin > 0) --span.begin;
      if (span.end < proposed.text.size()) ++span.end;
    }
    QTextEdit::ExtraSelection mark;
    mark.cursor = places.cursor(proposed_->document(), span);
    mark.format.setFontWeight(QFont::Bold);
    mark.format.setUnderlineStyle(QTextCharFormat::SingleUnderline);
    mark.format.setUnderlineColor(ink.text);
    if (chosen_ == change.cause) {
      mark.format.setBackground(ink.tint);
      if (!first) first = mark.cursor.selectionStart();
    }
    marks.push_back(mark);
  }
  proposed_->setExtraSelections(marks);
  if (!first) return;
  QTextCursor cursor(proposed_->document());
  cursor.setPosition(*first);
  proposed_->setTextCursor(cursor);
  proposed_->ensureCursorVisible();
}

void ManuscriptPane::show_place(std::size_t byte) {
  strip_->show_statement(reviewed_, reviewed_ ? statement_at(reviewed_->review.reading, byte) : std::nullopt);
}

void ManuscriptPane::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) mark_proposed();
  if (event->type() == QEvent::FontChange) use_type();
}

// The designer's words stand in their own face.
void ManuscriptPane::use_type() {
  const QFont words = type_of(font()).words;
  submitted_->document()->setDefaultFont(words);
  proposed_->document()->setDefaultFont(words);
}

}  // namespace skeinproof
