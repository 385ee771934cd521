// Builds the pages' script and style once, even when several builds start at the same moment.
// A directory is the lock: making one is atomic on every file system.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, rmSync, statSync, utimesSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const lock = join(here, 'building.lock');
const outputs = ['main.js', 'main.css'].map(name => join(here, '..', 'wwwroot', 'built', name));
const staleAfterMs = 5 * 60 * 1000;

if (Number(process.versions.node.split('.')[0]) < 20) {
  console.error(`Coilwright's pages are built with Node 20 or newer; this is ${process.version}. Install a newer one from https://nodejs.org and build again.`);
  process.exit(1);
}

function take() {
  for (;;) {
    try {
      mkdirSync(lock);
      return;
    } catch (failure) {
      if (failure.code !== 'EEXIST') throw failure;
      const age = existsSync(lock) ? Date.now() - statSync(lock).mtimeMs : 0;
      if (age > staleAfterMs) rmSync(lock, { recursive: true, force: true });
      else Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 200);
    }
  }
}

function newest(paths) {
  return Math.max(...paths.map(path => statSync(path).mtimeMs));
}

function run(name, ...args) {
  execFileSync(name, args, { cwd: here, stdio: 'inherit', shell: process.platform === 'win32' });
}

take();
try {
  const settings = ['package.json', 'package-lock.json', 'tsconfig.json', 'build.mjs'].map(name => join(here, name));
  const sources = readdirSync(join(here, 'src')).map(name => join(here, 'src', name));
  const installed = join(here, 'node_modules', '.package-lock.json');
  if (!existsSync(installed) || statSync(installed).mtimeMs < newest([settings[0], settings[1]])) {
    run('npm', 'ci', '--no-audit', '--no-fund', '--loglevel=error');
    if (existsSync(installed)) utimesSync(installed, new Date(), new Date());
  }
  if (!outputs.every(existsSync) || Math.min(...outputs.map(path => statSync(path).mtimeMs)) < newest([...settings, ...sources])) {
    run('npm', 'run', '--silent', 'build');
  }
} finally {
  rmSync(lock, { recursive: true, force: true });
}
