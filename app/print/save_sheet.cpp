// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/save_sheet.h"

#include <QPdfWriter>
#include <QSaveFile>
#include <array>

#include "app/print/paper_sheet.h"
#include "core/sheets/odt.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

Error cannot_write(const std::string& path, const QString& reason) {
  return {
      ErrorKind::system, {path, 0, 0}, reason.toStdString(), "a folder that exists and may be written to"};
}

Expected<void> save_pdf_file(const Sheet& sheet, const std::string& path) {
  // Drawn into a file of its own first, so that a full disk leaves the old one.
  QSaveFile file(QString::fromStdString(path));
  if (!file.open(QIODevice::WriteOnly)) return tl::unexpected(cannot_write(path, file.errorString()));
  {
    QPdfWriter writer(&file);
    writer.setCreator(QStringLiteral("Skeinproof"));
    writer.setTitle(QString::fromStdString(sheet.title));
    if (paint_on_paper(writer, sheet) == 0) return tl::unexpected(cannot_write(path, file.errorString()));
  }
  if (!file.commit()) return tl::unexpected(cannot_write(path, file.errorString()));
  return {};
}

Expected<void> save_tables(const Sheet& sheet, const std::string& path) {
  const std::string tables = csv(sheet);
  if (!tables.empty()) return save_text(path, tables);
  return failure(ErrorKind::wrong_format, "a sheet without tables",
                 "another ending than .csv, which holds tables alone", {path, 0, 0});
}

struct Ending {
  const char* ending;
  Expected<void> (*save)(const Sheet& sheet, const std::string& path, std::int64_t now);
};

constexpr std::array endings = {
    Ending{".txt", [](const Sheet& sheet, const std::string& path,
                      std::int64_t) { return save_text(path, plain_text(sheet)); }},
    Ending{".html", [](const Sheet& sheet, const std::string& path,
                       std::int64_t) { return save_text(path, html(sheet)); }},
    Ending{".csv", [](const Sheet& sheet, const std::string& path,
                      std::int64_t) { return save_tables(sheet, path); }},
    Ending{".xlsx", [](const Sheet& sheet, const std::string& path,
                       std::int64_t now) { return save_xlsx(sheet, path, now); }},
    Ending{".odt",
           [](const Sheet& sheet, const std::string& path, std::int64_t now) -> Expected<void> {
             const auto bytes = odt(sheet, now);
             return bytes ? save_text(path, *bytes) : tl::unexpected(bytes.error());
           }},
    Ending{".pdf", [](const Sheet& sheet, const std::string& path,
                      std::int64_t) { return save_pdf_file(sheet, path); }},
};

}  // namespace

Expected<void> save_text(const std::string& path, const std::string& text) {
  QSaveFile file(QString::fromStdString(path));
  if (!file.open(QIODevice::WriteOnly) || file.write(text.data(), static_cast<qint64>(text.size())) < 0 ||
      !file.commit())
    return tl::unexpected(cannot_write(path, file.errorString()));
  return {};
}

Expected<void> save_sheet(const Sheet& sheet, const std::string& path, std::int64_t now) {
  const QString name = QString::fromStdString(path).toLower();
  for (const Ending& row : endings)
    if (name.endsWith(QLatin1String(row.ending))) return row.save(sheet, path, now);
  return failure(ErrorKind::wrong_format, "“" + path + "”",
                 "a name that ends in .txt, .html, .csv, .xlsx, .odt or .pdf");
}

}  // namespace skeinproof
