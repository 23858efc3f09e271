// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/yarns/yarn_figures.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "app/widgets/quantity_text.h"
#include "core/reference/lookup.h"
#include "core/units/show.h"
#include "core/yarn/linear_density.h"
#include "core/yarn/moisture.h"
#include "core/yarn/thickness.h"

namespace skeinproof {

namespace {

QString say(const char* words) { return QCoreApplication::translate("YarnFigures", words); }
QString text_of(std::string_view words) {
  return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

class Figures {
 public:
  Figures(const Yarn& yarn, const ReaderStyle& reader) : yarn_(yarn), reader_(reader) {}

  std::vector<FigureRow> take() {
    label();
    fibres();
    moisture();
    shortage();
    band();
    return std::move(rows_);
  }

 private:
  QString number(double value, int decimals) const {
    return QString::fromStdString(show_number(value, decimals, reader_.numbers));
  }
  QString range(double low, double high, int decimals) const {
    return number(low, decimals) + QStringLiteral("–") + number(high, decimals);
  }
  void head(const QString& words) { rows_.push_back({words, {}, {}, {}, false, true}); }
  void add(const QString& name, const QString& figure, const QString& how, const std::string& source) {
    rows_.push_back({name, figure, how, QString::fromStdString(source), false, false});
  }

  void label() {
    const auto density = linear_density(yarn_.put_up);
    if (!density) return;
    density_ = *density;
    const auto source = [](std::string_view name) {
      const CountSystem* system = count_system_by_name(name);
      return system != nullptr ? citation(system->source, system->confidence) : std::string();
    };
    head(say("From the label"));
    add(say("Metres in a gram"), number(density->value(), 3) + QStringLiteral(" m/g"),
        number(yarn_.put_up.length->value.value(), 1) + QStringLiteral(" m ÷ ") +
            number(yarn_.put_up.weight->value.value(), 1) + QStringLiteral(" g"),
        "label");
    rows_.back().strong = true;
    add(say("Tex"), number(in_tex(*density), 1), say("grams in 1,000 m"), source("tex"));
    add(say("Metric count"), QStringLiteral("Nm ") + number(metric_count(*density), 2),
        say("metres in a gram"), source("Nm"));
    add(say("Metres in 100 g"), number(metres_per_100g(*density), 0) + QStringLiteral(" m"), {}, "label");
    add(say("Yards in an ounce"), number(yards_per_ounce(*density), 1) + QStringLiteral(" yd"),
        say("a yard is 0.9144 m, an ounce 28.3495 g, both by definition"), "label");
  }

  void fibres() {
    const auto blend = fibre_density(yarn_.composition);
    if (yarn_.composition.empty()) return;
    head(say("Fibres"));
    if (blend) {
      std::string sources;
      for (const Fibre* fibre : blend->rows) {
        const std::string cited = citation(fibre->density.source, fibre->density.confidence);
        if (sources.find(cited) == std::string::npos) sources += (sources.empty() ? "" : "; ") + cited;
      }
      add(say("Density of the fibres"), number(blend->g_per_cm3, 2) + QStringLiteral(" g/cm³"),
          range(blend->low, blend->high, 2) + say("; the fibre itself, without the air between"), sources);
      if (density_) thickness(blend->g_per_cm3);
    }
    for (const FibreShare& share : yarn_.composition) one_fibre(share);
  }

  void thickness(double fibre_g_per_cm3) {
    const LoopConstant& packing = packing_fraction(yarn_.spinning);
    if (!packing.figure.value) return;
    const auto mm = [&](double phi) { return 10 * yarn_diameter(*density_, fibre_g_per_cm3, phi).value(); };
    QString how = say("√(4 tex ÷ (1000 π × density × packing)), packing ") + number(*packing.figure.value, 2);
    if (packing.figure.low && packing.figure.high)
      how += QStringLiteral(" (") + range(*packing.figure.low, *packing.figure.high, 2) + say(": ") +
             range(mm(*packing.figure.high), mm(*packing.figure.low), 2) + QStringLiteral(" mm)");
    add(say("Thickness in the cloth"), number(mm(*packing.figure.value), 2) + QStringLiteral(" mm"), how,
        citation(packing.figure.source, packing.figure.confidence));
  }

  void one_fibre(const FibreShare& share) {
    const Fibre* fibre = fibre_by_id(share.fibre);
    const QString words = QString::fromStdString(share.words);
    if (fibre == nullptr) {
      add(words, QStringLiteral("–"), say("not in the table of fibres, so nothing follows from it"), {});
      return;
    }
    QString how = text_of(fibre->name);
    if (!fibre->legal_name.text.empty())
      how += say("; generic name “") + text_of(fibre->legal_name.text) + u'”';
    add(words,
        fibre->density.value ? number(*fibre->density.value, 2) + QStringLiteral(" g/cm³")
                             : QStringLiteral("–"),
        how, citation(fibre->density.source, fibre->density.confidence));
    if (!fibre->felting_note.empty())
      add(say("%1: felting").arg(words), text_of(fibre->felting), text_of(fibre->felting_note), {});
    if (!fibre->sensitivity_note.empty())
      add(say("%1: caution").arg(words), say("on the skin"), text_of(fibre->sensitivity_note), {});
  }

  void moisture() {
    const auto blend = blend_allowance_pct(yarn_.composition, yarn_.spinning, yarn_.market);
    if (!blend || yarn_.composition.empty()) return;
    head(say("Water in the label's grams"));
    std::string sources;
    double low = 0, high = 0, sum = 0;
    for (const FibreShare& share : yarn_.composition)
      if (const Fibre* fibre = fibre_by_id(share.fibre)) {
        const MoistureContent content = allowance(*fibre, yarn_.spinning, yarn_.market);
        low += share.percent.value * content.low_pct;
        high += share.percent.value * content.high_pct;
        sum += share.percent.value;
        if (sources.find(content.source) == std::string::npos)
          sources += (sources.empty() ? "" : "; ") + content.source;
      }
    QString how = say("of the dry mass; what the label's weight is made up with");
    if (sum > 0 && high - low > 0.005 * sum)
      how = range(low / sum, high / sum, 2) + say(" %: spinning or market decides which");
    add(say("Official allowance"), number(*blend, 2) + QStringLiteral(" %"), how, sources);
  }

  void shortage() {
    const bool european = yarn_.market != Market::united_states;
    std::vector<FigureRow> rows;
    const auto room = [&](const std::optional<AllowedShortage>& shortage, const QString& name,
                          const QString& unit) {
      if (!shortage || shortage->row == nullptr) return;
      rows.push_back({name, number(shortage->amount, 1) + unit, text_of(shortage->row->applies_to),
                      QString::fromStdString(citation(shortage->row->source, shortage->row->confidence)),
                      false, false});
    };
    if (yarn_.put_up.weight) {
      const Grams weight = yarn_.put_up.weight->value;
      if (european)
        room(european_mass_shortage(weight), say("Weight, one skein"), QStringLiteral(" g"));
      else
        room(united_states_mass_shortage(weight), say("Weight, one skein"), QStringLiteral(" g"));
    }
    if (yarn_.put_up.length) {
      const Metres length = yarn_.put_up.length->value;
      if (european)
        room(german_yarn_length_shortage(length), say("Length, one skein"), QStringLiteral(" m"));
      else
        room(united_states_length_shortage(length), say("Length, one skein"), QStringLiteral(" m"));
    }
    if (rows.empty()) return;
    head(say("May fall short of the label by"));
    rows_.insert(rows_.end(), rows.begin(), rows.end());
  }

  void band() {
    std::vector<FigureRow> rows;
    if (yarn_.band_needle) {
      const double mm = std::round(yarn_.band_needle->value.value() * 1000) / 100;
      if (const NeedleRow* needle = needle_by_mm(mm)) {
        const auto name = [&](const QString& system, const Cited& cited) {
          if (!cited.text.empty())
            rows.push_back({system,
                            text_of(cited.text),
                            {},
                            QString::fromStdString(citation(cited.source, cited.confidence)),
                            false,
                            false});
        };
        name(say("Needle, US"), needle->us);
        name(say("Needle, old UK"), needle->uk_old);
        name(say("Needle, Japan"), needle->japan);
      }
    }
    if (yarn_.band_stitches_low) {
      const double over_4in = yarn_.band_stitches_low->value * 1.016;
      QStringList names;
      const WeightCategory* first = nullptr;
      for (const WeightCategory* category : weight_categories_by_stitches(over_4in)) {
        names << text_of(category->name);
        if (first == nullptr) first = category;
      }
      if (first != nullptr)
        rows.push_back({say("Weight by the gauge"), names.join(say(" or ")),
                        number(over_4in, 1) + say(" stitches over 4 in"),
                        QString::fromStdString(
                            citation(first->stitches_per_4in.source, first->stitches_per_4in.confidence)),
                        false, false});
    }
    if (rows.empty()) return;
    head(say("From the band"));
    rows_.insert(rows_.end(), rows.begin(), rows.end());
  }

  const Yarn& yarn_;
  const ReaderStyle& reader_;
  std::vector<FigureRow> rows_;
  std::optional<MetresPerGram> density_;
};

}  // namespace

std::vector<FigureRow> yarn_figures(const Yarn& yarn, const ReaderStyle& reader) {
  return Figures(yarn, reader).take();
}

QString put_up_line(const PutUp& put_up, const ReaderStyle& reader) {
  const QString dash = QStringLiteral("–");
  const QString length =
      put_up.length ? show_quantity(QuantityFormat::yarn_length(), reader, {put_up.length->value.value(), {}})
                    : dash;
  const QString weight =
      put_up.weight ? show_quantity(QuantityFormat::mass(), reader, {put_up.weight->value.value(), {}})
                    : dash;
  return put_up.length || put_up.weight ? length + QStringLiteral(" / ") + weight : dash;
}

QString other_system(const std::optional<Entered<Metres>>& length, const ReaderStyle& reader) {
  if (!length) return {};
  if (reader.imperial_first)
    return QString::fromStdString(show_number(length->value.value(), 1, reader.numbers)) +
           QStringLiteral(" m");
  return QString::fromStdString(show_number(in_yards(length->value), 0, reader.numbers)) +
         QStringLiteral(" yd");
}

QString other_system(const std::optional<Entered<Grams>>& weight, const ReaderStyle& reader) {
  if (!weight) return {};
  if (reader.imperial_first)
    return QString::fromStdString(show_number(weight->value.value(), 1, reader.numbers)) +
           QStringLiteral(" g");
  return QString::fromStdString(show_number(in_ounces(weight->value), 2, reader.numbers)) +
         QStringLiteral(" oz");
}

}  // namespace skeinproof
