// SPDX-License-Identifier: GPL-3.0-or-later

namespace skeinproof {

// Other yarns for the item, yarn that lies at home, and the numbers under which queries went out.
extern const char* const project_schema_3_step;
const char* const project_schema_3_step = R"sql(
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

ALTER TABLE queries ADD COLUMN asked_as INTEGER NOT NULL DEFAULT 0;  -- number on the sheet; 0 = not asked yet

ALTER TABLE pattern ADD COLUMN budget_amount REAL;  -- for all the yarn of one item
ALTER TABLE pattern ADD COLUMN budget_amount_typed TEXT;
ALTER TABLE pattern ADD COLUMN budget_currency TEXT;
ALTER TABLE pattern ADD COLUMN on_hand_size INTEGER REFERENCES sizes (id);  -- none = chosen_size
ALTER TABLE pattern ADD COLUMN sharing_exchange_roles INTEGER NOT NULL DEFAULT 1
  CHECK (sharing_exchange_roles IN (0, 1));
ALTER TABLE pattern ADD COLUMN sharing_yarns_a_role INTEGER NOT NULL DEFAULT 1;
ALTER TABLE pattern ADD COLUMN sharing_thickness_limit_pct REAL;
ALTER TABLE pattern ADD COLUMN sharing_thickness_limit_pct_typed TEXT;

CREATE TABLE candidates (
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
  name TEXT NOT NULL,               -- '' = the name of its yarn
  shown INTEGER NOT NULL CHECK (shown IN (0, 1)),
  washed_swatch INTEGER NOT NULL CHECK (washed_swatch IN (0, 1)),
  note TEXT NOT NULL
) STRICT;

CREATE TABLE candidate_yarns (
  candidate INTEGER NOT NULL REFERENCES candidates (id),
  position INTEGER NOT NULL,
  role INTEGER REFERENCES roles (id),  -- none = every role without a row of its own
  yarn INTEGER REFERENCES yarns (id),
  strands INTEGER NOT NULL,
  held_with INTEGER REFERENCES yarns (id),
  held_with_strands INTEGER NOT NULL,
  PRIMARY KEY (candidate, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE wishes (
  position INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('within the budget', 'meets the gauge',
    'gauge within reach of a needle change', 'not heavier than', 'not more left over than', 'no stricter care',
    'does not differ by', 'no animal fibre', 'no colour takes more skeins than')),
  level TEXT NOT NULL CHECK (level IN ('must', 'should', 'need not')),
  "limit" REAL,
  limit_typed TEXT,
  rule TEXT NOT NULL
) STRICT;

CREATE TABLE on_hand (              -- one shade and dye lot of a yarn that lies at home
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
  yarn INTEGER REFERENCES yarns (id),
  shade_name TEXT NOT NULL,
  shade_number TEXT NOT NULL,
  shade_lightness REAL,             -- CIE L*
  shade_lightness_typed TEXT,
  shade_a REAL,
  shade_a_typed TEXT,
  shade_b REAL,
  shade_b_typed TEXT,
  lot TEXT NOT NULL,
  length_by TEXT NOT NULL CHECK (length_by IN ('skeins and weight', 'turns on a reel', 'sampled lengths', 'length',
    'wraps, for thickness only')),
  whole_skeins REAL,
  whole_skeins_typed TEXT,
  scale_step_g REAL,
  scale_step_g_typed TEXT,
  humidity_pct REAL,
  humidity_pct_typed TEXT,
  new_skein_g REAL,
  new_skein_g_typed TEXT,
  turns REAL,
  turns_typed TEXT,
  circumference_m REAL,
  circumference_m_typed TEXT,
  stretch_pct REAL,
  stretch_pct_typed TEXT,
  length_m REAL,
  length_m_typed TEXT,
  wraps_per_cm REAL,
  wraps_per_cm_typed TEXT,
  role INTEGER REFERENCES roles (id),
  used INTEGER NOT NULL CHECK (used IN (0, 1)),
  note TEXT NOT NULL
) STRICT;

CREATE TABLE on_hand_parts_g (      -- part skeins, each on the scale by itself
  on_hand INTEGER NOT NULL REFERENCES on_hand (id),
  position INTEGER NOT NULL,
  value REAL NOT NULL,
  value_typed TEXT NOT NULL,
  PRIMARY KEY (on_hand, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE on_hand_sampled (
  on_hand INTEGER NOT NULL REFERENCES on_hand (id),
  position INTEGER NOT NULL,
  length_m REAL,
  length_m_typed TEXT,
  weight_g REAL,
  weight_g_typed TEXT,
  PRIMARY KEY (on_hand, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE given_parts (          -- may be worked in a yarn of their own when yarn on hand is shared out
  position INTEGER PRIMARY KEY,
  piece INTEGER REFERENCES pieces (id),
  section INTEGER REFERENCES piece_sections (id)
) STRICT;
)sql";

}  // namespace skeinproof
