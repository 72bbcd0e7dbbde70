// What strangers may try on the preview's port: everything is refused or served, and it lives on in little memory.
import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, symlink, writeFile } from 'node:fs/promises';
import { Agent, request } from 'node:http';
import { connect } from 'node:net';
import { join } from 'node:path';
import test from 'node:test';
import { promisify } from 'node:util';
import { program, project, sanitized, withBrowser, withFolder } from './support/browser.mjs';
import { upToDate, withPreview } from './support/preview.mjs';

const demo = join(project, 'demo-lessons', 'low-tide-vamp.lesson.toml');
// MB. Address sanitizers keep what is freed, and shadow what is not: that is held to a bound, too, but a wide one.
const mostMemory = sanitized ? 1500 : 150;
// A page is gone through to its end before the program leaves, and under sanitizers that takes several times as long.
const mostMilliseconds = sanitized ? 5000 : 1000;

// A request as it is asked for, nothing put right: { status, headers, body }.
function ask(address, path, { method = 'GET', headers = {}, agent, host } = {}) {
  const { hostname, port } = new URL(address);
  return new Promise((done, fail) => {
    const asked = request({ hostname, port, path, method, agent, headers: { Host: host ?? `${hostname}:${port}`, ...headers } });
    asked.on('error', fail);
    asked.on('response', async (reply) => {
      let body = '';
      try {
        for await (const part of reply) body += part;
      } catch (fault) {
        return fail(fault);
      }
      done({ status: reply.statusCode, headers: reply.headers, body });
    });
    asked.end();
  });
}

const secretOf = (address) => new URL(address).pathname;

async function holdsMemory(memory, context) {
  const most = await memory();
  context.diagnostic(`${most.toFixed(0)} MB at the most`);
  assert.ok(most < mostMemory, `${most} MB`);
}

async function lives(address) {
  assert.equal((await ask(address, secretOf(address))).status, 200);
}

// Bytes as they are on a connection of its own; what came back before it was closed, or had been silent so long.
async function send(address, bytes, silence = 3000) {
  const { hostname, port } = new URL(address);
  const socket = connect(port, hostname);
  let back = '';
  socket.on('data', (data) => (back += data));
  socket.on('error', () => {});
  socket.setTimeout(silence, () => socket.destroy());
  socket.write(bytes);
  await new Promise((done) => socket.on('close', done));
  return back;
}

const withDemo = (work) => withPreview(demo, work);

test('only by its own name, from its own page, with the secret, and reading', async () => {
  await withDemo(async ({ address }) => {
    const secret = secretOf(address);
    const { port } = new URL(address);
    const status = async (path, options) => (await ask(address, path, options)).status;
    assert.equal(await status(secret), 200);
    assert.equal(await status(secret, { host: `localhost:${port}` }), 200);
    assert.equal(await status(secret, { headers: { Origin: `http://127.0.0.1:${port}` } }), 200);
    for (const host of ['evil.example', `evil.example:${port}`, '127.0.0.1', `127.0.0.1:${Number(port) + 1}`, `127.0.0.1.evil.example:${port}`]) {
      assert.equal(await status(secret, { host }), 421, host);
    }
    for (const origin of ['http://evil.example', `https://127.0.0.1:${port}`, 'null', `http://127.0.0.1:${port}.evil.example`, 'http://127.0.0.1']) {
      assert.equal(await status(secret, { headers: { Origin: origin } }), 403, origin);
    }
    for (const path of ['/', '/preview.js', secret.slice(0, -1), secret.slice(0, -2) + '/', secret.toUpperCase().replace(/[A-F]/g, 'X'), '/' + '0'.repeat(32) + '/', '//' + secret]) {
      assert.equal(await status(path), 404, path);
    }
    for (const method of ['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS']) {
      assert.equal(await status(secret, { method, headers: { 'Content-Length': '0' } }), 405, method);
    }
    const noHost = `GET ${secret} HTTP/1.1\r\nConnection: close\r\n\r\n`;
    assert.match(await send(address, noHost), /^HTTP\/1\.1 421 /);
    const twoHosts = `GET ${secret} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nHost: evil.example\r\nConnection: close\r\n\r\n`;
    assert.match(await send(address, twoHosts), /^HTTP\/1\.1 421 /);
  });
});

test('nothing from outside, no script but its own, and no frame', async () => {
  await withDemo(async ({ address }) => {
    const { headers } = await ask(address, secretOf(address));
    const policy = Object.fromEntries(headers['content-security-policy'].split(/; ?/).map((part) => [part.split(' ')[0], part.split(' ').slice(1).join(' ')]));
    assert.equal(policy['default-src'], "'none'");
    assert.equal(policy['script-src'], "'self'");
    assert.equal(policy['style-src'], "'self'");
    assert.equal(policy['frame-ancestors'], "'none'");
    assert.equal(policy['form-action'], "'none'");
    assert.equal(headers['x-content-type-options'], 'nosniff');
    assert.equal(headers['referrer-policy'], 'no-referrer');
    assert.equal(headers['access-control-allow-origin'], undefined);
    assert.equal(headers['cache-control'], 'no-store');
  });
});

test('it listens on this machine alone', async () => {
  await withDemo(async ({ address }) => {
    const { port } = new URL(address);
    const { stdout } = await promisify(execFile)('cat', ['/proc/net/tcp', '/proc/net/tcp6']);
    const listening = stdout.split('\n').map((line) => line.trim().split(/\s+/)).filter((words) => words[3] === '0A');
    const here = listening.map((words) => words[1]).filter((place) => parseInt(place.split(':').at(-1), 16) === Number(port));
    assert.deepEqual(here, [`0100007F:${Number(port).toString(16).toUpperCase().padStart(4, '0')}`]); // 127.0.0.1
  });
});

test('no path leads to a file', async () => {
  await withFolder(async (folder) => {
    await mkdir(join(folder, 'course'));
    await writeFile(join(folder, 'secret.lesson.toml'), 'title = "secret"\n');
    await writeFile(join(folder, 'course', 'notes.txt'), 'secret');
    await symlink('/etc', join(folder, 'course', 'etc'));
    await withPreview(join(folder, 'course'), async ({ address }) => {
      const secret = secretOf(address);
      const paths = ['../secret.lesson.toml', '..%2fsecret.lesson.toml', '%2e%2e/secret.lesson.toml', 'notes.txt', 'course/notes.txt', '/etc/passwd', 'etc/passwd', '....//etc/passwd', 'pages/../preview.js', 'pages/..%2f..%2fnotes.txt', 'pages/%00.svg', 'preview.js%00.txt', 'preview.html/', 'PREVIEW.JS', 'pages/.svg', 'pages.svg'];
      for (const path of paths) assert.equal((await ask(address, secret + path)).status, 404, path);
      for (const name of ['../secret', '/etc/passwd', 'etc/passwd', '..%2Fsecret', '%2Fetc%2Fpasswd', '-', '%00']) {
        for (const what of ['lesson.json', 'handout.pdf', 'handout.musicxml']) {
          const reply = await ask(address, `${secret}${what}?lesson=${name}`);
          assert.equal(reply.status, 404, name);
          assert.ok(!reply.body.includes('root:'));
        }
      }
      await lives(address);
    });
  });
});

test('a template is chosen by name or by what the lesson says, and no other file is read for one', async () => {
  await withDemo(async ({ address }) => {
    for (const look of ['/etc/passwd', '../../etc/passwd', './CMakeLists.txt', '/dev/zero', 'x.toml', '/tmp/x.toml']) {
      const reply = await ask(address, `${secretOf(address)}lesson.json?lesson=low-tide-vamp&look=${encodeURIComponent(look)}`);
      const state = JSON.parse(reply.body);
      assert.deepEqual(state.problems, [], look);
      assert.equal(state.picture.choice.look, 'music-stand');
    }
    await lives(address);
  });
});

test('ten thousand requests', async (context) => {
  await withDemo(async ({ address, memory }) => {
    const secret = secretOf(address);
    const agent = new Agent({ keepAlive: true, maxSockets: 16 });
    const keys = ['C', 'D', 'E', 'F', 'G', 'A', 'B', 'nonsense'];
    let done = 0;
    const paths = (i) => [`${secret}lesson.json?lesson=low-tide-vamp&key=${keys[(i / 6) % 8 | 0]}`, `${secret}preview.js`, `${secret}lessons.json`, `${secret}nothing/${i}`, `/wrong/${i}`, `${secret}lesson.json?lesson=low-tide-vamp&key=x${i}`][i % 6];
    const worker = async () => {
      while (done < 10_000) {
        const reply = await ask(address, paths(done++), { agent });
        assert.ok([200, 404].includes(reply.status));
      }
    };
    await Promise.all(Array.from({ length: 16 }, worker));
    agent.destroy();
    await holdsMemory(memory, context);
    await lives(address);
  });
});

test('two hundred thousand lines in a head, an endless line, bodies, broken heads', async (context) => {
  await withDemo(async ({ address, memory }) => {
    const { port } = new URL(address);
    const first = `GET ${secretOf(address)} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n`;
    const lines = Array.from({ length: 200_000 }, (_, i) => `X-Line-${i}: ${'x'.repeat(40)}\r\n`).join('');
    await Promise.all(Array.from({ length: 4 }, () => send(address, first + lines + '\r\n')));
    await send(address, first + 'X: ' + 'x'.repeat(30_000_000));
    await send(address, `GET /${'a'.repeat(5_000_000)} HTTP/1.1\r\n\r\n`);
    assert.match(await send(address, `${first}Content-Length: 1000000000\r\n\r\n`), /^HTTP\/1\.1 413 /);
    assert.match(await send(address, `${first}Transfer-Encoding: chunked\r\n\r\nffffffff\r\n`), /^HTTP\/1\.1 413 /);
    assert.match(await send(address, `${first}X: ${'x'.repeat(5000)}\r\n\r\n`), /^HTTP\/1\.1 431 /);
    assert.match(await send(address, first + 'X: 1\r\n'.repeat(200) + '\r\n'), /^HTTP\/1\.1 431 /);
    assert.match(await send(address, `${first}X: a\nHost: evil.example\r\n\r\n`), /^HTTP\/1\.1 400 /);
    for (const broken of ['\r\n\r\n', 'GET\r\n\r\n', 'GET / HTTP/9.9\r\n\r\n', '\0\0\0\0', 'GET % HTTP/1.1\r\n\r\n', '\x16\x03\x01\x02\0\x01\0', first + ':\r\n\r\n']) {
      await send(address, broken + (broken.endsWith('\n') ? '' : '\r\n\r\n'), 500);
    }
    await holdsMemory(memory, context);
    await lives(address);
  });
});

test('a small request makes no large answer', async (context) => {
  await withDemo(async ({ address, memory }) => {
    const { port } = new URL(address);
    const ranges = '0-,'.repeat(1300) + '0-';
    const head = `GET ${secretOf(address)}preview.js HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nRange: bytes=${ranges}\r\nAccept-Encoding: gzip, br\r\nConnection: close\r\n\r\n`;
    const reply = await send(address, head);
    assert.match(reply, /^HTTP\/1\.1 200 /);
    assert.ok(reply.length < 40_000, `${reply.length} bytes`);
    await holdsMemory(memory, context);
  });
});

test('eight silent streams, a hundred silent connections, slow heads: a page is served beside them', async (context) => {
  await withDemo(async ({ address, memory }) => {
    const { hostname, port } = new URL(address);
    const secret = secretOf(address);
    const sockets = [];
    const open = (bytes) => {
      const socket = connect(port, hostname);
      socket.on('error', () => {});
      socket.write(bytes);
      sockets.push(socket);
    };
    for (let i = 0; i < 8; ++i) open(`GET ${secret}news HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n\r\n`);
    for (let i = 0; i < 100; ++i) open('');
    for (let i = 0; i < 50; ++i) open(`GET ${secret}`);
    await withBrowser(async (browser) => {
      const page = await browser.newPage();
      await page.goto(address);
      await upToDate(page);
    });
    await lives(address);
    await holdsMemory(memory, context);
    for (const socket of sockets) socket.destroy();
  });
});

test('Ctrl-C ends it within a second, whatever hangs on it', async () => {
  const sockets = [];
  const { status, milliseconds } = await withDemo(async ({ address }) => {
    const { hostname, port } = new URL(address);
    for (let i = 0; i < 40; ++i) {
      const socket = connect(port, hostname);
      socket.on('error', () => {});
      socket.write(i % 2 ? `GET ${secretOf(address)}news HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n\r\n` : 'GET ');
      sockets.push(socket);
    }
    await Promise.all(sockets.map((socket) => once(socket, 'connect')));
    await lives(address);
  });
  for (const socket of sockets) socket.destroy();
  assert.equal(status, 0);
  assert.ok(milliseconds < mostMilliseconds, `${milliseconds} ms`);
});

test('a port that is taken is no preview', async () => {
  await withDemo(async ({ address }) => {
    const { port } = new URL(address);
    const failed = await promisify(execFile)(program, ['preview', demo, '--port', port]).catch((fault) => fault);
    assert.equal(failed.code, 3);
    assert.equal(failed.stderr, `fretsheaf: error: port ${port} cannot be had: something else has it, or it is kept for the system\n`);
  });
});

test('a lesson of hundreds of pages, in many keys: in little memory, and left at once', async (context) => {
  const example = (i) => `[[example]]\ntitle = "Wave ${i}"\ntab = '''\n${'count | 1 & 2 & 3 & 4 & '.repeat(1)}| 1 & 2 & 3 & 4 & |\nA     | 5 5 5 5 5 5 5 5 | 5 5 5 5 5 5 5 5 |\n'''\n`;
  const long = 'title = "Long"\nkey = "D dorian"\ninstrument = "bass"\n' + Array.from({ length: 400 }, (_, i) => example(i)).join('');
  await withFolder(async (folder) => {
    const path = join(folder, 'long.lesson.toml');
    await writeFile(path, long);
    let waiting;
    const { status, milliseconds } = await withPreview(path, async ({ address, memory }) => {
      const of = (key) => ask(address, `${secretOf(address)}lesson.json?lesson=long&key=${key}+dorian`);
      for (const key of ['D', 'E', 'F', 'G', 'A', 'C']) {
        const told = JSON.parse((await of(key)).body);
        assert.ok(told.picture.pages.length > 40, `${told.picture.pages.length} pages`);
      }
      await holdsMemory(memory, context);
      waiting = ['Bb', 'Eb', 'Ab', 'B'].map((key) => of(key).catch((fault) => fault));
      await lives(address);
    });
    await Promise.all(waiting);
    assert.equal(status, 0);
    assert.ok(milliseconds < mostMilliseconds, `${milliseconds} ms`);
  });
});
