#include "words/fold.hpp"
