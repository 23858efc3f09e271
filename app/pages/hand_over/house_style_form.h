// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

#include "app/widgets/part_form.h"
#include "core/pattern/house_style.h"

class QFormLayout;

namespace skeinproof {

class LineField;

// Every choice of the house style in force, in groups. Each edit is a step of undo.
class HouseStyleForm : public QWidget {
  Q_OBJECT

 public:
  explicit HouseStyleForm(OpenPattern& open, QWidget* parent = nullptr);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  QFormLayout* group(const QString& title);
  void make_order();
  void make_figures();
  void make_lists();
  void make_names();
  void make_notes();
  void make_counting();
  template <class E, class Where>
  void add_choice(QFormLayout* form, const QString& words, const QString& undo_name, Where where);
  template <class Where>
  void add_words(QFormLayout* form, const QString& words, const QString& undo_name, Where where);
  template <class Where>
  void add_check(QFormLayout* form, const QString& words, const QString& undo_name, Where where);
  // `scale` turns the stored number into the one shown: 100 for a share shown in percent.
  template <class Where>
  void add_number(QFormLayout* form, const QString& words, const QString& undo_name, QuantityFormat format,
                  double scale, Where where);
  // A list of words in order, such as "yarn, roles, total".
  template <class E, class Where>
  void add_order(QFormLayout* form, const QString& words, const QString& undo_name, Where where);

  OpenPattern& open_;
  PartForm<HouseStyle> form_;
};

}  // namespace skeinproof
