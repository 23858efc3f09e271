// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QHeaderView>

#include "app/widgets/ink.h"

class QPainter;

namespace skeinproof {

// What a head needs to be drawn, so that paper draws the same one.
struct SizeHead {
  QString size;     // "(5"
  QString measure;  // "120 cm"
  bool opens_group = false;
  bool chosen = false;
};
struct RoleHead {
  QString label, shade, put_up;
  QColor chip;  // invalid: no lightness known
  bool has_chip = true;
  bool chosen = false;
};
void paint_size_head(QPainter& painter, const QRectF& rect, const SizeHead& head, const Ink& ink,
                     const Type& type, double unit);
void paint_role_head(QPainter& painter, const QRectF& rect, const RoleHead& head, const Ink& ink,
                     const Type& type, double unit);
SizeHead size_head_at(const QAbstractItemModel& model, int column);
RoleHead role_head_at(const QAbstractItemModel& model, int row);
double role_head_width(const QAbstractItemModel& model, const Type& type, double unit);
double size_head_height(double unit);

// The heads of the quantities grid: the size with its brackets over what it measures; the role with its chip,
// shade and put-up. The current column and row are tinted.
class NeedHeader : public QHeaderView {
  Q_OBJECT

 public:
  NeedHeader(Qt::Orientation orientation, QWidget* parent);
  void setModel(QAbstractItemModel* model) override;

 protected:
  void paintSection(QPainter* painter, const QRect& rect, int section) const override;
  QSize sectionSizeFromContents(int section) const override;
  void changeEvent(QEvent* event) override;

 private:
  Ink ink_;
  Type type_;
  double unit_ = 1;
  void re_ink();
};

}  // namespace skeinproof
