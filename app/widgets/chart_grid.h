// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <optional>

#include "app/widgets/chart_inks.h"
#include "core/base/error.h"
#include "core/fabric/chart_edits.h"

class QScrollBar;

namespace skeinproof {

class ChartMargin;
class ChartSquares;
class OpenPattern;

// One chart of the open pattern, edited by keyboard and mouse; every stroke, fill or paste is one step of
// undo.
//
// Round 1 is at the bottom and stitch 1 at the right. A letter paints the square of the cursor and moves on
// to the right, then to the round above; with several squares selected it fills them. '-', Delete and
// Backspace make no stitch, R (where it is no colour) or Ctrl+R repeats the selection over its rounds. The
// mouse paints with the brush, and selects without one.
class ChartGrid : public QWidget {
  Q_OBJECT

 public:
  explicit ChartGrid(OpenPattern& open, QWidget* parent = nullptr);

  // Nothing (id 0) shows an empty grid.
  void show_chart(ChartId chart);
  ChartId chart_id() const { return id_; }
  // The chart as it is on the screen, a stroke that is being drawn included; null where there is none.
  const Chart* chart() const;
  const ChartCensus& census() const { return census_; }

  void set_look(ChartLook look);
  ChartLook look() const { return look_; }
  // Height of a square as a share of its width, as a stitch of the gauge.
  void set_stitch_shape(double height_to_width);
  void set_brush(std::optional<char> brush);

  std::size_t current_round() const;
  ChartSquares* squares() const { return squares_; }
  ChartMargin* counts() const { return counts_; }

  // The edits of the menu, each one step of undo. Rounds and stitches are those of the selection's cursor.
  void paint(char symbol);
  void repeat_selection();
  void insert_round(bool above);
  void insert_stitch(bool at_left);
  void delete_rounds();           // all of the selection
  void delete_stitches();         // all of the selection
  QString selected_text() const;  // letters as drawn, the upper round first
  void copy() const;
  void paste(const QString& text);  // its last line on the cursor's round, going right and up

 signals:
  void current_round_changed(std::size_t round);
  void edited();  // the squares on the screen changed, also during a stroke
  void says(const QString& message);

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  void follow();
  void dress();
  void lay_out();
  int head_height() const;
  bool commit(const QString& label, const Expected<Chart>& edited_chart);
  void move_on(Square from);
  void show_squares(const Chart& chart);
  void touch(Square from, Square to);
  void end_stroke();

  OpenPattern& open_;
  ChartSquares* squares_;
  ChartMargin* numbers_;
  ChartMargin* counts_;
  QScrollBar* scroll_;
  ChartId id_;
  ChartLook look_ = ChartLook::colour;
  double shape_ = 14.0 / 16.0;
  std::optional<Chart> stroke_;
  ChartCensus census_;
  std::optional<Chart> shown_;
};

}  // namespace skeinproof
