#pragma once

#include <string>

// What is installed beside the program, written from the table of help: src/command/pages/ holds it, and a test
// compares (tests/run --update-golden writes it anew).
namespace fretsheaf::test {

std::string man_page();
std::string bash_completion();
std::string zsh_completion();
std::string fish_completion();

}  // namespace fretsheaf::test
