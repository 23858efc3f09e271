// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <string>
#include <vector>

#include "app/document/reader_style.h"
#include "core/base/error.h"
#include "core/pattern/pattern.h"

class QDialogButtonBox;
class QPlainTextEdit;
class QTableWidget;
class QLabel;

namespace skeinproof {

class OpenPattern;

// A list of stitch counts as people keep it: a line a section with its name and one value a size,
// tab-separated cells of a spreadsheet or "plain rounds 4032 (5040, 7128) …". A line without figures names
// the piece of the lines below it.
struct PastedSection {
  std::string piece;  // empty where no line named one
  std::string name;
  PerSize<Entered<double>> stitches;
};
// Fails with the line and what was expected there: a count other than the sizes', a text that is no number.
Expected<std::vector<PastedSection>> read_section_list(std::string_view text, const Pattern& pattern);

// Adds the sections with typed stitches. A piece or section of the same name is filled rather than added
// again; lines without a piece go into `piece`, or a new one where it is none.
void take_section_list(Pattern& pattern, const std::vector<PastedSection>& list, PieceId piece);

// Shows what a pasted list is understood as before it is taken.
class PasteListDialog : public QDialog {
  Q_OBJECT

 public:
  PasteListDialog(OpenPattern& open, const QString& text, QWidget* parent);
  QPlainTextEdit* text() const { return text_; }
  QString message() const;
  const std::vector<PastedSection>& list() const { return list_; }

 private:
  void read();

  OpenPattern& open_;
  QPlainTextEdit* text_;
  QTableWidget* preview_;
  QLabel* message_;
  QDialogButtonBox* buttons_;
  std::vector<PastedSection> list_;
};

}  // namespace skeinproof
