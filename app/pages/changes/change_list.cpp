// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/change_list.h"

#include <QCoreApplication>
#include <QMenu>
#include <QShortcut>
#include <algorithm>

#include "app/pages/changes/change_words.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"
#include "core/pattern/edits.h"

namespace skeinproof {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(ChangeList)
};

struct MenuRow {
  ChangeKind kind;
  const char* words;
};
constexpr MenuRow menu_rows[] = {
    {ChangeKind::longer_piece, QT_TRANSLATE_NOOP("ChangeList", "&Longer or shorter")},
    {ChangeKind::extra_rounds, QT_TRANSLATE_NOOP("ChangeList", "More or fewer &rounds")},
    {ChangeKind::other_gauge, QT_TRANSLATE_NOOP("ChangeList", "Another &gauge")},
    {ChangeKind::other_size, QT_TRANSLATE_NOOP("ChangeList", "Another &size")},
    {ChangeKind::between_sizes, QT_TRANSLATE_NOOP("ChangeList", "&Between two sizes")},
    {ChangeKind::piece_left_out, QT_TRANSLATE_NOOP("ChangeList", "Piece left &out")},
    {ChangeKind::piece_again, QT_TRANSLATE_NOOP("ChangeList", "Piece once &again")},
    {ChangeKind::given_to, QT_TRANSLATE_NOOP("ChangeList", "Part in another &colour")}};

const std::vector<BenchChange>& rows_of(const ChangesIn& changes, const Pattern& pattern) {
  static const std::vector<BenchChange> none;
  const auto* rows = changes(pattern);
  return rows == nullptr ? none : *rows;
}

// The pattern is the copy being edited, so its list may be written to.
std::vector<BenchChange>& editable(const ChangesIn& changes, Pattern& pattern) {
  return const_cast<std::vector<BenchChange>&>(rows_of(changes, pattern));
}

PartList change_list(OpenPattern& open, const ChangesIn& changes) {
  PartList list;
  list.part = Words::tr("change");
  list.count = [changes](const Pattern& pattern) { return rows_of(changes, pattern).size(); };
  list.key = [changes](const Pattern& pattern, std::size_t row) {
    return rows_of(changes, pattern)[row].id.value;
  };
  list.name = [&open, changes](const Pattern& pattern, std::size_t row) {
    return row_words(pattern, rows_of(changes, pattern)[row], open.reader());
  };
  list.erase = [changes](Pattern& pattern, std::size_t row) {
    auto& rows = editable(changes, pattern);
    rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(row));
  };
  list.duplicate = [changes](Pattern& pattern, std::size_t row) {
    auto& rows = editable(changes, pattern);
    BenchChange copy = rows[row];
    copy.id = take_id<ChangeId>(pattern);
    rows.insert(rows.begin() + static_cast<std::ptrdiff_t>(row) + 1, std::move(copy));
  };
  list.move = [changes](Pattern& pattern, std::size_t from, std::size_t to) {
    move_part(editable(changes, pattern), from, to);
  };
  return list;
}

QString does_words(const BenchChange& row, const ChangeOutcome* outcome, const ReaderStyle& reader) {
  if (!row.made) return Words::tr("laid aside");
  if (outcome == nullptr) return QStringLiteral("…");
  if (outcome->lacks_a_field) return Words::tr("not whole yet");
  return outcome->problem ? Words::tr("cannot be made") : moves_words(*outcome, reader);
}

void add_key(PartTable* table, int key, const std::function<void()>& act) {
  auto* shortcut = new QShortcut(QKeySequence(key), table);
  shortcut->setContext(Qt::WidgetShortcut);
  QObject::connect(shortcut, &QShortcut::activated, table, act);
}

}  // namespace

const std::vector<BenchChange>* changes_on_bench(const Pattern& pattern) { return &pattern.changes; }

PartTable* make_change_list(OpenPattern& open, OutcomeOf outcome_of) {
  PartList list = change_list(open, &changes_on_bench);
  PartColumn made = tick_column(
      Words::tr("Made"), Words::tr("made"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.changes[row].made; });
  made.tip = Words::tr("Made, or laid aside");
  made.spoken = [](const Pattern& pattern, std::size_t row) {
    return pattern.changes[row].made ? Words::tr("made") : Words::tr("laid aside");
  };
  PartColumn change = computed_column(Words::tr("Change"), list.name);
  change.quiet = false;
  change.stretch = 2;
  PartColumn does =
      computed_column(Words::tr("Knitted"), [&open, outcome_of](const Pattern& pattern, std::size_t row) {
        const BenchChange& one = pattern.changes[row];
        return does_words(one, outcome_of(one.id), open.reader());
      });
  does.tip = Words::tr("Knitted length more or less, behind the changes above it");
  does.right = true;
  does.spoken = [text = does.text, outcome_of](const Pattern& pattern, std::size_t row) {
    const BenchChange& one = pattern.changes[row];
    const ChangeOutcome* outcome = one.made ? outcome_of(one.id) : nullptr;
    const QString problem = outcome != nullptr ? problem_words(*outcome) : QString();
    return problem.isEmpty() ? text(pattern, row) : text(pattern, row) + QStringLiteral(". ") + problem;
  };
  auto* table = new PartTable(open, std::move(list), {made, change, does});
  table->setAccessibleName(Words::tr("Changes on the fly"));
  add_key(table, Qt::Key_Delete, [table] { table->erase(); });
  add_key(table, Qt::Key_Space, [table] {
    const QModelIndex cell = table->model()->index(table->current_row(), 0);
    if (!cell.isValid()) return;
    const bool on = cell.data(Qt::CheckStateRole).toInt() == Qt::Checked;
    table->model()->setData(cell, on ? Qt::Unchecked : Qt::Checked, Qt::CheckStateRole);
  });
  return table;
}

PartTable* make_altered_list(OpenPattern& open, ChangesIn changes) {
  PartList list = change_list(open, changes);
  PartColumn change = computed_column(Words::tr("Knitted otherwise than the pattern says"), list.name);
  change.quiet = false;
  change.stretch = 1;
  auto* table = new PartTable(open, std::move(list), {change});
  table->setAccessibleName(Words::tr("Knitted otherwise"));
  add_key(table, Qt::Key_Delete, [table] { table->erase(); });
  return table;
}

QMenu* make_kind_menu(QWidget* parent, const std::function<void(ChangeKind)>& add) {
  auto* menu = new QMenu(parent);
  for (const MenuRow& row : menu_rows)
    menu->addAction(Words::tr(row.words), parent, [add, kind = row.kind] { add(kind); });
  return menu;
}

ChangeId add_change(Pattern& pattern, const ChangesIn& changes, ChangeKind kind, ChangeId behind) {
  BenchChange row;
  row.id = take_id<ChangeId>(pattern);
  row.kind = kind;
  const bool of_piece = kind == ChangeKind::longer_piece || kind == ChangeKind::piece_again;
  if (of_piece && pattern.pieces.size() == 1) row.piece = pattern.pieces.front().id;
  if (kind == ChangeKind::other_gauge && !pattern.fabrics.empty()) row.fabric = pattern.fabrics.front().id;
  if (kind == ChangeKind::between_sizes && pattern.sizes.size() > 1) {
    const std::size_t chosen = pattern.size_index(pattern.chosen_size).value_or(0);
    const std::size_t from = std::min(chosen, pattern.sizes.size() - 2);
    row.size = pattern.sizes[from].id;
    row.other_size = pattern.sizes[from + 1].id;
    row.share_pct = Entered<double>{50, {}};
  }
  auto& rows = editable(changes, pattern);
  const auto at =
      std::find_if(rows.begin(), rows.end(), [&](const BenchChange& other) { return other.id == behind; });
  rows.insert(at == rows.end() ? at : at + 1, row);
  return row.id;
}

void add_changes(Pattern& pattern, std::vector<BenchChange> rows) {
  for (BenchChange& row : rows) {
    row.id = take_id<ChangeId>(pattern);
    pattern.changes.push_back(std::move(row));
  }
}

}  // namespace skeinproof
