#include "questions/workshop/import.hpp"

#include "questions/workshop/keep.hpp"

namespace pourbook {
namespace {

constexpr std::size_t shown = 10, rows_between_reports = 20000;

class Import {
public:
    Import(const Catalogue& catalogue, const Kind& kind, RowSource& source, Batch& batch, const ImportWatch& watch)
        : catalogue_(catalogue), kind_(kind), source_(source), batch_(batch), watch_(watch) {}

    Result<ImportResult> run() {
        SourceRow row;
        for (;;) {
            const Result<bool> more = source_.next(row);
            if (!more) return more.problem();
            if (!*more) break;
            ++out_.rows;
            const Result<bool> done = take(row);
            if (!done) return done.problem();
            if (out_.rows % rows_between_reports == 0 && watch_.progress)
                watch_.progress(out_.rows, source_.share_read());
            if (watch_.cancelled && watch_.cancelled()) {
                out_.cancelled = true;
                break;
            }
        }
        out_.ignored_columns = source_.ignored_columns();
        return out_;
    }

private:
    Result<bool> take(SourceRow& row) {
        if (!row.fault.empty()) return reject(row.line, row.fault_column, row.fault);
        Result<Entry> fit = sound(catalogue_, kind_, std::move(row.entry));
        if (!fit) return reject(row.line, column_of(fit.problem()), fit.problem().text);
        const std::string title = out_.first.size() < shown ? title_of(kind_, *fit) : std::string();
        const Result<Put> put = batch_.put(kind_, std::move(*fit));
        if (!put && put.problem().kind == Problem::Kind::file) return put.problem();
        if (!put) return reject(row.line, "-", put.problem().text);
        ++(*put == Put::added ? out_.added : *put == Put::changed ? out_.changed : out_.unchanged);
        if (*put != Put::unchanged && !title.empty())
            out_.first.push_back((*put == Put::added ? "add " : "change ") + title);
        return true;
    }

    std::string column_of(const Problem& p) const {
        return p.column > 0 ? source_.column_of(static_cast<std::size_t>(p.column) - 1) : "-";
    }

    Result<bool> reject(int line, const std::string& column, const std::string& reason) {
        ++out_.rejected;
        if (watch_.rejected) watch_.rejected({line, column, reason});
        return true;
    }

    const Catalogue& catalogue_;
    const Kind& kind_;
    RowSource& source_;
    Batch& batch_;
    const ImportWatch& watch_;
    ImportResult out_;
};

} // namespace

Result<ImportResult> import_rows(const Catalogue& catalogue, Workshop& workshop, const Kind& kind, RowSource& source,
                                 bool dry_run, const std::string& words, const ImportWatch& watch) {
    const auto batch = workshop.begin(words);
    if (!batch) return batch.problem();
    Result<ImportResult> result = Import(catalogue, kind, source, **batch, watch).run();
    if (!result) return result;
    result->dry_run = dry_run;
    if (dry_run || result->cancelled || result->rejected > 0) return result;
    const Result<bool> done = (*batch)->commit();
    if (!done) return done.problem();
    result->written = result->added + result->changed > 0;
    return result;
}

} // namespace pourbook
