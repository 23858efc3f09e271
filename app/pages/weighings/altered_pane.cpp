// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/weighings/altered_pane.h"

#include <QMenu>
#include <QScrollArea>
#include <QShortcut>
#include <QSplitter>
#include <QVBoxLayout>

#include "app/pages/changes/change_form.h"
#include "app/pages/changes/change_list.h"
#include "app/pages/changes/change_words.h"
#include "app/pages/weighings/weighing_form.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_table.h"

namespace skeinproof {

AlteredPane::AlteredPane(OpenPattern& open, QWidget* parent)
    : QWidget(parent), open_(open), head_(new PaneHeader(tr("Knitted otherwise"))) {
  add_ = head_->add_button(
      tr("A&dd…"), [this] { show_kinds(); }, tr("Something that was not knitted as the pattern says (Ins)"));
  head_->add_button(
      tr("Delete"), [this] { list_->erase(); }, tr("It was knitted as the pattern says (Del)"));
  list_ = make_altered_list(open_, [this](const Pattern& pattern) {
    const Weighing* found = weighing(pattern);
    return found == nullptr ? nullptr : &found->altered;
  });
  form_ = new ChangeForm(open_);
  auto* area = new QScrollArea;
  area->setFocusPolicy(Qt::NoFocus);
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  area->setWidget(form_);
  auto* both = new QSplitter(Qt::Horizontal);
  both->setChildrenCollapsible(false);
  both->addWidget(list_);
  both->addWidget(area);
  both->setSizes({scaled(this, 420), scaled(this, 380)});
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(head_);
  layout->addWidget(both, 1);
  auto* insert = new QShortcut(QKeySequence(Qt::Key_Insert), this);
  insert->setContext(Qt::WidgetWithChildrenShortcut);
  connect(insert, &QShortcut::activated, this, &AlteredPane::show_kinds);
  connect(list_, &PartTable::current_part_changed, this,
          [this](std::uint32_t key) { form_->show_change(ChangeId{key}); });
  connect(&open_, &OpenPattern::changed, this, &AlteredPane::refresh);
  refresh();
}

const Weighing* AlteredPane::weighing(const Pattern& pattern) const { return find_weighing(pattern, id_); }

void AlteredPane::show_weighing(WeighingId id) {
  if (id == id_) return;
  id_ = id;
  list_->refresh(true);
  form_->show_change(ChangeId{list_->current_key()});
  refresh();
}

void AlteredPane::refresh() {
  const Weighing* shown = weighing(open_.pattern());
  setEnabled(shown != nullptr);
  head_->set_note(shown == nullptr         ? tr("no weighing chosen")
                  : shown->altered.empty() ? tr("all as the pattern says")
                                           : tr("taken off before the sample speaks of the pattern"));
}

void AlteredPane::show_kinds() {
  QMenu* menu = make_kind_menu(this, [this](ChangeKind kind) { add(kind); });
  menu->setAttribute(Qt::WA_DeleteOnClose);
  menu->popup(add_->mapToGlobal(QPoint(0, add_->height())));
  if (!menu->actions().isEmpty()) menu->setActiveAction(menu->actions().front());
}

void AlteredPane::add(ChangeKind kind) {
  ChangeId added;
  open_.apply(tr("knitted otherwise: %1").arg(kind_words(kind).toLower()), [&](Pattern& pattern) {
    const ChangesIn here = [this](const Pattern& of) {
      const Weighing* found = weighing(of);
      return found == nullptr ? nullptr : &found->altered;
    };
    if (here(pattern) != nullptr) added = add_change(pattern, here, kind, ChangeId{list_->current_key()});
  });
  list_->set_current_key(added.value);
  form_->enter();
}

}  // namespace skeinproof
