// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/band_form.h"

#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>
#include <cstring>

#include "app/pages/candidates/band_lines.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "app/widgets/line_field.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/quantity_text.h"
#include "core/pattern/edits.h"
#include "core/units/read.h"
#include "core/yarn/check_yarn.h"
#include "core/yarn/read_composition.h"

namespace skeinproof {
namespace {

constexpr double most_strands = 20;

QString take_name(const QString& line, Yarn& yarn, const ReaderStyle&) {
  yarn.name = line.trimmed().toStdString();
  return {};
}
QString take_fibres(const QString& line, Yarn& yarn, const ReaderStyle&) {
  const auto read = read_composition(line.toStdString());
  if (!read) return sentence_of(read.error());
  yarn.composition = *read;
  return {};
}
QString take_put_up(const QString& line, Yarn& yarn, const ReaderStyle&) {
  const auto read = read_put_up(line);
  if (!read) return sentence_of(read.error());
  yarn.put_up = *read;
  return {};
}
QString take_gauge(const QString& line, Yarn& yarn, const ReaderStyle&) {
  const auto read = read_band_gauge(line);
  if (!read) return sentence_of(read.error());
  yarn.band_stitches_low = read->low;
  yarn.band_stitches_high = read->high;
  return {};
}
QString take_price(const QString& line, Yarn& yarn, const ReaderStyle&) {
  const auto read = read_price(line);
  if (!read) return sentence_of(read.error());
  yarn.price = *read;
  return {};
}

struct SpinningWord {
  const char* begins;
  Spinning spinning;
};
constexpr SpinningWord spinning_words[] = {{"semi-worsted", Spinning::semi_worsted},
                                           {"worsted-spun", Spinning::worsted},
                                           {"woollen-spun", Spinning::woollen},
                                           {"woolen-spun", Spinning::woollen}};

// "worsted-spun 3-ply": how it was spun goes where it belongs, the rest stays as it stands.
QString take_structure(const QString& line, Yarn& yarn, const ReaderStyle&) {
  QString words = line.trimmed();
  yarn.spinning = Spinning::unstated;
  for (const SpinningWord& row : spinning_words) {
    const QLatin1String word(row.begins);
    if (!words.contains(word, Qt::CaseInsensitive)) continue;
    yarn.spinning = row.spinning;
    words.remove(word, Qt::CaseInsensitive);
    break;
  }
  yarn.structure = words.simplified().toStdString();
  return {};
}
QString take_care(const QString& line, Yarn& yarn, const ReaderStyle&) {
  yarn.care = line.trimmed().toStdString();
  return {};
}

}  // namespace

CandidateId add_candidate_yarn(Pattern& pattern, Yarn yarn, RoleId role, int strands) {
  yarn.id = take_id<YarnId>(pattern);
  const YarnId id = yarn.id;
  pattern.yarns.push_back(std::move(yarn));
  const CandidateId candidate = add_candidate(pattern, id);
  CandidateYarn& row = pattern.candidates.back().yarns.front();
  row.role = role;
  row.strands = strands;
  return candidate;
}

BandForm::BandForm(OpenPattern& open, QWidget* parent)
    : QFrame(parent), open_(open), role_(new ChoiceField), problem_(new QLabel) {
  auto* head = new PaneHeader(tr("A candidate from its ball band"));
  head->set_note(tr("Enter goes on, Ctrl+Enter adds it, Esc gives it up"));
  auto* lines = new QWidget;
  flow_ = new FlowLayout(lines);
  flow_->setContentsMargins(scaled(this, 12), scaled(this, 8), scaled(this, 12), scaled(this, 10));
  flow_->setSpacing(scaled(this, 8));
  add_line("name", tr("Yarn"), tr("its name"), 150, &take_name);
  add_line("fibres", tr("Fibres"), tr("70% cotton, 30% linen"), 170, &take_fibres);
  add_line("put_up", tr("Put-up"), tr("50 g = 130 m"), 112, &take_put_up);
  add_line("gauge", tr("Stitches, 10 cm"), tr("24–25"), 88, &take_gauge);
  add_line("price", tr("Price, a skein"), tr("€5.20"), 82, &take_price);
  add_line("structure", tr("Structure"), tr("worsted-spun 3-ply"), 128, &take_structure);
  add_line("care", tr("Care"), tr("hand wash"), 100, &take_care);
  role_->setAccessibleName(tr("Colour it is for"));
  flow_->addWidget(boxed(tr("In place of"), role_, 0));
  strands_ = new LineField([this](const QString& line) {
    const auto read = read_number(line.trimmed().isEmpty() ? "1" : line.toStdString(), 1, most_strands,
                                  "strands held together");
    if (!read) return sentence_of(read.error());
    if (read->value != static_cast<int>(read->value)) return tr("Expected a whole number of strands.");
    strand_count_ = static_cast<int>(read->value);
    strands_->show_line(line);
    return QString();
  });
  strands_->setAccessibleName(tr("Strands held together"));
  strands_->setPlaceholderText(QStringLiteral("1"));
  lines_.push_back({"strands", strands_});
  flow_->addWidget(boxed(tr("Strands"), strands_, 60));

  auto* put = new QPushButton(tr("Add &it"));
  auto* give_up = new QPushButton(tr("Give it up"));
  for (QPushButton* button : {put, give_up}) button->setAutoDefault(false);
  connect(put, &QPushButton::clicked, this, [this] { add(); });
  connect(give_up, &QPushButton::clicked, this, &BandForm::leave);
  for (QPushButton* button : {put, give_up}) flow_->addWidget(boxed({}, button, 0));
  problem_->setTextFormat(Qt::PlainText);
  problem_->setWordWrap(true);
  problem_->setContentsMargins(scaled(this, 12), 0, scaled(this, 12), scaled(this, 8));
  problem_->setAccessibleName(tr("What is wrong with the band"));
  problem_->hide();

  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 1);
  layout->setSpacing(0);
  layout->addWidget(head);
  layout->addWidget(lines);
  layout->addWidget(problem_);
  setFocusProxy(lines_.front().field);
  dress();
  hide();
}

QWidget* BandForm::boxed(const QString& words, QWidget* field, double width) {
  auto* box = new QWidget;
  auto* layout = new QVBoxLayout(box);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(scaled(this, 2));
  auto* label = new QLabel(words);
  label->setBuddy(field);
  layout->addWidget(label);
  layout->addWidget(field);
  if (width > 0) widths_.emplace_back(field, width);
  return box;
}

void BandForm::add_line(const char* name, const QString& words, const QString& example, double width,
                        Read read) {
  const std::size_t at = lines_.size();
  auto* field = new LineField([this, at, read](const QString& line) {
    const QString reason = read(line, draft_, open_.reader());
    if (reason.isEmpty()) lines_[at].field->show_line(line);
    show_problem();
    return reason;
  });
  field->setAccessibleName(words);
  field->setPlaceholderText(example);
  lines_.push_back({name, field});
  flow_->addWidget(boxed(words, field, width));
}

LineField* BandForm::line(const char* name) const {
  for (const Line& row : lines_)
    if (std::strcmp(row.name, name) == 0) return row.field;
  return nullptr;
}

QString BandForm::problem() const { return problem_->text(); }

void BandForm::begin() {
  draft_ = Yarn();
  strand_count_ = 1;
  for (const Line& row : lines_) {
    row.field->give_back();
    row.field->show_line({});
  }
  std::vector<Choice> choices = {{tr("every colour"), 0}};
  for (const Role& role : open_.pattern().roles)
    choices.push_back({tr("%1 only").arg(QString::fromStdString(role.label)), role.id.value});
  role_->set_choices(choices);
  role_->setCurrentIndex(0);
  show_problem();
  show();
  lines_.front().field->setFocus();
}

bool BandForm::add() {
  for (const Line& row : lines_)
    if (!row.field->commit()) {
      row.field->setFocus();
      return false;
    }
  if (draft_.name.empty()) {
    emit says(tr("A candidate needs a name."));
    lines_.front().field->setFocus();
    return false;
  }
  CandidateId id;
  const RoleId role{role_->currentData().toUInt()};
  const auto refused =
      open_.apply(tr("add candidate %1").arg(QString::fromStdString(draft_.name)),
                  [&](Pattern& pattern) { id = add_candidate_yarn(pattern, draft_, role, strand_count_); });
  if (refused) {
    emit says(sentence_of(*refused));
    return false;
  }
  leave();
  emit added(id);
  return true;
}

void BandForm::leave() {
  const QWidget* focus = focusWidget();
  const bool had_focus = focus != nullptr && focus->hasFocus();
  hide();
  emit left(had_focus);
}

void BandForm::show_problem() {
  QStringList sentences;
  for (const auto& problems : {check_composition(draft_.composition), check_put_up(draft_.put_up)})
    for (const Error& problem : problems) sentences << sentence_of(problem);
  if (draft_.put_up.weight && !draft_.put_up.length)
    sentences << tr("Without a length in the skein no skeins can be counted.");
  problem_->setText(sentences.join(QLatin1Char('\n')));
  problem_->setVisible(!sentences.isEmpty());
}

void BandForm::keyPressEvent(QKeyEvent* event) {
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  if (event->key() == Qt::Key_Escape) return leave();
  if (!enter) return QFrame::keyPressEvent(event);
  auto* button = qobject_cast<QPushButton*>(focusWidget());
  const auto* field = qobject_cast<LineField*>(focusWidget());
  if (event->modifiers().testFlag(Qt::ControlModifier))
    add();
  else if (button != nullptr)
    button->click();
  else if (field != nullptr && field == lines_.back().field)
    add();
  else if (field == nullptr || field->message().isEmpty())
    focusNextChild();
}

void BandForm::changeEvent(QEvent* event) {
  QFrame::changeEvent(event);
  if (event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange) dress();
}

void BandForm::paintEvent(QPaintEvent*) {
  const Ink ink = ink_of(palette());
  QPainter painter(this);
  painter.fillRect(rect(), ink.window);
  painter.setPen(ink.edge);
  painter.drawLine(rect().bottomLeft(), rect().bottomRight());
}

void BandForm::dress() {
  for (const auto& [field, width] : widths_) field->setFixedWidth(scaled(this, width));
  QFont font = type_of(this->font()).small;
  font.setWeight(QFont::DemiBold);
  problem_->setFont(font);
}

}  // namespace skeinproof
