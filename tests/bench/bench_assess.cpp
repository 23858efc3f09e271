// SPDX-License-Identifier: GPL-3.0-or-later
#include <benchmark/benchmark.h>
#include <sqlite3.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "core/file/json.h"
#include "core/file/project_file.h"
#include "core/need/assessment.h"
#include "core/pattern/edits.h"

namespace {

using namespace skeinproof;

Pattern sample(const std::string& name) {
  std::ifstream file(std::string(SKEINPROOF_SOURCE_DIR) + "/sample-data/projects/" + name + ".json");
  std::ostringstream text;
  text << file.rdbuf();
  return pattern_from_json(text.str()).value();
}

// `sizes` sizes, `roles` colours, `pieces` pieces with a section of every kind, and a chart of `rounds`
// rounds.
Pattern large_pattern(std::size_t sizes, std::size_t roles, std::size_t pieces, std::size_t rounds) {
  Pattern pattern = sample("quillmarsh-yoke");
  while (pattern.sizes.size() < sizes) {
    insert_size(pattern, pattern.sizes.size(), std::to_string(pattern.sizes.size() + 1));
    const std::size_t last = pattern.sizes.size() - 1;
    for (Piece& piece : pattern.pieces) {
      for (Section& section : piece.sections) {
        for (ShapeRun& run : section.runs)
          for (auto* list : {&run.from, &run.to, &run.rows})
            if (!list->empty()) list->set(last, list->at(last - 1));
        if (!section.repeats.empty()) section.repeats.set(last, section.repeats.at(last - 1));
      }
      for (Edge& edge : piece.edges) edge.amount.set(last, edge.amount.at(last - 1));
    }
  }
  while (pattern.roles.size() < roles) add_role(pattern, "CC" + std::to_string(pattern.roles.size()));
  constexpr std::string_view symbols = "MABCDEFGHIJKLNOPQRST";
  Chart& chart = pattern.charts.front();
  chart.colours.clear();
  for (std::size_t r = 0; r < roles; ++r)
    chart.colours.push_back({std::string(1, symbols[r]), pattern.roles[r].id});
  std::vector<std::string> squares(rounds, std::string(24, 'M'));
  for (std::size_t i = 0; i < rounds; ++i)
    for (std::size_t s = i % 3; s < 24; s += 3) squares[i][s] = symbols[(i / 4) % roles];
  chart.rounds = squares;
  const std::vector<Piece> kinds = pattern.pieces;
  while (pattern.pieces.size() < pieces) {
    Piece piece = kinds[pattern.pieces.size() % kinds.size()];
    piece.id = take_id<PieceId>(pattern);
    for (Section& section : piece.sections) {
      section.id = take_id<SectionId>(pattern);
      if (section.role) section.role = pattern.roles[pattern.pieces.size() % roles].id;
    }
    for (Edge& edge : piece.edges) edge.id = take_id<EdgeId>(pattern);
    pattern.pieces.push_back(std::move(piece));
  }
  return pattern;
}

void assess_quillmarsh(benchmark::State& state) {
  const Pattern pattern = sample("quillmarsh-yoke");
  for (auto _ : state) benchmark::DoNotOptimize(assess(pattern));
}
BENCHMARK(assess_quillmarsh)->Unit(benchmark::kMillisecond);

// 30 sizes x 12 roles x 60 pieces x a 120-round chart, and half of each input in turn to see how it grows.
void assess_large(benchmark::State& state) {
  const auto size = [&](int i) { return static_cast<std::size_t>(state.range(i)); };
  const Pattern pattern = large_pattern(size(0), size(1), size(2), size(3));
  if (!check_invariants(pattern)) state.SkipWithError("broken pattern");
  for (auto _ : state) benchmark::DoNotOptimize(assess(pattern));
}
BENCHMARK(assess_large)
    ->Args({30, 12, 60, 120})
    ->Args({15, 12, 60, 120})
    ->Args({30, 6, 60, 120})
    ->Args({30, 12, 30, 120})
    ->Args({30, 12, 60, 60})
    ->Unit(benchmark::kMillisecond);

void explain_one_figure(benchmark::State& state) {
  const Pattern pattern = sample("quillmarsh-yoke");
  for (auto _ : state) benchmark::DoNotOptimize(explain(pattern, pattern.roles[0].id, 4, Layer::planned));
}
BENCHMARK(explain_one_figure)->Unit(benchmark::kMicrosecond);

void copy_and_compare_the_document(benchmark::State& state) {
  const Pattern pattern = sample("quillmarsh-yoke");
  for (auto _ : state) {
    Pattern copy = pattern;
    copy.roles[0].swatch = Entered<Metres>{metres(21), ""};
    benchmark::DoNotOptimize(copy == pattern);
  }
}
BENCHMARK(copy_and_compare_the_document)->Unit(benchmark::kMicrosecond);

std::filesystem::path saved_sample() {
  const auto path = std::filesystem::temp_directory_path() / "skeinproof-bench.skeinproof";
  SaveOptions options;
  options.replace_existing = true;
  if (!save_project(path, sample("quillmarsh-yoke"), options)) std::abort();
  return path;
}

void open_a_project(benchmark::State& state) {
  const auto path = saved_sample();
  for (auto _ : state) benchmark::DoNotOptimize(open_project(path));
  std::filesystem::remove(path);
}
BENCHMARK(open_a_project)->Unit(benchmark::kMillisecond);

// The peer of opening: SQLite alone reading every row of every table of the same file.
void read_every_row_with_sqlite_alone(benchmark::State& state) {
  const auto path = saved_sample();
  for (auto _ : state) {
    sqlite3* database = nullptr;
    sqlite3_open_v2(path.c_str(), &database, SQLITE_OPEN_READONLY, nullptr);
    sqlite3_stmt* names = nullptr;
    sqlite3_prepare_v2(database, "SELECT name FROM sqlite_master WHERE type = 'table'", -1, &names, nullptr);
    while (sqlite3_step(names) == SQLITE_ROW) {
      const std::string sql = "SELECT * FROM \"" +
                              std::string(reinterpret_cast<const char*>(sqlite3_column_text(names, 0))) +
                              "\"";
      sqlite3_stmt* rows = nullptr;
      sqlite3_prepare_v2(database, sql.c_str(), -1, &rows, nullptr);
      while (sqlite3_step(rows) == SQLITE_ROW) benchmark::DoNotOptimize(sqlite3_column_text(rows, 0));
      sqlite3_finalize(rows);
    }
    sqlite3_finalize(names);
    sqlite3_close(database);
  }
  std::filesystem::remove(path);
}
BENCHMARK(read_every_row_with_sqlite_alone)->Unit(benchmark::kMillisecond);

void read_json(benchmark::State& state) {
  const std::string text = to_json(sample("quillmarsh-yoke"));
  for (auto _ : state) benchmark::DoNotOptimize(pattern_from_json(text));
  state.SetBytesProcessed(static_cast<std::int64_t>(state.iterations() * text.size()));
}
BENCHMARK(read_json)->Unit(benchmark::kMillisecond);

}  // namespace
