// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QMap>
#include <QSet>

#include "app/bench/commands.h"
#include "app/bench/page_table.h"

namespace skeinproof {
namespace {

QChar mnemonic_of(const QString& text) {
  for (qsizetype i = 0; i + 1 < text.size(); ++i)
    if (text[i] == '&' && text[++i] != '&') return text[i].toUpper();
  return {};
}

TEST(Commands, NoShortcutIsGivenTwice) {
  QMap<QString, QString> owner;
  for (const Command& command : command_table())
    for (const QKeySequence& keys : shortcuts_of(command)) {
      const QString text = keys.toString();
      EXPECT_FALSE(text.isEmpty()) << command.id;
      EXPECT_FALSE(owner.contains(text))
          << text.toStdString() << " for " << command.id << " and " << owner[text].toStdString();
      owner[text] = command.id;
    }
  for (std::size_t page = 1; page <= page_table().size(); ++page)
    EXPECT_FALSE(owner.contains(QString("Ctrl+%1").arg(page)));
}

TEST(Commands, EveryMenuAndEveryEntryHasALetterOfItsOwn) {
  QSet<QChar> letters;
  for (const MenuRow& menu : menu_table()) {
    const QChar letter = mnemonic_of(menu.text);
    EXPECT_FALSE(letter.isNull()) << menu.id;
    EXPECT_FALSE(letters.contains(letter)) << menu.id;
    letters.insert(letter);
  }
  QMap<QString, QSet<QChar>> of_menu;
  of_menu["file"] = {'M', 'R'};  // the two submenus, samples and recent files
  for (const Command& command : command_table()) {
    const QChar letter = mnemonic_of(QString::fromUtf8(command.text));
    EXPECT_FALSE(letter.isNull()) << command.id;
    EXPECT_FALSE(of_menu[command.menu].contains(letter))
        << command.id << " repeats " << char(letter.toLatin1());
    of_menu[command.menu].insert(letter);
  }
}

TEST(Commands, EveryRowIsWhole) {
  QSet<QString> ids, menus;
  for (const MenuRow& menu : menu_table()) menus.insert(menu.id);
  for (const Command& command : command_table()) {
    EXPECT_FALSE(ids.contains(command.id)) << command.id;
    ids.insert(command.id);
    EXPECT_TRUE(menus.contains(command.menu)) << command.id;
    EXPECT_TRUE(command.run) << command.id;
  }
}

}  // namespace
}  // namespace skeinproof
