// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/drafts_view.h"

#include <QHeaderView>
#include <QLabel>
#include <QPlainTextEdit>
#include <QStackedWidget>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "app/pages/queries/queries_widgets.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "core/base/text.h"
#include "core/review/finding_words.h"
#include "core/sheets/query_sheet.h"

namespace skeinproof {
namespace {

constexpr int most_rows = 2000;                    // of statements; nobody reads more of them in a list
constexpr std::uint32_t house_block = 0xFFFFFFFF;  // in the place of the later draft

QTreeWidgetItem* add_group(QTreeWidget* table, const QString& name, std::size_t count) {
  auto* group =
      new QTreeWidgetItem(table, {count == 0 ? QStringLiteral("%1   %2").arg(name, DraftsView::tr("none"))
                                             : QStringLiteral("%1   %2").arg(name).arg(count)});
  group->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
  group->setFirstColumnSpanned(true);
  QFont weight = table->font();
  weight.setWeight(QFont::DemiBold);
  group->setFont(0, weight);
  return group;
}

QString in_words(const std::string& printed) {
  return printed.empty() ? QString() : from_core(quoted(tidy_spaces(printed), 120));
}

QString place_of(const Finding& finding) {
  QStringList parts;
  if (!finding.roles.empty()) parts << from_core(listed(finding.roles));
  if (!finding.sizes.empty()) parts << from_core(sizes_in_words(finding.sizes));
  return parts.join(QStringLiteral(", "));
}

void add_findings(QTreeWidget* table, const QString& name, const std::vector<Finding>& findings,
                  const std::vector<std::size_t>& which) {
  QTreeWidgetItem* group = add_group(table, name, which.size());
  for (const std::size_t index : which) {
    const Finding& finding = findings[index];
    auto* row = new QTreeWidgetItem(
        group, {QStringLiteral("%1 %2").arg(from_core(word_of(finding.severity)), from_core(finding.check)),
                place_of(finding), from_core(finding.title)});
    row->setToolTip(2, row->text(2));
  }
}

}  // namespace

DraftsView::DraftsView(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      earlier_(new ChoiceField),
      later_(new ChoiceField),
      note_(new QuietLabel),
      stack_(new QStackedWidget),
      table_(new QTreeWidget),
      words_(reading_text(tr("The submitted block and the house's, word by word"), Pitch::proportional)),
      job_([this](std::shared_ptr<const Compared> compared) {
        compared_ = std::move(compared);
        show_compared();
        emit this->compared();
      }) {
  auto* choices = new QWidget;
  auto* line = new FlowLayout(choices);
  line->setContentsMargins(scaled(this, 12), scaled(this, 6), scaled(this, 12), scaled(this, 6));
  line->setSpacing(scaled(this, 6));
  auto* of = new QLabel(tr("Compare"));
  of->setBuddy(earlier_);
  auto* with = new QLabel(tr("with"));
  with->setBuddy(later_);
  earlier_->setAccessibleName(tr("The earlier draft"));
  later_->setAccessibleName(tr("The later draft, or the block of the house"));
  for (QWidget* widget : std::initializer_list<QWidget*>{of, earlier_, with, later_}) line->addWidget(widget);
  table_->setAccessibleName(tr("What changed from one draft to the other"));
  table_->setFrameShape(QFrame::NoFrame);
  table_->setAllColumnsShowFocus(true);
  table_->setColumnCount(4);
  table_->header()->setStretchLastSection(true);
  note_->setWordWrap(true);
  note_->setContentsMargins(scaled(this, 12), 0, scaled(this, 12), scaled(this, 6));
  stack_->addWidget(table_);
  stack_->addWidget(words_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(choices);
  column->addWidget(note_);
  column->addWidget(stack_, 1);
  for (ChoiceField* field : {earlier_, later_})
    connect(field, &ChoiceField::chosen, this, [this] {
      asked_ = 0;
      ask();
    });
  connect(&open_, &OpenPattern::changed, this, [this] {
    offer_drafts();
    if (isVisible()) ask();
  });
  offer_drafts();
}

void DraftsView::offer_drafts() {
  const auto& drafts = *open_.pattern().drafts;
  std::vector<Choice> list;
  for (std::size_t i = 0; i < drafts.size(); ++i)
    list.push_back(
        {from_core(drafts[i].name) +
             (drafts[i].received.empty() ? QString() : QStringLiteral(", ") + from_core(drafts[i].received)),
         static_cast<std::uint32_t>(i)});
  std::vector<Choice> later = list;
  later.push_back({tr("the block in the house style"), house_block});
  const auto offer = [](ChoiceField* field, const std::vector<Choice>& choices, int usual) {
    const bool grown = field->count() != static_cast<int>(choices.size());
    const int chosen = grown ? usual : field->currentIndex();
    field->set_choices(choices);
    if (!choices.empty())
      field->show_choice(
          choices[static_cast<std::size_t>(std::clamp(chosen, 0, static_cast<int>(choices.size()) - 1))]
              .value);
  };
  const int count = static_cast<int>(drafts.size());
  offer(earlier_, list, std::max(0, count - 2));
  offer(later_, later, count > 1 ? count - 1 : count);
  earlier_->setEnabled(count > 0);
}

void DraftsView::compare(std::size_t before, std::size_t after) {
  earlier_->show_choice(static_cast<std::uint32_t>(before));
  later_->show_choice(static_cast<std::uint32_t>(after));
  asked_ = 0;
  ask();
}

void DraftsView::compare_blocks() {
  later_->show_choice(house_block);
  asked_ = 0;
  ask();
}

void DraftsView::ask() {
  if (asked_ == open_.state()) return;
  asked_ = open_.state();
  const std::size_t drafts = open_.pattern().drafts->size();
  if (drafts == 0) {
    compared_.reset();
    show_compared();
    return;
  }
  const auto before = static_cast<std::size_t>(std::max(0, earlier_->currentIndex()));
  const auto after = static_cast<std::size_t>(std::max(0, later_->currentIndex()));
  note_->setText(tr("Comparing …"));
  job_.ask([pattern = open_.pattern(), state = open_.state(), before, after, drafts] {
    auto compared = std::make_shared<Compared>();
    compared->pattern = pattern;
    compared->state = state;
    const Assessment assessment = assess(pattern);
    if (after < drafts) {
      compared->drafts = compare_drafts(pattern, assessment, before, after);
      compared->sheet = drafts_sheet(pattern, *compared->drafts);
    } else {
      // The block of the chosen draft, as if that were the one at hand.
      Pattern of_draft = pattern;
      of_draft.drafts.edit([&](std::vector<Draft>& all) { all.resize(before + 1); });
      compared->runs = compare_block(of_draft, assessment);
      compared->sheet = block_comparison_sheet(of_draft, assessment);
    }
    return std::shared_ptr<const Compared>(std::move(compared));
  });
}

void DraftsView::show_compared() {
  if (!compared_) {
    table_->clear();
    words_->clear();
    note_->setText(tr("No draft yet: paste one, or open a file with one."));
    return;
  }
  if (compared_->drafts)
    show_drafts(*compared_->drafts);
  else
    show_words();
  stack_->setCurrentIndex(compared_->drafts ? 0 : 1);
}

void DraftsView::show_drafts(const DraftComparison& comparison) {
  table_->clear();
  table_->setHeaderLabels(
      {tr("What"), tr("Of"), from_core(comparison.before_name), from_core(comparison.after_name)});
  QTreeWidgetItem* group = add_group(table_, tr("Statements that differ"), comparison.statements.size());
  for (const StatementChange& change : comparison.statements) {
    if (group->childCount() == most_rows) {
      new QTreeWidgetItem(
          group, {tr("and %1 more").arg(comparison.statements.size() - static_cast<std::size_t>(most_rows))});
      break;
    }
    auto* row = new QTreeWidgetItem(
        group,
        {QStringLiteral("%1, %2").arg(from_core(word_of(change.kind)), from_core(word_of(change.fate))),
         from_core(change.subject), in_words(change.before), in_words(change.after)});
    for (int column : {2, 3}) {
      row->setFont(column, type_of(font()).words);
      row->setToolTip(column, row->text(column));
    }
  }
  group = add_group(table_, tr("Changed, and nothing that depends on it"), comparison.not_moved.size());
  for (const NotMoved& one : comparison.not_moved) {
    QStringList still;
    for (const StatementKind kind : one.still) still << from_core(word_of(kind));
    new QTreeWidgetItem(group,
                        {from_core(one.what), tr("as before: %1").arg(still.join(QStringLiteral(", "))),
                         in_words(one.was), in_words(one.is)});
  }
  add_findings(table_, tr("Opened"), comparison.after, comparison.findings.opens);
  add_findings(table_, tr("Closed"), comparison.before, comparison.findings.closes);
  add_findings(table_, tr("Still open"), comparison.before, comparison.findings.stays);
  table_->expandAll();
  for (int column : {0, 1}) {
    table_->resizeColumnToContents(column);
    table_->setColumnWidth(column, std::min(table_->columnWidth(column), scaled(this, 210)));
  }
  table_->setColumnWidth(2, scaled(this, 230));
  const FindingChange& findings = comparison.findings;
  note_->setText(
      tr("%1 to %2: %3 statements differ; %4 findings opened, %5 closed, %6 still open. Both as they "
         "came, against the facts now in force.")
          .arg(from_core(comparison.before_name), from_core(comparison.after_name))
          .arg(comparison.statements.size())
          .arg(findings.opens.size())
          .arg(findings.closes.size())
          .arg(findings.stays.size()));
  if (table_->topLevelItemCount() > 0) table_->setCurrentItem(table_->topLevelItem(0));
}

void DraftsView::show_words() {
  const Ink ink = ink_of(palette());
  words_->clear();
  words_->document()->setDefaultFont(type_of(font()).words);
  QTextCursor cursor(words_->document());
  std::size_t gone = 0, added = 0;
  for (const WordRun& run : compared_->runs) {
    QTextCharFormat format;
    format.setForeground(run.fate == WordFate::gone ? ink.muted : ink.text);
    format.setFontStrikeOut(run.fate == WordFate::gone);
    format.setFontUnderline(run.fate == WordFate::added);
    format.setFontWeight(run.fate == WordFate::added ? QFont::Bold : QFont::Normal);
    gone += run.fate == WordFate::gone ? 1 : 0;
    added += run.fate == WordFate::added ? 1 : 0;
    cursor.insertText(from_core(run.text), format);
  }
  words_->moveCursor(QTextCursor::Start);
  note_->setText(
      compared_->runs.empty()
          ? tr("There is no submitted block.")
          : tr("Struck through: in the submitted block alone, %1 places. Underlined: in the house's alone, "
               "%2 places.")
                .arg(gone)
                .arg(added));
}

QString DraftsView::summary() const { return note_->text(); }

std::optional<Sheet> DraftsView::sheet(const std::string& date) const {
  if (!compared_) return std::nullopt;
  Sheet sheet = compared_->sheet;
  sheet.date = date;
  return sheet;
}

void DraftsView::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  ask();
}

void DraftsView::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  const bool ink_or_type = event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange;
  if (ink_or_type && compared_ && stack_ != nullptr) show_compared();
}

}  // namespace skeinproof
