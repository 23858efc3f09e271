// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/candidate_rows.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <cmath>
#include <functional>

#include "app/pages/candidates/band_lines.h"
#include "app/widgets/quantity_text.h"
#include "core/base/text.h"
#include "core/need/constants.h"
#include "core/pattern/item_kind.h"
#include "core/substitution/wishes.h"
#include "core/yarn/read_composition.h"

namespace skeinproof {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(CandidateRows)
};
using Weight = FactWords::Weight;

constexpr std::size_t first_consequences = 3;
// Wide enough that a mark outside the range still stands on the line.
constexpr double axis_low = 8.4, axis_high = 14.0, axis_room = 0.4;

struct FirmnessRange {
  ItemKind kind;
  const char* words;
  const char* low;
  const char* high;
};
constexpr FirmnessRange firmness_ranges[] = {
    {ItemKind::garment, QT_TRANSLATE_NOOP("CandidateRows", "garments"), "review_firmness_garment_note_low",
     "review_firmness_garment_note_high"},
    {ItemKind::sock, QT_TRANSLATE_NOOP("CandidateRows", "socks"), "review_firmness_sock_low",
     "review_firmness_sock_high"},
    {ItemKind::hat_or_mitten, QT_TRANSLATE_NOOP("CandidateRows", "hats"), "review_firmness_hat_low",
     "review_firmness_hat_high"},
    {ItemKind::shawl, QT_TRANSLATE_NOOP("CandidateRows", "shawls"), "review_firmness_shawl_low",
     "review_firmness_shawl_high"}};

// What is none of these is held against garments.
const FirmnessRange& range_of(const Pattern& pattern) {
  const ItemKind kind = item_kind(lower_ascii(pattern.item));
  for (const FirmnessRange& range : firmness_ranges)
    if (range.kind == kind) return range;
  return firmness_ranges[0];
}

QString qt(const std::string& text) { return QString::fromStdString(text); }

FactLine line(const QString& text, Weight weight = Weight::plain) { return {{{text, weight}}}; }

QString spoken_lines(const std::vector<FactLine>& lines) {
  QStringList all;
  for (const FactLine& each : lines) {
    QString text;
    for (const FactWords& run : each.runs) text += run.text;
    if (!text.trimmed().isEmpty()) all << text.simplified();
  }
  return all.join(QStringLiteral("; "));
}

// Builds the rows of the candidates that are shown.
class Builder {
 public:
  explicit Builder(const CandidateRowsInput& input) : in_(input) {
    for (const CandidateFacts& facts : in_.facts)
      if (facts.own || facts.shown) shown_.push_back(&facts);
  }

  CandidateView view();

 private:
  using Fill = void (Builder::*)(const CandidateFacts&, FactCell&) const;
  void add(const QString& name, const QString& note, Fill fill, FactRow::Kind kind = FactRow::Kind::fact);

  QString number(double value, int decimals) const {
    return qt(show_number(value, decimals, in_.reader.numbers));
  }
  QString per_cent(double share, int decimals = 0) const {
    return number(100 * share, decimals) + QStringLiteral(" %");
  }
  QString grams(double value) const {
    QuantityFormat format = QuantityFormat::mass();
    format.decimals = in_.reader.imperial_first ? 1 : 0;
    return show_quantity(format, in_.reader, {value, {}});
  }
  const CandidateFacts* own() const { return in_.facts.empty() ? nullptr : &in_.facts.front(); }
  const CandidateRole* main_role(const CandidateFacts& facts) const {
    return facts.main_role < facts.roles.size() ? &facts.roles[facts.main_role] : nullptr;
  }
  std::vector<const Yarn*> yarns_of(const CandidateFacts& facts) const;
  void add_words_of_yarns(const CandidateFacts& facts, FactCell& cell,
                          const std::function<FactLine(const Yarn&)>& words) const;

  void fibre(const CandidateFacts& facts, FactCell& cell) const;
  void structure(const CandidateFacts& facts, FactCell& cell) const;
  void put_up(const CandidateFacts& facts, FactCell& cell) const;
  void thickness(const CandidateFacts& facts, FactCell& cell) const;
  void gauge(const CandidateFacts& facts, FactCell& cell) const;
  void firmness(const CandidateFacts& facts, FactCell& cell) const;
  void mass(const CandidateFacts& facts, FactCell& cell) const;
  void skeins(const CandidateFacts& facts, FactCell& cell) const;
  void to_buy(const CandidateFacts& facts, FactCell& cell) const;
  void left_over(const CandidateFacts& facts, FactCell& cell) const;
  void care(const CandidateFacts& facts, FactCell& cell) const;
  void wishes(const CandidateFacts& facts, FactCell& cell) const;
  void differs(const CandidateFacts& facts, FactCell& cell) const;
  void tight(const CandidateFacts& facts, FactCell& cell) const;
  void settle(const CandidateFacts& facts, FactCell& cell) const;
  void cautions(const CandidateFacts& facts, FactCell& cell) const;
  void not_known(const CandidateFacts& facts, FactCell& cell) const;

  const CandidateRowsInput& in_;
  std::vector<const CandidateFacts*> shown_;
  CandidateView view_;
};

std::vector<const Yarn*> Builder::yarns_of(const CandidateFacts& facts) const {
  std::vector<const Yarn*> yarns;
  for (const CandidateRole& role : facts.roles)
    for (const StrandOf& strand : role.yarns)
      if (const Yarn* yarn = in_.pattern.yarn(strand.yarn);
          yarn != nullptr && std::find(yarns.begin(), yarns.end(), yarn) == yarns.end())
        yarns.push_back(yarn);
  return yarns;
}

// One line, or where several yarns are worked together a line for each behind its name.
void Builder::add_words_of_yarns(const CandidateFacts& facts, FactCell& cell,
                                 const std::function<FactLine(const Yarn&)>& words) const {
  const auto yarns = yarns_of(facts);
  for (const Yarn* yarn : yarns) {
    FactLine one = words(*yarn);
    if (yarns.size() > 1)
      one.runs.insert(one.runs.begin(), {qt(yarn->name) + QStringLiteral(": "), Weight::quiet});
    cell.lines.push_back(std::move(one));
  }
  if (yarns.empty()) cell.lines.push_back(line(Words::tr("no yarn named"), Weight::quiet));
}

void Builder::fibre(const CandidateFacts& facts, FactCell& cell) const {
  add_words_of_yarns(facts, cell, [](const Yarn& yarn) {
    QStringList words;
    if (!yarn.composition.empty()) words << qt(composition_text(yarn.composition));
    if (!yarn.treatment.empty() && !words.join(QString()).contains(qt(yarn.treatment), Qt::CaseInsensitive))
      words << qt(yarn.treatment);
    return words.isEmpty() ? line(Words::tr("not stated"), Weight::quiet)
                           : line(words.join(QStringLiteral(", ")));
  });
}

void Builder::structure(const CandidateFacts& facts, FactCell& cell) const {
  add_words_of_yarns(facts, cell, [](const Yarn& yarn) {
    QStringList words;
    QString spun;
    if (yarn.spinning != Spinning::unstated) spun = qt(std::string(word_of(yarn.spinning)));
    if (!yarn.structure.empty())
      spun += (spun.isEmpty() ? QString() : QStringLiteral(" ")) + qt(yarn.structure);
    if (!spun.isEmpty()) words << spun;
    for (const std::string* word : {&yarn.twist, &yarn.surface, &yarn.colouring})
      if (!word->empty()) words << qt(*word);
    return words.isEmpty() ? line(Words::tr("not stated"), Weight::quiet)
                           : line(words.join(QStringLiteral(", ")));
  });
}

void Builder::put_up(const CandidateFacts& facts, FactCell& cell) const {
  add_words_of_yarns(facts, cell, [this](const Yarn& yarn) {
    const QString words = put_up_text(yarn.put_up, in_.reader);
    FactLine one = words.isEmpty() ? line(Words::tr("not stated"), Weight::quiet) : line(words);
    for (const SoldAs& also : yarn.also_sold)
      one.runs.push_back({Words::tr("  also %1").arg(put_up_text(also.put_up, in_.reader)), Weight::quiet});
    return one;
  });
  const CandidateRole* role = main_role(facts);
  if (role == nullptr || !role->density) return;
  const QString per = Words::tr("%1 m per 100 g").arg(number(100 * role->density->value(), 0));
  if (role->strands > 1)
    cell.lines.push_back(line(Words::tr("%1, %2 together").arg(qt(role->thread), per), Weight::quiet));
  else if (cell.lines.size() == 1)
    cell.lines.front().runs.push_back({QStringLiteral("  ") + per, Weight::quiet});
}

void Builder::thickness(const CandidateFacts& facts, FactCell& cell) const {
  const Known& best = facts.thickness_by_volume ? facts.thickness_by_volume : facts.thickness_by_mass;
  if (!best) return cell.lines.push_back(line(qt(best.because), Weight::quiet));
  FactLine words = line(number(*best.value, 2));
  if (!facts.own) {
    QString note = Words::tr("  of the pattern’s");
    if (best.error_share > 0) note += Words::tr(", ±%1").arg(per_cent(best.error_share));
    words.runs.push_back({note, Weight::quiet});
  }
  cell.lines.push_back(words);
  if (in_.all_consequences && !best.because.empty())
    cell.lines.push_back(line(qt(best.because), Weight::quiet));
}

void Builder::gauge(const CandidateFacts& facts, FactCell& cell) const {
  FactLine words;
  if (facts.gauge_low && facts.gauge_high) {
    const QString low = number(*facts.gauge_low, 1), high = number(*facts.gauge_high, 1);
    words = line(Words::tr("%1 sts").arg(low == high ? low : low + QStringLiteral("–") + high));
  } else {
    words =
        line(facts.gauge_by_mass.because.empty() ? Words::tr("not known") : qt(facts.gauge_by_mass.because),
             Weight::quiet);
  }
  const CandidateRole* role = main_role(facts);
  const Yarn* yarn =
      role != nullptr && !role->yarns.empty() ? in_.pattern.yarn(role->yarns.front().yarn) : nullptr;
  const QString band = yarn != nullptr ? band_gauge_text(*yarn, in_.reader) : QString();
  if (!band.isEmpty()) words.runs.push_back({Words::tr("  its band says %1").arg(band), Weight::quiet});
  cell.lines.push_back(words);
  if (!facts.own && !facts.gauge_words.empty()) cell.lines.push_back(line(qt(facts.gauge_words)));
  if (!facts.own && !facts.needle.empty()) cell.lines.push_back(line(qt(facts.needle), Weight::quiet));
}

void Builder::firmness(const CandidateFacts& facts, FactCell& cell) const {
  if (!facts.firmness) return cell.lines.push_back(line(qt(facts.firmness.because), Weight::quiet));
  FirmnessMark mark;
  mark.value = *facts.firmness.value;
  const FirmnessRange& range = range_of(in_.pattern);
  mark.low = constant(in_.pattern, range.low);
  mark.high = constant(in_.pattern, range.high);
  if (!facts.own && own() != nullptr && own()->firmness) mark.own = own()->firmness.value;
  mark.axis_low = axis_low;
  mark.axis_high = axis_high;
  for (const CandidateFacts* each : shown_)
    if (each->firmness) {
      mark.axis_low = std::min(mark.axis_low, *each->firmness.value - axis_room);
      mark.axis_high = std::max(mark.axis_high, *each->firmness.value + axis_room);
    }
  mark.value_words = number(mark.value, 1);
  mark.low_words = number(mark.low, 1);
  mark.high_words = number(mark.high, 1);
  mark.range_words = Words::tr(range.words);
  const QString place = mark.value < mark.low    ? Words::tr("below the range")
                        : mark.value > mark.high ? Words::tr("above the range")
                                                 : Words::tr("in the range");
  cell.spoken = Words::tr("%1, %2 of %3, %4 to %5")
                    .arg(mark.value_words, place, mark.range_words, mark.low_words, mark.high_words);
  cell.firmness = mark;
}

void Builder::mass(const CandidateFacts& facts, FactCell& cell) const {
  if (!facts.mass_g) return cell.lines.push_back(line(qt(facts.mass_g.because), Weight::quiet));
  double greatest = 0;
  for (const CandidateFacts* each : shown_) greatest = std::max(greatest, each->mass_g.value.value_or(0));
  MassBar bar;
  bar.figure = grams(*facts.mass_g.value);
  bar.share = greatest > 0 ? *facts.mass_g.value / greatest : 0;
  if (own() != nullptr && own()->mass_g && greatest > 0) bar.own_share = *own()->mass_g.value / greatest;
  if (!facts.own && facts.mass_more) {
    const double more = *facts.mass_more.value;
    bar.more = (std::lround(100 * more) > 0 ? QStringLiteral("+") : QString()) + per_cent(more);
  }
  cell.spoken =
      bar.more.isEmpty() ? bar.figure : Words::tr("%1, %2 against the pattern’s").arg(bar.figure, bar.more);
  cell.mass = bar;
  if (facts.mass_per_area) {
    cell.lines.push_back(
        line(Words::tr("%1 g in a square metre").arg(number(*facts.mass_per_area.value, 0)), Weight::quiet));
  }
}

void Builder::skeins(const CandidateFacts& facts, FactCell& cell) const {
  QStringList spoken;
  for (const CandidateRole& role : facts.roles) {
    bool first = true;
    for (const YarnToBuy& buy : role.buys) {
      SkeinLine one;
      one.role = first ? qt(role.label) : Words::tr("%1, with").arg(qt(role.label));
      first = false;
      one.count = buy.skeins ? QString::number(*buy.skeins) : QStringLiteral("–");
      one.share = buy.last_skein_share;
      if (one.share) one.word = per_cent(*one.share);
      if (buy.last_skein != LastSkein::plain) {
        one.strong = true;
        one.word = (buy.last_skein == LastSkein::tips_over ? Words::tr("tips over") : Words::tr("brimful")) +
                   QLatin1Char(' ') + one.word;
      }
      if (!buy.skeins) one.word = Words::tr("no length");
      spoken << Words::tr("%1 %2 %3, last one %4")
                    .arg(one.role, one.count, Words::tr("skeins"),
                         one.word.isEmpty() ? QStringLiteral("–") : one.word);
      cell.skeins.push_back(std::move(one));
    }
    if (role.buys.empty()) {
      cell.skeins.push_back({qt(role.label), QStringLiteral("–"), {}, Words::tr("not known"), false});
      spoken << Words::tr("%1 not known").arg(qt(role.label));
    }
  }
  cell.spoken = spoken.join(QStringLiteral("; "));
}

void Builder::to_buy(const CandidateFacts& facts, FactCell& cell) const {
  FactLine words;
  if (facts.skeins)
    words.runs.push_back(
        {(*facts.skeins == 1 ? Words::tr("%1 skein") : Words::tr("%1 skeins")).arg(*facts.skeins),
         Weight::strong});
  if (!facts.basket_words.empty())
    words.runs.push_back({(facts.skeins ? QStringLiteral(", ") : QString()) + qt(facts.basket_words),
                          facts.basket ? Weight::strong : Weight::quiet});
  if (facts.cost_per_metre)
    words.runs.push_back(
        {Words::tr("  %1 a metre")
             .arg(money_words(*facts.cost_per_metre.value, 3, qt(facts.currency), in_.reader)),
         Weight::quiet});
  cell.lines.push_back(words);
  if (!facts.budget_words.empty())
    cell.lines.push_back(line(qt(facts.budget_words),
                              facts.within_budget == std::optional(false) ? Weight::strong : Weight::quiet));
}

void Builder::left_over(const CandidateFacts& facts, FactCell& cell) const {
  QuantityFormat format = QuantityFormat::yarn_length();
  format.decimals = 0;
  QStringList roles;
  for (const CandidateRole& role : facts.roles)
    for (const YarnToBuy& buy : role.buys)
      if (buy.spare)
        roles << Words::tr("%1 %2").arg(
            qt(role.label), show_figure_only(format, in_.reader, std::max(0.0, buy.spare->value())));
  if (roles.isEmpty()) return cell.lines.push_back(line(Words::tr("not known"), Weight::quiet));
  FactLine words = line(roles.join(QStringLiteral(", ")) + QLatin1Char(' ') + unit_of(format, in_.reader));
  if (facts.spare_share)
    words.runs.push_back({Words::tr("  %1 of it all").arg(per_cent(*facts.spare_share)), Weight::quiet});
  cell.lines.push_back(std::move(words));
  if (!in_.all_consequences) return;
  for (const std::string& one : facts.left_over) cell.lines.push_back(line(qt(one), Weight::quiet));
}

void Builder::care(const CandidateFacts& facts, FactCell& cell) const {
  cell.lines.push_back(facts.care_rank ? line(qt(facts.care_words))
                                       : line(Words::tr("not stated"), Weight::quiet));
}

void Builder::wishes(const CandidateFacts& facts, FactCell& cell) const {
  for (std::size_t wish = 0; wish < facts.wishes.size() && wish < in_.pattern.wishes.size(); ++wish) {
    if (in_.pattern.wishes[wish].level == WishLevel::need_not) continue;
    const WishAnswer& answer = facts.wishes[wish];
    const bool fails = answer.met == std::optional(false);
    const QString word = !answer.met ? Words::tr("not known") : fails ? Words::tr("no") : Words::tr("yes");
    FactLine one{
        {{word, fails        ? Weight::strong
                : answer.met ? Weight::plain
                             : Weight::quiet},
         {QStringLiteral("  ") + qt(wish_words(in_.pattern, in_.pattern.wishes[wish])), Weight::quiet}}};
    cell.lines.push_back(std::move(one));
    if (in_.all_consequences && !answer.because.empty()) {
      FactLine why = line(qt(answer.because), Weight::quiet);
      why.indented = true;
      cell.lines.push_back(std::move(why));
    }
  }
}

void Builder::differs(const CandidateFacts& facts, FactCell& cell) const {
  const std::size_t all = facts.consequences.size();
  const std::size_t count = in_.all_consequences ? all : std::min(all, first_consequences);
  for (std::size_t i = 0; i < count; ++i) {
    const Consequence& one = facts.consequences[i];
    FactLine words;
    if (one.weight == ConsequenceWeight::stop) words.runs.push_back({Words::tr("Stop  "), Weight::strong});
    words.runs.push_back({qt(one.title), Weight::strong});
    cell.lines.push_back(std::move(words));
    const auto reason = [&](const QString& text, Weight weight) {
      if (text.isEmpty()) return;
      FactLine why = line(text, weight);
      why.indented = true;
      cell.lines.push_back(std::move(why));
    };
    reason(qt(one.because), Weight::quiet);
    if (!in_.all_consequences) continue;
    reason(qt(one.advice), Weight::plain);
    if (!one.test.empty()) reason(Words::tr("Settle it by: %1").arg(qt(one.test)), Weight::plain);
    reason(Words::tr("rule %1").arg(qt(one.id)), Weight::quiet);
  }
  if (count < all)
    cell.lines.push_back(line(Words::tr("and %1 more (Enter)").arg(all - count), Weight::quiet));
  if (all == 0)
    cell.lines.push_back(line(
        facts.own ? Words::tr("as designed") : Words::tr("nothing that the rules know of"), Weight::quiet));
  if (!facts.not_looked_at.empty() && !facts.own) {
    FactLine box = line(qt(not_looked_at_words(facts.not_looked_at)), Weight::quiet);
    box.boxed = true;
    cell.lines.push_back(std::move(box));
  }
}

void Builder::tight(const CandidateFacts& facts, FactCell& cell) const {
  for (const std::string& one : facts.tight) cell.lines.push_back(line(qt(one)));
  if (facts.tight.empty()) cell.lines.push_back(line(Words::tr("nowhere"), Weight::quiet));
}

void Builder::settle(const CandidateFacts& facts, FactCell& cell) const {
  const std::size_t count = in_.all_consequences ? facts.consequences.size()
                                                 : std::min(facts.consequences.size(), first_consequences);
  QStringList tests;
  for (std::size_t i = 0; i < count; ++i) {
    const Consequence& one = facts.consequences[i];
    const QString test = qt(in_.all_consequences || one.short_test.empty() ? one.test : one.short_test);
    if (!test.isEmpty() && !tests.contains(test)) tests << test;
  }
  for (const QString& test : tests) cell.lines.push_back(line(test));
  if (tests.isEmpty()) cell.lines.push_back(line(Words::tr("nothing open"), Weight::quiet));
}

void Builder::cautions(const CandidateFacts& facts, FactCell& cell) const {
  for (const std::string& one : facts.cautions) cell.lines.push_back(line(qt(one)));
}

void Builder::not_known(const CandidateFacts& facts, FactCell& cell) const {
  for (const std::string& one : facts.problems) cell.lines.push_back(line(qt(one)));
}

void Builder::add(const QString& name, const QString& note, Fill fill, FactRow::Kind kind) {
  FactRow row{kind, name, note, {}};
  bool any = false, same = true;
  for (const CandidateFacts* facts : shown_) {
    FactCell cell;
    (this->*fill)(*facts, cell);
    const QString words = spoken_lines(cell.lines);
    if (cell.spoken.isEmpty())
      cell.spoken = words;
    else if (!words.isEmpty())
      cell.spoken += QStringLiteral("; ") + words;
    any = any || !cell.spoken.isEmpty();
    same = same && (row.cells.empty() || row.cells.front().spoken == cell.spoken);
    row.cells.push_back(std::move(cell));
  }
  if (!any || (in_.only_what_differs && same && row.cells.size() > 1)) return;
  view_.rows.push_back(std::move(row));
}

CandidateView Builder::view() {
  for (const CandidateFacts* facts : shown_)
    view_.heads.push_back(
        {facts->id, qt(facts->name), facts->own ? Words::tr("the pattern’s yarn") : Words::tr("candidate")});
  if (shown_.empty()) return std::move(view_);
  using Kind = FactRow::Kind;
  add(Words::tr("Fibre"), {}, &Builder::fibre);
  add(Words::tr("Structure"), {}, &Builder::structure);
  add(Words::tr("Put-up"), {}, &Builder::put_up);
  add(Words::tr("Thickness"), {}, &Builder::thickness);
  add(Words::tr("Likely gauge"), Words::tr("over 10 cm"), &Builder::gauge);
  add(Words::tr("Firmness"), Words::tr("at the pattern’s gauge"), &Builder::firmness);
  add(Words::tr("Garment mass"), {}, &Builder::mass);
  add(Words::tr("Skeins and last skein"), Words::tr("planned"), &Builder::skeins);
  add(Words::tr("To buy"), {}, &Builder::to_buy);
  add(Words::tr("Left over"), {}, &Builder::left_over);
  add(Words::tr("Care"), Words::tr("of the strictest"), &Builder::care);
  add(Words::tr("What you ask"), {}, &Builder::wishes);
  FactRow heading;
  heading.kind = Kind::heading;
  heading.name = Words::tr("Consequences");
  heading.cells.resize(shown_.size());
  view_.rows.push_back(std::move(heading));
  add(Words::tr("Will differ"),
      in_.all_consequences ? Words::tr("all, worst first") : Words::tr("three at most, worst first"),
      &Builder::differs, Kind::consequences);
  add(Words::tr("Where it is tight"), {}, &Builder::tight, Kind::consequences);
  add(Words::tr("Settle it by"), {}, &Builder::settle, Kind::consequences);
  add(Words::tr("Cautions"), {}, &Builder::cautions, Kind::consequences);
  add(Words::tr("Not known"), {}, &Builder::not_known, Kind::consequences);
  return std::move(view_);
}

}  // namespace

CandidateView candidate_view(const CandidateRowsInput& input) { return Builder(input).view(); }

QString money_words(double amount, int decimals, const QString& currency, const ReaderStyle& reader) {
  const QString figure = qt(show_number(amount, decimals, reader.numbers));
  if (currency.isEmpty()) return figure;
  return currency.back().isLetter() ? figure + QLatin1Char(' ') + currency : currency + figure;
}

QString shown_words(const Pattern& pattern) {
  const auto shown = std::count_if(pattern.candidates.begin(), pattern.candidates.end(),
                                   [](const Candidate& each) { return each.shown; });
  return Words::tr("pattern and %1 of %2").arg(shown).arg(pattern.candidates.size());
}

}  // namespace skeinproof
