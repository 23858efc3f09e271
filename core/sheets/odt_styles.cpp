// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/odt_parts.h"

namespace skeinproof {

std::string_view odt_styles() {
  return R"(<?xml version="1.0" encoding="UTF-8"?>
<office:document-styles xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0" xmlns:svg="urn:oasis:names:tc:opendocument:xmlns:svg-compatible:1.0" office:version="1.2">
<office:font-face-decls>
<style:font-face style:name="Plain" svg:font-family="sans-serif" style:font-family-generic="swiss"/>
<style:font-face style:name="Words" svg:font-family="serif" style:font-family-generic="roman"/>
<style:font-face style:name="Fixed" svg:font-family="monospace" style:font-family-generic="modern" style:font-pitch="fixed"/>
</office:font-face-decls>
<office:styles>
<style:default-style style:family="paragraph"><style:paragraph-properties fo:margin-top="0cm" fo:margin-bottom="0.12cm"/><style:text-properties style:font-name="Plain" fo:font-size="10pt" fo:language="en" fo:country="GB"/></style:default-style>
<style:style style:name="Standard" style:family="paragraph"/>
<style:style style:name="Title" style:family="paragraph" style:parent-style-name="Standard"><style:paragraph-properties fo:keep-with-next="always"/><style:text-properties fo:font-size="16pt" fo:font-weight="bold"/></style:style>
<style:style style:name="Under_20_title" style:display-name="Under title" style:family="paragraph" style:parent-style-name="Standard"><style:paragraph-properties fo:margin-bottom="0.4cm" fo:border-bottom="0.06pt solid #000000" fo:padding-bottom="0.1cm"/></style:style>
<style:style style:name="Question" style:family="paragraph" style:parent-style-name="Standard" style:default-outline-level="1"><style:paragraph-properties fo:margin-top="0.5cm" fo:border-top="0.06pt solid #000000" fo:padding-top="0.1cm" fo:keep-with-next="always"><style:tab-stops><style:tab-stop style:position="1.2cm"/><style:tab-stop style:position="2.5cm"/></style:tab-stops></style:paragraph-properties><style:text-properties fo:font-size="11pt" fo:font-weight="bold"/></style:style>
<style:style style:name="Designer" style:family="paragraph" style:parent-style-name="Standard"><style:text-properties style:font-name="Words"/></style:style>
<style:style style:name="Ground" style:family="paragraph" style:parent-style-name="Standard"><style:paragraph-properties fo:margin-left="0.5cm"/><style:text-properties fo:font-size="9pt"/></style:style>
<style:style style:name="Lines" style:family="paragraph" style:parent-style-name="Standard"><style:paragraph-properties fo:margin-bottom="0cm"/><style:text-properties style:font-name="Fixed" fo:font-size="9pt"/></style:style>
<style:style style:name="Table_20_title" style:display-name="Table title" style:family="paragraph" style:parent-style-name="Standard"><style:paragraph-properties fo:margin-top="0.4cm" fo:keep-with-next="always"/><style:text-properties fo:font-weight="bold"/></style:style>
<style:style style:name="Cell" style:family="paragraph" style:parent-style-name="Standard"><style:paragraph-properties fo:margin-bottom="0cm"/></style:style>
<style:style style:name="Figure" style:family="paragraph" style:parent-style-name="Cell"><style:paragraph-properties fo:text-align="end"/></style:style>
<style:style style:name="Foot" style:family="paragraph" style:parent-style-name="Standard"><style:text-properties fo:font-size="9pt"/></style:style>
<style:style style:name="Strong" style:family="text"><style:text-properties fo:font-weight="bold"/></style:style>
<style:style style:name="Gone" style:family="text"><style:text-properties style:text-line-through-style="solid"/></style:style>
<style:style style:name="Added" style:family="text"><style:text-properties style:text-underline-style="solid"/></style:style>
</office:styles>
<office:automatic-styles><style:page-layout style:name="Paper"><style:page-layout-properties fo:margin="1.5cm"/></style:page-layout></office:automatic-styles>
<office:master-styles><style:master-page style:name="Standard" style:page-layout-name="Paper"/></office:master-styles>
</office:document-styles>
)";
}

std::string_view odt_manifest() {
  return R"(<?xml version="1.0" encoding="UTF-8"?>
<manifest:manifest xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0" manifest:version="1.2">
<manifest:file-entry manifest:full-path="/" manifest:version="1.2" manifest:media-type="application/vnd.oasis.opendocument.text"/>
<manifest:file-entry manifest:full-path="content.xml" manifest:media-type="text/xml"/>
<manifest:file-entry manifest:full-path="styles.xml" manifest:media-type="text/xml"/>
<manifest:file-entry manifest:full-path="meta.xml" manifest:media-type="text/xml"/>
</manifest:manifest>
)";
}

}  // namespace skeinproof
