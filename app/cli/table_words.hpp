// The words of a table that leaves the program: into which file, or in which format to standard output.
#pragma once

#include "answers/writers/documents.hpp"
#include "cli/context.hpp"

#include <functional>
#include <string>

namespace pourbook {

struct TableWords {
    std::string to, format;
    bool asked() const { return !to.empty() || !format.empty(); }
};

void with_table_words(CLI::App* command, TableWords& words);
/// --format alone, where --to means something else.
CLI::Option* with_format_word(CLI::App* command, TableWords& words);

/// The same of an answer that may fail, made in the units the format takes.
int answer_table(const Context& context, const TableWords& words,
                 const std::function<Result<Document>(UnitSystem)>& make);

/// Writes the document of an answer. `make` is asked for SI units where the format is JSON. Returns the exit code.
int answer_table(const Context& context, const Catalogue& catalogue, const TableWords& words,
                 const std::function<Document(const DocumentSetting&)>& make);

/// The same, and without such words the answer as text, or with --json as JSON.
int answer_document(const Context& context, const Catalogue& catalogue, const TableWords& words,
                    const std::function<Document(const DocumentSetting&)>& make);

/// What answers as one document: a file or format where one is asked for, else JSON or text.
template <class R>
int answered(const Context& context, const Catalogue& catalogue, const TableWords& words, const Result<R>& result) {
    if (!result) return context.failed(result.problem());
    return answer_document(context, catalogue, words,
                           [&](const DocumentSetting& s) { return document_of(*result, s); });
}

/// The same, where the JSON of the command is not the document's.
template <class R, class Json>
int answered(const Context& context, const Catalogue& catalogue, const TableWords& words, const Result<R>& result,
             Json as_json) {
    if (result && context.json && !words.asked()) return context.printed(as_json(*result));
    return answered(context, catalogue, words, result);
}

/// The document where one is asked for, else JSON or text as of any command.
template <class R, class Json, class Text>
int answered(const Context& context, const Catalogue& catalogue, const TableWords& words, const Result<R>& result,
             Json as_json, Text as_text) {
    if (!words.asked() || !result) return context.answered(result, as_json, as_text);
    return answer_table(context, catalogue, words, [&](const DocumentSetting& s) { return document_of(*result, s); });
}

} // namespace pourbook
