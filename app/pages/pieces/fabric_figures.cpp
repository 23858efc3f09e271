// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/fabric_figures.h"

#include <QCoreApplication>

#include "app/pages/pieces/piece_words.h"
#include "app/widgets/quantity_text.h"
#include "core/fabric/gauge.h"
#include "core/fabric/loop_length.h"
#include "core/fabric/relaxation.h"
#include "core/need/constants.h"
#include "core/need/fabric_loop.h"
#include "core/need/need_context.h"
#include "core/reference/lookup.h"
#include "core/yarn/linear_density.h"
#include "core/yarn/thickness.h"

namespace skeinproof {
namespace {

QString say(const char* words) { return QCoreApplication::translate("Fabrics", words); }

std::string constant_source(std::string_view key) {
  for (const Constant& row : constants())
    if (row.key == key) return std::string(row.source);
  return {};
}

std::string loop_source_of(std::string_view id) {
  const LoopConstant* row = loop_constant_by_id(id);
  return row != nullptr ? citation(row->figure.source, row->figure.confidence) : std::string();
}

class Figures {
 public:
  Figures(const Pattern& pattern, const Fabric& fabric, const Assessment& assessment,
          const ReaderStyle& reader)
      : pattern_(pattern), fabric_(fabric), assessment_(assessment), reader_(reader), context_(pattern) {}

  std::vector<FigureRow> take() {
    loop();
    cloth();
    samples();
    return std::move(rows_);
  }

 private:
  QString number(double value, int decimals) const {
    return QString::fromStdString(show_number(value, decimals, reader_.numbers));
  }
  QString cm(Centimetres length, int decimals) const {
    return number(length.value(), decimals) + QStringLiteral(" cm");
  }
  void head(const QString& words) { rows_.push_back({words, {}, {}, {}, false, true}); }
  void add(const QString& name, const QString& figure, const QString& how, const std::string& source) {
    rows_.push_back({name, figure, how, text_of(source), false, false});
  }

  const Yarn* yarn() const { return context_.main_yarn_of(fabric_.id); }

  void loop() {
    head(say("Yarn in a stitch"));
    Step step;
    const FabricLoop found = fabric_loop(pattern_, fabric_, yarn(), &step, reader_.numbers);
    if (!found.loop) {
      add(say("Loop length"), QStringLiteral("–"), say("Not worked out: %1").arg(text_of(found.missing)), {});
      return;
    }
    add(say("Loop length"), cm(*found.loop, 3), text_of(step.how), step.source);
    rows_.back().strong = true;
    if (found.stitch_width) widths(*found.loop, *found.stitch_width);
    add(say("Its error, 9 times in 10"),
        QStringLiteral("± ") + number(100 * found.error, 0) + QStringLiteral(" %"),
        found.typed ? say("a typed loop length counts as uncalibrated until a sample or swatch backs it")
                    : QString(),
        "common practice, no source");
    add(say("Yarn over a passed stitch"), cm(found.float_per_stitch, 2),
        fabric_.float_per_stitch
            ? say("typed")
            : say("stitch width × slack of %1").arg(number(constant(pattern_, "float_slack"), 2)),
        fabric_.float_per_stitch ? std::string() : constant_source("float_slack"));
  }

  void widths(Centimetres loop, Centimetres width) {
    const double in_widths = loop_in_widths(loop, width);
    const double low = constant(pattern_, "loop_widths_low"), high = constant(pattern_, "loop_widths_high");
    const bool judged = structure_factor(fabric_.structure).plain_loop;
    const QString range = number(low, 1) + QStringLiteral("–") + number(high, 1);
    const bool plausible = in_widths >= low && in_widths <= high;
    const QString verdict =
        !judged     ? say("not judged: this structure is not one loop a stitch")
        : plausible ? say("plausible: plain cloth has %1").arg(range)
                    : say("not plausible: plain cloth has %1; check the gauge and the loop").arg(range);
    add(say("Loop in stitch widths"), number(in_widths, 2), verdict, constant_source("loop_widths_low"));
    rows_.back().strong = judged && !plausible;
  }

  void cloth() {
    const Gauge& gauge = fabric_.gauge;
    const auto width = stitch_width(gauge);
    const auto height = row_height(gauge);
    const auto density = stitches_per_cm2(gauge);
    if (!width && !height) return;
    head(say("Cloth"));
    if (width) add(say("Stitch width"), cm(*width, 3), gauge_line(gauge, reader_), {});
    if (height) add(say("Row height"), cm(*height, 3), {}, {});
    if (!density) return;
    add(say("Stitches in a square centimetre"), number(*density, 2), say("stitch gauge × row gauge"), {});
    shape(gauge);
    add(say("Yarn in a square metre"), number(metres_per_square_metre(*density), 0) + QStringLiteral(" m"),
        say("100 √(20.5 × stitches per cm²): plain cloth, before there is a sample"),
        "common practice, no source");
    firmness_rows(*density);
  }

  void shape(const Gauge& gauge) {
    const auto rows_to_stitches = loop_shape(gauge);
    if (!rows_to_stitches || fabric_.structure != Structure::plain) return;
    const QString verdict = at_rest(*rows_to_stitches)
                                ? say("as stocking stitch at rest has it")
                                : say("not that of stocking stitch at rest: stretched, or miscounted");
    add(say("Rows to stitches"), number(*rows_to_stitches, 2), verdict, loop_source_of("plain_spread_R"));
  }

  void firmness_rows(double density) {
    const Yarn* used = yarn();
    const auto per_gram =
        used != nullptr ? linear_density(used->put_up) : failure(ErrorKind::not_found, {}, {});
    if (!per_gram) return;
    add(say("Firmness F"), number(firmness_from_gauge(density, *per_gram), 1),
        say("7 √(stitches per cm² ÷ metres per gram), with the label of %1").arg(text_of(used->name)),
        loop_source_of("tf_cm"));
  }

  // What weighed samples made of the loop.
  void samples() {
    bool first = true;
    for (const Calibration& calibration : assessment_.calibrations)
      for (const Calibration::Loop& weighed : calibration.loops) {
        if (weighed.fabric != fabric_.id) continue;
        if (first) head(say("By weighed samples"));
        first = false;
        QString how = weighed.widths ? say("%1 stitch widths").arg(number(*weighed.widths, 2)) : QString();
        if (!weighed.plausible) how += say(", not plausible");
        const Yarn* used = yarn();
        const auto per_gram =
            used != nullptr ? linear_density(used->put_up) : failure(ErrorKind::not_found, {}, {});
        if (per_gram) how += say(", firmness %1").arg(number(firmness(*per_gram, weighed.loop), 1));
        add(say("Loop length, %1").arg(role_words(pattern_, calibration.role)), cm(weighed.loop, 3), how,
            "scale");
      }
  }

  const Pattern& pattern_;
  const Fabric& fabric_;
  const Assessment& assessment_;
  const ReaderStyle& reader_;
  NeedContext context_;
  std::vector<FigureRow> rows_;
};

}  // namespace

std::vector<FigureRow> fabric_figures(const Pattern& pattern, const Fabric& fabric,
                                      const Assessment& assessment, const ReaderStyle& reader) {
  return Figures(pattern, fabric, assessment, reader).take();
}

QString gauge_line(const Gauge& gauge, const ReaderStyle& reader) {
  const auto count = [&](const std::optional<Entered<double>>& value) {
    return value ? show_quantity(QuantityFormat::number(0, 1e4, {}), reader, *value) : QStringLiteral("–");
  };
  if (!gauge.stitches && !gauge.rows) return QStringLiteral("–");
  return say("%1 × %2 in %3")
      .arg(count(gauge.stitches), count(gauge.rows),
           show_quantity(QuantityFormat::cloth(), reader, to_plain(gauge.over)));
}

QString loop_line(const Pattern& pattern, const Fabric& fabric, const ReaderStyle& reader) {
  const FabricLoop loop = NeedContext(pattern).loop_of(fabric.id);
  return loop.loop ? QString::fromStdString(show_number(loop.loop->value(), 3, reader.numbers)) +
                         QStringLiteral(" cm")
                   : QStringLiteral("–");
}

}  // namespace skeinproof
