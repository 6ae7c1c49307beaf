// Tubes for a wish as a document.
#pragma once

#include "answers/writers/documents.hpp"
#include "questions/drop/design.hpp"

namespace pourbook {

Document document_of(const DesignResult& result, const DocumentSetting& setting);

} // namespace pourbook
