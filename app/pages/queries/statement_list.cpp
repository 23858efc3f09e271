// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/statement_list.h"

#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/pages/queries/queries_widgets.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/count_words.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "core/base/text.h"

namespace skeinproof {
namespace {

constexpr int words_role = Qt::UserRole, place_role = Qt::UserRole + 1, told_role = Qt::UserRole + 2;
constexpr std::size_t most_rows = 3000;
constexpr std::uint32_t says_nothing = 0;

// What a stretch may be told to be, the usual ones first, and of what it then speaks.
enum class Of { nothing, colour, measurement, fabric, yarn, thing };
struct Told {
  StatementKind kind;
  Of of;
};
constexpr Told told_kinds[] = {{StatementKind::count, Of::colour},
                               {StatementKind::role, Of::nothing},
                               {StatementKind::shade_name, Of::colour},
                               {StatementKind::shade_number, Of::colour},
                               {StatementKind::length_note, Of::colour},
                               {StatementKind::total_count, Of::nothing},
                               {StatementKind::yarn_name, Of::nothing},
                               {StatementKind::fibre, Of::nothing},
                               {StatementKind::put_up_length, Of::nothing},
                               {StatementKind::put_up_weight, Of::nothing},
                               {StatementKind::yarn_description, Of::nothing},
                               {StatementKind::strands, Of::colour},
                               {StatementKind::size_labels, Of::nothing},
                               {StatementKind::measurement, Of::measurement},
                               {StatementKind::ease, Of::nothing},
                               {StatementKind::gauge_stitches, Of::fabric},
                               {StatementKind::gauge_rows, Of::fabric},
                               {StatementKind::needle, Of::fabric},
                               {StatementKind::notion, Of::thing},
                               {StatementKind::stitches, Of::nothing},
                               {StatementKind::role_mention, Of::colour},
                               {StatementKind::sample_size, Of::nothing},
                               {StatementKind::care, Of::nothing},
                               {StatementKind::caution, Of::nothing},
                               {StatementKind::piece_heading, Of::nothing},
                               {StatementKind::title, Of::nothing}};

// "5 (5, 6, 7) …" as printed, or the words.
QString values_of(const std::string& text, const Statement& statement) {
  if (statement.values.empty()) return from_core(statement.words);
  const TextSpan all{statement.values.front().span.begin, statement.values.back().span.end};
  return from_core(words_at(text, all)).simplified();
}

// Line numbers of places that are asked for in their order, without reading the text anew for each.
class LineCount {
 public:
  explicit LineCount(const std::string& text) : text_(text) {}
  QString of(std::size_t byte) {
    if (byte < done_) {
      done_ = 0;
      line_ = 1;
    }
    const auto at = [&](std::size_t place) {
      return text_.begin() + static_cast<std::ptrdiff_t>(std::min(place, text_.size()));
    };
    line_ += std::count(at(done_), at(byte), '\n');
    done_ = byte;
    return QString::number(line_);
  }

 private:
  const std::string& text_;
  std::size_t done_ = 0;
  std::ptrdiff_t line_ = 1;
};

const Telling* telling_of(const Draft* draft, std::string_view words) {
  if (draft == nullptr) return nullptr;
  const auto found = std::find_if(draft->tellings.begin(), draft->tellings.end(),
                                  [&](const Telling& one) { return one.words == words; });
  return found == draft->tellings.end() ? nullptr : &*found;
}

}  // namespace

StatementList::StatementList(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      table_(flat_table(tr("Statements as read"), {tr("Line"), tr("What"), tr("Of"), tr("Says"), tr("Unit")},
                        3)),
      kind_(new ChoiceField),
      of_(new TextField),
      tell_(new QPushButton(tr("Te&ll"))),
      take_back_(new QPushButton(tr("Take back"))) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(table_, 1);
  auto* telling = new QWidget;
  auto* line = new FlowLayout(telling);
  line->setContentsMargins(scaled(this, 10), scaled(this, 4), scaled(this, 10), scaled(this, 4));
  line->setSpacing(scaled(this, 6));
  auto* next = new QPushButton(tr("Ne&xt not understood"));
  auto* is = new QLabel(tr("is"));
  is->setBuddy(kind_);
  auto* of = new QLabel(tr("of"));
  of->setBuddy(of_);
  kind_->setAccessibleName(tr("What the chosen words are"));
  of_->setAccessibleName(tr("Of what they speak: a colour, a fabric, a measurement"));
  of_->setFixedWidth(scaled(this, 110));
  for (QWidget* widget : std::initializer_list<QWidget*>{next, is, kind_, of, of_, tell_, take_back_})
    line->addWidget(widget);
  column->addWidget(telling);
  std::vector<Choice> kinds = {{tr("nothing to check"), says_nothing}};
  for (std::uint32_t i = 0; i < std::size(told_kinds); ++i)
    kinds.push_back({from_core(word_of(told_kinds[i].kind)), i + 1});
  kind_->set_choices(kinds);
  kind_->show_choice(says_nothing);
  connect(kind_, &ChoiceField::chosen, this, [this] { offer_names(); });
  connect(next, &QPushButton::clicked, this, &StatementList::next_not_understood);
  connect(tell_, &QPushButton::clicked, this, &StatementList::tell);
  connect(of_, &QLineEdit::returnPressed, this, &StatementList::tell);
  connect(take_back_, &QPushButton::clicked, this, &StatementList::take_back);
  connect(table_, &QTreeWidget::currentItemChanged, this, [this] { follow_row(); });
  connect(table_, &QTreeWidget::itemActivated, this, [this](const QTreeWidgetItem* item) {
    emit place_chosen(item->data(0, place_role).value<std::size_t>());
  });
  offer_names();
  follow_row();
}

void StatementList::show_review(const std::shared_ptr<const Reviewed>& reviewed) {
  if (reviewed_ == reviewed) return;
  reviewed_ = reviewed;
  const QString chosen = chosen_words();
  const int was_at = table_->indexOfTopLevelItem(table_->currentItem());
  const QSignalBlocker quiet(table_);
  table_->clear();
  if (!reviewed_) return;
  const Review& review = reviewed_->review;
  const Draft* draft = reviewed_->pattern.draft();
  LineCount lines(review.text);
  QList<QTreeWidgetItem*> rows;
  const auto add = [&](const TextSpan& span, const QString& what, const QString& of, const QString& says,
                       const QString& unit) {
    const auto words = words_at(review.text, span);
    auto* item = new QTreeWidgetItem({lines.of(span.begin), what, of, says, unit});
    item->setData(0, words_role, from_core(words));
    item->setData(0, place_role, QVariant::fromValue(span.begin));
    const bool told = telling_of(draft, words) != nullptr;
    item->setData(0, told_role, told);
    if (told) item->setText(1, tr("%1, told").arg(what));
    rows << item;
    return item;
  };
  // A long book has more than anyone reads in a list; what was not understood comes first then.
  const auto& statements = review.reading.statements;
  const auto& unread = review.reading.not_understood;
  for (std::size_t i = 0; i < statements.size() && i < most_rows; ++i)
    add(statements[i].span, from_core(word_of(statements[i].kind)), from_core(statements[i].subject),
        values_of(review.text, statements[i]), from_core(word_of(statements[i].unit)));
  for (std::size_t i = 0; i < unread.size() && i < most_rows; ++i) {
    auto* item = add(unread[i].span, unread[i].told_nothing ? tr("nothing") : tr("not understood"), {},
                     from_core(words_at(review.text, unread[i].span)).simplified(), {});
    if (unread[i].told_nothing) continue;
    QFont weight = font();
    weight.setWeight(QFont::DemiBold);
    item->setFont(1, weight);
    item->setData(0, told_role, QVariant());
  }
  table_->addTopLevelItems(rows);
  const std::size_t left = statements.size() + unread.size() - static_cast<std::size_t>(rows.size());
  if (left > 0) new QTreeWidgetItem(table_, {QString(), tr("and %1 more").arg(left)});
  for (int column : {0, 1, 2, 4}) table_->resizeColumnToContents(column);
  QTreeWidgetItem* again = nullptr;
  for (int i = 0; i < table_->topLevelItemCount() && !chosen.isEmpty() && again == nullptr; ++i)
    if (table_->topLevelItem(i)->data(0, words_role).toString() == chosen) again = table_->topLevelItem(i);
  if (again == nullptr && was_at >= 0)
    again = table_->topLevelItem(std::min(was_at, table_->topLevelItemCount() - 1));
  if (again != nullptr) table_->setCurrentItem(again);
  offer_names();
  follow_row();
}

QString StatementList::chosen_words() const {
  const QTreeWidgetItem* item = table_->currentItem();
  return item != nullptr ? item->data(0, words_role).toString() : QString();
}

void StatementList::follow_row() {
  const QTreeWidgetItem* item = table_->currentItem();
  const bool unread = item != nullptr && !item->data(0, words_role).toString().isEmpty() &&
                      !item->data(0, told_role).isValid();
  const bool told = item != nullptr && item->data(0, told_role).toBool();
  for (QWidget* widget : std::initializer_list<QWidget*>{kind_, of_, tell_}) widget->setEnabled(unread);
  take_back_->setEnabled(told);
}

void StatementList::offer_names() {
  const int at = kind_->currentIndex() - 1;
  const Of of = at < 0 ? Of::nothing : told_kinds[at].of;
  const Pattern& pattern = open_.pattern();
  QStringList names;
  const auto add = [&](std::string_view name) {
    if (!name.empty() && !names.contains(from_core(name))) names << from_core(name);
  };
  if (of == Of::colour)
    for (const Role& role : pattern.roles) add(role.label);
  if (of == Of::measurement)
    for (const Measurement& measurement : pattern.measurements) add(measurement.name);
  if (of == Of::fabric)
    for (const Fabric& fabric : pattern.fabrics) add(fabric.name);
  if (of == Of::thing)
    for (const Notion& notion : pattern.notions) add(notion.name);
  of_->set_suggestions(names);
  of_->setPlaceholderText(of == Of::nothing ? QString()
                          : names.isEmpty() ? QString()
                                            : names.mid(0, 3).join(QStringLiteral(", ")));
  of_->setVisible(of != Of::nothing);
}

void StatementList::tell() {
  const QString words = chosen_words();
  if (words.isEmpty() || !tell_->isEnabled() || open_.pattern().draft() == nullptr) {
    emit says(tr("Choose words that were not understood; they stand at the end of the list."));
    return;
  }
  const int at = kind_->currentIndex() - 1;
  Telling telling{words.toStdString(), "nothing", {}};
  if (at >= 0) {
    telling.means = std::string(word_of(told_kinds[at].kind));
    if (told_kinds[at].of != Of::nothing) telling.of = of_->text().trimmed().toStdString();
    if (told_kinds[at].of == Of::colour && telling.of.empty()) {
      of_->setFocus();
      emit says(tr("Say which colour it speaks of."));
      return;
    }
  }
  open_.apply(tr("“%1” is %2").arg(words.simplified().left(40), kind_->currentText()), [&](Pattern& pattern) {
    pattern.drafts.edit([&](std::vector<Draft>& drafts) {
      auto& tellings = drafts.back().tellings;
      std::erase_if(tellings, [&](const Telling& one) { return one.words == telling.words; });
      tellings.push_back(telling);
    });
  });
  table_->setFocus();
}

void StatementList::take_back() {
  const std::string words = chosen_words().toStdString();
  if (!take_back_->isEnabled()) return;
  open_.apply(tr("take back what “%1” is").arg(chosen_words().simplified().left(40)), [&](Pattern& pattern) {
    pattern.drafts.edit([&](std::vector<Draft>& drafts) {
      std::erase_if(drafts.back().tellings, [&](const Telling& one) { return one.words == words; });
    });
  });
  table_->setFocus();
}

void StatementList::next_not_understood() {
  const int count = table_->topLevelItemCount();
  const int from = table_->indexOfTopLevelItem(table_->currentItem());
  for (int i = 1; i <= count; ++i) {
    QTreeWidgetItem* item = table_->topLevelItem((std::max(0, from) + i) % count);
    if (item->data(0, words_role).toString().isEmpty() || item->data(0, told_role).isValid()) continue;
    table_->setCurrentItem(item);
    table_->scrollToItem(item);
    kind_->setFocus();
    return;
  }
  emit says(tr("Everything was understood, or told to be nothing."));
}

}  // namespace skeinproof
