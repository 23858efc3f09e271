// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QWidget>
#include <cstdint>
#include <optional>
#include <vector>

#include "app/print/paper_block.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

class OpenPattern;

// A page of the side list. It shows the open pattern and edits it through OpenPattern::apply; it follows
// `OpenPattern::changed` itself.
class Page : public QWidget {
  Q_OBJECT

 public:
  Page(OpenPattern& open, QWidget* parent) : QWidget(parent), open_(open) {}
  ~Page() override { take_down(); }

  // The word beside the page's name in the side list; empty when nothing needs attention.
  virtual QString attention() const { return {}; }
  // Puts the focus where work starts.
  virtual void enter() { setFocus(); }
  // Shows the part with this id (see StepPlace); false where the page has no such part.
  virtual bool go_to(std::uint32_t part) {
    (void)part;
    return false;
  }
  // Finds the next text after the present place, from the top when at the end; false where there is none.
  virtual bool find_next(const QString& words) {
    (void)words;
    return false;
  }
  // What Ctrl+P prints and Ctrl+Shift+P writes as PDF for this page.
  virtual std::optional<Sheet> sheet() const { return std::nullopt; }
  // The pictures of its own (grid, charts) that stand on paper `width` points wide: behind the words and
  // tables of the sheet, or before them.
  virtual std::vector<PaperBlock> paper_blocks(double width) const {
    (void)width;
    return {};
  }
  virtual PicturesStand pictures_stand() const { return PicturesStand::behind_the_words; }
  // Its sheet was printed or written to a file.
  virtual void sheet_went_out() {}
  // A file that was dropped on the window while the page is shown; false where the page has no use for it.
  virtual bool take_file(const QString& path) {
    (void)path;
    return false;
  }

 signals:
  void attention_changed();
  void wants_place(const QString& page, std::uint32_t part);  // ask the window to go to another page
  void wants_command(const QString& id);  // ask the window to do a row of its command table
  void says(const QString& message);      // a word for the status bar

 protected:
  // Deletes what stands on the page. A page whose tables ask it for rows calls this from its own destructor:
  // a table that goes may still ask.
  void take_down() { qDeleteAll(findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly)); }

  OpenPattern& open_;
};

}  // namespace skeinproof
