// A studio of its own for a test: the program on a free port, with a home that nobody else has.
import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

export const PROGRAM = process.env.SCUFF_PROGRAM ?? new URL('../../artifacts/bin/Scuff.App/debug/Scuff.App.dll', import.meta.url).pathname;

/** The browser that CHROME names: without a sandbox, since a build server often runs as root, and with a drawing board that needs no graphics card. */
export function openBrowser() {
  return chromium.launch({
    executablePath: process.env.CHROME,
    args: [
      '--no-sandbox',
      '--disable-quic',
      '--use-gl=angle',
      '--use-angle=swiftshader',
      '--enable-unsafe-swiftshader',
      '--autoplay-policy=no-user-gesture-required',
    ],
  });
}

export class Studio {
  /** @param options More of the command line. */
  static async start(options = []) {
    const studio = new Studio();
    studio.options = options;
    studio.home = await mkdtemp(join(tmpdir(), 'scuff-home-'));
    await studio.run(0);
    return studio;
  }

  /** Starts the program; on its old port when it ran before, so that open pages find it again. */
  async run(port = Number(new URL(this.address).port)) {
    this.process = spawn('dotnet', [PROGRAM, 'open', '--no-browser', '--port', String(port), ...this.options], {
      env: { ...process.env, SCUFF_HOME: this.home, SCUFF_CACHE: join(this.home, 'cache') },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    this.said = '';
    this.process.stderr.on('data', (d) => (this.said += d));
    this.address = await new Promise((resolve, reject) => {
      let out = '';
      this.process.stdout.on('data', (d) => {
        out += d;
        const found = /http:\/\/127\.0\.0\.1:\d+/.exec(out);
        if (found) resolve(found[0]);
      });
      this.process.on('exit', (code) => reject(new Error(`the program ended with ${code}: ${this.said}`)));
    });
  }

  /** Ends it at once, as a pulled plug would. */
  async kill() {
    const gone = new Promise((resolve) => this.process.once('exit', resolve));
    this.process.kill('SIGKILL');
    await gone;
  }

  async ask(path, options = {}) {
    const answer = await fetch(this.address + path, options);
    return { status: answer.status, headers: answer.headers, body: await answer.text() };
  }

  async json(path) {
    return JSON.parse((await this.ask(path)).body);
  }

  async stop() {
    await this.kill();
    await rm(this.home, { recursive: true, force: true });
  }
}
