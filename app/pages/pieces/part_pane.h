// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

#include "app/widgets/part_form.h"
#include "core/pattern/pattern.h"

class QGridLayout;
class QLabel;
class QPushButton;
class QStackedWidget;

namespace skeinproof {

class LineField;
class PaneHeader;
class SizeGrid;

// The chosen piece, section or edge: its choices, its values for every size, and how it meets its neighbours.
class PartPane : public QWidget {
  Q_OBJECT

 public:
  explicit PartPane(OpenPattern& open, QWidget* parent = nullptr);

  void show_part(std::uint32_t part);
  std::uint32_t part() const { return part_; }
  SizeGrid* grid() const { return grid_; }
  LineField* stripes() const { return stripes_; }
  // "Size 5: 38 repeats × 12 = 456 stitches in …" and what is missing, as shown under the grid.
  QString lines() const;
  void add_run();
  void remove_run();
  void set_colouring(std::uint32_t choice);  // a role's id, or `stripes_choice`
  static constexpr std::uint32_t stripes_choice = 0xffffffff;

 signals:
  void says(const QString& message);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void make_piece_form();
  void make_section_form();
  void make_edge_form();
  void lay_out_stripes(QGridLayout& grid);
  void refresh(bool other = false);
  void show_section(const Section& section);
  void show_head();

  OpenPattern& open_;
  std::uint32_t part_ = 0;
  QString shape_;
  PartForm<Piece> piece_form_;
  PartForm<Section> section_form_;
  PartForm<Edge> edge_form_;
  PaneHeader* head_;
  QStackedWidget* forms_;
  QWidget* piece_body_ = nullptr;
  QWidget* section_body_ = nullptr;
  QWidget* edge_body_ = nullptr;
  QLabel* chart_label_ = nullptr;
  ChoiceField* chart_ = nullptr;
  QLabel* colour_label_ = nullptr;
  ChoiceField* colour_ = nullptr;
  LineField* stripes_ = nullptr;
  ChoiceField* stripe_change_ = nullptr;
  QPushButton* add_run_ = nullptr;
  QPushButton* remove_run_ = nullptr;
  QLabel* rate_label_ = nullptr;
  QuantityField* rate_ = nullptr;
  SizeGrid* grid_;
  PaneHeader* joins_head_;
  QLabel* lines_;
};

}  // namespace skeinproof
