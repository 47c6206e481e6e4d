#include "larder/food.hpp"
