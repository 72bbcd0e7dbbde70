#include "words/table.h"

namespace fretsheaf::words {
namespace {

constexpr Table by_word = table({
    {Word::number, "N. {n}"},
    {Word::key, "Tonalità"},
    {Word::meter, "Metro"},
    {Word::tuning, "Accordatura"},
    {Word::capo, "Capotasto"},
    {Word::capo_at, "tasto {n}"},
    {Word::name, "Nome"},
    {Word::date, "Data"},
    {Word::link_hint, "scansiona o fai clic"},
    {Word::key_major, "{tonic} maggiore"},
    {Word::key_minor, "{tonic} minore"},
    {Word::key_dorian, "{tonic} dorico"},
    {Word::key_phrygian, "{tonic} frigio"},
    {Word::key_lydian, "{tonic} lidio"},
    {Word::key_mixolydian, "{tonic} misolidio"},
    {Word::key_locrian, "{tonic} locrio"},
    {Word::example, "Esempio {n}"},
    {Word::example_caps, "ESEMPIO {n}"},
    {Word::straight_eighths, "ottavi regolari"},
    {Word::straight_sixteenths, "sedicesimi regolari"},
    {Word::swing, "swing"},
    {Word::swing_sixteenths, "sedicesimi swing"},
    {Word::shuffle, "shuffle"},
    {Word::degree, "grado"},
    {Word::note, "nota"},
    {Word::finger, "dito"},
    {Word::count, "conta"},
    {Word::chord, "accordo"},
    {Word::palm_mute, "P.M."},
    {Word::let_ring, "lascia vibrare"},
    {Word::harmonic, "arm."},
    {Word::times, "{n}×"},
    {Word::tempo_ladder, "Scala dei tempi"},
    {Word::ladder_hint, "spunta una casella a ogni giro pulito, poi sali"},
    {Word::practice_notes, "Consigli di studio"},
    {Word::build_up, "Passo dopo passo"},
    {Word::build_up_hint, "spunta ogni passo, poi prosegui"},
    {Word::bar, "battuta {n}"},
    {Word::bars, "battute {from}–{to}"},
    {Word::whole, "tutto"},
    {Word::tick, "spuntare"},
    {Word::form, "Forma"},
    {Word::form_here, "qui va l’esempio {n}"},
    {Word::neck_of, "{what} sulla tastiera"},
    {Word::neck_of_notes, "Queste note sulla tastiera"},
    {Word::neck_frets, "tasti da {from} a {to}"},
    {Word::root, "fondamentale"},
    {Word::chord_shapes, "Posizioni degli accordi"},
    {Word::practice_log, "Diario di studio"},
    {Word::tempo, "Tempo"},
    {Word::clean_passes, "Senza errori"},
    {Word::note_column, "Nota"},
    {Word::answer_key, "Soluzioni"},
    {Word::page_of, "pagina {n} di {total}"},
    {Word::string_letter, "corda {letter}"},
    {Word::string_number, "{n}ª corda"},
    {Word::place_fretted, "{string}, tasto {n}"},
    {Word::place_open, "{string}, a vuoto"},
    {Word::once_through_one, "un giro = {n} battuta"},
    {Word::once_through_other, "un giro = {n} battute"},
    {Word::write_bars_one, "scrivi {n} battuta"},
    {Word::write_bars_other, "scrivi {n} battute"},
    {Word::passes_one, "{n} giro pulito"},
    {Word::passes_other, "{n} giri puliti"},
});

}  // namespace

const Table& table_it() {
  return by_word;
}

}  // namespace fretsheaf::words
