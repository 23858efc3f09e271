// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/manuscript_view.h"

#include <QMouseEvent>
#include <QPainter>
#include <QTextBlock>

#include "app/widgets/ink.h"

namespace skeinproof {

class ManuscriptMargin : public QWidget {
 public:
  explicit ManuscriptMargin(ManuscriptView* view) : QWidget(view), view_(view) {}

 protected:
  void paintEvent(QPaintEvent* event) override { view_->paint_margin(event); }

 private:
  ManuscriptView* view_;
};

namespace {

const std::vector<std::size_t>& findings_of(const Review& review, std::size_t cause) {
  return review.causes[cause].findings;
}

}  // namespace

ManuscriptView::ManuscriptView(QWidget* parent)
    : QPlainTextEdit(parent), margin_(new ManuscriptMargin(this)) {
  setReadOnly(true);
  setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  setTabChangesFocus(true);
  setFrameShape(QFrame::NoFrame);
  setAccessibleName(tr("Manuscript"));
  setLineWrapMode(QPlainTextEdit::WidgetWidth);
  connect(this, &QPlainTextEdit::updateRequest, this, [this](const QRect& rect, int dy) {
    if (dy != 0)
      margin_->scroll(0, dy);
    else
      margin_->update(0, rect.y(), margin_->width(), rect.height());
    if (!marked_.holds(seen())) mark();
  });
  connect(this, &QPlainTextEdit::cursorPositionChanged, this,
          [this] { emit place_changed(places_.byte(textCursor().position())); });
  changeEvent(nullptr);
}

void ManuscriptView::changeEvent(QEvent* event) {
  if (event != nullptr) QPlainTextEdit::changeEvent(event);
  if (event != nullptr && event->type() != QEvent::FontChange && event->type() != QEvent::PaletteChange)
    return;
  document()->setDefaultFont(type_of(font()).words);
  place_margin();
  mark();
}

void ManuscriptView::show_review(std::shared_ptr<const Reviewed> reviewed) {
  reviewed_ = std::move(reviewed);
  chosen_.reset();
  const QString text = reviewed_ ? QString::fromStdString(reviewed_->review.text) : QString();
  places_ = reviewed_ ? TextPlaces(reviewed_->review.text) : TextPlaces();
  if (toPlainText() != text) setPlainText(text);
  margin_lines_.assign(static_cast<std::size_t>(document()->blockCount()), {});
  if (reviewed_) {
    const Review& review = reviewed_->review;
    for (std::size_t cause = 0; cause < review.causes.size(); ++cause) {
      const Finding& finding = review.findings[findings_of(review, cause).front()];
      if (finding.places.empty()) continue;
      const int line = document()->findBlock(position_of(finding.places.front().begin)).blockNumber();
      QString& words = margin_lines_[static_cast<std::size_t>(std::max(0, line))];
      if (!words.isEmpty()) words += QLatin1Char(' ');
      words += QString::fromStdString(reviewed_->record.decisions[cause].number);
    }
  }
  place_margin();
  mark();
}

// What is in view, with a page before and after it.
TextSpan ManuscriptView::seen() const {
  const QTextBlock first = firstVisibleBlock();
  const int top = first.position();
  const int bottom = cursorForPosition(viewport()->rect().bottomRight()).position();
  const int page = std::max(1000, bottom - top);
  return {places_.byte(std::max(0, top - page)), places_.byte(bottom + page)};
}

// Only around what is in view: a long text has more to mark than can be painted in time.
void ManuscriptView::mark() {
  QList<QTextEdit::ExtraSelection> marks;
  if (!reviewed_) return setExtraSelections(marks);
  const Review& review = reviewed_->review;
  const Ink ink = ink_of(palette());
  QTextCharFormat read, unread, found, boxed;
  read.setUnderlineStyle(QTextCharFormat::DotLine);
  read.setUnderlineColor(ink.edge);
  unread.setForeground(ink.muted);
  found.setUnderlineStyle(QTextCharFormat::SingleUnderline);
  found.setUnderlineColor(ink.text);
  boxed.setBackground(ink.tint);
  boxed.setFontWeight(QFont::DemiBold);
  boxed.setUnderlineStyle(QTextCharFormat::SingleUnderline);
  boxed.setUnderlineColor(ink.text);
  const TextSpan view = seen();
  const TextSpan wide = {view.begin - std::min(view.begin, view.end - view.begin),
                         view.end + (view.end - view.begin)};
  marked_ = wide;
  const auto add = [&](const TextSpan& span, const QTextCharFormat& format) {
    if (span.end < wide.begin || span.begin > wide.end) return;
    QTextEdit::ExtraSelection selection;
    selection.cursor = places_.cursor(document(), span);
    selection.format = format;
    marks.push_back(selection);
  };
  for (const NotUnderstood& one : review.reading.not_understood) add(one.span, unread);
  for (const Statement& statement : review.reading.statements) add(statement.span, read);
  for (const Finding& finding : review.findings)
    for (const TextSpan& place : finding.places) add(place, found);
  if (chosen_)
    for (std::size_t finding : findings_of(review, *chosen_))
      for (const TextSpan& place : review.findings[finding].places) add(place, boxed);
  setExtraSelections(marks);
  margin_->update();
}

void ManuscriptView::go_to(std::size_t byte) {
  QTextCursor cursor(document());
  cursor.setPosition(std::min(position_of(byte), document()->characterCount() - 1));
  setTextCursor(cursor);
  ensureCursorVisible();
}

void ManuscriptView::choose(std::optional<std::size_t> cause) {
  chosen_ = reviewed_ && cause && *cause < reviewed_->review.causes.size() ? cause : std::nullopt;
  mark();
  if (!chosen_) return;
  const Finding& finding = reviewed_->review.findings[findings_of(reviewed_->review, *chosen_).front()];
  if (!finding.places.empty()) go_to(finding.places.front().begin);
}

void ManuscriptView::choose_at(int position) {
  if (!reviewed_) return;
  const Review& review = reviewed_->review;
  for (std::size_t cause = 0; cause < review.causes.size(); ++cause)
    for (std::size_t finding : findings_of(review, cause))
      for (const TextSpan& place : review.findings[finding].places)
        if (position_of(place.begin) <= position && position <= position_of(place.end)) {
          emit query_clicked(cause);
          return;
        }
}

void ManuscriptView::mouseReleaseEvent(QMouseEvent* event) {
  QPlainTextEdit::mouseReleaseEvent(event);
  if (event->button() == Qt::LeftButton && !textCursor().hasSelection()) choose_at(textCursor().position());
}

void ManuscriptView::keyPressEvent(QKeyEvent* event) {
  QPlainTextEdit::keyPressEvent(event);
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) choose_at(textCursor().position());
}

QString ManuscriptView::margin_words(int line) const {
  const auto at = static_cast<std::size_t>(line);
  return at < margin_lines_.size() ? margin_lines_[at] : QString();
}

int ManuscriptView::margin_width() const {
  const QFontMetrics metrics(type_of(font()).small);
  int widest = metrics.horizontalAdvance(QStringLiteral("Q10 Q11"));
  for (const QString& words : margin_lines_) widest = std::max(widest, metrics.horizontalAdvance(words));
  const int digits = static_cast<int>(QString::number(std::max(99, document()->blockCount())).size());
  return metrics.horizontalAdvance(QString(digits, QLatin1Char('0'))) + widest + scaled(this, 24);
}

void ManuscriptView::place_margin() {
  setViewportMargins(margin_width(), 0, 0, 0);
  const QRect area = contentsRect();
  margin_->setGeometry(area.left(), area.top(), margin_width(), area.height());
}

void ManuscriptView::resizeEvent(QResizeEvent* event) {
  QPlainTextEdit::resizeEvent(event);
  place_margin();
}

void ManuscriptView::paint_margin(QPaintEvent* event) {
  QPainter painter(margin_);
  const Ink ink = ink_of(palette());
  const Type type = type_of(font());
  painter.fillRect(event->rect(), ink.base);
  painter.setFont(type.small);
  const QFontMetrics metrics(type.small);
  const int right = metrics.horizontalAdvance(QString::number(std::max(99, document()->blockCount())));
  QTextBlock block = firstVisibleBlock();
  double top = blockBoundingGeometry(block).translated(contentOffset()).top();
  while (block.isValid() && top <= event->rect().bottom()) {
    const double line_height = block.layout()->lineCount() > 0 ? block.layout()->lineAt(0).height() : 0;
    const double baseline = top + (line_height + metrics.ascent() - metrics.descent()) / 2;
    const QString number = QString::number(block.blockNumber() + 1);
    painter.setPen(ink.muted);
    painter.drawText(QPointF(scaled(this, 6) + right - metrics.horizontalAdvance(number), baseline), number);
    painter.setPen(ink.text);
    painter.drawText(QPointF(scaled(this, 14) + right, baseline), margin_words(block.blockNumber()));
    top += blockBoundingRect(block).height();
    block = block.next();
  }
  painter.setPen(ink.rule);
  painter.drawLine(margin_->width() - 1, event->rect().top(), margin_->width() - 1, event->rect().bottom());
}

}  // namespace skeinproof
