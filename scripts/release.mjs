// Makes what is published, in dist/release: the package, the page in one file, and the sums by which either is known.
// Takes nothing but a clean checkout whose version CHANGELOG.md names. Publishing is a step of its own, so that a build
// server can add its statement of provenance: npm publish dist/release/….tgz --provenance
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { buildAll } from './support/build.mjs';
import { installIfNeeded } from './support/install.mjs';
import { nodeIsNewEnough } from './support/node-version.mjs';
import { packRelease } from './support/pack.mjs';
import { inRoot, ROOT } from './support/paths.mjs';

const { version } = JSON.parse(readFileSync(inRoot('package.json'), 'utf8'));
const git = (/** @type {string[]} */ ...args) => execFileSync('git', args, { cwd: ROOT, encoding: 'utf8' }).trim();

/** What stands against a release, in words. */
function obstacles() {
  const said = [];
  if (git('status', '--porcelain')) said.push('there are changes that are not committed');
  const heading = readFileSync(inRoot('CHANGELOG.md'), 'utf8').match(/^## (.*)$/m)?.[1] ?? '';
  if (heading.split(/[ ,]/)[0] !== version) said.push(`CHANGELOG.md begins with "${heading}", not with ${version}`);
  if (/not yet released/.test(heading)) said.push(`CHANGELOG.md calls ${version} not yet released: write its date`);
  return said;
}

const isTrial = process.argv.includes('--trial');
if (nodeIsNewEnough()) {
  const said = isTrial ? [] : obstacles();
  if (said.length > 0) {
    process.stderr.write(`No release: ${said.join('; ')}.\nTo see what one would hold: npm run release -- --trial\n`);
    process.exitCode = 1;
  } else {
    await installIfNeeded();
    await buildAll();
    const folder = inRoot('dist/release');
    rmSync(folder, { recursive: true, force: true });
    const { filename, files } = await packRelease(folder);
    const page = `faintwave-${version}.html`;
    copyFileSync(inRoot('dist/faintwave.html'), `${folder}/${page}`);
    const sums = [filename, page].map(
      (file) =>
        `${createHash('sha256')
          .update(readFileSync(`${folder}/${file}`))
          .digest('hex')}  ${file}\n`,
    );
    writeFileSync(`${folder}/SHA256SUMS`, sums.join(''));
    process.stdout.write(
      `${filename}, ${files.length} files, and ${page}, of ${git('rev-parse', 'HEAD')}:\n${sums.join('')}`,
    );
  }
}
