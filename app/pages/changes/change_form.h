// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <functional>
#include <vector>

#include "app/widgets/part_form.h"
#include "core/pattern/bench_change.h"

class QButtonGroup;
class QGridLayout;
class QLabel;

namespace skeinproof {

class QuietLabel;

// On the bench, or in a weighing as what was knitted otherwise.
const BenchChange* find_change(const Pattern& pattern, ChangeId id);

// What one change on the bench says: only the fields that its kind needs, and above them why it cannot be
// made.
class ChangeForm : public QWidget {
  Q_OBJECT

 public:
  explicit ChangeForm(OpenPattern& open, QWidget* parent = nullptr);

  void show_change(ChangeId id);
  ChangeId change() const { return id_; }
  // Why the change cannot be made; empty where it can.
  void show_problem(const QString& words);
  QString problem() const;
  // Where typing starts: the first field behind the kind.
  void enter();

  // The fields that are shown now, with the words before them.
  std::vector<std::pair<QString, QWidget*>> shown_fields() const;
  QWidget* field(const char* name) const;

 private:
  using Shown = std::function<bool(const Pattern&, const BenchChange&)>;
  struct Row {
    const char* name;
    QLabel* label;
    QWidget* field;
    Shown shown;
  };

  void add(const char* name, const QString& words, QWidget* field, Shown shown);
  void add_part_fields();
  void add_figure_fields();
  void add_size_fields();
  QWidget* make_piece();
  QWidget* make_counts_question();
  QWidget* make_copies();
  QWidget* make_given_part();
  void show_hint();
  void refresh(bool other = false);

  OpenPattern& open_;
  ChangeId id_;
  PartForm<BenchChange> form_;
  QGridLayout* grid_;
  std::vector<Row> rows_;
  QLabel* problem_;
  QuietLabel* hint_;
  QButtonGroup* counts_ = nullptr;
};

}  // namespace skeinproof
