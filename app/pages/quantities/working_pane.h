// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <optional>

#include "app/document/reader_style.h"
#include "core/need/assessment.h"

class QBoxLayout;
class QLabel;
class QPushButton;

namespace skeinproof {

class PaneHeader;
class QuietLabel;
class WorkingModel;
class WorkingView;

// The working of the chosen figure: the answer, its range, the steps down to the ground, and the details of
// the chosen step with a way to where it can be seen or changed.
class WorkingPane : public QWidget {
  Q_OBJECT

 public:
  explicit WorkingPane(QWidget* parent = nullptr);

  struct Answer {
    QString title;   // "Working of MC Peat 08, size 5, planned"
    QString answer;  // "7 skeins"
    QString beside;  // "1,203 m of 1,225; 22 m left over"
    QString range;   // "9 in 10: 1,170 to 1,235 m"
  };
  // Keeps the chosen step where the new working has it at the same place.
  void show_working(const Answer& answer, Step step, const ReaderStyle& reader);
  // There is no figure: the title and the reason instead.
  void show_nothing(const QString& title, const QString& reason);
  void copy() const;

  WorkingView* view() const { return view_; }
  WorkingModel* steps() const { return model_; }
  QString answer_text() const;
  // Low enough for any window: what does not fit then is left out or scrolls.
  QSize minimumSizeHint() const override;

 signals:
  void wants_place(const QString& page, std::uint32_t part);
  void says(const QString& message) const;

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void dress();
  void show_details();

  WorkingModel* model_;
  WorkingView* view_;
  QuietLabel* title_;
  QBoxLayout* answer_row_;
  QLabel* answer_;
  QLabel* beside_;
  QuietLabel* range_;
  PaneHeader* details_head_;
  QLabel* details_;
  QuietLabel* source_;
  QPushButton* go_;
  QPushButton* copy_;
};

}  // namespace skeinproof
