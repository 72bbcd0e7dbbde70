// Every demo page as Chromium draws its SVG, against Poppler's picture of the PDF. Small squares are compared dot by dot,
// each where it fits best within three dots: so far the two place letters apart, and no further may anything be.
import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import test from 'node:test';
import { promisify } from 'node:util';
import { program, project, withBrowser, withFolder } from './support/browser.mjs';

const run = promisify(execFile);
const scale = 2; // of the browser's own 96 dots an inch: lines are whole dots wide, however they are rounded
const dotsPerInch = 96 * scale;
const side = 14; // of the squares, in dots: about a tab digit
const slip = 3; // dots
const tolerance = 70; // of 255: as they are, two squares differ by 50 at most; those of the mutations by 90 and more

// Decodes two pictures in the browser and gives the greatest mean difference of two squares, and where.
async function difference(page, one, other) {
  return page.evaluate(
    async ([first, second, side, slip]) => {
      const grey = async (url) => {
        const image = await createImageBitmap(await (await fetch(url)).blob());
        const canvas = new OffscreenCanvas(image.width, image.height);
        const context = canvas.getContext('2d');
        context.fillStyle = 'white';
        context.fillRect(0, 0, image.width, image.height);
        context.drawImage(image, 0, 0);
        const { data } = context.getImageData(0, 0, image.width, image.height);
        const values = new Float32Array(image.width * image.height);
        for (let i = 0; i < values.length; ++i) values[i] = 0.299 * data[4 * i] + 0.587 * data[4 * i + 1] + 0.114 * data[4 * i + 2];
        return { width: image.width, height: image.height, values };
      };
      const a = await grey(first);
      const b = await grey(second);
      const width = Math.min(a.width, b.width);
      const height = Math.min(a.height, b.height);
      const dots = side * side;
      const apart = (left, top, dx, dy, enough) => {
        let sum = 0;
        for (let y = top; y < top + side && sum < enough * dots; ++y) {
          const one = y * a.width + left;
          const other = (y + dy) * b.width + left + dx;
          for (let x = 0; x < side; ++x) sum += Math.abs(a.values[one + x] - b.values[other + x]);
        }
        return sum / dots;
      };
      const best = (left, top, enough) => {
        let least = Infinity;
        for (let reach = 0; reach <= slip; ++reach) {
          for (let dy = -reach; dy <= reach; ++dy) {
            for (let dx = -reach; dx <= reach; ++dx) {
              if (Math.max(Math.abs(dx), Math.abs(dy)) !== reach) continue;
              least = Math.min(least, apart(left, top, dx, dy, Math.min(least, 255)));
              if (least <= enough) return least;
            }
          }
        }
        return least;
      };
      let most = { by: 0 };
      for (let top = slip; top + side + slip <= height; top += side / 2) {
        for (let left = slip; left + side + slip <= width; left += side / 2) {
          const by = best(left, top, most.by);
          if (by > most.by) most = { by, left, top };
        }
      }
      return { ...most, apart: Math.max(Math.abs(a.width - b.width), Math.abs(a.height - b.height)) };
    },
    [one, other, side, slip],
  );
}

const asUrl = (bytes) => `data:image/png;base64,${bytes.toString('base64')}`;

// How the browser draws a page of SVG, one dot a pixel.
async function drawn(page, svg) {
  await page.goto(`file://${svg}`);
  const size = await page.evaluate(() => {
    const box = document.documentElement.getBoundingClientRect();
    return { width: Math.round(box.width), height: Math.round(box.height) };
  });
  await page.setViewportSize(size);
  return page.screenshot();
}

async function pictureOfPdf(folder, pdf, number) {
  await run('pdftoppm', ['-r', String(dotsPerInch), '-f', String(number), '-singlefile', '-png', join(folder, pdf), join(folder, 'pdf')]);
  return readFile(join(folder, 'pdf.png'));
}

test('every demo page looks the same in a browser as in its PDF', async () => {
  await withFolder(async (folder) => {
    const lessons = join(project, 'demo-lessons');
    for (const name of (await readdir(lessons)).filter((file) => file.endsWith('.lesson.toml'))) {
      await run(program, ['typeset', join(lessons, name), '--as', 'pdf,svg', '--to', folder]);
    }
    const svgs = (await readdir(folder)).filter((file) => file.endsWith('.svg')).sort();
    assert.ok(svgs.length > 20);
    await withBrowser(async (browser) => {
      const page = await browser.newPage({ deviceScaleFactor: scale });
      const judge = await browser.newPage();
      for (const svg of svgs) {
        const [, stem, number] = svg.match(/^(.*)\.p(\d+)\.svg$/);
        const shown = await drawn(page, join(folder, svg));
        const printed = await pictureOfPdf(folder, `${stem}.pdf`, number);
        const found = await difference(judge, asUrl(shown), asUrl(printed));
        assert.ok(found.apart <= 1, `${svg}: the sizes differ by ${found.apart}`);
        assert.ok(found.by < tolerance, `${svg}: differs by ${found.by} at ${found.left}, ${found.top}`);
      }
    });
  });
});

test('a figure that has moved or is another is seen', async () => {
  await withFolder(async (folder) => {
    await run(program, ['typeset', join(project, 'demo-lessons', 'low-tide-vamp.lesson.toml'), '--as', 'pdf,svg', '--to', folder]);
    const name = join(folder, 'low-tide-vamp.d-dorian.p1.svg');
    const svg = await readFile(name, 'utf8');
    const digit = /<g class="digit"[^>]*transform="translate\(([\d.]+) ([\d.]+)\)/;
    const [found, x, y] = svg.match(digit);
    const glyphs = [...svg.matchAll(/<g class="digit"[^>]*>\s*<use href="(#[^"]+)"/g)].map((match) => match[1]);
    const another = glyphs.find((glyph) => glyph !== glyphs[0]);
    const mutations = [
      svg.replace(found, found.replace(`translate(${x} ${y})`, `translate(${Number(x) + 5} ${y})`)),
      svg.replace(found, found.replace(`translate(${x} ${y})`, `translate(${x} ${Number(y) - 8})`)),
      svg.replace(`<use href="${glyphs[0]}"`, `<use href="${another}"`),
    ];
    await withBrowser(async (browser) => {
      const page = await browser.newPage({ deviceScaleFactor: scale });
      const judge = await browser.newPage();
      const printed = asUrl(await pictureOfPdf(folder, 'low-tide-vamp.d-dorian.pdf', 1));
      for (const [at, mutation] of mutations.entries()) {
        assert.notEqual(mutation, svg);
        const file = join(folder, `mutation-${at}.svg`);
        await writeFile(file, mutation);
        const found = await difference(judge, asUrl(await drawn(page, file)), printed);
        assert.ok(found.by > tolerance, `mutation ${at} differs by ${found.by} only`);
      }
    });
  });
});
