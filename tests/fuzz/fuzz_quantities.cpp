// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/reference/fibre_words.h"
#include "core/reference/lookup.h"
#include "core/units/read.h"

// Whatever bytes a field is given, reading them ends in a sound value or in an error with words.
namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

template <class Read>
void must_be_sound(const Read& read, double most) {
  if (read) {
    require(read->value.value() > 0 && read->value.value() <= most * (1 + 1e-9));
  } else {
    require(!read.error().message().empty());
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace skeinproof;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  must_be_sound(read_length(text), 100'000);
  must_be_sound(read_mass(text), 100'000);
  must_be_sound(read_measure(text), 10'000);
  if (const auto number = read_number(text, 0, 100, "percent"))
    require(number->value >= 0 && number->value <= 100);
  for (std::size_t sizes : {0, 9}) {
    const auto list = read_size_list(text, sizes);
    require(list ? !list->values.empty() && list->values.size() == list->opens_group.size()
                 : !list.error().message().empty());
  }
  static_cast<void>(fibre_by_words(text));
  static_cast<void>(needles_by_us(text));
  static_cast<void>(weight_categories_by_word(text));
  return 0;
}
