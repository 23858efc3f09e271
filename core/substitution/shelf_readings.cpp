// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/shelf_readings.h"

#include <algorithm>

#include "core/reference/lookup.h"
#include "core/units/figure_grammar.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool has_unit(std::string_view text) {
  const auto figures = parse_figures(text);
  return figures && !figures->unit.empty();
}

std::string with_unit(std::string_view text, std::string_view assumed) {
  const std::string plain(trimmed(text));
  return assumed.empty() || has_unit(plain) ? plain : plain + " " + std::string(assumed);
}

// A failure shows the text as it was typed.
template <class Read>
auto read_as(std::string_view text, std::string_view assumed, Read read) -> decltype(read(text)) {
  auto value = read(with_unit(text, assumed));
  if (value) return value;
  auto bare = read(text);
  return bare ? value : bare;
}

std::string replaced(std::string_view text, std::string_view what, std::string_view by) {
  std::string all;
  std::size_t from = 0;
  for (std::size_t at = text.find(what); at != text.npos; at = text.find(what, from)) {
    all.append(text.substr(from, at - from)).append(by);
    from = at + what.size();
  }
  all.append(text.substr(from));
  return all;
}

// The parts of a put-up: what stands between slashes that are no fraction's, brackets, "per" and the like.
std::vector<std::string> parts_of_put_up(std::string_view text) {
  std::string plain = lower_ascii(tidy_spaces(text));
  for (std::string_view mark : {" per ", "=", "(", ")", ";", "|", ", ", " x ", "≈", " a ", " – ", " - "})
    plain = replaced(plain, mark, "/");
  std::vector<std::string> parts;
  std::string open;
  for (const std::string& piece : split(plain, '/')) {
    // "1 3" and "4 oz" of "1 3/4 oz" belong together: the first has no unit and ends in a figure.
    const bool fraction = !open.empty() && !piece.empty() && is_digit(open.back()) &&
                          is_digit(piece.front()) && !has_unit(open) &&
                          parse_figures(open + "/" + piece).has_value();
    if (fraction) {
      open += "/" + piece;
      continue;
    }
    if (!trimmed(open).empty()) parts.emplace_back(trimmed(open));
    open = piece;
  }
  if (!trimmed(open).empty()) parts.emplace_back(trimmed(open));
  return parts;
}

// "skeins" -> skein.
std::optional<SkeinWord> skein_word_of(std::string_view word) {
  if (word.ends_with('s')) word.remove_suffix(1);
  return from_word<SkeinWord>(word);
}

// Takes a word for the put-up off the end of a part: "50 g ball".
void take_skein_word(std::string& part, PutUp& put_up) {
  const std::size_t space = part.rfind(' ');
  const std::string last = space == std::string::npos ? part : part.substr(space + 1);
  const auto word = skein_word_of(last);
  if (!word) return;
  put_up.word = *word;
  part = space == std::string::npos ? std::string() : std::string(trimmed(part.substr(0, space)));
}

Error no_put_up(std::string_view text) {
  return {ErrorKind::not_a_quantity, {}, quoted(text), "a put-up such as 50 g / 175 m"};
}

constexpr std::string_view signs[] = {"€", "£", "$", "¥", "₣", "₽", "₹", "₺", "₩", "₴", "zł", "Kč"};

// The bytes that begin or end a figure.
bool of_figure(unsigned char c) { return is_digit(static_cast<char>(c)) || c == '.' || c == ','; }

}  // namespace

Expected<Entered<Grams>> read_mass_as(std::string_view text, std::string_view assumed) {
  return read_as(text, assumed, [](std::string_view typed) { return read_mass(typed); });
}

Expected<Entered<Centimetres>> read_needle(std::string_view text, std::string_view assumed) {
  const std::string plain(trimmed(text));
  const std::string lower = lower_ascii(plain);
  struct Numbering {
    std::string_view word;
    std::vector<const NeedleRow*> (*find)(std::string_view number);
  };
  constexpr Numbering numberings[] = {
      {"us", needles_by_us}, {"uk", needles_by_uk_old}, {"old uk", needles_by_uk_old}};
  for (const Numbering& numbering : numberings) {
    const bool named = lower.starts_with(numbering.word);
    if (!named && (has_unit(plain) || lower_ascii(assumed) != numbering.word)) continue;
    const std::string number(trimmed(named ? plain.substr(numbering.word.size()) : plain));
    const auto found = numbering.find(number);
    if (found.size() != 1)
      return failure(
          ErrorKind::unknown_name, quoted(plain),
          found.empty() ? "a needle size such as 4 mm or US 6" : "the size in mm: that number is two");
    return Entered<Centimetres>{centimetres(found.front()->mm / 10),
                                named ? plain : std::string(assumed) + " " + plain};
  }
  const std::string unit = assumed.empty() ? "mm" : std::string(assumed);
  return read_measure(with_unit(plain, unit), MeasureUnit::millimetre);
}

Expected<PutUp> read_put_up(std::string_view text, const PutUp& before) {
  PutUp put_up = before;
  bool has_length = false, has_weight = false, has_word = false;
  std::vector<std::string> bare;
  for (std::string part : parts_of_put_up(text)) {
    const SkeinWord word = put_up.word;
    take_skein_word(part, put_up);
    has_word = has_word || put_up.word != word || part.empty();
    if (part.empty()) continue;
    if (!has_unit(part)) {
      bare.push_back(part);
      continue;
    }
    if (auto mass = read_mass(part)) {
      if (!has_weight) put_up.weight = *mass;
      has_weight = true;
    } else if (auto length = read_length(part)) {
      if (!has_length) put_up.length = *length;
      has_length = true;
    } else {
      return tl::unexpected(no_put_up(text));
    }
  }
  for (const std::string& part : bare) {
    const bool as_length = has_weight && !has_length, as_weight = has_length && !has_weight;
    if (as_length) {
      auto length = read_length(part);
      if (!length) return tl::unexpected(no_put_up(text));
      put_up.length = *length;
      has_length = true;
    } else if (as_weight) {
      auto mass = read_mass(part);
      if (!mass) return tl::unexpected(no_put_up(text));
      put_up.weight = *mass;
      has_weight = true;
    } else {
      return tl::unexpected(no_put_up(text));
    }
  }
  if (!has_length && !has_weight && !has_word) return tl::unexpected(no_put_up(text));
  return put_up;
}

Expected<PutUp> read_length_or_put_up(std::string_view text, std::string_view assumed, const PutUp& before) {
  auto length = read_as(text, assumed, [](std::string_view typed) { return read_length(typed); });
  if (!length) {
    auto whole = read_put_up(text, before);
    if (whole) return whole;
    return tl::unexpected(std::move(length.error()));
  }
  PutUp put_up = before;
  put_up.length = std::move(*length);
  return put_up;
}

Expected<PutUp> read_weight_or_put_up(std::string_view text, std::string_view assumed, const PutUp& before) {
  auto mass = read_mass_as(text, assumed);
  if (!mass) {
    auto whole = read_put_up(text, before);
    if (whole) return whole;
    return tl::unexpected(std::move(mass.error()));
  }
  PutUp put_up = before;
  put_up.weight = std::move(*mass);
  return put_up;
}

bool is_currency(std::string_view text) {
  const std::string plain(trimmed(text));
  constexpr std::size_t longest = 12;
  if (plain.empty() || plain.size() > longest) return false;
  if (std::find(std::begin(signs), std::end(signs), plain) != std::end(signs)) return true;
  constexpr std::size_t longest_word = 4;
  std::size_t letters = 0;
  std::string rest = plain;
  for (std::string_view sign : {"$", "£", "€"}) rest = replaced(rest, sign, "");  // "NZ$", "A$"
  if (rest.ends_with('.')) rest.pop_back();
  for (char c : lower_ascii(rest)) {
    if (c < 'a' || c > 'z') return false;
    ++letters;
  }
  return letters > 0 && letters <= longest_word;
}

Expected<Price> read_price(std::string_view text, std::string_view assumed) {
  const std::string plain = tidy_spaces(text);
  const auto refuse = [&](std::string expected) {
    return failure(ErrorKind::not_a_quantity, quoted(plain), std::move(expected));
  };
  const auto figure = [](char c) { return of_figure(static_cast<unsigned char>(c)); };
  const auto first = std::find_if(plain.begin(), plain.end(), figure);
  if (first == plain.end()) return refuse("a price such as 7.90 EUR");
  const auto last = std::find_if(plain.rbegin(), plain.rend(), is_digit).base();
  if (last <= first) return refuse("a price such as 7.90 EUR");
  const std::string before(trimmed(std::string(plain.begin(), first)));
  const std::string after(trimmed(std::string(last, plain.end())));
  if (!before.empty() && !after.empty() && before != after) return refuse("one currency, such as 7.90 EUR");
  const std::string currency = !before.empty()  ? before
                               : !after.empty() ? after
                                                : std::string(trimmed(assumed));
  constexpr double most = 1e6;
  auto amount = read_number(std::string(first, last), 0, most, "a price");
  if (!amount) return tl::unexpected(std::move(amount.error()));
  if (currency.empty()) return refuse("a price with its currency, such as 7.90 EUR");
  if (!is_currency(currency)) return refuse("a currency such as EUR, £ or kr, not " + quoted(currency, 20));
  return Price{std::move(*amount), currency};
}

Expected<std::vector<SoldAs>> read_also_sold(std::string_view text) {
  std::vector<SoldAs> all;
  for (const std::string& piece : split(text, ';')) {
    const std::string plain = tidy_spaces(piece);
    if (plain.empty()) continue;
    SoldAs sold;
    const std::size_t comma = plain.rfind(", ");
    if (comma != std::string::npos)
      if (auto price = read_price(plain.substr(comma + 2), {})) sold.price = std::move(*price);
    auto put_up = read_put_up(sold.price ? plain.substr(0, comma) : plain, {});
    if (!put_up) return tl::unexpected(std::move(put_up.error()));
    sold.put_up = std::move(*put_up);
    all.push_back(std::move(sold));
  }
  return all;
}

Expected<Entered<double>> read_skeins(std::string_view text) {
  std::string plain = lower_ascii(tidy_spaces(text));
  PutUp word;
  take_skein_word(plain, word);
  constexpr double most = 100'000;
  auto read = read_number(plain, 0, most, "a number of skeins");
  if (read) read->typed = plain;
  return read;
}

Expected<AmountOwned> read_amount(std::string_view text, std::string_view assumed) {
  AmountOwned owned;
  const std::string plain = replaced(lower_ascii(tidy_spaces(text)), " and ", "+");
  for (const std::string& piece : split(plain, '+')) {
    const std::string part(trimmed(piece));
    if (part.empty()) continue;
    const bool bare = !has_unit(part);
    const auto mass = bare && assumed.empty() ? Expected<Entered<Grams>>(tl::unexpected(Error{}))
                                              : read_mass_as(part, assumed);
    if (mass && !owned.weight) {
      owned.weight = *mass;
      continue;
    }
    auto skeins = read_skeins(part);
    if (!skeins || owned.skeins)
      return failure(ErrorKind::not_a_quantity, quoted(text), "an amount such as 3 skeins + 41 g");
    owned.skeins = std::move(*skeins);
  }
  return owned;
}

Expected<void> read_band(std::string_view text, Yarn& yarn) {
  std::string plain = lower_ascii(tidy_spaces(text));
  for (std::string_view words :
       {"/ 10 cm", "/10 cm", "/10cm", "per 10 cm", "in 10 cm", "= 10 cm", "stitches", "sts", "st"})
    plain = replaced(plain, words, "");
  for (std::string_view dash : {"–", "—", " to ", "-"}) plain = replaced(plain, dash, "/");
  const auto ends = split(plain, '/');
  constexpr double most = 100;
  std::vector<Entered<double>> read;
  for (const std::string& end : ends) {
    auto stitches = read_number(trimmed(end), 1, most, "stitches in 10 cm");
    if (!stitches || ends.size() > 2)
      return failure(ErrorKind::not_a_quantity, quoted(text), "stitches in 10 cm such as 24–26");
    read.push_back(std::move(*stitches));
  }
  if (read.front().value > read.back().value) std::swap(read.front(), read.back());
  yarn.band_stitches_low = read.front();
  yarn.band_stitches_high = read.back();
  return {};
}

Expected<bool> read_truth(std::string_view text) {
  const std::string word = folded_name(text);
  for (std::string_view yes : {"yes", "y", "true", "1", "x", "✓"})
    if (word == yes) return true;
  for (std::string_view no : {"no", "n", "false", "0", "-", "–"})
    if (word == no) return false;
  return failure(ErrorKind::unknown_name, quoted(text), "yes or no");
}

namespace {

template <WordedEnum Word>
Expected<Word> one_of(std::string_view text, std::initializer_list<std::pair<std::string_view, Word>> also) {
  std::string word = folded_name(text);
  std::replace(word.begin(), word.end(), ' ', '-');
  for (const auto& [value, row] : EnumWords<Word>::rows)
    if (word == replaced(lower_ascii(row), " ", "-")) return value;
  for (const auto& [other, value] : also)
    if (word == other) return value;
  std::vector<std::string> known;
  for (const auto& [value, row] : EnumWords<Word>::rows) known.emplace_back(row);
  return failure(ErrorKind::unknown_name, quoted(text), "one of " + join(known, ", "));
}

}  // namespace

template <>
Expected<SkeinWord> read_word<SkeinWord>(std::string_view text) {
  if (const auto word = skein_word_of(folded_name(text))) return *word;
  return one_of<SkeinWord>(text, {});
}
template <>
Expected<Spinning> read_word<Spinning>(std::string_view text) {
  return one_of<Spinning>(text, {{"worsted", Spinning::worsted},
                                 {"combed", Spinning::worsted},
                                 {"woollen", Spinning::woollen},
                                 {"woolen", Spinning::woollen},
                                 {"woolen-spun", Spinning::woollen},
                                 {"carded", Spinning::woollen},
                                 {"semi-worsted-spun", Spinning::semi_worsted}});
}
template <>
Expected<Market> read_word<Market>(std::string_view text) {
  return one_of<Market>(text, {{"eu", Market::europe},
                               {"uk", Market::europe},
                               {"us", Market::united_states},
                               {"usa", Market::united_states}});
}

namespace {

// What was typed where it reads back as the same, else the exact figure.
template <class Quantity, class Read>
std::string typed_or(const Entered<Quantity>& value, Read read, std::string exact) {
  if (value.typed.empty()) return exact;
  const auto again = read(value.typed);
  return again && again->value == value.value ? value.typed : exact;
}

}  // namespace

std::string number_text(const Entered<double>& value) {
  return typed_or(
      value, [](std::string_view text) { return read_number(text, -1e9, 1e9, "number"); },
      exact_number(value.value));
}
std::string length_text(const Entered<Metres>& value) {
  const auto read = [](std::string_view text) { return read_length(text); };
  const std::string text = typed_or(value, read, exact_number(value.value.value()));
  return has_unit(text) ? text : text + " m";
}
std::string mass_text(const Entered<Grams>& value) {
  const auto read = [](std::string_view text) { return read_mass(text); };
  const std::string text = typed_or(value, read, exact_number(value.value.value()));
  return has_unit(text) ? text : text + " g";
}
std::string needle_text(const Entered<Centimetres>& value) {
  const auto read = [](std::string_view text) { return read_needle(text, {}); };
  const std::string text = typed_or(value, read, exact_number(value.value.value() * 10));
  return has_unit(text) || lower_ascii(text).starts_with("u") ? text : text + " mm";
}
std::string put_up_text(const PutUp& put_up) {
  std::vector<std::string> parts;
  if (put_up.weight) parts.push_back(mass_text(*put_up.weight));
  if (put_up.length) parts.push_back(length_text(*put_up.length));
  return join(parts, " / ");
}
std::string price_text(const Price& price) {
  const std::string amount = number_text(price.amount);
  return price.currency.empty() ? amount : amount + " " + price.currency;
}
std::string also_sold_text(const std::vector<SoldAs>& also_sold) {
  std::vector<std::string> parts;
  for (const SoldAs& sold : also_sold) {
    std::string part = put_up_text(sold.put_up);
    if (sold.put_up.word != SkeinWord::skein) part.append(" ").append(word_of(sold.put_up.word));
    if (sold.price) part.append(", ").append(price_text(*sold.price));
    parts.push_back(std::string(trimmed(part)));
  }
  return join(parts, "; ");
}

}  // namespace skeinproof
