// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yarn/moisture.h"

#include <algorithm>
#include <cassert>

#include "core/base/text.h"
#include "core/reference/lookup.h"

namespace skeinproof {
namespace {

// Whose moisture curve a fibre takes. Fibres without a row of their own follow the kind they are a variety
// of. Kinship by what a fibre is made of: keratin, cellulose, polymers that hardly take water. Judgement, no
// source.
struct Kin {
  std::string_view fibre, curve;
};
constexpr Kin kin_rows[] = {
    {"wool", "wool"},
    {"mohair", "wool"},
    {"cashmere", "wool"},
    {"alpaca", "wool"},
    {"llama", "wool"},
    {"vicuna_guanaco", "wool"},
    {"camel", "wool"},
    {"yak", "wool"},
    {"angora", "wool"},
    {"qiviut", "wool"},
    {"bison", "wool"},
    {"possum", "wool"},
    {"protein_soy", "wool"},
    {"protein_milk", "wool"},
    {"silk", "silk"},
    {"cotton", "cotton"},
    {"paper", "cotton"},
    {"flax", "flax"},
    {"hemp", "flax"},
    {"ramie", "flax"},
    {"jute", "flax"},
    {"nettle", "flax"},
    {"viscose", "viscose"},
    {"modal", "viscose"},
    {"lyocell", "viscose"},
    {"cupro", "viscose"},
    {"acetate", "nylon"},
    {"triacetate", "nylon"},
    {"polyamide", "nylon"},
    {"acrylic", "acrylic"},
    {"modacrylic", "acrylic"},
    {"polyester", "polyester"},
    {"polypropylene", "polyester"},
    {"elastane", "polyester"},
    {"elastodiene", "polyester"},
    {"polylactide", "polyester"},
    {"metallised", "polyester"},
};

std::string_view curve_of(const Fibre& fibre) {
  const std::string_view kind = fibre.variety_of.empty() ? fibre.id : fibre.variety_of;
  for (const Kin& row : kin_rows)
    if (row.fibre == kind) return row.curve;
  assert(false && "every fibre of the table has a curve");
  return "wool";
}

// The table calls polyamide's curve nylon.
bool own_curve(const Fibre& fibre, std::string_view curve) {
  return fibre.id == curve || fibre.variety_of == curve || (fibre.id == "polyamide" && curve == "nylon");
}

struct CurvePoint {
  double value = 0, low = 0, high = 0;
  Confidence confidence = Confidence::unstated;
  std::string_view source;
};

CurvePoint on_curve(std::string_view curve, double humidity_pct) {
  const MoisturePoint* below = nullptr;
  const MoisturePoint* above = nullptr;
  for (const MoisturePoint& point : moisture_points()) {
    if (point.curve != curve) continue;
    if (point.humidity_pct <= humidity_pct) below = &point;
    if (point.humidity_pct >= humidity_pct && !above) above = &point;
  }
  if (!below) below = above;
  if (!above) above = below;
  assert(below && above);
  const double span = above->humidity_pct - below->humidity_pct;
  const double share = span > 0 ? (humidity_pct - below->humidity_pct) / span : 0;
  const auto between = [share](std::optional<double> a, std::optional<double> b) {
    return a.value_or(0) + share * (b.value_or(0) - a.value_or(0));
  };
  const Figure& a = below->regain_pct;
  const Figure& b = above->regain_pct;
  return {between(a.value, b.value), between(a.low, b.low), between(a.high, b.high), a.confidence, a.source};
}

std::string_view word_of_curve(std::string_view curve) { return curve == "flax" ? "flax (linen)" : curve; }

// Every allowance a label may mean, the likeliest first.
struct Allowances {
  std::vector<double> pct;
  std::vector<std::string> assumed;
  std::string source;
};

void add_european(const Fibre& fibre, Spinning spinning, Allowances& found) {
  const Allowance& row = fibre.allowance;
  found.source = citation(row.source, row.confidence);
  const bool of_spinning = row.alternative_pct && row.alternative_when != "mercerised";
  const bool carded = row.alternative_when == "carded";
  const bool alternative =
      of_spinning && (carded ? spinning == Spinning::woollen || spinning == Spinning::semi_worsted
                             : spinning == Spinning::filament);
  if (of_spinning && spinning == Spinning::unstated) {
    // The rule itself takes the carded figure where the spinning is not known.
    found.pct.push_back(carded ? *row.alternative_pct : *row.pct);
    found.pct.push_back(carded ? *row.pct : *row.alternative_pct);
    found.assumed.push_back(std::string(fibre.name) +
                            ": spinning not stated, both European allowances are allowed for");
  } else {
    found.pct.push_back(alternative ? *row.alternative_pct : *row.pct);
  }
}

void add_united_states(const Fibre& fibre, Allowances& found) {
  if (!fibre.us_regain_pct.value) {
    found.assumed.push_back(std::string(fibre.name) +
                            ": no United States figure in the tables, the European one stands in");
    return;
  }
  found.pct.push_back(*fibre.us_regain_pct.value);
  if (!found.source.empty()) found.source += "; ";
  found.source += citation(fibre.us_regain_pct.source, fibre.us_regain_pct.confidence);
}

// A fibre without an allowance takes its kin's.
const Fibre& with_allowance(const Fibre& fibre, std::vector<std::string>& assumed) {
  if (fibre.allowance.pct) return fibre;
  const Fibre* kin = fibre_by_id(curve_of(fibre));
  assert(kin && kin->allowance.pct);
  assumed.push_back(std::string(fibre.name) + ": no official allowance of its own, that of " +
                    std::string(word_of_curve(kin->id)) + " stands in");
  return *kin;
}

void add_new(std::vector<std::string>& to, const std::vector<std::string>& from) {
  for (const std::string& text : from)
    if (!text.empty() && std::find(to.begin(), to.end(), text) == to.end()) to.push_back(text);
}

}  // namespace

MoistureContent regain(const Fibre& fibre, double humidity_pct) {
  assert(humidity_pct >= 0 && humidity_pct <= 100);
  const std::string_view curve = curve_of(fibre);
  const CurvePoint point = on_curve(curve, humidity_pct);
  MoistureContent content{point.value, point.low, point.high, citation(point.source, point.confidence), {}};
  if (own_curve(fibre, curve)) return content;
  const double kin_at_65 = on_curve(curve, 65).value;
  const Figure& own = fibre.regain_at_65_pct;
  if (own.low) content.low_pct = std::min(content.low_pct, point.value * *own.low / kin_at_65);
  if (own.high) content.high_pct = std::max(content.high_pct, point.value * *own.high / kin_at_65);
  content.assumed.push_back(std::string(fibre.name) + ": no moisture curve of its own, that of " +
                            std::string(word_of_curve(curve)) + " stands in");
  return content;
}

MoistureContent allowance(const Fibre& fibre, Spinning spinning, Market market) {
  Allowances found;
  const Fibre& row = with_allowance(fibre, found.assumed);
  if (market != Market::united_states) add_european(row, spinning, found);
  if (market != Market::europe) add_united_states(row, found);
  if (found.pct.empty()) add_european(row, spinning, found);
  if (market == Market::unstated && row.us_regain_pct.value)
    found.assumed.push_back("market not stated, European and United States allowances are allowed for");
  const auto [low, high] = std::minmax_element(found.pct.begin(), found.pct.end());
  return {found.pct.front(), *low, *high, found.source, found.assumed};
}

Expected<LabelGram> label_gram(const std::vector<FibreShare>& composition, Spinning spinning, Market market,
                               double humidity_pct) {
  if (!(humidity_pct >= 0 && humidity_pct <= 100))
    return failure(ErrorKind::out_of_range, "a relative humidity outside 0 to 100 %",
                   "percent from 0 to 100");
  LabelGram gram{0, 0, 0, 0, {}, {}};
  double total = 0;
  for (const FibreShare& share : composition) {
    if (share.percent.value <= 0) continue;
    const Fibre* fibre = fibre_by_id(share.fibre);
    if (!fibre)
      return failure(ErrorKind::unknown_name, quoted(share.words),
                     "a fibre of the table, to know the water it holds");
    const MoistureContent held = regain(*fibre, humidity_pct);
    const MoistureContent allowed = allowance(*fibre, spinning, market);
    const double percent = share.percent.value;
    total += percent;
    gram.dry += percent / (1 + allowed.pct / 100);
    gram.on_scale += percent * (1 + held.pct / 100) / (1 + allowed.pct / 100);
    gram.low += percent * (1 + held.low_pct / 100) / (1 + allowed.high_pct / 100);
    gram.high += percent * (1 + held.high_pct / 100) / (1 + allowed.low_pct / 100);
    add_new(gram.assumed, held.assumed);
    add_new(gram.assumed, allowed.assumed);
    add_new(gram.sources, {held.source, allowed.source});
  }
  if (total <= 0)
    return failure(ErrorKind::not_found, "no fibres", "the fibres of the yarn, to know the water they hold");
  gram.on_scale /= total;
  gram.low /= total;
  gram.high /= total;
  gram.dry /= total;
  return gram;
}

Expected<double> blend_allowance_pct(const std::vector<FibreShare>& composition, Spinning spinning,
                                     Market market) {
  const auto gram = label_gram(composition, spinning, market, 65);
  if (!gram) return tl::unexpected(gram.error());
  return (1 / gram->dry - 1) * 100;
}

double regain_from_content_pct(double content_pct) { return content_pct / (100 - content_pct) * 100; }

}  // namespace skeinproof
