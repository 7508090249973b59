interface Policy {
  readonly createHTML: (text: string) => string;
}

interface Policies {
  readonly createPolicy: (
    name: string,
    rules: { createHTML?: (text: string) => string; createScriptURL?: (address: string) => string },
  ) => Policy;
}

// Browsers without Trusted Types take texts as they are.
const policies = (globalThis as { trustedTypes?: Policies }).trustedTypes;

/** Scripts of this page alone: from its own place or, where the page is one file, out of that file. */
function ownScript(address: string): string {
  const { origin, protocol } = new URL(address, location.href);
  const isOwn = 'addressInFile' in globalThis ? protocol === 'data:' : origin === location.origin;
  if (!isOwn) throw new TypeError(address);
  return address;
}

policies?.createPolicy('default', { createScriptURL: ownScript });

const drawings = policies?.createPolicy('drawings', { createHTML: (svg) => svg });

/**
 * The one way by which markup comes into the page.
 * @param svg drawn by this program from plain data, all text in it escaped
 */
export const drawnMarkup = (svg: string): string => drawings?.createHTML(svg) ?? svg;
