// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

namespace skeinproof {

// A small system of figures: statements that may be wrong, each of which holds one quantity within its
// rounding, and relations that always hold. Reasoned over intervals: a contradiction that is found is one;
// one that runs round a circle of relations may stay unseen.
class IntervalSystem {
 public:
  struct Interval {
    double low = 0;
    double high = std::numeric_limits<double>::infinity();
    bool empty() const { return low > high; }
  };

  std::size_t add_quantity();  // at least 0
  // Returns the number of the statement. At most `most_statements`; more are not taken and `full` says so.
  std::size_t state(std::size_t quantity, Interval within);
  // sum of times x quantity lies within.
  struct Term {
    double times = 1;
    std::size_t quantity = 0;
  };
  void sum(std::vector<Term> terms, Interval within);
  // one = a x b, give or take `slack` on a.
  void product(std::size_t one, std::size_t a, std::size_t b, double slack = 0);

  std::size_t statements() const { return stated_.size(); }
  bool full() const { return full_; }
  // Whether the statements of a set (bit = number) can all hold; `left` then is what remains of each
  // quantity.
  bool consistent(std::uint64_t set, std::vector<Interval>* left = nullptr) const;

  static constexpr std::size_t most_statements = 64;

 private:
  struct Stated {
    std::size_t quantity;
    Interval within;
  };
  struct Sum {
    std::vector<Term> terms;
    Interval within;
  };
  struct Product {
    std::size_t one, a, b;
    double slack;
  };
  std::size_t quantities_ = 0;
  std::vector<Stated> stated_;
  std::vector<Sum> sums_;
  std::vector<Product> products_;
  bool full_ = false;
};

// The smallest sets of statements that cannot all hold: none of them can spare a member. By the enumeration
// of M. H. Liffiton, A. Previti, A. Malik, J. Marques-Silva, "Fast, flexible MUS enumeration", Constraints 21
// (2016) 223–250, from memory; the map of what is unexplored is kept as the sets found on either side.
struct SmallestSets {
  std::vector<std::uint64_t> sets;
  bool complete = true;  // false where the steps ran out
};
SmallestSets smallest_contradictions(const IntervalSystem& system, std::size_t most_steps = 20000);

}  // namespace skeinproof
