// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/finding.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/review/check.h"

namespace skeinproof {

std::string edited(std::string_view text, std::vector<TextEdit> edits) {
  std::stable_sort(edits.begin(), edits.end(),
                   [](const TextEdit& a, const TextEdit& b) { return a.span.begin < b.span.begin; });
  std::string out;
  std::size_t done = 0;
  for (const TextEdit& edit : edits) {
    const bool inside = done <= edit.span.begin && edit.span.begin <= edit.span.end;
    if (!inside || edit.span.end > text.size()) continue;
    out.append(text, done, edit.span.begin - done);
    out += edit.after;
    done = edit.span.end;
  }
  out.append(text, done);
  return out;
}

std::string Finding::key() const {
  std::string key = check + "|" + join(roles, ",") + "|" + join(sizes, ",");
  return apart.empty() ? key : key + "|" + apart;
}

Finding& Findings::add(std::string title) { return add(severity_, std::move(title)); }

Finding& Findings::add(Severity severity, std::string title) {
  Finding finding;
  finding.check = check_;
  finding.severity = severity;
  finding.title = std::move(title);
  found.push_back(std::move(finding));
  return found.back();
}

void Findings::cannot(std::string because, std::string would_help) {
  not_checked.push_back({check_, std::move(because), std::move(would_help)});
}

}  // namespace skeinproof
