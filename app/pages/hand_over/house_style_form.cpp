// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/hand_over/house_style_form.h"

#include <QCoreApplication>
#include <QEvent>
#include <QFormLayout>
#include <QLabel>
#include <QVBoxLayout>
#include <algorithm>

#include "app/widgets/ink.h"
#include "app/widgets/line_field.h"
#include "core/base/text.h"

namespace skeinproof {
namespace {

template <class E>
QString words_in_order(const std::vector<E>& order) {
  QStringList words;
  for (E element : order) {
    const std::string_view word = word_of(element);
    words << QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
  }
  return words.join(QStringLiteral(", "));
}

template <class E>
QString all_words() {
  std::vector<E> all;
  for (const auto& row : EnumWords<E>::rows) all.push_back(row.first);
  return words_in_order(all);
}

}  // namespace

template <class E, class Where>
void HouseStyleForm::add_choice(QFormLayout* form, const QString& words, const QString& undo_name,
                                Where where) {
  form->addRow(words, form_.choice<E>(undo_name, where));
}

template <class Where>
void HouseStyleForm::add_words(QFormLayout* form, const QString& words, const QString& undo_name,
                               Where where) {
  form->addRow(words, form_.text(undo_name, where));
}

template <class Where>
void HouseStyleForm::add_check(QFormLayout* form, const QString& words, const QString& undo_name,
                               Where where) {
  form->addRow(QString(), form_.check(words, undo_name, where));
}

template <class Where>
void HouseStyleForm::add_number(QFormLayout* form, const QString& words, const QString& undo_name,
                                QuantityFormat format, double scale, Where where) {
  auto* field = new QuantityField(std::move(format), open_, this);
  field->setAccessibleName(undo_name);
  field->set_required(tr("A figure is needed here."));
  connect(field, &QuantityField::committed, this,
          [this, field, undo_name, scale, where](const FieldValue& value) {
            if (value)
              form_.change(
                  form_.label(undo_name, field->text()),
                  [where, scale, typed = value->value](HouseStyle& style) { where(style) = typed / scale; });
          });
  form_.follow(
      field,
      [field, scale, where](const HouseStyle& style) {
        field->set_value(FieldValue(Entered<double>{where(style) * scale, {}}));
      },
      [field] { field->give_back(); });
  form->addRow(words, field);
}

template <class E, class Where>
void HouseStyleForm::add_order(QFormLayout* form, const QString& words, const QString& undo_name,
                               Where where) {
  auto* field = new LineField([this, undo_name, where](const QString& line) -> QString {
    std::vector<E> order;
    for (const QString& word : line.split(QLatin1Char(','), Qt::SkipEmptyParts)) {
      const auto element = from_word<E>(word.trimmed().toStdString());
      if (!element) return tr("Found “%1”, expected words out of: %2").arg(word.trimmed(), all_words<E>());
      if (std::find(order.begin(), order.end(), *element) == order.end()) order.push_back(*element);
    }
    if (order.empty()) return tr("Expected at least one of: %1").arg(all_words<E>());
    form_.change(form_.label(undo_name, line), [where, order](HouseStyle& style) { where(style) = order; });
    return {};
  });
  field->setAccessibleName(undo_name);
  field->setToolTip(all_words<E>());
  form_.follow(
      field, [field, where](const HouseStyle& style) { field->show_line(words_in_order(where(style))); },
      [field] { field->give_back(); });
  form->addRow(words, field);
}

HouseStyleForm::HouseStyleForm(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      form_(
          open, this, [](const Pattern& pattern) { return &pattern.house_styles.front(); },
          [](const HouseStyle&) { return QString(); }) {
  auto* column = new QVBoxLayout(this);
  const int inset = scaled(this, 12);
  column->setContentsMargins(inset, inset, inset, inset);
  column->setSpacing(scaled(this, 12));
  make_counting();
  make_order();
  make_figures();
  make_lists();
  make_names();
  make_notes();
  column->addStretch(1);
  connect(&open_, &OpenPattern::changed, this, [this] { form_.refresh(); });
  connect(&open_, &OpenPattern::reader_changed, this, [this] { form_.refresh(); });
  form_.refresh();
}

void HouseStyleForm::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  // The font may have changed while nobody saw the form: it and the area around it measure it again.
  QMetaObject::invokeMethod(
      this,
      [this] {
        for (QLayout* rows : findChildren<QLayout*>()) rows->invalidate();
        layout()->invalidate();
        QCoreApplication::postEvent(this, new QEvent(QEvent::LayoutRequest));
      },
      Qt::QueuedConnection);
}

QFormLayout* HouseStyleForm::group(const QString& title) {
  auto* heading = new QLabel(title);
  QFont bold = heading->font();
  bold.setWeight(QFont::DemiBold);
  heading->setFont(bold);
  auto* form = new QFormLayout;
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  form->setRowWrapPolicy(QFormLayout::WrapLongRows);
  form->setHorizontalSpacing(scaled(this, 8));
  form->setVerticalSpacing(scaled(this, 4));
  auto* column = static_cast<QVBoxLayout*>(layout());
  column->addWidget(heading);
  column->addLayout(form);
  return form;
}

void HouseStyleForm::make_counting() {
  QFormLayout* form = group(tr("Counting"));
  add_words(
      form, tr("Style &name"), tr("house style name"), [](auto& style) -> auto& { return style.name; });
  add_number(
      form, tr("Allowance, %"), tr("allowance"), QuantityFormat::number(0, 100, "percent"), 1,
      [](auto& style) -> auto& { return style.allowance_pct; });
  add_check(
      form, tr("Count the swatch"), tr("swatch counted"),
      [](auto& style) -> auto& { return style.swatch_counted; });
  add_choice<Rounding>(
      form, tr("Rounding"), tr("rounding"), [](auto& style) -> auto& { return style.rounding; });
  add_number(
      form, tr("A hair over, % of a skein"), tr("hair over"), QuantityFormat::number(0, 50, "percent"), 100,
      [](auto& style) -> auto& { return style.hair_over_share; });
  add_number(
      form, tr("Allowance that must be left, %"), tr("allowance left"),
      QuantityFormat::number(0, 100, "percent"), 1,
      [](auto& style) -> auto& { return style.minimum_allowance_pct; });
}

void HouseStyleForm::make_order() {
  QFormLayout* form = group(tr("Order of the block"));
  add_order<BlockElement>(
      form, tr("Elements"), tr("element order"), [](auto& style) -> auto& { return style.order; });
  add_choice<RoleSeparator>(
      form, tr("Between colours"), tr("separator"),
      [](auto& style) -> auto& { return style.role_separator; });
  add_check(
      form, tr("Lists under each other"), tr("alignment"),
      [](auto& style) -> auto& { return style.align_roles; });
  add_check(
      form, tr("Total line"), tr("total line"), [](auto& style) -> auto& { return style.total_line; });
  add_words(
      form, tr("Word of the total"), tr("total word"),
      [](auto& style) -> auto& { return style.total_words; });
  add_check(
      form, tr("Metres for every colour and size"), tr("metres line"),
      [](auto& style) -> auto& { return style.metres_line; });
}

void HouseStyleForm::make_figures() {
  QFormLayout* form = group(tr("Figures"));
  add_choice<SystemOrder>(
      form, tr("Systems"), tr("systems"), [](auto& style) -> auto& { return style.systems; });
  add_choice<SecondSystem>(
      form, tr("Second system"), tr("second system"),
      [](auto& style) -> auto& { return style.second_system; });
  add_choice<DecimalMark>(
      form, tr("Decimal mark"), tr("decimal mark"), [](auto& style) -> auto& { return style.mark; });
  add_choice<FractionStyle>(
      form, tr("Fractions"), tr("fractions"), [](auto& style) -> auto& { return style.fractions; });
  add_choice<FractionStyle>(
      form, tr("Ounces"), tr("ounces"), [](auto& style) -> auto& { return style.ounces; });
}

void HouseStyleForm::make_lists() {
  QFormLayout* form = group(tr("Lists"));
  add_choice<SizeBrackets>(
      form, tr("Size brackets"), tr("brackets"), [](auto& style) -> auto& { return style.brackets; });
  add_choice<CountedIn>(
      form, tr("Counted in"), tr("counted in"), [](auto& style) -> auto& { return style.counted_in; });
  add_choice<UnitWord>(
      form, tr("Unit word"), tr("unit word"), [](auto& style) -> auto& { return style.unit_word; });
  add_words(
      form, tr("Word for a skein"), tr("skein word"), [](auto& style) -> auto& { return style.skein_word; });
  add_words(
      form, tr("Its plural"), tr("skein plural"),
      [](auto& style) -> auto& { return style.skein_word_plural; });
}

void HouseStyleForm::make_names() {
  QFormLayout* form = group(tr("Names and description"));
  add_choice<RolePlace>(
      form, tr("Colour label"), tr("label place"), [](auto& style) -> auto& { return style.role_place; });
  add_choice<ShadeNumber>(
      form, tr("Shade number"), tr("shade number"), [](auto& style) -> auto& { return style.shade_number; });
  add_order<DescriptionElement>(
      form, tr("&Description"), tr("description order"),
      [](auto& style) -> auto& { return style.description; });
  add_choice<CategoryWords>(
      form, tr("Weight words"), tr("weight words"),
      [](auto& style) -> auto& { return style.category_words; });
  add_choice<FibreNames>(
      form, tr("Fibre names"), tr("fibre names"), [](auto& style) -> auto& { return style.fibre_names; });
  add_check(
      form, tr("Needles in mm"), tr("needles in mm"),
      [](auto& style) -> auto& { return style.needles_metric; });
  add_check(
      form, tr("Needles, US sizes"), tr("US needles"), [](auto& style) -> auto& { return style.needles_us; });
  add_check(
      form, tr("Needles, old UK sizes"), tr("old UK needles"),
      [](auto& style) -> auto& { return style.needles_old_uk; });
  add_check(
      form, tr("Needles, Japanese sizes"), tr("Japanese needles"),
      [](auto& style) -> auto& { return style.needles_japanese; });
  add_words(
      form, tr("Word for washed"), tr("washed word"),
      [](auto& style) -> auto& { return style.washed_words; });
  add_words(
      form, tr("Word for withdrawn"), tr("withdrawn word"),
      [](auto& style) -> auto& { return style.withdrawn_words; });
}

void HouseStyleForm::make_notes() {
  QFormLayout* form = group(tr("Length notes"));
  add_check(
      form, tr("Note where a colour takes part of a skein"), tr("length notes"),
      [](auto& style) -> auto& { return style.length_notes; });
  add_number(
      form, tr("At most, % of a skein"), tr("note threshold"), QuantityFormat::number(1, 100, "percent"), 100,
      [](auto& style) -> auto& { return style.length_note_share; });
  add_number(
      form, tr("Rounded up to, m"), tr("note step"), QuantityFormat::number(0.1, 100, "metres"), 1,
      [](auto& style) -> auto& { return style.note_step_m; });
  add_words(
      form, tr("&Wording"), tr("note wording"), [](auto& style) -> auto& { return style.length_note_words; });
}

}  // namespace skeinproof
