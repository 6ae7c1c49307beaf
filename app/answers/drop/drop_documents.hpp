// Answers about magnets, tubes and plates as documents.
#pragma once

#include "answers/writers/documents.hpp"
#include "questions/drop/against.hpp"
#include "questions/drop/design.hpp"
#include "questions/drop/drag.hpp"
#include "questions/drop/infer.hpp"
#include "questions/drop/measure.hpp"
#include "questions/drop/plate.hpp"

namespace pourbook {

Document document_of(const DropResult& result, const DocumentSetting& setting);
/// For programs the keys of drop for the first set-up, "against" with the same keys for the second, "comparison".
Document document_of(const AgainstResult& result, const DocumentSetting& setting);
Document document_of(const DragResult& result, const DocumentSetting& setting);
Document document_of(const InferResult& result, const DocumentSetting& setting);
Document document_of(const PlateResult& result, const DocumentSetting& setting);
/// Without readings the sheet to fill in.
Document document_of(const MeasureResult& result, const DocumentSetting& setting);
Document document_of(const DesignResult& result, const DocumentSetting& setting);

} // namespace pourbook
