#include "recipe/history.hpp"

#include <algorithm>

#include "diag/nearest.hpp"
#include "recipe/logs.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

std::string amount_text(const Recipe& recipe, const std::optional<Quantity>& amount, Span span) {
  return amount ? std::string(recipe.slice(span)) : "none";
}

class Historian {
 public:
  Historian(const Recipe& recipe, Report& report) : recipe_(recipe), report_(report) {}

  std::optional<History> run(std::string_view asked) {
    if (!split(trim(asked)) || !find_line()) return std::nullopt;
    const std::vector<Index> order = newest_first(recipe_);
    History out;
    title(out);
    std::string amount = out.now, share = out.share;
    for (const Index i : order) {
      HistoryRow row{i, nullptr, amount, amount, share};
      for (const Change& change : recipe_.trials[i].changes)
        if (const Half half = half_of(change); half != Half::none) told(change, half, row);
      if (row.change != nullptr) found_ = true, amount = row.before, share = older(row.change->share);
      out.rows.push_back(std::move(row));
    }
    std::reverse(out.rows.begin(), out.rows.end());
    if (line_ == kNone && !found_) return unknown(), std::nullopt;
    return out;
  }

 private:
  enum class Half { none, all, went, came };  // of a replacement: what went, what came

  bool split(std::string_view asked) {
    if (asked.starts_with('[')) {
      const std::size_t shut = asked.find(']');
      const std::string_view part = shut == std::string_view::npos ? asked.substr(1) : asked.substr(1, shut - 1);
      part_ = part_named(recipe_, trim(part));
      if (part_ == kNone) {
        report_.add(Code::change_of_nothing, {}, "No part is called `" + std::string(trim(part)) + "`.");
        return false;
      }
      asked = shut == std::string_view::npos ? std::string_view() : trim(asked.substr(shut + 1));
    }
    name_ = asked;
    return true;
  }

  bool find_line() {
    const LineMatch match = lines_named(recipe_, part_, name_);
    if (match.lines.size() == 1) line_ = match.lines[0];
    if (match.lines.size() < 2) return true;
    report_.add(Code::change_of_several, {}, "`" + std::string(name_) + "` could be " + std::to_string(match.lines.size()) +
                                                 " lines; write the part in brackets in front: `[" +
                                                 std::string(recipe_.parts[recipe_.lines[match.lines[0]].part].name) + "] " + std::string(name_) + "`.");
    return false;
  }

  void title(History& out) const {
    if (line_ == kNone) {
      out.name = name_;
      out.now = is_verb_word(recipe_, name_) ? "" : "none";
      return;
    }
    const TakeLine& line = recipe_.lines[line_];
    out.name = line.name;
    if (recipe_.parts.size() > 1) out.name += ", in " + std::string(recipe_.parts[line.part].name);
    out.now = line.measured() && !line.amount_span.empty() ? std::string(recipe_.slice(line.amount_span)) : "no amount";
    if (const LineShare share = share_of_line(recipe_, line_); share.of != ShareOf::nothing)
      out.share = share_in_words(share.share) + " " + std::string(words_of(share.of));
  }

  bool is_name(std::string_view name) const { return fold_name(name) == fold_name(line_ == kNone ? name_ : recipe_.lines[line_].name); }

  Half half_of(const Change& change) const {
    if (part_ != kNone && !change.part.empty() && part_named(recipe_, change.part) != part_) return Half::none;
    const bool target = line_ != kNone && change.target.kind == TargetKind::line && change.target.index == line_;
    if (target) return change.replacement.empty() ? Half::all : Half::went;
    if (change.target.kind == TargetKind::line) return Half::none;  // of another line
    if (!change.replacement.empty() && is_name(change.replacement)) return Half::came;
    if (!is_name(change.name)) return Half::none;
    return change.replacement.empty() ? Half::all : Half::went;
  }

  void told(const Change& change, Half half, HistoryRow& row) const {
    row.change = &change;
    row.before = half == Half::came ? "none" : amount_text(recipe_, change.before, change.before_span);
    row.after = amount_text(recipe_, change.after, change.after_span);
    if (half == Half::went) row.after += " " + std::string(change.replacement);
    row.share = half == Half::all && change.share.of != ShareOf::nothing
                    ? shares_in_words(change.share) + " " + std::string(words_of(change.share.of)) : std::string();
  }

  static std::string older(const ChangeShare& share) {
    if (share.of == ShareOf::nothing || share.before.is_zero()) return {};
    return share_in_words(share.before) + " " + std::string(words_of(share.of));
  }

  void unknown() {
    std::vector<std::string_view> known;
    for (const TakeLine& line : recipe_.lines) known.push_back(line.name);
    for (const Log& log : recipe_.trials)
      for (const Change& change : log.changes) known.push_back(change.name);
    std::sort(known.begin(), known.end());
    known.erase(std::unique(known.begin(), known.end()), known.end());
    const auto near = nearest(name_, known);
    report_.add(Code::change_of_nothing, {}, "`" + std::string(name_) + "` stands neither in the list nor in the log." +
                                                 (near.empty() ? "" : " " + did_you_mean(near)));
  }

  const Recipe& recipe_;
  Report& report_;
  std::string_view name_;
  Index part_ = kNone, line_ = kNone;
  bool found_ = false;
};

}  // namespace

std::string_view words_of(ShareOf share) {
  constexpr std::string_view kWords[] = {"", "of the meat", "of the flour", "of the whole"};
  return kWords[static_cast<std::size_t>(share)];
}

std::optional<History> history_of(const Recipe& recipe, std::string_view name, Report& report) { return Historian(recipe, report).run(name); }

}  // namespace qtn
