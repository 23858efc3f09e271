// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/shelf_import.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "app/widgets/bound_fields.h"
#include "app/widgets/ink.h"
#include "app/widgets/quantity_text.h"
#include "core/substitution/shelf_search.h"

namespace skeinproof {
namespace {

QString from(std::string_view words) {
  return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

QString line_of(const Error& error) {
  return ShelfImportDialog::tr("Line %1, column %2: %3")
      .arg(error.place.line)
      .arg(error.place.column)
      .arg(sentence_of(error));
}

// The first filled cells of a column.
QString first_cells(const ShelfTable& table, std::size_t column) {
  QStringList cells;
  for (const auto& row : table.rows) {
    if (cells.size() == 3) break;
    if (column < row.size() && !row[column].text.empty()) cells << from(row[column].text).simplified();
  }
  return cells.join(QStringLiteral(" · "));
}

std::vector<Choice> field_choices() {
  std::vector<Choice> choices;
  for (const ShelfFieldRow& row : shelf_field_rows())
    choices.push_back({from(row.heading), static_cast<std::uint32_t>(row.field)});
  return choices;
}

}  // namespace

ShelfImportDialog::ShelfImportDialog(ShelfTable table, std::shared_ptr<const ShelfIndex> shelf,
                                     QWidget* parent)
    : QDialog(parent),
      table_(std::move(table)),
      shelf_(std::move(shelf)),
      columns_(new QTableWidget),
      duplicates_(new QComboBox),
      summary_(new QLabel),
      doubts_(new QPlainTextEdit),
      buttons_(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel)),
      save_failed_(new QPushButton(tr("Save the rows that are not taken…"))) {
  setAttribute(Qt::WA_DeleteOnClose);
  setWindowTitle(tr("Yarns from a table"));
  auto* layout = new QVBoxLayout(this);
  for (const std::string& note : table_.notes) {
    auto* told = new QLabel(from(note));
    told->setTextFormat(Qt::PlainText);
    told->setWordWrap(true);
    layout->addWidget(told);
  }
  add_columns();
  layout->addWidget(columns_, 2);
  auto* label = new QLabel(tr("Yarns that are &there already, shade and dye lot and all, are"));
  label->setBuddy(duplicates_);
  duplicates_->addItems({tr("left out"), tr("put there once more"), tr("replaced")});
  auto* row = new QHBoxLayout;
  row->addWidget(label);
  row->addWidget(duplicates_);
  row->addStretch(1);
  layout->addLayout(row);
  summary_->setWordWrap(true);
  summary_->setTextFormat(Qt::PlainText);
  layout->addWidget(summary_);
  doubts_->setReadOnly(true);
  doubts_->setTabChangesFocus(true);
  doubts_->setAccessibleName(tr("What could not be read"));
  layout->addWidget(doubts_, 1);
  buttons_->button(QDialogButtonBox::Ok)->setText(tr("&Put on the shelf"));
  buttons_->addButton(save_failed_, QDialogButtonBox::ActionRole);
  layout->addWidget(buttons_);
  connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(save_failed_, &QPushButton::clicked, this, &ShelfImportDialog::wants_failed_rows_saved);
  connect(duplicates_, &QComboBox::currentIndexChanged, this, &ShelfImportDialog::read);
  resize(scaled(this, 760), scaled(this, 620));
  read();
}

void ShelfImportDialog::add_columns() {
  columns_->setAccessibleName(tr("Columns of the table"));
  columns_->setColumnCount(3);
  columns_->setHorizontalHeaderLabels({tr("Heading"), tr("Taken for"), tr("First cells")});
  columns_->setRowCount(static_cast<int>(table_.columns.size()));
  columns_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  columns_->verticalHeader()->hide();
  columns_->horizontalHeader()->setStretchLastSection(true);
  for (std::size_t i = 0; i < table_.columns.size(); ++i) {
    const ShelfColumn& column = table_.columns[i];
    const int row = static_cast<int>(i);
    columns_->setItem(row, 0, new QTableWidgetItem(from(column.heading)));
    columns_->setItem(row, 2, new QTableWidgetItem(first_cells(table_, i)));
    auto* field = new ChoiceField;
    field->set_choices(field_choices());
    field->show_choice(static_cast<std::uint32_t>(column.field));
    field->setAccessibleName(tr("What the column %1 is").arg(from(column.heading)));
    connect(field, &QComboBox::currentIndexChanged, this, [this, i, field] {
      table_.columns[i].field = static_cast<ShelfField>(field->currentData().toUInt());
      read();
    });
    columns_->setCellWidget(row, 1, field);
    fields_.push_back(field);
  }
  columns_->resizeColumnsToContents();
  columns_->resizeRowsToContents();
}

void ShelfImportDialog::read() {
  import_ = read_shelf_rows(table_, table_.columns);
  intake_ = plan_intake(shelf_->entries(), import_.entries(),
                        static_cast<DuplicateChoice>(duplicates_->currentIndex()));
  QStringList sentences;
  sentences << tr("%1 of %2 rows go on the shelf.").arg(intake_.entries.size()).arg(table_.rows.size());
  if (!intake_.duplicates.empty())
    sentences << tr("%1 are there already, shade and dye lot and all.").arg(intake_.duplicates.size());
  if (intake_.twice > 0) sentences << tr("%1 stand in the table twice.").arg(intake_.twice);
  if (intake_.other_lots > 0)
    sentences << tr("%1 are known in another shade or dye lot.").arg(intake_.other_lots);
  if (!import_.failed.empty())
    sentences << tr("%1 have no name and are not taken.").arg(import_.failed.size());
  summary_->setText(sentences.join(QLatin1Char(' ')));
  QStringList lines;
  for (const ShelfImport::Failed& failed : import_.failed) lines << line_of(failed.error);
  for (const ShelfImport::Taken& taken : import_.taken)
    for (const Error& doubt : taken.doubts) lines << line_of(doubt);
  doubts_->setPlainText(lines.isEmpty() ? tr("Every cell could be read.") : lines.join(QLatin1Char('\n')));
  save_failed_->setEnabled(has_failed_rows());
  buttons_->button(QDialogButtonBox::Ok)->setEnabled(!intake_.entries.empty());
}

std::vector<ShelfYarn> ShelfImportDialog::entries() const { return intake_.entries; }
std::string ShelfImportDialog::failed_rows() const { return failed_rows_csv(table_, import_); }
QString ShelfImportDialog::summary() const { return summary_->text(); }
QString ShelfImportDialog::doubts() const { return doubts_->toPlainText(); }

}  // namespace skeinproof
