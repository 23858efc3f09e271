// SPDX-License-Identifier: GPL-3.0-or-later

namespace skeinproof {

// Names of columns carry their unit: _m metres, _g grams, _cm centimetres, _pct percent. A column x_typed
// holds the characters that x was typed as, '' where it was not typed. NULL is "not known", or "none" where
// an id is meant. `position` counts from 1 and keeps the order of the document. A list with one value a size
// has a row for every size whose value is known.
extern const char* const project_schema_1;
const char* const project_schema_1 = R"sql(
CREATE TABLE meta (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  oldest_reader INTEGER NOT NULL,   -- the oldest schema version whose reader may open this file
  written_by TEXT NOT NULL          -- program and version
) STRICT;

CREATE TABLE sizes (
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
  label TEXT NOT NULL,
  opens_group INTEGER NOT NULL CHECK (opens_group IN (0, 1))
) STRICT;

CREATE TABLE pattern (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  title TEXT NOT NULL,
  item TEXT NOT NULL,
  wearer TEXT NOT NULL,
  note TEXT NOT NULL,
  sample_size INTEGER REFERENCES sizes (id),
  chosen_size INTEGER REFERENCES sizes (id),
  basis TEXT NOT NULL CHECK (basis IN ('automatic', 'stitches', 'weighed sample')),
  count_joins INTEGER NOT NULL CHECK (count_joins IN (0, 1)),
  last_id INTEGER NOT NULL
) STRICT;

CREATE TABLE printed_total (
  size INTEGER PRIMARY KEY REFERENCES sizes (id),
  value REAL NOT NULL,
  typed TEXT NOT NULL
) STRICT;

CREATE TABLE measurements (
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
  name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN
    ('circumference', 'length', 'sleeve width', 'sleeve length', 'yoke depth', 'neck', 'other')),
  fit TEXT NOT NULL CHECK (fit IN ('finished', 'to fit'))
) STRICT;

CREATE TABLE measurement_values_cm (
  measurement INTEGER NOT NULL REFERENCES measurements (id),
  size INTEGER NOT NULL REFERENCES sizes (id),
  value REAL NOT NULL,
  typed TEXT NOT NULL,
  PRIMARY KEY (measurement, size)
) STRICT, WITHOUT ROWID;

CREATE TABLE yarns (
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
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
  price_currency TEXT
) STRICT;

CREATE TABLE yarn_composition (
  yarn INTEGER NOT NULL REFERENCES yarns (id),
  position INTEGER NOT NULL,
  fibre TEXT NOT NULL,
  words TEXT NOT NULL,
  percent REAL NOT NULL,
  percent_typed TEXT NOT NULL,
  PRIMARY KEY (yarn, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE roles (
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
  label TEXT NOT NULL,
  yarn INTEGER REFERENCES yarns (id),
  shade_name TEXT NOT NULL,
  shade_number TEXT NOT NULL,
  shade_lightness REAL,             -- CIE L*
  shade_lightness_typed TEXT,
  shade_a REAL,                     -- CIE a*
  shade_a_typed TEXT,
  shade_b REAL,                     -- CIE b*
  shade_b_typed TEXT,
  strands INTEGER NOT NULL CHECK (strands >= 1),
  goes_along_with INTEGER REFERENCES roles (id),
  swatch_m REAL,
  swatch_m_typed TEXT,
  charge_entries INTEGER NOT NULL CHECK (charge_entries IN (0, 1)),
  growth TEXT NOT NULL CHECK (growth IN ('automatic', 'whole garment', 'part', 'hardly grows', 'unknown')),
  printed_note TEXT NOT NULL,
  printed_at_most_m REAL,
  printed_at_most_m_typed TEXT
) STRICT;

CREATE TABLE role_printed_count (
  role INTEGER NOT NULL REFERENCES roles (id),
  size INTEGER NOT NULL REFERENCES sizes (id),
  value REAL NOT NULL,              -- skeins
  typed TEXT NOT NULL,
  PRIMARY KEY (role, size)
) STRICT, WITHOUT ROWID;

CREATE TABLE fabrics (
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
  name TEXT NOT NULL,
  structure TEXT NOT NULL CHECK (structure IN ('stocking stitch', 'rib', 'garter stitch', 'moss stitch', 'cable',
    'stranded', 'intarsia', 'lace', 'slip stitch', 'brioche', 'other')),
  gauge_stitches REAL,              -- counted over gauge_over_cm
  gauge_stitches_typed TEXT,
  gauge_rows REAL,
  gauge_rows_typed TEXT,
  gauge_over_cm REAL NOT NULL,
  gauge_over_cm_typed TEXT NOT NULL,
  gauge_state TEXT NOT NULL CHECK (gauge_state IN ('unstated', 'never wetted', 'wetted', 'washed')),
  gauge_worked TEXT NOT NULL CHECK (gauge_worked IN ('unstated', 'flat', 'in the round')),
  needle_cm REAL,                   -- diameter
  needle_cm_typed TEXT,
  loop_source TEXT NOT NULL CHECK (loop_source IN ('from the gauge', 'from a weighed swatch', 'typed')),
  typed_loop_cm REAL,               -- yarn in one stitch
  typed_loop_cm_typed TEXT,
  float_per_stitch_cm REAL,         -- yarn behind one passed stitch
  float_per_stitch_cm_typed TEXT,
  swatch_weight_g REAL,
  swatch_weight_g_typed TEXT,
  swatch_stitches REAL,
  swatch_stitches_typed TEXT,
  swatch_scale_step_g REAL,
  swatch_scale_step_g_typed TEXT,
  swatch_new_skein_g REAL,
  swatch_new_skein_g_typed TEXT,
  swatch_humidity_pct REAL,
  swatch_humidity_pct_typed TEXT,
  swatch_yarn INTEGER REFERENCES yarns (id)
) STRICT;

CREATE TABLE charts (
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
  name TEXT NOT NULL,
  worked TEXT NOT NULL CHECK (worked IN ('unstated', 'flat', 'in the round'))
) STRICT;

CREATE TABLE chart_colours (
  chart INTEGER NOT NULL REFERENCES charts (id),
  position INTEGER NOT NULL,
  symbol TEXT NOT NULL,
  role INTEGER REFERENCES roles (id),
  PRIMARY KEY (chart, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE chart_rounds (
  chart INTEGER NOT NULL REFERENCES charts (id),
  position INTEGER NOT NULL,        -- round 1 is the first worked
  value TEXT NOT NULL,              -- one symbol a square, - for no stitch
  PRIMARY KEY (chart, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE pieces (
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
  name TEXT NOT NULL,
  copies INTEGER NOT NULL CHECK (copies >= 1)
) STRICT;

CREATE TABLE piece_sections (
  id INTEGER PRIMARY KEY,
  piece INTEGER NOT NULL REFERENCES pieces (id),
  position INTEGER NOT NULL,
  name TEXT NOT NULL,
  fabric INTEGER REFERENCES fabrics (id),
  source TEXT NOT NULL CHECK (source IN ('typed', 'worked out', 'chart')),
  chart INTEGER REFERENCES charts (id),
  colouring TEXT NOT NULL CHECK (colouring IN ('one role', 'stripes')),
  role INTEGER REFERENCES roles (id),
  stripe_change TEXT NOT NULL CHECK (stripe_change IN
    ('carried, not counted', 'carried up the side', 'cut at every stripe')),
  UNIQUE (piece, position)
) STRICT;

CREATE TABLE piece_section_stitches (
  piece_section INTEGER NOT NULL REFERENCES piece_sections (id),
  size INTEGER NOT NULL REFERENCES sizes (id),
  value REAL NOT NULL,              -- stitches of one copy
  typed TEXT NOT NULL,
  PRIMARY KEY (piece_section, size)
) STRICT, WITHOUT ROWID;

CREATE TABLE piece_section_repeats (
  piece_section INTEGER NOT NULL REFERENCES piece_sections (id),
  size INTEGER NOT NULL REFERENCES sizes (id),
  value REAL NOT NULL,              -- repeats of the chart in one copy
  typed TEXT NOT NULL,
  PRIMARY KEY (piece_section, size)
) STRICT, WITHOUT ROWID;

CREATE TABLE piece_section_runs (
  piece_section INTEGER NOT NULL REFERENCES piece_sections (id),
  position INTEGER NOT NULL,
  PRIMARY KEY (piece_section, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE piece_section_run_from (
  piece_section INTEGER NOT NULL,
  piece_section_run INTEGER NOT NULL,
  size INTEGER NOT NULL REFERENCES sizes (id),
  value REAL NOT NULL,              -- stitches in the first row
  typed TEXT NOT NULL,
  PRIMARY KEY (piece_section, piece_section_run, size),
  FOREIGN KEY (piece_section, piece_section_run) REFERENCES piece_section_runs (piece_section, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE piece_section_run_to (
  piece_section INTEGER NOT NULL,
  piece_section_run INTEGER NOT NULL,
  size INTEGER NOT NULL REFERENCES sizes (id),
  value REAL NOT NULL,              -- stitches in the last row
  typed TEXT NOT NULL,
  PRIMARY KEY (piece_section, piece_section_run, size),
  FOREIGN KEY (piece_section, piece_section_run) REFERENCES piece_section_runs (piece_section, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE piece_section_run_rows (
  piece_section INTEGER NOT NULL,
  piece_section_run INTEGER NOT NULL,
  size INTEGER NOT NULL REFERENCES sizes (id),
  value REAL NOT NULL,
  typed TEXT NOT NULL,
  PRIMARY KEY (piece_section, piece_section_run, size),
  FOREIGN KEY (piece_section, piece_section_run) REFERENCES piece_section_runs (piece_section, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE piece_section_stripes (
  piece_section INTEGER NOT NULL REFERENCES piece_sections (id),
  position INTEGER NOT NULL,
  role INTEGER REFERENCES roles (id),
  rows REAL NOT NULL,
  rows_typed TEXT NOT NULL,
  PRIMARY KEY (piece_section, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE piece_edges (
  id INTEGER PRIMARY KEY,
  piece INTEGER NOT NULL REFERENCES pieces (id),
  position INTEGER NOT NULL,
  name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('cast-on', 'bind-off', 'seam', 'ends', 'other')),
  role INTEGER REFERENCES roles (id),
  fabric INTEGER REFERENCES fabrics (id),
  rate REAL,                        -- cast-on, bind-off: cm a stitch; seam: m a metre
  rate_typed TEXT,
  UNIQUE (piece, position)
) STRICT;

CREATE TABLE piece_edge_amount (
  piece_edge INTEGER NOT NULL REFERENCES piece_edges (id),
  size INTEGER NOT NULL REFERENCES sizes (id),
  value REAL NOT NULL,              -- cast-on, bind-off: stitches; seam: cm; ends, other: m; of one copy
  typed TEXT NOT NULL,
  PRIMARY KEY (piece_edge, size)
) STRICT, WITHOUT ROWID;

CREATE TABLE weighings (
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
  name TEXT NOT NULL,
  size INTEGER REFERENCES sizes (id),
  moisture TEXT NOT NULL CHECK (moisture IN
    ('not corrected', 'a new skein weighed in the same hour', 'relative humidity stated')),
  humidity_pct REAL,
  humidity_pct_typed TEXT,
  scale_step_g REAL,
  scale_step_g_typed TEXT,
  state TEXT NOT NULL,
  who TEXT NOT NULL,
  "when" TEXT NOT NULL,
  note TEXT NOT NULL,
  used INTEGER NOT NULL CHECK (used IN (0, 1))
) STRICT;

CREATE TABLE weighing_roles (
  weighing INTEGER NOT NULL REFERENCES weighings (id),
  position INTEGER NOT NULL,
  role INTEGER REFERENCES roles (id),
  reading_g REAL,
  reading_g_typed TEXT,
  notions_g REAL,
  notions_g_typed TEXT,
  new_skein_g REAL,
  new_skein_g_typed TEXT,
  PRIMARY KEY (weighing, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE weighing_only (
  weighing INTEGER NOT NULL REFERENCES weighings (id),
  position INTEGER NOT NULL,
  piece INTEGER REFERENCES pieces (id),
  copies INTEGER NOT NULL,
  PRIMARY KEY (weighing, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE notions (
  position INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  weight_each_g REAL,
  weight_each_g_typed TEXT
) STRICT;

CREATE TABLE notion_count (
  notion INTEGER NOT NULL REFERENCES notions (position),
  size INTEGER NOT NULL REFERENCES sizes (id),
  value REAL NOT NULL,
  typed TEXT NOT NULL,
  PRIMARY KEY (notion, size)
) STRICT, WITHOUT ROWID;

CREATE TABLE constants (
  position INTEGER PRIMARY KEY,
  "key" TEXT NOT NULL,
  value REAL NOT NULL,
  value_typed TEXT NOT NULL
) STRICT;

CREATE TABLE house_styles (         -- position 1 is in force
  position INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  systems TEXT NOT NULL CHECK (systems IN
    ('metric first', 'imperial first', 'metric only', 'imperial only')),
  second_system TEXT NOT NULL CHECK (second_system IN ('after a slash', 'in brackets')),
  decimal_mark TEXT NOT NULL CHECK (decimal_mark IN ('point', 'comma')),
  fractions TEXT NOT NULL CHECK (fractions IN ('glyph', 'slashed', 'decimal')),
  ounces TEXT NOT NULL CHECK (ounces IN ('glyph', 'slashed', 'decimal')),
  brackets TEXT NOT NULL CHECK (brackets IN
    ('1 (2, 3) (4, 5)', '1 (2, 3, 4, 5)', '1[2:3:4:5]', '1/2/3/4/5', '1, 2, 3, 4, 5')),
  counted_in TEXT NOT NULL CHECK (counted_in IN ('skeins', 'grams', 'metres')),
  unit_word TEXT NOT NULL CHECK (unit_word IN ('once a list', 'on each value')),
  skein_word TEXT NOT NULL,
  skein_word_plural TEXT NOT NULL,
  role_place TEXT NOT NULL CHECK (role_place IN ('before the shade', 'after the shade')),
  shade_number TEXT NOT NULL CHECK (shade_number IN ('08', '#08', 'no. 08', 'left out')),
  role_separator TEXT NOT NULL CHECK (role_separator IN ('new line', 'semicolon', 'comma')),
  align_roles INTEGER NOT NULL CHECK (align_roles IN (0, 1)),
  length_notes INTEGER NOT NULL CHECK (length_notes IN (0, 1)),
  length_note_share REAL NOT NULL,  -- of one skein
  length_note_words TEXT NOT NULL,
  total_line INTEGER NOT NULL CHECK (total_line IN (0, 1)),
  total_words TEXT NOT NULL,
  metres_line INTEGER NOT NULL CHECK (metres_line IN (0, 1)),
  description_minimum INTEGER NOT NULL,
  category_words TEXT NOT NULL CHECK (category_words IN ('as written', 'US words', 'UK words', 'ply numbers')),
  fibre_names TEXT NOT NULL CHECK (fibre_names IN ('as written', 'generic, polyamide', 'generic, nylon')),
  needles_metric INTEGER NOT NULL CHECK (needles_metric IN (0, 1)),
  needles_us INTEGER NOT NULL CHECK (needles_us IN (0, 1)),
  needles_old_uk INTEGER NOT NULL CHECK (needles_old_uk IN (0, 1)),
  needles_japanese INTEGER NOT NULL CHECK (needles_japanese IN (0, 1)),
  washed_words TEXT NOT NULL,
  withdrawn_words TEXT NOT NULL,
  allowance_pct REAL NOT NULL,
  swatch_counted INTEGER NOT NULL CHECK (swatch_counted IN (0, 1)),
  rounding TEXT NOT NULL CHECK (rounding IN ('round up', 'round up unless a hair over')),
  hair_over_share REAL NOT NULL,    -- of one skein
  minimum_allowance_pct REAL NOT NULL,
  note_step_m REAL NOT NULL
) STRICT;

CREATE TABLE house_style_element_order (
  house_style INTEGER NOT NULL REFERENCES house_styles (position),
  position INTEGER NOT NULL,
  value TEXT NOT NULL CHECK (value IN ('sizes', 'yarn', 'roles', 'total', 'gauge', 'needles', 'notions')),
  PRIMARY KEY (house_style, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE house_style_description (
  house_style INTEGER NOT NULL REFERENCES house_styles (position),
  position INTEGER NOT NULL,
  value TEXT NOT NULL CHECK (value IN
    ('treatment', 'structure', 'category', 'surface', 'colouring', 'care')),
  PRIMARY KEY (house_style, position)
) STRICT, WITHOUT ROWID;

-- What was worked out when the file was saved. Nothing is read back from here.
CREATE TABLE result_meta (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  inputs_fingerprint TEXT NOT NULL, -- of the inputs these results rest on
  worked_out_by TEXT NOT NULL       -- program and version
) STRICT;

CREATE TABLE result_need (
  role INTEGER NOT NULL REFERENCES roles (id),
  size INTEGER NOT NULL REFERENCES sizes (id),
  evidence TEXT NOT NULL,           -- what the knitted length stands on
  missing TEXT NOT NULL,            -- where nothing is known: what would let it be
  knitted_m REAL,
  swatch_m REAL,
  allowance_m REAL,
  planned_m REAL,                   -- knitted + swatch + allowance
  low_m REAL,                       -- planned, 9 in 10
  high_m REAL,
  fraction REAL,                    -- planned / skein
  skeins INTEGER,
  last_skein_share REAL,            -- in (0, 1]
  PRIMARY KEY (role, size)
) STRICT, WITHOUT ROWID;

CREATE TABLE result_total (
  size INTEGER PRIMARY KEY REFERENCES sizes (id),
  skeins INTEGER NOT NULL
) STRICT;

CREATE TABLE result_length_note (
  role INTEGER PRIMARY KEY REFERENCES roles (id),
  at_most_m REAL,
  sizes TEXT NOT NULL               -- labels, parted by ", "
) STRICT;

CREATE VIEW v_need AS
  SELECT roles.label AS role, sizes.label AS size, knitted_m, result_need.swatch_m, allowance_m, planned_m, low_m,
         high_m, fraction, skeins, last_skein_share, evidence, missing
  FROM result_need JOIN roles ON roles.id = result_need.role JOIN sizes ON sizes.id = result_need.size
  ORDER BY roles.position, sizes.position;

CREATE VIEW v_total AS
  SELECT sizes.label AS size, skeins
  FROM result_total JOIN sizes ON sizes.id = result_total.size
  ORDER BY sizes.position;

CREATE VIEW v_length_note AS
  SELECT roles.label AS role, at_most_m, result_length_note.sizes
  FROM result_length_note JOIN roles ON roles.id = result_length_note.role
  ORDER BY roles.position;
)sql";

}  // namespace skeinproof
