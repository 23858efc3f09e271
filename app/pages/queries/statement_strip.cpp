// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/statement_strip.h"

#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QKeyEvent>
#include <QScrollBar>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/pages/queries/queries_widgets.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "core/base/text.h"
#include "core/review/statement_along.h"

namespace skeinproof {
namespace {

struct StripRow {
  const char* name;
  std::vector<std::string> StatementAlong::*values;
  bool designers;  // words as printed
};
constexpr StripRow strip_rows[] = {
    {QT_TRANSLATE_NOOP("skeinproof::StatementStrip", "As submitted"), &StatementAlong::submitted, true},
    {QT_TRANSLATE_NOOP("skeinproof::StatementStrip", "As read"), &StatementAlong::read, false},
    {QT_TRANSLATE_NOOP("skeinproof::StatementStrip", "In force"), &StatementAlong::in_force, false},
    {QT_TRANSLATE_NOOP("skeinproof::StatementStrip", "As proposed"), &StatementAlong::proposed, true}};

}  // namespace

StatementStrip::StatementStrip(QWidget* parent)
    : QWidget(parent), head_(new PaneHeader(tr("Statement"))), table_(new QTableWidget) {
  table_->setAccessibleName(tr("The statement along the sizes"));
  table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  table_->setFrameShape(QFrame::NoFrame);
  table_->setTabKeyNavigation(false);
  table_->horizontalHeader()->setHighlightSections(false);
  table_->verticalHeader()->setHighlightSections(false);
  table_->installEventFilter(this);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(head_);
  column->addWidget(table_);
  show_statement(nullptr, {});
}

QString StatementStrip::title() const { return head_->note(); }

void StatementStrip::show_statement(const std::shared_ptr<const Reviewed>& reviewed,
                                    std::optional<std::size_t> statement) {
  if (reviewed && reviewed == reviewed_ && statement == statement_) return;
  reviewed_ = reviewed;
  statement_ = reviewed && statement && *statement < reviewed->review.reading.statements.size()
                   ? statement
                   : std::nullopt;
  if (!statement_) {
    head_->set_note(tr("put the cursor on underlined words"));
    fill({});
    return;
  }
  const Review& review = reviewed->review;
  const StatementAlong along =
      statement_along(reviewed->pattern, review, *statement_, reviewed->proposed.edits);
  const std::size_t begin = review.reading.statements[*statement_].span.begin;
  head_->set_note(
      from_core(along.name) + tr("; line %1").arg(line_column(review.text, begin).line) +
      (along.count_words.empty() ? QString() : QStringLiteral("; ") + from_core(along.count_words)));
  fill(along);
}

void StatementStrip::fill(const StatementAlong& along) {
  std::size_t columns = std::max<std::size_t>(1, along.columns.size());
  for (const StripRow& row : strip_rows) columns = std::max(columns, (along.*row.values).size());
  table_->clear();
  table_->setRowCount(static_cast<int>(std::size(strip_rows)));
  table_->setColumnCount(static_cast<int>(columns));
  for (std::size_t c = 0; c < columns; ++c) {
    QString label = along.columns.empty()      ? tr("one value")
                    : c < along.columns.size() ? from_core(along.columns[c])
                                               : tr("one more");
    if (c < along.opens_group.size() && along.opens_group[c]) label.prepend(QLatin1Char('('));
    const bool closes = !along.columns.empty() && c + 1 <= along.columns.size() &&
                        (c + 1 == along.columns.size() || along.opens_group[c + 1]);
    const bool in_group =
        closes &&
        std::any_of(along.opens_group.begin(), along.opens_group.begin() + static_cast<std::ptrdiff_t>(c) + 1,
                    [](bool opens) { return opens; });
    if (in_group) label += QLatin1Char(')');
    table_->setHorizontalHeaderItem(static_cast<int>(c), new QTableWidgetItem(label));
  }
  const Type type = type_of(font());
  int r = 0;
  for (const StripRow& row : strip_rows) {
    const auto& values = along.*row.values;
    table_->setVerticalHeaderItem(r, new QTableWidgetItem(tr(row.name)));
    for (std::size_t c = 0; c < columns; ++c) {
      const QString words = c < values.size() && !values[c].empty() ? from_core(values[c])
                            : values.empty()                        ? QString()
                                                                    : QStringLiteral("–");
      auto* item = new QTableWidgetItem(words);
      item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
      QFont face = row.designers ? type.words : type.body;
      // A figure in force or proposed that is another than the one read.
      const bool differs = r >= 2 && !values.empty() && c < along.read.size() && c < values.size() &&
                           values[c] != along.read[c] &&
                           (c >= along.submitted.size() || values[c] != along.submitted[c]);
      face.setWeight(differs ? QFont::Bold : QFont::Normal);
      face.setUnderline(differs);
      item->setFont(face);
      const QString head = table_->horizontalHeaderItem(static_cast<int>(c))->text();
      item->setData(Qt::AccessibleTextRole,
                    tr("%1, %2: %3%4").arg(tr(row.name), head, words, differs ? tr(", differs") : QString()));
      table_->setItem(r, static_cast<int>(c), item);
    }
    ++r;
  }
  fit();
}

void StatementStrip::fit() {
  const int line = fontMetrics().height() + scaled(this, 8);
  for (int row = 0; row < table_->rowCount(); ++row) table_->setRowHeight(row, line);
  table_->resizeColumnsToContents();
  for (int column = 0; column < table_->columnCount(); ++column)
    table_->setColumnWidth(column, std::max(table_->columnWidth(column), scaled(this, 42)));
  const int around =
      table_->horizontalHeader()->sizeHint().height() + table_->horizontalScrollBar()->sizeHint().height();
  table_->setMinimumHeight(around + line * 2);
  table_->setMaximumHeight(around + line * table_->rowCount());
  setMaximumHeight(head_->sizeHint().height() + table_->maximumHeight());
}

void StatementStrip::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::FontChange) return;
  const auto reviewed = std::exchange(reviewed_, nullptr);
  show_statement(reviewed, statement_);
}

bool StatementStrip::eventFilter(QObject* watched, QEvent* event) {
  if (watched == table_ && event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->matches(QKeySequence::Copy)) {
    QStringList lines;
    for (int row = 0; row < table_->rowCount(); ++row) {
      QStringList cells{table_->verticalHeaderItem(row)->text()};
      for (int column = 0; column < table_->columnCount(); ++column)
        cells << table_->item(row, column)->text();
      lines << cells.join(QLatin1Char('\t'));
    }
    QApplication::clipboard()->setText(lines.join(QLatin1Char('\n')));
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace skeinproof
