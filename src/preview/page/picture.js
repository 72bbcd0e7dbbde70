// The picture of one page. Of a new one only those parts are set in place that differ from the one before: most of a
// page stays as it is when a note is changed, and a browser takes its time to draw a whole one.

const space = 'http://www.w3.org/2000/svg';
const tag = /<(\/?)[\w:]+(?:\s+[\w:-]+="[^"]*")*\s*(\/?)>/g;
const use = /<use href="#([^"]+)"((?:\s+[\w:-]+="[^"]*")*)\s*\/>/g;

// The opening tag of the page's text, and the text of each part in it.
function split(text) {
  const parts = [];
  let head = '';
  let depth = 0;
  let begin = 0;
  for (const found of text.slice(text.indexOf('<svg')).matchAll(tag)) {
    const [whole, closes, empty] = found;
    if (depth === 1 && !closes) begin = found.index;
    if (closes) depth -= 1;
    else if (!empty) depth += 1;
    if (!head) head = whole;
    else if (depth === 1) parts.push(found.input.slice(begin, found.index + whole.length));
  }
  return { head, parts };
}

// The outlines of letters and signs by name, as the page's text has them; a browser draws them sooner where they stand
// than where they are pointed to.
function outlinesIn(parts) {
  const outlines = new Map();
  for (const part of parts.filter((one) => one.startsWith('<defs'))) {
    for (const [, name, path] of part.matchAll(/<path id="([^"]+)" d="([^"]+)"\/>/g)) outlines.set(name, path);
  }
  return outlines;
}

function drawn(part, outlines) {
  return part.replace(use, (whole, name, more) => {
    if (!outlines.has(name)) return whole;
    const values = { x: 0, y: 0, transform: '' };
    const others = more.replace(/\s(x|y|transform)="([^"]*)"/g, (_, which, value) => {
      values[which] = value;
      return '';
    });
    const move = values.x || values.y ? `translate(${values.x} ${values.y})` : '';
    const place = `${values.transform} ${move}`.trim();
    return `<path d="${outlines.get(name)}"${others}${place && ` transform="${place}"`}/>`;
  });
}

function elementOf(part) {
  const holder = document.createElementNS(space, 'svg');
  holder.innerHTML = part;
  for (const link of holder.querySelectorAll('a')) {
    link.setAttribute('target', '_blank');
    link.setAttribute('rel', 'noopener noreferrer');
  }
  return holder.firstElementChild;
}

function pageOf(head) {
  const holder = document.createElement('div');
  holder.innerHTML = `${head}</svg>`;
  const svg = holder.firstElementChild;
  svg.removeAttribute('width');
  svg.removeAttribute('height');
  return svg;
}

export class Picture {
  // Nothing is in it until it is told what.
  constructor() {
    this.head = '';
    this.parts = [];
    this.elements = [];
    this.svg = document.createElementNS(space, 'svg');
  }

  // Shows another page's text; returns its width and height.
  show(text) {
    const { head, parts } = split(text);
    if (head !== this.head) {
      const svg = pageOf(head);
      this.svg.replaceWith(svg);
      Object.assign(this, { head, svg, parts: [], elements: [] });
    }
    const most = Math.min(parts.length, this.parts.length);
    let first = 0;
    while (first < most && parts[first] === this.parts[first]) first += 1;
    let after = 0;
    while (after < most - first && parts.at(-1 - after) === this.parts.at(-1 - after)) after += 1;
    this.change(parts, first, after);
    return this.svg.getAttribute('viewBox').split(' ').slice(2);
  }

  // All parts but so many of the first and of the last are new.
  change(parts, first, after) {
    const outlines = outlinesIn(parts);
    const end = this.elements.length - after;
    const old = this.elements.slice(first, end);
    const fresh = parts.slice(first, parts.length - after).map((part, index) => {
      // Between them, in place.
      if (part === this.parts[first + index] && index < old.length) return old[index];
      return elementOf(part.startsWith('<defs') ? part.replace(/<path id="[^"]+" d="[^"]+"\/>/g, '') : drawn(part, outlines));
    });
    const next = this.elements[end] ?? null;
    const kept = new Set(fresh);
    for (const element of old) {
      if (!kept.has(element)) element.remove();
    }
    for (let index = fresh.length - 1, before = next; index >= 0; before = fresh[index], index -= 1) {
      if (fresh[index].nextElementSibling !== before || fresh[index].parentNode !== this.svg) this.svg.insertBefore(fresh[index], before);
    }
    this.elements.splice(first, old.length, ...fresh);
    this.parts = parts;
  }
}
