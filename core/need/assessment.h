// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/need/working.h"
#include "core/pattern/pattern.h"
#include "core/units/show.h"

namespace skeinproof {

// Metres of one role that one section or edge takes in one size, all copies.
struct PartMetres {
  PieceId piece;
  SectionId section;  // 0 for an edge
  EdgeId edge;        // 0 for a section
  Metres stitches;    // yarn in stitches
  Metres floats;      // yarn passed behind other colours
  Metres extra;       // edges, ends, entries, joins
  Metres total() const { return stitches + floats + extra; }
};

enum class LastSkein { plain, brimful, tips_over };
enum class NeedEvidence { none, stitches, weighed_sample, area, circumference, fixed_and_growing };
template <>
struct EnumWords<NeedEvidence> {
  static constexpr auto rows =
      enum_rows<NeedEvidence>({{NeedEvidence::none, "none"},
                               {NeedEvidence::stitches, "by stitches"},
                               {NeedEvidence::weighed_sample, "by weighed sample"},
                               {NeedEvidence::area, "by area"},
                               {NeedEvidence::circumference, "by circumference"},
                               {NeedEvidence::fixed_and_growing, "by fixed and growing parts"}});
};

// Need of one role in one size by one kind of evidence. Lengths in metres of yarn to buy, which for n strands
// is n times the worked length.
struct Evidence {
  NeedEvidence kind = NeedEvidence::none;
  Metres knitted;
  Metres planned;
  double error = 0;     // half width at 9 in 10, as a share of the knitted length
  Metres low, high;     // planned length, 9 in 10
  std::string because;  // what the error is made of, or why it is weaker
};

// The three layers, never merged: knitted; + swatch; x (1 + allowance) = planned.
struct SizeNeed {
  bool known = false;
  std::string missing;  // where not known: the one input that would let it be
  Metres knitted, swatch, allowance, planned;
  Metres low, high;                            // planned, 9 in 10, best evidence
  NeedEvidence evidence = NeedEvidence::none;  // what knitted stands on
  // Only where the yarn's put-up has a length:
  std::optional<double> fraction;          // planned / skein
  std::optional<int> skeins;               // by the rounding policy
  std::optional<double> last_skein_share;  // in (0, 1]: fraction - (skeins needed - 1)
  LastSkein last_skein = LastSkein::plain;
  std::vector<PartMetres> parts;
  std::vector<Evidence> all_evidence;
};

struct RoleNeed {
  RoleId role;
  std::string label;
  std::vector<SizeNeed> sizes;
};

// How well a weighed sample agrees with the stitches of its role.
struct Calibration {
  WeighingId weighing;
  RoleId role;
  Metres weighed;     // length on the scale, notions off, moisture handled
  Metres low, high;   // its interval, 9 in 10
  double factor = 1;  // calibrated loop / loop in force
  double error = 0;   // share, 9 in 10: 3 % or the scale's
  double weight = 0;  // its share among the samples of the role that calibrate it, 0 to 1
  struct Loop {
    FabricId fabric;
    Centimetres loop;              // calibrated
    std::optional<double> widths;  // loop length in stitch widths
    bool plausible = true;         // 3.3 to 4.6 widths for plain fabrics
  };
  std::vector<Loop> loops;
};

struct LengthNote {
  RoleId role;
  Metres at_most;  // longest planned length over the sizes, rounded up to the house's step
  std::vector<std::string> sizes;
};

// Something that could not be worked out, and what would let it be.
struct NotWorkedOut {
  std::string what;
  std::string because;
  StepPlace place;
};

struct Assessment {
  std::vector<RoleNeed> roles;
  std::vector<std::optional<int>> total_skeins;  // per size over all roles; absent where a role is unknown
  std::vector<std::optional<double>> area_m2;    // per size, from stitches or measurements
  std::vector<LengthNote> length_notes;
  std::vector<Calibration> calibrations;
  std::vector<NotWorkedOut> not_worked_out;
};

// Pure and total: reads nothing but its argument.
Assessment assess(const Pattern& pattern);

enum class Layer { knitted, with_swatch, planned };

// The working of one figure, written by the code that computes it; figures inside its words follow `style`.
Step explain(const Pattern& pattern, RoleId role, std::size_t size_index, Layer layer,
             const NumberStyle& style = {});

}  // namespace skeinproof
