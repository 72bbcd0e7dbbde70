#include "words/table.h"

namespace fretsheaf::words {
namespace {

constexpr Table by_word = table({
    {Word::number, "N.º {n}"},
    {Word::key, "Tonalidade"},
    {Word::meter, "Compasso"},
    {Word::tuning, "Afinação"},
    {Word::capo, "Capotraste"},
    {Word::capo_at, "casa {n}"},
    {Word::name, "Nome"},
    {Word::date, "Data"},
    {Word::link_hint, "digitalize ou clique"},
    {Word::key_major, "{tonic} maior"},
    {Word::key_minor, "{tonic} menor"},
    {Word::key_dorian, "{tonic} dórico"},
    {Word::key_phrygian, "{tonic} frígio"},
    {Word::key_lydian, "{tonic} lídio"},
    {Word::key_mixolydian, "{tonic} mixolídio"},
    {Word::key_locrian, "{tonic} lócrio"},
    {Word::example, "Exemplo {n}"},
    {Word::example_caps, "EXEMPLO {n}"},
    {Word::straight_eighths, "colcheias iguais"},
    {Word::straight_sixteenths, "semicolcheias iguais"},
    {Word::swing, "swing"},
    {Word::swing_sixteenths, "semicolcheias com swing"},
    {Word::shuffle, "shuffle"},
    {Word::degree, "grau"},
    {Word::note, "nota"},
    {Word::finger, "dedo"},
    {Word::count, "contar"},
    {Word::chord, "acorde"},
    {Word::palm_mute, "P.M."},
    {Word::let_ring, "deixar soar"},
    {Word::harmonic, "harm."},
    {Word::times, "{n}×"},
    {Word::tempo_ladder, "Escada de tempo"},
    {Word::ladder_hint, "marque uma caixa a cada vez sem erros e suba"},
    {Word::practice_notes, "Notas de estudo"},
    {Word::build_up, "Passo a passo"},
    {Word::build_up_hint, "marque cada passo e continue"},
    {Word::bar, "compasso {n}"},
    {Word::bars, "compassos {from}–{to}"},
    {Word::whole, "tudo"},
    {Word::tick, "marcar"},
    {Word::form, "Forma"},
    {Word::form_here, "o exemplo {n} entra aqui"},
    {Word::neck_of, "{what} no braço"},
    {Word::neck_of_notes, "Estas notas no braço"},
    {Word::neck_frets, "casas {from} a {to}"},
    {Word::root, "fundamental"},
    {Word::chord_shapes, "Posições de acordes"},
    {Word::practice_log, "Diário de estudo"},
    {Word::tempo, "Tempo"},
    {Word::clean_passes, "Sem erros"},
    {Word::note_column, "Nota"},
    {Word::answer_key, "Soluções"},
    {Word::page_of, "página {n} de {total}"},
    {Word::string_letter, "corda {letter}"},
    {Word::string_number, "{n}.ª corda"},
    {Word::place_fretted, "{string}, casa {n}"},
    {Word::place_open, "{string}, solta"},
    {Word::once_through_one, "uma volta = {n} compasso"},
    {Word::once_through_other, "uma volta = {n} compassos"},
    {Word::write_bars_one, "escreva {n} compasso"},
    {Word::write_bars_other, "escreva {n} compassos"},
    {Word::passes_one, "{n} vez sem erros"},
    {Word::passes_other, "{n} vezes sem erros"},
});

}  // namespace

const Table& table_pt() {
  return by_word;
}

}  // namespace fretsheaf::words
