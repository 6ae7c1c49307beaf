// The commands of the questions that are answered in words, all made from their tables.
#include "answers/askers.hpp"
#include "answers/writers/write_file.hpp"
#include "cli/options.hpp"
#include "cli/table_words.hpp"

namespace pourbook {
namespace {

struct Asked {
    Stated stated;
    TableWords table;
};

int answer(const Context& context, const Catalogue& catalogue, const Asker& asker, const Asked& asked) {
    const Result<UnitSystem> units = units_from(context.units);
    if (!units) return context.failed(units.problem());
    Asking asking{catalogue, context.own, *units, context.date};
    if (!asked.table.asked()) {
        const Result<std::string> words = (context.json ? asker.json : asker.text)(asked.stated, asking);
        return words ? context.printed(*words) : context.failed(words.problem());
    }
    return answer_table(context, asked.table, [&](UnitSystem in) {
        asking.units = in;
        return asker.table(asked.stated, asking);
    });
}

void declare(Context& context, const Asker& asker) {
    const auto asked = std::make_shared<Asked>(Asked{Stated(*asker.question), {}});
    CLI::App* c = command_of(context, asked->stated);
    if (asker.table && asker.question->has("to"))
        with_format_word(c, asked->table); // "to" means something else there
    else if (asker.table)
        with_table_words(c, asked->table);
    c->callback([&context, asked, &asker] {
        context.answer = [&context, asked, &asker](const Catalogue& catalogue) {
            return answer(context, catalogue, asker, *asked);
        };
    });
}

} // namespace

void declare_asked(Context& context) {
    for (const Asker& asker : askers()) declare(context, asker);
}

} // namespace pourbook
