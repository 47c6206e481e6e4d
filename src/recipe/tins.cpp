#include "recipe/tins.hpp"

#include "words/lexicon.hpp"

namespace qtn {
namespace {

TinShape shape_named(std::string_view word) {
  if (word == "round" || word == "springform" || word == "sandwich" || word == "flan") return TinShape::round;
  if (word == "hole" || word == "holes" || word == "muffin" || word == "bun" || word == "patty") return TinShape::round;
  if (word == "square") return TinShape::square;
  if (word == "ring") return TinShape::ring;
  if (word == "oval") return TinShape::oval;
  return TinShape::other;
}

constexpr int kTins = 6;  // nobody fills more of one tin for one recipe

class TinReader {
 public:
  TinReader(Reading& in) : in_(in) {}

  std::optional<Tin> run(View value) {
    tin_.span = value.span();
    for (View one : value) {
      if (one.kind() == Kind::word) tin_.span.begin = one.span().end + 1;  // behind "tin:"
      else part(one);
    }
    if (TinShape& shape = tin_.size.shape; !tin_.size.along.is_lost() && (shape == TinShape::none || shape == TinShape::other)) shape = TinShape::rectangle;  // a loaf, a tray
    if (damaged_ || !sized_) return std::nullopt;
    return sound() ? std::optional<Tin>(tin_) : std::nullopt;
  }

 private:
  struct Sides {
    Fraction across = Fraction::lost(), along = Fraction::lost();
    Dimension dimension = Dimension::length;
  };

  void part(View one) {
    TinSize& size = tin_.size;
    if (one.kind() == Kind::tin_count) size.count = read_number(in_, *one.begin());
    if (one.kind() == Kind::shape) size.shape = shape_named(Lexicon::standard().row(one.value()).text);
    if (one.kind() == Kind::deep) size.deep = sides(one, {Dimension::length}, "how deep a tin is wants").across;
    if (one.kind() == Kind::tin_hole) size.hole = sides(one, {Dimension::length}, "the hole of a ring wants").across;
    if (one.kind() == Kind::tin_base) {
      const Sides base = sides(one, {Dimension::length}, "the base of a tin wants");
      size.base_across = base.across, size.base_along = base.along;
    }
    if (one.kind() != Kind::tin_size) return;
    const Sides top = sides(one, {Dimension::length, Dimension::volume}, "the size of a tin wants");
    sized_ = !top.across.is_lost();
    if (top.dimension == Dimension::volume) size.volume = top.across;
    else size.across = top.across, size.along = top.along;
  }

  // "20 x 30 cm": the last unit serves both.
  Sides sides(View of, std::initializer_list<Dimension> wanted, std::string_view where) {
    Sides out;
    Fraction* const numbers[] = {&out.across, &out.along};
    std::size_t count = 0;
    UnitId unit = kNoUnit;
    for (View token : of) {
      if (token.kind() == Kind::number && count < 2) *numbers[count++] = read_number(in_, token);
      if (token.kind() == Kind::unit) unit = Lexicon::standard().row(token.value()).unit;
      if (token.kind() == Kind::inch_word) unit = common().inch;
    }
    const Quantity found{out.across, out.across, unit, Manner::plain, false};
    if (count == 0 || !expect_dimension(in_, found, of.span(), wanted, where)) return damaged_ = true, out;
    out.dimension = found.dimension();
    const Fraction size = size_of(unit, in_.dialect);
    out.across *= size, out.along *= size;
    return out;
  }

  // A tin of nothing holds nothing, and a base wider than the top or a hole wider than the ring is a slip.
  bool sound() {
    const TinSize& size = tin_.size;
    for (const Fraction* one : {&size.count, &size.across, &size.along, &size.base_across, &size.base_along, &size.hole, &size.deep, &size.volume})
      if (one->is_zero()) return refuse("A tin with a side of 0 holds nothing.", "sizes above 0");
    if (size.volume.is_lost() && size.shape == TinShape::none && size.along.is_lost() && !size.across.is_lost())
      return refuse("This tin has one width and no shape.", "its shape behind the size: `23 cm round`, `23 cm square`");
    // "20 x 30 x 5 cm": three sides, not twenty tins.
    if (size.count > Fraction(kTins) && !size.along.is_lost() && size.shape == TinShape::rectangle)
      return refuse("This reads as " + size.count.exact() + " tins.", "two sides, then how deep it is: `20 x 30 cm, 5 cm deep`");
    if (size.base_across > size.across || size.base_along > size.along)
      return refuse("This tin is wider at the base than at the top.", "the top first, then the base: `21 x 11 cm, 19 x 9 cm at the base`");
    if (!size.hole.is_lost() && !(size.hole < size.across))
      return refuse("The hole of this ring is as wide as the ring.", "the width of the whole ring, then that of its hole");
    return true;
  }

  bool refuse(std::string message, std::string expected) {
    in_.report.add(Code::tin_without_room, tin_.span, std::move(message)).expect(std::move(expected));
    return false;
  }

  Reading& in_;
  Tin tin_;
  bool sized_ = false, damaged_ = false;
};

}  // namespace

std::optional<Tin> read_tin(Reading& in, View value) { return TinReader(in).run(value); }

}  // namespace qtn
