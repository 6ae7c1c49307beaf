#include "answers/writers/document_parts.hpp"

namespace pourbook {

Document document_of(const CompareResult& r, const DocumentSetting& setting) {
    Document out = start_document("Metals compared", r.conditions, setting);
    add_state(out, r.conditions);
    DataTable table{"Comparison", {}, {}};
    add_metal_columns(table);
    for (const Property* p : r.properties) table.columns.push_back(column_of(*p, setting.units));
    for (const ComparedMetal& row : r.rows) {
        table.rows.emplace_back();
        add_metal_cells(table.rows.back(), *row.metal);
        for (std::size_t i = 0; i < row.cells.size(); ++i)
            table.rows.back().push_back(cell_of(*r.properties[i], row.cells[i], setting.units));
    }
    out.parts.push_back(std::move(table));
    collect_sources(out, setting.catalogue);
    return out;
}

} // namespace pourbook
