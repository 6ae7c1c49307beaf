#include "cli/examples.hpp"

#include <map>
#include <string>
#include <vector>

namespace pourbook {
namespace {

// Demo data: magnet and sleeves of a marble tower; invented.
const std::map<std::string, std::string>& examples() {
    static const std::string magnet = "--magnet cylinder:20mmx20mm --grade N52", tube = "--tube 22:38:300mm";
    static const std::map<std::string, std::string> all = {
        {"ask", "ask silicon bronze or gunmetal as a better brake"},
        {"metals", "metals --where \"liquidus < 700 degC\""},
        {"value", "value copper density --at 20C"},
        {"sheet", "sheet za-12"},
        {"compare", "compare bronze-silicon-cast bronze-gunmetal-88-10-2 --show conductivity,density,price"},
        {"rank", "rank --goal strongest-brake --top 5"},
        {"versus", "versus bronze-silicon-cast bronze-gunmetal-88-10-2 --goal strongest-brake"},
        {"tradeoff", "tradeoff --goal strongest-brake --and light-conductor"},
        {"drop", "drop " + magnet + " " + tube + " --metal copper-dhp"},
        {"drag", "drag " + magnet + " " + tube + " --metal copper-dhp --speed 0.1m/s"},
        {"infer", "infer " + magnet + " " + tube + " --time \"4.2s, 4.3s\""},
        {"sweep", "sweep " + magnet + " " + tube + " --metal copper-dhp --over wall 1:6mm"},
        {"plate", "plate " + magnet + " --gap 2mm --thickness 5mm --metal copper-dhp --speed 0.5m/s"},
        {"design", "design " + magnet + " --time 5s --longest 400mm"},
        {"measure", "measure --magnet cylinder:15mmx15mm --field 0.2T@5mm --field 95mT@10mm"},
        {"mix", "mix \"1.2kg bronze-gunmetal-88-10-2 + 300g copper-dhp\""},
        {"pour", "pour za-12 --part tube:22:34:250mm"},
        {"defect", "defect holes"},
        {"chart", "chart curve resistivity copper-dhp za-12 --to curve.svg"},
        {"chart curve", "chart curve resistivity copper-dhp za-12 --to curve.svg"},
        {"chart scatter", "chart scatter density conductivity --to scatter.svg"},
        {"chart rank", "chart rank --goal strongest-brake --to brakes.svg"},
        {"chart tradeoff", "chart tradeoff --goal strongest-brake --and light-conductor --to two-goals.svg"},
        {"chart drop", "chart drop " + magnet + " " + tube + " --metal za-12,copper-dhp --to falls.svg"},
        {"chart drag", "chart drag " + magnet + " " + tube + " --metal copper-dhp --to drag.svg"},
        {"chart sweep", "chart sweep " + magnet + " " + tube + " --metal copper-dhp --over wall 1:6mm --to walls.svg"},
        {"chart diagram", "chart diagram Cu-Sn --to diagram.svg"},
        {"chart mix", "chart mix \"Cu 90 Sn 10\" --to mix.svg"},
        {"chart field", "chart field " + magnet + " " + tube + " --metal copper-dhp --to field.svg"},
        {"chart fall", "chart fall " + magnet + " " + tube + " --metal za-12,copper-dhp --of place --to fall.svg"},
        {"film", "film " + magnet + " " + tube + " --metal za-12,copper-dhp --to frames"},
        {"sources", "sources"},
        {"check", "check"},
        {"export", "export --to reference"},
        {"stock", "stock"},
        {"stock list", "stock list"},
        {"stock add", "stock add copper-dhp 2kg --lot pipes --price \"7 EUR/kg\""},
        {"stock edit", "stock edit pipes --mass 1.5kg"},
        {"stock remove", "stock remove pipes"},
        {"price", "price"},
        {"price list", "price list"},
        {"price add", "price add copper \"9.50 EUR/kg\" --date 2026-11-25"},
        {"price edit", "price edit 1 --seller \"scrap yard\""},
        {"price remove", "price remove 1"},
        {"rate", "rate"},
        {"rate list", "rate list"},
        {"rate add", "rate add EUR 1.08 --date 2026-11-25 --source \"central bank\""},
        {"rate edit", "rate edit 1 --usd 1.09"},
        {"rate remove", "rate remove 1"},
        {"crucible", "crucible"},
        {"crucible list", "crucible list"},
        {"crucible add", "crucible add a4 graphite --volume 500ml"},
        {"crucible edit", "crucible edit a4 --volume 450ml"},
        {"crucible remove", "crucible remove a4"},
        {"mould", "mould"},
        {"mould list", "mould list"},
        {"mould add", "mould add my-shell \"fused silica\" --maximum 870C"},
        {"mould edit", "mould edit my-shell --maximum 900C"},
        {"mould remove", "mould remove my-shell"},
        {"profile", "profile"},
        {"profile list", "profile list"},
        {"profile set", "profile set --furnace-maximum 1150C --power 2kW"},
        {"trial", "trial"},
        {"trial list", "trial list"},
        {"trial add", "trial add weighing --name sleeve-1 --metal copper-dhp --mass 620g --part tube:22:28:300mm"},
        {"trial edit", "trial edit sleeve-1 --mass 622g"},
        {"trial remove", "trial remove sleeve-1"},
        {"goal", "goal"},
        {"goal list", "goal list"},
        {"goal add", "goal add light-brake \"conductivity / density\""},
        {"goal edit", "goal edit light-brake --sentence \"most drag for its weight\""},
        {"goal remove", "goal remove light-brake"},
        {"own-metal", "own-metal"},
        {"own-metal list", "own-metal list"},
        {"own-metal add", "own-metal add my-bronze --like bronze-tin-cast"},
        {"own-metal edit", "own-metal edit my-bronze --note \"bell scrap\""},
        {"own-metal remove", "own-metal remove my-bronze"},
        {"own-value", "own-value"},
        {"own-value list", "own-value list"},
        {"own-value add", "own-value add my-bronze resistivity \"12.5 uohm.cm\""},
        {"own-value edit", "own-value edit 1 --from measured"},
        {"own-value remove", "own-value remove 1"},
        {"pin", "pin"},
        {"pin list", "pin list"},
        {"pin add", "pin add copper"},
        {"pin edit", "pin edit copper --metal silver"},
        {"pin remove", "pin remove silver"},
        {"log", "log"},
        {"log list", "log list"},
        {"log add",
         "log add \"Which sleeve is cheapest?\" --name sleeve --command \"rank --goal braking-per-cost --top 3\""},
        {"log again", "log again sleeve"},
        {"log remove", "log remove sleeve"},
        {"import", "import stock shelf.csv --dry-run"},
        {"backup", "backup"},
        {"undo", "undo"},
        {"redo", "redo"},
        {"changes", "changes"},
        {"help", "help drop"}};
    return all;
}

const std::vector<std::pair<std::string, std::vector<std::string>>>& groups() {
    static const std::vector<std::pair<std::string, std::vector<std::string>>> all = {
        {"Ask", {"ask", "help"}},
        {"Choose the metal", {"rank", "versus", "tradeoff", "metals", "value", "sheet", "compare", "chart"}},
        {"Magnet and tube", {"drop", "drag", "infer", "sweep", "design", "film", "plate", "measure"}},
        {"Cast it", {"pour", "mix", "defect"}},
        {"Your workshop",
         {"profile", "stock", "price", "rate", "crucible", "mould", "trial", "goal", "own-metal", "own-value", "pin",
          "log"}},
        {"Your file", {"import", "backup", "undo", "redo", "changes"}},
        {"The reference", {"sources", "check", "export"}}};
    return all;
}

void add_footer(CLI::App& app, const std::string& path) {
    if (const auto at = examples().find(path); at != examples().end()) app.footer("Example:\n  pourbook " + at->second);
    for (CLI::App* command : app.get_subcommands([](CLI::App*) { return true; }))
        add_footer(*command, path + (path.empty() ? "" : " ") + command->get_name());
}

} // namespace

void with_examples(CLI::App& root) {
    add_footer(root, "");
    root.footer("Example:\n  pourbook rank --goal strongest-brake --top 5\n\nEvery command has its own: pourbook "
                "COMMAND --help");
    for (CLI::App* command : root.get_subcommands([](CLI::App*) { return true; }))
        for (const auto& [group, names] : groups())
            for (const std::string& name : names)
                if (name == command->get_name()) command->group(group);
}

} // namespace pourbook
