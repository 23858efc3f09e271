// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pattern/list_pane.h"

#include <QApplication>
#include <QClipboard>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/widgets/count_words.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/size_grid.h"
#include "app/widgets/size_table.h"
#include "core/pattern/edits.h"

namespace skeinproof {

namespace {

QHBoxLayout* field_row(QWidget* parent) {
  auto* row = new QHBoxLayout(parent);
  row->setContentsMargins(scaled(parent, 12), scaled(parent, 8), scaled(parent, 12), scaled(parent, 8));
  row->setSpacing(scaled(parent, 8));
  return row;
}

void add_field(QHBoxLayout& row, const QString& words, QWidget* field, int stretch = 0) {
  auto* label = new QLabel(words);
  label->setBuddy(field);
  row.addWidget(label);
  row.addWidget(field, stretch);
}

}  // namespace

ListPane::ListPane(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      measurement_(
          open, this,
          [this](const Pattern& pattern) -> const Measurement* {
            for (const Measurement& measurement : pattern.measurements)
              if (measurement.id == shown_row_.measurement) return &measurement;
            return nullptr;
          },
          [](const Measurement& measurement) { return QString::fromStdString(measurement.name); }),
      notion_(
          open, this,
          [this](const Pattern& pattern) -> const Notion* {
            const bool there =
                shown_row_.kind == ListRow::Kind::notion && shown_row_.notion < pattern.notions.size();
            return there ? &pattern.notions[shown_row_.notion] : nullptr;
          },
          [](const Notion& notion) { return QString::fromStdString(notion.name); }),
      head_(new PaneHeader(tr("Measurements, notions, printed total"))),
      grid_(new SizeGrid(open)),
      form_(new QStackedWidget),
      sentence_(new QuietLabel),
      message_(new QuietLabel) {
  head_->add_button(tr("Add measure&ment"), [this] { add_measurement(); });
  head_->add_button(
      tr("Add n&otion"), [this] { add_notion(); }, tr("Buttons, a zip, beads: what is no yarn"));
  head_->add_button(
      tr("Paste table"), [this] { paste(QApplication::clipboard()->text()); },
      tr("Measurements with their names in the first column, from a spreadsheet"));
  up_ = head_->add_button(tr("Up"), [this] { move_row(-1); });
  down_ = head_->add_button(tr("Down"), [this] { move_row(1); });
  erase_ = head_->add_button(
      tr("Delete"), [this] { erase_row(); }, tr("Delete the chosen row from the pattern"));
  grid_->set_height_follows_rows(true);
  grid_->table()->setAccessibleName(tr("Measurements, notions and printed total"));
  form_->addWidget(measurement_form());
  form_->addWidget(notion_form());
  sentence_->setWordWrap(true);
  sentence_->setMargin(scaled(this, 12));
  form_->addWidget(sentence_);
  message_->setWordWrap(true);
  message_->setContentsMargins(scaled(this, 12), 0, scaled(this, 12), scaled(this, 8));
  message_->hide();
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  for (QWidget* widget : std::initializer_list<QWidget*>{head_, message_, grid_, form_})
    layout->addWidget(widget);
  connect(grid_, &SizeGrid::current_changed, this, &ListPane::show_form);
  connect(grid_, &SizeGrid::says, this, &ListPane::says);
  connect(&open_, &OpenPattern::changed, this, &ListPane::refresh);
  connect(&open_, &OpenPattern::reader_changed, this, &ListPane::refresh);
  connect(&open_, &OpenPattern::replaced, this, [this] {
    message_->hide();
    refresh();
  });
  refresh();
}

QWidget* ListPane::measurement_form() {
  auto* whole = new QWidget;
  auto* row = field_row(whole);
  measurement_name_ = measurement_.text(
      tr("name of measurement"), [](auto& part) -> auto& { return part.name; });
  measurement_name_->set_suggestions({tr("bust"), tr("chest"), tr("length to underarm"), tr("upper arm"),
                                      tr("sleeve length"), tr("yoke depth"), tr("neck"), tr("hip"),
                                      tr("waist"), tr("foot circumference"), tr("foot length"),
                                      tr("head circumference")});
  add_field(*row, tr("Name"), measurement_name_, 1);
  add_field(*row, tr("measures the"),
            measurement_.choice<MeasurementKind>(
                tr("kind"), [](auto& part) -> auto& { return part.kind; }));
  add_field(*row, tr("of the"),
            measurement_.choice<Fit>(
                tr("fit"), [](auto& part) -> auto& { return part.fit; },
                [](Fit fit) {
                  return fit == Fit::finished ? ListPane::tr("finished item")
                                              : ListPane::tr("body it is to fit");
                }));
  return whole;
}

QWidget* ListPane::notion_form() {
  auto* whole = new QWidget;
  auto* row = field_row(whole);
  notion_name_ = notion_.text(
      tr("name of notion"), [](auto& part) -> auto& { return part.name; });
  notion_name_->set_suggestions(
      {tr("buttons, 15 mm"), tr("zip"), tr("beads"), tr("snap fasteners"), tr("elastic")});
  add_field(*row, tr("Name"), notion_name_, 1);
  add_field(*row, tr("weight of one"),
            notion_.quantity<Grams>(
                QuantityFormat::mass(), tr("weight of a notion"),
                [](auto& part) -> auto& { return part.weight_each; }));
  return whole;
}

const ListRow* ListPane::current() const {
  const int row = grid_->current_row();
  return row >= 0 && row < static_cast<int>(rows_.what.size()) ? &rows_.what[static_cast<std::size_t>(row)]
                                                               : nullptr;
}

bool ListPane::choose(const ListRow& row) {
  const auto found = std::find(rows_.what.begin(), rows_.what.end(), row);
  if (found == rows_.what.end()) return false;
  grid_->set_current(static_cast<int>(found - rows_.what.begin()), grid_->current_size());
  return true;
}

bool ListPane::show_measurement(MeasurementId id) { return choose({ListRow::Kind::measurement, id, 0}); }
QString ListPane::message() const { return message_->isHidden() ? QString() : message_->text(); }

void ListPane::add_measurement() {
  MeasurementId made;
  open_.apply(tr("add measurement"), [&](Pattern& pattern) {
    // Most patterns say first how wide the item is, then how long.
    const bool first = pattern.measurements.empty();
    Measurement measurement;
    measurement.id = made = take_id<MeasurementId>(pattern);
    measurement.name =
        (first ? tr("bust") : tr("measurement %1").arg(pattern.measurements.size() + 1)).toStdString();
    measurement.kind = first ? MeasurementKind::circumference : MeasurementKind::other;
    pattern.measurements.push_back(std::move(measurement));
  });
  show_measurement(made);
  measurement_name_->setFocus();
  measurement_name_->selectAll();
}

void ListPane::add_notion() {
  open_.apply(tr("add notion"), [](Pattern& pattern) {
    pattern.notions.push_back({ListPane::tr("buttons").toStdString(), {}, {}});
  });
  choose({ListRow::Kind::notion, {}, open_.pattern().notions.size() - 1});
  notion_name_->setFocus();
  notion_name_->selectAll();
}

void ListPane::erase_row() {
  const ListRow* row = current();
  if (row == nullptr) return;
  const ListRow gone = *row;
  if (gone.kind == ListRow::Kind::notion) {
    const QString name = QString::fromStdString(open_.pattern().notions[gone.notion].name);
    open_.apply(tr("delete notion %1").arg(name), [&](Pattern& pattern) {
      pattern.notions.erase(pattern.notions.begin() + static_cast<std::ptrdiff_t>(gone.notion));
    });
    emit says(tr("Deleted %1; Undo brings it back.").arg(name));
  } else if (const Measurement* part = measurement_.part()) {
    const QString name = QString::fromStdString(part->name);
    open_.apply(tr("delete measurement %1").arg(name), [&](Pattern& pattern) {
      auto& all = pattern.measurements;
      all.erase(std::remove_if(all.begin(), all.end(),
                               [&](const Measurement& m) { return m.id == gone.measurement; }),
                all.end());
    });
    emit says(tr("Deleted %1; Undo brings it back.").arg(name));
  }
}

void ListPane::move_row(int step) {
  const ListRow* row = current();
  if (row == nullptr) return;
  ListRow moved = *row;
  const auto in_list = [step](std::size_t from, std::size_t count) {
    return step < 0 ? from > 0 : from + 1 < count;
  };
  const auto to = [step](std::size_t from) { return step < 0 ? from - 1 : from + 1; };
  if (moved.kind == ListRow::Kind::notion) {
    if (!in_list(moved.notion, open_.pattern().notions.size())) return;
    open_.apply(tr("move notion"),
                [&](Pattern& pattern) { move_part(pattern.notions, moved.notion, to(moved.notion)); });
    moved.notion = to(moved.notion);
  } else {
    const auto& all = open_.pattern().measurements;
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Measurement& m) { return m.id == moved.measurement; });
    const auto from = static_cast<std::size_t>(found - all.begin());
    if (found == all.end() || !in_list(from, all.size())) return;
    open_.apply(tr("move measurement %1").arg(QString::fromStdString(found->name)),
                [&](Pattern& pattern) { move_part(pattern.measurements, from, to(from)); });
  }
  choose(moved);
}

void ListPane::paste(const QString& text) {
  const PastedMeasurements pasted = read_measurements(text, open_.pattern(), open_.reader());
  QStringList words;
  if (!pasted.taken.empty() || pasted.size_line) {
    open_.apply(tr("paste table of measurements"),
                [&](Pattern& pattern) { take_measurements(pattern, pasted); });
    words << tr("Took %1 as one step of undo.")
                 .arg(count_words(pasted.taken.size() + (pasted.size_line ? 1 : 0), tr("row"), tr("rows")));
  } else if (pasted.left_out.isEmpty()) {
    words << tr("The clipboard holds no table: names in the first column, then a value for each size.");
  }
  if (!pasted.left_out.isEmpty())
    words << tr("Left out: %1").arg(pasted.left_out.join(QStringLiteral(" · ")));
  message_->setText(words.join(QLatin1Char(' ')));
  message_->show();
  emit says(words.first());
}

void ListPane::refresh() {
  ListRows rows = list_rows(open_.pattern(), open_.reader());
  bool same = rows.what == rows_.what && rows.rows.size() == rows_.rows.size();
  for (std::size_t i = 0; same && i < rows.rows.size(); ++i) same = rows.rows[i].label == rows_.rows[i].label;
  if (!same) {
    const ListRow kept = shown_row_;
    rows_ = std::move(rows);
    grid_->set_rows(rows_.rows);
    choose(kept);
  }
  head_->set_note(open_.pattern().measurements.empty()
                      ? tr("type the bust, or a list of it, into the first row")
                      : tr("one value a size"));
  show_form();
}

void ListPane::show_form() {
  const ListRow* row = current();
  const ListRow shown = row != nullptr ? *row : ListRow();
  const bool other = !(shown == shown_row_);
  shown_row_ = shown;
  measurement_.refresh(other);
  notion_.refresh(other);
  using Kind = ListRow::Kind;
  const bool is_measurement = shown.kind == Kind::measurement || shown.kind == Kind::other_system;
  form_->setCurrentIndex(is_measurement ? 0 : shown.kind == Kind::notion ? 1 : 2);
  sentence_->setText(
      shown.kind == Kind::printed_total
          ? tr("Skeins over all colours, as the submitted or published text says; leave it empty where it "
               "says nothing.")
          : tr("No measurement yet: type one value a size, or a whole list such as 81.5 (91, 100, 109)."));
  for (QPushButton* button : {erase_, up_, down_})
    button->setEnabled(is_measurement || shown.kind == Kind::notion);
}

}  // namespace skeinproof
