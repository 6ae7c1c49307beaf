// Benchmark, not a test: ranks invented metals and prints seconds of processor time. Run by rank.py and growth.py.
#include "questions/rank/rank.hpp"

#include "support/many_metals.hpp"

#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>

using namespace pourbook;

namespace {

double now_s() {
    return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

double peak_memory_MB() {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);)
        if (line.rfind("VmHWM:", 0) == 0) return std::atof(line.c_str() + 6) / 1024;
    return 0;
}

} // namespace

int main(int, char** argv) {
    const auto metals = static_cast<std::size_t>(std::atol(argv[1]));
    const Catalogue catalogue = testing::many_metals(metals);
    std::printf("catalogue_MB %.0f\n", peak_memory_MB());
    for (const std::size_t samples : {std::size_t{0}, std::size_t{1000}}) {
        RankRequest request;
        request.goal.formula = "conductivity / (density * price)";
        request.samples = samples;
        const double start = now_s();
        const Result<RankResult> result = rank(catalogue, request);
        std::printf("rank_%zu %.4f\npeak_MB %.0f\n", samples, now_s() - start, peak_memory_MB());
        if (!result || result->ranked.size() != metals) return 1;
    }
    if (metals > 100000) return 0;
    // One sweep over the memory that the samples would take, had they all been kept: read and write. Up to 0.8 GB.
    std::vector<double> memory(metals * 1000, 1.0);
    const double start = now_s();
    for (double& x : memory) x *= 1.0000001;
    std::printf("sweep %.4f\nsum %g\n", now_s() - start, memory[metals]);
    return 0;
}
