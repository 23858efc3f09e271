// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/schema.h"

namespace skeinproof {
namespace {

// Columns are named as those of a project: _m metres, _g grams, _cm centimetres, _pct percent; x_typed holds
// the characters that x was typed as. NULL is "not known".
constexpr std::string_view shelf_schema_1 = R"sql(
CREATE TABLE shelf (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  last_id INTEGER NOT NULL          -- no id is given twice
) STRICT;
INSERT INTO shelf VALUES (1, 0);

CREATE TABLE yarns (                -- one shade and dye lot of a yarn that is known or owned, in the order of ids
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  put_up_length_m REAL,
  put_up_length_m_typed TEXT,
  put_up_weight_g REAL,
  put_up_weight_g_typed TEXT,
  put_up_word TEXT NOT NULL CHECK (put_up_word IN ('skein', 'ball', 'hank', 'cake', 'cone')),
  spinning TEXT NOT NULL CHECK (spinning IN
    ('unstated', 'worsted-spun', 'semi-worsted', 'woollen-spun', 'filament')),
  market TEXT NOT NULL CHECK (market IN ('unstated', 'Europe', 'United States')),
  structure TEXT NOT NULL,
  twist TEXT NOT NULL,
  category TEXT NOT NULL,
  surface TEXT NOT NULL,
  treatment TEXT NOT NULL,
  colouring TEXT NOT NULL,
  care TEXT NOT NULL,
  withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1)),
  description TEXT NOT NULL,
  band_stitches_low REAL,           -- stitches in 10 cm
  band_stitches_low_typed TEXT,
  band_stitches_high REAL,
  band_stitches_high_typed TEXT,
  band_needle_cm REAL,
  band_needle_cm_typed TEXT,
  price_amount REAL,                -- for one skein
  price_amount_typed TEXT,
  price_currency TEXT,
  shade_name TEXT NOT NULL,
  shade_number TEXT NOT NULL,
  shade_lightness REAL,             -- CIE L*
  shade_lightness_typed TEXT,
  shade_a REAL,
  shade_a_typed TEXT,
  shade_b REAL,
  shade_b_typed TEXT,
  lot TEXT NOT NULL,
  skeins REAL,                      -- whole ones at home
  skeins_typed TEXT,
  weight_g REAL,                    -- at home in part skeins beside the whole ones, or in all
  weight_g_typed TEXT,
  place TEXT NOT NULL,
  note TEXT NOT NULL,
  invented INTEGER NOT NULL CHECK (invented IN (0, 1))
) STRICT;

CREATE TABLE yarn_composition (
  yarn INTEGER NOT NULL REFERENCES yarns (id),
  position INTEGER NOT NULL,
  fibre TEXT NOT NULL,              -- id of the fibre table, '' where the words name none of it
  words TEXT NOT NULL,
  percent REAL NOT NULL,
  percent_typed TEXT NOT NULL,
  PRIMARY KEY (yarn, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE yarn_also_sold (       -- other put-ups of the same yarn
  yarn INTEGER NOT NULL REFERENCES yarns (id),
  position INTEGER NOT NULL,
  put_up_length_m REAL,
  put_up_length_m_typed TEXT,
  put_up_weight_g REAL,
  put_up_weight_g_typed TEXT,
  put_up_word TEXT NOT NULL CHECK (put_up_word IN ('skein', 'ball', 'hank', 'cake', 'cone')),
  price_amount REAL,
  price_amount_typed TEXT,
  price_currency TEXT,
  PRIMARY KEY (yarn, position)
) STRICT, WITHOUT ROWID;
)sql";

}  // namespace

std::string_view shelf_schema(int version) { return version == 1 ? shelf_schema_1 : std::string_view(); }

}  // namespace skeinproof
