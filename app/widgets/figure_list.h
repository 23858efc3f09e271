// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QWidget>
#include <vector>

class QListView;

namespace skeinproof {

class FigureListModel;
class QuietLabel;

// One figure that was worked out or looked up.
struct FigureRow {
  QString name;    // "Thickness in the cloth"
  QString figure;  // "0.93 mm"
  QString how;     // quiet second line: how it follows, or what it means
  QString source;  // shown below the list while the row is chosen
  bool strong = false;
  bool heading = false;  // a name over the rows that follow; nothing else is shown
};

// Figures under each other: the name left, the figure right, how it comes about below in quiet ink; under the
// list the whole of the chosen row with its source. Ctrl+C copies the list as text.
class FigureList : public QWidget {
  Q_OBJECT

 public:
  explicit FigureList(QWidget* parent = nullptr);

  // The sentence that stands where there is nothing to show.
  void set_empty_words(const QString& words);
  void set_rows(std::vector<FigureRow> rows);
  const std::vector<FigureRow>& rows() const;
  QString as_text() const;
  QListView* view() const { return view_; }
  // The whole of the chosen row, as it stands below the list.
  QString chosen_words() const;

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void show_chosen();

  FigureListModel* model_;
  QListView* view_;
  QuietLabel* empty_;
  QWidget* foot_;
  QuietLabel* chosen_;
};

}  // namespace skeinproof
