// What is in a pot, thing by thing, by weight and by volume as far as each is known. Private to this room.
#pragma once
#include <vector>

#include "recipe/recipe.hpp"

namespace qtn {

inline Ends lost_ends() {
  return {Fraction::lost(), Fraction::lost()};
}
inline bool is_lost(const Ends& ends) {
  return ends.low.is_lost() || ends.high.is_lost();
}
inline Ends operator+(const Ends& a, const Ends& b) {
  return {a.low + b.low, a.high + b.high};
}
inline Ends operator*(const Ends& a, const Ends& b) {
  return {a.low * b.low, a.high * b.high};
}

// Weight and volume meet only through a density, so both are carried; each is lost when somebody did not give it.
struct Load {
  Ends grams, ml;
  const Ends& in(Dimension dimension) const { return dimension == Dimension::volume ? ml : grams; }
  Load times(const Ends& by) const { return {grams * by, ml * by}; }
};
inline Load operator+(const Load& a, const Load& b) {
  return {a.grams + b.grams, a.ml + b.ml};
}

struct Held {
  Target what;
  Load load;
  bool liquid = false;
  bool stirred_in = false;  // its weight went into a mixture whose make-up nobody knows
  Makeup makeup{};          // by share of its weight

  // Loses or gains water: what it holds may go along in proportion or stay.
  void drift(const Ends& by);
};

class PotLedger {
 public:
  void put(const Held& held);
  // How often raw meat or a cure has gone in.
  std::size_t cures_put() const { return cures_put_; }
  Load total() const;
  // Its weight is that of a mixture that nobody can take apart.
  bool mixed() const { return mixed_; }
  bool empty() const { return things_.empty() && !mixed_; }
  const std::vector<Held>& things() const { return things_; }

  void scale(const Ends& by);
  template <class Change>
  void change(Change change) {
    for (Held& held : things_) change(held);
  }
  template <class Match>
  bool scale_where(const Ends& by, Match match) {
    bool any = false;
    for (Held& held : things_)
      if (match(held)) held.drift(by), any = true;
    return any;
  }
  // The pot weighs (or measures) this from here on; what is in it keeps its proportions.
  void set(Dimension dimension, const Ends& amount);

  // Takes out what matches: all of it, or `share` of it, or so much in grams.
  template <class Match>
  std::vector<Held> take_where(Match match, const Ends& share) {
    std::vector<Held> taken;
    for (std::size_t i = 0; i < things_.size();) {
      if (!match(things_[i])) {
        ++i;
        continue;
      }
      taken.push_back(part_of(things_[i], share));
      if (share.low == Fraction(1))
        things_.erase(things_.begin() + static_cast<std::ptrdiff_t>(i));
      else
        ++i;
    }
    return taken;
  }
  std::vector<Held> take_all();
  // A thing that came of the mixture: the chicken fat.
  Held skim(const Target& what, const Load& load);

 private:
  Held part_of(Held& held, const Ends& share);

  std::vector<Held> things_;
  Load mix_;
  bool mixed_ = false;
  std::size_t cures_put_ = 0;
};

bool same_strength(std::string_view a, std::string_view b);
bool is_nitrite(std::string_view name);

}  // namespace qtn
