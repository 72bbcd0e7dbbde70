// Every demo page as Chromium draws its SVG, against Poppler's picture of the PDF: grey, and compared by the mean of
// small squares, so that two rasterizers' edges do not count and a figure in another place does.
import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import test from 'node:test';
import { promisify } from 'node:util';
import { program, project, withBrowser, withFolder } from './support/browser.mjs';

const run = promisify(execFile);
const dotsPerInch = 96;  // the browser's own
const side = 6;  // of the squares, in dots
const tolerance = 40;  // of 255

// Decodes two pictures in the browser and gives the greatest difference of two squares' means, and where.
async function difference(page, one, other) {
  return page.evaluate(
    async ([first, second, side]) => {
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
      let most = { by: 0 };
      for (let top = 0; top + side <= height; top += side / 2) {
        for (let left = 0; left + side <= width; left += side / 2) {
          let sum = 0;
          for (let y = top; y < top + side; ++y) {
            for (let x = left; x < left + side; ++x) sum += a.values[y * a.width + x] - b.values[y * b.width + x];
          }
          const by = Math.abs(sum) / (side * side);
          if (by > most.by) most = { by, left, top };
        }
      }
      return { ...most, apart: Math.max(Math.abs(a.width - b.width), Math.abs(a.height - b.height)) };
    },
    [one, other, side],
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
      const page = await browser.newPage();
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

test('a figure that is moved by a fret\'s width or is another is seen', async () => {
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
      const page = await browser.newPage();
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
