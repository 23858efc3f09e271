// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/yarns/yarn_form.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>

#include "app/pages/yarns/yarn_figures.h"
#include "app/widgets/ink.h"
#include "app/widgets/line_field.h"
#include "app/widgets/pane_header.h"
#include "app/widgets/part_table.h"
#include "core/reference/lookup.h"
#include "core/yarn/check_yarn.h"
#include "core/yarn/read_composition.h"

namespace skeinproof {

namespace {

QHBoxLayout* side_by_side(std::initializer_list<QWidget*> widgets) {
  auto* row = new QHBoxLayout;
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(8);
  for (QWidget* widget : widgets) row->addWidget(widget);
  row->addStretch(1);
  return row;
}

QString sentences(const std::vector<Error>& problems) {
  QStringList all;
  for (const Error& problem : problems) all << sentence_of(problem);
  return all.join(QLatin1Char('\n'));
}

QLabel* problem_label() {
  auto* label = new QLabel;
  label->setTextFormat(Qt::PlainText);
  label->setWordWrap(true);
  QFont font = type_of(label->font()).small;
  font.setWeight(QFont::DemiBold);
  label->setFont(font);
  label->hide();
  return label;
}

}  // namespace

YarnForm::YarnForm(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      form_(
          open, this, [this](const Pattern& pattern) { return find(pattern); },
          [](const Yarn& yarn) { return QString::fromStdString(yarn.name); }) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(scaled(this, 12), scaled(this, 10), scaled(this, 12), scaled(this, 12));
  grid->setHorizontalSpacing(scaled(this, 10));
  grid->setVerticalSpacing(scaled(this, 6));
  grid->setColumnStretch(1, 1);
  grid->setColumnStretch(3, 1);
  lay_out_name_and_fibres(*grid);
  lay_out_put_up(*grid);
  lay_out_description(*grid);
  lay_out_band(*grid);
  grid->setRowStretch(grid->rowCount(), 1);
  connect(&open_, &OpenPattern::changed, this, [this] { refresh(); });
  connect(&open_, &OpenPattern::reader_changed, this, [this] { refresh(); });
  connect(&open_, &OpenPattern::replaced, this, [this] { refresh(true); });
  refresh(true);
}

void YarnForm::add_field(QGridLayout& grid, int row, int column, const QString& label, QWidget* field,
                         int span) {
  auto* words = new QLabel(label);
  words->setBuddy(field);
  grid.addWidget(words, row, 2 * column, Qt::AlignLeft | Qt::AlignVCenter);
  grid.addWidget(field, row, 2 * column + 1, 1, span);
}

void YarnForm::lay_out_name_and_fibres(QGridLayout& grid) {
  name_ = form_.text(
      tr("name of yarn"), [](auto& yarn) -> auto& { return yarn.name; });
  add_field(grid, 0, 0, tr("&Name"), name_, 3);

  composition_ = new LineField([this](const QString& line) {
    const auto read = read_composition(line.toStdString());
    if (!read) return sentence_of(read.error());
    form_.change(form_.label(tr("fibres"), line.trimmed()), [&](Yarn& yarn) { yarn.composition = *read; });
    return QString();
  });
  composition_->setAccessibleName(tr("Fibres"));
  composition_->setPlaceholderText(tr("75% wool, 25% polyamide"));
  form_.follow(
      composition_,
      [this](const Yarn& yarn) {
        composition_->show_line(QString::fromStdString(composition_text(yarn.composition)));
      },
      [this] { composition_->give_back(); });
  add_field(grid, 1, 0, tr("Fi&bres"), composition_, 3);

  make_fibre_table();
  grid.addWidget(fibres_, 2, 1, 1, 3);
  composition_problem_ = problem_label();
  grid.addWidget(composition_problem_, 3, 1, 1, 3);
}

void YarnForm::make_fibre_table() {
  PartList list;
  list.part = tr("fibre");
  list.add_hint = tr("add a fibre");
  list.count = [this](const Pattern& pattern) {
    const Yarn* yarn = find(pattern);
    return yarn != nullptr ? yarn->composition.size() : 0;
  };
  list.key = [](const Pattern&, std::size_t row) { return static_cast<std::uint32_t>(row + 1); };
  const auto share = [this](auto& pattern, std::size_t row) -> auto& {
    auto* yarn = const_cast<Yarn*>(find(pattern));
    using Share = std::conditional_t<std::is_const_v<std::remove_reference_t<decltype(pattern)>>,
                                     const FibreShare, FibreShare>;
    return static_cast<Share&>(yarn->composition[row]);
  };
  list.name = [share](const Pattern& pattern, std::size_t row) {
    return QString::fromStdString(share(pattern, row).words);
  };
  list.append = [this](Pattern& pattern) {
    if (auto* yarn = const_cast<Yarn*>(find(pattern))) yarn->composition.emplace_back();
  };
  list.erase = [this](Pattern& pattern, std::size_t row) {
    auto& shares = const_cast<Yarn*>(find(pattern))->composition;
    shares.erase(shares.begin() + static_cast<std::ptrdiff_t>(row));
  };
  list.move = [this](Pattern& pattern, std::size_t from, std::size_t to) {
    auto& shares = const_cast<Yarn*>(find(pattern))->composition;
    std::swap(shares[from], shares[to]);
  };

  PartColumn words = text_column(
      tr("Fibre, as the label says"),
      tr("fibre"), [share](auto& pattern, std::size_t row) -> auto& { return share(pattern, row).words; });
  words.stretch = 1;
  words.read = [share](const QString& typed, std::size_t) -> Expected<RowEdit> {
    return [share, words = typed.trimmed().toStdString()](Pattern& pattern, std::size_t row) {
      FibreShare& changed = share(pattern, row);
      changed = fibre_share(words, changed.percent);
    };
  };
  PartColumn percent = number_column(
      open_, tr("%"), tr("percent"),
      QuantityFormat::number(0, 1000, "percent"), [share](auto& pattern, std::size_t row) -> auto& {
        return share(pattern, row).percent;
      });
  const auto of_table = [share](auto&& what) {
    return [share, what](const Pattern& pattern, std::size_t row) {
      const Fibre* fibre = fibre_by_id(share(pattern, row).fibre);
      return fibre != nullptr ? what(*fibre) : QStringLiteral("–");
    };
  };
  PartColumn generic = computed_column(tr("In the table of fibres"), of_table([](const Fibre& fibre) {
                                         return QString::fromUtf8(fibre.name.data(),
                                                                  static_cast<qsizetype>(fibre.name.size()));
                                       }));
  generic.stretch = 1;
  PartColumn density = computed_column(
      tr("g/cm³"), of_table([this](const Fibre& fibre) {
        return fibre.density.value
                   ? QString::fromStdString(show_number(*fibre.density.value, 2, open_.reader().numbers))
                   : QStringLiteral("–");
      }));
  density.right = true;
  fibres_ = new PartTable(open_, std::move(list), {words, percent, generic, density});
  fibres_->setAccessibleName(tr("Fibres of the yarn"));
  fibres_->set_height_follows_rows(2);
  fibres_->setFrameShape(QFrame::StyledPanel);
  connect(fibres_, &PartTable::says, this, &YarnForm::says);
  form_.follow(fibres_, [](const Yarn&) {});
}

void YarnForm::lay_out_put_up(QGridLayout& grid) {
  auto* length = form_.quantity<Metres>(
      QuantityFormat::yarn_length(), tr("length of a skein"),
      [](auto& yarn) -> auto& { return yarn.put_up.length; });
  auto* weight = form_.quantity<Grams>(
      QuantityFormat::mass(), tr("weight of a skein"),
      [](auto& yarn) -> auto& { return yarn.put_up.weight; });
  auto* word = form_.choice<SkeinWord>(
      tr("put-up"), [](auto& yarn) -> auto& { return yarn.put_up.word; });
  other_length_ = new QuietLabel;
  other_weight_ = new QuietLabel;
  auto* length_words = new QLabel(tr("&Length"));
  length_words->setBuddy(length);
  auto* weight_words = new QLabel(tr("weigh&t"));
  weight_words->setBuddy(weight);
  auto* word_words = new QLabel(tr("in one"));
  word_words->setBuddy(word);
  for (QuantityField* field : {length, weight}) field->setFixedWidth(scaled(this, 92));
  grid.addWidget(length_words, 4, 0);
  grid.addLayout(side_by_side({length, other_length_, weight_words, weight, other_weight_, word_words, word}),
                 4, 1, 1, 3);
  put_up_problem_ = problem_label();
  grid.addWidget(put_up_problem_, 5, 1, 1, 3);
  add_field(grid, 6, 0, tr("Sp&inning"),
            form_.choice<Spinning>(
                tr("spinning"), [](auto& yarn) -> auto& { return yarn.spinning; }));
  add_field(grid, 6, 1, tr("Made for"),
            form_.choice<Market>(
                tr("market"), [](auto& yarn) -> auto& { return yarn.market; }));
}

void YarnForm::lay_out_description(QGridLayout& grid) {
  struct Words {
    QString label, undo_name;
    std::string Yarn::*where;
    QStringList offered;
  };
  // Offered words are common practice; anything else may be typed.
  const std::vector<Words> all = {
      {tr("Structure"),
       tr("structure"),
       &Yarn::structure,
       {tr("single"), tr("2-ply"), tr("3-ply"), tr("4-ply"), tr("cabled"), tr("chainette")}},
      {tr("Twist"), tr("twist"), &Yarn::twist, {tr("softly twisted"), tr("tightly twisted")}},
      {tr("Weight word"),
       tr("weight word"),
       &Yarn::category,
       {tr("lace"), tr("fingering"), tr("sport"), tr("DK"), tr("worsted"), tr("aran"), tr("chunky"),
        tr("super chunky")}},
      {tr("Surface"),
       tr("surface"),
       &Yarn::surface,
       {tr("matte"), tr("lustrous"), tr("light halo"), tr("brushed"), tr("bouclé")}},
      {tr("Treatment"),
       tr("treatment"),
       &Yarn::treatment,
       {tr("untreated"), tr("superwash"), tr("mercerised")}},
      {tr("Colouring"),
       tr("colouring"),
       &Yarn::colouring,
       {tr("solid"), tr("semi-solid"), tr("heathered"), tr("marled"), tr("tweed"), tr("variegated"),
        tr("self-striping")}},
      {tr("Care"),
       tr("care"),
       &Yarn::care,
       {tr("hand wash"), tr("machine wash 30 °C, wool cycle"), tr("machine wash 40 °C")}},
  };
  int at = 0;
  for (const Words& words : all) {
    TextField* field = form_.text(
        words.undo_name, [where = words.where](auto& yarn) -> auto& { return yarn.*where; });
    field->set_suggestions(words.offered);
    add_field(grid, 7 + at / 2, at % 2, words.label, field);
    ++at;
  }
  grid.addWidget(
      form_.check(
          tr("no longer made"), tr("no longer made"), [](auto& yarn) -> auto& { return yarn.withdrawn; }),
      7 + at / 2, 2 * (at % 2) + 1);
}

void YarnForm::lay_out_band(QGridLayout& grid) {
  const auto stitches = QuantityFormat::number(1, 100, "stitches over 10 cm");
  auto* low = form_.quantity<double>(
      stitches, tr("stitches on the band"), [](auto& yarn) -> auto& { return yarn.band_stitches_low; });
  auto* high = form_.quantity<double>(
      stitches, tr("most stitches on the band"), [](auto& yarn) -> auto& { return yarn.band_stitches_high; });
  auto* needle = form_.quantity<Centimetres>(
      QuantityFormat::needle(), tr("needle on the band"),
      [](auto& yarn) -> auto& { return yarn.band_needle; });
  auto* amount = new QuantityField(QuantityFormat::number(0, 1e6, "a price"), open_);
  amount->setAccessibleName(tr("price of a skein"));
  connect(amount, &QuantityField::committed, this, [this](const FieldValue& value) {
    form_.change(form_.label(tr("price"), value ? QString::fromStdString(value->typed) : tr("nothing")),
                 [&](Yarn& yarn) {
                   if (value)
                     yarn.price = Price{*value, yarn.price ? yarn.price->currency : std::string()};
                   else
                     yarn.price.reset();
                 });
  });
  form_.follow(
      amount,
      [amount](const Yarn& yarn) {
        amount->set_value(yarn.price ? FieldValue(yarn.price->amount) : FieldValue());
      },
      [amount] { amount->give_back(); });
  auto* currency = new TextField;
  currency->setAccessibleName(tr("currency"));
  currency->setPlaceholderText(tr("EUR"));
  connect(currency, &QLineEdit::textEdited, this, [this](const QString& words) {
    form_.change(
        tr("currency"),
        [&](Yarn& yarn) {
          if (yarn.price) yarn.price->currency = words.toStdString();
        },
        QStringLiteral("currency"));
  });
  form_.follow(currency, [currency](const Yarn& yarn) {
    currency->setEnabled(yarn.price.has_value());
    currency->show_words(yarn.price ? QString::fromStdString(yarn.price->currency) : QString());
  });
  for (QWidget* field : std::initializer_list<QWidget*>{low, high, needle, amount, currency})
    field->setFixedWidth(scaled(this, 70));

  const int row = 11;
  auto* band = new QLabel(tr("Band: stitches"));
  band->setBuddy(low);
  auto* needle_words = new QLabel(tr("needle"));
  needle_words->setBuddy(needle);
  grid.addWidget(band, row, 0);
  grid.addLayout(side_by_side({low, new QuietLabel(tr("to")), high, new QuietLabel(tr("over 10 cm")),
                               needle_words, needle}),
                 row, 1, 1, 3);
  auto* price = new QLabel(tr("Price, a skein"));
  price->setBuddy(amount);
  grid.addWidget(price, row + 1, 0);
  grid.addLayout(side_by_side({amount, currency}), row + 1, 1, 1, 3);
  add_field(grid, row + 2, 0, tr("Description"),
            form_.text(
                tr("description"), [](auto& yarn) -> auto& { return yarn.description; }),
            3);
}

void YarnForm::show_yarn(YarnId id) {
  if (id_ == id) return;
  id_ = id;
  refresh(true);
}

void YarnForm::focus_name() {
  name_->setFocus();
  name_->selectAll();
}

QString YarnForm::composition_problem() const { return composition_problem_->text(); }
QString YarnForm::put_up_problem() const { return put_up_problem_->text(); }

void YarnForm::refresh(bool other_yarn) {
  form_.refresh(other_yarn);
  if (other_yarn) fibres_->refresh(true);
  const Yarn* yarn = form_.part();
  show_problems(yarn != nullptr ? *yarn : Yarn());
  const auto in_brackets = [](const QString& words) {
    return words.isEmpty() ? words : QStringLiteral("= ") + words;
  };
  other_length_->setText(
      in_brackets(yarn != nullptr ? other_system(yarn->put_up.length, open_.reader()) : QString()));
  other_weight_->setText(
      in_brackets(yarn != nullptr ? other_system(yarn->put_up.weight, open_.reader()) : QString()));
}

void YarnForm::show_problems(const Yarn& yarn) {
  const auto show = [](QLabel& label, const QString& words) {
    label.setText(words);
    label.setVisible(!words.isEmpty());
  };
  show(*composition_problem_, sentences(check_composition(yarn.composition)));
  show(*put_up_problem_, sentences(check_put_up(yarn.put_up)));
}

}  // namespace skeinproof
