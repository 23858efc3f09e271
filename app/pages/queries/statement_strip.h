// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <memory>
#include <optional>

#include "app/pages/queries/review_desk.h"

class QTableWidget;

namespace skeinproof {

class PaneHeader;
struct StatementAlong;

// The statement under the cursor, laid along the sizes: as submitted, as read, in force, as proposed. What
// differs from the row above is heavy.
class StatementStrip : public QWidget {
  Q_OBJECT

 public:
  explicit StatementStrip(QWidget* parent = nullptr);

  void show_statement(const std::shared_ptr<const Reviewed>& reviewed, std::optional<std::size_t> statement);
  QTableWidget* table() const { return table_; }
  QString title() const;

 protected:
  void changeEvent(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void fill(const StatementAlong& along);
  void fit();

  std::shared_ptr<const Reviewed> reviewed_;
  std::optional<std::size_t> statement_;
  PaneHeader* head_;
  QTableWidget* table_;
};

}  // namespace skeinproof
