// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <QPointer>
#include <functional>
#include <memory>
#include <optional>

#include "app/document/latest_job.h"
#include "app/document/shelf_place.h"
#include "core/substitution/shelf_search.h"

class QCheckBox;
class QComboBox;
class QHBoxLayout;
class QLabel;
class QPushButton;
class QTableView;

namespace skeinproof {

class ChoiceField;
class OpenPattern;
class ShelfImportDialog;
class ShelfModel;
class TextField;
struct ShelfFound;

// The person's own yarns: searched by words and by likeness to the pattern's yarn, edited in place, read from
// and written to CSV. What is chosen becomes a candidate or yarn on hand of the open pattern, as one step of
// undo; the dialog stays open meanwhile.
class ShelfDialog : public QDialog {
  Q_OBJECT

 public:
  // Shows what is like the yarn of `role` first; of the first role where it is none. `path` empty =
  // shelf_place().
  ShelfDialog(OpenPattern& open, RoleId role, QWidget* parent, const QString& path = {});
  ~ShelfDialog() override;

  // Instead of the platform's file dialog; an empty path = given up.
  using AskPath = std::function<QString(QWidget* parent, bool saving, const QString& suggestion)>;
  void set_ask_path(AskPath ask_path) { ask_path_ = std::move(ask_path); }

  void add_as_candidate();
  void add_on_hand();
  void add_entry();
  void remove_entries();
  void put_back();  // what was removed last
  void put_patterns_yarns_on_shelf();
  void import_csv();
  void export_csv();
  void search();

  TextField* words() const { return words_; }
  QCheckBox* like() const { return like_; }
  ChoiceField* role() const { return role_; }
  QComboBox* holding() const { return holding_; }
  QTableView* table() const { return table_; }
  ShelfModel* model() const { return model_; }
  QString told() const;
  QPointer<ShelfImportDialog> import_dialog() const { return import_; }
  bool is_busy() const { return job_.is_busy(); }

 signals:
  void candidate_added(std::uint32_t candidate);  // its id
  void on_hand_added(std::uint32_t on_hand);
  void says(const QString& message);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  QHBoxLayout* make_question();
  QHBoxLayout* make_buttons();
  QPushButton* button(const QString& text, void (ShelfDialog::*press)(), const QString& tip);
  void follow_pattern();
  void show_found(std::shared_ptr<const ShelfFound> found);
  void follow_choice();
  void take_import();
  bool store(const std::vector<ShelfYarn>& entries);
  void forget_index();
  void read_anew();
  void store_edited(std::size_t index);
  std::vector<ShelfYarn> chosen_entries() const;
  void tell(const QString& sentence);

  OpenPattern& open_;
  QString path_;
  AskPath ask_path_;
  std::shared_ptr<const ShelfIndex> index_;  // none = to be read anew
  int writes_ = 0;                           // to the shelf, so that what was found before shows as old
  bool was_shown_ = false, sized_ = false, like_shown_ = true;
  ShelfYarnId to_edit_;  // a new entry, whose name is to be typed once it is listed
  std::vector<ShelfYarn> removed_;
  TextField* words_;
  QCheckBox* like_;
  ChoiceField* role_;
  QComboBox* holding_;
  QCheckBox* owned_;
  QTableView* table_;
  ShelfModel* model_;
  QLabel* rule_;
  QLabel* told_;
  QPushButton* as_candidate_ = nullptr;
  QPushButton* as_on_hand_ = nullptr;
  QPushButton* remove_ = nullptr;
  QPushButton* put_back_ = nullptr;
  QPointer<ShelfImportDialog> import_;
  LatestJob<std::shared_ptr<const ShelfFound>> job_;
};

}  // namespace skeinproof
