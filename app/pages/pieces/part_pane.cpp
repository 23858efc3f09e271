// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/part_pane.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>
#include <initializer_list>

#include "app/pages/pieces/joins.h"
#include "app/pages/pieces/part_rows.h"
#include "app/pages/pieces/piece_words.h"
#include "app/pages/pieces/stripes_text.h"
#include "app/widgets/ink.h"
#include "app/widgets/line_field.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/size_grid.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

QGridLayout* form_layout(QWidget* body) {
  auto* grid = new QGridLayout(body);
  grid->setContentsMargins(scaled(body, 10), scaled(body, 6), scaled(body, 10), scaled(body, 6));
  grid->setHorizontalSpacing(scaled(body, 8));
  grid->setVerticalSpacing(scaled(body, 5));
  grid->setColumnStretch(1, 1);
  grid->setColumnStretch(3, 1);
  return grid;
}

QLabel* add_field(QGridLayout& grid, int row, int column, const QString& text, QWidget* field) {
  auto* label = new QLabel(text);
  label->setBuddy(field);
  grid.addWidget(label, row, 2 * column);
  grid.addWidget(field, row, 2 * column + 1);
  return label;
}

void keep_narrow(ChoiceField* field) {
  field->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  field->setMinimumContentsLength(8);
}

std::vector<Choice> fabric_choices(const Pattern& pattern) {
  std::vector<Choice> choices{{PartPane::tr("no fabric"), 0}};
  for (const Fabric& fabric : pattern.fabrics) choices.push_back({text_of(fabric.name), fabric.id.value});
  return choices;
}

std::vector<Choice> role_choices(const Pattern& pattern) {
  std::vector<Choice> choices{{PartPane::tr("no yarn"), 0}};
  for (const Role& role : pattern.roles)
    choices.push_back(
        {text_of(role.shade.name.empty() ? role.label : role.label + " " + role.shade.name), role.id.value});
  return choices;
}

std::vector<Choice> chart_choices(const Pattern& pattern) {
  std::vector<Choice> choices{{PartPane::tr("no chart"), 0}};
  for (const Chart& chart : pattern.charts) choices.push_back({text_of(chart.name), chart.id.value});
  return choices;
}

}  // namespace

PartPane::PartPane(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      piece_form_(
          open, this,
          [this](const Pattern& pattern) {
            const PiecePlace place = find_in_pieces(pattern, part_);
            return place.section == nullptr && place.edge == nullptr ? place.piece : nullptr;
          },
          [](const Piece& piece) { return text_of(piece.name); }),
      section_form_(
          open, this, [this](const Pattern& pattern) { return find_in_pieces(pattern, part_).section; },
          [](const Section& section) { return text_of(section.name); }),
      edge_form_(
          open, this, [this](const Pattern& pattern) { return find_in_pieces(pattern, part_).edge; },
          [](const Edge& edge) { return text_of(edge.name); }),
      head_(new PaneHeader({})),
      forms_(new QStackedWidget),
      grid_(new SizeGrid(open)),
      joins_head_(new PaneHeader(tr("Joins"))),
      lines_(new QLabel) {
  make_piece_form();
  make_section_form();
  make_edge_form();
  forms_->addWidget(piece_body_);
  forms_->addWidget(section_body_);
  forms_->addWidget(edge_body_);
  forms_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
  lines_->setWordWrap(true);
  lines_->setTextFormat(Qt::PlainText);
  lines_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  lines_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  lines_->setContentsMargins(scaled(this, 12), scaled(this, 6), scaled(this, 12), scaled(this, 6));
  lines_->setAccessibleName(tr("Joins"));
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(head_);
  auto* inside = new QWidget;
  auto* body = new QVBoxLayout(inside);
  body->setContentsMargins(0, 0, 0, 0);
  body->setSpacing(0);
  body->addWidget(forms_);
  body->addWidget(grid_);
  body->addWidget(joins_head_);
  body->addWidget(lines_);
  body->addStretch(1);
  auto* area = new QScrollArea;
  area->setFocusPolicy(Qt::NoFocus);  // its fields take it
  area->setFrameShape(QFrame::NoFrame);
  area->setWidgetResizable(true);
  area->setWidget(inside);
  layout->addWidget(area, 1);
  grid_->set_height_follows_rows(true);
  connect(grid_, &SizeGrid::says, this, &PartPane::says);
  connect(&open_, &OpenPattern::changed, this, [this] { refresh(); });
  connect(&open_, &OpenPattern::reader_changed, this, [this] { refresh(); });
  refresh(true);
}

void PartPane::make_piece_form() {
  piece_body_ = new QWidget;
  auto* copies = new QuantityField(QuantityFormat::number(1, 1000, "copies"), open_, piece_body_);
  copies->setAccessibleName(tr("copies"));
  copies->set_required(tr("A piece is knitted at least once."));
  connect(copies, &QuantityField::committed, this, [this, copies](const FieldValue& value) {
    const int whole = value ? static_cast<int>(value->value) : 0;
    if (!value || value->value != whole) {
      copies->give_back();
      emit says(tr("Copies are whole numbers."));
      return;
    }
    piece_form_.change(piece_form_.label(tr("copies"), QString::number(whole)),
                       [whole](Piece& piece) { piece.copies = whole; });
  });
  piece_form_.follow(
      copies,
      [copies](const Piece& piece) {
        copies->set_value(FieldValue(Entered<double>{static_cast<double>(piece.copies), {}}));
      },
      [copies] { copies->give_back(); });
  QGridLayout& grid = *form_layout(piece_body_);
  add_field(grid, 0, 0, tr("Copies"), copies);
  grid.addWidget(new QuietLabel(tr("how often one item takes this piece")), 0, 2, 1, 2);
}

void PartPane::make_section_form() {
  section_body_ = new QWidget;
  QGridLayout& grid = *form_layout(section_body_);
  ChoiceField* fabric = section_form_.part_choice<FabricId>(
      tr("fabric"), [](auto& section) -> auto& { return section.fabric; }, fabric_choices);
  add_field(grid, 0, 0, tr("Fa&bric"), fabric);
  ChoiceField* source = section_form_.choice<StitchSource>(
      tr("stitches"), [](auto& section) -> auto& { return section.source; },
      [](StitchSource kind) {
        return kind == StitchSource::typed        ? tr("typed for each size")
               : kind == StitchSource::worked_out ? tr("worked out from rows")
                                                  : tr("repeats of a chart");
      });
  add_field(grid, 0, 1, tr("S&titches"), source);
  lay_out_stripes(grid);
  chart_ = section_form_.part_choice<ChartId>(
      tr("chart"), [](auto& section) -> auto& { return section.chart; }, chart_choices);
  chart_label_ = add_field(grid, 1, 0, tr("Chart"), chart_);
  auto* runs = new QHBoxLayout;
  add_run_ = new QPushButton(tr("Add a run"));
  remove_run_ = new QPushButton(tr("Remove the last"));
  add_run_->setToolTip(tr("Rows worked while the stitches go evenly from one count to another"));
  for (QPushButton* button : {add_run_, remove_run_}) {
    button->setAutoDefault(false);
    runs->addWidget(button);
  }
  runs->addStretch(1);
  grid.addLayout(runs, 1, 3);
  connect(add_run_, &QPushButton::clicked, this, &PartPane::add_run);
  connect(remove_run_, &QPushButton::clicked, this, &PartPane::remove_run);
  for (ChoiceField* field : {fabric, source, chart_, colour_, stripe_change_}) keep_narrow(field);
}

// One list names the yarn: a role, or stripes of several.
void PartPane::lay_out_stripes(QGridLayout& grid) {
  colour_ = new ChoiceField;
  colour_->setAccessibleName(tr("Yarn"));
  connect(colour_, &ChoiceField::chosen, this, &PartPane::set_colouring);
  section_form_.follow(colour_, [this](const Section& section) {
    std::vector<Choice> choices = role_choices(open_.pattern());
    choices.push_back({tr("stripes"), stripes_choice});
    colour_->set_choices(choices);
    colour_->show_choice(section.colouring == Colouring::stripes ? stripes_choice : section.role.value);
  });
  colour_label_ = add_field(grid, 1, 0, tr("&Yarn"), colour_);
  stripes_ = new LineField([this](const QString& line) {
    const auto read = read_stripes(line.toStdString(), open_.pattern());
    if (!read) return sentence_of(read.error());
    section_form_.change(section_form_.label(tr("stripes"), line.trimmed()),
                         [&](Section& section) { section.stripes = *read; });
    return QString();
  });
  stripes_->setPlaceholderText(tr("MC 6, CC 4"));
  stripes_->setAccessibleName(tr("Stripe sequence"));
  section_form_.follow(
      stripes_,
      [this](const Section& section) {
        stripes_->show_line(text_of(stripes_text(section.stripes, open_.pattern())));
      },
      [this] { stripes_->give_back(); });
  grid.addWidget(stripes_, 2, 1);
  stripe_change_ = section_form_.choice<StripeChange>(
      tr("resting colours"), [](auto& section) -> auto& { return section.stripe_change; });
  grid.addWidget(stripe_change_, 2, 3);
}

void PartPane::make_edge_form() {
  edge_body_ = new QWidget;
  QGridLayout& grid = *form_layout(edge_body_);
  ChoiceField* kind = edge_form_.choice<EdgeKind>(
      tr("kind of edge"), [](auto& edge) -> auto& { return edge.kind; });
  add_field(grid, 0, 0, tr("&Kind"), kind);
  ChoiceField* role = edge_form_.part_choice<RoleId>(
      tr("yarn"), [](auto& edge) -> auto& { return edge.role; }, role_choices);
  add_field(grid, 0, 1, tr("&Yarn"), role);
  ChoiceField* fabric = edge_form_.part_choice<FabricId>(
      tr("fabric"), [](auto& edge) -> auto& { return edge.fabric; }, fabric_choices);
  add_field(grid, 1, 0, tr("Fa&bric"), fabric);
  rate_ = edge_form_.quantity<double>(
      QuantityFormat::number(0, 100, "centimetres of yarn a stitch"), tr("rate"),
      [](auto& edge) -> auto& { return edge.rate; });
  rate_label_ = add_field(grid, 1, 1, tr("Rate"), rate_);
  for (ChoiceField* field : {kind, role, fabric}) keep_narrow(field);
}

void PartPane::show_part(std::uint32_t part) {
  if (part == part_) return;
  part_ = part;
  refresh(true);
}

void PartPane::set_colouring(std::uint32_t choice) {
  const QString label = section_form_.label(tr("yarn"), colour_->currentText());
  section_form_.change(label, [choice](Section& section) {
    section.colouring = choice == stripes_choice ? Colouring::stripes : Colouring::one_role;
    if (choice != stripes_choice) section.role = RoleId{choice};
  });
}

void PartPane::add_run() {
  section_form_.change(tr("add a run of rows"), [](Section& section) {
    ShapeRun run;
    // A run goes on where the one before it ended.
    if (!section.runs.empty())
      run.from = section.runs.back().to.empty() ? section.runs.back().from : section.runs.back().to;
    section.runs.push_back(std::move(run));
  });
}

void PartPane::remove_run() {
  section_form_.change(tr("remove a run of rows"), [](Section& section) {
    if (!section.runs.empty()) section.runs.pop_back();
  });
}

void PartPane::show_section(const Section& section) {
  const bool of_chart = section.source == StitchSource::chart;
  const bool of_runs = section.source == StitchSource::worked_out;
  const bool striped = !of_chart && section.colouring == Colouring::stripes;
  const auto set_shown = [](bool on, std::initializer_list<QWidget*> widgets) {
    for (QWidget* widget : widgets) widget->setVisible(on);
  };
  set_shown(of_chart, {chart_, chart_label_});
  set_shown(!of_chart, {colour_, colour_label_});
  set_shown(striped, {stripes_, stripe_change_});
  set_shown(of_runs, {add_run_, remove_run_});
  remove_run_->setEnabled(!section.runs.empty());
}

void PartPane::show_head() {
  const Pattern& pattern = open_.pattern();
  const PiecePlace place = find_in_pieces(pattern, part_);
  if (!place) {
    head_->set_title(tr("No piece chosen"));
    head_->set_note({});
    return;
  }
  const QString piece = text_of(place.piece->name);
  head_->set_title(place.section != nullptr ? tr("%1, %2").arg(piece, text_of(place.section->name))
                   : place.edge != nullptr  ? tr("%1, %2").arg(piece, text_of(place.edge->name))
                                            : piece);
  QString note = place.piece->copies > 1
                     ? tr("counts of one of %1 copies, metres of all").arg(place.piece->copies)
                     : tr("one value a size");
  if (place.section == nullptr && place.edge == nullptr) note = tr("metres of all copies");
  const Chart* chart = place.section != nullptr && place.section->source == StitchSource::chart
                           ? pattern.chart(place.section->chart)
                           : nullptr;
  if (chart != nullptr) note = tr("stitches per repeat %1").arg(widths_of_repeat(*chart));
  head_->set_note(note);
}

void PartPane::refresh(bool other) {
  const Pattern& pattern = open_.pattern();
  const PiecePlace place = find_in_pieces(pattern, part_);
  show_head();
  piece_form_.refresh(other);
  section_form_.refresh(other);
  edge_form_.refresh(other);
  forms_->setVisible(static_cast<bool>(place));
  if (place.section != nullptr) {
    forms_->setCurrentWidget(section_body_);
    show_section(*place.section);
  } else if (place.edge != nullptr) {
    forms_->setCurrentWidget(edge_body_);
    const bool counted = place.edge->kind == EdgeKind::cast_on || place.edge->kind == EdgeKind::bind_off;
    const bool has_rate = counted || place.edge->kind == EdgeKind::seam;
    rate_label_->setText(counted ? tr("cm of yar&n a stitch") : tr("times its le&ngth"));
    rate_label_->setVisible(has_rate);
    rate_->setVisible(has_rate);
    rate_->setPlaceholderText(counted ? tr("4 stitch widths") : tr("1.5"));
  } else {
    forms_->setCurrentWidget(piece_body_);
  }
  forms_->setFixedHeight(forms_->isVisibleTo(this) ? forms_->currentWidget()->sizeHint().height() : 0);
  if (const QString shape = part_rows_shape(open_, part_); shape != shape_ || other) {
    shape_ = shape;
    auto rows = part_rows(open_, part_);
    // The cursor waits where typing starts.
    const auto first =
        std::find_if(rows.begin(), rows.end(), [](const SizeRow& row) { return static_cast<bool>(row.set); });
    const auto start = first == rows.end() ? 0 : first - rows.begin();
    grid_->setVisible(!rows.empty());
    grid_->set_rows(std::move(rows));
    if (other && grid_->current_row() >= 0)
      grid_->set_current(static_cast<int>(start), open_.chosen_size_index());
  }
  const Joins joins = joins_of(pattern, part_, open_.chosen_size_index(), open_.reader());
  const QString missing = what_is_missing(pattern, part_);
  joins_head_->set_note(joins.verdict);
  QStringList all = joins.lines;
  if (!missing.isEmpty()) all.prepend(missing);
  lines_->setText(all.join(QLatin1Char('\n')));
  joins_head_->setVisible(!all.isEmpty());
  lines_->setVisible(!all.isEmpty());
}

void PartPane::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  // Once the fields have the new font too: the form is as high as they are.
  if (event->type() == QEvent::FontChange)
    QMetaObject::invokeMethod(
        this, [this] { refresh(); }, Qt::QueuedConnection);
}

QString PartPane::lines() const { return lines_->text(); }

}  // namespace skeinproof
