// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/buy_pane.h"

#include <QDateTime>
#include <QFileDialog>
#include <QFontDatabase>
#include <QLabel>
#include <QListView>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSplitter>
#include <QVBoxLayout>

#include "app/pages/candidates/band_lines.h"
#include "app/pages/candidates/candidate_rows.h"
#include "app/print/save_sheet.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/quantity_text.h"
#include "core/sheets/shopping_list.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

QString qt(const std::string& text) { return QString::fromStdString(text); }

FigureRow buy_row(const CandidateRole& role, const YarnToBuy& buy, const ReaderStyle& reader) {
  QuantityFormat metres = QuantityFormat::yarn_length();
  metres.decimals = 1;
  FigureRow row;
  row.name = BuyPane::tr("%1  %2").arg(qt(role.label), qt(buy.name));
  row.strong = true;
  QStringList bought, how;
  for (const PutUpBought& put_up : buy.put_ups) {
    QString words = BuyPane::tr("%1 of %2").arg(put_up.count).arg(put_up_text(put_up.put_up, reader));
    if (put_up.price) words += BuyPane::tr(" at %1 each").arg(price_text(put_up.price, reader));
    bought << words;
  }
  row.figure = buy.skeins ? QString::number(*buy.skeins) : QStringLiteral("–");
  how << BuyPane::tr("planned %1").arg(show_quantity(metres, reader, {buy.planned.value(), {}}));
  how << bought;
  if (buy.spare)
    how << BuyPane::tr("%1 left over").arg(show_quantity(metres, reader, {buy.spare->value(), {}}));
  if (buy.cost) how << money_words(*buy.cost, 2, qt(buy.currency), reader);
  row.how = how.join(QStringLiteral("; "));
  for (const std::string* more : {&buy.tight, &buy.missing})
    if (!more->empty()) row.how += QLatin1Char('\n') + qt(*more);
  return row;
}

// Sentences wrap at a width that is easy to read; the rows of tables stay whole.
QString wrapped_sentences(const QString& text) {
  constexpr qsizetype most = 96;
  QStringList lines;
  for (const QString& whole : text.split(QLatin1Char('\n'))) {
    QString rest = whole;
    while (rest.size() > most && !rest.contains(QStringLiteral("  "))) {
      const qsizetype at = rest.lastIndexOf(QLatin1Char(' '), most);
      if (at <= 0) break;
      lines << rest.left(at);
      rest = rest.mid(at + 1);
    }
    lines << rest;
  }
  return lines.join(QLatin1Char('\n'));
}

}  // namespace

std::vector<FigureRow> buy_figures(const CandidateFacts& facts, const ReaderStyle& reader) {
  std::vector<FigureRow> rows;
  for (const CandidateRole& role : facts.roles)
    for (const YarnToBuy& buy : role.buys) rows.push_back(buy_row(role, buy, reader));
  if (rows.empty()) return rows;
  FigureRow total;
  total.name = BuyPane::tr("All of it");
  total.figure = facts.skeins ? QString::number(*facts.skeins) : QStringLiteral("–");
  total.strong = true;
  QStringList how;
  for (const std::string* words : {&facts.basket_words, &facts.budget_words})
    if (!words->empty()) how << qt(*words);
  total.how = how.join(QStringLiteral("; "));
  rows.push_back(std::move(total));
  return rows;
}

BuyPane::BuyPane(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      ask_path_([](QWidget* window, const QString& suggestion, const QString& filter) {
        return QFileDialog::getSaveFileName(window, {}, suggestion, filter);
      }),
      choice_(new ChoiceField),
      figures_(new FigureList),
      list_(new QPlainTextEdit),
      job_([this](Expected<Sheet> list) { take(std::move(list)); }) {
  choice_->setAccessibleName(tr("Candidate to buy"));
  auto* words = new QLabel(tr("T&o buy for"));
  words->setBuddy(choice_);
  auto* save = new QPushButton(tr("Sho&pping list…"));
  save->setToolTip(tr("Save the list as PDF, text, HTML or a workbook; Ctrl+P prints it"));
  save->setAutoDefault(false);
  auto* bar = new QWidget;
  auto* flow = new FlowLayout(bar);
  flow->setContentsMargins(scaled(this, 10), scaled(this, 7), scaled(this, 10), scaled(this, 7));
  flow->setSpacing(scaled(this, 8));
  for (QWidget* widget : std::initializer_list<QWidget*>{words, choice_}) flow->addWidget(widget);
  flow->add_stretch();
  flow->addWidget(save);
  figures_->view()->setAccessibleName(tr("What to buy"));
  figures_->set_empty_words(tr("Nothing to buy yet: add a piece, or weigh the sample."));
  list_->setReadOnly(true);
  list_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  list_->setTabChangesFocus(true);
  list_->setFrameShape(QFrame::NoFrame);
  list_->setLineWrapMode(QPlainTextEdit::NoWrap);
  list_->setAccessibleName(tr("Shopping list"));
  QFont fixed;  // only its family is set: the size follows the window's
  fixed.setFamily(QFontDatabase::systemFont(QFontDatabase::FixedFont).family());
  fixed.setStyleHint(QFont::Monospace);
  list_->setFont(fixed);
  list_->document()->setDocumentMargin(scaled(this, 12));
  auto* split = new QSplitter(Qt::Horizontal);
  split->addWidget(make_pane(new PaneHeader(tr("Colour by colour")), figures_));
  split->addWidget(make_pane(new PaneHeader(tr("The shopping list")), list_));
  split->setChildrenCollapsible(false);
  split->setStretchFactor(1, 1);
  split->setSizes({scaled(this, 400), scaled(this, 780)});
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(bar);
  layout->addWidget(split, 1);
  setFocusProxy(choice_);
  connect(choice_, &ChoiceField::chosen, this, &BuyPane::refresh);
  connect(save, &QPushButton::clicked, this, &BuyPane::save_list);
}

CandidateId BuyPane::candidate() const { return CandidateId{choice_->currentData().toUInt()}; }

void BuyPane::choose_candidate(CandidateId id) {
  choice_->show_choice(id.value);
  refresh();
}

QString BuyPane::list_text() const { return list_->toPlainText(); }

void BuyPane::show_facts(const std::vector<CandidateFacts>& facts) {
  facts_ = facts;
  std::vector<Choice> choices;
  for (const CandidateFacts& each : facts_)
    choices.push_back(
        {each.own ? tr("%1, the pattern’s yarn").arg(qt(each.name)) : qt(each.name), each.id.value});
  choice_->set_choices(choices);
  if (choice_->currentIndex() < 0 && choice_->count() > 0) choice_->setCurrentIndex(0);
  refresh();
}

void BuyPane::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  work_out();
}

void BuyPane::refresh() {
  std::vector<FigureRow> rows;
  for (const CandidateFacts& each : facts_)
    if (each.id == candidate()) rows = buy_figures(each, open_.reader());
  figures_->set_rows(std::move(rows));
  work_out();
}

void BuyPane::work_out() {
  // Another size at the bench is no other state of the document.
  const std::pair<quint64, std::uint32_t> wanted{open_.state() * 1000 + open_.chosen_size_index(),
                                                 candidate().value};
  if (!isVisible() || wanted_ == wanted || facts_.empty()) return;
  wanted_ = wanted;
  job_.ask([pattern = open_.pattern(), assessment = open_.assessment(), id = candidate()] {
    return shopping_list(pattern, assessment, pattern.house(), id);
  });
}

void BuyPane::take(Expected<Sheet> list) {
  sheet_ = list ? std::optional(std::move(*list)) : std::nullopt;
  const QString text = sheet_ ? wrapped_sentences(qt(plain_text(*sheet_))) : sentence_of(list.error());
  if (list_->toPlainText() != text) list_->setPlainText(text);
  emit worked_out();
}

void BuyPane::save_list() {
  const auto& whole = sheet();
  if (!whole) return emit says(tr("Nothing to buy yet: add a piece, or weigh the sample."));
  const QString path =
      ask_path_(this, tr("shopping-list.pdf"),
                tr("PDF (*.pdf);;Text (*.txt);;HTML (*.html);;Workbook (*.xlsx);;CSV (*.csv)"));
  if (path.isEmpty()) return;
  const auto saved = save_sheet(*whole, path.toStdString(), QDateTime::currentSecsSinceEpoch());
  emit says(saved ? tr("Saved %1").arg(path) : sentence_of(saved.error()));
}

}  // namespace skeinproof
