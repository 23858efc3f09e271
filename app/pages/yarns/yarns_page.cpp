// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/yarns/yarns_page.h"

#include <QApplication>
#include <QClipboard>
#include <QListView>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

#include "app/document/open_pattern.h"
#include "app/pages/printed_tables.h"
#include "app/pages/yarns/role_table.h"
#include "app/pages/yarns/yarn_figures.h"
#include "app/pages/yarns/yarn_form.h"
#include "app/widgets/count_words.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"
#include "core/pattern/edits.h"
#include "core/need/cautions.h"
#include "core/yarn/read_composition.h"

namespace skeinproof {

namespace {

PartList yarn_list() {
  PartList list = part_list(YarnsPage::tr("yarn"), YarnsPage::tr("add a yarn"), &Pattern::yarns);
  list.name = [](const Pattern& pattern, std::size_t row) {
    return QString::fromStdString(pattern.yarns[row].name);
  };
  list.append = [](Pattern& pattern) {
    const YarnId id = add_yarn(pattern, {});
    // The first yarn is the one every colour that has none is worked in.
    if (pattern.yarns.size() == 1)
      for (Role& role : pattern.roles)
        if (!role.yarn) role.yarn = id;
  };
  list.erase = [](Pattern& pattern, std::size_t row) { erase_yarn(pattern, pattern.yarns[row].id); };
  list.duplicate = [](Pattern& pattern, std::size_t row) {
    Yarn copy = pattern.yarns[row];
    copy.id = take_id<YarnId>(pattern);
    copy.name += YarnsPage::tr(" (copy)").toStdString();
    pattern.yarns.insert(pattern.yarns.begin() + static_cast<std::ptrdiff_t>(row) + 1, std::move(copy));
  };
  list.move = [](Pattern& pattern, std::size_t from, std::size_t to) { move_part(pattern.yarns, from, to); };
  return list;
}

}  // namespace

YarnsPage::YarnsPage(OpenPattern& open, QWidget* parent) : Page(open, parent) {
  auto* upper = new QSplitter(Qt::Horizontal);
  upper->addWidget(make_list_pane());
  upper->addWidget(make_form_pane());
  upper->setStretchFactor(1, 1);
  upper->setSizes({scaled(this, 260), scaled(this, 640)});
  auto* left = new QSplitter(Qt::Vertical);
  left->addWidget(upper);
  left->addWidget(make_role_pane());
  left->setStretchFactor(0, 1);
  left->setSizes({scaled(this, 520), scaled(this, 220)});
  auto* whole = new QSplitter(Qt::Horizontal);
  whole->addWidget(left);
  whole->addWidget(make_figure_pane());
  whole->setStretchFactor(0, 1);
  whole->setSizes({scaled(this, 900), scaled(this, 340)});
  for (QSplitter* splitter : {upper, left, whole}) splitter->setChildrenCollapsible(false);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(whole);
  for (PartTable* table : {yarns_, roles_}) connect(table, &PartTable::says, this, &Page::says);
  connect(form_, &YarnForm::says, this, &Page::says);
  connect(yarns_, &PartTable::current_part_changed, this,
          [this](std::uint32_t key) { show_yarn(YarnId{key}); });
  connect(&open_, &OpenPattern::changed, this, &YarnsPage::refresh);
  connect(&open_, &OpenPattern::reader_changed, this, &YarnsPage::refresh);
  yarns_->refresh(true);
  refresh();
}

QWidget* YarnsPage::make_list_pane() {
  PartColumn name = text_column(
      tr("Yarn"), tr("name of yarn"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.yarns[row].name; });
  name.stretch = 1;
  PartColumn put_up = computed_column(tr("Skein"), [this](const Pattern& pattern, std::size_t row) {
    return put_up_line(pattern.yarns[row].put_up, open_.reader());
  });
  put_up.right = true;
  yarns_ = new PartTable(open_, yarn_list(), {name, put_up});
  yarns_->setAccessibleName(tr("Yarns"));
  auto* head = new PaneHeader(tr("Yarns"));
  head->add_button(
      tr("&Add"), [this] { yarns_->add(); }, tr("Add a yarn"));
  head->add_button(
      tr("D&uplicate"), [this] { yarns_->duplicate(); }, tr("Add a copy of the chosen yarn"));
  head->add_button(
      tr("&Delete"), [this] { yarns_->erase(); }, tr("Delete the chosen yarn (Ctrl+Del)"));
  return make_pane(head, yarns_);
}

QWidget* YarnsPage::make_form_pane() {
  form_ = new YarnForm(open_);
  auto* area = new QScrollArea;
  area->setFocusPolicy(Qt::NoFocus);  // its fields take it
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  area->setWidget(form_);
  form_head_ = new PaneHeader(tr("Band and maker"));
  return make_pane(form_head_, area);
}

QWidget* YarnsPage::make_role_pane() {
  roles_ = make_role_table(open_, nullptr);
  role_head_ = new PaneHeader(tr("Colours"));
  role_head_->add_button(tr("Add &colour"), [this] { roles_->add(); });
  role_head_->add_button(tr("Duplicate"), [this] { roles_->duplicate(); });
  role_head_->add_button(
      tr("Delete"), [this] { roles_->erase(); }, tr("Delete the chosen colour (Ctrl+Del)"));
  role_head_->add_button(
      tr("Up"), [this] { roles_->move(-1); }, tr("Move the chosen colour up (Alt+Up)"));
  role_head_->add_button(
      tr("Down"), [this] { roles_->move(1); }, tr("Move the chosen colour down (Alt+Down)"));
  return make_pane(role_head_, roles_);
}

QWidget* YarnsPage::make_figure_pane() {
  figures_ = new FigureList;
  figures_->view()->setAccessibleName(tr("What follows from the yarn"));
  figures_->set_empty_words(
      tr("Nothing follows yet: type the length and the weight of a skein, or the fibres."));
  figure_head_ = new PaneHeader(tr("What follows"));
  figure_head_->add_button(
      tr("C&opy"), [this] { QApplication::clipboard()->setText(figures_->as_text()); }, tr("Copy as text"));
  return make_pane(figure_head_, figures_);
}

void YarnsPage::enter() {
  yarns_->setFocus();
  if (!yarns_->currentIndex().isValid()) yarns_->setCurrentIndex(yarns_->model()->index(0, 0));
}

bool YarnsPage::go_to(std::uint32_t part) {
  for (PartTable* table : {yarns_, roles_})
    if (part != 0 && table->set_current_key(part)) {
      table->setFocus();
      return true;
    }
  return false;
}

void YarnsPage::show_yarn(YarnId id) {
  form_->show_yarn(id);
  refresh();
}

void YarnsPage::refresh() {
  const Pattern& pattern = open_.pattern();
  const Yarn* yarn = pattern.yarn(form_->yarn());
  figures_->set_rows(yarn != nullptr ? yarn_figures(*yarn, open_.reader()) : std::vector<FigureRow>());
  const QString name = yarn != nullptr ? QString::fromStdString(yarn->name) : QString();
  form_head_->set_note(pattern.yarns.empty() ? tr("No yarn yet: type its name in the list") : name);
  figure_head_->set_note(name);
  role_head_->set_note(pattern.roles.empty()
                           ? tr("No colour yet: type MC in the empty row")
                           : count_words(pattern.roles.size(), tr("colour"), tr("colours")));
}

std::optional<Sheet> YarnsPage::sheet() const {
  const Pattern& pattern = open_.pattern();
  if (pattern.yarns.empty() && pattern.roles.empty()) return std::nullopt;
  Sheet sheet;
  sheet.title = pattern.title;
  sheet.subtitle = tr("Yarns and colours").toStdString();
  sheet.numbers = open_.reader().numbers;
  for (const Yarn& yarn : pattern.yarns) {
    sheet.parts.emplace_back(
        printed_table(QString::fromStdString(yarn.name),
                      std::vector<std::pair<QString, QString>>{
                          {tr("Fibres"), QString::fromStdString(composition_text(yarn.composition))},
                          {tr("Skein"), put_up_line(yarn.put_up, open_.reader())},
                          {tr("Structure"), QString::fromStdString(yarn.structure)},
                          {tr("Twist"), QString::fromStdString(yarn.twist)},
                          {tr("Weight word"), QString::fromStdString(yarn.category)},
                          {tr("Surface"), QString::fromStdString(yarn.surface)},
                          {tr("Treatment"), QString::fromStdString(yarn.treatment)},
                          {tr("Colouring"), QString::fromStdString(yarn.colouring)},
                          {tr("Care"), QString::fromStdString(yarn.care)},
                          {tr("Description"), QString::fromStdString(yarn.description)}}));
    sheet.parts.emplace_back(printed_table(tr("What follows"), yarn_figures(yarn, open_.reader())));
  }
  if (!pattern.roles.empty()) sheet.parts.emplace_back(printed_table(tr("Colours"), *roles_->part_model()));
  for (std::string& caution : cautions_for(pattern)) sheet.foot_notes.push_back(std::move(caution));
  return sheet;
}

bool YarnsPage::find_next(const QString& words) {
  std::vector<FindPlace> places;
  for (const Yarn& yarn : open_.pattern().yarns) {
    QStringList all = {QString::fromStdString(yarn.name),
                       QString::fromStdString(composition_text(yarn.composition))};
    for (const std::string* text : {&yarn.structure, &yarn.twist, &yarn.category, &yarn.surface,
                                    &yarn.treatment, &yarn.colouring, &yarn.care, &yarn.description})
      all << QString::fromStdString(*text);
    places.push_back({all.join(QLatin1Char('\n')), [this, id = yarn.id.value] { go_to(id); }});
  }
  for (const Role& role : open_.pattern().roles)
    places.push_back({QString::fromStdString(role.label + "\n" + role.shade.name + "\n" + role.shade.number),
                      [this, id = role.id.value] { go_to(id); }});
  return finder_.find_next(places, words);
}

}  // namespace skeinproof
