#include "core/ranking/formula.hpp"

#include "core/quantity/unit.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <optional>

namespace pourbook {

enum class Operation {
    number,
    name,
    word_test,
    negate,
    add,
    subtract,
    multiply,
    divide,
    power,
    call,
    compare,
    both,
    either,
    opposite
};

struct FormulaNode {
    Operation operation = Operation::number;
    Dimension dimension;
    double number = 0;
    bool constant = false;
    bool lone_temperature = false; // a literal with an offset (degC, degF)
    bool truth = false;            // a condition, not a number
    std::size_t name = 0;          // index into names
    std::string word;              // function, comparison sign or word field
    std::string right_word;        // what a word field is compared with
    int column = 1;
    std::vector<FormulaNode> parts;
};

namespace {

constexpr std::size_t longest = 2000;
constexpr int deepest = 100;

bool is_name_start(char c) {
    return std::isalpha(static_cast<unsigned char>(c)) || c == '_';
}
bool is_name_part(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) || c == '_';
}
bool is_digit(char c) {
    return std::isdigit(static_cast<unsigned char>(c));
}

struct Failure {
    Problem problem;
};

bool compared(const std::string& sign, double a, double b) {
    if (sign == "<") return a < b;
    if (sign == "<=") return a <= b;
    if (sign == ">") return a > b;
    if (sign == ">=") return a >= b;
    return (sign == "!=") != (a == b);
}

/// Hands use() the node's arithmetic as a function of its parts.
template <class Use> auto with_call(const std::string& f, Use&& use) {
    if (f == "abs") return use([](double a, double) { return std::abs(a); });
    if (f == "sqrt") return use([](double a, double) { return std::sqrt(a); });
    if (f == "log") return use([](double a, double) { return std::log(a); });
    if (f == "exp") return use([](double a, double) { return std::exp(a); });
    if (f == "min") return use([](double a, double b) { return std::min(a, b); });
    return use([](double a, double b) { return std::max(a, b); });
}

template <class Use> auto with_arithmetic(const FormulaNode& n, Use&& use) {
    switch (n.operation) {
    case Operation::negate:
        return use([](double a, double) { return -a; });
    case Operation::add:
        return use([](double a, double b) { return a + b; });
    case Operation::subtract:
        return use([](double a, double b) { return a - b; });
    case Operation::multiply:
        return use([](double a, double b) { return a * b; });
    case Operation::divide:
        return use([](double a, double b) { return a / b; });
    case Operation::power:
        return use([](double a, double b) { return std::pow(a, b); });
    default:
        return with_call(n.word, use);
    }
}

bool is_number(const FormulaNode& n) {
    return n.operation == Operation::number || n.operation == Operation::word_test;
}

double number_of(const FormulaNode& n, const std::vector<double>& values) {
    if (n.operation == Operation::name) return values[n.name];
    if (is_number(n)) return n.number;
    const double a = number_of(n.parts[0], values), b = n.parts.size() > 1 ? number_of(n.parts[1], values) : 0;
    return with_arithmetic(n, [&](auto arithmetic) { return arithmetic(a, b); });
}

std::vector<double> numbers_of(const FormulaNode& n, const Columns& columns, std::size_t samples) {
    if (n.operation == Operation::name) return columns[n.name];
    if (is_number(n) || n.constant) return std::vector<double>(samples, n.number);
    std::vector<double> a = numbers_of(n.parts[0], columns, samples), b;
    if (n.parts.size() > 1) b = numbers_of(n.parts[1], columns, samples);
    return with_arithmetic(n, [&](auto arithmetic) {
        for (std::size_t s = 0; s < samples; ++s) a[s] = arithmetic(a[s], b.empty() ? 0 : b[s]);
        return std::move(a);
    });
}

std::string word_of(const Metal& metal, const std::string& field) {
    if (field == "family") return metal.family;
    if (field == "kind") return metal.kind;
    return field == "slug" ? metal.slug : metal.name;
}

bool truth_of(const FormulaNode& n, const std::vector<double>& values, const Metal& metal) {
    const auto part = [&](std::size_t i) { return truth_of(n.parts[i], values, metal); };
    switch (n.operation) {
    case Operation::both:
        return part(0) && part(1);
    case Operation::either:
        return part(0) || part(1);
    case Operation::opposite:
        return !part(0);
    case Operation::word_test:
        return (n.word == "!=") != (as_slug(word_of(metal, n.parts[0].word)) == as_slug(n.right_word));
    default:
        return compared(n.word, number_of(n.parts[0], values), number_of(n.parts[1], values));
    }
}

class Parser {
public:
    Parser(std::string_view text, const Catalogue& dictionary, std::vector<std::string>& names)
        : text_(text), dictionary_(dictionary), names_(names) {}

    FormulaNode whole(bool truth) {
        condition_ = truth;
        if (text_.size() > longest) stop("too long: at most 2000 characters", static_cast<int>(longest) + 1);
        blanks();
        if (at_ == text_.size()) stop("nothing to read: a formula is expected");
        FormulaNode n = either();
        blanks();
        if (at_ < text_.size()) stop("can't read this: an operator is expected");
        if (truth && !n.truth) stop("a comparison is expected, such as liquidus < 1100 degC", n.column);
        if (!truth && n.truth) stop("a number is expected here, not a comparison", n.column);
        if (!truth && n.lone_temperature) stop("a temperature alone is no goal", n.column);
        return n;
    }

private:
    [[noreturn]] void stop(const std::string& what, int column = 0) const {
        throw Failure{{Problem::Kind::unreadable, what, column ? column : static_cast<int>(at_) + 1}};
    }

    FormulaNode either() {
        return chain([this] { return both(); }, "or", Operation::either);
    }
    FormulaNode both() {
        return chain([this] { return comparison(); }, "and", Operation::both);
    }

    FormulaNode chain(const std::function<FormulaNode()>& next, const char* word, Operation operation) {
        FormulaNode left = next();
        while (peek_word() == word) {
            const int column = here();
            at_ += std::string_view(word).size();
            FormulaNode right = next();
            if (!left.truth || !right.truth) stop(std::string("'") + word + "' joins two comparisons", column);
            left = joined(operation, column, std::move(left), std::move(right));
            left.truth = true;
        }
        return left;
    }

    FormulaNode comparison() {
        if (peek_word() == "not") {
            const int column = here();
            at_ += 3;
            FormulaNode n = joined(Operation::opposite, column, nested([this] { return comparison(); }));
            if (!n.parts[0].truth) stop("'not' needs a comparison", column);
            n.truth = true;
            return n;
        }
        if (auto words = word_test()) return *words;
        FormulaNode left = sum();
        const std::string sign = comparison_sign();
        if (sign.empty()) return left;
        const int column = here();
        at_ += sign.size();
        FormulaNode right = sum();
        check_comparable(left, right, column);
        FormulaNode n = joined(Operation::compare, column, std::move(left), std::move(right));
        n.word = sign == "=" ? "==" : sign;
        n.truth = true;
        return n;
    }

    void check_comparable(const FormulaNode& left, const FormulaNode& right, int column) const {
        if (left.truth || right.truth) stop("two numbers are compared, not conditions", column);
        const auto lone = [](const FormulaNode& n) { return n.operation == Operation::name || n.lone_temperature; };
        if ((left.lone_temperature || right.lone_temperature) && !(lone(left) && lone(right)))
            stop("a temperature in degC or degF is compared with a single property only; write differences in K",
                 column);
        require_same(left, right, column);
    }

    void require_same(const FormulaNode& a, const FormulaNode& b, int column) const {
        if (!(a.dimension == b.dimension))
            stop("the two sides differ in kind: " + a.dimension.text() + " and " + b.dimension.text(), column);
    }

    std::optional<FormulaNode> word_test() {
        const std::string field = peek_word();
        if (field != "family" && field != "kind" && field != "slug" && field != "name") return std::nullopt;
        const int column = here();
        at_ += field.size();
        const std::string sign = comparison_sign();
        if (sign != "=" && sign != "==" && sign != "!=") stop("'" + field + "' is compared with == or !=");
        at_ += sign.size();
        FormulaNode left;
        left.word = field;
        FormulaNode n = joined(Operation::word_test, column, std::move(left));
        n.word = sign == "!=" ? "!=" : "==";
        n.right_word = quoted_or_words();
        n.truth = true;
        return n;
    }

    std::string quoted_or_words() {
        blanks();
        if (peek() == '"' || peek() == '\'') {
            const char mark = text_[at_++];
            const std::size_t end = text_.find(mark, at_);
            if (end == std::string_view::npos) stop("the closing quotation mark is missing");
            std::string word(text_.substr(at_, end - at_));
            at_ = end + 1;
            return word;
        }
        const std::size_t start = at_;
        while (is_name_part(peek()) || peek() == '-') ++at_;
        if (at_ == start) stop("a word is expected");
        return std::string(text_.substr(start, at_ - start));
    }

    FormulaNode sum() {
        FormulaNode left = product();
        for (blanks(); peek() == '+' || peek() == '-'; blanks()) {
            const bool plus = peek() == '+';
            const int column = here();
            ++at_;
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
        for (blanks(); (peek() == '*' && !ahead("**")) || peek() == '/'; blanks()) {
            const bool divide = peek() == '/';
            const int column = here();
            ++at_;
            FormulaNode right = unary();
            check_number(left, column);
            check_number(right, column);
            if (divide && right.constant && right.number == 0) stop("division by zero", column);
            const Dimension d = divide ? left.dimension / right.dimension : left.dimension * right.dimension;
            left = joined(divide ? Operation::divide : Operation::multiply, column, std::move(left), std::move(right));
            left.dimension = d;
            fold(left);
        }
        return left;
    }

    FormulaNode unary() {
        blanks();
        if (peek() == '+' || peek() == '-') {
            const bool minus = peek() == '-';
            const int column = here();
            ++at_;
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
        blanks();
        if (peek() != '^' && !ahead("**")) return base;
        const int column = here();
        at_ += peek() == '^' ? 1 : 2;
        FormulaNode exponent = nested([this] { return unary(); });
        check_number(base, column);
        check_number(exponent, column);
        if (!exponent.dimension.dimensionless()) stop("an exponent has no unit", column);
        if (!base.dimension.dimensionless() && !exponent.constant)
            stop("a property with a unit needs a fixed exponent", column);
        const Dimension d = base.dimension.power(exponent.constant ? exponent.number : 1);
        FormulaNode n = joined(Operation::power, column, std::move(base), std::move(exponent));
        n.dimension = d;
        fold(n);
        return n;
    }

    FormulaNode atom() {
        blanks();
        const int column = here();
        if (peek() == '(') {
            ++at_;
            FormulaNode n = nested([this] { return either(); });
            blanks();
            if (peek() != ')') stop("')' is missing");
            ++at_;
            return n;
        }
        if (is_digit(peek()) || peek() == '.') return literal();
        if (is_name_start(peek())) return name_or_call();
        if (at_ == text_.size()) stop("something is missing at the end", column);
        stop("can't read this: a number or a property is expected", column);
    }

    FormulaNode literal() {
        FormulaNode n;
        n.column = here();
        n.constant = true;
        std::string_view rest = text_.substr(at_);
        if (!take_number(rest, n.number)) stop("can't read this number");
        at_ = text_.size() - rest.size();
        const std::size_t behind = at_;
        blanks();
        const std::string unit = unit_run();
        if (unit.empty() || unit == "and" || unit == "or") {
            at_ = behind;
            return n;
        }
        const Result<Unit> u = parse_unit(unit);
        if (!u) stop(u.problem().text, here() + u.problem().column - 1);
        at_ += unit.size();
        n.number = u->to_si(n.number);
        n.dimension = u->dimension;
        n.lone_temperature = u->offset != 0;
        return n;
    }

    /// Characters that can belong to a unit, brackets only in balance.
    std::string unit_run() const {
        std::size_t end = at_;
        int open = 0;
        if (end >= text_.size() ||
            !(std::isalpha(static_cast<unsigned char>(text_[end])) || text_[end] == '%' || (text_[end] & 0x80)))
            return {};
        for (; end < text_.size(); ++end) {
            const char c = text_[end];
            if (c == '(') ++open;
            if (c == ')' && --open < 0) break;
            const bool fits = std::isalnum(static_cast<unsigned char>(c)) || (c & 0x80) ||
                              std::string_view("%./^()").find(c) != std::string_view::npos;
            if (!fits) break;
        }
        return std::string(text_.substr(at_, end - at_));
    }

    FormulaNode name_or_call() {
        const int column = here();
        const std::string name = peek_word();
        at_ += name.size();
        blanks();
        static constexpr std::array functions = {"abs", "min", "max", "sqrt", "log", "exp"};
        const bool is_function = std::find(functions.begin(), functions.end(), name) != functions.end();
        if (is_function && peek() == '(') return function(name, column);
        if (is_function) stop("'" + name + "' needs brackets");
        FormulaNode n;
        n.operation = Operation::name;
        n.column = column;
        n.dimension = dimension_of(name, column);
        const auto known = std::find(names_.begin(), names_.end(), name);
        n.name = static_cast<std::size_t>(known - names_.begin());
        if (known == names_.end()) names_.push_back(name);
        return n;
    }

    Dimension dimension_of(const std::string& name, int column) const {
        if (name == fall_time_name) {
            if (condition_) stop("'" + name + "' is worked out for a goal, not for a condition", column);
            return base_dimension(Dimension::second);
        }
        const Property* property = dictionary_.property(name);
        if (!property) stop("unknown name '" + name + "'", column);
        if (property->is_text) stop("'" + name + "' is a word, not a number", column);
        return property->dimension;
    }

    FormulaNode function(const std::string& name, int column) {
        const bool two = name == "min" || name == "max";
        ++at_;
        FormulaNode first = nested([this] { return sum(); });
        check_number(first, column);
        FormulaNode n = joined(Operation::call, column, std::move(first));
        n.word = name;
        blanks();
        if (two) {
            if (peek() != ',') stop("'" + name + "' needs two numbers");
            ++at_;
            FormulaNode second = nested([this] { return sum(); });
            check_number(second, column);
            require_same(n.parts[0], second, column);
            n.constant = n.parts[0].constant && second.constant;
            n.parts.push_back(std::move(second));
            blanks();
        }
        if (peek() != ')') stop("')' is missing");
        ++at_;
        const Dimension d = n.parts[0].dimension;
        if ((name == "log" || name == "exp") && !d.dimensionless())
            stop("'" + name + "' needs a number without a unit", column);
        n.dimension = name == "sqrt" ? d.power(0.5) : d;
        fold(n);
        return n;
    }

    void check_number(const FormulaNode& n, int column) const {
        if (n.truth) stop("a comparison can't be calculated with", column);
        if (n.lone_temperature)
            stop("a temperature in degC or degF can't be calculated with; write differences in K", n.column);
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
        if (++depth_ > deepest) stop("nested too deeply");
        FormulaNode n = inner();
        --depth_;
        return n;
    }

    void blanks() {
        while (at_ < text_.size() && std::isspace(static_cast<unsigned char>(text_[at_]))) ++at_;
    }
    char peek() const { return at_ < text_.size() ? text_[at_] : '\0'; }
    bool ahead(std::string_view what) const { return text_.substr(at_).starts_with(what); }
    int here() {
        blanks();
        return static_cast<int>(at_) + 1;
    }
    std::string peek_word() {
        blanks();
        std::size_t end = at_;
        if (end < text_.size() && is_name_start(text_[end]))
            while (end < text_.size() && is_name_part(text_[end])) ++end;
        return std::string(text_.substr(at_, end - at_));
    }
    std::string comparison_sign() {
        blanks();
        for (const char* sign : {"<=", ">=", "==", "!=", "<", ">", "="})
            if (ahead(sign)) return sign;
        return {};
    }

    std::string_view text_;
    const Catalogue& dictionary_;
    std::vector<std::string>& names_;
    std::size_t at_ = 0;
    int depth_ = 0;
    bool condition_ = false;
};

} // namespace

Result<Formula> Formula::parse(std::string_view text, const Catalogue& dictionary) {
    Formula f;
    f.text_ = std::string(text);
    try {
        f.root_ = std::make_shared<FormulaNode>(Parser(text, dictionary, f.names_).whole(false));
    } catch (const Failure& failure) {
        return failure.problem;
    }
    return f;
}

Dimension Formula::dimension() const {
    return root_->dimension;
}

double Formula::value(const std::vector<double>& values) const {
    const double x = number_of(*root_, values);
    return std::isfinite(x) ? x : no_number;
}

std::vector<double> Formula::values(const Columns& columns, std::size_t samples) const {
    std::vector<double> out = numbers_of(*root_, columns, samples);
    for (double& x : out)
        if (!std::isfinite(x)) x = no_number;
    return out;
}

Result<Condition> Condition::parse(std::string_view text, const Catalogue& dictionary) {
    Condition c;
    c.formula_.text_ = std::string(text);
    try {
        c.formula_.root_ = std::make_shared<FormulaNode>(Parser(text, dictionary, c.formula_.names_).whole(true));
    } catch (const Failure& failure) {
        return failure.problem;
    }
    return c;
}

bool Condition::holds(const std::vector<double>& values, const Metal& metal) const {
    return truth_of(*formula_.root_, values, metal);
}

} // namespace pourbook
