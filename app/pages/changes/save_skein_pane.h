// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/document/latest_job.h"
#include "app/pages/changes/answer_pane.h"
#include "core/need/save_skein.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// How one colour could do with a skein less, the cheapest way first.
class SaveSkeinPane : public AnswerPane {
  Q_OBJECT

 public:
  explicit SaveSkeinPane(QWidget* parent = nullptr);

  bool is_busy() const override { return job_.is_busy(); }
  const Expected<SaveSkein>& shown() const { return shown_; }
  std::optional<Table> printed() const;

 protected:
  void ask() override;
  void put_on_bench(std::size_t row) override;

 private:
  void take(Expected<SaveSkein> result);

  Expected<SaveSkein> shown_;
  LatestJob<Expected<SaveSkein>> job_;
};

}  // namespace skeinproof
