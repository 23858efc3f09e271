// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/yarns/role_table.h"

#include <QCoreApplication>

#include "app/document/open_pattern.h"
#include "app/widgets/chart_inks.h"
#include "app/widgets/part_form.h"
#include "app/widgets/part_table.h"
#include "core/pattern/edits.h"

namespace skeinproof {

namespace {

QString say(const char* words) { return QCoreApplication::translate("RoleTable", words); }

// The place in a role, by a function of the role.
template <class Of>
auto in_role(Of of) {
  return [of](auto& pattern, std::size_t row) -> auto& { return of(pattern.roles[row]); };
}

// The label a new role is likely to want: MC first, then CC1, CC2 …
std::string next_label(const Pattern& pattern) {
  const auto taken = [&](const std::string& label) {
    for (const Role& role : pattern.roles)
      if (role.label == label) return true;
    return false;
  };
  if (!taken("MC")) return "MC";
  int number = 1;
  while (taken("CC" + std::to_string(number))) ++number;
  return "CC" + std::to_string(number);
}

PartList role_list() {
  PartList list = part_list(say("colour"), say("add a colour"), &Pattern::roles);
  list.name = [](const Pattern& pattern, std::size_t row) {
    return QString::fromStdString(pattern.roles[row].label);
  };
  list.append = [](Pattern& pattern) { add_role(pattern, next_label(pattern)); };
  list.erase = [](Pattern& pattern, std::size_t row) { erase_role(pattern, pattern.roles[row].id); };
  list.duplicate = [](Pattern& pattern, std::size_t row) {
    Role copy = pattern.roles[row];
    copy.id = take_id<RoleId>(pattern);
    copy.label = next_label(pattern);
    pattern.roles.insert(pattern.roles.begin() + static_cast<std::ptrdiff_t>(row) + 1, std::move(copy));
  };
  list.move = [](Pattern& pattern, std::size_t from, std::size_t to) { move_part(pattern.roles, from, to); };
  return list;
}

std::vector<Choice> yarn_choices(const Pattern& pattern, std::size_t) {
  std::vector<Choice> choices = {{say("none"), 0}};
  for (const Yarn& yarn : pattern.yarns)
    choices.push_back({QString::fromStdString(yarn.name), yarn.id.value});
  return choices;
}

std::vector<Choice> companion_choices(const Pattern& pattern, std::size_t row) {
  std::vector<Choice> choices = {{say("none"), 0}};
  for (std::size_t other = 0; other < pattern.roles.size(); ++other)
    if (other != row)
      choices.push_back({QString::fromStdString(pattern.roles[other].label), pattern.roles[other].id.value});
  return choices;
}

}  // namespace

PartTable* make_role_table(OpenPattern& open, QWidget* parent) {
  PartColumn label =
      text_column(say("Colour"), say("colour"), in_role([](auto& role) -> auto& { return role.label; }));
  label.chip = [](const Pattern& pattern, std::size_t row) {
    return role_fill(pattern, pattern.roles[row].id, {});
  };
  label.strong = true;
  PartColumn yarn = choice_column(say("Yarn"), say("yarn"),
                                  in_role([](auto& role) -> auto& { return role.yarn; }), yarn_choices);
  yarn.stretch = 2;
  PartColumn shade =
      text_column(say("Shade"), say("shade"), in_role([](auto& role) -> auto& { return role.shade.name; }));
  shade.stretch = 1;
  PartColumn number = text_column(say("No."), say("shade number"),
                                  in_role([](auto& role) -> auto& { return role.shade.number; }));
  PartColumn lightness = quantity_column<double>(
      open, say("L*"), say("lightness"), QuantityFormat::number(0, 100, "CIE lightness"),
      in_role([](auto& role) -> auto& { return role.shade.lightness; }));
  lightness.tip = say(
      "CIE lightness of the shade, 0 black to 100 white; tells whether colours stand apart where they touch");
  const auto hue = QuantityFormat::number(-128, 128, "a CIE colour value");
  PartColumn a = quantity_column<double>(open, say("a*"), say("a*"), hue,
                                         in_role([](auto& role) -> auto& { return role.shade.a; }));
  a.tip = say("Green to red; only for the chip on the screen");
  PartColumn b = quantity_column<double>(open, say("b*"), say("b*"), hue,
                                         in_role([](auto& role) -> auto& { return role.shade.b; }));
  b.tip = say("Blue to yellow; only for the chip on the screen");
  PartColumn strands =
      number_column(open, say("Strands"), say("strands"), QuantityFormat::number(1, 12, "strands", 0),
                    in_role([](auto& role) -> auto& { return role.strands; }));
  strands.tip = say("Equal strands of the yarn held together");
  PartColumn along =
      choice_column(say("Along with"), say("along with"),
                    in_role([](auto& role) -> auto& { return role.goes_along_with; }), companion_choices);
  along.tip = say("Worked together with another colour, so it needs that colour's length");
  PartColumn swatch =
      quantity_column<Metres>(open, say("Swatch"), say("swatch"), QuantityFormat::yarn_length(),
                              in_role([](auto& role) -> auto& { return role.swatch; }));
  swatch.tip = say("Yarn for the swatch, counted before the allowance");
  PartColumn entries = tick_column(say("Entries"), say("entries counted"),
                                   in_role([](auto& role) -> auto& { return role.charge_entries; }));
  entries.tip =
      say("Yarn is cut and joined again when the colour comes back; not ticked where it is carried up");
  PartColumn growth = choice_column(say("Grows like"), say("growth"),
                                    in_role([](auto& role) -> auto& { return role.growth; }),
                                    [](const Pattern&, std::size_t) { return choices_of<GrowthBand>(); });
  growth.tip = say("How the need of the colour goes with the size of the cloth");
  auto* table = new PartTable(
      open, role_list(),
      {label, yarn, shade, number, lightness, a, b, strands, along, swatch, entries, growth}, parent);
  table->setAccessibleName(say("Colours"));
  return table;
}

}  // namespace skeinproof
