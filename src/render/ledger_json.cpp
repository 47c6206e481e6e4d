// The table of ratios as JSON: each figure as it is printed, beside its exact value as a fraction ("200/3").
#include "render/json_text.hpp"
#include "render/ledger.hpp"

namespace qtn {
namespace {

class Writer {
 public:
  explicit Writer(std::string& out) : json_(out) {}

  void write(const Ledger& ledger) {
    json_.open('{');
    json_.member("title", std::string_view(ledger.title));
    json_.member("edition", std::string_view(ledger.edition));
    json_.key("tables");
    json_.open('[');
    for (const LedgerTable& one : ledger.tables) table(one);
    json_.close(']');
    json_.close('}');
    json_.end_line();
  }

 private:
  void figure(std::string_view key, const LedgerFigure& figure) {
    if (figure.exact.is_lost()) return;
    json_.key(key);
    json_.open('{');
    json_.member("text", std::string_view(figure.text));
    json_.member("exact", std::string_view(figure.exact.exact()));
    json_.close('}');
  }

  void words(std::string_view key, const std::vector<std::string>& list) {
    json_.key(key);
    json_.open('[');
    for (const std::string& one : list) json_.text(one);
    json_.close(']');
  }

  void row(const LedgerRow& row) {
    json_.open('{');
    json_.member("name", std::string_view(row.name));
    json_.member("taken", row.taken);
    figure("grams", row.grams);
    figure("ofBase", row.of_base);
    figure("ofWhole", row.of_whole);
    json_.close('}');
  }

  void total(const LedgerTotal& total) {
    json_.open('{');
    json_.member("name", std::string_view(total.name));
    figure("grams", total.grams);
    figure("ofFlour", total.of_flour);
    figure("ofWhole", total.of_whole);
    words("leftOut", total.left_out);
    json_.close('}');
  }

  void table(const LedgerTable& table) {
    json_.open('{');
    json_.member("title", std::string_view(table.title));
    json_.member("overall", table.overall);
    json_.member("base", std::string_view(table.base_name));
    json_.key("lines");
    json_.open('[');
    for (const LedgerRow& one : table.rows) row(one);
    json_.close(']');
    json_.key("together");
    row(table.together);
    json_.key("totals");
    json_.open('[');
    for (const LedgerTotal& one : table.totals) total(one);
    json_.close(']');
    words("notes", table.notes);
    json_.close('}');
  }

  JsonText json_;
};

}  // namespace

void render_ledger_json(const Ledger& ledger, std::string& out) {
  Writer(out).write(ledger);
}

}  // namespace qtn
