// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pattern/start_pane.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"

namespace skeinproof {

StartStep::StartStep(int number, const QString& words, const QString& why, QWidget* parent)
    : QAbstractButton(parent), number_(number), why_(why) {
  setText(words);
  setFocusPolicy(Qt::StrongFocus);
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
  setCursor(Qt::PointingHandCursor);
  set_done(false);
}

void StartStep::set_done(bool done) {
  done_ = done;
  setAccessibleName(tr("Step %1: %2").arg(number_).arg(text().remove(QLatin1Char('&'))));
  setAccessibleDescription(done ? tr("done; ") + why_ : why_);
  update();
}

QSize StartStep::sizeHint() const {
  const int width = scaled(this, 300);
  return {width, heightForWidth(width)};
}

int StartStep::heightForWidth(int width) const {
  const Type type = type_of(font());
  const int words = std::max(1, width - 2 * scaled(this, 12) - scaled(this, 26));
  const int sentence =
      QFontMetrics(type.small).boundingRect(0, 0, words, 10000, Qt::TextWordWrap, why_).height();
  return QFontMetrics(type.body).height() + sentence + scaled(this, 20);
}

void StartStep::paintEvent(QPaintEvent*) {
  const Ink ink = ink_of(palette());
  const Type type = type_of(font());
  QPainter painter(this);
  painter.fillRect(rect(), underMouse() || hasFocus() ? ink.tint : ink.base);
  painter.setPen(ink.rule);
  painter.drawLine(rect().bottomLeft(), rect().bottomRight());
  const int inset = scaled(this, 12);
  QRect inside = rect().adjusted(inset, scaled(this, 9), -inset, -scaled(this, 6));
  painter.setPen(ink.text);
  painter.setFont(type.count);
  const int number_width = scaled(this, 26);
  painter.drawText(QRect(inside.left(), inside.top(), number_width, inside.height()),
                   Qt::AlignLeft | Qt::AlignTop, QString::number(number_));
  inside.setLeft(inside.left() + number_width);
  QFont heavy = type.body;
  heavy.setWeight(done_ ? QFont::Normal : QFont::DemiBold);
  painter.setFont(heavy);
  painter.drawText(inside, Qt::AlignLeft | Qt::AlignTop | Qt::TextShowMnemonic, text());
  painter.setFont(type.small);
  painter.setPen(ink.muted);
  if (done_) painter.drawText(inside, Qt::AlignRight | Qt::AlignTop, tr("done"));
  inside.setTop(inside.top() + QFontMetrics(heavy).height());
  painter.drawText(inside, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, why_);
  if (hasFocus()) {
    painter.setPen(QPen(ink.focus, 2));
    painter.drawRect(rect().adjusted(1, 1, -1, -1));
  }
}

StartPane::StartPane(OpenPattern& open, QWidget* parent) : QWidget(parent), open_(open) {
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(new PaneHeader(tr("Start")));
  const auto step = [&](const QString& words, const QString& why, auto go) {
    auto* made = new StartStep(static_cast<int>(steps_.size()) + 1, words, why);
    connect(made, &QAbstractButton::clicked, this, go);
    steps_.push_back(made);
    layout->addWidget(made);
  };
  step(tr("Paste the yarn block, or the whole draft"),
       tr("sizes, yarn, counts, needles and gauge are read; nothing is altered"),
       [this] { emit wants_place(QStringLiteral("Queries"), 0); });
  step(tr("Or name the sizes yourself"), tr("one line such as 1 (2, 3, 4) fills the head of every table"),
       [this] { emit wants_sizes(); });
  step(tr("Add the yarn and the colours"), tr("what the band says: fibres, metres and grams of a skein"),
       [this] { emit wants_place(QStringLiteral("Yarns"), 0); });
  step(tr("Add pieces, or weigh the sample"), tr("either is enough for a first need; both prove each other"),
       [this] { emit wants_place(QStringLiteral("Pieces"), 0); });

  const auto link = [](const QString& words) {
    auto* made = new QPushButton(words);
    made->setAutoDefault(false);
    return made;
  };
  layout->addWidget(new PaneHeader(tr("Or look at a finished one")));
  auto* samples = new QGridLayout;
  samples->setContentsMargins(scaled(this, 12), scaled(this, 8), scaled(this, 12), scaled(this, 10));
  samples->setHorizontalSpacing(scaled(this, 10));
  samples->setVerticalSpacing(scaled(this, 6));
  struct Offered {
    const char* stem;
    QString title, what;
  };
  const std::vector<Offered> offered = {
      {"quillmarsh-yoke", tr("&Quillmarsh Yoke"), tr("9 sizes, 4 colours, a stranded yoke; invented")},
      {"lampwick-socks", tr("Lampwic&k Stripe Socks"), tr("5 sizes, 2 colours, stripes; invented")},
  };
  for (int row = 0; row < static_cast<int>(offered.size()); ++row) {
    const Offered& sample = offered[static_cast<std::size_t>(row)];
    auto* button = link(sample.title);
    connect(button, &QPushButton::clicked, this, [this, stem = QString::fromLatin1(sample.stem)] {
      emit wants_command(QStringLiteral("sample:") + stem);
    });
    auto* what = new QuietLabel(sample.what);
    what->setWordWrap(true);
    samples->addWidget(button, row, 0);
    samples->addWidget(what, row, 1);
  }
  samples->setColumnStretch(1, 1);
  layout->addLayout(samples);

  layout->addWidget(new PaneHeader(tr("Or open")));
  auto* others = new QHBoxLayout;
  others->setSpacing(scaled(this, 8));
  others->setContentsMargins(scaled(this, 12), scaled(this, 8), scaled(this, 12), scaled(this, 10));
  auto* project = link(tr("Open a pro&ject…"));
  connect(project, &QPushButton::clicked, this, [this] { emit wants_command(QStringLiteral("open")); });
  auto* metres = link(tr("Metres from a weight…"));
  connect(metres, &QPushButton::clicked, this, &StartPane::wants_metres);
  others->addWidget(project);
  others->addWidget(metres);
  others->addStretch(1);
  layout->addLayout(others);
  layout->addStretch(1);
  connect(&open_, &OpenPattern::changed, this, &StartPane::refresh);
  refresh();
}

bool StartPane::is_wanted(const OpenPattern& open) {
  const Pattern& pattern = open.pattern();
  return pattern.yarns.empty() || pattern.roles.empty() ||
         (pattern.pieces.empty() && pattern.weighings.empty());
}

void StartPane::refresh() {
  const Pattern& pattern = open_.pattern();
  steps_[0]->set_done(pattern.draft() != nullptr);
  steps_[1]->set_done(pattern.sizes.size() > 1 || pattern.sizes.front().label != "1");
  steps_[2]->set_done(!pattern.yarns.empty() && !pattern.roles.empty());
  steps_[3]->set_done(!pattern.pieces.empty() || !pattern.weighings.empty());
}

}  // namespace skeinproof
