// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/manuscript/clean_pattern.h"

#include <algorithm>
#include <cmath>

#include "core/pattern/edits.h"
#include "core/pattern/size_line.h"
#include "core/yarn/read_composition.h"

namespace skeinproof::testing {
namespace {

template <class T>
T one_of(const std::vector<T>& values) {
  return values[*rc::gen::inRange<std::size_t>(0, values.size())];
}
int within(int low, int high) { return *rc::gen::inRange(low, high + 1); }
bool sometimes() { return within(0, 1) == 1; }
using Words = std::vector<std::string>;

// As many of the words as wanted, in their order from a start drawn by chance, so that none comes twice.
Words several(const Words& words, std::size_t wanted) {
  const std::size_t start = *rc::gen::inRange<std::size_t>(0, words.size());
  Words taken;
  for (std::size_t i = 0; i < wanted; ++i) taken.push_back(words[(start + i) % words.size()]);
  return taken;
}

void fill_sizes(Pattern& pattern) {
  SizeLine line;
  const auto count = static_cast<std::size_t>(within(1, 9));
  const Words letters = {"XXS", "XS", "S", "M", "L", "XL", "2XL", "3XL", "4XL"};
  const bool lettered = sometimes();
  for (std::size_t i = 0; i < count; ++i) {
    line.labels.push_back(lettered ? letters[i] : std::to_string(i + 1));
    line.opens_group.push_back(i == 1 || (i > 1 && within(0, 3) == 0));
  }
  set_sizes(pattern, line);
  if (count == 1 || !sometimes()) return;
  Measurement bust;
  bust.id = take_id<MeasurementId>(pattern);
  bust.name = one_of<std::string>({"bust", "chest", "foot circumference", "sleeve length"});
  for (std::size_t i = 0; i < count; ++i)
    bust.values.set(i, Entered<Centimetres>{centimetres(80 + 7.5 * static_cast<double>(i)), {}});
  pattern.measurements.push_back(bust);
}

// A thickness with the metres, stitches and needle that go with it: common practice, no source.
struct Thickness {
  const char* category;
  int least_metres, most_metres;      // in 100 g
  int least_stitches, most_stitches;  // in 10 cm
  double needle_mm;
};
constexpr Thickness thicknesses[] = {{"fingering", 385, 430, 28, 30, 3},
                                     {"sport", 310, 350, 25, 26, 3.5},
                                     {"DK", 220, 260, 22, 23, 4},
                                     {"worsted", 185, 200, 19, 20, 4.5}};

std::vector<FibreShare> composition() {
  const Words fibres = several({"wool", "alpaca", "silk", "polyamide", "cotton", "linen", "superwash wool"},
                               static_cast<std::size_t>(within(1, 3)));
  const std::vector<std::vector<double>> shares = {{100}, {75, 25}, {60, 30, 10}};
  std::vector<FibreShare> all;
  for (std::size_t i = 0; i < fibres.size(); ++i)
    all.push_back(fibre_share(fibres[i], {shares[fibres.size() - 1][i], {}}));
  return all;
}

bool has_fibre(const Yarn& yarn, std::string_view id) {
  return std::any_of(yarn.composition.begin(), yarn.composition.end(),
                     [&](const FibreShare& share) { return share.fibre == id; });
}

void fill_yarn(Yarn& yarn, const Thickness& thickness) {
  yarn.composition = composition();
  const double weight = one_of<double>({25, 50, 100});
  const int in_100_g = within(thickness.least_metres, thickness.most_metres);
  yarn.put_up.weight = Entered<Grams>{grams(weight), {}};
  yarn.put_up.length = Entered<Metres>{metres(std::round(in_100_g * weight / 100)), {}};
  yarn.put_up.word = EnumWords<SkeinWord>::rows[static_cast<std::size_t>(within(0, 4))].first;
  yarn.spinning = one_of<Spinning>({Spinning::worsted, Spinning::woollen});
  yarn.structure = one_of<std::string>({"2-ply", "3-ply", "single", "chainette"});
  yarn.category = thickness.category;
  yarn.colouring = one_of<std::string>({"heathered", "solid", "semi-solid"});
  if (sometimes()) yarn.surface = one_of<std::string>({"matte", "smooth"});
  // What is said of the treatment must not gainsay the fibres.
  if (sometimes()) yarn.treatment = has_fibre(yarn, "wool_superwash") ? "superwash" : "organic";
}

void fill_roles(Pattern& pattern) {
  const auto count = static_cast<std::size_t>(std::max(within(1, 5), static_cast<int>(pattern.yarns.size())));
  const Words labels = one_of<Words>({{"MC", "CC1", "CC2", "CC3", "CC4"}, {"A", "B", "C", "D", "E"}});
  const Words shades =
      several({"Peat", "Lichen", "Gorse", "Ember", "Soot", "Marigold", "Sea Holly", "Old Rope"}, count);
  const bool numbered = sometimes();
  for (std::size_t i = 0; i < count; ++i) {
    add_role(pattern, count == 2 && labels[0] == "MC" && i == 1 ? "CC" : labels[i]);
    Role& role = pattern.roles.back();
    role.yarn = pattern.yarns[std::min(i, pattern.yarns.size() - 1)].id;
    role.shade.name = shades[i];
    if (numbered) role.shade.number = one_of<std::string>({"0", "1", "2"}) + std::to_string(i + 3);
  }
}

void fill_fabrics(Pattern& pattern, const Thickness& thickness) {
  // Rows to a stitch, and how much wider than plain a stitch is.
  struct Cloth {
    const char* name;
    Structure structure;
    double rows, stitches;
  };
  constexpr Cloth fabrics[] = {{"stocking stitch", Structure::plain, 1.35, 1},
                               {"stranded pattern", Structure::stranded, 1.1, 1},
                               {"garter stitch", Structure::garter, 2, 0.9}};
  const int count = within(0, 3), plain = within(thickness.least_stitches, thickness.most_stitches);
  for (int i = 0; i < count; ++i) {
    const Cloth& cloth = fabrics[i];
    add_fabric(pattern, cloth.name);
    Fabric& fabric = pattern.fabrics.back();
    fabric.structure = cloth.structure;
    const double stitches = std::round(plain * cloth.stitches);
    fabric.gauge.stitches = Entered<double>{stitches, {}};
    fabric.gauge.rows = Entered<double>{std::round(stitches * cloth.rows), {}};
    fabric.gauge.state = GaugeState::washed;
    fabric.gauge.worked = one_of<Worked>({Worked::flat, Worked::in_the_round});
    fabric.needle = Entered<Centimetres>{centimetres(thickness.needle_mm / 10), {}};
  }
  if (sometimes()) pattern.notions.push_back({"buttons", {}, {}});
  for (Notion& notion : pattern.notions)
    for (std::size_t i = 0; i < pattern.sizes.size(); ++i)
      notion.count.set(i, Entered<double>{static_cast<double>(5 + i / 3), {}});
}

// The first size has the circumference 80 cm, each next one 7.5 cm more.
double growth(std::size_t size) { return std::pow((80 + 7.5 * static_cast<double>(size)) / 80, 0.9); }

void fill_needs(Sample& sample) {
  const Pattern& pattern = sample.pattern;
  for (const Role& role : pattern.roles) {
    RoleNeed need;
    need.role = role.id;
    need.label = role.label;
    const double skein = pattern.yarn(role.yarn)->put_up.length->value.value();
    const double least = skein * within(20, 900) / 100;
    for (std::size_t i = 0; i < pattern.sizes.size(); ++i) {
      SizeNeed size;
      size.known = true;
      size.planned = metres(least * growth(i));
      size.skeins = static_cast<int>(std::ceil(size.planned.value() / skein));
      need.sizes.push_back(size);
    }
    const double longest = need.sizes.back().planned.value();
    if (longest < 0.45 * skein) {
      LengthNote note{role.id, metres(5 * std::ceil(longest / 5)), {}};
      for (const Size& size : pattern.sizes) note.sizes.push_back(size.label);
      sample.assessment.length_notes.push_back(note);
    }
    sample.assessment.roles.push_back(need);
  }
}

Sample clean_pattern() {
  Sample sample;
  sample.pattern = new_pattern();
  const Thickness& thickness = thicknesses[within(0, 3)];
  fill_sizes(sample.pattern);
  for (const std::string& name : several({"Oddmere Fieldspun", "Brindlecote Plain", "Tallowhithe Strand",
                                          "Greyfell", "Nibthorpe Sock", "Merrowend Downlight"},
                                         static_cast<std::size_t>(within(1, 3)))) {
    add_yarn(sample.pattern, name);
    fill_yarn(sample.pattern.yarns.back(), thickness);
  }
  fill_roles(sample.pattern);
  fill_fabrics(sample.pattern, thickness);
  fill_needs(sample);
  return sample;
}

template <class E>
E any_word(std::size_t but_last = 0) {
  const auto& rows = EnumWords<E>::rows;
  return rows[*rc::gen::inRange<std::size_t>(0, rows.size() - but_last)].first;
}

HouseStyle house_style() {
  HouseStyle house;
  house.name = "drawn";
  if (sometimes()) house.order.insert(house.order.begin(), BlockElement::sizes);
  for (const BlockElement element : {BlockElement::needles, BlockElement::gauge, BlockElement::notions})
    if (sometimes()) house.order.push_back(element);
  house.systems = any_word<SystemOrder>(1);
  house.second_system = any_word<SecondSystem>();
  house.mark = any_word<DecimalMark>();
  house.fractions = any_word<FractionStyle>();
  house.ounces = any_word<FractionStyle>();
  house.brackets = any_word<SizeBrackets>();
  house.unit_word = any_word<UnitWord>();
  house.role_place = any_word<RolePlace>();
  house.shade_number = any_word<ShadeNumber>(1);
  house.role_separator = any_word<RoleSeparator>();
  house.align_roles = sometimes();
  house.total_line = sometimes();
  house.metres_line = sometimes();
  house.category_words = any_word<CategoryWords>();
  house.fibre_names = any_word<FibreNames>();
  return house;
}

}  // namespace

rc::Gen<Sample> generate_clean_pattern() { return rc::gen::exec(clean_pattern); }
rc::Gen<HouseStyle> generate_house_style() { return rc::gen::exec(house_style); }

}  // namespace skeinproof::testing
