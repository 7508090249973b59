import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inRoot } from './paths.mjs';

/**
 * @typedef {object} ShippedPackage
 * @property {string} name
 * @property {string} version
 * @property {string} licence identifier as the package gives it, else "see text"
 * @property {string} text of its licence; empty where the package holds none
 */

/** @param {string} folder */
function licenceTextIn(folder) {
  const files = readdirSync(folder).filter((name) => /^(licen[cs]e|copying|notice)/i.test(name));
  return files.map((name) => readFileSync(join(folder, name), 'utf8').trim()).join('\n\n');
}

/**
 * Every package of others that is shipped: those in package-lock.json that are not for development only.
 * @returns {ShippedPackage[]} in the order of their names
 */
export function shippedPackages() {
  const { packages } = JSON.parse(readFileSync(inRoot('package-lock.json'), 'utf8'));
  return Object.entries(packages)
    .filter(([path, { dev, devOptional, optional }]) => path !== '' && !dev && !devOptional && !optional)
    .map(([path]) => {
      const folder = inRoot(path);
      const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
      return { name, version, licence: license ?? 'see text', text: licenceTextIn(folder) };
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

const RULE = '='.repeat(72);

/** All of them as one text, the tool's own licence first. */
export function licencesText() {
  const own = readFileSync(inRoot('LICENSE'), 'utf8').trim();
  const others = shippedPackages().map(({ name, version, licence, text }) =>
    [`${name} ${version}: ${licence}`, text].filter((part) => part !== '').join('\n\n'),
  );
  return `${[`Faintwave\n\n${own}`, ...others].join(`\n\n${RULE}\n\n`)}\n`;
}

/** Writes them to where the package has them. */
export const writeLicences = () => writeFileSync(inRoot('dist/licences.txt'), licencesText());
