// A preview that runs, and what is asked of its page again and again.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFile } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import { program } from './browser.mjs';

// Runs `work({ address, process, memory })` while `fretsheaf preview PATH …` does; then presses Ctrl-C, and returns
// what the program ended with: { status, milliseconds }.
export async function withPreview(path, work, options = [], environment = {}) {
  const child = spawn(program, ['preview', path, ...options], { env: { ...process.env, ...environment } });
  let errors = '';
  child.stderr.on('data', (text) => (errors += text));
  const ended = once(child, 'exit');
  const lines = createInterface({ input: child.stdout });
  const first = await Promise.race([once(lines, 'line').then(([line]) => line), ended.then(() => null)]);
  if (first === null) throw new Error(errors);
  // Peak memory in MB, as the kernel counts it (proc(5), VmHWM).
  const memory = async () => Number(/VmHWM:\s+(\d+)/.exec(await readFile(`/proc/${child.pid}/status`, 'utf8'))[1]) / 1024;
  let from;
  try {
    await work({ address: first, memory, alive: () => child.exitCode === null });
  } finally {
    from = performance.now();
    child.kill('SIGINT');
    await ended;
  }
  return { status: child.exitCode, milliseconds: performance.now() - from };
}

// A page on which nothing may go wrong unseen: what the console says is a fault.
export async function openPage(browser, address, options = {}) {
  const page = await browser.newPage(options);
  page.faults = [];
  page.on('console', (message) => page.faults.push(message.text()));
  page.on('pageerror', (error) => page.faults.push(String(error)));
  await page.goto(address);
  return page;
}

// Waits until a condition holds in the page. (Playwright's own way compiles it there, which the page's policy forbids.)
export async function until(page, condition, argument) {
  const patience = 20_000;
  for (const from = Date.now(); !(await page.evaluate(condition, argument)); ) {
    if (Date.now() - from > patience) throw new Error(`never came to hold: ${condition}`);
    await new Promise((done) => setTimeout(done, 10));
  }
}

// How things stand, once that begins so.
export async function says(page, text) {
  await page.locator('#state', { hasText: text }).waitFor();
}

export const upToDate = (page) => says(page, 'Up to date');
