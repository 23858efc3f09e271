// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/fabrics_pane.h"

#include <QGridLayout>
#include <QLabel>
#include <QListView>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

#include "app/pages/pieces/fabric_figures.h"
#include "app/pages/pieces/piece_words.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_table.h"
#include "core/pattern/edits.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

void add_field(QGridLayout& grid, int row, int column, const QString& text, QWidget* field, int span = 1) {
  if (auto* choices = qobject_cast<QComboBox*>(field)) {
    choices->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    choices->setMinimumContentsLength(8);
  }
  auto* label = new QLabel(text);
  label->setBuddy(field);
  grid.addWidget(label, row, 2 * column);
  grid.addWidget(field, row, 2 * column + 1, 1, span);
}

PartList fabric_list() {
  PartList list = part_list(FabricsPane::tr("fabric"), FabricsPane::tr("add a fabric"), &Pattern::fabrics);
  list.name = [](const Pattern& pattern, std::size_t row) { return text_of(pattern.fabrics[row].name); };
  list.append = [](Pattern& pattern) {
    const FabricId id = add_fabric(pattern, {});
    // The first fabric is the one every section that has none is knitted in.
    if (pattern.fabrics.size() > 1) return;
    for (Piece& piece : pattern.pieces) {
      for (Section& section : piece.sections)
        if (!section.fabric) section.fabric = id;
      for (Edge& edge : piece.edges)
        if (!edge.fabric) edge.fabric = id;
    }
  };
  list.erase = [](Pattern& pattern, std::size_t row) { erase_fabric(pattern, pattern.fabrics[row].id); };
  list.duplicate = [](Pattern& pattern, std::size_t row) {
    duplicate_fabric(pattern, pattern.fabrics[row].id);
  };
  list.move = [](Pattern& pattern, std::size_t from, std::size_t to) {
    move_part(pattern.fabrics, from, to);
  };
  return list;
}

}  // namespace

FabricsPane::FabricsPane(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      form_(
          open, this, [this](const Pattern& pattern) { return pattern.fabric(id_); },
          [](const Fabric& fabric) { return text_of(fabric.name); }),
      form_head_(new PaneHeader(tr("Gauge and loop"))),
      figures_(new FigureList) {
  make_table();
  figures_->view()->setAccessibleName(tr("What follows from the fabric"));
  figures_->set_empty_words(tr("Nothing follows yet: type the stitches and rows of a gauge."));
  auto* figures_head = new PaneHeader(tr("What follows"));
  figures_head->set_note(tr("a row shows its source"));
  auto* splitter = new QSplitter(Qt::Vertical);
  splitter->setChildrenCollapsible(false);
  const auto pane = [splitter](QWidget* head, QWidget* body) {
    auto* whole = new QWidget;
    auto* layout = new QVBoxLayout(whole);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    if (head != nullptr) layout->addWidget(head);
    layout->addWidget(body, 1);
    splitter->addWidget(whole);
  };
  pane(nullptr, table_);
  pane(form_head_, make_form());
  pane(figures_head, figures_);
  splitter->setStretchFactor(0, 1);
  splitter->setStretchFactor(2, 2);
  splitter->setSizes({scaled(this, 120), scaled(this, 250), scaled(this, 330)});
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(splitter);
  connect(table_, &PartTable::says, this, &FabricsPane::says);
  connect(table_, &PartTable::current_part_changed, this, [this](std::uint32_t key) {
    id_ = FabricId{key};
    refresh(true);
    emit fabric_chosen(key);
  });
  connect(&open_, &OpenPattern::changed, this, [this] { refresh(); });
  connect(&open_, &OpenPattern::reader_changed, this, [this] { refresh(); });
  table_->refresh(true);
  id_ = FabricId{table_->current_key()};
  refresh(true);
}

void FabricsPane::make_table() {
  PartColumn name = text_column(
      tr("Fabric"), tr("name of fabric"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.fabrics[row].name; });
  name.stretch = 1;
  PartColumn gauge = computed_column(tr("Gauge"), [this](const Pattern& pattern, std::size_t row) {
    return gauge_line(pattern.fabrics[row].gauge, open_.reader());
  });
  PartColumn loop = computed_column(tr("Loop"), [this](const Pattern& pattern, std::size_t row) {
    return loop_line(pattern, pattern.fabrics[row], open_.reader());
  });
  gauge.right = loop.right = true;
  table_ = new PartTable(open_, fabric_list(), {name, gauge, loop});
  table_->setAccessibleName(tr("Fabrics"));
}

QWidget* FabricsPane::make_form() {
  form_body_ = new QWidget;
  auto* grid = new QGridLayout(form_body_);
  grid->setContentsMargins(scaled(this, 10), scaled(this, 8), scaled(this, 10), scaled(this, 8));
  grid->setHorizontalSpacing(scaled(this, 8));
  grid->setVerticalSpacing(scaled(this, 5));
  grid->setColumnStretch(1, 1);
  grid->setColumnStretch(3, 1);
  lay_out_gauge(*grid);
  lay_out_swatch(*grid);
  grid->setRowStretch(grid->rowCount(), 1);
  auto* area = new QScrollArea;
  area->setFocusPolicy(Qt::NoFocus);  // its fields take it
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  area->setWidget(form_body_);
  return area;
}

void FabricsPane::lay_out_gauge(QGridLayout& grid) {
  add_field(grid, 0, 0, tr("&Name"),
            form_.text(
                tr("name of fabric"), [](auto& fabric) -> auto& { return fabric.name; }));
  add_field(grid, 0, 1, tr("Struct&ure"),
            form_.choice<Structure>(
                tr("structure"), [](auto& fabric) -> auto& { return fabric.structure; }));
  add_field(grid, 1, 0, tr("S&titches"),
            form_.quantity<double>(
                QuantityFormat::number(1, 200, "stitches"), tr("stitch gauge"),
                [](auto& fabric) -> auto& { return fabric.gauge.stitches; }));
  add_field(grid, 1, 1, tr("Ro&ws"),
            form_.quantity<double>(
                QuantityFormat::number(1, 300, "rows"), tr("row gauge"),
                [](auto& fabric) -> auto& { return fabric.gauge.rows; }));
  // The length the gauge is counted over is always there; the form edits values that may be absent.
  auto* over = new QuantityField(QuantityFormat::cloth(), open_, form_body_);
  over->setAccessibleName(tr("length of the gauge"));
  over->set_required(tr("A gauge is counted over a length, such as 10 cm."));
  connect(over, &QuantityField::committed, this, [this, over](const FieldValue& value) {
    if (!value) return;
    form_.change(
        form_.label(tr("length of the gauge"), show_quantity(over->format(), open_.reader(), *value)),
        [&](Fabric& fabric) { fabric.gauge.over = from_plain<Centimetres>(*value); });
  });
  form_.follow(
      over, [over](const Fabric& fabric) { over->set_value(FieldValue(to_plain(fabric.gauge.over))); },
      [over] { over->give_back(); });
  add_field(grid, 2, 0, tr("Over"), over);
  add_field(grid, 2, 1, tr("Needle"),
            form_.quantity<Centimetres>(
                QuantityFormat::needle(), tr("needle"), [](auto& fabric) -> auto& { return fabric.needle; }));
  add_field(grid, 3, 0, tr("State"),
            form_.choice<GaugeState>(
                tr("state of the gauge"), [](auto& fabric) -> auto& { return fabric.gauge.state; }));
  add_field(grid, 3, 1, tr("Worked"),
            form_.choice<Worked>(
                tr("worked"), [](auto& fabric) -> auto& { return fabric.gauge.worked; }));
}

void FabricsPane::lay_out_swatch(QGridLayout& grid) {
  add_field(grid, 4, 0, tr("Loop length"),
            form_.choice<LoopSource>(
                tr("loop length"), [](auto& fabric) -> auto& { return fabric.loop_source; }));
  add_field(grid, 4, 1, tr("Float a stitch"),
            form_.quantity<Centimetres>(
                QuantityFormat::cloth(), tr("float a stitch"),
                [](auto& fabric) -> auto& { return fabric.float_per_stitch; }));
  const auto box = [this, &grid](int row) {
    auto* holder = new QWidget;
    auto* inner = new QGridLayout(holder);
    inner->setContentsMargins(0, 0, 0, 0);
    inner->setHorizontalSpacing(scaled(this, 8));
    inner->setVerticalSpacing(scaled(this, 5));
    inner->setColumnStretch(1, 1);
    inner->setColumnStretch(3, 1);
    grid.addWidget(holder, row, 0, 1, 4);
    return inner;
  };
  QGridLayout* typed = box(5);
  typed_row_ = typed->parentWidget();
  add_field(*typed, 0, 0, tr("Yarn in a stitch"),
            form_.quantity<Centimetres>(
                QuantityFormat::cloth(), tr("yarn in a stitch"),
                [](auto& fabric) -> auto& { return fabric.typed_loop; }));
  QGridLayout* swatch = box(6);
  swatch_box_ = swatch->parentWidget();
  add_field(*swatch, 0, 0, tr("Swatch weighs"),
            form_.quantity<Grams>(
                QuantityFormat::mass(), tr("weight of the swatch"),
                [](auto& fabric) -> auto& { return fabric.swatch.weight; }));
  add_field(*swatch, 0, 1, tr("Stitches in it"),
            form_.quantity<double>(
                QuantityFormat::number(1, 1e6, "stitches"), tr("stitches of the swatch"),
                [](auto& fabric) -> auto& { return fabric.swatch.stitches; }));
  add_field(*swatch, 1, 0, tr("New skein weighs"),
            form_.quantity<Grams>(
                QuantityFormat::mass(), tr("new skein beside the swatch"),
                [](auto& fabric) -> auto& { return fabric.swatch.new_skein; }));
  add_field(*swatch, 1, 1, tr("or humidity, %"),
            form_.quantity<double>(
                QuantityFormat::number(0, 100, "percent"), tr("humidity at the scale"),
                [](auto& fabric) -> auto& { return fabric.swatch.humidity_pct; }));
  add_field(*swatch, 2, 0, tr("Scale step"),
            form_.quantity<Grams>(
                QuantityFormat::mass(), tr("scale step"),
                [](auto& fabric) -> auto& { return fabric.swatch.scale_step; }));
  add_field(*swatch, 2, 1, tr("Yarn"),
            form_.part_choice<YarnId>(
                tr("yarn of the swatch"), [](auto& fabric) -> auto& { return fabric.swatch.yarn; },
                [](const Pattern& pattern) {
                  std::vector<Choice> choices{{tr("the yarn it is knitted in"), 0}};
                  for (const Yarn& yarn : pattern.yarns)
                    choices.push_back({text_of(yarn.name), yarn.id.value});
                  return choices;
                }));
}

void FabricsPane::refresh(bool other) {
  const Fabric* fabric = open_.pattern().fabric(id_);
  form_.refresh(other);
  form_body_->setEnabled(fabric != nullptr);
  typed_row_->setVisible(fabric != nullptr && fabric->loop_source == LoopSource::typed);
  swatch_box_->setVisible(fabric != nullptr && fabric->loop_source == LoopSource::from_swatch);
  form_head_->set_note(fabric != nullptr ? text_of(fabric->name) : tr("add a fabric above"));
  figures_->set_rows(fabric != nullptr
                         ? fabric_figures(open_.pattern(), *fabric, open_.assessment(), open_.reader())
                         : std::vector<FigureRow>{});
}

bool FabricsPane::show_fabric(FabricId fabric) { return table_->set_current_key(fabric.value); }

void FabricsPane::enter() { table_->setFocus(); }

}  // namespace skeinproof
