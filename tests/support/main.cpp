#define CATCH_CONFIG_MAIN // version 3 brings its own main
#include <catch2/catch.hpp>
