#include "cli/run.hpp"

#include "cli/words.hpp"
#include "report/json.hpp"
#include "report/text.hpp"
#include "usecases/find_metal.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <cstdio>
#include <ostream>

namespace pourbook {
namespace {

class Commands {
public:
    Commands(const CommandLine& setup, std::ostream& out, std::ostream& err) : setup_(setup), out_(out), err_(err) { declare(); }

    int run(std::vector<std::string> words) {
        std::reverse(words.begin(), words.end()); // the parser takes them from the back
        try {
            app_.parse(words);
        } catch (const CLI::Success& done) { // --help, --version
            app_.exit(done, out_, err_);
            return 0;
        } catch (const CLI::ParseError& e) {
            err_ << "pourbook: " << one_line(e.what()) << ": see `pourbook --help`\n";
            return 2;
        }
        const std::string path = reference_.empty() ? setup_.default_reference : reference_;
        try {
            const Catalogue catalogue = setup_.open(path);
            return answer_ ? answer_(catalogue) : setup_.window(catalogue, window_words());
        } catch (const std::exception& e) {
            err_ << "pourbook: " << e.what() << "\n";
            return 4;
        }
    }

private:
    static std::string one_line(std::string text) {
        std::replace(text.begin(), text.end(), '\n', ' ');
        return text;
    }

    int failed(const Problem& problem) {
        err_ << "pourbook: " << problem.text << "\n";
        return exit_code(problem);
    }

    template <class R, class Json, class Text> int answered(const Result<R>& result, Json json, Text text) {
        if (!result) return failed(result.problem());
        if (json_) {
            out_ << json(*result);
            return 0;
        }
        const Result<UnitSystem> units = units_from(units_);
        if (!units) return failed(units.problem());
        out_ << text(*result, *units);
        return 0;
    }

    CLI::App* command(const std::string& name, const std::string& help) {
        CLI::App* c = app_.add_subcommand(name, help);
        c->add_flag("--json", json_, "answer as JSON, SI units");
        c->add_option("--units", units_, "si (default) or workshop: degF, lb, %IACS");
        return c;
    }

    void with_conditions(CLI::App* c) {
        c->add_option("--at", words_.at, "temperature: 77K, 20degC, 1500degF (default 293.15K)");
        c->add_option("--condition", words_.condition, "reference, as-cast, annealed, cold-worked, solution-treated, aged, as-supplied, or a temper (T6)");
        c->add_option("--purity-rrr", words_.rrr, "residual resistivity ratio of a pure metal");
    }

    void declare() {
        app_.description("Pourbook: choose a casting metal from cited figures. Without a command: the window.");
        app_.set_version_flag("--version", "pourbook " + setup_.version);
        app_.add_option("--reference", reference_, "another reference database");
        app_.require_subcommand(0, 1);
        app_.fallthrough();
        declare_window();
        declare_metals();
        declare_value();
        declare_sheet();
        declare_rank();
        declare_sources();
        declare_check();
    }

    void declare_window() {
        app_.add_option("--view", window_.view, "window: start in this view");
        app_.add_option("--size", size_, "window: WIDTHxHEIGHT");
        app_.add_option("--scale", window_.scale, "window: scale of text and lines (default: the display's)");
        app_.add_flag("--light", light_, "window: light colours");
        app_.add_option("--state", window_.state_file, "window: keep what is pinned and chosen in this file");
        app_.add_option("--test-socket", window_.test_socket, "window: answer a test script on this socket");
        app_.add_option("--screenshot", window_.screenshot, "window: write this PNG and end");
        app_.callback([this] {
            if (size_.empty()) return;
            char rest = 0;
            if (std::sscanf(size_.c_str(), "%dx%d%c", &window_.width, &window_.height, &rest) != 2 || window_.width < 200 || window_.height < 200 || window_.width > 10000 || window_.height > 10000)
                throw CLI::ValidationError("--size '" + size_ + "'", "WIDTHxHEIGHT is expected, such as 1440x900");
        });
    }

    WindowWords window_words() const {
        WindowWords w = window_;
        w.dark = !light_;
        return w;
    }

    void declare_metals() {
        CLI::App* c = command("metals", "the metals known, or those that meet conditions");
        c->add_option("--where", rank_.where, "a condition, such as \"liquidus < 1100 degC\"; may be repeated");
        c->add_option("--find", find_, "words in name, alias or designation");
        with_conditions(c);
        c->callback([this] { answer_ = [this](const Catalogue& k) { return metals(k); }; });
    }

    int metals(const Catalogue& catalogue) {
        const Result<Conditions> conditions = conditions_from(words_);
        if (!conditions) return failed(conditions.problem());
        Result<std::vector<const Metal*>> found = list_metals(catalogue, find_, rank_.where, *conditions);
        return answered(found, [](const auto& m) { return json_of_metals(m); }, [](const auto& m, UnitSystem) { return text_of_metals(m); });
    }

    void declare_value() {
        CLI::App* c = command("value", "one property of one metal, with uncertainty and sources");
        c->add_option("METAL", metal_, "slug, name, alias or designation")->required();
        c->add_option("PROPERTY", property_, "such as resistivity, density, liquidus")->required();
        with_conditions(c);
        c->callback([this] { answer_ = [this](const Catalogue& k) { return one_value(k); }; });
    }

    int one_value(const Catalogue& catalogue) {
        const Result<Conditions> conditions = conditions_from(words_);
        if (!conditions) return failed(conditions.problem());
        return answered(value(catalogue, {metal_, property_, *conditions}), [&](const ValueResult& r) { return json_of(r, catalogue); },
                        [&](const ValueResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
    }

    void declare_sheet() {
        CLI::App* c = command("sheet", "everything known of one metal");
        c->add_option("METAL", metal_, "slug, name, alias or designation")->required();
        with_conditions(c);
        c->callback([this] { answer_ = [this](const Catalogue& k) { return one_sheet(k); }; });
    }

    int one_sheet(const Catalogue& catalogue) {
        const Result<Conditions> conditions = conditions_from(words_);
        if (!conditions) return failed(conditions.problem());
        return answered(sheet(catalogue, {metal_, *conditions}), [&](const SheetResult& r) { return json_of(r, catalogue); },
                        [&](const SheetResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
    }

    void declare_rank() {
        CLI::App* c = command("rank", "order the metals by a goal");
        auto* goal = c->add_option("--goal", rank_.goal, "a named goal, such as braking-per-cost");
        auto* formula = c->add_option("--formula", rank_.formula, "a formula over properties, such as \"conductivity / density\"");
        goal->excludes(formula);
        c->add_option("--best", best_, "high (default) or low is best, with --formula")->check(CLI::IsMember({"high", "low"}));
        c->add_option("--where", rank_.where, "a condition; may be repeated");
        c->add_option("--from", rank_.from, "only these metals, separated by commas")->delimiter(',');
        c->add_flag("--include-unusual", rank_.include_unusual, "include what the goal leaves out as unfit for home casting");
        c->add_option("--top", rank_.top, "show only the first N");
        c->add_option("--samples", rank_.samples, "samples for the intervals (default 2000)")->check(CLI::Range(10, 200000));
        c->add_option("--seed", rank_.seed, "seed of the samples (default 1)");
        with_conditions(c);
        c->callback([this] { answer_ = [this](const Catalogue& k) { return ranking(k); }; });
    }

    int ranking(const Catalogue& catalogue) {
        const Result<Conditions> conditions = conditions_from(words_);
        if (!conditions) return failed(conditions.problem());
        rank_.conditions = *conditions;
        rank_.best_high = best_ != "low";
        return answered(rank(catalogue, rank_), [&](const RankResult& r) { return json_of(r, catalogue); },
                        [&](const RankResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
    }

    void declare_sources() {
        CLI::App* c = command("sources", "the references, or one of them");
        c->add_option("KEY", key_, "key of a source");
        c->callback([this] { answer_ = [this](const Catalogue& k) { return sources(k); }; });
    }

    int sources(const Catalogue& catalogue) {
        std::vector<const Reference*> list;
        for (const Reference& r : catalogue.references)
            if (key_.empty() || r.key == key_) list.push_back(&r);
        if (list.empty()) return failed({Problem::Kind::unknown, "unknown source '" + key_ + "': see `pourbook sources`", 0});
        return answered(Result<std::vector<const Reference*>>(list), [](const auto& l) { return json_of_references(l); }, [](const auto& l, UnitSystem) { return text_of_references(l); });
    }

    void declare_check() {
        CLI::App* c = command("check", "a self-check of the reference: what it holds and where sources disagree");
        c->add_flag("--coverage", coverage_, "metal by property: number of values, preferred source, how known");
        c->add_flag("--conflicts", conflicts_, "answers whose sources disagree");
        c->callback([this] { answer_ = [this](const Catalogue& k) { return self_check(k); }; });
    }

    int self_check(const Catalogue& catalogue) {
        const Result<CheckResult> result = check(catalogue);
        const int code = answered(result, [&](const CheckResult& r) { return json_of(r, catalogue, coverage_, conflicts_); },
                                  [&](const CheckResult& r, UnitSystem) { return text_of(r, catalogue, coverage_, conflicts_); });
        return code == 0 && !result->faults.empty() ? 4 : code;
    }

    const CommandLine& setup_;
    std::ostream& out_;
    std::ostream& err_;
    CLI::App app_;
    std::function<int(const Catalogue&)> answer_;
    bool json_ = false, light_ = false, coverage_ = false, conflicts_ = false;
    std::string units_ = "si", reference_, find_, metal_, property_, best_ = "high", key_, size_;
    ConditionWords words_;
    RankRequest rank_;
    WindowWords window_;
};

} // namespace

int run_command_line(const CommandLine& setup, const std::vector<std::string>& words, std::ostream& out, std::ostream& err) {
    return Commands(setup, out, err).run(words);
}

} // namespace pourbook
