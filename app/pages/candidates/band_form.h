// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFrame>
#include <vector>

#include "app/document/open_pattern.h"
#include "app/widgets/bound_fields.h"

class QLabel;

namespace skeinproof {

class FlowLayout;
class LineField;

// What a ball band says, copied line by line, as a new candidate: Enter goes on to the next line and adds it
// behind the last one. The document does not change until then; then it is one step of undo. What is wrong
// with a line stands under it; what is wrong with the whole stands below and holds nobody up.
class BandForm : public QFrame {
  Q_OBJECT

 public:
  explicit BandForm(OpenPattern& open, QWidget* parent = nullptr);

  void begin();  // empty, shown, the name being typed
  bool add();    // false where a line cannot be read or there is no name
  void leave();

  LineField* line(const char* name) const;
  ChoiceField* role() const { return role_; }
  QString problem() const;

 signals:
  void added(CandidateId id);
  void left(bool had_focus);
  void says(const QString& message);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void changeEvent(QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  // Reads a line into the yarn; the reason why not, or nothing.
  using Read = QString (*)(const QString& line, Yarn& yarn, const ReaderStyle& reader);
  struct Line {
    const char* name;
    LineField* field;
  };

  void add_line(const char* name, const QString& words, const QString& example, double width, Read read);
  QWidget* boxed(const QString& words, QWidget* field, double width);
  void show_problem();
  void dress();

  OpenPattern& open_;
  Yarn draft_;
  FlowLayout* flow_;
  std::vector<Line> lines_;
  std::vector<std::pair<QWidget*, double>> widths_;
  ChoiceField* role_;
  LineField* strands_ = nullptr;
  QLabel* problem_;
  int strand_count_ = 1;
};

// A yarn as a new candidate: for every colour, or for one where a role is named.
CandidateId add_candidate_yarn(Pattern& pattern, Yarn yarn, RoleId role, int strands);

}  // namespace skeinproof
