// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/paste_list.h"

#include <QDialogButtonBox>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/pages/pieces/piece_words.h"
#include "app/widgets/count_words.h"
#include "app/widgets/ink.h"
#include "app/widgets/quantity_text.h"
#include "core/base/text.h"
#include "core/pattern/edits.h"
#include "core/pattern/piece_edits.h"
#include "core/units/read.h"

namespace skeinproof {
namespace {

constexpr double most_stitches = 1e7;

bool is_letter(char32_t c) {
  return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z') ||
         (c >= 0xC0 && c < 0x2000 && c != U'×' && c != U'÷');
}

// Where the figures of a line begin: at the first tab, or behind the last word that holds a letter or ends in
// a colon.
std::size_t figures_begin(const std::string& line) {
  if (const std::size_t tab = line.find('\t'); tab != std::string::npos) return tab;
  std::size_t begin = 0, from = 0;
  while (from < line.size()) {
    const std::size_t end = std::min(line.find(' ', from), line.size());
    const std::string word = line.substr(from, end - from);
    const std::vector<char32_t> points = code_points(word);
    if (std::any_of(points.begin(), points.end(), is_letter) || (!word.empty() && word.back() == ':'))
      begin = end;
    from = end + 1;
  }
  return begin;
}

std::string name_in(std::string_view text) {
  std::string name = tidy_spaces(text);
  while (!name.empty() && (name.back() == ':' || name.back() == ',')) name.pop_back();
  return name;
}

Expected<PerSize<Entered<double>>> read_values(const std::string& text, const Pattern& pattern, Place place) {
  auto list = read_size_list(text);
  if (!list) {
    list.error().place = place;
    return tl::unexpected(list.error());
  }
  const std::size_t sizes = pattern.sizes.size();
  if (list->values.size() != sizes)
    return failure(ErrorKind::wrong_count, std::to_string(list->values.size()) + " values",
                   std::to_string(sizes) + ", one for each size", place);
  PerSize<Entered<double>> values;
  for (std::size_t i = 0; i < sizes; ++i) {
    if (!list->values[i]) continue;
    auto value = read_number(*list->values[i], 0, most_stitches, "stitches");
    if (!value) {
      value.error().place = place;
      return tl::unexpected(value.error());
    }
    values.set(i, *value);
  }
  return values;
}

template <class Part>
Part* by_name(std::vector<Part>& parts, const std::string& name) {
  const auto found = std::find_if(parts.begin(), parts.end(), [&](const Part& part) {
    return lower_ascii(part.name) == lower_ascii(name);
  });
  return found == parts.end() ? nullptr : &*found;
}

}  // namespace

Expected<std::vector<PastedSection>> read_section_list(std::string_view text, const Pattern& pattern) {
  std::vector<PastedSection> list;
  std::string piece;
  int number = 0;
  for (std::string line : split(text, '\n')) {
    ++number;
    while (!line.empty() && (line.back() == '\r' || line.back() == '\t' || line.back() == ' '))
      line.pop_back();
    if (trimmed(line).empty()) continue;
    const std::size_t figures = figures_begin(line);
    const std::string name = name_in(std::string_view(line).substr(0, figures));
    std::string values = line.substr(figures);
    while (!values.empty() && (values.front() == '\t' || values.front() == ' ' || values.front() == ':'))
      values.erase(0, 1);
    if (values.empty()) {
      piece = name;
      continue;
    }
    if (name.empty())
      return failure(ErrorKind::wrong_shape, skeinproof::quoted(line), "a name before the figures",
                     {{}, number, 1});
    const auto read = read_values(
        values, pattern, {{}, number, static_cast<int>(code_points(line.substr(0, figures)).size()) + 1});
    if (!read) return tl::unexpected(read.error());
    list.push_back({piece, name, *read});
  }
  if (list.empty())
    return failure(ErrorKind::wrong_shape, "no section", "a line with a name and one value for each size");
  return list;
}

void take_section_list(Pattern& pattern, const std::vector<PastedSection>& list, PieceId fallback) {
  for (const PastedSection& pasted : list) {
    PieceId id = fallback;
    if (!pasted.piece.empty()) {
      const Piece* known = by_name(pattern.pieces, pasted.piece);
      id = known != nullptr ? known->id : add_piece(pattern, pasted.piece);
    } else if (pattern.piece(id) == nullptr) {
      id = fallback = add_piece(pattern, "Piece");
    }
    Piece& piece = *find_piece(pattern, id);
    const Section* known = by_name(piece.sections, pasted.name);
    const SectionId section_id = known != nullptr ? known->id : add_section(pattern, id, pasted.name);
    Section& section = *find_section(pattern, section_id);
    section.source = StitchSource::typed;
    section.stitches = pasted.stitches;
  }
}

PasteListDialog::PasteListDialog(OpenPattern& open, const QString& text, QWidget* parent)
    : QDialog(parent),
      open_(open),
      text_(new QPlainTextEdit(text)),
      preview_(new QTableWidget),
      message_(new QLabel),
      buttons_(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel)) {
  setAttribute(Qt::WA_DeleteOnClose);
  setWindowTitle(tr("Paste stitch counts"));
  buttons_->button(QDialogButtonBox::Ok)->setText(tr("&Take the list"));
  auto* hint = new QLabel(tr(
      "A line a section: its name, then one value a size. A line without figures names the piece below it."));
  hint->setWordWrap(true);
  text_->setTabChangesFocus(true);
  text_->setAccessibleName(windowTitle());
  message_->setWordWrap(true);
  message_->setTextFormat(Qt::PlainText);
  preview_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  preview_->setAccessibleName(tr("Understood as"));
  auto* layout = new QVBoxLayout(this);
  for (QWidget* widget :
       {static_cast<QWidget*>(hint), static_cast<QWidget*>(text_), static_cast<QWidget*>(message_),
        static_cast<QWidget*>(preview_), static_cast<QWidget*>(buttons_)})
    layout->addWidget(widget);
  resize(scaled(this, 640), scaled(this, 480));
  connect(text_, &QPlainTextEdit::textChanged, this, &PasteListDialog::read);
  connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
  read();
}

void PasteListDialog::read() {
  const Pattern& pattern = open_.pattern();
  const auto list = read_section_list(text_->toPlainText().toStdString(), pattern);
  buttons_->button(QDialogButtonBox::Ok)->setEnabled(list.has_value());
  list_ = list ? *list : std::vector<PastedSection>{};
  if (!list) {
    const int line = list.error().place.line;
    message_->setText(text_->toPlainText().trimmed().isEmpty() ? QString()
                      : line > 0 ? tr("Line %1: %2").arg(line).arg(sentence_of(list.error()))
                                 : sentence_of(list.error()));
  } else {
    message_->setText(tr("Understood %1:").arg(count_words(list_.size(), tr("section"), tr("sections"))));
  }
  QStringList heads{tr("Piece"), tr("Section")};
  for (const Size& size : pattern.sizes) heads << text_of(size.label);
  preview_->setColumnCount(static_cast<int>(heads.size()));
  preview_->setHorizontalHeaderLabels(heads);
  preview_->setRowCount(static_cast<int>(list_.size()));
  for (int row = 0; row < preview_->rowCount(); ++row) {
    const PastedSection& section = list_[static_cast<std::size_t>(row)];
    preview_->setItem(row, 0, new QTableWidgetItem(text_of(section.piece)));
    preview_->setItem(row, 1, new QTableWidgetItem(text_of(section.name)));
    for (std::size_t size = 0; size < pattern.sizes.size(); ++size) {
      const auto* value = section.stitches.find(size);
      auto* item = new QTableWidgetItem(
          value != nullptr
              ? show_figure_only(QuantityFormat::number(0, most_stitches, {}), open_.reader(), value->value)
              : QStringLiteral("–"));
      item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
      preview_->setItem(row, static_cast<int>(size) + 2, item);
    }
  }
  preview_->resizeColumnsToContents();
}

QString PasteListDialog::message() const { return message_->text(); }

}  // namespace skeinproof
