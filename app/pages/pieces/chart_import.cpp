// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/chart_import.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFontDatabase>
#include <QGridLayout>
#include <QImage>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/pages/pieces/piece_words.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/chart_inks.h"
#include "app/widgets/ink.h"
#include "app/widgets/quantity_text.h"
#include "core/fabric/chart_text.h"

namespace skeinproof {
namespace {

// The letters a new chart gives to the roles, in their order.
constexpr std::string_view usual_letters = "MABCDEFGHIJKL";

double distance(const Lab& a, const Lab& b) {
  const double l = a.lightness - b.lightness, x = a.a - b.a, y = a.b - b.b;
  return l * l + x * x + y * y;
}

std::optional<Lab> lab_of_role(const Role& role) {
  if (!role.shade.lightness) return std::nullopt;
  return Lab{role.shade.lightness->value, role.shade.a ? role.shade.a->value : 0,
             role.shade.b ? role.shade.b->value : 0};
}

QString where_words(const Place& place) {
  if (place.line == 0) return {};
  return place.column == 0 ? ChartImport::tr("Line %1: ").arg(place.line)
                           : ChartImport::tr("Line %1, column %2: ").arg(place.line).arg(place.column);
}

}  // namespace

ChartImport::ChartImport(OpenPattern& open, const QString& name, QWidget* parent, bool of_text)
    : QDialog(parent),
      open_(open),
      name_(name),
      options_(new QGridLayout),
      colours_box_(new QWidget),
      colours_(new QGridLayout(colours_box_)),
      preview_(new QLabel),
      summary_(new QLabel),
      buttons_(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel)) {
  setAttribute(Qt::WA_DeleteOnClose);
  setWindowTitle(of_text ? tr("Chart from text") : tr("Chart from a picture"));
  buttons_->button(QDialogButtonBox::Ok)->setText(tr("&Add chart"));
  summary_->setWordWrap(true);
  summary_->setTextFormat(Qt::PlainText);
  summary_->setMinimumWidth(scaled(this, 420));
  preview_->setAccessibleName(tr("Preview of the chart"));
  colours_->setContentsMargins(0, 0, 0, 0);
  auto* layout = new QVBoxLayout(this);
  if (of_text) add_text_options();
  auto* lower = new QHBoxLayout;
  lower->addWidget(preview_, 0, Qt::AlignTop);
  auto* beside = new QVBoxLayout;
  beside->addWidget(summary_);
  beside->addWidget(colours_box_);
  beside->addStretch(1);
  lower->addLayout(beside, 1);
  if (text_ != nullptr) layout->addWidget(text_, 1);
  layout->addLayout(options_);
  layout->addLayout(lower);
  layout->addWidget(buttons_);
  connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

ChartImport::ChartImport(OpenPattern& open, const QString& name, const QString& text, QWidget* parent)
    : ChartImport(open, name, parent, true) {
  text_->setPlainText(text);
  connect(text_, &QPlainTextEdit::textChanged, this, &ChartImport::read_text);
  for (QComboBox* box : {order_, stitch_one_, padding_})
    connect(box, &QComboBox::currentIndexChanged, this, &ChartImport::read_text);
  read_text();
}

ChartImport::ChartImport(OpenPattern& open, const QString& name, ChartPicture picture, QWidget* parent)
    : ChartImport(open, name, parent, false) {
  picture_ = std::move(picture);
  take(picture_->chart);
}

void ChartImport::add_text_options() {
  text_ = new QPlainTextEdit;
  text_->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
  text_->setTabChangesFocus(true);
  text_->setAccessibleName(tr("The chart as text"));
  text_->setPlaceholderText(
      tr("One round a line, one letter a stitch, - for no stitch; cells of a spreadsheet are read too"));
  struct Option {
    QComboBox** box;
    QString label;
    QStringList choices;
  };
  const Option all[] = {{&order_,
                         tr("Round &1 is"),
                         {tr("as the round numbers say, else the first line"), tr("the first line"),
                          tr("the last line, as drawn")}},
                        {&stitch_one_, tr("&Stitch 1 is"), {tr("at the right"), tr("at the left")}},
                        {&padding_,
                         tr("&Narrower rounds are"),
                         {tr("refused"), tr("filled up at the left"), tr("filled up at the right")}}};
  int row = 0;
  for (const Option& option : all) {
    auto* box = new QComboBox;
    box->addItems(option.choices);
    auto* label = new QLabel(option.label);
    label->setBuddy(box);
    options_->addWidget(label, row, 0);
    options_->addWidget(box, row++, 1);
    *option.box = box;
  }
  padding_->setCurrentIndex(static_cast<int>(Padding::left));
  options_->setColumnStretch(1, 1);
}

void ChartImport::read_text() {
  ChartTextOptions options;
  options.order = static_cast<RoundOrder>(order_->currentIndex());
  options.stitch_one = static_cast<StitchOne>(stitch_one_->currentIndex());
  options.padding = static_cast<Padding>(padding_->currentIndex());
  const QString text = text_->toPlainText();
  auto read = read_chart_text(text.toStdString(), options);
  if (read) return take(std::move(*read));
  chart_.reset();
  summary_->setText(text.trimmed().isEmpty() ? tr("Type or paste the chart above.")
                                             : where_words(read.error().place) + sentence_of(read.error()));
  preview_->clear();
  colours_box_->hide();
  buttons_->button(QDialogButtonBox::Ok)->setEnabled(false);
}

void ChartImport::take(Chart chart) {
  chart.name = name_.toStdString();
  for (ChartColour& colour : chart.colours) {
    const char symbol = colour.symbol.front();
    const auto known = roles_.find(symbol);
    colour.role = known != roles_.end() ? known->second : likely_role(symbol);
  }
  chart_ = std::move(chart);
  buttons_->button(QDialogButtonBox::Ok)->setEnabled(true);
  show_colours();
  show_preview();
}

// A picture goes by the nearest shade; a letter by what it stands for in the pattern's other charts, then by
// the letter that a new chart gives the role.
RoleId ChartImport::likely_role(char symbol) const {
  const Pattern& pattern = open_.pattern();
  if (picture_) {
    const auto colour = std::find_if(picture_->colours.begin(), picture_->colours.end(),
                                     [&](const PictureColour& known) { return known.symbol == symbol; });
    const Role* nearest = nullptr;
    double least = 0;
    for (const Role& role : pattern.roles) {
      const auto lab = lab_of_role(role);
      if (!lab || colour == picture_->colours.end()) continue;
      const double away = distance(*lab, lab_of(colour->colour));
      if (nearest == nullptr || away < least) {
        nearest = &role;
        least = away;
      }
    }
    return nearest != nullptr ? nearest->id : RoleId{};
  }
  for (const Chart& other : pattern.charts)
    for (const ChartColour& colour : other.colours)
      if (colour.symbol == std::string(1, symbol) && colour.role) return colour.role;
  const std::size_t place = usual_letters.find(symbol);
  return place < pattern.roles.size() ? pattern.roles[place].id : RoleId{};
}

void ChartImport::set_role(char symbol, RoleId role) {
  roles_[symbol] = role;
  if (!chart_) return;
  for (ChartColour& colour : chart_->colours)
    if (colour.symbol.front() == symbol) colour.role = role;
  show_preview();
}

void ChartImport::show_colours() {
  while (QLayoutItem* item = colours_->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  std::vector<Choice> choices{{tr("no yarn yet"), 0}};
  for (const Role& role : open_.pattern().roles) {
    const std::string words = role.shade.name.empty() ? role.label : role.label + " " + role.shade.name;
    choices.push_back({text_of(words), role.id.value});
  }
  const Ink ink = ink_of(palette());
  int row = 0;
  for (const ChartColour& colour : chart_->colours) {
    const char symbol = colour.symbol.front();
    auto* label = new QLabel(text_of(colour.symbol));
    if (picture_)
      for (const PictureColour& known : picture_->colours)
        if (known.symbol == symbol) {
          const QColor fill(known.colour.red, known.colour.green, known.colour.blue);
          label->setPixmap(chip_picture(fill, fill, ink, scaled(this, 14), devicePixelRatioF()));
          label->setAccessibleName(tr("Colour %1 of the picture").arg(QLatin1Char(symbol)));
        }
    auto* field = new ChoiceField;
    field->set_choices(choices);
    field->show_choice(colour.role.value);
    field->setAccessibleName(tr("Yarn of %1").arg(QLatin1Char(symbol)));
    connect(field, &ChoiceField::chosen, this,
            [this, symbol](std::uint32_t role) { set_role(symbol, RoleId{role}); });
    colours_->addWidget(label, row / 2, row % 2 * 2);
    colours_->addWidget(field, row / 2, row % 2 * 2 + 1);
    ++row;
  }
  colours_box_->show();
}

QString ChartImport::summary() const { return summary_->text(); }

void ChartImport::show_preview() {
  const ChartCensus counted = census(*chart_);
  const auto& rounds = *chart_->rounds;
  const int width = static_cast<int>(rounds.front().size()), height = static_cast<int>(rounds.size());
  QStringList counts;
  for (const auto& [symbol, count] : counted.symbols)
    counts << tr("%1 %2").arg(QLatin1Char(symbol)).arg(count.stitches);
  summary_->setText(tr("%1 stitches × %2 rounds, %3 stitches: %4. Round 1, from the left: %5")
                        .arg(width)
                        .arg(height)
                        .arg(counted.stitches)
                        .arg(counts.join(QStringLiteral(", ")), text_of(rounds.front()).left(40)));
  const Ink ink = ink_of(palette());
  auto inks = square_inks(open_.pattern(), *chart_, ChartLook::colour, ink);
  if (picture_)
    for (const PictureColour& colour : picture_->colours)
      inks[colour.symbol] = {QColor(colour.colour.red, colour.colour.green, colour.colour.blue), {}};
  QImage image(width, height, QImage::Format_RGB32);
  image.fill(ink.header);
  for (int round = 0; round < height; ++round)
    for (int stitch = 0; stitch < width; ++stitch)
      if (const auto found =
              inks.find(rounds[static_cast<std::size_t>(round)][static_cast<std::size_t>(stitch)]);
          found != inks.end())
        image.setPixelColor(stitch, height - 1 - round, found->second.fill);
  const int room = scaled(this, 200);
  const int factor = std::max(1, std::min(room / width, room / height));
  const QSize size = QSize(width, height) * factor;
  preview_->setPixmap(QPixmap::fromImage(
      image.scaled(size.boundedTo({room, room}), Qt::KeepAspectRatio, Qt::FastTransformation)));
}

}  // namespace skeinproof
