// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <functional>
#include <optional>

#include "app/widgets/chart_inks.h"
#include "core/base/error.h"
#include "core/pattern/pattern.h"

class QButtonGroup;
class QHBoxLayout;
class QMenu;
class QStackedLayout;
class QToolButton;

namespace skeinproof {

class ChartGrid;
class ChartImport;
class ChoiceField;
class OpenPattern;

// The middle of the page: the charts of the pattern, the squares of the chosen one, and its palette.
class ChartPane : public QWidget {
  Q_OBJECT

 public:
  explicit ChartPane(OpenPattern& open, QWidget* parent = nullptr);

  ChartGrid* grid() const { return grid_; }
  ChartId chart_id() const;
  // False where there is no such chart.
  bool show_chart(ChartId chart);
  // The fabric whose stitch gives the squares their shape.
  void set_fabric(FabricId fabric);
  QMenu* menu() const { return menu_; }
  void set_look(ChartLook look);

  // The edits of the menu that ask nothing more.
  void add_chart(const QString& name, int width, int rounds);
  void rename_chart(const QString& name);
  void duplicate_chart();
  void delete_chart();
  // Reads a picture or a text file by its content and asks how; null, with the reason said, where it cannot
  // be read.
  ChartImport* import_file(const QString& path);
  ChartImport* import_text(const QString& text);

 signals:
  void chart_chosen(std::uint32_t chart);
  void says(const QString& message);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void make_menu();
  void make_empty();
  void ask_picture();
  void follow();
  void fill_palette();
  void choose_brush(std::optional<char> brush);
  QString free_name() const;
  void ask_new_chart();
  void ask_name();
  void ask_file(const QString& title, const QString& filter);
  void ask_colours();
  void edit_chart(const QString& label, const std::function<Expected<Chart>(Chart)>& change);
  void take_import(ChartImport* import);

  OpenPattern& open_;
  ChoiceField* charts_;
  QButtonGroup* looks_;
  QToolButton* more_;
  QMenu* menu_;
  ChartGrid* grid_;
  QWidget* body_;
  QWidget* empty_;
  QStackedLayout* stack_;
  QHBoxLayout* palette_row_;
  QButtonGroup* brushes_;
  ChartId id_;
  FabricId fabric_;
  QString palette_shape_;
};

}  // namespace skeinproof
