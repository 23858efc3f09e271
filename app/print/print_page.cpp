// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/print_page.h"

#include <QFile>
#include <QLocale>
#include <QPageLayout>
#include <QPdfWriter>
#include <QPrintDialog>
#include <QPrinter>
#include <QSaveFile>

#include "app/pages/page.h"
#include "app/print/paper_sheet.h"

namespace skeinproof {
namespace {

constexpr double margin_mm = 15;

// Letter where inches are the custom, A4 elsewhere; the print dialog may change it.
QPageLayout usual_layout() {
  const bool inches = QLocale().measurementSystem() == QLocale::ImperialUSSystem;
  return QPageLayout(QPageSize(inches ? QPageSize::Letter : QPageSize::A4), QPageLayout::Portrait,
                     QMarginsF(margin_mm, margin_mm, margin_mm, margin_mm), QPageLayout::Millimeter);
}

int paint(QPagedPaintDevice& device, const Page& page, const Sheet& sheet) {
  return paint_on_paper(
      device, sheet, [&page](double width) { return page.paper_blocks(width); }, page.pictures_stand());
}

}  // namespace

PrintQuestion platform_print_dialog() {
  return [](QPrinter& printer, QWidget* parent) {
    QPrintDialog dialog(&printer, parent);
    return dialog.exec() == QDialog::Accepted;
  };
}

bool print_page(const Page& page, QWidget* parent, const PrintQuestion& ask) {
  const auto sheet = page.sheet();
  if (!sheet) return false;
  QPrinter printer(QPrinter::HighResolution);
  printer.setPageLayout(usual_layout());
  printer.setDocName(QString::fromStdString(sheet->title));
  if (!ask(printer, parent)) return false;
  return paint(printer, page, *sheet) > 0;
}

bool save_pdf(const Page& page, const QString& path) {
  const auto sheet = page.sheet();
  if (!sheet) return false;
  // A file that cannot be written whole leaves the old one as it was.
  QSaveFile file(path);
  if (!file.open(QIODevice::WriteOnly)) return false;
  bool painted = false;
  {
    QPdfWriter writer(&file);
    writer.setPageLayout(usual_layout());
    writer.setResolution(1200);
    writer.setTitle(QString::fromStdString(sheet->title));
    writer.setCreator(QStringLiteral("Skeinproof"));
    painted = paint(writer, page, *sheet) > 0;
  }
  return painted && file.commit();
}

}  // namespace skeinproof
