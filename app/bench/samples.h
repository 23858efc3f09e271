// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <vector>

namespace skeinproof {

// A finished project that comes with the program; it is opened as a copy.
struct Sample {
  QString stem;   // "quillmarsh-yoke"
  QString title;  // "Quillmarsh yoke"
  QString path;
};

// The projects of a folder, by name; none where the folder is missing.
std::vector<Sample> samples_in(const QString& folder);
// Where the samples are: beside the installed program, or in the tree it was built from. Empty where nowhere.
QString find_samples_folder(const QString& program_folder);

}  // namespace skeinproof
