// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/shortcut_list.h"

#include <QAction>
#include <QClipboard>
#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QGuiApplication>
#include <QHeaderView>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/bench/commands.h"
#include "app/pages/page.h"
#include "app/widgets/ink.h"

namespace skeinproof {

namespace {

QString say(const char* text) { return QCoreApplication::translate("Commands", text); }

QString plain(QString text) {
  text.remove(QLatin1Char('&'));
  if (text.endsWith(QStringLiteral("…"))) text.chop(1);
  return text;
}

}  // namespace

ShortcutList::ShortcutList(const std::vector<Page*>& pages, QWidget* parent)
    : QDialog(parent), rows_(new QTreeWidget) {
  setWindowTitle(tr("All shortcuts"));
  rows_->setColumnCount(2);
  rows_->setHeaderLabels({tr("Keys"), tr("What they do")});
  rows_->setSelectionMode(QAbstractItemView::SingleSelection);
  rows_->setAccessibleName(windowTitle());
  for (const MenuRow& menu : menu_table())
    for (const Command& command : command_table())
      if (QLatin1String(command.menu) == QLatin1String(menu.id))
        add(plain(say(menu.text)),
            QKeySequence::listToString(shortcuts_of(command), QKeySequence::NativeText),
            plain(say(command.text)));
  const auto page_keys = [](int first, int last) {
    const auto key = [](int number) { return page_shortcut(number).toString(QKeySequence::NativeText); };
    return first == last ? key(first) : key(first) + QStringLiteral(" … ") + key(last);
  };
  const int count = static_cast<int>(pages.size());
  add(plain(say("&Go")), page_keys(1, std::min(count, numbered_pages)),
      tr("the page at that place of the side list"));
  if (count > numbered_pages)
    add(plain(say("&Go")), page_keys(numbered_pages + 1, count), tr("the pages behind the ninth"));
  for (const Page* page : pages)
    for (const QAction* action : page->findChildren<QAction*>())
      add(page->windowTitle(), QKeySequence::listToString(action->shortcuts(), QKeySequence::NativeText),
          plain(action->text()));
  for (const WidgetKey& key : widget_key_table()) add(say(key.where), say(key.keys), say(key.what));
  rows_->expandAll();
  rows_->header()->setSectionResizeMode(QHeaderView::ResizeToContents);

  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close);
  auto* copy = buttons->addButton(tr("&Copy as text"), QDialogButtonBox::ActionRole);
  connect(copy, &QPushButton::clicked, this, [this] { QGuiApplication::clipboard()->setText(as_text()); });
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  auto* layout = new QVBoxLayout(this);
  layout->addWidget(rows_);
  layout->addWidget(buttons);
  resize(scaled(this, 620), scaled(this, 640));
}

void ShortcutList::add(const QString& group, const QString& keys, const QString& what) {
  if (keys.isEmpty()) return;
  const auto found = rows_->findItems(group, Qt::MatchExactly, 0);
  QTreeWidgetItem* parent = found.isEmpty() ? new QTreeWidgetItem(rows_, {group}) : found.front();
  parent->setFirstColumnSpanned(true);
  auto* row = new QTreeWidgetItem(parent, {keys, what});
  row->setData(0, Qt::AccessibleTextRole, keys + QStringLiteral(": ") + what);
}

QString ShortcutList::as_text() const {
  QString text;
  for (int i = 0; i < rows_->topLevelItemCount(); ++i) {
    const QTreeWidgetItem* group = rows_->topLevelItem(i);
    text += group->text(0) + QLatin1Char('\n');
    for (int j = 0; j < group->childCount(); ++j)
      text += group->child(j)->text(0) + QLatin1Char('\t') + group->child(j)->text(1) + QLatin1Char('\n');
  }
  return text;
}

}  // namespace skeinproof
