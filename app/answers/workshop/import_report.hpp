// What an import did, or would do; what a mesh is.
#pragma once

#include "core/casting/shape.hpp"
#include "questions/workshop/import.hpp"

#include <string>

namespace pourbook {

std::string json_of_import(const ImportResult& result);
std::string text_of_import(const ImportResult& result);
std::string json_of_mesh(const casting::Solid& solid, const std::string& file);
std::string text_of_mesh(const casting::Solid& solid, const std::string& file);

} // namespace pourbook
