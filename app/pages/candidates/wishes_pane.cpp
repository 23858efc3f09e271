// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/wishes_pane.h"

#include <QLabel>
#include <QListView>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>

#include "app/pages/candidates/band_lines.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "app/widgets/line_field.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_table.h"
#include "core/pattern/edits.h"
#include "core/substitution/wishes.h"

namespace skeinproof {
namespace {

QString qt(const std::string& text) { return QString::fromStdString(text); }

template <WordedEnum E>
std::vector<Choice> choices_in_words() {
  std::vector<Choice> choices;
  for (const auto& [value, word] : EnumWords<E>::rows)
    choices.push_back({QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size())),
                       static_cast<std::uint32_t>(value)});
  return choices;
}

bool has_limit(WishKind kind) {
  return kind == WishKind::mass_at_most || kind == WishKind::spare_at_most ||
         kind == WishKind::one_dye_lot_buy;
}

PartList wish_list() {
  PartList list;
  list.part = WishesPane::tr("wish");
  list.add_hint = WishesPane::tr("add something to ask");
  list.count = [](const Pattern& pattern) { return pattern.wishes.size(); };
  list.key = [](const Pattern&, std::size_t row) { return static_cast<std::uint32_t>(row + 1); };
  list.name = [](const Pattern& pattern, std::size_t row) {
    return qt(wish_words(pattern, pattern.wishes[row]));
  };
  list.append = [](Pattern& pattern) { pattern.wishes.emplace_back(); };
  list.erase = [](Pattern& pattern, std::size_t row) {
    pattern.wishes.erase(pattern.wishes.begin() + static_cast<std::ptrdiff_t>(row));
  };
  list.move = [](Pattern& pattern, std::size_t from, std::size_t to) { move_part(pattern.wishes, from, to); };
  return list;
}

}  // namespace

WishesPane::WishesPane(OpenPattern& open, QWidget* parent) : QWidget(parent), open_(open) {
  budget_ = new LineField([this](const QString& line) {
    const auto read = read_price(line);
    if (!read) return sentence_of(read.error());
    open_.apply(tr("budget %1").arg(line.trimmed()), [&](Pattern& pattern) { pattern.budget = *read; });
    return QString();
  });
  budget_->setAccessibleName(tr("Budget for all the yarn"));
  budget_->setPlaceholderText(tr("€90"));
  budget_->setMinimumWidth(scaled(this, 110));
  auto* budget_words = new QLabel(tr("Budge&t for all the yarn"));
  budget_words->setBuddy(budget_);
  auto* bar = new QWidget;
  auto* flow = new FlowLayout(bar);
  flow->setContentsMargins(scaled(this, 12), scaled(this, 8), scaled(this, 12), scaled(this, 8));
  flow->setSpacing(scaled(this, 8));
  flow->addWidget(budget_words);
  flow->addWidget(budget_);

  PartColumn level = choice_column(
      tr("How much"), tr("how much it matters"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.wishes[row].level; },
      [](const Pattern&, std::size_t) { return choices_in_words<WishLevel>(); });
  PartColumn kind = choice_column(
      tr("What"), tr("what must hold"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.wishes[row].kind; },
      [](const Pattern&, std::size_t) { return choices_in_words<WishKind>(); });
  PartColumn limit = quantity_column<double>(
      open_, tr("Limit"), tr("limit"), QuantityFormat::number(0, 100000, "percent or skeins"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.wishes[row].limit; });
  limit.tip = tr("Percent more than the pattern’s yarn, percent left over, or skeins");
  limit.text = [text = limit.text](const Pattern& pattern, std::size_t row) {
    const WishKind wish = pattern.wishes[row].kind;
    const QString words = text(pattern, row);
    if (!has_limit(wish)) return words.isEmpty() ? QStringLiteral("–") : words;
    return words;
  };
  PartColumn rule = text_column(
      tr("Rule"), tr("rule of the wish"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.wishes[row].rule; });
  rule.tip = tr("For “does not differ by”: S1, or empty for every rule");
  PartColumn met =
      computed_column(tr("Met by"), [this](const Pattern&, std::size_t row) { return met_by(row); });
  met.stretch = 1;
  wishes_ = new PartTable(open_, wish_list(), {level, kind, limit, rule, met});
  wishes_->setAccessibleName(tr("What is asked of a candidate"));
  connect(wishes_, &PartTable::says, this, &WishesPane::says);
  auto* head = new PaneHeader(tr("What you ask"));
  head->add_button(
      tr("De&lete"), [this] { wishes_->erase(); }, tr("Delete the chosen wish (Ctrl+Del)"));
  auto* upper = new QWidget;
  auto* upper_layout = new QVBoxLayout(upper);
  upper_layout->setContentsMargins(0, 0, 0, 0);
  upper_layout->setSpacing(0);
  upper_layout->addWidget(bar);
  upper_layout->addWidget(make_pane(head, wishes_), 1);

  standing_ = new FigureList;
  standing_->view()->setAccessibleName(tr("How the candidates stand"));
  standing_->set_empty_words(tr("Say what must hold, and it stands here who meets it and who does not."));
  auto* split = new QSplitter(Qt::Vertical);
  split->addWidget(upper);
  split->addWidget(make_pane(new PaneHeader(tr("Who meets it")), standing_));
  split->setChildrenCollapsible(false);
  split->setStretchFactor(1, 1);
  split->setSizes({scaled(this, 280), scaled(this, 360)});
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(split);
  setFocusProxy(wishes_);
  connect(&open_, &OpenPattern::changed, this, &WishesPane::refresh);
  connect(&open_, &OpenPattern::reader_changed, this, &WishesPane::refresh);
  connect(&open_, &OpenPattern::replaced, this, [this] {
    facts_.clear();
    budget_->give_back();
    refresh();
  });
  refresh();
}

void WishesPane::refresh() { budget_->show_line(price_text(open_.pattern().budget, open_.reader())); }

QString WishesPane::met_by(std::size_t wish) const {
  QStringList yes, unknown;
  std::size_t asked = 0;
  for (const CandidateFacts& facts : facts_) {
    if (wish >= facts.wishes.size()) continue;
    ++asked;
    if (!facts.wishes[wish].met)
      unknown << qt(facts.name);
    else if (*facts.wishes[wish].met)
      yes << qt(facts.name);
  }
  if (asked == 0) return QStringLiteral("…");
  QString words = yes.size() == static_cast<qsizetype>(asked) ? tr("all of them")
                  : yes.isEmpty()                             ? tr("none of them")
                                                              : yes.join(QStringLiteral(", "));
  if (!unknown.isEmpty()) words += tr("; not known of %1").arg(unknown.join(QStringLiteral(", ")));
  return words;
}

void WishesPane::show_facts(const std::vector<CandidateFacts>& facts) {
  facts_ = facts;
  const Pattern& pattern = open_.pattern();
  wishes_->refresh();
  std::vector<FigureRow> rows;
  const bool fits = std::all_of(facts_.begin(), facts_.end(), [&](const CandidateFacts& each) {
    return each.wishes.size() == pattern.wishes.size();
  });
  if (pattern.wishes.empty() || !fits) return standing_->set_rows({});
  for (const CandidateFacts& each : facts_) {
    const WishStanding standing = wish_standing(pattern, each);
    FigureRow row;
    row.name = qt(each.name);
    row.strong = standing.may_be_chosen();
    row.figure = !standing.may_be_chosen()          ? tr("does not hold what must")
                 : !standing.must_not_known.empty() ? tr("not all known")
                                                    : tr("holds what must");
    QStringList why;
    const auto add = [&](const std::vector<std::size_t>& wishes, const QString& word) {
      for (const std::size_t wish : wishes)
        why << (each.wishes[wish].because.empty()
                    ? tr("%1: %2").arg(word, qt(wish_words(pattern, pattern.wishes[wish])))
                    : tr("%1: %2 (%3)")
                          .arg(word, qt(wish_words(pattern, pattern.wishes[wish])),
                               qt(each.wishes[wish].because)));
    };
    add(standing.must_not_met, tr("not met"));
    add(standing.should_not_met, tr("not met"));
    add(standing.must_not_known, tr("not known"));
    add(standing.should_not_known, tr("not known"));
    row.how = why.isEmpty() ? tr("everything asked for") : why.join(QStringLiteral("; "));
    rows.push_back(std::move(row));
  }
  const auto offs = trade_offs(pattern, facts_);
  if (!offs.empty()) {
    FigureRow heading;
    heading.name = tr("What is traded for what");
    heading.heading = true;
    rows.push_back(std::move(heading));
  }
  for (const TradeOff& off : offs) {
    FigureRow row;
    row.name = tr("%1 or %2").arg(qt(facts_[off.one].name), qt(facts_[off.other].name));
    row.how = qt(off.words);
    rows.push_back(std::move(row));
  }
  standing_->set_rows(std::move(rows));
}

}  // namespace skeinproof
