// A document in each of the formats that leave the program. The same document gives the same bytes.
#pragma once

#include "answers/parts/document.hpp"
#include "answers/writers/page.hpp"
#include "core/result.hpp"

#include <string>

namespace pourbook {

enum class TableFormat { text, description, csv, markdown, html, json, xlsx };

/// For a terminal: sentences and tables in their order.
std::string answer_text(const Document& document);

/// For programs: figures, tables (a list of objects) and sentences under their ids, SI units; dots in an id nest. A
/// figure that is traced is {"value", "unit", "standard_uncertainty", "condition", "how_known", "sources"}. Make the
/// document in base units.
std::string answer_json(const Document& document);

/// For the box below a video, at most 4,900 characters: rows that don't fit are counted. Sentences always stay.
std::string description_text(const Document& document);

/// By the ending of a file's name, or by a word: text, description, csv, md, html, json, xlsx. Errors: unreadable,
/// naming them.
Result<TableFormat> table_format(const std::string& file);
Result<TableFormat> table_format_named(const std::string& word);

/// Errors: file (XLSX only, which is put together in the system's folder for temporary files).
Result<std::string> written(const Document& document, TableFormat format);

/// RFC 4180 in UTF-8: figures with all their digits, units in the header, every row with the document's conditions,
/// version, date and references. Texts that a spreadsheet would run as a formula have an apostrophe in front.
std::string csv_of(const Document& document);
/// For the clipboard: the same without the ends.
std::string tab_separated(const DataTable& table);

/// {"title","conditions","notes","data_version","date","parts":[{"title","columns":[{"id","title","unit"}],"rows":[{id:
/// text | number | {"value","standard_uncertainty","how_known","condition","sources","reason"}}]}],"sources":[{"key",
/// "reference"}]}; nothing said is null.
std::string json_of(const Document& document);

/// A sheet for each part with titles, units and then figures as numbers; then the conditions and the sources.
Result<std::string> xlsx_of(const Document& document);

/// For people: each figure with its uncertainty, sources in brackets.
Page page_of(const Document& document);

} // namespace pourbook
