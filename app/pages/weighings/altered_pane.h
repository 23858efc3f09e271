// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPushButton>
#include <QWidget>

#include "app/document/open_pattern.h"
#include "core/pattern/bench_change.h"

namespace skeinproof {

class ChangeForm;
class PaneHeader;
class PartTable;

// What the knitter of a weighed sample made otherwise than the pattern says: it is taken off before the
// sample speaks of the pattern.
class AlteredPane : public QWidget {
  Q_OBJECT

 public:
  explicit AlteredPane(OpenPattern& open, QWidget* parent = nullptr);

  void show_weighing(WeighingId id);
  PartTable* list() const { return list_; }
  ChangeForm* form() const { return form_; }
  void add(ChangeKind kind);

 private:
  const Weighing* weighing(const Pattern& pattern) const;
  void show_kinds();
  void refresh();

  OpenPattern& open_;
  WeighingId id_;
  PaneHeader* head_;
  QPushButton* add_;
  PartTable* list_;
  ChangeForm* form_;
};

}  // namespace skeinproof
