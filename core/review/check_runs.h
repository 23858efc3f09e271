// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/review/check.h"

namespace skeinproof {

// The checks of colours, lists, needs and text one by one, for the tables of their families.
using CheckRun = void(const ReviewInput& input, Findings& findings);

// Colours: role_checks.cpp, role_need_checks.cpp, chart_role_checks.cpp.
CheckRun check_r1, check_r2, check_r3, check_r4, check_r5, check_r6, check_r7, check_r8, check_r9, check_r10,
    check_r11, check_r12, check_r13, check_r14;
// Lists: list_checks.cpp, list_fit_checks.cpp, size_checks.cpp.
CheckRun check_l1, check_l2, check_l3, check_l4, check_l5, check_l6, check_l7, check_l8, check_l9, check_l10,
    check_l11;
// Needs: need_checks.cpp, note_checks.cpp, sample_checks.cpp, loop_checks.cpp, cloth_checks.cpp,
// sheet_checks.cpp.
CheckRun check_n1, check_n2, check_n3, check_n4, check_n5, check_n6, check_n7, check_n8, check_n9, check_n10,
    check_n11, check_n12, check_n13, check_n14, check_n15, check_n16, check_n17, check_n18, check_n19,
    check_n20, check_n21;
// Text: text_checks.cpp, house_style_checks.cpp.
CheckRun check_t1, check_t2, check_t3, check_t4, check_t5;

}  // namespace skeinproof
