// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <limits>

#include "core/file/json.h"
#include "tests/support/generate_pattern.h"

namespace skeinproof {
namespace {

std::string document(const std::string& fields) {
  return R"({"schema": "skeinproof pattern", "version": 1, "sizes": [{"id": 1, "label": "S"}],
"house_styles": [{}], "last_id": 9)" +
         (fields.empty() ? "" : ",\n" + fields) + "}";
}

Error refused(const std::string& text) {
  const auto pattern = pattern_from_json(text, "x.json");
  EXPECT_FALSE(pattern) << text;
  return pattern ? Error{} : pattern.error();
}

RC_GTEST_PROP(Json, gives_back_every_document, (const Pattern& pattern)) {
  RC_ASSERT(check_invariants(pattern).has_value());
  const auto pretty = pattern_from_json(to_json(pattern));
  RC_ASSERT(pretty.has_value());
  RC_ASSERT(*pretty == pattern);
  const auto compact = pattern_from_json(to_compact_json(pattern));
  RC_ASSERT(compact.has_value());
  RC_ASSERT(*compact == pattern);
}

RC_GTEST_PROP(Json, gives_back_every_house_style, (const Pattern& pattern)) {
  const auto style = house_style_from_json(to_json(pattern.house()));
  RC_ASSERT(style.has_value());
  RC_ASSERT(*style == pattern.house());
}

RC_GTEST_PROP(Json, gives_back_every_finite_number, (double number)) {
  HouseStyle style;
  style.allowance_pct = number;
  RC_ASSERT(house_style_from_json(to_json(style))->allowance_pct == number);
}

TEST(Json, gives_back_numbers_at_the_bounds) {
  using Limits = std::numeric_limits<double>;
  for (double number : {0.0, -0.0, 0.1, 1.0 / 3, 1e-320, 1e15, 9007199254740993.0, 1e22, Limits::max(),
                        Limits::denorm_min(), Limits::lowest()}) {
    HouseStyle style;
    style.allowance_pct = number;
    const double back = house_style_from_json(to_json(style))->allowance_pct;
    EXPECT_EQ(back, number);
    EXPECT_EQ(std::signbit(back), std::signbit(number));
  }
}

TEST(Json, is_written_as_documented) {
  Pattern pattern = new_pattern();
  pattern.sizes.push_back({SizeId{2}, "2", true});
  pattern.last_id = 3;
  Role role;
  role.id = RoleId{3};
  role.label = "MC";
  role.printed_count = PerSize<Entered<double>>({std::nullopt, Entered<double>{7, "7"}});
  role.swatch = Entered<Metres>{metres(30), ""};
  pattern.roles.push_back(role);
  const std::string text = to_json(pattern);
  EXPECT_EQ(text.rfind("{\n  \"schema\": \"skeinproof pattern\",\n  \"version\": 3,\n  \"title\": \"\",", 0),
            0u);
  EXPECT_NE(text.find(R"("printed_count": [{},{"value":7,"typed":"7"}])"), std::string::npos) << text;
  EXPECT_NE(text.find(R"("swatch_m": {"value":30})"), std::string::npos);
  EXPECT_NE(text.find(R"("growth": "automatic")"), std::string::npos);
  EXPECT_EQ(text.find("lightness"), std::string::npos);
  EXPECT_EQ(text.find("null"), std::string::npos);
}

TEST(Json, leaves_what_is_left_out_as_in_a_new_part) {
  const auto pattern = pattern_from_json(document(R"("fabrics": [{"id": 2, "name": "body"}])"));
  ASSERT_TRUE(pattern) << pattern.error().message();
  EXPECT_EQ(pattern->fabrics[0].gauge, Gauge{});
  EXPECT_EQ(pattern->house(), HouseStyle{});
}

TEST(Json, says_where_what_and_what_instead) {
  const Error error = refused(document(R"("roles": [{"id": 2}, {"id": 3}, {"id": 4,
  "shade": {"lightness": {"value": "dark"}}}])"));
  EXPECT_EQ(error.kind, ErrorKind::wrong_shape);
  EXPECT_EQ(error.message(),
            "x.json:4:36: found “dark”, expected a number at $.roles[2].shade.lightness.value");
}

TEST(Json, refuses_what_does_not_belong) {
  struct Row {
    const char* fields;
    ErrorKind kind;
    const char* found;
    const char* expected;
  };
  const Row rows[] = {
      {R"("titel": "x")", ErrorKind::unknown_name, "the key “titel”", "at $"},
      {R"("roles": [{"id": 2, "shde": {}}])", ErrorKind::unknown_name, "the key “shde”", "at $.roles[0]"},
      {R"("title": null)", ErrorKind::wrong_shape, "null", "text in quotation marks at $.title"},
      {R"("title": 3)", ErrorKind::wrong_shape, "3", "text in quotation marks at $.title"},
      {R"("basis": "guess")", ErrorKind::unknown_name, "“guess”",
       "one of “automatic”, “stitches”, “weighed sample” at $.basis"},
      {R"("count_joins": 1)", ErrorKind::wrong_shape, "1", "true or false at $.count_joins"},
      {R"("pieces": [{"id": 2, "copies": 1.5}])", ErrorKind::wrong_shape, "1.5", "a whole number"},
      {R"("pieces": [{"id": 2, "copies": 3e9}])", ErrorKind::out_of_range, "3000000000", "2147483647"},
      {R"("pieces": [{"id": -2}])", ErrorKind::out_of_range, "-2", "from 0 to 4294967295"},
      {R"("pieces": {"id": 2})", ErrorKind::wrong_shape, "an object", "a list at $.pieces"},
      {R"("pieces": [[]])", ErrorKind::wrong_shape, "a list", "an object at $.pieces[0]"},
      {R"("printed_total": [5])", ErrorKind::wrong_shape, "5", "at $.printed_total[0]"},
      {R"("printed_total": [{"typed": "5"}])", ErrorKind::wrong_shape, "an object", "at $.printed_total[0]"},
      {R"("printed_total": [{"value": 1}, {"value": 2}])", ErrorKind::broken_invariant, "2 values",
       "1 sizes"},
      {R"("roles": [{"id": 2, "yarn": 7}])", ErrorKind::broken_invariant, "7", "exists"},
  };
  for (const Row& row : rows) {
    const Error error = refused(document(row.fields));
    EXPECT_EQ(error.kind, row.kind) << row.fields << "\n" << error.message();
    EXPECT_NE(error.found.find(row.found), std::string::npos) << error.message();
    EXPECT_NE(error.expected.find(row.expected), std::string::npos) << error.message();
    EXPECT_EQ(error.place.file, "x.json");
  }
}

TEST(Json, says_that_json_is_not_a_project) {
  for (const char* text : {"{}", "[]", "3", "\"skeinproof pattern\"", R"({"schema": "other", "version": 1})",
                           R"({"schema": 1})"}) {
    const Error error = refused(text);
    EXPECT_EQ(error.kind, ErrorKind::wrong_format) << text;
    EXPECT_EQ(error.expected, "{\"schema\": \"skeinproof pattern\", …}");
  }
  EXPECT_EQ(refused(to_json(HouseStyle{})).found, "JSON of the schema “skeinproof house style”");
}

TEST(Json, refuses_a_newer_version_by_name) {
  const Error error = refused(R"({"schema": "skeinproof pattern", "version": 4})");
  EXPECT_EQ(error.kind, ErrorKind::too_new);
  EXPECT_EQ(error.message(), "x.json:1:45: found skeinproof pattern version 4, expected at most version 3");
}

TEST(Json, places_errors_of_syntax) {
  struct Row {
    const char* text;
    int line;
    int column;
  };
  for (const Row& row :
       {Row{"", 1, 1}, Row{"\n {\"ä\": 1,,}", 2, 10}, Row{"{\"a\": [1, 2\n}", 2, 1}, Row{"{\"a\" 1}", 1, 6},
        Row{"{\"a\": 1e999}", 1, 7}, Row{"{\"a\": 1, \"a\": 2}", 1, 10}, Row{"{} {}", 1, 4}}) {
    const Error error = refused(row.text);
    EXPECT_EQ(error.kind, ErrorKind::wrong_format) << row.text;
    EXPECT_EQ(error.place.line, row.line) << row.text << " " << error.message();
    EXPECT_EQ(error.place.column, row.column) << row.text << " " << error.message();
  }
}

TEST(Json, bounds_depth_and_amount) {
  EXPECT_EQ(refused(std::string(1'000'000, '[')).found, "more than 64 levels");
  std::string many = "[0";
  for (int i = 0; i < 2'000'001; ++i) many += ",0";
  EXPECT_EQ(refused(many + "]").found, "more than two million values");
}

TEST(Json, takes_a_byte_order_mark) { EXPECT_TRUE(pattern_from_json("\xef\xbb\xbf" + document(""))); }

TEST(Json, damaged_texts_never_crash) {
  const std::string whole = to_json(generated_pattern(3));
  ASSERT_TRUE(pattern_from_json(whole));
  for (std::size_t cut = 0; cut + 2 < whole.size(); cut += 1 + whole.size() / 400)
    EXPECT_FALSE(pattern_from_json(std::string_view(whole).substr(0, cut))) << cut;
  for (std::size_t at = 0; at < whole.size(); at += 1 + whole.size() / 400) {
    for (char byte : {'\0', '"', '}', '\xff', '9'}) {
      std::string flipped = whole;
      flipped[at] = byte;
      const auto read = pattern_from_json(flipped);
      if (!read) {
        EXPECT_FALSE(read.error().message().empty());
      }
    }
  }
}

TEST(Json, text_that_is_no_utf8_is_written_as_such) {
  Pattern pattern = new_pattern();
  pattern.title = "a\xff";
  const auto back = pattern_from_json(to_json(pattern));
  ASSERT_TRUE(back);
  EXPECT_EQ(back->title, "a\ufffd");
}

}  // namespace
}  // namespace skeinproof
