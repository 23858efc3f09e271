// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/pieces_page.h"

#include <QApplication>
#include <QButtonGroup>
#include <QClipboard>
#include <QEvent>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QStyledItemDelegate>
#include <QTabWidget>
#include <QToolButton>
#include <QTreeView>
#include <QVBoxLayout>
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/pages/pieces/census_pane.h"
#include "app/pages/pieces/chart_pane.h"
#include "app/pages/pieces/fabrics_pane.h"
#include "app/pages/pieces/part_pane.h"
#include "app/pages/pieces/paste_list.h"
#include "app/pages/pieces/piece_tree_model.h"
#include "app/pages/pieces/piece_words.h"
#include "app/pages/pieces/pieces_sheet.h"
#include "app/widgets/chart_grid.h"
#include "app/widgets/count_words.h"
#include "app/widgets/heavy_when_checked.h"
#include "app/widgets/ink.h"
#include "app/widgets/quantity_text.h"
#include "core/pattern/edits.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

enum View { pieces_view, fabrics_view };

// Rows and columns with some air around the words.
class AiryDelegate : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;
  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const QSize words = QStyledItemDelegate::sizeHint(option, index);
    const int height = option.fontMetrics.height();
    return {words.width() + height / 2, std::max(words.height(), height * 23 / 18)};
  }
};

}  // namespace

PiecesPage::PiecesPage(OpenPattern& open, QWidget* parent)
    : Page(open, parent),
      model_(new PieceTreeModel(open, this)),
      tree_(new QTreeView),
      views_(new QButtonGroup(this)),
      menu_(new QMenu(this)),
      left_(new QStackedWidget),
      empty_(new QLabel(tr("No pieces yet: add a piece, or weigh the sample on the page Weighings."))),
      part_pane_(new PartPane(open)),
      fabrics_(new FabricsPane(open)),
      charts_(new ChartPane(open)),
      census_(new CensusPane(open)),
      splitter_(new QSplitter(Qt::Horizontal)),
      tabs_(new QTabWidget) {
  make_tree();
  make_menu();
  splitter_->setChildrenCollapsible(false);
  splitter_->addWidget(make_left());
  splitter_->addWidget(charts_);
  splitter_->addWidget(census_);
  splitter_->addWidget(tabs_);
  tabs_->hide();
  tabs_->setDocumentMode(true);
  splitter_->setStretchFactor(0, 3);
  splitter_->setStretchFactor(1, 2);
  splitter_->setStretchFactor(2, 3);
  splitter_->setSizes({scaled(this, 545), scaled(this, 375), scaled(this, 370)});
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(splitter_);

  connect(&open_, &OpenPattern::changed, this, &PiecesPage::follow);
  connect(charts_->grid(), &ChartGrid::edited, this, &PiecesPage::show_chart_facts);
  connect(charts_->grid(), &ChartGrid::current_round_changed, census_, &CensusPane::show_round);
  connect(charts_, &ChartPane::chart_chosen, this, [this] { show_chart_facts(); });
  connect(charts_, &ChartPane::says, this, &Page::says);
  connect(census_, &CensusPane::says, this, &Page::says);
  connect(fabrics_, &FabricsPane::says, this, &Page::says);
  connect(part_pane_, &PartPane::says, this, &Page::says);
  connect(model_, &PieceTreeModel::refused, this, &Page::says);
  follow();
  choose_first();
}

void PiecesPage::make_tree() {
  tree_->setModel(model_);
  tree_->setItemDelegate(new AiryDelegate(tree_));
  tree_->setAccessibleName(tr("Pieces, sections and edges"));
  tree_->setUniformRowHeights(true);
  tree_->setFrameShape(QFrame::NoFrame);
  tree_->setAllColumnsShowFocus(true);
  tree_->setSelectionBehavior(QAbstractItemView::SelectRows);
  tree_->setEditTriggers(QAbstractItemView::EditKeyPressed | QAbstractItemView::DoubleClicked |
                         QAbstractItemView::AnyKeyPressed);
  tree_->setContextMenuPolicy(Qt::ActionsContextMenu);
  tree_->setTabKeyNavigation(false);
  tree_->viewport()->installEventFilter(this);
  tree_->header()->setStretchLastSection(false);
  tree_->header()->setSectionsMovable(false);
  tree_->header()->setSectionResizeMode(PieceTreeModel::name, QHeaderView::Stretch);
  tree_->setIndentation(scaled(this, 16));
  connect(tree_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] {
    if (const std::uint32_t part = current_part(); part != 0) {
      part_ = part;
      part_chosen();
    }
  });
  connect(tree_, &QTreeView::collapsed, this,
          [this](const QModelIndex& index) { closed_.push_back(model_->part_at(index)); });
  connect(tree_, &QTreeView::expanded, this,
          [this](const QModelIndex& index) { std::erase(closed_, model_->part_at(index)); });
  // After a reset the same parts are open and the same one is chosen, or the first where it is gone.
  connect(model_, &QAbstractItemModel::modelReset, this, [this] {
    const std::vector<std::uint32_t> closed = closed_;
    for (int row = 0; row < model_->rowCount(); ++row) {
      const QModelIndex piece = model_->index(row, 0);
      tree_->setExpanded(piece,
                         std::find(closed.begin(), closed.end(), model_->part_at(piece)) == closed.end());
    }
    if (!choose_part(part_)) choose_first();
  });
  tree_->expandAll();
}

void PiecesPage::make_menu() {
  const auto add = [this](const QString& text, const QKeySequence& keys, auto&& act) {
    QAction* action = menu_->addAction(text, this, act);
    action->setShortcut(keys);
    action->setShortcutContext(Qt::WidgetShortcut);
    tree_->addAction(action);
  };
  add(tr("Add &piece"), {}, [this] { add_piece(); });
  add(tr("Add &section"), Qt::Key_Insert, [this] { add_section(); });
  add(tr("Add &edge: cast-on, bind-off, seam, ends"), {}, [this] { add_edge(); });
  menu_->addSeparator();
  add(tr("Paste &list…"), {}, [this] { paste_list(QApplication::clipboard()->text()); });
  menu_->addSeparator();
  add(tr("&Rename"), {}, [this] { edit_name(current_part()); });
  add(tr("&Duplicate"), Qt::CTRL | Qt::Key_D, [this] { duplicate_part(); });
  add(tr("Delete"), Qt::Key_Delete, [this] { delete_part(); });
  add(tr("Move &up"), Qt::ALT | Qt::Key_Up, [this] { move_part(-1); });
  add(tr("Move do&wn"), Qt::ALT | Qt::Key_Down, [this] { move_part(1); });
}

QWidget* PiecesPage::make_bar() {
  auto* bar = new QWidget;
  auto* row = new QHBoxLayout(bar);
  row->setContentsMargins(scaled(this, 8), scaled(this, 6), scaled(this, 8), scaled(this, 6));
  row->setSpacing(scaled(this, 4));
  auto* switches = new QHBoxLayout;
  switches->setSpacing(0);
  const auto view = [&](const QString& text, View id) {
    auto* button = new QToolButton;
    button->setText(text);
    button->setCheckable(true);
    button->setFocusPolicy(Qt::TabFocus);
    views_->addButton(button, id);
    switches->addWidget(button);
    show_checked_heavy(button);
    return button;
  };
  view(tr("&Pieces"), pieces_view)->setChecked(true);
  view(tr("Fab&rics"), fabrics_view);
  connect(views_, &QButtonGroup::idClicked, this, [this](int id) {
    show_fabrics(id == fabrics_view);
    enter();
  });
  row->addLayout(switches);
  row->addStretch(1);
  const auto push = [&](const QString& text, auto&& act) {
    auto* button = new QPushButton(text);
    button->setAutoDefault(false);
    connect(button, &QPushButton::clicked, this, act);
    row->addWidget(button);
  };
  push(tr("&Add piece"), [this] { add_piece(); });
  push(tr("A&dd section"), [this] { add_section(); });
  auto* more = new QToolButton;
  more->setText(tr("More"));
  more->setAccessibleName(tr("More about pieces"));
  more->setPopupMode(QToolButton::InstantPopup);
  more->setFocusPolicy(Qt::TabFocus);
  more->setMenu(menu_);
  row->addWidget(more);
  return bar;
}

QWidget* PiecesPage::make_left() {
  auto* pieces = new QSplitter(Qt::Vertical);
  pieces->setChildrenCollapsible(false);
  auto* upper = new QWidget;
  upper->setAutoFillBackground(true);
  auto* upper_layout = new QVBoxLayout(upper);
  upper_layout->setContentsMargins(0, 0, 0, 0);
  empty_->setWordWrap(true);
  empty_->setMargin(scaled(this, 12));
  upper_layout->addWidget(empty_);
  upper_layout->addWidget(tree_, 1);
  pieces->addWidget(upper);
  pieces->addWidget(part_pane_);
  pieces->setSizes({scaled(this, 300), scaled(this, 420)});
  left_->addWidget(pieces);
  left_->addWidget(fabrics_);
  auto* whole = new QWidget;
  auto* layout = new QVBoxLayout(whole);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(make_bar());
  layout->addWidget(left_, 1);
  return whole;
}

void PiecesPage::follow() {
  const bool any = !open_.pattern().pieces.empty();
  empty_->setVisible(!any);
  part_pane_->setVisible(any);
  fit_columns();
  show_chart_facts();
}

void PiecesPage::fit_columns() {
  for (int column = PieceTreeModel::fabric; column < PieceTreeModel::column_count; ++column)
    tree_->resizeColumnToContents(column);
  // The names keep a readable width; where there is no room for it, the tree scrolls.
  int taken = 0;
  for (int column = PieceTreeModel::fabric; column < PieceTreeModel::column_count; ++column)
    taken += tree_->columnWidth(column);
  const int least = scaled(this, 110);
  const bool roomy = tree_->viewport()->width() - taken >= least;
  tree_->header()->setSectionResizeMode(PieceTreeModel::name,
                                        roomy ? QHeaderView::Stretch : QHeaderView::Fixed);
  if (!roomy) tree_->header()->resizeSection(PieceTreeModel::name, least);
}

bool PiecesPage::eventFilter(QObject* watched, QEvent* event) {
  // The tree goes before the page and its viewport tells of it, so the kind of event is asked first.
  if (event->type() == QEvent::Resize && watched == tree_->viewport()) fit_columns();
  return Page::eventFilter(watched, event);
}

std::uint32_t PiecesPage::current_part() const { return model_->part_at(tree_->currentIndex()); }

bool PiecesPage::choose_part(std::uint32_t part) {
  const QModelIndex index = model_->index_of(part);
  if (!index.isValid()) return false;
  tree_->expand(index.parent());
  tree_->setCurrentIndex(index);
  tree_->scrollTo(index);
  part_ = part;
  part_chosen();
  return true;
}

void PiecesPage::choose_first() {
  const QModelIndex piece = model_->index(0, 0);
  const QModelIndex inside = model_->index(0, 0, piece);
  if (piece.isValid()) choose_part(model_->part_at(inside.isValid() ? inside : piece));
}

void PiecesPage::part_chosen() {
  part_pane_->show_part(part_);
  const PiecePlace place = find_in_pieces(open_.pattern(), part_);
  if (place.section != nullptr && place.section->source == StitchSource::chart)
    charts_->show_chart(place.section->chart);
  show_chart_facts();
}

void PiecesPage::show_chart_facts() {
  const FabricId fabric = fabric_of_chart(open_.pattern(), charts_->chart_id(), part_);
  charts_->set_fabric(fabric);
  census_->show_chart(charts_->grid()->chart(), charts_->grid()->census(), fabric);
  census_->show_round(charts_->grid()->current_round());
}

void PiecesPage::show_fabrics(bool fabrics) {
  views_->button(fabrics ? fabrics_view : pieces_view)->setChecked(true);
  left_->setCurrentIndex(fabrics ? fabrics_view : pieces_view);
}

void PiecesPage::enter() {
  if (left_->currentWidget() == fabrics_)
    fabrics_->enter();
  else
    tree_->setFocus();
}

bool PiecesPage::go_to(std::uint32_t part) {
  if (choose_part(part)) {
    show_fabrics(false);
    enter();
    return true;
  }
  if (fabrics_->show_fabric(FabricId{part})) {
    show_fabrics(true);
    enter();
    return true;
  }
  if (!charts_->show_chart(ChartId{part})) return false;
  show_chart_facts();
  charts_->grid()->setFocus();
  return true;
}

std::vector<FindPlace> PiecesPage::places() {
  std::vector<FindPlace> places;
  const auto add = [&](const std::string& text, std::uint32_t part) {
    places.push_back({text_of(text), [this, part] { go_to(part); }});
  };
  const Pattern& pattern = open_.pattern();
  for (const Piece& piece : pattern.pieces) {
    add(piece.name, piece.id.value);
    for (const Section& section : piece.sections) add(section.name, section.id.value);
    for (const Edge& edge : piece.edges) add(edge.name, edge.id.value);
  }
  for (const Fabric& fabric : pattern.fabrics) add(fabric.name, fabric.id.value);
  for (const Chart& chart : pattern.charts) add(chart.name, chart.id.value);
  return places;
}

bool PiecesPage::find_next(const QString& words) { return finder_.find_next(places(), words); }

std::optional<Sheet> PiecesPage::sheet() const { return pieces_sheet(open_.pattern(), open_.reader()); }

void PiecesPage::edit_name(std::uint32_t part) {
  if (!choose_part(part)) return;
  show_fabrics(false);
  tree_->setFocus();
  tree_->edit(model_->index_of(part));
}

void PiecesPage::add_piece() {
  PieceId id;
  open_.apply(tr("add a piece"), [&](Pattern& pattern) {
    id = skeinproof::add_piece(pattern, tr("Piece %1").arg(pattern.pieces.size() + 1).toStdString());
  });
  edit_name(id.value);
}

void PiecesPage::add_to_piece(const QString& label, bool edge) {
  std::uint32_t id = 0;
  open_.apply(label, [&](Pattern& pattern) {
    const PiecePlace place = find_in_pieces(pattern, part_);
    const PieceId piece = place ? place.piece->id
                          : pattern.pieces.empty()
                              ? skeinproof::add_piece(pattern, tr("Piece 1").toStdString())
                              : pattern.pieces.back().id;
    id = edge ? skeinproof::add_edge(pattern, piece, tr("cast-on").toStdString()).value
              : skeinproof::add_section(pattern, piece, tr("section").toStdString()).value;
  });
  edit_name(id);
}

void PiecesPage::add_section() { add_to_piece(tr("add a section"), false); }
void PiecesPage::add_edge() { add_to_piece(tr("add an edge"), true); }

void PiecesPage::duplicate_part() {
  std::uint32_t copy = 0;
  open_.apply(tr("duplicate"), [&](Pattern& pattern) { copy = duplicate_in_pieces(pattern, part_); });
  choose_part(copy);
}

void PiecesPage::delete_part() {
  const PiecePlace place = find_in_pieces(open_.pattern(), part_);
  if (!place) return;
  const std::string& name = place.section != nullptr ? place.section->name
                            : place.edge != nullptr  ? place.edge->name
                                                     : place.piece->name;
  const QModelIndex now = model_->index_of(part_);
  QModelIndex next = tree_->indexBelow(now);
  if (!next.isValid() || next.parent() != now.parent()) next = tree_->indexAbove(now);
  const std::uint32_t gone = part_, neighbour = model_->part_at(next);
  part_ = neighbour;
  open_.apply(tr("delete %1").arg(text_of(name)),
              [&](Pattern& pattern) { erase_from_pieces(pattern, gone); });
  if (neighbour == 0) part_pane_->show_part(0);
}

void PiecesPage::move_part(int by) {
  const std::uint32_t part = part_;
  open_.apply(by < 0 ? tr("move up") : tr("move down"),
              [&](Pattern& pattern) { move_in_pieces(pattern, part, by); });
  choose_part(part);
}

PasteListDialog* PiecesPage::paste_list(const QString& text) {
  auto* ask = new PasteListDialog(open_, text, this);
  connect(ask, &QDialog::accepted, this, [this, ask] {
    const PiecePlace place = find_in_pieces(open_.pattern(), part_);
    const PieceId piece = place ? place.piece->id : PieceId{};
    const auto list = ask->list();
    open_.apply(tr("paste %1").arg(count_words(list.size(), tr("section"), tr("sections"))),
                [&](Pattern& pattern) { take_section_list(pattern, list, piece); });
  });
  ask->open();
  return ask;
}

// Three panes side by side while there is room for them, else the census becomes a tab beside the chart.
void PiecesPage::arrange() {
  const bool narrow = width() < scaled(this, 1060);
  if (narrow == (tabs_->count() > 0)) return;
  if (narrow) {
    tabs_->addTab(charts_, tr("Chart"));
    tabs_->addTab(census_, tr("Census"));
    tabs_->show();
    splitter_->setSizes({width() / 2, width() / 2});
    return;
  }
  tabs_->hide();
  splitter_->insertWidget(1, charts_);
  splitter_->insertWidget(2, census_);
  charts_->show();
  census_->show();
  splitter_->setSizes({scaled(this, 545), scaled(this, 375), scaled(this, 370), 0});
}

void PiecesPage::resizeEvent(QResizeEvent* event) {
  Page::resizeEvent(event);
  arrange();
}

void PiecesPage::changeEvent(QEvent* event) {
  Page::changeEvent(event);
  if (event->type() == QEvent::FontChange) {
    tree_->setIndentation(scaled(this, 16));
    fit_columns();
    arrange();
  }
}

}  // namespace skeinproof
