// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/shelf_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>
#include <algorithm>
#include <set>

#include "app/document/open_pattern.h"
#include "app/pages/candidates/shelf_import.h"
#include "app/pages/candidates/shelf_model.h"
#include "app/print/save_sheet.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/ink.h"
#include "app/widgets/quantity_text.h"
#include "core/file/shelf_csv.h"
#include "core/file/whole_file.h"
#include "core/file/yarn_shelf.h"

namespace skeinproof {
namespace {

QString from(const std::string& words) { return QString::fromStdString(words); }

QString platform_path(QWidget* parent, bool saving, const QString& suggestion) {
  const QString filter = ShelfDialog::tr("Tables (*.csv);;All files (*)");
  return saving ? QFileDialog::getSaveFileName(parent, {}, suggestion, filter)
                : QFileDialog::getOpenFileName(parent, {}, suggestion, filter);
}

// Reads the shelf where that is to be done, and searches it; on a thread of its own.
std::shared_ptr<const ShelfFound> found_on(const std::string& path, std::shared_ptr<const ShelfIndex> index,
                                           const ShelfQuestion& question, int writes) {
  auto found = std::make_shared<ShelfFound>();
  found->question = question;
  found->writes = writes;
  if (!index) {
    auto entries = load_shelf(path);
    if (!entries) {
      found->error = entries.error();
      return found;
    }
    index = std::make_shared<const ShelfIndex>(std::move(*entries));
  }
  found->index = index;
  auto answer = index->search(question);
  if (answer)
    found->answer = std::move(*answer);
  else
    found->error = answer.error();
  return found;
}

}  // namespace

ShelfDialog::ShelfDialog(OpenPattern& open, RoleId role, QWidget* parent, const QString& path)
    : QDialog(parent),
      open_(open),
      path_(path.isEmpty() ? shelf_place() : path),
      ask_path_(platform_path),
      words_(new TextField),
      like_(new QCheckBox(tr("&Like the yarn of"))),
      role_(new ChoiceField),
      holding_(new QComboBox),
      owned_(new QCheckBox(tr("At &home"))),
      table_(new QTableView),
      model_(new ShelfModel(this)),
      rule_(new QLabel),
      told_(new QLabel),
      job_([this](std::shared_ptr<const ShelfFound> found) { show_found(std::move(found)); }) {
  setWindowTitle(tr("Search the shelf"));
  table_->setModel(model_);
  table_->setAccessibleName(tr("Yarns of the shelf"));
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed);
  table_->setWordWrap(false);
  table_->verticalHeader()->hide();
  table_->horizontalHeader()->setHighlightSections(false);
  table_->horizontalHeader()->setStretchLastSection(true);
  table_->horizontalHeader()->setSortIndicator(model_->reason_column(), Qt::AscendingOrder);
  table_->setSortingEnabled(true);
  for (QLabel* label : {rule_, told_}) {
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
  }
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(make_question());
  layout->addWidget(table_, 1);
  layout->addWidget(told_);
  layout->addWidget(rule_);
  layout->addLayout(make_buttons());
  resize(scaled(this, 1040), scaled(this, 620));
  follow_pattern();
  if (role_->findData(role.value) >= 0) role_->show_choice(role.value);
  like_->setChecked(role_->count() > 0);
  connect(words_, &QLineEdit::textChanged, this, &ShelfDialog::search);
  connect(like_, &QCheckBox::toggled, this, &ShelfDialog::search);
  connect(role_, &QComboBox::currentIndexChanged, this, &ShelfDialog::search);
  connect(holding_, &QComboBox::currentIndexChanged, this, &ShelfDialog::search);
  connect(owned_, &QCheckBox::toggled, this, &ShelfDialog::search);
  connect(&open_, &OpenPattern::changed, this, &ShelfDialog::follow_pattern);
  connect(table_->selectionModel(), &QItemSelectionModel::selectionChanged, this,
          &ShelfDialog::follow_choice);
  connect(model_, &ShelfModel::entry_changed, this, &ShelfDialog::store_edited);
  connect(model_, &ShelfModel::says, this, &ShelfDialog::tell);
  follow_choice();
  search();
}

ShelfDialog::~ShelfDialog() = default;

QString ShelfDialog::told() const { return told_->text(); }

QHBoxLayout* ShelfDialog::make_question() {
  auto* label = new QLabel(tr("&Words"));
  label->setBuddy(words_);
  words_->setPlaceholderText(tr("all of them: mohair blue"));
  words_->setClearButtonEnabled(true);
  role_->setAccessibleName(tr("Role of the yarn to be like"));
  holding_->addItems({tr("one strand"), tr("held double"), tr("two yarns together"), tr("all of these")});
  holding_->setAccessibleName(tr("How the yarn is held"));
  owned_->setToolTip(tr("Only yarns of which some is at home"));
  auto* row = new QHBoxLayout;
  row->addWidget(label);
  row->addWidget(words_, 1);
  row->addWidget(like_);
  row->addWidget(role_);
  row->addWidget(holding_);
  row->addWidget(owned_);
  return row;
}

QPushButton* ShelfDialog::button(const QString& text, void (ShelfDialog::*press)(), const QString& tip) {
  auto* made = new QPushButton(text);
  made->setToolTip(tip);
  made->setAutoDefault(false);
  connect(made, &QPushButton::clicked, this, press);
  return made;
}

QHBoxLayout* ShelfDialog::make_buttons() {
  as_candidate_ = button(tr("Add as a &candidate"), &ShelfDialog::add_as_candidate,
                         tr("The chosen yarn beside the pattern's own"));
  as_on_hand_ = button(tr("Put on han&d"), &ShelfDialog::add_on_hand,
                       tr("The chosen yarns, with shade, lot and what is owned"));
  remove_ = button(tr("&Remove"), &ShelfDialog::remove_entries, tr("Take the chosen yarns off the shelf"));
  put_back_ = button(tr("Put &back"), &ShelfDialog::put_back, tr("Put back what was removed last"));
  put_back_->hide();
  auto* row = new QHBoxLayout;
  for (QPushButton* each : {as_candidate_, as_on_hand_}) row->addWidget(each);
  row->addStretch(1);
  row->addWidget(
      button(tr("&New yarn"), &ShelfDialog::add_entry, tr("A new entry, its name being typed in")));
  row->addWidget(remove_);
  row->addWidget(put_back_);
  row->addWidget(button(tr("Keep the &pattern's yarns"), &ShelfDialog::put_patterns_yarns_on_shelf,
                        tr("Put the yarns of the open pattern on the shelf")));
  row->addWidget(button(tr("&Import…"), &ShelfDialog::import_csv, tr("Read yarns from a CSV table")));
  row->addWidget(
      button(tr("&Export…"), &ShelfDialog::export_csv, tr("Write the whole shelf as a CSV table")));
  auto* close = new QPushButton(tr("Cl&ose"));
  close->setAutoDefault(false);
  connect(close, &QPushButton::clicked, this, &QDialog::reject);
  row->addWidget(close);
  return row;
}

void ShelfDialog::follow_pattern() {
  std::vector<Choice> choices;
  for (const Role& role : open_.pattern().roles) {
    const Yarn* yarn = open_.pattern().yarn(role.yarn);
    if (yarn != nullptr) choices.push_back({from(role.label + " " + yarn->name), role.id.value});
  }
  role_->set_choices(choices);
  if (role_->currentIndex() < 0 && role_->count() > 0) role_->setCurrentIndex(0);
  like_->setEnabled(role_->count() > 0);
  if (role_->count() == 0) like_->setChecked(false);
  if (isVisible() && like_->isChecked()) search();
}

void ShelfDialog::showEvent(QShowEvent* event) {
  QDialog::showEvent(event);
  // Another window may have written to the shelf meanwhile.
  if (was_shown_) read_anew();
  was_shown_ = true;
}

void ShelfDialog::read_anew() {
  forget_index();
  search();
}

void ShelfDialog::forget_index() {
  index_.reset();
  ++writes_;
}

void ShelfDialog::search() {
  ShelfQuestion question;
  question.words = words_->text().toStdString();
  question.owned_only = owned_->isChecked();
  const int holding = holding_->currentIndex();
  if (like_->isChecked())
    for (const Role& role : open_.pattern().roles)
      if (role.id.value == role_->currentData().toUInt())
        if (const Yarn* yarn = open_.pattern().yarn(role.yarn))
          question.like = ShelfLike{*yarn, role.strands};
  question.singles = holding == 0 || holding == 3;
  question.doubled = holding == 1 || holding == 3;
  question.pairs = holding == 2 || holding == 3;
  holding_->setEnabled(like_->isChecked());
  role_->setEnabled(like_->isChecked());
  job_.ask([path = path_.toStdString(), index = index_, question, writes = writes_] {
    return found_on(path, index, question, writes);
  });
}

void ShelfDialog::show_found(std::shared_ptr<const ShelfFound> found) {
  if (found->writes != writes_) return search();  // it was read before the last edit
  index_ = found->index;
  auto* header = table_->horizontalHeader();
  const bool like = found->question.like.has_value();
  const int usual = like ? model_->reason_column() : model_->column_of(ShelfField::name);
  if (like != like_shown_) header->setSortIndicator(usual, Qt::AscendingOrder);
  like_shown_ = like;
  model_->show(found);
  if (header->sortIndicatorSection() != usual || header->sortIndicatorOrder() != Qt::AscendingOrder)
    model_->sort(header->sortIndicatorSection(), header->sortIndicatorOrder());
  rule_->setText(from(shelf_order_words(found->question)));
  if (found->error) {
    tell(sentence_of(*found->error));
  } else if (found->index->entries().empty()) {
    tell(tr("The shelf is empty: type a new yarn, keep the pattern's, or import a table."));
  } else {
    QString told =
        tr("%1 found on a shelf of %2.").arg(model_->rowCount()).arg(found->index->entries().size());
    if (found->answer.without_put_up > 0)
      told += QLatin1Char(' ') + tr("%1 could not be compared: the length or weight of a skein is not known.")
                                     .arg(found->answer.without_put_up);
    told_->setText(told);
  }
  if (!sized_ && model_->rowCount() > 0) {
    table_->resizeColumnsToContents();
    const int most = scaled(this, 210);
    for (int column = 0; column < model_->columnCount() - 1; ++column)
      table_->setColumnWidth(column, std::min(table_->columnWidth(column), most));
    sized_ = true;
  }
  for (int row = 0; to_edit_ && row < model_->rowCount(); ++row) {
    if (model_->entry(model_->hits()[static_cast<std::size_t>(row)].first).id != to_edit_) continue;
    const QModelIndex name = model_->index(row, model_->column_of(ShelfField::name));
    table_->setCurrentIndex(name);
    table_->edit(name);
    to_edit_ = {};
  }
  follow_choice();
}

void ShelfDialog::follow_choice() {
  const bool chosen = table_->selectionModel()->hasSelection();
  for (QPushButton* each : {as_candidate_, as_on_hand_, remove_}) each->setEnabled(chosen);
}

std::vector<ShelfYarn> ShelfDialog::chosen_entries() const {
  std::vector<ShelfYarn> entries;
  std::set<ShelfYarnId> taken;
  for (const QModelIndex& row : table_->selectionModel()->selectedRows()) {
    const ShelfHit& hit = model_->hits()[static_cast<std::size_t>(row.row())];
    for (std::size_t index : {hit.first, hit.second})
      if (const ShelfYarn& entry = model_->entry(index); taken.insert(entry.id).second)
        entries.push_back(entry);
  }
  return entries;
}

void ShelfDialog::add_as_candidate() {
  for (const QModelIndex& row : table_->selectionModel()->selectedRows()) {
    const ShelfHit& hit = model_->hits()[static_cast<std::size_t>(row.row())];
    const ShelfYarn first = model_->entry(hit.first), second = model_->entry(hit.second);
    CandidateId added;
    const auto failed = open_.apply(tr("candidate %1").arg(from(first.yarn.name)), [&](Pattern& pattern) {
      added = candidate_from_shelf(pattern, first, hit.holding == ShelfHolding::pair ? &second : nullptr,
                                   hit.holding == ShelfHolding::doubled ? 2 : 1);
    });
    if (failed) return tell(sentence_of(*failed));
    tell(tr("%1 is a candidate now.").arg(from(first.yarn.name)));
    emit candidate_added(added.value);
  }
}

void ShelfDialog::add_on_hand() {
  for (const ShelfYarn& entry : chosen_entries()) {
    OnHandId added;
    const auto failed = open_.apply(tr("yarn on hand %1").arg(from(entry.yarn.name)),
                                    [&](Pattern& pattern) { added = on_hand_from_shelf(pattern, entry); });
    if (failed) return tell(sentence_of(*failed));
    tell(tr("%1 is on hand now.").arg(from(entry.yarn.name)));
    emit on_hand_added(added.value);
  }
}

bool ShelfDialog::store(const std::vector<ShelfYarn>& entries) {
  const auto stored = store_on_shelf(path_.toStdString(), entries);
  if (!stored) {
    tell(sentence_of(stored.error()));
    return false;
  }
  forget_index();
  if (entries.size() == 1 && !entries.front().id) to_edit_ = stored->front();
  return true;
}

void ShelfDialog::store_edited(std::size_t index) {
  const ShelfYarn entry = model_->entry(index);
  if (!store({entry})) return;
  QString told = tr("%1 is kept.").arg(from(entry.yarn.name));
  std::vector<ShelfYarn> others = model_->found()->index->entries();
  others.erase(others.begin() + static_cast<std::ptrdiff_t>(index));
  const auto same = find_duplicates(others, std::vector{entry});
  if (!same.empty() && same.front().exact)
    told += QLatin1Char(' ') + tr("The shelf has it twice now: remove one of them, or leave both.");
  tell(told);
}

void ShelfDialog::add_entry() {
  ShelfYarn entry;
  entry.yarn.name = tr("New yarn").toStdString();
  if (!store({entry})) return;
  const QSignalBlocker words(words_), like(like_), owned(owned_);
  words_->clear();
  like_->setChecked(false);
  owned_->setChecked(false);
  search();
}

void ShelfDialog::remove_entries() {
  const std::vector<ShelfYarn> entries = chosen_entries();
  if (entries.empty()) return;
  std::vector<ShelfYarnId> ids;
  for (const ShelfYarn& entry : entries) ids.push_back(entry.id);
  if (const auto dropped = drop_from_shelf(path_.toStdString(), ids); !dropped)
    return tell(sentence_of(dropped.error()));
  removed_ = entries;
  put_back_->show();
  read_anew();
  emit says(tr("%1 removed from the shelf.").arg(from(entries.front().yarn.name)));
}

void ShelfDialog::put_back() {
  if (removed_.empty() || !store(removed_)) return;
  removed_.clear();
  put_back_->hide();
  search();
}

void ShelfDialog::put_patterns_yarns_on_shelf() {
  const Pattern& pattern = open_.pattern();
  std::vector<ShelfYarn> offered;
  for (const Yarn& yarn : pattern.yarns)
    if (!yarn.name.empty()) offered.push_back(shelf_yarn_of(pattern, yarn.id));
  const auto shelf = load_shelf(path_.toStdString());
  if (!shelf) return tell(sentence_of(shelf.error()));
  const ShelfIntake intake = plan_intake(*shelf, offered, DuplicateChoice::leave_out);
  if (!intake.entries.empty() && !store(intake.entries)) return;
  to_edit_ = {};
  emit says(tr("%1 of %2 yarns were new to the shelf.").arg(intake.entries.size()).arg(offered.size()));
  search();
}

void ShelfDialog::import_csv() {
  if (!index_) return tell(tr("The shelf is still being read."));
  const QString path = ask_path_(this, false, {});
  if (path.isEmpty()) return;
  const auto bytes = read_whole_file(path.toStdString());
  auto table = bytes ? read_shelf_table(*bytes, path.toStdString())
                     : Expected<ShelfTable>(tl::unexpected(bytes.error()));
  if (!table) return tell(sentence_of(table.error()));
  import_ = new ShelfImportDialog(std::move(*table), index_, this);
  connect(import_, &QDialog::accepted, this, &ShelfDialog::take_import);
  connect(import_, &ShelfImportDialog::wants_failed_rows_saved, this, [this] {
    const QString to = ask_path_(import_, true, tr("rows not taken.csv"));
    if (to.isEmpty()) return;
    if (const auto saved = save_text(to.toStdString(), import_->failed_rows()); !saved)
      tell(sentence_of(saved.error()));
  });
  import_->open();
}

void ShelfDialog::take_import() {
  const std::vector<ShelfYarn> entries = import_->entries();
  if (!store(entries)) return;
  to_edit_ = {};
  emit says(tr("%1 yarns put on the shelf.").arg(entries.size()));
  search();
}

void ShelfDialog::export_csv() {
  if (!index_) return tell(tr("The shelf is still being read."));
  const QString path = ask_path_(this, true, tr("yarns.csv"));
  if (path.isEmpty()) return;
  const auto shelf = load_shelf(path_.toStdString());
  if (!shelf) return tell(sentence_of(shelf.error()));
  if (const auto saved = save_text(path.toStdString(), shelf_csv(*shelf)); !saved)
    return tell(sentence_of(saved.error()));
  tell(tr("%1 yarns written to %2.").arg(shelf->size()).arg(path));
}

void ShelfDialog::tell(const QString& sentence) {
  told_->setText(sentence);
  emit says(sentence);
}

}  // namespace skeinproof
