// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <functional>

class QPrinter;
class QWidget;

namespace skeinproof {

class Page;

// Asks where and how to print; false where the person gave up. A parameter, so that tests answer instead.
using PrintQuestion = std::function<bool(QPrinter& printer, QWidget* parent)>;
PrintQuestion platform_print_dialog();

// Prints the page's sheet and pictures. False where nothing was printed.
bool print_page(const Page& page, QWidget* parent, const PrintQuestion& ask = platform_print_dialog());

// Writes the same as PDF. False where the page has nothing for paper or the file could not be written.
bool save_pdf(const Page& page, const QString& path);

}  // namespace skeinproof
