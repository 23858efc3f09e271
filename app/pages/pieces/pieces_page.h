// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/pages/finder.h"
#include "app/pages/page.h"

class QButtonGroup;
class QLabel;
class QMenu;
class QSplitter;
class QStackedWidget;
class QTabWidget;
class QTreeView;

namespace skeinproof {

class CensusPane;
class ChartPane;
class FabricsPane;
class PartPane;
class PasteListDialog;
class PieceTreeModel;

// The pieces with their sections and edges, the fabrics, and the charts with what they say.
class PiecesPage : public Page {
  Q_OBJECT

 public:
  PiecesPage(OpenPattern& open, QWidget* parent);
  ~PiecesPage() override { take_down(); }

  void enter() override;
  // A piece, section, edge, fabric or chart.
  bool go_to(std::uint32_t part) override;
  bool find_next(const QString& words) override;
  std::optional<Sheet> sheet() const override;

  QTreeView* tree() const { return tree_; }
  PartPane* part_pane() const { return part_pane_; }
  FabricsPane* fabrics() const { return fabrics_; }
  ChartPane* charts() const { return charts_; }
  CensusPane* census() const { return census_; }
  std::uint32_t current_part() const;
  bool choose_part(std::uint32_t part);
  void show_fabrics(bool fabrics);

  void add_piece();
  void add_section();
  void add_edge();
  void duplicate_part();
  void delete_part();
  void move_part(int by);
  PasteListDialog* paste_list(const QString& text);

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QWidget* make_left();
  QWidget* make_bar();
  void make_tree();
  void make_menu();
  void follow();
  void choose_first();
  void part_chosen();
  void show_chart_facts();
  void arrange();
  void fit_columns();
  void add_to_piece(const QString& label, bool edge);
  void edit_name(std::uint32_t part);
  std::vector<FindPlace> places();

  PieceTreeModel* model_;
  QTreeView* tree_;
  QButtonGroup* views_;
  QMenu* menu_;
  QStackedWidget* left_;
  QLabel* empty_;
  PartPane* part_pane_;
  FabricsPane* fabrics_;
  ChartPane* charts_;
  CensusPane* census_;
  QSplitter* splitter_;
  QTabWidget* tabs_;
  std::uint32_t part_ = 0;
  std::vector<std::uint32_t> closed_;  // pieces shown without what they are made of
  Finder finder_;
};

}  // namespace skeinproof
