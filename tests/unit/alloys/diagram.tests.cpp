#include "core/alloys/diagram.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;

namespace {

/// A eutectic system with straight lines: A melts at 1000 K, B at 900 K, eutectic 800 K at 40 %.
Diagram eutectic() {
    Diagram d;
    d.a = "A";
    d.b = "B";
    d.fields.push_back({"(A)", "liquid", {{800, 10, 40}, {1000, 0, 0}}, {}, ""});
    d.fields.push_back({"liquid", "(B)", {{800, 40, 95}, {900, 100, 100}}, {}, ""});
    d.fields.push_back({"(A)", "(B)", {{300, 0, 100}, {800, 10, 95}}, {}, ""});
    return d;
}

std::string phases(const Diagram& d, double wt, double t) {
    const auto p = phases_at(d, wt, t);
    if (!p) return "none";
    std::string out;
    for (const PhaseShare& s : *p) out += (out.empty() ? "" : "+") + s.phase;
    return out;
}

} // namespace

TEST_CASE("phases of a eutectic system") {
    const Diagram d = eutectic();
    CHECK(phases(d, 20, 1000) == "liquid");
    CHECK(phases(d, 20, 850) == "(A)+liquid");
    CHECK(phases(d, 20, 790) == "(A)+(B)");
    CHECK(phases(d, 5, 810) == "(A)");
    CHECK(phases(d, 98, 790) == "(B)");
    CHECK(phases(d, 70, 810) == "liquid+(B)");
    CHECK(phases(d, 20, 250) == "none"); // below what is drawn
    CHECK(phases(d, 0, 500) == "(A)");
}

TEST_CASE("melting range by hand") {
    const auto m = melting_range(eutectic(), 20);
    REQUIRE(m);
    CHECK(m->liquidus_K == Approx(900)); // half-way down the line to 40 %
    CHECK(m->solidus_K == Approx(800));
    CHECK(m->first_solid == "(A)");
    const auto dilute = melting_range(eutectic(), 5);
    REQUIRE(dilute);
    CHECK(dilute->solidus_K == Approx(900));
    CHECK(dilute->liquidus_K == Approx(975));
    const auto pure = melting_range(eutectic(), 100);
    REQUIRE(pure);
    CHECK(pure->liquidus_K == Approx(900));
}

TEST_CASE("solubility on both sides, held at the ends") {
    const Diagram d = eutectic();
    CHECK(solubility(d, "A", 800)->wt == Approx(10));
    CHECK(solubility(d, "A", 550)->wt == Approx(5));
    CHECK(solubility(d, "B", 800)->wt == Approx(5));
    CHECK(solubility(d, "A", 5000)->wt == Approx(10));
    CHECK(solubility(d, "A", 800)->second_phase == "(B)");
    CHECK(solubility(d, "A", 800)->second_wt_solute == Approx(95));
    CHECK_FALSE(solubility(d, "C", 800));
}

TEST_CASE("a partial diagram refuses what is not drawn") {
    Diagram d;
    d.a = "A";
    d.b = "B";
    d.fields.push_back({"(A)", "liquid", {{800, 1, 8}, {1000, 0, 0}}, {}, ""});
    CHECK(melting_range(d, 3));
    const auto far = melting_range(d, 20);
    REQUIRE_FALSE(far);
    CHECK(far.problem().kind == Problem::Kind::out_of_range);
}

TEST_CASE("beyond the last field drawn only a pure metal's phase is named") {
    const Diagram* d = testing::real_catalogue().alloys.diagram("Cu", "Sn");
    REQUIRE(d);
    CHECK_FALSE(phases_at(*d, 60, 923)); // beta ends where its field on the right would begin, and that is not stored
    const auto copper = phases_at(*d, 2, 923);
    REQUIRE(copper);
    CHECK(copper->front().phase == "(Cu)");
}
