// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pattern/metres_pane.h"

#include <QApplication>
#include <QClipboard>
#include <QGridLayout>
#include <QLabel>
#include <QListView>
#include <QScrollArea>
#include <QVBoxLayout>

#include "app/document/open_pattern.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/ink.h"
#include "app/widgets/line_field.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_form.h"
#include "core/units/show.h"
#include "core/yarn/read_composition.h"

namespace skeinproof {

namespace {

std::optional<double> plain(const QuantityField* field) {
  return field->value() ? std::optional(field->value()->value) : std::nullopt;
}

QString text_of(const std::string& words) { return QString::fromStdString(words); }

}  // namespace

MetresPane::MetresPane(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      answer_(new QLabel),
      range_(new QLabel),
      assumed_(new QuietLabel),
      working_(new FigureList) {
  lay_out();
  connect(&open_, &OpenPattern::changed, this, &MetresPane::list_yarns);
  connect(&open_, &OpenPattern::reader_changed, this, &MetresPane::work_out);
  list_yarns();
  work_out();
}

QuantityField* MetresPane::add_field(QGridLayout& grid, int row, const QString& words,
                                     QuantityFormat format) {
  auto* field = new QuantityField(std::move(format), open_);
  field->setAccessibleName(QString(words).remove(QLatin1Char('&')));
  auto* label = new QLabel(words);
  label->setBuddy(field);
  grid.addWidget(label, row, 0);
  grid.addWidget(field, row, 1);
  connect(field, &QuantityField::committed, this, [this, field](const FieldValue& value) {
    field->set_value(value);
    work_out();
  });
  return field;
}

void MetresPane::lay_out() {
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  auto* head = new PaneHeader(tr("Metres from a weight"));
  head->add_button(tr("Cop&y"), [this] {
    QApplication::clipboard()->setText(as_text());
    emit says(tr("Copied the answer with its working."));
  });
  head->add_button(tr("Close"), [this] { emit wants_close(); });
  layout->addWidget(head);

  auto* form = new QWidget;
  auto* grid = new QGridLayout(form);
  grid->setContentsMargins(scaled(this, 12), scaled(this, 8), scaled(this, 12), scaled(this, 8));
  grid->setHorizontalSpacing(scaled(this, 10));
  grid->setVerticalSpacing(scaled(this, 5));
  grid->setColumnStretch(1, 1);
  reading_ = add_field(*grid, 0, tr("On the scale"), QuantityFormat::mass());
  notions_ = add_field(*grid, 1, tr("of it notions"), QuantityFormat::mass());
  step_ = add_field(*grid, 2, tr("Scale step"), QuantityFormat::mass());
  lay_out_yarn(*grid);
  new_skein_ = add_field(*grid, 9, tr("New skein, same hour"), QuantityFormat::mass());
  humidity_ = add_field(*grid, 10, tr("or air humidity, %"),
                        QuantityFormat::number(0, 100, "percent of relative humidity"));
  layout->addWidget(form);

  auto* result = new PaneHeader(tr("Answer"));
  layout->addWidget(result);
  answer_->setFont(type_of(font()).answer);
  answer_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  answer_->setContentsMargins(scaled(this, 12), scaled(this, 6), scaled(this, 12), 0);
  range_->setContentsMargins(scaled(this, 12), 0, scaled(this, 12), 0);
  range_->setWordWrap(true);
  assumed_->setWordWrap(true);
  assumed_->setContentsMargins(scaled(this, 12), scaled(this, 2), scaled(this, 12), scaled(this, 8));
  for (QWidget* widget : std::initializer_list<QWidget*>{answer_, range_, assumed_})
    layout->addWidget(widget);
  working_->view()->setAccessibleName(tr("Working"));
  working_->setMinimumHeight(scaled(this, 120));
  layout->addWidget(working_, 1);
}

void MetresPane::lay_out_yarn(QGridLayout& grid) {
  const auto add = [&](int row, const QString& words, QWidget* field) {
    auto* label = new QLabel(words);
    label->setBuddy(field);
    grid.addWidget(label, row, 0);
    grid.addWidget(field, row, 1);
  };
  yarn_ = new ChoiceField;
  yarn_->setAccessibleName(tr("Yarn"));
  connect(yarn_, &ChoiceField::chosen, this, &MetresPane::take_yarn);
  add(3, tr("Yarn"), yarn_);
  length_ = add_field(grid, 4, tr("Skein holds"), QuantityFormat::yarn_length());
  weight_ = add_field(grid, 5, tr("weighing, by its label"), QuantityFormat::mass());
  fibres_ = new LineField([this](const QString& line) {
    const auto read = read_composition(line.toStdString());
    if (!read) return sentence_of(read.error());
    composition_ = *read;
    fibres_->show_line(line.trimmed());
    work_out();
    return QString();
  });
  fibres_->setPlaceholderText(tr("75% wool, 25% polyamide"));
  fibres_->setAccessibleName(tr("Fibres"));
  add(6, tr("Fibres"), fibres_);
  spinning_ = new ChoiceField;
  spinning_->setAccessibleName(tr("Spinning"));
  spinning_->set_choices(choices_of<Spinning>());
  spinning_->show_choice(0);
  add(7, tr("Spinning"), spinning_);
  market_ = new ChoiceField;
  market_->setAccessibleName(tr("Made for"));
  market_->set_choices(choices_of<Market>());
  market_->show_choice(0);
  add(8, tr("Made for"), market_);
  for (ChoiceField* field : {spinning_, market_})
    connect(field, &ChoiceField::chosen, this, &MetresPane::work_out);
}

void MetresPane::list_yarns() {
  std::vector<Choice> choices = {{tr("as typed below"), 0}};
  for (const Yarn& yarn : open_.pattern().yarns) choices.push_back({text_of(yarn.name), yarn.id.value});
  yarn_->set_choices(choices);
  if (yarn_->currentIndex() < 0) yarn_->show_choice(0);
}

void MetresPane::take_yarn(std::uint32_t id) {
  const Yarn* yarn = open_.pattern().yarn(YarnId{id});
  if (yarn == nullptr) return;
  for (QuantityField* field : {length_, weight_}) field->give_back();
  length_->set_value(yarn->put_up.length);
  weight_->set_value(yarn->put_up.weight);
  composition_ = yarn->composition;
  fibres_->give_back();
  fibres_->show_line(text_of(composition_text(composition_)));
  spinning_->show_choice(static_cast<std::uint32_t>(yarn->spinning));
  market_->show_choice(static_cast<std::uint32_t>(yarn->market));
  work_out();
}

void MetresPane::focus_reading() {
  reading_->setFocus();
  reading_->selectAll();
}

QString MetresPane::answer() const { return answer_->text(); }
QString MetresPane::range() const { return range_->text(); }

QString MetresPane::as_text() const {
  if (working_->rows().empty()) return {};
  return QStringList{answer(), range(), assumed_->text(), QString(), working_->as_text()}.join(
      QLatin1Char('\n'));
}

void MetresPane::work_out() {
  WeighedYarn asked;
  const auto reading = plain(reading_);
  asked.reading = grams(reading.value_or(0));
  asked.notions = grams(plain(notions_).value_or(0));
  asked.put_up.length = length_->value_as<Metres>();
  asked.put_up.weight = weight_->value_as<Grams>();
  asked.composition = composition_;
  asked.spinning = static_cast<Spinning>(spinning_->currentData().toUInt());
  asked.market = static_cast<Market>(market_->currentData().toUInt());
  if (const auto skein = plain(new_skein_)) asked.new_skein = grams(*skein);
  asked.humidity_pct = plain(humidity_);
  if (const auto step = plain(step_)) asked.scale_step = grams(*step);
  // A new skein weighed in the same hour says all that the humidity could.
  humidity_->setEnabled(!asked.new_skein);

  const auto length = weighed_length(asked);
  if (!reading || !length) {
    answer_->setText(QStringLiteral("–"));
    range_->setText(!reading            ? tr("Type what the scale says.")
                    : !length_->value() ? tr("Type the metres a skein holds.")
                                        : sentence_of(length.error()));
    assumed_->clear();
    working_->set_rows({});
    return;
  }
  const NumberStyle& style = open_.reader().numbers;
  const bool imperial = open_.reader().imperial_first;
  const auto shown = [&](Metres value) {
    return text_of(show_number(imperial ? in_yards(value) : value.value(), 0, style));
  };
  const QString unit = imperial ? tr("yd") : tr("m");
  answer_->setText(shown(length->length) + QLatin1Char(' ') + unit);
  range_->setText(tr("%1–%2 %3, 9 times in 10").arg(shown(length->low), shown(length->high), unit));
  QStringList assumed;
  for (const std::string& sentence : length->assumed) assumed << text_of(sentence);
  assumed_->setText(assumed.join(QStringLiteral(" ")));
  std::vector<FigureRow> rows;
  for (const FigureLine& line : length->lines) {
    const int decimals = line.unit.empty() || line.unit == "m/g" ? 4 : 2;
    QString figure = text_of(show_number(line.value, decimals, style));
    if (!line.unit.empty()) figure += QLatin1Char(' ') + text_of(line.unit);
    rows.push_back({text_of(line.label), figure, text_of(line.how), text_of(line.source), false, false});
  }
  if (!rows.empty()) rows.back().strong = true;
  working_->set_rows(std::move(rows));
}

}  // namespace skeinproof
