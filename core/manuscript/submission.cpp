// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/submission.h"

#include <filesystem>

#include "core/manuscript/read_manuscript.h"
#include "core/manuscript/text_of_file.h"
#include "core/pattern/edits.h"

namespace skeinproof {

Expected<TakenIn> take_in(const Pattern& pattern, std::string_view bytes, std::string_view file_name) {
  auto file = text_of_bytes(bytes, file_name);
  if (!file) return tl::unexpected<Error>(file.error());
  Pattern with_draft = pattern;
  add_draft(with_draft, std::move(file->text));
  with_draft.drafts.edit([&](std::vector<Draft>& drafts) {
    drafts.back().source = std::filesystem::path(file_name).filename().string();
    drafts.back().encoding = file->encoding;
  });
  const Draft& draft = *with_draft.draft();
  TakenIn taken;
  taken.reading = read_manuscript(draft);
  taken.facts = facts_as_read(with_draft, draft.text, taken.reading);
  taken.notes = std::move(file->notes);
  return taken;
}

}  // namespace skeinproof
