// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QTableView>
#include <vector>

#include "app/pages/changes/effect_model.h"

namespace skeinproof {

// What the changes do: a colour a row, lengths and skeins before and after, the last skein as a bar. Ctrl+C
// copies the table as text.
class EffectTable : public QTableView {
  Q_OBJECT

 public:
  explicit EffectTable(QWidget* parent = nullptr);
  EffectModel* effect() const { return model_; }
  void show_rows(std::vector<EffectRow> rows, const QString& unit);
  QString as_text() const;
  // As high as its rows.
  int whole_height() const;

 signals:
  void width_changed();  // its height may follow

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void dress();
  void share_height();
  void share_width();

  EffectModel* model_;
};

}  // namespace skeinproof
