// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/weighings/reading_table.h"

#include <QCoreApplication>

#include "app/pages/weighings/weighing_form.h"
#include "app/widgets/chart_inks.h"
#include "app/widgets/part_table.h"
#include "core/need/constants.h"
#include "core/need/weighed_sample.h"
#include "core/units/show.h"

namespace skeinproof {

namespace {

QString say(const char* words) { return QCoreApplication::translate("ReadingTable", words); }

using Reading = std::optional<Entered<Grams>> WeighedRole::*;

const WeighedRole* find_reading(const Pattern& pattern, WeighingId id, RoleId role) {
  if (const Weighing* weighing = find_weighing(pattern, id))
    for (const WeighedRole& weighed : weighing->roles)
      if (weighed.role == role) return &weighed;
  return nullptr;
}

void set_reading(Pattern& pattern, WeighingId id, RoleId role, Reading which, const FieldValue& value) {
  auto* weighing = const_cast<Weighing*>(find_weighing(pattern, id));
  if (weighing == nullptr) return;
  auto* weighed = const_cast<WeighedRole*>(find_reading(pattern, id, role));
  if (weighed == nullptr) weighed = &weighing->roles.emplace_back(WeighedRole{role, {}, {}, {}});
  if (value)
    weighed->*which = from_plain<Grams>(*value);
  else
    (weighed->*which).reset();
}

// Figures of a calibration in the reader's writing.
class Shown {
 public:
  explicit Shown(const OpenPattern& open) : reader_(open.reader()) {}
  QString number(double value, int decimals) const {
    return QString::fromStdString(show_number(value, decimals, reader_.numbers));
  }
  QString length(Metres value, int decimals = 1) const {
    return reader_.imperial_first ? number(in_yards(value), decimals) + QStringLiteral(" yd")
                                  : number(value.value(), decimals) + QStringLiteral(" m");
  }
  QString range(Metres low, Metres high) const {
    const auto bare = [&](Metres value) {
      return number(reader_.imperial_first ? in_yards(value) : value.value(), 0);
    };
    return bare(low) + QStringLiteral("–") + bare(high);
  }
  QString per_cent_more(double factor) const {
    const double more = 100 * (factor - 1);
    const QString shown = number(std::abs(more), 1);
    const QString zero = number(0, 1);
    return (shown == zero ? QString()
            : more > 0    ? QStringLiteral("+")
                          : QStringLiteral("−")) +
           shown + QStringLiteral(" %");
  }

 private:
  const ReaderStyle& reader_;
};

PartColumn reading_column(OpenPattern& open, std::function<WeighingId()> which, const QString& head,
                          const QString& undo_name, Reading reading) {
  return field_column(
      open, head, undo_name, QuantityFormat::mass(),
      [which, reading](const Pattern& pattern, std::size_t row) {
        const WeighedRole* weighed = find_reading(pattern, which(), pattern.roles[row].id);
        return weighed != nullptr && weighed->*reading ? FieldValue(to_plain(*(weighed->*reading)))
                                                       : FieldValue();
      },
      [which, reading](Pattern& pattern, std::size_t row, const FieldValue& value) {
        set_reading(pattern, which(), pattern.roles[row].id, reading, value);
      },
      false);
}

QString widths_words(const Pattern& pattern, const Calibration::Loop& loop, const Shown& shown) {
  if (!loop.widths) return say("no stitch width is known");
  const QString width = shown.number(*loop.widths, 2) + say(" stitch widths");
  const Fabric* fabric = pattern.fabric(loop.fabric);
  if (fabric == nullptr || fabric->structure != Structure::plain) return width;
  const QString band = shown.number(constant(pattern, "loop_widths_low"), 1) + QStringLiteral("–") +
                       shown.number(constant(pattern, "loop_widths_high"), 1);
  return width + (loop.plausible ? say(", plausible: within ") : say(", not plausible: outside ")) + band;
}

void flatten(const Step& step, int depth, std::vector<FigureRow>& rows) {
  const QString indent(2 * depth, QLatin1Char(' '));
  QString source = QString::fromStdString(step.source);
  if (source.isEmpty()) {
    const std::string_view ground = word_of(step.ground);
    source = QString::fromUtf8(ground.data(), static_cast<qsizetype>(ground.size()));
  }
  rows.push_back({indent + QString::fromStdString(step.label), QString::fromStdString(show_figure(step)),
                  step.how.empty() ? QString() : indent + QString::fromStdString(step.how), source,
                  depth == 0, false});
  for (const Step& part : step.parts) flatten(part, depth + 1, rows);
}

void add_working(const Pattern& pattern, const OpenPattern& open, const Role& role, WeighingId weighing,
                 std::vector<FigureRow>& rows) {
  const NeedContext context(pattern);
  for (const SampleLength& sample : sample_lengths(context, role))
    if (sample.weighing->id == weighing) {
      rows.push_back({say("On the scale"), {}, {}, {}, false, true});
      flatten(sample_step(context, role, sample, open.reader().numbers), 0, rows);
    }
}

void add_changes(const Pattern& pattern, const Assessment& assessment, RoleId role, const Shown& shown,
                 std::vector<FigureRow>& rows) {
  const auto of_kind = [](const SizeNeed& need, NeedEvidence kind) -> const Evidence* {
    for (const Evidence& evidence : need.all_evidence)
      if (evidence.kind == kind) return &evidence;
    return nullptr;
  };
  for (const RoleNeed& need : assessment.roles) {
    if (need.role != role) continue;
    bool first = true;
    for (std::size_t i = 0; i < need.sizes.size() && i < pattern.sizes.size(); ++i) {
      const Evidence* weighed = of_kind(need.sizes[i], NeedEvidence::weighed_sample);
      if (weighed == nullptr) continue;
      if (first) rows.push_back({say("What it says for every size"), {}, {}, {}, false, true});
      first = false;
      const Evidence* stitches = of_kind(need.sizes[i], NeedEvidence::stitches);
      QString how = say("planned ") + shown.length(weighed->planned);
      if (stitches != nullptr)
        how += say("; by stitches alone ") + shown.length(stitches->knitted) + say(" knitted");
      rows.push_back({say("Size ") + QString::fromStdString(pattern.sizes[i].label) + say(", knitted"),
                      shown.length(weighed->knitted), how, QString::fromStdString(weighed->because), false,
                      false});
    }
  }
}

}  // namespace

const Calibration* find_calibration(const Assessment& assessment, WeighingId weighing, RoleId role) {
  for (const Calibration& calibration : assessment.calibrations)
    if (calibration.weighing == weighing && calibration.role == role) return &calibration;
  return nullptr;
}

PartTable* make_reading_table(OpenPattern& open, std::function<WeighingId()> which, QWidget* parent) {
  PartList list = part_list(say("reading"), {}, &Pattern::roles);
  list.name = [](const Pattern& pattern, std::size_t row) {
    return QString::fromStdString(pattern.roles[row].label);
  };
  const auto computed = [&open, which](const QString& head, auto show) {
    PartColumn column = computed_column(head, [&open, which, show](const Pattern& pattern, std::size_t row) {
      const Calibration* found = find_calibration(open.assessment(), which(), pattern.roles[row].id);
      return found != nullptr ? show(*found, Shown(open)) : QStringLiteral("–");
    });
    column.right = true;
    return column;
  };
  PartColumn colour = computed_column(say("Colour"), list.name);
  colour.quiet = false;
  colour.strong = true;
  colour.chip = [](const Pattern& pattern, std::size_t row) {
    return role_fill(pattern, pattern.roles[row].id, {});
  };
  PartColumn metres = computed(say("Length"), [](const Calibration& found, const Shown& shown) {
    return shown.length(found.weighed);
  });
  metres.strong = true;
  metres.quiet = false;
  PartColumn range = computed(say("9 in 10"), [](const Calibration& found, const Shown& shown) {
    return shown.range(found.low, found.high);
  });
  PartColumn loop = computed(say("Loop"), [](const Calibration& found, const Shown& shown) {
    return found.loops.empty() ? QStringLiteral("–")
                               : shown.number(found.loops.front().loop.value(), 3) + QStringLiteral(" cm");
  });
  loop.tip = say("Yarn in one stitch of the first cloth in this colour, as the weighing asks for");
  PartColumn widths = computed(say("In widths"), [](const Calibration& found, const Shown& shown) {
    if (found.loops.empty() || !found.loops.front().widths) return QStringLiteral("–");
    const QString width = shown.number(*found.loops.front().widths, 2);
    return found.loops.front().plausible ? width : width + say(", not plausible");
  });
  widths.tip = say("The loop in stitch widths; plain cloth has 3.3 to 4.6");
  PartColumn against = computed(say("Against stitches"), [](const Calibration& found, const Shown& shown) {
    return found.loops.empty() ? QStringLiteral("–") : shown.per_cent_more(found.factor);
  });
  against.tip = say("How much longer the loops are than those in force before");
  PartColumn weight = computed(say("Weight"), [](const Calibration& found, const Shown& shown) {
    return found.weight > 0 ? shown.number(100 * found.weight, 0) + QStringLiteral(" %")
                            : QStringLiteral("–");
  });
  weight.tip = say("How much this weighing says beside the other used ones of the colour");
  auto* table = new PartTable(
      open, std::move(list),
      {colour, reading_column(open, which, say("Reading"), say("reading"), &WeighedRole::reading),
       reading_column(open, which, say("Notions in it"), say("notions in the reading"),
                      &WeighedRole::notions),
       reading_column(open, which, say("New skein"), say("new skein"), &WeighedRole::new_skein), metres,
       range, loop, widths, against, weight},
      parent);
  table->setAccessibleName(say("Readings"));
  return table;
}

std::vector<FigureRow> reading_figures(const OpenPattern& open, WeighingId weighing, RoleId role_id) {
  std::vector<FigureRow> rows;
  const Pattern& pattern = open.pattern();
  const Role* role = pattern.role(role_id);
  if (role == nullptr || find_weighing(pattern, weighing) == nullptr) return rows;
  const Assessment& assessment = open.assessment();
  const Shown shown(open);
  for (const NotWorkedOut& missing : assessment.not_worked_out)
    if (missing.place.page == "Weighings" && missing.place.part == weighing.value)
      rows.push_back({QString::fromStdString(missing.what),
                      say("not worked out"),
                      QString::fromStdString(missing.because),
                      {},
                      false,
                      false});
  const Calibration* found = find_calibration(assessment, weighing, role_id);
  if (found == nullptr) return rows;
  add_working(pattern, open, *role, weighing, rows);
  rows.push_back(
      {say("9 times in 10"),
       shown.range(found->low, found->high) + (open.reader().imperial_first ? say(" yd") : say(" m")),
       say("scale, label and moisture together"),
       {},
       false,
       false});
  if (!found->loops.empty()) {
    rows.push_back({say("Loop length it asks for"), {}, {}, {}, false, true});
    for (const Calibration::Loop& loop : found->loops) {
      const Fabric* fabric = pattern.fabric(loop.fabric);
      rows.push_back({fabric != nullptr ? QString::fromStdString(fabric->name) : QString(),
                      shown.number(loop.loop.value(), 3) + QStringLiteral(" cm"),
                      widths_words(pattern, loop, shown),
                      {},
                      !loop.plausible,
                      false});
    }
    rows.push_back({say("Against the loops in force"),
                    shown.per_cent_more(found->factor),
                    say("error ") + shown.number(100 * found->error, 1) + say(" %, 9 times in 10"),
                    {},
                    false,
                    false});
  } else {
    rows.push_back({say("Against the stitches"),
                    QStringLiteral("–"),
                    say("no stitches of this colour are on the page Pieces yet"),
                    {},
                    false,
                    false});
  }
  add_changes(pattern, assessment, role_id, shown, rows);
  return rows;
}

}  // namespace skeinproof
