// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
namespace skeinproof {

// The program without a window, for scripts and machines without a display. Exit codes: 0 done; 2 a file
// could not be read or written, or the words of the call were wrong (files that could be read are still
// reported).

int run_terminal(int argc, char** argv);

}  // namespace skeinproof
