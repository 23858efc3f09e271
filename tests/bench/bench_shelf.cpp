// SPDX-License-Identifier: GPL-3.0-or-later
#include <benchmark/benchmark.h>
#include <sqlite3.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <random>
#include <sstream>

#include "core/file/shelf_csv.h"
#include "core/file/yarn_shelf.h"
#include "core/substitution/shelf_nearest.h"
#include "core/substitution/shelf_search.h"
#include "core/yarn/linear_density.h"

namespace {

using namespace skeinproof;
constexpr std::size_t shelf_size = 100'000;

std::string sample_text(const std::string& path) {
  std::ifstream file(std::string(SKEINPROOF_SOURCE_DIR) + "/" + path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

// The sample's yarns over and over, each a little longer or shorter, so that hardly two are alike.
const std::vector<ShelfYarn>& large_shelf() {
  static const std::vector<ShelfYarn> shelf = [] {
    const auto table = read_shelf_table(sample_text("sample-data/shelf/yarns.csv"), "yarns.csv").value();
    const std::vector<ShelfYarn> sample = read_shelf_rows(table, table.columns).entries();
    std::mt19937 random(3);
    std::vector<ShelfYarn> all;
    while (all.size() < shelf_size) {
      ShelfYarn entry = sample[all.size() % sample.size()];
      entry.id = {};
      entry.yarn.name += " " + std::to_string(all.size());
      if (auto& length = entry.yarn.put_up.length)
        *length = {length->value * (0.9 + 0.2 * static_cast<double>(random()) / 4294967296.0), ""};
      all.push_back(std::move(entry));
    }
    return all;
  }();
  return shelf;
}

ShelfQuestion question() {
  ShelfQuestion asked;
  asked.like = ShelfLike{large_shelf()[7].yarn, 1};
  asked.like->yarn.put_up.length = Entered<Metres>{metres(175), ""};
  asked.like->yarn.put_up.weight = Entered<Grams>{grams(50), ""};
  asked.doubled = asked.pairs = true;
  return asked;
}

// Singles, doubled and pairs of 100,000 yarns, ordered by likeness.
void search_the_shelf(benchmark::State& state) {
  const ShelfIndex index(large_shelf());
  const ShelfQuestion asked = question();
  for (auto _ : state) benchmark::DoNotOptimize(index.search(asked));
}
BENCHMARK(search_the_shelf)->Unit(benchmark::kMillisecond);

void search_the_shelf_with_words(benchmark::State& state) {
  const ShelfIndex index(large_shelf());
  ShelfQuestion asked = question();
  asked.words = "wool hand";
  for (auto _ : state) benchmark::DoNotOptimize(index.search(asked));
}
BENCHMARK(search_the_shelf_with_words)->Unit(benchmark::kMillisecond);

void make_the_shelf_ready(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(ShelfIndex(large_shelf()));
}
BENCHMARK(make_the_shelf_ready)->Unit(benchmark::kMillisecond);

void load_the_shelf(benchmark::State& state) {
  const auto path = std::filesystem::temp_directory_path() / "skeinproof-bench.shelf";
  std::filesystem::remove(path);
  if (!store_on_shelf(path, large_shelf())) std::abort();
  for (auto _ : state) benchmark::DoNotOptimize(load_shelf(path));
  std::filesystem::remove(path);
}
BENCHMARK(load_the_shelf)->Unit(benchmark::kMillisecond);

std::int64_t density_of(const ShelfYarn& entry) {
  const auto density = linear_density(entry.yarn.put_up);
  return density ? std::llround(in_tex(*density) * 1000) : 0;
}

// The peer: SQL over the same rows in memory with an index on density. Pairs need to know how far off the
// thousandth is before they can be asked for by range at all; it is told the true one, which favours it.
class Peer {
 public:
  explicit Peer(std::int64_t target) : target_(target) {
    sqlite3_open(":memory:", &database_);
    run("CREATE TABLE yarns (id INTEGER PRIMARY KEY, density INTEGER NOT NULL)");
    run("BEGIN");
    std::vector<NearYarn> near;
    for (std::size_t i = 0; i < large_shelf().size(); ++i)
      if (const std::int64_t density = density_of(large_shelf()[i]); density > 0) {
        run("INSERT INTO yarns VALUES (" + std::to_string(i) + ", " + std::to_string(density) + ")");
        near.push_back({density, 0, i});
      }
    run("COMMIT");
    run("CREATE INDEX by_density ON yarns (density)");
    width_ = std::llabs(nearest_pairs(near, {}, target_, shelf_nearest).back().off);
  }
  ~Peer() { sqlite3_close(database_); }
  Peer(const Peer&) = delete;
  Peer& operator=(const Peer&) = delete;

  int run(const std::string& sql) {
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v2(database_, sql.c_str(), -1, &statement, nullptr) != SQLITE_OK) std::abort();
    int rows = 0;
    while (sqlite3_step(statement) == SQLITE_ROW) ++rows;
    sqlite3_finalize(statement);
    return rows;
  }
  int singles(int strands) {
    return run("SELECT id FROM yarns ORDER BY abs(" + std::to_string(strands) + " * density - " +
               std::to_string(target_) + ") LIMIT 1000");
  }
  int pairs() {
    const std::string low = std::to_string(target_ - width_), high = std::to_string(target_ + width_);
    return run("SELECT a.id, b.id FROM yarns a JOIN yarns b ON b.density BETWEEN " + low +
               " - a.density AND " + high +
               " - a.density AND a.id < b.id ORDER BY abs(a.density + b.density - " +
               std::to_string(target_) + ") LIMIT 1000");
  }

 private:
  sqlite3* database_ = nullptr;
  std::int64_t target_, width_ = 0;
};

void search_with_sql_alone(benchmark::State& state) {
  Peer peer(std::llround(1e6 / 3.5));
  for (auto _ : state) {
    if (peer.singles(1) != 1000 || peer.singles(2) != 1000 || peer.pairs() != 1000)
      state.SkipWithError("not a thousand of each");
  }
}
BENCHMARK(search_with_sql_alone)->Unit(benchmark::kMillisecond);

}  // namespace
