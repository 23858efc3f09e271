// SPDX-License-Identifier: GPL-3.0-or-later
#include <QGuiApplication>
#include <array>
#include <ctime>
#include <memory>

#include "app/print/save_sheet.h"
#include "app/terminal/verbs.h"
#include "core/manuscript/house_styles.h"
#include "core/manuscript/write_block.h"
#include "core/need/assessment.h"
#include "core/pattern/edits.h"
#include "core/sheets/comparison_sheet.h"
#include "core/sheets/evidence_sheet.h"
#include "core/sheets/leftovers_record.h"
#include "core/sheets/make_sheets.h"
#include "core/sheets/query_sheet.h"
#include "core/sheets/shopping_list.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

struct HandOverCall {
  std::string file, earlier, sheet = "block", out, style, role, size, candidate;
  std::size_t before = 0, after = 0;  // drafts from 1; 0 = the last two
};

Expected<HouseStyle> style_of(const HandOverCall& call, const Pattern& pattern) {
  if (call.style.empty()) return pattern.house();
  for (const HouseStyle& style : pattern.house_styles)
    if (style.name == call.style) return style;
  if (const HouseStyle* ready = ready_house_style(call.style)) return *ready;
  std::string known;
  for (const HouseStyle& style : ready_house_styles())
    known += (known.empty() ? "“" : ", “") + style.name + "”";
  return failure(ErrorKind::unknown_name, "the house style “" + call.style + "”",
                 "one of the file's or " + known);
}

Expected<Sheet> working_of(const HandOverCall& call, const Pattern& pattern, const HouseStyle& house) {
  const auto size =
      call.size.empty() ? pattern.size_index(pattern.chosen_size) : pattern.size_index(call.size);
  if (!size)
    return failure(ErrorKind::unknown_name, "the size “" + call.size + "”", "a size label of the pattern");
  for (const Role& role : pattern.roles)
    if (role.label == call.role || call.role.empty())
      return working_sheet(explain(pattern, role.id, *size, Layer::planned), pattern, house);
  return failure(ErrorKind::unknown_name, "the role “" + call.role + "”",
                 "a role of the pattern, such as MC");
}

Expected<Sheet> drafts_of(const HandOverCall& call, const Pattern& pattern, const Assessment& assessment) {
  const std::size_t drafts = pattern.drafts->size();
  const std::size_t after = call.after > 0 ? call.after : drafts;
  const std::size_t before = call.before > 0 ? call.before : after - 1;
  if (drafts < 2 || after < 1 || before < 1 || before > drafts || after > drafts || before == after)
    return failure(
        ErrorKind::out_of_range,
        drafts < 2 ? "fewer than two drafts" : "no such two among " + std::to_string(drafts) + " drafts",
        "two drafts of the file, counted from 1, or an earlier text");
  return drafts_sheet(pattern, compare_drafts(pattern, assessment, before - 1, after - 1));
}

Expected<SizeId> size_of(const HandOverCall& call, const Pattern& pattern) {
  if (call.size.empty()) return SizeId{};
  const auto size = pattern.size_index(call.size);
  if (!size)
    return failure(ErrorKind::unknown_name, "the size “" + call.size + "”", "a size label of the pattern");
  return pattern.sizes[*size].id;
}

Expected<Sheet> shopping_list_of(const HandOverCall& call, const Pattern& pattern,
                                 const Assessment& assessment) {
  const auto size = size_of(call, pattern);
  if (!size) return tl::unexpected(size.error());
  if (call.candidate.empty()) return shopping_list(pattern, assessment, pattern.house(), {}, *size);
  std::string known;
  for (const CandidateFacts& facts : compare_candidates(pattern, assessment, bench_size(pattern))) {
    if (facts.name == call.candidate)
      return shopping_list(pattern, assessment, pattern.house(), facts.id, *size);
    known += (known.empty() ? "“" : ", “") + facts.name + "”";
  }
  return failure(ErrorKind::unknown_name, "the candidate “" + call.candidate + "”", "one of " + known);
}

Expected<Sheet> leftovers_of(const HandOverCall& call, const Pattern& pattern, const Assessment& assessment) {
  const auto size = size_of(call, pattern);
  if (!size) return tl::unexpected(size.error());
  return leftovers_record(pattern, assessment, pattern.house(), *size);
}

struct SheetRow {
  const char* name;
  Expected<Sheet> (*make)(const HandOverCall& call, const Pattern& pattern, const Assessment& assessment);
};
constexpr std::array sheets = {
    SheetRow{"block",
             [](const HandOverCall&, const Pattern& pattern, const Assessment& assessment)
                 -> Expected<Sheet> { return block_sheet(pattern, assessment, pattern.house()); }},
    SheetRow{"quantities",
             [](const HandOverCall&, const Pattern& pattern, const Assessment& assessment)
                 -> Expected<Sheet> { return per_size_sheet(pattern, assessment, pattern.house()); }},
    SheetRow{"evidence",
             [](const HandOverCall&, const Pattern& pattern, const Assessment& assessment)
                 -> Expected<Sheet> { return evidence_sheet(pattern, assessment, pattern.house()); }},
    SheetRow{"working",
             [](const HandOverCall& call, const Pattern& pattern, const Assessment&) -> Expected<Sheet> {
               return working_of(call, pattern, pattern.house());
             }},
    SheetRow{
        "queries",
        [](const HandOverCall&, const Pattern& pattern, const Assessment& assessment) -> Expected<Sheet> {
          const Review found = review(pattern, assessment);
          return query_sheet(pattern, found, record_of(pattern, found));
        }},
    SheetRow{
        "sign-off",
        [](const HandOverCall&, const Pattern& pattern, const Assessment& assessment) -> Expected<Sheet> {
          const Review found = review(pattern, assessment);
          return sign_off_note(pattern, found, record_of(pattern, found),
                               findings_closed(pattern, assessment, found));
        }},
    SheetRow{"comparison",
             [](const HandOverCall&, const Pattern& pattern, const Assessment& assessment)
                 -> Expected<Sheet> { return comparison_sheet(pattern, assessment, pattern.house()); }},
    SheetRow{"shopping-list", shopping_list_of},
    SheetRow{"leftovers", leftovers_of},
    SheetRow{"drafts", drafts_of},
    SheetRow{"block-words",
             [](const HandOverCall&, const Pattern& pattern, const Assessment& assessment)
                 -> Expected<Sheet> { return block_comparison_sheet(pattern, assessment); }},
};

std::string sheet_names() {
  std::string names;
  for (std::size_t i = 0; i < sheets.size(); ++i)
    names += std::string(i == 0 ? "" : i + 1 == sheets.size() ? " or " : ", ") + sheets[i].name;
  return names;
}

Expected<Sheet> sheet_of(const HandOverCall& call, const Pattern& pattern) {
  for (const SheetRow& row : sheets)
    if (call.sheet == row.name) return row.make(call, pattern, assess(pattern));
  return failure(ErrorKind::unknown_name, "the sheet “" + call.sheet + "”", sheet_names());
}

bool is_screen(const std::string& out) { return out.empty() || out == "-"; }

Expected<void> write_sheet(const HandOverCall& call, const Pattern& pattern, const HouseStyle& house) {
  const bool as_text = is_screen(call.out) || call.out.ends_with(".txt");
  // A yarn block as text is the bare block, ready to be set.
  if (call.sheet == "block" && as_text)
    return write_text(call.out, write_block(pattern, assess(pattern), house).text() + "\n");
  const auto sheet = sheet_of(call, pattern);
  if (!sheet) return tl::unexpected(sheet.error());
  if (is_screen(call.out)) return write_text(call.out, plain_text(*sheet));
  if (!call.out.ends_with(".pdf")) return save_sheet(*sheet, call.out, std::time(nullptr));
  // Drawing a PDF needs a painter's environment, which has no screen here.
  qputenv("QT_QPA_PLATFORM", "offscreen");
  int argc = 1;
  std::array<char, 11> name = {"skeinproof"};
  std::array<char*, 2> argv = {name.data(), nullptr};
  const QGuiApplication painting(argc, argv.data());
  return save_sheet(*sheet, call.out, std::time(nullptr));
}

// The file, with an earlier text before its drafts where one is named.
Expected<Pattern> read_files(const HandOverCall& call) {
  auto pattern = read_pattern_or_text(call.file);
  if (!pattern || call.earlier.empty()) return pattern;
  const auto earlier = read_pattern_or_text(call.earlier);
  if (!earlier) return earlier;
  if (earlier->draft() == nullptr || pattern->draft() == nullptr)
    return failure(ErrorKind::not_found, "a file without a submitted text", "two drafts to compare");
  Draft first = *earlier->draft();
  first.id = take_id<DraftId>(*pattern);
  first.name = call.earlier;
  pattern->drafts.edit(
      [&](std::vector<Draft>& drafts) { drafts.insert(drafts.end() - 1, std::move(first)); });
  return pattern;
}

int hand_over(const HandOverCall& call) {
  auto pattern = read_files(call);
  if (!pattern) {
    complain(pattern.error());
    return exit_unreadable;
  }
  const auto house = style_of(call, *pattern);
  // Allowance, rounding and length notes are the style's too, so the needs are worked out under it.
  if (house) pattern->house_styles.insert(pattern->house_styles.begin(), *house);
  const auto written = house ? write_sheet(call, *pattern, *house) : tl::unexpected(house.error());
  if (written) return exit_done;
  complain(written.error());
  return exit_unreadable;
}

}  // namespace

VerbAction add_hand_over(CLI::App& subcommand) {
  const auto call = std::make_shared<HandOverCall>();
  subcommand
      .add_option("FILE", call->file, "A project, its JSON, or a submitted text (.txt .md .html .odt .docx)")
      ->required();
  subcommand.add_option("--sheet", call->sheet, sheet_names())->capture_default_str();
  subcommand.add_option("--out", call->out,
                        "A name ending in .txt, .html, .csv, .xlsx, .odt or .pdf; the screen if left out");
  subcommand.add_option("--style", call->style, "A house style of the file, or a ready one, by name");
  subcommand.add_option("--role", call->role, "For a working: the role, such as MC");
  subcommand.add_option("--size", call->size,
                        "For a working, a shopping list, leftovers: the size; the chosen one if left out");
  subcommand.add_option("--candidate", call->candidate,
                        "For a shopping list: a candidate by name; the pattern's own yarn if left out");
  subcommand.add_option("--earlier", call->earlier, "For drafts: a submitted text that came before");
  subcommand.add_option("--before", call->before,
                        "For drafts: the earlier one, from 1; the last but one if left out");
  subcommand.add_option("--after", call->after, "For drafts: the later one, from 1; the last if left out");
  return [call] { return hand_over(*call); };
}

}  // namespace skeinproof
