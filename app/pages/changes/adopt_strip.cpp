// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/adopt_strip.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/pages/changes/change_words.h"
#include "app/pages/pieces/piece_words.h"
#include "app/widgets/count_words.h"
#include "app/widgets/ink.h"

namespace skeinproof {
namespace {

constexpr std::size_t most_lines = 6;
constexpr std::size_t most_named = 2;

QString count_figure(const std::optional<int>& count) {
  return count ? QString::number(*count) : AdoptStrip::tr("not checked");
}

// "Skeins: size 1, MC 5 → 6; size 5, MC 7 → 8".
QString moves_words(const std::vector<SkeinMove>& moves) {
  if (moves.empty()) return AdoptStrip::tr("No count of skeins changes.");
  QStringList sizes;
  const std::string* size = nullptr;
  for (const SkeinMove& move : moves) {
    const QString one = QStringLiteral("%1 %2 → %3")
                            .arg(text_of(move.role), count_figure(move.before), count_figure(move.after));
    if (size != nullptr && *size == move.size)
      sizes.back() += QStringLiteral(", ") + one;
    else
      sizes << AdoptStrip::tr("size %1, %2").arg(text_of(move.size), one);
    size = &move.size;
  }
  return AdoptStrip::tr("Skeins: %1.").arg(sizes.join(QStringLiteral("; ")));
}

}  // namespace

AdoptStrip::AdoptStrip(OpenPattern& open, QWidget* parent)
    : QFrame(parent),
      open_(open),
      job_([this](AdoptPreview preview) { show_preview(std::move(preview)); }),
      title_(new QLabel),
      list_(new QLabel),
      take_(new QPushButton(tr("Take it in"))),
      leave_(new QPushButton(tr("Leave it"))) {
  setFrameShape(QFrame::StyledPanel);
  setAutoFillBackground(true);
  setBackgroundRole(QPalette::Base);
  setAccessibleName(tr("What taking in will change"));
  QFont heavy = title_->font();
  heavy.setWeight(QFont::DemiBold);
  title_->setFont(heavy);
  for (QLabel* label : {title_, list_}) {
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setForegroundRole(QPalette::Text);
  }
  for (QPushButton* button : {take_, leave_}) button->setAutoDefault(true);  // Enter presses the one in focus
  auto* words = new QVBoxLayout;
  words->addWidget(title_);
  words->addWidget(list_);
  words->addStretch(1);
  auto* buttons = new QVBoxLayout;
  buttons->addWidget(take_);
  buttons->addWidget(leave_);
  buttons->addStretch(1);
  auto* across = new QHBoxLayout(this);
  across->setContentsMargins(scaled(this, 12), scaled(this, 8), scaled(this, 8), scaled(this, 8));
  across->addLayout(words, 1);
  across->addLayout(buttons);
  connect(take_, &QPushButton::clicked, this, &AdoptStrip::take_in);
  connect(leave_, &QPushButton::clicked, this, &AdoptStrip::leave);
  connect(&open_, &OpenPattern::changed, this, [this] {
    if (asking_) leave();
  });
  hide();
}

QString AdoptStrip::words() const { return title_->text() + QLatin1Char('\n') + list_->text(); }

void AdoptStrip::ask(AdoptIn in, const std::vector<Change>& made, const std::vector<ChangeId>& taken) {
  in_ = in;
  made_ = made;
  taken_ = taken;
  state_ = open_.state();
  asking_ = true;
  adopted_.reset();
  const std::size_t at = open_.chosen_size_index();
  job_.ask([pattern = open_.pattern(), made, size = open_.pattern().sizes[at].id, in] {
    return preview_adopted(pattern, made, size, in);
  });
}

void AdoptStrip::show_preview(AdoptPreview preview) {
  if (!asking_ || state_ != open_.state()) return;
  const QString size = text_of(open_.pattern().sizes[open_.chosen_size_index()].label);
  if (preview.adopted) {
    title_->setText(preview.in == AdoptIn::this_size ? tr("Taken into size %1:").arg(size)
                                                     : tr("Taken into all sizes:"));
    list_->setText(preview_words(preview));
    adopted_ = std::move(*preview.adopted);
  } else {
    title_->setText(tr("It cannot be taken in."));
    list_->setText(sentence_of(preview.adopted.error()));
  }
  setAccessibleDescription(words());
  take_->setVisible(adopted_.has_value());
  show();
  (adopted_ ? take_ : leave_)->setFocus(Qt::OtherFocusReason);
  emit says(adopted_ ? tr("Enter takes it in, Esc leaves it.") : title_->text());
  emit shown();
}

QString AdoptStrip::preview_words(const AdoptPreview& preview) const {
  QStringList lines;
  const auto& notes = preview.adopted->notes;
  for (std::size_t i = 0; i < std::min(notes.size(), most_lines); ++i) lines << text_of(notes[i]);
  if (notes.size() > most_lines) lines << tr("and %1 more").arg(notes.size() - most_lines);
  lines << moves_words(preview.moves);
  const std::size_t stay = open_.pattern().changes.size() - taken_.size();
  lines << (stay == 0 ? tr("The bench is empty then; Undo brings everything back.")
                      : tr("%1 on the bench; Undo brings everything back.")
                            .arg(count_words(stay, tr("change stays"), tr("changes stay"))));
  if (!lines.back().isEmpty()) lines.back()[0] = lines.back()[0].toUpper();
  return lines.join(QLatin1Char('\n'));
}

QString AdoptStrip::name_of_step() const {
  QStringList names;
  for (const BenchChange& row : open_.pattern().changes)
    if (std::find(taken_.begin(), taken_.end(), row.id) != taken_.end() &&
        static_cast<std::size_t>(names.size()) < most_named)
      names << row_words(open_.pattern(), row, open_.reader());
  QString words = names.join(QStringLiteral("; "));
  if (taken_.size() > most_named) words += tr(" and %1 more").arg(taken_.size() - most_named);
  return in_ == AdoptIn::all_sizes
             ? tr("take into all sizes: %1").arg(words)
             : tr("take into size %1: %2")
                   .arg(text_of(open_.pattern().sizes[open_.chosen_size_index()].label), words);
}

void AdoptStrip::take_in() {
  if (!asking_ || !adopted_ || state_ != open_.state()) return;
  const QString step = name_of_step();
  const Adopted adopted = std::move(*adopted_);
  const std::vector<ChangeId> taken = taken_;
  leave();
  const auto refused = open_.apply(step, [&](Pattern& pattern) {
    pattern = adopted.pattern;
    std::erase_if(pattern.changes, [&](const BenchChange& row) {
      return std::find(taken.begin(), taken.end(), row.id) != taken.end();
    });
  });
  emit says(refused ? sentence_of(*refused) : tr("Taken in; Undo brings everything back."));
}

void AdoptStrip::leave() {
  const bool was_shown = isVisible(), had_focus = isAncestorOf(QApplication::focusWidget());
  asking_ = false;
  adopted_.reset();
  hide();
  if (!was_shown) return;
  emit says({});
  emit left(had_focus);
}

void AdoptStrip::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) {
    leave();
    event->accept();
    return;
  }
  QFrame::keyPressEvent(event);
}

}  // namespace skeinproof
