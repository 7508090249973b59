import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fieldsOf, type Path, type SchemaNode, valueAtPath, withValueAt } from '../../engine/index.ts';
import { startingValue } from './change-kind.ts';
import { addItem } from './lists.ts';
import { editorKind, pathText, schemaAt } from './schema-at.ts';
import { isWholeSet, readWithStandIns } from './stand-ins.ts';

const folder = new URL('../../../examples/', import.meta.url);
const examples = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => ({ file, written: JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as unknown }));
const galena = examples.find(({ file }) => file === 'medium-wave-galena.json')!.written;

/** Every plain field of a description that is written in it. */
function fieldPaths(written: unknown): Path[] {
  const inside = (path: Path): Path[] => {
    const value = valueAtPath(written, path);
    const node = schemaAt(written, path) as SchemaNode;
    if (Array.isArray(value)) return value.flatMap((_, i) => inside([...path, i]));
    return fieldsOf(node, value).flatMap((field) => {
      const at = [...path, field.key];
      if (valueAtPath(value, [field.key]) === undefined) return [];
      const kind = editorKind(field.schema);
      if (kind === 'quantity' || kind === 'number') return [at];
      return kind === 'list' || kind === 'part' ? inside(at) : [];
    });
  };
  return inside([]).filter((path) => valueAtPath(written, path) !== undefined);
}

describe('a refused field', () => {
  it('leaves the figures of everything else, with its last good value, whichever field it is', () => {
    for (const { file, written } of examples)
      for (const path of fieldPaths(written)) {
        const at = `${file}: ${pathText(path)}`;
        const { result, usable } = readWithStandIns(withValueAt(written, path, 'abc'), written);
        expect(result.ok, at).toBe(false);
        expect(usable?.written, at).toEqual(written);
        expect(usable?.standIns, at).toEqual([
          { path: pathText(path), value: valueAtPath(written, path), source: 'last' },
        ]);
      }
  });

  it('leaves out a measured value that is still to be written, with its last good description and without', () => {
    const path: Path = ['coils', 0, 'measured'];
    const field = fieldsOf(schemaAt(galena, ['coils', 0])!, valueAtPath(galena, ['coils', 0])).find(
      ({ key }) => key === 'measured',
    )!;
    const inductance = fieldsOf(field.schema, {}).find(({ key }) => key === 'inductance')!;
    const begun = withValueAt(
      galena,
      [...path, 'inductance'],
      startingValue(galena, [...path, 'inductance'], inductance),
    );
    expect(valueAtPath(begun, [...path, 'inductance'])).toEqual({ value: '' });
    for (const lastGood of [galena, undefined]) {
      const { usable } = readWithStandIns(begun, lastGood);
      expect(usable?.set.coils[0].measured?.inductance).toBeUndefined();
      expect(usable?.standIns.map(({ path: at, value }) => [at, value])).toEqual([
        [expect.stringMatching(/^coils\[0\]\.measured/), undefined],
      ]);
    }
  });

  it('is of a typical value where nobody has typed one, however often it is typed anew', () => {
    const begun = withValueAt(galena, ['assumed'], ['load', 'tuning.maximum', 'aerial.height']);
    const path: Path = ['tuning', 'maximum'];
    let lastGood = begun;
    for (const typed of ['a', 'ab', 'abc']) {
      const { usable } = readWithStandIns(
        withValueAt(withValueAt(begun, ['assumed'], ['load', 'aerial.height']), path, typed),
        lastGood,
      );
      expect(usable?.standIns).toEqual([{ path: 'tuning.maximum', value: '500 pF', source: 'usual' }]);
      expect(usable?.written).toEqual(begun);
      lastGood = usable?.written;
    }
    const typed = readWithStandIns(withValueAt(galena, path, '365 pF')).usable?.written;
    expect(readWithStandIns(withValueAt(typed, path, 'abc'), typed).usable?.standIns[0].source).toBe('last');
  });

  it('of an opened file is of a typical value, however often it is typed anew', () => {
    let lastGood: unknown;
    for (const typed of ['a', 'ab', 'abc']) {
      const { usable } = readWithStandIns(withValueAt(galena, ['tuning', 'maximum'], typed), lastGood);
      expect(usable?.standIns).toEqual([expect.objectContaining({ path: 'tuning.maximum', source: 'usual' })]);
      lastGood = usable?.written;
    }
  });

  it('opens again from a file, where nothing tells what it was before', () => {
    for (const { file, written } of examples)
      for (const path of fieldPaths(written)) {
        const at = `${file}: ${pathText(path)}`;
        const { result, usable } = readWithStandIns(withValueAt(written, path, 'abc'));
        expect(!result.ok && isWholeSet(result.problems), at).toBe(true);
        expect(usable?.standIns.length, at).toBeGreaterThan(0);
        expect(usable?.set.place.stations.length, at).toBe(
          (valueAtPath(written, ['place', 'stations']) as unknown[]).length,
        );
      }
  });

  it('does not hold up what is changed beside it, nor another refused field', () => {
    const refused = withValueAt(galena, ['tuning', 'maximum'], '5 m');
    const first = readWithStandIns(refused, galena);
    const second = readWithStandIns(withValueAt(refused, ['coils', 0, 'turns'], 61), first.usable?.written);
    expect(second.usable?.set.coils[0]).toMatchObject({ turns: 61 });
    const third = readWithStandIns(
      withValueAt(withValueAt(refused, ['coils', 0, 'turns'], 61), ['aerial', 'height'], 'tall'),
      second.usable?.written,
    );
    expect(third.usable?.standIns.map(({ path }) => path).sort()).toEqual(['aerial.height', 'tuning.maximum']);
    expect(third.usable?.set.coils[0]).toMatchObject({ turns: 61 });
  });

  it('is the one that was changed, where two are at odds', () => {
    const { usable } = readWithStandIns(withValueAt(galena, ['tuning', 'maximum'], '10 pF'), galena);
    expect(usable?.written).toEqual(galena);
    expect(usable?.standIns).toEqual([
      { path: 'tuning.maximum', value: valueAtPath(galena, ['tuning', 'maximum']), source: 'last' },
    ]);
  });

  it('of a new station is how strong it is: the others keep their places', () => {
    const more = addItem(galena, ['place', 'stations']);
    const { result, usable } = readWithStandIns(more, galena);
    expect(!result.ok && result.problems.map(({ path }) => path)).toEqual(['place.stations[8]']);
    expect(usable?.standIns).toEqual([{ path: 'place.stations[8]', value: undefined, source: 'none' }]);
    expect(usable?.set.place.stations).toHaveLength(9);
    expect(usable?.set.place.stations[8].fieldStrength).toBeLessThan(1e-8);
    // What is known of it is followed meanwhile.
    const named = withValueAt(more, ['place', 'stations', 8, 'name'], 'Stoat Calling');
    const again = readWithStandIns(named, usable?.written).usable;
    expect(again?.standIns).toEqual(usable?.standIns);
    expect(again?.set.place.stations[8].name).toBe('Stoat Calling');
    // One whose strength was known keeps it.
    const {
      fieldStrength: _,
      power: __,
      ...bare
    } = valueAtPath(galena, ['place', 'stations', 0]) as Record<string, unknown>;
    const weak = readWithStandIns(withValueAt(galena, ['place', 'stations', 0], bare), galena).usable;
    expect(weak?.set.place.stations[0]).toEqual(readWithStandIns(galena).usable?.set.place.stations[0]);
  });

  it('makes no set of what is none', () => {
    for (const none of [{}, { format: 'faintwave-set/1', name: 'x' }, { ...(galena as object), coils: undefined }]) {
      const { result, usable } = readWithStandIns(none);
      expect(!result.ok && usable !== undefined && isWholeSet(result.problems)).toBe(false);
    }
  });
});
