// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/candidate_charts.h"

#include <QButtonGroup>
#include <QGridLayout>
#include <QLabel>
#include <QPainter>
#include <QScrollArea>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "app/pages/candidates/candidate_rows.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/heavy_when_checked.h"
#include "app/widgets/ink.h"
#include "app/widgets/quantity_text.h"

namespace skeinproof {
namespace {

constexpr std::size_t chart_count = 4;
constexpr double paper_height = 190;  // points
constexpr double paper_margin = 56;
constexpr double paper_key_height = 36;

using Over = CandidateCharts::Over;
using Value = std::function<std::optional<double>(const CandidateFacts&)>;

QString qt(const std::string& text) { return QString::fromStdString(text); }

std::vector<const CandidateFacts*> shown(const std::vector<CandidateFacts>& facts) {
  std::vector<const CandidateFacts*> all;
  for (const CandidateFacts& each : facts)
    if (each.own || each.shown) all.push_back(&each);
  return all;
}

std::optional<double> last_skein(const CandidateFacts& facts, RoleId role) {
  for (const CandidateRole& each : facts.roles)
    if (each.role == role && !each.buys.empty()) return each.buys.front().last_skein_share;
  return std::nullopt;
}

// Sums of two currencies stand in no chart.
QString one_currency(const std::vector<const CandidateFacts*>& facts) {
  QString currency;
  for (const CandidateFacts* each : facts) {
    if (!each->basket) continue;
    const QString own = qt(each->currency);
    if (!currency.isEmpty() && own != currency) return {};
    currency = own;
  }
  return currency;
}

// Which hatch is whose.
class SeriesKey : public QWidget {
 public:
  void show_names(const QStringList& names) {
    names_ = names;
    setAccessibleName(names.join(QStringLiteral(", ")));
    setVisible(names.size() > 1);
    updateGeometry();
    update();
  }
  bool hasHeightForWidth() const override { return true; }
  int heightForWidth(int width) const override {
    return static_cast<int>(std::ceil(draw(nullptr, width))) + scaled(this, 6);
  }
  QSize sizeHint() const override {
    return {scaled(this, 300), heightForWidth(std::max(width(), scaled(this, 300)))};
  }

 protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    draw(&painter, width());
  }

 private:
  double draw(QPainter* painter, double width) const {
    const double room = scaled(this, 12);
    return draw_series_key(painter, QRectF(room, 0, width - 2 * room, 0), names_, ink_of(palette()),
                           type_of(font()), scaled(this, 100) / 100.0);
  }
  QStringList names_;
};

QStringList names_of(const BarsData& data) {
  QStringList names;
  for (const BarsData::Series& series : data.series) names << series.name;
  return names;
}

}  // namespace

std::vector<BarsData> candidate_bars(const Pattern& pattern, const FactsBySize& facts, Over over,
                                     std::size_t chosen_size, RoleId role, const ReaderStyle& reader) {
  if (chosen_size >= facts.size()) return {};
  const auto columns = shown(facts[chosen_size]);
  const QString currency = one_currency(columns);
  const auto number = [&reader](double value, int decimals) {
    return qt(show_number(value, decimals, reader.numbers));
  };
  const auto bars = [&](const QString& title, const Value& value, std::function<QString(double)> words) {
    BarsData data;
    data.title = title;
    data.words = std::move(words);
    if (over == Over::candidates) {
      data.series.push_back({title, {}});
      for (const CandidateFacts* each : columns) {
        data.axis.labels.push_back(qt(each->name));
        data.series.front().values.push_back(value(*each));
      }
      data.axis.opens_group.assign(columns.size(), false);
      data.axis.chosen = columns.size();  // none of them is the chosen size
      return data;
    }
    for (const Size& size : pattern.sizes) {
      data.axis.labels.push_back(qt(size.label));
      data.axis.opens_group.push_back(size.opens_group);
    }
    data.axis.chosen = chosen_size;
    for (std::size_t at = 0; at < columns.size(); ++at) {
      BarsData::Series series{qt(columns[at]->name), {}};
      for (const auto& of_size : facts) {
        const auto same = shown(of_size);
        series.values.push_back(at < same.size() ? value(*same[at]) : std::nullopt);
      }
      data.series.push_back(std::move(series));
    }
    return data;
  };

  std::vector<BarsData> all;
  all.push_back(bars(
      currency.isEmpty() ? CandidateCharts::tr("Cost of the basket")
                         : CandidateCharts::tr("Cost of the basket, %1").arg(currency),
      [&](const CandidateFacts& each) {
        return currency.isEmpty() || qt(each.currency) == currency ? each.basket : std::nullopt;
      },
      [number](double value) { return number(value, 0); }));
  if (pattern.budget) {
    all.back().line = pattern.budget->amount.value;
    all.back().line_words =
        CandidateCharts::tr("budget %1")
            .arg(money_words(pattern.budget->amount.value, 2, qt(pattern.budget->currency), reader));
  }
  const double ounce = reader.imperial_first ? in_ounces(Grams::from_value(1)) : 1;
  all.push_back(bars(
      reader.imperial_first ? CandidateCharts::tr("Mass of the yarn, oz")
                            : CandidateCharts::tr("Mass of the yarn, g"),
      [](const CandidateFacts& each) { return each.mass_g.value; },
      [number, ounce](double value) { return number(value * ounce, ounce == 1 ? 0 : 1); }));
  const auto per_cent = [number](double value) { return number(100 * value, 0) + QStringLiteral(" %"); };
  all.push_back(bars(
      CandidateCharts::tr("Left over of what is bought"),
      [](const CandidateFacts& each) { return each.spare_share; }, per_cent));
  const Role* named = pattern.role(role);
  all.push_back(bars(
      CandidateCharts::tr("Last skein of %1, needed of it")
          .arg(named != nullptr ? qt(named->label) : QStringLiteral("–")),
      [role](const CandidateFacts& each) { return last_skein(each, role); }, per_cent));
  all.back().top = 1;
  return all;
}

CandidateCharts::CandidateCharts(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      switch_(new QButtonGroup(this)),
      role_(new ChoiceField),
      key_(new SeriesKey) {
  auto* bar = new QWidget;
  auto* flow = new FlowLayout(bar);
  flow->setContentsMargins(scaled(this, 12), scaled(this, 8), scaled(this, 12), scaled(this, 8));
  flow->setSpacing(scaled(this, 8));
  const std::pair<QString, Over> ways[] = {{tr("By ca&ndidate"), Over::candidates},
                                           {tr("Over all si&zes"), Over::sizes}};
  for (const auto& [words, over] : ways) {
    auto* button = new QToolButton;
    button->setText(words);
    button->setCheckable(true);
    show_checked_heavy(button);
    switch_->addButton(button, static_cast<int>(over));
    flow->addWidget(button);
  }
  switch_->button(0)->setChecked(true);
  connect(switch_, &QButtonGroup::idClicked, this, [this](int id) { show_over(static_cast<Over>(id)); });
  auto* role_words = new QLabel(tr("Last skein of"));
  role_words->setBuddy(role_);
  role_->setAccessibleName(tr("Colour of the last skein"));
  flow->addWidget(role_words);
  flow->addWidget(role_);
  connect(role_, &ChoiceField::chosen, this, &CandidateCharts::refresh);

  auto* body = new QWidget;
  auto* grid = new QGridLayout(body);
  grid->setContentsMargins(scaled(this, 8), 0, scaled(this, 8), scaled(this, 8));
  grid->setSpacing(scaled(this, 12));
  for (std::size_t at = 0; at < chart_count; ++at) {
    auto* chart = new GroupedBars;
    chart->setMinimumHeight(scaled(this, 200));
    charts_.push_back(chart);
    grid->addWidget(chart, static_cast<int>(at) / 2, static_cast<int>(at) % 2);
  }
  auto* area = new QScrollArea;
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  area->setWidget(body);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(bar);
  layout->addWidget(key_);
  layout->addWidget(area, 1);
  setFocusProxy(switch_->button(0));
}

void CandidateCharts::show_facts(FactsBySize facts) {
  facts_ = std::move(facts);
  refresh();
}

void CandidateCharts::show_over(Over over) {
  over_ = over;
  switch_->button(static_cast<int>(over))->setChecked(true);
  refresh();
}

void CandidateCharts::refresh() {
  const Pattern& pattern = open_.pattern();
  std::vector<Choice> choices;
  for (const Role& role : pattern.roles) choices.push_back({qt(role.label), role.id.value});
  role_->set_choices(choices);
  if (role_->currentIndex() < 0 && role_->count() > 0) role_->setCurrentIndex(0);
  const auto all = candidate_bars(pattern, facts_, over_, open_.chosen_size_index(),
                                  RoleId{role_->currentData().toUInt()}, open_.reader());
  for (std::size_t at = 0; at < charts_.size(); ++at)
    charts_[at]->show_bars(at < all.size() ? all[at] : BarsData());
  static_cast<SeriesKey*>(key_)->show_names(all.empty() ? QStringList() : names_of(all.front()));
}

std::vector<PaperBlock> CandidateCharts::paper_blocks() const {
  std::vector<PaperBlock> blocks;
  const QStringList names = names_of(charts_.front()->data());
  if (names.size() > 1)
    blocks.push_back({paper_key_height, [names, font = font()](QPainter& painter, const QRectF& rect) {
                        QFont small = font;
                        small.setPixelSize(10);
                        draw_series_key(&painter, rect, names, paper_ink(), type_of(small), 0.77);
                      }});
  for (const GroupedBars* chart : charts_)
    if (!chart->data().series.empty())
      blocks.push_back({paper_height, [data = chart->data()](QPainter& painter, const QRectF& rect) {
                          GroupedBars paper;
                          paper.show_bars(data);
                          paper.paint_on_paper(painter, rect, paper_margin);
                        }});
  return blocks;
}

}  // namespace skeinproof
