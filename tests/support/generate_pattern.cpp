// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/generate_pattern.h"

#include <ostream>

#include "core/file/field_kinds.h"
#include "core/file/json.h"

namespace skeinproof {
namespace {

rc::Gen<std::string> text() {
  return rc::gen::element<std::string>(
      "", "MC", "CC1", "a \"quoted\" name", "back\\slash", "1¾ oz", "191yd", "two\nlines\tand a tab",
      "fläche; 'x' -- y", "шерсть 毛糸 🧶", "{\"a\": []}", "null", " led by blanks ", "\x01\x7f");
}

rc::Gen<double> figure() {
  return rc::gen::map(rc::gen::pair(rc::gen::inRange<std::int64_t>(0, 2'000'000), rc::gen::inRange(0, 6)),
                      [](const std::pair<std::int64_t, int>& parts) {
                        constexpr double divisors[] = {1, 10, 1000, 3, 7, 1e9};
                        return static_cast<double>(parts.first) / divisors[parts.second];
                      });
}

template <class E>
E any_of_enum() {
  const auto& rows = EnumWords<E>::rows;
  return rows[*rc::gen::inRange<std::size_t>(0, rows.size())].first;
}

// Fills a document part by part. A list of parts gets a few of them; ids are given out on the way, and what
// refers to a part is settled when all of them are there.
class Filler {
 public:
  Pattern fill() {
    Pattern pattern;
    sizes_ = *rc::gen::inRange<std::size_t>(1, 6);
    fill_parts(pattern);
    settle(pattern);
    pattern.last_id = last_id_ + *rc::gen::inRange<std::uint32_t>(0, 5);
    return pattern;
  }

 private:
  template <class Part>
  void fill_parts(Part& part) {
    Part::describe(part, [&](const char* name, auto& field) { fill_field(name, field); });
  }

  template <class T>
  void fill_field(const char* name, T& field) {
    if constexpr (TextField<T>) {
      field = *text();
    } else if constexpr (TruthField<T>) {
      field = *rc::gen::arbitrary<bool>();
    } else if constexpr (NumberField<T>) {
      field = *figure();
    } else if constexpr (WholeField<T>) {
      field = static_cast<T>(*rc::gen::inRange(1, 13));
    } else if constexpr (WordedEnum<T>) {
      field = any_of_enum<T>();
    } else if constexpr (IdField<T>) {
      if (std::string_view(name) == "id") field.value = ++last_id_;
    } else if constexpr (EnteredField<T>) {
      set_bare(field.value, *figure());
      field.typed = *text();
    } else if constexpr (OptionalField<T>) {
      field.reset();
      if (*rc::gen::arbitrary<bool>()) fill_field(name, field.emplace());
    } else if constexpr (PerSizeField<T>) {
      fill_per_size(name, field);
    } else if constexpr (SharedField<T>) {
      // The rounds of a chart follow its symbols.
      if constexpr (std::is_same_v<T, Shared<std::vector<Draft>>>)
        field.edit([&](std::vector<Draft>& drafts) { fill_list(name, drafts); });
    } else if constexpr (ListField<T>) {
      fill_list(name, field);
    } else {
      fill_parts(field);
    }
  }

  template <class Item>
  void fill_list(const char* name, std::vector<Item>& list) {
    std::size_t amount = *rc::gen::inRange<std::size_t>(0, 4);
    if constexpr (std::is_same_v<Item, Size>) amount = sizes_;
    if constexpr (std::is_same_v<Item, HouseStyle>) amount += 1;
    list.clear();
    for (std::size_t i = 0; i < amount; ++i) fill_field(name, list.emplace_back());
  }

  template <class T>
  void fill_per_size(const char* name, PerSize<T>& list) {
    typename PerSize<T>::List values(*rc::gen::inRange<std::size_t>(0, sizes_ + 1));
    for (auto& value : values) fill_field(name, value);
    list = PerSize<T>(std::move(values));
  }

  template <class Part>
  static auto id_of_any(const std::vector<Part>& parts) {
    const auto index = *rc::gen::inRange<std::size_t>(0, parts.size() + 1);
    return index == parts.size() ? decltype(Part::id){} : parts[index].id;
  }

  static void settle(Pattern& pattern) {
    pattern.sample_size = id_of_any(pattern.sizes);
    pattern.chosen_size = id_of_any(pattern.sizes);
    pattern.on_hand_size = id_of_any(pattern.sizes);
    for (std::size_t i = 0; i < pattern.roles.size(); ++i) {
      Role& role = pattern.roles[i];
      role.yarn = id_of_any(pattern.yarns);
      // Only with an earlier role, so that there is no circle.
      const std::vector<Role> earlier(pattern.roles.begin(),
                                      pattern.roles.begin() + static_cast<std::ptrdiff_t>(i));
      role.goes_along_with = id_of_any(earlier);
    }
    for (Fabric& fabric : pattern.fabrics) fabric.swatch.yarn = id_of_any(pattern.yarns);
    for (Chart& chart : pattern.charts) settle_chart(pattern, chart);
    for (Piece& piece : pattern.pieces) settle_piece(pattern, piece);
    for (Weighing& weighing : pattern.weighings) {
      weighing.size = id_of_any(pattern.sizes);
      for (WeighedRole& role : weighing.roles) role.role = id_of_any(pattern.roles);
      for (WeighedCopies& copies : weighing.only) copies.piece = id_of_any(pattern.pieces);
      for (BenchChange& change : weighing.altered) settle_change(pattern, change);
    }
    for (BenchChange& change : pattern.changes) settle_change(pattern, change);
    settle_bench(pattern);
    for (YarnReading& reading : pattern.readings) {
      reading.role = id_of_any(pattern.roles);
      reading.piece = id_of_any(pattern.pieces);
      if (const Piece* piece = pattern.piece(reading.piece)) reading.section = id_of_any(piece->sections);
    }
  }

  static void settle_bench(Pattern& pattern) {
    for (Candidate& candidate : pattern.candidates)
      for (CandidateYarn& row : candidate.yarns) {
        row.role = id_of_any(pattern.roles);
        row.yarn = id_of_any(pattern.yarns);
        row.held_with = id_of_any(pattern.yarns);
      }
    for (YarnOnHand& on_hand : pattern.on_hand) {
      on_hand.yarn = id_of_any(pattern.yarns);
      on_hand.role = id_of_any(pattern.roles);
    }
    for (GivenPart& part : pattern.given_parts) {
      part.piece = id_of_any(pattern.pieces);
      if (const Piece* piece = pattern.piece(part.piece)) part.section = id_of_any(piece->sections);
    }
  }

  static void settle_change(const Pattern& pattern, BenchChange& change) {
    change.piece = id_of_any(pattern.pieces);
    if (const Piece* piece = pattern.piece(change.piece)) {
      change.section = id_of_any(piece->sections);
      change.edge = id_of_any(piece->edges);
    }
    change.from = id_of_any(pattern.roles);
    change.to = id_of_any(pattern.roles);
    change.yarn = id_of_any(pattern.yarns);
    change.fabric = id_of_any(pattern.fabrics);
    change.size = id_of_any(pattern.sizes);
    change.other_size = id_of_any(pattern.sizes);
  }

  static void settle_chart(const Pattern& pattern, Chart& chart) {
    std::string symbols(1, no_stitch);
    for (std::size_t i = 0; i < chart.colours.size(); ++i) {
      chart.colours[i].symbol = std::string(1, static_cast<char>('A' + i));
      chart.colours[i].role = id_of_any(pattern.roles);
      symbols += chart.colours[i].symbol;
    }
    const auto width = *rc::gen::inRange<std::size_t>(1, 9);
    std::vector<std::string> rounds(*rc::gen::inRange<std::size_t>(0, 6));
    for (std::string& round : rounds)
      round = *rc::gen::container<std::string>(width, rc::gen::elementOf(symbols));
    chart.rounds = Shared<std::vector<std::string>>(std::move(rounds));
  }

  static void settle_piece(const Pattern& pattern, Piece& piece) {
    for (Section& section : piece.sections) {
      section.fabric = id_of_any(pattern.fabrics);
      section.chart = id_of_any(pattern.charts);
      section.role = id_of_any(pattern.roles);
      for (Stripe& stripe : section.stripes) stripe.role = id_of_any(pattern.roles);
    }
    for (Edge& edge : piece.edges) {
      edge.role = id_of_any(pattern.roles);
      edge.fabric = id_of_any(pattern.fabrics);
    }
  }

  std::size_t sizes_ = 1;
  std::uint32_t last_id_ = 0;
};

}  // namespace

rc::Gen<Pattern> generate_pattern() {
  return rc::gen::exec([] { return Filler().fill(); });
}

Pattern generated_pattern(std::uint64_t seed) {
  constexpr int size = 50;
  return generate_pattern()(rc::Random(seed), size).value();
}

void showValue(const Pattern& pattern, std::ostream& out) { out << to_json(pattern); }

}  // namespace skeinproof
