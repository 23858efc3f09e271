// SPDX-License-Identifier: GPL-3.0-or-later
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>

#include "app/document/shelf_place.h"
#include "app/terminal/verbs.h"
#include "core/base/text.h"
#include "core/file/json.h"
#include "core/file/shelf_csv.h"
#include "core/file/submission_file.h"
#include "core/file/whole_file.h"
#include "core/file/yarn_shelf.h"
#include "core/sheets/write_sheet.h"
#include "core/substitution/shelf_search.h"

namespace skeinproof {
namespace {

using Json = nlohmann::ordered_json;

struct ShelfCall {
  std::string shelf, words, like, role, order, file, duplicates, failed;
  std::vector<std::string> columns;
  bool only_doubled = false, only_pairs = false, owned = false, descending = false, same = false;
  bool json = false, preview = false;
  std::size_t limit = 20;
};

int complained(const Error& error) {
  complain(error);
  return exit_unreadable;
}

std::filesystem::path path_of(const ShelfCall& call) {
  return call.shelf.empty() ? shelf_place().toStdString() : call.shelf;
}

// One of the words of an enumeration, with spaces or hyphens.
template <WordedEnum Word>
Expected<Word> word_in(const std::string& text, const char* thing) {
  std::string known;
  for (const auto& [value, word] : EnumWords<Word>::rows) {
    std::string hyphened(word);
    std::replace(hyphened.begin(), hyphened.end(), ' ', '-');
    if (text == word || text == hyphened) return value;
    known += (known.empty() ? "" : ", ") + hyphened;
  }
  return failure(ErrorKind::unknown_name, std::string(thing) + " " + skeinproof::quoted(text),
                 "one of: " + known);
}

Sheet table_of(std::span<const ShelfYarn> entries) {
  constexpr ShelfField shown_fields[] = {ShelfField::name,   ShelfField::shade, ShelfField::composition,
                                         ShelfField::put_up, ShelfField::owned, ShelfField::care,
                                         ShelfField::price,  ShelfField::place};
  Table table;
  for (ShelfField field : shown_fields)
    table.columns.push_back({std::string(shelf_field_row(field).heading), Align::left, false});
  for (const ShelfYarn& entry : entries) {
    Row& row = table.rows.emplace_back();
    for (ShelfField field : shown_fields) row.cells.push_back(words(field_text(entry, field)));
  }
  Sheet sheet;
  sheet.parts.emplace_back(std::move(table));
  return sheet;
}

int list(const ShelfCall& call) {
  const auto shelf = load_shelf(path_of(call));
  if (!shelf) return complained(shelf.error());
  std::vector<ShelfYarn> shown_entries;
  if (call.same)
    for (const ShelfDuplicate& duplicate : find_duplicates(*shelf)) {
      shown_entries.push_back((*shelf)[duplicate.on_shelf]);
      shown_entries.push_back((*shelf)[duplicate.entry]);
    }
  else
    for (const ShelfYarn& entry : *shelf)
      if (!call.owned || is_owned(entry)) shown_entries.push_back(entry);
  if (call.json)
    std::cout << to_json(shown_entries) << std::flush;
  else if (shown_entries.empty())
    std::cout << (shelf->empty() ? "The shelf is empty.\n" : "No such yarn is on the shelf.\n") << std::flush;
  else
    std::cout << plain_text(table_of(shown_entries)) << std::flush;
  return exit_done;
}

Expected<ShelfQuestion> question_of(const ShelfCall& call) {
  ShelfQuestion question;
  question.words = call.words;
  question.owned_only = call.owned;
  question.doubled = call.only_doubled;
  question.pairs = call.only_pairs;
  question.singles = !call.only_doubled && !call.only_pairs;
  if (call.like.empty()) {
    if (!question.singles || !call.role.empty())
      return failure(ErrorKind::not_found, "no yarn to be like", "--like with a project");
    return question;
  }
  const auto pattern = read_pattern(call.like);
  if (!pattern) return tl::unexpected(pattern.error());
  auto like = like_role(*pattern, call.role);
  if (!like) return tl::unexpected(like.error());
  question.like = std::move(*like);
  return question;
}

template <class Value>
void put(Json& json, const char* key, const std::optional<Value>& value) {
  if (value) json[key] = *value;
}

Json json_of(const ShelfIndex& index, const ShelfQuestion& question, const ShelfHit& hit) {
  Json json = {{"holding", word_of(hit.holding)}, {"name", hit_name(index.entries(), hit)}};
  json["yarns"] = {index.entries()[hit.first].id.value};
  if (hit.holding == ShelfHolding::pair) json["yarns"].push_back(index.entries()[hit.second].id.value);
  put(json, "tex", hit.tex);
  if (hit.thickness_pct) json["thickness_ratio"] = 1 + *hit.thickness_pct / 100;
  if (hit.weight_pct) json["weight_ratio"] = 1 + *hit.weight_pct / 100;
  put(json, "price_a_100m", hit.price_a_100m);
  if (hit.price_a_100m) json["currency"] = hit.currency;
  json["reason"] = index.reason(question, hit);
  return json;
}

int search(const ShelfCall& call) {
  auto question = question_of(call);
  if (!question) return complained(question.error());
  auto shelf = load_shelf(path_of(call));
  if (!shelf) return complained(shelf.error());
  const ShelfIndex index(std::move(*shelf));
  auto answer = index.search(*question);
  if (!answer) return complained(answer.error());
  std::string rule = shelf_order_words(*question);
  if (!call.order.empty()) {
    const auto by = word_in<ShelfOrder>(call.order, "the column");
    if (!by) return complained(by.error());
    index.order(answer->hits, *by, call.descending);
    if (*by != ShelfOrder::rule || call.descending)
      rule = "By " + std::string(word_of(*by)) + (call.descending ? ", the other way round." : ".");
  }
  const std::size_t found = answer->hits.size();
  if (call.limit > 0 && found > call.limit) answer->hits.resize(call.limit);
  if (call.json) {
    Json json = {{"order", rule}, {"found", found}, {"without_put_up", answer->without_put_up}};
    json["hits"] = Json::array();
    for (const ShelfHit& hit : answer->hits) json["hits"].push_back(json_of(index, *question, hit));
    std::cout << json.dump(2, ' ', false, Json::error_handler_t::replace) << std::endl;
    return exit_done;
  }
  std::cout << rule << "\n";
  for (const ShelfHit& hit : answer->hits)
    std::cout << "\n" << hit_name(index.entries(), hit) << "\n  " << index.reason(*question, hit) << "\n";
  if (found == 0) std::cout << "\nNothing on the shelf answers to that.\n";
  if (found > answer->hits.size())
    std::cout << "\n" << found - answer->hits.size() << " more; --limit 0 shows all.\n";
  if (answer->without_put_up > 0)
    std::cout << "\n"
              << answer->without_put_up
              << " could not be compared: their length or weight of a skein is not known.\n";
  std::cout << std::flush;
  return exit_done;
}

// "Heading=field": what a column is taken for instead of the guess.
Expected<void> match_column(ShelfTable& table, const std::string& words) {
  const std::size_t sign = words.rfind('=');
  const std::string heading = words.substr(0, sign);
  const std::string field = sign == std::string::npos ? "" : folded_name(words.substr(sign + 1));
  for (ShelfColumn& column : table.columns) {
    if (folded_name(column.heading) != folded_name(heading)) continue;
    for (const ShelfFieldRow& row : shelf_field_rows())
      if (field == lower_ascii(row.heading)) {
        column.field = row.field;
        column.known = true;
        return {};
      }
    std::string known;
    for (const ShelfFieldRow& row : shelf_field_rows())
      known += (known.empty() ? "" : ", ") + std::string(row.heading);
    return failure(ErrorKind::unknown_name, "the field " + skeinproof::quoted(field), "one of: " + known);
  }
  return failure(ErrorKind::unknown_name, "the column " + skeinproof::quoted(heading),
                 "a heading of the file");
}

Expected<ShelfTable> table_of(const ShelfCall& call) {
  const auto bytes = read_whole_file(call.file);
  if (!bytes) return tl::unexpected(bytes.error());
  auto table = read_shelf_table(*bytes, call.file);
  if (!table) return table;
  for (const std::string& words : call.columns)
    if (auto matched = match_column(*table, words); !matched) {
      matched.error().place.file = call.file;
      return tl::unexpected(matched.error());
    }
  return table;
}

void print_columns(const ShelfTable& table) {
  for (const std::string& note : table.notes) std::cout << note << "\n";
  for (const ShelfColumn& column : table.columns) {
    std::cout << "  " << skeinproof::quoted(column.heading) << " is "
              << lower_ascii(shelf_field_row(column.field).heading);
    if (!column.assumed.empty()) std::cout << ", in " << column.assumed;
    std::cout << "\n";
  }
}

std::string yarns(std::size_t count) { return std::to_string(count) + (count == 1 ? " yarn" : " yarns"); }

void print_intake(const ShelfCall& call, const ShelfImport& import, const std::vector<ShelfYarn>& shelf,
                  const ShelfIntake& intake, DuplicateChoice choice) {
  const char* done = call.preview ? "Would be put on the shelf: " : "Put on the shelf: ";
  std::cout << done << yarns(intake.entries.size()) << ".\n";
  if (!intake.duplicates.empty()) {
    std::cout << yarns(intake.duplicates.size()) << " there already, shade and dye lot and all: "
              << (choice == DuplicateChoice::leave_out ? "left out (--duplicates add or replace)"
                  : choice == DuplicateChoice::add     ? "put there once more"
                                                       : "replaced")
              << ".\n";
    for (const ShelfDuplicate& duplicate : intake.duplicates)
      std::cout << "  line " << import.taken[duplicate.entry].line << ": "
                << skeinproof::quoted(shelf[duplicate.on_shelf].yarn.name) << "\n";
  }
  if (intake.twice > 0)
    std::cout << yarns(intake.twice) << " in the file twice: the later ones left out (--duplicates add).\n";
  if (intake.other_lots > 0)
    std::cout << yarns(intake.other_lots) << " known already in another shade or dye lot: taken.\n";
  if (!import.failed.empty())
    std::cout << import.failed.size() << (import.failed.size() == 1 ? " row" : " rows") << " not taken.\n";
}

int import(const ShelfCall& call) {
  const auto table = table_of(call);
  if (!table) return complained(table.error());
  const auto choice = word_in<DuplicateChoice>(call.duplicates, "the choice");
  if (!choice) return complained(choice.error());
  const ShelfImport read = read_shelf_rows(*table, table->columns);
  const auto shelf = load_shelf(path_of(call));
  if (!shelf) return complained(shelf.error());
  const ShelfIntake intake = plan_intake(*shelf, read.entries(), *choice);
  if (!call.preview && !intake.entries.empty())
    if (const auto stored = store_on_shelf(path_of(call), intake.entries); !stored)
      return complained(stored.error());
  if (!call.failed.empty())
    if (const auto written = write_text(call.failed, failed_rows_csv(*table, read)); !written)
      return complained(written.error());
  print_columns(*table);
  print_intake(call, read, *shelf, intake, *choice);
  std::cout << std::flush;
  bool doubts = !read.failed.empty();
  for (const ShelfImport::Failed& failed : read.failed) complain(failed.error);
  for (const ShelfImport::Taken& taken : read.taken)
    for (const Error& doubt : taken.doubts) {
      complain(doubt);
      doubts = true;
    }
  return doubts ? exit_stop : exit_done;
}

int export_csv(const ShelfCall& call) {
  const auto shelf = load_shelf(path_of(call));
  if (!shelf) return complained(shelf.error());
  if (const auto written = write_text(call.file, shelf_csv(*shelf)); !written)
    return complained(written.error());
  return exit_done;
}

void add_search_options(CLI::App& verb, ShelfCall& call) {
  verb.add_option("--words", call.words, "Words that must all be found: \"mohair blue\"");
  verb.add_option("--like", call.like, "A project (or its JSON) whose yarn the hits are to be like");
  verb.add_option("--role", call.role, "The role of that yarn: MC; the first one unless named");
  verb.add_flag("--doubled", call.only_doubled, "Two strands of one yarn");
  verb.add_flag("--pairs", call.only_pairs, "Two yarns held together");
  verb.add_flag("--owned", call.owned, "Only yarns that lie at home");
  std::string known;
  for (const auto& [order, word] : EnumWords<ShelfOrder>::rows)
    known += (known.empty() ? "" : ", ") + std::string(word);
  verb.add_option("--sort", call.order, "By " + known);
  verb.add_flag("--descending", call.descending, "The other way round; what is not known stays last");
  verb.add_option("--limit", call.limit, "So many hits at most; 0 = all")->capture_default_str();
  verb.add_flag("--json", call.json, "For other programs");
}

void add_import_options(CLI::App& verb, ShelfCall& call) {
  verb.add_option("FILE", call.file, "A table saved as CSV, headings in its first row")->required();
  verb.add_flag("--preview", call.preview, "Say what would be taken, and change nothing");
  verb.add_option("--column", call.columns, "What a column is instead of the guess: \"Karma=Dye lot\"");
  verb.add_option("--duplicates", call.duplicates,
                  "Yarns that are there already, shade and dye lot and all: leave-out, add or replace")
      ->default_str("leave-out")
      ->default_val("leave-out");
  verb.add_option("--failed", call.failed, "Write the rows that were not taken to this CSV file");
}

}  // namespace

VerbAction add_shelf(CLI::App& subcommand) {
  const auto call = std::make_shared<ShelfCall>();
  const auto add = [&](const char* name, const char* purpose) {
    CLI::App* verb = subcommand.add_subcommand(name, purpose);
    verb->add_option("--shelf", call->shelf, "Another shelf than the person's own");
    return verb;
  };
  subcommand.require_subcommand(1);
  const CLI::App* listing = [&] {
    CLI::App* verb = add("list", "The yarns on the shelf");
    verb->add_flag("--owned", call->owned, "Only those that lie at home");
    verb->add_flag("--duplicates", call->same, "Only those that may be one and the same");
    verb->add_flag("--json", call->json, "For other programs: m, g, unrounded");
    return verb;
  }();
  CLI::App* searching = add("search", "Yarns by words and by likeness, each with its reason");
  add_search_options(*searching, *call);
  CLI::App* importing = add("import", "Put the yarns of a CSV file on the shelf");
  add_import_options(*importing, *call);
  CLI::App* exporting = add("export", "Write the shelf as CSV");
  exporting->add_option("FILE", call->file, "Where to; - for the screen")->required();
  return [=] {
    if (listing->parsed()) return list(*call);
    if (searching->parsed()) return search(*call);
    if (importing->parsed()) return import(*call);
    return exporting->parsed() ? export_csv(*call) : exit_unreadable;
  };
}

}  // namespace skeinproof
