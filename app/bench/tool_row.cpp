// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/tool_row.h"

#include <QAction>
#include <QComboBox>
#include <QCompleter>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QStringListModel>
#include <QToolButton>
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/widgets/ink.h"
#include "core/manuscript/house_styles.h"

namespace skeinproof {

namespace {

// A box whose value the wheel does not change in passing.
class QuietBox : public QComboBox {
 public:
  using QComboBox::QComboBox;

 protected:
  void wheelEvent(QWheelEvent* event) override { event->ignore(); }
};

QLabel* label_for(QWidget* buddy, const QString& text) {
  auto* label = new QLabel(text);
  label->setBuddy(buddy);
  label->setContentsMargins(scaled(label, 12), 0, scaled(label, 6), 0);
  return label;
}

void fill(QComboBox* box, const QStringList& words, int current) {
  const QSignalBlocker quiet(box);
  if (QStringList shown; [&] {
        for (int i = 0; i < box->count(); ++i) shown << box->itemText(i);
        return shown != words;
      }()) {
    box->clear();
    box->addItems(words);
  }
  box->setCurrentIndex(current);
}

QStringList house_style_names(const Pattern& pattern) {
  QStringList names;
  for (const HouseStyle& style : pattern.house_styles) names << QString::fromStdString(style.name);
  for (const HouseStyle& ready : ready_house_styles())
    if (const QString name = QString::fromStdString(ready.name); !names.contains(name)) names << name;
  return names;
}

}  // namespace

ToolRow::ToolRow(OpenPattern& open, QAction* undo, QAction* redo, QWidget* parent)
    : QToolBar(parent),
      open_(open),
      size_(new QuietBox),
      house_style_(new QuietBox),
      field_(new QLineEdit),
      words_(new QStringListModel(this)) {
  setObjectName(QStringLiteral("tool_row"));
  setWindowTitle(tr("Tools"));
  setMovable(false);
  setContextMenuPolicy(Qt::PreventContextMenu);
  setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  addAction(undo);
  addAction(redo);
  if (auto* button = qobject_cast<QToolButton*>(widgetForAction(redo)))
    button->setToolButtonStyle(Qt::ToolButtonIconOnly);
  addSeparator();
  size_->setAccessibleName(tr("Chosen size"));
  size_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  addWidget(label_for(size_, tr("Chosen size")));
  addWidget(size_);
  house_style_->setAccessibleName(tr("House style"));
  house_style_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  addWidget(label_for(house_style_, tr("House style")));
  addWidget(house_style_);
  auto* stretch = new QWidget;
  stretch->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  addWidget(stretch);

  auto* completer = new QCompleter(words_, this);
  completer->setCaseSensitivity(Qt::CaseInsensitive);
  completer->setFilterMode(Qt::MatchContains);
  field_->setCompleter(completer);
  field_->setClearButtonEnabled(true);
  field_->installEventFilter(this);
  addWidget(field_);

  connect(size_, &QComboBox::activated, this, &ToolRow::take_size);
  connect(house_style_, &QComboBox::activated, this, &ToolRow::take_house_style);
  connect(field_, &QLineEdit::returnPressed, this, &ToolRow::take_field);
  connect(&open_, &OpenPattern::changed, this, &ToolRow::follow);
  set_go_to();
  follow();
  fit();
}

void ToolRow::set_page_names(const QStringList& names) {
  page_names_ = names;
  follow();
}

void ToolRow::follow() {
  const Pattern& pattern = open_.pattern();
  QStringList sizes;
  for (const Size& size : pattern.sizes) sizes << QString::fromStdString(size.label);
  fill(size_, sizes, static_cast<int>(open_.chosen_size_index()));
  size_->setEnabled(sizes.size() > 1);
  fill(house_style_, house_style_names(pattern), 0);
  targets_ = go_to_targets(pattern, page_names_);
  if (finds_) return;
  QStringList words;
  for (const GoToTarget& target : targets_) words << target.words;
  words_->setStringList(words);
}

void ToolRow::set_go_to() {
  finds_ = false;
  field_->setPlaceholderText(tr("Go to a size, role, piece or word"));
  field_->setAccessibleName(field_->placeholderText());
}

void ToolRow::start_go_to() {
  set_go_to();
  follow();
  field_->setFocus(Qt::ShortcutFocusReason);
  field_->selectAll();
}

void ToolRow::start_find(const QString& page) {
  finds_ = true;
  field_->setPlaceholderText(tr("Find in %1").arg(page));
  field_->setAccessibleName(field_->placeholderText());
  words_->setStringList({});
  field_->setFocus(Qt::ShortcutFocusReason);
  field_->selectAll();
}

void ToolRow::take_field() {
  const QString typed = field_->text();
  if (typed.trimmed().isEmpty()) return;
  const GoToTarget* target = finds_ ? nullptr : best_target(targets_, typed);
  if (target)
    emit go_to(GoToTarget(*target));
  else
    emit find(typed);
}

void ToolRow::take_size(int index) { open_.choose_size(static_cast<std::size_t>(index)); }

void ToolRow::take_house_style(int index) {
  const std::string name = house_style_->itemText(index).toStdString();
  open_.apply(tr("house style"), [&name](Pattern& pattern) {
    auto& styles = pattern.house_styles;
    auto found = std::find_if(styles.begin(), styles.end(),
                              [&](const HouseStyle& style) { return style.name == name; });
    if (const HouseStyle* ready = ready_house_style(name); ready && found == styles.end())
      found = styles.insert(styles.end(), *ready);
    if (found != styles.end()) std::rotate(styles.begin(), found, found + 1);
  });
}

void ToolRow::changeEvent(QEvent* event) {
  QToolBar::changeEvent(event);
  if (event->type() == QEvent::FontChange) fit();
}

void ToolRow::resizeEvent(QResizeEvent* event) {
  QToolBar::resizeEvent(event);
  fit();
}

void ToolRow::fit() {
  field_->setFixedWidth(std::clamp(width() / 4, scaled(this, 120), scaled(this, 290)));
  const int side = scaled(this, 16);
  setIconSize({side, side});
}

bool ToolRow::eventFilter(QObject* watched, QEvent* event) {
  if (watched == field_ && event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
    field_->clear();
    emit left();
    return true;
  }
  return QToolBar::eventFilter(watched, event);
}

}  // namespace skeinproof
