// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/manuscript/reader.h"

// What is done with the phrases that the grammar of read_clause finds. Each gives false where the phrase
// means nothing in its place, so that another reading is tried.
namespace skeinproof {

struct PhrasePlace {
  Reader& reader;
  const Clause& clause;
  std::size_t first = 0, last = 0;  // tokens of the phrase
};

// read_sizes.cpp
bool take_sizes(const PhrasePlace& at);
bool take_head_row(const PhrasePlace& at);

// read_measurements.cpp
bool take_measure_line(const PhrasePlace& at);
bool take_measure_behind(const PhrasePlace& at);
bool take_more_measures(const PhrasePlace& at);
bool take_measures_by(const PhrasePlace& at);
bool take_fit(const PhrasePlace& at);
bool take_ease(const PhrasePlace& at);

// read_gauge.cpp
bool take_gauge_stitches(const PhrasePlace& at);
bool take_gauge_rows(const PhrasePlace& at);
bool take_gauge_slashed(const PhrasePlace& at);
bool take_gauge_over(const PhrasePlace& at);
bool take_gauge_per_inch(const PhrasePlace& at);
bool take_gauge_fabric(const PhrasePlace& at);
bool take_gauge_state(const PhrasePlace& at);
bool take_gauge_worked(const PhrasePlace& at);
bool take_band_gauge(const PhrasePlace& at);

// read_needles.cpp
bool take_needle(const PhrasePlace& at);
bool take_needle_length(const PhrasePlace& at);
bool take_needle_type(const PhrasePlace& at);

// read_yarn.cpp
bool take_fibre(const PhrasePlace& at);
bool take_description(const PhrasePlace& at);
bool take_ply(const PhrasePlace& at);
bool take_care(const PhrasePlace& at);
bool take_withdrawn(const PhrasePlace& at);
bool take_strands(const PhrasePlace& at);
bool take_colours(const PhrasePlace& at);

// read_counts.cpp
bool take_amounts(const PhrasePlace& at);
bool take_counted_by_weight(const PhrasePlace& at);
bool take_count(const PhrasePlace& at);
bool take_figures(const PhrasePlace& at);
bool take_total_word(const PhrasePlace& at);

// read_roles.cpp
bool take_labelled_role(const PhrasePlace& at);
bool take_role_words(const PhrasePlace& at);
bool take_prefixed_role(const PhrasePlace& at);
bool take_role(const PhrasePlace& at);
bool take_lone_letter(const PhrasePlace& at);

// read_names.cpp
bool take_shade(const PhrasePlace& at);
bool take_name(const PhrasePlace& at);

// read_sample.cpp
bool take_shown(const PhrasePlace& at);
bool take_as_listed(const PhrasePlace& at);

// read_notions.cpp
bool take_counted_notion(const PhrasePlace& at);
bool take_named_notion(const PhrasePlace& at);
bool take_notion(const PhrasePlace& at);
bool take_any_notion(const PhrasePlace& at);

// read_instructions.cpp
bool take_stitches(const PhrasePlace& at);
bool take_role_mention(const PhrasePlace& at);
bool take_named_yarn(const PhrasePlace& at);
bool take_extra(const PhrasePlace& at);
bool take_phrase(const PhrasePlace& at);
bool take_caution(const PhrasePlace& at);
bool take_legend_shade(const PhrasePlace& at);
bool take_symbol(const PhrasePlace& at);

bool take_heading(const PhrasePlace& at);

}  // namespace skeinproof
