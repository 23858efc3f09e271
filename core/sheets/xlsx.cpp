// SPDX-License-Identifier: GPL-3.0-or-later
#include <locale.h>
#include <xlsxwriter.h>

#include <algorithm>
#include <cerrno>
#include <cmath>
#include <cstdio>
#include <map>
#include <memory>
#include <set>

#include "core/base/text.h"
#include "core/sheets/printable.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

// The library prints figures by the locale of the thread, and a comma in them would spoil the file.
class PlainFigures {
 public:
  PlainFigures() : plain_(newlocale(LC_NUMERIC_MASK, "C", nullptr)), before_(uselocale(plain_)) {}
  ~PlainFigures() {
    uselocale(before_);
    if (plain_ != nullptr) freelocale(plain_);
  }
  PlainFigures(const PlainFigures&) = delete;
  PlainFigures& operator=(const PlainFigures&) = delete;

 private:
  locale_t plain_;
  locale_t before_;
};

constexpr std::size_t longest_text = 32767;  // code points a cell takes
constexpr std::size_t longest_name = 31;     // of a worksheet

std::string shortened(std::string_view text, std::size_t longest) {
  auto points = code_points(text);
  if (points.size() > longest) points.resize(longest);
  return to_utf8(points);
}

class Workbook {
 public:
  Workbook(const std::string& path, const Sheet& sheet, std::int64_t created)
      : book_(workbook_new(path.c_str())), sheet_(sheet) {
    std::string title = shortened(printable(sheet.title), 255);
    lxw_doc_properties properties = {};
    properties.title = title.data();
    properties.created = static_cast<time_t>(std::max<std::int64_t>(created, 1));  // 0 would be the clock
    workbook_set_properties(book_, &properties);
  }

  void add(const Table& table) {
    lxw_worksheet* page = add_page(table.title.empty() ? sheet_.subtitle : table.title);
    for (std::size_t c = 0; c < table.columns.size(); ++c)
      put_words(page, 0, c, table.columns[c].heading,
                format({true, true, table.columns[c].align, table.columns[c].opens_group, false, -1, 0}));
    std::vector<std::size_t> widths(table.columns.size(), 6);
    for (std::size_t r = 0; r < table.rows.size(); ++r)
      for (std::size_t c = 0; c < std::min(table.rows[r].cells.size(), table.columns.size()); ++c) {
        const Cell& cell = table.rows[r].cells[c];
        put(page, r + 1, c, cell,
            {table.columns[c].align, table.columns[c].opens_group, table.rows[r].opens_group});
        widths[c] =
            std::max(widths[c], code_points(shown(cell, sheet_.numbers)).size() + 2 * indent_of(cell));
      }
    for (std::size_t c = 0; c < widths.size(); ++c)
      worksheet_set_column(page, column(c), column(c),
                           static_cast<double>(std::min<std::size_t>(widths[c], 60)) + 2, nullptr);
    const auto words_first = std::find_if(table.columns.begin(), table.columns.end(),
                                          [](const Column& c) { return c.align == Align::right; });
    const auto kept = words_first == table.columns.end() ? 0 : words_first - table.columns.begin();
    worksheet_freeze_panes(page, 1, column(static_cast<std::size_t>(kept)));
    worksheet_repeat_rows(page, 0, 0);
    worksheet_set_landscape(page);
    worksheet_fit_to_pages(page, 1, 0);
  }

  void add(const Lines& lines) {
    lxw_worksheet* page = add_page(sheet_.subtitle);
    std::size_t row = 0;
    for (const std::string& text : texts(lines)) put_words(page, row++, 0, text, nullptr);
    worksheet_set_column(page, 0, 0, 120, nullptr);
  }

  // Lines among them, where they stand under headings.
  void add_notes(bool with_lines) {
    lxw_worksheet* page = add_page("Notes");
    std::size_t row = 0;
    const auto put_row = [&](const std::string& text, lxw_format* look = nullptr) {
      if (!text.empty()) put_words(page, row++, 0, text, look);
    };
    for (const std::string& text : {sheet_.title, sheet_.subtitle, sheet_.date}) put_row(text);
    for (const SheetPart& part : sheet_.parts) {
      if (const auto* paragraph = std::get_if<Paragraph>(&part)) put_row(paragraph->text);
      if (const auto* lines = std::get_if<Lines>(&part); lines != nullptr && with_lines)
        for (const std::string& text : texts(*lines)) put_row(text);
      if (const auto* heading = std::get_if<Heading>(&part))
        put_row(heading->number + "  " + heading->word + "  " + heading->text,
                format({true, false, Align::left, false, true, -1, 0}));
      if (const auto* choices = std::get_if<Choices>(&part))
        for (const TickBox& choice : choices->choices) put_row("☐ " + choice.text + (choice.room ? ":" : ""));
    }
    for (const std::string& note : sheet_.foot_notes) put_row(note);
    worksheet_set_column(page, 0, 0, 120, nullptr);
  }

  lxw_error close() { return workbook_close(book_); }  // frees the book whatever happens

 private:
  struct Look {
    bool strong = false, heading = false;
    Align align = Align::left;
    bool opens_group = false, begins_group = false;
    int decimals = -1;  // of a figure; -1 = words
    std::size_t indent = 0;
    auto operator<=>(const Look&) const = default;
  };

  static std::vector<std::string> texts(const Lines& lines) {
    std::vector<std::string> all;
    for (const auto& runs : lines.lines) {
      all.emplace_back();
      for (const MarkedRun& run : runs) all.back() += run.text;
    }
    return all;
  }
  static std::size_t indent_of(const Cell& cell) {
    return static_cast<std::size_t>(std::clamp(cell.indent, 0, 15));
  }
  static lxw_col_t column(std::size_t c) { return static_cast<lxw_col_t>(c); }

  lxw_format* format(const Look& look) {
    lxw_format*& made = formats_[look];
    if (made != nullptr) return made;
    made = workbook_add_format(book_);
    if (look.strong) format_set_bold(made);
    if (look.heading) format_set_bottom(made, LXW_BORDER_THIN);
    if (look.begins_group) format_set_top(made, LXW_BORDER_THIN);
    if (look.opens_group) format_set_left(made, LXW_BORDER_THIN);
    if (look.align == Align::right) format_set_align(made, LXW_ALIGN_RIGHT);
    if (look.indent > 0) format_set_indent(made, static_cast<uint8_t>(look.indent));
    if (look.decimals >= 0)
      format_set_num_format(made,
                            look.decimals == 0
                                ? "0"
                                : ("0." + std::string(static_cast<std::size_t>(look.decimals), '0')).c_str());
    return made;
  }

  // A name a worksheet may have, unlike those before it.
  std::string page_name(std::string_view wish) {
    std::string name;
    for (const char c : printable(wish))
      name += std::string_view("[]:*?/\\'").find(c) == std::string_view::npos ? c : ' ';
    name = shortened(trimmed(name), longest_name - 4);
    if (name.empty()) name = "Sheet";
    const std::string base = name;
    for (int n = 2; !names_.insert(lower_ascii(name)).second; ++n) name = base + " " + std::to_string(n);
    return name;
  }

  lxw_worksheet* add_page(std::string_view wish) {
    return workbook_add_worksheet(book_, page_name(wish).c_str());
  }

  static void put_words(lxw_worksheet* page, std::size_t row, std::size_t c, std::string_view text,
                        lxw_format* look) {
    worksheet_write_string(page, static_cast<lxw_row_t>(row), column(c),
                           shortened(printable(text, true), longest_text).c_str(), look);
  }

  struct Stand {
    Align align;
    bool opens_group, begins_group;
  };
  void put(lxw_worksheet* page, std::size_t row, std::size_t c, const Cell& cell, const Stand& stand) {
    const bool is_figure = cell.number && std::isfinite(*cell.number);
    lxw_format* look = format({cell.strong, false, stand.align, stand.opens_group, stand.begins_group,
                               is_figure ? std::clamp(cell.decimals, 0, 9) : -1, indent_of(cell)});
    if (is_figure)
      worksheet_write_number(page, static_cast<lxw_row_t>(row), column(c), *cell.number, look);
    else
      put_words(page, row, c, cell.number ? "–" : cell.text, look);
  }

  lxw_workbook* book_;
  const Sheet& sheet_;
  std::map<Look, lxw_format*> formats_;
  std::set<std::string> names_;
};

ErrorKind kind_of(int code) {
  switch (code) {
    case ENOENT:
    case ENOTDIR:
      return ErrorKind::not_found;
    case EACCES:
    case EPERM:
    case EROFS:
      return ErrorKind::read_only;
    case ENOSPC:
    case EDQUOT:
      return ErrorKind::no_space;
    default:
      return ErrorKind::system;
  }
}

}  // namespace

Expected<void> save_xlsx(const Sheet& sheet, const std::string& path, std::int64_t created) {
  const PlainFigures plain_figures;
  const std::string unfinished = path + ".part";
  const auto not_written = [&](int code) {
    return failure(kind_of(code), quoted(path), "a place that can be written to", {path, 0, 0});
  };
  // Tried first, because the library complains aloud.
  std::FILE* file = std::fopen(unfinished.c_str(), "wb");
  if (file == nullptr) return not_written(errno);
  std::fclose(file);
  Workbook book(unfinished, sheet, created);
  const bool with_headings = std::any_of(sheet.parts.begin(), sheet.parts.end(), [](const SheetPart& part) {
    return std::holds_alternative<Heading>(part);
  });
  for (const SheetPart& part : sheet.parts) {
    if (const auto* table = std::get_if<Table>(&part)) book.add(*table);
    if (const auto* lines = std::get_if<Lines>(&part); lines != nullptr && !with_headings) book.add(*lines);
  }
  book.add_notes(with_headings);
  errno = 0;
  const lxw_error outcome = book.close();
  if (outcome == LXW_NO_ERROR && std::rename(unfinished.c_str(), path.c_str()) == 0) return {};
  const int code = errno;
  std::remove(unfinished.c_str());
  return not_written(code);
}

}  // namespace skeinproof
