// The music of the pages, by places: one place is an event of the score, on whichever staves it is drawn. The keyboard
// goes from place to place; one at a time is in the order of tabs.
import { words } from './words.js';

const near = 16; // how far beside its ink a place can still be met, in CSS pixels
const staffs = ['tab', 'notes', 'slash']; // the focus goes to the first that a place has

const keyOf = (example, bar, at) => `${example}:${bar}:${at}`;
const flat = (degree) => degree.replaceAll('b', '♭').replaceAll('#', '♯');

function noteText(note) {
  const parts = [note.name || words.manners.dead, words.string(note.string, note.fret)];
  if (note.name && note.manner) parts.push(words.manners[note.manner]);
  if (note.held) parts.push(words.held);
  return parts.join(', ');
}

export function placeTitle(place) {
  return words.at(place.bar, place.count);
}

export function placeLines(place) {
  if (place.kind !== 'notes') return [[words.kinds[place.kind], place.chord && words.chord(place.chord)].filter(Boolean)];
  return place.notes.map((note) => {
    const lines = [noteText(note)];
    if (note.degree) lines.push(words.degree(flat(note.degree), place.key));
    if (note.chordDegree) lines.push(words.chordDegree(flat(note.chordDegree), place.chord));
    return lines;
  });
}

function spoken(place) {
  return [placeTitle(place), ...placeLines(place).flat()].join(', ');
}

function outline(elements) {
  const boxes = elements.map((element) => element.getBoundingClientRect()).filter((box) => box.width || box.height);
  if (!boxes.length) return null;
  const left = Math.min(...boxes.map((box) => box.left));
  const top = Math.min(...boxes.map((box) => box.top));
  const right = Math.max(...boxes.map((box) => box.right));
  const bottom = Math.max(...boxes.map((box) => box.bottom));
  return { left, top, right, bottom };
}

function distance(box, x, y) {
  return Math.hypot(Math.max(box.left - x, 0, x - box.right), Math.max(box.top - y, 0, y - box.bottom));
}

export class Music {
  // `choose(place)` is told of the place that is chosen.
  constructor(choose) {
    this.choose = choose;
    this.stops = [];
    this.chosen = null;
    this.stopOf = new WeakMap();
  }

  // A page's own tree, in which there is to be music.
  listen(root) {
    root.addEventListener('click', (event) => {
      if (!event.target.closest('a')) this.meet(root, event.clientX, event.clientY);
    });
    root.addEventListener('focusin', (event) => {
      const stop = this.stopOf.get(event.target);
      if (stop) this.enter(stop);
    });
    root.addEventListener('keydown', (event) => {
      const stop = this.stopOf.get(event.target);
      if (stop) this.press(event, stop);
    });
  }

  // Finds the places in the pages' pictures anew. What was chosen stays so, where it still is.
  read(roots, places) {
    this.stopOf = new WeakMap();
    const known = new Map(places.map((place) => [keyOf(place.example, place.bar, place.at), place]));
    const stops = new Map();
    for (const root of roots) {
      for (const element of root.querySelectorAll('g.event')) {
        const example = element.closest('g.example');
        const key = example && keyOf(example.dataset.example, element.dataset.bar, element.dataset.at);
        if (!known.has(key)) continue;
        if (!stops.has(key)) stops.set(key, { key, place: known.get(key), root, elements: [] });
        stops.get(key).elements.push(element);
        // A picture as a whole would hide from a screen reader that there is something to choose in it.
        for (let above = element.parentElement; above; above = above.parentElement) {
          if (above.getAttribute('role') === 'img') above.setAttribute('role', 'group');
        }
      }
    }
    this.stops = [...stops.values()];
    this.stops.forEach((stop, index) => this.prepare(stop, index));
    const focus = this.stops.find((stop) => stop.key === this.focused) ?? this.stops[0];
    if (focus) focus.element.setAttribute('tabindex', '0');
    this.mark(this.stops.find((stop) => stop.key === this.chosen) ?? null);
  }

  prepare(stop, index) {
    const rank = (element) => staffs.indexOf(element.dataset.staff);
    stop.element = [...stop.elements].sort((a, b) => rank(a) - rank(b))[0];
    stop.index = index;
    const { element } = stop;
    this.stopOf.set(element, stop);
    element.setAttribute('tabindex', '-1');
    element.setAttribute('role', 'button');
    element.setAttribute('aria-label', spoken(stop.place));
    for (const other of stop.elements) {
      if (other !== element) other.setAttribute('aria-hidden', 'true');
    }
  }

  enter(stop) {
    for (const other of this.stops) other.element.setAttribute('tabindex', other === stop ? '0' : '-1');
    this.focused = stop.key;
  }

  press(event, stop) {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const steps = {
      ArrowRight: () => this.stops[stop.index + 1],
      ArrowLeft: () => this.stops[stop.index - 1],
      ArrowDown: () => this.onLine(stop, 1),
      ArrowUp: () => this.onLine(stop, -1),
      Home: () => this.lineOf(stop)[0],
      End: () => this.lineOf(stop).at(-1),
    };
    if (event.key === 'Enter' || event.key === ' ') {
      this.take(stop);
    } else if (steps[event.key]) {
      const next = steps[event.key]();
      if (next) this.goTo(next);
    } else {
      return;
    }
    event.preventDefault();
  }

  goTo(stop) {
    stop.element.focus({ preventScroll: true });
    stop.element.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  lineName(stop) {
    return `${stop.place.example}:${stop.element.dataset.line}`;
  }

  lineOf(stop) {
    return this.stops.filter((other) => this.lineName(other) === this.lineName(stop));
  }

  // The place of the next line of music, or the one before, that lies nearest under or over this one.
  onLine(stop, step) {
    const names = [...new Set(this.stops.map((other) => this.lineName(other)))];
    const name = names[names.indexOf(this.lineName(stop)) + step];
    const x = Number(stop.element.dataset.x);
    const away = (other) => Math.abs(Number(other.element.dataset.x) - x);
    return this.stops
      .filter((other) => this.lineName(other) === name)
      .sort((a, b) => away(a) - away(b))[0];
  }

  // The place at a point of the window, or the nearest to it that is near enough.
  meet(root, x, y) {
    let best = null;
    for (const stop of this.stops) {
      if (stop.root !== root) continue;
      for (const element of stop.elements) {
        const away = distance(element.getBoundingClientRect(), x, y);
        if (away <= near && (!best || away < best.away)) best = { stop, away };
      }
    }
    if (best) {
      this.enter(best.stop);
      this.take(best.stop);
    }
  }

  take(stop) {
    this.chosen = stop.key;
    this.mark(stop);
    // From under what is told of it, in a narrow window.
    stop.element.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  leave() {
    const stop = this.stops.find((one) => one.key === this.chosen);
    this.chosen = null;
    this.mark(null);
    return stop;
  }

  // A ground behind what is chosen, in the picture itself, so that it goes along with it.
  mark(stop) {
    this.ground?.remove();
    this.ground = null;
    if (!stop) this.chosen = null;
    this.choose(stop?.place ?? null);
    const box = stop && outline(stop.elements);
    if (!box) return;
    const svg = stop.element.ownerSVGElement;
    const back = svg.getScreenCTM().inverse();
    const from = new DOMPoint(box.left, box.top).matrixTransform(back);
    const to = new DOMPoint(box.right, box.bottom).matrixTransform(back);
    this.ground = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
    const edge = 3;
    const values = { x: from.x - edge, y: from.y - edge, width: to.x - from.x + 2 * edge, height: to.y - from.y + 2 * edge, rx: 3 };
    for (const [name, value] of Object.entries(values)) this.ground.setAttribute(name, value);
    this.ground.setAttribute('class', 'chosen');
    this.ground.setAttribute('aria-hidden', 'true');
    svg.append(this.ground);
  }
}
