// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

#include "app/document/open_pattern.h"

class QSplitter;

namespace skeinproof {

class PaneHeader;
class PartTable;
class YarnForm;

// What the candidates are made of: the yarn of every colour or of one, strands, a second yarn held with it;
// and what the band of that yarn says, with the other put-ups in which it is sold.
class CandidatePane : public QWidget {
  Q_OBJECT

 public:
  explicit CandidatePane(OpenPattern& open, QWidget* parent = nullptr);

  bool show_candidate(CandidateId id);  // false where there is none
  CandidateId candidate() const;
  PartTable* list() const { return list_; }
  PartTable* yarns() const { return yarns_; }
  PartTable* put_ups() const { return put_ups_; }
  YarnForm* form() const { return form_; }

 signals:
  void says(const QString& message);

 private:
  QWidget* make_list_pane();
  QWidget* make_yarns_pane();
  QWidget* make_band_pane();
  void refresh();
  YarnId chosen_yarn() const;

  OpenPattern& open_;
  PartTable* list_ = nullptr;
  PartTable* yarns_ = nullptr;
  PartTable* put_ups_ = nullptr;
  YarnForm* form_ = nullptr;
  PaneHeader* yarns_head_ = nullptr;
  PaneHeader* band_head_ = nullptr;
};

// "Brindlecote Smooth": its own name, else that of its first yarn.
QString candidate_name(const Pattern& pattern, const Candidate& candidate);

}  // namespace skeinproof
