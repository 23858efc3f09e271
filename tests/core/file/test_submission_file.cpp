// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/submission_file.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>

#include "core/file/json.h"
#include "tests/support/samples.h"
#include "tests/support/temporary_folder.h"

namespace skeinproof {
namespace {

class SubmissionFiles : public ::testing::Test {
 protected:
  std::filesystem::path write(const std::string& name, const std::string& bytes) {
    const auto path = folder.path() / name;
    std::ofstream(path, std::ios::binary) << bytes;
    return path;
  }
  TemporaryFolder folder;
};

TEST_F(SubmissionFiles, ATextIsASubmissionOfItsOwn) {
  const auto path = write("yoke.txt", "Yarn: Fellmarl (100% wool; 175 m / 197 yd per 50 g skein).\n");
  ASSERT_FALSE(is_project_or_json(path));
  const auto found = check_file(path);
  ASSERT_TRUE(found) << found.error().message();
  EXPECT_FALSE(found->file.is_project);
  ASSERT_NE(found->file.pattern.draft(), nullptr);
  EXPECT_EQ(found->file.pattern.draft()->source, "yoke.txt");
  ASSERT_EQ(found->file.pattern.yarns.size(), 1U);
  EXPECT_TRUE(std::any_of(found->review.findings.begin(), found->review.findings.end(),
                          [](const Finding& finding) { return finding.check == "P1"; }));
}

TEST_F(SubmissionFiles, AProjectIsTakenAsItIsWhateverItsName) {
  const Pattern sample = testing::lampwick();
  const auto path = write("sample.txt", "  " + to_json(sample));
  ASSERT_TRUE(is_project_or_json(path));
  const auto file = read_submission(path);
  ASSERT_TRUE(file) << file.error().message();
  EXPECT_TRUE(file->is_project);
  EXPECT_EQ(file->pattern, sample);
}

TEST_F(SubmissionFiles, WhatCannotBeReadSaysWhichFile) {
  EXPECT_EQ(check_file(folder.path() / "none.txt").error().kind, ErrorKind::not_found);
  const auto broken = check_file(write("broken.docx", "PK and then nothing"));
  ASSERT_FALSE(broken);
  EXPECT_NE(broken.error().message().find("broken.docx"), std::string::npos);
  EXPECT_FALSE(check_file(write("broken.json", "{\"title\": ")));
}

}  // namespace
}  // namespace skeinproof
