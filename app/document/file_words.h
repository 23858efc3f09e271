// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "core/base/error.h"

namespace skeinproof {

// A failure with a file as a person needs it: what happened, what is safe, what to do.
QString file_failure_words(const Error& error, const QString& path);

}  // namespace skeinproof
