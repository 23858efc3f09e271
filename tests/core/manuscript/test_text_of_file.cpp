// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <zip.h>

#include <map>

#include "core/manuscript/text_of_file.h"

namespace skeinproof {
namespace {

using ::testing::AllOf;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using namespace std::string_literals;

// An archive with these parts.
std::string zip_of(const std::map<std::string, std::string>& parts) {
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* whole = zip_source_buffer_create(nullptr, 0, 0, &error);
  zip_t* archive = zip_open_from_source(whole, ZIP_TRUNCATE, &error);
  zip_source_keep(whole);
  for (const auto& [name, content] : parts)
    zip_file_add(archive, name.c_str(), zip_source_buffer(archive, content.data(), content.size(), 0), 0);
  EXPECT_EQ(zip_close(archive), 0);
  zip_stat_t stat;
  zip_source_stat(whole, &stat);
  std::string bytes(stat.size, '\0');
  zip_source_open(whole);
  zip_source_read(whole, bytes.data(), bytes.size());
  zip_source_close(whole);
  zip_source_free(whole);
  return bytes;
}

std::string docx(const std::string& body, std::map<std::string, std::string> further = {}) {
  further["word/document.xml"] =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?><w:document xmlns:w=\"urn:w\" xmlns:mc=\"urn:mc\"><w:body>" +
      body + "</w:body></w:document>";
  return zip_of(further);
}
std::string run(const std::string& words) {
  return "<w:r><w:t xml:space=\"preserve\">" + words + "</w:t></w:r>";
}
std::string paragraph(const std::string& words) { return "<w:p>" + run(words) + "</w:p>"; }

std::string odt(const std::string& text, std::map<std::string, std::string> further = {}) {
  further["mimetype"] = "application/vnd.oasis.opendocument.text";
  further["content.xml"] =
      "<?xml version=\"1.0\"?><office:document-content xmlns:office=\"urn:o\" xmlns:text=\"urn:t\" "
      "xmlns:table=\"urn:b\"><office:body><office:text>" +
      text + "</office:text></office:body></office:document-content>";
  return zip_of(further);
}

FileText read(std::string_view bytes, std::string_view name) {
  const auto file = text_of_bytes(bytes, name);
  EXPECT_TRUE(file) << file.error().message();
  return file.value_or(FileText{});
}
std::string text(std::string_view bytes, std::string_view name) { return read(bytes, name).text; }
std::string refusal(std::string_view bytes, std::string_view name) {
  const auto file = text_of_bytes(bytes, name);
  EXPECT_FALSE(file) << file->text.substr(0, 200);
  return file ? std::string() : file.error().message();
}

TEST(text_of_file, plain_text_stays_as_it_is) {
  const FileText file = read("Sizes 1 (2, 3)\nGreyfell, 1¾ oz\n", "block.txt");
  EXPECT_EQ(file.text, "Sizes 1 (2, 3)\nGreyfell, 1¾ oz\n");
  EXPECT_EQ(file.encoding, "");
  EXPECT_THAT(file.notes, IsEmpty());
  EXPECT_EQ(text("\xef\xbb\xbfMC\r\nCC\rDC", "BLOCK.TXT"), "MC\nCC\nDC");
  EXPECT_EQ(text("", "block.txt"), "");
}

TEST(text_of_file, says_which_encoding_was_assumed) {
  const FileText windows = read(
      "1\xbe oz \x96 40 \xb0"
      "C",
      "block.txt");
  EXPECT_EQ(windows.text, "1¾ oz – 40 °C");
  EXPECT_EQ(windows.encoding, "WINDOWS-1252");
  EXPECT_THAT(windows.notes, ElementsAre(HasSubstr("WINDOWS-1252")));

  const FileText letters = read(
      "Fl\xe4"
      "che gr\xfcn, Gr\xf6\xdf"
      "e f\xfcr M\xe4nner und Kinder, h\xe4ngend gewogen",
      "a.txt");
  EXPECT_EQ(letters.text, "Fläche grün, Größe für Männer und Kinder, hängend gewogen");
  EXPECT_NE(letters.encoding, "");

  const FileText marked = read("\xff\xfeM\0C\0\xbe\0"s, "a.txt");
  EXPECT_EQ(marked.text, "MC¾");
  EXPECT_EQ(marked.encoding, "UTF-16LE");
  const FileText unmarked = read("M\0C\0 \0P\0e\0a\0t\0"s, "a.txt");
  EXPECT_EQ(unmarked.text, "MC Peat");
  EXPECT_EQ(unmarked.encoding, "UTF-16LE");
}

TEST(text_of_file, says_how_many_bytes_have_no_meaning) {
  // 0x81 and 0x8d mean nothing in Windows' Western encoding.
  const FileText file = read("<meta charset=windows-1252><p>MC \x81\x8d 1\xbe", "a.html");
  EXPECT_EQ(file.text, "MC \ufffd\ufffd 1¾\n");
  EXPECT_THAT(file.notes, ElementsAre(HasSubstr("1252"), HasSubstr("2 bytes have no meaning")));
}

TEST(text_of_file, refuses_what_is_no_text) {
  EXPECT_THAT(refusal("MC \0\1\2\3"s, "a.txt"), HasSubstr("no text"));
  EXPECT_THAT(refusal(zip_of({{"a", "b"}}), "a.txt"), HasSubstr("zip archive"));
  EXPECT_THAT(refusal("%PDF-1.4 x", "a.pdf"), HasSubstr("a PDF"));
  EXPECT_THAT(refusal("\x89PNG\r\n", "a.md"), HasSubstr("picture"));
  EXPECT_THAT(refusal(std::string((64u << 20) + 1, 'a'), "a.txt"), HasSubstr("at most 64 MB"));
}

TEST(text_of_file, html_gives_lines_cells_and_characters) {
  const std::string page =
      "<!DOCTYPE html><html><head><title>T</title><style>p{}</style></head><body>"
      "<h1>Quill &amp; Marsh</h1><script>alert('no')</script><!-- nor this -->"
      "<p>Sizes 1 (2,\n   3) &mdash; 1&frac34;&nbsp;oz</p><ul><li>MC <b>Peat</b><li>CC Gorse</ul>"
      "<table><tr><th>size<th>1<th>2<tr><td>MC</td><td><p>5</p></td><td>5</td></tr></table>"
      "one<br>two<pre>a  b\n c</pre><p>3<sup>1</sup>&frasl;<sub>2</sub> &#x215b;</body></html>";
  EXPECT_EQ(
      text(page, "a.htm"),
      "Quill & Marsh\nSizes 1 (2, 3) — 1¾\u00a0oz\nMC Peat\nCC Gorse\nsize\t1\t2\nMC\t5\t5\none\ntwo\na  b\n"
      " c\n3 1⁄2 ⅛\n");
}

TEST(text_of_file, html_keeps_a_page_laid_out_by_a_table_in_lines) {
  EXPECT_EQ(text("<table><tr><td><p>one</p><p>two</p><table><tr><td>MC<td>5</table></table>", "a.html"),
            "one\ntwo\nMC\t5\n");
}

TEST(text_of_file, html_is_refused_where_it_is_made_to_hang) {
  const auto many = [](std::string_view piece, int times) {
    std::string all;
    for (int i = 0; i < times; ++i) all += piece;
    return all;
  };
  EXPECT_THAT(refusal(many("<div>", 20000), "a.html"), HasSubstr("400 deep"));
  EXPECT_THAT(refusal(many("<span><div></span></div>", 5000), "a.html"), HasSubstr("400 deep"));
  EXPECT_THAT(refusal(many("<div><table></div>", 5000), "a.html"), HasSubstr("400 deep"));
  EXPECT_THAT(refusal(many("<svg><td>", 5000), "a.html"), HasSubstr("400 deep"));
  EXPECT_THAT(refusal(many("<p><b>", 5000), "a.html"), HasSubstr("400 deep"));
  EXPECT_THAT(refusal(many("<b>", 300) + many("<p>x</p>", 20000), "a.html"), HasSubstr("never closed"));
  EXPECT_THAT(refusal("<a" + many(" b=1", 300) + ">", "a.html"), HasSubstr("attributes"));
  // What well-made pages repeat is no depth.
  EXPECT_EQ(text(many("<p><b>x</b><li>y<td>z<div></div>", 2000), "a.html").size(), 10000u);
  EXPECT_EQ(text(many("<svg><path d=x /><g></svg><br><select><option>", 1) + many("<option>x", 600) +
                     "</select>" + many("<br>", 600) + "<script>\"<div>\"</script>",
                 "a.html")
                    .size() > 600,
            true);
  EXPECT_THAT(refusal("<svg><div>" + many("<b/>", 5000), "a.html"), HasSubstr("400 deep"));
  EXPECT_EQ(text("<script>" + many("<div>", 5000) + "</script>MC", "a.html"), "MC\n");
  EXPECT_EQ(text("<table>" + many("<tr><td><b>x<td>y", 5000) + "</table>", "a.html").size(), 20000u);
}

TEST(text_of_file, markdown_gives_its_words) {
  EXPECT_EQ(
      text("# Yarn\n\n**MC** Peat_08_x: 5 (5, 6)  \nCC *Gorse* 1\n\n- 3.25 mm\n- 3.5 mm\n\n"
           "| role | 1 | 2 |\n|:--|--|--|\n| MC | 5 | 6 |\n\n    kept  as\n     it is\n\n<p>1&frac12;</p>\n",
           "a.md"),
      "Yarn\n\nMC Peat_08_x: 5 (5, 6)\nCC Gorse 1\n\n3.25 mm\n3.5 mm\nrole\t1\t2\nMC\t5\t6\n\nkept  as\n it "
      "is\n1½\n");
}

TEST(text_of_file, markdown_keeps_stars_of_repeats_and_brackets_of_sizes) {
  const std::string line = "*k2, p2; rep from * to end, 1[2:3] skeins, [MC] (5) <2 cm\n";
  EXPECT_EQ(text(line, "a.md"), line);
}

TEST(text_of_file, markdown_made_to_hang_is_read_as_plain_text) {
  std::string pictures;
  while (pictures.size() < 400000) pictures += "![[]()";
  const FileText file = read(pictures, "a.md");
  EXPECT_EQ(file.text, pictures);
  EXPECT_EQ(file.notes.size(), 1u);
}

TEST(text_of_file, docx_gives_paragraphs_tables_and_notes) {
  const std::string body =
      "<w:p><w:pPr><w:tabs><w:tab w:pos=\"1\"/></w:tabs></w:pPr>" + run("Sizes 1 ") + run("(2, 3)") +
      "</w:p>" + "<w:p>" + run("MC") + "<w:r><w:tab/><w:t>5 &amp; 6</w:t><w:br/><w:t>next</w:t></w:r>" +
      "<w:del><w:r><w:delText>gone</w:delText></w:r></w:del><w:ins>" + run(" new") + "</w:ins></w:p>" +
      "<w:tbl><w:tblPr/><w:tr><w:tc>" + paragraph("MC") + "</w:tc><w:tc>" + paragraph("5") +
      paragraph("balls") + "</w:tc></w:tr><w:tr><w:tc>" + paragraph("CC") +
      "</w:tc><w:tc><w:p/></w:tc></w:tr></w:tbl>" +
      "<w:p><w:r><w:t>1</w:t></w:r><w:r><w:rPr><w:vertAlign "
      "w:val=\"superscript\"/></w:rPr><w:t>3</w:t></w:r>" +
      run("/4 oz") + "</w:p><mc:AlternateContent><mc:Choice>" + paragraph("box") +
      "</mc:Choice><mc:Fallback>" + paragraph("box") + "</mc:Fallback></mc:AlternateContent>";
  const FileText file = read(
      docx(body, {{"word/footnotes.xml", "<w:footnotes xmlns:w=\"urn:w\"><w:footnote w:type=\"separator\">" +
                                             paragraph("---") + "</w:footnote><w:footnote>" +
                                             paragraph("no longer made") + "</w:footnote></w:footnotes>"}}),
      "Block.DOCX");
  EXPECT_EQ(file.text,
            "Sizes 1 (2, 3)\nMC\t5 & 6\nnext new\nMC\t5 balls\nCC\n1 3/4 oz\nbox\nno longer made\n");
  EXPECT_THAT(file.notes, ElementsAre(HasSubstr("tracked changes")));
}

TEST(text_of_file, odt_gives_paragraphs_tables_and_notes) {
  const std::string body =
      "<text:tracked-changes><text:p>gone</text:p></text:tracked-changes><text:h>Yarn</text:h>"
      "<text:p>Sizes\n  1<text:s text:c=\"2\"/>(2,<text:span> 3</text:span>)<text:tab/>x"
      "<text:note><text:note-citation>1</text:note-citation><text:note-body><text:p>no longer made</text:p>"
      "</text:note-body></text:note><text:line-break/>y</text:p>"
      "<text:list><text:list-item><text:p>MC</text:p></text:list-item></text:list>"
      "<table:table><table:table-row><table:table-cell><text:p>MC</text:p></table:table-cell>"
      "<table:table-cell><text:p>5</text:p></table:table-cell></table:table-row></table:table>";
  const FileText file = read(odt(body), "block.odt");
  EXPECT_EQ(file.text, "Yarn\nSizes 1  (2, 3)\tx1\ny\nMC\nMC\t5\nno longer made\n");
  EXPECT_EQ(file.notes.size(), 1u);
}

TEST(text_of_file, office_files_that_are_none_get_clear_words) {
  EXPECT_THAT(refusal("Sizes 1 (2, 3)", "block.docx"),
              AllOf(HasSubstr("block.docx"), HasSubstr("no zip archive"), HasSubstr("a .docx document")));
  EXPECT_THAT(refusal("", "a.odt"), HasSubstr("an empty file"));
  EXPECT_THAT(refusal("\xd0\xcf\x11\xe0 older", "a.docx"), HasSubstr("locked by a password"));
  EXPECT_THAT(refusal(zip_of({{"a", "b"}}), "a.docx"), HasSubstr("without word/document.xml"));
  EXPECT_THAT(refusal(zip_of({{"word/document.xml", "<w:document><w:body>"}}), "a.docx"),
              HasSubstr("broken"));
  EXPECT_THAT(refusal(zip_of({{"word/document.xml", "<w:document/>"}}), "a.docx"),
              HasSubstr("without a body"));
  EXPECT_THAT(
      refusal(zip_of({{"content.xml", "\x01\x02"}, {"META-INF/manifest.xml", "<x:encryption-data/>"}}),
              "a.odt"),
      HasSubstr("password"));
  std::string torn = docx(paragraph("MC"));
  torn.resize(torn.size() / 2);
  refusal(torn, "a.docx");
}

TEST(text_of_file, office_files_that_unpack_without_bounds_are_refused) {
  const std::string bomb = docx("<w:p>" + run(std::string(std::size_t{60} << 20, 'a')) + "</w:p>");
  EXPECT_LT(bomb.size(), std::size_t{1} << 20);
  EXPECT_THAT(refusal(bomb, "a.docx"), HasSubstr("48 MB"));
}

TEST(text_of_file, office_files_with_entities_of_their_own_are_refused) {
  const std::string xml =
      "<!DOCTYPE d [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;\"><!ENTITY c SYSTEM \"file:///etc/passwd\">]>"
      "<w:document><w:body><w:p><w:r><w:t>&b;&c;</w:t></w:r></w:p></w:body></w:document>";
  EXPECT_THAT(refusal(zip_of({{"word/document.xml", xml}}), "a.docx"), HasSubstr("DOCTYPE"));
}

TEST(text_of_file, deep_office_files_are_read_without_a_stack) {
  std::string open, close;
  for (int i = 0; i < 200000; ++i) {
    open += "<w:sdtContent>";
    close += "</w:sdtContent>";
  }
  EXPECT_EQ(text(docx(open + paragraph("MC") + close), "a.docx"), "MC\n");
  std::string rows;
  for (int i = 0; i < 20000; ++i) rows += "<w:tbl><w:tr><w:tc>";
  EXPECT_THAT(refusal(docx(rows), "a.docx"), HasSubstr("broken"));
}

TEST(text_of_file, ten_megabytes_of_text_are_read) {
  std::string lines;
  while (lines.size() < std::size_t{10} << 20) lines += "MC Peat 08: 5 (5, 6, 7) skeins of 1¾ oz\n";
  EXPECT_EQ(text(lines, "a.txt"), lines);
  const FileText marked = read(lines, "a.md");
  EXPECT_EQ(marked.text, lines);
  EXPECT_THAT(marked.notes, ElementsAre(HasSubstr("too large to be read as Markdown")));
  lines.resize(std::size_t{2} << 20);
  EXPECT_GT(text(docx(paragraph(lines)), "a.docx").size(), std::size_t{1} << 20);
  EXPECT_GT(text("<pre>" + lines + "</pre>", "a.html").size(), std::size_t{1} << 20);
}

}  // namespace
}  // namespace skeinproof
