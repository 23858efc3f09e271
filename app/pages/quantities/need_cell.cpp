// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/quantities/need_cell.h"

#include <QCoreApplication>
#include <QStringList>
#include <cmath>

#include "core/need/layer.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(NeedCell)
};
QString from(const std::string& text) { return QString::fromStdString(text); }

const QString dash = QStringLiteral("–");

NeedCell not_checked(const QString& who, const QString& reason) {
  NeedCell cell;
  cell.count = cell.length = dash;
  cell.word = Words::tr("not checked");
  cell.reason = reason;
  cell.spoken = Words::tr("%1: not checked. %2").arg(who, reason);
  return cell;
}

QString printed_figure(const Entered<double>& count) {
  return from(show_number(count.value, count.value == std::floor(count.value) ? 0 : 2));
}

// The designer's count beside ours: absent where they agree or nothing at all is printed, empty where only
// this size has none.
std::optional<QString> words_beside(const PerSize<Entered<double>>& printed, std::size_t size_index,
                                    int ours) {
  if (printed.empty()) return std::nullopt;
  const auto count = printed.at(size_index);
  if (!count) return QString();
  if (count->value == ours) return std::nullopt;
  return printed_figure(*count);
}

QString spoken_words(const std::optional<QString>& words) {
  if (!words) return {};
  return words->isEmpty() ? Words::tr(", the text gives none") : Words::tr(", the text says %1").arg(*words);
}

struct StateWord {
  LastSkein last;
  NeedCell::State state;
  const char* word;
};
constexpr StateWord state_words[] = {
    {LastSkein::plain, NeedCell::State::plain, nullptr},
    {LastSkein::brimful, NeedCell::State::brimful, QT_TRANSLATE_NOOP("NeedCell", "brimful")},
    {LastSkein::tips_over, NeedCell::State::tips_over, QT_TRANSLATE_NOOP("NeedCell", "tips over")}};

const StateWord& state_word(LastSkein last) {
  for (const StateWord& row : state_words)
    if (row.last == last) return row;
  return state_words[0];
}

QString skeins_spoken(int skeins) {
  return skeins == 1 ? Words::tr("1 skein") : Words::tr("%1 skeins").arg(skeins);
}

void fill_skeins(NeedCell& cell, const LayerNeed& need) {
  cell.count = QString::number(*need.skeins);
  cell.share = need.last_skein_share.value_or(0);
  const StateWord& row = state_word(need.last_skein);
  cell.state = row.state;
  const QString percent = from(show_number(cell.share * 100, 0));
  cell.word = row.word ? Words::tr(row.word) : Words::tr("%1 %").arg(percent);
}

}  // namespace

QString layer_word(Layer layer) {
  switch (layer) {
    case Layer::knitted:
      return Words::tr("knitted");
    case Layer::with_swatch:
      return Words::tr("with swatch");
    case Layer::planned:
      break;
  }
  return Words::tr("planned");
}

QString as_sentence(const std::string& words) {
  QString sentence = QString::fromStdString(words).trimmed();
  if (sentence.isEmpty()) return sentence;
  sentence[0] = sentence[0].toUpper();
  if (!sentence.endsWith(QLatin1Char('.'))) sentence += QLatin1Char('.');
  return sentence;
}

QString role_title(const Role& role) {
  QStringList words{from(role.label)};
  if (!role.shade.name.empty()) words << from(role.shade.name);
  if (!role.shade.number.empty()) words << from(role.shade.number);
  return words.join(QLatin1Char(' '));
}

QString length_figure(Metres length, const ReaderStyle& reader) {
  return from(show_number(reader.imperial_first ? in_yards(length) : length.value(), 0, reader.numbers));
}
QString length_unit(const ReaderStyle& reader) {
  return reader.imperial_first ? Words::tr("yd") : Words::tr("m");
}
QString length_unit_word(const ReaderStyle& reader) {
  return reader.imperial_first ? Words::tr("yards") : Words::tr("metres");
}

NeedCell need_cell(const NeedCellInput& input, std::size_t role_row, std::size_t size_index) {
  const Role& role = input.pattern.roles[role_row];
  const QString who =
      Words::tr("%1, size %2, %3")
          .arg(role_title(role), from(input.pattern.sizes[size_index].label), layer_word(input.layer));
  if (role_row >= input.assessment.roles.size() ||
      size_index >= input.assessment.roles[role_row].sizes.size())
    return not_checked(who, Words::tr("The need has not been worked out."));
  const SizeNeed& need = input.assessment.roles[role_row].sizes[size_index];
  const auto layer = layer_need(input.pattern, role.id, need, input.layer);
  if (!layer) return not_checked(who, as_sentence(need.missing));

  if (!layer->skeins) {
    NeedCell cell = not_checked(who, {});
    cell.known = true;
    cell.length = length_figure(layer->length, input.reader);
    cell.reason = Words::tr("Skeins are not counted: the yarn's put-up has no length. Type it on Yarns.");
    cell.spoken = Words::tr("%1: %2 %3, skeins not checked. %4")
                      .arg(who, cell.length, length_unit_word(input.reader), cell.reason);
    return cell;
  }
  NeedCell cell;
  cell.known = true;
  fill_skeins(cell, *layer);
  cell.length = length_figure(layer->length, input.reader);
  if (input.show_words && need.skeins)
    cell.words = words_beside(role.printed_count, size_index, *need.skeins);
  const StateWord& row = state_word(layer->last_skein);
  cell.spoken =
      Words::tr("%1: %2, %3 %4, last skein %5 percent%6%7.")
          .arg(who, skeins_spoken(*layer->skeins), cell.length, length_unit_word(input.reader),
               from(show_number(cell.share * 100, 0)),
               row.word ? Words::tr(", %1").arg(Words::tr(row.word)) : QString(), spoken_words(cell.words));
  return cell;
}

NeedCell total_cell(const NeedCellInput& input, std::size_t size_index) {
  const QString who = Words::tr("All roles, size %1, %2")
                          .arg(from(input.pattern.sizes[size_index].label), layer_word(input.layer));
  int ours = 0, planned = 0;
  double listed = 0;
  bool all_listed = !input.pattern.roles.empty();
  bool known = !input.pattern.roles.empty();
  for (std::size_t row = 0; row < input.pattern.roles.size(); ++row) {
    const Role& role = input.pattern.roles[row];
    const auto printed = role.printed_count.at(size_index);
    all_listed = all_listed && printed;
    if (printed) listed += printed->value;
    if (row >= input.assessment.roles.size() || size_index >= input.assessment.roles[row].sizes.size()) {
      known = false;
      continue;
    }
    const SizeNeed& need = input.assessment.roles[row].sizes[size_index];
    const auto layer = layer_need(input.pattern, role.id, need, input.layer);
    known = known && layer && layer->skeins && need.skeins;
    if (!known) continue;
    ours += *layer->skeins;
    planned += *need.skeins;
  }
  NeedCell cell;
  if (!known) {
    cell = not_checked(who, Words::tr("A role of this size has no skeins yet."));
    cell.word.clear();
    cell.length.clear();
    cell.is_total = true;
    return cell;
  }
  cell.is_total = cell.known = true;
  cell.state = NeedCell::State::plain;
  cell.count = QString::number(ours);
  if (input.show_words) {
    cell.words = words_beside(input.pattern.printed_total, size_index, planned);
    if (all_listed && listed != planned) cell.word = Words::tr("lists %1").arg(from(show_number(listed, 0)));
  }
  cell.spoken =
      Words::tr("%1: %2%3%4.")
          .arg(who, skeins_spoken(ours), spoken_words(cell.words),
               cell.word.isEmpty() ? QString() : Words::tr(", the printed lists add to %1").arg(listed));
  return cell;
}

}  // namespace skeinproof
