// A tin's sizes in other measures. Within 5 %, on the ladders of inches and centimetres; what it holds on that of jugs.
#include "adapt/measures.hpp"

namespace qtn {
namespace {

class TinText {
 public:
  TinText(System system, Dialect dialect) : system_(system), dialect_(dialect), metric_(system == System::metric) {}

  std::string run(const TinSize& tin) {
    if (!tin.volume.is_lost()) {
      const Ladder ladder = ladder_for(Dimension::volume, system_, dialect_, false);
      return write(round_on(ladder, tin.volume, tolerance(Manner::plain), dialect_));
    }
    std::string text = sides(tin.across, tin.along);
    if (!tin.base_across.is_lost()) text += ", " + sides(tin.base_across, tin.base_along) + " at the base";
    if (!tin.hole.is_lost()) text += ", " + sides(tin.hole, Fraction::lost()) + " hole";
    if (!tin.deep.is_lost()) text += ", " + sides(tin.deep, Fraction::lost()) + " deep";
    return text;
  }

 private:
  std::string number(const Fraction& mm) const {
    const Rounded r = round_on(metric_ ? Ladder::centimetres : Ladder::inches, mm, tolerance(Manner::plain), dialect_);
    return write_number(r.shown / (metric_ ? Fraction(10) : size_of(common().inch, dialect_)), true, metric_);
  }
  std::string sides(const Fraction& one, const Fraction& other) const {
    return number(one) + (other.is_lost() ? "" : " x " + number(other)) + (metric_ ? " cm" : " in");
  }

  System system_;
  Dialect dialect_;
  bool metric_;
};

// "20 x 30 cm", "1.2 l": is the last unit written a metric one?
bool written_metric(std::string_view text) {
  return text.find("cm") != std::string_view::npos || text.find("mm") != std::string_view::npos ||
         text.find(" l") != std::string_view::npos || text.find("ml") != std::string_view::npos;
}

}  // namespace

std::string tin_in(const Recipe& recipe, const Tin& tin, System system) {
  if (system == System::written || written_metric(recipe.slice(tin.span)) == (system == System::metric)) return {};
  if (tin.size.across.is_lost() && tin.size.volume.is_lost()) return {};
  return TinText(system, reader_of(recipe, system, Dialect::unstated).dialect).run(tin.size);
}

}  // namespace qtn
