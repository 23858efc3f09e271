// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QWidget;

namespace skeinproof {

class OpenPattern;
class PartTable;

// The colours of the pattern, one a row: what each is called, which yarn and shade it is, and how its yarn
// counts.
PartTable* make_role_table(OpenPattern& open, QWidget* parent);

}  // namespace skeinproof
