// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yarn/read_composition.h"

#include "core/base/text.h"
#include "core/reference/fibre_words.h"
#include "core/units/read.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

constexpr std::string_view wanted = "fibres such as 75% wool, 25% polyamide";

// Commas part fibres, unless one is the decimal mark of a share: "67,5% wool".
std::vector<std::string> parts_of(const std::string& text) {
  std::vector<std::string> parts(1);
  const auto digit = [&text](std::size_t i) { return i < text.size() && text[i] >= '0' && text[i] <= '9'; };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const bool decimal = c == ',' && i > 0 && digit(i - 1) && digit(i + 1);
    if (c == ';' || c == '/' || c == '+' || c == '\n' || (c == ',' && !decimal)) {
      parts.emplace_back();
    } else if (text.compare(i, 5, " and ") == 0) {
      parts.emplace_back();
      i += 4;
    } else {
      parts.back() += c;
    }
  }
  return parts;
}

Expected<FibreShare> read_part(const std::string& part) {
  const auto sign = part.find('%');
  if (sign == std::string::npos) {
    // A share without its sign is no share: "75 wool" would be guessed at.
    if (part.find_first_of("0123456789") != std::string::npos)
      return failure(ErrorKind::not_a_quantity, part, std::string(wanted));
    return fibre_share(part, {100, {}});
  }
  const std::string before(trimmed(std::string_view(part).substr(0, sign)));
  const std::string after(trimmed(std::string_view(part).substr(sign + 1)));
  // "wool 75%" as well as "75% wool".
  const auto figure_at = before.find_first_of("0123456789");
  if (figure_at == std::string::npos) return failure(ErrorKind::not_a_quantity, part, std::string(wanted));
  const std::string words = after.empty() ? std::string(trimmed(before.substr(0, figure_at))) : after;
  const auto percent =
      read_number(after.empty() ? before.substr(figure_at) : before, 0, 1000, "a share in percent");
  if (!percent) return tl::unexpected(percent.error());
  if (words.empty()) return failure(ErrorKind::not_a_quantity, part, std::string(wanted));
  return fibre_share(words, *percent);
}

}  // namespace

FibreShare fibre_share(std::string_view words, Entered<double> percent) {
  const std::string tidy = tidy_spaces(words);
  const Fibre* fibre = fibre_by_words(tidy);
  return {fibre != nullptr ? std::string(fibre->id) : std::string(), tidy, std::move(percent)};
}

Expected<std::vector<FibreShare>> read_composition(std::string_view text) {
  std::vector<FibreShare> composition;
  const std::string tidy = tidy_spaces(text);
  if (tidy.empty()) return composition;
  const auto parts = parts_of(tidy);
  for (const std::string& part : parts) {
    const std::string words(trimmed(part));
    if (words.empty()) continue;
    auto share = read_part(words);
    if (!share) return tl::unexpected(share.error());
    if (share->percent.typed.empty() && parts.size() > 1)
      return failure(ErrorKind::not_a_quantity, words, "a share in percent for every fibre of a blend");
    composition.push_back(std::move(*share));
  }
  return composition;
}

std::string composition_text(const std::vector<FibreShare>& composition) {
  std::vector<std::string> parts;
  for (const FibreShare& share : composition)
    parts.push_back((share.percent.typed.empty() ? exact_number(share.percent.value) : share.percent.typed) +
                    "% " + share.words);
  return join(parts, ", ");
}

}  // namespace skeinproof
