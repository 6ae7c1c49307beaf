#include "importers/mesh/read_stl.hpp"

#include "core/bits.hpp"
#include "core/quantity/number_text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <fstream>
#include <string_view>

namespace pourbook {
namespace {

using casting::Corner;
using casting::Mesh;
using casting::Triangle;

constexpr std::uint64_t head_bytes = 84;
constexpr std::uint64_t triangle_bytes = 50;

Problem unreadable_file(const std::string& name, const std::string& why) {
    return {Problem::Kind::unreadable, "'" + name + "': " + why, 0};
}

Problem stopped(const std::string& name) {
    return unreadable_file(name, "reading was stopped");
}

std::uint32_t little_endian(const char* bytes) {
    std::uint32_t out = 0;
    for (int i = 3; i >= 0; --i) out = (out << 8) | static_cast<unsigned char>(bytes[i]);
    return out;
}

Triangle triangle_at(const char* bytes) {
    Triangle t;
    const char* at = bytes + 12; // behind the normal
    for (Corner& c : t)
        for (float& x : c) {
            x = bits_as<float>(little_endian(at));
            at += 4;
        }
    return t;
}

Result<Mesh> read_binary(std::istream& in, const std::string& name, std::uint64_t count, const MeshProgress& progress) {
    Mesh mesh;
    mesh.name = name;
    mesh.triangles.reserve(count);
    constexpr std::uint64_t at_once = 8192;
    std::string block(at_once * triangle_bytes, '\0');
    in.seekg(static_cast<std::streamoff>(head_bytes));
    for (std::uint64_t done = 0; done < count;) {
        const std::uint64_t now = std::min(at_once, count - done);
        if (!in.read(block.data(), static_cast<std::streamsize>(now * triangle_bytes)))
            return unreadable_file(name, "the file ends before its last triangle");
        for (std::uint64_t i = 0; i < now; ++i)
            mesh.triangles.push_back(triangle_at(block.data() + i * triangle_bytes));
        done += now;
        if (progress && !progress(static_cast<double>(done) / static_cast<double>(count))) return stopped(name);
    }
    return mesh;
}

/// The next word of a line; moves the line behind it.
std::string_view next_word(std::string_view& line) {
    const std::size_t from = line.find_first_not_of(" \t\r");
    if (from == std::string_view::npos) {
        line = {};
        return {};
    }
    const std::size_t to = std::min(line.find_first_of(" \t\r", from), line.size());
    const std::string_view word = line.substr(from, to - from);
    line.remove_prefix(to);
    return word;
}

bool read_corner(std::string_view rest, Corner& corner) {
    for (float& x : corner) {
        std::string_view word = next_word(rest);
        if (!word.empty() && word.front() == '+') word.remove_prefix(1);
        double number = 0;
        if (!take_decimal(word, number) || !word.empty()) return false;
        x = static_cast<float>(number);
        if (!std::isfinite(x)) return false;
    }
    return next_word(rest).empty();
}

class TextReader {
public:
    TextReader(std::istream& in, const std::string& name, std::uint64_t bytes, const MeshProgress& progress)
        : in_(in), name_(name), bytes_(std::max<std::uint64_t>(bytes, 1)), progress_(progress) {
        mesh_.name = name;
    }

    Result<Mesh> run() {
        std::string line;
        while (std::getline(in_, line)) {
            ++number_;
            read_ += line.size() + 1;
            if (const std::string fault = take(line); !fault.empty())
                return unreadable_file(name_, "line " + std::to_string(number_) + ": " + fault);
            if (!go_on()) return stopped(name_);
        }
        if (corners_ != 0 || !ended_)
            return unreadable_file(name_, "the file ends in the middle, behind line " + std::to_string(number_));
        return std::move(mesh_);
    }

private:
    std::string take(std::string_view line) {
        const std::string_view word = next_word(line);
        if (word == "vertex") {
            if (corners_ == 3) return "a triangle with more than three corners";
            if (!read_corner(line, triangle_[corners_])) return "three numbers are expected behind 'vertex'";
            ++corners_;
        } else if (word == "endfacet") {
            if (corners_ != 3) return "a triangle with " + std::to_string(corners_) + " corners";
            mesh_.triangles.push_back(triangle_);
            corners_ = 0;
        } else if (word == "endsolid") {
            ended_ = true;
        } else if (word == "solid") {
            ended_ = false;
        } else if (!word.empty() && word != "facet" && word != "outer" && word != "endloop") {
            return "'" + std::string(word.substr(0, 20)) + "' is no word of an STL file";
        }
        return {};
    }
    bool go_on() {
        const double share = static_cast<double>(read_) / static_cast<double>(bytes_);
        if (!progress_ || share < next_report_) return true;
        next_report_ = share + 0.01;
        return progress_(std::min(share, 1.0));
    }

    std::istream& in_;
    const std::string& name_;
    std::uint64_t bytes_, read_ = 0, number_ = 0;
    const MeshProgress& progress_;
    double next_report_ = 0;
    Mesh mesh_;
    Triangle triangle_{};
    std::size_t corners_ = 0;
    bool ended_ = false;
};

} // namespace

Result<Mesh> read_stl(std::istream& in, const std::string& name, const MeshProgress& progress) {
    in.seekg(0, std::ios::end);
    const auto end = in.tellg();
    if (end <= 0) return unreadable_file(name, "the file is empty");
    const auto bytes = static_cast<std::uint64_t>(end);
    in.seekg(0);
    std::array<char, head_bytes> head{};
    in.read(head.data(), static_cast<std::streamsize>(std::min<std::uint64_t>(bytes, head_bytes)));
    in.clear();
    in.seekg(0);
    const std::uint64_t count = little_endian(head.data() + 80);
    if (bytes >= head_bytes && bytes == head_bytes + count * triangle_bytes)
        return read_binary(in, name, count, progress);
    if (std::string_view(head.data(), 5) == "solid") return TextReader(in, name, bytes, progress).run();
    if (bytes < head_bytes) return unreadable_file(name, "neither a text nor a binary STL file (too short)");
    return unreadable_file(name, "not a sound binary STL file: it announces " + std::to_string(count) + " triangles (" +
                                     std::to_string(head_bytes + count * triangle_bytes) + " bytes) and has " +
                                     std::to_string(bytes) + " bytes");
}

Result<Mesh> read_stl_file(const std::string& path, const MeshProgress& progress) {
    std::ifstream in(path, std::ios::binary);
    if (!in) return unreadable_file(path, "can't be opened: is the name right?");
    return read_stl(in, path, progress);
}

} // namespace pourbook
