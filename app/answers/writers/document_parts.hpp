// Pieces that several documents share.
#pragma once

#include "answers/writers/documents.hpp"
#include "core/ranking/order.hpp"
#include "questions/say/shown_merit.hpp"
#include "questions/say/shown_money.hpp"

namespace pourbook {

/// Title, data version and date.
Document start_document(const std::string& title, const DocumentSetting& setting);
/// Title, conditions, data version and date.
Document start_document(const std::string& title, const Conditions& conditions, const DocumentSetting& setting,
                        double to_K = no_number);
/// Whether the answer is for a casting or for the handbook's metal: in JSON always, in words where it is a casting.
void add_state(Document& out, const Conditions& conditions);

/// The column of a property, and a figure in it.
DataColumn column_of(const Property& property, UnitSystem units);
/// A column of amounts: id "cost_eur", in EUR.
DataColumn money_column(const std::string& id, const std::string& title, const ShownCurrency& money);
DataCell cell_of(const Property& property, const Evaluated& value, UnitSystem units);
/// A missing value is told with its reason.
DataCell cell_of(const Property& property, const Result<Evaluated>& value, UnitSystem units);

/// What entered, as columns: those inputs that are properties of the metal (a magnet's figures are none), found by name
/// in each row.
std::vector<const Property*> input_properties(const std::vector<RankInput>& inputs, const Catalogue& catalogue);
void add_input_cells(std::vector<DataCell>& row, const std::vector<const Property*>& properties,
                     const std::vector<RankInput>& inputs, UnitSystem units);

/// A merit as it is shown.
class MeritCells {
public:
    MeritCells(const std::string& formula, const std::string& unit, const DocumentSetting& setting);
    /// median, 90 % low, 90 % high; ids start with `id`, titles with `title`.
    void add_columns(DataTable& table, const std::string& id, const std::string& title) const;
    void add_cells(std::vector<DataCell>& row, const Place& place) const;
    /// The median, 0, the lower end, 1, or the upper, 2, to the figures that the interval supports.
    DataCell cell(const Place& place, std::size_t which) const;
    std::string interval(const Place& place) const; // "1.65–1.71"; empty where none was worked out
    const std::string& unit() const { return shown_.unit(); }

private:
    ShownMerit shown_;
};

/// metal and name.
void add_metal_columns(DataTable& table);
void add_metal_cells(std::vector<DataCell>& row, const Metal& metal);

/// A table of metals that are left out, with the reason; people see none where the list is empty.
void add_left_out(Document& document, const std::string& title, const std::string& id, const std::vector<LeftOut>& list,
                  unsigned shown_in);

} // namespace pourbook
