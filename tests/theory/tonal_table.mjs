// Writes tonal.tsv, the answers of the library tonal 6.4.3 (MIT) to what the tests of this room ask:
//   npm install tonal@6.4.3 && node tonal_table.mjs > tonal.tsv
// Left out: its elevenths and thirteenths and its 7b13, which lack tones (third, eleventh, fifth) that players leave out;
// theirs are tested against MusicXML.
import { createRequire } from "node:module";
const { Chord, Key, Note, Scale } = createRequire(process.cwd() + "/")("tonal");

const row = (...cells) => console.log(cells.join("\t"));
const letters = ["C", "D", "E", "F", "G", "A", "B"];
const names = letters.flatMap((letter) => [letter + "b", letter, letter + "#"]);

console.log("# The library tonal 6.4.3, written by tonal_table.mjs");

const kinds = ["", "m", "5", "6", "m6", "6/9", "7", "maj7", "m7", "mMaj7", "dim", "dim7", "m7b5", "aug", "aug7", "sus2",
  "sus4", "7sus4", "add9", "madd9", "9", "maj9", "m9", "7b5", "7#5", "7b9", "7#9", "maj7#11"];
for (const root of names) {
  for (const kind of kinds) {
    const chord = Chord.getChord(kind === "" ? "M" : kind, root);
    if (chord.empty) throw new Error(root + kind);
    row("chord", root + kind, chord.notes.join(" "));
  }
}

const modes = ["major", "minor", "dorian", "phrygian", "lydian", "mixolydian", "locrian"];
for (const tonic of names) {
  for (const mode of modes) row("scale", `${tonic} ${mode}`, Scale.get(`${tonic} ${mode}`).notes.join(" "));
}

const intervals = ["1P", "1A", "2m", "2M", "2A", "3m", "3M", "4P", "4A", "5d", "5P", "5A", "6m", "6M", "7d", "7m", "7M"];
for (const from of names) {
  for (const by of intervals) row("transpose", `${from}4 ${by}`, Note.transpose(`${from}4`, by));
}

const ours = (symbol) => symbol.replace(/o7$/, "dim7");
const resolved = (key, numerals, chords) =>
  numerals.forEach((numeral, index) => numeral && chords[index] && row("numeral", `${key} ${numeral}`, ours(chords[index])));
const majors = ["Cb", "Gb", "Db", "Ab", "Eb", "Bb", "F", "C", "G", "D", "A", "E", "B", "F#", "C#"];
const minors = ["Ab", "Eb", "Bb", "F", "C", "G", "D", "A", "E", "B", "F#", "C#", "G#", "D#", "A#"];
for (const tonic of majors) {
  const key = Key.majorKey(tonic);
  row("signature", `${tonic} major`, key.alteration);
  resolved(`${tonic} major`, ["I", "ii", "iii", "IV", "V", "vi", "vii°"], key.triads);
  resolved(`${tonic} major`, ["Imaj7", "ii7", "iii7", "IVmaj7", "V7", "vi7", "viiø"], key.chords);
  resolved(`${tonic} major`, ["V7/I", "V7/ii", "V7/iii", "V7/IV", "V7/V", "V7/vi", ""], key.secondaryDominants);
}
for (const tonic of minors) {
  const key = Key.minorKey(tonic);
  row("signature", `${tonic} minor`, key.alteration);
  resolved(`${tonic} minor`, ["i", "ii°", "III", "iv", "v", "VI", "VII"], key.natural.triads);
  resolved(`${tonic} minor`, ["i7", "iiø", "IIImaj7", "iv7", "v7", "VImaj7", "VII7"], key.natural.chords);
  resolved(`${tonic} minor`, ["", "", "bIIImaj7", "", "", "bVImaj7", "bVII7"], key.natural.chords);
  resolved(`${tonic} minor`, ["", "", "", "V7/iv", "V7/v", "V7/VI", "V7/VII"], key.natural.secondaryDominants);
  resolved(`${tonic} minor`, ["imaj7", "ii7b5", "", "iv7", "V7", "VImaj7", "vii°7"], key.harmonic.chords);
  resolved(`${tonic} minor`, ["", "", "III+", "", "V", "", "vii°"], key.harmonic.triads);
}
