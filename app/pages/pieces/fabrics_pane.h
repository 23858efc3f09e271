// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

#include "app/widgets/part_form.h"
#include "core/pattern/pattern.h"

class QGridLayout;

namespace skeinproof {

class FigureList;
class PaneHeader;
class PartTable;

// The fabrics of the pattern: gauge, loop length and swatch, and what follows from them.
class FabricsPane : public QWidget {
  Q_OBJECT

 public:
  explicit FabricsPane(OpenPattern& open, QWidget* parent = nullptr);

  bool show_fabric(FabricId fabric);
  FabricId fabric_id() const { return id_; }
  PartTable* table() const { return table_; }
  FigureList* figures() const { return figures_; }
  void enter();

 signals:
  void says(const QString& message);
  void fabric_chosen(std::uint32_t fabric);

 private:
  void make_table();
  QWidget* make_form();
  void lay_out_gauge(QGridLayout& grid);
  void lay_out_swatch(QGridLayout& grid);
  void refresh(bool other = false);

  OpenPattern& open_;
  FabricId id_;
  PartForm<Fabric> form_;
  PaneHeader* form_head_;
  PartTable* table_ = nullptr;
  FigureList* figures_;
  QWidget* form_body_ = nullptr;
  QWidget* typed_row_ = nullptr;
  QWidget* swatch_box_ = nullptr;
};

}  // namespace skeinproof
