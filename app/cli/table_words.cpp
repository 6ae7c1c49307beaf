#include "cli/table_words.hpp"

#include "answers/writers/writers.hpp"
#include "platform/files.hpp"

namespace pourbook {

void with_table_words(CLI::App* c, TableWords& words) {
    auto* to = c->add_option("--to", words.to, "write a file: .csv, .md, .html, .json, .xlsx or .txt");
    with_format_word(c, words)->excludes(to);
}

CLI::Option* with_format_word(CLI::App* c, TableWords& words) {
    return c->add_option("--format", words.format,
                         "csv, md, html, json, xlsx, text or description (for a video's) to standard output");
}

int answer_table(const Context& context, const Catalogue& catalogue, const TableWords& words,
                 const std::function<Document(const DocumentSetting&)>& make) {
    return answer_table(context, words, [&](UnitSystem units) -> Result<Document> {
        return make({catalogue, units, context.date});
    });
}

int answer_table(const Context& context, const TableWords& words,
                 const std::function<Result<Document>(UnitSystem)>& make) {
    const Result<TableFormat> format = !words.to.empty() ? table_format(words.to)
                                                         : table_format_named(context.json           ? "json"
                                                                              : words.format.empty() ? "text"
                                                                                                     : words.format);
    if (!format) return context.failed(format.problem());
    const Result<UnitSystem> units = units_from(context.units);
    if (!units) return context.failed(units.problem());
    const UnitSystem used = *format == TableFormat::json ? UnitSystem::base : *units;
    const Result<Document> document = make(used);
    if (!document) return context.failed(document.problem());
    const Result<std::string> bytes = written(*document, *format);
    if (!bytes) return context.failed(bytes.problem());
    const bool text = *format == TableFormat::text;
    if (words.to.empty()) return text ? context.told(*bytes) : context.printed(*bytes);
    const auto problem = platform::write_file(words.to, *bytes);
    return problem ? context.failed(*problem) : 0;
}

int answer_document(const Context& context, const Catalogue& catalogue, const TableWords& words,
                    const std::function<Document(const DocumentSetting&)>& make) {
    if (words.asked()) return answer_table(context, catalogue, words, make);
    if (context.json) return context.printed(answer_json(make({catalogue, UnitSystem::base, context.date})));
    const Result<UnitSystem> units = units_from(context.units);
    if (!units) return context.failed(units.problem());
    return context.told(answer_text(make({catalogue, *units, context.date})));
}

} // namespace pourbook
