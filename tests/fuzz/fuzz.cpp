// Fuzz run under the address and undefined-behaviour sanitizers: seeded mutations of good inputs go through every
// reader of foreign text. Nothing may crash, hang or be undefined. An input that reaches code none before it reached
// becomes a starting point.
//   fuzz AMOUNT [READER|all [FROM [KEEP [SEED]]]]
// AMOUNT: rounds ("3000") or processor minutes ("10min") a reader. FROM/READER holds further starting points; with KEEP
// new ones are written to KEEP/READER and taken up again (tests/fuzz/campaign.sh).
#include "fuzz/readers.hpp"

#include <fcntl.h>
#include <sys/time.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <cstdint>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <random>

namespace fs = std::filesystem;
using pourbook::fuzz::Reader;

// Runs before the sanitizers are ready and must not count itself.
#define POURBOOK_BARE __attribute__((no_sanitize_coverage, no_sanitize("address,undefined")))

namespace {

bool reached[1 << 16];
bool new_code = false;
std::uintptr_t before = 0;

} // namespace

// Called by the compiler at each branch (-fsanitize-coverage=trace-pc).
extern "C" POURBOOK_BARE void __sanitizer_cov_trace_pc() {
    const auto here = reinterpret_cast<std::uintptr_t>(__builtin_return_address(0));
    bool& known = reached[(here ^ before) & 0xffff];
    before = here << 1;
    new_code = new_code || !known;
    known = true;
}

// Every fault ends in SIGABRT, where the input is saved.
extern "C" POURBOOK_BARE const char* __asan_default_options() {
    return "abort_on_error=1:handle_abort=0";
}
extern "C" POURBOOK_BARE const char* __ubsan_default_options() {
    return "abort_on_error=1:print_stacktrace=1";
}

namespace {

const std::string* current = nullptr;
std::string fault_file;
volatile std::sig_atomic_t stopped = 0;

void save_current(int) {
    if (!current) return;
    const int file = open(fault_file.c_str(), O_CREAT | O_TRUNC | O_WRONLY, 0644);
    const bool saved = write(file, current->data(), current->size()) >= 0;
    const std::string line =
        "failed: fuzz, the input " + std::string(saved ? "is" : "could not be saved as ") + " " + fault_file + "\n";
    if (write(2, line.data(), line.size()) < 0) return;
}

/// A reader that takes ten processor seconds counts as hung.
void read_within(const Reader& reader, const std::string& text) {
    const itimerval ten_seconds{{}, {10, 0}}, off{};
    current = &text;
    before = 0;
    setitimer(ITIMER_VIRTUAL, &ten_seconds, nullptr);
    reader.read(text);
    setitimer(ITIMER_VIRTUAL, &off, nullptr);
    current = nullptr;
}

std::string mutated(std::string text, const std::string& other, std::mt19937_64& random) {
    static const std::string pieces[] = {"(", ")",    "/",  "^", "-", "e999", "\"", "[",   "{",    "+",  ":", "x",  "@",
                                         "%", "\xff", "\0", "µ", "1", ".",    " ",  "and", "degC", "\n", ",", "nan"};
    for (std::size_t left = 1 + random() % 6; left > 0; --left) {
        const std::size_t at = text.empty() ? 0 : random() % text.size();
        switch (random() % 6) {
        case 0:
            text.insert(at, pieces[random() % std::size(pieces)]);
            break;
        case 1:
            if (!text.empty()) text.erase(at, 1 + random() % 4);
            break;
        case 2:
            if (!text.empty()) text[at] = static_cast<char>(random());
            break;
        case 3:
            text += text.substr(at, 1 + random() % 40);
            break;
        case 4:
            if (!other.empty()) text.insert(at, other, random() % other.size(), 1 + random() % 40);
            break;
        default:
            text.insert(at, std::string(1 + random() % 200, text.empty() ? '(' : text[at]));
            break;
        }
    }
    text.resize(std::min<std::size_t>(text.size(), 20000));
    return text;
}

/// Changes to the workshop's file, a third of them in its head; now and then it is cut.
std::string patched_further(std::string patches, const std::string& other, std::mt19937_64& random) {
    if (random() % 4 == 0) patches.resize(random() % (patches.size() / 4 + 1) * 4);
    if (random() % 4 == 0) patches += other;
    for (std::size_t left = 1 + random() % 8; left > 0; --left) {
        const std::size_t place =
            random() % 40 == 0 ? 0xff0000 + random() % 0xffff : random() % (random() % 3 ? 1 << 17 : 200);
        for (const std::size_t byte :
             {place >> 16, place >> 8, place, static_cast<std::size_t>(random() % 2 ? 1 << random() % 8 : random())})
            patches += static_cast<char>(byte);
    }
    patches.resize(std::min<std::size_t>(patches.size(), 256));
    return patches;
}

/// Starting points of one reader; those that reached new code are kept.
class Pool {
public:
    Pool(const Reader& reader, const std::string& from, const std::string& keep) : texts_(reader.good), keep_(keep) {
        for (const std::string& folder : {from, keep})
            if (!folder.empty() && fs::exists(fs::path(folder) / reader.name)) add_all(fs::path(folder) / reader.name);
        if (keep.empty()) return;
        keep_ /= reader.name;
        fs::create_directories(keep_);
    }
    const std::vector<std::string>& texts() const { return texts_; }
    const std::string& any(std::mt19937_64& random) const { return texts_[random() % texts_.size()]; }
    void add(const std::string& text) {
        texts_.push_back(text);
        if (!keep_.empty())
            std::ofstream(keep_ / std::to_string(std::hash<std::string>{}(text)), std::ios::binary) << text;
    }

private:
    void add_all(const fs::path& folder) {
        std::vector<fs::path> files{fs::directory_iterator(folder), {}};
        std::sort(files.begin(), files.end()); // the same run from the same seed
        for (const fs::path& file : files) {
            std::ifstream in(file, std::ios::binary);
            texts_.emplace_back(std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>());
        }
    }
    std::vector<std::string> texts_;
    fs::path keep_;
};

void run(const Reader& reader, double rounds, double seconds, Pool pool, std::mt19937_64& random) {
    fault_file = fs::temp_directory_path() / ("pourbook-fuzz-" + std::string(reader.name) + ".input");
    std::fill(std::begin(reached), std::end(reached), false);
    for (const std::string& text : pool.texts()) read_within(reader, text);
    const std::clock_t start = std::clock();
    const auto spent = [&] { return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC; };
    const auto mutate = reader.patches ? patched_further : mutated;
    long done = 0;
    for (; !stopped && static_cast<double>(done) < rounds && spent() < seconds; ++done) {
        const std::string text = mutate(pool.any(random), pool.any(random), random);
        new_code = false;
        read_within(reader, text);
        if (new_code) pool.add(text);
    }
    std::cout << reader.name << ": " << done << " inputs, " << spent() / 60 << " processor minutes, "
              << pool.texts().size() << " starting points, " << std::count(std::begin(reached), std::end(reached), true)
              << " branches\n";
}

} // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv + 1, argv + argc);
    const auto word = [&](std::size_t i, const char* otherwise) { return i < words.size() ? words[i] : otherwise; };
    const double amount = std::stod(word(0, "1000"));
    const bool minutes = word(0, "").find("min") != std::string::npos;
    std::mt19937_64 random(std::stoull(word(4, "20261125")));
    std::signal(SIGABRT, save_current);
    std::signal(SIGVTALRM, [](int) { std::abort(); });
    std::signal(SIGTERM, [](int) { stopped = 1; });
    bool any = false;
    for (const Reader& reader : pourbook::fuzz::readers()) {
        if (word(1, "all") != "all" && words[1] != reader.name) continue;
        any = true;
        run(reader, minutes ? 1e18 : std::max(amount / (reader.patches ? 100 : 1), 1.0), minutes ? 60 * amount : 1e18,
            Pool(reader, word(2, ""), word(3, "")), random);
    }
    std::cout << (any ? "passed: fuzz, nothing crashed\n" : "failed: fuzz, no such reader\n");
    return any ? 0 : 1;
}
