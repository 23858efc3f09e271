// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/on_hand/become_pane.h"

#include <QCheckBox>
#include <QLabel>
#include <QListView>
#include <QVBoxLayout>

#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_table.h"
#include "app/widgets/quantity_field.h"
#include "app/widgets/quantity_text.h"

namespace skeinproof {
namespace {

QString qt(const std::string& text) { return QString::fromStdString(text); }

QString size_label(const Pattern& pattern, SizeId id) {
  const auto at = pattern.size_index(id);
  return at ? qt(pattern.sizes[*at].label) : QStringLiteral("–");
}

QString sizes_words(const Pattern& pattern, const std::vector<SizeId>& sizes) {
  if (sizes.empty()) return BecomePane::tr("no size");
  QStringList labels;
  for (const SizeId size : sizes) labels << size_label(pattern, size);
  return sizes.size() == 1 ? BecomePane::tr("size %1").arg(labels.front())
                           : BecomePane::tr("sizes %1").arg(labels.join(QStringLiteral(", ")));
}

void add_plan(std::vector<FigureRow>& rows, const QString& name, const SharingPlan& plan, bool strong) {
  FigureRow row;
  row.name = name;
  row.how = qt(plan.words);
  for (const std::string& warning : plan.warnings) row.how += QLatin1Char('\n') + qt(warning);
  row.strong = strong;
  rows.push_back(std::move(row));
}

std::vector<Choice> piece_choices(const Pattern& pattern, std::size_t) {
  std::vector<Choice> choices;
  for (const Piece& piece : pattern.pieces) choices.push_back({qt(piece.name), piece.id.value});
  return choices;
}
std::vector<Choice> section_choices(const Pattern& pattern, std::size_t row) {
  std::vector<Choice> choices = {{BecomePane::tr("all of it"), 0}};
  if (row >= pattern.given_parts.size()) return choices;
  if (const Piece* piece = pattern.piece(pattern.given_parts[row].piece))
    for (const Section& section : piece->sections) choices.push_back({qt(section.name), section.id.value});
  return choices;
}

}  // namespace

std::vector<FigureRow> become_figures(const Pattern& pattern, const Expected<CouldBecome>& result) {
  std::vector<FigureRow> rows;
  const auto add = [&](const QString& name, const QString& figure, const QString& how, bool strong = false,
                       bool heading = false) {
    FigureRow row;
    row.name = name;
    row.figure = figure;
    row.how = how;
    row.strong = strong;
    row.heading = heading;
    rows.push_back(std::move(row));
  };
  if (!result) {
    add(BecomePane::tr("Nothing can be said yet"), {}, sentence_of(result.error()));
    return rows;
  }
  const Rung& now = result->in_force;
  if (now.best) {
    add(BecomePane::tr("The largest it reaches"),
        BecomePane::tr("size %1").arg(size_label(pattern, now.best->size)),
        BecomePane::tr("in all: %1").arg(sizes_words(pattern, now.sizes)), true);
    add_plan(rows, BecomePane::tr("So"), *now.best, false);
    if (now.roomier) add_plan(rows, BecomePane::tr("With more to spare"), *now.roomier, false);
  } else {
    add(BecomePane::tr("It reaches no size"), {}, qt(now.words), true);
  }
  if (result->next) add(BecomePane::tr("For the next size up"), {}, qt(result->next->words));
  if (!result->rungs.empty()) add(BecomePane::tr("By how it is shared out"), {}, {}, false, true);
  for (const Rung& rung : result->rungs) {
    add(qt(rung.words),
        rung.best ? BecomePane::tr("to size %1").arg(size_label(pattern, rung.best->size))
                  : BecomePane::tr("no size"),
        rung.best ? qt(rung.best->words) : QString());
    if (rung.best)
      for (const std::string& warning : rung.best->warnings)
        rows.back().how += QLatin1Char('\n') + qt(warning);
  }
  if (!result->left_out.empty() || !result->not_looked_at.empty())
    add(BecomePane::tr("Not looked at"), {}, {}, false, true);
  for (const Error& error : result->left_out) add(sentence_of(error), {}, {});
  for (const std::string& words : result->not_looked_at) add(qt(words), {}, {});
  return rows;
}

BecomePane::BecomePane(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      exchange_(new QCheckBox(tr("yarns ma&y change their roles"))),
      yarns_(new QuantityField(QuantityFormat::number(1, 8, "yarns", 0), open)),
      thickness_(new QuantityField(QuantityFormat::number(0, 1000, "percent"), open)),
      given_(make_given_parts()),
      figures_(new FigureList) {
  connect(exchange_, &QCheckBox::clicked, this, [this](bool on) {
    open_.apply(on ? tr("yarns may change their roles") : tr("yarns keep their roles"),
                [on](Pattern& pattern) { pattern.sharing.exchange_roles = on; });
  });
  yarns_->setAccessibleName(tr("Yarns that may share a role"));
  connect(yarns_, &QuantityField::committed, this, [this](const FieldValue& value) {
    const int count = value ? static_cast<int>(value->value) : 1;
    open_.apply(tr("yarns that may share a role %1").arg(count),
                [count](Pattern& pattern) { pattern.sharing.yarns_a_role = count; });
  });
  thickness_->setAccessibleName(tr("Greatest difference in thickness, percent"));
  thickness_->setPlaceholderText(tr("any"));
  connect(thickness_, &QuantityField::committed, this, [this](const FieldValue& value) {
    open_.apply(tr("greatest difference in thickness"), [value](Pattern& pattern) {
      pattern.sharing.thickness_limit_pct = value ? std::optional<Entered<double>>(*value) : std::nullopt;
    });
  });
  auto* bar = new QWidget;
  auto* flow = new FlowLayout(bar);
  flow->setContentsMargins(scaled(this, 12), scaled(this, 8), scaled(this, 12), scaled(this, 8));
  flow->setSpacing(scaled(this, 8));
  const auto labelled = [&](const QString& words, QuantityField* field) {
    auto* label = new QLabel(words);
    label->setBuddy(field);
    field->setFixedWidth(scaled(this, 48));
    flow->addWidget(label);
    flow->addWidget(field);
  };
  flow->addWidget(exchange_);
  labelled(tr("Yar&ns a role"), yarns_);
  labelled(tr("Thickness within, %"), thickness_);
  figures_->view()->setAccessibleName(tr("What it could become"));
  figures_->set_empty_words(tr("Yarn on hand is shared out over the colours of every size."));
  connect(given_, &PartTable::says, this, &BecomePane::says);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(bar);
  layout->addWidget(given_);
  layout->addWidget(figures_, 1);
  figures_->setMinimumHeight(scaled(this, 140));
  setFocusProxy(figures_->view());
  connect(&open_, &OpenPattern::changed, this, &BecomePane::refresh);
  connect(&open_, &OpenPattern::reader_changed, this, &BecomePane::refresh);
  refresh();
}

PartTable* BecomePane::make_given_parts() {
  PartList list;
  list.part = tr("given part");
  list.add_hint = tr("add a part");
  list.count = [](const Pattern& pattern) { return pattern.given_parts.size(); };
  list.key = [](const Pattern&, std::size_t row) { return static_cast<std::uint32_t>(row + 1); };
  list.name = [](const Pattern& pattern, std::size_t row) {
    const Piece* piece = pattern.piece(pattern.given_parts[row].piece);
    return piece != nullptr ? qt(piece->name) : QString();
  };
  list.append = [](Pattern& pattern) {
    GivenPart part;
    if (!pattern.given_parts.empty())
      part.piece = pattern.given_parts.back().piece;
    else if (!pattern.pieces.empty())
      part.piece = pattern.pieces.front().id;
    pattern.given_parts.push_back(part);
  };
  list.erase = [](Pattern& pattern, std::size_t row) {
    pattern.given_parts.erase(pattern.given_parts.begin() + static_cast<std::ptrdiff_t>(row));
  };
  PartColumn piece = choice_column(
      tr("Part with a yarn of its own"), tr("piece given away"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.given_parts[row].piece; }, piece_choices);
  piece.stretch = 1;
  piece.choose = [](Pattern& pattern, std::size_t row, std::uint32_t value) {
    GivenPart& part = pattern.given_parts[row];
    if (part.piece.value == value) return;
    part.piece = PieceId{value};
    part.section = {};
  };
  PartColumn section = choice_column(
      tr("Section"), tr("section given away"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.given_parts[row].section; },
      section_choices);
  section.stretch = 1;
  auto* table = new PartTable(open_, std::move(list), {piece, section});
  table->setAccessibleName(tr("Parts that may have a yarn of their own"));
  table->set_height_follows_rows(2);
  return table;
}

void BecomePane::refresh() {
  const SharingRules& rules = open_.pattern().sharing;
  exchange_->setChecked(rules.exchange_roles);
  yarns_->set_value(FieldValue(Entered<double>{static_cast<double>(rules.yarns_a_role), {}}));
  thickness_->set_value(rules.thickness_limit_pct);
}

void BecomePane::show_result(const Expected<CouldBecome>& result) {
  figures_->set_rows(become_figures(open_.pattern(), result));
}

}  // namespace skeinproof
