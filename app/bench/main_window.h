// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QHash>
#include <QMainWindow>
#include <QPointer>
#include <span>

#include "app/bench/appearance.h"
#include "app/bench/commands.h"
#include "app/bench/dialogs.h"
#include "app/bench/page_table.h"
#include "app/bench/places.h"
#include "app/document/open_pattern.h"
#include "app/document/project_desk.h"
#include "app/document/recovery_keeper.h"

class QActionGroup;
class QLabel;
class QStackedWidget;

namespace skeinproof {

class Page;
class CheckManyWindow;
class MessageBar;
class PageList;
class PersonSettings;
class ShortcutList;
class ToolRow;
struct GoToTarget;

// What a window needs from outside; it looks for nothing by itself.
struct Surroundings {
  PersonSettings& settings;
  Appearance& appearance;
  Dialogs dialogs;
  QString recovery_folder;
  QString samples_folder;  // empty: no samples are offered
  std::span<const PageRow> pages;
};

// The window: side list, pages, tools, menus from the command table, the message bar and the status bar.
class MainWindow : public QMainWindow {
  Q_OBJECT

 public:
  explicit MainWindow(Surroundings surroundings, QWidget* parent = nullptr);
  ~MainWindow() override;

  OpenPattern& open_pattern() { return open_; }
  ProjectDesk& desk() { return desk_; }
  MessageBar& message_bar() { return *bar_; }
  QAction* action(const QString& id) const { return actions_.value(id); }
  Page* page(const QString& name) const;
  Page* current_page() const;
  bool show_page(const QString& name, std::uint32_t part = 0);
  // Opens a file after the close guard; also what a dropped file does.
  void open_path(const QString& path);
  void open_sample(const QString& stem);
  void offer_recoveries();
  // Writes unsaved work to its recovery copy at once.
  void put_work_away() { recovery_.write_now(); }

  // The rows of the command table.
  void start_new();
  void start_from_this();
  void choose_and_open();
  void save();
  void save_as();
  void import_json();
  void export_json();
  void check_many();
  void print_page();
  void page_to_pdf();
  void quit();
  void undo();
  void redo();
  void start_find();
  void find_next();
  void start_go_to();
  void go_back();
  void go_forward();
  void next_pane();
  void previous_pane();
  void larger_text();
  void smaller_text();
  void usual_text();
  void use_platform_shades();
  void use_light_shades();
  void use_dark_shades();
  bool uses_platform_shades() const;
  bool uses_light_shades() const;
  bool uses_dark_shades() const;
  void use_point();
  void use_comma();
  bool uses_point() const;
  bool uses_comma() const;
  void use_metric_first();
  void use_imperial_first();
  bool uses_metric_first() const;
  bool uses_imperial_first() const;
  void choose_smaller_size();
  void choose_larger_size();
  void show_shortcuts();
  void show_about();

 protected:
  void closeEvent(QCloseEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  void changeEvent(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void make_menus();
  void add_page_actions(QMenu* menu);
  void fill_samples(QMenu* menu);
  void fill_recent_files();
  void make_pages();
  void make_status_bar();
  void follow();
  void follow_foot();
  void follow_title();
  void follow_file();
  bool can(When when) const;
  // Runs `then` once nothing can be lost by it: at once, after a save, or never.
  void after_guard(std::function<void()> then);
  void do_command(const QString& id);
  void go_to(const WindowPlace& place, bool remember);
  void go_to_target(const GoToTarget& target);
  void find(const QString& words);
  void move_chosen_size(int by);
  void set_text_percent(int percent);
  void set_shades(Shades shades);
  void set_reader(const ReaderStyle& reader);
  void use_mark(DecimalMark mark);
  void use_system(bool imperial_first);
  void save_then(ProjectDesk::Then then);
  void save_as_then(ProjectDesk::Then then);
  void take_recovery(const Recovery& found);
  void remember_file(const QString& path);
  void tell_failure(const Error& error, const QString& path);
  void list_not_worked_out();
  std::vector<QWidget*> all_panes() const;
  void take_dropped(const QStringList& paths);
  void check_files(const QStringList& paths);
  // A submission as the draft of a new pattern, with what it states in force as a step of its own.
  void start_from_submission(const QString& path);

  Surroundings around_;
  OpenPattern open_;
  ProjectDesk desk_;
  RecoveryKeeper recovery_;
  QHash<QString, QAction*> actions_;
  std::vector<Page*> pages_;
  Places places_;
  MessageBar* bar_ = nullptr;
  PageList* list_ = nullptr;
  QLabel* list_foot_ = nullptr;
  QStackedWidget* stack_ = nullptr;
  ToolRow* tools_ = nullptr;
  QMenu* recent_menu_ = nullptr;
  QLabel* said_ = nullptr;
  QLabel* counted_ = nullptr;
  QLabel* file_state_ = nullptr;
  ShortcutList* shortcut_list_ = nullptr;
  QPointer<CheckManyWindow> check_many_;
  QString last_words_;
  bool leaving_ = false;
};

}  // namespace skeinproof
