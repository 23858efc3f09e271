// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/person_settings.h"

#include <QSettings>
#include <algorithm>

namespace skeinproof {

namespace {

constexpr auto mark_key = "reader/decimal_mark", fractions_key = "reader/fractions",
               group_key = "reader/group_thousands", imperial_key = "reader/imperial_first",
               shades_key = "window/shades", text_key = "window/text_percent", recent_key = "recent_files",
               place_key = "window/place";
const auto panes_key = QStringLiteral("panes/");
constexpr int recent_files_kept = 10;

template <class E>
E stored_word(const QSettings& store, const char* key, E otherwise) {
  return from_word<E>(store.value(QLatin1String(key)).toString().toStdString()).value_or(otherwise);
}

template <class E>
void store_word(QSettings& store, const char* key, E value) {
  const std::string_view word = word_of(value);
  store.setValue(QLatin1String(key), QString::fromUtf8(word.data(), static_cast<int>(word.size())));
}

}  // namespace

ReaderStyle PersonSettings::reader() const {
  ReaderStyle reader;
  reader.numbers.mark = stored_word(store_, mark_key, reader.numbers.mark);
  reader.numbers.fractions = stored_word(store_, fractions_key, reader.numbers.fractions);
  reader.numbers.group_thousands =
      store_.value(QLatin1String(group_key), reader.numbers.group_thousands).toBool();
  reader.imperial_first = store_.value(QLatin1String(imperial_key), reader.imperial_first).toBool();
  return reader;
}

void PersonSettings::set_reader(const ReaderStyle& reader) {
  store_word(store_, mark_key, reader.numbers.mark);
  store_word(store_, fractions_key, reader.numbers.fractions);
  store_.setValue(QLatin1String(group_key), reader.numbers.group_thousands);
  store_.setValue(QLatin1String(imperial_key), reader.imperial_first);
}

Shades PersonSettings::shades() const { return stored_word(store_, shades_key, Shades::platform); }
void PersonSettings::set_shades(Shades shades) { store_word(store_, shades_key, shades); }

int PersonSettings::text_percent() const {
  return std::clamp(store_.value(QLatin1String(text_key), 100).toInt(), smallest_text_percent,
                    largest_text_percent);
}
void PersonSettings::set_text_percent(int percent) { store_.setValue(QLatin1String(text_key), percent); }

QStringList PersonSettings::recent_files() const {
  return store_.value(QLatin1String(recent_key)).toStringList();
}

void PersonSettings::add_recent_file(const QString& path) {
  QStringList files = recent_files();
  files.removeAll(path);
  files.prepend(path);
  store_.setValue(QLatin1String(recent_key), files.mid(0, recent_files_kept));
}

void PersonSettings::drop_recent_file(const QString& path) {
  QStringList files = recent_files();
  files.removeAll(path);
  store_.setValue(QLatin1String(recent_key), files);
}

QByteArray PersonSettings::window_place() const {
  return store_.value(QLatin1String(place_key)).toByteArray();
}
void PersonSettings::set_window_place(const QByteArray& place) {
  store_.setValue(QLatin1String(place_key), place);
}

QList<int> PersonSettings::pane_sizes(const QString& splitter) const {
  QList<int> sizes;
  for (const QVariant& size : store_.value(panes_key + splitter).toList()) sizes << size.toInt();
  return sizes;
}
void PersonSettings::set_pane_sizes(const QString& splitter, const QList<int>& sizes) {
  store_.setValue(panes_key + splitter, QVariantList(sizes.begin(), sizes.end()));
}

}  // namespace skeinproof
