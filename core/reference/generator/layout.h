// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>
#include <vector>

// Which columns of which table fill which members of which row type of core/reference/tables.h.
namespace skeinproof::generator {

enum class Kind {
  text,
  number,
  optional_number,
  number_if_any,
  yes_no,
  direct,
  expression,
  confidence,
  source,
  texts
};

// One member. Members of an inner aggregate are written one after the other, `inner` set to their own names.
struct Member {
  std::string_view name;
  Kind kind = Kind::text;
  std::string_view column;  // of the table; for `texts` a prefix of numbered columns
  std::vector<Member> inner;
};

struct Layout {
  std::string_view file, row_type, array;
  std::string_view key;  // column whose values must differ; empty where no column does
  std::vector<Member> members;
};

const std::vector<Layout>& layouts();

}  // namespace skeinproof::generator
