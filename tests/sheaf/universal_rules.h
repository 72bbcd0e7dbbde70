#pragma once

#include <qpdf/QPDF.hh>
#include <string>
#include <vector>

// What of PDF/UA-1 (ISO 14289-1:2014) a program can check, read by libqpdf's own objects. The rules are from memory of
// that standard and of ISO 32000-1, whose clauses are named beside each; nobody opened them here.
namespace fretsheaf::test {

// Every place where a document breaks a rule, as a line of words; none for one that keeps them all.
std::vector<std::string> offences(QPDF& pdf);
std::vector<std::string> offences(const std::string& bytes);

// A document that only its bytes keep alive: `bytes` must outlive it.
void read(QPDF& pdf, const std::string& bytes);

}  // namespace fretsheaf::test
