// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/quantities/choices_panel.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>

#include "app/document/open_pattern.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/quantity_field.h"
#include "core/need/constants.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

QString from(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

template <class Enum>
std::vector<Choice> choices_of() {
  std::vector<Choice> choices;
  for (const auto& [value, word] : EnumWords<Enum>::rows)
    choices.push_back({from(word), static_cast<std::uint32_t>(value)});
  return choices;
}

QString percent_text(double percent, const ReaderStyle& reader) {
  const int decimals = percent == round_half_up(percent) ? 0 : 1;
  return QString::fromStdString(show_number(percent, decimals, reader.numbers));
}

QWidget* labelled(const QString& words, QWidget* field) {
  auto* pair = new QWidget;
  auto* row = new QHBoxLayout(pair);
  row->setContentsMargins(0, 0, 0, 0);
  auto* label = new QLabel(words);
  label->setBuddy(field);
  row->addWidget(label);
  row->addWidget(field);
  return pair;
}

}  // namespace

ChoicesPanel::ChoicesPanel(OpenPattern& open, QWidget* parent)
    : QFrame(parent),
      open_(open),
      allowance_(new QuantityField(QuantityFormat::number(0, 100, "percent"), open)),
      swatch_(new QCheckBox(tr("Swatch counted"))),
      rounding_(new ChoiceField),
      basis_(new ChoiceField),
      joins_(new QCheckBox) {
  auto* flow = new FlowLayout(this);
  flow->addWidget(labelled(tr("Allowance, %"), allowance_));
  flow->addWidget(swatch_);
  flow->addWidget(labelled(tr("Rounding"), rounding_));
  flow->addWidget(labelled(tr("Needs stand on"), basis_));
  flow->addWidget(joins_);
  allowance_->setMaximumWidth(fontMetrics().horizontalAdvance(QLatin1Char('0')) * 8);
  allowance_->set_required(tr("An allowance is a percentage; 0 for none."));
  allowance_->bind<double>(
      tr("allowance"),
      [](const Pattern& pattern) {
        return std::optional(Entered<double>{pattern.house().allowance_pct, {}});
      },
      [](Pattern& pattern, const std::optional<Entered<double>>& value) {
        if (value) pattern.house_styles.front().allowance_pct = value->value;
      });
  rounding_->set_choices(choices_of<Rounding>());
  basis_->set_choices(choices_of<Basis>());
  connect(swatch_, &QCheckBox::clicked, this, [this](bool counted) {
    open_.apply(tr("swatch"),
                [counted](Pattern& pattern) { pattern.house_styles.front().swatch_counted = counted; });
  });
  connect(rounding_, &ChoiceField::chosen, this, [this](std::uint32_t value) {
    open_.apply(tr("rounding"), [value](Pattern& pattern) {
      pattern.house_styles.front().rounding = static_cast<Rounding>(value);
    });
  });
  connect(basis_, &ChoiceField::chosen, this, [this](std::uint32_t value) {
    open_.apply(tr("what needs stand on"),
                [value](Pattern& pattern) { pattern.basis = static_cast<Basis>(value); });
  });
  connect(joins_, &QCheckBox::clicked, this, [this](bool counted) {
    open_.apply(tr("joins"), [counted](Pattern& pattern) { pattern.count_joins = counted; });
  });
  connect(&open_, &OpenPattern::changed, this, &ChoicesPanel::refresh);
  connect(&open_, &OpenPattern::reader_changed, this, &ChoicesPanel::refresh);
  refresh();
}

void ChoicesPanel::refresh() {
  const Pattern& pattern = open_.pattern();
  swatch_->setChecked(pattern.house().swatch_counted);
  rounding_->show_choice(static_cast<std::uint32_t>(pattern.house().rounding));
  rounding_->setToolTip(tr("A hair over: at most %1 % of a skein above a whole one is rounded down while %2 "
                           "% allowance is left.")
                            .arg(percent_text(pattern.house().hair_over_share * 100, open_.reader()),
                                 percent_text(pattern.house().minimum_allowance_pct, open_.reader())));
  basis_->show_choice(static_cast<std::uint32_t>(pattern.basis));
  joins_->setChecked(pattern.count_joins);
  joins_->setText(
      tr("Joins counted, %1 m each")
          .arg(QString::fromStdString(show_number(constant(pattern, "join_m"), 2, open_.reader().numbers))));
}

QString ChoicesPanel::summary(const OpenPattern& open) {
  const Pattern& pattern = open.pattern();
  QStringList parts;
  parts << tr("%1 %").arg(percent_text(pattern.house().allowance_pct, open.reader()));
  parts << (pattern.house().swatch_counted ? tr("swatch counted") : tr("swatch not counted"));
  parts << from(word_of(pattern.house().rounding));
  if (pattern.basis != Basis::automatic) parts << tr("by %1").arg(from(word_of(pattern.basis)));
  if (pattern.count_joins) parts << tr("joins counted");
  return parts.join(QStringLiteral(", "));
}

}  // namespace skeinproof
