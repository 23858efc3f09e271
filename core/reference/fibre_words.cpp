// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/fibre_words.h"

#include <algorithm>
#include <string>
#include <vector>

#include "core/base/text.h"
#include "core/reference/lookup.h"

namespace skeinproof {
namespace {

struct FibreWords {
  std::string_view words, id;
};

// Words a label uses; a row holds where all its words stand in the text. Written without accents. Common
// knowledge of the languages, no source.
constexpr FibreWords rows[] = {
    {"superwash wool", "wool_superwash"},
    {"superwash merino", "wool_superwash"},
    {"superwash", "wool_superwash"},
    {"washable wool", "wool_superwash"},
    {"shrink resist wool", "wool_superwash"},
    {"merino", "wool_merino"},
    {"merinowolle", "wool_merino"},
    {"merinos", "wool_merino"},
    {"longwool", "wool_longwool"},
    {"lustre wool", "wool_longwool"},
    {"crossbred", "wool_longwool"},
    {"wool", "wool"},
    {"lambswool", "wool"},
    {"lamb wool", "wool"},
    {"fleece wool", "wool"},
    {"virgin wool", "wool"},
    {"wolle", "wool"},
    {"schurwolle", "wool"},
    {"laine", "wool"},
    {"lana", "wool"},
    {"uld", "wool"},
    {"ull", "wool"},
    {"mohair", "mohair"},
    {"kid mohair", "mohair"},
    {"moher", "mohair"},
    {"cashmere", "cashmere"},
    {"kaschmir", "cashmere"},
    {"cachemire", "cashmere"},
    {"cachemira", "cashmere"},
    {"kashmir", "cashmere"},
    {"alpaca", "alpaca"},
    {"alpaka", "alpaca"},
    {"alpaga", "alpaca"},
    {"suri", "alpaca"},
    {"llama", "llama"},
    {"lama", "llama"},
    {"vicuna", "vicuna_guanaco"},
    {"guanaco", "vicuna_guanaco"},
    {"camel", "camel"},
    {"kamel", "camel"},
    {"kamelhaar", "camel"},
    {"chameau", "camel"},
    {"cammello", "camel"},
    {"yak", "yak"},
    {"angora", "angora"},
    {"angora rabbit", "angora"},
    {"qiviut", "qiviut"},
    {"musk ox", "qiviut"},
    {"bison", "bison"},
    {"possum", "possum"},
    {"silk", "silk"},
    {"mulberry silk", "silk"},
    {"seide", "silk"},
    {"soie", "silk"},
    {"seta", "silk"},
    {"seda", "silk"},
    {"silke", "silk"},
    {"tussah", "silk_tussah"},
    {"tussah silk", "silk_tussah"},
    {"tussar silk", "silk_tussah"},
    {"wild silk", "silk_tussah"},
    {"cotton", "cotton"},
    {"baumwolle", "cotton"},
    {"coton", "cotton"},
    {"cotone", "cotton"},
    {"algodon", "cotton"},
    {"bomuld", "cotton"},
    {"bomull", "cotton"},
    {"mercerised cotton", "cotton_mercerised"},
    {"mercerized cotton", "cotton_mercerised"},
    {"merzerisierte baumwolle", "cotton_mercerised"},
    {"coton mercerise", "cotton_mercerised"},
    {"linen", "flax"},
    {"flax", "flax"},
    {"leinen", "flax"},
    {"flachs", "flax"},
    {"lin", "flax"},
    {"lino", "flax"},
    {"hor", "flax"},
    {"hemp", "hemp"},
    {"true hemp", "hemp"},
    {"hanf", "hemp"},
    {"chanvre", "hemp"},
    {"canapa", "hemp"},
    {"canamo", "hemp"},
    {"ramie", "ramie"},
    {"jute", "jute"},
    {"nettle", "nettle"},
    {"nessel", "nettle"},
    {"brennnessel", "nettle"},
    {"ortie", "nettle"},
    {"viscose", "viscose"},
    {"rayon", "viscose"},
    {"viskose", "viscose"},
    {"viscosa", "viscose"},
    {"bamboo", "viscose_bamboo"},
    {"bamboo viscose", "viscose_bamboo"},
    {"bamboo rayon", "viscose_bamboo"},
    {"viscose bambou", "viscose_bamboo"},
    {"bambou", "viscose_bamboo"},
    {"bambus", "viscose_bamboo"},
    {"bambus viskose", "viscose_bamboo"},
    {"modal", "modal"},
    {"lyocell", "lyocell"},
    {"cupro", "cupro"},
    {"acetate", "acetate"},
    {"acetat", "acetate"},
    {"triacetate", "triacetate"},
    {"triacetat", "triacetate"},
    {"polyamide", "polyamide"},
    {"nylon", "polyamide"},
    {"polyamid", "polyamide"},
    {"poliamida", "polyamide"},
    {"poliammide", "polyamide"},
    {"polyester", "polyester"},
    {"poliester", "polyester"},
    {"poliestere", "polyester"},
    {"acrylic", "acrylic"},
    {"polyacrylic", "acrylic"},
    {"acryl", "acrylic"},
    {"polyacryl", "acrylic"},
    {"polyacrylonitrile", "acrylic"},
    {"acrylique", "acrylic"},
    {"acrilico", "acrylic"},
    {"akryl", "acrylic"},
    {"modacrylic", "modacrylic"},
    {"modacryl", "modacrylic"},
    {"polypropylene", "polypropylene"},
    {"polypropylen", "polypropylene"},
    {"elastane", "elastane"},
    {"spandex", "elastane"},
    {"elasthan", "elastane"},
    {"elasthanne", "elastane"},
    {"elastan", "elastane"},
    {"elastodiene", "elastodiene"},
    {"rubber", "elastodiene"},
    {"polylactide", "polylactide"},
    {"pla", "polylactide"},
    {"polylactic acid", "polylactide"},
    {"soy", "protein_soy"},
    {"soya", "protein_soy"},
    {"soy protein", "protein_soy"},
    {"soybean protein", "protein_soy"},
    {"milk", "protein_milk"},
    {"milk protein", "protein_milk"},
    {"casein", "protein_milk"},
    {"metallised", "metallised"},
    {"metallized", "metallised"},
    {"metallised polyester", "metallised"},
    {"metallized polyester", "metallised"},
    {"metallic", "metallised"},
    {"metallic polyester", "metallised"},
    {"metallic fibre", "metallised"},
    {"metallic fiber", "metallised"},
    {"paper", "paper"},
    {"papier", "paper"},
};

// Latin letters with marks as the letter itself; 0 for what is no letter.
char plain_letter(char32_t c) {
  if (c >= U'a' && c <= U'z') return static_cast<char>(c);
  if (c >= U'A' && c <= U'Z') return static_cast<char>(c - U'A' + U'a');
  struct Marked {
    std::u32string_view letters;
    char plain;
  };
  constexpr Marked table[] = {{U"àáâãäåæÀÁÂÃÄÅÆ", 'a'}, {U"çÇ", 'c'}, {U"èéêëÈÉÊË", 'e'},
                              {U"ìíîïÌÍÎÏ", 'i'},       {U"ñÑ", 'n'}, {U"òóôõöøÒÓÔÕÖØ", 'o'},
                              {U"ùúûüÙÚÛÜ", 'u'},       {U"ýÿÝ", 'y'}};
  for (const Marked& row : table)
    if (row.letters.find(c) != std::u32string_view::npos) return row.plain;
  return 0;
}

std::vector<std::string> plain_words(std::string_view text) {
  std::vector<std::string> words(1);
  for (char32_t c : code_points(text)) {
    if (const char letter = plain_letter(c)) {
      words.back() += letter;
    } else if (!words.back().empty()) {
      words.emplace_back();
    }
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

// How many words a row has where all of them stand in the text, else 0.
std::size_t matched_words(const FibreWords& row, const std::vector<std::string>& text) {
  const auto wanted = split(row.words, ' ');
  const bool all = std::all_of(wanted.begin(), wanted.end(), [&](const std::string& word) {
    return std::find(text.begin(), text.end(), word) != text.end();
  });
  return all ? wanted.size() : 0;
}

// One of two fibres that the same words may name: the variety before its kind, and "alpaca wool" is alpaca.
const Fibre* narrower(const Fibre* a, const Fibre* b) {
  const auto within = [](const Fibre* fibre, const Fibre* kind) {
    return fibre->variety_of == kind->id || (kind->id == "wool" && fibre->fibre_class == "animal");
  };
  if (a == b || within(b, a)) return b;
  return within(a, b) ? a : nullptr;
}

}  // namespace

const Fibre* fibre_by_words(std::string_view words) {
  constexpr std::size_t longest = 200;  // bytes of a fibre's words on a label
  if (words.size() > longest) return nullptr;
  if (const Fibre* row = fibre_by_id(words)) return row;
  const auto text = plain_words(words);
  const Fibre* best = nullptr;
  std::size_t most = 0;
  bool of_two = false;
  for (const FibreWords& row : rows) {
    const std::size_t count = matched_words(row, text);
    if (count == 0 || count < most) continue;
    const Fibre* fibre = fibre_by_id(row.id);
    if (count > most) of_two = false;
    const Fibre* better = count > most ? fibre : narrower(best, fibre);
    of_two = of_two || !better;
    if (better) best = better;
    most = count;
  }
  return of_two ? nullptr : best;
}

}  // namespace skeinproof
