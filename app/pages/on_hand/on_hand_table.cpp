// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/on_hand/on_hand_table.h"

#include <QCoreApplication>
#include <algorithm>

#include "app/pages/on_hand/amount_text.h"
#include "app/widgets/chart_inks.h"
#include "app/widgets/ink.h"
#include "app/widgets/part_table.h"
#include "core/base/text.h"
#include "core/pattern/edits.h"
#include "core/substitution/on_hand_length.h"

namespace skeinproof {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(OnHandTable)
};

QString qt(const std::string& text) { return QString::fromStdString(text); }

bool is_named_elsewhere(const Pattern& pattern, YarnId id) {
  if (!pattern.is_on_bench(id)) return true;
  for (const Candidate& candidate : pattern.candidates)
    for (const CandidateYarn& row : candidate.yarns)
      if (row.yarn == id || row.held_with == id) return true;
  return std::count_if(pattern.on_hand.begin(), pattern.on_hand.end(),
                       [&](const YarnOnHand& each) { return each.yarn == id; }) > 1;
}

// The yarn of that name, or the row's own where it has none yet, or a new one.
void name_yarn(Pattern& pattern, std::size_t row, const std::string& name) {
  YarnOnHand& on_hand = pattern.on_hand[row];
  const YarnId before = on_hand.yarn;
  const Yarn* own = pattern.yarn(before);
  const bool nameless = own != nullptr && own->name.empty() && !is_named_elsewhere(pattern, before);
  for (const Yarn& yarn : pattern.yarns)
    if (!name.empty() && lower_ascii(yarn.name) == lower_ascii(name)) {
      on_hand.yarn = yarn.id;
      if (nameless && yarn.id != before) erase_yarn(pattern, before);
      return;
    }
  const YarnId named = nameless ? before : add_yarn(pattern, {});
  for (Yarn& yarn : pattern.yarns)
    if (yarn.id == named) yarn.name = name;
  pattern.on_hand[row].yarn = named;
}

PartList on_hand_list() {
  PartList list = part_list(Words::tr("yarn on hand"), Words::tr("add a yarn"), &Pattern::on_hand);
  list.name = [](const Pattern& pattern, std::size_t row) {
    return qt(on_hand_name(pattern, pattern.on_hand[row]));
  };
  list.append = [](Pattern& pattern) { add_on_hand(pattern, add_yarn(pattern, {})); };
  list.erase = [](Pattern& pattern, std::size_t row) { erase_on_hand(pattern, pattern.on_hand[row].id); };
  list.duplicate = [](Pattern& pattern, std::size_t row) {
    YarnOnHand copy = pattern.on_hand[row];
    copy.id = take_id<OnHandId>(pattern);
    pattern.on_hand.insert(pattern.on_hand.begin() + static_cast<std::ptrdiff_t>(row) + 1, std::move(copy));
  };
  list.move = [](Pattern& pattern, std::size_t from, std::size_t to) {
    move_part(pattern.on_hand, from, to);
  };
  return list;
}

PartColumn yarn_column() {
  PartColumn column;
  column.head = Words::tr("Yarn");
  column.undo_name = Words::tr("yarn on hand");
  column.tip = Words::tr("A name the pattern does not know yet makes a new yarn");
  column.stretch = 2;
  column.text = [](const Pattern& pattern, std::size_t row) {
    const Yarn* yarn = pattern.yarn(pattern.on_hand[row].yarn);
    return yarn != nullptr ? qt(yarn->name) : QString();
  };
  column.read = [](const QString& typed, std::size_t) -> Expected<RowEdit> {
    return [name = typed.trimmed().toStdString()](Pattern& pattern, std::size_t row) {
      name_yarn(pattern, row, name);
    };
  };
  return column;
}

// "Peat 08" in one cell.
PartColumn shade_column() {
  PartColumn column;
  column.head = Words::tr("Shade");
  column.undo_name = Words::tr("shade on hand");
  column.stretch = 1;
  column.text = [](const Pattern& pattern, std::size_t row) {
    const Shade& shade = pattern.on_hand[row].shade;
    return qt(shade.number.empty() ? shade.name : shade.name + " " + shade.number);
  };
  column.chip = [](const Pattern& pattern, std::size_t row) {
    const Shade& shade = pattern.on_hand[row].shade;
    if (!shade.lightness) return QColor();
    return shade_colour(shade.lightness->value, shade.a ? shade.a->value : 0, shade.b ? shade.b->value : 0);
  };
  column.read = [](const QString& typed, std::size_t) -> Expected<RowEdit> {
    return [words = typed.simplified().toStdString()](Pattern& pattern, std::size_t row) {
      YarnOnHand& on_hand = pattern.on_hand[row];
      const std::string whole =
          on_hand.shade.number.empty() ? on_hand.shade.name : on_hand.shade.name + " " + on_hand.shade.number;
      if (whole == words) return;
      // A shade the pattern names is that shade, lightness and all.
      for (const Role& role : pattern.roles) {
        const std::string name =
            role.shade.number.empty() ? role.shade.name : role.shade.name + " " + role.shade.number;
        if (lower_ascii(name) != lower_ascii(words) && lower_ascii(role.shade.name) != lower_ascii(words))
          continue;
        on_hand.shade = role.shade;
        if (!on_hand.role) on_hand.role = role.id;
        return;
      }
      on_hand.shade = Shade();
      on_hand.shade.name = words;
    };
  };
  return column;
}

QString measured_words(LengthBy way) {
  switch (way) {
    case LengthBy::skeins_and_weight:
      return Words::tr("skeins and weight");
    case LengthBy::reel:
      return Words::tr("turns on a reel");
    case LengthBy::sampled_lengths:
      return Words::tr("sampled lengths");
    case LengthBy::typed_length:
      return Words::tr("a length");
    case LengthBy::wraps:
      return Words::tr("wraps, thickness only");
  }
  return {};
}

PartColumn amount_column(OpenPattern& open) {
  PartColumn column;
  column.head = Words::tr("Amount");
  column.undo_name = Words::tr("amount");
  column.tip = Words::tr("5 skeins + 41 g, 126 m, 300 turns of 1.5 m");
  column.stretch = 1;
  column.text = [&open](const Pattern& pattern, std::size_t row) {
    return amount_text(pattern.on_hand[row], open.reader());
  };
  column.read = [](const QString& typed, std::size_t) -> Expected<RowEdit> {
    YarnOnHand trial;
    if (const auto read = read_amount(typed, trial); !read) return tl::unexpected<Error>(read.error());
    return [typed](Pattern& pattern, std::size_t row) { (void)read_amount(typed, pattern.on_hand[row]); };
  };
  return column;
}

}  // namespace

QString length_words(const Pattern& pattern, const YarnOnHand& yarn, const ReaderStyle& reader) {
  const auto length = length_on_hand(pattern, yarn);
  if (!length) return QStringLiteral("–");
  QuantityFormat format = QuantityFormat::yarn_length();
  format.decimals = 1;
  const QString words = show_quantity(format, reader, {length->length.value(), {}});
  if (length->length.value() <= 0) return words;
  const double error = (length->high.value() - length->low.value()) / 2 / length->length.value();
  return words + QStringLiteral(" ±%1 %").arg(qt(show_number(100 * error, 1, reader.numbers)));
}

QString length_problem(const Pattern& pattern, const YarnOnHand& yarn) {
  const auto length = length_on_hand(pattern, yarn);
  return length ? QString() : sentence_of(length.error());
}

PartTable* make_on_hand_table(OpenPattern& open, QWidget* parent) {
  PartColumn lot = text_column(
      Words::tr("Lot"), Words::tr("lot on hand"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.on_hand[row].lot; });
  lot.tip = Words::tr("Dye lot as the band says it");
  PartColumn measured = choice_column(
      Words::tr("Measured by"), Words::tr("how it was measured"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.on_hand[row].length_by; },
      [](const Pattern&, std::size_t) {
        std::vector<Choice> choices;
        for (const auto& row : EnumWords<LengthBy>::rows)
          choices.push_back({measured_words(row.first), static_cast<std::uint32_t>(row.first)});
        return choices;
      });
  PartColumn role = choice_column(
      Words::tr("For"), Words::tr("colour it is for"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.on_hand[row].role; },
      [](const Pattern& pattern, std::size_t) {
        std::vector<Choice> choices = {{Words::tr("any"), 0}};
        for (const Role& each : pattern.roles) choices.push_back({qt(each.label), each.id.value});
        return choices;
      });
  role.tip = Words::tr("The colour it is held against; any: only for what it could become");
  PartColumn length = computed_column(Words::tr("Length"), [&open](const Pattern& pattern, std::size_t row) {
    return length_words(pattern, pattern.on_hand[row], open.reader());
  });
  length.right = true;
  length.tip = Words::tr("Before joins, with its error 9 times in 10");
  length.spoken = [text = length.text](const Pattern& pattern, std::size_t row) {
    const QString problem = length_problem(pattern, pattern.on_hand[row]);
    return problem.isEmpty() ? text(pattern, row) : problem;
  };
  PartColumn used = tick_column(
      Words::tr("Used"), Words::tr("use yarn on hand"),
      [](auto& pattern, std::size_t row) -> auto& { return pattern.on_hand[row].used; });
  used.tip = Words::tr("Not ticked: left out of verdicts and plans");
  auto* table = new PartTable(
      open, on_hand_list(),
      {yarn_column(), shade_column(), lot, amount_column(open), measured, role, length, used}, parent);
  table->setAccessibleName(Words::tr("Yarn on hand"));
  return table;
}

}  // namespace skeinproof
