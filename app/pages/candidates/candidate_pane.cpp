// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/candidate_pane.h"

#include <QCoreApplication>
#include <QItemSelectionModel>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>
#include <limits>

#include "app/pages/candidates/put_up_table.h"
#include "app/pages/yarns/yarn_form.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"
#include "core/pattern/edits.h"

namespace skeinproof {
namespace {

constexpr std::uint32_t new_yarn = std::numeric_limits<std::uint32_t>::max();
constexpr int most_strands = 12;

struct Words {
  Q_DECLARE_TR_FUNCTIONS(CandidatePane)
};

QString yarn_name(const Pattern& pattern, YarnId id) {
  const Yarn* yarn = pattern.yarn(id);
  return yarn == nullptr      ? QStringLiteral("–")
         : yarn->name.empty() ? Words::tr("a yarn without a name")
                              : QString::fromStdString(yarn->name);
}

std::vector<Choice> yarn_choices(const Pattern& pattern) {
  std::vector<Choice> choices;
  for (const Yarn& yarn : pattern.yarns) choices.push_back({yarn_name(pattern, yarn.id), yarn.id.value});
  choices.push_back({Words::tr("a new yarn"), new_yarn});
  return choices;
}

// Sets a yarn, or makes one where a new one is asked for.
template <class Where>
PartColumn yarn_column(const QString& head, const QString& undo_name, bool may_be_none, Where where) {
  PartColumn column =
      choice_column(head, undo_name, where, [may_be_none](const Pattern& pattern, std::size_t) {
        auto choices = yarn_choices(pattern);
        if (may_be_none) choices.insert(choices.begin(), {Words::tr("nothing"), 0});
        return choices;
      });
  column.choose = [where](Pattern& pattern, std::size_t row, std::uint32_t value) {
    const YarnId yarn = value == new_yarn ? add_yarn(pattern, {}) : YarnId{value};
    where(pattern, row) = yarn;
  };
  return column;
}

PartList candidate_list() {
  PartList list = part_list(Words::tr("candidate"), Words::tr("add a candidate"), &Pattern::candidates);
  list.name = [](const Pattern& pattern, std::size_t row) {
    return candidate_name(pattern, pattern.candidates[row]);
  };
  list.append = [](Pattern& pattern) { add_candidate(pattern, add_yarn(pattern, {})); };
  list.erase = [](Pattern& pattern, std::size_t row) {
    erase_candidate(pattern, pattern.candidates[row].id);
  };
  list.duplicate = [](Pattern& pattern, std::size_t row) {
    Candidate copy = pattern.candidates[row];
    copy.id = take_id<CandidateId>(pattern);
    copy.name = Words::tr("%1 (copy)").arg(candidate_name(pattern, copy)).toStdString();
    pattern.candidates.insert(pattern.candidates.begin() + static_cast<std::ptrdiff_t>(row) + 1,
                              std::move(copy));
  };
  list.move = [](Pattern& pattern, std::size_t from, std::size_t to) {
    move_part(pattern.candidates, from, to);
  };
  return list;
}

// A candidate of one nameless yarn is named by naming the yarn.
PartColumn name_column() {
  PartColumn column;
  column.head = Words::tr("Candidate");
  column.undo_name = Words::tr("name of candidate");
  column.stretch = 1;
  column.text = [](const Pattern& pattern, std::size_t row) {
    return candidate_name(pattern, pattern.candidates[row]);
  };
  column.read = [](const QString& typed, std::size_t) -> Expected<RowEdit> {
    return [name = typed.trimmed().toStdString()](Pattern& pattern, std::size_t row) {
      Candidate& candidate = pattern.candidates[row];
      const YarnId id = candidate.yarns.empty() ? YarnId{} : candidate.yarns.front().yarn;
      const auto yarn = std::find_if(pattern.yarns.begin(), pattern.yarns.end(),
                                     [&](const Yarn& each) { return each.id == id; });
      if (candidate.name.empty() && yarn != pattern.yarns.end() && yarn->name.empty())
        yarn->name = name;
      else
        candidate.name = name;
    };
  };
  return column;
}

}  // namespace

QString candidate_name(const Pattern& pattern, const Candidate& candidate) {
  if (!candidate.name.empty()) return QString::fromStdString(candidate.name);
  const Yarn* yarn = candidate.yarns.empty() ? nullptr : pattern.yarn(candidate.yarns.front().yarn);
  return yarn == nullptr || yarn->name.empty() ? Words::tr("a candidate without a name")
                                               : QString::fromStdString(yarn->name);
}

CandidatePane::CandidatePane(OpenPattern& open, QWidget* parent) : QWidget(parent), open_(open) {
  auto* left = new QSplitter(Qt::Vertical);
  left->addWidget(make_list_pane());
  left->addWidget(make_yarns_pane());
  left->setStretchFactor(1, 1);
  left->setSizes({scaled(this, 220), scaled(this, 260)});
  auto* whole = new QSplitter(Qt::Horizontal);
  whole->addWidget(left);
  whole->addWidget(make_band_pane());
  whole->setStretchFactor(1, 1);
  whole->setSizes({scaled(this, 560), scaled(this, 660)});
  for (QSplitter* splitter : {left, whole}) splitter->setChildrenCollapsible(false);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(whole);
  setFocusProxy(list_);
  for (PartTable* table : {list_, yarns_, put_ups_})
    connect(table, &PartTable::says, this, &CandidatePane::says);
  connect(form_, &YarnForm::says, this, &CandidatePane::says);
  connect(list_, &PartTable::current_part_changed, this, [this] {
    yarns_->refresh(true);
    refresh();
  });
  connect(yarns_->selectionModel(), &QItemSelectionModel::currentChanged, this, &CandidatePane::refresh);
  connect(&open_, &OpenPattern::changed, this, &CandidatePane::refresh);
  connect(&open_, &OpenPattern::replaced, this, [this] {
    list_->refresh(true);
    yarns_->refresh(true);
    refresh();
  });
  list_->refresh(true);
  yarns_->refresh(true);
  refresh();
}

CandidateId CandidatePane::candidate() const { return CandidateId{list_->current_key()}; }

bool CandidatePane::show_candidate(CandidateId id) { return id && list_->set_current_key(id.value); }

QWidget* CandidatePane::make_list_pane() {
  PartColumn shown = tick_column(
      tr("Shown"), tr("show candidate"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.candidates[row].shown; });
  shown.tip = tr("A column beside the pattern’s own yarn");
  PartColumn washed = tick_column(
      tr("Swatch washed"), tr("washed swatch"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.candidates[row].washed_swatch; });
  washed.tip = tr("A swatch was knitted and washed as the item will be");
  PartColumn note = text_column(
      tr("Note"), tr("note on candidate"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.candidates[row].note; });
  note.stretch = 1;
  list_ = new PartTable(open_, candidate_list(), {name_column(), shown, washed, note});
  list_->setAccessibleName(tr("Candidates"));
  auto* head = new PaneHeader(tr("Candidates"));
  head->add_button(
      tr("Duplicate"), [this] { list_->duplicate(); }, tr("Add a copy of the chosen candidate"));
  head->add_button(
      tr("Delete"), [this] { list_->erase(); }, tr("Delete the chosen candidate (Ctrl+Del)"));
  return make_pane(head, list_);
}

QWidget* CandidatePane::make_yarns_pane() {
  const auto row_of = [this](auto& pattern, std::size_t row) -> auto& {
    using Row = std::conditional_t<std::is_const_v<std::remove_reference_t<decltype(pattern)>>,
                                   const CandidateYarn, CandidateYarn>;
    auto* found = const_cast<Candidate*>(std::as_const(pattern).candidate(candidate()));
    return static_cast<Row&>(found->yarns[row]);
  };
  PartList list;
  list.part = tr("yarn of the candidate");
  list.add_hint = tr("add a yarn for one colour");
  list.count = [this](const Pattern& pattern) {
    const Candidate* found = pattern.candidate(candidate());
    return found != nullptr ? found->yarns.size() : 0;
  };
  list.key = [](const Pattern&, std::size_t row) { return static_cast<std::uint32_t>(row + 1); };
  list.name = [row_of](const Pattern& pattern, std::size_t row) {
    return yarn_name(pattern, row_of(pattern, row).yarn);
  };
  list.append = [this](Pattern& pattern) {
    auto* found = const_cast<Candidate*>(std::as_const(pattern).candidate(candidate()));
    if (found == nullptr) return;
    CandidateYarn row = found->yarns.empty() ? CandidateYarn() : found->yarns.back();
    // For the first colour that has no yarn of its own yet.
    for (const Role& role : pattern.roles)
      if (std::none_of(found->yarns.begin(), found->yarns.end(),
                       [&](const CandidateYarn& each) { return each.role == role.id; })) {
        row.role = role.id;
        break;
      }
    if (!row.yarn && !pattern.yarns.empty()) row.yarn = pattern.yarns.front().id;
    found->yarns.push_back(row);
  };
  list.erase = [this](Pattern& pattern, std::size_t row) {
    auto* found = const_cast<Candidate*>(std::as_const(pattern).candidate(candidate()));
    found->yarns.erase(found->yarns.begin() + static_cast<std::ptrdiff_t>(row));
  };
  PartColumn role = choice_column(
      tr("In place of"), tr("colour of the candidate"),
      [row_of](auto& pattern, std::size_t row) -> auto& { return row_of(pattern, row).role; },
      [](const Pattern& pattern, std::size_t) {
        std::vector<Choice> choices = {{tr("every other colour"), 0}};
        for (const Role& each : pattern.roles)
          choices.push_back({QString::fromStdString(each.label), each.id.value});
        return choices;
      });
  PartColumn yarn = yarn_column(
      tr("Yarn"), tr("yarn of the candidate"),
      false, [row_of](auto& pattern, std::size_t row) -> auto& { return row_of(pattern, row).yarn; });
  yarn.stretch = 1;
  const auto strands_format = QuantityFormat::number(1, most_strands, "strands", 0);
  PartColumn strands = number_column(
      open_, tr("Strands"), tr("strands"), strands_format, [row_of](auto& pattern, std::size_t row) -> auto& {
        return row_of(pattern, row).strands;
      });
  PartColumn with = yarn_column(
      tr("Held with"), tr("yarn held with it"),
      true, [row_of](auto& pattern, std::size_t row) -> auto& { return row_of(pattern, row).held_with; });
  PartColumn with_strands = number_column(
      open_, tr("Strands"), tr("strands held with it"),
      strands_format, [row_of](auto& pattern, std::size_t row) -> auto& {
        return row_of(pattern, row).held_with_strands;
      });
  yarns_ = new PartTable(open_, std::move(list), {role, yarn, strands, with, with_strands});
  yarns_->setAccessibleName(tr("Yarns of the candidate"));
  yarns_head_ = new PaneHeader(tr("Its yarns"));
  yarns_head_->add_button(
      tr("Delete"), [this] { yarns_->erase(); }, tr("Delete the chosen row (Ctrl+Del)"));
  return make_pane(yarns_head_, yarns_);
}

QWidget* CandidatePane::make_band_pane() {
  form_ = new YarnForm(open_);
  put_ups_ = make_put_up_table(open_, [this] { return form_->yarn(); });
  auto* body = new QWidget;
  auto* layout = new QVBoxLayout(body);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(form_);
  layout->addWidget(new PaneHeader(tr("Also sold as")));
  layout->addWidget(put_ups_);
  layout->addStretch(1);
  auto* area = new QScrollArea;
  area->setFocusPolicy(Qt::NoFocus);  // its fields take it
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  area->setWidget(body);
  band_head_ = new PaneHeader(tr("Band and maker"));
  return make_pane(band_head_, area);
}

// The yarn of the chosen row; the one held with it while that cell is chosen.
YarnId CandidatePane::chosen_yarn() const {
  const Candidate* found = open_.pattern().candidate(candidate());
  if (found == nullptr || found->yarns.empty()) return {};
  const auto at = static_cast<std::size_t>(std::max(0, yarns_->current_row()));
  const CandidateYarn& row = found->yarns[std::min(at, found->yarns.size() - 1)];
  return yarns_->currentIndex().column() >= 3 && row.held_with ? row.held_with : row.yarn;
}

void CandidatePane::refresh() {
  const Pattern& pattern = open_.pattern();
  const YarnId yarn = chosen_yarn();
  const bool other = yarn != form_->yarn();
  form_->show_yarn(yarn);
  if (other) put_ups_->refresh(true);
  const Candidate* found = pattern.candidate(candidate());
  yarns_head_->set_note(found != nullptr ? candidate_name(pattern, *found) : tr("no candidate yet"));
  QString note = yarn ? yarn_name(pattern, yarn) : QString();
  if (yarn && !pattern.is_on_bench(yarn))
    note = tr("%1, the pattern’s own yarn: a change here changes the pattern").arg(note);
  band_head_->set_note(note);
}

}  // namespace skeinproof
