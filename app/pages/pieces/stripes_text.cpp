// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/stripes_text.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/units/read.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

constexpr double least_rows = 0.5;
constexpr double most_rows = 10000;

const Role* role_labelled(const Pattern& pattern, std::string_view label) {
  const std::string wanted = lower_ascii(trimmed(label));
  for (const Role& role : pattern.roles)
    if (lower_ascii(trimmed(role.label)) == wanted) return &role;
  return nullptr;
}

std::string all_labels(const Pattern& pattern) {
  std::vector<std::string> labels;
  for (const Role& role : pattern.roles) labels.push_back(role.label);
  return labels.empty() ? "a role of the page Yarns" : "one of " + join(labels, ", ");
}

Expected<Stripe> read_stripe(const std::string& text, const Pattern& pattern) {
  const std::size_t last_blank = text.rfind(' ');
  const std::size_t first_blank = text.find(' ');
  if (last_blank == std::string::npos)
    return failure(ErrorKind::wrong_shape, skeinproof::quoted(text), "a role and its rows, such as MC 6");
  const std::string_view all = text;
  const Role* role = role_labelled(pattern, all.substr(0, last_blank));
  std::string_view rows = all.substr(last_blank + 1);
  if (role == nullptr) {
    if (const Role* behind = role_labelled(pattern, all.substr(first_blank + 1)); behind != nullptr) {
      role = behind;
      rows = all.substr(0, first_blank);
    }
  }
  if (role == nullptr) {
    const bool number_first = text.front() >= '0' && text.front() <= '9';
    const std::string_view label = number_first ? all.substr(first_blank + 1) : all.substr(0, last_blank);
    return failure(ErrorKind::unknown_name, skeinproof::quoted(label), all_labels(pattern));
  }
  const auto read = read_number(rows, least_rows, most_rows, "rows");
  if (!read) return tl::unexpected(read.error());
  return Stripe{role->id, *read};
}

}  // namespace

Expected<std::vector<Stripe>> read_stripes(std::string_view text, const Pattern& pattern) {
  std::string tidy = tidy_spaces(text);
  std::replace_if(
      tidy.begin(), tidy.end(), [](char c) { return c == ';' || c == '+'; }, ',');
  std::vector<Stripe> stripes;
  for (const std::string& part : split(tidy, ',')) {
    const std::string stripe_text = tidy_spaces(part);
    if (stripe_text.empty()) continue;
    const auto stripe = read_stripe(stripe_text, pattern);
    if (!stripe) return tl::unexpected(stripe.error());
    stripes.push_back(*stripe);
  }
  return stripes;
}

std::string stripes_text(const std::vector<Stripe>& stripes, const Pattern& pattern) {
  std::vector<std::string> parts;
  for (const Stripe& stripe : stripes) {
    const Role* role = pattern.role(stripe.role);
    const std::string rows = stripe.rows.typed.empty() ? exact_number(stripe.rows.value) : stripe.rows.typed;
    parts.push_back((role != nullptr ? role->label : "?") + " " + rows);
  }
  return join(parts, ", ");
}

}  // namespace skeinproof
