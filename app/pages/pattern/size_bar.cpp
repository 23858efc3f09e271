// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pattern/size_bar.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <algorithm>

#include "app/widgets/count_words.h"
#include "app/widgets/ink.h"
#include "app/widgets/line_field.h"
#include "app/widgets/pane_header.h"
#include "core/base/text.h"
#include "core/manuscript/words.h"
#include "core/pattern/edits.h"
#include "core/pattern/size_line.h"

namespace skeinproof {

namespace {

QString line_of(const Pattern& pattern) {
  std::vector<std::optional<std::string>> labels;
  for (const Size& size : pattern.sizes) labels.emplace_back(size.label);
  return QString::fromStdString(size_list(labels, pattern.sizes, SizeBrackets::grouped));
}

std::vector<Choice> size_choices(const Pattern& pattern) {
  std::vector<Choice> choices;
  for (const Size& size : pattern.sizes)
    choices.push_back({QString::fromStdString(size.label), size.id.value});
  return choices;
}

// A label for a size that is put between others: the next whole number where all are numbers.
std::string new_label(const Pattern& pattern) {
  int highest = 0;
  for (const Size& size : pattern.sizes) {
    bool whole = false;
    const int number = QString::fromStdString(size.label).toInt(&whole);
    if (!whole) {
      highest = 0;
      break;
    }
    highest = std::max(highest, number);
  }
  std::string label = highest > 0 ? std::to_string(highest + 1) : SizeBar::tr("new").toStdString();
  while (pattern.size_index(std::string_view(label))) label += "+";
  return label;
}

}  // namespace

SizeBar::SizeBar(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      form_(open, this, [](const Pattern& pattern) { return &pattern; }, {}),
      line_(new LineField([this](const QString& text) { return take_line(text); })),
      preview_(new QuietLabel),
      which_(new ChoiceField),
      name_(new LineField([this](const QString& text) { return take_name(text); })) {
  line_->setAccessibleName(tr("All sizes as one line"));
  line_->setPlaceholderText(QStringLiteral("1 (2, 3, 4) (5, 6, 7, 8, 9)"));
  preview_->setWordWrap(true);
  which_->setAccessibleName(tr("Size to change"));
  name_->setAccessibleName(tr("Name of the size"));
  lay_out();
  connect(line_, &QLineEdit::textEdited, this, &SizeBar::show_preview);
  connect(which_, &ChoiceField::chosen, this, [this](std::uint32_t value) {
    if (const auto index = open_.pattern().size_index(SizeId{value})) open_.choose_size(*index);
  });
  connect(&open_, &OpenPattern::changed, this, &SizeBar::refresh);
  connect(&open_, &OpenPattern::replaced, this, [this] {
    line_->give_back();
    name_->give_back();
    refresh();
  });
  refresh();
}

void SizeBar::lay_out() {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(scaled(this, 12), scaled(this, 8), scaled(this, 12), scaled(this, 8));
  grid->setHorizontalSpacing(scaled(this, 10));
  grid->setVerticalSpacing(scaled(this, 6));
  grid->setColumnStretch(1, 1);
  const auto label = [](const QString& words, QWidget* field) {
    auto* made = new QLabel(words);
    made->setBuddy(field);
    return made;
  };
  grid->addWidget(label(tr("Si&zes"), line_), 0, 0);
  grid->addWidget(line_, 0, 1);
  grid->addWidget(preview_, 1, 1);

  auto* one = new QHBoxLayout;
  one->setSpacing(scaled(this, 8));
  name_->setFixedWidth(scaled(this, 90));
  one->addWidget(which_);
  one->addWidget(label(tr("&named"), name_));
  one->addWidget(name_);
  const auto button = [&](const QString& text, const QString& tip, auto press) {
    auto* made = new QPushButton(text);
    made->setToolTip(tip);
    connect(made, &QPushButton::clicked, this, press);
    one->addWidget(made);
    return made;
  };
  button(tr("Insert &before"), tr("A new size before this one; every list follows"),
         [this] { insert_before(); });
  button(tr("Insert &after"), tr("A new size after this one; every list follows"),
         [this] { insert_after(); });
  one->addStretch(1);
  auto* first = one;
  one = new QHBoxLayout;
  one->setSpacing(scaled(this, 8));
  left_ = button(tr("Move left"), tr("One place towards the first size, with all its values"),
                 [this] { move(-1); });
  right_ = button(tr("Move right"), tr("One place towards the last size, with all its values"),
                  [this] { move(1); });
  erase_ = button(tr("&Delete"), tr("This size and its values in every list; Undo brings them back"),
                  [this] { erase(); });
  one->addStretch(1);
  grid->addWidget(label(tr("S&ize"), which_), 2, 0);
  grid->addLayout(first, 2, 1);
  grid->addLayout(one, 3, 1);

  auto* sample = form_.part_choice<SizeId>(
      tr("sample size"), [](auto& pattern) -> auto& { return pattern.sample_size; },
      [](const Pattern& pattern) {
        std::vector<Choice> choices = size_choices(pattern);
        choices.insert(choices.begin(), Choice{SizeBar::tr("none"), 0});
        return choices;
      });
  auto* row = new QHBoxLayout;
  row->setSpacing(scaled(this, 8));
  row->addWidget(sample);
  row->addWidget(new QuietLabel(tr("the size the shown sample was worked in")), 1);
  grid->addWidget(label(tr("Sam&ple"), sample), 4, 0);
  grid->addLayout(row, 4, 1);
}

QString SizeBar::preview() const { return preview_->text(); }

QString SizeBar::take_line(const QString& text) {
  const auto line = read_size_line(text.toStdString());
  if (!line) return sentence_of(line.error());
  open_.apply(tr("sizes %1").arg(text.trimmed()), [&](Pattern& pattern) { set_sizes(pattern, *line); });
  return {};
}

QString SizeBar::take_name(const QString& text) {
  const std::string label = tidy_spaces(text.toStdString());
  if (label.empty()) return tr("A size needs a name.");
  const std::size_t index = at();
  if (const auto other = open_.pattern().size_index(std::string_view(label)); other && *other != index)
    return tr("Another size is named “%1” already.").arg(text.trimmed());
  const QString old = QString::fromStdString(open_.pattern().sizes[index].label);
  open_.apply(tr("rename size %1 to %2").arg(old, text.trimmed()),
              [&](Pattern& pattern) { pattern.sizes[index].label = label; });
  return {};
}

void SizeBar::insert(std::size_t before) {
  const std::string label = new_label(open_.pattern());
  open_.apply(tr("insert size %1").arg(QString::fromStdString(label)),
              [&](Pattern& pattern) { insert_size(pattern, before, label); });
  open_.choose_size(before);
  name_->setFocus();
  name_->selectAll();
}

void SizeBar::insert_before() { insert(at()); }
void SizeBar::insert_after() { insert(at() + 1); }

void SizeBar::erase() {
  const std::size_t index = at();
  if (open_.pattern().sizes.size() < 2) return;
  const QString label = QString::fromStdString(open_.pattern().sizes[index].label);
  open_.apply(tr("delete size %1").arg(label), [&](Pattern& pattern) { erase_size(pattern, index); });
  emit says(tr("Deleted size %1 from every list; Undo brings it back.").arg(label));
}

void SizeBar::move(int step) {
  const std::size_t from = at();
  if ((step < 0 && from == 0) || (step > 0 && from + 1 >= open_.pattern().sizes.size())) return;
  const std::size_t to = step < 0 ? from - 1 : from + 1;
  const QString label = QString::fromStdString(open_.pattern().sizes[from].label);
  open_.apply(step < 0 ? tr("move size %1 left").arg(label) : tr("move size %1 right").arg(label),
              [&](Pattern& pattern) { move_size(pattern, from, to); });
}

void SizeBar::show_preview(const QString& text) {
  const auto line = read_size_line(text.toStdString());
  if (!line) {
    preview_->setText(sentence_of(line.error()));
    return;
  }
  const Pattern& pattern = open_.pattern();
  const std::size_t now = pattern.sizes.size(), then = line->labels.size();
  QString words = count_words(then, tr("size"), tr("sizes"));
  const auto groups = std::count(line->opens_group.begin(), line->opens_group.end(), true);
  if (groups > 0)
    words +=
        QStringLiteral(", ") + count_words(static_cast<std::size_t>(groups), tr("bracket"), tr("brackets"));
  std::size_t renamed = 0;
  for (std::size_t i = 0; i < std::min(now, then); ++i) renamed += pattern.sizes[i].label != line->labels[i];
  if (renamed > 0) words += tr("; renames %1").arg(renamed);
  if (then > now) words += tr("; adds %1 at the end").arg(then - now);
  if (then < now) words += tr("; takes %1 off the end, with their values").arg(now - then);
  if (*line != size_line(pattern)) words += tr(". Enter takes it.");
  preview_->setText(words);
}

void SizeBar::refresh() {
  const Pattern& pattern = open_.pattern();
  form_.refresh();
  const QString line = line_of(pattern);
  line_->show_line(line);
  show_preview(line_->text());
  which_->set_choices(size_choices(pattern));
  const std::size_t index = at();
  which_->show_choice(pattern.sizes[index].id.value);
  name_->show_line(QString::fromStdString(pattern.sizes[index].label));
  left_->setEnabled(index > 0);
  right_->setEnabled(index + 1 < pattern.sizes.size());
  erase_->setEnabled(pattern.sizes.size() > 1);
}

}  // namespace skeinproof
