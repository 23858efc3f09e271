// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/chart_dialogs.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/pages/pieces/piece_words.h"
#include "app/widgets/chart_inks.h"
#include "app/widgets/ink.h"
#include "app/widgets/part_table.h"
#include "core/base/text.h"
#include "core/fabric/chart_edits.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

constexpr std::string_view usual_letters = "MABCDEFGHIJKLNOPQSTUVWXYZ";

void add_buttons(QDialog* dialog, QFormLayout* form) {
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  QObject::connect(buttons, &QDialogButtonBox::accepted, dialog, &QDialog::accept);
  QObject::connect(buttons, &QDialogButtonBox::rejected, dialog, &QDialog::reject);
  form->addRow(buttons);
}

QSpinBox* squares_box(int value) {
  auto* box = new QSpinBox;
  box->setRange(1, static_cast<int>(most_chart_squares));
  box->setValue(value);
  return box;
}

bool has_symbol(const Chart& chart, char symbol) {
  return std::any_of(chart.colours.begin(), chart.colours.end(),
                     [&](const ChartColour& colour) { return colour.symbol == std::string(1, symbol); });
}

void append_colour(Pattern& pattern, ChartId id) {
  Chart* chart = find_chart(pattern, id);
  if (chart == nullptr || chart->colours.size() >= most_chart_symbols) return;
  for (const char letter : usual_letters) {
    if (has_symbol(*chart, letter)) continue;
    chart->colours.push_back({std::string(1, letter), RoleId{}});
    return;
  }
}

void change_chart(Pattern& pattern, ChartId id, Expected<Chart> changed) {
  if (Chart* chart = find_chart(pattern, id); chart != nullptr && changed) *chart = std::move(*changed);
}

PartList colour_list(ChartId id) {
  PartList list;
  list.part = ChartColoursDialog::tr("colour");
  list.add_hint = ChartColoursDialog::tr("add a colour");
  list.count = [id](const Pattern& pattern) {
    const Chart* chart = pattern.chart(id);
    return chart != nullptr ? chart->colours.size() : 0;
  };
  list.key = [id](const Pattern& pattern, std::size_t row) {
    return static_cast<std::uint32_t>(
        static_cast<unsigned char>(pattern.chart(id)->colours[row].symbol.front()));
  };
  list.name = [id](const Pattern& pattern, std::size_t row) {
    return text_of(pattern.chart(id)->colours[row].symbol);
  };
  list.append = [id](Pattern& pattern) { append_colour(pattern, id); };
  // The squares of a colour that goes become no stitch, so that none is left without a colour.
  list.erase = [id](Pattern& pattern, std::size_t row) {
    const Chart& chart = *pattern.chart(id);
    change_chart(pattern, id, with_symbol_replaced(chart, chart.colours[row].symbol.front(), no_stitch));
  };
  list.move = [id](Pattern& pattern, std::size_t from, std::size_t to) {
    auto& colours = find_chart(pattern, id)->colours;
    ChartColour moved = std::move(colours[from]);
    colours.erase(colours.begin() + static_cast<std::ptrdiff_t>(from));
    colours.insert(colours.begin() + static_cast<std::ptrdiff_t>(to), std::move(moved));
  };
  return list;
}

PartColumn letter_column(OpenPattern& open, ChartId id) {
  PartColumn column;
  column.head = ChartColoursDialog::tr("Letter");
  column.undo_name = ChartColoursDialog::tr("letter");
  column.text = [id](const Pattern& pattern, std::size_t row) {
    return text_of(pattern.chart(id)->colours[row].symbol);
  };
  column.read = [&open, id](const QString& typed, std::size_t) -> Expected<RowEdit> {
    const std::string letter = typed.trimmed().toStdString();
    if (letter.size() != 1 || !is_chart_symbol(letter.front()))
      return failure(ErrorKind::wrong_format, skeinproof::quoted(letter),
                     "one letter, a figure or a sign such as # or *");
    if (const Chart* chart = open.pattern().chart(id); chart != nullptr && has_symbol(*chart, letter.front()))
      return failure(ErrorKind::wrong_count, skeinproof::quoted(letter) + " twice",
                     "a letter no other colour has");
    return [id, letter](Pattern& pattern, std::size_t row) {
      const Chart& chart = *pattern.chart(id);
      const std::string old = chart.colours[row].symbol;
      auto changed = with_symbol_replaced(chart, old.front(), letter.front());
      if (!changed) return;
      // The renamed colour keeps its place in the list.
      auto& colours = changed->colours;
      std::rotate(colours.begin() + static_cast<std::ptrdiff_t>(row), colours.end() - 1, colours.end());
      change_chart(pattern, id, std::move(changed));
    };
  };
  return column;
}

PartColumn yarn_column(QWidget* of, ChartId id) {
  PartColumn column = choice_column(
      ChartColoursDialog::tr("Yarn"), ChartColoursDialog::tr("yarn"),
      [id](auto& pattern, std::size_t row) -> auto& {
        // One finder for showing and for editing; only the editing one is given a pattern to change.
        return find_chart(const_cast<Pattern&>(pattern), id)->colours[row].role;
      },
      [](const Pattern& pattern, std::size_t) {
        std::vector<Choice> choices{{ChartColoursDialog::tr("no yarn yet"), 0}};
        for (const Role& role : pattern.roles)
          choices.push_back(
              {text_of(role.shade.name.empty() ? role.label : role.label + " " + role.shade.name),
               role.id.value});
        return choices;
      });
  column.chip = [of, id](const Pattern& pattern, std::size_t row) {
    return role_fill(pattern, pattern.chart(id)->colours[row].role, ink_of(of->palette()));
  };
  column.stretch = 1;
  return column;
}

PartColumn squares_column(ChartId id) {
  PartColumn column =
      computed_column(ChartColoursDialog::tr("Squares"), [id](const Pattern& pattern, std::size_t row) {
        const Chart& chart = *pattern.chart(id);
        long squares = 0;
        for (const std::string& round : *chart.rounds)
          squares += std::count(round.begin(), round.end(), chart.colours[row].symbol.front());
        return QString::number(squares);
      });
  column.right = true;
  return column;
}

}  // namespace

NameDialog::NameDialog(const QString& what, const QString& name, QWidget* parent)
    : QDialog(parent), name_(new QLineEdit(name)) {
  setAttribute(Qt::WA_DeleteOnClose);
  setWindowTitle(what);
  auto* form = new QFormLayout(this);
  form->addRow(tr("&Name"), name_);
  add_buttons(this, form);
  name_->selectAll();
}

QString NameDialog::name() const { return name_->text().trimmed(); }

NewChartDialog::NewChartDialog(const QString& name, QWidget* parent)
    : QDialog(parent), name_(new QLineEdit(name)), width_(squares_box(12)), rounds_(squares_box(20)) {
  setAttribute(Qt::WA_DeleteOnClose);
  setWindowTitle(tr("New chart"));
  auto* form = new QFormLayout(this);
  form->addRow(tr("&Name"), name_);
  form->addRow(tr("&Stitches a round"), width_);
  form->addRow(tr("&Rounds"), rounds_);
  add_buttons(this, form);
  name_->selectAll();
}

QString NewChartDialog::name() const { return name_->text().trimmed(); }
int NewChartDialog::width_in_stitches() const { return width_->value(); }
int NewChartDialog::rounds() const { return rounds_->value(); }

ChartColoursDialog::ChartColoursDialog(OpenPattern& open, ChartId chart, QWidget* parent)
    : QDialog(parent),
      table_(new PartTable(open, colour_list(chart),
                           {letter_column(open, chart), yarn_column(this, chart), squares_column(chart)})) {
  setAttribute(Qt::WA_DeleteOnClose);
  setWindowTitle(tr("Colours of the chart"));
  auto* layout = new QVBoxLayout(this);
  auto* hint =
      new QLabel(tr("A letter paints its colour. The squares of a colour that is deleted become no stitch."));
  hint->setWordWrap(true);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close);
  QPushButton* erase = buttons->addButton(tr("&Delete colour"), QDialogButtonBox::ActionRole);
  erase->setAutoDefault(false);
  connect(erase, &QPushButton::clicked, table_, &PartTable::erase);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  table_->setAccessibleName(windowTitle());
  table_->setMinimumWidth(scaled(this, 320));
  table_->set_height_follows_rows(5);
  layout->addWidget(hint);
  layout->addWidget(table_);
  layout->addWidget(buttons);
}

}  // namespace skeinproof
