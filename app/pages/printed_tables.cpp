// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/printed_tables.h"

#include <QCoreApplication>

#include "app/widgets/figure_list.h"
#include "app/widgets/part_table_model.h"
#include "app/widgets/size_table_model.h"

namespace skeinproof {

namespace {

std::string text_of(const QVariant& value) { return value.toString().toStdString(); }

Table two_columns(const QString& title) {
  Table table;
  table.title = title.toStdString();
  table.columns = {{}, {}};
  return table;
}

}  // namespace

Table printed_table(const QString& title, const PartTableModel& model) {
  Table table;
  table.title = title.toStdString();
  for (int column = 0; column < model.columnCount(); ++column)
    table.columns.push_back({model.column(column).head.toStdString(),
                             model.column(column).right ? Align::right : Align::left, false});
  for (int row = 0; row < model.part_count(); ++row) {
    Row printed;
    for (int column = 0; column < model.columnCount(); ++column)
      printed.cells.push_back(words(model.cell_text(row, column).toStdString()));
    table.rows.push_back(std::move(printed));
  }
  return table;
}

Table printed_table(const QString& title, const SizeTableModel& model) {
  Table table;
  table.title = title.toStdString();
  table.columns.push_back(
      {QCoreApplication::translate("PrintedTable", "Size").toStdString(), Align::left, false});
  for (int size = 0; size < model.columnCount(); ++size)
    table.columns.push_back(
        {text_of(model.headerData(size, Qt::Horizontal, Qt::DisplayRole)), Align::right,
         model.headerData(size, Qt::Horizontal, SizeTableModel::opens_group_role).toBool()});
  for (int row = 0; row < model.rowCount(); ++row) {
    Row printed;
    printed.cells.push_back(words(text_of(model.headerData(row, Qt::Vertical, Qt::DisplayRole))));
    for (int size = 0; size < model.columnCount(); ++size)
      printed.cells.push_back(words(model.cell_text(row, size).toStdString()));
    table.rows.push_back(std::move(printed));
  }
  return table;
}

Table printed_table(const QString& title, const std::vector<FigureRow>& rows) {
  Table table;
  table.title = title.toStdString();
  const auto head = [](const char* text) {
    return QCoreApplication::translate("PrintedTable", text).toStdString();
  };
  table.columns = {{head("Figure"), Align::left, false},
                   {{}, Align::right, false},
                   {head("How, and from what"), Align::left, false}};
  for (const FigureRow& row : rows) {
    Row printed;
    Cell name = words(row.name.toStdString());
    name.strong = row.heading || row.strong;
    printed.cells = {name, words(row.figure.toStdString()), words(row.how.toStdString())};
    if (!row.source.isEmpty()) {
      std::string& how = printed.cells.back().text;
      how += (how.empty() ? "" : "; ") + row.source.toStdString();
    }
    table.rows.push_back(std::move(printed));
  }
  return table;
}

Table printed_table(const QString& title, const std::vector<std::pair<QString, QString>>& rows) {
  Table table = two_columns(title);
  for (const auto& [name, value] : rows)
    if (!value.isEmpty())
      table.rows.push_back({{words(name.toStdString()), words(value.toStdString())}, false});
  return table;
}

}  // namespace skeinproof
