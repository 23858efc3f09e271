// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/draft_intake.h"

#include <QDate>
#include <QFile>
#include <QFileInfo>
#include <QLocale>

#include "app/pages/queries/queries_widgets.h"
#include "app/widgets/quantity_text.h"
#include "core/file/whole_file.h"
#include "core/manuscript/read_manuscript.h"
#include "core/pattern/edits.h"

namespace skeinproof {
namespace {

QString with_size(const QString& name, qint64 bytes) {
  return name + QStringLiteral(", ") +
         QLocale().formattedDataSize(bytes, 1, QLocale::DataSizeTraditionalFormat);
}

}  // namespace

DraftIntake::DraftIntake(OpenPattern& open, QObject* parent)
    : QObject(parent), open_(open), job_([this](Outcome outcome) { finish(std::move(outcome)); }) {
  // What was meant for one document does not go into another.
  connect(&open_, &OpenPattern::replaced, this, [this] {
    if (is_busy()) stop();
  });
}

void DraftIntake::add(const QByteArray& bytes, const QString& file_name) {
  const QString shown = file_name.isEmpty() ? tr("the pasted text") : QStringLiteral("“%1”").arg(file_name);
  put({tr("Taking in %1").arg(with_size(shown, bytes.size())), [bytes, file_name] {
         Outcome outcome;
         outcome.name = file_name;
         const std::string name = file_name.isEmpty() ? "pasted.txt" : file_name.toStdString();
         auto text = text_of_bytes({bytes.constData(), static_cast<std::size_t>(bytes.size())}, name);
         if (text)
           outcome.text = std::move(*text);
         else
           outcome.error = text.error();
         return outcome;
       }});
}

void DraftIntake::add_file(const QString& path) {
  const QFileInfo info(path);
  put({tr("Taking in %1").arg(with_size(QStringLiteral("“%1”").arg(info.fileName()), info.size())),
       [path, name = info.fileName()] {
         Outcome outcome;
         outcome.name = name;
         const auto bytes = read_whole_file(std::filesystem::path(path.toStdU16String()));
         auto text = bytes ? text_of_bytes(*bytes, name.toStdString()) : tl::unexpected(bytes.error());
         if (text)
           outcome.text = std::move(*text);
         else
           outcome.error = text.error();
         return outcome;
       }});
}

void DraftIntake::read_facts() {
  put({tr("Reading what the draft states"), [pattern = open_.pattern(), state = open_.state()] {
         Outcome outcome;
         outcome.state = state;
         const Draft& draft = *pattern.draft();
         outcome.facts =
             std::make_shared<FactsAsRead>(facts_as_read(pattern, draft.text, read_manuscript(draft)));
         return outcome;
       }});
}

void DraftIntake::put(Task task) {
  waiting_.push_back(std::move(task));
  start_next();
}

void DraftIntake::start_next() {
  if (!job_.is_busy() && !waiting_.empty()) {
    given_up_ = false;
    words_ = waiting_.front().words;
    auto work = std::move(waiting_.front().work);
    waiting_.pop_front();
    job_.ask(std::move(work));
  }
  emit progressed();
}

void DraftIntake::stop() {
  const QString words = job_.is_busy() && !given_up_ ? words_
                        : waiting_.empty()           ? QString()
                                                     : waiting_.front().words;
  waiting_.clear();
  given_up_ = job_.is_busy();
  if (!words.isEmpty()) emit says(tr("Given up: %1. Nothing was changed.").arg(words));
  emit progressed();
}

QString DraftIntake::progress() const {
  if (!is_busy()) return {};
  const QString words = job_.is_busy() && !given_up_ ? words_ : waiting_.front().words;
  return waiting_.empty() ? words + QStringLiteral(" …")
                          : tr("%1 … %2 more after it").arg(words).arg(waiting_.size());
}

void DraftIntake::finish(Outcome outcome) {
  const bool dropped = std::exchange(given_up_, false);
  start_next();
  if (dropped) return;
  if (outcome.error)
    emit says(sentence_of(*outcome.error));
  else if (outcome.text)
    take(outcome);
  else
    emit facts_read(outcome.facts, outcome.state);
}

void DraftIntake::take(const Outcome& outcome) {
  const FileText& file = *outcome.text;
  Pattern with_draft = open_.pattern();
  add_draft(with_draft, file.text);
  Draft draft = *with_draft.draft();
  draft.source = outcome.name.toStdString();
  draft.encoding = file.encoding;
  draft.received = QDate::currentDate().toString(Qt::ISODate).toStdString();
  open_.apply(tr("add %1").arg(from_core(draft.name)), [&](Pattern& pattern) {
    pattern.drafts.edit([&](std::vector<Draft>& drafts) { drafts.push_back(draft); });
    pattern.last_id = std::max(pattern.last_id, with_draft.last_id);
  });
  QStringList notes;
  for (const std::string& note : file.notes) notes << from_core(note);
  if (!notes.isEmpty()) emit says(notes.join(QStringLiteral("; ")));
  emit draft_added();
}

}  // namespace skeinproof
