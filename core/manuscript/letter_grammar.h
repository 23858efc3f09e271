// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <tao/pegtl.hpp>

#include "core/manuscript/reader.h"

// Phrases over the line of letters of a reader: one letter a token, so that a phrase of the trade is a short
// rule. Only the phrases of manuscript/read_*.cpp include this.
namespace skeinproof::letters {

using namespace tao::pegtl;

template <Sense sense>
struct word : one<static_cast<char>(sense)> {};

struct yarn_length : one<'1'> {};
struct weight : one<'2'> {};
struct cloth : one<'3'> {};
struct millimetres : one<'4'> {};
struct percent : one<'5'> {};
struct skeins : one<'6'> {};
struct stitches : one<'7'> {};
struct rows : one<'8'> {};
struct bare : one<'0', '9'> {};
struct any_list : range<'0', '9'> {};
struct any_word : sor<seq<not_at<one<'x'>>, alpha>, one<'@', '!'>> {};
struct unknown : one<'w', 'W'> {};
struct open : one<'('> {};
struct close : one<')'> {};
struct line_end : one<'\n'> {};

// At most `n` of the marks and words that stand between two figures of one thing.
template <unsigned n, char... marks>
struct few : rep_opt<n, one<marks...>> {};

// What a phrase's action is given: the reader, and the clause it stands in.
struct Place {
  Reader& reader;
  const Clause& clause;
  std::size_t first = 0, last = 0;  // tokens of the phrase
};

template <class Rule>
struct action : nothing<Rule> {};

// Calls `take(place)` for each place where a phrase matched; one that returns false did not take it. What is
// said already is not said again.
template <auto take>
struct calls {
  template <class Input>
  static bool apply(const Input& in, Reader& reader, const Clause& clause) {
    const char* start = reader.letters.data();
    if (reader.used[static_cast<std::size_t>(in.begin() - start)]) return false;
    const Place place{reader, clause, static_cast<std::size_t>(in.begin() - start),
                      static_cast<std::size_t>(in.end() - start)};
    if constexpr (std::is_same_v<decltype(take(place)), bool>) {
      return take(place);
    } else {
      take(place);
      return true;
    }
  }
};

// Reads a clause as a row of phrases; what no phrase takes is passed over, a token at a time.
template <class Phrases, template <class> class Action>
void read_phrases(Reader& reader, const Clause& clause) {
  memory_input<tracking_mode::lazy> input(reader.letters.data() + clause.first,
                                          reader.letters.data() + clause.last, "");
  parse<star<sor<Phrases, any>>, Action>(input, reader, clause);
}

}  // namespace skeinproof::letters
