// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <tl/expected.hpp>

namespace skeinproof {

// What kind of thing went wrong; the front end turns it into what happened, what is safe, what to do.
enum class ErrorKind {
  not_a_quantity,
  wrong_unit,
  out_of_range,
  wrong_count,
  unknown_name,
  wrong_shape,
  broken_invariant,
  not_ours,
  too_new,
  damaged,
  changed_behind_our_back,
  locked,
  read_only,
  no_space,
  not_found,
  wrong_format,
  system,
};

// A place in a text or a file; line and column count from 1, in code points; 0 = not known.
struct Place {
  std::string file;
  int line = 0;
  int column = 0;
  bool operator==(const Place&) const = default;
};

// One failure: where it is, what was found there and what was expected instead.
struct Error {
  ErrorKind kind = ErrorKind::system;
  Place place;
  std::string found;
  std::string expected;

  // "block.txt:3:14: found “12 parsecs”, expected a length such as 175 m". Plain text, UTF-8.
  std::string message() const;
  bool operator==(const Error&) const = default;
};

template <class T>
using Expected = tl::expected<T, Error>;

inline tl::unexpected<Error> failure(ErrorKind kind, std::string found, std::string expected,
                                     Place place = {}) {
  return tl::unexpected<Error>(Error{kind, std::move(place), std::move(found), std::move(expected)});
}

}  // namespace skeinproof
