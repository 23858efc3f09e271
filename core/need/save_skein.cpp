// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/save_skein.h"

#include <algorithm>
#include <cmath>

#include "core/fabric/gauge.h"
#include "core/need/layer.h"
#include "core/need/stitch_counts.h"
#include "core/pattern/piece_edits.h"

namespace skeinproof {
namespace {

constexpr double most_rounds_left_out = 1.0 / 3;

struct Idea {
  std::vector<Change> changes;
  SavingKind kind;
  bool other_yarn = false;
};

double weight_of(SavingKind kind) {
  switch (kind) {
    case SavingKind::piece_in_other_colour:
      return 1.0;
    case SavingKind::section_in_other_colour:
      return 1.2;
    case SavingKind::edge_in_other_colour:
      return 1.5;
    case SavingKind::fewer_rounds:
      return 2.0;
  }
  return 1.0;
}

double cost_of(const SavedSkein& way) {
  return way.moved.value() * weight_of(way.kind) * (way.other_yarn ? 2 : 1);
}

const RoleChange* change_of(const WhatIf& what_if, RoleId role) {
  const auto found = std::find_if(what_if.roles.begin(), what_if.roles.end(),
                                  [&](const RoleChange& c) { return c.role == role; });
  return found == what_if.roles.end() ? nullptr : &*found;
}

class Search {
 public:
  Search(const Pattern& pattern, const Role& role, SizeId size, const NumberStyle& style)
      : pattern_(pattern), role_(role), size_(size), size_index_(*pattern.size_index(size)), style_(style) {}

  std::vector<SavedSkein> ways(std::size_t at_most) {
    std::vector<SavedSkein> found;
    const std::vector<Idea> given = colours_given();
    for (const Idea& idea : given) keep(found, idea);
    for (const Piece& piece : pattern_.pieces)
      for (const Section& section : piece.sections)
        if (const auto idea = fewer_rounds(section)) keep(found, *idea);
    if (found.empty())
      for (std::size_t a = 0; a < given.size(); ++a)
        for (std::size_t b = a + 1; b < given.size(); ++b)
          if (apart(given[a], given[b])) keep(found, both(given[a], given[b]));
    std::stable_sort(found.begin(), found.end(),
                     [](const SavedSkein& a, const SavedSkein& b) { return cost_of(a) < cost_of(b); });
    if (found.size() > at_most) found.resize(at_most);
    for (SavedSkein& way : found) {
      if (way.kind != SavingKind::fewer_rounds) way.other_sizes = in_other_sizes(way.changes);
      way.reason = reason(way);
    }
    return found;
  }

 private:
  bool worked_in_it(const Section& section) const {
    return section.source != StitchSource::chart && section.colouring == Colouring::one_role &&
           section.role == role_.id;
  }

  std::vector<Idea> colours_given() const {
    std::vector<Idea> ideas;
    for (const Role& to : pattern_.roles) {
      if (to.id == role_.id || to.strands != role_.strands || to.goes_along_with) continue;
      const auto add = [&](std::uint32_t part, SavingKind kind) {
        ideas.push_back({{GivenTo{part, role_.id, to.id, {}}}, kind, to.yarn != role_.yarn});
      };
      for (const Piece& piece : pattern_.pieces) {
        std::size_t parts = 0, charts = 0;
        for (const Section& section : piece.sections) {
          parts += worked_in_it(section);
          charts += section.source == StitchSource::chart || section.colouring == Colouring::stripes;
        }
        for (const Edge& edge : piece.edges) parts += edge.role == role_.id && edge.kind != EdgeKind::ends;
        const bool whole = parts > 0 && charts == 0;
        if (whole) add(piece.id.value, SavingKind::piece_in_other_colour);
        if (whole && parts == 1) continue;
        for (const Section& section : piece.sections)
          if (worked_in_it(section)) add(section.id.value, SavingKind::section_in_other_colour);
        for (const Edge& edge : piece.edges)
          if (edge.role == role_.id && edge.kind != EdgeKind::ends)
            add(edge.id.value, SavingKind::edge_in_other_colour);
      }
    }
    return ideas;
  }

  // The fewest rounds left out that save the skein: the more, the less yarn, so halving finds them.
  std::optional<Idea> fewer_rounds(const Section& section) const {
    const bool striped = section.colouring == Colouring::stripes &&
                         std::any_of(section.stripes.begin(), section.stripes.end(),
                                     [&](const Stripe& s) { return s.role == role_.id; });
    if (section.source != StitchSource::worked_out || (!worked_in_it(section) && !striped))
      return std::nullopt;
    const double rows = section_stitches(section, size_index_).rows.value_or(0);
    int too_few = 0, enough = static_cast<int>(std::min(rows * most_rounds_left_out, 1000.0));
    const auto idea = [&](int rounds) {
      return Idea{{ExtraRounds{section.id, -rounds, {}, {}}}, SavingKind::fewer_rounds};
    };
    if (enough < 1 || !saves(idea(enough))) return std::nullopt;
    while (enough - too_few > 1) {
      const int middle = (too_few + enough) / 2;
      (saves(idea(middle)) ? enough : too_few) = middle;
    }
    return idea(enough);
  }

  bool saves(const WhatIf& what_if) const {
    const RoleChange* own = change_of(what_if, role_.id);
    if (own == nullptr || !own->known() || own->skeins_more >= 0) return false;
    return std::all_of(what_if.roles.begin(), what_if.roles.end(),
                       [](const RoleChange& c) { return c.skeins_more <= 0; });
  }
  bool saves(const Idea& idea) const {
    const auto what_if = apply(pattern_, idea.changes, size_);
    return what_if && saves(*what_if);
  }

  // Two gifts of one piece are one change said twice.
  bool apart(const Idea& a, const Idea& b) const {
    const auto piece = [&](const Idea& idea) {
      return find_in_pieces(pattern_, std::get<GivenTo>(idea.changes.front()).part).piece;
    };
    return piece(a) != piece(b);
  }
  static Idea both(const Idea& a, const Idea& b) {
    Idea idea{a.changes, weight_of(a.kind) < weight_of(b.kind) ? b.kind : a.kind,
              a.other_yarn || b.other_yarn};
    idea.changes.insert(idea.changes.end(), b.changes.begin(), b.changes.end());
    return idea;
  }

  void keep(std::vector<SavedSkein>& found, const Idea& idea) const {
    auto what_if = apply(pattern_, idea.changes, size_);
    if (!what_if || !saves(*what_if)) return;
    const RoleChange& own = *change_of(*what_if, role_.id);
    SavedSkein way;
    way.changes = idea.changes;
    way.kind = idea.kind;
    way.other_yarn = idea.other_yarn;
    way.moved = -own.knitted_more;
    way.spare =
        static_cast<double>(*own.after.skeins) * *skein_length(pattern_, role_.id) - own.after.planned;
    way.brimful = own.after.last_skein == LastSkein::brimful;
    way.what_if = std::move(*what_if);
    for (const Change& change : idea.changes)
      way.words += (way.words.empty() ? "" : " and ") + words_of(change);
    found.push_back(std::move(way));
  }

  std::vector<SizeSkeins> in_other_sizes(const std::vector<Change>& changes) const {
    std::vector<SizeSkeins> sizes;
    for (const Size& size : pattern_.sizes) {
      if (size.id == size_) continue;
      const auto there = apply(pattern_, changes, size.id);
      if (!there) continue;
      int more = 0;
      for (const RoleChange& role : there->roles) more += role.skeins_more;
      if (more != 0) sizes.push_back({size.id, more});
    }
    return sizes;
  }

  // A piece that has nothing but this colour is named alone.
  std::string words_of(const Change& change) const {
    const auto* given = std::get_if<GivenTo>(&change);
    if (given == nullptr) return change_words(pattern_, change, style_);
    GivenTo shown = *given;
    const PiecePlace place = find_in_pieces(pattern_, given->part);
    const bool other = place.section == nullptr && place.edge == nullptr &&
                       std::any_of(place.piece->sections.begin(), place.piece->sections.end(),
                                   [&](const Section& section) { return !worked_in_it(section); });
    if (!other) shown.from = {};
    return change_words(pattern_, shown, style_);
  }

  std::string of_its_skeins(const RoleChange& change) const {
    const auto skein = skein_length(pattern_, change.role);
    std::string words = change.label + " " + show_number(change.after.planned.value(), 1, style_);
    if (skein && change.after.skeins)
      words += " of " + show_short(skein->value() * *change.after.skeins, 1, style_);
    return words + " m";
  }

  std::string measurement(const SavedSkein& way) const {
    if (way.kind != SavingKind::fewer_rounds) return "every measurement stays";
    const auto& change = std::get<ExtraRounds>(way.changes.front());
    const Section* section = find_in_pieces(pattern_, change.section.value).section;
    const Fabric* fabric = pattern_.fabric(section->fabric);
    const auto height = fabric == nullptr ? Expected<Centimetres>(failure(ErrorKind::not_found, "", ""))
                                          : row_height(fabric->gauge);
    if (!height) return "it becomes shorter; its fabric has no row gauge to say by how much";
    return "it becomes " + show_number(-change.rounds * height->value(), 1, style_) + " cm shorter";
  }

  std::string reason(const SavedSkein& way) const {
    const RoleChange& own = *change_of(way.what_if, role_.id);
    std::string words = of_its_skeins(own) + ", " + show_number(way.spare.value(), 1, style_) + " m to spare";
    if (way.brimful) words += " (brimful)";
    for (const RoleChange& other : way.what_if.roles) {
      if (other.role == role_.id || std::abs(other.planned_more.value()) < 0.05) continue;
      words += "; " + of_its_skeins(other);
      if (other.after.last_skein == LastSkein::brimful && other.before.last_skein != LastSkein::brimful)
        words += " (brimful)";
    }
    words += "; " + measurement(way);
    if (way.other_yarn) words += "; a different yarn: see that it is as thick";
    for (const SizeSkeins& size : way.other_sizes)
      words += "; in size " + pattern_.sizes[*pattern_.size_index(size.size)].label + ", " +
               std::to_string(std::abs(size.more)) + (std::abs(size.more) == 1 ? " skein " : " skeins ") +
               (size.more > 0 ? "more" : "fewer");
    return words;
  }

  const Pattern& pattern_;
  const Role& role_;
  SizeId size_;
  std::size_t size_index_;
  const NumberStyle& style_;
};

}  // namespace

Expected<SaveSkein> save_skein(const Pattern& pattern, RoleId role_id, SizeId size, std::size_t at_most,
                               const NumberStyle& style) {
  const Role* role = pattern.role(role_id);
  if (role == nullptr)
    return failure(ErrorKind::unknown_name, "no colour " + std::to_string(role_id.value),
                   "a colour of the pattern");
  const auto now = apply(pattern, {}, size);
  if (!now) return tl::unexpected<Error>(now.error());
  const SizeNeed& need = change_of(*now, role_id)->before;
  const auto skein = skein_length(pattern, role_id);
  if (!need.known || !need.skeins || !skein)
    return failure(ErrorKind::wrong_shape, role->label + " without a count of skeins",
                   need.missing.empty() ? "the length in one skein of its yarn" : need.missing);
  if (*need.skeins < 2)
    return failure(ErrorKind::out_of_range, role->label + " with " + std::to_string(*need.skeins) + " skein",
                   "two skeins or more to save one of");
  SaveSkein result;
  result.role = role_id;
  result.label = role->label;
  result.skeins = *need.skeins;
  result.planned = need.planned;
  result.step = static_cast<double>(*need.skeins - 1) * *skein;
  result.ways = Search(pattern, *role, size, style).ways(at_most);
  return result;
}

}  // namespace skeinproof
