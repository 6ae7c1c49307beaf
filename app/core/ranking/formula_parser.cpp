#include "core/ranking/formula_parser.hpp"

#include "core/nearest_words.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "core/ranking/formula_text.hpp"
#include "core/ranking/formula_value.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <optional>

namespace pourbook {
namespace {

constexpr int deepest = 100;

class FormulaParser {
public:
    FormulaParser(std::string_view text, const Catalogue& dictionary, std::vector<std::string>& names)
        : in_(text), dictionary_(dictionary), names_(names) {}

    FormulaNode whole(bool truth) {
        condition_ = truth;
        in_.blanks();
        if (in_.ended()) in_.stop("nothing to read: a formula is expected");
        FormulaNode n = either();
        in_.blanks();
        if (!in_.ended()) in_.stop("can't read this: an operator is expected");
        if (truth && !n.truth) in_.stop("a comparison is expected, such as liquidus < 1100 degC", n.column);
        if (!truth && n.truth) in_.stop("a number is expected here, not a comparison", n.column);
        if (!truth && n.lone_temperature) in_.stop("a temperature alone is no goal", n.column);
        return n;
    }

private:
    FormulaNode either() {
        return chain([this] { return both(); }, "or", Operation::either);
    }
    FormulaNode both() {
        return chain([this] { return comparison(); }, "and", Operation::both);
    }

    FormulaNode chain(const std::function<FormulaNode()>& next, const char* word, Operation operation) {
        FormulaNode left = next();
        while (in_.peek_word() == word) {
            const int column = in_.here();
            in_.skip(std::string_view(word).size());
            FormulaNode right = next();
            if (!left.truth || !right.truth) in_.stop(std::string("'") + word + "' joins two comparisons", column);
            left = joined(operation, column, std::move(left), std::move(right));
            left.truth = true;
        }
        return left;
    }

    FormulaNode comparison() {
        if (in_.peek_word() == "not") {
            const int column = in_.here();
            in_.skip(3);
            FormulaNode n = joined(Operation::opposite, column, nested([this] { return comparison(); }));
            if (!n.parts[0].truth) in_.stop("'not' needs a comparison", column);
            n.truth = true;
            return n;
        }
        if (auto words = word_test()) return *words;
        FormulaNode left = sum();
        const std::string sign = in_.comparison_sign();
        if (sign.empty()) return left;
        const int column = in_.here();
        in_.skip(sign.size());
        FormulaNode right = sum();
        check_comparable(left, right, column);
        FormulaNode n = joined(Operation::compare, column, std::move(left), std::move(right));
        n.word = sign == "=" ? "==" : sign;
        n.truth = true;
        return n;
    }

    void check_comparable(const FormulaNode& left, const FormulaNode& right, int column) const {
        if (left.truth || right.truth) in_.stop("two numbers are compared, not conditions", column);
        const auto lone = [](const FormulaNode& n) { return n.operation == Operation::name || n.lone_temperature; };
        if ((left.lone_temperature || right.lone_temperature) && !(lone(left) && lone(right)))
            in_.stop("a temperature in degC or degF is compared with a single property only; write differences in K",
                     column);
        require_same(left, right, column);
    }

    static std::string differ(const FormulaNode& a, const FormulaNode& b) {
        const auto bare = [](const FormulaNode& n) {
            return n.constant && n.parts.empty() && n.dimension.dimensionless();
        };
        if (!bare(a) && !bare(b))
            return "the two sides differ in kind: " + a.dimension.text() + " and " + b.dimension.text();
        const std::string number = trimmed(bare(a) ? a.number : b.number, 6);
        const Dimension& wanted = bare(a) ? b.dimension : a.dimension;
        if (wanted == base_dimension(Dimension::kelvin))
            return number + " what? " + number + " degC or " + number + " K";
        return number + " what? its unit is missing (the other side is in " + wanted.text() + ")";
    }

    void require_same(const FormulaNode& a, const FormulaNode& b, int column) const {
        if (!(a.dimension == b.dimension)) in_.stop(differ(a, b), column);
    }

    std::optional<FormulaNode> word_test() {
        const std::string field = in_.peek_word();
        if (field != "family" && field != "kind" && field != "slug" && field != "name") return std::nullopt;
        const int column = in_.here();
        in_.skip(field.size());
        const std::string sign = in_.comparison_sign();
        if (sign != "=" && sign != "==" && sign != "!=") in_.stop("'" + field + "' is compared with == or !=");
        in_.skip(sign.size());
        FormulaNode left;
        left.word = field;
        FormulaNode n = joined(Operation::word_test, column, std::move(left));
        n.word = sign == "!=" ? "!=" : "==";
        n.right_word = in_.quoted_or_plain_word();
        n.truth = true;
        return n;
    }

    FormulaNode sum() {
        FormulaNode left = product();
        for (in_.blanks(); in_.peek() == '+' || in_.peek() == '-'; in_.blanks()) {
            const bool plus = in_.peek() == '+';
            const int column = in_.here();
            in_.skip(1);
            FormulaNode right = product();
            check_number(left, column);
            check_number(right, column);
            require_same(left, right, column);
            left = joined(plus ? Operation::add : Operation::subtract, column, std::move(left), std::move(right));
            left.dimension = left.parts[0].dimension;
            fold(left);
        }
        return left;
    }

    FormulaNode product() {
        FormulaNode left = unary();
        for (in_.blanks(); (in_.peek() == '*' && !in_.ahead("**")) || in_.peek() == '/'; in_.blanks()) {
            const bool divide = in_.peek() == '/';
            const int column = in_.here();
            in_.skip(1);
            FormulaNode right = unary();
            check_number(left, column);
            check_number(right, column);
            if (divide && right.constant && right.number == 0) in_.stop("division by zero", column);
            const Dimension d = divide ? left.dimension / right.dimension : left.dimension * right.dimension;
            left = joined(divide ? Operation::divide : Operation::multiply, column, std::move(left), std::move(right));
            left.dimension = d;
            fold(left);
        }
        return left;
    }

    FormulaNode unary() {
        in_.blanks();
        if (in_.peek() == '+' || in_.peek() == '-') {
            const bool minus = in_.peek() == '-';
            const int column = in_.here();
            in_.skip(1);
            FormulaNode n = nested([this] { return unary(); });
            check_number(n, column);
            if (!minus) return n;
            const Dimension d = n.dimension;
            n = joined(Operation::negate, column, std::move(n));
            n.dimension = d;
            fold(n);
            return n;
        }
        return power();
    }

    FormulaNode power() {
        FormulaNode base = atom();
        in_.blanks();
        if (in_.peek() != '^' && !in_.ahead("**")) return base;
        const int column = in_.here();
        in_.skip(in_.peek() == '^' ? 1 : 2);
        FormulaNode exponent = nested([this] { return unary(); });
        check_number(base, column);
        check_number(exponent, column);
        if (!exponent.dimension.dimensionless()) in_.stop("an exponent has no unit", column);
        if (!base.dimension.dimensionless() && !exponent.constant)
            in_.stop("a property with a unit needs a fixed exponent", column);
        const Dimension d = base.dimension.power(exponent.constant ? exponent.number : 1);
        FormulaNode n = joined(Operation::power, column, std::move(base), std::move(exponent));
        n.dimension = d;
        fold(n);
        return n;
    }

    FormulaNode atom() {
        in_.blanks();
        const int column = in_.here();
        if (in_.peek() == '(') {
            in_.skip(1);
            FormulaNode n = nested([this] { return either(); });
            in_.blanks();
            if (in_.peek() != ')') in_.stop("')' is missing");
            in_.skip(1);
            return n;
        }
        if (is_digit(in_.peek()) || in_.peek() == '.') return literal();
        if (is_name_start(in_.peek())) return name_or_call();
        if (in_.ended()) in_.stop("something is missing at the end", column);
        in_.stop("can't read this: a number or a property is expected", column);
    }

    FormulaNode literal() {
        FormulaNode n;
        n.column = in_.here();
        n.constant = true;
        n.number = in_.number();
        const std::string unit = in_.unit_ahead();
        if (unit.empty()) return n;
        const Result<Unit> u = parse_unit(unit);
        if (!u) in_.stop(u.problem().text, in_.here() + u.problem().column - 1);
        in_.skip(unit.size());
        n.number = u->to_si(n.number);
        n.dimension = u->dimension;
        n.lone_temperature = u->offset != 0;
        return n;
    }

    FormulaNode name_or_call() {
        const int column = in_.here();
        const std::string name = in_.peek_word();
        in_.skip(name.size());
        in_.blanks();
        static constexpr std::array functions = {"abs", "min", "max", "sqrt", "log", "exp"};
        const bool is_function = std::find(functions.begin(), functions.end(), name) != functions.end();
        if (is_function && in_.peek() == '(') return function(name, column);
        if (is_function) in_.stop("'" + name + "' needs brackets");
        FormulaNode n;
        n.operation = Operation::name;
        n.column = column;
        n.dimension = dimension_of(name, column);
        const auto known = std::find(names_.begin(), names_.end(), name);
        n.name = static_cast<std::size_t>(known - names_.begin());
        if (known == names_.end()) names_.push_back(name);
        return n;
    }

    std::string meant(const std::string& name) const {
        std::vector<std::string> ids = {fall_time_name};
        for (const Property& p : dictionary_.properties)
            if (!p.is_text) ids.push_back(p.id);
        return did_you_mean(name, ids);
    }

    Dimension dimension_of(const std::string& name, int column) const {
        if (name == fall_time_name) {
            if (condition_) in_.stop("'" + name + "' is worked out for a goal, not for a condition", column);
            return base_dimension(Dimension::second);
        }
        const Property* property = dictionary_.property(name);
        if (!property) in_.stop("unknown name '" + name + "'" + meant(name), column);
        if (property->is_text) in_.stop("'" + name + "' is a word, not a number", column);
        return property->dimension;
    }

    FormulaNode function(const std::string& name, int column) {
        const bool two = name == "min" || name == "max";
        in_.skip(1);
        FormulaNode first = nested([this] { return sum(); });
        check_number(first, column);
        FormulaNode n = joined(Operation::call, column, std::move(first));
        n.word = name;
        in_.blanks();
        if (two) {
            if (in_.peek() != ',') in_.stop("'" + name + "' needs two numbers");
            in_.skip(1);
            FormulaNode second = nested([this] { return sum(); });
            check_number(second, column);
            require_same(n.parts[0], second, column);
            n.constant = n.parts[0].constant && second.constant;
            n.parts.push_back(std::move(second));
            in_.blanks();
        }
        if (in_.peek() != ')') in_.stop("')' is missing");
        in_.skip(1);
        const Dimension d = n.parts[0].dimension;
        if ((name == "log" || name == "exp") && !d.dimensionless())
            in_.stop("'" + name + "' needs a number without a unit", column);
        n.dimension = name == "sqrt" ? d.power(0.5) : d;
        fold(n);
        return n;
    }

    void check_number(const FormulaNode& n, int column) const {
        if (n.truth) in_.stop("a comparison can't be calculated with", column);
        if (n.lone_temperature)
            in_.stop("a temperature in degC or degF can't be calculated with; write differences in K", n.column);
    }

    template <class... Nodes> static FormulaNode joined(Operation operation, int column, Nodes... nodes) {
        FormulaNode n;
        n.operation = operation;
        n.column = column;
        n.constant = (nodes.constant && ...);
        (n.parts.push_back(std::move(nodes)), ...);
        return n;
    }

    static void fold(FormulaNode& n) {
        if (n.constant) n.number = number_of(n, {});
    }

    FormulaNode nested(const std::function<FormulaNode()>& inner) {
        if (++depth_ > deepest) in_.stop("nested too deeply");
        FormulaNode n = inner();
        --depth_;
        return n;
    }

    FormulaText in_;
    const Catalogue& dictionary_;
    std::vector<std::string>& names_;
    int depth_ = 0;
    bool condition_ = false;
};

} // namespace

Result<FormulaNode> read_formula(std::string_view text, const Catalogue& dictionary, FormulaKind kind,
                                 std::vector<std::string>& names) {
    try {
        return FormulaParser(text, dictionary, names).whole(kind == FormulaKind::condition);
    } catch (const FormulaFault& fault) {
        return fault.problem;
    }
}

} // namespace pourbook
