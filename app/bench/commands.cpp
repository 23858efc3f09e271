// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/commands.h"

#include <QtGlobal>

#include "app/bench/main_window.h"

namespace skeinproof {

namespace {

#define TEXT(words) QT_TRANSLATE_NOOP("Commands", words)

constexpr MenuRow menus[] = {
    {"file", TEXT("&File")}, {"edit", TEXT("&Edit")}, {"go", TEXT("&Go")},
    {"view", TEXT("&View")}, {"size", TEXT("&Size")}, {"help", TEXT("&Help")},
};

using W = MainWindow;

constexpr Command commands[] = {
    {"new", "file", TEXT("&New"), "Ctrl+N", When::idle, &W::start_new},
    {"new_from_this", "file", TEXT("New &from this pattern"), "Ctrl+Shift+N", When::idle,
     &W::start_from_this},
    {"open", "file", TEXT("&Open…"), "Ctrl+O", When::idle, &W::choose_and_open},
    {"save", "file", TEXT("&Save"), "Ctrl+S", When::idle, &W::save, nullptr, true},
    {"save_as", "file", TEXT("Save &as…"), "Ctrl+Shift+S", When::idle, &W::save_as},
    {"import_json", "file", TEXT("&Import JSON…"), "", When::idle, &W::import_json, nullptr, true},
    {"export_json", "file", TEXT("&Export JSON…"), "", When::idle, &W::export_json},
    {"check_many", "file", TEXT("&Check many…"), "Ctrl+Shift+O", When::always, &W::check_many, nullptr, true},
    {"print", "file", TEXT("&Print…"), "Ctrl+P", When::has_sheet, &W::print_page, nullptr, true},
    {"pdf", "file", TEXT("P&DF of this page…"), "Ctrl+Shift+P", When::has_sheet, &W::page_to_pdf},
    {"quit", "file", TEXT("&Quit"), "Ctrl+Q", When::always, &W::quit, nullptr, true},

    {"undo", "edit", TEXT("&Undo"), "Ctrl+Z", When::can_undo, &W::undo},
    {"redo", "edit", TEXT("&Redo"), "Ctrl+Shift+Z; Ctrl+Y", When::can_redo, &W::redo},
    {"find", "edit", TEXT("&Find in this page"), "Ctrl+F", When::always, &W::start_find, nullptr, true},
    {"find_next", "edit", TEXT("Find ne&xt"), "F3", When::can_find_again, &W::find_next},

    {"go_to", "go", TEXT("&Go to a size or a part"), "Ctrl+G", When::always, &W::start_go_to},
    {"back", "go", TEXT("&Back"), "Alt+Left", When::can_go_back, &W::go_back},
    {"forward", "go", TEXT("&Forward"), "Alt+Right", When::can_go_forward, &W::go_forward},
    {"next_pane", "go", TEXT("&Next pane"), "F6", When::always, &W::next_pane, nullptr, true},
    {"previous_pane", "go", TEXT("&Previous pane"), "Shift+F6", When::always, &W::previous_pane},

    {"larger_text", "view", TEXT("&Larger text"), "Ctrl++; Ctrl+=", When::always, &W::larger_text},
    {"smaller_text", "view", TEXT("&Smaller text"), "Ctrl+-", When::always, &W::smaller_text},
    {"usual_text", "view", TEXT("&Usual text size"), "Ctrl+0", When::always, &W::usual_text},
    {"platform_shades", "view", TEXT("As the platfor&m"), "", When::always, &W::use_platform_shades,
     &W::uses_platform_shades, true},
    {"light_shades", "view", TEXT("Li&ght"), "", When::always, &W::use_light_shades, &W::uses_light_shades},
    {"dark_shades", "view", TEXT("&Dark"), "", When::always, &W::use_dark_shades, &W::uses_dark_shades},
    {"point", "view", TEXT("Decimal &point, 1,203.5"), "", When::always, &W::use_point, &W::uses_point, true},
    {"comma", "view", TEXT("Decimal &comma, 1 203,5"), "", When::always, &W::use_comma, &W::uses_comma},
    {"metric_first", "view", TEXT("Me&tric first"), "", When::always, &W::use_metric_first,
     &W::uses_metric_first, true},
    {"imperial_first", "view", TEXT("&Imperial first"), "", When::always, &W::use_imperial_first,
     &W::uses_imperial_first},

    {"smaller_size", "size", TEXT("Choose the size &before"), "Ctrl+PgUp", When::many_sizes,
     &W::choose_smaller_size},
    {"larger_size", "size", TEXT("Choose the size &after"), "Ctrl+PgDown", When::many_sizes,
     &W::choose_larger_size},

    {"shortcuts", "help", TEXT("&All shortcuts"), "Ctrl+F1", When::always, &W::show_shortcuts},
    {"about", "help", TEXT("About &Skeinproof"), "", When::always, &W::show_about, nullptr, true},
};

constexpr WidgetKey widget_keys[] = {
    {TEXT("One value per size"), TEXT("arrows, Home, End, Ctrl+Home, Ctrl+End"), TEXT("move")},
    {TEXT("One value per size"), TEXT("Enter, F2 or a figure"), TEXT("edit the cell")},
    {TEXT("One value per size"), TEXT("Tab, Shift+Tab while editing"), TEXT("next, previous cell")},
    {TEXT("One value per size"), TEXT("5 (5, 6, 7) … in a cell"), TEXT("fill the whole row")},
    {TEXT("One value per size"), TEXT("Ctrl+C, Ctrl+V"), TEXT("copy, paste cells, a row or a table")},
    {TEXT("One value per size"), TEXT("Del"), TEXT("clear the chosen cells")},
    {TEXT("The changes"), TEXT("Ins, Del"), TEXT("add a change, take it off the bench")},
    {TEXT("The changes"), TEXT("Space"), TEXT("make it or lay it aside")},
    {TEXT("The changes"), TEXT("Alt+Up, Alt+Down"), TEXT("make it earlier, later")},
    {TEXT("Candidates side by side"), TEXT("Ins"), TEXT("add a candidate from its ball band")},
    {TEXT("Candidates side by side"), TEXT("Enter"),
     TEXT("all consequences with their reasons; elsewhere, the candidate itself")},
    {TEXT("Candidates side by side"), TEXT("Ctrl+C"), TEXT("copy the whole table as text")},
    {TEXT("The form of a ball band"), TEXT("Enter"), TEXT("go on to the next line; add it behind the last")},
    {TEXT("The form of a ball band"), TEXT("Ctrl+Enter, Esc"), TEXT("add it, give it up")},
    {TEXT("The manuscript"), TEXT("Ctrl+V"), TEXT("take the text on the clipboard as the next draft")},
    {TEXT("The findings"), TEXT("F8, Shift+F8"), TEXT("next, previous finding")},
    {TEXT("The findings"), TEXT("Space, Ctrl+T"), TEXT("tick for the query sheet")},
    {TEXT("The findings"), TEXT("Enter"), TEXT("its working, wording and answers")},
    {TEXT("The findings"), TEXT("Ctrl+Enter"), TEXT("take the proposed change")},
    {TEXT("The findings"), TEXT("Ctrl+K"), TEXT("keep, because …")},
    {TEXT("Many submissions"), TEXT("Enter"), TEXT("open the chosen one")},
    {TEXT("Save a skein, run-out point"), TEXT("Enter"), TEXT("put the chosen way on the bench")},
    {TEXT("A field"), TEXT("Enter"), TEXT("take what was typed")},
    {TEXT("A field"), TEXT("Esc"), TEXT("give up what was typed")},
    {TEXT("Everywhere"), TEXT("Tab, Shift+Tab"), TEXT("next, previous field")},
};

#undef TEXT

}  // namespace

std::span<const MenuRow> menu_table() { return menus; }
std::span<const Command> command_table() { return commands; }
std::span<const WidgetKey> widget_key_table() { return widget_keys; }

QList<QKeySequence> shortcuts_of(const Command& command) {
  if (*command.shortcuts == '\0') return {};
  return QKeySequence::listFromString(QString::fromLatin1(command.shortcuts), QKeySequence::PortableText);
}

QKeySequence page_shortcut(int number) {
  if (number <= numbered_pages) return QKeySequence(Qt::CTRL | static_cast<Qt::Key>(Qt::Key_0 + number));
  const int behind = number - numbered_pages;
  return behind > numbered_pages
             ? QKeySequence()
             : QKeySequence(Qt::ALT | Qt::SHIFT | static_cast<Qt::Key>(Qt::Key_0 + behind));
}

}  // namespace skeinproof
