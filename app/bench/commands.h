// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QKeySequence>
#include <QList>
#include <span>

namespace skeinproof {

class MainWindow;

// When a command can be done.
enum class When {
  always,
  idle,
  can_undo,
  can_redo,
  can_find_again,
  can_go_back,
  can_go_forward,
  has_sheet,
  many_sizes
};

// One row of the window's command table: menus, shortcuts and the page of all shortcuts come from it.
struct Command {
  const char* id;
  const char* menu;       // an id of menu_table()
  const char* text;       // with its mnemonic
  const char* shortcuts;  // portable text, several parted by "; "; empty = none
  When when;
  void (MainWindow::*run)();
  bool (MainWindow::*is_on)() const = nullptr;  // a choice among others, ticked while it holds
  bool rule_above = false;                      // a line above it in the menu
};

struct MenuRow {
  const char* id;
  const char* text;  // with its mnemonic
};

std::span<const MenuRow> menu_table();
std::span<const Command> command_table();

// Keys that a grid, a field or a tree takes itself, for the page of all shortcuts.
struct WidgetKey {
  const char* where;
  const char* keys;
  const char* what;
};
std::span<const WidgetKey> widget_key_table();

QList<QKeySequence> shortcuts_of(const Command& command);

// Ctrl+1 … Ctrl+9 for the first pages of the side list, Alt+Shift+1 … for those behind them.
inline constexpr int numbered_pages = 9;
QKeySequence page_shortcut(int number);

}  // namespace skeinproof
