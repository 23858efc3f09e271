// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yarn/care.h"

#include <cassert>
#include <cstddef>
#include <iterator>

namespace skeinproof {
namespace {

const WordList gentle_words = {
    "wool cycle",          "wool programme",      "wool program", "wool wash",       "wool setting",
    "gentle cycle",        "delicate cycle",      "delicates",    "hand wash cycle", "hand-wash cycle",
    "hand wash programme", "hand-wash programme", "gentle",       "delicate"};
const WordList hand_words = {"hand wash",    "hand-wash",    "handwash",
                             "wash by hand", "hand washing", "hand-washing"};
const WordList machine_words = {"machine wash",     "machine-wash",    "machine washable",
                                "machine-washable", "washing machine", "wash in the machine"};
const WordList machine_denied = {"do not machine", "don't machine", "not machine", "never machine",
                                 "no machine"};

constexpr std::string_view strictness_words[] = {"do not wash",          "hand wash",
                                                 "machine wash, gentle", "machine wash at 30",
                                                 "machine wash at 40",   "machine wash at 60"};

}  // namespace

bool says_gentle(std::string_view care) { return says(care, gentle_words); }
bool says_machine(std::string_view care) { return says(care, machine_words); }
bool denies_machine(std::string_view care) { return says(care, machine_denied); }

std::optional<int> care_rank(std::string_view care) {
  if (says(care, {"do not wash", "dry clean only", "dry-clean only", "dry clean"})) return 0;
  if (says_gentle(care)) return 2;
  if (says(care, hand_words) || denies_machine(care)) return 1;
  if (says(care, {"60", "60°", "60c", "60 °c"})) return 5;
  if (says(care, {"40", "40°", "40c", "40 °c"})) return 4;
  if (says_machine(care) || says(care, {"30", "30°", "30c", "cold wash", "cool wash"})) return 3;
  return std::nullopt;
}

std::string_view care_rank_words(int rank) {
  assert(rank >= 0 && rank < static_cast<int>(std::size(strictness_words)));
  return strictness_words[static_cast<std::size_t>(rank)];
}

}  // namespace skeinproof
