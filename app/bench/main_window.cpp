// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/main_window.h"

#include <QActionGroup>
#include <QApplication>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QMessageBox>
#include <QScreen>
#include <QStackedWidget>
#include <QStatusBar>
#include <QVBoxLayout>

#include "app/bench/appearance.h"
#include "app/bench/focused_text.h"
#include "app/bench/icons.h"
#include "app/bench/page_frame.h"
#include "app/bench/page_list.h"
#include "app/bench/panes.h"
#include "app/bench/person_settings.h"
#include "app/bench/samples.h"
#include "app/bench/shortcut_list.h"
#include "app/bench/tool_row.h"
#include "app/pages/page.h"
#include "app/widgets/count_words.h"
#include "app/widgets/ink.h"
#include "app/widgets/message_bar.h"

namespace skeinproof {

namespace {

QString say_command(const char* text) { return QCoreApplication::translate("Commands", text); }
QString say_page(const char* name) { return QCoreApplication::translate("Pages", name); }

}  // namespace

MainWindow::MainWindow(Surroundings surroundings, QWidget* parent)
    : QMainWindow(parent),
      around_(std::move(surroundings)),
      desk_(open_),
      recovery_(open_, around_.recovery_folder) {
  setAcceptDrops(true);
  setAttribute(Qt::WA_DeleteOnClose);
  open_.set_reader(around_.settings.reader());
  make_menus();
  make_pages();
  make_status_bar();

  connect(&open_, &OpenPattern::changed, this, &MainWindow::follow);
  connect(&open_, &OpenPattern::saved_changed, this, &MainWindow::follow);
  connect(&open_, &OpenPattern::replaced, this, [this] { places_.forget(); });
  connect(&desk_, &ProjectDesk::title_changed, this, &MainWindow::follow_title);
  connect(&desk_, &ProjectDesk::busy_changed, this, [this] {
    centralWidget()->setEnabled(!desk_.is_opening());
    follow();
  });
  connect(&desk_, &ProjectDesk::opened, this, &MainWindow::remember_file);
  connect(&desk_, &ProjectDesk::saved, this, &MainWindow::remember_file);
  connect(&desk_, &ProjectDesk::exported, this, [this](const QString& path) {
    said_->setText(tr("%1 was written").arg(QFileInfo(path).fileName()));
  });
  connect(&desk_, &ProjectDesk::told, this, [this](const QString& key, const QString& words) {
    bar_->post({key, words, {}, true});
  });
  connect(&desk_, &ProjectDesk::failed, this, &MainWindow::tell_failure);
  connect(&recovery_, &RecoveryKeeper::written, this, &MainWindow::follow_file);
  connect(&recovery_, &RecoveryKeeper::failed, this, [this](const Error& error) {
    bar_->post({QStringLiteral("recovery"),
                tr("No recovery copy can be written, so save often. %1")
                    .arg(QString::fromStdString(error.message())),
                {},
                true});
  });
  qApp->installEventFilter(this);

  resize(QSize(scaled(this, 1440), scaled(this, 900)).boundedTo(screen()->availableSize()));
  restoreGeometry(around_.settings.window_place());
  follow();
  if (!pages_.empty()) go_to({0, 0}, true);
}

MainWindow::~MainWindow() = default;

void MainWindow::make_menus() {
  QHash<QString, QMenu*> menus;
  for (const MenuRow& row : menu_table())
    menus[QLatin1String(row.id)] = menuBar()->addMenu(say_command(row.text));
  QHash<QString, QActionGroup*> groups;
  QActionGroup* group = nullptr;
  for (const Command& row : command_table()) {
    QMenu* menu = menus[QLatin1String(row.menu)];
    if (row.rule_above) menu->addSeparator();
    auto* action = menu->addAction(say_command(row.text));
    action->setObjectName(QLatin1String(row.id));
    action->setShortcuts(shortcuts_of(row));
    if (row.is_on) {
      // Choices that follow each other belong together; a line parts them.
      if (!group || row.rule_above) group = new QActionGroup(this);
      action->setCheckable(true);
      action->setActionGroup(group);
    }
    connect(action, &QAction::triggered, this, [this, run = row.run] { (this->*run)(); });
    actions_[QLatin1String(row.id)] = action;
    if (QLatin1String(row.id) == QLatin1String("open")) {
      fill_samples(menu->addMenu(tr("Open a sa&mple")));
      recent_menu_ = menu->addMenu(tr("&Recent files"));
      connect(recent_menu_, &QMenu::aboutToShow, this, &MainWindow::fill_recent_files);
    }
  }
  actions_[QStringLiteral("undo")]->setIcon(drawn_icon(DrawnIcon::undo));
  actions_[QStringLiteral("redo")]->setIcon(drawn_icon(DrawnIcon::redo));
  add_page_actions(menus[QStringLiteral("go")]);
}

void MainWindow::add_page_actions(QMenu* menu) {
  menu->addSeparator();
  int number = 1;
  for (const PageRow& row : around_.pages) {
    const bool by_letter = number > numbered_pages;
    const QString name = by_letter ? QLatin1Char('&') + say_page(row.name)
                                   : QStringLiteral("&%1 %2").arg(number).arg(say_page(row.name));
    auto* action = menu->addAction(name);
    action->setShortcut(page_shortcut(number));
    connect(action, &QAction::triggered, this, [this, at = number - 1] { go_to({at, 0}, true); });
    ++number;
  }
}

void MainWindow::fill_samples(QMenu* menu) {
  for (const Sample& sample : samples_in(around_.samples_folder))
    menu->addAction(sample.title, this, [this, stem = sample.stem] { open_sample(stem); });
  menu->menuAction()->setVisible(!menu->isEmpty());
}

void MainWindow::fill_recent_files() {
  recent_menu_->clear();
  for (const QString& path : around_.settings.recent_files())
    recent_menu_->addAction(QString(path).replace(QLatin1Char('&'), QLatin1String("&&")), this,
                            [this, path] { open_path(path); });
  if (recent_menu_->isEmpty()) recent_menu_->addAction(tr("None yet"))->setEnabled(false);
}

void MainWindow::make_pages() {
  auto* middle = new QWidget;
  auto* side = new QWidget;
  list_ = new PageList;
  list_foot_ = new QLabel;
  stack_ = new QStackedWidget;
  bar_ = new MessageBar;
  side->setBackgroundRole(QPalette::Base);
  side->setAutoFillBackground(true);
  list_foot_->setWordWrap(true);
  list_foot_->setTextInteractionFlags(Qt::LinksAccessibleByKeyboard | Qt::LinksAccessibleByMouse);
  connect(list_foot_, &QLabel::linkActivated, this, &MainWindow::list_not_worked_out);

  QStringList names;
  for (const PageRow& row : around_.pages) {
    Page* page = row.make(open_, stack_);
    page->setObjectName(QLatin1String(row.name));
    page->setWindowTitle(say_page(row.name));
    page->setAccessibleName(page->windowTitle());
    pages_.push_back(page);
    stack_->addWidget(new PageFrame(page, around_.settings));
    list_->add(say_page(row.name));
    names << QLatin1String(row.name);
    const int at = list_->count() - 1;
    connect(page, &Page::attention_changed, this,
            [this, at, page] { list_->set_attention(at, page->attention()); });
    connect(page, &Page::wants_place, this,
            [this](const QString& name, std::uint32_t part) { show_page(name, part); });
    connect(page, &Page::wants_command, this, &MainWindow::do_command);
    connect(page, &Page::says, this, [this](const QString& words) { said_->setText(words); });
  }
  connect(list_, &PageList::chosen, this, [this](int row) { go_to({row, 0}, true); });
  connect(list_, &QAbstractItemView::activated, this, [this] { current_page()->enter(); });

  auto* side_layout = new QVBoxLayout(side);
  side_layout->setContentsMargins(0, scaled(this, 6), 0, scaled(this, 8));
  side_layout->addWidget(list_, 1);
  side_layout->addWidget(list_foot_);
  list_foot_->setContentsMargins(scaled(this, 10), 0, scaled(this, 10), 0);
  side->setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Preferred);
  auto* right = new QVBoxLayout;
  right->setSpacing(0);
  right->addWidget(bar_);
  right->addWidget(stack_, 1);
  auto* layout = new QHBoxLayout(middle);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(side);
  layout->addLayout(right, 1);
  setCentralWidget(middle);

  tools_ = new ToolRow(open_, actions_[QStringLiteral("undo")], actions_[QStringLiteral("redo")], this);
  tools_->set_page_names(names);
  addToolBar(tools_);
  connect(tools_, &ToolRow::go_to, this, &MainWindow::go_to_target);
  connect(tools_, &ToolRow::find, this, &MainWindow::find);
  connect(tools_, &ToolRow::left, this, [this] {
    if (Page* page = current_page()) page->enter();
  });
}

void MainWindow::make_status_bar() {
  said_ = new QLabel;
  counted_ = new QLabel;
  file_state_ = new QLabel;
  said_->setTextFormat(Qt::PlainText);
  statusBar()->addWidget(said_, 1);
  for (QLabel* label : {counted_, file_state_}) {
    auto* line = new QFrame;
    line->setFrameStyle(QFrame::VLine | QFrame::Sunken);
    statusBar()->addPermanentWidget(line);
    statusBar()->addPermanentWidget(label);
  }
}

Page* MainWindow::current_page() const {
  const int at = stack_->currentIndex();
  return at < 0 ? nullptr : pages_[static_cast<std::size_t>(at)];
}

Page* MainWindow::page(const QString& name) const {
  for (Page* page : pages_)
    if (page->objectName() == name) return page;
  return nullptr;
}

bool MainWindow::show_page(const QString& name, std::uint32_t part) {
  for (std::size_t i = 0; i < pages_.size(); ++i)
    if (pages_[i]->objectName() == name) {
      go_to({static_cast<int>(i), part}, true);
      return true;
    }
  return false;
}

void MainWindow::go_to(const WindowPlace& place, bool remember) {
  const bool by_list = list_->hasFocus();
  Page* target = pages_[static_cast<std::size_t>(place.page)];
  if (remember) places_.went_to(place);
  {
    const QSignalBlocker quiet(list_);
    list_->set_current(place.page);
  }
  if (stack_->currentIndex() != place.page) said_->clear();
  stack_->setCurrentIndex(place.page);
  if (!by_list) target->enter();
  if (place.part != 0) target->go_to(place.part);
  follow();
}

void MainWindow::go_to_target(const GoToTarget& target) {
  if (!target.page.isEmpty()) {
    show_page(target.page, target.part);
    return;
  }
  if (const auto size = open_.pattern().size_index(SizeId{target.part})) open_.choose_size(*size);
  if (Page* page = current_page()) page->enter();
}

void MainWindow::go_back() {
  if (const auto place = places_.back()) go_to(*place, false);
}

void MainWindow::go_forward() {
  if (const auto place = places_.forward()) go_to(*place, false);
}

void MainWindow::find(const QString& words) {
  last_words_ = words;
  Page* page = current_page();
  if (page && !page->find_next(words)) said_->setText(tr("“%1” is not on this page").arg(words));
  follow();
}

void MainWindow::find_next() { find(last_words_); }

void MainWindow::start_find() {
  if (const Page* page = current_page()) tools_->start_find(page->windowTitle());
}

void MainWindow::start_go_to() { tools_->start_go_to(); }

void MainWindow::next_pane() { focus_next_pane(all_panes(), false); }
void MainWindow::previous_pane() { focus_next_pane(all_panes(), true); }

std::vector<QWidget*> MainWindow::all_panes() const {
  std::vector<QWidget*> panes{list_};
  if (bar_->isVisible()) panes.push_back(bar_);
  if (Page* page = current_page())
    for (QWidget* pane : panes_of(page)) panes.push_back(pane);
  panes.push_back(tools_->field());
  return panes;
}

bool MainWindow::can(When when) const {
  switch (when) {
    case When::always:
      return true;
    case When::idle:
      return !desk_.is_busy();
    case When::can_undo:
      return open_.can_undo();
    case When::can_redo:
      return open_.can_redo();
    case When::can_find_again:
      return !last_words_.isEmpty();
    case When::can_go_back:
      return places_.can_go_back();
    case When::can_go_forward:
      return places_.can_go_forward();
    case When::has_sheet:
      return current_page() && current_page()->sheet().has_value();
    case When::many_sizes:
      return open_.pattern().sizes.size() > 1;
  }
  return false;
}

void MainWindow::follow() {
  for (const Command& row : command_table()) {
    QAction* action = actions_[QLatin1String(row.id)];
    action->setEnabled(can(row.when));
    if (row.is_on) action->setChecked((this->*row.is_on)());
  }
  const auto named = [](const QString& word, const QString& label) {
    return label.isEmpty() ? word
                           : word + QLatin1Char(' ') + QString(label).replace('&', QLatin1String("&&"));
  };
  actions_[QStringLiteral("undo")]->setText(named(tr("&Undo"), open_.undo_label()));
  actions_[QStringLiteral("redo")]->setText(named(tr("&Redo"), open_.redo_label()));
  for (std::size_t i = 0; i < pages_.size(); ++i)
    list_->set_attention(static_cast<int>(i), pages_[i]->attention());
  follow_foot();
  follow_title();
  follow_file();
}

void MainWindow::follow_foot() {
  const auto missing = static_cast<int>(open_.assessment().not_worked_out.size());
  list_foot_->setFont(type_of(font()).small);
  list_foot_->setText(missing == 0 ? QString()
                                   : QStringLiteral("<a href=\"missing\" style=\"color:%1\">%2</a>")
                                         .arg(palette().color(QPalette::Text).name(),
                                              tr("%n not worked out", nullptr, missing)));
  const Pattern& pattern = open_.pattern();
  counted_->setText(count_words(pattern.sizes.size(), tr("size"), tr("sizes")) + QStringLiteral(", ") +
                    count_words(pattern.roles.size(), tr("colour"), tr("colours")));
}

void MainWindow::follow_title() {
  setWindowTitle(tr("%1[*] — Skeinproof").arg(desk_.title()));
  setWindowModified(!open_.is_saved());
  setWindowFilePath(desk_.path());
}

void MainWindow::follow_file() {
  const QString saved = desk_.saved_at().isValid()
                            ? tr("Saved %1").arg(desk_.saved_at().toString(tr("HH:mm")))
                        : desk_.path().isEmpty() ? tr("Not saved")
                                                 : tr("Opened");
  const QString copy = open_.is_saved()         ? QString()
                       : recovery_.is_current() ? tr(", recovery copy current")
                                                : tr(", recovery copy being written");
  file_state_->setText(desk_.is_busy() ? tr("Working on the file…") : saved + copy);
}

void MainWindow::list_not_worked_out() {
  QMenu menu(this);
  for (const NotWorkedOut& missing : open_.assessment().not_worked_out) {
    const QString words =
        QString::fromStdString(missing.what) + QStringLiteral(": ") + QString::fromStdString(missing.because);
    menu.addAction(QString(words).replace('&', QLatin1String("&&")), this, [this, place = missing.place] {
      show_page(QString::fromStdString(place.page), place.part);
    });
  }
  menu.exec(list_foot_->mapToGlobal(QPoint(0, 0)));
}

void MainWindow::undo() { open_.undo(); }
void MainWindow::redo() { open_.redo(); }

void MainWindow::choose_smaller_size() { move_chosen_size(-1); }
void MainWindow::choose_larger_size() { move_chosen_size(1); }

void MainWindow::move_chosen_size(int by) {
  const int at = static_cast<int>(open_.chosen_size_index()) + by;
  if (at >= 0) open_.choose_size(static_cast<std::size_t>(at));
}

void MainWindow::larger_text() { set_text_percent(around_.appearance.text_percent() + text_percent_step); }
void MainWindow::smaller_text() { set_text_percent(around_.appearance.text_percent() - text_percent_step); }
void MainWindow::usual_text() { set_text_percent(100); }

void MainWindow::set_text_percent(int percent) {
  around_.appearance.set_text_percent(percent);
  around_.settings.set_text_percent(around_.appearance.text_percent());
  said_->setText(tr("Text size %1 %").arg(around_.appearance.text_percent()));
  follow();
}

void MainWindow::set_shades(Shades shades) {
  around_.appearance.set_shades(shades);
  around_.settings.set_shades(shades);
  actions_[QStringLiteral("undo")]->setIcon(drawn_icon(DrawnIcon::undo));
  actions_[QStringLiteral("redo")]->setIcon(drawn_icon(DrawnIcon::redo));
  follow();
}

void MainWindow::use_platform_shades() { set_shades(Shades::platform); }
void MainWindow::use_light_shades() { set_shades(Shades::light); }
void MainWindow::use_dark_shades() { set_shades(Shades::dark); }
bool MainWindow::uses_platform_shades() const { return around_.appearance.shades() == Shades::platform; }
bool MainWindow::uses_light_shades() const { return around_.appearance.shades() == Shades::light; }
bool MainWindow::uses_dark_shades() const { return around_.appearance.shades() == Shades::dark; }

void MainWindow::set_reader(const ReaderStyle& reader) {
  take_focused_text();
  around_.settings.set_reader(reader);
  open_.set_reader(reader);
  follow();
}

void MainWindow::use_mark(DecimalMark mark) {
  ReaderStyle reader = open_.reader();
  reader.numbers.mark = mark;
  set_reader(reader);
}

void MainWindow::use_system(bool imperial_first) {
  ReaderStyle reader = open_.reader();
  reader.imperial_first = imperial_first;
  set_reader(reader);
}

void MainWindow::use_point() { use_mark(DecimalMark::point); }
void MainWindow::use_comma() { use_mark(DecimalMark::comma); }
bool MainWindow::uses_point() const { return open_.reader().numbers.mark == DecimalMark::point; }
bool MainWindow::uses_comma() const { return !uses_point(); }
void MainWindow::use_metric_first() { use_system(false); }
void MainWindow::use_imperial_first() { use_system(true); }
bool MainWindow::uses_metric_first() const { return !open_.reader().imperial_first; }
bool MainWindow::uses_imperial_first() const { return open_.reader().imperial_first; }

void MainWindow::show_shortcuts() {
  delete shortcut_list_;
  shortcut_list_ = new ShortcutList(pages_, this);
  shortcut_list_->show();
}

void MainWindow::show_about() {
  auto* box = new QMessageBox(QMessageBox::NoIcon, tr("About Skeinproof"),
                              tr("Skeinproof %1").arg(QCoreApplication::applicationVersion()),
                              QMessageBox::Close, this);
  box->setInformativeText(
      tr("A pattern's yarn block, made, checked and put to use, with the working behind every "
         "number.\n\nFree software under the GNU General Public License, version 3 or later. It "
         "comes without any warranty."));
  box->setAttribute(Qt::WA_DeleteOnClose);
  box->open();
}

void MainWindow::do_command(const QString& id) {
  const QString sample = QStringLiteral("sample:");
  if (id.startsWith(sample))
    open_sample(id.mid(sample.size()));
  else if (QAction* action = actions_.value(id))
    action->trigger();
}

void MainWindow::changeEvent(QEvent* event) {
  QMainWindow::changeEvent(event);
  if ((event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange) && list_foot_)
    follow_foot();
}

bool MainWindow::eventFilter(QObject* watched, QEvent* event) {
  // A field with nothing of its own to take back leaves undo and redo to the pattern.
  if (event->type() == QEvent::ShortcutOverride)
    if (auto* field = qobject_cast<QLineEdit*>(watched); field && field->window() == this) {
      const auto* key = static_cast<QKeyEvent*>(event);
      const bool redoes =
          key->matches(QKeySequence::Redo) || key->keyCombination() == QKeyCombination(Qt::CTRL, Qt::Key_Y);
      if ((key->matches(QKeySequence::Undo) && !field->isUndoAvailable()) ||
          (redoes && !field->isRedoAvailable())) {
        event->ignore();
        return true;
      }
    }
  return QMainWindow::eventFilter(watched, event);
}

}  // namespace skeinproof
