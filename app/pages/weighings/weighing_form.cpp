// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/weighings/weighing_form.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <algorithm>

#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_table.h"

namespace skeinproof {

const Weighing* find_weighing(const Pattern& pattern, WeighingId id) {
  for (const Weighing& weighing : pattern.weighings)
    if (weighing.id == id) return &weighing;
  return nullptr;
}

int copies_weighed(const Weighing& weighing, const Piece& piece) {
  if (weighing.only.empty()) return piece.copies;
  for (const WeighedCopies& copies : weighing.only)
    if (copies.piece == piece.id) return copies.copies;
  return 0;
}

void set_copies_weighed(const Pattern& pattern, Weighing& weighing, PieceId piece, int copies) {
  std::vector<WeighedCopies> only;
  bool whole = true;
  for (const Piece& each : pattern.pieces) {
    const int weighed = each.id == piece ? copies : copies_weighed(weighing, each);
    if (weighed > 0) only.push_back({each.id, weighed});
    whole = whole && weighed == each.copies;
  }
  weighing.only = whole ? std::vector<WeighedCopies>() : std::move(only);
}

WeighingForm::WeighingForm(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      form_(
          open, this, [this](const Pattern& pattern) { return find_weighing(pattern, id_); },
          [](const Weighing& weighing) { return QString::fromStdString(weighing.name); }) {
  make_piece_table();
  lay_out();
  connect(&open_, &OpenPattern::changed, this, [this] { refresh(); });
  connect(&open_, &OpenPattern::replaced, this, [this] { refresh(true); });
  refresh(true);
}

void WeighingForm::make_piece_table() {
  PartList list = part_list(tr("piece"), {}, &Pattern::pieces);
  list.name = [](const Pattern& pattern, std::size_t row) {
    return QString::fromStdString(pattern.pieces[row].name);
  };
  PartColumn piece = computed_column(tr("Piece"), list.name);
  piece.stretch = 1;
  piece.quiet = false;
  PartColumn copies = field_column(
      open_, tr("On the scale"), tr("copies on the scale"), QuantityFormat::number(0, 1000, "copies", 0),
      [this](const Pattern& pattern, std::size_t row) {
        const Weighing* weighing = find_weighing(pattern, id_);
        if (weighing == nullptr) return FieldValue();
        return FieldValue(
            Entered<double>{static_cast<double>(copies_weighed(*weighing, pattern.pieces[row])), {}});
      },
      [this](Pattern& pattern, std::size_t row, const FieldValue& value) {
        if (auto* weighing = const_cast<Weighing*>(find_weighing(pattern, id_)))
          set_copies_weighed(pattern, *weighing, pattern.pieces[row].id, static_cast<int>(value->value));
      },
      true);
  // No copy of anything would read as the whole item.
  copies.read = [this, read = copies.read](const QString& typed, std::size_t row) -> Expected<RowEdit> {
    auto edit = read(typed, row);
    if (!edit || typed.trimmed() != QLatin1String("0")) return edit;
    const Weighing* weighing = find_weighing(open_.pattern(), id_);
    const auto& pieces = open_.pattern().pieces;
    const auto weighed = std::count_if(pieces.begin(), pieces.end(), [&](const Piece& each) {
      return weighing != nullptr && copies_weighed(*weighing, each) > 0;
    });
    if (weighed <= 1) return failure(ErrorKind::out_of_range, "0", "at least one piece on the scale");
    return edit;
  };
  PartColumn made = computed_column(tr("of"), [](const Pattern& pattern, std::size_t row) {
    return QString::number(pattern.pieces[row].copies);
  });
  made.right = true;
  pieces_ = new PartTable(open_, std::move(list), {piece, copies, made});
  pieces_->setAccessibleName(tr("Pieces on the scale"));
  pieces_->setFrameShape(QFrame::StyledPanel);
  pieces_->set_height_follows_rows(1);
  connect(pieces_, &PartTable::says, this, &WeighingForm::says);
  form_.follow(pieces_, [](const Weighing&) {});
}

void WeighingForm::lay_out() {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(scaled(this, 12), scaled(this, 10), scaled(this, 12), scaled(this, 12));
  grid->setHorizontalSpacing(scaled(this, 10));
  grid->setVerticalSpacing(scaled(this, 6));
  grid->setColumnStretch(1, 1);
  int row = 0;
  const auto add = [&](const QString& words, QWidget* field) {
    auto* label = new QLabel(words);
    label->setBuddy(field);
    grid->addWidget(label, row, 0, Qt::AlignLeft | Qt::AlignVCenter);
    grid->addWidget(field, row++, 1);
  };
  add(tr("&Name"), form_.text(
                       tr("name of weighing"), [](auto& part) -> auto& { return part.name; }));
  auto* size = form_.part_choice<SizeId>(
      tr("size weighed"), [](auto& part) -> auto& { return part.size; },
      [](const Pattern& pattern) {
        std::vector<Choice> choices;
        for (const Size& each : pattern.sizes)
          choices.push_back({QString::fromStdString(each.label), each.id.value});
        return choices;
      });
  add(tr("S&ize"), size);
  add(tr("Pieces"), pieces_);
  moisture_ = form_.choice<Moisture>(
      tr("moisture"), [](auto& part) -> auto& { return part.moisture; });
  add(tr("&Moisture"), moisture_);
  humidity_ = form_.quantity<double>(
      QuantityFormat::number(0, 100, "percent of relative humidity"), tr("air humidity"),
      [](auto& part) -> auto& { return part.humidity_pct; });
  add(tr("Air humidity, %"), humidity_);
  moisture_words_ = new QuietLabel;
  moisture_words_->setWordWrap(true);
  grid->addWidget(moisture_words_, row++, 1);
  add(tr("Sca&le step"),
      form_.quantity<Grams>(
          QuantityFormat::mass(), tr("scale step"), [](auto& part) -> auto& { return part.scale_step; }));
  TextField* state = form_.text(
      tr("state"), [](auto& part) -> auto& { return part.state; });
  state->set_suggestions({tr("washed, dry"), tr("as knitted"), tr("steamed")});
  add(tr("State"), state);
  add(tr("Weighed by"), form_.text(
                            tr("weighed by"), [](auto& part) -> auto& { return part.who; }));
  add(tr("When"), form_.text(
                      tr("when weighed"), [](auto& part) -> auto& { return part.when; }));
  add(tr("Note"), form_.text(
                      tr("note on weighing"), [](auto& part) -> auto& { return part.note; }));
  grid->addWidget(form_.check(
                      tr("&Use this weighing for the needs"), tr("use weighing"),
                      [](auto& part) -> auto& { return part.used; }),
                  row++, 1);
  grid->addWidget(form_.check(
                      tr("&Reported by a tester"), tr("reported by a tester"),
                      [](auto& part) -> auto& { return part.tester; }),
                  row++, 1);
  grid->setRowStretch(row, 1);
}

void WeighingForm::show_weighing(WeighingId id) {
  if (id_ == id) return;
  id_ = id;
  refresh(true);
}

void WeighingForm::refresh(bool other) {
  form_.refresh(other);
  pieces_->refresh(other);
  const Weighing* weighing = form_.part();
  const Moisture way = weighing != nullptr ? weighing->moisture : Moisture::not_corrected;
  humidity_->setEnabled(weighing != nullptr && way == Moisture::humidity);
  const QString sentence =
      way == Moisture::new_skein
          ? tr("A whole new skein on the same scale in the same hour cancels the "
               "water in the yarn and the scale's own bias: type it beside each colour.")
      : way == Moisture::humidity
          ? tr("The reading is worked out against the official allowance of the label.")
          : tr("Nothing is corrected; the range widens by what the air of a room can do.");
  moisture_words_->setText(sentence);
}

}  // namespace skeinproof
