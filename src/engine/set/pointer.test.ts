import { expect, it } from 'vitest';
import { pathAt } from './pointer.ts';

// Source: the examples of RFC 6901, section 5, where a key stands for the pointer.
const document = { foo: ['bar', 'baz'], 'a/b': 1, 'm~n': 8, '': { x: 0 } };

it.each([
  ['/foo', ['foo']],
  ['/foo/0', ['foo', 0]],
  ['/a~1b', ['a/b']],
  ['/m~0n', ['m~n']],
  ['//x', ['', 'x']],
])('%s is %j', (pointer, path) => {
  expect(pathAt(pointer, document)).toEqual(path);
});

it.each(['', 'foo', '/bar', '/foo/2', '/foo/01', '/foo/-', '/foo/length', '/a~1b/c', '/toString'])(
  '"%s" names nothing',
  (pointer) => {
    expect(pathAt(pointer, document)).toBeUndefined();
  },
);
