import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { standingBand, textOfLink } from '../../src/engine/index.ts';
import { ran } from '../support/command-line.ts';

const example = 'examples/medium-wave-galena.json';
const folder = (): string => mkdtempSync(join(tmpdir(), 'faintwave-'));

describe('faintwave rework', () => {
  it('has a trap for a station while the wanted one is beyond the dial', async () => {
    const written = JSON.parse(readFileSync(inRoot(example), 'utf8'));
    written.place.stations.push({ name: 'Deep Long', frequency: '198 kHz', fieldStrength: '10 mV/m' });
    const args = ['rework', '-', '--stop', 'Saltmarsh', '--station', 'Deep Long', '--json'];
    const { status, stdout } = await ran(args, JSON.stringify(written));
    expect(status).toBe(0);
    expect(JSON.parse(stdout).changes).toHaveLength(2);
  });

  it('wants another station than the one to be stopped, where none is named', async () => {
    const best = (await ran(['rework', example])).stdout.match(/, for (.*)\n/)![1];
    const { stdout } = await ran(['rework', example, '--stop', best]);
    expect(stdout.match(/, for (.*)\n/)![1]).not.toBe(best);
  });

  it('refuses a station to stop that is not there, and two changes at once', async () => {
    const unknown = await ran(['rework', example, '--stop', 'Radio Elm']);
    expect(unknown.status).toBe(2);
    expect(unknown.stderr).toMatch(/--stop/);
    expect(unknown.stderr).not.toMatch(/--station/);
    expect((await ran(['rework', example, '--stop', 'Saltmarsh', '--two-circuits'])).status).toBe(2);
  });

  it('writes nothing where nothing changes, and says so', async () => {
    const out = join(folder(), 'same.json');
    const { status, stderr } = await ran(['rework', example, '--out', out]);
    expect(status).toBe(1);
    expect(stderr).toContain('nothing to change');
    expect(existsSync(out)).toBe(false);
  });
});

describe('faintwave share', () => {
  it('leaves the descriptions of other sets beside a Markdown file as they are', async () => {
    const at = folder();
    const own = ['crystal-set.json', 'crystal-description.json'].map((name) => join(at, name));
    const mine = readFileSync(inRoot('examples/slider-set.json'), 'utf8');
    for (const file of own) writeFileSync(file, mine);
    const page = join(at, 'crystal.md');
    for (let n = 0; n < 2; n++) {
      expect((await ran(['share', example, '--markdown', page])).status).toBe(0);
      for (const file of own) expect(readFileSync(file, 'utf8')).toBe(mine);
      expect(readFileSync(page, 'utf8')).toContain('(crystal-description-2.json)');
      expect(existsSync(join(at, 'crystal-description-2.json'))).toBe(true);
      expect(existsSync(join(at, 'crystal-description-3.json'))).toBe(false);
    }
  });

  it('a link stands on the band that was asked for', async () => {
    const band = async (...args: string[]) => {
      const { stdout } = await ran(['share', 'examples/two-band.json', ...args]);
      const link = textOfLink(stdout.trim().slice(stdout.indexOf('#') + 1));
      return 'text' in link && standingBand(JSON.parse(link.text));
    };
    expect(await band()).toBe(0);
    expect(await band('--switch', 'long wave')).toBe(1);
  });

  it('says what of a log is not taken', async () => {
    const at = folder();
    const log = join(at, 'log.csv');
    writeFileSync(log, 'time,station,heard\nyesterday,Saltmarsh Radio,loud\n');
    const { status, stderr } = await ran(['share', example, '--html', join(at, 'a.html'), '--log', log]);
    expect(status).toBe(0);
    expect(stderr).toBe((await ran(['log', example, log])).stderr);
    expect(stderr).toMatch(/time/);
  });
});
