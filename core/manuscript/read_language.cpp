// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <iterator>
#include <set>

#include "core/base/text.h"
#include "core/manuscript/read_parts.h"

namespace skeinproof {
namespace {

// Words of patterns that no English one has; common practice, no source.
struct Language {
  std::string_view name;
  std::array<std::string_view, 14> words;
};
constexpr Language languages[] = {
    {"German",
     {"garn", "nadeln", "nadel", "rundnadel", "stricknadeln", "maschenprobe", "größe", "größen", "knäuel",
      "maschen", "reihen", "runden", "umfang", "oberweite"}},
    {"French",
     {"taille", "tailles", "aiguilles", "laine", "pelote", "pelotes", "mailles", "rangs", "échantillon",
      "coloris", "longueur", "tricoter", "fournitures", "poitrine"}},
    {"Spanish",
     {"talla", "tallas", "agujas", "ovillo", "ovillos", "muestra", "puntos", "hilo", "vueltas", "hilera",
      "pecho", "largo", "materiales", "tejer"}},
    {"Italian",
     {"taglia", "taglie", "ferri", "gomitolo", "gomitoli", "maglie", "campione", "filato", "giri",
      "lunghezza", "occorrente", "lavorare", "torace", "misure"}},
    {"Dutch",
     {"maat", "maten", "naalden", "naald", "bol", "bollen", "steken", "stekenverhouding", "naaldendikte",
      "toeren", "borstwijdte", "lengte", "kleur", "breien"}},
    {"Danish or Norwegian",
     {"størrelse", "størrelser", "pinde", "pinner", "masker", "strikkefasthed", "strikkefasthet", "nøgle",
      "nøster", "nøste", "omkreds", "omkrets", "garnforbrug", "rundpind"}},
    {"Swedish",
     {"storlek", "storlekar", "stickor", "maskor", "nystan", "masktäthet", "stickfasthet", "garnåtgång",
      "varv", "rundsticka", "övervidd", "längd", "färg", "sticka"}},
};

constexpr std::size_t looked_at = 4000;  // tokens

bool is_english(const Reader& reader, std::size_t i) {
  constexpr Sense senses[] = {Sense::size_word,  Sense::yarn_word,     Sense::gauge_word, Sense::needle_word,
                              Sense::skein_word, Sense::sentence_verb, Sense::cast_on};
  return std::any_of(std::begin(senses), std::end(senses), [&](Sense sense) { return reader.has(i, sense); });
}

std::string_view language_of(const Reader& reader) {
  std::array<std::set<std::string_view>, std::size(languages)> found;
  std::set<std::string> english;
  const std::size_t end = std::min(reader.items.tokens.size(), looked_at);
  for (std::size_t i = 0; i < end; ++i) {
    if (!reader.is_word(i) || reader.is_list(i)) continue;
    const std::string word = reader.lower(i);
    if (is_english(reader, i)) english.insert(word);
    for (std::size_t k = 0; k < std::size(languages); ++k)
      for (const std::string_view telling : languages[k].words)
        if (word == telling) found[k].insert(telling);
  }
  const auto most = std::max_element(found.begin(), found.end(),
                                     [](const auto& a, const auto& b) { return a.size() < b.size(); });
  if (most->size() < 2 || most->size() <= english.size()) return {};
  return languages[static_cast<std::size_t>(most - found.begin())].name;
}

// What a figure with its unit says in any of these languages. A length alone may be stitches: "26 m".
bool sure(const Statement& statement, const std::set<int>& whole_put_ups) {
  switch (statement.kind) {
    case StatementKind::put_up_length:
    case StatementKind::put_up_weight:
      return whole_put_ups.contains(statement.mention);
    case StatementKind::fibre:
      return !statement.values.empty();
    case StatementKind::needle:
      return statement.unit == PrintedUnit::millimetre;
    default:
      return false;
  }
}

std::set<int> put_ups_with_both(const std::vector<Statement>& statements) {
  std::set<int> lengths, both;
  for (const Statement& one : statements)
    if (one.kind == StatementKind::put_up_length) lengths.insert(one.mention);
  for (const Statement& one : statements)
    if (one.kind == StatementKind::put_up_weight && lengths.contains(one.mention)) both.insert(one.mention);
  return both;
}

}  // namespace

void keep_what_any_language_says(Reader& reader) {
  reader.other_language = language_of(reader);
  if (reader.other_language.empty()) return;
  auto& statements = reader.out.statements;
  const std::set<int> both = put_ups_with_both(statements);
  std::erase_if(statements, [&](const Statement& one) { return !sure(one, both); });
  std::fill(reader.used.begin(), reader.used.end(), false);
  const auto& tokens = reader.items.tokens;
  for (Statement& one : statements) {
    one.subject.clear();
    const auto place = [&](const Token& token) { return std::size_t{reader.plain.from[token.begin]}; };
    const auto first = std::partition_point(
        tokens.begin(), tokens.end(), [&](const Token& token) { return place(token) < one.span.begin; });
    const auto last = std::partition_point(first, tokens.end(),
                                           [&](const Token& token) { return place(token) < one.span.end; });
    reader.use(static_cast<std::size_t>(first - tokens.begin()),
               static_cast<std::size_t>(last - tokens.begin()));
  }
}

}  // namespace skeinproof
