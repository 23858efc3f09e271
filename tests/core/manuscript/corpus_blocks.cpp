// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/manuscript/corpus_blocks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <functional>
#include <sstream>
#include <stdexcept>

#include "core/base/text.h"
#include "tests/support/samples.h"

namespace skeinproof::testing {
namespace {

constexpr char corpus_folder[] = "tests/core/manuscript/corpus/";

std::string unescaped(std::string_view written) {
  std::string words;
  for (std::size_t i = 0; i < written.size(); ++i) {
    if (written[i] != '\\' || i + 1 == written.size()) {
      words += written[i];
      continue;
    }
    const char next = written[++i];
    words += next == 'n' ? '\n' : next == 't' ? '\t' : next;
  }
  return words;
}

std::vector<std::optional<double>> values_from(const std::string& written) {
  std::vector<std::optional<double>> values;
  std::istringstream words(written);
  for (std::string word; words >> word;)
    values.push_back(word == "-" ? std::nullopt : std::optional(std::stod(word)));
  return values;
}

ExpectedStatement expected_from(const std::string& line) {
  const std::vector<std::string> fields = split(line, '\t');
  if (fields.size() != 5) throw std::runtime_error("not five fields: " + line);
  const auto kind = from_word<StatementKind>(fields[0]);
  const auto unit = from_word<PrintedUnit>(fields[2]);
  if (!kind || !unit) throw std::runtime_error("no such kind or unit: " + line);
  ExpectedStatement expected;
  expected.kind = *kind;
  const std::size_t semicolon = fields[1].find(';');
  expected.subject = fields[1].substr(0, semicolon);
  if (semicolon != std::string::npos) expected.qualifier = fields[1].substr(semicolon + 1);
  if (*unit != PrintedUnit::none) expected.unit = *unit;
  expected.values = values_from(fields[3]);
  expected.words = unescaped(fields[4]);
  if (expected.words.empty()) throw std::runtime_error("no words: " + line);
  return expected;
}

BlockState state_from(const std::string& line) {
  if (line == "# clean") return BlockState::clean;
  if (line == "# chatter") return BlockState::chatter;
  if (line.starts_with("# slips: ")) return BlockState::slips;
  throw std::runtime_error("not the state of a block: " + line);
}

// "ribbing" for "rib", "button" for "buttons"; short words are labels and must be the same.
bool is_word_of(const std::string& read, const std::string& expected) {
  if (read == expected || read + "s" == expected) return true;
  return expected.size() >= 3 && std::isalpha(static_cast<unsigned char>(expected.back())) &&
         read.starts_with(expected);
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  for (const std::string& word : split(tidy_spaces(lower_ascii(text)), ' '))
    if (!word.empty()) words.push_back(word);
  return words;
}

bool names(const std::string& read_subject, const std::string& expected_subject) {
  const std::vector<std::string> read = words_of(read_subject), expected = words_of(expected_subject);
  return std::all_of(expected.begin(), expected.end(), [&](const std::string& word) {
    return std::any_of(read.begin(), read.end(),
                       [&](const std::string& other) { return is_word_of(other, word); });
  });
}

bool same_values(const Statement& read, const ExpectedStatement& expected) {
  if (expected.values.empty()) return true;
  const bool first_only = expected.kind == StatementKind::gauge_over;
  const std::size_t count = expected.values.size();
  if (first_only ? read.values.size() < count : read.values.size() != count) return false;
  for (std::size_t i = 0; i < count; ++i) {
    const std::optional<double>&a = read.values[i].number, &b = expected.values[i];
    if (a.has_value() != b.has_value() || (a && std::abs(*a - *b) > 1e-4)) return false;
  }
  return !expected.unit || read.unit == *expected.unit;
}

}  // namespace

std::vector<CorpusBlock> corpus_half(const std::string& half) {
  const std::string folder = corpus_folder + half + "/";
  std::vector<CorpusBlock> blocks;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(SKEINPROOF_SOURCE_DIR) + "/" + folder)) {
    if (entry.path().extension() != ".txt") continue;
    CorpusBlock block;
    block.name = entry.path().stem().string();
    block.text = project_text(folder + block.name + ".txt");
    std::istringstream lines(project_text(folder + block.name + ".expected"));
    std::string line;
    std::getline(lines, line);
    block.state = state_from(line);
    while (std::getline(lines, line)) block.expected.push_back(expected_from(line));
    blocks.push_back(std::move(block));
  }
  std::sort(blocks.begin(), blocks.end(),
            [](const CorpusBlock& a, const CorpusBlock& b) { return a.name < b.name; });
  return blocks;
}

bool is_read_as(const Statement& read, const ExpectedStatement& expected, const std::string& text) {
  if (read.kind != expected.kind || !same_values(read, expected)) return false;
  if (!expected.subject.empty() && !names(read.subject, expected.subject)) return false;
  if (!expected.qualifier.empty() && read.qualifier != expected.qualifier) return false;
  return words_at(text, read.span).find(expected.words) != std::string_view::npos;
}

std::vector<std::optional<std::size_t>> answered(const CorpusBlock& block, const Reading& reading) {
  const std::size_t count = block.expected.size();
  std::vector<std::vector<std::size_t>> candidates(count);
  for (std::size_t i = 0; i < count; ++i)
    for (std::size_t j = 0; j < reading.statements.size(); ++j)
      if (is_read_as(reading.statements[j], block.expected[i], block.text)) candidates[i].push_back(j);

  // Matching by augmenting paths: an earlier one moves on where it has another answer.
  std::vector<std::optional<std::size_t>> taken_by(reading.statements.size());
  std::vector<bool> tried;
  const std::function<bool(std::size_t)> find_answer = [&](std::size_t i) {
    for (const std::size_t j : candidates[i]) {
      if (tried[j]) continue;
      tried[j] = true;
      if (taken_by[j] && !find_answer(*taken_by[j])) continue;
      taken_by[j] = i;
      return true;
    }
    return false;
  };
  for (std::size_t i = 0; i < count; ++i) {
    tried.assign(reading.statements.size(), false);
    find_answer(i);
  }
  std::vector<std::optional<std::size_t>> answers(count);
  for (std::size_t j = 0; j < taken_by.size(); ++j)
    if (taken_by[j]) answers[*taken_by[j]] = j;
  return answers;
}

std::string shown(const ExpectedStatement& expected) {
  std::string values;
  for (const std::optional<double>& value : expected.values)
    values += value ? fmt::format(" {:g}", *value) : " -";
  return fmt::format("{} [{}]{} {} {}", word_of(expected.kind), expected.subject, values,
                     expected.unit ? word_of(*expected.unit) : "", skeinproof::quoted(expected.words));
}

}  // namespace skeinproof::testing
