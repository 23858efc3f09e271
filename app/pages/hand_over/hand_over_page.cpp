// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/hand_over/hand_over_page.h"

#include <QApplication>
#include <QClipboard>
#include <QDateTime>
#include <QFile>
#include <QFileDialog>
#include <QFontDatabase>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QScrollArea>
#include <QSplitter>
#include <QTabWidget>
#include <QTextBlock>
#include <QVBoxLayout>
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/pages/hand_over/house_style_form.h"
#include "app/print/save_sheet.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/quantity_text.h"
#include "core/file/json.h"
#include "core/manuscript/house_styles.h"
#include "core/sheets/make_sheets.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

QString platform_path(QWidget* parent, bool saving, const QString& suggestion, const QString& filter) {
  return saving ? QFileDialog::getSaveFileName(parent, {}, suggestion, filter)
                : QFileDialog::getOpenFileName(parent, {}, suggestion, filter);
}

QPlainTextEdit* reading_text(const QString& name, const QFont& font) {
  auto* text = new QPlainTextEdit;
  text->setReadOnly(true);
  text->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  text->setTabChangesFocus(true);
  text->setAccessibleName(name);
  text->setFont(font);
  text->setFrameShape(QFrame::NoFrame);
  text->document()->setDocumentMargin(scaled(text, 12));
  return text;
}

// Replaces the words and leaves the view where it was.
void show_text(QPlainTextEdit* view, const QString& text) {
  if (view->toPlainText() != text) view->setPlainText(text);
}

// The styles of the file, then the ready ones that are not in it yet.
std::vector<HouseStyle> styles_to_choose(const Pattern& pattern) {
  std::vector<HouseStyle> styles = pattern.house_styles;
  for (const HouseStyle& ready : ready_house_styles())
    if (std::none_of(styles.begin(), styles.end(),
                     [&](const HouseStyle& own) { return own.name == ready.name; }))
      styles.push_back(ready);
  return styles;
}

// Puts a style in force; a style of the same name is replaced.
void put_in_force(Pattern& pattern, const HouseStyle& style) {
  auto& own = pattern.house_styles;
  own.erase(std::remove_if(own.begin(), own.end(), [&](const HouseStyle& s) { return s.name == style.name; }),
            own.end());
  own.insert(own.begin(), style);
}

QString file_stem(const std::string& title) {
  QString stem = QString::fromStdString(title).simplified();
  for (QChar& c : stem)
    if (!c.isLetterOrNumber()) c = QLatin1Char('-');
  return stem.isEmpty() ? QStringLiteral("pattern") : stem.toLower();
}

}  // namespace

HandOverPage::HandOverPage(OpenPattern& open, QWidget* parent)
    : Page(open, parent), ask_path_(platform_path) {
  auto* whole = new QSplitter(Qt::Horizontal);
  whole->addWidget(make_block_pane());
  whole->addWidget(make_style_pane());
  whole->setStretchFactor(0, 1);
  whole->setSizes({scaled(this, 820), scaled(this, 420)});
  whole->setChildrenCollapsible(false);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(whole);
  connect(&open_, &OpenPattern::changed, this, &HandOverPage::refresh);
  connect(&open_, &OpenPattern::reader_changed, this, &HandOverPage::refresh);
  refresh();
}

QWidget* HandOverPage::make_block_pane() {
  auto* whole = new QWidget;
  auto* column = new QVBoxLayout(whole);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  block_head_ = new PaneHeader(tr("Hand over"));
  block_head_->add_button(
      tr("&Copy"), [this] { copy(); }, tr("Copy what is shown as text"));
  block_head_->add_button(
      tr("Save &as…"), [this] { save_as(); },
      tr("Text, HTML, PDF, CSV or a workbook, by the ending of the name"));
  column->addWidget(block_head_);
  QFont fixed;  // only its family is set: the size follows the window's
  fixed.setFamily(QFontDatabase::systemFont(QFontDatabase::FixedFont).family());
  fixed.setStyleHint(QFont::Monospace);
  block_ = reading_text(tr("Yarn block"), fixed);
  quantities_ = reading_text(tr("Quantities per size"), fixed);
  quantities_->setLineWrapMode(QPlainTextEdit::NoWrap);
  tabs_ = new QTabWidget;
  tabs_->setDocumentMode(true);
  tabs_->addTab(block_, tr("Yarn &block"));
  tabs_->addTab(quantities_, tr("&Quantities per size"));
  column->addWidget(tabs_, 1);
  missing_head_ = new PaneHeader(tr("Still missing"));
  column->addWidget(missing_head_);
  missing_ = new QListWidget;
  missing_->setAccessibleName(tr("What the block still misses"));
  missing_->setFrameShape(QFrame::NoFrame);
  missing_->setWordWrap(true);
  missing_->setMaximumHeight(scaled(this, 23) * 6);
  connect(missing_, &QListWidget::itemActivated, this, [this](QListWidgetItem* item) {
    const auto row = static_cast<std::size_t>(missing_->row(item));
    if (row < missing_facts_.size())
      emit wants_place(QString::fromStdString(missing_facts_[row].place.page),
                       missing_facts_[row].place.part);
  });
  column->addWidget(missing_);
  return whole;
}

QWidget* HandOverPage::make_style_pane() {
  auto* whole = new QWidget;
  auto* column = new QVBoxLayout(whole);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  auto* head = new PaneHeader(tr("House style"));
  head->add_button(
      tr("Add co&py"), [this] { add_style(); }, tr("Add a copy of the style in force under a new name"));
  head->add_button(
      tr("Delete"), [this] { erase_style(); }, tr("Delete the style in force from this file"));
  column->addWidget(head);
  style_choice_ = new ChoiceField;
  style_choice_->setAccessibleName(tr("House style in force"));
  connect(style_choice_, &ChoiceField::chosen, this, &HandOverPage::choose_style);
  column->addWidget(style_choice_);
  auto* area = new QScrollArea;
  area->setFocusPolicy(Qt::NoFocus);  // its fields take it
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  area->setWidget(new HouseStyleForm(open_));
  column->addWidget(area, 1);
  auto* carry = new PaneHeader(tr("Carry to others"));
  carry->add_button(
      tr("Save style…"), [this] { carry_style_out(); }, tr("Save the style in force as a file of its own"));
  carry->add_button(
      tr("Open style…"), [this] { bring_style_in(); }, tr("Put a style from a file in force"));
  column->addWidget(carry);
  return whole;
}

QString HandOverPage::attention() const {
  return missing_facts_.empty() || open_.pattern().roles.empty() ? QString() : tr("held");
}

void HandOverPage::enter() { tabs_->currentWidget()->setFocus(); }

bool HandOverPage::find_next(const QString& words) {
  std::vector<FindPlace> places;
  for (QPlainTextEdit* view : {block_, quantities_})
    for (int line = 0; line < view->document()->blockCount(); ++line) {
      const QTextBlock block = view->document()->findBlockByNumber(line);
      places.push_back({block.text(), [this, view, line] {
                          tabs_->setCurrentWidget(view);
                          QTextCursor cursor(view->document()->findBlockByNumber(line));
                          cursor.select(QTextCursor::LineUnderCursor);
                          view->setTextCursor(cursor);
                        }});
    }
  return finder_.find_next(places, words);
}

HandOverPage::Shown HandOverPage::shown() const {
  return tabs_->currentWidget() == quantities_ ? Shown::quantities : Shown::block;
}

std::optional<Sheet> HandOverPage::sheet() const {
  const Pattern& pattern = open_.pattern();
  if (pattern.roles.empty()) return std::nullopt;
  return shown() == Shown::quantities ? per_size_sheet(pattern, open_.assessment(), pattern.house())
                                      : block_sheet(pattern, open_.assessment(), pattern.house());
}

QString HandOverPage::block_text() const { return block_->toPlainText(); }

void HandOverPage::refresh() {
  const Pattern& pattern = open_.pattern();
  refresh_styles();
  if (pattern.roles.empty()) {
    show_text(block_, tr("No block yet: add a yarn and its colours on page Yarns."));
    show_text(quantities_, tr("No quantities yet: add a piece on page Pieces, or weigh the sample."));
    refresh_missing({});
    return;
  }
  const BlockText block = write_block(pattern, open_.assessment(), pattern.house());
  show_text(block_, QString::fromStdString(block.text()));
  show_text(quantities_,
            QString::fromStdString(plain_text(per_size_sheet(pattern, open_.assessment(), pattern.house()))));
  refresh_missing(block.missing);
}

void HandOverPage::refresh_styles() {
  std::vector<Choice> choices;
  std::uint32_t index = 0;
  for (const HouseStyle& style : styles_to_choose(open_.pattern()))
    choices.push_back({QString::fromStdString(style.name), index++});
  style_choice_->set_choices(choices);
  style_choice_->show_choice(0);
}

void HandOverPage::refresh_missing(const std::vector<MissingFact>& missing) {
  const QString before = attention();
  missing_facts_ = missing;
  missing_->clear();
  for (const MissingFact& fact : missing) missing_->addItem(QString::fromStdString(fact.what));
  missing_head_->set_note(missing.empty() ? tr("nothing") : tr("Enter goes to the place"));
  missing_->setVisible(!missing.empty());
  if (attention() != before) emit attention_changed();
}

void HandOverPage::copy() {
  QApplication::clipboard()->setText(shown() == Shown::block ? block_->toPlainText()
                                                             : quantities_->toPlainText());
  emit says(shown() == Shown::block ? tr("Block copied") : tr("Table copied"));
}

void HandOverPage::save_as() {
  const auto whole = sheet();
  if (!whole) {
    emit says(tr("Nothing to hand over yet: add a yarn and its colours on page Yarns."));
    return;
  }
  const bool block = shown() == Shown::block;
  const QString path =
      ask_path_(this, true,
                file_stem(open_.pattern().title) + (block ? QStringLiteral(".txt") : QStringLiteral(".xlsx")),
                block ? tr("Text (*.txt);;HTML (*.html);;PDF (*.pdf);;Workbook (*.xlsx)")
                      : tr("Workbook (*.xlsx);;CSV (*.csv);;Text (*.txt);;HTML (*.html);;PDF (*.pdf)"));
  if (path.isEmpty()) return;
  // A yarn block as text is the bare block, ready to be set.
  const auto saved = block && path.endsWith(QLatin1String(".txt"), Qt::CaseInsensitive)
                         ? save_text(path.toStdString(), block_->toPlainText().toStdString() + "\n")
                         : save_sheet(*whole, path.toStdString(), QDateTime::currentSecsSinceEpoch());
  if (!saved)
    say_failure(saved.error());
  else
    emit says(tr("Saved %1").arg(path));
}

void HandOverPage::choose_style(std::uint32_t index) {
  const auto styles = styles_to_choose(open_.pattern());
  if (index == 0 || index >= styles.size()) return;
  const HouseStyle style = styles[index];
  open_.apply(tr("house style %1").arg(QString::fromStdString(style.name)),
              [style](Pattern& pattern) { put_in_force(pattern, style); });
}

void HandOverPage::add_style() {
  HouseStyle style = open_.pattern().house();
  const auto styles = styles_to_choose(open_.pattern());
  const auto taken = [&](const std::string& name) {
    return std::any_of(styles.begin(), styles.end(), [&](const HouseStyle& s) { return s.name == name; });
  };
  const std::string stem = style.name;
  for (int n = 2; taken(style.name); ++n) style.name = stem + " " + std::to_string(n);
  open_.apply(tr("add house style"), [style](Pattern& pattern) { put_in_force(pattern, style); });
}

void HandOverPage::erase_style() {
  if (open_.pattern().house_styles.size() < 2) {
    emit says(tr("A file keeps at least one house style."));
    return;
  }
  open_.apply(tr("delete house style"),
              [](Pattern& pattern) { pattern.house_styles.erase(pattern.house_styles.begin()); });
}

void HandOverPage::carry_style_out() {
  const HouseStyle& style = open_.pattern().house();
  const QString path =
      ask_path_(this, true, file_stem(style.name) + QStringLiteral(".json"), tr("House style (*.json)"));
  if (path.isEmpty()) return;
  if (const auto saved = save_text(path.toStdString(), to_json(style)); !saved)
    say_failure(saved.error());
  else
    emit says(tr("Saved %1").arg(path));
}

void HandOverPage::bring_style_in() {
  const QString path = ask_path_(this, false, {}, tr("House style (*.json)"));
  if (path.isEmpty()) return;
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) {
    emit says(tr("Could not read %1: %2").arg(path, file.errorString()));
    return;
  }
  const auto style = house_style_from_json(file.readAll().toStdString(), path.toStdString());
  if (!style) {
    say_failure(style.error());
    return;
  }
  open_.apply(tr("house style %1").arg(QString::fromStdString(style->name)),
              [&style](Pattern& pattern) { put_in_force(pattern, *style); });
}

void HandOverPage::say_failure(const Error& error) { emit says(sentence_of(error)); }

}  // namespace skeinproof
