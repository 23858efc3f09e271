// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/size_list_text.h"

#include <QCoreApplication>
#include <algorithm>

#include "app/widgets/count_words.h"
#include "core/units/read.h"

namespace skeinproof {

namespace {

QString say(const char* text, int n = -1) {
  return QCoreApplication::translate("SizeList", text, nullptr, n);
}

std::vector<QString> texts_of(const SizeList& list) {
  std::vector<QString> texts;
  for (const auto& value : list.values) texts.push_back(value ? QString::fromStdString(*value) : QString());
  return texts;
}

bool has_figure(const QString& text) {
  return std::any_of(text.begin(), text.end(), [](QChar c) { return c.isNumber(); });
}

}  // namespace

bool is_size_list(const QString& text) {
  const auto list = read_size_list(text.toStdString());
  return list && list->values.size() > 1;
}

ListForSizes read_list_for_sizes(const QString& text, const QuantityFormat& format, const ReaderStyle& reader,
                                 const Pattern& pattern) {
  ListForSizes read;
  const auto list = read_size_list(text.toStdString());
  if (!list) {
    read.reason = sentence_of(list.error());
    return read;
  }
  read.values = texts_of(*list);
  for (std::size_t i = 0; i < read.values.size(); ++i) {
    if (read.values[i].isEmpty()) continue;
    const auto value = read_quantity(format, reader, read.values[i]);
    if (value) continue;
    read.unread.push_back(i);
    if (read.reason.isEmpty()) read.reason = sentence_of(value.error());
  }
  const std::size_t sizes = pattern.sizes.size();
  if (read.values.size() != sizes)
    read.reason = say("%1 for %2; nothing was changed.")
                      .arg(count_words(read.values.size(), say("value"), say("values")),
                           count_words(sizes, say("size"), say("sizes")));
  return read;
}

QString understood(const ListForSizes& list, const Pattern& pattern) {
  QStringList parts;
  for (std::size_t i = 0; i < list.values.size(); ++i) {
    const QString size =
        i < pattern.sizes.size() ? QString::fromStdString(pattern.sizes[i].label) : say("no size");
    parts << size + QStringLiteral(": ") + (list.values[i].isEmpty() ? QStringLiteral("–") : list.values[i]);
  }
  return parts.join(QStringLiteral(" · "));
}

PastedTable read_pasted_table(const QString& text, int sizes) {
  QString tidy = text;
  tidy.replace(QLatin1String("\r\n"), QLatin1String("\n")).replace(QLatin1Char('\r'), QLatin1Char('\n'));
  while (tidy.endsWith(QLatin1Char('\n'))) tidy.chop(1);
  PastedTable table;
  std::size_t widest = 0;
  for (const QString& line : tidy.split(QLatin1Char('\n'))) {
    std::vector<QString> row;
    if (!line.contains(QLatin1Char('\t')) && is_size_list(line)) {
      row = texts_of(*read_size_list(line.toStdString()));
    } else {
      for (const QString& cell : line.split(QLatin1Char('\t'))) row.push_back(cell.trimmed());
    }
    widest = std::max(widest, row.size());
    table.push_back(std::move(row));
  }
  for (auto& row : table) row.resize(widest);

  const auto wanted = static_cast<std::size_t>(sizes);
  if (widest == 1 && table.size() == wanted && sizes > 1) {
    std::vector<QString> turned;
    for (const auto& row : table) turned.push_back(row.front());
    return {std::move(turned)};
  }
  const bool words_first =
      widest == wanted + 1 && std::none_of(table.begin(), table.end(), [](const auto& row) {
        return !row.front().isEmpty() && row.front().at(0).isNumber();
      });
  if (words_first && std::any_of(table.begin(), table.end(), [](const auto& row) {
        return std::any_of(row.begin() + 1, row.end(), has_figure);
      }))
    for (auto& row : table) row.erase(row.begin());
  return table;
}

}  // namespace skeinproof
