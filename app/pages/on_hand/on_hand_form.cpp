// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/on_hand/on_hand_form.h"

#include <QGridLayout>
#include <QLabel>
#include <algorithm>
#include <cstring>

#include "app/pages/candidates/band_lines.h"
#include "app/pages/on_hand/amount_text.h"
#include "app/pages/on_hand/on_hand_table.h"
#include "app/widgets/ink.h"
#include "app/widgets/line_field.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_table.h"
#include "core/substitution/on_hand_length.h"

namespace skeinproof {
namespace {

struct WayHint {
  LengthBy way;
  const char* words;
};
constexpr WayHint hints[] = {
    {LengthBy::skeins_and_weight,
     QT_TRANSLATE_NOOP(
         "skeinproof::OnHandForm",
         "Whole skeins count as their label says; part skeins are weighed each by itself. A whole "
         "new skein on the same scale in the same hour cancels the water in the yarn.")},
    {LengthBy::reel,
     QT_TRANSLATE_NOOP("skeinproof::OnHandForm",
                       "Let ten turns relax and measure them again: what they lose is the stretch, and the "
                       "usual reason for running out.")},
    {LengthBy::sampled_lengths,
     QT_TRANSLATE_NOOP("skeinproof::OnHandForm",
                       "Weigh four lengths or more one by one, from places far apart, after the finishing "
                       "wash: their spread is the error.")},
    {LengthBy::typed_length,
     QT_TRANSLATE_NOOP("skeinproof::OnHandForm", "A length somebody measured; it errs as a label does.")},
    {LengthBy::wraps,
     QT_TRANSLATE_NOOP(
         "skeinproof::OnHandForm",
         "Wraps put yarns in the order of their thickness. They never tell a length: no verdict "
         "follows.")}};

const YarnOnHand* find_yarn(const Pattern& pattern, OnHandId id) { return pattern.yarn_on_hand(id); }

}  // namespace

OnHandForm::OnHandForm(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      form_(
          open, this, [this](const Pattern& pattern) { return find_yarn(pattern, id_); },
          [this](const YarnOnHand& yarn) {
            return QString::fromStdString(on_hand_name(open_.pattern(), yarn));
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
  problem_->setAccessibleName(tr("Why its length is not known"));
  QFont heavy = problem_->font();
  heavy.setWeight(QFont::DemiBold);
  problem_->setFont(heavy);
  grid_->addWidget(problem_, 0, 0, 1, 2);
  add_figures();
  hint_->setWordWrap(true);
  const int last = 2 * static_cast<int>(rows_.size()) + 1;
  grid_->addWidget(hint_, last, 0, 1, 2);
  grid_->setRowStretch(last + 1, 1);
  connect(&open_, &OpenPattern::changed, this, [this] { refresh(); });
  connect(&open_, &OpenPattern::reader_changed, this, [this] { refresh(); });
  connect(&open_, &OpenPattern::replaced, this, [this] { refresh(true); });
  refresh(true);
}

void OnHandForm::add(const char* name, const QString& words, QWidget* field, Ways ways) {
  auto* label = new QLabel(words);
  label->setBuddy(field);
  const int at = 2 * static_cast<int>(rows_.size()) + 1;
  if (qobject_cast<PartTable*>(field) != nullptr) {
    grid_->addWidget(label, at, 0, 1, 2);
    grid_->addWidget(field, at + 1, 0, 1, 2);
  } else {
    grid_->addWidget(label, at, 0, Qt::AlignLeft | Qt::AlignVCenter);
    grid_->addWidget(field, at, 1);
  }
  rows_.push_back({name, label, field, std::move(ways)});
}

void OnHandForm::add_figures() {
  const Ways skeins = {LengthBy::skeins_and_weight};
  const Ways reel = {LengthBy::reel};
  const Ways weighed = {LengthBy::skeins_and_weight, LengthBy::reel, LengthBy::sampled_lengths,
                        LengthBy::typed_length};
  const Ways on_scale = {LengthBy::skeins_and_weight, LengthBy::sampled_lengths};
  add("skeins", tr("&Whole skeins"),
      form_.quantity<double>(
          QuantityFormat::number(0, 10000, "skeins"), tr("whole skeins"),
          [](auto& part) -> auto& { return part.whole_skeins; }),
      skeins);
  add("length", tr("Leng&th"),
      form_.quantity<Metres>(
          QuantityFormat::yarn_length(), tr("length on hand"),
          [](auto& part) -> auto& { return part.length; }),
      {LengthBy::typed_length});
  add("turns", tr("&Turns"),
      form_.quantity<double>(
          QuantityFormat::number(0, 1e6, "turns"), tr("turns on the reel"),
          [](auto& part) -> auto& { return part.turns; }),
      reel);
  add("circumference", tr("Ro&und the reel"),
      form_.quantity<Metres>(
          QuantityFormat::yarn_length(), tr("circumference of the reel"),
          [](auto& part) -> auto& { return part.circumference; }),
      reel);
  add("stretch", tr("Stretch, %"),
      form_.quantity<double>(
          QuantityFormat::number(0, 100, "percent"), tr("stretch on the reel"),
          [](auto& part) -> auto& { return part.stretch_pct; }),
      reel);
  add("wraps", tr("Wraps in 1 cm"),
      form_.quantity<double>(
          QuantityFormat::number(0, 200, "wraps"), tr("wraps in 1 cm"),
          [](auto& part) -> auto& { return part.wraps_per_cm; }),
      {LengthBy::wraps});
  add("weights", tr("We&ighed"), make_weights(), weighed);
  add("step", tr("Scale step"),
      form_.quantity<Grams>(
          QuantityFormat::mass(), tr("scale step"), [](auto& part) -> auto& { return part.scale_step; }),
      on_scale);
  samples_ = make_samples();
  add("samples", tr("Lengths, weighed one by one"), samples_, {LengthBy::sampled_lengths});
  add("new_skein", tr("A whole new skein"),
      form_.quantity<Grams>(
          QuantityFormat::mass(), tr("weight of a new skein"),
          [](auto& part) -> auto& { return part.new_skein; }),
      skeins);
  add("humidity", tr("Air humidity, %"),
      form_.quantity<double>(
          QuantityFormat::number(0, 100, "percent of relative humidity"), tr("air humidity"),
          [](auto& part) -> auto& { return part.humidity_pct; }),
      skeins);
  add("band", tr("Its put-up"), band_ = make_band(), {});
  add("note", tr("Note"),
      form_.text(
          tr("note on yarn on hand"), [](auto& part) -> auto& { return part.note; }),
      {});
}

// "41 g + 30 g": what was weighed, each piece by itself.
LineField* OnHandForm::make_weights() {
  auto* field = new LineField([this](const QString& line) {
    YarnOnHand trial;
    const auto read = read_amount(line, trial);
    if (!read) return sentence_of(read.error());
    if (trial.whole_skeins || (trial.parts.empty() && !line.trimmed().isEmpty()))
      return tr("Expected weights, such as 41 g + 30 g.");
    form_.change(form_.label(tr("weights"), line.trimmed()),
                 [&](YarnOnHand& yarn) { yarn.parts = trial.parts; });
    return QString();
  });
  field->setAccessibleName(tr("Weights, each piece by itself"));
  field->setPlaceholderText(tr("41 g + 30 g"));
  form_.follow(
      field,
      [this, field](const YarnOnHand& yarn) {
        YarnOnHand weights;
        weights.parts = yarn.parts;
        field->show_line(amount_text(weights, open_.reader()));
      },
      [field] { field->give_back(); });
  return field;
}

// The put-up of its yarn, which turns skeins and grams into metres.
LineField* OnHandForm::make_band() {
  auto* field = new LineField([this](const QString& line) {
    const YarnOnHand* on_hand = find_yarn(open_.pattern(), id_);
    const auto read = read_put_up(line);
    if (!read) return sentence_of(read.error());
    if (on_hand == nullptr) return QString();
    open_.apply(form_.label(tr("put-up"), line.trimmed()), [&](Pattern& pattern) {
      for (Yarn& yarn : pattern.yarns)
        if (yarn.id == on_hand->yarn) {
          yarn.put_up.length = read->length;
          yarn.put_up.weight = read->weight;
        }
    });
    return QString();
  });
  field->setAccessibleName(tr("Put-up of the yarn"));
  field->setPlaceholderText(tr("50 g = 175 m"));
  form_.follow(
      field,
      [this, field](const YarnOnHand& on_hand) {
        const Yarn* yarn = open_.pattern().yarn(on_hand.yarn);
        const bool own = yarn != nullptr && !open_.pattern().is_on_bench(on_hand.yarn);
        field->setEnabled(yarn != nullptr && !own);
        field->setToolTip(own ? tr("The pattern’s own yarn: its put-up is typed on the page Yarns")
                              : QString());
        field->show_line(yarn != nullptr ? put_up_text(yarn->put_up, open_.reader()) : QString());
      },
      [field] { field->give_back(); });
  return field;
}

PartTable* OnHandForm::make_samples() {
  const auto sample = [this](auto& pattern, std::size_t row) -> auto& {
    using Sample = std::conditional_t<std::is_const_v<std::remove_reference_t<decltype(pattern)>>,
                                      const SampledLength, SampledLength>;
    auto* yarn = const_cast<YarnOnHand*>(find_yarn(pattern, id_));
    return static_cast<Sample&>(yarn->sampled[row]);
  };
  PartList list;
  list.part = tr("sampled length");
  list.add_hint = tr("add a length");
  list.count = [this](const Pattern& pattern) {
    const YarnOnHand* yarn = find_yarn(pattern, id_);
    return yarn != nullptr ? yarn->sampled.size() : 0;
  };
  list.key = [](const Pattern&, std::size_t row) { return static_cast<std::uint32_t>(row + 1); };
  list.name = [](const Pattern&, std::size_t row) { return QString::number(row + 1); };
  list.append = [this](Pattern& pattern) {
    if (auto* yarn = const_cast<YarnOnHand*>(find_yarn(pattern, id_))) yarn->sampled.emplace_back();
  };
  list.erase = [this](Pattern& pattern, std::size_t row) {
    auto& all = const_cast<YarnOnHand*>(find_yarn(pattern, id_))->sampled;
    all.erase(all.begin() + static_cast<std::ptrdiff_t>(row));
  };
  PartColumn length = quantity_column<Metres>(
      open_, tr("Length"), tr("sampled length"),
      QuantityFormat::yarn_length(), [sample](auto& pattern, std::size_t row) -> auto& {
        return sample(pattern, row).length;
      });
  PartColumn weight = quantity_column<Grams>(
      open_, tr("Weight"), tr("weight of the length"),
      QuantityFormat::mass(), [sample](auto& pattern, std::size_t row) -> auto& {
        return sample(pattern, row).weight;
      });
  length.stretch = weight.stretch = 1;
  auto* table = new PartTable(open_, std::move(list), {length, weight});
  table->setAccessibleName(tr("Lengths weighed one by one"));
  table->setFrameShape(QFrame::StyledPanel);
  table->set_height_follows_rows(2);
  connect(table, &PartTable::says, this, &OnHandForm::says);
  form_.follow(table, [](const YarnOnHand&) {});
  return table;
}

void OnHandForm::show_yarn(OnHandId id) {
  if (id_ == id) return;
  id_ = id;
  refresh(true);
}

QString OnHandForm::problem() const { return problem_->text(); }

std::vector<QString> OnHandForm::shown_fields() const {
  std::vector<QString> fields;
  for (const Row& row : rows_)
    if (!row.field->isHidden()) fields.push_back(row.label->text().remove(QLatin1Char('&')));
  return fields;
}

QWidget* OnHandForm::field(const char* name) const {
  for (const Row& row : rows_)
    if (std::strcmp(row.name, name) == 0) return row.field;
  return nullptr;
}

void OnHandForm::refresh(bool other) {
  form_.refresh(other);
  samples_->refresh(other);
  const YarnOnHand* yarn = form_.part();
  for (const Row& row : rows_) {
    const bool shown = yarn != nullptr && (row.ways.empty() || std::find(row.ways.begin(), row.ways.end(),
                                                                         yarn->length_by) != row.ways.end());
    row.label->setVisible(shown);
    row.field->setVisible(shown);
  }
  const QString problem = yarn != nullptr ? length_problem(open_.pattern(), *yarn) : QString();
  problem_->setText(problem);
  problem_->setVisible(!problem.isEmpty());
  if (yarn == nullptr)
    hint_->setText(tr("No yarn on hand yet: type its name in the empty row of the table."));
  else
    for (const WayHint& hint : hints)
      if (hint.way == yarn->length_by) hint_->setText(tr(hint.words));
}

}  // namespace skeinproof
