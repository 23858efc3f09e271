// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/put_up_table.h"

#include <QCoreApplication>
#include <utility>

#include "app/pages/candidates/band_lines.h"
#include "app/widgets/part_table.h"

namespace skeinproof {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(PutUpTable)
};

}  // namespace

PartTable* make_put_up_table(OpenPattern& open, std::function<YarnId()> which, QWidget* parent) {
  const auto sold = [which](auto& pattern, std::size_t row) -> auto& {
    using Sold =
        std::conditional_t<std::is_const_v<std::remove_reference_t<decltype(pattern)>>, const SoldAs, SoldAs>;
    auto* yarn = const_cast<Yarn*>(std::as_const(pattern).yarn(which()));
    return static_cast<Sold&>(yarn->also_sold[row]);
  };
  PartList list;
  list.part = Words::tr("put-up");
  list.add_hint = Words::tr("add another put-up, such as 100 g = 260 m");
  list.count = [which](const Pattern& pattern) {
    const Yarn* yarn = pattern.yarn(which());
    return yarn != nullptr ? yarn->also_sold.size() : 0;
  };
  list.key = [](const Pattern&, std::size_t row) { return static_cast<std::uint32_t>(row + 1); };
  list.name = [sold, &open](const Pattern& pattern, std::size_t row) {
    return put_up_text(sold(pattern, row).put_up, open.reader());
  };
  list.append = [which](Pattern& pattern) {
    if (auto* yarn = const_cast<Yarn*>(std::as_const(pattern).yarn(which()))) yarn->also_sold.emplace_back();
  };
  list.erase = [which](Pattern& pattern, std::size_t row) {
    auto& all = const_cast<Yarn*>(std::as_const(pattern).yarn(which()))->also_sold;
    all.erase(all.begin() + static_cast<std::ptrdiff_t>(row));
  };

  PartColumn put_up;
  put_up.head = Words::tr("Put-up");
  put_up.undo_name = Words::tr("put-up");
  put_up.stretch = 1;
  put_up.text = list.name;
  put_up.read = [sold](const QString& typed, std::size_t) -> Expected<RowEdit> {
    const auto read = read_put_up(typed);
    if (!read) return tl::unexpected<Error>(read.error());
    return [sold, put_up = *read](Pattern& pattern, std::size_t row) {
      PutUp& changed = sold(pattern, row).put_up;
      changed.length = put_up.length;
      changed.weight = put_up.weight;
    };
  };
  PartColumn word = choice_column(
      Words::tr("Sold as"), Words::tr("word for the put-up"),
      [sold](auto& pattern, std::size_t row) -> auto& { return sold(pattern, row).put_up.word; },
      [](const Pattern&, std::size_t) {
        std::vector<Choice> choices;
        for (const auto& [value, name] : EnumWords<SkeinWord>::rows)
          choices.push_back({QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())),
                             static_cast<std::uint32_t>(value)});
        return choices;
      });
  PartColumn price;
  price.head = Words::tr("Price");
  price.undo_name = Words::tr("price of a put-up");
  price.right = true;
  price.text = [sold, &open](const Pattern& pattern, std::size_t row) {
    return price_text(sold(pattern, row).price, open.reader());
  };
  price.read = [sold](const QString& typed, std::size_t) -> Expected<RowEdit> {
    const auto read = read_price(typed);
    if (!read) return tl::unexpected<Error>(read.error());
    return [sold, value = *read](Pattern& pattern, std::size_t row) { sold(pattern, row).price = value; };
  };
  auto* table = new PartTable(open, std::move(list), {put_up, word, price}, parent);
  table->setAccessibleName(Words::tr("Other put-ups and their prices"));
  table->set_height_follows_rows(2);
  return table;
}

}  // namespace skeinproof
