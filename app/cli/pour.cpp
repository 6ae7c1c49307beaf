#include "cli/options.hpp"

#include "answers/pour/pour_file.hpp"
#include "platform/files.hpp"
#include "questions/pour/pour_in_workshop.hpp"
#include "questions/workshop/own_pour.hpp"

namespace pourbook {
namespace {

int written(const Context& context, const PourResult& plan, const Catalogue& catalogue, const std::string& file) {
    const Result<UnitSystem> units = units_from(context.units);
    if (!units) return context.failed(units.problem());
    const Result<std::string> bytes = pour_sheet_file(plan, catalogue, *units, file, context.date);
    if (!bytes) return context.failed(bytes.problem());
    if (const auto problem = platform::write_file(file, *bytes)) return context.failed(*problem);
    return context.printed("wrote " + file + "\n");
}

int answer(const Context& context, const Stated& stated, const std::string& to, const Catalogue& catalogue) {
    const Result<PourRequest> request = pour_request_from(stated, context.read_mesh, catalogue);
    if (!request) return context.failed(request.problem());
    const Result<PourResult> plan =
        pour_in_workshop(catalogue, with_own_pour(catalogue, *request, context.own), context.own);
    if (plan && !to.empty()) return written(context, *plan, catalogue, to);
    return context.answered(
        plan, [&](const PourResult& r) { return json_of(r, catalogue); },
        [&](const PourResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
}

} // namespace

void declare_pour(Context& context) {
    auto stated = std::make_shared<Stated>(pour_question());
    auto to = std::make_shared<std::string>();
    CLI::App* c = command_of(context, *stated);
    c->add_option("--to", *to, "write the sheet to FILE.pdf (A4, for the wall), .html, .md, .txt or .json");
    c->callback([&context, stated, to] {
        context.answer = [&context, stated, to](const Catalogue& catalogue) {
            return answer(context, *stated, *to, catalogue);
        };
    });
}

} // namespace pourbook
