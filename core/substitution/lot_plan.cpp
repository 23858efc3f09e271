// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/lot_plan.h"

#include <algorithm>
#include <cmath>

#include "core/base/listed.h"
#include "core/need/constants.h"
#include "core/substitution/given_part.h"
#include "core/substitution/integer_plan.h"
#include "core/substitution/on_hand_verdict.h"

namespace skeinproof {
namespace {

constexpr double exact_fit_m = 1e-6;
constexpr double loosened = 1e-6;
constexpr std::string_view how_to_mix =
    "Mix them: alternate two skeins every 2 rounds for at least 10 rounds where one lot takes over from the "
    "other, at the rib, the underarm or a pattern band";

// What a plan avoids, the worst first; our own order, common practice, no source.
namespace weight {
constexpr double lot = 100, cut = 10, once = 3, apart = 1;
}  // namespace weight

struct Unit {
  LotPiece piece;
  std::size_t of_piece = 0;  // index among the pieces
  double away = weight::once;
};

struct Lot {
  LotOfRole shown;
  int pieces = 0;
};

std::size_t at(int index) { return static_cast<std::size_t>(index); }

class LotWork {
 public:
  LotWork(const Pattern& pattern, const Role& role, const SizeNeed& need, SizeId size,
          const NumberStyle& style)
      : pattern_(pattern), role_(role), need_(need), style_(style) {
    plan_.role = role.id;
    plan_.label = role.label;
    plan_.size = size;
    factor_ = 1 + pattern.house().allowance_pct / 100;
  }

  void take_lots() {
    std::vector<const YarnOnHand*> first;
    for (const YarnOnHand& yarn : pattern_.on_hand) {
      if (!yarn.used || yarn.role != role_.id) continue;
      const auto length = length_on_hand(pattern_, yarn);
      if (!length) continue;
      std::size_t l = 0;
      while (l < first.size() && !same_lot(*first[l], yarn)) ++l;
      if (l == first.size()) {
        first.push_back(&yarn);
        lots_.push_back({});
        lots_[l].shown.yarn = yarn.id;
        lots_[l].shown.lot = yarn.lot;
        names_.push_back(yarn.lot.empty() ? on_hand_name(pattern_, yarn) : "lot " + yarn.lot);
      }
      lots_[l].shown.have += length->length;
      lots_[l].pieces += length->pieces;
    }
    const double join_m = constant(pattern_, "join_m");
    for (Lot& lot : lots_)
      lot.shown.usable = std::max(metres(0), lot.shown.have - metres(join_m * (lot.pieces - 1)));
  }
  bool several_lots() const { return lots_.size() > 1; }

  LotPlan take() {
    if (!need_.known || need_.parts.empty()) {
      plan_.words = "The lots cannot be dealt out: " +
                    (need_.missing.empty() ? std::string("stitches by piece are not known") : need_.missing);
      plan_.advice = std::string(how_to_mix);
      return std::move(plan_);
    }
    if (!deal(by_pieces(), LotCut::between_pieces) && !deal(by_sections(), LotCut::between_sections))
      give_up();
    return std::move(plan_);
  }

 private:
  static bool same_lot(const YarnOnHand& one, const YarnOnHand& other) {
    return one.yarn == other.yarn && one.lot == other.lot && one.shade.name == other.shade.name &&
           one.shade.number == other.shade.number;
  }
  std::string shown(Metres length) const { return show_number(length.value(), 1, style_) + " m"; }

  // Pairs hang apart from the rest, and a border in rib may change its lot: neither is seen beside the piece
  // it parts from.
  double away_of(const Piece& piece, const std::vector<const Section*>& sections) const {
    const bool rib =
        !sections.empty() && std::all_of(sections.begin(), sections.end(), [&](const Section* s) {
          const Fabric* fabric = pattern_.fabric(s->fabric);
          return fabric != nullptr && fabric->structure == Structure::rib;
        });
    return piece.copies > 1 || rib ? weight::apart : weight::once;
  }

  std::vector<const Section*> sections_of(const Piece& piece) const {
    std::vector<const Section*> sections;
    for (const Section& section : piece.sections)
      if (knitted_in(pattern_, need_, {piece.id, section.id}) > metres(exact_fit_m))
        sections.push_back(&section);
    return sections;
  }

  Unit unit(const Piece& piece, SectionId section, Metres knitted, std::string name, double away) const {
    Unit made;
    made.piece = {piece.id, section, std::move(name), knitted, knitted * factor_};
    made.of_piece = static_cast<std::size_t>(&piece - pattern_.pieces.data());
    made.away = away + knitted / need_.knitted;
    return made;
  }

  std::vector<Unit> by_pieces() const {
    std::vector<Unit> units;
    for (const Piece& piece : pattern_.pieces) {
      const Metres knitted = knitted_in(pattern_, need_, {piece.id, {}});
      if (knitted > metres(exact_fit_m))
        units.push_back(unit(piece, {}, knitted, piece.name, away_of(piece, sections_of(piece))));
    }
    return units;
  }

  // A cast-on goes with the first section of its piece, all other edges with the last.
  std::vector<Unit> by_sections() const {
    std::vector<Unit> units;
    for (const Piece& piece : pattern_.pieces) {
      const auto sections = sections_of(piece);
      Metres rest = knitted_in(pattern_, need_, {piece.id, {}});
      if (!(rest > metres(exact_fit_m))) continue;
      if (sections.size() < 2) {
        units.push_back(unit(piece, {}, rest, piece.name, away_of(piece, sections)));
        continue;
      }
      const std::size_t first = units.size();
      for (const Section* section : sections) {
        const Metres knitted = knitted_in(pattern_, need_, {piece.id, section->id});
        rest -= knitted;
        units.push_back(
            unit(piece, section->id, knitted, piece.name + ", " + section->name, away_of(piece, {section})));
      }
      const Metres cast_on = cast_on_of(piece);
      lengthen(units[first], cast_on);
      lengthen(units.back(), rest - cast_on);
    }
    return units;
  }
  Metres cast_on_of(const Piece& piece) const {
    Metres sum;
    for (const PartMetres& part : need_.parts)
      for (const Edge& edge : piece.edges)
        if (part.edge == edge.id && edge.kind == EdgeKind::cast_on) sum += part.extra;
    return sum;
  }
  void lengthen(Unit& one, Metres by) const {
    one.piece.knitted += by;
    one.piece.planned += by * factor_;
  }

  bool deal(const std::vector<Unit>& units, LotCut cut) {
    if (units.empty()) return false;
    Metres in_pieces;
    for (const Unit& one : units) in_pieces += one.piece.planned;
    rest_ = std::max(metres(0), need_.planned - in_pieces);  // swatch and ends
    const auto largest =
        std::max_element(units.begin(), units.end(),
                         [](const Unit& a, const Unit& b) { return a.piece.planned < b.piece.planned; }) -
        units.begin();
    const auto lot_of = solve(units, static_cast<std::size_t>(largest));
    if (!lot_of) return false;
    write(units, *lot_of, static_cast<std::size_t>(largest), cut);
    return true;
  }

  // Which lot each unit comes from.
  std::optional<std::vector<std::size_t>> solve(const std::vector<Unit>& units, std::size_t largest) const {
    IntegerPlan plan;
    std::vector<std::vector<int>> from(units.size(), std::vector<int>(lots_.size(), -1));
    for (std::size_t u = 0; u < units.size(); ++u) {
      IntegerPlan::Terms once;
      for (std::size_t l = 0; l < lots_.size(); ++l) {
        from[u][l] = plan.yes_or_no();
        once.emplace_back(from[u][l], 1);
      }
      plan.at_least(once, 1);
      plan.at_most(once, 1);
    }
    for (std::size_t l = 0; l < lots_.size(); ++l) {
      const double usable = lots_[l].shown.usable.value();
      // Of lots that would do alike the smaller is used up.
      const int used = plan.yes_or_no(weight::lot + usable * 1e-5);
      IntegerPlan::Terms length;
      for (std::size_t u = 0; u < units.size(); ++u) {
        const double swatch_and_ends = u == largest ? rest_.value() : 0;
        length.emplace_back(from[u][l], units[u].piece.planned.value() + swatch_and_ends);
        plan.at_most({{from[u][l], 1}, {used, -1}}, 0);
      }
      plan.at_most(length, usable * (1 + loosened) + exact_fit_m);
    }
    for (std::size_t u = 0; u < units.size(); ++u) {
      const int away = plan.yes_or_no(units[u].away);
      const bool cut_before = u > 0 && units[u - 1].of_piece == units[u].of_piece;
      const int cut = cut_before ? plan.yes_or_no(weight::cut) : -1;
      for (std::size_t l = 0; l < lots_.size(); ++l) {
        if (u != largest) plan.at_most({{from[u][l], 1}, {from[largest][l], -1}, {away, -1}}, 0);
        if (cut_before) plan.at_most({{from[u][l], 1}, {from[u - 1][l], -1}, {cut, -1}}, 0);
      }
    }
    const auto values = plan.solve();
    if (!values) return std::nullopt;
    std::vector<std::size_t> lot_of(units.size(), 0);
    for (std::size_t u = 0; u < units.size(); ++u)
      for (std::size_t l = 0; l < lots_.size(); ++l)
        if ((*values)[at(from[u][l])] > 0.5) lot_of[u] = l;
    return lot_of;
  }

  void write(const std::vector<Unit>& units, const std::vector<std::size_t>& lot_of, std::size_t largest,
             LotCut cut) {
    std::vector<std::string> words, main_words;
    for (std::size_t l = 0; l < lots_.size(); ++l) {
      LotOfRole lot = lots_[l].shown;
      for (std::size_t u = 0; u < units.size(); ++u) {
        if (lot_of[u] != l) continue;
        lot.pieces.push_back(units[u].piece);
        lot.knitted += units[u].piece.knitted;
        lot.planned += units[u].piece.planned;
      }
      if (lot.pieces.empty()) continue;
      lot.first = lot_of[largest] == l;
      if (lot.first) {
        lot.planned += rest_;
        lot.knitted += std::max(metres(0), need_.knitted + need_.swatch - knitted_in_all(units));
      }
      lot.spare = lot.usable - lot.planned;
      (lot.first ? main_words : words).push_back(words_of(lot, names_[l]));
      if (lot.first)
        plan_.lots.insert(plan_.lots.begin(), std::move(lot));
      else
        plan_.lots.push_back(std::move(lot));
    }
    plan_.cut = plan_.lots.size() == 1 ? LotCut::one_lot : cut;
    main_words.insert(main_words.end(), words.begin(), words.end());
    for (std::size_t i = 0; i < main_words.size(); ++i) plan_.words += (i == 0 ? "" : "; ") + main_words[i];
    if (plan_.cut == LotCut::between_sections) plan_.advice = std::string(how_to_mix);
  }
  static Metres knitted_in_all(const std::vector<Unit>& units) {
    Metres sum;
    for (const Unit& one : units) sum += one.piece.knitted;
    return sum;
  }
  std::string words_of(const LotOfRole& lot, const std::string& name) const {
    std::vector<std::string> pieces;
    for (const LotPiece& piece : lot.pieces) pieces.push_back(piece.name);
    return listed(pieces) + " from " + name + (lot.first ? ", with swatch and ends" : "") + " (" +
           show_number(lot.planned.value(), 1, style_) + " of " + shown(lot.usable) + ")";
  }

  void give_up() {
    plan_.cut = LotCut::not_possible;
    Metres all;
    for (const Lot& lot : lots_) {
      all += lot.shown.usable;
      plan_.lots.push_back(lot.shown);
    }
    if (all + metres(exact_fit_m) < need_.planned) {
      plan_.short_of = need_.planned - all;
      plan_.words = "All lots together are short by " + shown(*plan_.short_of);
      return;
    }
    plan_.words = "There is enough, but no way to keep every piece in one lot";
    plan_.advice = std::string(how_to_mix);
  }

  const Pattern& pattern_;
  const Role& role_;
  const SizeNeed& need_;
  const NumberStyle& style_;
  double factor_ = 1;
  Metres rest_;
  std::vector<Lot> lots_;
  std::vector<std::string> names_;
  LotPlan plan_;
};

}  // namespace

std::vector<LotPlan> lot_plans(const Pattern& pattern, const Assessment& assessment,
                               const NumberStyle& style) {
  std::vector<LotPlan> plans;
  const auto size_index = on_hand_size_index(pattern);
  if (!size_index) return plans;
  for (const RoleNeed& need : assessment.roles) {
    const Role* role = pattern.role(need.role);
    if (role == nullptr || *size_index >= need.sizes.size()) continue;
    LotWork work(pattern, *role, need.sizes[*size_index], pattern.sizes[*size_index].id, style);
    work.take_lots();
    if (work.several_lots()) plans.push_back(work.take());
  }
  return plans;
}

}  // namespace skeinproof
