#include "measure/unit.hpp"
