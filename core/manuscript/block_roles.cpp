// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <numeric>

#include "core/base/text.h"
#include "core/manuscript/block_parts.h"
#include "core/manuscript/unit_list.h"
#include "core/manuscript/words.h"

namespace skeinproof {
namespace {

using Figures = std::vector<std::optional<double>>;

// One role in words, before it is laid out.
struct RoleWords {
  BlockLine first, second;  // label and shade, in the house's order
  BlockLine list, metres;
  std::string note;
  RoleId role;
};

std::size_t width_of(const BlockLine& runs) {
  return std::accumulate(
      runs.begin(), runs.end(), std::size_t{0},
      [](std::size_t width, const BlockRun& run) { return width + code_points(run.text).size(); });
}

std::string replaced(std::string text, std::string_view name, const std::string& value) {
  for (auto at = text.find(name); at != std::string::npos; at = text.find(name, at + value.size()))
    text.replace(at, name.size(), value);
  return text;
}

std::string strands_words(int strands) {
  if (strands == 2) return "held double";
  if (strands == 3) return "held triple";
  return std::to_string(strands) + " strands held together";
}

std::vector<UnitList> count_lists(const HouseStyle& house, const Figures& figures,
                                  std::optional<SkeinWord> word) {
  if (house.counted_in == CountedIn::metres) return metres_lists(figures, house);
  if (house.counted_in == CountedIn::grams) return grams_lists(figures, house);
  const SkeinWord counted = word.value_or(SkeinWord::skein);
  return count_list(figures, skein_word(counted, false, house), skein_word(counted, true, house), house);
}

std::string role_note(const BlockDraft& draft, const Role& role) {
  std::vector<std::string> notes;
  for (const LengthNote& note : draft.assessment.length_notes) {
    if (note.role != role.id || !draft.house.length_notes) continue;
    std::string words = replaced(draft.house.length_note_words, "{length}",
                                 length_words(note.at_most, draft.house, Inside::brackets));
    words = replaced(words, "{metres}", metres_figure(note.at_most, draft.house) + " m");
    notes.push_back(replaced(words, "{yards}", yards_figure(note.at_most) + " yd"));
  }
  if (role.strands > 1) notes.push_back(strands_words(role.strands));
  if (const Role* other = draft.pattern.role(role.goes_along_with))
    notes.push_back("held together with " + other->label);
  return join(notes, "; ");
}

RoleWords role_words(BlockDraft& draft, const Role& role, bool name_yarn) {
  const Yarn* yarn = draft.pattern.yarn(role.yarn);
  const std::string shade = shade_words(role.shade, draft.house);
  BlockLine label, colour;
  if (name_yarn) colour.push_back({BlockPart::yarn_name, yarn == nullptr ? "–" : yarn->name, role.yarn, {}});
  if (name_yarn && !shade.empty()) append(colour, " ");
  if (!shade.empty()) colour.push_back({BlockPart::shade, shade, {}, role.id});
  const bool after = draft.house.role_place == RolePlace::after_shade && !colour.empty();
  if (!role.label.empty())
    label.push_back({BlockPart::role, after ? "(" + role.label + ")" : role.label, {}, role.id});

  const std::string name = role.label.empty() ? "a colour" : role.label;
  if (role.shade.name.empty()) draft.missing("shade of " + name, "Yarns", role.id.value);
  if (yarn == nullptr) draft.missing("yarn of " + name, "Yarns", role.id.value);

  RoleWords words;
  words.role = role.id;
  words.first = after ? colour : label;
  words.second = after ? label : colour;
  const auto word = yarn == nullptr ? std::nullopt : std::optional(yarn->put_up.word);
  words.list = list_runs(count_lists(draft.house, need_figures(draft, role, draft.house.counted_in), word),
                         draft.pattern.sizes, draft.house, {BlockPart::counts, {}, {}, role.id});
  if (draft.house.metres_line && draft.house.counted_in != CountedIn::metres) {
    append(words.metres, "needs ");
    append(words.metres, list_runs(metres_lists(need_figures(draft, role, CountedIn::metres), draft.house),
                                   draft.pattern.sizes, draft.house, {BlockPart::metres, {}, {}, role.id}));
  }
  words.note = role_note(draft, role);
  return words;
}

// A line a role. Aligned: label, shade and list stand under each other; else a colon parts them.
void aligned_lines(BlockDraft& draft, const std::vector<RoleWords>& roles, std::string_view indent) {
  std::size_t first = 0, second = 0;
  for (const RoleWords& role : roles) {
    first = std::max(first, width_of(role.first));
    second = std::max(second, width_of(role.second));
  }
  const std::size_t first_column = first + (first == 0 ? 0 : second == 0 ? 2 : 1);
  const std::size_t second_column = second + (second == 0 ? 0 : 2);
  for (const RoleWords& role : roles) {
    BlockLine line;
    append(line, std::string(indent));
    append(line, role.first);
    if (draft.house.align_roles) append(line, std::string(first_column - width_of(role.first), ' '));
    if (!draft.house.align_roles && !role.first.empty() && !role.second.empty()) append(line, " ");
    append(line, role.second);
    if (draft.house.align_roles) append(line, std::string(second_column - width_of(role.second), ' '));
    if (!draft.house.align_roles && !(role.first.empty() && role.second.empty())) append(line, ": ");
    append(line, role.list);
    if (!role.note.empty()) {
      append(line, " (");
      line.push_back({BlockPart::length_note, role.note, {}, role.role});
      append(line, ")");
    }
    draft.out.lines.push_back(line);
    if (role.metres.empty()) continue;
    BlockLine metres;
    append(metres, std::string(indent) +
                       std::string(draft.house.align_roles ? first_column + second_column : 2, ' '));
    append(metres, role.metres);
    draft.out.lines.push_back(metres);
  }
}

void running_line(BlockDraft& draft, const std::vector<RoleWords>& roles, std::string_view indent) {
  const std::string separator = draft.house.role_separator == RoleSeparator::semicolon ? "; " : ", ";
  BlockLine line;
  append(line, std::string(indent));
  for (std::size_t i = 0; i < roles.size(); ++i) {
    const RoleWords& role = roles[i];
    if (i > 0) append(line, separator);
    append(line, role.first);
    if (!role.first.empty() && !role.second.empty()) append(line, " ");
    append(line, role.second);
    if (!role.first.empty() || !role.second.empty()) append(line, ": ");
    append(line, role.list);
    if (!role.metres.empty()) append(line, ", ");
    append(line, role.metres);
    if (role.note.empty()) continue;
    append(line, " (");
    line.push_back({BlockPart::length_note, role.note, {}, role.role});
    append(line, ")");
  }
  append(line, ".");
  draft.out.lines.push_back(line);
}

}  // namespace

void write_roles(BlockDraft& draft, const std::vector<const Role*>& roles, bool name_yarns,
                 std::string_view indent) {
  std::vector<RoleWords> words;
  for (const Role* role : roles) words.push_back(role_words(draft, *role, name_yarns));
  if (words.empty()) return;
  if (draft.house.role_separator == RoleSeparator::new_line)
    aligned_lines(draft, words, indent);
  else
    running_line(draft, words, indent);
}

void write_total(BlockDraft& draft) {
  if (!draft.house.total_line || draft.pattern.roles.empty()) return;
  Figures sums(draft.pattern.sizes.size());
  std::optional<SkeinWord> word;
  bool one_word = true;
  const std::size_t noted = draft.out.missing.size();
  for (std::size_t r = 0; r < draft.pattern.roles.size(); ++r) {
    const Figures figures = need_figures(draft, draft.pattern.roles[r], draft.house.counted_in);
    for (std::size_t i = 0; i < sums.size(); ++i) {
      if (r == 0)
        sums[i] = figures[i];
      else
        sums[i] = sums[i] && figures[i] ? std::optional(*sums[i] + *figures[i]) : std::nullopt;
    }
    if (const Yarn* yarn = draft.pattern.yarn(draft.pattern.roles[r].yarn)) {
      one_word = one_word && (!word || *word == yarn->put_up.word);
      word = yarn->put_up.word;
    }
  }
  draft.out.missing.resize(noted);  // the roles have said already what they miss
  BlockLine line;
  append(line, draft.house.total_words + " ");
  append(line, list_runs(count_lists(draft.house, sums, one_word ? word : std::nullopt), draft.pattern.sizes,
                         draft.house, {BlockPart::total, {}, {}, {}}));
  append(line, ".");
  draft.out.lines.push_back(line);
}

}  // namespace skeinproof
