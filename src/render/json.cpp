// A card as JSON: the words as they are printed, beside the exact values as fractions ("9/4").
#include "measure/unit.hpp"
#include "render/json_text.hpp"
#include "render/layout.hpp"
#include "render/render.hpp"

namespace qtn {
namespace {

std::string_view key_of(std::uint16_t kind) {
  switch (static_cast<FactKind>(kind)) {
    case FactKind::makes:
      return "makes";
    case FactKind::serves:
      return "serves";
    case FactKind::tin:
      return "tin";
    case FactKind::oven:
      return "oven";
    case FactKind::keeps:
      return "keeps";
    case FactKind::ready:
      return "ready";
    case FactKind::needs:
      return "needs";
    case FactKind::scales:
      return "scales";
    case FactKind::batch:
      return "batch";
    case FactKind::source:
      return "source";
    case FactKind::by:
      return "by";
    case FactKind::date:
      return "date";
    case FactKind::tasted:
      return "tasted";
    case FactKind::edition:
      return "edition";
    case FactKind::serve:
      return "serve";
    case FactKind::contains:
      return "contains";
    case FactKind::contains_instead:
      return "containsInstead";
    case FactKind::see_label:
      return "readTheLabel";
    case FactKind::not_known:
      return "notKnown";
    case FactKind::checked:
      return "heatChecked";
    case FactKind::guests:
      return "guests";
    case FactKind::begin:
      return "begin";
    case FactKind::hands_on:
      return "handsOn";
    case FactKind::waiting:
      return "waiting";
    case FactKind::whole:
      return "inAll";
    case FactKind::proof:
      return "plan";
    case FactKind::time:
      return "time";
    case FactKind::measures:
      return "measures";
    case FactKind::comes:
      return "comes";
    case FactKind::wanted:
      return "wanted";
    case FactKind::order_by:
      return "orderBy";
    case FactKind::dishes:
      return "dishes";
    case FactKind::cost:
      return "cost";
    case FactKind::portion:
      return "portion";
    case FactKind::price:
      return "price";
  }
  return "other";
}

std::string_view key_of(Role role) {
  switch (role) {
    case Role::text:
      break;
    case Role::amount:
      return "amount";
    case Role::second:
      return "second";
    case Role::name:
      return "name";
    case Role::time:
      return "time";
    case Role::temperature:
      return "temperature";
    case Role::reading:
      return "reading";
    case Role::measure:
      return "measure";
    case Role::pieces:
      return "pieces";
    case Role::spent:
      return "spent";
    case Role::struck:
      return "struck";
  }
  return "text";
}

std::string_view key_of(StepKind kind) {
  switch (kind) {
    case StepKind::step:
      break;
    case StepKind::meanwhile:
      return "meanwhile";
    case StepKind::ahead:
      return "ahead";
    case StepKind::by_hand:
      return "by hand";
    case StepKind::by_machine:
      return "by machine";
    case StepKind::note:
      return "note";
    case StepKind::caution:
      return "caution";
  }
  return "step";
}

std::string_view key_of(AfterKind kind) {
  switch (kind) {
    case AfterKind::keep:
      return "keep";
    case AfterKind::freeze:
      return "freeze";
    case AfterKind::reheat:
      return "reheat";
    default:
      return "finish";
  }
}

std::string_view key_of(Remark::Kind kind) {
  switch (kind) {
    case Remark::Kind::caution:
      return "caution";
    case Remark::Kind::watch:
      return "watch";
    case Remark::Kind::lacking:
      return "lacking";
    case Remark::Kind::note:
      break;
  }
  return "note";
}

std::string_view key_of(Manner manner) {
  switch (manner) {
    case Manner::plain:
      break;
    case Manner::about:
      return "about";
    case Manner::exactly:
      return "exactly";
    case Manner::at_least:
      return "at least";
    case Manner::at_most:
      return "at most";
  }
  return "plain";
}

std::string_view key_of(Hour::Kind kind) {
  switch (kind) {
    case Hour::Kind::hands:
      return "hands";
    case Hour::Kind::watched:
      return "watched";
    case Hour::Kind::waits:
      return "waits";
    case Hour::Kind::serving:
      break;
  }
  return "serving";
}

class Record {
 public:
  Record(const Card& card, std::string& out) : card_(card), json_(out) {}

  void write() {
    json_.open('{');
    json_.member("title", words(card_.title));
    json_.member("edition", words(card_.edition));
    json_.member("language", card_.language);
    if (!card_.status.empty()) json_.member("status", card_.status);
    if (!card_.serving.wall.empty()) json_.member("serving", card_.serving.wall), json_.number("revision", card_.serving.revision);
    facts(card_.head);
    sections("parts", card_.parts);
    sections("after", card_.after);
    list("remarks", card_.remarks, [&](const Remark& remark) {
      json_.member("kind", key_of(remark.kind));
      json_.member("text", words(remark.runs));
    });
    list("trials", card_.trials, [&](const TrialLine& trial) {
      json_.member("date", words(trial.date));
      json_.member("text", words(trial.runs));
    });
    if (card_.allergens.said) allergens();
    if (!card_.columns.empty()) {
      list("records", card_.records, [&](const Entry& entry) { this->entry(entry); });
    }
    json_.close('}');
    json_.end_line();
  }

 private:
  void entry(const Entry& record) {
    for (std::size_t i = 0; i < card_.columns.size() && i < record.cells.size(); ++i) json_.member(card_.columns[i], record.cells[i]);
    list("for", record.of, [&](const auto& one) {
      json_.member("dish", one.first);
      json_.member("amount", one.second);
    });
  }

  std::string words(Range32 range) const {
    std::string text;
    for (const Run& run : runs_of(card_, range)) text += card_.view(run);
    return text;
  }

  // A list of objects; `members` writes what is in one.
  template <class List, class Members>
  void list(std::string_view key, const List& items, Members members) {
    json_.key(key);
    json_.open('[');
    for (const auto& item : items) {
      json_.open('{');
      members(item);
      json_.close('}');
    }
    json_.close(']');
  }

  void facts(Range32 range) {
    list("facts", facts_of(card_, range), [&](const Fact& fact) {
      json_.member("kind", key_of(fact.kind));
      json_.member("label", words(fact.label));
      json_.member("text", words(fact.value));
    });
  }

  void sections(std::string_view key, const std::vector<Section>& all) {
    list(key, all, [&](const Section& section) {
      if (section.kind != AfterKind::none) json_.member("kind", key_of(section.kind));
      json_.member("title", words(section.title));
      facts(section.facts);
      list("lines", rows_of(card_, section.rows), [&](const Row& row) { line(row); });
      list("steps", steps_of(card_, section.steps), [&](const CardStep& step) {
        json_.member("kind", key_of(step.kind));
        json_.member("label", words(step.label));
        json_.member("text", words(step.runs));
        runs(step.runs);
      });
      if (!section.grids.empty()) list("tables", grids_of(card_, section.grids), [&](const Grid& one) { grid(one); });
      if (!section.hours.empty()) list("hours", hours_of(card_, section.hours), [&](const Hour& one) { hour(one); });
    });
  }

  // A table: the heads of its columns, then its rows, cell by cell.
  void grid(const Grid& grid) {
    json_.key("columns");
    texts(grid.heads);
    if (grid.last_is_total) json_.member("total", true);
    json_.key("rows");
    json_.open('[');
    for (const std::vector<Range32>& row : grid.rows) texts(row);
    json_.close(']');
  }
  void texts(const std::vector<Range32>& cells) {
    json_.open('[');
    for (const Range32 cell : cells) json_.text(words(cell));
    json_.close(']');
  }

  // By both lists, whatever the head says.
  void allergens() {
    const auto words = [&](std::string_view key, const std::vector<std::string>& all) {
      json_.key(key);
      json_.open('[');
      for (const std::string& one : all) json_.text(one);
      json_.close(']');
    };
    const auto by_list = [&](std::string_view key, const AllergenWords& list) {
      json_.key(key);
      json_.open('{');
      words("contains", list.contains);
      words("readTheLabel", list.label);
      json_.close('}');
    };
    json_.key("allergens");
    json_.open('{');
    by_list("european", card_.allergens.european);
    by_list("american", card_.allergens.american);
    words("notKnown", card_.allergens.unknown);
    json_.close('}');
  }

  void hour(const Hour& hour) {
    json_.member("key", hour.key);
    json_.member("kind", key_of(hour.kind));
    json_.member("from", hour.from_wall);
    json_.member("until", hour.until_wall);
    if (!hour.from_utc.empty()) json_.member("fromUtc", hour.from_utc);
    if (!hour.until_utc.empty()) json_.member("untilUtc", hour.until_utc);
    json_.member("name", words(hour.name));
    json_.member("text", words(hour.words));
    json_.member("who", words(hour.who));
    json_.member("why", words(hour.why));
    json_.member("rough", hour.rough);
    if (hour.times > 1) {
      json_.number("times", hour.times);
      json_.number("everyMinutes", hour.every);
    }
  }

  void line(const Row& row) {
    json_.member("amount", words(row.amount));
    for (const Run& run : runs_of(card_, row.amount)) {
      if (run.exact != 0) {
        exact(run);
        break;
      }
    }
    json_.member("second", words(row.second));
    json_.member("name", words(row.name));
    json_.member("rest", words(row.rest));
    json_.member("alternative", row.alternative);
    json_.member("optional", row.optional);
    json_.member("rough", row.rough);
  }

  void runs(Range32 range) {
    list("runs", runs_of(card_, range), [&](const Run& run) {
      json_.member("role", key_of(run.role));
      json_.member("text", card_.view(run));
      if (run.style & kStrong) json_.member("strong", true);
      if (run.style & kEmphasis) json_.member("emphasis", true);
      if (run.style & kCode) json_.member("code", true);
      const std::string_view target = link_of(card_, run);
      if (!target.empty()) json_.member("link", target);
      if (run.exact != 0) exact(run);
    });
  }

  void exact(const Run& run) {
    if (run.exact >= card_.exacts.size()) return;
    const Quantity& quantity = card_.exacts[run.exact];
    if (quantity.is_lost()) return;
    json_.key("exact");
    json_.open('{');
    json_.member("low", quantity.low.exact());
    json_.member("high", quantity.high.exact());
    json_.member("unit", unit(quantity.unit).symbol);
    if (quantity.manner != Manner::plain) json_.member("manner", key_of(quantity.manner));
    if (quantity.fan) json_.member("fan", true);
    json_.close('}');
  }

  const Card& card_;
  JsonText json_;
};

}  // namespace

void render_json(const Card& card, std::string& out) {
  out.reserve(out.size() + 512 + 8 * card.text.size());
  Record(card, out).write();
}

}  // namespace qtn
