// SPDX-License-Identifier: GPL-3.0-or-later

namespace skeinproof {

// What the submission said, what was decided about it, and what lies on the bench.
extern const char* const project_schema_2_step;
const char* const project_schema_2_step = R"sql(
CREATE TABLE drafts (               -- the last is at hand
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
  name TEXT NOT NULL,
  received TEXT NOT NULL,
  source TEXT NOT NULL,             -- name of the file, '' = pasted
  encoding TEXT NOT NULL,           -- assumed for its bytes, '' = UTF-8
  text TEXT NOT NULL                -- as submitted, never corrected
) STRICT;

CREATE TABLE draft_parts (
  draft INTEGER NOT NULL REFERENCES drafts (id),
  position INTEGER NOT NULL,
  part TEXT NOT NULL CHECK (part IN ('yarn block', 'sizes and measurements', 'gauge', 'needles', 'instructions', 'charts',
    'chart key', 'schematic')),
  extent TEXT NOT NULL CHECK (extent IN ('absent', 'quoted in part', 'whole')),
  PRIMARY KEY (draft, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE draft_tellings (
  draft INTEGER NOT NULL REFERENCES drafts (id),
  position INTEGER NOT NULL,
  words TEXT NOT NULL,              -- exactly as they stand in the text
  means TEXT NOT NULL,
  of TEXT NOT NULL,
  PRIMARY KEY (draft, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE queries (
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
  finding TEXT NOT NULL,            -- check, role, sizes
  on_sheet TEXT NOT NULL CHECK (on_sheet IN ('by severity', 'yes', 'no')),
  wording TEXT NOT NULL,
  answer TEXT NOT NULL CHECK (answer IN ('none', 'accepted', 'amended', 'kept')),
  reply TEXT NOT NULL,
  before TEXT NOT NULL,             -- printed words and those that take their place
  after TEXT NOT NULL,
  occurrence INTEGER NOT NULL,
  who TEXT NOT NULL,
  "when" TEXT NOT NULL,
  rested_on TEXT NOT NULL           -- fingerprint
) STRICT;

CREATE TABLE changes (              -- on the fly; nothing of the pattern moves until they are adopted
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
  kind TEXT NOT NULL CHECK (kind IN ('longer piece', 'extra rounds', 'other gauge', 'other size', 'between sizes',
    'piece left out', 'piece again', 'part in another colour')),
  made INTEGER NOT NULL CHECK (made IN (0, 1)),
  piece INTEGER REFERENCES pieces (id),
  section INTEGER REFERENCES piece_sections (id),
  edge INTEGER REFERENCES piece_edges (id),
  "from" INTEGER REFERENCES roles (id),
  "to" INTEGER REFERENCES roles (id),
  yarn INTEGER REFERENCES yarns (id),
  fabric INTEGER REFERENCES fabrics (id),
  size INTEGER REFERENCES sizes (id),
  other_size INTEGER REFERENCES sizes (id),
  copies INTEGER NOT NULL,
  "where" TEXT NOT NULL CHECK ("where" IN ('spread over the taper', 'at full width')),
  counts TEXT NOT NULL CHECK (counts IN
    ('not said', 'the same counts', 'counts chosen again for the same size')),
  by_cm REAL,
  by_cm_typed TEXT,
  rounds REAL,
  rounds_typed TEXT,
  chart_round REAL,                 -- from 1
  chart_round_typed TEXT,
  stitches REAL,                    -- in 10 cm
  stitches_typed TEXT,
  rows REAL,                        -- in 10 cm
  rows_typed TEXT,
  share_pct REAL,                   -- of the way from size to other_size
  share_pct_typed TEXT
) STRICT;

CREATE TABLE readings (             -- yarn weighed while the chosen size is on the needles
  id INTEGER PRIMARY KEY,
  position INTEGER NOT NULL UNIQUE,
  role INTEGER REFERENCES roles (id),
  began_with_g REAL,
  began_with_g_typed TEXT,
  left_g REAL,
  left_g_typed TEXT,
  scale_step_g REAL,
  scale_step_g_typed TEXT,
  piece INTEGER REFERENCES pieces (id),
  section INTEGER REFERENCES piece_sections (id),
  copy INTEGER NOT NULL,
  round REAL,
  round_typed TEXT,
  "when" TEXT NOT NULL,
  note TEXT NOT NULL,
  used INTEGER NOT NULL CHECK (used IN (0, 1))
) STRICT;

ALTER TABLE weighings ADD COLUMN tester INTEGER NOT NULL DEFAULT 0 CHECK (tester IN (0, 1));

CREATE TABLE weighing_altered (     -- what was knitted otherwise than the pattern says
  id INTEGER PRIMARY KEY,
  weighing INTEGER NOT NULL REFERENCES weighings (id),
  position INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('longer piece', 'extra rounds', 'other gauge', 'other size', 'between sizes',
    'piece left out', 'piece again', 'part in another colour')),
  made INTEGER NOT NULL CHECK (made IN (0, 1)),
  piece INTEGER REFERENCES pieces (id),
  section INTEGER REFERENCES piece_sections (id),
  edge INTEGER REFERENCES piece_edges (id),
  "from" INTEGER REFERENCES roles (id),
  "to" INTEGER REFERENCES roles (id),
  yarn INTEGER REFERENCES yarns (id),
  fabric INTEGER REFERENCES fabrics (id),
  size INTEGER REFERENCES sizes (id),
  other_size INTEGER REFERENCES sizes (id),
  copies INTEGER NOT NULL,
  "where" TEXT NOT NULL CHECK ("where" IN ('spread over the taper', 'at full width')),
  counts TEXT NOT NULL CHECK (counts IN
    ('not said', 'the same counts', 'counts chosen again for the same size')),
  by_cm REAL,
  by_cm_typed TEXT,
  rounds REAL,
  rounds_typed TEXT,
  chart_round REAL,                 -- from 1
  chart_round_typed TEXT,
  stitches REAL,                    -- in 10 cm
  stitches_typed TEXT,
  rows REAL,                        -- in 10 cm
  rows_typed TEXT,
  share_pct REAL,                   -- of the way from size to other_size
  share_pct_typed TEXT,
  UNIQUE (weighing, position)
) STRICT;

CREATE TABLE house_style_query_wordings (
  house_style INTEGER NOT NULL REFERENCES house_styles (position),
  position INTEGER NOT NULL,
  "check" TEXT NOT NULL,
  words TEXT NOT NULL,
  PRIMARY KEY (house_style, position)
) STRICT, WITHOUT ROWID;

ALTER TABLE result_need ADD COLUMN chance_sufficient REAL;  -- that `skeins` suffice, 0 to 1

CREATE TABLE result_evidence (      -- what each road says of the planned length
  role INTEGER NOT NULL REFERENCES roles (id),
  size INTEGER NOT NULL REFERENCES sizes (id),
  evidence TEXT NOT NULL,           -- 'by stitches', 'by weighed sample', 'by printed counts', …
  knitted_m REAL,                   -- printed counts have none
  low_m REAL NOT NULL,
  high_m REAL NOT NULL,
  told_low INTEGER REFERENCES sizes (id),   -- printed counts: the size whose count sets the bound
  told_high INTEGER REFERENCES sizes (id),
  PRIMARY KEY (role, size, evidence)
) STRICT, WITHOUT ROWID;
)sql";

}  // namespace skeinproof
