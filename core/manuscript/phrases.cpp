// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/phrases.h"

#include <tao/pegtl.hpp>

namespace skeinproof {
namespace {

// The phrases of the trade, over the line of letters of a reader: one letter a word, a mark or a list.
namespace grammar {
using namespace tao::pegtl;

template <Sense... senses>
struct word : one<static_cast<char>(senses)...> {};

struct yarn_length : one<'1'> {};
struct weight : one<'2'> {};
struct cloth : one<'3'> {};
struct millimetres : one<'4'> {};
struct percent : one<'5'> {};
struct skeins : one<'6'> {};
struct stitches : one<'7'> {};
struct rows : one<'8'> {};
struct bare : one<'0'> {};
struct labels : one<label_list_shape> {};
struct figures : range<'0', '8'> {};
struct any_word : sor<ranges<'a', 'w', 'y', 'z', '@', 'Z'>, one<'!', '$', '^', '_', '~', '<'>> {};
struct unknown : one<'w', 'W'> {};
struct small : one<'w'> {};
struct capitalised : one<'W'> {};
struct open : one<'('> {};
struct close : one<')'> {};
// At most n of the marks and words that may stand between the figures of one thing.
template <unsigned n, char... marks>
struct few : rep_opt<n, one<marks...>> {};

// Sizes and measurements.
struct size_line
    : seq<word<Sense::size_word>,
          few<5, ':', '-', '(', '\n', '\t', '*', 'w', 'W', 'd', 'F', 'Q', 'g', 'P', 'Z'>, labels> {};
struct head_row : labels {};
struct both_systems : seq<cloth, rep_opt<2, seq<few<2, '/', '(', ')', '='>, cloth>>> {};
struct ease_behind : seq<both_systems, few<2, ')', 'f', '@', 'P'>, word<Sense::ease>> {};
struct ease_before : seq<word<Sense::ease>, few<2, ':', 'f', '-', 'A', '\t', '+', '='>, both_systems> {};
struct no_ease : word<Sense::ease> {};
struct name_word : sor<word<Sense::measure, Sense::measure_end, Sense::fit, Sense::piece, Sense::of,
                            Sense::to, Sense::worked, Sense::fabric, Sense::cast_on, Sense::measures_word,
                            Sense::item, Sense::wearer>,
                       unknown> {};
struct measure_name : seq<name_word, rep_opt<7, seq<few<1, '/', ','>, name_word>>> {};
struct unit_note : seq<few<1, '('>, one<'u', 'i', 'F'>, few<1, '/', 'u'>, few<1, ')'>> {};
struct measure_line : seq<measure_name, rep_opt<2, seq<few<1, ','>, unit_note>>,
                          few<3, ':', '-', '=', '\t', '\n', 'A', ')', ','>, sor<both_systems, bare>> {};
struct measure_behind : seq<both_systems, few<2, ')', 'i', 'f', '\t'>, opt<word<Sense::fit>>,
                            word<Sense::measure, Sense::measure_end>> {};
struct by : seq<bare, one<'x'>, cloth> {};
struct more_measures : both_systems {};
struct fit_word : word<Sense::fit, Sense::measures_word> {};
struct of_sizes : sor<size_line, head_row, ease_behind, ease_before, no_ease> {};
struct of_measures : sor<by, measure_line, measure_behind, more_measures, fit_word> {};

// Gauge and needles.
struct band_gauge : seq<word<Sense::gauge_word>, few<2, ':', '-', 'f', 'A'>, stitches> {};
struct gauge_stitches : stitches {};
struct gauge_rows : rows {};
struct square : seq<bare, one<'x'>, cloth> {};
struct slashed : bare {};
struct per_inch : seq<word<Sense::per, Sense::over, Sense::to>, word<Sense::unit_word, Sense::in>> {};
struct over : cloth {};
struct fabric_name : plus<word<Sense::fabric>> {};
struct state_words : seq<word<Sense::gauge_state>, rep_opt<2, seq<one<'&'>, word<Sense::gauge_state>>>> {};
struct worked_words : word<Sense::worked> {};
struct of_gauge : sor<gauge_stitches, gauge_rows, square, slashed, per_inch, over, fabric_name, state_words,
                      worked_words> {};

struct system_name : seq<word<Sense::needle_system>, few<3, 'Z', '#', 'h', '-', '.'>, sor<bare, labels>> {};
struct numbered : seq<word<Sense::role_prefix>, few<1, '.'>, bare> {};
struct size_name : sor<millimetres, system_name, numbered> {};
struct needle : seq<size_name, rep_opt<4, seq<few<2, '(', '/', ',', '=', ')', ';'>, few<1, 'd'>, size_name>>,
                    opt<close>> {};
struct needle_length : seq<cloth, rep_opt<2, seq<few<2, '/', '(', ')'>, cloth>>, opt<close>> {};
struct needle_type : word<Sense::needle_type> {};
struct of_needles : sor<needle, needle_length, needle_type> {};

// Yarn.
struct bare_fibre : seq<bare, few<1, 'v'>, word<Sense::fibre>> {};
struct fibre : sor<percent, bare_fibre> {};
struct amount : sor<yarn_length, weight> {};
struct amounts
    : seq<amount,
          rep_opt<7, seq<few<4, '/', '(', ')', '=', 'P', 'A', 'S', 'f', 'd', '-', 'x', ',', 'i', '.', '@'>,
                         amount>>,
          opt<seq<opt<close>, word<Sense::skein_word>>>> {};
struct length_in_brackets
    : seq<open, opt<word<Sense::about>>, yarn_length, rep_opt<2, seq<one<'/', '='>, yarn_length>>, close> {};
struct weights : seq<weight, rep_opt<2, seq<few<2, '/', '(', ')'>, weight>>, opt<close>> {};
struct of_weight : sor<seq<few<1, '\t'>, one<'x'>, weights, opt<word<Sense::skein_word>>>,
                       seq<weights, word<Sense::skein_word>>> {};
struct counted_by_weight : seq<bare, of_weight, opt<length_in_brackets>> {};
struct count : skeins {};
struct plain_figures : bare {};
struct total_word : word<Sense::total> {};
struct strands : seq<opt<sor<bare, word<Sense::number_word>>>, word<Sense::strands>> {};
struct ply : seq<sor<bare, word<Sense::number_word>>, opt<one<'-'>>, word<Sense::description>, opt<small>> {};
struct described : seq<word<Sense::description>, opt<small>> {};
struct care_words : seq<word<Sense::care>, opt<seq<few<2, '@', 'w'>, bare, few<1, '?'>, opt<capitalised>>>> {
};
struct withdrawn : word<Sense::withdrawn> {};
struct colours : seq<opt<word<Sense::in>>, sor<bare, word<Sense::number_word>>, word<Sense::colours_word>> {};
struct of_yarn : sor<fibre, counted_by_weight, amounts, count, strands, ply, colours, plain_figures,
                     total_word, described, care_words, withdrawn> {};

// Roles and shades.
struct label : sor<word<Sense::role_label>, capitalised> {};
struct labelled_role
    : seq<word<Sense::role_words>, opt<bare>, open, label, sor<close, at<one<'-', ':', ','>>>> {};
struct role_words : seq<word<Sense::role_words>, opt<bare>> {};
struct prefixed_role : seq<word<Sense::role_prefix, Sense::yarn_word>, sor<capitalised, bare>> {};
struct role : word<Sense::role_label> {};
struct lone_letter : capitalised {};
struct shade : seq<word<Sense::role_prefix>, few<2, ':', '-', '.', '"', '='>, sor<any_word, bare>> {};
struct name : any_word {};
struct of_roles : sor<labelled_role, role_words, prefixed_role, role, lone_letter, shade> {};

// Sample, notions, remarks.
struct shown : word<Sense::shown, Sense::model> {};
struct as_listed : seq<word<Sense::colours_word, Sense::role_prefix>, small, small> {};
struct counted_notion
    : seq<figures, rep_opt<4, sor<unknown, millimetres, cloth, one<'x', '(', ')', '/', '-'>>>,
          word<Sense::notion>> {};
struct named_notion
    : seq<word<Sense::notion>, sor<seq<open, bare, close>, seq<few<3, ':', '-', '\t', 'x'>, bare>>> {};
struct notion : word<Sense::notion> {};
struct any_notion : seq<opt<bare>, unknown, rep_opt<4, sor<any_word, one<'-'>>>> {};
struct extra : word<Sense::extra> {};
struct phrase : word<Sense::phrase> {};
struct caution : word<Sense::caution> {};
struct heading : word<Sense::size_word, Sense::yarn_word, Sense::gauge_word, Sense::needle_word,
                      Sense::notions_word, Sense::care_heading> {};
struct remarks : sor<extra, phrase, caution, shown, as_listed> {};

struct block : sor<of_sizes, band_gauge, counted_notion, named_notion, notion, of_needles, of_gauge,
                   of_measures, of_yarn, of_roles, remarks, heading, name, any_notion> {};

// Instructions and the key of a chart.
struct cast_on : seq<word<Sense::cast_on, Sense::sentence_verb>,
                     few<4, 'w', 'R', 'i', '@', 'A', ',', 'W', 'f'>, stitches> {};
struct stitch_count : stitches {};
struct role_mention : word<Sense::role_label> {};
struct named_yarn : seq<word<Sense::with, Sense::in, Sense::role_prefix, Sense::yarn_word, Sense::to>,
                        few<1, 'Y', 'h'>, capitalised> {};
struct text : sor<cast_on, stitch_count, counted_notion, named_yarn, role_mention, extra, phrase, caution> {};

struct symbol : sor<seq<sor<small, bare, one<'x', '.', '-', '+', '*', '?', '/', '#', 'v'>>,
                        few<1, '=', ':', '-', '\t'>, at<word<Sense::role_label>>>> {};
struct legend_shade : seq<word<Sense::role_label>, few<3, ':', '-', '=', '(', ','>, capitalised> {};
struct legend : sor<legend_shade, symbol, role_mention> {};
}  // namespace grammar

template <class Rule>
struct action : tao::pegtl::nothing<Rule> {};

// What is said already is not said again.
template <auto take>
struct calls {
  template <class Input>
  static bool apply(const Input& in, Reader& reader, const Clause& clause) {
    const char* start = reader.letters.data();
    const PhrasePlace place{reader, clause, static_cast<std::size_t>(in.begin() - start),
                            static_cast<std::size_t>(in.end() - start)};
    return !reader.used[place.first] && take(place);
  }
};

// clang-format off
template <> struct action<grammar::size_line> : calls<take_sizes> {};
template <> struct action<grammar::head_row> : calls<take_head_row> {};
template <> struct action<grammar::ease_behind> : calls<take_ease> {};
template <> struct action<grammar::ease_before> : calls<take_ease> {};
template <> struct action<grammar::no_ease> : calls<take_ease> {};
template <> struct action<grammar::measure_line> : calls<take_measure_line> {};
template <> struct action<grammar::measure_behind> : calls<take_measure_behind> {};
template <> struct action<grammar::by> : calls<take_measures_by> {};
template <> struct action<grammar::more_measures> : calls<take_more_measures> {};
template <> struct action<grammar::fit_word> : calls<take_fit> {};
template <> struct action<grammar::band_gauge> : calls<take_band_gauge> {};
template <> struct action<grammar::gauge_stitches> : calls<take_gauge_stitches> {};
template <> struct action<grammar::gauge_rows> : calls<take_gauge_rows> {};
template <> struct action<grammar::square> : calls<take_gauge_over> {};
template <> struct action<grammar::slashed> : calls<take_gauge_slashed> {};
template <> struct action<grammar::per_inch> : calls<take_gauge_per_inch> {};
template <> struct action<grammar::over> : calls<take_gauge_over> {};
template <> struct action<grammar::fabric_name> : calls<take_gauge_fabric> {};
template <> struct action<grammar::state_words> : calls<take_gauge_state> {};
template <> struct action<grammar::worked_words> : calls<take_gauge_worked> {};
template <> struct action<grammar::needle> : calls<take_needle> {};
template <> struct action<grammar::needle_length> : calls<take_needle_length> {};
template <> struct action<grammar::needle_type> : calls<take_needle_type> {};
template <> struct action<grammar::fibre> : calls<take_fibre> {};
template <> struct action<grammar::amounts> : calls<take_amounts> {};
template <> struct action<grammar::counted_by_weight> : calls<take_counted_by_weight> {};
template <> struct action<grammar::count> : calls<take_count> {};
template <> struct action<grammar::plain_figures> : calls<take_figures> {};
template <> struct action<grammar::total_word> : calls<take_total_word> {};
template <> struct action<grammar::strands> : calls<take_strands> {};
template <> struct action<grammar::ply> : calls<take_ply> {};
template <> struct action<grammar::described> : calls<take_description> {};
template <> struct action<grammar::care_words> : calls<take_care> {};
template <> struct action<grammar::withdrawn> : calls<take_withdrawn> {};
template <> struct action<grammar::colours> : calls<take_colours> {};
template <> struct action<grammar::labelled_role> : calls<take_labelled_role> {};
template <> struct action<grammar::role_words> : calls<take_role_words> {};
template <> struct action<grammar::prefixed_role> : calls<take_prefixed_role> {};
template <> struct action<grammar::role> : calls<take_role> {};
template <> struct action<grammar::lone_letter> : calls<take_lone_letter> {};
template <> struct action<grammar::shade> : calls<take_shade> {};
template <> struct action<grammar::name> : calls<take_name> {};
template <> struct action<grammar::shown> : calls<take_shown> {};
template <> struct action<grammar::as_listed> : calls<take_as_listed> {};
template <> struct action<grammar::counted_notion> : calls<take_counted_notion> {};
template <> struct action<grammar::named_notion> : calls<take_named_notion> {};
template <> struct action<grammar::notion> : calls<take_notion> {};
template <> struct action<grammar::any_notion> : calls<take_any_notion> {};
template <> struct action<grammar::extra> : calls<take_extra> {};
template <> struct action<grammar::phrase> : calls<take_phrase> {};
template <> struct action<grammar::caution> : calls<take_caution> {};
template <> struct action<grammar::heading> : calls<take_heading> {};
template <> struct action<grammar::cast_on> : calls<take_stitches> {};
template <> struct action<grammar::stitch_count> : calls<take_stitches> {};
template <> struct action<grammar::role_mention> : calls<take_role_mention> {};
template <> struct action<grammar::named_yarn> : calls<take_named_yarn> {};
template <> struct action<grammar::legend_shade> : calls<take_legend_shade> {};
template <> struct action<grammar::symbol> : calls<take_symbol> {};
// clang-format on

// A clause as a row of phrases; what no phrase takes is passed over, a token at a time.
template <class Phrases>
void read_phrases(Reader& reader, const Clause& clause) {
  using namespace tao::pegtl;
  memory_input<tracking_mode::lazy> input(reader.letters.data() + clause.first,
                                          reader.letters.data() + clause.last, "");
  parse<star<sor<Phrases, any>>, action>(input, reader, clause);
}

}  // namespace

void read_clause(Reader& reader, const Clause& clause) {
  reader.run = clause.topic == Topic::gauge     ? Run::gauge
               : clause.topic == Topic::needles ? Run::needles
               : clause.topic == Topic::sizes   ? Run::measures
                                                : Run::none;
  reader.schematic = clause.schematic;
  if (!clause.goes_on) {
    reader.yarn_found = false;
    reader.yarn_bare = false;
    reader.totals = false;
    reader.counted = false;
    reader.role.clear();
    reader.waiting.clear();
    reader.count_of_each = -1;
    reader.some_sizes = false;
    reader.clause_says = reader.out.statements.size();
    ++reader.mention;
  }
  switch (clause.topic) {
    case Topic::text:
    case Topic::chart:
      read_phrases<grammar::text>(reader, clause);
      reader.use(clause.first, clause.last);
      return;
    case Topic::legend:
      read_phrases<grammar::legend>(reader, clause);
      return;
    default:
      read_phrases<grammar::block>(reader, clause);
  }
  // "In size 2 one ball of CC": not said of every size.
  if (reader.some_sizes)
    for (std::size_t k = reader.clause_says; k < reader.out.statements.size(); ++k)
      reader.out.statements[k].all_sizes = false;
}

bool take_heading(const PhrasePlace& at) {
  Reader& reader = at.reader;
  if (reader.has(at.first, Sense::gauge_word)) reader.run = Run::gauge;
  if (reader.has(at.first, Sense::needle_word) && reader.run != Run::gauge) reader.run = Run::needles;
  reader.use(at.first, at.last);
  return true;
}

}  // namespace skeinproof
