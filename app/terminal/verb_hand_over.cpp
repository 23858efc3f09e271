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
#include "core/sheets/evidence_sheet.h"
#include "core/sheets/make_sheets.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

struct HandOverCall {
  std::string file, sheet = "block", out, style, role, size;
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

Expected<Sheet> sheet_of(const HandOverCall& call, const Pattern& pattern, const HouseStyle& house) {
  const Assessment assessment = assess(pattern);
  if (call.sheet == "block") return block_sheet(pattern, assessment, house);
  if (call.sheet == "quantities") return per_size_sheet(pattern, assessment, house);
  if (call.sheet == "evidence") return evidence_sheet(pattern, assessment, house);
  if (call.sheet == "working") return working_of(call, pattern, house);
  return failure(ErrorKind::unknown_name, "the sheet “" + call.sheet + "”",
                 "block, quantities, evidence or working");
}

bool is_screen(const std::string& out) { return out.empty() || out == "-"; }

Expected<void> write_sheet(const HandOverCall& call, const Pattern& pattern, const HouseStyle& house) {
  const bool as_text = is_screen(call.out) || call.out.ends_with(".txt");
  // A yarn block as text is the bare block, ready to be set.
  if (call.sheet == "block" && as_text)
    return write_text(call.out, write_block(pattern, assess(pattern), house).text() + "\n");
  const auto sheet = sheet_of(call, pattern, house);
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

int hand_over(const HandOverCall& call) {
  auto pattern = read_pattern(call.file);
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
  subcommand.add_option("FILE", call->file, "A project or its JSON")->required();
  subcommand.add_option("--sheet", call->sheet, "block, quantities, evidence or working")
      ->capture_default_str();
  subcommand.add_option("--out", call->out,
                        "A name ending in .txt, .html, .csv, .xlsx or .pdf; the screen if left out");
  subcommand.add_option("--style", call->style, "A house style of the file, or a ready one, by name");
  subcommand.add_option("--role", call->role, "For a working: the role, such as MC");
  subcommand.add_option("--size", call->size, "For a working: the size; the chosen one if left out");
  return [call] { return hand_over(*call); };
}

}  // namespace skeinproof
