// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <charconv>
#include <fstream>
#include <iostream>
#include <optional>
#include <set>
#include <sstream>

#include "core/reference/generator/layout.h"
#include "core/reference/generator/table.h"

// Turns the published tables into C++ rows: generate_reference FOLDER OUTPUT. Ends with 1 and file:line on
// the first fault of a table.
namespace skeinproof::generator {
namespace {

class Writer {
 public:
  Writer(const Table& table, const std::set<std::string>& source_keys)
      : table_(table), source_keys_(source_keys) {}

  std::string rows(const Layout& layout) {
    std::ostringstream out;
    out << "constexpr " << layout.row_type << " " << layout.array << "[] = {\n";
    for (const Row& row : table_.rows) {
      row_ = &row;
      out << "    " << aggregate(layout.members) << ",\n";
    }
    out << "};\n\n";
    return out.str();
  }

 private:
  const std::string& cell(std::string_view column) const { return row_->cells[table_.column(column)]; }
  [[noreturn]] void bad(std::string_view column, const std::string& expected) const {
    fault(table_.file, row_->line,
          "found “" + cell(column) + "” in column “" + std::string(column) + "”, expected " + expected);
  }

  std::string aggregate(const std::vector<Member>& members) {
    check_band(members);
    std::string out = "{";
    for (const Member& member : members) {
      if (out.size() > 1) out += ", ";
      out += "." + std::string(member.name) + " = " +
             (member.inner.empty() ? value(member) : aggregate(member.inner));
    }
    return out + "}";
  }

  std::string value(const Member& member) const {
    const auto column = member.column;
    switch (member.kind) {
      case Kind::text:
        return literal(cell(column));
      case Kind::number:
        return number(column);
      case Kind::optional_number:
        return cell(column).empty() ? "std::nullopt" : number(column);
      case Kind::number_if_any:
        return as_number(cell(column)) ? cell(column) : "std::nullopt";
      case Kind::yes_no:
        return yes_no(column);
      case Kind::direct:
        return direct(column);
      case Kind::expression:
        return expression(column);
      case Kind::confidence:
        return confidence(column);
      case Kind::source:
        return source(column);
      case Kind::texts:
        return texts(column);
    }
    return {};
  }

  static std::optional<double> as_number(const std::string& text) {
    double result = 0;
    const char* end = text.data() + text.size();
    const auto [at, code] = std::from_chars(text.data(), end, result);
    if (text.empty() || code != std::errc() || at != end) return std::nullopt;
    return result;
  }

  std::string number(std::string_view column) const {
    if (!as_number(cell(column))) bad(column, "a number");
    return cell(column);
  }

  std::string yes_no(std::string_view column) const {
    if (cell(column) == "yes") return "true";
    if (cell(column) == "no") return "false";
    bad(column, "yes or no");
  }

  std::string direct(std::string_view column) const {
    if (cell(column).rfind("direct", 0) == 0) return "true";
    if (cell(column).rfind("indirect", 0) == 0) return "false";
    bad(column, "direct or indirect");
  }

  // The exact constant as the table writes it; whole numbers get a point so that division stays exact.
  std::string expression(std::string_view column) const {
    const std::string& text = cell(column);
    std::string out;
    std::string figure;
    const auto finish = [&] {
      if (!figure.empty() && figure.find_first_of(".e") == std::string::npos) figure += ".0";
      out += figure;
      figure.clear();
    };
    for (char c : text) {
      if ((c >= '0' && c <= '9') || c == '.' || c == 'e') {
        figure += c;
      } else if (c == '*' || c == '/' || c == '(' || c == ')') {
        finish();
        out += c;
      } else {
        bad(column, "a product of figures");
      }
    }
    finish();
    if (out.empty()) bad(column, "a product of figures");
    return out;
  }

  std::string confidence(std::string_view column) const {
    const std::string& word = cell(column);
    if (word.empty()) return "Confidence::unstated";
    if (word == "verified" || word == "memory") return "Confidence::" + word;
    if (word == "common practice") return "Confidence::common_practice";
    bad(column, "verified, memory or common practice");
  }

  std::string source(std::string_view column) const {
    std::istringstream parts(cell(column));
    for (std::string part; std::getline(parts, part, ';');) {
      const auto from = part.find_first_not_of(' ');
      const std::string key =
          from == std::string::npos ? "" : part.substr(from, part.find_first_of(" (,:", from) - from);
      if (source_keys_.count(key) == 0) bad(column, "keys of sources.csv");
    }
    return literal(cell(column));
  }

  std::string texts(std::string_view prefix) const {
    std::string out = "{";
    for (int i = 1; i <= 3; ++i)
      out += literal(cell(std::string(prefix) + std::to_string(i))) + (i < 3 ? ", " : "}");
    return out;
  }

  // A figure must lie in its own band.
  void check_band(const std::vector<Member>& members) const {
    std::optional<double> value, low, high;
    std::string_view column;
    for (const Member& member : members) {
      if (member.kind != Kind::optional_number) continue;
      const auto number = as_number(cell(member.column));
      if (member.name == "value") value = number;
      if (member.name == "low") low = number;
      if (member.name == "high") high = number;
      if (member.name == "value" || member.name == "low") column = member.column;
    }
    if ((low && high && *low > *high) || (value && low && *value < *low) || (value && high && *value > *high))
      bad(column, "low, value and high in this order");
  }

  static std::string literal(const std::string& text) {
    std::string out = "\"";
    for (char c : text) {
      if (c == '"' || c == '\\') out += '\\';
      if (c == '\n') {
        out += "\\n";
        continue;
      }
      out += c;
    }
    return out + "\"";
  }

  const Table& table_;
  const std::set<std::string>& source_keys_;
  const Row* row_ = nullptr;
};

std::set<std::string> keys_of(const Table& table, std::string_view column) {
  std::set<std::string> keys;
  for (const Row& row : table.rows) {
    const std::string& key = row.cells[table.column(column)];
    if (key.empty() || !keys.insert(key).second)
      fault(table.file, row.line, "“" + key + "” is empty or stands twice");
  }
  return keys;
}

std::string generate(const std::string& folder) {
  const auto source_keys = keys_of(read_table(folder, "sources.csv"), "source_key");
  std::string out = "// Made from resources/reference; edit the tables there.\n";
  for (const Layout& layout : layouts()) {
    const Table table = read_table(folder, std::string(layout.file));
    if (!layout.key.empty()) keys_of(table, layout.key);
    out += Writer(table, source_keys).rows(layout);
  }
  return out;
}

}  // namespace
}  // namespace skeinproof::generator

int main(int argc, char** argv) {
  if (argc != 3) {
    std::cerr << "usage: generate_reference FOLDER OUTPUT\n";
    return 2;
  }
  try {
    const std::string rows = skeinproof::generator::generate(argv[1]);
    std::ofstream output(argv[2], std::ios::binary);
    output << rows;
    if (!output.flush()) {
      std::cerr << argv[2] << ": cannot be written\n";
      return 1;
    }
  } catch (const skeinproof::generator::TableFault& fault) {
    std::cerr << fault.what() << "\n";
    return 1;
  }
  return 0;
}
