import { readFileSync } from 'node:fs';

const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));

if (process.argv.includes('--version')) console.log(version);
else console.log('usage: faintwave <command> [options]');
