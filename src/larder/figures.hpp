// Reads the figures of data/foods.txt, data/forms.txt and data/eggs.txt: what is published, turned into one exact number. Private to
// this room.
#pragma once
#include <string_view>

#include "larder/food.hpp"

namespace qtn {

// "12.5", and nothing behind it; lost for anything else, an empty cell too.
Fraction plain_number(std::string_view cell);
// "USDA SR28 20081: 1 cup = 125 g" or "from memory: 0.60 g per ml", in grams per millilitre; ounces are exact.
Figure density_figure(std::string_view cell);
// "USDA SR28 09302: 10 raspberries = 19 g", in grams of one.
Figure each_figure(std::string_view cell);
// "band 53 to 63 g in shell ..." or "... = 50 g ...", in grams of one without shell.
Figure egg_figure(std::string_view cell);

}  // namespace qtn
