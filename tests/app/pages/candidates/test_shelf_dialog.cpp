// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QCheckBox>
#include <QComboBox>
#include <QHeaderView>
#include <QSignalSpy>
#include <QTableView>
#include <QTest>
#include <fstream>

#include "app/document/open_pattern.h"
#include "app/pages/candidates/shelf_dialog.h"
#include "app/pages/candidates/shelf_import.h"
#include "app/pages/candidates/shelf_model.h"
#include "app/widgets/bound_fields.h"
#include "core/file/shelf_csv.h"
#include "core/file/whole_file.h"
#include "core/file/yarn_shelf.h"
#include "tests/support/samples.h"
#include "tests/support/temporary_folder.h"

namespace skeinproof {
namespace {

class ShelfDialogTest : public ::testing::Test {
 protected:
  ShelfDialogTest() {
    open.replace(testing::quillmarsh());
    const auto table =
        read_shelf_table(testing::project_text("sample-data/shelf/yarns.csv"), "yarns.csv").value();
    EXPECT_TRUE(store_on_shelf(path, read_shelf_rows(table, table.columns).entries()));
  }
  void show() {
    dialog = std::make_unique<ShelfDialog>(open, open.pattern().roles.front().id, nullptr,
                                           QString::fromStdString(path.string()));
    dialog->set_ask_path([this](QWidget*, bool, const QString&) { return asked; });
    dialog->show();
    wait();
  }
  void wait() {
    ASSERT_TRUE(QTest::qWaitFor([this] { return !dialog->is_busy(); }, 60000));
  }
  QString cell(int row, ShelfField field) {
    return model().index(row, model().column_of(field)).data().toString();
  }
  QString reason(int row) { return model().index(row, model().reason_column()).data().toString(); }
  ShelfModel& model() { return *dialog->model(); }

  TemporaryFolder folder;
  std::filesystem::path path = folder / "yarns.shelf";
  OpenPattern open;
  QString asked;
  std::unique_ptr<ShelfDialog> dialog;
};

TEST_F(ShelfDialogTest, ShowsWhatIsLikeThePatternsYarnWithItsReason) {
  show();
  ASSERT_GT(model().rowCount(), 300);
  EXPECT_EQ(model().hits().front().likeness.thickness_step, 0);
  EXPECT_EQ(model().hits().front().likeness.fibre, 0);
  EXPECT_TRUE(reason(0).contains(QStringLiteral("same fibre"))) << reason(0).toStdString();
  EXPECT_TRUE(dialog->told().contains(QStringLiteral("could not be compared")))
      << dialog->told().toStdString();
  dialog->words()->setText(QStringLiteral("mohair"));
  wait();
  ASSERT_GT(model().rowCount(), 0);
  for (int row = 0; row < model().rowCount(); ++row)
    EXPECT_TRUE(reason(row).contains(QStringLiteral("“mohair” in its composition")))
        << reason(row).toStdString();
  dialog->holding()->setCurrentIndex(2);
  wait();
  ASSERT_GT(model().rowCount(), 0);
  EXPECT_EQ(model().hits().front().holding, ShelfHolding::pair);
  EXPECT_TRUE(cell(0, ShelfField::name).contains(QStringLiteral(" with ")))
      << cell(0, ShelfField::name).toStdString();
  EXPECT_FALSE(model().flags(model().index(0, 0)) & Qt::ItemIsEditable) << "two yarns are no entry";
}

TEST_F(ShelfDialogTest, OrdersByAnyColumnAndKeepsThatOrder) {
  show();
  auto* header = dialog->table()->horizontalHeader();
  header->setSortIndicator(model().column_of(ShelfField::price), Qt::DescendingOrder);
  const auto dearest = [&] { return model().hits().front().price_a_100m.value_or(-1); };
  const auto cheapest_known = [&] {
    double last = -1;
    for (const ShelfHit& hit : model().hits())
      if (hit.price_a_100m && hit.currency == model().hits().front().currency) last = *hit.price_a_100m;
    return last;
  };
  EXPECT_GT(dearest(), cheapest_known());
  dialog->words()->setText(QStringLiteral("wool"));
  wait();
  EXPECT_GT(dearest(), cheapest_known());
}

TEST_F(ShelfDialogTest, EditsInPlaceAndKeepsWhatCannotBeRead) {
  show();
  dialog->like()->setChecked(false);
  wait();
  const QModelIndex put_up = model().index(0, model().column_of(ShelfField::put_up));
  const ShelfYarnId id = model().entry(model().hits()[0].first).id;
  EXPECT_TRUE(model().setData(put_up, QStringLiteral("1¾ oz / 191 yd"), Qt::EditRole));
  EXPECT_FALSE(model().setData(put_up, QStringLiteral("a lot"), Qt::EditRole));
  EXPECT_EQ(put_up.data().toString(), QStringLiteral("a lot"));
  EXPECT_TRUE(put_up.data(Qt::ToolTipRole).toString().contains(QStringLiteral("50 g / 175 m")));
  const auto shelf = load_shelf(path).value();
  const auto kept = std::find_if(shelf.begin(), shelf.end(), [&](const ShelfYarn& e) { return e.id == id; });
  ASSERT_NE(kept, shelf.end());
  EXPECT_EQ(kept->yarn.put_up.length->typed, "191 yd");
  dialog->search();
  wait();
  EXPECT_EQ(put_up.data().toString(), QStringLiteral("1¾ oz / 191 yd"));
}

TEST_F(ShelfDialogTest, AddsRemovesAndPutsBack) {
  show();
  const std::size_t before = load_shelf(path)->size();
  dialog->add_entry();
  wait();
  EXPECT_EQ(load_shelf(path)->size(), before + 1);
  const QModelIndex current = dialog->table()->currentIndex();
  ASSERT_TRUE(current.isValid());
  EXPECT_EQ(model().entry(model().hits()[static_cast<std::size_t>(current.row())].first).yarn.name,
            "New yarn");
  dialog->remove_entries();
  wait();
  EXPECT_EQ(load_shelf(path)->size(), before);
  dialog->put_back();
  wait();
  EXPECT_EQ(load_shelf(path)->size(), before + 1);
  dialog->put_patterns_yarns_on_shelf();
  wait();
  const std::size_t with_patterns = load_shelf(path)->size();
  EXPECT_GT(with_patterns, before + 1);
  dialog->put_patterns_yarns_on_shelf();
  wait();
  EXPECT_EQ(load_shelf(path)->size(), with_patterns) << "what is there is not put there twice";
}

TEST_F(ShelfDialogTest, WhatIsChosenBecomesACandidateOrYarnOnHandInOneStep) {
  show();
  QSignalSpy candidates(dialog.get(), &ShelfDialog::candidate_added);
  QSignalSpy on_hand(dialog.get(), &ShelfDialog::on_hand_added);
  const std::size_t before = open.pattern().candidates.size(), had = open.pattern().on_hand.size();
  dialog->holding()->setCurrentIndex(1);
  wait();
  dialog->table()->selectRow(0);
  dialog->add_as_candidate();
  ASSERT_EQ(candidates.count(), 1);
  ASSERT_EQ(open.pattern().candidates.size(), before + 1);
  EXPECT_EQ(open.pattern().candidates.back().id.value, candidates[0][0].toUInt());
  EXPECT_EQ(open.pattern().candidates.back().yarns.front().strands, 2);
  open.undo();
  EXPECT_EQ(open.pattern().candidates.size(), before);
  wait();
  dialog->table()->selectRow(0);
  dialog->add_on_hand();
  EXPECT_EQ(on_hand.count(), 1);
  EXPECT_EQ(open.pattern().on_hand.size(), had + 1);
}

TEST_F(ShelfDialogTest, ImportsWithALookFirstAndExports) {
  show();
  const std::size_t before = load_shelf(path)->size();
  asked = QString::fromUtf8(SKEINPROOF_SOURCE_DIR "/sample-data/shelf/notebook.csv");
  dialog->import_csv();
  ASSERT_TRUE(dialog->import_dialog());
  ShelfImportDialog& import = *dialog->import_dialog();
  EXPECT_TRUE(import.summary().contains(QStringLiteral("6 of 6 rows"))) << import.summary().toStdString();
  EXPECT_TRUE(import.doubts().contains(QStringLiteral("Line 5, column 33"))) << import.doubts().toStdString();
  // "Bought" is kept in the note until it is said to be the place.
  ChoiceField* bought = static_cast<ChoiceField*>(import.field_of(7));
  bought->show_choice(static_cast<std::uint32_t>(ShelfField::place));
  EXPECT_EQ(import.entries()[0].place, "at the fair");
  import.accept();
  wait();
  EXPECT_EQ(load_shelf(path)->size(), before + 6);
  ASSERT_TRUE(QTest::qWaitFor([this] { return dialog->import_dialog().isNull(); }));
  dialog->import_csv();
  EXPECT_TRUE(dialog->import_dialog()->summary().contains(QStringLiteral("6 are there already")))
      << dialog->import_dialog()->summary().toStdString();
  EXPECT_TRUE(dialog->import_dialog()->entries().empty());
  dialog->import_dialog()->duplicates()->setCurrentIndex(1);
  EXPECT_EQ(dialog->import_dialog()->entries().size(), 6u);
  dialog->import_dialog()->reject();
  asked = QString::fromStdString((folder / "out.csv").string());
  dialog->export_csv();
  const auto out = read_whole_file(folder / "out.csv").value();
  const auto table = read_shelf_table(out, "out.csv").value();
  EXPECT_EQ(table.rows.size(), before + 6);
}

TEST_F(ShelfDialogTest, SaysWhyAFileIsNoShelf) {
  std::ofstream(path, std::ios::trunc)
      << "no database, but a good many words of something else, for that matter; "
         "well over a hundred of characters long";
  show();
  EXPECT_EQ(model().rowCount(), 0);
  EXPECT_TRUE(dialog->told().contains(QStringLiteral("yarn shelf"))) << dialog->told().toStdString();
  dialog->add_entry();
  EXPECT_TRUE(dialog->told().contains(QStringLiteral("yarn shelf")));
  EXPECT_TRUE(read_whole_file(path)->starts_with("no database"));
}

TEST_F(ShelfDialogTest, EverythingHasANameForAScreenReader) {
  show();
  for (QWidget* child : dialog->findChildren<QWidget*>()) {
    const bool says_itself = qobject_cast<QAbstractButton*>(child) != nullptr ||
                             qobject_cast<QLineEdit*>(child) != nullptr;  // the field has a label
    if (says_itself || child->focusPolicy() == Qt::NoFocus || child->parentWidget() != dialog.get()) continue;
    EXPECT_FALSE(child->accessibleName().isEmpty()) << child->metaObject()->className();
  }
}

}  // namespace
}  // namespace skeinproof
