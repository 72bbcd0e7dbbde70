// All that the page says, in one place.

const some = (count, one, many) => `${count} ${count === 1 ? one : many}`;

export const words = {
  toPages: 'Go to the pages',
  allLessons: 'All lessons',
  choices: 'What to see',
  key: 'Key',
  ownKey: 'The lesson’s own',
  alsoIn: 'Also in',
  otherKeys: 'Other keys',
  look: 'Template',
  ownLook: (name) => `${name} (its own)`,
  copy: 'Copy',
  handout: 'Handout',
  answers: 'Answer key',
  pdf: 'Save PDF',
  musicxml: 'Save MusicXML',
  notNow: 'Not while the lesson has errors',
  problems: 'What is wrong',
  pages: 'Pages',
  page: (number, all) => `Page ${number} of ${all}`,
  lessons: 'Lessons',
  noLessons: 'There is no lesson in this folder yet. Lessons end in .lesson.toml.',
  note: 'The chosen place in the music',
  close: 'Close',

  // Over the problems, and beside a lesson of the list.
  counts: (errors, warnings) =>
    [errors ? some(errors, 'error', 'errors') : '', warnings ? some(warnings, 'warning', 'warnings') : '']
      .filter(Boolean)
      .join(', ') || 'no errors',
  allWell: 'Nothing is wrong',
  error: 'error',
  warning: 'warning',
  place: (line, column) => `line ${line}, column ${column}`,

  // How things stand.
  drawing: 'Drawing …',
  drawn: (pages) => `Up to date: ${some(pages, 'page', 'pages')}. Choose a note to see what it is.`,
  stale: 'The lesson has errors. These are its pages from before them.',
  none: 'The lesson has errors, and there is no page yet.',
  list: (count) => some(count, 'lesson', 'lessons'),
  gone: 'This lesson is not in the folder any more.',
  ended: 'The preview has ended, so nothing here is redrawn. Start it again, and open its new address.',
  replaced: 'Four newer windows are redrawn in place of this one. It goes on as soon as you come back to it.',

  // Of a place in the music.
  at: (bar, count) => (bar === 0 ? `Pickup, count ${count}` : `Bar ${bar}, count ${count}`),
  inExample: (example) => `Example ${example}`,
  kinds: { rest: 'Rest', strum: 'Strum', hidden: 'Left for the student to write' },
  manners: { dead: 'Dead note', ghost: 'ghost note', harmonic: 'harmonic' },
  held: 'held on',
  string: (string, fret) => `${string} string, ${fret === 0 ? 'open' : `fret ${fret}`}`,
  degree: (degree, key) => `degree ${degree} in ${key}`,
  chordDegree: (degree, chord) => `${degree} of the chord ${chord}`,
  chord: (chord) => `over ${chord}`,
  written: (line, column) => `Written in line ${line}, column ${column}`,
};

// Fills in what the page's own elements say, and what they are called.
export function fillIn(root) {
  for (const element of root.querySelectorAll('[data-word]')) element.textContent = words[element.dataset.word];
  for (const element of root.querySelectorAll('[data-label]')) {
    element.setAttribute('aria-label', words[element.dataset.label]);
  }
}
