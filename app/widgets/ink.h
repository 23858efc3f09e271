// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QColor>
#include <QFont>
#include <QPalette>

class QWidget;

namespace skeinproof {

// The colours of the window by what they are for, mixed from the platform's palette until the contrast each
// needs holds. On paper everything is black on white and fills are hatched.
struct Ink {
  QColor window, base, header, text, muted, edge, rule, fill, band, highlight, highlighted_text, focus, tint;
  bool dark = false;
  bool paper = false;
};

Ink ink_of(const QPalette& palette);
Ink paper_ink();

// The WCAG 2.1 contrast ratio of two opaque colours, 1 to 21.
double contrast_ratio(const QColor& a, const QColor& b);

// The fonts of the window, all from the platform's own font; sizes follow it (and so the reader's text size).
struct Type {
  QFont body, small, role_name, count, answer, title, words;  // words: serif, the designer's own
};
Type type_of(const QFont& platform);

// A distance drawn for a 13 px platform font, at the font in force.
int scaled(const QWidget* widget, double pixels);

// The colour of a shade from CIE L*, a*, b* (a, b 0 where unknown), and the letter colour that stands on it.
QColor shade_colour(double lightness, double a, double b);
QColor letter_on(const QColor& square);

}  // namespace skeinproof
