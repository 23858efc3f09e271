// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/queries_page.h"

#include <QApplication>
#include <QClipboard>
#include <QDate>
#include <QDateTime>
#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QFontDatabase>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QMessageBox>
#include <QPlainTextEdit>
#include <QShortcut>
#include <QSplitter>
#include <QTabWidget>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/pages/queries/finding_detail.h"
#include "app/pages/queries/finding_tree.h"
#include "app/pages/queries/manuscript_view.h"
#include "app/print/save_sheet.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/count_words.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/quantity_text.h"
#include "core/base/text.h"
#include "core/manuscript/read_manuscript.h"
#include "core/manuscript/submission.h"
#include "core/sheets/query_sheet.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

QString from(std::string_view words) {
  return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

QString platform_path(QWidget* parent, bool saving, const QString& suggestion, const QString& filter) {
  return saving ? QFileDialog::getSaveFileName(parent, {}, suggestion, filter)
                : QFileDialog::getOpenFileName(parent, {}, suggestion, filter);
}

bool platform_take_over(QWidget* parent, const QString& changes) {
  QMessageBox box(QMessageBox::NoIcon, QueriesPage::tr("Take over what was read"),
                  QueriesPage::tr("These facts will be in force; one undo takes all of them back."),
                  QMessageBox::Ok | QMessageBox::Cancel, parent);
  box.setDetailedText(changes);
  box.button(QMessageBox::Ok)->setText(QueriesPage::tr("&Take over"));
  box.setInformativeText(changes.section(QLatin1Char('\n'), 0, 11));
  return box.exec() == QMessageBox::Ok;
}

QPlainTextEdit* reading_text(const QString& name, bool fixed) {
  auto* text = new QPlainTextEdit;
  text->setReadOnly(true);
  text->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  text->setTabChangesFocus(true);
  text->setAccessibleName(name);
  text->setFrameShape(QFrame::NoFrame);
  text->document()->setDocumentMargin(scaled(text, 12));
  if (fixed) {
    QFont font;  // only its family is set: the size follows the window's
    font.setFamily(QFontDatabase::systemFont(QFontDatabase::FixedFont).family());
    font.setStyleHint(QFont::Monospace);
    text->setFont(font);
    text->setLineWrapMode(QPlainTextEdit::NoWrap);
  }
  return text;
}

QTreeWidget* flat_table(const QString& name, const QStringList& heads, int stretched) {
  auto* table = new QTreeWidget;
  table->setAccessibleName(name);
  table->setHeaderLabels(heads);
  table->setRootIsDecorated(false);
  table->setUniformRowHeights(true);
  table->setAllColumnsShowFocus(true);
  table->setFrameShape(QFrame::NoFrame);
  table->header()->setStretchLastSection(false);
  table->header()->setSectionResizeMode(stretched, QHeaderView::Stretch);
  table->header()->setHighlightSections(false);
  return table;
}

// "5 (5, 6, 7) …" as printed, or the words.
QString values_of(const std::string& text, const Statement& statement) {
  if (statement.values.empty()) return from(statement.words);
  const TextSpan all{statement.values.front().span.begin, statement.values.back().span.end};
  return from(words_at(text, all)).simplified();
}

}  // namespace

QueriesPage::QueriesPage(OpenPattern& open, QWidget* parent)
    : Page(open, parent),
      desk_(new ReviewDesk(open, this)),
      ask_path_(platform_path),
      ask_take_over_(platform_take_over) {
  auto* whole = new QSplitter(Qt::Horizontal);
  whole->addWidget(make_manuscript_pane());
  whole->addWidget(make_findings_pane());
  whole->setStretchFactor(1, 1);
  whole->setSizes({scaled(this, 540), scaled(this, 700)});
  whole->setChildrenCollapsible(false);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(whole);
  make_keys();
  connect(desk_, &ReviewDesk::reviewed, this, &QueriesPage::refresh);
  connect(tree_, &FindingTree::chosen_changed, this, &QueriesPage::show_chosen);
  connect(tree_, &FindingTree::ticked, this, &QueriesPage::set_ticked);
  connect(manuscript_, &ManuscriptView::query_clicked, tree_, &FindingTree::choose);
  connect(detail_, &FindingDetail::says, this, &Page::says);
  refresh();
}

QWidget* QueriesPage::make_manuscript_pane() {
  manuscript_ = new ManuscriptView;
  submitted_ = reading_text(tr("As submitted"), false);
  left_tabs_ = new QTabWidget;
  left_tabs_->setDocumentMode(true);
  left_tabs_->addTab(manuscript_, tr("&Checked text"));
  left_tabs_->addTab(submitted_, tr("As submi&tted"));
  left_tabs_->addTab(make_statements(), tr("As rea&d"));
  manuscript_head_ = new PaneHeader(tr("Manuscript"));
  manuscript_head_->add_button(
      tr("&Paste a draft"), [this] { paste_draft(); },
      tr("Take the text on the clipboard as the next draft"));
  manuscript_head_->add_button(
      tr("Open a draft…"), [this] { open_draft(); }, tr("A text, Markdown, HTML, .odt or .docx file"));
  manuscript_head_->add_button(
      tr("Take o&ver…"), [this] { take_over(); }, tr("Take over what was read as facts in force"));
  return make_pane(manuscript_head_, left_tabs_);
}

QWidget* QueriesPage::make_statements() {
  statements_ =
      flat_table(tr("Statements as read"), {tr("Line"), tr("What"), tr("Of"), tr("Says"), tr("Unit")}, 3);
  auto* pane = new QWidget;
  auto* column = new QVBoxLayout(pane);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(statements_, 1);
  auto* head = new PaneHeader(tr("Not understood"));
  head->set_note(tr("at the end of the list"));
  head->add_button(
      tr("It sa&ys nothing"), [this] { tell_nothing(); },
      tr("The chosen words say nothing that can be checked"));
  column->addWidget(head);
  return pane;
}

QWidget* QueriesPage::make_findings_pane() {
  tree_ = new FindingTree;
  detail_ = new FindingDetail(open_);
  auto* filters = new QWidget;
  auto* row = new QHBoxLayout(filters);
  row->setContentsMargins(scaled(this, 12), scaled(this, 4), scaled(this, 12), scaled(this, 4));
  const auto add = [&](ChoiceField*& field, const QString& name) {
    field = new ChoiceField;
    field->setAccessibleName(name);
    connect(field, &ChoiceField::chosen, this, &QueriesPage::filter);
    row->addWidget(field);
  };
  add(shown_, tr("Which queries are shown"));
  add(role_, tr("Colour"));
  add(size_, tr("Size"));
  row->addStretch(1);
  shown_->set_choices({{tr("Open"), static_cast<std::uint32_t>(QueriesShown::undecided)},
                       {tr("Kept and answered"), static_cast<std::uint32_t>(QueriesShown::kept)},
                       {tr("All"), static_cast<std::uint32_t>(QueriesShown::all)}});
  shown_->show_choice(static_cast<std::uint32_t>(QueriesShown::undecided));
  auto* list = new QWidget;
  auto* column = new QVBoxLayout(list);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(filters);
  auto* split = new QSplitter(Qt::Vertical);
  split->addWidget(tree_);
  split->addWidget(detail_);
  split->setStretchFactor(1, 1);
  split->setSizes({scaled(this, 270), scaled(this, 440)});
  split->setChildrenCollapsible(false);
  column->addWidget(split, 1);
  not_checked_ = flat_table(tr("Not checked"), {tr("Rule"), tr("Because"), tr("What would let it run")}, 1);
  not_checked_->setWordWrap(true);
  not_checked_->setUniformRowHeights(false);
  sheet_view_ = reading_text(tr("Query sheet"), true);
  sign_off_view_ = reading_text(tr("Sign-off note"), true);
  right_tabs_ = new QTabWidget;
  right_tabs_->setDocumentMode(true);
  right_tabs_->addTab(list, tr("Fi&ndings"));
  right_tabs_->addTab(not_checked_, tr("Not checked"));
  right_tabs_->addTab(sheet_view_, tr("&Query sheet"));
  right_tabs_->addTab(sign_off_view_, tr("Sign-off note"));
  connect(right_tabs_, &QTabWidget::currentChanged, this, &QueriesPage::show_sheet_tab);
  findings_head_ = new PaneHeader(tr("Findings"));
  findings_head_->add_button(
      tr("Save sheet…"), [this] { save_sheet_as(); },
      tr("The query sheet, or the sign-off note while it is shown: text, HTML, .odt, PDF"));
  return make_pane(findings_head_, right_tabs_);
}

void QueriesPage::make_keys() {
  const auto key = [this](const char* keys, auto&& action) {
    connect(new QShortcut(QKeySequence(QString::fromLatin1(keys)), this, nullptr, nullptr,
                          Qt::WidgetWithChildrenShortcut),
            &QShortcut::activated, this, action);
  };
  key("F8", [this] { tree_->step(1); });
  key("Shift+F8", [this] { tree_->step(-1); });
  key("Ctrl+T", [this] {
    if (const auto cause = tree_->chosen())
      set_ticked(*cause, !desk_->latest()->record.decisions[*cause].on_sheet);
  });
  key("Ctrl+Return", [this] { detail_->take_change(); });
  key("Ctrl+K", [this] { detail_->start_keeping(); });
}

void QueriesPage::set_questions(AskPath ask_path, AskTakeOver ask_take_over) {
  ask_path_ = std::move(ask_path);
  ask_take_over_ = std::move(ask_take_over);
}

QString QueriesPage::attention() const { return attention_; }
void QueriesPage::enter() { tree_->setFocus(); }

std::size_t QueriesPage::undecided() const {
  if (!desk_->latest()) return 0;
  const auto& decisions = desk_->latest()->record.decisions;
  return static_cast<std::size_t>(
      std::count_if(decisions.begin(), decisions.end(), [](const Decision& one) { return one.undecided(); }));
}

void QueriesPage::refresh() {
  const auto& latest = desk_->latest();
  const Draft* draft = open_.pattern().draft();
  manuscript_head_->set_note(
      draft != nullptr
          ? from(draft->name) + (draft->source.empty() ? QString() : tr(", from %1").arg(from(draft->source)))
          : tr("no draft yet: this is the block that would be printed"));
  const QString text = draft != nullptr ? from(draft->text) : tr("Paste a draft, or open a file with one.");
  if (submitted_->toPlainText() != text) submitted_->setPlainText(text);
  manuscript_->show_review(latest);
  tree_->show_review(latest);
  refresh_filters();
  show_statements();
  show_not_checked();
  show_sheet_tab();
  const std::size_t open = undecided();
  findings_head_->set_note(!latest ? tr("reading …")
                                   : tr("%1 rules had what they need, %2 open, %3 not checked")
                                         .arg(latest->review.checks_run)
                                         .arg(open)
                                         .arg(latest->review.not_checked.size()));
  const QString attention = open == 0 || draft == nullptr ? QString() : tr("%1 open").arg(open);
  if (attention != attention_) {
    attention_ = attention;
    emit attention_changed();
  }
  show_chosen();
}

void QueriesPage::refresh_filters() {
  const auto choices = [](const QString& all, const auto& parts) {
    std::vector<Choice> list = {{all, 0}};
    for (const auto& part : parts) list.push_back({from(part.label), part.id.value});
    return list;
  };
  const auto offer = [](ChoiceField* field, const std::vector<Choice>& list) {
    const int chosen = std::clamp(field->currentIndex(), 0, static_cast<int>(list.size()) - 1);
    field->set_choices(list);
    field->show_choice(list[static_cast<std::size_t>(chosen)].value);
  };
  offer(role_, choices(tr("All colours"), open_.pattern().roles));
  offer(size_, choices(tr("All sizes"), open_.pattern().sizes));
}

void QueriesPage::filter() {
  const auto chosen = [](const ChoiceField* field) {
    return field->currentIndex() > 0 ? field->currentText() : QString();
  };
  tree_->show_only(static_cast<QueriesShown>(std::max(0, shown_->currentIndex())), chosen(role_),
                   chosen(size_));
}

void QueriesPage::show_chosen() {
  detail_->show_query(desk_->latest(), tree_->chosen());
  manuscript_->choose(tree_->chosen());
}

void QueriesPage::show_statements() {
  statements_->clear();
  const auto& latest = desk_->latest();
  if (!latest) return;
  const Review& review = latest->review;
  const auto line_of = [&](const TextSpan& span) {
    return QString::number(line_column(review.text, span.begin).line);
  };
  for (const Statement& statement : review.reading.statements)
    new QTreeWidgetItem(statements_,
                        {line_of(statement.span), from(word_of(statement.kind)), from(statement.subject),
                         values_of(review.text, statement), from(word_of(statement.unit))});
  for (const NotUnderstood& one : review.reading.not_understood) {
    auto* item = new QTreeWidgetItem(
        statements_, {line_of(one.span), one.told_nothing ? tr("says nothing") : tr("not understood"),
                      QString(), from(words_at(review.text, one.span)).simplified(), QString()});
    item->setData(0, Qt::UserRole, from(words_at(review.text, one.span)));
  }
  for (int column : {0, 1, 2, 4}) statements_->resizeColumnToContents(column);
}

void QueriesPage::tell_nothing() {
  const QTreeWidgetItem* item = statements_->currentItem();
  const QString words = item != nullptr ? item->data(0, Qt::UserRole).toString() : QString();
  if (words.isEmpty() || open_.pattern().draft() == nullptr) {
    emit says(tr("Choose words that were not understood, at the end of the list."));
    return;
  }
  open_.apply(tr("“%1” says nothing").arg(words.simplified()), [&](Pattern& pattern) {
    pattern.drafts.edit([&](std::vector<Draft>& drafts) {
      drafts.back().tellings.push_back(Telling{words.toStdString(), "nothing", {}});
    });
  });
}

void QueriesPage::show_not_checked() {
  not_checked_->clear();
  const auto& latest = desk_->latest();
  if (!latest) return;
  for (const NotChecked& one : latest->review.not_checked)
    new QTreeWidgetItem(not_checked_, {from(one.check), from(one.because), from(one.would_help)});
  not_checked_->resizeColumnToContents(0);
  not_checked_->setColumnWidth(2, scaled(this, 260));
  right_tabs_->setTabText(1, tr("Not checked, %1").arg(latest->review.not_checked.size()));
  const auto& decisions = latest->record.decisions;
  const auto ticked =
      std::count_if(decisions.begin(), decisions.end(), [](const Decision& one) { return one.on_sheet; });
  right_tabs_->setTabText(2, tr("&Query sheet, %1 ticked").arg(ticked));
}

void QueriesPage::show_sheet_tab() {
  const auto& latest = desk_->latest();
  if (!latest) return;
  const QWidget* shown = right_tabs_->currentWidget();
  if (shown == sheet_view_)
    sheet_view_->setPlainText(
        QString::fromStdString(plain_text(query_sheet(latest->pattern, latest->review, latest->record))));
  if (shown == sign_off_view_) {
    const std::size_t closed = findings_closed(latest->pattern, assess(latest->pattern), latest->review);
    sign_off_view_->setPlainText(QString::fromStdString(
        plain_text(sign_off_note(latest->pattern, latest->review, latest->record, closed))));
  }
}

void QueriesPage::set_ticked(std::size_t cause, bool on) {
  const auto latest = desk_->latest();
  if (!latest) return;
  open_.apply(on ? tr("tick %1").arg(from(latest->record.decisions[cause].number))
                 : tr("untick %1").arg(from(latest->record.decisions[cause].number)),
              [&](Pattern& pattern) {
                set_on_sheet(pattern, latest->review, cause, on ? OnSheet::yes : OnSheet::no);
              });
}

void QueriesPage::paste_draft() {
  const QString text = QApplication::clipboard()->text();
  if (text.trimmed().isEmpty()) {
    emit says(tr("There is no text on the clipboard."));
    return;
  }
  add_draft(text.toUtf8(), {});
}

void QueriesPage::open_draft() {
  const QString path =
      ask_path_(this, false, {}, tr("Texts (*.txt *.md *.html *.htm *.odt *.docx);;All files (*)"));
  if (path.isEmpty()) return;
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) {
    emit says(tr("Could not read %1: %2").arg(path, file.errorString()));
    return;
  }
  add_draft(file.readAll(), QFileInfo(path).fileName());
}

void QueriesPage::add_draft(const QByteArray& bytes, const QString& file_name) {
  const std::string name = file_name.isEmpty() ? "pasted.txt" : file_name.toStdString();
  auto taken = take_in(open_.pattern(),
                       std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())), name);
  if (!taken) {
    emit says(sentence_of(taken.error()));
    return;
  }
  Draft draft = *taken->facts.pattern.draft();
  if (file_name.isEmpty()) draft.source.clear();
  draft.received = QDate::currentDate().toString(Qt::ISODate).toStdString();
  const std::uint32_t last_id = taken->facts.pattern.last_id;
  open_.apply(tr("add %1").arg(from(draft.name)), [&](Pattern& pattern) {
    pattern.drafts.edit([&](std::vector<Draft>& drafts) { drafts.push_back(draft); });
    pattern.last_id = std::max(pattern.last_id, last_id);
  });
  for (const std::string& note : taken->notes) emit says(from(note));
}

void QueriesPage::take_over() {
  const Draft* draft = open_.pattern().draft();
  if (draft == nullptr) {
    emit says(tr("There is no draft to take over: paste one, or open a file."));
    return;
  }
  const Reading reading = read_manuscript(*draft);
  const FactsAsRead facts = facts_as_read(open_.pattern(), draft->text, reading);
  QStringList lines;
  for (const FactChange& change : facts.changes)
    lines << from(change.what) + QStringLiteral(": ") +
                 (change.before.empty() ? QString() : from(change.before) + QStringLiteral(" → ")) +
                 from(change.after);
  for (const std::string& left_out : facts.left_out) lines << tr("left out: %1").arg(from(left_out));
  if (facts.changes.empty()) {
    emit says(tr("Everything that was read is in force already."));
    return;
  }
  if (!ask_take_over_(this, lines.join(QLatin1Char('\n')))) return;
  open_.apply(tr("take over what was read"), [&](Pattern& pattern) { pattern = facts.pattern; });
}

std::optional<Sheet> QueriesPage::sheet() const {
  const auto& latest = desk_->latest();
  if (!latest) return std::nullopt;
  const std::string date = QDate::currentDate().toString(Qt::ISODate).toStdString();
  if (right_tabs_->currentWidget() == sign_off_view_)
    return sign_off_note(latest->pattern, latest->review, latest->record,
                         findings_closed(latest->pattern, assess(latest->pattern), latest->review), date);
  return query_sheet(latest->pattern, latest->review, latest->record, date);
}

void QueriesPage::save_sheet_as() {
  const auto whole = sheet();
  if (!whole) return;
  const QString stem = right_tabs_->currentWidget() == sign_off_view_ ? tr("sign-off") : tr("queries");
  const QString path = ask_path_(this, true, stem + QStringLiteral(".odt"),
                                 tr("Text document (*.odt);;PDF (*.pdf);;HTML (*.html);;Text (*.txt)"));
  if (path.isEmpty()) return;
  const auto saved = save_sheet(*whole, path.toStdString(), QDateTime::currentSecsSinceEpoch());
  emit says(saved ? tr("Saved %1").arg(path) : sentence_of(saved.error()));
}

bool QueriesPage::find_next(const QString& words) {
  std::vector<FindPlace> places;
  if (const auto& latest = desk_->latest())
    for (std::size_t cause = 0; cause < latest->review.causes.size(); ++cause) {
      QString text;
      for (std::size_t finding : latest->review.causes[cause].findings)
        text += from(latest->review.findings[finding].check) + QLatin1Char('\n') +
                from(latest->review.findings[finding].title) + QLatin1Char('\n');
      places.push_back({text + place_words(*latest, cause), [this, cause] { tree_->choose(cause); }});
    }
  return finder_.find_next(places, words);
}

}  // namespace skeinproof
