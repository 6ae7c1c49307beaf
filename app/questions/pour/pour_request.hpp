// What is asked of Pour, and the table of its fields: where a new one is declared, named, read and placed in the
// window.
#pragma once

#include "core/casting/limits.hpp"
#include "core/casting/mesh.hpp"
#include "core/casting/pattern.hpp"
#include "core/materials/names.hpp"
#include "questions/metals/conditions.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace pourbook {

/// What the person's own file says of such a pour (questions/workshop/own_pour.hpp).
struct OwnPour {
    std::vector<casting::OwnLength> lengths; // of castings of this metal in this mould
    std::size_t castings = 0;                // they come from
    std::vector<double> yields;              // casting over charge
    struct Lot {
        std::string name;
        double kg = 0;
        double usd_per_kg = no_number; // paid; NaN: not said
        std::string bought;
    };
    std::vector<Lot> lots;    // of this metal
    std::string lots_source;  // the reference's key for what they cost
    bool keeps_stock = false; // lots of whatever metal are kept
};

struct PourRequest {
    std::string metal;
    std::vector<std::string> parts;     // in words
    std::optional<double> stl_unit_m;   // of a mesh; else millimetres
    std::vector<casting::Piece> pieces; // the parts, shape and solid filled (see pour_request_from)
    std::string process = "shell";      // shell | sand | plaster | permanent
    Conditions conditions;
    std::optional<double> superheat_K;
    std::optional<double> mould_K;   // preheat; else the printed range
    double stock_m = 0;              // machining allowance on a face
    std::optional<double> clear_m;   // what has to pass the bore
    std::optional<double> melt_loss; // fraction; else the printed one
    std::optional<double> yield;     // the founder's rule instead of gating, feeder, loss and heel
    std::optional<double> gating_kg; // sprue, runner and cup of one casting; else the printed share
    double heel_kg = 0;
    bool no_feeder = false;
    std::optional<double> shell_wall_m; // else the printed thickness
    std::uint64_t count = 1;            // castings wanted
    std::optional<double> sprue_height_m;
    std::optional<double> sprue_foot_m; // diameter
    std::optional<double> power_W;
    std::optional<double> efficiency; // of the furnace
    double start_K = room_temperature_K;
    std::vector<std::string> part_remarks; // on how the part was read; shown with the cautions
    bool acknowledge_hazard = false;
    casting::Workshop workshop;
    bool own_trials = true, own_stock = true; // whether they count
    OwnPour own;
};

/// Reads an STL file.
using MeshReader = std::function<Result<casting::Mesh>(const std::string&)>;

/// Errors: unreadable, naming the field ("--superheat '9 apples': ..."); those of the mesh.
Result<PourRequest> pour_request_from(const Stated& stated, const MeshReader& read_mesh, const Catalogue& catalogue);

/// Readers of the fields that are no plain quantity.
Fault read_part(PourRequest& request, const std::string& text, const Catalogue& catalogue);
Fault read_sprue(PourRequest& request, const std::string& text, const Catalogue& catalogue);
Fault read_own_trials_of_pour(PourRequest& request, const std::string& text, const Catalogue& catalogue);
Fault read_own_stock(PourRequest& request, const std::string& text, const Catalogue& catalogue);
Fault read_stl_unit(PourRequest& request, const std::string& text, const Catalogue& catalogue);

inline const QuestionOf<PourRequest>& pour_question() {
    using namespace input;
    using R = PourRequest;
    using W = casting::Workshop;
    static const auto own = [](auto member) {
        return [member](R & r) -> auto& {
            return r.workshop.*member;
        };
    };
    static const std::string practice = "printed practice";
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("pour", "from a metal and a part to a casting plan on one page");
        q.place("Casting");
        q.add(needed(by_place(metal("metal", "the metal to cast"))), &R::metal);
        q.add_read(needed(many(words("part",
                                     "tube:BORE:OUTSIDE:LENGTH | bar:DxL | plate:LxWxT | cone:D1:D2:L | sphere:D | "
                                     "ring:OUTSIDE:BORE:L | stl:FILE; repeat to add",
                                     "tube:18mm:24mm:400mm"))),
                   read_part);
        q.add_read(words("stl-unit", "unit of an STL file: mm, cm, m or in", "in", "mm", "unit of STL"), read_stl_unit);
        q.add(whole_number("count", "castings wanted", "1", 1, 10000), &R::count);
        q.add(choice("process", "ceramic shell, sand, plaster investment, or a permanent metal mould", process_names,
                     "mould"),
              &R::process);
        q.add(quantity("stock", "m", "machining stock on each face", "1mm", "none", "machining stock"), &R::stock_m);
        q.add(quantity("clear", "m", "diameter that must pass the finished bore (the magnet's)", "15mm", "nothing",
                       "must clear"),
              &R::clear_m);
        q.add(difference("superheat", "above the liquidus", "80K", practice), &R::superheat_K);
        q.add(
            quantity("mould-temperature", "K", "temperature of the mould at the pour", "650degC", practice, "mould at"),
            &R::mould_K);
        q.add(quantity("shell-wall", "m", "thickness of a ceramic shell", "9mm", practice), &R::shell_wall_m);
        q.add_read(words("sprue", "HEIGHT:FOOT, for speed and time of filling", "200mm:12mm", "not given"), read_sprue);
        q.add(quantity("gating", "kg", "metal in sprue, runner and cup of one casting", "150g", practice,
                       "sprue and cup"),
              &R::gating_kg);
        q.add(flag("no-feeder", "plan without a feeder", "without a feeder"), &R::no_feeder);
        q.add(quantity("melt-loss", "%", "share of the charge lost in melting", "3%", practice), &R::melt_loss);
        q.add(quantity("heel", "kg", "metal that stays in the crucible", "100g", "none"), &R::heel_kg);
        q.add(quantity("yield", "%", "casting over charge, instead of gating, feeder, loss and heel", "50%",
                       "worked out"),
              &R::yield);
        q.add(
            quantity("start", "K", "temperature of the charge at the start", "300degC", "20 degC", "charge starts at"),
            &R::start_K);
        for (const char* name : {"condition", "price-form"}) q.add_one(conditions_question(), name, &R::conditions);
        q.place("Your workshop");
        q.add(quantity("power", "W", "power of an electric furnace", "2kW", "your workshop's, or not given",
                       "furnace power"),
              &R::power_W);
        q.add(quantity("efficiency", "%", "share of the furnace's heat that ends in the charge", "30%", practice),
              &R::efficiency);
        q.add(quantity("furnace-max", "K", "highest temperature of your furnace", "1150degC",
                       "your workshop's, or no limit", "furnace up to"),
              own(&W::furnace_maximum_K));
        q.add(words("crucible", "graphite, clay-graphite, silicon carbide, alumina, fused silica ...", "",
                    "your workshop's, or not said"),
              own(&W::crucible_material));
        q.add(quantity("crucible-volume", "m3", "melt your crucible holds", "500cm3", "your workshop's, or not said",
                       "crucible holds"),
              own(&W::crucible_volume_m3));
        q.add(words("mould", "your mould: fused silica, gypsum investment ...", "", "your workshop's, or not said",
                    "mould material"),
              own(&W::mould_material));
        q.add(quantity("mould-max", "K", "highest temperature your mould stands", "870degC",
                       "your workshop's, or no limit", "mould up to"),
              own(&W::mould_maximum_K));
        q.add(quantity("lift-max", "kg", "what one person lifts, crucible and metal", "10kg",
                       "your workshop's, or no limit", "one person lifts"),
              own(&W::lift_maximum_kg));
        q.add_read(choice("own-trials", "whether castings you measured decide pattern and yield", {"on", "off"}),
                   read_own_trials_of_pour);
        q.add_read(choice("own-stock", "whether the lots on your shelf count", {"on", "off"}), read_own_stock);
        q.add(flag("acknowledge-hazard", "lead or magnesium: you are equipped for it",
                   "lead or magnesium: I am equipped"),
              &R::acknowledge_hazard);
        return q;
    }();
    return question;
}

} // namespace pourbook
