// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/change_form.h"

#include <QButtonGroup>
#include <QGridLayout>
#include <QLabel>
#include <QRadioButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cstring>

#include "app/pages/changes/change_words.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

struct KindHint {
  ChangeKind kind;
  const char* words;
};
constexpr KindHint hints[] = {
    {ChangeKind::longer_piece,
     QT_TRANSLATE_NOOP("skeinproof::ChangeForm",
                       "With a minus it becomes shorter. It is made in whole rounds by the row gauge.")},
    {ChangeKind::extra_rounds,
     QT_TRANSLATE_NOOP(
         "skeinproof::ChangeForm",
         "With a minus they are left out. In a chart they are worked at the chart round named, or "
         "in the colour named behind the last round that has it.")},
    {ChangeKind::other_gauge,
     QT_TRANSLATE_NOOP(
         "skeinproof::ChangeForm",
         "With the same counts a looser gauge makes a larger piece and takes more yarn; with counts "
         "chosen again for the same size it takes less. The other fabrics follow in proportion.")},
    {ChangeKind::other_size,
     QT_TRANSLATE_NOOP("skeinproof::ChangeForm", "The changes below it in the list act on that size.")},
    {ChangeKind::between_sizes,
     QT_TRANSLATE_NOOP("skeinproof::ChangeForm",
                       "Stitches and rows are worked out apart and snapped to whole repeats.")},
    {ChangeKind::piece_left_out,
     QT_TRANSLATE_NOOP("skeinproof::ChangeForm", "With all its stitches and edges, and in every size.")},
    {ChangeKind::piece_again,
     QT_TRANSLATE_NOOP("skeinproof::ChangeForm", "More copies of the piece as it stands.")},
    {ChangeKind::given_to,
     QT_TRANSLATE_NOOP(
         "skeinproof::ChangeForm",
         "Name the colour it is given to, or another yarn, which then counts as a colour of its "
         "own.")}};

bool is_chart(const Pattern& pattern, SectionId id) {
  const PiecePlace place = find_in_pieces(pattern, id.value);
  return place.section != nullptr && place.section->source == StitchSource::chart;
}

auto of_kinds(std::vector<ChangeKind> kinds) {
  return [kinds = std::move(kinds)](const Pattern&, const BenchChange& row) {
    return std::find(kinds.begin(), kinds.end(), row.kind) != kinds.end();
  };
}

bool rounds_of_chart(const Pattern& pattern, const BenchChange& row) {
  return row.kind == ChangeKind::extra_rounds && is_chart(pattern, row.section);
}

}  // namespace

const BenchChange* find_change(const Pattern& pattern, ChangeId id) {
  const auto find = [id](const std::vector<BenchChange>& rows) -> const BenchChange* {
    const auto row =
        std::find_if(rows.begin(), rows.end(), [id](const BenchChange& one) { return one.id == id; });
    return row == rows.end() ? nullptr : &*row;
  };
  if (const BenchChange* row = find(pattern.changes)) return row;
  for (const Weighing& weighing : pattern.weighings)
    if (const BenchChange* row = find(weighing.altered)) return row;
  return nullptr;
}

ChangeForm::ChangeForm(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      form_(
          open, this, [this](const Pattern& pattern) { return find_change(pattern, id_); },
          [this](const BenchChange& row) {
            const QString part = part_of_row(open_.pattern(), row);
            return part.isEmpty() ? kind_words(row.kind).toLower() : part;
          }),
      grid_(new QGridLayout(this)),
      problem_(new QLabel),
      hint_(new QuietLabel) {
  grid_->setContentsMargins(scaled(this, 12), scaled(this, 10), scaled(this, 12), scaled(this, 12));
  grid_->setHorizontalSpacing(scaled(this, 10));
  grid_->setVerticalSpacing(scaled(this, 6));
  grid_->setColumnStretch(1, 1);
  problem_->setWordWrap(true);
  problem_->setTextFormat(Qt::PlainText);
  problem_->setAccessibleName(tr("Why it cannot be made"));
  QFont heavy = problem_->font();
  heavy.setWeight(QFont::DemiBold);
  problem_->setFont(heavy);
  grid_->addWidget(problem_, 0, 0, 1, 2);
  add("kind", tr("&Kind"),
      form_.choice<ChangeKind>(
          tr("kind of change"), [](auto& row) -> auto& { return row.kind; }, &kind_words),
      [](const Pattern&, const BenchChange&) { return true; });
  add_part_fields();
  add_figure_fields();
  add_size_fields();
  hint_->setWordWrap(true);
  const int last = 2 * static_cast<int>(rows_.size()) + 1;
  grid_->addWidget(hint_, last, 0, 1, 2);
  grid_->setRowStretch(last + 1, 1);
  connect(&open_, &OpenPattern::changed, this, [this] { refresh(); });
  connect(&open_, &OpenPattern::replaced, this, [this] { refresh(true); });
  show_problem({});
  refresh(true);
}

void ChangeForm::add(const char* name, const QString& words, QWidget* field, Shown shown) {
  auto* label = new QLabel(words);
  label->setBuddy(field);
  const int at = 2 * static_cast<int>(rows_.size()) + 1;
  const bool is_field =
      qobject_cast<QLineEdit*>(field) != nullptr || qobject_cast<QComboBox*>(field) != nullptr;
  if (is_field) {
    grid_->addWidget(label, at, 0, Qt::AlignLeft | Qt::AlignVCenter);
    grid_->addWidget(field, at, 1);
  } else {
    // A question stands over its answers.
    grid_->addWidget(label, at, 0, 1, 2);
    grid_->addWidget(field, at + 1, 0, 1, 2);
  }
  if (auto* list = qobject_cast<QComboBox*>(field)) {
    // Long names do not push the pane apart.
    list->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    list->setMinimumContentsLength(8);
  }
  rows_.push_back({name, label, field, std::move(shown)});
}

void ChangeForm::add_part_fields() {
  add("piece", tr("&Piece"), make_piece(),
      of_kinds({ChangeKind::longer_piece, ChangeKind::piece_left_out, ChangeKind::piece_again}));
  add("section_of_piece", tr("Sect&ion"),
      form_.part_choice<SectionId>(
          tr("section"), [](auto& row) -> auto& { return row.section; },
          [this](const Pattern& pattern) {
            const BenchChange* row = form_.part();
            return sections_of_piece(pattern, row != nullptr ? row->piece : PieceId{},
                                     tr("the one with most rounds"));
          }),
      [](const Pattern& pattern, const BenchChange& row) {
        const Piece* piece = pattern.piece(row.piece);
        return row.kind == ChangeKind::longer_piece && piece != nullptr && piece->sections.size() > 1;
      });
  add("section", tr("Sect&ion"),
      form_.part_choice<SectionId>(
          tr("section"), [](auto& row) -> auto& { return row.section; }, &section_choices),
      of_kinds({ChangeKind::extra_rounds}));
  add("part", tr("&Part"), make_given_part(), of_kinds({ChangeKind::given_to}));
  const auto colour = [this](const QString& undo_name, const QString& none) {
    return form_.part_choice<RoleId>(
        undo_name, [](auto& row) -> auto& { return row.from; },
        [none](const Pattern& pattern) { return role_choices(pattern, none); });
  };
  add("from", tr("Fro&m"), colour(tr("colour given away"), tr("every colour in it")),
      of_kinds({ChangeKind::given_to}));
  add("to", tr("Into colo&ur"),
      form_.part_choice<RoleId>(
          tr("colour it is given to"), [](auto& row) -> auto& { return row.to; },
          [](const Pattern& pattern) { return role_choices(pattern, tr("none")); }),
      of_kinds({ChangeKind::given_to}));
  add("yarn", tr("Or into ya&rn"),
      form_.part_choice<YarnId>(
          tr("yarn it is given to"), [](auto& row) -> auto& { return row.yarn; },
          [](const Pattern& pattern) { return yarn_choices(pattern, tr("none")); }),
      of_kinds({ChangeKind::given_to}));
}

void ChangeForm::add_figure_fields() {
  add("by", tr("&By"),
      form_.quantity<Centimetres>(
          QuantityFormat::cloth_difference(), tr("how much longer"),
          [](auto& row) -> auto& { return row.by; }),
      of_kinds({ChangeKind::longer_piece}));
  add("where", tr("&Where"),
      form_.choice<LongerWhere>(
          tr("where it grows longer"), [](auto& row) -> auto& { return row.where; }),
      of_kinds({ChangeKind::longer_piece}));
  add("rounds", tr("Rounds &more"),
      form_.quantity<double>(
          QuantityFormat::number(-10000, 10000, "rounds"), tr("rounds"),
          [](auto& row) -> auto& { return row.rounds; }),
      of_kinds({ChangeKind::extra_rounds}));
  add("chart_round", tr("At chart &round"),
      form_.quantity<double>(
          QuantityFormat::number(1, 10000, "chart rounds"), tr("chart round"),
          [](auto& row) -> auto& { return row.chart_round; }),
      &rounds_of_chart);
  add("colour_alone", tr("Or in colo&ur alone"),
      form_.part_choice<RoleId>(
          tr("colour worked alone"), [](auto& row) -> auto& { return row.from; },
          [](const Pattern& pattern) { return role_choices(pattern, tr("as the chart round has them")); }),
      [](const Pattern& pattern, const BenchChange& row) {
        return rounds_of_chart(pattern, row) && !row.chart_round;
      });
  add("fabric", tr("Fa&bric"),
      form_.part_choice<FabricId>(
          tr("fabric"), [](auto& row) -> auto& { return row.fabric; }, &fabric_choices),
      of_kinds({ChangeKind::other_gauge}));
  add("stitches", tr("Stitches in 10 c&m"),
      form_.quantity<double>(
          QuantityFormat::number(0.1, 1000, "stitches in 10 cm"), tr("stitches in 10 cm"),
          [](auto& row) -> auto& { return row.stitches; }),
      of_kinds({ChangeKind::other_gauge}));
  add("rows", tr("&Rows in 10 cm"),
      form_.quantity<double>(
          QuantityFormat::number(0.1, 1000, "rows in 10 cm"), tr("rows in 10 cm"),
          [](auto& row) -> auto& { return row.rows; }),
      of_kinds({ChangeKind::other_gauge}));
  add("counts", tr("Which counts are knitted?"), make_counts_question(), of_kinds({ChangeKind::other_gauge}));
  add("copies", tr("Copies &more"), make_copies(), of_kinds({ChangeKind::piece_again}));
}

void ChangeForm::add_size_fields() {
  const auto size = [this](const QString& undo_name, SizeId BenchChange::*which) {
    return form_.part_choice<SizeId>(
        undo_name, [which](auto& row) -> auto& { return row.*which; }, &size_choices);
  };
  add("size", tr("Si&ze"), size(tr("size"), &BenchChange::size), of_kinds({ChangeKind::other_size}));
  add("from_size", tr("F&rom size"), size(tr("size from"), &BenchChange::size),
      of_kinds({ChangeKind::between_sizes}));
  add("to_size", tr("To si&ze"), size(tr("size to"), &BenchChange::other_size),
      of_kinds({ChangeKind::between_sizes}));
  add("share", tr("On the &way, %"),
      form_.quantity<double>(
          QuantityFormat::number(0, 100, "percent"), tr("share of the way"),
          [](auto& row) -> auto& { return row.share_pct; }),
      of_kinds({ChangeKind::between_sizes}));
}

// Two buttons under a question: neither is down until somebody has answered.
QWidget* ChangeForm::make_counts_question() {
  auto* box = new QWidget;
  box->setAccessibleName(tr("Which counts are knitted at the other gauge?"));
  auto* layout = new QVBoxLayout(box);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(scaled(this, 2));
  counts_ = new QButtonGroup(box);
  const auto answer = [&](const QString& words, CountsAre counts) {
    auto* button = new QRadioButton(words);
    button->setAccessibleDescription(tr("The sign of the change in yarn turns round with the answer."));
    counts_->addButton(button, static_cast<int>(counts));
    layout->addWidget(button);
  };
  answer(tr("the same co&unts"), CountsAre::kept);
  answer(tr("chosen again for the same si&ze"), CountsAre::chosen_again);
  connect(counts_, &QButtonGroup::idClicked, this, [this](int id) {
    const auto counts = static_cast<CountsAre>(id);
    form_.change(form_.label(tr("counts"), counts_->button(id)->text().remove(QLatin1Char('&'))),
                 [counts](BenchChange& row) { row.counts = counts; });
  });
  form_.follow(box, [this](const BenchChange& row) {
    counts_->setExclusive(false);
    for (QAbstractButton* button : counts_->buttons())
      button->setChecked(counts_->id(button) == static_cast<int>(row.counts));
    counts_->setExclusive(true);
  });
  return box;
}

QWidget* ChangeForm::make_copies() {
  auto* field = new QuantityField(QuantityFormat::number(1, 1000, "copies", 0), open_, this);
  field->setAccessibleName(tr("copies more"));
  field->set_required(tr("How many copies more?"));
  connect(field, &QuantityField::committed, this, [this](const FieldValue& value) {
    if (!value) return;
    const int copies = static_cast<int>(value->value);
    form_.change(form_.label(tr("copies more"), QString::number(copies)),
                 [copies](BenchChange& row) { row.copies = copies; });
  });
  form_.follow(
      field,
      [field](const BenchChange& row) {
        field->set_value(FieldValue(Entered<double>{static_cast<double>(row.copies), {}}));
      },
      [field] { field->give_back(); });
  return field;
}

// A section is one of its piece: with another piece it is not meant any more.
QWidget* ChangeForm::make_piece() {
  auto* field = new ChoiceField(this);
  field->setAccessibleName(tr("piece"));
  connect(field, &ChoiceField::chosen, this, [this, field](std::uint32_t piece) {
    form_.change(form_.label(tr("piece"), field->currentText()), [piece](BenchChange& row) {
      if (row.piece != PieceId{piece}) row.section = {};
      row.piece = PieceId{piece};
    });
  });
  form_.follow(field, [this, field](const BenchChange& row) {
    field->set_choices(piece_choices(open_.pattern()));
    field->show_choice(row.piece.value);
  });
  return field;
}

// Pieces, sections and edges in one list; the change says with which of its ids it means one.
QWidget* ChangeForm::make_given_part() {
  auto* field = new ChoiceField(this);
  field->setAccessibleName(tr("part given away"));
  connect(field, &ChoiceField::chosen, this, [this, field](std::uint32_t part) {
    const PiecePlace place = find_in_pieces(open_.pattern(), part);
    if (!place) return;
    form_.change(
        form_.label(tr("part given away"), field->currentText()),
        [part, is_edge = place.edge != nullptr, is_section = place.section != nullptr](BenchChange& row) {
          row.piece = is_edge || is_section ? PieceId{} : PieceId{part};
          row.section = is_section ? SectionId{part} : SectionId{};
          row.edge = is_edge ? EdgeId{part} : EdgeId{};
        });
  });
  form_.follow(field, [this, field](const BenchChange& row) {
    field->set_choices(part_choices(open_.pattern()));
    field->show_choice(row.edge ? row.edge.value : row.section ? row.section.value : row.piece.value);
  });
  return field;
}

void ChangeForm::show_change(ChangeId id) {
  if (id_ == id) return;
  id_ = id;
  refresh(true);
}

void ChangeForm::show_problem(const QString& words) {
  problem_->setText(words);
  problem_->setVisible(!words.isEmpty());
}

QString ChangeForm::problem() const { return problem_->text(); }

void ChangeForm::refresh(bool other) {
  form_.refresh(other);
  const BenchChange* row = form_.part();
  for (const Row& each : rows_) {
    const bool shown = row != nullptr && each.shown(open_.pattern(), *row);
    each.label->setVisible(shown);
    each.field->setVisible(shown);
  }
  show_hint();
}

void ChangeForm::show_hint() {
  const BenchChange* row = form_.part();
  if (row == nullptr) {
    hint_->setText(
        tr("No change yet. Insert, or the button Add, puts one on the bench: nothing of the "
           "pattern moves until it is taken in."));
    return;
  }
  for (const KindHint& hint : hints)
    if (hint.kind == row->kind) hint_->setText(tr(hint.words));
}

void ChangeForm::enter() {
  const auto fields = shown_fields();
  if (fields.empty()) return;
  fields[std::min<std::size_t>(1, fields.size() - 1)].second->setFocus(Qt::TabFocusReason);
}

std::vector<std::pair<QString, QWidget*>> ChangeForm::shown_fields() const {
  std::vector<std::pair<QString, QWidget*>> fields;
  for (const Row& row : rows_)
    if (!row.field->isHidden()) fields.emplace_back(row.label->text().remove(QLatin1Char('&')), row.field);
  return fields;
}

QWidget* ChangeForm::field(const char* name) const {
  for (const Row& row : rows_)
    if (std::strcmp(row.name, name) == 0) return row.field;
  return nullptr;
}

}  // namespace skeinproof
